"""Writes data/crs.toml (projection strings) and tests/reference/crs.csv (check values) with pyproj.

pip install pyproj==3.7.2 (PROJ 9.5, EPSG dataset inside). Run from the top folder of the project:
    python tests/reference/crs.py
Strings come from the EPSG dataset through PROJ; where the datum is not one of the WGS 84 family the
Helmert parameters of the EPSG operation named in DATUM are added. Check values go the other way: PROJ's own
choice of operation between EPSG:4326 and the code, no grids installed: the column stray_m says how far the
string lies from that. A code that strays by more than STRAY_M is left out.
"""

import math

from pyproj import CRS, Transformer
from pyproj.database import query_crs_info

# family, first code, first zone, zones, south
UTM = [
    ("WGS 84", 32601, 1, 60, False),
    ("WGS 84", 32701, 1, 60, True),
    ("ETRS89", 25828, 28, 11, False),
    ("NAD83", 26901, 1, 23, False),
    ("NAD83(2011)", 6330, 1, 19, False),
    ("SIRGAS 2000", 31965, 11, 12, False),
    ("SIRGAS 2000", 31977, 17, 9, True),
    ("GDA94", 28348, 48, 11, True),
    ("GDA2020", 7846, 46, 14, True),
    ("RDN2008", 6707, 32, 3, False),
    ("RDN2008", 7791, 32, 3, False),
    ("JGD2011", 6688, 51, 5, False),
    ("JGD2000", 3097, 51, 5, False),
    ("ITRF/GR96", 3178, 18, 12, False),
    ("NAD83(CSRS)", 2955, 11, 3, False),
    ("NAD83(CSRS)", 3154, 7, 4, False),
    ("NAD83(CSRS)", 3158, 14, 3, False),
]
SINGLE = [
    2056, 21781, 31254, 31255, 31256, 31257, 31258, 31259, 31287, 2154, 3857, 3035, 3034,
    3031, 3413, 3995, 3996, 3976, 32661, 32761, 5041, 5042, 2193, 3006, 3067, 5325, 3057, 8088,
    3794, 3003, 3004, 3979, 3978, 3005, 3400, 3401, 3402, 3403, 3577, 3338, 5070, 6393, 6350,
    5361, 5362, 5343, 5344, 5105, 5106, 5107, 5108, 5109, 5110, 5111, 5112, 5113, 5114,
    5115, 5116, 5117, 5118, 5119, 5120, 5121, 5122, 5123, 5124, 5125, 5126, 5127, 5128, 5129, 5130,
    3042, 3043, 3044, 3045, 3046, 31466, 31467, 31468, 31469, 3812,
]
GEOGRAPHIC = [
    4326, 4979, 4258, 4937, 4269, 6318, 6319, 4617, 4955, 4759, 4674, 4167, 4283, 7844, 4612, 6668, 4490, 6706,
    4659, 5324, 8086, 4747, 4765, 4190, 5340, 5360, 4189, 4957, 4151, 4150, 4149, 4312, 4314,
]
# Helmert parameters (x, y, z in m; rotations in arc seconds, position vector; scale in ppm) and EPSG operation.
DATUM = {
    "CH1903": ("674.374,15.056,405.346", "EPSG operation 1766"),
    "CH1903+": ("674.374,15.056,405.346", "EPSG operation 1676"),
    "MGI": ("577.326,90.129,463.919,5.137,1.474,5.297,2.4232", "EPSG operation 1618, 1.5 m"),
    "DHDN": ("598.1,73.7,418.2,0.202,0.045,-2.455,6.7", "EPSG operation 1777, 3 m"),
    "Monte Mario": ("-104.1,-49.1,-9.9,0.971,-2.917,0.714,-11.68", "EPSG operation 1660, 4 m"),
}
STRAY_M = 2.0  # our judgement: what the WGS 84 family differs by, and less than a receiver's error
WGS84 = "+proj=longlat +datum=WGS84 +no_defs +type=crs"
NAMED_HEIGHTS = [5773, 3855, 5703, 5728, 5729, 5778, 5941, 5621, 5720, 5783, 7837, 5709, 7839, 6647, 5613, 5776, 8089]
FEET = {"foot": 0.3048, "US survey foot": 1200 / 3937, "British foot (1936)": 0.3048007491}


def string(crs: CRS) -> tuple[str, str]:
    text = crs.to_proj4()
    words = [w for w in text.split() if w not in ("+no_defs", "+type=crs", "+wktext") and not w.startswith("+nadgrids")]
    words = [w for w in words if not w.startswith("+towgs84")]
    base = (crs.geodetic_crs or crs).name
    if base in DATUM:
        shift, origin = DATUM[base]
        return " ".join(words + ["+towgs84=" + shift]), origin
    return " ".join(words), ""


def flat(crs: CRS) -> CRS:
    return crs.to_2d()


def points(crs: CRS):
    """The middle of the area of use, and half way from it towards its corners."""
    a = crs.area_of_use
    west, east = a.west, a.east if a.east > a.west else a.east + 360
    lat, lon = (a.south + a.north) / 2, (west + east) / 2
    for fx, fy in ((0, 0), (0.5, 0.5), (-0.5, -0.4)):
        x = lon + fx * (east - west) / 2
        yield ((x + 180) % 360 - 180, lat + fy * (a.north - a.south) / 2)


def rows(code: int, text: str):
    crs = flat(CRS.from_epsg(code))
    best = Transformer.from_crs(4326, crs, always_xy=True)
    ours = Transformer.from_crs(WGS84, text + " +no_defs +type=crs", always_xy=True)
    for lon, lat in points(crs):
        lon, lat = round(lon, 4), round(lat, 4)
        x, y = best.transform(lon, lat)
        u, v = ours.transform(lon, lat)
        assert math.isfinite(u) and math.isfinite(v), (code, lon, lat)
        metre = 111_320 if crs.is_geographic else 1
        stray = math.hypot(u - x, v - y) * metre
        if stray > STRAY_M:
            raise ValueError(f"{code} {crs.name}: string strays {stray:.2f} m at {lon},{lat}")
        places = 10 if crs.is_geographic else 5
        yield f"{code},{lon},{lat},{u:.{places}f},{v:.{places}f},{stray:.3f}"


def heights():
    """Height systems that are not plain metres upwards, and the names of the usual ones."""
    for info in query_crs_info(auth_name="EPSG", pj_types=["VERTICAL_CRS"]):
        axis = CRS.from_epsg(info.code).axis_info[0]
        plain = axis.unit_name == "metre" and axis.direction == "up"
        if plain and int(info.code) not in NAMED_HEIGHTS:
            continue
        unit = 1.0 if axis.unit_name == "metre" else FEET[axis.unit_name]
        down = "true" if axis.direction == "down" else "false"
        yield from ["[[vertical]]", f"epsg = {info.code}", f'name = "{info.name.strip()}"', f"unit_m = {unit!r}", f"down = {down}", ""]


def main() -> None:
    out = [
        "# Coordinate systems a terrain model may be drawn in, as strings for a projection library.",
        "# From: the EPSG dataset through PROJ. Made by: tests/reference/crs.py. Checked: tests/reference/crs.csv",
        "# Members of the WGS 84 family (ETRS89, NAD83, SIRGAS 2000 …) are taken as WGS 84: within 2 m, see stray_m there.",
        "",
    ]
    check = [
        "# Longitude and latitude (EPSG:4326) to coordinates of the code; degrees or metres.",
        "# From: pyproj 3.7.2 with the string of data/crs.toml. Made by: tests/reference/crs.py. Tolerance: 1 mm.",
        "# stray_m: how far that lies from PROJ's own choice of operation (no grids), which is the error of our strings.",
        "epsg,lon_deg,lat_deg,x,y,stray_m",
    ]
    for family, first, zone, count, south in UTM:
        for i in range(count):
            text = CRS.from_epsg(first + i).to_proj4()
            assert f"+zone={zone + i} " in text and (" +south" in text) == south, (first + i, text)
        out += ["[[utm]]", f'family = "{family}"', f"first_epsg = {first}", f"first_zone = {zone}", f"zones = {count}"]
        out += ["south = true", ""] if south else ["south = false", ""]
        check += list(rows(first + count // 2, string(CRS.from_epsg(first + count // 2))[0]))
    for code in SINGLE + GEOGRAPHIC:
        crs = flat(CRS.from_epsg(code))
        text, origin = string(crs)
        try:
            lines = list(rows(code, text))
        except (ValueError, AssertionError) as e:
            print("dropped:", e)
            continue
        check += lines
        out += ["[[crs]]", f"epsg = {code}", f'name = "{crs.name}"', f'proj = "{text}"']
        out += [f'shift = "{origin}"', ""] if origin else [""]
    out += list(heights())
    open("data/crs.toml", "w").write("\n".join(out).rstrip() + "\n")
    open("tests/reference/crs.csv", "w").write("\n".join(check) + "\n")


main()
