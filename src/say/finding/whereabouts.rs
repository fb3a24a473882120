//! Places of findings in words.

use crate::{
    plan::finding::{At, JobPart},
    say::{arg::Arg, fault, name::zone, span::Said, voice::Voice},
};

/// Where it belongs: `leg 4`, `zone 3 "Upper icefall"`, a place in a file.
#[must_use]
pub fn place(at: &At, voice: Voice) -> Said {
    match at {
        At::Leg(place) => match place.team {
            Some(team) => leg_of_teams(place.leg, &[team], voice),
            None => voice.say("place-leg", &[("leg", Arg::Count(place.leg))]),
        },
        At::Legs { legs } => self::legs(legs, voice),
        At::Stage(place) => stage(place.stage, place.name.as_deref(), voice),
        At::Zone(named) => zone(named, voice),
        At::Part { of } => voice.say(part(*of), &[]),
        At::Input(place) => fault::place(place, voice),
    }
}

/// `leg 6 (teams 1, 2)`.
#[must_use]
pub fn leg_of_teams(leg: usize, teams: &[usize], voice: Voice) -> Said {
    let listed = teams.iter().map(usize::to_string).collect::<Vec<_>>();
    let args = [
        ("leg", Arg::Count(leg)),
        ("count", Arg::Count(teams.len())),
        ("teams", Arg::Said(Said::figure(listed.join(", ")))),
    ];
    voice.say("place-leg-of-team", &args)
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
    listed("place-legs", numbers, voice)
}

/// The same as it stands behind "on", which some languages write otherwise.
#[must_use]
pub fn on_legs(numbers: &[usize], voice: Voice) -> Said {
    listed("place-on-legs", numbers, voice)
}

fn listed(key: &str, numbers: &[usize], voice: Voice) -> Said {
    let listed = numbers.iter().map(usize::to_string).collect::<Vec<_>>();
    let args = [
        ("count", Arg::Count(numbers.len())),
        ("legs", Arg::Said(Said::figure(listed.join(", ")))),
    ];
    voice.say(key, &args)
}
