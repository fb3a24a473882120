### What is wrong with a terrain file, or odd about it. No capital at the start, no full stop at the end.

## Damaged

terrain-fetch-again = fetch or copy the file again; `gdalinfo -checksum` on it shows whether it is whole
terrain-unread = it cannot be read: { $words }
    .hint = { terrain-fetch-again }
terrain-empty = it is empty (0 bytes)
    .hint = { terrain-fetch-again }
terrain-hgt-length = a .hgt tile has 1201 or 3601 rows, 2884802 or 25934402 bytes; this file has { $bytes }
    .hint = { terrain-fetch-again }
terrain-no-wgs84 = the table of coordinate systems lacks EPSG:4326
    .hint = { terrain-fetch-again }
terrain-ends = it is cut off: it ends after { $bytes } bytes, before its tables do
    .hint = { terrain-fetch-again }
terrain-not-whole = it is not a whole TIFF ({ $words })
    .hint = { terrain-fetch-again }
terrain-metadata = its GDAL metadata do not parse ({ $words })
    .hint = { terrain-fetch-again }
terrain-scale = the scale of its heights is no number ("{ $found }")
    .hint = { terrain-fetch-again }
terrain-offset = the offset of its heights is no number ("{ $found }")
    .hint = { terrain-fetch-again }
terrain-no-part-size = its parts have no size
    .hint = { terrain-fetch-again }
terrain-few-parts = it lists { $listed } parts where { $needed } are needed
    .hint = { terrain-fetch-again }
terrain-cut-off = it is cut off: it has { $bytes } bytes but its parts reach to byte { $reach }
    .hint = { terrain-fetch-again }
terrain-no-table = the table of its parts cannot be read
    .hint = { terrain-fetch-again }
terrain-short-strip = a strip of { $bytes } bytes is too short for its { $rows } rows
    .hint = { terrain-fetch-again }
terrain-unpack = its heights cannot be unpacked at column { $column }, row { $row }: { $why ->
    [short] part { $part } is shorter than it should be
    [absent] part { $part } does not exist
    [reading] reading at byte { $part }: { $words }
   *[decoder] { $words }
 }
    .hint = { terrain-fetch-again }

## Whole, and not usable as heights

cure = { $cure ->
    [not-heights] take the elevation file itself; only if the numbers in here are metres all the same: { $command }
    [first-band] if the first band holds heights in metres, take it out: { $command }
    [assign-system] find out the EPSG number of its coordinate system (where it was fetched says so) and put it in place of NNNN: { $command }
    [scale-heights] say how many metres one unit is (here 0.3048 for a foot) and convert it: { $command }
    [unpack] unpack it (unzip or gunzip { $file }) and give the file inside
    [another] a terrain model is a GeoTIFF or a .hgt tile{ $interface ->
        [flags] , as in `--terrain heights.tif`; { $what ->
            [gpx] the route comes first, without a flag
            [json] zones come second, without a flag, an inventory is given with `--glaciers`
           *[xml] this is none
         }
       *[members] { "" }
     }
    [rename] give the file its original name: latitude and longitude of the south-west corner
   *[convert] convert it: { $command }
 }
terrain-is = it is { $format ->
    [zip] a ZIP archive
    [gzip] a gzip archive
    [sqlite] a GeoPackage or other SQLite database
    [hdf] an HDF5 or NetCDF file
    [netcdf] a NetCDF file
    [imagine] an Erdas Imagine file
    [jpeg2000] a JPEG 2000 picture
    [png] a PNG picture
   *[jpeg] a JPEG picture
 }, not a GeoTIFF or .hgt tile
    .hint = { cure }
terrain-ascii-grid = it is an ASCII grid, which does not say its coordinate system
    .hint = { cure }
terrain-no-raster = this is { $what ->
    [gpx] GPX, a line
    [json] JSON, as zones are
   *[xml] XML
 }, not a terrain model
    .hint = { cure }
terrain-neither = it is neither a GeoTIFF nor a .hgt tile
    .hint = { cure }
terrain-hgt-name = its name does not say where it lies (such as N46E007.hgt or S47W074.hgt)
    .hint = { cure }
terrain-tiff = it is a TIFF of a kind that is not read ({ $words })
    .hint = { cure }
terrain-big-tables = its inner tables are too big
    .hint = { cure }
terrain-coding = { $coding ->
    [jpeg] its heights are coded as a JPEG photograph, which changes them
    [lerc] its heights are coded as LERC, which is not read
    [zstandard] its heights are coded as Zstandard, which is not read
    [webp] its heights are coded as WebP, which is not read
    [lzma] its heights are coded as LZMA, which is not read
   *[other] its heights are coded in a way that is not read (TIFF compression { $number })
 }
    .hint = { cure }
terrain-picture = { $picture ->
    [palette] it is a picture with a palette, not heights
    [inverted] it is a picture with inverted grey, not heights
    [colour] it is a colour picture, not heights
   *[bits] its cells have { $bits } bits: a picture or a mask, not heights
 }
    .hint = { cure }
terrain-bands = it has { $bands } bands and does not say which one is the height
    .hint = { cure }
terrain-numbers = its numbers are of a kind that is not read ({ $bits } bits, TIFF sample format { $format })
    .hint = { cure }
terrain-mask = its void cells are kept in a mask of their own, which is not read
    .hint = { cure }
terrain-big-parts = it is packed in parts of { $mb } MB, each of which would have to be unpacked whole
    .hint = { cure }

## How and where it lies

terrain-no-system = it does not say in which coordinate system it is drawn
    .hint = { cure }
terrain-not-greenwich = its longitudes do not count from Greenwich
    .hint = { cure }
terrain-geocentric = its coordinates are geocentric
    .hint = { cure }
terrain-cell-unit = it is drawn in EPSG:{ $epsg } but its cells are not measured in metres (unit EPSG:{ $unit })
    .hint = { cure }
terrain-angle-unit = its angles are not degrees (unit EPSG:{ $unit })
    .hint = { cure }
terrain-unlisted = its coordinate system EPSG:{ $epsg } is not one this program knows
    .hint = { cure }
terrain-no-datum = it does not say on which datum it is drawn
    .hint = { cure }
terrain-method = its projection (GeoTIFF method { $method }) is not one this program knows
    .hint = { cure }
terrain-polar-twice = its polar projection gives both a true latitude and a scale
    .hint = { cure }
terrain-unknown-unit = its cells are measured in an unknown unit (EPSG:{ $unit })
    .hint = { cure }
terrain-lacks = its projection lacks a figure (GeoKey { $key })
    .hint = { cure }
terrain-not-projectable = its coordinate system { $name } cannot be projected to
    .hint = { cure }
terrain-no-cell-size = its cells have no size
    .hint = { cure }
terrain-control-points = it is tied to the map by control points only, which leaves open how cells between them lie
    .hint = { cure }
terrain-no-place = it does not say where on the map it lies
    .hint = { cure }
terrain-stretched = its tie point shifts or stretches the heights (cell height { $tall }, from { $from } to { $to }), which programs read differently
    .hint = { cure }
terrain-contradicting = its tie points contradict each other
    .hint = { cure }

## What its heights are

terrain-unit-code = its heights are in a unit this program does not know (EPSG:{ $epsg })
    .hint = { cure }
terrain-unit-name = its heights are in a unit this program does not know ("{ $found }")
    .hint = { cure }
terrain-two-units = its heights are said to be in two units at once ({ $one } and { $other })
    .hint = { cure }
terrain-two-units-by = its heights are said to be in two units at once ({ $one } and, by EPSG:{ $epsg }, { $other })
    .hint = { cure }
terrain-depths = it holds depths, not heights ({ $name })
    .hint = { cure }

## Worth knowing

terrain-shifted = drawn in { $system }, shifted to WGS 84 by { $shift }
terrain-nothing-here = it has no height at any of the { $places } places asked that lie on it
terrain-unbelievable = { $cells } cell readings gave numbers that cannot be heights and were taken as void
terrain-egm96 = heights are EGM96 heights in whole metres, as all .hgt tiles are said to be
terrain-heights = heights are { $name } (EPSG:{ $epsg })
terrain-ellipsoid = heights are above the ellipsoid, not above the sea: up to { $most } off the map's, the slopes are right
terrain-taken = heights are in the system EPSG:{ $epsg }, taken as metres upwards
terrain-unsaid = it does not say whether its heights are above the sea or above the ellipsoid: up to { $most } may lie between them, the slopes are the same
terrain-turned = its heights are turned into metres, one unit being { $unit }
terrain-no-void = it declares no value for void cells: heights outside { $from } to { $to } are taken as void
