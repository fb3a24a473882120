//! Who and what is spoken of: zones, people, ropes by the names that the leader gave them.

use crate::{
    plan::name::{IceNames, PersonOnRope, RopeName, ZoneName},
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

/// Ice that is named before the rest is counted. Our judgement.
const ICE_NAMED: usize = 4;

/// `zone 3 "Upper icefall", glacier 12 of the inventory`; much of it is counted.
#[must_use]
pub fn ice(names: &IceNames, voice: Voice) -> Said {
    let glacier = |named: &ZoneName| {
        let number = ("glacier", Arg::Count(named.zone));
        match &named.name {
            Some(name) => voice.say("place-glacier-named", &[number, ("name", Arg::Name(name))]),
            None => voice.say("place-glacier", &[number]),
        }
    };
    let zones = names.zones.iter().map(|z| zone(z, voice));
    let all: Vec<Said> = zones.chain(names.glaciers.iter().map(glacier)).collect();
    let named = Said::join(all.iter().take(ICE_NAMED).cloned(), ", ");
    match all.len().saturating_sub(ICE_NAMED) {
        0 => named,
        more => {
            let args = [("named", Arg::Said(named)), ("more", Arg::Count(more))];
            voice.say("place-more", &args)
        }
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
