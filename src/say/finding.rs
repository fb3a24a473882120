//! Findings in words: what was found, what to do about it, and where it belongs.

mod heights;

use crate::{
    physics::assumed::Snow,
    plan::{
        fact::{Fact, RopeLack, RouteEnd, Slope},
        finding::{At, Finding, JobPart, What},
        place::{Piece, RollOver},
    },
    say::{
        arg::Arg,
        fault,
        name::{person, rope, zone},
        round::Round,
        setup,
        span::Said,
        voice::Voice,
    },
};

/// Words and figures for the placeables of a message.
type FactArgs<'a> = Vec<(&'static str, Arg<'a>)>;

/// The sentence, without a full stop.
#[must_use]
pub fn says(finding: &Finding, voice: Voice) -> Said {
    match &finding.what {
        What::Planned(fact) => voice.say(key(fact), &args(fact, &finding.at, voice)),
        What::Read(read) => fault::says(read, voice),
    }
}

/// What to do about it, if there is a way.
#[must_use]
pub fn hint(finding: &Finding, voice: Voice) -> Option<Said> {
    match &finding.what {
        What::Planned(fact) => voice.hint(key(fact), &args(fact, &finding.at, voice)),
        What::Read(read) => fault::hint(read, voice),
    }
}

/// Where it belongs: `leg 4`, `zone 3 "Upper icefall"`, a place in a file.
#[must_use]
pub fn place(at: &At, voice: Voice) -> Said {
    match at {
        At::Leg(place) => match place.team {
            Some(team) => voice.say(
                "place-leg-of-team",
                &[("leg", Arg::Count(place.leg)), ("team", Arg::Count(team))],
            ),
            None => voice.say("place-leg", &[("leg", Arg::Count(place.leg))]),
        },
        At::Legs { legs } => self::legs(legs, voice),
        At::Stage(place) => stage(place.stage, place.name.as_deref(), voice),
        At::Zone(named) => zone(named, voice),
        At::Part { of } => voice.say(part(*of), &[]),
        At::Input(place) => fault::place(place, voice),
    }
}

fn part(of: JobPart) -> &'static str {
    match of {
        JobPart::Route => "place-route",
        JobPart::Zones => "place-zones",
        JobPart::Ropes => "place-ropes",
        JobPart::Terrain => "place-terrain",
    }
}

/// `stage 2 "Day two"`.
#[must_use]
pub fn stage(number: usize, name: Option<&str>, voice: Voice) -> Said {
    let number = ("stage", Arg::Count(number));
    match name {
        Some(name) => voice.say("place-stage-named", &[number, ("name", Arg::Name(name))]),
        None => voice.say("place-stage", &[number]),
    }
}

/// `leg 4`, `legs 4, 12`.
#[must_use]
pub fn legs(numbers: &[usize], voice: Voice) -> Said {
    let listed = numbers.iter().map(usize::to_string).collect::<Vec<_>>();
    let args = [
        ("count", Arg::Count(numbers.len())),
        ("legs", Arg::Said(Said::figure(listed.join(", ")))),
    ];
    voice.say("place-legs", &args)
}

/// The message of a fact. Two kinds share a code with a notice of reading, and so have a key of their own.
fn key(fact: &Fact) -> &'static str {
    match fact {
        Fact::GapAssumed { .. } => "gap-assumed-in-zone",
        fact => fact.code(),
    }
}

fn args<'a>(fact: &'a Fact, at: &'a At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::NeverOnHidden { zone: z }
        | Fact::StrikeExact { zone: z }
        | Fact::StrikeUnknown { zone: z } => vec![("zone", Arg::Said(zone(z, voice)))],
        Fact::Along { zone: z } => vec![("zone", Arg::Said(zone(z, voice))), near(at)],
        Fact::BareIce { zone: z, roped } => {
            vec![("zone", Arg::Said(zone(z, voice))), ("roped", yes(*roped))]
        }
        Fact::GapAssumed { zone: z, gap_m } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("gap", Arg::Needed(*gap_m)),
        ],
        Fact::BridgesLate { .. } | Fact::StrikeProposed { .. } => of_zone(fact, voice),
        Fact::NoSetup { .. } | Fact::NearCap { .. } | Fact::TwoOverGap { .. } => spacing(fact),
        Fact::NoRope { needed_m, lack } => rope_lack(*needed_m, lack, voice),
        Fact::NearRope { rope: r, spare_m } => vec![
            ("rope", Arg::Said(rope(r, voice))),
            ("spare", Arg::There(*spare_m)),
        ],
        Fact::TooSteep { slope_deg, of } | Fact::AvalancheTerrain { slope_deg, of } => {
            steep(*slope_deg, *of, at)
        }
        Fact::HeldInNone { .. } | Fact::MiddleNotReached { .. } | Fact::HaulTooWeak { .. } => {
            of_fall(fact, voice)
        }
        Fact::KnotsNoBite { zones } => {
            let named = zones.iter().map(|z| zone(z, voice));
            vec![("zones", Arg::Said(Said::join(named, ", ")))]
        }
        Fact::PairWithoutKnots { why } => vec![("why", Arg::Said(setup::knots_why(why, voice)))],
        Fact::CutOff { at } => vec![("end", Arg::Word(route_end(*at)))],
        Fact::GlacierWithoutZone { length_m } => {
            vec![("length", Arg::Whole(*length_m)), span_of(at)]
        }
        Fact::CoilHeavy { .. } => coil(fact),
        Fact::NoAnswer { reason } => {
            vec![("reason", Arg::Said(fault::refusal(reason, voice)))]
        }
        Fact::ZoneMissed { zones } => vec![
            ("count", Arg::Count(zones.len())),
            ("numbers", Arg::Said(Said::figure(ranges(zones)))),
        ],
        Fact::HeightsCompared { apart } | Fact::HeightsFarApart { apart } => {
            heights::apart(apart, voice)
        }
        Fact::AscentsApart { .. } => heights::ascents(fact, voice),
        Fact::TerrainVoid { void } => heights::terrain_void(void, place(at, voice)),
        Fact::TerrainFlattens { cell_m } => vec![("cell", Arg::Whole(*cell_m))],
        Fact::MayRunAlong { pieces } | Fact::SlopePartlyUnknown { pieces, .. } => contours(pieces),
        Fact::ConvexGround { places } => convex(places, voice),
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

fn convex(places: &[RollOver], voice: Voice) -> FactArgs<'static> {
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

fn of_zone(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
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

fn spacing(fact: &Fact) -> FactArgs<'_> {
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

fn steep<'a>(slope_deg: f64, of: Slope, at: &At) -> FactArgs<'a> {
    let of = match of {
        Slope::Line => "line",
        Slope::Ground => "ground",
    };
    vec![
        ("of", Arg::Word(of)),
        ("slope", Arg::Degrees(slope_deg, 0, Round::Nearest)),
        near(at),
    ]
}

fn of_fall(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
        Fact::HeldInNone { falls, snow } => vec![
            ("who", Arg::Said(person(&falls.called, voice))),
            ("snow", Arg::Said(setup::snow(*snow, voice))),
            ("ice", yes(*snow == Snow::Ice)),
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
        _ => Vec::new(),
    }
}

fn coil(fact: &Fact) -> FactArgs<'_> {
    let Fact::CoilHeavy {
        coil_m,
        coil_kg,
        most_m,
        most_kg,
    } = fact
    else {
        return Vec::new();
    };
    vec![
        ("coil", Arg::Needed(*coil_m)),
        ("mass", Arg::Kilograms(*coil_kg, Round::Up)),
        ("most", Arg::There(*most_m)),
        ("most-mass", Arg::Kilograms(*most_kg, Round::Down)),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::say::language::Language;

    #[test]
    fn every_fact_has_its_sentence() {
        let known: std::collections::BTreeSet<&str> =
            Language::English.catalogue().messages().collect();
        let facts = Fact::KINDS.iter().map(|(code, ..)| match *code {
            "gap-assumed" => "gap-assumed-in-zone",
            code => code,
        });
        let silent: Vec<&str> = facts.filter(|key| !known.contains(key)).collect();
        assert_eq!(silent, [""; 0], "no sentence in data/words/en");
    }
}
