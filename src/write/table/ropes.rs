//! What goes into the packs, each set-up in a line, and what is not covered by them.

use unicode_width::UnicodeWidthStr;

use crate::{
    plan::{
        Carry,
        leg::{Leg, Mark, MarkKind, TeamSetup},
        name::RopeName,
    },
    say::{arg::Arg, finding, name::rope, plain, setup::carry_reason, span::Said, voice::Voice},
    write::{
        parts::{
            paragraph::{bullet, padded},
            row,
            tied::marks,
        },
        sheet::Sheet,
    },
};

/// Widest list of legs that stands in a column of its own. Our judgement.
const LEGS: usize = 19;

/// Carry, set-ups, and what they do not cover.
pub(super) fn ropes(out: &mut String, sheet: &Sheet<'_>) {
    let (voice, width) = (sheet.look.voice, sheet.look.width);
    out.push('\n');
    if sheet.plan.carry.is_empty() {
        let none = voice.say("carry-none", &[]).capital();
        bullet(out, "", &none.to_string(), width);
        return;
    }
    for carry in &sheet.plan.carry {
        let line = carried(carry, sheet.plan.carry.len(), voice);
        bullet(out, "", &line.map_names(plain::line).to_string(), width);
    }
    if let Some(left) = left_over(sheet, voice) {
        bullet(out, "", &left.map_names(plain::line).to_string(), width);
    }
    let legs = &sheet.plan.legs;
    let unit = [("unit", Arg::Said(Said::words(voice.units.short())))];
    bullet(
        out,
        "",
        &voice.say("page-set-ups", &unit).to_string(),
        width,
    );
    print(out, &alike(legs, voice), width, voice);
    let open = uncovered(legs, voice).map_names(plain::line);
    bullet(out, "", &open.to_string(), width);
}

fn carried(carry: &Carry, teams: usize, voice: Voice) -> Said {
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
    voice.say("page-carry", &args)
}

/// The ropes at hand that no team carries.
fn left_over(sheet: &Sheet<'_>, voice: Voice) -> Option<Said> {
    let carried = |number: usize| {
        let mut named = sheet.plan.carry.iter().filter_map(|c| c.rope.as_ref());
        named.any(|named| named.rope == number)
    };
    let at_hand = (1..).zip(sheet.ropes);
    let left = at_hand.filter(|(number, _)| !carried(*number));
    let left = left.map(|(number, at_hand)| rope(&RopeName::of(number, at_hand), voice));
    let left = Said::join(left, ", ");
    (!left.is_empty()).then(|| voice.say("page-left", &[("ropes", Arg::Said(left))]))
}

// --- set-ups ---

/// A set-up in words with the legs and the team it holds for.
struct OfLegs {
    team: Option<usize>,
    legs: Vec<usize>,
    says: String,
}

impl OfLegs {
    /// `legs 2, 4`, with the team where there are several.
    fn label(&self, voice: Voice) -> String {
        let legs = finding::legs(&self.legs, voice);
        let Some(team) = self.team else {
            return legs.to_string();
        };
        let args = [("legs", Arg::Said(legs)), ("team", Arg::Count(team))];
        voice.say("page-legs-of-team", &args).to_string()
    }
}

/// The set-ups, those that are tied alike once.
fn alike(legs: &[Leg], voice: Voice) -> Vec<OfLegs> {
    let mut all: Vec<OfLegs> = Vec::new();
    for leg in legs {
        for setup in &leg.teams {
            let says = setup_line(setup, voice).map_names(plain::line).to_string();
            let team = (leg.teams.len() > 1).then_some(setup.team);
            let known = |of: &&mut OfLegs| of.team == team && of.says == says;
            match all.iter_mut().find(known) {
                Some(of) => of.legs.push(leg.leg),
                None => all.push(OfLegs {
                    team,
                    legs: vec![leg.leg],
                    says,
                }),
            }
        }
    }
    all
}

fn print(out: &mut String, setups: &[OfLegs], width: usize, voice: Voice) {
    let labels: Vec<String> = setups.iter().map(|of| of.label(voice)).collect();
    let widest = LEGS.min(width / 3);
    let short = labels.iter().map(|l| l.width()).filter(|w| *w <= widest);
    let column = short.max().unwrap_or(0);
    for (label, of) in labels.iter().zip(setups) {
        let sign = if label.width() <= column {
            format!("  {}  ", padded(label, column, false))
        } else {
            bullet(out, "  ", label, width);
            " ".repeat(column + 4)
        };
        bullet(out, &sign, &of.says, width);
    }
}

/// `3 people, 13 m apart, no knots, coils 15.5 m: Ada 15.5 · Ben 29.5 · Cleo 43.5`.
fn setup_line(setup: &TeamSetup, voice: Voice) -> Said {
    let knots = &setup.knots;
    let tied = [
        ("knots", Arg::Count(knots.count)),
        ("each", Arg::Count(knots.each_end)),
        ("first", Arg::Measured(knots.first_m)),
        ("step", Arg::Measured(knots.step_m)),
        ("bite", row::bite(setup)),
    ];
    let bag = [("bag", Arg::There(setup.bag_m))];
    let bag = (setup.bag_m > 1e-9).then(|| voice.say("block-bag", &bag));
    let coils = [row::coils(setup.coil_carried_m, voice)];
    let args = [
        ("people", Arg::Count(setup.people)),
        ("spacing", Arg::Needed(setup.spacing_m)),
        ("knots", Arg::Said(voice.say("page-knots", &tied))),
        (
            "coils",
            Arg::Said(Said::join(coils.into_iter().chain(bag), ", ")),
        ),
        (
            "marks",
            Arg::Said(marks(setup, |mark| shown(setup, mark), voice)),
        ),
    ];
    voice.say("page-set-up", &args)
}

/// Who ties in where; where the rope ends only if that is short of what is needed.
fn shown(setup: &TeamSetup, mark: &Mark) -> bool {
    match mark.kind {
        MarkKind::TieIn => true,
        MarkKind::Knot => false,
        MarkKind::End => setup.rope_short_m().is_some(),
    }
}

// --- what is not covered ---

/// `Not covered: gaps wider than 7.7 m (leg 2), 8.4 m (leg 4); two people in one gap`. For whom no loop reaches is told above.
fn uncovered(legs: &[Leg], voice: Voice) -> Said {
    let short = |leg: &&Leg| leg.teams.iter().any(|setup| setup.rope_short_m().is_some());
    let (short, long_enough): (Vec<&Leg>, Vec<&Leg>) = legs
        .iter()
        .filter(|leg| !leg.teams.is_empty())
        .partition(short);
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
    let all = any.into_iter().chain(wider).chain([two]);
    voice.say("page-not", &[("what", Arg::Said(Said::join(all, "; ")))])
}

/// Up to which gap the legs are set up as they are tied, by the team that is spaced for least; nothing where nobody gave one.
fn widest(legs: &[&Leg], voice: Voice) -> Vec<Said> {
    let mut all: Vec<(Said, Vec<usize>)> = Vec::new();
    for leg in legs {
        let gaps = leg.teams.iter().filter_map(|setup| setup.as_tied_gap_m);
        let Some(gap_m) = gaps.reduce(f64::min) else {
            continue;
        };
        let gap = voice.shown(&Arg::There(gap_m));
        match all.iter_mut().find(|(known, _)| *known == gap) {
            Some((_, legs)) => legs.push(leg.leg),
            None => all.push((gap, vec![leg.leg])),
        }
    }
    let of_legs = |(gap, legs): (Said, Vec<usize>)| {
        let legs = Arg::Said(finding::legs(&legs, voice));
        voice.say("page-not-on", &[("gap", Arg::Said(gap)), ("legs", legs)])
    };
    all.into_iter().map(of_legs).collect()
}
