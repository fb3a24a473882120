//! What goes into the packs, and what the set-ups do not cover.

use crate::{
    plan::{
        Carry,
        fact::Fact,
        fall::HaulAnswer,
        finding::Finding,
        leg::{Leg, TeamSetup},
        name::RopeName,
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
    trip::rope::Rope,
    write::sheet::Sheet,
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

/// The ropes at hand that no team is tied to, with their numbers.
fn at_hand<'s>(sheet: &Sheet<'s>) -> impl Iterator<Item = (usize, &'s Rope)> {
    let carry = &sheet.plan.carry;
    let carried = move |number: usize| {
        let mut named = carry.iter().filter_map(|c| c.rope.as_ref());
        named.any(|named| named.rope == number)
    };
    let all = (1..).zip(sheet.ropes);
    all.filter(move |(number, _)| !carried(*number))
}

/// Their names; nothing where every rope is tied to.
pub(crate) fn untied(sheet: &Sheet<'_>, voice: Voice) -> Option<Said> {
    let names = at_hand(sheet).map(|(number, one)| rope(&RopeName::of(number, one), voice));
    let names = Said::join(names, ", ");
    (!names.is_empty()).then_some(names)
}

/// The ropes at hand that no team carries, and what they are good for.
pub(crate) fn left_over(sheet: &Sheet<'_>, voice: Voice) -> Option<Said> {
    let left = untied(sheet, voice)?;
    let (joined, names) = joined(&sheet.plan.legs);
    // Beside ropes that are joined a rescue is told of those alone.
    let is_told = |number: &usize| names.is_empty() || names.iter().any(|n| n.rope == *number);
    let told = at_hand(sheet).filter(|(number, _)| is_told(number));
    let spare_m = told.map(|(_, rope)| rope.length_m).fold(0.0, f64::max);
    let short: Vec<usize> = short_of_rope(&sheet.plan.legs, spare_m);
    let lacking = sheet.plan.legs.iter().any(lacks_rope);
    let good_for = match (joined.is_empty(), short.is_empty()) {
        (false, _) => "joining",
        (true, false) => "rescue",
        (true, true) if lacking => "lacking",
        (true, true) => "none",
    };
    let args = [
        ("good-for", Arg::Word(good_for)),
        (
            "ropes",
            Arg::Said(match &names[..] {
                [] => left,
                names => Said::join(names.iter().map(|name| rope(name, voice)), ", "),
            }),
        ),
        ("joined", Arg::Said(finding::on_legs(&joined, voice))),
        ("short", Arg::yes(!short.is_empty())),
        ("legs", Arg::Said(finding::on_legs(&short, voice))),
    ];
    Some(voice.say("page-left", &args).capital())
}

/// The legs on which a rope that nobody carries makes that of a team long enough, joined to it, and which ropes these are.
fn joined(legs: &[Leg]) -> (Vec<usize>, Vec<&RopeName>) {
    let (mut on, mut names) = (Vec::new(), Vec::new());
    for leg in legs {
        let facts = leg.findings.iter().filter_map(Finding::fact);
        let cures = facts.filter_map(|fact| match fact {
            Fact::NoRope { cure, .. } => cure.as_ref()?.joined_to.as_ref(),
            _ => None,
        });
        for name in cures {
            on.push(leg.leg);
            if !names.contains(&name) {
                names.push(name);
            }
        }
    }
    on.dedup();
    (on, names)
}

/// `Not covered: gaps wider than 7.7 m (leg 2), 8.4 m (leg 4); hauling out Ben (leg 4); two people in one gap`. For whom no loop reaches is told above.
pub(crate) fn uncovered(legs: &[Leg], key: &str, voice: Voice) -> Said {
    let roped = legs.iter().filter(|leg| !leg.teams.is_empty());
    let (short, long_enough): (Vec<&Leg>, Vec<&Leg>) = roped.partition(|leg| lacks_rope(leg));
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
    let two = voice.say("page-not-two", &[]);
    let hauls = Said::join(not_hauled(legs, voice), ", ");
    let hauls = (!hauls.is_empty()).then(|| {
        let who = [("who", Arg::Said(hauls))];
        voice.say("page-not-haul", &who)
    });
    let all = any.into_iter().chain(wider).chain(hauls).chain([two]);
    voice.say(key, &[("what", Arg::Said(Said::join(all, "; ")))])
}

/// Whether the rope of a team is too short for its set-up.
fn lacks_rope(leg: &Leg) -> bool {
    leg.teams.iter().any(|setup| setup.rope_short_m().is_some())
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
    let said = |(who, legs): (Said, Vec<usize>)| {
        let legs = Arg::Said(finding::legs(&legs, voice));
        voice.say(
            "page-not-haul-of",
            &[("who", Arg::Said(who)), ("legs", legs)],
        )
    };
    all.into_iter().map(said).collect()
}

/// The legs on which a loop ends short of the lip, or those left have too little rope for any haul, by no more than the
/// length of a spare one.
fn short_of_rope(legs: &[Leg], spare_m: f64) -> Vec<usize> {
    let is_short = |setup: &TeamSetup| {
        let loops = setup.reach.iter().map(|reach| -reach.depth_m);
        let haul = setup.haul.as_ref().and_then(|table| match table.answer {
            HaulAnswer::TooShort { missing_m, .. } => Some(missing_m),
            _ => None,
        });
        let mut missing = loops.chain(haul).filter(|missing_m| *missing_m > 1e-9);
        missing.any(|missing_m| missing_m <= spare_m)
    };
    let held = legs.iter().filter(|leg| !lacks_rope(leg));
    let short = held.filter(|leg| leg.teams.iter().any(is_short));
    short.map(|leg| leg.leg).collect()
}
