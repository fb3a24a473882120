//! What becomes of falls on frozen snow, where the plan is reckoned on a softer one.

use std::cell::RefCell;

use crate::{
    judge::verdict,
    physics::assumed::Snow,
    plan::{
        depth::Depth,
        falls_on::{FallsOn, IfFrozen},
        leg::Verdict,
    },
    practice::Origin,
    rope::{answers::KnownFalls, held::AskedSlopes, legs::RopedLeg},
    trip::job::Brief,
};

/// The snow of the plan, and what its set-ups come to on a frozen one; nothing where no team is roped on snow.
pub(crate) fn falls_on(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    depth: Depth,
    asked: &RefCell<KnownFalls>,
) -> Option<FallsOn> {
    let snow = &job.rules.choices.snow;
    legs.iter().any(on_snow).then(|| FallsOn {
        reckoned: snow.value,
        assumed: snow.origin == Origin::Default,
        if_frozen: (depth >= Depth::Frozen && snow.value < Snow::Refrozen)
            .then(|| if_frozen(job, legs, &mut asked.borrow_mut().slopes)),
    })
}

/// Whether a team is roped on snow there; on bare ice the leader's word about the snow says nothing.
fn on_snow(leg: &RopedLeg<'_>) -> bool {
    leg.sketch.roped && !leg.over().bare_only()
}

/// The legs whose falls stop the team on frozen snow, whatever they come to on that of the plan: who is told of some takes it that the
/// others hold. And those that are something to look at only there.
fn if_frozen(job: &Brief<'_>, legs: &[RopedLeg<'_>], asked: &mut AskedSlopes) -> IfFrozen {
    let mut rules = job.rules.clone();
    rules.choices.snow.value = Snow::Refrozen;
    let frozen = Brief {
        rules: &rules,
        ..*job
    };
    asked.ask_ahead(legs, &frozen);
    let mut grave = IfFrozen::default();
    for leg in legs.iter().filter(|leg| on_snow(leg)) {
        let mut worst = |job: &Brief<'_>| {
            let teams = leg.teams.iter();
            let falls = teams.map(|draft| verdict::of_falls(job, leg, draft, asked));
            falls.max().unwrap_or(Verdict::Inside)
        };
        match worst(&frozen) {
            Verdict::Stop => grave.stop.push(leg.number),
            Verdict::Look if worst(job) < Verdict::Look => grave.look.push(leg.number),
            _ => {}
        }
    }
    grave
}
