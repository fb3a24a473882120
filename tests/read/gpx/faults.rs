//! What is refused, with the whole of every message.

use std::io::{BufReader, Read};

use schrund::read::gpx;

use super::{PAIR, read, shown, wrong};
use crate::fixture::texts::{gpx_of, segment_of};

#[test]
fn a_file_without_a_line_says_what_it_holds() {
    let nothing = "export the track or the route itself";
    let waypoints = "export the track or the route itself, not only its waypoints";
    let repeats = "a line needs two different points in a row within one segment";
    for (inside, held, cure) in [
        ("", "no waypoint, track or route", nothing),
        (
            r#"<wpt lat="1" lon="2"/><wpt lat="1" lon="2"/><wpt lat="x"/><trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>"#,
            "3 waypoints, 1 track with 1 point",
            waypoints,
        ),
        (
            "<trk/><trk/><rte/>",
            "2 tracks without a point, 1 route without a point",
            nothing,
        ),
        (
            r#"<trk><trkseg><trkpt lat="1" lon="2"/></trkseg><trkseg><trkpt lat="1" lon="3"/></trkseg></trk>"#,
            "1 track with 2 points",
            repeats,
        ),
        (
            r#"<rte><rtept lat="1" lon="2"/><rtept lat="1" lon="2"/></rte>"#,
            "1 route with 2 points",
            repeats,
        ),
    ] {
        assert_eq!(
            wrong(gpx_of(inside)),
            [format!(
                "error[no-line]: no line to walk: the file holds {held}\n  at: tour.gpx\n  do: {cure}"
            )]
        );
    }
}

const PLAIN: &str = "write plain decimal degrees, south and west with a minus sign";
const GIVE_LAT: &str = "give `lat` in degrees, or take the point out";
const GIVE_LON: &str = "give `lon` in degrees, or take the point out";
const LATS: &str =
    "latitudes go from -90 to 90 degrees; projected coordinates have to be converted to WGS 84";
const LONS: &str =
    "longitudes go from -180 to 180 degrees; projected coordinates have to be converted to WGS 84";
const SWAPPED: &str = "perhaps `lat` and `lon` are swapped";
const TURN: &str = "GPX counts longitudes from -180 to 180: write -169.9";

/// Property, sentence and hint of a fault.
type Expected = (&'static str, &'static str, &'static str);

/// Attributes of a point, and the faults in them.
const COMMA: &str =
    "export the file again, or put points for the commas in every `lat` and `lon`: \"46.5\"";
#[rustfmt::skip]
const POSITIONS: &[(&str, &[Expected])] = &[
    ("lat='90.0001' lon='100'", &[("lat", "the latitude 90.0001 is beyond 90 degrees", LATS)]),
    ("lat='-91' lon='8'", &[("lat", "the latitude -91 is beyond 90 degrees", SWAPPED)]),
    ("lat='NaN' lon='8'", &[("lat", "the latitude \"NaN\" is not finite", GIVE_LAT)]),
    ("lat='1' lon='-inf'", &[("lon", "the longitude \"-inf\" is not finite", GIVE_LON)]),
    ("lat='1'", &[("lon", "the longitude is missing", GIVE_LON)]),
    ("", &[("lat", "the latitude is missing", GIVE_LAT), ("lon", "the longitude is missing", GIVE_LON)]),
    ("lat='46,5' lon='8&#176;30&apos;E'", &[
        ("lat", "the latitude \"46,5\" has a comma for a point", COMMA),
        ("lon", "the longitude \"8°30'E\" is no number", PLAIN),
    ]),
    ("lat='' lon='8'", &[("lat", "the latitude \"\" is no number", PLAIN)]),
    ("lat='1' lon='190.1'", &[("lon", "the longitude 190.1 is beyond 180 degrees", TURN)]),
    ("lat='1' lon='-180.5'", &[("lon", "the longitude -180.5 is beyond 180 degrees", LONS)]),
    ("lat='2600000' lon='1200000'", &[
        ("lat", "the latitude 2600000 is beyond 90 degrees", LATS),
        ("lon", "the longitude 1200000 is beyond 180 degrees", LONS),
    ]),
];

#[test]
fn every_faulty_position_is_reported_in_one_go() {
    let mut text = String::new();
    let mut expected = Vec::new();
    for (index, (attributes, faults)) in POSITIONS.iter().enumerate() {
        text.push_str(&format!("\nö <trkpt {attributes}/>"));
        for (property, says, hint) in *faults {
            expected.push(format!(
                "error[bad-position]: {says}\n  at: tour.gpx, line {} column 3, track 1 \"T\", segment 2, point {}, \
                 `{property}`\n  do: {hint}",
                index + 2,
                index + 1
            ));
        }
    }
    let track = format!("<name>T</name><trkseg>{PAIR}</trkseg><trkseg>{text}</trkseg>");
    assert_eq!(wrong(gpx_of(&format!("<trk>{track}</trk>"))), expected);
}

#[test]
fn the_edges_of_the_ranges_are_accepted() {
    let line = r#"<trkpt lat="90" lon="-180"/><trkpt lat="-90" lon="180"/>"#;
    assert!(read(segment_of(line)).is_ok());
}

#[test]
fn faulty_route_points_and_their_detail_have_a_place() {
    let file = gpx_of(
        "<rte><rtept lat=\"1\" lon=\"2\"/>\n<rtept lat=\"99\" lon=\"99\"><extensions>\n<d lat=\"1\" lon=\"x\"/></extensions></rtept></rte>",
    );
    let shown = wrong(file);
    assert_eq!(shown.len(), 2);
    assert!(
        shown[0].contains("at: tour.gpx, line 2 column 1, route 1, point 2, `lat`"),
        "{}",
        shown[0]
    );
    assert!(
        shown[1].contains("at: tour.gpx, line 3 column 1, route 1, point 2, detail 1, `lon`"),
        "{}",
        shown[1]
    );
}

#[test]
fn repeats_are_counted_after_the_first_twenty() {
    let bad = r#"<trkpt lat="99" lon="999"><ele>x</ele></trkpt>"#;
    let shown = wrong(segment_of(&bad.repeat(1018)));
    assert_eq!(shown.len(), 3 * 21);
    let more: Vec<&String> = shown
        .iter()
        .filter(|s| s.contains("more like this"))
        .collect();
    assert_eq!(
        more,
        [
            "error[bad-position]: and 998 more like this\n  at: tour.gpx, `lat`",
            "error[bad-position]: and 998 more like this\n  at: tour.gpx, `lon`",
            "warning[bad-height]: and 998 more like this\n  at: tour.gpx, `ele`",
        ]
    );
    assert_eq!(wrong(segment_of(&bad.repeat(20))).len(), 3 * 20);
}

const EXPORT: &str = "export the line as GPX from the program it was made with";
const AGAIN: &str = "export the route again";
const ZONES: &str = "the route has to be GPX and comes first; zones are given after it";
const PAGE: &str = "the download gave a page in its place: fetch the GPX file itself";

/// What a file begins with, and sentence and hint about it.
#[rustfmt::skip]
const KINDS: &[(&[u8], &str, &str)] = &[
    (b"", "the file is empty", AGAIN),
    (b"\xEF\xBB\xBF \r\n", "the file is empty", AGAIN),
    (b"<?xml version=\"1.0\"?><!-- -->", "the file holds no element at all", AGAIN),
    (b"{\"type\":\"FeatureCollection\"}", "this is JSON, not GPX", ZONES),
    (b"PK\x03\x04....", "this is a zip archive (perhaps KMZ), not GPX", "unpack it and give the GPX file inside"),
    (b"\x1f\x8b\x08", "this is packed with gzip, not GPX", "unpack it and name the file inside"),
    (b"\x0e\x10\xd9\x07\0\0\0\0.FIT", "this is FIT, not GPX", EXPORT),
    (b"%PDF-1.7", "this is a PDF document, not GPX", EXPORT),
    (b"lat,lon\n1,2", "this is not GPX: it begins with \"lat,lon\\n1,2\"", EXPORT),
    (b"\x00\x01\xff\x1b[31m", "this is not GPX: it begins with \"\\0\\u{1}\u{fffd}\\u{1b}[31m\"", EXPORT),
    (b"<?xml version=\"1.0\"?><kml xmlns=\"k\">", "this is KML, not GPX", EXPORT),
    (b"<TrainingCenterDatabase a=1>", "this is TCX, not GPX", EXPORT),
    (b"<!DOCTYPE html><HTML lang=en>", "this is a web page, not GPX", PAGE),
    (b"<osm/>", "this is OpenStreetMap data, not GPX", EXPORT),
    (b"<plan/>", "this is not GPX: its root element is \"plan\"", EXPORT),
];

#[test]
fn other_kinds_of_file_are_named_with_the_cure() {
    for (bytes, says, cure) in KINDS {
        assert_eq!(
            wrong(bytes),
            [format!(
                "error[wrong-kind]: {says}\n  at: tour.gpx\n  do: {cure}"
            )]
        );
    }
}

#[test]
fn reading_that_fails_is_told() {
    struct Broken;
    impl Read for Broken {
        fn read(&mut self, _: &mut [u8]) -> std::io::Result<usize> {
            Err(std::io::Error::other("the card was pulled out"))
        }
    }
    for text in ["", "<gpx>", &segment_of(&PAIR.repeat(2000))] {
        let problems = gpx::route("tour.gpx", BufReader::new(text.as_bytes().chain(Broken)))
            .expect_err("broken");
        let shown = shown(&problems).join("\n");
        assert!(
            shown.starts_with(
                "error[unreadable]: reading stopped: the card was pulled out\n  at: tour.gpx"
            ),
            "{shown}"
        );
    }
}

#[test]
fn one_point_is_no_line() {
    for text in [
        r#"<gpx><trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>"#,
        r#"<gpx><rte><rtept lat="1" lon="2"/></rte></gpx>"#,
    ] {
        let told = wrong(text);
        assert!(
            told[0].ends_with("do: a line needs two different points in a row within one segment"),
            "{told:?}"
        );
    }
}
