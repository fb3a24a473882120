//! Route files in words.

use super::{
    phrase::{Phrase, figure, name, number, row},
    quote::printable,
};
use crate::{
    fault::{
        gpx::{Attribute, Axis, InGpx, NoDegrees, PartCount, Suspect, Suspicion, Unclosed, Xml},
        instead::Instead,
        place::{Excerpt, STANDARD_INPUT},
    },
    say::{arg::Arg, place, span::Said, voice::Voice},
};

/// `file` is where it stands.
pub(super) fn phrase(what: &InGpx, file: &str, voice: Voice) -> Phrase {
    match what {
        InGpx::Is(instead) => is(instead, file),
        InGpx::Empty => Phrase::of("gpx-empty", [("piped", Arg::yes(file == STANDARD_INPUT))]),
        InGpx::NoElement => Phrase::plain("gpx-no-element"),
        InGpx::Xml(why) => xml(why),
        InGpx::Position { axis, why } => position(*axis, why),
        InGpx::SwappedAxes => Phrase::plain("gpx-swapped-axes"),
        InGpx::Height(found) => Phrase::of("gpx-height", [("found", quote(found))]),
        InGpx::HeightsOutside {
            count,
            first,
            low_m,
            high_m,
        } => outside(*count, first, [*low_m, *high_m]),
        InGpx::LongitudesTakenBack(n) => {
            Phrase::of("longitudes-taken-back", [("n", Arg::Count(*n))])
        }
        InGpx::NoTwoPoints(n) => Phrase::of("gpx-no-two-points", [("points", Arg::Count(*n))]),
        InGpx::LoneSegments(n) => Phrase::of("gpx-lone-segments", [("segments", Arg::Count(*n))]),
        InGpx::RoutesBesideTracks(n) => {
            Phrase::of("gpx-routes-beside", [("routes", Arg::Count(*n))])
        }
        InGpx::DetailUsed(n) => Phrase::of("gpx-detail-used", [("points", Arg::Count(*n))]),
        InGpx::DetailIgnored(n) => {
            Phrase::of("gpx-detail-ignored", [("positions", Arg::Count(*n))])
        }
        InGpx::NoLine {
            waypoints,
            tracks,
            routes,
        } => no_line(*waypoints, *tracks, *routes, voice),
        InGpx::Endless {
            length_m,
            most_km,
            edge_m,
            at_m,
        } => Phrase::of(
            "gpx-endless",
            [
                ("length", Arg::Walked(*length_m)),
                ("most", figure(most_km, "km")),
                ("edge", Arg::Walked(*edge_m)),
                ("at", Arg::Walked(*at_m)),
            ],
        ),
        InGpx::Jump { length_m, at_m } => Phrase::of(
            "gpx-jump",
            [
                ("length", Arg::Measured(*length_m)),
                ("at", Arg::Measured(*at_m)),
            ],
        ),
        InGpx::Suspect(suspicion) => suspect(suspicion),
    }
}

/// What may be a device's error, with its place.
fn suspect(suspicion: &Suspicion) -> Phrase {
    let phrase = match suspicion.what {
        Suspect::LongEdge { length_m } => {
            Phrase::of("gpx-long-edge", [("length", Arg::Walked(length_m))])
        }
        Suspect::LonePoint { aside_m } => {
            Phrase::of("gpx-lone-point", [("aside", Arg::Whole(aside_m))])
        }
        Suspect::LoneHeight { height_m, above_m } => {
            let way = if above_m < 0.0 { "below" } else { "above" };
            let heights = [
                ("height", Arg::Whole(height_m)),
                ("by", Arg::Whole(above_m.abs())),
                ("way", Arg::Word(way)),
            ];
            Phrase::of("gpx-lone-height", heights)
        }
        Suspect::ZeroPoint { off_m } => Phrase::of("gpx-zero-point", [("off", Arg::Walked(off_m))]),
    };
    let place = Arg::Figure(place::degrees(suspicion.lon_lat));
    phrase.and(vec![("at", Arg::Walked(suspicion.at_m)), ("place", place)])
}

/// Heights where nobody walks.
fn outside(count: usize, first: &Excerpt, [low_m, high_m]: [f64; 2]) -> Phrase {
    let args = [
        ("count", Arg::Count(count)),
        ("first", quote(first)),
        ("low", Arg::Whole(low_m)),
        ("high", Arg::Whole(high_m)),
    ];
    Phrase::of("gpx-heights-outside", args)
}

fn quote(found: &Excerpt) -> Arg<'static> {
    name(printable(found))
}

fn is(instead: &Instead, file: &str) -> Phrase {
    match instead {
        Instead::Beginning(found) => Phrase::of("gpx-begins", [("found", quote(found))]),
        Instead::Root(found) => Phrase::of("gpx-root", [("found", quote(found))]),
        known => Phrase::of(
            "gpx-is",
            [("what", Arg::Word(word(known))), ("file", name(file))],
        ),
    }
}

/// What a file is, as the catalogue selects by it.
pub(super) fn word(instead: &Instead) -> &'static str {
    match instead {
        Instead::Zip => "zip",
        Instead::Gzip => "gzip",
        Instead::Pdf => "pdf",
        Instead::Database => "database",
        Instead::Shapefile => "shapefile",
        Instead::FlatGeobuf => "flatgeobuf",
        Instead::Tiff => "tiff",
        Instead::Picture => "picture",
        Instead::Xml | Instead::Root(_) => "xml",
        Instead::Json => "json",
        Instead::Fit => "fit",
        Instead::Gpx => "gpx",
        Instead::Kml => "kml",
        Instead::Tcx => "tcx",
        Instead::WebPage => "page",
        Instead::Osm => "osm",
        Instead::Drawing => "drawing",
        Instead::Toml => "toml",
        Instead::Table => "table",
        Instead::Beginning(_) => "other",
    }
}

fn position(axis: Axis, why: &NoDegrees) -> Phrase {
    let property = ("property", Arg::Word(axis.property()));
    match why {
        NoDegrees::Missing => Phrase::of("gpx-missing", [property]),
        NoDegrees::NotFinite(found) => {
            Phrase::of("gpx-not-finite", [property, ("found", quote(found))])
        }
        NoDegrees::NoNumber { found, comma } if *comma => {
            let pointed = Excerpt {
                text: found.text.trim().replace(',', "."),
                cut: found.cut,
            };
            let pointed = ("pointed", quote(&pointed));
            Phrase::of("gpx-comma", [property, ("found", quote(found)), pointed])
        }
        NoDegrees::NoNumber { found, .. } => {
            Phrase::of("gpx-no-number", [property, ("found", quote(found))])
        }
        NoDegrees::Beyond { deg, swapped } => beyond(axis, *deg, *swapped),
    }
}

fn beyond(axis: Axis, deg: f64, swapped: bool) -> Phrase {
    let key = match axis {
        Axis::Latitude if swapped => "gpx-swapped",
        Axis::Latitude => "gpx-latitude",
        Axis::Longitude if (180.0..=360.0).contains(&deg) => "gpx-turned",
        Axis::Longitude => "gpx-longitude",
    };
    let turned = format!("{:.9}", deg - 360.0);
    let turned = turned.trim_end_matches('0').trim_end_matches('.');
    Phrase::of(key, [("deg", number(deg)), ("turned", number(turned))])
}

fn no_line(waypoints: usize, tracks: PartCount, routes: PartCount, voice: Voice) -> Phrase {
    let holds = |key: &str, n: usize, points: usize| -> Option<Said> {
        let args = [("n", Arg::Count(n)), ("points", Arg::Count(points))];
        (n > 0).then(|| voice.say(key, &args))
    };
    let held = [
        holds("gpx-holds-waypoints", waypoints, 0),
        holds("gpx-holds-tracks", tracks.parts, tracks.points),
        holds("gpx-holds-routes", routes.parts, routes.points),
    ];
    let held: Vec<Said> = held.into_iter().flatten().collect();
    let held = match held.as_slice() {
        [] => Arg::Said(voice.say("gpx-holds-nothing", &[])),
        held => row(held.to_vec()),
    };
    let points = tracks.points.max(routes.points);
    let key = if points > 1 || points == 1 && waypoints == 0 {
        "gpx-standing-line"
    } else {
        "gpx-no-line"
    };
    Phrase::of(key, [("held", held), ("waypoints", Arg::Count(waypoints))])
}

fn xml(why: &Xml) -> Phrase {
    match why {
        Xml::Second => Phrase::plain("xml-second"),
        Xml::TextOutside => Phrase::plain("xml-text-outside"),
        Xml::EndsBefore(tag) => Phrase::of("xml-ends-before", [("tag", name(*tag))]),
        Xml::Overlong(mib) => Phrase::of("xml-overlong", [("mib", number(mib))]),
        Xml::Bang => Phrase::plain("xml-bang"),
        Xml::Unclosed(what) => Phrase::of("xml-unclosed", [("what", Arg::Word(unclosed(*what)))]),
        Xml::Mismatched { found, expected } => Phrase::of(
            "xml-mismatched",
            [("found", quote(found)), ("expected", quote(expected))],
        ),
        Xml::Unmatched(found) => Phrase::of("xml-unmatched", [("found", quote(found))]),
        Xml::Ampersand => Phrase::plain("xml-ampersand"),
        Xml::Attribute(why) => Phrase::of("xml-attribute", [("why", Arg::Word(attribute(*why)))]),
        Xml::NotUtf8 => Phrase::plain("xml-not-utf8"),
        Xml::Encoding => Phrase::plain("xml-encoding"),
        Xml::Other(words) => Phrase::of("xml-other", [("words", name(words))]),
    }
}

fn unclosed(what: Unclosed) -> &'static str {
    match what {
        Unclosed::Instruction => "instruction",
        Unclosed::Declaration => "declaration",
        Unclosed::Comment => "comment",
        Unclosed::Doctype => "doctype",
        Unclosed::Cdata => "cdata",
        Unclosed::Tag => "tag",
        Unclosed::Value => "value",
    }
}

fn attribute(why: Attribute) -> &'static str {
    match why {
        Attribute::NoValue => "no-value",
        Attribute::NothingAfter => "nothing-after",
        Attribute::Unquoted => "unquoted",
        Attribute::Open => "open",
        Attribute::Twice => "twice",
    }
}
