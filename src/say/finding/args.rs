//! Words and figures for the placeables of each fact's message.

use super::whereabouts;
use crate::{
    plan::{
        fact::{Fact, HeightsApart, RopeLack, RouteEnd, Slope, TerrainVoid},
        finding::At,
        name::IceNames,
        place::{HeightsFrom, JumpSummary, Piece, RollOver},
    },
    say::{
        arg::Arg,
        fault,
        name::{ice, person, rope, zone},
        round::Round,
        setup,
        span::Said,
        voice::Voice,
    },
};

/// A placeable's name with what stands in its place.
type FactArgs<'a> = Vec<(&'static str, Arg<'a>)>;

/// All of one fact found at a place.
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
        | Fact::BridgesLate { .. }
        | Fact::KnotsNoBite { .. }
        | Fact::ZoneMissed { .. } => of_zone(fact, at, voice),
        Fact::TooSteep { .. }
        | Fact::AvalancheTerrain { .. }
        | Fact::SteepBareIce { .. }
        | Fact::SlipPullsAll { .. } => of_slope(fact, at),
        Fact::NoSetup { .. } | Fact::NearCap { .. } | Fact::TwoOverGap { .. } => of_spacing(fact),
        Fact::NoRope { .. } | Fact::NearRope { .. } | Fact::CoilHeavy { .. } => {
            of_rope(fact, voice)
        }
        Fact::HeldInNone { .. }
        | Fact::MiddleNotReached { .. }
        | Fact::HaulTooWeak { .. }
        | Fact::PairWithoutKnots { .. }
        | Fact::NoAnswer { .. } => of_fall(fact, voice),
        Fact::CutOff { .. }
        | Fact::GlacierWithoutZone { .. }
        | Fact::MayRunAlong { .. }
        | Fact::JumpOverIce { .. }
        | Fact::StageGapOverIce { .. } => of_line(fact, at, voice),
        Fact::HeightsCompared { .. }
        | Fact::HeightsFarApart { .. }
        | Fact::TerrainVoid { .. }
        | Fact::TerrainFlattens { .. }
        | Fact::ConvexGround { .. } => of_heights(fact, at, voice),
        Fact::KnotsDoubtful {}
        | Fact::SnowUnknown {}
        | Fact::LastOnIce {}
        | Fact::KnotsBlockHaul {}
        | Fact::SlopeUnknown {}
        | Fact::NoHeights {}
        | Fact::OnSkis {}
        | Fact::NoRopeNamed {} => Vec::new(),
    }
}

fn of_zone<'a>(fact: &'a Fact, at: &'a At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::NeverOnHidden { zone: z }
        | Fact::StrikeExact { zone: z }
        | Fact::StrikeUnknown { zone: z } => vec![("zone", Arg::Said(zone(z, voice)))],
        Fact::SkiedUnroped {
            zone: z,
            snow_depth_m,
            gap_m,
        } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("snow", Arg::There(*snow_depth_m)),
            ("gap", Arg::Needed(*gap_m)),
        ],
        Fact::Along { zone: z } => vec![("zone", Arg::Said(zone(z, voice))), near(at)],
        Fact::BareIce { zone: z, roped } => {
            vec![("zone", Arg::Said(zone(z, voice))), ("roped", yes(*roped))]
        }
        Fact::GapAssumed { zone: z, gap_m } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("gap", Arg::Needed(*gap_m)),
        ],
        Fact::KnotsNoBite { zones } => {
            let named = zones.iter().map(|z| zone(z, voice));
            vec![("zones", Arg::Said(Said::join(named, ", ")))]
        }
        Fact::ZoneMissed { zones } => vec![
            ("count", Arg::Count(zones.len())),
            ("numbers", Arg::Said(Said::figure(ranges(zones)))),
        ],
        Fact::BridgesLate {
            zone: z,
            left_at,
            until,
        } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("left", Arg::Figure(left_at.to_string())),
            ("until", Arg::Figure(until.to_string())),
        ],
        Fact::StrikeProposed {
            zone: z,
            strike_deg,
            doubt_deg,
            counts,
        } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("strike", Arg::Degrees(*strike_deg, 0, Round::Nearest)),
            ("doubt", Arg::Degrees(*doubt_deg, 0, Round::Nearest)),
            ("counts", yes(*counts)),
        ],
        _ => Vec::new(),
    }
}

fn of_slope<'a>(fact: &Fact, at: &At) -> FactArgs<'a> {
    let slope = |deg: f64| ("slope", Arg::Degrees(deg, 0, Round::Nearest));
    match fact {
        Fact::SteepBareIce { slope_deg } | Fact::SlipPullsAll { slope_deg } => {
            vec![slope(*slope_deg)]
        }
        Fact::TooSteep { slope_deg, of } | Fact::AvalancheTerrain { slope_deg, of } => {
            let of = match of {
                Slope::Line => "line",
                Slope::Ground => "ground",
            };
            vec![("of", Arg::Word(of)), slope(*slope_deg), near(at)]
        }
        _ => Vec::new(),
    }
}

fn of_rope(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
        Fact::NoRope { needed_m, lack } => rope_lack(*needed_m, lack, voice),
        Fact::NearRope { rope: r, spare_m } => vec![
            ("rope", Arg::Said(rope(r, voice))),
            ("spare", Arg::There(*spare_m)),
        ],
        Fact::CoilHeavy {
            coil_m,
            coil_kg,
            most_m,
            most_kg,
        } => vec![
            ("coil", Arg::Needed(*coil_m)),
            ("mass", Arg::Kilograms(*coil_kg, Round::Up)),
            ("most", Arg::There(*most_m)),
            ("most-mass", Arg::Kilograms(*most_kg, Round::Down)),
        ],
        _ => Vec::new(),
    }
}

fn of_fall(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
        Fact::HeldInNone { falls, snow } => vec![
            ("who", Arg::Said(person(&falls.called, voice))),
            ("snow", Arg::Said(setup::snow(*snow, voice))),
        ],
        Fact::MiddleNotReached {
            falls,
            free_m,
            needs_m,
        } => vec![
            ("who", Arg::Said(person(&falls.called, voice))),
            ("free", Arg::There(*free_m)),
            ("needs", Arg::Needed(*needs_m)),
        ],
        Fact::HaulTooWeak { falls, haul } => vec![
            ("who", Arg::Said(person(&falls.called, voice))),
            ("answer", Arg::Said(setup::haul_answer(haul, voice))),
        ],
        Fact::PairWithoutKnots { why } => vec![("why", Arg::Said(setup::knots_why(why, voice)))],
        Fact::NoAnswer { reason } => {
            vec![("reason", Arg::Said(fault::refusal(reason, voice)))]
        }
        _ => Vec::new(),
    }
}

fn of_line<'a>(fact: &Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::CutOff { at } => vec![("end", Arg::Word(route_end(*at)))],
        Fact::GlacierWithoutZone { length_m } => {
            vec![("length", Arg::Whole(*length_m)), span_of(at)]
        }
        Fact::MayRunAlong { pieces } => contours(pieces),
        Fact::JumpOverIce { jumps, ice } => over_ice(jumps, ice, voice),
        Fact::StageGapOverIce {
            before,
            after,
            length_m,
            ice,
        } => vec![
            ("before", Arg::Count(*before)),
            ("after", Arg::Count(*after)),
            ("length", Arg::Whole(*length_m)),
            ("ice", Arg::Said(self::ice(ice, voice))),
        ],
        _ => Vec::new(),
    }
}

/// How often, how far in all, and the longest jump.
fn over_ice<'a>(jumps: &[JumpSummary], under: &IceNames, voice: Voice) -> FactArgs<'a> {
    let longest = jumps
        .iter()
        .max_by(|a, b| a.length_m.total_cmp(&b.length_m));
    let (at_m, longest_m) = longest.map_or((0.0, 0.0), |j| (j.at_m, j.length_m));
    vec![
        ("count", Arg::Count(jumps.len())),
        ("all", Arg::Whole(jumps.iter().map(|j| j.length_m).sum())),
        ("longest", Arg::Whole(longest_m)),
        ("at", Arg::Walked(at_m)),
        ("ice", Arg::Said(ice(under, voice))),
    ]
}

fn of_heights<'a>(fact: &Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::HeightsCompared { apart } | Fact::HeightsFarApart { apart } => heights(apart, voice),
        Fact::TerrainVoid { void } => terrain_void(void, at, voice),
        Fact::TerrainFlattens { cell_m } => vec![("cell", Arg::Whole(*cell_m))],
        Fact::ConvexGround { places } => convex(places, voice),
        _ => Vec::new(),
    }
}

fn convex<'a>(places: &[RollOver], voice: Voice) -> FactArgs<'a> {
    let each = places.iter().map(|p| {
        let steeper = Arg::Degrees(p.steepens_deg, 0, Round::Nearest);
        voice.say(
            "convex-place",
            &[("at", Arg::Walked(p.at_m)), ("steeper", steeper)],
        )
    });
    vec![("places", Arg::Said(Said::join(each, ", ")))]
}

fn yes(it_is: bool) -> Arg<'static> {
    Arg::Word(if it_is { "yes" } else { "no" })
}

/// The chainage of the place.
fn near<'a>(at: &At) -> (&'static str, Arg<'a>) {
    let at_m = match at {
        At::Leg(place) => place.from_m,
        _ => 0.0,
    };
    ("at", Arg::Walked(at_m))
}

fn span_of<'a>(at: &At) -> (&'static str, Arg<'a>) {
    let (from_m, to_m) = match at {
        At::Leg(place) => (place.from_m, place.to_m),
        _ => (0.0, 0.0),
    };
    ("span", Arg::Between(from_m, to_m))
}

fn route_end(end: RouteEnd) -> &'static str {
    match end {
        RouteEnd::Begin => "begin",
        RouteEnd::End => "end",
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
        } => vec![
            ("over", Arg::Count(*over)),
            ("left", Arg::Count(*left)),
            ("gap", Arg::Needed(*effective_gap_m)),
            ("spacing", Arg::Needed(*spacing_m)),
        ],
        _ => Vec::new(),
    }
}

fn rope_lack(needed_m: f64, lack: &RopeLack, voice: Voice) -> FactArgs<'_> {
    let mut args = vec![("needed", Arg::Needed(needed_m))];
    let word = match lack {
        RopeLack::Short { rope: r, short_m } => {
            args.push(("rope", Arg::Said(rope(r, voice))));
            args.push(("short", Arg::Needed(*short_m)));
            "short"
        }
        RopeLack::NoneLeft { team } => {
            args.push(("team", Arg::Count(*team)));
            "none-left"
        }
        RopeLack::NoneSold => "none-sold",
    };
    args.push(("lack", Arg::Word(word)));
    args
}

fn heights<'a>(apart: &HeightsApart, voice: Voice) -> FactArgs<'a> {
    vec![
        ("median", Arg::Said(above(apart.median_m, voice))),
        ("worst", Arg::Said(above(apart.worst_m, voice))),
        ("at", Arg::Walked(apart.worst_at_m)),
        ("used", Arg::Said(setup::heights_from(apart.used, voice))),
    ]
}

/// `12 m above`, `12 m below` or `within a metre of`.
fn above(by_m: f64, voice: Voice) -> Said {
    let by = [("by", Arg::Whole(by_m.abs()))];
    match by_m.round() {
        m if m > 0.0 => voice.say("height-above", &by),
        m if m < 0.0 => voice.say("height-below", &by),
        _ => voice.say("height-level", &[]),
    }
}

fn terrain_void<'a>(void: &TerrainVoid, at: &At, voice: Voice) -> FactArgs<'a> {
    let place = match (void.void_m, void.used) {
        (None, _) => "nowhere",
        (Some(_), HeightsFrom::TerrainModel) => "model",
        (Some(_), HeightsFrom::RouteFile) => "file",
    };
    vec![
        ("where", Arg::Word(place)),
        ("stage", Arg::Said(whereabouts::place(at, voice))),
        ("metres", Arg::Whole(void.void_m.unwrap_or_default())),
        ("first", Arg::Walked(void.first_m.unwrap_or_default())),
        ("other", yes(void.file_has_heights)),
    ]
}

/// How often, how far in all, and the longest piece.
fn contours<'a>(pieces: &[Piece]) -> FactArgs<'a> {
    let length_m = |p: &Piece| p.to_m - p.from_m;
    let longer = |a: &&Piece, b: &&Piece| length_m(a).total_cmp(&length_m(b));
    let longest = pieces.iter().max_by(longer);
    let (from_m, to_m) = longest.map_or((0.0, 0.0), |p| (p.from_m, p.to_m));
    vec![
        ("count", Arg::Count(pieces.len())),
        ("all", Arg::Whole(pieces.iter().map(length_m).sum())),
        ("longest", Arg::Between(from_m, to_m)),
    ]
}

/// Rising numbers with neighbours drawn together: `1–57, 59, 61–80`.
fn ranges(numbers: &[usize]) -> String {
    let runs = numbers.chunk_by(|a, b| a + 1 == *b);
    let run = |run: &[usize]| match run {
        [first, .., last] => format!("{first}–{last}"),
        [only] => only.to_string(),
        [] => String::new(),
    };
    runs.map(run).collect::<Vec<_>>().join(", ")
}
