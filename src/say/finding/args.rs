//! Words and figures for the placeables of each fact's message.

mod heights;
mod rope;

use super::{
    hours, line,
    placeable::{FactArgs, near, span_of},
    zones::{of_snow, of_zone},
};

use crate::{
    physics::assumed::Snow,
    plan::{
        cure::OneByOne,
        fact::{Fact, Slope},
        finding::At,
        name::PersonName,
    },
    say::{arg::Arg, fault, name::person, round::Round, setup, span::Said, voice::Voice},
};

/// All of one fact found at a place. Every fact is named, so that none is without words.
#[expect(clippy::too_many_lines, reason = "a line for each fact")]
pub(super) fn of<'a>(fact: &'a Fact, at: &'a At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::NeverOnHidden { .. }
        | Fact::SkiedUnroped { .. }
        | Fact::StrikeExact { .. }
        | Fact::StrikeUnknown { .. }
        | Fact::StrikeProposed { .. }
        | Fact::Along { .. }
        | Fact::BareIce { .. }
        | Fact::GapAssumed { .. }
        | Fact::ObservedLongAgo { .. }
        | Fact::UnropedByWord { .. }
        | Fact::ZoneMissed { .. } => of_zone(fact, at, voice),
        Fact::SnowOnBare { .. }
        | Fact::ThinSnow { .. }
        | Fact::KnotsNoBite { .. }
        | Fact::KnotsDoubtful { .. }
        | Fact::SnowUnknown { .. }
        | Fact::KnotsFewer { .. } => of_snow(fact, voice),
        Fact::TooSteep { .. }
        | Fact::AvalancheTerrain { .. }
        | Fact::SteepBareIce { .. }
        | Fact::SlipPullsAll { .. }
        | Fact::SteepBareUnroped { .. } => of_slope(fact, at),
        Fact::NoSetup { .. } | Fact::NearCap { .. } | Fact::TwoOverGap { .. } => of_spacing(fact),
        Fact::NoRope { .. }
        | Fact::NearRope { .. }
        | Fact::ThinRope { .. }
        | Fact::ReserveShort { .. }
        | Fact::NoReserve { .. }
        | Fact::NotReached { .. }
        | Fact::CoilHeavy { .. } => rope::of(fact, voice),
        Fact::HeldInNone { .. }
        | Fact::HeldInNoneOnce { .. }
        | Fact::HeldOffCentre { .. }
        | Fact::HaulTooWeak { .. }
        | Fact::PairWithoutKnots { .. }
        | Fact::AlwaysTiesNone { .. }
        | Fact::NoAnswer { .. } => of_fall(fact, at, voice),
        Fact::HeightsCompared { .. }
        | Fact::HeightsFarApart { .. }
        | Fact::AscentsApart { .. }
        | Fact::SlopePartlyUnknown { .. }
        | Fact::TerrainVoid { .. }
        | Fact::TerrainFlattens { .. }
        | Fact::ConvexGround { .. } => heights::of(fact, at, voice),
        Fact::BridgesLate { .. }
        | Fact::BackLate { .. }
        | Fact::SlowerBridgesLate { .. }
        | Fact::SlowerBackLate { .. }
        | Fact::HourBeforeStart { .. }
        | Fact::LongStage { .. }
        | Fact::DarkOnRope { .. }
        | Fact::HaltOnHidden { .. } => hours::of(fact, at, voice),
        Fact::CutOff { .. }
        | Fact::TurnFound { .. }
        | Fact::ClimbUnknown { .. }
        | Fact::IceWithoutGap { .. }
        | Fact::MayRunAlong { .. }
        | Fact::JumpOverIce { .. }
        | Fact::StageGapOverIce { .. } => line::of(fact, at, voice),
        // Their sentences have no figures.
        Fact::LastOnIce {}
        | Fact::BendBlocksHaul {}
        | Fact::KnotsBlockHaul {}
        | Fact::SlopeUnknown {}
        | Fact::NoInventory {}
        | Fact::NoHeights {}
        | Fact::OnSkis {}
        | Fact::BridgesSoft {}
        | Fact::NoRopeNamed {}
        | Fact::SunInUtc {} => Vec::new(),
    }
}

fn word(of: Slope) -> &'static str {
    match of {
        Slope::Line => "line",
        Slope::Ground => "ground",
    }
}

fn of_slope<'a>(fact: &Fact, at: &At) -> FactArgs<'a> {
    match fact {
        Fact::SteepBareIce {
            slope_deg,
            length_m,
        }
        | Fact::SlipPullsAll {
            slope_deg,
            length_m,
        }
        | Fact::SteepBareUnroped {
            slope_deg,
            length_m,
        } => vec![
            ("slope", Arg::Degrees(*slope_deg, 0, Round::Up)),
            ("length", Arg::Whole(*length_m)),
            ("all", Arg::yes(is_all(at, *length_m))),
            span_of(at),
        ],
        Fact::TooSteep {
            slope_deg,
            of,
            length_m,
        } => vec![
            ("of", Arg::Word(word(*of))),
            ("slope", Arg::Degrees(*slope_deg, 0, Round::Nearest)),
            ("length", Arg::Whole(*length_m)),
            ("all", Arg::yes(is_all(at, *length_m))),
            span_of(at),
        ],
        Fact::AvalancheTerrain { slope_deg, of } => vec![
            ("of", Arg::Word(word(*of))),
            ("slope", Arg::Degrees(*slope_deg, 0, Round::Nearest)),
            near(at),
        ],
        _ => Vec::new(),
    }
}

/// Whether a place is all that is told of, not only its worst part.
fn is_all(at: &At, length_m: f64) -> bool {
    matches!(at, At::Leg(place) if place.to_m - place.from_m > length_m - 1.0)
}

/// `, the line climbing at 12°`; nothing where no heights are known.
fn slope_beside(down_deg: Option<f64>, voice: Voice) -> Said {
    match down_deg {
        Some(deg) => voice.say("slope-beside", &setup::down(deg)),
        None => Said::default(),
    }
}

/// The fall of one person.
type OneFall<'f> = (&'f PersonName, Snow, f64, Option<f64>);

fn not_held<'f>(
    (falls, snow, length_m, down_deg): OneFall<'f>,
    gap_given: bool,
    order: &[PersonName],
    at: &At,
    voice: Voice,
) -> FactArgs<'f> {
    let order = order.iter().map(|p| person(&p.called, voice));
    let order: Vec<Said> = order.collect();
    vec![
        ("given", Arg::yes(gap_given)),
        ("better", Arg::yes(!order.is_empty())),
        ("order", Arg::Said(Said::join(order, ", "))),
        ("who", Arg::Said(person(&falls.called, voice))),
        ("snow", Arg::Said(setup::snow(snow, voice))),
        ("length", Arg::Whole(length_m)),
        ("slope", Arg::Said(slope_beside(down_deg, voice))),
        ("all", Arg::yes(is_all(at, length_m))),
        span_of(at),
    ]
}

fn of_fall<'a>(fact: &'a Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::HeldInNone {
            falls,
            snow,
            length_m,
            down_deg,
            gap_given,
            order,
        }
        | Fact::HeldInNoneOnce {
            falls,
            snow,
            length_m,
            down_deg,
            gap_given,
            order,
        } => {
            let fall = (falls, *snow, *length_m, *down_deg);
            not_held(fall, *gap_given, order, at, voice)
        }
        Fact::HeldOffCentre {
            falls,
            snow,
            length_m,
            down_deg,
            order,
        } => {
            let fall = (falls, *snow, *length_m, *down_deg);
            not_held(fall, true, order, at, voice)
        }
        Fact::HaulTooWeak { falls, haul } => vec![
            ("who", Arg::Said(person(&falls.called, voice))),
            ("answer", Arg::Said(setup::haul_answer(haul, voice))),
        ],
        Fact::PairWithoutKnots { why } | Fact::AlwaysTiesNone { why } => {
            vec![("why", Arg::Said(setup::knots_why(why, voice)))]
        }
        Fact::NoAnswer { reason } => {
            vec![("reason", Arg::Said(fault::refusal(reason, voice)))]
        }
        _ => Vec::new(),
    }
}

fn of_spacing(fact: &Fact) -> FactArgs<'_> {
    match fact {
        Fact::NoSetup {
            people,
            effective_gap_m,
            need_m,
            cap_m,
        } => vec![
            ("people", Arg::Count(*people)),
            ("gap", Arg::Needed(*effective_gap_m)),
            ("need", Arg::Needed(*need_m)),
            ("cap", Arg::There(*cap_m)),
        ],
        Fact::NearCap { spacing_m, cap_m } => vec![
            ("spacing", Arg::Needed(*spacing_m)),
            ("cap", Arg::There(*cap_m)),
        ],
        Fact::TwoOverGap {
            over,
            left,
            effective_gap_m,
            spacing_m,
            one_by_one,
        } => alone(one_by_one.as_ref())
            .into_iter()
            .chain([
                ("over", Arg::Count(*over)),
                ("left", Arg::Count(*left)),
                ("gap", Arg::Needed(*effective_gap_m)),
                ("spacing", Arg::Needed(*spacing_m)),
            ])
            .collect(),
        _ => Vec::new(),
    }
}

/// How a team is tied so that one at a time is over a gap, where it can be.
fn alone<'a>(one_by_one: Option<&OneByOne>) -> FactArgs<'a> {
    let metres = |of: fn(&OneByOne) -> f64| one_by_one.map_or(0.0, of);
    let spacing_m = metres(|alone| alone.spacing_m);
    let figure = one_by_one.and_then(|alone| alone.figure);
    let line = figure.map(|name| format!("{name} = {spacing_m}"));
    vec![
        ("alone", Arg::yes(one_by_one.is_some())),
        ("apart", Arg::Needed(spacing_m)),
        ("needed", Arg::Needed(metres(|alone| alone.needed_m))),
        ("named", Arg::yes(line.is_some())),
        ("figure", Arg::Figure(line.unwrap_or_default())),
    ]
}
