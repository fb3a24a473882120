### What is wrong with a route file, or odd about it. No capital at the start, no full stop at the end.

instead-what = { $what ->
    [zip] a zip archive (perhaps KMZ)
    [gzip] packed with gzip
    [pdf] a PDF document
    [database] a database (perhaps a GeoPackage)
    [shapefile] a shapefile
    [flatgeobuf] FlatGeobuf
    [tiff] a TIFF, as terrain models are
    [picture] a picture
    [json] JSON
    [xml] XML
    [fit] FIT
    [gpx] GPX
    [kml] KML
    [tcx] TCX
    [page] a web page
    [osm] OpenStreetMap data
    [drawing] a drawing
    [toml] TOML, as trip files are
    [table] a table of values between commas
   *[other] another kind of file
}
gpx-is = this is { instead-what }, not GPX
    .hint = { $what ->
        [zip] unpack it and give the GPX file inside
        [gzip] unpack it and name the file inside
        [json] the route has to be GPX and comes first; zones are given after it{ $interface ->
            [flags] : name your GPX file in the place of { $file }, and { $file } behind it
           *[members] { "" }
         }
        [toml] the route comes first, as GPX{ $interface ->
            [flags] ; a trip file has its flag: `--trip { $file }`
           *[members] { "" }
         }
        [page] the download gave a page in its place: fetch the GPX file itself
       *[other] { gpx-export }
     }
gpx-export = export the line as GPX from the program it was made with
gpx-begins = this is not GPX: it begins with "{ $found }"
    .hint = { gpx-export }
gpx-root = this is not GPX: its root element is "{ $found }"
    .hint = { gpx-export }
gpx-empty = { $piped ->
    [yes] nothing came on standard input
   *[no] the file is empty
 }
    .hint = { $piped ->
        [yes] name the GPX file in place of `-`, or pipe it in
       *[no] export the route again
     }
gpx-no-element = the file holds no element at all
    .hint = export the route again

## Positions and heights

gpx-missing = the { axis } is missing
    .hint = give `{ $property }` in degrees, or take the point out
gpx-not-finite = the { axis } "{ $found }" is not finite
    .hint = give `{ $property }` in degrees, or take the point out
gpx-comma = the { axis } "{ $found }" has a comma for a point
    .hint = export the file again, or put points for the commas in every `lat` and `lon`: "{ $pointed }"
gpx-no-number = the { axis } "{ $found }" is no number
    .hint = write plain decimal degrees, south and west with a minus sign
gpx-swapped = the latitude { $deg } is beyond 90 degrees
    .hint = perhaps `lat` and `lon` are swapped
gpx-swapped-axes = the line lies near no zone and where no ice lies; with `lat` and `lon` swapped it would meet the zones
    .hint = export it again with latitude and longitude in their places, or exchange the words `lat=` and `lon=` in a text editor
gpx-latitude = the latitude { $deg } is beyond 90 degrees
    .hint = latitudes go from -90 to 90 degrees; projected coordinates have to be converted to WGS 84
gpx-turned = the longitude { $deg } is beyond 180 degrees
    .hint = GPX counts longitudes from -180 to 180: write { $turned }
gpx-longitude = the longitude { $deg } is beyond 180 degrees
    .hint = longitudes go from -180 to 180 degrees; projected coordinates have to be converted to WGS 84
axis = { $property ->
    [lat] latitude
   *[lon] longitude
 }
gpx-height = the height "{ $found }" is no finite number and counts as not given
    .hint = give `ele` in metres, its decimals behind a point, or leave it out
gpx-heights-outside = { $count ->
    [one] the height "{ $first }" is none, being below { $low } or above { $high }: it counts as not given
   *[other] { $count } heights are none, being below { $low } or above { $high }, the first "{ $first }": they count as not given
 }
    .hint = give `ele` in metres above the sea, or leave it out
longitudes-taken-back = { $n ->
    [one] 1 longitude just beyond 180 degrees is taken as 180 degrees
   *[other] { $n } longitudes just beyond 180 degrees are taken as 180 degrees
 }

## The line

points = { $points ->
    [one] { $points } point
   *[other] { $points } points
 }
gpx-no-two-points = no two different points follow one another here ({ points }): left out
gpx-lone-segments = { $segments ->
    [one] { $segments } segment with a single position left out
   *[other] { $segments } segments with a single position left out
 }
gpx-routes-beside = { $routes ->
    [one] { $routes } route beside the tracks left out
   *[other] { $routes } routes beside the tracks left out
 }
    .hint = to plan along a route, take the tracks out of the file
gpx-detail-used = { points } between the route points taken from their extensions
gpx-detail-ignored = { $positions ->
    [one] { $positions } position in extensions not used
   *[other] { $positions } positions in extensions not used
 }
    .hint = if they are the line, export it as a track
gpx-no-line = no line to walk: the file holds { $held }
    .hint = export the track or the route itself{ $waypoints ->
        [0] { "" }
       *[other] , not only its waypoints
     }
gpx-standing-line = no line to walk: the file holds { $held }
    .hint = a line needs two different points in a row within one segment
gpx-holds-nothing = no waypoint, track or route
gpx-holds-waypoints = { $n ->
    [one] { $n } waypoint
   *[other] { $n } waypoints
 }
gpx-holds-tracks = { $n ->
    [one] { $n } track
   *[other] { $n } tracks
 } { with-points }
gpx-holds-routes = { $n ->
    [one] { $n } route
   *[other] { $n } routes
 } { with-points }
with-points = { $points ->
    [0] without a point
   *[other] with { points }
 }
gpx-endless = the line is { $length } long, and no more than { $most } is planned
    .hint = is a position wrong? Its longest straight piece, { $edge }, begins at { $at }
gpx-jump = the line jumps { $length } at { $at }; the jump is not walked and adds no length
gpx-long-edge = no point for { $length } from { $at } on ({ $place }); elsewhere the line is drawn finely
    .hint = was the receiver off, or was it a lift? The line is taken as straight there: draw the piece, or begin a new segment behind it
gpx-lone-point = a single point lies { $aside } off the line, the next one is back on it, at { $at } ({ $place })
    .hint = was the receiver wrong? Nothing is mended: take the point out if nobody was there
gpx-lone-height = the height { $height } lies { $by } { $way ->
    [below] below
   *[above] above
 } those of its neighbours, at { $at } ({ $place })
    .hint = was the receiver wrong? Nothing is mended: correct `ele` there, or take it out
gpx-zero-point = a point at longitude 0, latitude 0 lies { $off } from its neighbour, at { $at } ({ $place })
    .hint = devices write that without a fix; nothing is mended: take the point out

## Broken XML

xml-cut-off = the file was cut off: copy or export it again
xml-repair = export the file again, or mend it with a text editor
xml-second = a second document begins inside or behind the first
    .hint = two files were joined: split them again
xml-text-outside = text stands outside the root element
    .hint = take it out, or export the file again
xml-ends-before = the file ends before `</{ $tag }>`
    .hint = { xml-cut-off }
xml-overlong = one tag, text or comment is longer than { $mib } MiB
    .hint = { xml-repair }
xml-bang = `<!` begins nothing that XML knows
    .hint = { xml-repair }
xml-unclosed = the file ends in the middle of { $what ->
    [instruction] a processing instruction that begins here
    [declaration] the XML declaration that begins here
    [comment] a comment that begins here
    [doctype] a DOCTYPE that begins here
    [cdata] a CDATA section that begins here
    [value] a value between quotation marks in what begins here
   *[tag] what begins here
 }
    .hint = { xml-cut-off }
xml-mismatched = "{ $found }" stands where "{ $expected }" is due
    .hint = { xml-repair }
xml-unmatched = "{ $found }" closes nothing that is open
    .hint = { xml-repair }
xml-ampersand = a bare `&` stands in the text
    .hint = write `&amp;` in its place
xml-attribute = { $why ->
    [no-value] an attribute has no value
    [nothing-after] an attribute has nothing after its `=`
    [unquoted] an attribute value has no quotation marks
    [open] an attribute value has no closing quotation mark
   *[twice] an attribute is given twice in one tag
 }
    .hint = { xml-repair }
xml-not-utf8 = the text is not UTF-8
    .hint = save it as UTF-8, or begin it with <?xml version="1.0" encoding="windows-1252"?> (or what it is)
xml-encoding = the text is not in the encoding the file says
    .hint = save it as UTF-8
xml-other = { $words }
    .hint = { xml-repair }
