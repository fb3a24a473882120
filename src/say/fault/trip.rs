//! Trip files, flags and practice sets in words.

mod halts;

use super::{
    instead,
    phrase::{Phrase, figure, list, name, number},
    quote::{cut, quoted},
    refusal,
    stages::stages,
};
use crate::{
    fault::{
        plan::{FarZone, InPlan},
        trip::{Asked, InPractice, InTrip, Setter},
    },
    plan::name::ZoneName,
    say::{arg::Arg, name::zone, place, span::Said, voice::Voice},
};

pub(super) fn phrase(what: &InTrip, voice: Voice) -> Phrase {
    match what {
        InTrip::Nobody => Phrase::plain("trip-nobody"),
        InTrip::TooMany { people, most } => too_many(*people, *most),
        InTrip::TooManyRopes { ropes, most } => too_many_ropes(*ropes, *most),
        InTrip::NobodySaid => Phrase::plain("trip-nobody-said"),
        InTrip::NoRope => Phrase::plain("trip-no-rope"),
        InTrip::Mass { .. }
        | InTrip::Gap { .. }
        | InTrip::RopeLength { .. }
        | InTrip::RopeAcross { .. } => measure(what),
        InTrip::Pounds { kg, most_kg } => pounds(kg, *most_kg),
        InTrip::NoStage { asked, has } => no_stage(asked, has, voice),
        InTrip::Teams {
            sizes,
            people,
            within: [least, most],
        } => Phrase::of(
            "trip-teams",
            [
                ("sizes", list(sizes.iter().map(f64::to_string))),
                ("people", Arg::Count(*people)),
                ("least", Arg::Count(*least)),
                ("most", Arg::Count(*most)),
            ],
        ),
        InTrip::BridgesWithoutStart { .. }
        | InTrip::BackWithoutStart { .. }
        | InTrip::StartBefore { .. }
        | InTrip::StartBeyond { .. }
        | InTrip::PlaceWithoutStart { .. }
        | InTrip::HaltMinutes { .. }
        | InTrip::HaltNowhere
        | InTrip::HaltBefore { .. }
        | InTrip::HaltBeyond { .. }
        | InTrip::HaltOnWhichStage { .. }
        | InTrip::NoWaypoint { .. }
        | InTrip::WaypointAway { .. } => halts::phrase(what, voice),
        InTrip::NoDay { name, found } => given("trip-no-day", name, found),
        InTrip::NoOffset { name, found } => given("trip-no-offset", name, found),
        InTrip::NoFigure { name, near } => no_figure("trip-no-figure", name, near.as_deref()),
        InTrip::SetElsewhere { name: listed, by } => Phrase::of(
            "trip-set-elsewhere",
            [("name", quoted(listed)), ("by", Arg::Word(setter(*by)))],
        ),
        InTrip::NoWord {
            name: choice,
            found,
            words,
        } => given("trip-no-word", choice, found).and(vec![("words", list(words.iter().copied()))]),
        InTrip::NoTime { name, found } => given("trip-no-time", name, found),
        InTrip::NoNumber { name, found } => given("trip-no-number", name, found),
        InTrip::Figure(why) => refusal::phrase(why),
        InTrip::NotLaid { file, what } => Phrase::of(
            "trip-not-laid",
            [
                ("file", name(file)),
                ("property", Arg::Word(what.property())),
            ],
        ),
    }
}

fn given(key: &'static str, called: &str, found: &str) -> Phrase {
    Phrase::of(key, [("name", quoted(called)), ("found", quoted(found))])
}

/// `key` where no known name is like it.
fn no_figure(key: &'static str, given: &str, near: Option<&str>) -> Phrase {
    let unknown = ("name", quoted(given));
    match near {
        Some(near) => Phrase::of("no-figure-but", [unknown, ("near", name(near))])
            .and(instead::unit_args(given, near)),
        None => Phrase::of(key, [unknown]),
    }
}

fn too_many(people: Option<usize>, most: usize) -> Phrase {
    let most = ("most", Arg::Count(most));
    match people {
        Some(people) => Phrase::of("trip-too-many", [("people", Arg::Count(people)), most]),
        None => Phrase::of("trip-far-too-many", [most]),
    }
}

fn too_many_ropes(ropes: usize, most: usize) -> Phrase {
    let args = [("ropes", Arg::Count(ropes)), ("most", Arg::Count(most))];
    Phrase::of("trip-too-many-ropes", args)
}

/// Figures as they were given: files and flags are metric.
fn measure(what: &InTrip) -> Phrase {
    match what {
        InTrip::RopeLength {
            length_m,
            within_m: [min, max],
        } => Phrase::of(
            "trip-rope-length",
            [
                ("length", figure(length_m, "m")),
                ("min", number(min)),
                ("max", figure(max, "m")),
            ],
        ),
        InTrip::Gap {
            gap_m,
            within_m: [min, max],
        } => Phrase::of(
            "trip-gap",
            [
                ("gap", figure(gap_m, "m")),
                ("min", number(min)),
                ("max", figure(max, "m")),
            ],
        ),
        InTrip::RopeAcross {
            diameter_mm,
            within_mm: [min, max],
        } => Phrase::of(
            "trip-rope-across",
            [
                ("across", figure(diameter_mm, "mm")),
                ("min", number(min)),
                ("max", figure(max, "mm")),
            ],
        ),
        InTrip::Mass {
            person,
            name: called,
            kg,
            min_kg,
            max_kg,
            decimals_of,
        } => Phrase::of(
            "trip-mass",
            [
                (
                    "person",
                    called.as_deref().map_or(Arg::Count(*person), quoted),
                ),
                ("mass", figure(kg, "kg")),
                ("min", number(min_kg)),
                ("max", number(max_kg)),
                ("decimals", Arg::yes(decimals_of.is_some())),
                ("pointed", number(pointed(*decimals_of, *kg))),
            ],
        ),
        _ => Phrase::plain("trip-nobody"),
    }
}

/// A mass with its decimals behind a point.
fn pointed(whole: Option<f64>, decimals: f64) -> String {
    whole.map_or_else(String::new, |whole| format!("{whole}.{decimals}"))
}

fn no_stage(asked: &Asked, has: &[(usize, Option<String>)], voice: Voice) -> Phrase {
    let asked = match asked {
        Asked::Number(n) => Arg::Count(*n),
        Asked::Name(called) => name(format!("\"{}\"", cut(called))),
    };
    let stages = stages(has, voice);
    Phrase::of("trip-no-stage", [("asked", asked), ("stages", stages)])
}

fn setter(by: Setter) -> &'static str {
    match by {
        Setter::Practice => "practice",
        Setter::Party => "party",
        Setter::Person => "person",
        Setter::Rope => "rope",
        Setter::Terrain => "terrain",
        Setter::Gap => "gap",
        Setter::Sold => "sold",
        Setter::Trip => "trip",
    }
}

pub(super) fn practice(what: &InPractice) -> Phrase {
    match what {
        InPractice::NoSet {
            name: set,
            near,
            sets,
        } => Phrase::of(
            "practice-no-set",
            [
                ("name", quoted(set)),
                ("has-near", Arg::yes(near.is_some())),
                ("near", name(near.unwrap_or_default())),
                ("sets", list(sets.iter().copied())),
            ],
        ),
        InPractice::NoFigure { name, near } => no_figure("practice-no-figure", name, *near),
        InPractice::Missing(figure) => Phrase::of("practice-missing", [("name", name(*figure))]),
        InPractice::Growing { few, many } => Phrase::of(
            "practice-growing",
            [("few", Arg::Count(*few)), ("many", Arg::Count(*many))],
        ),
        InPractice::Unit { found, takes } => Phrase::of(
            "practice-unit",
            [("found", name(found)), ("takes", name(takes))],
        ),
        InPractice::Figure(why) | InPractice::BuiltIn(why) => refusal::phrase(why),
    }
}

/// Masses that may be pounds, in kilograms as they are typed.
fn pounds(kg: &[f64], most_kg: f64) -> Phrase {
    let whole: Vec<String> = kg.iter().map(|kg| format!("{kg:.0}")).collect();
    Phrase::of(
        "trip-pounds",
        [
            ("people", Arg::Count(kg.len())),
            ("most", figure(most_kg, "kg")),
            ("typed", name(whole.join(","))),
            ("listed", name(whole.join(", "))),
        ],
    )
}

/// From here on files are of different places rather than drawn too short, metres. Our judgement.
const FAR_OFF_M: f64 = 20_000.0;

fn no_zone_met(zones: usize, far: &[FarZone], voice: Voice) -> Phrase {
    let nearest = far.first();
    let told = nearest.map_or_else(Said::default, |far| far_zone(far, voice));
    let off = nearest.is_none_or(|nearest| nearest.away_m >= FAR_OFF_M);
    Phrase::of(
        "no-zone-met",
        [
            ("zones", Arg::Count(zones)),
            ("far", Arg::yes(nearest.is_some())),
            ("nearest", Arg::Said(told)),
            ("far-off", Arg::yes(off)),
            (
                "more",
                Arg::Count(zones.saturating_sub(usize::from(nearest.is_some()))),
            ),
        ],
    )
}

fn far_zone(far: &FarZone, voice: Voice) -> Said {
    let named = ZoneName {
        zone: far.zone,
        name: far.name.clone(),
    };
    let toward = place::wind(far.bearing_deg);
    let args = [
        ("zone", Arg::Said(zone(&named, voice))),
        ("away", Arg::Walked(far.away_m)),
        ("toward", Arg::Word(toward)),
        ("at", Arg::Said(Said::figure(place::degrees(far.at)))),
    ];
    Phrase::of("far-zone", args).says(voice)
}

pub(super) fn plan(what: &InPlan, voice: Voice) -> Phrase {
    match what {
        InPlan::Alone(people) => Phrase::of("alone", [("people", Arg::Count(*people))]),
        InPlan::NoZoneMet { zones, far } => no_zone_met(*zones, far, voice),
        InPlan::Window {
            columns,
            rows,
            most,
        } => Phrase::of(
            "relief-window",
            [
                ("columns", Arg::Count(*columns)),
                ("rows", Arg::Count(*rows)),
                ("most", Arg::Count(*most)),
            ],
        ),
    }
}
