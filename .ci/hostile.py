"""Files nobody should write: what each reader takes, with one thing in it that is not as it should be. Each comes as what it is,
the name of the file, and its bytes; the same every time."""
import itertools
import json
import struct
from collections.abc import Iterator

HostileFile = tuple[str, str, bytes]

NUMBERS = ["NaN", "Infinity", "-Infinity", "1e308", "1e309", "-1e309", "1e-320", "0", "-0.0", "-1", "90.0000001", "180.0000001", "-181",
           "361", "4294967296", "9223372036854775808", "1" * 400, "0." + "9" * 400, "1e", "0x10", "1_000", "1,5", "٣", "", " ", "null", "true"]
TEXTS = ["", " ", "\n", "\x7f", "\u0085", "\u009b2J", "\u202egpj", "\u2066", "\u2028", "\ufeff", "\ufffe", "\U0010ffff", "é" * 3000, "a" * 100_000,
         "<script>alert(1)</script>", "</script>", "]]>", "&amp;&lt;", "=1+1", "'; DROP", "../../../etc/passwd", "%s%n", "${x}", "🧗" * 500, "\u0301" * 2000]


def point(lat="66.545", lon="2.01", ele="900") -> str:
    return f'<trkpt lat="{lat}" lon="{lon}"><ele>{ele}</ele></trkpt>'


def line(points: str, name="hostile") -> str:
    return f'<?xml version="1.0" encoding="UTF-8"?><gpx version="1.1" creator="x"><trk><name>{name}</name><trkseg>{points}</trkseg></trk></gpx>'


def gpx() -> Iterator[tuple[str, str | bytes]]:
    before, behind = point("66.53", "2.0"), point("66.56", "2.02")
    for field, number in itertools.product(("lat", "lon", "ele"), NUMBERS):
        yield f"{field}={number[:20]}", line(before + point(**{field: number}) + behind)
    for text in TEXTS:
        shown = text.replace("&", "&amp;").replace("<", "&lt;")
        yield f"name {text[:12]!r}", line(before + behind, shown)
        yield f"raw name {text[:12]!r}", line(before + behind, text)
    for count in (0, 1, 2, 1000, 60_000):
        yield f"{count} points at one place", line(point() * count)
        yield f"{count} points to and fro", line("".join(point(f"66.{50 + i % 9}", f"2.0{i % 7}") for i in range(count)))
    for depth in (10, 1000, 100_000):
        yield f"{depth} deep", line("<a>" * depth + "</a>" * depth)
    for places in ((("90", "0"), ("-90", "0")), (("0", "180"), ("0", "-180")), (("66.5", "2"), ("-66.5", "-178")), (("89.9999999", "2"), ("89.9999999", "-178"))):
        yield f"between {places}", line("".join(point(lat, lon) for lat, lon in places))
        yield f"to and fro between {places}", line("".join(point(lat, lon) for lat, lon in places) * 500)
    entities = "".join(f'<!ENTITY a{i} "&a{i - 1};&a{i - 1};">' for i in range(1, 40))
    yield "entities in entities", f'<!DOCTYPE gpx [<!ENTITY a0 "ha">{entities}]>' + line(before + behind, "&a39;")
    yield "entity from a file", '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/passwd">]>' + line(before + behind, "&x;")
    whole = line(before + point() + behind)
    for cut in range(0, len(whole), max(1, len(whole) // 40)):
        yield f"cut at {cut}", whole[:cut]
    for encoding in ("utf-16", "utf-16-le", "utf-32", "cp1252", "utf-7"):
        yield f"in {encoding}", whole.encode(encoding)
        yield f"in {encoding}, told so", whole.replace("UTF-8", encoding).encode(encoding)
    for head in (b"\x1f\x8b\x08", b"PK\x03\x04", b"\x00" * 1000, b"\xff" * 1000, b"%PDF-1.7", b"SQLite format 3\x00", b"fgb\x03fgb\x00", b"II*\x00", b"{}", b"\xef\xbb\xbf" * 3):
        yield f"behind {head[:8]!r}", head + whole.encode()
    yield "a tag of 70 MB", line("<trkpt " + "a" * 70_000_000)
    yield "a hundred thousand tracks", whole.replace("<trk>", "<trk><trkseg></trkseg></trk><trk>" * 20_000)


def ring(*places) -> list:
    return [list(place) for place in places]


SQUARE = ring((1.98, 66.53), (2.06, 66.53), (2.06, 66.57), (1.98, 66.57), (1.98, 66.53))


def feature(rings, **properties) -> str:
    return json.dumps({"type": "Feature", "properties": {"gap_m": 4, **properties}, "geometry": {"type": "Polygon", "coordinates": rings}})


def zones() -> Iterator[tuple[str, str | bytes]]:
    sound = feature([SQUARE])
    for number in NUMBERS:
        yield f"position {number[:20]}", sound.replace("2.06", number or '""', 1)
        for name in ("gap_m", "snow_depth_m", "strike_deg", "strike_doubt_deg"):
            yield f"{name}={number[:20]}", sound.replace('"gap_m": 4', f'"gap_m": 4, "{name}": {number or 0}')
            yield f"{name}={number[:20]!r} as text", feature([SQUARE], **{name: number})
    for text, name in itertools.product(TEXTS, ("name", "snow", "surface", "observed_on")):
        yield f"{name} {text[:12]!r}", feature([SQUARE], **{name: text})
    for text in TEXTS:
        yield f"member {text[:12]!r}", feature([SQUARE], **{text: text})
    for value in ([], {}, [[]], [[[]]], [None], "x", 1, True, None, [SQUARE[:1]], [SQUARE[:2]], [SQUARE[:3]], [[[1]]], [[["a", "b"]]], [[SQUARE]], [SQUARE, SQUARE], [SQUARE[::-1]], [SQUARE * 3]):
        yield f"coordinates {json.dumps(value)[:24]}", feature(value)
        yield f"as many polygons {json.dumps(value)[:24]}", json.dumps({"type": "MultiPolygon", "coordinates": [value]})
    bow = ring((1.98, 66.53), (2.06, 66.57), (2.06, 66.53), (1.98, 66.57), (1.98, 66.53))
    spike = ring((1.98, 66.53), (2.06, 66.53), (2.06, 66.5300000001), (1.98, 66.53))
    world = ring((-180, -90), (180, -90), (180, 90), (-180, 90), (-180, -90))
    for what, rings in (("a bow", [bow]), ("a spike", [spike]), ("the world", [world]), ("a hole as large", [SQUARE, SQUARE]), ("a hole outside", [SQUARE, bow]), ("over the antimeridian", [ring((179, 66), (-179, 66), (-179, 67), (179, 67), (179, 66))])):
        yield what, feature([*rings])
    comb = [[1.98 + 0.08 * i / 20_000, 66.53 if i % 2 else 66.57] for i in range(20_000)]
    yield "a comb of 20 000 teeth", feature([comb + [comb[0]]])
    yield "two thousand holes", feature([SQUARE] + [ring((1.99 + i / 1e5, 66.54), (1.990005 + i / 1e5, 66.54), (1.99 + i / 1e5, 66.56), (1.99 + i / 1e5, 66.54)) for i in range(2000)])
    one = json.loads(sound)
    yield "twenty thousand zones on each other", json.dumps({"type": "FeatureCollection", "features": [one] * 20_000})
    for depth in (100, 129, 100_000):
        yield f"{depth} deep", "[" * depth + "]" * depth
        yield f"collections {depth} deep", '{"type":"GeometryCollection","geometries":[' * depth + "]}" * depth
        yield f"a property {depth} deep", sound.replace('"gap_m": 4', '"gap_m": 4, "x": ' + "[" * depth + "]" * depth)
    for cut in range(0, len(sound), max(1, len(sound) // 30)):
        yield f"cut at {cut}", sound[:cut]
    for count in (1000, 60_000):
        yield f"{count} properties that are nearly one", feature([SQUARE], **{f"gap_m{i}": 1 for i in range(count)})
    sixty = '{"type":"GeometryCollection","geometries":[' * 60 + '{"type":"Point","coordinates":[2,66.54]},' * 200_000 + sound + "]}" * 60
    yield "two hundred thousand parts sixty deep", sixty
    yield "every byte", bytes(range(256))
    yield "a text that does not end", '{"type": "Feature' + "e" * 30_000_000


def toml(members: dict[str, list[str]], sound: str) -> Iterator[tuple[str, str | bytes]]:
    for name, values in members.items():
        for value in [*values, *(number or "[]" for number in NUMBERS), *map(json.dumps, NUMBERS)]:
            yield f"{name} = {value[:20]}", f"{sound}\n{name} = {value}\n"
    for text in TEXTS:
        yield f"a text {text[:12]!r}", f"{sound}\nname = {json.dumps(text)}\n"
        yield f"a raw text {text[:12]!r}", f'{sound}\nname = "{text}"\n'
    for depth in (100, 10_000):
        yield f"{depth} deep", "x = " + "[" * depth + "]" * depth
        yield f"{depth} dots", ".".join("a" * depth) + " = 1"
    yield "a million lines", "# x\n" * 1_000_000
    for table in ("", "[assume]\n", "[rule]\n", "[[party]]\n", "[[rope]]\n"):
        unknown = "".join(f"unknown_{i} = 1\n" for i in range(45_000))
        yield f"45 000 unknown names behind {table.strip()!r}", f"{sound}\n{table}{unknown}"
        yield f"30 000 tables {table.strip()!r}", f"{sound}\n" + (table or "[x]\n") * 30_000
    yield "a thousand ropes", sound + "".join(f"\n[[rope]]\nlength_m = {20 + i % 60}\n" for i in range(1000))
    yield "twice the same", sound + "\n" + sound


def trips() -> Iterator[tuple[str, str | bytes]]:
    lists = ["[]", "[[]]", "[{}]", "{}", "[1e9, 1e9]", "[80, -80]", "1979-05-27", "07:32:00", "[" + "80," * 200 + "]"]
    names = ("party", "rope", "knots", "practice", "travel", "start", "date", "utc_offset", "bridges_until", "back_by", "snow", "gap_m", "teams", "stage", "halt", "assume", "terrain", "glaciers", "language", "emergency", "field")
    return toml(dict.fromkeys(names, lists), "")


def practices() -> Iterator[tuple[str, str | bytes]]:
    return toml({"figures": ["{}", "[]", "{ margin_m = 1e308 }", "{ margin_m = -1 }", "{ x = 1 }"], "words": ["{}", '{ cover = "x" }'], "says": ["[]"], "beside": ['["x"]', "1"]}, 'name = "x"')


def ifd(entries: list[tuple[int, int, int, int]], after=0) -> bytes:
    packed = b"".join(struct.pack("<HHII", *entry) for entry in entries)
    return b"II*\x00" + struct.pack("<I", 8) + struct.pack("<H", len(entries)) + packed + struct.pack("<I", after)


def rasters() -> Iterator[tuple[str, bytes]]:
    sound = [(256, 3, 1, 16), (257, 3, 1, 16), (258, 3, 1, 16), (259, 3, 1, 1), (262, 3, 1, 1), (273, 4, 1, 200), (277, 3, 1, 1), (278, 3, 1, 16), (279, 4, 1, 512), (339, 3, 1, 2)]
    body = b"\x00" * 2000
    for tag, value in itertools.product(range(len(sound)), (0, 1, 7, 0xffff, 0xffffffff, 0x7fffffff, 0x10000)):
        entries = list(sound)
        number, kind, count, _ = entries[tag]
        entries[tag] = (number, 4, count, value)
        yield f"tag {number} = {value}", ifd(entries) + body
        entries[tag] = (number, kind, value & 0xffffffff, 8)
        yield f"tag {number} counts {value}", ifd(entries) + body
    yield "a ring of directories", ifd(sound, 8) + body
    for cut in (0, 1, 4, 8, 9, 20, 60, 130, 134):
        yield f"cut at {cut}", (ifd(sound) + body)[:cut]
    yield "sixty thousand entries", b"II*\x00" + struct.pack("<IH", 8, 60_000) + b"\x00" * 100


def tiles() -> Iterator[tuple[str, bytes]]:
    for length in (0, 1, 2, 1201 * 1201 * 2 - 1, 1201 * 1201 * 2 + 1, 3601 * 2):
        yield f"{length} bytes", b"\x01" * length
    for height in (-32768, 32767, -1, 9000):
        yield f"{height} m everywhere", struct.pack(">h", height) * (1201 * 1201)


def outlines() -> Iterator[tuple[str, bytes]]:
    head = b"fgb\x03fgb\x00"
    for length in (0, 1, 4, 0x7fffffff, 0xffffffff):
        yield f"a header of {length}", head + struct.pack("<I", length) + b"\x00" * 64
        yield f"a header of {length}, 0xff", head + struct.pack("<I", length) + b"\xff" * 64
    for version in range(8):
        yield f"version {version}", b"fgb" + bytes([version]) + b"fgb\x00" + b"\x10\x00\x00\x00" + b"\x00" * 32


def files() -> Iterator[HostileFile]:
    """All of them."""
    kinds = (("hostile.gpx", gpx), ("hostile.geojson", zones), ("hostile.toml", trips), ("practice.toml", practices), ("hostile.tif", rasters), ("N66E002.hgt", tiles), ("hostile.fgb", outlines))
    for name, make in kinds:
        for what, text in make():
            yield f"{name}: {what}", name, text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
