"""What every peer shares: its arguments, the tracks it is given, and the line that it prints."""

import json
import pathlib
import resource
import sys
import time

START = time.perf_counter()
MISSING = 3


def need(wanted, cure):
    """Ends with what is missing on this machine and how to get it."""
    print(f"not installed: {wanted}; {cure}", file=sys.stderr)
    sys.exit(MISSING)


def arguments():
    """The tracks (a file, or all of a folder), the zones, and the folder for what is written."""
    if len(sys.argv) != 4:
        sys.exit(f"usage: {sys.argv[0]} TRACK.gpx|FOLDER ZONES OUT_FOLDER")
    tracks, zones, out = map(pathlib.Path, sys.argv[1:])
    out.mkdir(parents=True, exist_ok=True)
    return sorted(tracks.glob("*.gpx")) if tracks.is_dir() else [tracks], zones, out


def tell(metres):
    """Prints seconds, peak memory (MB) and metres inside zones, all told and by track."""
    whose = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    peak_kb = max(resource.getrusage(who).ru_maxrss for who in whose)
    told = {
        "seconds": round(time.perf_counter() - START, 3),
        "peak_mb": round(peak_kb / 1e3, 1),
        "inside_m": round(sum(metres.values()), 3),
        "metres": metres,
    }
    print(json.dumps(told))
