//! What goes into the packs, and what the set-ups do not cover.

use crate::{
    plan::{
        Carry, Plan,
        leg::{Leg, TeamSetup},
        name::PersonName,
        reach::Reach,
        spare::SpareRope,
        why::CarryWhy,
    },
    say::{
        arg::Arg,
        carry::{carry_reason, needed_there},
        finding,
        name::{self, rope},
        span::Said,
        voice::Voice,
    },
};

/// `Carry rope "blue" (60 m): 58.5 m needed on leg 6, the longest set-up`, or that none here is long enough; `teams` is how many
/// there are.
pub(crate) fn carried(carry: &Carry, teams: usize, voice: Voice) -> Said {
    let which = match &carry.rope {
        Some(named) => rope(named, voice),
        None => voice.say("field-sold", &[("length", Arg::There(carry.length_m))]),
    };
    let args = [
        ("teams", Arg::Count(teams)),
        ("team", Arg::Count(carry.team)),
        ("rope", Arg::Said(which)),
        ("why", Arg::Said(carry_reason(carry, voice))),
    ];
    let args: Vec<_> = args.into_iter().chain(needed_there(carry, voice)).collect();
    let none = teams == 1 && carry.why == CarryWhy::TooShort;
    voice.say(
        if none {
            "page-carry-none"
        } else {
            "page-carry"
        },
        &args,
    )
}

/// The ropes at hand that no team is tied to; nothing where every rope is tied to.
pub(crate) fn untied(plan: &Plan, voice: Voice) -> Option<Said> {
    let names = plan.spares.iter().map(|spare| rope(&spare.rope, voice));
    let names = Said::join(names, ", ");
    (!names.is_empty()).then_some(names)
}

/// What they are good for, a line for each that is carried, and one for those that nobody needs.
pub(crate) fn left_over(plan: &Plan, voice: Voice) -> Vec<Said> {
    let teams = plan.carry.len();
    let carried = plan.spares.iter().filter(|spare| spare.is_carried());
    let carried = carried.map(|spare| {
        let good_for = match spare.joined_on.is_empty() {
            true if spare.instead => "instead",
            true => "rescue",
            false => "joining",
        };
        left((good_for, teams), &[spare], voice)
    });
    let others: Vec<&SpareRope> = plan.spares.iter().filter(|s| !s.is_carried()).collect();
    let joined = plan.spares.iter().any(|spare| !spare.joined_on.is_empty());
    let lacking = !joined && plan.legs.iter().any(Leg::lacks_rope);
    let good_for = if lacking { "lacking" } else { "none" };
    let others = (!others.is_empty()).then(|| left((good_for, teams), &others, voice));
    carried.chain(others).collect()
}

fn left((good_for, teams): (&'static str, usize), spares: &[&SpareRope], voice: Voice) -> Said {
    let names = spares.iter().map(|spare| rope(&spare.rope, voice));
    let on = |of: fn(&SpareRope) -> &[usize]| {
        let legs: Vec<usize> = spares.iter().flat_map(|spare| of(spare)).copied().collect();
        finding::on_legs(&legs, voice)
    };
    let rescue = spares.iter().find(|spare| !spare.rescue_on.is_empty());
    let by = rescue.map(|spare| by(spare, teams, voice));
    let args = [
        ("good-for", Arg::Word(good_for)),
        ("ropes", Arg::Said(Said::join(names, ", "))),
        ("joined", Arg::Said(on(|spare| &spare.joined_on))),
        ("short", Arg::yes(rescue.is_some())),
        ("legs", Arg::Said(on(|spare| &spare.rescue_on))),
        ("by", Arg::Said(by.unwrap_or_default())),
        rescue.map_or(("carried", Arg::Word("")), |spare| carried_by(spare)),
    ];
    voice.say("page-left", &args).capital()
}

/// Who carries a rope for a rescue: nobody whom it is for. `teams` is how many there are.
fn by(spare: &SpareRope, teams: usize, voice: Voice) -> Said {
    let names = spare.carried_by.iter();
    let names = names.map(|called| name::person(called, voice));
    let who = Said::join(names, voice.say("page-left-or", &[]));
    let args = [
        ("teams", Arg::Count(teams)),
        ("team", Arg::Count(spare.team.unwrap_or_default())),
        ("who", Arg::Said(who)),
        carried_by(spare),
    ];
    voice.say("page-left-by", &args)
}

/// Whether there is somebody whom it is not for.
fn carried_by(spare: &SpareRope) -> (&'static str, Arg<'static>) {
    let nobody = spare.carried_by.is_empty();
    (
        "carried",
        Arg::Word(if nobody { "nobody" } else { "somebody" }),
    )
}

/// `Not covered: gaps along the line over 7.7 m (leg 2), 8.4 m (leg 4); a loop down to Ben (leg 2); a haul of Ben (leg 4); two falling at once`.
/// Where each loop ends is told beside it on the `sheet`.
pub(crate) fn uncovered(plan: &Plan, sheet: bool, voice: Voice) -> Said {
    let legs = &plan.legs;
    let any = Said::join(too_short(plan, voice), "; ");
    let any = (!any.is_empty()).then_some(any);
    let gaps = Said::join(widest(legs, voice), ", ");
    let wider = (!gaps.is_empty()).then(|| {
        let gaps = [("gaps", Arg::Said(gaps))];
        voice.say("page-not-wider", &gaps)
    });
    let low = Said::join(not_reached(plan, voice), ", ");
    let low = (!sheet && !low.is_empty()).then(|| {
        let who = [("who", Arg::Said(low))];
        voice.say("page-not-low", &who)
    });
    let two = voice.say("page-not-two", &[]);
    let hauls = Said::join(not_hauled(legs, voice), ", ");
    let hauls = (!hauls.is_empty()).then(|| {
        let who = [("who", Arg::Said(hauls))];
        voice.say("page-not-haul", &who)
    });
    let found = any.into_iter().chain(wider).chain(low).chain(hauls);
    let all = found.chain([two]);
    let key = if sheet { "sheet-not" } else { "page-not" };
    voice.say(key, &[("what", Arg::Said(Said::join(all, "; ")))])
}

/// `any gap on legs 2, 4 as planned: the rope is too short`, team by team where it is not the same of all.
fn too_short(plan: &Plan, voice: Voice) -> Vec<Said> {
    let of_team = |team: usize| {
        let lacks = |leg: &&Leg| {
            let mut setups = leg.teams.iter();
            setups.any(|setup| setup.team == team && setup.lacks_rope())
        };
        let legs = plan.legs.iter().filter(lacks);
        legs.map(|leg| leg.leg).collect::<Vec<_>>()
    };
    let teams = plan.carry.iter().map(|carry| carry.team);
    let mut short: Vec<(usize, Vec<usize>)> = teams.map(|team| (team, of_team(team))).collect();
    let alike = short.windows(2).all(|pair| pair[0].1 == pair[1].1);
    if alike {
        short.truncate(1);
    }
    short.retain(|(_, legs)| !legs.is_empty());
    let said = short.into_iter().map(|(team, legs)| {
        let args = [
            ("legs", Arg::Said(finding::legs(&legs, voice))),
            ("alike", Arg::yes(alike)),
            ("team", Arg::Count(team)),
        ];
        voice.say("page-not-any", &args)
    });
    said.collect()
}

/// Up to which gap along the line the legs are set up as they are tied, by the team that is spaced for least of those whose rope is long
/// enough; nothing where nobody gave one.
fn widest(legs: &[Leg], voice: Voice) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in legs {
        let held = leg.teams.iter().filter(|setup| !setup.lacks_rope());
        let gaps = held.filter_map(|setup| setup.as_tied_along_m);
        let Some(gap_m) = gaps.reduce(f64::min) else {
            continue;
        };
        on_leg(&mut all, voice.shown(&Arg::There(gap_m)), leg.leg);
    }
    let of_legs = |(gap, legs): (Said, Vec<usize>)| {
        let legs = Arg::Said(finding::legs(&legs, voice));
        voice.say("page-not-on", &[("gap", Arg::Said(gap)), ("legs", legs)])
    };
    all.into_iter().map(of_legs).collect()
}

/// Adds a leg to those of which the same is said.
fn on_leg(all: &mut Vec<(Said, Vec<usize>)>, says: Said, leg: usize) {
    match all.iter_mut().find(|(known, _)| *known == says) {
        Some((_, legs)) => legs.push(leg),
        None => all.push((says, vec![leg])),
    }
}

/// `Ben (legs 4, 6)`: whom no loop reaches below the lip, and for whom no spare rope is carried that helps whoever falls.
fn not_reached(plan: &Plan, voice: Voice) -> Vec<Said> {
    let carried = |leg: &Leg, setup: &TeamSetup, reach: &Reach| {
        let called = PersonName::at(reach.person, &setup.persons).called;
        let for_them = |spare: &SpareRope| {
            let for_all = !spare.carried_by.is_empty();
            for_all && spare.rescue_on.contains(&leg.leg) && spare.rescue_of.contains(&called)
        };
        plan.spares.iter().any(for_them)
    };
    of_people(&plan.legs, voice, &|leg, setup, reach| {
        let short = reach.barely || reach.short_m().is_some();
        short && !setup.lacks_rope() && !carried(leg, setup, reach)
    })
}

/// `Ben (legs 4, 6)`: whom those left cannot haul with the rope that is free.
fn not_hauled(legs: &[Leg], voice: Voice) -> Vec<Said> {
    of_people(legs, voice, &|_, _, reach| {
        let haul = reach.haul.as_ref();
        haul.is_some_and(|answer| !answer.is_possible())
    })
}

/// Those of whom something holds, with the legs.
fn of_people(
    legs: &[Leg],
    voice: Voice,
    holds: &dyn Fn(&Leg, &TeamSetup, &Reach) -> bool,
) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in legs {
        for setup in &leg.teams {
            for reach in setup.reach.iter().filter(|reach| holds(leg, setup, reach)) {
                let who = name::position(&setup.persons, reach.person, voice);
                on_leg(&mut all, who, leg.leg);
            }
        }
    }
    of_legs(all, voice)
}

/// People with their legs, those of whom it is said of the same legs together.
fn of_legs(all: Vec<(Said, Vec<usize>)>, voice: Voice) -> Vec<Said> {
    let mut alike: Vec<(Vec<Said>, Vec<usize>)> = Vec::new();
    for (who, legs) in all {
        match alike.iter_mut().find(|(_, known)| *known == legs) {
            Some((people, _)) => people.push(who),
            None => alike.push((vec![who], legs)),
        }
    }
    let said = |(people, legs): (Vec<Said>, Vec<usize>)| {
        let args = [
            ("who", Arg::Said(Said::join(people, ", "))),
            ("legs", Arg::Said(finding::legs(&legs, voice))),
        ];
        voice.say("page-not-haul-of", &args)
    };
    alike.into_iter().map(said).collect()
}
