//! Completions that know values: practice sets, codes, names of figures. What is parsed stays free.

use clap::{
    Command,
    builder::{PossibleValue, PossibleValuesParser},
};
use clap_complete::Shell;
use schrund::{
    plan::explained::explained,
    practice::{Choices, Rule, set},
};

use crate::help;

/// What a shell is to read in.
pub(crate) fn script(shell: Shell) -> String {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut knowing(), "schrund", &mut text);
    let text = String::from_utf8_lossy(&text).into_owned();
    let sets = set::EMBEDDED.map(|(name, _)| name).join(" ");
    match shell {
        // A practice set may be a file too.
        Shell::Bash => text.replace(
            &format!("compgen -W \"{sets}\""),
            &format!("compgen -f -W \"{sets}\""),
        ),
        Shell::Fish => {
            let line = |line: &str| match line.contains(" -l practice ") {
                true => line.replace(" -f -a ", " -F -a ") + "\n",
                false => line.to_owned() + "\n",
            };
            text.lines().map(line).collect()
        }
        _ => text,
    }
}

/// The flags, with the values that they are known to take.
fn knowing() -> Command {
    let known: [(&str, Vec<PossibleValue>); 4] = [
        (
            "practice",
            set::EMBEDDED
                .map(|(name, _)| PossibleValue::new(name))
                .to_vec(),
        ),
        (
            "name",
            set::EMBEDDED
                .map(|(name, _)| PossibleValue::new(name))
                .to_vec(),
        ),
        (
            "explain",
            explained()
                .map(|kind| PossibleValue::new(kind.code))
                .collect(),
        ),
        ("assume", assumed()),
    ];
    let pages = help::commands().into_iter().map(PossibleValue::new);
    let pages: Vec<PossibleValue> = pages.collect();
    help::plain()
        .mut_subcommands(|command| {
            command.mut_args(
                |arg| match known.iter().find(|(id, _)| arg.get_id() == *id) {
                    Some((_, values)) => {
                        arg.value_parser(PossibleValuesParser::new(values.clone()))
                    }
                    None => arg,
                },
            )
        })
        .mut_subcommand("man", |man| {
            man.mut_arg("command", |arg| {
                arg.value_parser(PossibleValuesParser::new(pages))
            })
        })
}

/// Figures and words by name, up to where the value begins.
fn assumed() -> Vec<PossibleValue> {
    let figures = Rule::ALL.iter().map(|rule| rule.name());
    let names = figures.chain(Choices::NAMES.iter().copied());
    names
        .map(|name| PossibleValue::new(format!("{name}=")))
        .collect()
}
