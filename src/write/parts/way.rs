//! A way to split the party and to use the ropes, as its figures are shown.

use crate::{
    plan::{
        leg::Verdict,
        options::{Options, Way, WayPlan, WayTeam},
    },
    say::{self, arg::Arg, round::Round, span::Said, voice::Voice},
    write::parts::clock::{belays::many, left::off_bridges},
};

/// Where none is inside only the nearest are of use. Our judgement.
const NEAREST: usize = 3;

/// The ways shown; JSON holds all.
pub(in crate::write) fn shown(ways: &[Way]) -> &[Way] {
    let none_inside = ways.iter().all(|w| w.verdict >= Verdict::Outside);
    let most = if none_inside { NEAREST } else { Way::COMPARED };
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

/// The same, and the longest that one person carries with these ropes: what is left over goes there.
pub(in crate::write) fn coils(way: &Way, voice: Voice) -> String {
    let carried = voice.number(way.coil_carried_m, Round::Up);
    format!("{} / {carried}", coil(way, voice))
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

/// In what it differs: what is done otherwise, what is missing, and why a way that holds is shown among so many.
pub(in crate::write) fn differs(way: &Way, all: usize, voice: Voice) -> Vec<Said> {
    let mut says: Vec<Said> = otherwise(way, voice).into_iter().collect();
    if way.verdict >= Verdict::Outside && way.short_m > 0.0 {
        says.push(voice.say("options-short", &[("short", Arg::Needed(way.short_m))]));
    }
    if way.verdict >= Verdict::Outside && way.short_m <= 0.0 {
        says.push(voice.say("way-not-by-rope", &[]));
    }
    // What does not hold is best in nothing that counts.
    if holds(way) {
        says.push(say::options::why(way, all, voice));
    }
    says
}

/// What is done otherwise than by the rules.
fn otherwise(way: &Way, voice: Voice) -> Option<Said> {
    let changes = way.changes.iter().map(|c| say::options::change(c, voice));
    let changes = Arg::Said(Said::join(changes, ", "));
    (!way.changes.is_empty()).then(|| voice.say("options-with", &[("changes", changes)]))
}

/// What is said once it is planned with.
pub(in crate::write) fn took(way: &Way, voice: Voice) -> Said {
    let otherwise = otherwise(way, voice);
    let args = [
        ("way", Arg::Count(way.way)),
        ("changed", Arg::yes(otherwise.is_some())),
        ("changes", Arg::Said(otherwise.unwrap_or_default())),
    ];
    voice.say("way-took", &args)
}

/// How it is walked: what its legs ask for, the belays, when it is off the snow bridges, how often the set-up changes. Of what
/// does not hold nobody asks for more than the last.
fn walked(way: &Way, voice: Voice) -> Vec<Said> {
    let mut says = Vec::new();
    if let Some(plan) = way.plan.as_ref().filter(|_| holds(way)) {
        says.extend(legs(plan, voice));
        says.extend(belays(plan, voice));
        let clock = plan.clock.iter();
        says.extend(clock.flat_map(|clock| off_bridges(clock, voice)));
    }
    if way.setup_changes > 0 {
        let count = Arg::Count(way.setup_changes);
        says.push(voice.say("options-changes", &[("count", count)]));
    }
    says
}

/// What is true of each of several ways to go on, told once for all of them.
pub(in crate::write) fn shared(ways: &[Way], voice: Voice) -> Vec<Said> {
    let mut each = ways
        .iter()
        .filter(|way| holds(way))
        .map(|way| walked(way, voice));
    let Some(first) = each.next() else {
        return Vec::new();
    };
    let others: Vec<Vec<Said>> = each.collect();
    let in_all =
        |says: &Said| !others.is_empty() && others.iter().all(|other| other.contains(says));
    first.into_iter().filter(in_all).collect()
}

/// How it is walked, but for what is told of every way to go on.
pub(in crate::write) fn walked_besides(way: &Way, shared: &[Said], voice: Voice) -> Vec<Said> {
    let told = |says: &Said| holds(way) && shared.contains(says);
    let says = walked(way, voice).into_iter();
    says.filter(|says| !told(says)).collect()
}

/// `The same in every usable way: leg 6: fall might not be held; about 8 belays (2 h 00)`; `None` where nothing is.
pub(in crate::write) fn alike(shared: &[Said], voice: Voice) -> Option<Said> {
    let says = Arg::Said(Said::join(shared.iter().cloned(), "; "));
    (!shared.is_empty()).then(|| voice.say("ways-alike", &[("says", says)]))
}

/// What its legs ask for, in few words; legs that ask for the same stand together.
fn legs(plan: &WayPlan, voice: Voice) -> Vec<Said> {
    let mut asked: Vec<(Vec<usize>, Said)> = Vec::new();
    for leg in &plan.legs {
        let says = say::finding::brief(&leg.finding, voice);
        match asked.iter_mut().find(|(_, known)| *known == says) {
            Some((legs, _)) => legs.push(leg.leg),
            None => asked.push((vec![leg.leg], says)),
        }
    }
    let line = |(legs, says): (Vec<usize>, Said)| {
        let legs = ("legs", Arg::Said(say::finding::legs(&legs, voice)));
        voice.say("way-legs", &[legs, ("says", Arg::Said(says))])
    };
    asked.into_iter().map(line).collect()
}

/// The belays that they ask for.
fn belays(plan: &WayPlan, voice: Voice) -> Option<Said> {
    (plan.belays > 0).then(|| many(plan.belays, plan.belay_min, voice))
}
