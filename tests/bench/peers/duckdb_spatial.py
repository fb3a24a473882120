"""DuckDB with its spatial extension: whole lines against zones in SQL, with lengths on the spheroid."""

import os
import pathlib

import told

CURE = "python3 -m venv peers && peers/bin/pip install duckdb==1.5.5 duckdb-extension-spatial==1.5.5"
try:
    import duckdb
except ImportError as error:
    told.need(error.name, CURE)

PIECES = """
    CREATE OR REPLACE TABLE near AS
        SELECT name, zone.geom FROM zone, line WHERE ST_Intersects(zone.geom, line.geom);
    CREATE OR REPLACE TABLE piece AS
        WITH whole AS (
            SELECT near.name AS zone, ST_Intersection(line.geom, near.geom) AS geom FROM line, near
            UNION ALL
            SELECT NULL, coalesce(ST_Difference(line.geom, (SELECT ST_Union_Agg(geom) FROM near)), line.geom) FROM line
        ), single AS (SELECT zone, UNNEST(ST_Dump(geom)).geom AS geom FROM whole)
        SELECT zone, ST_Length_Spheroid(ST_FlipCoordinates(geom)) AS length_m, geom
        FROM single WHERE ST_GeometryType(geom) = 'LINESTRING';
"""


def connected():
    """A connection with the extension: from its wheel, else the one that DuckDB has installed."""
    base = duckdb.connect(config={"allow_unsigned_extensions": "true", "threads": os.cpu_count()})
    try:
        import duckdb_extension_spatial as wheel

        folder = pathlib.Path(wheel.__file__).parent / "extensions" / f"v{duckdb.__version__}"
        base.load_extension(str(folder / "spatial.duckdb_extension"))
    except (ImportError, duckdb.Error):
        try:
            base.load_extension("spatial")
        except duckdb.Error:
            told.need(f"the spatial extension of DuckDB {duckdb.__version__}", CURE)
    return base


def text(path):
    return "'" + str(path).replace("'", "''") + "'"


def main():
    tracks, zones, out = told.arguments()
    base = connected()
    base.execute(f"CREATE TABLE zone AS SELECT name, geom FROM ST_Read({text(zones)})")
    base.execute("CREATE INDEX by_box ON zone USING RTREE (geom)")
    metres = {}
    for track in tracks:
        base.execute(f"CREATE OR REPLACE TABLE line AS SELECT geom FROM ST_Read({text(track)}, layer = 'tracks')")
        base.execute(PIECES)
        found = base.execute("SELECT coalesce(sum(length_m), 0) FROM piece WHERE zone IS NOT NULL").fetchone()
        metres[track.stem] = found[0]
        written = out / f"{track.stem}.geojson"
        written.unlink(missing_ok=True)
        base.execute(f"COPY piece TO {text(written)} WITH (FORMAT gdal, DRIVER 'GeoJSON')")
    told.tell(metres)


if __name__ == "__main__":
    main()
