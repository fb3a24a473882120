//! The flags of `draw`, and what a page asks of the program that it holds.

#[cfg(feature = "page")]
use std::path::PathBuf;

use clap::Subcommand;

#[cfg(feature = "page")]
use super::job::OUTPUT;
use super::job::{JobArgs, LaidArgs, UnitsFlag};
#[cfg(feature = "page")]
use crate::naming;

#[cfg(feature = "page")]
#[derive(Debug, clap::Args)]
pub(crate) struct DrawArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input. Without it the page takes one that is dropped on it.
    #[arg(value_parser = naming::input())]
    pub(crate) route: Option<String>,
    /// The ice drawn so far: a GeoJSON or FlatGeobuf file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
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
        /// A part of the report that is unfolded (repeatable): the others come without what is in them.
        #[arg(long, value_name = "ID")]
        open: Vec<String>,
    },
    /// Ways to split the party and to use the ropes, as cards, or why there are none.
    Ways {
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
