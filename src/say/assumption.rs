//! What a plan rests on, in the language of the reader. The English words stand beside the figures, in `data/*.toml`;
//! another language has them under `says-` and the name of the figure. What it does not have is said in English.

use crate::{
    plan::Assumption,
    say::{arg::Arg, span::Said, voice::Voice},
};

/// Ends of a range, as names of figures have them.
const CASES: [&str; 3] = ["adverse", "central", "favourable"];

/// What it is, without a capital and a full stop.
#[must_use]
pub fn says(assumption: &Assumption, voice: Voice) -> Said {
    let (name, case) = match assumption.name.rsplit_once('.') {
        Some((name, case)) if CASES.contains(&case) => (name, Some(case)),
        _ => (assumption.name.as_str(), None),
    };
    let (key, number) = key(name);
    if !voice.knows(&key) {
        return Said::name(assumption.says.clone());
    }
    let says = voice.say(&key, &[("number", Arg::Count(number))]);
    match case {
        Some(case) => voice.say(&format!("says-case-{case}"), &[("says", Arg::Said(says))]),
        None => says,
    }
}

/// What stands behind it; sources stay as they are.
#[must_use]
pub fn standing(assumption: &Assumption, voice: Voice) -> Said {
    let standing = assumption.standing.as_str();
    let (word, sources) = match standing.split_once(" (") {
        Some((word, sources)) => (word, format!(" ({sources}")),
        None => (standing, String::new()),
    };
    let key = format!("says-standing-{}", hyphened(word));
    match voice.knows(&key) {
        true => voice.say(&key, &[]).then(Said::name(sources)),
        false => Said::name(standing.to_owned()),
    }
}

/// The key of a figure, and the number of the person, rope or model in its name: figures of all snows, and of all ropes, are
/// called alike.
fn key(name: &str) -> (String, usize) {
    let parts: Vec<&str> = name.split('.').collect();
    match parts[..] {
        ["snow", _, figure] => (format!("says-snow-{figure}"), 0),
        ["rope_g_per_m", _] => ("says-rope_g_per_m".to_owned(), 0),
        [of, number] if number.parse::<usize>().is_ok() => {
            (format!("says-{of}"), number.parse().unwrap_or_default())
        }
        _ => (format!("says-{}", parts.join("-")), 0),
    }
}

/// Letters and digits in lower case, one hyphen between words.
fn hyphened(words: &str) -> String {
    let parts = words.split(|c: char| !c.is_ascii_alphanumeric());
    let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    parts.join("-").to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        practice::{Rule, Standing},
        practice::{Rules, set, term::Terms},
        say::language::Language,
    };

    #[test]
    fn every_figure_has_its_words_in_every_language() {
        let rules = Rules::with_practice(&set::Source::Named(set::EMBEDDED[0].0)).unwrap();
        let nature = rules.nature.figures().into_iter().map(|figure| figure.name);
        let words = rules
            .choices
            .said()
            .into_iter()
            .map(|word| word.name.to_owned());
        let figures = Rule::ALL.iter().map(|rule| rule.name().to_owned());
        let names: Vec<String> = nature.chain(words).chain(figures).collect();
        let standings = Standing::names().into_iter();
        let standings: Vec<String> = standings
            .map(|s| format!("says-standing-{}", hyphened(s)))
            .collect();
        for &language in &Language::ALL[1..] {
            let voice = Voice {
                language,
                ..Voice::default()
            };
            let known = |name: &String| {
                let name = CASES.iter().fold(name.as_str(), |name, case| {
                    name.strip_suffix(&format!(".{case}")).unwrap_or(name)
                });
                voice.knows(&key(name).0)
            };
            let silent: Vec<&String> = names.iter().filter(|name| !known(name)).collect();
            assert!(
                silent.is_empty(),
                "{language:?}: no words in figures.ftl for {silent:?}"
            );
            let silent: Vec<&String> = standings.iter().filter(|key| !voice.knows(key)).collect();
            assert!(silent.is_empty(), "{language:?}: {silent:?}");
        }
    }
}
