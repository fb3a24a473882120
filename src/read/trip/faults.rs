//! What is wrong with a trip file that does not read: every member that is at fault, not only the first.

use serde::Deserialize;
use toml::de::DeTable;

use super::form::Trip;
use crate::{
    fault::{Fault, Place, trip::InTrip},
    practice::set,
};

/// Least likeness of a name to be offered in place of another. Our judgement.
const ALIKE: f64 = 0.8;

/// One complaint a member; the parser's own where the text is no TOML at all.
pub(super) fn all(file: &str, text: &str, whole: &toml::de::Error) -> Vec<Fault> {
    let (Ok(spans), Ok(table)) = (DeTable::parse(text), text.parse::<toml::Table>()) else {
        return vec![set::broken(file, text, whole)];
    };
    let mut faults: Vec<(usize, Fault)> = Vec::new();
    for (name, value) in &table {
        let alone = toml::Table::from_iter([(name.clone(), value.clone())]);
        if let Err(fault) = Trip::deserialize(alone) {
            let at = spans
                .get_ref()
                .iter()
                .find(|(k, _)| k.get_ref() == name)
                .map_or(0, |(k, _)| k.span().start);
            faults.push((at, member(file, text, at, name, &fault)));
        }
    }
    if faults.is_empty() {
        return vec![set::broken(file, text, whole)];
    }
    faults.sort_by_key(|(at, _)| *at);
    faults.into_iter().map(|(_, fault)| fault).collect()
}

fn member(file: &str, text: &str, at: usize, name: &str, fault: &toml::de::Error) -> Fault {
    let (line, column) = set::line_column(text, at);
    let place = Place::file(file).at_line(line, column).with_property(name);
    let name = name.to_owned();
    if names().contains(&name) {
        let says = fault.message().replace('\n', ", ");
        return Fault::new(InTrip::Member { name, says }, place);
    }
    let near = nearest(&name);
    Fault::new(InTrip::NoMember { name, near }, place)
}

/// Every member that a trip file can have.
fn names() -> Vec<String> {
    let schema = schemars::schema_for!(Trip);
    let properties = schema.get("properties").and_then(|p| p.as_object());
    properties
        .map(|p| p.keys().cloned().collect())
        .unwrap_or_default()
}

fn nearest(name: &str) -> Option<String> {
    let likeness = |n: &String| strsim::jaro_winkler(n, name);
    let best = names()
        .into_iter()
        .max_by(|a, b| likeness(a).total_cmp(&likeness(b)));
    best.filter(|n| likeness(n) >= ALIKE)
}
