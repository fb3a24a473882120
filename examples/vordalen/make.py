"""Makes the invented massif of Vordalen: route.gpx, zones.geojson, terrain.tif. Nothing here exists.

    pip install numpy rasterio
    python3 examples/vordalen/make.py

The ground is a sum of smooth hills in metres east and north of 2.0 E 66.5 N, which is open sea. The
route is a smooth line through hand-chosen points with a metre of wobble, its heights are the ground's.
"""
import json
import math
import pathlib

import numpy as np
import rasterio
from rasterio.transform import from_origin

HERE = pathlib.Path(__file__).parent
LON0, LAT0 = 2.0, 66.5
A, F = 6378137.0, 1 / 298.257223563  # WGS 84
E2 = F * (2 - F)
_s = math.sin(math.radians(LAT0))
_w = 1 - E2 * _s * _s
EAST = math.radians(A / math.sqrt(_w) * math.cos(math.radians(LAT0)))  # metres per degree
NORTH = math.radians(A * (1 - E2) / _w**1.5)

rng = np.random.RandomState(66)
# x, y, height, spread east, spread north of each hill, metres
HILLS = [
    (1500, 4200, 420, 2100, 1500), (5200, 1200, 520, 1500, 1900), (6900, 6200, 780, 2600, 2200),
    (9800, 3000, 640, 1900, 1500), (11200, 8200, 520, 2300, 1800), (13800, 5200, 330, 1500, 2100),
    (4200, 7800, 560, 1700, 1700), (8600, 9900, 400, 2400, 1300),
]
BUMPS = [(x, y, h, s) for x, y, h, s in zip(
    rng.uniform(-500, 15500, 90), rng.uniform(-1500, 11000, 90), rng.uniform(-35, 45, 90), rng.uniform(250, 700, 90))]


def height(x, y):
    z = 760 + 0 * x
    for cx, cy, h, sx, sy in HILLS:
        z = z + h * np.exp(-(((x - cx) / sx) ** 2) - ((y - cy) / sy) ** 2)
    for cx, cy, h, s in BUMPS:
        z = z + h * np.exp(-(((x - cx) ** 2 + (y - cy) ** 2) / s**2))
    return z


def lonlat(x, y):
    return LON0 + x / EAST, LAT0 + y / NORTH


# --- the line ---
VIA = np.array([
    (0, 900), (1100, 1500), (2300, 2300), (3300, 3000), (4300, 3900), (5200, 4900), (6000, 5500), (6900, 5600),
    (7900, 5300), (8700, 4800), (9500, 4700), (10300, 5100), (11000, 5800), (11900, 6500), (12900, 6900),
    (13700, 6700), (14500, 6300),
], float)


def spline(p, step=45.0):
    """Catmull-Rom through the points, then even steps."""
    q = np.vstack([2 * p[0] - p[1], p, 2 * p[-1] - p[-2]])
    fine = []
    for i in range(1, len(q) - 2):
        t = np.linspace(0, 1, 200, endpoint=False)[:, None]
        a, b, c, d = q[i - 1], q[i], q[i + 1], q[i + 2]
        fine.append(0.5 * ((2 * b) + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3))
    fine = np.vstack(fine + [p[-1:]])
    s = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(fine, axis=0).T))])
    at = np.arange(0, s[-1], step)
    return np.column_stack([np.interp(at, s, fine[:, 0]), np.interp(at, s, fine[:, 1])])


LINE = spline(VIA)
LINE[1:-1] += rng.normal(0, 1.0, LINE[1:-1].shape)
CHAIN = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(LINE, axis=0).T))])


def at(chain, aside=0.0):
    """A place at a chainage, so many metres to the left of the line."""
    x, y = np.interp(chain, CHAIN, LINE[:, 0]), np.interp(chain, CHAIN, LINE[:, 1])
    bx, by = np.interp(chain + 60, CHAIN, LINE[:, 0]), np.interp(chain + 60, CHAIN, LINE[:, 1])
    ax, ay = np.interp(chain - 60, CHAIN, LINE[:, 0]), np.interp(chain - 60, CHAIN, LINE[:, 1])
    n = math.hypot(bx - ax, by - ay)
    return x - aside * (by - ay) / n, y + aside * (bx - ax) / n


def bearing(chain):
    (ax, ay), (bx, by) = at(chain - 150), at(chain + 150)
    return math.degrees(math.atan2(bx - ax, by - ay)) % 360


def patch(start, end, left, right, wobble=0.16):
    """A glacier round the line from one chainage to another, so wide on both sides."""
    n = 14
    ring = []
    for k in range(n):  # up the right side
        f = k / (n - 1)
        bulge = math.sin(math.pi * f) ** 0.35
        ring.append(at(start + f * (end - start), -max(12.0, right * bulge * (1 + wobble * math.sin(7 * f + start)))))
    for k in range(n):  # back on the left
        f = 1 - k / (n - 1)
        bulge = math.sin(math.pi * f) ** 0.35
        ring.append(at(start + f * (end - start), max(12.0, left * bulge * (1 + wobble * math.cos(9 * f + end)))))
    return ring


def coordinates(ring):
    pts = [[round(v, 7) for v in lonlat(x, y)] for x, y in ring]
    return pts + pts[:1]


def island(cx, cy, r):
    return [(cx + r * math.cos(-t), cy + r * math.sin(-t) * 0.7) for t in np.linspace(0, 2 * math.pi, 9)[:-1]]


def zone(ring, holes=(), **properties):
    geometry = {"type": "Polygon", "coordinates": [coordinates(ring)] + [coordinates(h) for h in holes]}
    return {"type": "Feature", "properties": properties, "geometry": geometry}


def strike(chain, angle):
    return round((bearing(chain) + angle) % 180)


def zones():
    seen = {"observed_on": "2027-08-14", "source": "invented"}
    return [
        zone(patch(1700, 2700, 260, 420), name="Halbre tongue", gap_m=1.5, surface="bare",
             note="every gap in sight", **seen),
        zone(patch(3150, 5150, 620, 480), holes=[island(*at(4100, 300), 110)], name="Halbre plateau",
             gap_m=4, snow_depth_m=1.6, strike_deg=strike(4100, 55), strike_uncertainty_deg=10, **seen),
        zone(patch(5650, 6450, 380, 340), name="Tornfall icefall", gap_min_m=14, gap_max_m=20, snow_depth_m=2.2,
             strike_deg=strike(6000, 88), strike_uncertainty_deg=0, **seen),
        zone(patch(7700, 8700, 420, 520), name="Lysfonn east", gap_m="3,5 m", snow_depth_m=0.4, **seen),
        zone(patch(8800, 9750, 460, 380), name="Lysfonn west", gap_m=5, snow_depth_m=0.7, **seen),
        zone(patch(11300, 12700, 520, 560), name="Skarvbre", gap_m=3, snow_depth_m=1.2,
             strike_deg=strike(12000, 18), strike_uncertainty_deg=5, **seen),
        zone([at(13600 + d, a) for d, a in ((0, -15), (250, -14), (500, -17), (480, -190), (240, -240), (20, -170))],
             name="Nordflank", gap_m=6, snow_depth_m=0.9, note="the line only passes close by", **seen),
        zone([(2600, -400), (3900, -700), (4400, 100), (3300, 300)], name="Sunnbre", gap_m=5, **seen),
        {"type": "Feature", "properties": {"name": "Vordal hut"},
         "geometry": {"type": "Point", "coordinates": [round(v, 7) for v in lonlat(*VIA[0])]}},
    ]


def main():
    rows = ["<?xml version=\"1.0\" encoding=\"UTF-8\"?>",
            "<gpx version=\"1.1\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\">",
            "  <metadata><name>Vordalen traverse (invented)</name></metadata>",
            "  <trk>", "    <name>Over the four glaciers</name>", "    <trkseg>"]
    for x, y in LINE:
        lon, lat = lonlat(x, y)
        rows.append("      <trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>%.1f</ele></trkpt>" % (lat, lon, height(x, y)))
    rows += ["    </trkseg>", "  </trk>", "</gpx>", ""]
    (HERE / "route.gpx").write_text("\n".join(rows))

    features = ",\n".join("  " + json.dumps(f, ensure_ascii=False) for f in zones())
    (HERE / "zones.geojson").write_text('{"type": "FeatureCollection", "features": [\n%s\n]}\n' % features)

    cell = 40.0 / EAST, 40.0 / NORTH
    west, north = lonlat(-1000, 10000)
    cols, lines = 420, 300
    xs = (west + (np.arange(cols) + 0.5) * cell[0] - LON0) * EAST
    ys = (north - (np.arange(lines) + 0.5) * cell[1] - LAT0) * NORTH
    ground = np.round(height(*np.meshgrid(xs, ys))).astype("int16")
    with rasterio.open(HERE / "terrain.tif", "w", driver="GTiff", width=cols, height=lines, count=1, dtype="int16",
                       crs="EPSG:4326", transform=from_origin(west, north, *cell), nodata=-32768,
                       compress="deflate", predictor=2, tiled=True, blockxsize=128, blockysize=128) as tif:
        tif.write(ground, 1)
        tif.set_band_description(1, "height")


main()
