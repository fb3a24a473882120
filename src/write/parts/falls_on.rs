//! The snow that falls are reckoned on, in a line: what holds on it may not hold on a frozen crust in the morning.

use crate::{
    plan::{Plan, falls_on::IfFrozen},
    say::{arg::Arg, finding, setup::snow, span::Said, voice::Voice},
};

/// `If frozen hard, no fall is held on leg 2: belay (reckoned: settled snow)`; nothing where no team is roped on snow.
///
/// ```
/// use schrund::{say::voice::Voice, write::parts::falls_on::falls_on};
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let said = falls_on(&plan, Voice::default()).expect("three on snow").to_string();
/// assert_eq!(said, "If frozen hard, no fall is held on leg 2: belay (reckoned: settled snow)");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[must_use]
pub fn falls_on(plan: &Plan, voice: Voice) -> Option<Said> {
    let on = plan.falls_on.as_ref()?;
    let worse = on.if_frozen.as_ref().map(|frozen| graver(frozen, voice));
    let worse = worse.unwrap_or_default();
    let args = [
        ("snow", Arg::Said(snow(on.reckoned, voice))),
        ("assumed", Arg::yes(on.assumed)),
        ("worsens", Arg::yes(!worse.is_empty())),
        ("worse", Arg::Said(worse)),
    ];
    Some(voice.say("falls-on", &args))
}

/// What a frozen crust makes of them; nothing where it stops no leg and adds none to look at.
fn graver(frozen: &IfFrozen, voice: Voice) -> Said {
    let kinds = [
        ("falls-on-stop", &frozen.stop),
        ("falls-on-look", &frozen.look),
    ];
    let told = kinds.into_iter().filter(|(_, legs)| !legs.is_empty());
    let told = told.map(|(key, legs)| {
        let legs = Arg::Said(finding::on_legs(legs, voice));
        voice.say(key, &[("legs", legs)])
    });
    Said::join(told, "; ")
}
