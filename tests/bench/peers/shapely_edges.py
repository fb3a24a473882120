"""shapely, edge by edge: tracks cut where they enter and leave zones, in walking order, with geodesic lengths.

The ways of a careful script: everything in arrays, outlines prepared, only those near the track looked at, and a folder
of tracks shared among all cores.
"""

import json
import multiprocessing
import os

import told

CURE = "python3 -m venv peers && peers/bin/pip install numpy shapely pyproj pyogrio (and fastgpx, Python 3.12 or newer)"
try:
    import numpy as np
    import pyogrio
    import shapely
    from pyproj import Geod
except ImportError as error:
    told.need(error.name, CURE)
try:
    import fastgpx
except ImportError:
    fastgpx = None

WGS84 = Geod(ellps="WGS84")
LAID = {}  # what all cores share: where to write, and the zones


def read_lines(path):
    """The lines of a GPX file, an array of longitude and latitude each."""
    if fastgpx is not None:
        segments = [s for track in fastgpx.load(str(path)).tracks for s in track.segments]
        return [np.asarray(s.lonlat(), dtype=float).reshape(-1, 2) for s in segments]
    _, _, shapes, _ = pyogrio.raw.read(path, layer="tracks", columns=[])
    return [shapely.get_coordinates(part) for part in shapely.get_parts(shapely.from_wkb(shapes))]


def read_zones(path, box=None):
    meta, _, shapes, fields = pyogrio.raw.read(path, bbox=box, columns=["name"])
    return shapely.from_wkb(shapes), fields[list(meta["fields"]).index("name")]


def inside(points, zones, index):
    """Where the line is inside: from, to (edges and parts of edges from its start) and the number of the zone."""
    near = index.query(shapely.linestrings(points))
    edges = shapely.linestrings(np.stack([points[:-1], points[1:]], axis=1))
    by_edge = shapely.STRtree(edges)
    met, touched = by_edge.query(zones[near], predicate="intersects")
    whole, held = by_edge.query(zones[near], predicate="covers")
    cut = ~np.isin(met * len(edges) + touched, whole * len(edges) + held)
    met, touched = met[cut], touched[cut]
    pieces, of = shapely.get_parts(shapely.intersection(edges[touched], zones[near[met]]), return_index=True)
    lines = shapely.get_type_id(pieces) == shapely.GeometryType.LINESTRING
    pieces, edge, zone = pieces[lines], touched[of[lines]], near[met[of[lines]]]
    ends = shapely.get_coordinates(pieces).reshape(-1, 2, 2)
    along = points[edge + 1] - points[edge]
    offset = ends - points[edge][:, None, :]
    share = np.einsum("ijk,ik->ij", offset, along) / np.einsum("ik,ik->i", along, along)[:, None]
    parts = np.sort(share, axis=1).clip(0.0, 1.0) + edge[:, None]
    start = np.concatenate([held.astype(float), parts[:, 0]])
    end = np.concatenate([held + 1.0, parts[:, 1]])
    zone = np.concatenate([near[whole], zone])
    order = np.argsort(start, kind="stable")
    return start[order], end[order], zone[order]


def legs(points, zones, index):
    """The line in walking order: vertices, the length of each of its edges (m) and the zone of each edge, or -1."""
    start, end, zone = inside(points, zones, index)
    at = np.unique(np.concatenate([np.arange(len(points), dtype=float), start, end]))
    edge = np.minimum(at.astype(int), len(points) - 2)
    vertices = points[edge] + (at - edge)[:, None] * (points[edge + 1] - points[edge])
    middle = (at[:-1] + at[1:]) / 2
    of = np.full(len(middle), -1)
    if len(start):
        last = np.searchsorted(start, middle, side="right") - 1
        held = (last >= 0) & (end[last] > middle)
        of[held] = zone[last[held]]
    _, _, length = WGS84.inv(vertices[:-1, 0], vertices[:-1, 1], vertices[1:, 0], vertices[1:, 1])
    return vertices, np.asarray(length), of


def one(track):
    """One track, written as GeoJSON; the metres inside."""
    lines = [line for line in read_lines(track) if len(line) > 1]
    zones, names, index = LAID["ice"] or near(lines)
    features, metres = [], 0.0
    for points in lines:
        vertices, length, of = legs(points, zones, index)
        metres += float(length[of >= 0].sum())
        change = np.flatnonzero(np.diff(of)) + 1
        for first, last in zip([0, *change], [*change, len(of)]):
            zone = of[first]
            said = {"zone": None if zone < 0 else names[zone], "length_m": float(length[first:last].sum())}
            shape = {"type": "LineString", "coordinates": vertices[first : last + 1].round(7).tolist()}
            features.append({"type": "Feature", "properties": said, "geometry": shape})
    with open(LAID["out"] / f"{track.stem}.geojson", "w", encoding="utf-8") as file:
        json.dump({"type": "FeatureCollection", "features": features}, file)
    return track.stem, metres


def near(lines):
    """The zones by the file's own index: only those near the lines are read."""
    every = np.concatenate(lines)
    zones, names = read_zones(LAID["path"], (*every.min(axis=0), *every.max(axis=0)))
    return zones, names, shapely.STRtree(zones)


def main():
    tracks, path, out = told.arguments()
    LAID.update(out=out, path=path, ice=None)
    if path.suffix != ".fgb" or len(tracks) > 1:
        zones, names = read_zones(path)
        LAID["ice"] = (zones, names, shapely.STRtree(zones))
    if len(tracks) == 1:
        told.tell(dict([one(tracks[0])]))
        return
    with multiprocessing.get_context("fork").Pool(os.cpu_count()) as pool:
        told.tell(dict(pool.map(one, tracks, chunksize=8)))


if __name__ == "__main__":
    main()
