//! What goes into the packs, each set-up in a line, and what is not covered by them.

use crate::{
    plan::leg::{Leg, Mark, MarkKind, TeamSetup},
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    write::{
        parts::{
            packs::{carried, left_over, uncovered},
            paragraph::{bullet, hanging, label_column, labelled},
            tied::{self, marks},
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
        hanging(out, &line.map_names(plain::line).to_string(), width);
    }
    for left in left_over(sheet.plan, voice) {
        hanging(out, &left.map_names(plain::line).to_string(), width);
    }
    let legs = &sheet.plan.legs;
    let setups = || legs.iter().flat_map(|leg| &leg.teams);
    let knots = setups().any(|setup| setup.knots.count > 0);
    let args = [
        ("unit", Arg::Said(Said::words(voice.units.short()))),
        ("knots", Arg::yes(knots)),
        ("tie", Arg::Needed(tied::tie_in_m(setups()))),
    ];
    let title = voice.say("page-set-ups", &args).to_string();
    bullet(out, "", &title, width);
    print(out, &alike(legs, knots, voice), width, voice);
    let open = uncovered(sheet.plan, false, voice).map_names(plain::line);
    hanging(out, &open.to_string(), width);
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
fn alike(legs: &[Leg], knots: bool, voice: Voice) -> Vec<OfLegs> {
    let mut all: Vec<OfLegs> = Vec::new();
    for leg in legs {
        for setup in &leg.teams {
            let says = setup_line(setup, knots, voice)
                .map_names(plain::line)
                .to_string();
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
    let column = label_column(labels.iter().map(String::as_str), LEGS, width);
    for (label, of) in labels.iter().zip(setups) {
        let sign = labelled(out, label, column, width);
        bullet(out, &sign, &of.says, width);
    }
}

/// `13 m apart, no knots, coils 15.5 m: Ada 15.5 · Ben 29.5 · Cleo 43.5`; nothing of knots where no set-up has any.
fn setup_line(setup: &TeamSetup, knots: bool, voice: Voice) -> Said {
    let tied = knots.then(|| {
        let knots = [("knots", Arg::Said(tied::knots(setup, voice)))];
        voice.say("page-set-up-knots", &knots)
    });
    let args = [
        ("spacing", Arg::Needed(setup.spacing_m)),
        ("knots", Arg::Said(tied.unwrap_or_default())),
        ("coils", Arg::Said(tied::carried(setup, voice))),
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
