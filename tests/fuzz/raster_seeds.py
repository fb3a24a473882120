"""Writes small terrain models of all the sorts that the reader knows, as seeds: python3 tests/fuzz/raster_seeds.py FOLDER.

They lie where the example of Vordalen does. Each is a line with the name of the file, and the file."""
import pathlib
import struct
import sys
import zlib

to = pathlib.Path(sys.argv[1])
SHORT, LONG, DOUBLE, ASCII, LONG8 = 3, 4, 12, 2, 16
LETTER = {SHORT: "H", LONG: "I", DOUBLE: "d", LONG8: "Q", ASCII: "c"}
SIDE = 32
DEGREES = [1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326]
UTM = [1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32631]


def heights(kind, order="<", side=SIDE):
    return b"".join(struct.pack(order + kind, 800 + 7 * r + 3 * c) for r in range(side) for c in range(side))


def lzw(data):
    """Every sign for itself, all 9 bits wide: never long enough for wider ones."""
    bits = []
    for i, byte in enumerate(data):
        bits += ([256] if i % 200 == 0 else []) + [byte]
    text = "".join(f"{code:09b}" for code in bits + [257])
    text += "0" * (-len(text) % 8)
    return bytes(int(text[i:i + 8], 2) for i in range(0, len(text), 8))


def packbits(data):
    return b"".join(bytes([len(run) - 1]) + run for run in (data[i:i + 128] for i in range(0, len(data), 128)))


def differences(data, order="<"):
    rows = [struct.unpack(f"{order}{SIDE}h", data[i:i + 2 * SIDE]) for i in range(0, len(data), 2 * SIDE)]
    return b"".join(struct.pack(f"{order}{SIDE}h", *[b - a for a, b in zip((0,) + row, row)]) for row in rows)


def model(parts, tags, order="<", big=False, size=(SIDE, SIDE), bits=16, sort=2, tiled=None, counts=None):
    """A TIFF of one directory; `parts` are its strips or tiles, told as often as `counts` says."""
    head = (b"II" if order == "<" else b"MM") + struct.pack(order + "H", 43 if big else 42)
    head += struct.pack(order + "HHQ", 8, 0, 16) if big else struct.pack(order + "I", 8)
    across = counts or len(parts)
    entries = {256: (SHORT, [size[0]]), 257: (SHORT, [size[1]]), 258: (SHORT, [bits]), 259: (SHORT, [1]), 262: (SHORT, [1]),
               277: (SHORT, [1]), 339: (SHORT, [sort]), 33550: (DOUBLE, [0.0081, 0.0022, 0.0]),
               33922: (DOUBLE, [0, 0, 0, 2.0, 66.56, 0]), 34735: (SHORT, DEGREES), 42113: (ASCII, b"-9999\0")}
    entries |= {322: (SHORT, [tiled]), 323: (SHORT, [tiled])} if tiled else {278: (SHORT, [size[1] // across])}
    offsets, lengths = (324, 325) if tiled else (273, 279)
    entries |= {offsets: (LONG, [0] * across), lengths: (LONG, [len(parts[i % len(parts)]) for i in range(across)])}
    entries = dict(sorted({**entries, **tags}.items()))
    entries = {tag: entry for tag, entry in entries.items() if entry}
    word, field = ("Q", 8) if big else ("I", 4)
    at = len(head) + (8 if big else 2) + len(entries) * (20 if big else 12) + field
    for _ in range(2):  # the first time to know how long it is
        long, tail = b"", b""
        table = struct.pack(order + ("Q" if big else "H"), len(entries))
        for tag, (kind, values) in entries.items():
            if kind == ASCII:
                data = values
            else:
                data = b"".join(struct.pack(order + LETTER[kind], v) for v in values)
            table += struct.pack(order + "HH" + word, tag, kind, len(values))
            if len(data) > field:
                table += struct.pack(order + word, at + len(long))
                long += data + b"\0" * (len(data) % 2)
            else:
                table += data.ljust(field, b"\0")
        table += struct.pack(order + word, 0)
        places = []
        for part in parts:
            places.append(at + len(long) + len(tail))
            tail += part
        entries[offsets] = (LONG, [places[i % len(parts)] if parts[i % len(parts)] else 0 for i in range(across)])
    return head + table + long + tail


def put(name, data, file="ground.tif"):
    (to / name).write_bytes(file.encode() + b"\n" + data)


short, floats, doubles = heights("h"), heights("f"), heights("d")
coded = lambda number, **more: {259: (SHORT, [number]), **{int(k[1:]): v for k, v in more.items()}}
tiles = [zlib.compress(b"".join(short[64 * (r + y) + 2 * x:64 * (r + y) + 2 * x + 32] for r in range(16)))
         for y in (0, 16) for x in (0, 16)]
real = dict(size=(3601, 3601), tiled=256, counts=225)
near = {33550: (DOUBLE, [1 / 3600, 1 / 3600, 0]), 33922: (DOUBLE, [0, 0, 0, 2 - 1 / 7200, 67 + 1 / 7200, 0])}
put("plain", model([short], {}))
put("big-end", model([heights("h", ">")], {}, order=">"))
put("bigtiff", model([short[:1024], short[1024:]], {}, big=True))
put("float", model([floats], {}, bits=32, sort=3))
put("double-packbits", model([packbits(doubles)], coded(32773), bits=64, sort=3))
put("unsigned", model([heights("I")], {}, bits=32, sort=1))
put("lzw", model([lzw(short[:1024]), lzw(short[1024:])], coded(5)))
put("deflate-differences", model([zlib.compress(differences(short))], coded(8, _317=(SHORT, [2]))))
put("tiles", model(tiles, coded(8), tiled=16))
put("tiles-absent", model([tiles[0], b""], coded(8), tiled=16, counts=4))
put("matrix", model([short], {33550: None, 33922: None, 34264: (
    DOUBLE, [0.008, 0.0001, 0, 2, 0.0001, -0.002, 0, 66.56, 0, 0, 0, 0, 0, 0, 0, 1])}))
put("points", model([short], {34735: (SHORT, DEGREES[:11] + [2] + DEGREES[12:])}))
put("grid", model([short], {34735: (SHORT, UTM), 33550: (DOUBLE, [400, 300, 0]),
                            33922: (DOUBLE, [0, 0, 0, 455000, 7383000, 0])}))
put("feet", model([short], {34735: (SHORT, [1, 1, 0, 4] + DEGREES[4:] + [4099, 0, 1, 9002])}))
put("metadata", model([short], {42112: (ASCII, b'<GDALMetadata><Item name="OFFSET" sample="0" role="offset">30</Item>'
                      b'<Item name="SCALE" sample="0" role="scale">0.1</Item></GDALMetadata>\0'),
                      33432: (ASCII, b"nobody, invented\0")}))
put("two-bands", model([short * 2], {277: (SHORT, [2]), 258: (SHORT, [16, 16]), 339: (SHORT, [2, 2]), 42112: (
    ASCII, b'<GDALMetadata><Item name="DESCRIPTION" sample="0" role="description">elevation</Item></GDALMetadata>\0')}))
put("real-size", model([zlib.compress(heights("h", side=256), 9)], coded(8) | near, **real))
put("real-size-void", model([b""], coded(8) | near, **real))
put("tile", struct.pack(">8h", 800, 805, 820, -32768, 815, 900, 1000, 700), "N66E002.hgt")
