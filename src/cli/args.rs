//! The flags. Nothing else in the program knows them.

use std::{fmt, path::PathBuf};

use clap::{
    ArgAction, Parser, Subcommand, ValueEnum,
    builder::{PossibleValue, PossibleValuesParser, TypedValueParser},
};
use schrund::{
    physics::assumed::Snow,
    practice::{
        Pace, Travel, UndrawnIce,
        term::{Term, Terms},
    },
    read::trip::{Assume, Folk},
    say::{interface::Interface, voice::Voice},
    trip::{clock::Clock, language::Language},
    write::{FORMATS, Format},
};

use crate::number;

// Under what options stand in the help, in the order of use.
const PARTY: &str = "The party and the ropes";
const ICE: &str = "The ice and the ground";
const DAY: &str = "The day";
const TAUGHT: &str = "What is taught";
const TRIP: &str = "All of it in one file";
const OUTPUT: &str = "Output";
const SAID: &str = "Messages and help";

/// Behind the others under its heading.
const LATE: usize = 900;

/// Plans how a rope team is set up on every leg of a glacier route.
#[derive(Debug, Parser)]
#[command(
    name = "schrund",
    version,
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
    /// Print help; `-h` is the short one.
    #[arg(short, long, global = true, action = ArgAction::Help, help_heading = SAID)]
    help: Option<bool>,
    /// Print the version.
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

/// What a page asks; all answers are JSON but for the trip file.
#[derive(Debug, Subcommand)]
pub(crate) enum PageCall {
    /// The line, the ground round it, the inventory; without a line an empty one.
    Ground {
        /// The line.
        route: Option<String>,
        #[command(flatten)]
        laid: Box<LaidArgs>,
    },
    /// The plan for map and panel, or why there is none.
    Panel {
        #[command(flatten)]
        job: Box<JobArgs>,
        /// Units shown.
        #[arg(long, default_value = "metric", ignore_case = true)]
        units: UnitsFlag,
    },
    /// What trip file and flags say together, and all that a trip can say.
    Trip {
        #[command(flatten)]
        laid: Box<LaidArgs>,
    },
    /// A trip in JSON as a trip file.
    Toml {
        /// The trip in JSON.
        file: String,
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

/// What a plan is made from.
#[derive(Debug, clap::Args)]
pub(crate) struct JobArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input.
    pub(crate) route: String,
    /// The ice: a GeoJSON file, an http(s) address, or - for standard input.
    pub(crate) zones: String,
    #[command(flatten)]
    pub(crate) laid: LaidArgs,
}

/// What is laid beside route and ice.
#[derive(Clone, Debug, clap::Args)]
pub(crate) struct LaidArgs {
    /// How many go, or their masses with pack in kg: 3, or 82,75,90. Must be given, here or in the trip file.
    #[arg(help_heading = PARTY,
        long,
        value_name = "PEOPLE",
        value_parser = number::folk,
        allow_hyphen_values = true
    )]
    pub(crate) party: Option<Folk>,
    /// How many go on each rope: 3,2; without it the party is split as is taught.
    #[arg(help_heading = PARTY,
        long,
        value_name = "SIZES",
        value_delimiter = ',',
        allow_hyphen_values = true
    )]
    pub(crate) teams: Vec<f64>,
    /// A rope at hand, in metres; give it again for each rope.
    #[arg(help_heading = PARTY, long, value_name = "METRES", value_parser = number::rope, allow_hyphen_values = true)]
    pub(crate) rope: Vec<f64>,
    /// How the party travels.
    #[arg(help_heading = PARTY, long, ignore_case = true, value_parser = term::<Travel>())]
    pub(crate) travel: Option<Travel>,
    /// The widest gap that you expect, in metres, for zones that give none.
    #[arg(help_heading = ICE, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true)]
    pub(crate) gap: Option<f64>,
    /// What the team stands on where there is snow, for the fall model.
    #[arg(help_heading = ICE, long, value_name = "KIND", ignore_case = true, value_parser = term::<Snow>())]
    pub(crate) snow: Option<Snow>,
    /// A terrain model, GeoTIFF or .hgt; give it again for each. At each place the finest one counts that has a height.
    #[arg(help_heading = ICE, long, value_name = "FILE")]
    pub(crate) terrain: Vec<String>,
    /// A glacier inventory (GeoJSON): where the line is on its ice and no zone is drawn, it is roped, the gaps unknown.
    #[arg(help_heading = ICE, long, value_name = "FILE")]
    pub(crate) glaciers: Option<String>,
    /// What is done where the line is on ice of the inventory and no zone is drawn.
    #[arg(help_heading = ICE, long, value_name = "WORD", ignore_case = true, value_parser = term::<UndrawnIce>())]
    pub(crate) undrawn_ice: Option<UndrawnIce>,
    /// Plan only this stage, by number or name: each track of the route file is one, in its order.
    #[arg(help_heading = ICE, long, value_name = "N|NAME")]
    pub(crate) stage: Option<String>,
    /// When each stage is started, such as 04:30: then every leg has its time of day.
    #[arg(help_heading = DAY, long, value_name = "HH:MM", value_parser = clock)]
    pub(crate) start: Option<Clock>,
    /// Until when snow bridges are trusted, such as 10:00; needs --start.
    #[arg(help_heading = DAY, long, value_name = "HH:MM", value_parser = clock)]
    pub(crate) bridges_until: Option<Clock>,
    /// When the line is to be done, such as 16:00; needs --start. The latest time to turn round comes of it.
    #[arg(help_heading = DAY, long, value_name = "HH:MM", value_parser = clock)]
    pub(crate) back_by: Option<Clock>,
    /// By which rule walking times are reckoned.
    #[arg(help_heading = DAY, long, ignore_case = true, value_parser = term::<Pace>())]
    pub(crate) pace: Option<Pace>,
    /// A practice set by name, or the path of a practice file.
    #[arg(help_heading = TAUGHT, long, value_name = "NAME|FILE")]
    pub(crate) practice: Option<String>,
    /// How far off line and zones may be drawn, metres: so much earlier the rope goes on and so much later off, and zones
    /// that lie within it beside the line count.
    #[arg(help_heading = TAUGHT, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true)]
    pub(crate) margin: Option<f64>,
    /// Another figure or word, by the name that the plan's assumptions list it under: `margin_m=30`, `cover=anyone`;
    /// give it again for each.
    #[arg(help_heading = TAUGHT, long, value_name = "NAME=VALUE", value_parser = assumption)]
    pub(crate) assume: Vec<(String, Assume)>,
    /// A trip file (TOML) with all of these and more; flags win over it.
    #[arg(help_heading = TRIP, long, value_name = "FILE")]
    pub(crate) trip: Option<String>,
    /// The language of what is printed.
    #[arg(help_heading = OUTPUT, display_order = LATE, long, value_name = "TAG", ignore_case = true, value_parser = term::<Language>())]
    pub(crate) lang: Option<Language>,
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
    #[arg(required = true)]
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

#[cfg(feature = "page")]
#[derive(Debug, clap::Args)]
pub(crate) struct DrawArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input. Without it the page takes one that is dropped on it.
    pub(crate) route: Option<String>,
    /// The ice drawn so far: a GeoJSON file, an http(s) address, or - for standard input.
    pub(crate) zones: Option<String>,
    #[command(flatten)]
    pub(crate) laid: LaidArgs,
    /// The page: a file that ends in .html.
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
    #[arg(required_unless_present = "explain")]
    pub(crate) files: Vec<String>,
    /// The widest gap that you expect, in metres, for zones that give none.
    #[arg(help_heading = ICE, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true)]
    pub(crate) gap: Option<f64>,
    /// Say what a code such as `gap-not-given` means and what to do; without a code list all codes.
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

/// Units shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum UnitsFlag {
    /// Metres and kilometres.
    Metric,
    /// Feet and miles.
    Imperial,
}

impl From<UnitsFlag> for schrund::say::units::Units {
    fn from(units: UnitsFlag) -> Self {
        match units {
            UnitsFlag::Metric => Self::Metric,
            UnitsFlag::Imperial => Self::Imperial,
        }
    }
}

/// In this language and these units, to somebody who gives flags.
pub(crate) fn voice(language: Language, units: UnitsFlag) -> Voice {
    Voice {
        language,
        units: units.into(),
        interface: Interface::Flags,
    }
}

/// The words of a choice, by the table that everything else goes by too.
fn term<T: Terms + Send + Sync>() -> impl TypedValueParser<Value = T> {
    let possible = |term: &Term<T>| PossibleValue::new(term.name).help(term.means.trim());
    let names = PossibleValuesParser::new(T::TERMS.iter().map(possible));
    names.try_map(|name| T::named(&name.to_lowercase()).ok_or("no such word"))
}

fn clock(text: &str) -> Result<Clock, String> {
    Clock::parse(text)
}

fn assumption(text: &str) -> Result<(String, Assume), String> {
    let (name, value) = text.split_once('=').ok_or("give it as NAME=VALUE")?;
    let (name, value) = (name.trim(), value.trim());
    match number::other_unit(value).filter(|_| name.ends_with("_m")) {
        Some(metres) => Err(format!("it takes metres: write `--assume {name}={metres}`")),
        None => Ok((name.to_owned(), Assume::of(value))),
    }
}
