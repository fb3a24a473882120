//! Ways to split the party and to use the ropes, in words.

use crate::plan::{
    change::Change,
    options::{Merit, Remark, Way},
};

use super::{arg::Arg, name::rope, span::Said, voice::Voice};

/// What is done otherwise than the rules say.
#[must_use]
pub fn change(change: &Change, voice: Voice) -> Said {
    match change {
        Change::Practice { name } => voice.say("change-practice", &[("name", Arg::Name(name))]),
        Change::Butterflies => voice.say("change-butterflies", &[]),
        Change::TighterLayout { first_m, step_m } => {
            let args = [
                ("first", Arg::Measured(*first_m)),
                ("step", Arg::Measured(*step_m)),
            ];
            voice.say("change-tighter-layout", &args)
        }
        Change::LongSling { sling_m } => {
            voice.say("change-long-sling", &[("sling", Arg::Measured(*sling_m))])
        }
        Change::Closer { spacing_m } => {
            voice.say("change-closer", &[("spacing", Arg::There(*spacing_m))])
        }
        Change::JoinedRopes {
            ropes: [first, second],
            length_m,
        } => {
            let args = [
                ("first", Arg::Said(rope(first, voice))),
                ("second", Arg::Said(rope(second, voice))),
                ("length", Arg::There(*length_m)),
            ];
            voice.say("change-joined-ropes", &args)
        }
    }
}

/// Why a way is shown, among so many.
#[must_use]
pub fn why(way: &Way, shown: usize, voice: Voice) -> Said {
    match (shown, way.best_in.as_slice()) {
        (1, _) => voice.say("merit-only", &[]),
        (_, []) => voice.say("merit-none", &[]),
        (_, merits) => Said::join(merits.iter().map(|m| merit(*m, voice)), ", "),
    }
}

fn merit(merit: Merit, voice: Voice) -> Said {
    let key = match merit {
        Merit::Verdict => "merit-verdict",
        Merit::NothingChanged => "merit-nothing-changed",
        Merit::LeftToHold => "merit-left-to-hold",
        Merit::AnotherTeam => "merit-another-team",
        Merit::LightestRopes => "merit-lightest-ropes",
        Merit::ShortestCoil => "merit-shortest-coil",
        Merit::FewestChanges => "merit-fewest-changes",
    };
    voice.say(key, &[])
}

/// What must be said of all ways.
#[must_use]
pub fn remark(remark: Remark, voice: Voice) -> Said {
    let most = match remark {
        Remark::TooManyForOne { most } | Remark::EvenSplits { beyond: most } => most,
        _ => 0,
    };
    let key = match remark {
        Remark::TooSmallForTwo => "remark-too-small-for-two",
        Remark::TooManyForOne { .. } => "remark-too-many-for-one",
        Remark::OneAndTwo => "remark-one-and-two",
        Remark::OnlyOne => "remark-only-one",
        Remark::OnlyTwo => "remark-only-two",
        Remark::NoneInside => "remark-none-inside",
        Remark::AllChanged => "remark-all-changed",
        Remark::EvenSplits { .. } => "remark-even-splits",
        Remark::NoRopeNamed => "remark-no-rope-named",
    };
    voice.say(key, &[("most", Arg::Count(most))])
}
