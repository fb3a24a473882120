//! The flags. Nothing else in the program knows them.

use std::{fmt, path::PathBuf};

use clap::{
    ArgAction, Parser, Subcommand, ValueEnum,
    builder::{PossibleValue, PossibleValuesParser, TypedValueParser},
};
use schrund::{
    say::{interface::Interface, voice::Voice},
    trip::language::Language,
    write::{FORMATS, Format},
};

use crate::{
    limits::{self, LimitAsked},
    naming, number, version,
};

#[cfg(feature = "fetch")]
mod fetch;
mod job;
mod page;
#[cfg(feature = "survey")]
mod survey;
#[cfg(feature = "zone")]
mod zone;

#[cfg(feature = "fetch")]
pub(crate) use fetch::{FetchCall, FetchTerrainArgs, FetchZonesArgs, NearArgs};
use job::{ICE, OUTPUT, SAID};
pub(crate) use job::{JobArgs, LaidArgs, UnitsFlag};
#[cfg(feature = "page")]
pub(crate) use page::DrawArgs;
pub(crate) use page::PageCall;
#[cfg(feature = "survey")]
pub(crate) use survey::{SurveyArgs, SurveyFormat};
#[cfg(feature = "zone")]
pub(crate) use zone::ZoneArgs;

/// Plans how a rope team is set up on every leg of a glacier route.
#[derive(Debug, Parser)]
#[command(
    name = "schrund",
    version,
    long_version = version::long(),
    about,
    disable_help_flag = true,
    disable_version_flag = true,
    long_about = "Plans how a rope team is set up on every leg of a glacier route.\n\n\
                  Reads a GPX line and a GeoJSON map of the ice with the gap widths you expect, and works out \
                  where to rope up, how far apart to walk, which knots to tie, how much rope to carry spare, and \
                  which rope to take. It computes what the rules give for the assumptions it was told. It never \
                  promises safety: what is seen on the spot, local rules and trained people come first."
)]
pub(crate) struct Args {
    /// When to use colours; `NO_COLOR` is honoured.
    #[arg(help_heading = SAID, long, global = true, value_name = "WHEN", default_value = "auto")]
    pub(crate) color: Color,
    /// Say less: only errors.
    #[arg(help_heading = SAID, short, long, global = true)]
    pub(crate) quiet: bool,
    /// Say more: what was read and what it held.
    #[arg(help_heading = SAID, short, long, global = true)]
    pub(crate) verbose: bool,
    /// Ask no server: of addresses what is kept is used.
    #[cfg(feature = "fetch")]
    #[arg(help_heading = SAID, long, global = true)]
    pub(crate) offline: bool,
    /// Take more of an input than usual, or less, such as `text-mib=4`
    #[arg(help_heading = SAID, long = "limit", global = true, value_name = "NAME=NUMBER", value_parser = limits::asked, long_help = limits::help())]
    pub(crate) limits: Vec<LimitAsked>,
    /// Print help; `-h` is the short one.
    #[arg(short, long, global = true, action = ArgAction::Help, help_heading = SAID)]
    help: Option<bool>,
    /// Print the version; `--version` tells how it was built too.
    #[arg(short = 'V', long, action = ArgAction::Version, help_heading = SAID)]
    version: Option<bool>,
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// When to use colours.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Color {
    /// In a terminal.
    Auto,
    /// Always.
    Always,
    /// Never.
    Never,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Plan the legs of a route: where to rope up, how, and with which rope.
    ///
    /// It takes the line, the ice, and who goes: --party, or a trip file that says it.
    Plan(Box<PlanArgs>),
    /// Ways to split the party and to use the ropes at hand, side by side.
    Options(Box<OptionsArgs>),
    /// Write one page that works without a network: draw the ice, see the plan follow, save zones, trip and plan.
    ///
    /// It holds the line, the ice, the trip and this program itself, and opens in any browser of today.
    #[cfg(feature = "page")]
    Draw(Box<DrawArgs>),
    /// Read files and report every fault and oddity; plan nothing.
    Check(CheckArgs),
    /// Print the heights of terrain models at places, one tab-separated line each: longitude, latitude, height of the
    /// cell, height between cells; what the columns are goes to standard error.
    Height(HeightArgs),
    /// List the practice sets, or print one: where it comes from, when people use it, and the standing of each figure.
    Practice {
        /// Name of a set, or path of a practice file.
        name: Option<String>,
        /// Print it as a practice file, to be edited and given as `--practice FILE`.
        #[arg(long, requires = "name")]
        toml: bool,
    },
    /// Write a zone along the line by kilometre, for whoever has a guidebook and no map.
    ///
    /// It takes from where to where the ice reaches, as every output counts kilometres, and puts a strip of ground along
    /// the line into a zones file, its ends square across it. The other features of the file stay as they are; a file that
    /// is not there is made.
    #[cfg(feature = "zone")]
    Zone(Box<ZoneArgs>),
    /// Hold many tracks against one set of outlines: a line each, of how much ice it crosses and what is found there.
    ///
    /// It uses all cores, and as much memory for ten tracks as for ten thousand. A track that cannot be read costs its own
    /// line and no more. With --compare a few lines of one trip stand side by side.
    #[cfg(feature = "survey")]
    Survey(Box<SurveyArgs>),
    /// Fetch outlines of glaciers, or heights, near a line.
    ///
    /// What came is kept with its date, and not asked for again while it is fresh; `SCHRUND_CACHE` names another folder for
    /// it, and empty none. Only this command, and inputs given as http(s) addresses, touch the network.
    #[cfg(feature = "fetch")]
    #[command(subcommand)]
    Fetch(FetchCall),
    /// What a page asks of the program that it holds.
    #[command(subcommand, hide = true)]
    Page(PageCall),
    /// Write a commented trip file and an empty zones file to fill in.
    New {
        /// Folder to write them to; made if it is not there.
        dir: PathBuf,
    },
    #[cfg(feature = "shell")]
    /// Print a JSON Schema of the plan, the trip file, the zones file or a practice file.
    Schema {
        /// Of which.
        of: Document,
    },
    #[cfg(feature = "shell")]
    /// Print completions for a shell.
    Completions {
        /// Which shell.
        shell: clap_complete::Shell,
    },
    #[cfg(feature = "shell")]
    /// Show a manual page: of the program, or of one of its commands. On a terminal it is plain text.
    Man {
        /// Of which command.
        command: Option<String>,
    },
}

/// Documents that have a schema.
#[cfg(feature = "shell")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Document {
    /// What `--format json` prints.
    Plan,
    /// What `--trip` takes.
    Trip,
    /// What `--practice` takes.
    Practice,
    /// The zones file.
    Zones,
}

#[derive(Debug, clap::Args)]
pub(crate) struct PlanArgs {
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// What to print to standard output.
    #[arg(help_heading = OUTPUT, long, ignore_case = true, value_parser = formats())]
    pub(crate) format: Option<Printed>,
    /// In the table all that is known, and not only what a leader needs first.
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) detail: bool,
    /// Units shown; GeoJSON and JSON stay in metres.
    #[arg(help_heading = OUTPUT, long, default_value = "metric", ignore_case = true)]
    pub(crate) units: UnitsFlag,
    /// Write the whole set of files to this folder.
    #[arg(help_heading = OUTPUT, long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,
    /// Write what would be printed to this file instead. Where --format is not given the ending chooses it.
    #[arg(help_heading = OUTPUT, short = 'o', long = "output", value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace files that are there already (never an input).
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) force: bool,
    /// Leave the styling members out of the GeoJSON.
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) no_style: bool,
}

#[derive(Debug, clap::Args)]
pub(crate) struct HeightArgs {
    /// Terrain models, GeoTIFF or .hgt; at each place the finest one counts that has a height.
    #[arg(required = true, value_parser = naming::input())]
    pub(crate) files: Vec<String>,
    /// A place as longitude,latitude or in the UTM grid with its zone, "32T 396088 5092288"; give it again for each.
    /// - reads them from standard input, one a line.
    #[arg(
        help_heading = "Places",
        long,
        value_name = "PLACE",
        required = true,
        allow_hyphen_values = true
    )]
    pub(crate) at: Vec<String>,
}

#[derive(Debug, clap::Args)]
pub(crate) struct OptionsArgs {
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// What to print to standard output; without it the table.
    #[arg(help_heading = OUTPUT, long, ignore_case = true)]
    pub(crate) format: Option<OptionsFormat>,
    /// Units shown; JSON stays in metres.
    #[arg(help_heading = OUTPUT, long, default_value = "metric", ignore_case = true)]
    pub(crate) units: UnitsFlag,
    /// Write what would be printed to this file instead: .txt or .json.
    #[arg(help_heading = OUTPUT, short = 'o', long = "output", value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Replace a file that is there already (never an input).
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) force: bool,
}

/// Forms of the options.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum OptionsFormat {
    /// For reading.
    Table,
    /// All of it.
    Json,
}

#[derive(Debug, clap::Args)]
pub(crate) struct CheckArgs {
    /// Files to read: routes, zones, terrain models, trip and practice files.
    #[cfg_attr(feature = "shell", arg(required_unless_present = "explain"))]
    #[cfg_attr(not(feature = "shell"), arg(required = true))]
    #[arg(value_parser = naming::input())]
    pub(crate) files: Vec<String>,
    /// The widest gap that you expect, in metres, for zones that give none.
    #[arg(help_heading = ICE, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true)]
    pub(crate) gap: Option<f64>,
    /// Say what a code such as `gap-not-given` means and what to do; without a code list all codes.
    #[cfg(feature = "shell")]
    #[arg(help_heading = "Codes", long, value_name = "CODE")]
    #[expect(
        clippy::option_option,
        reason = "given with a code, given without one, or not given"
    )]
    pub(crate) explain: Option<Option<String>>,
}

/// A format by its name.
#[derive(Clone, Copy)]
pub(crate) struct Printed(pub(crate) &'static dyn Format);

impl fmt::Debug for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0.name())
    }
}

/// The formats of the registry, each with what it is for.
fn formats() -> impl TypedValueParser<Value = Printed> {
    let values = FORMATS.map(|f| PossibleValue::new(f.name()).help(f.purpose()));
    PossibleValuesParser::new(values).try_map(|name| {
        let format = FORMATS
            .into_iter()
            .find(|f| f.name().eq_ignore_ascii_case(&name));
        format.map(Printed).ok_or("no such format")
    })
}

/// In this language and these units, to somebody who gives flags.
pub(crate) fn voice(language: Language, units: UnitsFlag) -> Voice {
    Voice {
        language,
        units: units.into(),
        interface: Interface::Flags,
    }
}
