//! A practice set laid over the defaults.

use std::sync::LazyLock;

use crate::{
    fault::{Fault, Place, refusal::Refusal, trip::InPractice},
    practice::{
        alike::nearest,
        choice::{Choices, Chosen},
        figure::{Figure, FigureEntry},
        nature::Nature,
        rule::Rule,
        rules::{GivenBy, Rules},
        set::{self, Set},
        sold::Sold,
        standing::Origin,
    },
};

/// The figures of `data/rules.toml`, read once.
static DEFAULTS: LazyLock<Result<Rules, Vec<Fault>>> = LazyLock::new(Rules::defaults);

impl Rules {
    /// The figures of `data/rules.toml` under those of the practice set `name` or, where `file` gives a
    /// text, under those of that text.
    ///
    /// # Errors
    /// Every fault of the practice text: what does not parse, is unknown, missing or out of bounds.
    pub fn with_practice(practice: &set::Source<'_>) -> Result<Self, Vec<Fault>> {
        let set = practice.read()?;
        let mut rules = DEFAULTS.clone()?;
        lay_over(&mut rules, set, practice.file())?;
        Ok(rules)
    }

    fn defaults() -> Result<Self, Vec<Fault>> {
        let table: std::collections::BTreeMap<String, FigureEntry> =
            toml::from_str(include_str!("../../data/rules.toml")).map_err(|e| {
                let refusal = Refusal::BuiltIn(e.message().to_owned());
                broken("data/rules.toml", refusal)
            })?;
        let figures = Rule::ALL.iter().map(|&rule| match table.get(rule.name()) {
            Some(entry) => Figure::from_entry(rule, entry, Origin::Default),
            None => Figure::base_spacing(rule),
        });
        let nature = Nature::built_in().map_err(|why| broken("data/holding.toml", why))?;
        Sold::built_in().map_err(|why| broken("data/ropes_sold.toml", why))?;
        Ok(Self {
            figures: figures.collect(),
            choices: Choices::default(),
            nature,
            practice: String::new(),
            beside: Vec::new(),
            practice_origin: Origin::Default,
            given: GivenBy::default(),
        })
    }
}

/// A file that comes with the program and is broken; a test proves that none is.
fn broken(file: &str, why: Refusal) -> Vec<Fault> {
    vec![Fault::new(InPractice::BuiltIn(why), Place::file(file))]
}

/// Lays a set over the rules; every fault of it at once.
fn lay_over(rules: &mut Rules, set: Set, file: &str) -> Result<(), Vec<Fault>> {
    let mut faults = Vec::new();
    for (name, entry) in &set.figures {
        if let Err(fault) = lay_figure(rules, name, entry, file) {
            faults.push(fault);
        }
    }
    faults.extend(missing(rules, file));
    faults.extend(growing(rules, file));
    lay_choices(rules, &set);
    match beside(&set, file) {
        Ok(beside) => rules.beside = beside,
        Err(more) => faults.extend(more),
    }
    rules.practice = set.name;
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults)
    }
}

/// The sets to weigh beside one: those it names, or else the default and its neighbours.
fn beside(set: &Set, file: &str) -> Result<Vec<String>, Vec<Fault>> {
    let Some(named) = &set.beside else {
        let [(default, _), ..] = set::EMBEDDED;
        let neighbours = set::Source::Named(default).read()?.beside;
        let all = std::iter::once(default.to_owned()).chain(neighbours.unwrap_or_default());
        return Ok(all.filter(|name| *name != set.name).collect());
    };
    let known = |name: &str| set::EMBEDDED.iter().any(|(n, _)| *n == name);
    let unknown = named.iter().filter(|name| !known(name));
    let faults: Vec<Fault> = unknown
        .map(|name| {
            Fault::new(
                set::unknown(name),
                Place::file(file).with_property("beside"),
            )
        })
        .collect();
    if faults.is_empty() {
        Ok(named
            .iter()
            .filter(|name| **name != set.name)
            .cloned()
            .collect())
    } else {
        Err(faults)
    }
}

fn lay_figure(rules: &mut Rules, name: &str, entry: &FigureEntry, file: &str) -> Result<(), Fault> {
    let place = Place::file(file).with_property(name);
    let Some(rule) = Rule::named(name) else {
        let near = nearest(name, Rule::ALL.iter().map(|rule| rule.name()));
        let name = name.to_owned();
        return Err(Fault::new(InPractice::NoFigure { name, near }, place));
    };
    let held = rules.figure(rule);
    if let Some(unit) = entry.unit.as_ref().filter(|unit| **unit != held.unit) {
        let unit = InPractice::Unit {
            found: unit.clone(),
            takes: held.unit.clone(),
        };
        return Err(Fault::new(unit, place));
    }
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
        for (name, _) in set::EMBEDDED {
            let rules = Rules::with_practice(&set::Source::Named(name)).unwrap();
            assert_eq!(rules.practice, name, "the set calls itself otherwise");
        }
    }

    #[test]
    fn the_arm_span_set_is_ten_less_n_arm_spans() {
        let rules = Rules::with_practice(&set::Source::Named("arm-span")).unwrap();
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
    fn a_set_that_names_no_neighbours_stands_beside_the_default_and_its_own() {
        let [(default, _), ..] = set::EMBEDDED;
        let standard = Rules::with_practice(&set::Source::Named(default)).unwrap();
        let text = include_str!("../../data/practice/constant.toml");
        let (lines, name): (Vec<&str>, &str) = (text.lines().collect(), "mine.toml");
        let mine = |beside: &str| {
            let kept = lines.iter().filter(|l| !l.starts_with("beside"));
            let kept: Vec<String> = kept
                .map(|l| l.replace("\"constant\"", "\"mine\""))
                .collect();
            let text = format!("{beside}\n{}", kept.join("\n"));
            Rules::with_practice(&set::Source::File { name, text: &text })
        };
        let unsaid = mine("").unwrap().beside;
        assert_eq!(unsaid[0], default);
        assert_eq!(unsaid[1..], standard.beside[..]);
        assert_eq!(
            mine("beside = [\"club-coils\"]").unwrap().beside,
            ["club-coils"]
        );
        assert!(mine("beside = []").unwrap().beside.is_empty());
        let fault = mine("beside = [\"nobody\"]").unwrap_err();
        assert_eq!(fault.len(), 1);
        assert_eq!(fault[0].code(), "unknown-name");
    }

    #[test]
    fn all_faults_of_a_set_are_told_at_once() {
        let text = "name = \"mine\"\n[spacing_2_m]\nvalue = 9\nstanding = \"our judgement\"\n\
                    [spacing_3_m]\nvalue = 12\nstanding = \"our judgement\"\n\
                    [reach]\nvalue = 2\nstanding = \"our judgement\"\n";
        let faults = Rules::with_practice(&set::Source::File {
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

    const SPACINGS: [Rule; 4] = [
        Rule::Spacing2M,
        Rule::Spacing3M,
        Rule::Spacing4M,
        Rule::Spacing5M,
    ];

    #[test]
    fn every_rule_but_the_spacings_stands_in_the_data_file_and_nothing_else_does() {
        let table: toml::Table = toml::from_str(include_str!("../../data/rules.toml")).unwrap();
        for name in table.keys() {
            assert!(
                Rule::named(name).is_some(),
                "{name} stands in rules.toml and no code asks for it"
            );
        }
        for rule in Rule::ALL.iter().filter(|r| !SPACINGS.contains(r)) {
            assert!(
                table.contains_key(rule.name()),
                "{} is missing from rules.toml",
                rule.name()
            );
        }
    }

    #[test]
    fn a_value_out_of_bounds_is_refused_by_name() {
        let mut rules = Rules::with_practice(&set::Source::Named("arm-span")).unwrap();
        let refused = rules.set(Rule::MarginM, -1.0, Origin::Flag).unwrap_err();
        assert_eq!(refused.to_string(), "margin_m -1 m is outside 0 to 1000 m");
        assert!(
            rules.set(Rule::MarginM, f64::NAN, Origin::Flag).is_err(),
            "NaN is no margin"
        );
        assert!(
            (rules[Rule::MarginM] - 20.0).abs() < 1e-12,
            "a refused value changes nothing"
        );
    }
}
