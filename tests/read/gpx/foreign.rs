//! The same files read by ourselves and by the `gpx` crate, and files damaged at random.

use gpx::{Gpx, GpxVersion, Track, TrackSegment, Waypoint};
use proptest::prelude::*;
use schrund::trip::route::Stage;

use super::{good, read};
use crate::fixture::texts::gpx_of;

/// Longitude, latitude and height.
type Fix = (f64, f64, Option<f32>);

/// The tracks of a file, segment by segment, as the `gpx` crate reads them: repeats in a row dropped, then
/// segments of one place, then tracks without a segment.
fn by_gpx_crate(text: &[u8]) -> Vec<Vec<Vec<Fix>>> {
    let file = gpx::read(text).expect("the gpx crate reads what it wrote");
    let tracks = file
        .tracks
        .iter()
        .map(|track| joined(track.segments.iter().map(without_repeats)));
    tracks.filter(|segments| !segments.is_empty()).collect()
}

/// A segment that begins where the last one ended goes on with it: that is no jump. Another one of a single
/// place is no line.
fn joined(segments: impl Iterator<Item = Vec<Fix>>) -> Vec<Vec<Fix>> {
    let mut joined: Vec<Vec<Fix>> = Vec::new();
    for segment in segments {
        let Some(first) = segment.first().copied() else {
            continue;
        };
        match joined
            .last_mut()
            .and_then(|line| Some((line.last().copied()?, line)))
        {
            Some((end, line)) if (end.0, end.1) == (first.0, first.1) => {
                line.pop();
                line.push((end.0, end.1, end.2.or(first.2)));
                line.extend(&segment[1..]);
            }
            _ if segment.len() > 1 => joined.push(segment),
            _ => {}
        }
    }
    joined
}

fn without_repeats(segment: &TrackSegment) -> Vec<Fix> {
    let mut fixes: Vec<Fix> = Vec::new();
    for point in &segment.points {
        let (lon, lat) = point.point().x_y();
        #[expect(
            clippy::cast_possible_truncation,
            reason = "heights are kept in single precision"
        )]
        let height = point.elevation.map(|e| e as f32);
        match fixes.last_mut() {
            Some(last) if (last.0, last.1) == (lon, lat) => last.2 = last.2.or(height),
            _ => fixes.push((lon, lat, height)),
        }
    }
    fixes
}

fn by_us(text: &[u8]) -> Vec<Vec<Vec<Fix>>> {
    let segments = |stage: &Stage| {
        let fix = |i: usize| {
            let p = stage.points().at(i);
            (p.lon_deg, p.lat_deg, stage.height_m(i))
        };
        stage.segments().map(|s| s.map(fix).collect()).collect()
    };
    good(text).value.stages.iter().map(segments).collect()
}

/// Points of a small grid, so that repeats are common.
fn waypoint() -> impl Strategy<Value = Waypoint> {
    let height = prop::option::of(-430i16..8850);
    (0u8..12, 0u8..12, height).prop_map(|(x, y, height)| {
        let mut point = Waypoint::new(geo::Point::new(
            7.0 + f64::from(x) / 7.0,
            46.0 - f64::from(y) / 3.0,
        ));
        point.elevation = height.map(|h| f64::from(h) / 4.0);
        point
    })
}

fn file() -> impl Strategy<Value = Gpx> {
    let segment =
        prop::collection::vec(waypoint(), 0..12).prop_map(|points| TrackSegment { points });
    let track = prop::collection::vec(segment, 0..5).prop_map(|segments| Track {
        segments,
        ..Track::default()
    });
    let tracks = prop::collection::vec(track, 1..5);
    (tracks, any::<bool>()).prop_map(|(tracks, old)| Gpx {
        version: if old {
            GpxVersion::Gpx10
        } else {
            GpxVersion::Gpx11
        },
        tracks,
        ..Gpx::default()
    })
}

proptest! {
    #[test]
    fn val_the_gpx_crate_reads_the_same_lines(file in file()) {
        let mut text = Vec::new();
        gpx::write(&file, &mut text).expect("the gpx crate writes");
        let theirs = by_gpx_crate(&text);
        if theirs.is_empty() {
            prop_assert!(read(&text).is_err());
        } else {
            prop_assert_eq!(by_us(&text), theirs);
        }
    }

    /// A comment in every point takes it out of the hands of whoever reads plain points.
    #[test]
    fn points_written_the_plain_way_are_read_as_the_parser_reads_them(
        points in prop::collection::vec(
            (45.0..47.0_f64, 179.0..180.0005_f64, -600.0..9100.0_f64, 0..4_u8), 1..1500,
        ),
    ) {
        let written = |comment: &str| -> String {
            let point = |(lat, lon, height, kind): &(f64, f64, f64, u8)| {
                let inside = match kind {
                    0 => String::new(),
                    1 => format!("<ele>{height:.1}</ele>"),
                    2 => format!("<ele>{height:.3}</ele>\n<time>2027-08-21T04:30:00Z</time>"),
                    _ => format!("<time/><ele> {height} </ele>"),
                };
                format!("<trkpt lat=\"{lat:.7}\" lon=\"{lon:.7}\">{comment}{inside}</trkpt>\n")
            };
            let points: String = points.iter().map(point).collect();
            gpx_of(&format!("<trk><trkseg>{points}</trkseg><trkseg/><trkseg>{points}</trkseg></trk>"))
        };
        let (plain, parsed) = (written(""), written("<!-- -->"));
        match (read(plain.as_bytes()), read(parsed.as_bytes())) {
            (Ok(plain), Ok(parsed)) => {
                prop_assert_eq!(plain.value, parsed.value);
                prop_assert_eq!(plain.notes.len(), parsed.notes.len());
            }
            (plain, parsed) => prop_assert_eq!(plain.is_err(), parsed.is_err()),
        }
    }

    #[test]
    fn damage_never_stops_the_reader(
        damage in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..6),
        end in any::<prop::sample::Index>(),
        cut in any::<bool>(),
    ) {
        let mut text = gpx_of(
            r#"<metadata><name>n</name></metadata><wpt lat="1" lon="2"/><rte><rtept lat="1" lon="2"><extensions><d lat="1" lon="3"/></extensions></rtept></rte>
            <trk><name>a &amp; &#65; <![CDATA[b]]></name><trkseg><!-- c --><trkpt lat="46.5" lon="8.0"><ele>1</ele></trkpt>
            <trkpt lat="46.6" lon="8.0"/></trkseg><trkseg/></trk>"#,
        ).into_bytes();
        for (at, byte) in damage {
            let at = at.index(text.len());
            text[at] = byte;
        }
        if cut {
            text.truncate(end.index(text.len()));
        }
        // Read to the end without a panic, and an answer that says something.
        match read(&text) {
            Ok(noted) => prop_assert!(noted.value.length_m() > 0.0),
            Err(problems) => prop_assert!(!problems.is_empty()),
        }
    }
}
