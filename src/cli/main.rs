//! The `schrund` command: opens and saves files, and ends with the exit code that the contract promises.

mod answer;
mod args;
mod check;
#[cfg(feature = "shell")]
mod completing;
#[cfg(feature = "page")]
mod draw;
mod ending;
#[cfg(feature = "shell")]
mod explain;
#[cfg(feature = "fetch")]
mod fetch;
mod height;
mod help;
mod inputs;
mod kept;
mod limits;
mod mistaken;
mod naming;
mod network;
mod new;
mod number;
mod options;
mod page;
mod plan;
mod practice;
mod save;
#[cfg(feature = "shell")]
mod shell;
mod show;
mod source;
#[cfg(feature = "page")]
mod sparse;
#[cfg(feature = "survey")]
mod survey;
mod terrain;
mod version;
#[cfg(feature = "zone")]
mod zone;

use std::process::ExitCode;

use clap::Parser;

/// How a command ended. The numbers are promised to scripts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum End {
    /// Planned, every leg inside the limits; or done.
    Done,
    /// Something unexpected.
    Unexpected,
    /// The call is wrong.
    Usage,
    /// An input is missing or unreadable.
    Unreadable,
    /// An input was understood and is wrong.
    Wrong,
    /// Planned and written, but a leg has no set-up within the limits or no rope at hand fits.
    Outside,
    /// The network.
    Network,
}

impl From<End> for ExitCode {
    fn from(end: End) -> Self {
        Self::from(match end {
            End::Done => 0,
            End::Unexpected => 1,
            End::Usage => 2,
            End::Unreadable => 3,
            End::Wrong => 4,
            End::Outside => 5,
            End::Network => 6,
        })
    }
}

fn main() -> ExitCode {
    let args = match args::Args::try_parse() {
        Ok(args) => args,
        Err(error) => return show::misunderstood(&help::with_help(error)),
    };
    let show = show::Show::new(&args);
    limits::set(&args.limits);
    #[cfg(feature = "fetch")]
    network::set(args.offline, args.quiet);
    let end = match args.command {
        args::Command::Plan(plan) => plan::run(&plan, &show),
        #[cfg(feature = "page")]
        args::Command::Draw(draw) => draw::run(&draw, &show),
        args::Command::Options(options) => options::run(&options, &show),
        args::Command::Check(check) => check::run(&check, &show),
        args::Command::Height(height) => height::run(&height, &show),
        #[cfg(feature = "zone")]
        args::Command::Zone(zone) => zone::run(&zone, &show),
        #[cfg(feature = "survey")]
        args::Command::Survey(survey) => survey::run(&survey, &show),
        #[cfg(feature = "fetch")]
        args::Command::Fetch(call) => fetch::run(&call, &show),
        args::Command::Page(call) => page::run(&call, &show),
        args::Command::Practice { name, toml } => practice::run(name.as_deref(), toml, &show),
        args::Command::New { dir } => new::run(&dir, &show),
        #[cfg(feature = "shell")]
        args::Command::Schema { of } => shell::schema(of, &show),
        #[cfg(feature = "shell")]
        args::Command::Completions { shell } => shell::completions(shell, &show),
        #[cfg(feature = "shell")]
        args::Command::Man { command } => shell::man(command.as_deref(), &show),
    };
    end.into()
}
