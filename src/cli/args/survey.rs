//! The flags of `survey`.

use std::path::PathBuf;

use clap::ValueEnum;

use super::job::{ICE, LaidArgs, OUTPUT, UnitsFlag};
use crate::naming;

#[derive(Debug, clap::Args)]
pub(crate) struct SurveyArgs {
    /// The tracks: GPX files, folders of them, http(s) addresses, or - for standard input.
    #[arg(required = true, value_name = "TRACK", value_parser = naming::input())]
    pub(crate) tracks: Vec<String>,
    /// The ice: a GeoJSON or FlatGeobuf file, an http(s) address, or - for standard input.
    #[arg(help_heading = ICE, display_order = 0, long, value_name = "FILE", value_parser = naming::input())]
    pub(crate) zones: String,
    #[command(flatten)]
    pub(crate) laid: LaidArgs,
    /// Show two to five lines of one trip side by side: which crosses least ice with hidden gaps, and where they go
    /// different ways.
    #[arg(help_heading = OUTPUT, long, conflicts_with_all = ["format", "out"])]
    pub(crate) compare: bool,
    /// What to print to standard output, or to write; without it CSV, or what the ending of --out says.
    #[arg(help_heading = OUTPUT, long, ignore_case = true)]
    pub(crate) format: Option<SurveyFormat>,
    /// Units shown by --compare; CSV and JSON stay in metres.
    #[arg(help_heading = OUTPUT, long, default_value = "metric", ignore_case = true)]
    pub(crate) units: UnitsFlag,
    /// Write the lines to this file as they come, .csv or .jsonl: what is there when it is interrupted can be gone on with.
    #[arg(help_heading = OUTPUT, long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// Go on with a file of --out that was interrupted: tracks that have a line are not held again. Ice, party and rules
    /// have to be the same.
    #[arg(help_heading = OUTPUT, long, requires = "out")]
    pub(crate) resume: bool,
    /// Replace a file that is there already (never an input).
    #[arg(help_heading = OUTPUT, long, conflicts_with = "resume")]
    pub(crate) force: bool,
}

/// Forms of the lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum SurveyFormat {
    /// For spreadsheets: RFC 4180, with a head line.
    Csv,
    /// For programs: an object a line.
    Jsonl,
}
