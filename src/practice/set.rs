//! Practice sets: named collections of figures that are taught together.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::fault::{Fault, Item, Place, files::InFiles, trip::InPractice};
use crate::practice::{Chosen, Cover, Entry, Figure, Knots, Origin, Reserve, Rule, Rules};

/// The sets that come with the program, the default first.
pub const EMBEDDED: [(&str, &str); 4] = [
    (
        "arm-span",
        include_str!("../../data/practice/arm-span.toml"),
    ),
    (
        "short-alpine",
        include_str!("../../data/practice/short-alpine.toml"),
    ),
    (
        "constant",
        include_str!("../../data/practice/constant.toml"),
    ),
    (
        "club-coils",
        include_str!("../../data/practice/club-coils.toml"),
    ),
];

/// Where a practice set comes from.
#[derive(Clone, Copy, Debug)]
pub enum Source<'a> {
    /// One of the embedded sets.
    Named(&'a str),
    /// The text of a file of the leader's own.
    File {
        /// What the leader calls the file.
        name: &'a str,
        /// What it holds.
        text: &'a str,
    },
}

/// A practice file as it stands.
#[derive(Clone, Debug, Deserialize)]
pub struct Set {
    /// What the set is called.
    pub name: String,
    /// What it is, in a sentence.
    #[serde(default)]
    pub says: String,
    reserve: Option<Reserve>,
    knots: Option<Knots>,
    cover: Option<Cover>,
    rope_on_bare: Option<bool>,
    #[serde(flatten)]
    figures: BTreeMap<String, Entry>,
}

impl Source<'_> {
    /// The file as the user named it, or the name of the embedded set.
    pub(super) fn file(&self) -> &str {
        match self {
            Self::Named(name) | Self::File { name, .. } => name,
        }
    }

    /// Parses the set.
    ///
    /// # Errors
    /// The name is not one of the embedded sets, or the text does not parse.
    pub fn read(&self) -> Result<Set, Vec<Fault>> {
        let text = match self {
            Self::File { text, .. } => text,
            Self::Named(name) => embedded(name)?,
        };
        toml::from_str(text).map_err(|e| vec![broken(self.file(), text, &e)])
    }
}

fn embedded(name: &str) -> Result<&'static str, Vec<Fault>> {
    EMBEDDED
        .iter()
        .find(|(n, _)| *n == name)
        .map(|(_, text)| *text)
        .ok_or_else(|| {
            let no_set = InPractice::NoSet {
                name: name.to_owned(),
                sets: EMBEDDED.iter().map(|(n, _)| *n).collect(),
            };
            vec![Fault::new(no_set, Place::item(Item::Practice))]
        })
}

/// A TOML fault with its place.
#[must_use]
pub fn broken(file: &str, text: &str, fault: &toml::de::Error) -> Fault {
    let mut place = Place::file(file);
    if let Some(span) = fault.span() {
        let (line, column) = line_column(text, span.start);
        place = place.at_line(line, column);
    }
    Fault::new(InFiles::Toml(fault.message().replace('\n', ", ")), place)
}

/// Line and column, from 1, of a byte of a text.
#[must_use]
pub fn line_column(text: &str, at: usize) -> (u64, u64) {
    let before = text.get(..at).unwrap_or(text);
    let line = before.matches('\n').count() as u64 + 1;
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() as u64 + 1;
    (line, column)
}

/// Lays a set over the rules; every fault of it at once.
pub(super) fn lay_over(rules: &mut Rules, set: Set, file: &str) -> Result<(), Vec<Fault>> {
    let mut faults = Vec::new();
    for (name, entry) in &set.figures {
        if let Err(fault) = lay_figure(rules, name, entry, file) {
            faults.push(fault);
        }
    }
    faults.extend(missing(rules, file));
    faults.extend(growing(rules, file));
    lay_choices(rules, &set);
    rules.practice = set.name;
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults)
    }
}

fn lay_figure(rules: &mut Rules, name: &str, entry: &Entry, file: &str) -> Result<(), Fault> {
    let place = Place::file(file).with_property(name);
    let Some(rule) = Rule::named(name) else {
        return Err(Fault::new(InPractice::NoFigure(name.to_owned()), place));
    };
    let held = rules.figure(rule);
    held.check(entry.value)
        .map_err(|out| Fault::new(InPractice::Figure(out.into()), place))?;
    let mut figure = Figure::from_entry(rule, entry, Origin::Practice);
    figure.says = entry.says.clone().unwrap_or_else(|| held.says.clone());
    figure.unit = held.unit.clone();
    (figure.min, figure.max) = (held.min, held.max);
    *rules.figure_mut(rule) = figure;
    Ok(())
}

fn lay_choices(rules: &mut Rules, set: &Set) {
    let chosen = Chosen {
        reserve: set.reserve,
        knots: set.knots,
        cover: set.cover,
        rope_on_bare: set.rope_on_bare,
        ..Chosen::default()
    };
    rules.choices.lay(&chosen, &Origin::Practice);
}

fn missing(rules: &Rules, file: &str) -> Vec<Fault> {
    let gone = Rule::ALL.iter().filter(|&&rule| rules[rule].is_nan());
    gone.map(|rule| {
        Fault::new(
            InPractice::Missing(rule.name()),
            Place::file(file).with_property(rule.name()),
        )
    })
    .collect()
}

/// Spacing must not grow with the number of people: more people hold more.
fn growing(rules: &Rules, file: &str) -> Vec<Fault> {
    let pairs = [(2, 3), (3, 4), (4, 5)];
    let grows = |(few, many): &(usize, usize)| {
        rules[Rule::base_spacing(*many)] > rules[Rule::base_spacing(*few)]
    };
    pairs
        .iter()
        .filter(|pair| grows(pair))
        .map(|(few, many)| {
            let (few, many) = (*few, *many);
            Fault::new(
                InPractice::Growing { few, many },
                Place::file(file).with_property(Rule::base_spacing(many).name()),
            )
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_embedded_sets_load_under_their_own_names() {
        for (name, _) in EMBEDDED {
            let rules = Rules::with_practice(&Source::Named(name)).unwrap();
            assert_eq!(rules.practice, name, "the set calls itself otherwise");
        }
    }

    #[test]
    fn the_arm_span_set_is_ten_less_n_arm_spans() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        for people in 2..=5_u8 {
            let want = f64::from(10 - people) * rules[Rule::ArmSpanM];
            let got = rules[Rule::base_spacing(usize::from(people))];
            assert!(
                (got - want).abs() < 1e-9,
                "{people} people: {got}, want {want}"
            );
        }
    }

    #[test]
    fn all_faults_of_a_set_are_told_at_once() {
        let text = "name = \"mine\"\n[spacing_2_m]\nvalue = 9\nstanding = \"our judgement\"\n\
                    [spacing_3_m]\nvalue = 12\nstanding = \"our judgement\"\n\
                    [reach]\nvalue = 2\nstanding = \"our judgement\"\n";
        let faults = Rules::with_practice(&Source::File {
            name: "mine.toml",
            text,
        })
        .unwrap_err();
        let told: Vec<String> = faults
            .iter()
            .map(|f| crate::say::fault::says(f, Default::default()).to_string())
            .collect();
        assert_eq!(
            told,
            [
                "there is no figure \"reach\"",
                "the practice set does not give spacing_4_m",
                "the practice set does not give spacing_5_m",
                "the spacing of 3 people is greater than that of 2",
            ]
        );
    }
}
