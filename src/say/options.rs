//! Ways to split the party and to use the ropes, in words.

use crate::plan::{
    change::Change,
    options::{Merit, Remark, Way},
};

use super::{arg::Arg, name::rope, span::Said, voice::Voice};

/// What is done otherwise than the rules say.
#[must_use]
pub fn change(change: &Change, voice: Voice) -> Said {
    let (key, args) = changed(change, voice);
    voice.say(key, &args)
}

/// The same in fewer words, where there are fewer.
#[must_use]
pub fn change_in_short(change: &Change, voice: Voice) -> Said {
    let (key, args) = changed(change, voice);
    let short = voice.attribute(key, "short", &args);
    short.unwrap_or_else(|| voice.say(key, &args))
}

/// The message, and what stands in it.
fn changed<'a>(change: &'a Change, voice: Voice) -> (&'static str, Vec<(&'static str, Arg<'a>)>) {
    match change {
        Change::Practice { name } => ("change-practice", vec![("name", Arg::Name(name))]),
        Change::Butterflies => ("change-butterflies", Vec::new()),
        Change::TighterLayout { first_m, step_m } => {
            let args = [
                ("first", Arg::Measured(*first_m)),
                ("step", Arg::Measured(*step_m)),
            ];
            ("change-tighter-layout", args.into())
        }
        Change::LongSling { sling_m } => (
            "change-long-sling",
            vec![("sling", Arg::Measured(*sling_m))],
        ),
        Change::Closer { spacing_m } => {
            ("change-closer", vec![("spacing", Arg::There(*spacing_m))])
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
            ("change-joined-ropes", args.into())
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
