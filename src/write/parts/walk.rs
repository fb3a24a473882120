//! The walk in rows: each stands where its leg begins, so the rows are the places of the rope too.

use crate::{
    plan::{
        Plan,
        leg::{Leg, Verdict},
    },
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    write::parts::{
        change::{ChangeKind, ChangePoint},
        sentence,
    },
};

/// A row of the walk.
pub(crate) enum Step<'c, 'a> {
    /// A leg, with the change at which it begins.
    Leg(&'a Leg, Option<&'c ChangePoint<'a>>),
    /// A change at which no leg begins.
    Change(&'c ChangePoint<'a>),
    /// Where a stage ends: its last leg.
    End(&'a Leg),
}

/// One for each leg, one for each change at which none begins, and one for the end of each stage.
pub(crate) fn steps<'c, 'a>(plan: &'a Plan, changes: &'c [ChangePoint<'a>]) -> Vec<Step<'c, 'a>> {
    let mut steps = Vec::new();
    // The rope comes off where the leg before ended.
    let mut ended: Option<&ChangePoint<'_>> = None;
    let nexts = plan.legs.iter().skip(1).map(Some).chain([None]);
    for (leg, next) in plan.legs.iter().zip(nexts) {
        let here = || changes.iter().filter(|c| c.leg.leg == leg.leg);
        let up = here().find(|c| c.kind == ChangeKind::RopeUp);
        steps.push(Step::Leg(leg, up.or(ended.take())));
        for change in here().filter(|c| c.kind != ChangeKind::RopeUp) {
            let goes_on = next.is_some_and(|next| next.stage == leg.stage && !next.roped);
            if leg.roped && goes_on {
                ended = Some(change);
            } else {
                steps.push(Step::Change(change));
            }
        }
        if leg.ends_stage {
            steps.push(Step::End(leg));
        }
    }
    steps
}

/// The zone of the grid in which all changes lie: it stands above them once.
pub(crate) fn grid_zone<'c>(changes: &'c [ChangePoint<'_>]) -> Option<&'c str> {
    let zone = |change: &'c ChangePoint<'_>| Some(change.utm.as_deref()?.split_once(' ')?.0);
    let first = zone(changes.first()?)?;
    let all = changes.iter().all(|change| zone(change) == Some(first));
    all.then_some(first)
}

/// Where a change is in the grid, without the zone that stands above; in degrees where there is no grid.
pub(crate) fn grid(change: &ChangePoint<'_>, zone: Option<&str>) -> String {
    match (&change.utm, zone) {
        (Some(utm), Some(zone)) => utm.trim_start_matches(zone).trim_start().to_owned(),
        (Some(utm), None) => utm.clone(),
        (None, _) => change.degrees.clone(),
    }
}

/// `Stage 2 "Day two": 8.20 km`, above its first leg; nothing where there is one stage.
pub(crate) fn stage(leg: &Leg, plan: &Plan, voice: Voice) -> Option<Said> {
    let (legs, stages) = (&plan.legs, &plan.route.stages);
    let first = legs.iter().find(|other| other.stage == leg.stage)?;
    let stage = stages.iter().find(|stage| stage.stage == leg.stage)?;
    if stages.len() < 2 || first.leg != leg.leg {
        return None;
    }
    let named = finding::stage(stage.stage, stage.name.as_deref(), voice);
    let args = [
        ("stage", Arg::Said(named.capital())),
        ("length", Arg::Walked(stage.length_m)),
    ];
    let told = voice.say("page-stage", &args);
    Some(told.map_names(plain::line))
}

/// What stands in the row of an end.
pub(crate) fn end(plan: &Plan, voice: Voice) -> Said {
    let args = [("stages", Arg::Count(plan.route.stages.len()))];
    voice.say("page-end", &args)
}

/// Zone numbers, the many counted: `1 2 3 4 +96`.
pub(crate) fn short_zones(zones: &[usize]) -> String {
    const NAMED: usize = 4;
    let numbers = |zones: &[usize]| {
        let numbers: Vec<String> = zones.iter().map(usize::to_string).collect();
        numbers.join(" ")
    };
    match zones.get(..NAMED) {
        Some(named) if zones.len() > NAMED + 1 => {
            format!("{} +{}", numbers(named), zones.len() - NAMED)
        }
        _ => numbers(zones),
    }
}

/// Said where a leg without a rope wants a look, or where the rope comes off by the leader's word.
pub(crate) fn unroped(leg: &Leg, change: Option<&ChangePoint<'_>>, voice: Voice) -> Option<Said> {
    let by_word = change.filter(|c| c.kind == ChangeKind::OffByWord);
    match by_word {
        Some(change) => Some(change.kind.says(voice)),
        None if leg.roped || leg.verdict == Verdict::Unroped => None,
        None => Some(sentence::verdict(Verdict::Unroped, voice)),
    }
}
