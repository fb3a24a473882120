//! What of a line may be a device's error: told with its place and never mended; and numbers that are taken otherwise.

use schrund::geometry::LonLat;

use super::{good, marked, points, shown, wrong};
use crate::fixture::texts::{gpx_of, point, segment_of};

/// A line north from 46.5° N 8° E with a point every so many metres, some of them moved: by index, metres east.
fn track(number: usize, step_m: f64, moved: &[(usize, f64)]) -> String {
    let place = |i: usize| {
        let east_m = moved.iter().find(|(at, _)| *at == i).map_or(0.0, |m| m.1);
        let north_m = step_m * i as f64;
        // Metres in a degree of longitude and latitude at 46.5° [derived from wgs84].
        LonLat::new(8.0 + east_m / 76_760.0, 46.5 + north_m / 111_146.0)
    };
    let line: String = (0..number).map(|i| point(place(i), None)).collect();
    segment_of(&line)
}

const OUT: &str =
    "do: was the receiver wrong? Nothing is mended: take the point out if nobody was there";

#[test]
fn a_single_point_off_the_line_and_back_is_told_and_kept() {
    let noted = good(track(50, 20.0, &[(20, 400.0)]));
    assert_eq!(
        shown(&noted.notes),
        [format!(
            "warning[lone-point]: a single point lies 400 m off the line, the next one is back on it, at 0.78 km \
             (46.50360° N 8.00521° E)\n  at: tour.gpx, track 1\n  {OUT}"
        )]
    );
    let stage = &noted.value.stages[0];
    assert_eq!(stage.points().len(), 50, "nothing is mended");
    assert!(stage.length_m() > 1700.0, "{}", stage.length_m());
    let codes = |text: String| {
        let notes = good(text).notes;
        let codes: Vec<&str> = notes.iter().map(|n| n.code()).collect();
        codes
    };
    assert_eq!(codes(track(50, 20.0, &[(20, 160.0)])), ["lone-point"]);
    assert_eq!(
        codes(track(50, 20.0, &[(20, 140.0)])),
        [""; 0],
        "within 150 m"
    );
    assert_eq!(codes(track(50, 100.0, &[(20, 220.0)])), ["lone-point"]);
    assert_eq!(
        codes(track(50, 20.0, &[(20, 400.0), (21, 400.0)])),
        [""; 0],
        "two are no lone one"
    );
    assert_eq!(
        codes(track(50, 300.0, &[(20, 400.0)])),
        [""; 0],
        "a coarse line has such corners"
    );
    assert_eq!(
        codes(track(50, 20.0, &[(0, 400.0)])),
        [""; 0],
        "the first one is not back from anywhere"
    );
}

#[test]
fn corners_and_turning_points_of_a_line_are_no_suspicion() {
    let line = |places: &[(f64, f64)]| {
        let place = |&(east_m, north_m): &(f64, f64)| {
            point(
                LonLat::new(8.0 + east_m / 76_760.0, 46.5 + north_m / 111_146.0),
                None,
            )
        };
        let points: String = places.iter().map(place).collect();
        shown(&good(segment_of(&points)).notes)
    };
    let none: [String; 0] = [];
    let zigzag: Vec<(f64, f64)> = (0..12)
        .map(|i| (300.0 * f64::from(i % 2), 60.0 * f64::from(i)))
        .collect();
    assert_eq!(line(&zigzag), none, "a zigzag up a slope");
    let there = (0..30).map(|i| (140.0 * f64::from(i), 0.0));
    let back = (0..29).rev().map(|i| (140.0 * f64::from(i), 1.0));
    let both: Vec<(f64, f64)> = there.chain(back).collect();
    assert_eq!(line(&both), none, "out to a summit and back");
}

#[test]
fn an_edge_of_many_kilometres_is_told_where_the_line_is_fine_elsewhere() {
    // 0.09 degrees of latitude are 10 km.
    let far = |from: f64, to: f64| {
        let fine = |lat: f64| {
            let places = (0..20).map(move |i| LonLat::new(8.0, lat + 0.0002 * f64::from(i)));
            places.map(|p| point(p, None)).collect::<String>()
        };
        segment_of(&format!("{}{}", fine(from), fine(to)))
    };
    assert_eq!(
        shown(&good(far(46.5, 46.5938)).notes),
        [
            "warning[long-edge]: no point for 10.00 km from 0.42 km on (46.50380° N 8.00000° E); elsewhere the line \
             is drawn finely\n  at: tour.gpx, track 1\n  do: was the receiver off, or was it a lift? The line is \
             taken as straight there: draw the piece, or begin a new segment behind it"
        ]
    );
    assert_eq!(shown(&good(far(46.5, 46.548)).notes), [""; 0], "4.9 km");
    let coarse: String = (0..6)
        .map(|i| point(LonLat::new(8.0, 46.0 + 0.06 * f64::from(i)), None))
        .collect();
    assert_eq!(
        shown(&good(segment_of(&coarse)).notes),
        [""; 0],
        "all edges are long"
    );
}

#[test]
fn a_point_at_nought_is_told_once_and_a_line_that_goes_there_is_not() {
    let line = |lats: &[f64]| {
        let places = lats.iter().map(|lat| match lat {
            0.0 => LonLat::new(0.0, 0.0),
            lat => LonLat::new(8.0, *lat),
        });
        segment_of(&places.map(|p| point(p, None)).collect::<String>())
    };
    let notes = shown(&good(line(&[46.5, 46.5001, 46.5002, 0.0, 46.5003, 46.5004])).notes);
    assert_eq!(notes.len(), 1, "{notes:?}");
    let starts = "warning[zero-point]: a point at longitude 0, latitude 0 lies 5210.6";
    let ends = "km (0.00000° N 0.00000° E)\n  at: tour.gpx, track 1\n  do: devices write that without a fix; \
                nothing is mended: take the point out";
    assert!(
        notes[0].starts_with(starts) && notes[0].ends_with(ends),
        "{}",
        notes[0]
    );
    let first = shown(&good(line(&[0.0, 46.5001, 46.5002, 46.5003])).notes);
    assert!(
        first.len() == 1 && first[0].starts_with(starts),
        "{first:?}"
    );
    let near =
        r#"<trkpt lat="0" lon="-0.001"/><trkpt lat="0" lon="0"/><trkpt lat="0.001" lon="0"/>"#;
    assert_eq!(
        shown(&good(segment_of(near)).notes),
        [""; 0],
        "the line is there"
    );
}

#[test]
fn a_single_height_far_off_its_neighbours_is_told_and_kept() {
    let heights = |heights: &[f64]| {
        let line: String = (0..)
            .zip(heights)
            .map(|(i, h)| point(LonLat::new(8.0, 46.5 + 0.0002 * f64::from(i)), Some(*h)))
            .collect();
        good(segment_of(&line))
    };
    let noted = heights(&[2500.0, 2502.0, 0.0, 2506.0, 2508.0]);
    assert_eq!(
        shown(&noted.notes),
        [
            "warning[lone-height]: the height 0 m lies 2504 m below those of its neighbours, at 0.04 km (46.50040° N \
             8.00000° E)\n  at: tour.gpx, track 1\n  do: was the receiver wrong? Nothing is mended: correct `ele` \
             there, or take it out"
        ]
    );
    assert_eq!(noted.value.stages[0].height_m(2), Some(0.0));
    let none: [String; 0] = [];
    assert_eq!(
        shown(&heights(&[2500.0, 2510.0, 2600.0, 2510.0]).notes),
        none,
        "95 m"
    );
    assert_eq!(
        shown(&heights(&[2000.0, 2400.0, 2800.0, 3200.0]).notes),
        none,
        "steep, and not back"
    );
    let summit = r#"<trkpt lat="46.5" lon="8"><ele>2000</ele></trkpt><trkpt lat="46.51" lon="8"><ele>3000</ele></trkpt>
        <trkpt lat="46.52" lon="8"><ele>2000</ele></trkpt>"#;
    assert_eq!(
        shown(&good(segment_of(summit)).notes),
        none,
        "a planned summit"
    );
}

#[test]
fn heights_where_nobody_walks_are_counted_with_the_first_place() {
    let heights = [
        "9000",
        "-500",
        "¦<ele>9000.5</ele>",
        "-32768",
        "1e308",
        "-1e39",
    ];
    let line: String = (0..)
        .zip(heights)
        .map(|(i, h)| match h.starts_with('¦') {
            true => format!("<trkpt lat=\"1.00{i}\" lon=\"2\">\n{h}</trkpt>"),
            false => format!("<trkpt lat=\"1.00{i}\" lon=\"2\"><ele>{h}</ele></trkpt>"),
        })
        .collect();
    let (text, place) = marked(&segment_of(&line));
    let noted = good(text);
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(9000.0), Some(-500.0), None, None, None, None]
    );
    assert_eq!(
        shown(&noted.notes)[0],
        format!(
            "warning[bad-height]: 4 heights are none, being below -500 m or above 9000 m, the first \"9000.5\": they \
             count as not given\n  at: tour.gpx, {place}, track 1, segment 1, point 3, `ele`\n  do: give `ele` in \
             metres above the sea, or leave it out"
        )
    );
}

#[test]
fn longitudes_that_just_miss_the_antimeridian_are_taken_back_and_noted() {
    let noted = good(segment_of(
        r#"<trkpt lat="1" lon="-180.0000153"/><trkpt lat="1.001" lon="180.001"/><trkpt lat="1.002" lon="179.99"/>"#,
    ));
    assert_eq!(
        points(&noted.value),
        [[(-180.0, 1.0), (-180.0, 1.001), (-180.01, 1.002)]]
    );
    assert_eq!(
        shown(&noted.notes),
        [
            "note[longitude-taken-back]: 2 longitudes just beyond 180 degrees are taken as 180 degrees\n  at: tour.gpx"
        ]
    );
    let detail = gpx_of(
        r#"<rte><rtept lat="1" lon="179"><extensions><p lat="1" lon="180.0001"/></extensions></rtept>
           <rtept lat="1.1" lon="179"/></rte>"#,
    );
    assert!(
        shown(&good(detail).notes)
            .iter()
            .any(|n| n.starts_with("note[longitude-taken-back]: 1 longitude "))
    );
    let beyond = r#"<trkpt lat="1" lon="-180.0011"/><trkpt lat="1" lon="-179"/>"#;
    assert!(wrong(segment_of(beyond))[0].contains("the longitude -180.0011 is beyond 180 degrees"));
}
