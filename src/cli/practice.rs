//! `schrund practice`: the sets, or one with the standing of each figure.

use std::io::{self, Write};

use schrund::{
    fault::Fault,
    practice::{
        Figure, Origin, Rules,
        set::{self, Set, Source},
        words::WordInForce,
    },
    say::plain,
    trip::timetable::Timetable,
};
use serde_json::Value;

use crate::{End, inputs, show::Show};

pub(crate) fn run(name: Option<&str>, toml: bool, show: &Show) -> End {
    let Some(name) = name else {
        return show.result(list);
    };
    match printed(name, toml) {
        Ok(text) => show.result(|out| out.write_all(text.as_bytes())),
        Err(problems) => show.problems(&problems),
    }
}

/// A set, for reading or as a file.
fn printed(name: &str, toml: bool) -> Result<String, Vec<Fault>> {
    let text = inputs::practice_text(name)?;
    let source = match &text {
        Some(text) => Source::File { name, text },
        None => Source::Named(name),
    };
    if toml {
        return source.written();
    }
    let (set, rules) = (source.read()?, Rules::with_practice(&source)?);
    let mut out = Vec::new();
    // Writing to memory never fails.
    let _ = about(&mut out, &set).and_then(|()| print(&mut out, &rules));
    // Whoever wrote the set may have written anything.
    Ok(plain::visible_lines(&String::from_utf8_lossy(&out)))
}

/// What the set is, where it comes from and when people use it.
fn about(out: &mut dyn Write, set: &Set) -> io::Result<()> {
    writeln!(out, "practice set {}", set.name)?;
    if !set.says.is_empty() {
        writeln!(out, "  {}", set.says)?;
    }
    let told = [("Comes from", &set.comes_from), ("Used", &set.used)];
    for (title, told) in told {
        if let Some(told) = told {
            writeln!(out, "\n{}\n  {}", title, told.says)?;
            writeln!(out, "  standing: {}", told.standing_shown())?;
        }
    }
    Ok(())
}

fn list(out: &mut dyn Write) -> io::Result<()> {
    for (name, _) in set::EMBEDDED {
        let says = set::Source::Named(name)
            .read()
            .map(|set| set.says)
            .unwrap_or_default();
        writeln!(out, "{name:<14}{says}")?;
    }
    writeln!(
        out,
        "\n`schrund practice NAME` prints a set: where it comes from, when people use it, the standing of each figure;"
    )?;
    writeln!(
        out,
        "with `--toml` as a file to edit, which `--practice FILE` takes in its place."
    )
}

/// The figures and words that the set gives first, then those it leaves to the defaults.
fn print(out: &mut dyn Write, rules: &Rules) -> io::Result<()> {
    let own = |f: &&Figure| f.origin == Origin::Practice;
    writeln!(out, "\nGiven by the set")?;
    for figure in rules.figures().filter(own) {
        line(out, figure)?;
    }
    let (given, left): (Vec<WordInForce>, Vec<WordInForce>) = rules
        .choices
        .said()
        .into_iter()
        .chain(Timetable::default().said())
        .partition(|said| said.origin == Origin::Practice);
    given.iter().try_for_each(|said| word(out, said))?;
    writeln!(out, "\nLeft to the defaults")?;
    for figure in rules.figures().filter(|f| !own(f)) {
        line(out, figure)?;
    }
    left.iter().try_for_each(|said| word(out, said))?;
    writeln!(out, "\nWhat the models of falls and hauls take")?;
    for given in rules.nature.figures() {
        let unit = match given.unit.as_str() {
            "1" => String::new(),
            unit => format!(" {unit}"),
        };
        writeln!(out, "  {:<32} {}{unit}", given.name, given.value)?;
        writeln!(out, "      {}; standing: {}", given.says, given.standing)?;
    }
    Ok(())
}

fn line(out: &mut dyn Write, figure: &Figure) -> io::Result<()> {
    let value = format!("{}{}", figure.value, figure.unit_shown());
    writeln!(
        out,
        "  {:<20}{value:>9}  {}",
        figure.rule.name(),
        figure.says
    )?;
    let note = figure
        .note
        .as_ref()
        .map_or_else(String::new, |n| format!("; {n}"));
    writeln!(
        out,
        "  {:<31}standing: {}{note}",
        "",
        figure.standing_shown()
    )
}

fn word(out: &mut dyn Write, said: &WordInForce) -> io::Result<()> {
    let shown = match &said.value {
        Value::Null => "none",
        Value::Bool(true) => "true",
        Value::Bool(false) => "false",
        other => other.as_str().unwrap_or_default(),
    };
    writeln!(out, "  {:<20}{shown:>9}  {}", said.name, said.says)?;
    writeln!(out, "  {:<31}standing: {}", "", said.standing.as_str())
}
