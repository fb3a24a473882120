//! A way to split the party and to use the ropes, as its figures are shown.

use crate::{
    plan::{
        leg::Verdict,
        options::{Options, Way, WayTeam},
    },
    say::{self, arg::Arg, round::Round, span::Said, voice::Voice},
};

/// Ways that are shown; JSON holds all. Our judgement: more are not compared by anybody.
const SHOWN: usize = 12;
/// Where none is inside only the nearest are of use. Our judgement.
const NEAREST: usize = 3;

/// The ways shown.
pub(in crate::write) fn shown(ways: &[Way]) -> &[Way] {
    let none_inside = ways.iter().all(|w| w.verdict >= Verdict::Outside);
    let most = if none_inside { NEAREST } else { SHOWN };
    ways.get(..most).unwrap_or(ways)
}

/// How many go, how many ways were weighed and how many are left.
pub(in crate::write) fn counted(options: &Options, voice: Voice) -> Said {
    let counts = [
        ("people", Arg::Count(options.people)),
        ("weighed", Arg::Count(options.weighed)),
        ("ways", Arg::Count(options.ways.len())),
    ];
    voice.say("options-head", &counts)
}

/// How many ways are left that are not shown; `None` where all are.
pub(in crate::write) fn not_shown(options: &Options, voice: Voice) -> Option<Said> {
    let more = options.ways.len() - shown(&options.ways).len();
    (more > 0).then(|| voice.say("options-more", &[("more", Arg::Count(more))]))
}

/// `12–14.5`: the least and greatest over the legs.
pub(in crate::write) fn spacing(team: &WayTeam, voice: Voice) -> String {
    let [least, most] = team.spacing_m.map(|m| voice.number(m, Round::Up));
    if least == most {
        least
    } else {
        format!("{least}–{most}")
    }
}

/// Rope that the leg asks for which asks most.
pub(in crate::write) fn needed(team: &WayTeam, voice: Voice) -> String {
    voice.number(team.needed_m, Round::Up)
}

/// The longest coil that one person needs.
pub(in crate::write) fn coil(way: &Way, voice: Voice) -> String {
    voice.number(way.coil_m, Round::Up)
}

/// The mass of all ropes, kilograms.
pub(in crate::write) fn mass(way: &Way, voice: Voice) -> String {
    voice.fixed(way.rope_mass_kg, 1, Round::Up)
}

/// Whether another rope team is there to help.
pub(in crate::write) fn help(way: &Way, voice: Voice) -> Said {
    voice.say(if way.another_team { "yes" } else { "no" }, &[])
}

/// Whether it is a way to go on: a set-up and ropes that hold, whatever else is said of it.
pub(in crate::write) fn holds(way: &Way) -> bool {
    way.verdict != Verdict::Outside && way.short_m <= 0.0
}

/// What is done otherwise, what is missing, and why a way that holds is shown among so many.
pub(in crate::write) fn said(way: &Way, all: usize, voice: Voice) -> Vec<Said> {
    let mut says = Vec::new();
    if !way.changes.is_empty() {
        let changes = way.changes.iter().map(|c| say::options::change(c, voice));
        let changes = Arg::Said(Said::join(changes, ", "));
        says.push(voice.say("options-with", &[("changes", changes)]));
    }
    if way.verdict >= Verdict::Outside && way.short_m > 0.0 {
        says.push(voice.say("options-short", &[("short", Arg::Needed(way.short_m))]));
    }
    if way.verdict >= Verdict::Outside && way.short_m <= 0.0 {
        says.push(voice.say("way-not-by-rope", &[]));
    }
    if way.setup_changes > 0 {
        let count = Arg::Count(way.setup_changes);
        says.push(voice.say("options-changes", &[("count", count)]));
    }
    // What does not hold is best in nothing that counts.
    if holds(way) {
        says.push(say::options::why(way, all, voice));
    }
    says
}
