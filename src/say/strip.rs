//! What is told of zones that were made by kilometre.

use crate::{
    plan::name::ZoneName,
    say::{arg::Arg, name, plain, round::Round, span::Said, voice::Voice},
    strip::{HALF_WIDTH_M, LineStrip, append::Appended},
    trip::{route::Stretch, zone::Zone},
};

/// Square metres in a square kilometre.
const KM2: f64 = 1e6;
/// Places that are told before the rest is counted. Our judgement.
const PLACES_TOLD: usize = 4;
/// Less ground is told in square metres. Our judgement.
const LITTLE_M2: f64 = 1e4;

/// How a zone came about, for who reads of it later: nobody saw this outline.
///
/// ```
/// use schrund::{say::strip::source, trip::route::Stretch};
///
/// let said = source("tour.gpx", Stretch { from_m: 5900.0, to_m: 8300.0 }, 150.0, Default::default());
/// assert_eq!(said.to_string(), "strip along tour.gpx, 5.90–8.30 km, 150 m to either side");
/// ```
#[must_use]
pub fn source(route: &str, stretch: Stretch, half_width_m: f64, voice: Voice) -> Said {
    let args = [
        ("route", Arg::Name(route)),
        ("where", between(stretch)),
        ("half", Arg::Measured(half_width_m)),
    ];
    voice.say("strip-source", &args)
}

/// What was written into a file, a sentence a line, without full stops.
#[must_use]
pub fn written(file: &str, strips: &[LineStrip], appended: &Appended, voice: Voice) -> Vec<Said> {
    let mut told = Vec::new();
    let file = ("file", Arg::Name(file));
    for (i, strip) in strips.iter().enumerate() {
        let number = appended
            .zones
            .and_then(|zones| (zones + i + 1).checked_sub(strips.len()));
        let zone = ("zone", Arg::Said(zone(strip, number, voice)));
        told.push(voice.say(
            "strip-wrote",
            &wrote(voice, strip, file.clone(), zone.clone()),
        ));
        if !strip.again.is_empty() {
            let places = strip.again.iter().take(PLACES_TOLD);
            let places = places.map(|again| voice.shown(&between(*again)));
            let more = strip.again.len().saturating_sub(PLACES_TOLD);
            let args = [
                zone,
                ("where", Arg::Said(Said::join(places, ", "))),
                ("more", Arg::Count(more)),
            ];
            told.push(voice.say("strip-again", &args));
        }
    }
    if strips.iter().any(|strip| strip.zone.gap.assumed) {
        told.push(voice.say("strip-no-gap", &[]));
    }
    told.push(match appended.zones {
        Some(zones) => voice.say("strip-zones", &[file, ("zones", Arg::Count(zones))]),
        None => voice.say("strip-zones-unknown", &[file]),
    });
    told
}

fn wrote<'a>(
    voice: Voice,
    strip: &LineStrip,
    file: (&'static str, Arg<'a>),
    zone: (&'static str, Arg<'a>),
) -> [(&'static str, Arg<'a>); 11] {
    let Zone {
        gap, snow_depth_m, ..
    } = &strip.zone;
    let ours = (strip.half_width_m - HALF_WIDTH_M).abs() < f64::EPSILON;
    [
        file,
        zone,
        ("where", between(strip.stretch)),
        ("length", Arg::Walked(strip.stretch.length_m())),
        ("half", Arg::Measured(strip.half_width_m)),
        ("ours", Arg::yes(ours)),
        ("area", Arg::Figure(area(strip.area_m2, voice))),
        ("gap-given", Arg::yes(!gap.assumed)),
        ("gap", Arg::Needed(gap.max_m)),
        ("snow-given", Arg::yes(snow_depth_m.is_some())),
        ("snow", Arg::Measured(snow_depth_m.unwrap_or_default())),
    ]
}

/// Square kilometres, or square metres of little ground.
fn area(square_m: f64, voice: Voice) -> String {
    if square_m < LITTLE_M2 {
        return format!("{} m²", voice.fixed(square_m, 0, Round::Nearest));
    }
    format!("{} km²", voice.fixed(square_m / KM2, 2, Round::Nearest))
}

/// By its number in the file, where that is known.
fn zone(strip: &LineStrip, number: Option<usize>, voice: Voice) -> Said {
    let called = strip.zone.name.clone();
    match (number, called) {
        (Some(zone), name) => name::zone(&ZoneName { zone, name }, voice),
        (None, Some(called)) => {
            let called = plain::line(&called);
            voice.say("strip-unnumbered-named", &[("name", Arg::Name(&called))])
        }
        (None, None) => voice.say("strip-unnumbered", &[]),
    }
}

fn between(stretch: Stretch) -> Arg<'static> {
    Arg::Between(stretch.from_m, stretch.to_m)
}
