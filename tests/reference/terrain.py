"""Writes tests/reference/terrain/*.tif with GDAL and tests/reference/terrain.csv with what GDAL reads from them.

pip install rasterio==1.4.4 pyproj==3.7.2 tifffile (GDAL 3.9 inside). Run from the top folder of the project:
    python tests/reference/terrain.py
Every file is one coding, frame or unit of a small invented hill. Expected values: band 1 as GDAL reads it, void where
GDAL masks it, times scale plus offset, times the metres of the unit given here; position through PROJ; nearest = the cell that
contains the position, bilinear = between the four surrounding cell centres, void if one of them is.
"""

import math
import os
import shutil

import numpy as np
import rasterio
from affine import Affine
from pyproj import CRS, Transformer
from rasterio.transform import from_origin

OUT = "tests/reference/terrain"
COLUMNS, ROWS = 37, 29
FOOT, SURVEY = 0.3048, 1200 / 3937
rows_out: list[str] = []


def hill(dtype: str, void) -> np.ndarray:
    r, c = np.mgrid[0:ROWS, 0:COLUMNS]
    z = 2500 + 300 * np.sin(c / 6.0) * np.cos(r / 5.0) + 7.3 * c - 4.1 * r
    z = z.astype(dtype) if np.dtype(dtype).kind == "f" else np.round(z).astype(dtype)
    if void is not None:
        z[3:6, 20:24] = void
    return z


def sample(path: str, unit: float, south_up: bool) -> None:
    with rasterio.open(path) as src:
        masked = src.read(1, masked=True)
        z = np.ma.filled(masked.astype("f8"), np.nan) * src.scales[0] + src.offsets[0]
        z *= unit
        inverse, crs = ~src.transform, src.crs
        back = Transformer.from_crs(crs, 4326, always_xy=True)
        to = Transformer.from_crs(4326, crs, always_xy=True)
        rng = np.random.default_rng(7)
        name = os.path.basename(path)
        for i in range(14):
            c, r = rng.uniform(-1, src.width + 1), rng.uniform(-1, src.height + 1)
            if i == 0:
                c, r = 21.3, 4.6
            if i == 1:
                c, r = 15.9, 15.9
            lon, lat = back.transform(*(src.transform * (c, r)))
            lon = (round(lon, 9) + 180) % 360 - 180
            lon, lat = round(lon, 9), round(lat, 9)
            x, y = to.transform(lon, lat)
            if CRS(crs).is_geographic and src.transform.c > 180:
                x += 360
            c, r = inverse * (x, y)
            rows_out.append(f"{name},{lon},{lat},{text(nearest(z, c, r))},{text(bilinear(z, c, r))}")


def nearest(z, c, r):
    c, r = math.floor(c), math.floor(r)
    return z[r, c] if 0 <= c < z.shape[1] and 0 <= r < z.shape[0] else math.nan


def bilinear(z, c, r):
    c, r = c - 0.5, r - 0.5
    c0, r0 = math.floor(c), math.floor(r)
    if c0 < 0 or r0 < 0 or c0 + 1 >= z.shape[1] or r0 + 1 >= z.shape[0]:
        return math.nan
    f, g = c - c0, r - r0
    return (1 - g) * ((1 - f) * z[r0, c0] + f * z[r0, c0 + 1]) + g * ((1 - f) * z[r0 + 1, c0] + f * z[r0 + 1, c0 + 1])


def text(v: float) -> str:
    return "" if math.isnan(v) else f"{v:.6f}"


UTM = from_origin(399000, 5095000, 30, 30)


def write(name, dtype="float32", crs="EPSG:32632", transform=UTM, nodata=-9999, bands=1, unit=1.0, refused=None, scale=None, offset=None, units=None, tags=None, description=None, mask=False, env=None, **options):
    path = f"{OUT}/{name}.tif"
    void = nodata if nodata is not None else None
    z = hill(dtype, void)
    if units == "ft" or unit != 1.0:
        pass
    with rasterio.Env(**(env or {})):
        with rasterio.open(path, "w", driver="GTiff", width=COLUMNS, height=ROWS, count=bands, dtype=dtype, crs=crs, transform=transform, nodata=nodata, **options) as dst:
            for b in range(bands):
                dst.write(z, b + 1)
            if scale is not None:
                dst.scales = [scale] * bands
                dst.offsets = [offset] * bands
            if units:
                dst.units = [units] * bands
            if tags:
                dst.update_tags(**tags)
            if description:
                dst.set_band_description(1, description)
            if mask:
                dst.write_mask(z > 2400)
    if refused:
        rows_out.append(f"{name}.tif,refused,{refused}")
        return
    sample(path, unit, False)


def main() -> None:
    shutil.rmtree(OUT, ignore_errors=True)
    os.makedirs(OUT)
    tiles = dict(tiled=True, blockxsize=16, blockysize=16)
    for dtype, void in (("int16", -32768), ("uint16", 65535), ("int32", -9999), ("uint32", 0), ("float32", -9999.0), ("float64", -9999.0)):
        for predictor in (1, 2, 3):
            if predictor == 3 and dtype[0] != "f":
                continue
            write(f"tiles_{dtype}_p{predictor}", dtype, nodata=void, compress="deflate", predictor=predictor, **tiles)
        write(f"big_endian_lzw_p2_{dtype}", dtype, nodata=void, compress="lzw", predictor=2, ENDIANNESS="BIG", blockysize=8)
    write("big_endian_p3", compress="deflate", predictor=3, ENDIANNESS="BIG", **tiles)
    write("big_endian_p3_double", "float64", compress="lzw", predictor=3, ENDIANNESS="BIG", blockysize=5)
    write("int64", "int64", nodata=-9999, compress="deflate")
    write("packbits", "int16", compress="packbits", blockysize=4)
    write("bare_one_strip", blockysize=ROWS)
    write("bigtiff_tiles", compress="lzw", BIGTIFF="YES", **tiles)
    write("planar_heights_first", bands=2, interleave="band", compress="deflate", description="Elevation")
    write("pixel_heights_first", bands=3, interleave="pixel", photometric="MINISBLACK", compress="deflate", description="surface height", **tiles)
    write("nodata_half_float", nodata=-3.4028234663852886e38, compress="deflate")
    write("nodata_inexact", nodata=0.1, compress="deflate")
    write("south_up", transform=Affine(30, 0, 399000, 0, 30, 5090000))
    write("rotated", transform=Affine(25, 8, 399000, 6, -28, 5095000))
    write("point", tags={"AREA_OR_POINT": "Point"})
    write("degrees", crs="EPSG:4326", transform=from_origin(7.5, 46.2, 0.0004, 0.0003))
    write("degrees_point", crs="EPSG:4326", transform=from_origin(7.5, 46.2, 0.0004, 0.0003), tags={"AREA_OR_POINT": "Point"})
    write("degrees_0_360", crs="EPSG:4326", transform=from_origin(286.7, -46.5, 0.0004, 0.0003))
    write("nad83_degrees", crs="EPSG:4269", transform=from_origin(-121.0, 48.8, 0.0001, 0.0001))
    write("etrs89_utm", crs="EPSG:25833")
    write("nad83_utm", crs="EPSG:26910", transform=from_origin(600000, 5400000, 10, 10))
    write("south", crs="EPSG:32718", transform=from_origin(627175, 4852085, 30, 30))
    for code, x, y in ((3031, -4753358, 1439756), (3413, -200000, -2000000), (3995, 600000, -900000), (2056, 2640000, 1150000), (21781, 640000, 150000), (31254, 40000, 5200000), (31287, 300000, 340000), (2193, 1370000, 5170000), (3006, 600000, 7530000), (3857, 850000, 5780000), (3035, 4200000, 2600000), (2154, 1000000, 6540000), (5105, 100000, 1200000), (3338, 300000, 1500000), (8088, 2700000, 300000)):
        write(f"epsg_{code}", crs=f"EPSG:{code}", transform=from_origin(x, y, 25, 25), compress="deflate")
    own = "+proj={} +x_0=2000 +y_0=1000 +datum=WGS84 +units=m +type=crs"
    write("own_tmerc", crs=own.format("tmerc +lat_0=46 +lon_0=8 +k=0.9999"), transform=from_origin(2100, 5000, 20, 20))
    write("own_lcc", crs=own.format("lcc +lat_0=46 +lon_0=8 +lat_1=45 +lat_2=47"), transform=from_origin(2100, 5000, 20, 20))
    write("own_lcc1", crs=own.format("lcc +lat_0=46 +lat_1=46 +lon_0=8 +k_0=0.9998"), transform=from_origin(2100, 5000, 20, 20))
    write("own_laea", crs=own.format("laea +lat_0=46 +lon_0=8"), transform=from_origin(2100, 5000, 20, 20))
    write("own_aea", crs=own.format("aea +lat_0=46 +lon_0=8 +lat_1=45 +lat_2=47"), transform=from_origin(2100, 5000, 20, 20))
    write("own_polar_b", crs=own.format("stere +lat_0=-90 +lat_ts=-75 +lon_0=30"), transform=from_origin(802100, 705000, 20, 20))
    write("own_polar_a", crs=own.format("stere +lat_0=90 +k=0.994 +lon_0=30"), transform=from_origin(802100, 705000, 20, 20))
    write("own_tmerc_feet", crs="+proj=tmerc +lat_0=46 +lon_0=8 +k=0.9999 +x_0=2000 +y_0=1000 +datum=WGS84 +units=us-ft +type=crs", transform=from_origin(7100, 5000, 60, 60))
    write("height_egm2008", crs="EPSG:4326+3855", transform=from_origin(7.5, 46.2, 0.0004, 0.0003))
    write("height_navd88_ftus", crs="EPSG:26910+6360", transform=from_origin(600000, 5400000, 10, 10), unit=SURVEY)
    write("height_unit_ft", "int16", units="ft", unit=FOOT)
    write("height_unit_m", units="metre")
    write("scaled", "int16", scale=0.25, offset=1000.0, compress="deflate")
    write("sparse", nodata=-9999, SPARSE_OK="TRUE", compress="deflate", **tiles)
    write("no_nodata_tag", "int16", nodata=None)
    write("overviews_cog", "int16", compress="deflate", predictor=2, COPY_SRC_OVERVIEWS="YES", **tiles)
    write("refused_unit_fathom", units="fathom", refused="fathom")
    write("refused_depth", crs="EPSG:26910+6357", transform=from_origin(600000, 5400000, 10, 10), refused="depths")
    write("refused_mask", nodata=None, mask=True, env={"GDAL_TIFF_INTERNAL_MASK": "YES"}, refused="mask")
    write("refused_epsg_27700", crs="EPSG:27700", transform=from_origin(300000, 700000, 10, 10), refused="EPSG:27700")
    write("refused_byte", "uint8", nodata=0, refused="8 bits")
    write("refused_two_bands", bands=2, refused="2 bands")
    write("refused_rgb", "uint8", nodata=None, bands=3, photometric="RGB", refused="colour picture")
    write("refused_jpeg", "uint8", nodata=None, bands=1, compress="jpeg", refused="JPEG")
    write("refused_zstd", compress="zstd", refused="Zstandard")
    write("refused_lerc", compress="lerc", refused="LERC")
    write("refused_lzma", compress="lzma", refused="LZMA")
    write("refused_half", nodata=None, NBITS=16, refused="16 bits")
    write("refused_12_bits", "uint16", nodata=None, NBITS=12, refused="12 bits")
    write("refused_no_crs", crs=None, refused="coordinate system")
    head = [
        "# Heights as GDAL reads them from the files beside. From: rasterio 1.4.4. Made by: tests/reference/terrain.py.",
        "# Tolerance: 1 mm. An empty field is void. `refused`: the file must be refused, the sentence holding that word.",
        "file,lon_deg,lat_deg,nearest_m,bilinear_m",
    ]
    open("tests/reference/terrain.csv", "w").write("\n".join(head + rows_out) + "\n")


main()
