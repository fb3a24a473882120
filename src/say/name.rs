//! Who and what is spoken of: zones, people, ropes by the names that the leader gave them.

use crate::{
    plan::name::{PersonOnRope, RopeName, ZoneName},
    say::{arg::Arg, span::Said, voice::Voice},
};

/// `zone 3 "Upper icefall"`, or without the name where there is none.
#[must_use]
pub fn zone(named: &ZoneName, voice: Voice) -> Said {
    let number = ("zone", Arg::Count(named.zone));
    match &named.name {
        Some(name) => voice.say("place-zone-named", &[number, ("name", Arg::Name(name))]),
        None => voice.say("place-zone", &[number]),
    }
}

/// The name, or `person 4` where the leader gave none: a number.
#[must_use]
pub fn person(name: &str, voice: Voice) -> Said {
    if name.chars().all(|c| c.is_ascii_digit()) {
        voice.say("person-unnamed", &[("name", Arg::Name(name))])
    } else {
        Said::name(name)
    }
}

/// Who stands at a position of the rope, from 1.
#[must_use]
pub fn position(persons: &[PersonOnRope], position: usize, voice: Voice) -> Said {
    let person = position.checked_sub(1).and_then(|i| persons.get(i));
    match person {
        Some(p) => self::person(&p.name, voice),
        None => self::person(&position.to_string(), voice),
    }
}

/// `the 60 m rope`, `rope "blue" (60 m)`.
#[must_use]
pub fn rope(rope: &RopeName, voice: Voice) -> Said {
    let length = ("length", Arg::There(rope.length_m));
    match &rope.name {
        Some(name) => voice.say("rope-named", &[("name", Arg::Name(name)), length]),
        None => voice.say("rope-unnamed", &[length]),
    }
}
