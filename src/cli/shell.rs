//! `schrund schema`, `completions` and `man`.

use clap::Command;
use clap_mangen::{
    Man,
    roff::{Inline, Roff, bold, roman},
};

use crate::{
    End,
    args::Document,
    completing,
    help::{self, EXIT_CODES, Example},
    mistaken,
    show::Show,
};

pub(crate) fn schema(of: Document, show: &Show) -> End {
    let text = match of {
        Document::Plan => schrund::write::json::schema(),
        Document::Trip => schrund::read::trip::schema(),
        Document::Practice => schrund::read::practice::schema(),
        Document::Zones => Ok(include_str!("../../data/zones.schema.json").to_owned()),
    };
    match text {
        Ok(text) => show.result(|out| out.write_all(text.as_bytes())),
        Err(fault) => show.unexpected(&fault.to_string()),
    }
}

pub(crate) fn completions(shell: clap_complete::Shell, show: &Show) -> End {
    let text = completing::script(shell);
    show.result(|out| out.write_all(text.as_bytes()))
}

/// The page of the program or of one of its commands: for a pager of manual pages where it is piped or saved, and as
/// plain text on a terminal.
pub(crate) fn man(command: Option<&str>, show: &Show) -> End {
    let mut all = help::plain();
    all.build();
    let Some(name) = command else {
        return page(all, "schrund", show);
    };
    match all.find_subcommand(name) {
        Some(command) => page(command.clone(), name, show),
        None => show.misused(&mistaken::no_page(name)),
    }
}

fn page(mut command: Command, name: &str, show: &Show) -> End {
    if show.is_read() {
        return show
            .result(|out| out.write_all(plain_page(command, name, show.width()).as_bytes()));
    }
    let has_commands = command.has_subcommands();
    let usage = command.render_usage().to_string();
    let version = concat!("schrund ", env!("CARGO_PKG_VERSION"));
    let man = Man::new(command).source(version);
    show.result(|mut out| {
        man.render_title(&mut out)?;
        man.render_name_section(&mut out)?;
        synopsis(&usage).to_writer(&mut out)?;
        man.render_description_section(&mut out)?;
        man.render_options_section(&mut out)?;
        if has_commands {
            man.render_subcommands_section(&mut out)?;
        }
        sections(help::examples(name)).to_writer(&mut out)
    })
}

/// The same page for reading as it stands.
fn plain_page(command: Command, name: &str, columns: usize) -> String {
    let codes = EXIT_CODES.map(|(code, says)| format!("  {code:<4} {says}"));
    let after = format!(
        "{}\n\nExit codes:\n{}",
        help::examples_of(name),
        codes.join("\n")
    );
    let command = command.term_width(columns).after_help(after);
    let help = command.clone().render_long_help();
    let called = command.get_bin_name().unwrap_or(name);
    format!("{called}\n\n{help}")
}

/// The call with what must be given; the many flags stand below, under their headings.
fn synopsis(usage: &str) -> Roff {
    let mut roff = Roff::new();
    roff.control("SH", ["SYNOPSIS"]);
    roff.text([roman(usage.trim_start_matches("Usage: "))]);
    roff
}

/// The examples, and how the program ends.
fn sections(examples: &[Example]) -> Roff {
    let mut roff = Roff::new();
    roff.control("SH", ["EXAMPLES"]);
    for (call, says) in examples {
        paragraph(&mut roff, bold(*call), says);
    }
    roff.control("SH", ["EXIT STATUS"]);
    for (code, says) in EXIT_CODES {
        paragraph(&mut roff, bold(code), says);
    }
    roff
}

fn paragraph(roff: &mut Roff, head: Inline, says: &str) {
    roff.control("TP", []);
    roff.text([head]);
    roff.text([roman(says)]);
}
