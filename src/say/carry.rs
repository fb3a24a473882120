//! What goes into the packs, in words.

use crate::{
    plan::{Carry, why::CarryWhy},
    say::{arg::Arg, finding, span::Said, voice::Voice},
};

/// For whom a rope is, and because of which leg; `teams` is how many rope teams there are.
#[must_use]
pub fn carry_why(carry: &Carry, teams: usize, voice: Voice) -> Said {
    let why = carry_reason(carry, voice);
    carried_by(carry, teams, voice)
        .then(Said::from(": "))
        .then(&why)
}

/// Why a rope is carried, without for whom: `58.5 m needed on leg 6, the longest set-up`.
#[must_use]
pub fn carry_reason(carry: &Carry, voice: Voice) -> Said {
    match carry.why {
        CarryWhy::LongestSetUp => voice.say("carry-longest", &needed_there(carry, voice)),
        CarryWhy::TooShort => too_short(carry, voice),
        CarryWhy::LeftToAnother {
            other_team,
            graver_falls,
            legs_outside,
            legs_exchanged,
        } => {
            let short = too_short(carry, voice);
            let gain = match (graver_falls, legs_exchanged > legs_outside) {
                (true, _) => "graver",
                (false, true) => "fewer",
                (false, false) => "none",
            };
            let args = [
                ("short", Arg::Said(short)),
                ("other", Arg::Count(other_team)),
                ("gain", Arg::Word(gain)),
                ("outside", Arg::Count(legs_outside)),
                ("exchanged", Arg::Count(legs_exchanged)),
            ];
            voice.say("carry-left", &args)
        }
    }
}

/// Who has no rope, where the one that they were to carry is lost.
#[must_use]
pub fn no_rope(carry: &Carry, teams: usize, voice: Voice) -> Said {
    let nameless = Carry {
        rope: None,
        ..carry.clone()
    };
    let who = Arg::Said(carried_by(&nameless, teams, voice));
    voice.say("rope-none-left", &[("who", who)])
}

/// That a rope does not fit: how much is needed, and on which leg.
#[must_use]
pub fn too_short(carry: &Carry, voice: Voice) -> Said {
    voice.say("carry-too-short", &needed_there(carry, voice))
}

/// Legs that are named before only the first is. Our judgement.
const NAMED: usize = 6;

/// How much rope is needed, and on which legs.
pub(crate) fn needed_there(carry: &Carry, voice: Voice) -> [(&'static str, Arg<'static>); 4] {
    let (named, more) = match &carry.legs[..] {
        [first, more @ ..] if more.len() >= NAMED => (std::slice::from_ref(first), more.len()),
        few => (few, 0),
    };
    [
        ("needed", Arg::Needed(carry.needed_m)),
        ("given", Arg::yes(!named.is_empty())),
        ("legs", Arg::Said(finding::on_legs(named, voice))),
        ("more", Arg::Count(more)),
    ]
}

/// `team 1, 3 people`, and the rope by its name where it has one.
fn carried_by(carry: &Carry, teams: usize, voice: Voice) -> Said {
    let people = ("people", Arg::Count(carry.people));
    let who = match teams {
        1 => voice.say("carry-one-team", &[people]),
        _ => voice.say("carry-team", &[("team", Arg::Count(carry.team)), people]),
    };
    let Some((rope, name)) = carry
        .rope
        .as_ref()
        .and_then(|r| Some((r, r.name.as_ref()?)))
    else {
        return who;
    };
    let args = [
        ("who", Arg::Said(who)),
        ("name", Arg::Name(name)),
        ("length", Arg::There(rope.length_m)),
    ];
    voice.say("carry-rope", &args)
}
