//! Route files in words.

use super::{counted, place::in_quotes, xml};
use crate::fault::{
    gpx::{Axis, Held, InGpx, Instead, NoDegrees},
    place::{Excerpt, Sort},
};

const EXPORT: &str = "export the line as GPX from the program it was made with";

pub(super) fn says(what: &InGpx) -> String {
    match what {
        InGpx::Is(instead) => is(instead),
        InGpx::Empty => "the file is empty".to_owned(),
        InGpx::NoElement => "the file holds no element at all".to_owned(),
        InGpx::Xml(why) => xml::says(why),
        InGpx::Position { axis, why } => position(*axis, why),
        InGpx::Height(found) => format!(
            "the height {} is no finite number and counts as not given",
            in_quotes(found)
        ),
        InGpx::NoTwoPoints(points) => format!(
            "no two different points follow one another here ({}): left out",
            counted(*points, "point")
        ),
        InGpx::LoneSegments(n) => {
            format!("{} with a single position left out", counted(*n, "segment"))
        }
        InGpx::RoutesBesideTracks(n) => {
            format!("{} beside the tracks left out", counted(*n, "route"))
        }
        InGpx::DetailUsed(n) => format!(
            "{} between the route points taken from their extensions",
            counted(*n, "point")
        ),
        InGpx::DetailIgnored(n) => format!("{} in extensions not used", counted(*n, "position")),
        InGpx::NoLine {
            waypoints,
            tracks,
            routes,
        } => no_line(*waypoints, *tracks, *routes),
        InGpx::Jump { length_m, at_m } => format!(
            "the line jumps {length_m:.1} m at {at_m:.1} m; the jump is not walked and adds no length"
        ),
        InGpx::LongEdge { length_m, from_m } => {
            format!("no point for {length_m:.1} m from {from_m:.1} m on")
        }
    }
}

pub(super) fn hint(what: &InGpx) -> Option<String> {
    let hint = match what {
        InGpx::Is(instead) => cure(instead),
        InGpx::Empty | InGpx::NoElement => "export the route again",
        InGpx::Xml(why) => xml::hint(why),
        InGpx::Position { axis, why } => return Some(position_hint(*axis, why)),
        InGpx::Height(_) => "give `ele` in metres, or leave it out",
        InGpx::RoutesBesideTracks(_) => "to plan along a route, take the tracks out of the file",
        InGpx::DetailIgnored(_) => "if they are the line, export it as a track",
        InGpx::NoLine { tracks, routes, .. } if tracks.points > 1 || routes.points > 1 => {
            "a line needs two different points in a row within one segment"
        }
        InGpx::NoLine { .. } => "export the track or the route itself, not only its waypoints",
        InGpx::LongEdge { .. } => "was the receiver off? The line is taken as straight there",
        InGpx::NoTwoPoints(_)
        | InGpx::LoneSegments(_)
        | InGpx::DetailUsed(_)
        | InGpx::Jump { .. } => return None,
    };
    Some(hint.to_owned())
}

fn is(instead: &Instead) -> String {
    let what = match instead {
        Instead::Zip => "a zip archive (perhaps KMZ)",
        Instead::Gzip => "packed with gzip",
        Instead::Pdf => "a PDF document",
        Instead::Database => "a database",
        Instead::Json => "JSON",
        Instead::Fit => "FIT",
        Instead::Kml => "KML",
        Instead::Tcx => "TCX",
        Instead::WebPage => "a web page",
        Instead::Osm => "OpenStreetMap data",
        Instead::Drawing => "a drawing",
        Instead::Beginning(found) => {
            return format!("this is not GPX: it begins with {}", in_quotes(found));
        }
        Instead::Root(found) => {
            return format!("this is not GPX: its root element is {}", in_quotes(found));
        }
    };
    format!("this is {what}, not GPX")
}

fn cure(instead: &Instead) -> &'static str {
    match instead {
        Instead::Zip => "unpack it and give the GPX file inside",
        Instead::Gzip => "unpack it first",
        Instead::Json => "the route has to be GPX; zones are given after it",
        Instead::WebPage => "the download gave a page in its place: fetch the GPX file itself",
        _ => EXPORT,
    }
}

fn position(axis: Axis, why: &NoDegrees) -> String {
    let (word, most) = match axis {
        Axis::Latitude => ("latitude", 90),
        Axis::Longitude => ("longitude", 180),
    };
    match why {
        NoDegrees::Missing => format!("the {word} is missing"),
        NoDegrees::NotFinite(found) => format!("the {word} {} is not finite", in_quotes(found)),
        NoDegrees::NoNumber { found, .. } => {
            format!("the {word} {} is no number", in_quotes(found))
        }
        NoDegrees::Beyond { deg, .. } => format!("the {word} {deg} is beyond {most} degrees"),
    }
}

fn position_hint(axis: Axis, why: &NoDegrees) -> String {
    match why {
        NoDegrees::Missing | NoDegrees::NotFinite(_) => {
            format!(
                "give `{}` in degrees, or take the point out",
                axis.property()
            )
        }
        NoDegrees::NoNumber { found, comma: true } => {
            let pointed = Excerpt {
                text: found.text.trim().replace(',', "."),
                cut: found.cut,
            };
            format!("write it with a point: {}", in_quotes(&pointed))
        }
        NoDegrees::NoNumber { comma: false, .. } => {
            "write plain decimal degrees, south and west with a minus sign".to_owned()
        }
        NoDegrees::Beyond { deg, swapped } => beyond_hint(axis, *deg, *swapped).to_owned(),
    }
}

fn beyond_hint(axis: Axis, deg: f64, swapped: bool) -> String {
    match axis {
        Axis::Latitude if swapped => "perhaps `lat` and `lon` are swapped".to_owned(),
        Axis::Latitude => "latitudes go from -90 to 90 degrees; projected coordinates have to be converted to WGS 84".to_owned(),
        Axis::Longitude if (180.0..=360.0).contains(&deg) => {
            let turned = format!("{:.9}", deg - 360.0);
            let turned = turned.trim_end_matches('0').trim_end_matches('.');
            format!("GPX counts longitudes from -180 to 180: write {turned}")
        }
        Axis::Longitude => "longitudes go from -180 to 180 degrees; projected coordinates have to be converted to WGS 84".to_owned(),
    }
}

fn no_line(waypoints: usize, tracks: Held, routes: Held) -> String {
    let held = [
        (waypoints > 0).then(|| counted(waypoints, "waypoint")),
        holding(tracks, Sort::Track),
        holding(routes, Sort::Route),
    ];
    let held: Vec<String> = held.into_iter().flatten().collect();
    let held = match held.as_slice() {
        [] => "no waypoint, track or route".to_owned(),
        held => held.join(", "),
    };
    format!("no line to walk: the file holds {held}")
}

/// `2 tracks with 1 point`, `1 route without a point`; nothing where there are none.
fn holding(held: Held, sort: Sort) -> Option<String> {
    let points = match held.points {
        0 => "without a point".to_owned(),
        n => format!("with {}", counted(n, "point")),
    };
    (held.parts > 0).then(|| format!("{} {points}", counted(held.parts, sort.word())))
}
