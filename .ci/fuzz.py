"""Damages the example's files at random and runs the whole program on them: always a code of the contract,
never a panic, never longer than ten seconds. The seed is fixed; SCHRUND_FUZZ=N runs N rounds (default 300)."""
import os
import pathlib
import random
import subprocess
import sys
import tempfile

schrund = sys.argv[1]
example = pathlib.Path(__file__).parent.parent / "examples" / "vordalen"
sources = {name: (example / name).read_bytes() for name in ("route.gpx", "zones.geojson", "trip.toml", "terrain.tif")}
rounds = int(os.environ.get("SCHRUND_FUZZ", "300"))
rng = random.Random(1)
SPICE = [b"NaN", b"1e999", b"-1", b"\x00", b"\xff\xfe", b"null", b"[]", b"{}", b'"', b"<", b"&#x0;", b"</gpx>", b"9" * 400,
         b"\xe2\x80\xae", b"<!--", b"]]>", b"-0.0", b"180", b"90.0000001", b"true"]


def damaged(text: bytes) -> bytes:
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
            text[i % len(text)] = rng.randrange(256)
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


codes, faults = {}, []
with tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    for round_ in range(rounds):
        victim = rng.choice(list(sources))
        for name, text in sources.items():
            (folder / name).write_bytes(damaged(text) if name == victim else text)
        args = [schrund, "plan", "route.gpx", "zones.geojson", "--trip", "trip.toml", "--format",
                rng.choice(("table", "json", "geojson", "csv", "gpx", "kml", "html", "text"))]
        try:
            ran = subprocess.run(args, cwd=folder, capture_output=True, timeout=10)
            code = ran.returncode
            if code not in (0, 3, 4, 5) or b"panicked" in ran.stderr:
                faults.append((round_, victim, code, ran.stderr[-500:]))
        except subprocess.TimeoutExpired:
            faults.append((round_, victim, "time", b""))
            code = "time"
        codes[code] = codes.get(code, 0) + 1
print(f"{rounds} rounds, exit codes {dict(sorted(codes.items(), key=str))}")
if faults:
    sys.exit("\n".join(map(str, faults[:10])))
