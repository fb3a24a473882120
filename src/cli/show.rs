//! The terminal. Nothing else in the program prints.

use std::{
    io::{self, Write},
    path::Path,
    process::ExitCode,
};

use anstyle::{AnsiColor, Style};
use schrund::{
    fault::{Code, Fault, Level},
    say::{fault::told, language::Language, plain},
    write::sheet::FULL_WIDTH,
};

use crate::{
    End,
    answer::Answer,
    args::{Args, Color, UnitsFlag, voice},
    mistaken, network,
};

/// Narrower than this nothing is folded any further. Our judgement.
const LEAST_WIDTH: usize = 40;

/// What is known about the terminal and how much to say.
#[derive(Debug)]
pub(crate) struct Show {
    color: Color,
    quiet: bool,
    verbose: bool,
}

/// Tells what is wrong with a call and what to write; help and version are shown as they are.
pub(crate) fn misunderstood(error: &clap::Error) -> ExitCode {
    let args: Vec<String> = std::env::args_os()
        .skip(1)
        .map(|arg| arg.to_string_lossy().into_owned())
        .collect();
    // Where nothing can be printed nobody can be told.
    let _ = match mistaken::answer(error, &args) {
        Some(answer) => writeln!(
            anstream::stderr(),
            "{}",
            bold_head(&harmless(&usage(&answer)), Level::Error)
        ),
        // Help and version, in which nothing is quoted.
        None if !error.use_stderr() => error.print(),
        None => write!(
            anstream::stderr(),
            "{}",
            harmless(&error.render().to_string())
        ),
    };
    u8::try_from(error.exit_code()).map_or(ExitCode::FAILURE, ExitCode::from)
}

fn usage(Answer { says, cure }: &Answer) -> String {
    let [says, cure] = [says, cure].map(|text| plain::visible(text));
    format!("error[{}]: {says}\n  do: {cure}", Code::Usage.as_str())
}

/// A text as it may be printed, whatever it quotes: no secret of an address, and nothing that acts on the terminal.
fn harmless(text: &str) -> String {
    network::bare(plain::visible_lines(text))
}

impl Show {
    pub(crate) fn new(args: &Args) -> Self {
        Self {
            color: args.color,
            quiet: args.quiet,
            verbose: args.verbose,
        }
    }

    /// Whether standard output takes colours.
    pub(crate) fn colour(&self) -> bool {
        self.colour_on(&io::stdout())
    }

    fn colour_on(&self, stream: &impl anstream::stream::RawStream) -> bool {
        match self.color {
            Color::Always => true,
            Color::Never => false,
            Color::Auto => anstream::AutoStream::choice(stream) != anstream::ColorChoice::Never,
        }
    }

    /// Columns of the terminal, or of `COLUMNS` where there is none; else the full width.
    pub(crate) fn width(&self) -> usize {
        self.columns().unwrap_or(FULL_WIDTH)
    }

    #[cfg(feature = "shell")]
    /// Whether somebody reads standard output on a terminal.
    pub(crate) fn is_read(&self) -> bool {
        io::IsTerminal::is_terminal(&io::stdout())
    }

    /// Columns of the terminal, or of `COLUMNS` where there is none.
    pub(crate) fn columns(&self) -> Option<usize> {
        let said = || std::env::var("COLUMNS").ok()?.parse().ok();
        let columns = terminal_columns().or_else(said);
        columns.map(|width: usize| width.max(LEAST_WIDTH))
    }

    /// Prints a result. A reader that stops listening is no fault.
    pub(crate) fn result(&self, write: impl FnOnce(&mut dyn Write) -> io::Result<()>) -> End {
        let mut out = io::BufWriter::new(io::stdout().lock());
        match write(&mut out).and_then(|()| out.flush()) {
            Ok(()) => End::Done,
            Err(fault) if fault.kind() == io::ErrorKind::BrokenPipe => End::Done,
            Err(fault) => self.unexpected(&format!("standard output: {fault}")),
        }
    }

    /// Says what is wrong with the inputs, and how the program ends because of it.
    pub(crate) fn problems(&self, problems: &[Fault]) -> End {
        let problems = network::as_they_broke_off(problems);
        for problem in &problems {
            self.problem(problem);
        }
        worst(&problems)
    }

    /// Says in one line what is wrong with one input of many, and gives the sentence.
    #[cfg(feature = "survey")]
    pub(crate) fn one_lost(&self, name: &str, problems: &[Fault]) -> String {
        let voice = voice(Language::English, UnitsFlag::Metric);
        let first = problems.iter().find(|fault| fault.level() == Level::Error);
        let says = first.or(problems.first());
        let says = says.map(|fault| schrund::say::fault::says(fault, voice).to_string());
        let says = says.unwrap_or_default();
        let _ = writeln!(io::stderr(), "error: {}: {says}", plain::visible(name));
        says
    }

    /// How far it is, on a terminal, in a line that the next one writes over.
    #[cfg(feature = "survey")]
    pub(crate) fn progress(&self, done: usize, all: usize) {
        use io::IsTerminal;
        if self.quiet || !io::stderr().is_terminal() {
            return;
        }
        let end = if done == all { "\n" } else { "" };
        let _ = write!(io::stderr(), "\r{done} of {all} tracks{end}");
    }

    /// Says what was noticed.
    pub(crate) fn notices(&self, notices: &[Fault]) {
        for notice in notices.iter().filter(|_| !self.quiet) {
            self.problem(notice);
        }
    }

    fn problem(&self, problem: &Fault) {
        let text = told(problem, voice(Language::English, UnitsFlag::Metric));
        let text = harmless(&text);
        let shown = if self.colour_on(&io::stderr()) {
            bold_head(&text, problem.level())
        } else {
            text
        };
        let _ = writeln!(io::stderr(), "{shown}");
    }

    /// Says what is wrong with the call.
    pub(crate) fn misused(&self, answer: &Answer) -> End {
        let text = harmless(&usage(answer));
        let shown = if self.colour_on(&io::stderr()) {
            bold_head(&text, Level::Error)
        } else {
            text
        };
        let _ = writeln!(io::stderr(), "{shown}");
        End::Usage
    }

    /// Something the leader did not cause.
    pub(crate) fn unexpected(&self, what: &str) -> End {
        let _ = writeln!(io::stderr(), "error: {}", harmless(what));
        End::Unexpected
    }

    /// A line about what was done, unless asked to be quiet.
    pub(crate) fn say(&self, what: &str) {
        if !self.quiet {
            let _ = writeln!(io::stderr(), "{}", harmless(what));
        }
    }

    /// Which file was written.
    pub(crate) fn wrote(&self, path: &Path) {
        let name = path.display().to_string();
        self.say(&format!("wrote {}", plain::visible(&name)));
    }

    /// A line for those who want to know more.
    pub(crate) fn detail(&self, what: &str) {
        if self.verbose {
            self.say(what);
        }
    }
}

#[cfg(any(unix, windows))]
fn terminal_columns() -> Option<usize> {
    Some(usize::from(
        terminal_size::terminal_size_of(io::stdout())?.0.0,
    ))
}

/// Inside a page there is no terminal.
#[cfg(not(any(unix, windows)))]
fn terminal_columns() -> Option<usize> {
    None
}

fn bold_head(text: &str, level: Level) -> String {
    let (head, rest) = text.split_once(": ").unwrap_or((text, ""));
    let style = if level <= Level::Outside {
        Style::new().bold().fg_color(Some(AnsiColor::Red.into()))
    } else {
        Style::new().bold()
    };
    format!("{style}{head}:{style:#} {rest}")
}

/// Which exit code these errors ask for: what cannot be read first, then the network, then what is wrong.
/// How the program ends because of faults.
pub(crate) fn worst(problems: &[Fault]) -> End {
    let any = |wanted: &[Code]| problems.iter().any(|p| wanted.contains(&p.kind()));
    if any(&[Code::Unreadable]) {
        End::Unreadable
    } else if any(&[Code::Network]) {
        End::Network
    } else if any(&[Code::Unwritable]) {
        End::Unexpected
    } else if problems.iter().any(|p| p.level() == Level::Error) {
        End::Wrong
    } else {
        End::Done
    }
}
