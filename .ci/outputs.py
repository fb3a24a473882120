"""Reads what the program wrote with other people's libraries: the plan against its printed schema, the map
against RFC 7946, the zones of the example against theirs."""
import csv
import json
import pathlib
import subprocess
import sys
import tomllib

import jsonschema
import shapely
from shapely.geometry import shape

schrund, out = sys.argv[1], pathlib.Path(sys.argv[2])
example = pathlib.Path(__file__).parent.parent / "examples" / "vordalen"
checked = 0


def check(what, holds):
    global checked
    checked += 1
    if not holds:
        sys.exit(f"FAILED: {what}")


def schema(of):
    return json.loads(subprocess.check_output([schrund, "schema", of]))


plan = json.loads((out / "plan.json").read_text())
jsonschema.validate(plan, schema("plan"))
jsonschema.validate(json.loads((example / "zones.geojson").read_text()), schema("zones"))
jsonschema.validate(tomllib.loads((example / "trip.toml").read_text()), schema("trip"))
for name in ["arm-span", "short-alpine", "constant", "club-coils"]:
    printed = subprocess.check_output([schrund, "practice", name, "--toml"], text=True)
    for text in [printed, (example.parent.parent / "data/practice" / f"{name}.toml").read_text()]:
        jsonschema.validate(tomllib.loads(text), schema("practice"))
check("four schemas hold", True)

text = (out / "map.geojson").read_text()
collection = json.loads(text, parse_constant=lambda c: sys.exit(f"FAILED: {c} in the map"))
check("one FeatureCollection", collection["type"] == "FeatureCollection")
check("no crs member [RFC 7946, 4]", "crs" not in collection)
check("a bbox of four numbers, west to east [5]", len(collection["bbox"]) == 4 and collection["bbox"][0] <= collection["bbox"][2])


def positions(coordinates):
    if isinstance(coordinates[0], (int, float)):
        yield coordinates
    else:
        for inner in coordinates:
            yield from positions(inner)


roles = []
west, south, east, north = collection["bbox"]
for feature in collection["features"]:
    properties, geometry = feature["properties"], feature["geometry"]
    roles.append(properties["role"])
    check("properties are flat and never null", all(isinstance(v, (str, int, float, bool)) for v in properties.values()))
    check("name, title and description", all(properties.get(k) for k in ("name", "title", "description")))
    for p in positions(geometry["coordinates"]):
        check("positions inside the bbox, two numbers, 7 decimals",
              len(p) == 2 and west <= p[0] <= east and south <= p[1] <= north and all(round(v, 7) == v for v in p))
    if geometry["type"] == "Polygon":
        outer, *holes = geometry["coordinates"]
        check("rings closed, four positions", all(r[0] == r[-1] and len(r) >= 4 for r in (outer, *holes)))
        check("outer rings counter-clockwise [3.1.6]", shapely.LinearRing(outer).is_ccw)
        check("holes clockwise [3.1.6]", not any(shapely.LinearRing(h).is_ccw for h in holes))
    check("another library reads it", shape(geometry).is_valid)
check("zones, legs, changes, halts, places to look at, in that order", roles == sorted(roles, key=("zone", "leg", "change", "halt", "look").index))
check("every leg is there", roles.count("leg") == len(plan["legs"]))

rows = list(csv.DictReader((out / "legs.csv").open(newline="")))
check("CSV rows agree with the plan", [r["leg"] for r in rows if r["team"] in ("", "1")] == [str(l["leg"]) for l in plan["legs"]])
print(f"{checked} checks held: schemas, RFC 7946, CSV")
