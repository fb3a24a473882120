//! Who and what is spoken of: zones, people, ropes by the names that the leader gave them.

use crate::{
    plan::name::{PersonOnRope, RopeName, ZoneName},
    say::{arg::Arg, span::Said, voice::Voice},
    trip::party::Called,
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

/// The name, or `person 4` where the leader gave none.
#[must_use]
pub fn person(called: &Called, voice: Voice) -> Said {
    match &called.name {
        Some(name) => Said::name(name),
        None => voice.say("person-unnamed", &[("number", Arg::Count(called.number))]),
    }
}

/// Who stands at a position of the rope, from 1.
#[must_use]
pub fn position(persons: &[PersonOnRope], position: usize, voice: Voice) -> Said {
    let person = position.checked_sub(1).and_then(|i| persons.get(i));
    match person {
        Some(p) => self::person(&p.called, voice),
        None => self::person(&Called::number(position), voice),
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
