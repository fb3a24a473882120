### What is wrong with a zones file, or odd about it. No capital at the start, no full stop at the end.

zones-empty = the file is empty
    .hint = { $interface ->
        [page] draw the zones here, or open a file that holds some
       *[members] draw the zones as polygons in a map editor and save them as GeoJSON
     }
inventory-empty = the glacier inventory is empty
    .hint = fetch it again, or plan without it
zones-is = this is { instead-what }, not GeoJSON
    .hint = { $what ->
        [zip] unpack it (a KMZ is a zip too) and save what is inside as GeoJSON in the map editor
        [gzip] unpack it and name the file inside
        [database] { as-geojson }
        [shapefile] { as-geojson }
        [flatgeobuf] { as-geojson }
        [kml] { as-geojson }
        [gpx] the ice comes second, as GeoJSON polygons, each with its `gap_m`: { drawn-where }
        [xml] the ice comes as GeoJSON polygons, each with its `gap_m`: { drawn-where }
        [toml] the ice comes second, as GeoJSON polygons, each with its `gap_m`: { drawn-where }{ $interface ->
            [flags] ; a trip file has its flag: `--trip { $file }`
           *[members] { "" }
         }
        [tiff] { $interface ->
            [flags] a terrain model is given with `--terrain { $file }`; zones and inventories are GeoJSON
           *[members] a terrain model is given as such; zones have to be GeoJSON
        }
       *[other] draw the zones as polygons in a map editor and save them as GeoJSON
    }
as-geojson = save it as GeoJSON in the map editor, or convert it with GDAL, another program: `{ $command }`
drawn-where = { $interface ->
    [page] draw them here
    [flags] draw them in a map editor; `schrund new tour` writes an empty file to draw in
   *[members] draw them in a map editor
 }
zones-utf16 = this is UTF-16 text
    .hint = save the file as UTF-8
zones-cut-off = the file ends in the middle: the JSON is not complete
    .hint = save or download it again
zones-broken = broken JSON: { $words }
    .hint = mend the text here, or save it again from the map editor
zones-foreign-crs = the file says its coordinates are in "{ $name }"
    .hint = { to-wgs84 }
zones-unknown-crs = the file has a `crs` that names no known system: { thing }
    .hint = { to-wgs84 }
to-wgs84 = save it again from the map editor with WGS 84 (EPSG:4326) as its coordinate system, or convert it with GDAL, another program: `{ $command }`

## FlatGeobuf, as a file

flatgeobuf-part = { $part ->
    [header] its header
    [index] its index
    [geometry] the outline
    [properties] the properties
   *[feature] the feature
 }
zones-flatgeobuf-version = this is FlatGeobuf of version { $version }, and version 3 is read
    .hint = { as-geojson }
zones-flatgeobuf-cut-off = the file ends in the middle
    .hint = copy or download it again
zones-flatgeobuf-broken = the FlatGeobuf file is damaged: { flatgeobuf-part } cannot be as it stands there
    .hint = copy or download it again, or save it again from the map editor
zones-flatgeobuf-too-long = the FlatGeobuf file is damaged: { flatgeobuf-part } is said to be longer than { $most } MiB
    .hint = copy or download it again, or save it again from the map editor
zones-flatgeobuf-near-only = { $near } of { $held } outlines lie near the line; the others were not read
zones-flatgeobuf-curved = the outline is a { $kind }, and only polygons with straight edges are read
    .hint = convert the file with GDAL, another program: `{ $command }`

## The form of the objects

thing = { $thing ->
    [null] null
    [list] a list
    [object] an object
    [truth] true or false
    [number] a number
    [text] a text
   *[value] { $found }
 }
object-kind = { $of ->
    [file] file
    [feature] feature
   *[geometry] geometry
 }
write-one-of = { $count ->
    [1] write { $words }
   *[other] write one of { $words }
 }
zones-no-type = the { object-kind } has no `type`
    .hint = { write-one-of }
zones-type-no-word = the `type` of the { object-kind } is { thing }, not a word
    .hint = { write-one-of }
zones-type-misspelt = "{ $given }" is not spelt as GeoJSON has it
    .hint = write "{ $right }"
zones-type-unknown = "{ $given }" is no type of a { object-kind }
    .hint = { write-one-of }
zones-collection = a file of zones is { "{" }"type": "FeatureCollection", "features": [ … ]{ "}" }
zones-no-object = { thing } stands where a GeoJSON object should
    .hint = { zones-collection }
zones-no-feature = { thing } stands where a Feature should
    .hint = take it out of the list
zones-holds-features = a { $kind } holds `features`
    .hint = if it is a collection, its `type` is "FeatureCollection"
zones-features-no-list = `features` is { thing }, not a list
    .hint = { zones-collection }
zones-no-features = the FeatureCollection has no `features`
    .hint = { zones-collection }
zones-property-twice = the property stands there more than once: { $found }
    .hint = keep the one that is right
zones-member-twice = `{ $name }` stands there twice
    .hint = keep the one that is right
zones-properties-no-object = `properties` is { thing }, not an object
    .hint = `properties` is a list of names and values in braces
zones-geometry-no-object = the geometry is { thing }, not an object
    .hint = a geometry is { "{" }"type": "Polygon", "coordinates": [ … ]{ "}" }, or null where there is none
zones-no-coordinates = the { $kind } has no `coordinates`
    .hint = add them, or take the feature out
zones-no-geometries = the GeometryCollection has no list of `geometries`
    .hint = add it, or draw the zone as a Polygon or MultiPolygon

## Coordinates

way-step = { $level ->
    [polygon] polygon { $n }
    [ring] ring { $n }
    [line] line { $n }
    [point] point { $n }
   *[position] position { $n }
 }
way-whole = `coordinates`
zones-shallow = { $due ->
    [positions] { $way } holds { $found } where a list of positions should stand
   *[lists] { $way } holds { $found } where a list of lists should stand
 }
    .hint = this is not how the coordinates of a { $kind } look
zones-no-position = { $why ->
    [is] { $way } is { $found }, not a position
    [holds] { $way } holds { $found } where a number should stand
    [empty] { $way } is empty
   *[one] { $way } has one number only: { $found }
 }
    .hint = a position is [longitude, latitude], two plain numbers in degrees
zones-huge = a coordinate is too large to be a number
    .hint = longitudes and latitudes are degrees
zones-deep = the geometry is nested too deeply to be read
    .hint = draw the zone as a Polygon or MultiPolygon, without collections inside each other
zones-misplaced = { "[" }{ $numbers }] { $why ->
    [short] is no position: it takes two numbers
    [projected] cannot be degrees, for a number lies beyond ±360; it looks like metres of a map grid
    [longitude] has a longitude beyond ±180°
    [swapped] has a latitude beyond ±90°; the other way round it would be a position
   *[latitude] has a latitude beyond ±90°
 } ({ ring-position })
    .hint = { $why ->
        [projected] { $fitting ->
            [0] save it again from the map editor, with WGS 84 (EPSG:4326) as its coordinate system; if it still lies far from the route then, it is of another tour
            [one] in { $grids } they lie near the route; save it again from the map editor with WGS 84 (EPSG:4326) as its coordinate system, or convert it with GDAL, another program: `{ $command }`
           *[other] save it again from the map editor, with WGS 84 (EPSG:4326) as its coordinate system; several map grids bring it near the route, { $grids }
         }
        [longitude] longitudes run from -180 to 180: add or take away 360 where the map was scrolled on
        [swapped] GeoJSON has the longitude first: swap the two numbers
       *[other] a position is [longitude, latitude] in degrees
     }
ring-position = { $polygon ->
    [0] position { $position }, { ring-name }
   *[other] position { $position }, { ring-name } of polygon { $polygon }
 }
ring-name = { $ring ->
    [0] outer ring
   *[other] hole { $ring }
 }
zones-swapped-axes = no zone lies near the route, but with longitude and latitude swapped zones would meet it
    .hint = export it again with the longitude first, as GeoJSON has it, or swap the two numbers of each position

## Numbers and words of properties

quantity = { $quantity ->
    [gap-width] gap width
    [snow-depth] snow depth
    [strike] strike
   *[strike-uncertainty] strike uncertainty
 }
plain-number = { $unit ->
    [m] write one plain number in metres, { $min } to { $max }{ or-null }
   *[deg] write one plain number in degrees, { $min } to { $max }{ or-null }
 }
or-null = { $typed ->
    [yes] , or leave the flag away where it is not known
   *[no] , or { $interface ->
        [page] nothing
       *[members] null
     } where it is not known
 }
unit-sign = { $unit ->
    [m] m
   *[deg] °
 }
zones-not-plain = { quantity } { $found } is not a plain number
    .hint = { $quantity ->
        [gap-width] { $plain ->
            [yes] write the widest you expect in metres, `{ $meant }` if that is it; { gap-not-known }
           *[no] write the widest you expect in metres as a plain number, { $min } to { $max }, without words or signs; { gap-not-known }
         }
       *[other] { plain-number }
     }
gap-not-known = { $typed ->
    [yes] leave `--gap` away where it is not known
   *[no] { gap-to-assume }
 }
gap-to-assume = { $interface ->
    [flags] where it is not known `null`, and what to assume with `--gap`, such as `--gap 6`
    [page] where it is not known leave it empty, and say under Trip what to assume
   *[members] where it is not known `null`, and what to assume with `gap_m` of the trip, such as `gap_m = 6`
 }
zones-not-finite = { quantity } { $found } is not a finite number
    .hint = { plain-number }
zones-unit = { quantity } { $found } is in "{ $given }", not in { unit-sign }
    .hint = { plain-number }
zones-comma = { quantity } { $found } can mean { $one } or { $other }
    .hint = { $fits ->
        [no] write `{ $one }`
       *[yes] write `{ $one }` or `{ $other }`
     }
zones-outside = { quantity } { $found } is outside { $min } to { $max } { unit-sign }
    .hint = { plain-number }
zones-unreadable = { $found } cannot be read as a value
    .hint = it is too large for a number, or nested too deeply: correct it or take it out
zones-downwards = the range { $found } of the { quantity } runs downwards
    .hint = write the smaller number first
zones-one-end = { $end ->
    [upper] of the { quantity } { $found } the upper end counts: { $value }
   *[lower] of the { quantity } { $found } the lower end counts: { $value }
 }
zones-gaps-differ = `gap_m` and `gap_max_m` differ: the wider one counts, { $width }
zones-gap-narrow = a gap of { $width } is narrower than a hand: is that in metres?
    .hint = write metres, 0 where there is no gap; nothing, if it is meant so
zones-gaps-crossed = the lower gap width { $low } is above the upper one, { $high }
    .hint = correct the one that is wrong
zones-strike-range = a strike is one direction, not a range from { $low } to { $high }
    .hint = { $typed ->
        [yes] write `--strike { $middle } --strike-uncertainty { $half }` if that is what you mean
       *[no] write `strike_deg` { $middle } and `strike_uncertainty_deg` { $half } if that is what you mean
     }
zones-strike-missing = an uncertainty without a strike says nothing and was not used
    .hint = add { $typed ->
        [yes] `--strike`
       *[no] `strike_deg`
     }, the direction in which the gaps run
zones-word = { $found } is no word for `{ $property }`
    .hint = write one of { $words }
zones-near-miss = the property `{ $given }` means nothing here and was not used
    .hint = { $in-unit ->
        [no] the name is `{ $right }`
        [number] `{ $right }` is in metres: `"{ $right }": { $metres }`
       *[yes] `{ $right }` is in metres: write the number in metres
     }
zones-not-a-number = NaN or Infinity is no JSON and was read as null

## Gap widths

zones-gap-not-given = { $count ->
    [one] { $count } zone gives no gap width
   *[other] { $count } zones give no gap width
 }{ $interface ->
    [page] { "" }
   *[members] : { $zones }
 }{ $others ->
    [0] { "" }
   *[other] {" "}(found there: { $found })
 }
    .hint = { $renamed ->
        [all] rename `{ $near }` to `gap_m`
        [units] { $metres-known ->
            [yes] `gap_m` is in metres: write `"gap_m": { $metres }` in place of `{ $near }`{ $count ->
                [one] { "" }
               *[other] , and so in each zone
             }
           *[no] `gap_m` is in metres: write it in place of `{ $near }`, with the width in metres
         }
        [some] rename `{ $near }` to `gap_m`; for the others { write-gap }
       *[none] { write-gap }
     }{ $guessed ->
        [none] { "" }
       *[some] ; where you write a width that somebody saw, take `gap_assumed` out
     }
write-gap = { $interface ->
    [page] give { $count ->
        [one] the zone
       *[other] each zone
     } its gap, the width of the widest that you expect, in metres, or say under Trip what to assume
   *[members] give { $count ->
        [one] the polygon
       *[other] each polygon
     } a property `gap_m` in the map editor, the width of the widest gap expected, in metres,
    or say what to assume { $interface ->
        [flags] with `--gap`, such as `--gap 6`
       *[members] with `gap_m` of the trip, such as `gap_m = 6`
     }
 }
zones-gap-assumed = { $lower ->
    [given] { $gap }, or the lower end given where that is wider, assumed as the gap width of { which-zones }: { $zones }
   *[none] { $gap } assumed as the gap width of { which-zones }: { $zones }
 }
    .hint = write `gap_m` into the file where the ice is known{ $guessed ->
        [none] { "" }
       *[some] , and take `gap_assumed` out there
     }
which-zones = { $which ->
    [only] the only zone, which gives none
    [all] all { $of } zones, which give none
    [one] 1 of { $of } zones, which gives none
   *[some] { $count } of { $of } zones, which give none
 }
silent-zone = { $feature }
silent-zone-guessed = { $feature } (by `gap_assumed` the width there was only assumed)
silent-zone-near = { $feature } (`{ $near }` is no name; write `gap_m`)
silent-zone-unit = { $feature } (`{ $near }` is no name; in metres it is `"gap_m": { $metres }`)
silent-zone-lower = { $feature } (at least { $at-least } by `gap_min_m`)
and-more = { $list } and { $more } more

## What was left out or mended

zones-none = { $features ->
    [0] { $interface ->
        [page] no ice is drawn yet
       *[members] nothing is drawn in it
     }
   *[other] { $others ->
        [0] no polygon with an area is drawn in it
       *[other] it holds { $left-out } and no polygon
     }
 }
    .hint = { $interface ->
        [page] draw the broken ice on the map, or paint it along the route, and give it its gap: the width of the widest that you expect
       *[members] { $features ->
            [0] draw the broken ice as polygons in a map editor
           *[other] draw the broken ice as polygons
         }, each with a `gap_m`, the width of the widest gap you expect, in metres
     }
inventory-none = { $features ->
    [0] the glacier inventory holds no feature at all
    [one] the only feature of the glacier inventory is no polygon with an area
   *[other] none of the { $features } features of the glacier inventory is a polygon with an area
 }
    .hint = take an inventory that holds the glaciers of the region as polygons, or plan without one
inventory-gaps = { $outlines ->
    [one] an outline of the glacier inventory gives a gap width
   *[other] { $outlines } outlines of the glacier inventory give gap widths
 }, not used: it only says where ice is
    .hint = where the gap counts, draw a zone with it in the zones file
zones-not-polygons = { $left-out } left out: only polygons are zones
left-out-points = { $n ->
    [one] { $n } point
   *[other] { $n } points
 }
left-out-lines = { $n ->
    [one] { $n } line
   *[other] { $n } lines
 }
left-out-empty = { $n ->
    [one] { $n } empty geometry
   *[other] { $n } empty geometries
 }
zones-ice-undrawn = { $property } stands with a feature that has no outline: nothing is planned for that ice, and no rope
    .hint = draw the outline of that ice as a polygon; if it is none, take { $property } out
zones-no-area = { $n ->
    [one] { $n } polygon left out: fewer than three different points cover nothing
   *[other] { $n } polygons left out: fewer than three different points cover nothing
 }
zones-rings-closed = { $n ->
    [one] { $n } ring closed: the last point was not the first
   *[other] { $n } rings closed: the last point was not the first
 }
zones-rings-tangled = { $n ->
    [one] { $n } ring with a line that touches or crosses itself: what a ring winds round counts as ice
   *[other] { $n } rings with a line that touches or crosses itself: what a ring winds round counts as ice
 }
zones-outer-not-first = { $n ->
    [one] { $n } polygon whose outer ring does not come first: the largest ring that holds another was taken
   *[other] { $n } polygons whose outer ring does not come first: the largest ring that holds another was taken
 }
    .hint = write the outer ring first, as GeoJSON has it
zones-rings-apart = { $n ->
    [one] { $n } ring lies in no outer ring and counts as ice of its own
   *[other] { $n } rings lie in no outer ring and count as ice of their own
 }
    .hint = where it was meant as a hole, draw it inside its zone
zones-holes-stick-out = { $n ->
    [one] { $n } hole sticks out of its outer ring: cut out where it lies inside, ice where it sticks out
   *[other] { $n } holes stick out of their outer rings: cut out where they lie inside, ice where they stick out
 }
    .hint = where no ice is meant, draw the hole inside its zone
