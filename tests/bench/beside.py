"""schrund beside what users would script with general tools, on the same machine in turn.

First `cargo bench --bench speed -- write target/workloads` (a scale after it, 0.01 say, makes them small for trying),
then `python3 tests/bench/beside.py target/workloads`. Needs nothing but Python; a peer that is not installed is told.

Each round runs schrund and then each peer, so that what else the machine does falls on both of a pair. Printed are
medians of whole runs from start to end, the median of the pairs' ratios, peak memory, and whether the metres on ice
agree track by track.
"""

import argparse
import csv
import json
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

HERE = pathlib.Path(__file__).resolve().parent
PEERS = {
    "shapely, by edge": "shapely_edges.py",
    "DuckDB spatial": "duckdb_spatial.py",
    "GDAL ogr2ogr clip": "gdal_clip.py",
}
WORKLOADS = {
    "W1": ("short.gpx", "few.geojson"),
    "W2": ("long.gpx", "few.geojson"),
    "W3": ("short.gpx", "many.geojson"),
    "W3 FlatGeobuf": ("short.gpx", "many.fgb"),
    "W4": ("tracks", "many.geojson"),
}
AGREE_M = 0.001  # a millimetre
PLANNED = (0, 5)  # a plan was made; 5 tells that a leg of it stops or is outside


class Missing(Exception):
    """What cannot be run on this machine, and why."""


def timed(command, out, well=(0,)):
    """One run: seconds, and what it printed."""
    printed = out / "printed"
    with open(printed, "wb") as file:
        start = time.perf_counter()
        done = subprocess.run(command, stdout=file, stderr=subprocess.PIPE, check=False)
        seconds = time.perf_counter() - start
    if done.returncode not in well:
        said = done.stderr.decode(errors="replace").strip().splitlines() or [f"ended with {done.returncode}"]
        raise Missing(next((line for line in said if line.startswith("error")), said[-1]))
    return seconds, printed


class Schrund:
    """The program: `plan` for a track, `survey` for a folder of them."""

    def __init__(self, program, tracks, zones, out):
        self.program, self.tracks, self.zones, self.out = program, tracks, zones, out
        party = ["--party", "3", "-q"]
        if tracks.is_dir():
            self.command = [program, "survey", tracks, "--zones", zones, *party]
        else:
            self.command = [program, "plan", tracks, zones, "--format", "geojson", *party]
        self.peak_mb = 0.0

    def run(self):
        return timed(self.command, self.out, PLANNED)[0]

    def metres(self):
        """Metres on ice by track; in runs of their own, which are not timed. Here memory is looked at, too."""
        self.peak_mb = peak_mb(self.command)
        if self.tracks.is_dir():
            _, printed = timed(self.command, self.out, PLANNED)
            with open(printed, newline="", encoding="utf-8") as file:
                return {pathlib.Path(row["track"]).stem: float(row["ice_m"] or "nan") for row in csv.DictReader(file)}
        command = ["json" if word == "geojson" else word for word in self.command]
        _, printed = timed(command, self.out, PLANNED)
        plan = json.loads(printed.read_bytes())
        held = [c["exit_m"] - c["enter_m"] for zone in plan["zones"] for c in zone.get("crossings", [])]
        return {self.tracks.stem: sum(held)}


class Peer:
    """A script of `peers/`."""

    def __init__(self, script, python, tracks, zones, out):
        self.command = [python, "-B", HERE / "peers" / script, tracks, zones, out / "pieces"]
        self.out, self.peak_mb, self.told = out, 0.0, {}

    def run(self):
        seconds, printed = timed(self.command, self.out)
        answer = json.loads(printed.read_bytes())
        self.peak_mb = max(self.peak_mb, answer["peak_mb"])
        self.told = answer["metres"]
        return seconds

    def metres(self):
        return self.told


def peak_mb(command):
    """The greatest memory of a run as the kernel tells it, looked at as it goes; 0 where there is no /proc."""
    child = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    status, peak = pathlib.Path(f"/proc/{child.pid}/status"), 0.0
    while child.poll() is None:
        try:
            lines = status.read_text(encoding="utf-8").splitlines()
        except OSError:
            lines = []
        peak = max([peak, *(int(line.split()[1]) / 1e3 for line in lines if line.startswith("VmHWM"))])
        time.sleep(0.0005)
    return peak


def rounds(runners, count):
    """Seconds of each that can be run, round after round; and why the others cannot."""
    seconds, missing = {name: [] for name in runners}, {}
    for _ in range(count):
        for name, runner in runners.items():
            if name in missing:
                continue
            try:
                seconds[name].append(runner.run())
            except Missing as why:
                missing[name] = str(why)
    return {name: runs for name, runs in seconds.items() if name not in missing}, missing


def agreement(ours, theirs):
    """Whether the metres on ice of two agree, in words."""
    if ours.keys() != theirs.keys():
        return f"other tracks: {len(ours)} and {len(theirs)}"
    worst = max(ours, key=lambda name: abs(ours[name] - theirs[name]))
    apart = abs(ours[worst] - theirs[worst])
    # What is printed to the millimetre may stand half of one to either side.
    if apart <= AGREE_M:
        return "agree to the millimetre"
    return f"DIFFER by {apart:.3f} m on {worst}"


def compared(title, runners, count):
    """Prints the table of one workload; whether all that ran agree."""
    seconds, missing = rounds(runners, count)
    print(f"\n{title}")
    own = seconds.get("schrund")
    ours = runners["schrund"].metres() if own else {}
    peers = [name for name in seconds if name != "schrund"]
    best = min(peers, key=lambda name: statistics.median(seconds[name]), default=None)
    well = own is not None
    for name, runs in seconds.items():
        said = ""
        if own and name == "schrund":
            said = f"{sum(ours.values()):.3f} m on ice"
        elif own:
            ratio = statistics.median(theirs / mine for mine, theirs in zip(own, runs))
            agree = agreement(ours, runners[name].metres())
            well &= agree.startswith("agree")
            said = f"{ratio:7.1f} x schrund{' (best peer)' if name == best else ''}; metres {agree}"
        told = f"{statistics.median(runs):9.3f} s  {runners[name].peak_mb:8.1f} MB"
        print(f"  {name:<20}{told}  {said}", flush=True)
    for name, why in missing.items():
        print(f"  {name:<20}not run: {why}", flush=True)
    return well


def flatgeobuf(folder):
    """The large outlines in FlatGeobuf, made where ogr2ogr is there."""
    made, source = folder / "many.fgb", folder / "many.geojson"
    if not source.exists() or shutil.which("ogr2ogr") is None:
        return
    if not made.exists() or made.stat().st_mtime < source.stat().st_mtime:
        made.unlink(missing_ok=True)
        subprocess.run(["ogr2ogr", "-f", "FlatGeobuf", made, source], check=True)


def main():
    asked = argparse.ArgumentParser(description="schrund beside general tools")
    asked.add_argument("workloads", type=pathlib.Path, help="what `cargo bench --bench speed -- write FOLDER` wrote")
    asked.add_argument("--schrund", default="target/release/schrund", help="the program [target/release/schrund]")
    asked.add_argument("--python", default=sys.executable, help="the Python of the peers [this one]")
    asked.add_argument("--runs", type=int, default=5, help="rounds [5]")
    asked.add_argument("--only", default="", help="workloads that begin so, such as W1,W3")
    given = asked.parse_args()
    if shutil.which(given.schrund) is None:
        sys.exit(f"no program at {given.schrund}: cargo build --release")
    flatgeobuf(given.workloads)
    wanted = tuple(given.only.split(","))
    well = True
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder)
        for title, names in WORKLOADS.items():
            if not title.startswith(wanted):
                continue
            tracks, zones = (given.workloads / name for name in names)
            absent = [path.name for path in (tracks, zones) if not path.exists()]
            if absent:
                cure = "needs ogr2ogr" if zones.suffix == ".fgb" else "write the workloads first"
                print(f"\n{title}\n  not run: no {' and no '.join(absent)} ({cure})")
                continue
            runners = {"schrund": Schrund(given.schrund, tracks, zones, out)}
            for name, script in PEERS.items():
                runners[name] = Peer(script, given.python, tracks, zones, out)
            well &= compared(f"{title}: {names[0]} x {names[1]}", runners, max(1, given.runs))
    sys.exit(0 if well else 1)


if __name__ == "__main__":
    main()
