//! What else is wrong with a trip file of which a part cannot be read, so that all is told at once.

use serde::Deserialize;
use serde_json::Value;

use super::{folk::wrong_masses, forms};
use crate::{
    fault::{
        Fault, Wrong,
        toml::{InToml, NoToml},
    },
    practice::{Rules, set, toml_text::TomlText},
    trip::party::Party,
};

/// The faults of a text, with those of the lines that parse where the others are left out.
pub(super) fn told(name: &str, text: &str, mut broken: Vec<Fault>) -> Vec<Fault> {
    if !broken.iter().all(is_alone) {
        return broken;
    }
    let line_of = |fault: &Fault| fault.at.line;
    let kept = |(line, number): (&str, u64)| {
        let is_broken = broken.iter().any(|fault| line_of(fault) == Some(number));
        if is_broken {
            String::new()
        } else {
            line.to_owned()
        }
    };
    let kept: Vec<String> = text.lines().zip(1..).map(kept).collect();
    let kept = kept.join("\n");
    if let Ok(rest) = TomlText::parse(name, &kept) {
        // What is lacking may stand in a line that was left out.
        let lacks = |fault: &Fault| matches!(fault.what, Wrong::Toml(InToml::Lacks { .. }));
        broken.extend(forms::faults(&rest).into_iter().filter(|f| !lacks(f)));
        broken.sort_by_key(line_of);
    }
    broken
}

/// Whether a fault is that of one line, and what stands behind it is read as if that were not there.
fn is_alone(fault: &Fault) -> bool {
    let Wrong::Toml(InToml::Line { why, .. }) = &fault.what else {
        return false;
    };
    !matches!(why, NoToml::NotClosed(_) | NoToml::Deep | NoToml::Other(_))
}

/// Masses that cannot be, beside what is no mass at all.
pub(super) fn masses(text: &TomlText<'_>) -> Vec<Fault> {
    #[derive(Deserialize)]
    struct OnlyParty {
        party: Vec<Value>,
    }
    let Ok(OnlyParty { party }) = text.read() else {
        return Vec::new();
    };
    let rules = set::Source::Named(set::EMBEDDED[0].0);
    let Ok(rules) = Rules::with_practice(&rules) else {
        return Vec::new();
    };
    let masses: Vec<Option<f64>> = party.iter().map(Value::as_f64).collect();
    let filled: Vec<f64> = masses.iter().map(|kg| kg.unwrap_or(0.0)).collect();
    let mut party = Party::weighing(&filled);
    for (person, mass) in party.people.iter_mut().zip(&masses) {
        person.mass_given = mass.is_some();
    }
    wrong_masses(&party, &text.place().with_property("party"), &rules)
}
