"""GDAL's ogr2ogr: the track clipped by the zones, then the lengths summed on the ellipsoid by SpatiaLite.

Only the pieces inside come of it. It starts a process for each track, so that it is not asked for folders of them.
"""

import os
import re
import shutil
import subprocess
import sys

import told

CURE = "on Debian and Ubuntu: apt-get install gdal-bin"
LENGTH = "SELECT SUM(ST_Length(geometry, 1)) AS metres FROM inside"


def main():
    tracks, zones, out = told.arguments()
    for program in ("ogr2ogr", "ogrinfo"):
        if shutil.which(program) is None:
            told.need(program, CURE)
    if len(tracks) > 1:
        print("not asked: a process for each track", file=sys.stderr)
        sys.exit(told.MISSING)
    settings = {**os.environ, "LC_ALL": "C", "OGR_GEOJSON_MAX_OBJ_SIZE": "0"}
    metres = {}
    for track in tracks:
        written = out / f"{track.stem}.geojson"
        written.unlink(missing_ok=True)
        clip = ["ogr2ogr", "-q", "-f", "GeoJSON", "-explodecollections", "-nln", "inside", "-clipsrc", zones]
        subprocess.run([*clip, written, track, "tracks"], check=True, env=settings)
        ask = ["ogrinfo", "-q", "-ro", written, "-dialect", "SQLite", "-sql", LENGTH]
        answer = subprocess.run(ask, check=True, env=settings, capture_output=True, text=True)
        found = re.search(r"metres \(Real\) = (\S+)", answer.stdout)
        if found is None:
            told.need("GDAL with SpatiaLite, which sums the lengths", CURE)
        metres[track.stem] = float(found[1])
    told.tell(metres)


if __name__ == "__main__":
    main()
