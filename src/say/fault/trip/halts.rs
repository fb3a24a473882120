//! What is wrong with hours and halts, in words.

use crate::{
    fault::trip::InTrip,
    say::{
        arg::Arg,
        fault::{
            phrase::{Phrase, figure, name, number},
            quote::quoted,
            stages::stages,
        },
        round::Round,
        voice::Voice,
    },
    trip::clock::Clock,
};

/// Figures as they were given: files and flags are metric.
pub(super) fn phrase(what: &InTrip, voice: Voice) -> Phrase {
    match what {
        InTrip::HaltMinutes {
            minutes,
            within: [min, max],
        } => Phrase::of(
            "halt-minutes",
            [
                ("minutes", figure(minutes, "min")),
                ("min", number(min)),
                ("max", figure(max, "min")),
            ],
        ),
        InTrip::HaltBefore { at_km } => Phrase::of("halt-before", [("at", figure(at_km, "km"))]),
        InTrip::BridgesWithoutStart { until_min } => {
            Phrase::of("trip-no-start", [("until", clock(*until_min))])
        }
        InTrip::BackWithoutStart { by_min } => {
            Phrase::of("trip-no-start-back", [("by", clock(*by_min))])
        }
        InTrip::StartBefore { at_km } => Phrase::of("start-before", [("at", figure(at_km, "km"))]),
        InTrip::PlaceWithoutStart { at_km } => {
            Phrase::of("place-without-start", [("at", figure(at_km, "km"))])
        }
        InTrip::StartBeyond { at_km, length_m } => beyond("start-beyond", *at_km, *length_m),
        InTrip::HaltBeyond { at_km, length_m } => beyond("halt-beyond", *at_km, *length_m),
        InTrip::HaltOnWhichStage { has } => {
            Phrase::of("halt-on-which-stage", [("stages", stages(has, voice))])
        }
        InTrip::NoWaypoint {
            name: called,
            near,
            has,
        } => no_waypoint(called, near.as_deref(), *has),
        InTrip::WaypointAway {
            name: called,
            away_m,
            margin_m,
        } => Phrase::of(
            "halt-waypoint-away",
            [
                ("name", quoted(called)),
                ("away", figure(Round::Up.fixed(*away_m, 0), "m")),
                ("margin", figure(margin_m, "m")),
            ],
        ),
        _ => Phrase::plain("halt-nowhere"),
    }
}

/// A kilometre that lies beyond the end of the line.
fn beyond(key: &'static str, at_km: f64, length_m: f64) -> Phrase {
    let length_km = Round::Down.fixed(length_m / 1000.0, 2);
    let args = [
        ("at", figure(at_km, "km")),
        ("length", figure(length_km, "km")),
    ];
    Phrase::of(key, args)
}

fn no_waypoint(called: &str, near: Option<&str>, has: usize) -> Phrase {
    let (called, has) = (("name", quoted(called)), ("has", Arg::Count(has)));
    match near {
        Some(near) => Phrase::of("halt-no-waypoint-but", [called, ("near", name(near))]),
        None => Phrase::of("halt-no-waypoint", [called, has]),
    }
}

fn clock(min: f64) -> Arg<'static> {
    number(Clock::of_min(min))
}
