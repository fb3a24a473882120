//! `schrund practice`: the sets, or one with the standing of each figure.

use std::io::{self, Write};

use schrund::rules::{Figure, Origin, Rules, practice};
use serde::Serialize;

use crate::{End, inputs, show::Show};

pub(crate) fn run(name: Option<&str>, show: &Show) -> End {
    let Some(name) = name else {
        return show.result(list);
    };
    match inputs::practice_rules(name) {
        Ok(rules) => show.result(|out| print(out, &rules)),
        Err(problems) => show.problems(&problems),
    }
}

fn list(out: &mut dyn Write) -> io::Result<()> {
    for (name, _) in practice::EMBEDDED {
        let says = practice::Source::Named(name)
            .read()
            .map(|set| set.says)
            .unwrap_or_default();
        writeln!(out, "{name:<14}{says}")?;
    }
    writeln!(
        out,
        "\n`schrund practice NAME` prints a set with the standing of each figure;"
    )?;
    writeln!(out, "a file in the same form can be given in its place.")
}

/// The figures that the set gives first, then those it leaves to the defaults.
fn print(out: &mut dyn Write, rules: &Rules) -> io::Result<()> {
    writeln!(out, "practice set {}", rules.practice)?;
    let own = |f: &&Figure| f.origin == Origin::Practice;
    writeln!(out, "\nGiven by the set")?;
    for figure in rules.figures().filter(own) {
        line(out, figure)?;
    }
    words(out, rules)?;
    writeln!(out, "\nLeft to the defaults")?;
    for figure in rules.figures().filter(|f| !own(f)) {
        line(out, figure)?;
    }
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

fn words(out: &mut dyn Write, rules: &Rules) -> io::Result<()> {
    let choices = &rules.choices;
    word(out, "knots", &choices.knots.value)?;
    word(out, "reserve", &choices.reserve.value)?;
    word(out, "cover", &choices.cover.value)?;
    word(out, "rope_on_bare", &choices.rope_on_bare.value)?;
    word(out, "snow", &choices.snow.value)
}

fn word(out: &mut dyn Write, name: &str, value: &impl Serialize) -> io::Result<()> {
    let value = serde_json::to_value(value)?;
    let shown = value
        .as_str()
        .map_or_else(|| value.to_string(), str::to_owned);
    writeln!(out, "  {name:<20}{shown:>9}")
}
