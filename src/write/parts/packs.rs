//! What goes into the packs, and what the set-ups do not cover.

use crate::{
    plan::{Carry, Plan, leg::Leg, spare::SpareRope, why::CarryWhy},
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
    let of = spare.rescue_teams.iter();
    let of = of.map(|team| Said::figure(team.to_string()));
    let who = Said::join(names, voice.say("page-left-or", &[]));
    let args = [
        ("teams", Arg::Count(teams)),
        ("team", Arg::Said(Said::join(of, ", "))),
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

/// `Not covered: gaps wider than 7.7 m (leg 2), 8.4 m (leg 4); hauling out Ben (leg 4); two people in one gap`. For whom no loop reaches is told above.
pub(crate) fn uncovered(plan: &Plan, key: &str, voice: Voice) -> Said {
    let legs = &plan.legs;
    let roped = legs.iter().filter(|leg| !leg.teams.is_empty());
    let (short, long_enough): (Vec<&Leg>, Vec<&Leg>) = roped.partition(|leg| leg.lacks_rope());
    let short: Vec<usize> = short.iter().map(|leg| leg.leg).collect();
    let any = (!short.is_empty()).then(|| {
        let legs = [("legs", Arg::Said(finding::legs(&short, voice)))];
        voice.say("page-not-any", &legs)
    });
    let gaps = Said::join(widest(&long_enough, voice), ", ");
    let wider = (!gaps.is_empty()).then(|| {
        let gaps = [("gaps", Arg::Said(gaps))];
        voice.say("page-not-wider", &gaps)
    });
    let low = Said::join(barely_reached(plan, voice), ", ");
    let low = (!low.is_empty()).then(|| {
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
    voice.say(key, &[("what", Arg::Said(Said::join(all, "; ")))])
}

/// Up to which gap along the line the legs are set up as they are tied, by the team that is spaced for least; nothing where
/// nobody gave one.
fn widest(legs: &[&Leg], voice: Voice) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in legs {
        let gaps = leg.teams.iter().filter_map(|setup| setup.as_tied_along_m);
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

/// `Ben (legs 4, 6)`: whom a loop reaches only where they hang at the lip, and for whom no spare rope is carried.
fn barely_reached(plan: &Plan, voice: Voice) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in plan.legs.iter().filter(|leg| !leg.lacks_rope()) {
        for setup in &leg.teams {
            let carried = |spare: &SpareRope| {
                let here = spare.rescue_on.contains(&leg.leg);
                here && spare.rescue_teams.contains(&setup.team)
            };
            let alone = !plan.spares.iter().any(carried);
            for reach in setup
                .reach
                .iter()
                .filter(|reach| alone && reach.is_barely())
            {
                let who = name::position(&setup.persons, reach.person, voice);
                on_leg(&mut all, who, leg.leg);
            }
        }
    }
    of_legs(all, voice)
}

/// `Ben (legs 4, 6)`: whom those left cannot haul with the rope that is free.
fn not_hauled(legs: &[Leg], voice: Voice) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in legs {
        let tables = leg.teams.iter().filter_map(|s| Some((s, s.haul.as_ref()?)));
        for (setup, table) in tables.filter(|(_, table)| !table.answer.is_possible()) {
            let who = name::position(&setup.persons, table.person, voice);
            on_leg(&mut all, who, leg.leg);
        }
    }
    of_legs(all, voice)
}

/// People with their legs.
fn of_legs(all: Vec<(Said, Vec<usize>)>, voice: Voice) -> Vec<Said> {
    let said = |(who, legs): (Said, Vec<usize>)| {
        let legs = Arg::Said(finding::legs(&legs, voice));
        voice.say(
            "page-not-haul-of",
            &[("who", Arg::Said(who)), ("legs", legs)],
        )
    };
    all.into_iter().map(said).collect()
}
