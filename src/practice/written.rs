//! A practice set written down again: what was read, and what it leaves to the defaults, ready to be edited.

use std::fmt::Write;

use super::{
    figure::{Figure, FigureEntry},
    rules::Rules,
    set::{AboutSet, Set, Source},
    standing::Origin,
    term::Terms,
};
use crate::fault::Fault;

/// What stands above every set.
const HEAD: &str = "\
# A practice set of schrund. Change what you do otherwise, give it a name of its own, and hand it over with
# `--practice FILE`; `schrund schema practice` describes its form. A figure that you change is yours: write
# standing = \"the leader's word\" beside it, and leave its sources away.
";

impl Source<'_> {
    /// The set as a practice file that says the same; figures left to the defaults stand in it behind a `#`.
    ///
    /// ```
    /// use schrund::practice::{Rules, set::Source};
    ///
    /// let text = Source::Named("constant").written().unwrap();
    /// let file = Source::File { name: "mine.toml", text: &text };
    /// assert_eq!(Rules::with_practice(&file), Rules::with_practice(&Source::Named("constant")));
    /// ```
    ///
    /// # Errors
    /// Every fault of the set.
    pub fn written(&self) -> Result<String, Vec<Fault>> {
        let (set, rules) = (self.read()?, Rules::with_practice(self)?);
        let mut out = String::new();
        // Writing to a text never fails.
        let _ = write(&mut out, &set, &rules);
        Ok(out)
    }
}

fn write(out: &mut String, set: &Set, rules: &Rules) -> std::fmt::Result {
    out.push_str(HEAD);
    writeln!(out, "name = {}", quoted(&set.name))?;
    if !set.says.is_empty() {
        writeln!(out, "says = {}", quoted(&set.says))?;
    }
    if let Some(beside) = &set.beside {
        writeln!(
            out,
            "# The sets that `schrund options` weighs beside this one."
        )?;
        writeln!(out, "beside = {}", list(beside))?;
    }
    words(out, set)?;
    told(out, "comes_from", set.comes_from.as_ref())?;
    told(out, "used", set.used.as_ref())?;
    for figure in rules.figures_of(Origin::Practice) {
        let entry = set.figures.get(figure.rule.name());
        writeln!(out, "\n{}", heading(figure))?;
        for line in lines(figure, entry) {
            writeln!(out, "{line}")?;
        }
    }
    writeln!(
        out,
        "\n# Left to the defaults: take the `# ` away from a block to change it."
    )?;
    for figure in rules.figures_of(Origin::Default) {
        writeln!(out, "\n{}", heading(figure))?;
        for line in lines(figure, None) {
            writeln!(out, "# {line}")?;
        }
    }
    Ok(())
}

/// The words that the set chooses.
fn words(out: &mut String, set: &Set) -> std::fmt::Result {
    let chosen = [
        ("reserve", set.reserve.map(Terms::name)),
        ("knots", set.knots.map(Terms::name)),
        ("cover", set.cover.map(Terms::name)),
    ];
    for (name, word) in chosen {
        if let Some(word) = word {
            writeln!(out, "{name} = {}", quoted(word))?;
        }
    }
    match set.rope_on_bare {
        Some(roped) => writeln!(out, "rope_on_bare = {roped}"),
        None => Ok(()),
    }
}

fn told(out: &mut String, name: &str, told: Option<&AboutSet>) -> std::fmt::Result {
    let Some(told) = told else {
        return Ok(());
    };
    writeln!(out, "\n[{name}]\nsays = {}", quoted(&told.says))?;
    writeln!(out, "standing = {}", quoted(told.standing.as_str()))?;
    if told.sources.is_empty() {
        return Ok(());
    }
    writeln!(out, "sources = {}", list(&told.sources))
}

/// `## m, 1 to 60: least spacing of 2 people where the gaps ask for no more`.
fn heading(figure: &Figure) -> String {
    let unit = match figure.unit.as_str() {
        "1" => String::new(),
        unit => format!("{unit}, "),
    };
    let says = figure.says.replace(char::is_control, " ");
    format!("## {unit}{} to {}: {says}", figure.min, figure.max)
}

/// A figure as a table. Its words stand in it only where the set has its own.
fn lines(figure: &Figure, entry: Option<&FigureEntry>) -> Vec<String> {
    let mut lines = vec![
        format!("[{}]", figure.rule.name()),
        format!("value = {:?}", figure.value),
        format!("standing = {}", quoted(figure.standing.as_str())),
    ];
    if let Some(says) = entry.and_then(|entry| entry.says.as_ref()) {
        lines.push(format!("says = {}", quoted(says)));
    }
    if !figure.sources.is_empty() {
        lines.push(format!("sources = {}", list(&figure.sources)));
    }
    if let Some(note) = &figure.note {
        lines.push(format!("note = {}", quoted(note)));
    }
    lines
}

fn list(texts: &[String]) -> String {
    let texts: Vec<String> = texts.iter().map(|text| quoted(text)).collect();
    format!("[{}]", texts.join(", "))
}

/// A text as TOML has it on one line `[from memory: TOML 1.0, basic strings]`.
fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => quoted.extend(['\\', c]),
            c if c.is_control() => quoted.push_str(&format!("\\u{:04X}", u32::from(c))),
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}

#[cfg(test)]
mod tests {
    use super::{super::set::EMBEDDED, *};

    fn rules(text: &str) -> Rules {
        Rules::with_practice(&Source::File {
            name: "mine.toml",
            text,
        })
        .unwrap_or_else(|f| panic!("{f:?}\n{text}"))
    }

    #[test]
    fn every_set_written_down_says_the_same_and_is_written_the_same_again() {
        for (name, _) in EMBEDDED {
            let source = Source::Named(name);
            let text = source.written().unwrap();
            assert_eq!(
                rules(&text),
                Rules::with_practice(&source).unwrap(),
                "{name}"
            );
            let again = Source::File {
                name: "mine.toml",
                text: &text,
            }
            .written()
            .unwrap();
            assert_eq!(again, text, "{name}");
        }
    }

    #[test]
    fn what_is_left_to_the_defaults_changes_nothing_when_it_is_taken_in() {
        for (name, _) in EMBEDDED {
            let source = Source::Named(name);
            let text = source.written().unwrap();
            let (own, left) = text.split_once("# Left to the defaults").unwrap();
            let taken: Vec<&str> = left
                .lines()
                .skip(1)
                .map(|l| {
                    l.strip_prefix("# ")
                        .filter(|l| l.starts_with('[') || l.contains(" = "))
                        .unwrap_or("")
                })
                .collect();
            let all = rules(&format!("{own}\n{}", taken.join("\n")));
            let plain = Rules::with_practice(&source).unwrap();
            for (a, b) in all.figures.iter().zip(&plain.figures) {
                assert_eq!(
                    (a.rule, a.value, &a.says),
                    (b.rule, b.value, &b.says),
                    "{name}"
                );
                assert_eq!(
                    a.origin,
                    Origin::Practice,
                    "{name}: {} was taken in",
                    a.rule.name()
                );
            }
        }
    }

    #[test]
    fn odd_words_come_through() {
        let odd = "a \"quoted\" \\ word,\nand a line \u{7} é";
        let spacing = |n: u8| {
            format!(
                "[spacing_{n}_m]\nvalue = 1e1\nstanding = \"derived\"\nnote = {}\n",
                quoted(odd)
            )
        };
        let text = format!(
            "name = {}\nsays = {}\nbeside = []\n{}",
            quoted("my   own"),
            quoted(odd),
            (2..6).map(spacing).collect::<String>()
        );
        let source = Source::File {
            name: "mine.toml",
            text: &text,
        };
        let again = source.written().unwrap();
        assert_eq!(rules(&again), rules(&text));
        assert!(again.contains("name = \"my own\""), "{again}");
        assert!(again.contains("beside = []"), "{again}");
    }
}
