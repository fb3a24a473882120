//! What is wrong with a trip file that does not read: every member that is at fault, not only the first.

use serde::Deserialize;
use toml::de::DeTable;

use super::Trip;
use crate::{
    fault::{Code, Place, Problem},
    practice::set,
};

/// What each member takes, for those that take more than a number or a word.
const TAKES: [(&str, &str); 9] = [
    (
        "party",
        "how many, a list of masses in kg, or [[party]] blocks with `name` and `mass_kg`",
    ),
    (
        "rope",
        "[[rope]] blocks with `length_m`, and `diameter_mm` and `name` where known",
    ),
    ("stage", "the number or the name of a stage"),
    ("assume", "a table [assume] of figures and words by name"),
    ("terrain", "a list of files"),
    (
        "emergency",
        "[[emergency]] blocks with `name`, `contact` and `note`",
    ),
    ("travel", "\"foot\", \"snowshoe\" or \"ski\""),
    ("knots", "\"auto\", \"always\" or \"never\""),
    ("cover", "\"ends\" or \"anyone\""),
];

/// Least likeness of a name to be offered in place of another. Our judgement.
const ALIKE: f64 = 0.8;

/// One complaint a member; the parser's own where the text is no TOML at all.
pub(super) fn all(file: &str, text: &str, whole: &toml::de::Error) -> Vec<Problem> {
    let (Ok(spans), Ok(table)) = (DeTable::parse(text), text.parse::<toml::Table>()) else {
        return vec![set::broken(file, text, whole)];
    };
    let mut faults: Vec<(usize, Problem)> = Vec::new();
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
    faults.into_iter().map(|(_, problem)| problem).collect()
}

fn member(file: &str, text: &str, at: usize, name: &str, fault: &toml::de::Error) -> Problem {
    let (line, column) = set::line_column(text, at);
    let place = Place::file(file).at_line(line, column).with_property(name);
    if !names().iter().any(|n| n == name) {
        let says = format!("a trip file has no `{name}`");
        return Problem::new(Code::UnknownName, place, says).hint(nearest(name));
    }
    let problem = |says| Problem::new(Code::BadTrip, place, says);
    match TAKES.iter().find(|(n, _)| *n == name) {
        Some((_, takes)) => problem(format!("`{name}` is not in a form that is understood"))
            .hint(format!("it takes {takes}")),
        None => problem(format!("`{name}`: {}", fault.message().replace('\n', ", ")))
            .hint("`schrund new DIR` writes a trip file that shows every member"),
    }
}

/// Every member that a trip file can have.
fn names() -> Vec<String> {
    let schema = schemars::schema_for!(Trip);
    let properties = schema.get("properties").and_then(|p| p.as_object());
    properties
        .map(|p| p.keys().cloned().collect())
        .unwrap_or_default()
}

fn nearest(name: &str) -> String {
    let likeness = |n: &String| strsim::jaro_winkler(n, name);
    let names = names();
    let best = names
        .iter()
        .max_by(|a, b| likeness(a).total_cmp(&likeness(b)));
    match best.filter(|n| likeness(n) >= ALIKE) {
        Some(best) => format!("perhaps `{best}` is meant; figures go under [assume]"),
        None => "`schrund new DIR` writes a trip file that shows every member".to_owned(),
    }
}
