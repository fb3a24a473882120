//! The snow that falls are reckoned on, in a line: what holds on it may not hold on a frozen crust in the morning.

use crate::{
    plan::{Plan, falls_on::IfFrozen},
    say::{arg::Arg, finding, setup::snow, span::Said, voice::Voice},
};

/// `Falls reckoned on settled snow; on a frozen crust stop on leg 2: belay`; nothing where no team is roped on snow.
///
/// ```
/// use schrund::{say::voice::Voice, write::parts::falls_on::falls_on};
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let said = falls_on(&plan, Voice::default()).expect("three on snow").to_string();
/// assert_eq!(said, "Falls reckoned on settled snow; on a frozen crust stop on leg 2: belay");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[must_use]
pub fn falls_on(plan: &Plan, voice: Voice) -> Option<Said> {
    let on = plan.falls_on.as_ref()?;
    let frozen = on.if_frozen.as_ref().map(|frozen| graver(frozen, voice));
    let args = [
        ("snow", Arg::Said(snow(on.reckoned, voice))),
        ("assumed", Arg::yes(on.assumed)),
        ("frozen", Arg::Said(frozen.unwrap_or_default())),
    ];
    Some(voice.say("falls-on", &args))
}

/// What a frozen crust makes of them.
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
    let told: Vec<Said> = told.collect();
    if told.is_empty() {
        return voice.say("falls-on-same", &[]);
    }
    let all = Arg::Said(Said::join(told, "; "));
    voice.say("falls-on-worse", &[("all", all)])
}
