//! The closed list of codes with what each means, for looking one up.

use crate::{
    fault::{Code, Level, code::told},
    plan::fact::Fact,
};

/// A kind of complaint, for looking it up.
///
/// ```
/// use schrund::{fault::Level, plan::explained::explained};
///
/// // What to look up for a code that a plan shows.
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let code = plan.legs[1].findings[0].code();
/// let kind = explained().find(|kind| kind.code == code).expect("every code is explained");
/// assert_eq!((kind.code, kind.level), ("fall-not-held-in-the-middle-case", Level::Look));
/// assert!(kind.text.contains("What to do: put more people on the rope"), "{}", kind.text);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Explained {
    /// The stable name.
    pub code: &'static str,
    /// How much it matters.
    pub level: Level,
    /// What it means and what to do, in a few sentences; broken into lines as they are written.
    pub text: String,
}

/// What to do about each kind of note. Whatever is graver says it where it is described itself.
const NOTES: [(&str, &str); 25] = [
    (
        "slower-back-late",
        "start earlier, or say before the trip where you turn round at which time.",
    ),
    (
        "slower-bridges-late",
        "start earlier, or say before the trip where you turn round at which time.",
    ),
    (
        "coil-is-a-burden",
        "nothing, if it is carried all the same; else a shorter or a thinner rope.",
    ),
    (
        "avalanche-terrain",
        "read the avalanche bulletin of the day for this leg.",
    ),
    (
        "bend-blocks-the-loaded-strand",
        "plan the haul on a strand of its own, from the rope that is carried in coils.",
    ),
    (
        "knots-block-the-loaded-strand",
        "plan the haul on a strand of its own, from the rope that is carried in coils.",
    ),
    (
        "haul-beyond-those-left",
        "more people on the rope, or another team near enough to help; know how to call for rescue from there.",
    ),
    (
        "strike-taken-as-exact",
        "nothing, where it is sure; else give `strike_uncertainty_deg` beside it.",
    ),
    (
        "slope-unknown",
        "give a terrain model (`--terrain`), or a route with heights.",
    ),
    (
        "slope-partly-unknown",
        "give a terrain model (`--terrain`) that holds the whole leg.",
    ),
    (
        "strike-not-given",
        "nothing; where the direction of the crevasses is known, write it into the zone as `strike_deg`.",
    ),
    (
        "zone-not-met",
        "nothing, where you do not mean to go there.",
    ),
    (
        "no-inventory",
        "nothing; who has a glacier inventory gives it with `--glaciers`.",
    ),
    (
        "no-heights",
        "give a terrain model (`--terrain`), or export the route with its heights.",
    ),
    (
        "on-skis",
        "decide on the spot; the plan is for whoever ropes up.",
    ),
    (
        "no-rope-named",
        "name the ropes that you have, such as `--rope 60`, and the plan says whether they are long enough.",
    ),
    (
        "heights-compared",
        "nothing, where they agree; where they differ by much, look which of the two is right.",
    ),
    (
        "ascents-apart",
        "allow for either in the day's time, or look which of the two is right.",
    ),
    (
        "terrain-flattens",
        "nothing; look at the ground itself for steps that no model shows.",
    ),
    ("line-turns-back", "nothing, unless the party halts there."),
    (
        "sun-in-utc",
        "write `utc_offset` into the trip file, such as `utc_offset = \"+02:00\"`.",
    ),
    ("dark-on-the-rope", "take lamps, or choose another start."),
    (
        "strike-proposed",
        "nothing; where the direction of the crevasses is known, write it into the zone as `strike_deg`.",
    ),
    (
        "may-run-along",
        "look on the spot in which direction the crevasses run, before the team follows the line.",
    ),
    ("convex-ground", "look at it on the spot."),
];

/// What a kind means, with what to do.
fn whole(code: &str, doc: &str) -> String {
    let text = told(doc);
    match NOTES.iter().find(|(known, _)| *known == code) {
        Some((_, what)) => format!("{text}\n\nWhat to do: {what}"),
        None => text,
    }
}

/// The closed list: what can be wrong with inputs, then what a plan can find.
pub fn explained() -> impl Iterator<Item = Explained> {
    let faults = Code::ALL.iter().map(|code| Explained {
        code: code.as_str(),
        level: code.level(),
        text: code.explain(),
    });
    let facts = Fact::KINDS.iter();
    // One kind can be found by both: an assumed gap, file by file and zone by zone.
    let own = facts.filter(|(code, ..)| Code::ALL.iter().all(|known| known.as_str() != *code));
    faults.chain(own.map(|&(code, level, doc)| Explained {
        code,
        level,
        text: whole(code, doc),
    }))
}
