//! Placeables of the facts about zones.

use super::placeable::{FactArgs, near};
use crate::{
    plan::{fact::Fact, finding::At, name::ZoneName},
    say::{arg::Arg, name::zone, round::Round, span::Said, voice::Voice},
};

pub(super) fn of_zone<'a>(fact: &'a Fact, at: &'a At, voice: Voice) -> FactArgs<'a> {
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
            vec![
                ("zone", Arg::Said(zone(z, voice))),
                ("roped", Arg::yes(*roped)),
            ]
        }
        Fact::ObservedLongAgo {
            zones,
            observed_on,
            days,
        } => vec![
            ("count", Arg::Count(zones.len())),
            (
                "zones",
                Arg::Said(Said::join(zones.iter().map(|z| zone(z, voice)), ", ")),
            ),
            ("day", Arg::Said(Said::figure(observed_on.to_string()))),
            ("days", Arg::Count(days.unsigned_abs() as usize)),
        ],
        Fact::GapAssumed { zone: z, gap_m } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("gap", Arg::Needed(*gap_m)),
        ],
        Fact::UnropedByWord { zones, undrawn, .. } => {
            let named = zones.iter().map(|z| zone(z, voice));
            let known = undrawn.then(|| ice(None, voice));
            vec![("ice", Arg::Said(Said::join(named.chain(known), ", ")))]
        }
        Fact::ZoneMissed { zones } => vec![
            ("count", Arg::Count(zones.len())),
            ("numbers", Arg::Said(Said::figure(ranges(zones)))),
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
            ("counts", Arg::yes(*counts)),
        ],
        _ => Vec::new(),
    }
}

/// Of the snow on zones, and of the knots that are to bite in it.
pub(super) fn of_snow<'a>(fact: &'a Fact, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::SnowOnBare {
            zone: z,
            snow_depth_m,
        }
        | Fact::ThinSnow {
            zone: z,
            snow_depth_m,
        } => vec![
            ("zone", Arg::Said(zone(z, voice))),
            ("snow", Arg::There(*snow_depth_m)),
        ],
        Fact::KnotsNoBite { zones }
        | Fact::KnotsDoubtful { zones }
        | Fact::SnowUnknown { zones } => {
            let named = zones.iter().map(|z| zone(z, voice));
            vec![("zones", Arg::Said(Said::join(named, ", ")))]
        }
        Fact::KnotsFewer { tied, layout } => {
            vec![("tied", Arg::Count(*tied)), ("layout", Arg::Count(*layout))]
        }
        _ => Vec::new(),
    }
}

/// A zone, or the ice that nobody drew.
pub(super) fn ice(drawn: Option<&ZoneName>, voice: Voice) -> Said {
    drawn.map_or_else(|| voice.say("ice-undrawn", &[]), |z| zone(z, voice))
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
