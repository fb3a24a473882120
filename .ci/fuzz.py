"""Files nobody should write, and the example's files damaged at random, each given to the whole program: always a code of the
contract, never a panic, no longer than five seconds, no more than a gigabyte.

  fuzz.py SCHRUND [MUTATED [HOSTILE]]   so many of each (default 300 and 150; the hostile ones are 2547, those left out are spread)

The seed is fixed: the same numbers try the same files."""
import os
import pathlib
import random
import shutil
import sys
import tempfile
import time

import hostile

SECONDS, KILOBYTES = 5, 1 << 20
CODES = {0, 3, 4, 5}
EXAMPLE = pathlib.Path(__file__).parent.parent / "examples" / "vordalen"
NAMES = ("route.gpx", "zones.geojson", "trip.toml", "terrain.tif")
FORMATS = ("table", "json", "geojson", "csv", "gpx", "kml", "html", "sheet", "text")
SPICE = [b"NaN", b"1e999", b"-1", b"\x00", b"\xff\xfe", b"null", b"[]", b"{}", b'"', b"<", b"&#x0;", b"</gpx>", b"9" * 400,
         b"\xe2\x80\xae", b"<!--", b"]]>", b"-0.0", b"180", b"90.0000001", b"true"]


def damaged(text: bytes, rng: random.Random) -> bytes:
    text = bytearray(text)
    if rng.random() < 0.5:  # other numbers in a sound form
        digits = [i for i, b in enumerate(text) if 48 <= b <= 57] or [0]
        for _ in range(rng.choice((1, 3, 20, 200))):
            text[rng.choice(digits)] = rng.choice(b"0123456789-.")
        return bytes(text)
    for _ in range(rng.choice((1, 1, 2, 5, 30))):
        i = rng.randrange(len(text) or 1)
        kind = rng.randrange(5)
        if kind == 0 and text:
            text[i:i + 1] = bytes([rng.randrange(256)])
        elif kind == 1:
            text[i:i] = rng.choice(SPICE)
        elif kind == 2:
            del text[i:i + rng.choice((1, 3, 40, 4000))]
        elif kind == 3:
            j = rng.randrange(len(text) or 1)
            text[i:i] = text[j:j + rng.choice((1, 8, 200))]
        elif kind == 4:
            n = rng.choice((1, 3, 12))
            text[i:i + n] = rng.choice(SPICE)
    return bytes(text)


class Trial:
    """Runs of the program in a folder with the example's files, and what was wrong with them."""

    def __init__(self, schrund: str, folder: pathlib.Path):
        self.schrund, self.folder = str(pathlib.Path(schrund).resolve()), folder
        self.sound = {name: (EXAMPLE / name).read_bytes() for name in NAMES}
        self.codes, self.faults, self.longest_s, self.most_kb = {}, [], 0.0, 0

    def run(self, what: str, files: dict[str, bytes], args: list[str]) -> None:
        for name, text in {**self.sound, **files}.items():
            (self.folder / name).write_bytes(text)
        err = self.folder / "stderr"
        began = time.monotonic()
        pid = os.fork()
        if pid == 0:
            self.be([self.schrund, *args], err)
        code, kilobytes = self.ended(pid, began)
        took = time.monotonic() - began
        told = err.read_bytes()
        if code not in CODES or b"panicked" in told or took > SECONDS or kilobytes > KILOBYTES:
            self.faults.append((what, args, code, f"{took:.1f} s", f"{kilobytes} kB", told[-400:]))
            kept = pathlib.Path(tempfile.mkdtemp(prefix="hostile-"))
            shutil.copytree(self.folder, kept, dirs_exist_ok=True)
            print(f"kept in {kept}: {what}", flush=True)
        self.codes[code] = self.codes.get(code, 0) + 1
        self.longest_s, self.most_kb = max(self.longest_s, took), max(self.most_kb, kilobytes)
        for name in files.keys() - self.sound.keys():
            (self.folder / name).unlink()

    def be(self, args: list[str], err: pathlib.Path) -> None:
        os.chdir(self.folder)
        for stream, path in ((0, os.devnull), (1, os.devnull), (2, err)):
            how = os.O_RDONLY if stream == 0 else os.O_WRONLY | os.O_CREAT | os.O_TRUNC
            os.dup2(os.open(path, how), stream)
        os.execv(args[0], args)

    def ended(self, pid: int, began: float) -> tuple[int | str, int]:
        while True:
            done, status, used = os.wait4(pid, os.WNOHANG)
            if done:
                return os.waitstatus_to_exitcode(status), used.ru_maxrss
            if time.monotonic() - began > 2 * SECONDS:
                os.kill(pid, 9)
            time.sleep(0.002)

    def told(self, what: str) -> None:
        codes = ", ".join(f"{code}: {count}" for code, count in sorted(self.codes.items(), key=str))
        print(f"{what}; exit codes {codes}; longest {self.longest_s:.2f} s, most {self.most_kb / 1024:.0f} MB; {len(self.faults)} at fault")


def mutated(trial: Trial, rounds: int) -> None:
    rng = random.Random(1)
    for number in range(rounds):
        victim = rng.choice(NAMES)
        text = damaged(trial.sound[victim], rng)
        form = rng.choice(FORMATS)
        trial.run(f"mutated {number} {victim}", {victim: text}, ["plan", "route.gpx", "zones.geojson", "--trip", "trip.toml", "--format", form])


def made(trial: Trial, most: int) -> None:
    every = list(hostile.files())
    step = max(1, -(-len(every) // most))
    for number, (what, name, text) in enumerate(every[::step]):
        trial.run(f"hostile {number * step} {what}", {name: text}, call(name, FORMATS[number % len(FORMATS)]))
        trial.run(f"hostile {number * step} {what}", {name: text}, ["check", name])


def call(name: str, form: str) -> list[str]:
    """A plan in which a file has the place that its name says."""
    route, zones, trip = ("route.gpx", "zones.geojson", ["--trip", "trip.toml"])
    if name.endswith(".gpx"):
        route = name
    elif name.endswith((".geojson", ".fgb")):
        zones = name
    elif name.startswith("practice"):
        trip += ["--practice", name]
    elif name.endswith(".toml"):
        trip = ["--trip", name]
    else:
        trip += ["--terrain", name]
    return ["plan", route, zones, *trip, "--format", form]


def main() -> None:
    schrund, *counts = sys.argv[1:]
    mutations, hostiles = [int(count) for count in counts] + [300, 150][len(counts):]
    faults = []
    with tempfile.TemporaryDirectory() as folder:
        for what, count, go in (("hostile", hostiles, made), ("mutated", mutations, mutated)):
            trial = Trial(schrund, pathlib.Path(folder))
            go(trial, count)
            trial.told(f"{sum(trial.codes.values())} runs on {what} files")
            faults += trial.faults
    if faults:
        sys.exit("\n".join(map(str, faults[:10])))


main()
