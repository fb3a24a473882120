//! `schrund check --explain`: one code, or all of them.

use std::io::{self, Write};

use schrund::{
    fault::{Code, Fault, Item, Level, Place, files::InFiles},
    plan::explained::{Explained, explained},
    write::sheet::FULL_WIDTH,
};

use crate::{End, show::Show};

/// Likeness, of 1, from which a code is a slip of the fingers away from another one. Our judgement.
const MISSPELT: f64 = 0.75;

/// Least likeness, of 1, at which a code is offered for a misspelt one. Our judgement.
const ALIKE: f64 = 0.5;

/// Codes that are offered. Our judgement.
const MOST_NEAR: usize = 3;

/// Words shorter than this are in many codes and tell none apart; of the others as many letters decide, so that
/// `reached` is like `reaches`. Our judgement.
const WORD: usize = 4;
/// See [`WORD`].
const STEM: usize = 5;

/// What a code means and what to do about it.
pub(crate) fn one(code: &str, show: &Show) -> End {
    let Some(found) = explained().find(|e| e.code == code) else {
        return no_such_code(code, show);
    };
    let (level, width) = (found.level, show.width());
    show.result(|out| {
        let head = format!("{} ({}: {})", found.code, level.as_str(), means(level));
        writeln!(out, "{}", indented(&head, "", width))?;
        for (i, paragraph) in found.text.split("\n\n").enumerate() {
            if i > 0 {
                writeln!(out)?;
            }
            writeln!(out, "{}", indented(&on_one_line(paragraph), "  ", width))?;
        }
        Ok(())
    })
}

/// What a level says of a plan.
fn means(level: Level) -> &'static str {
    match level {
        Level::Error => "the call or an input is wrong, and nothing is planned",
        Level::Stop => "planned, and roping together is not the answer there",
        Level::Outside => "planned, and no set-up within the limits or no rope holds it",
        Level::Look => "planned, and something is to be decided or watched; told as a warning",
        Level::Note => "worth knowing",
    }
}

/// A text in lines of a width, each behind the same blanks.
fn indented(text: &str, blanks: &str, width: usize) -> String {
    let form = textwrap::Options::new(width).initial_indent(blanks);
    textwrap::fill(text, form.subsequent_indent(blanks))
}

fn on_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What the levels say.
fn levels(out: &mut dyn Write, width: usize) -> io::Result<()> {
    writeln!(out, "What the levels say, the gravest first")?;
    let all = [
        Level::Error,
        Level::Stop,
        Level::Outside,
        Level::Look,
        Level::Note,
    ];
    for level in all {
        let line = format!("{:<7}  {}", level.as_str(), means(level));
        writeln!(out, "{}", indented(&line, "  ", width))?;
    }
    writeln!(out)
}

/// What the levels say, and all codes: each with its level and what it means, in one sentence. On a terminal of so many
/// columns each sentence stands under its code; else each code has a line, for whoever searches them.
pub(crate) fn list(out: &mut dyn Write, columns: Option<usize>) -> io::Result<()> {
    let whole = columns.unwrap_or(FULL_WIDTH);
    levels(out, whole)?;
    let known: Vec<Explained> = explained().collect();
    let width = known.iter().map(|e| e.code.len()).max().unwrap_or(0);
    let (read, planned): (Vec<&Explained>, Vec<&Explained>) =
        known.iter().partition(|e| is_fault(e));
    let groups = [
        (
            "What can be wrong with a call or its files, in the order of reading",
            read,
        ),
        ("What a plan can find, the gravest first", planned),
    ];
    for (title, group) in groups {
        writeln!(out, "{}", indented(title, "", whole))?;
        for e in group {
            let (code, level) = (e.code, e.level.as_str());
            let sentence = first_sentence(&e.text);
            match columns {
                Some(columns) => {
                    writeln!(out, "  {code} ({level})")?;
                    writeln!(out, "{}", indented(&sentence, "      ", columns))?;
                }
                None => writeln!(out, "  {code:<width$}  {level:<7}  {sentence}")?,
            }
        }
        writeln!(out)?;
    }
    let last = "`schrund check --explain CODE` says what one means and what to do.";
    writeln!(out, "{}", indented(last, "", whole))
}

fn is_fault(kind: &Explained) -> bool {
    Code::ALL.iter().any(|code| code.as_str() == kind.code)
}

/// Up to the first full stop, on one line.
fn first_sentence(text: &str) -> String {
    let line = on_one_line(text);
    match line.split_once(". ") {
        Some((first, _)) => format!("{first}."),
        None => line,
    }
}

/// A misspelt flag value, so a fault of usage.
fn no_such_code(code: &str, show: &Show) -> End {
    let no_code = InFiles::NoCode {
        name: code.to_owned(),
        near: near(code),
    };
    let place = Place::item(Item::Flag("--explain"));
    show.problems(&[Fault::new(no_code, place)]);
    End::Usage
}

/// Codes that may be meant: spelt nearly so, or else such as speak of the same things, or else spelt somewhat like it.
fn near(asked: &str) -> Vec<&'static str> {
    let alike = |code: &str| strsim::normalized_damerau_levenshtein(code, asked);
    let wanted = stems(asked);
    let shared = |e: &Explained| {
        let said = stems(&format!("{} {}", e.code, e.text));
        wanted.iter().filter(|stem| said.contains(stem)).count()
    };
    let mut known: Vec<(bool, usize, f64, &'static str)> = explained()
        .map(|e| (alike(e.code) >= MISSPELT, shared(&e), alike(e.code), e.code))
        .filter(|(_, shared, alike, _)| {
            *alike >= ALIKE || *shared > 0 && *shared * 2 >= wanted.len()
        })
        .collect();
    known.sort_by(|a, b| (b.0, b.1).cmp(&(a.0, a.1)).then(b.2.total_cmp(&a.2)));
    if known.first().is_some_and(|(misspelt, ..)| *misspelt) {
        known.retain(|(misspelt, ..)| *misspelt);
    }
    known
        .into_iter()
        .map(|(.., code)| code)
        .take(MOST_NEAR)
        .collect()
}

/// The beginnings of the words that tell something.
fn stems(text: &str) -> Vec<String> {
    let words = text.split(|c: char| !c.is_ascii_alphanumeric());
    let long = words.filter(|word| word.len() >= WORD);
    long.map(|word| word.to_ascii_lowercase().chars().take(STEM).collect())
        .collect()
}
