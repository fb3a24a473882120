//! The flags of `fetch`: what is looked for near a line, where, and what it is written to.

use std::path::PathBuf;

use schrund::trip::language::Language;

use super::job::{LATE, OUTPUT, term};
use crate::{naming, number};

/// Under what the server stands in the help.
const WHERE: &str = "Where from";

/// How far beside the line outlines and heights are looked for, metres. Our judgement: a report shows no more round it.
const AROUND_M: f64 = 2000.0;

/// What can be fetched.
#[derive(Debug, clap::Subcommand)]
pub(crate) enum FetchCall {
    /// Outlines of glaciers near a line, as a zones file to fill in and as an inventory.
    ///
    /// They come from a collection of OGC API - Features, whose address ends with /items, or from a GeoJSON file. No gap
    /// width ever comes from there.
    Zones(FetchZonesArgs),
    /// Heights near a line, cut out of a large model: only the parts of it that are needed come.
    Terrain(FetchTerrainArgs),
}

#[derive(Debug, clap::Args)]
pub(crate) struct FetchZonesArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
    pub(crate) route: String,
    /// The address of the outlines.
    #[arg(help_heading = WHERE, long, value_name = "ADDRESS")]
    pub(crate) from: String,
    #[command(flatten)]
    pub(crate) near: NearArgs,
    /// Write the zones to this file instead of standard output.
    #[arg(help_heading = OUTPUT, short = 'o', long = "output", value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Write the outlines to this file too, as an inventory for --glaciers.
    #[arg(help_heading = OUTPUT, long, value_name = "FILE")]
    pub(crate) inventory: Option<PathBuf>,
    /// Replace files that are there already (never an input).
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) force: bool,
}

#[derive(Debug, clap::Args)]
pub(crate) struct FetchTerrainArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
    pub(crate) route: String,
    /// The address of a GeoTIFF, or of tiles of a degree by their south-west corner: {NS} and {EW} stand for its letters
    /// ({ns}, {ew} for small ones), {lat} for two digits, {lon} for three. Without it the open tiles of Copernicus DEM
    /// GLO-30, whose address and credit are from memory.
    #[arg(help_heading = WHERE, long, value_name = "ADDRESS")]
    pub(crate) from: Option<String>,
    /// Whose the heights are, to be kept in the file; without it what the model says of itself.
    #[arg(help_heading = WHERE, long, value_name = "TEXT")]
    pub(crate) credit: Option<String>,
    #[command(flatten)]
    pub(crate) near: NearArgs,
    /// The file to write, or the folder for several tiles.
    #[arg(help_heading = OUTPUT, short = 'o', long = "output", value_name = "FILE|DIR")]
    pub(crate) output: PathBuf,
    /// Replace files that are there already (never an input).
    #[arg(help_heading = OUTPUT, long)]
    pub(crate) force: bool,
}

/// How far is looked, and in which language is told.
#[derive(Debug, clap::Args)]
pub(crate) struct NearArgs {
    /// How far beside the line is looked, in metres.
    #[arg(help_heading = WHERE, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true,
        default_value_t = AROUND_M)]
    pub(crate) around: f64,
    /// The language of what is told.
    #[arg(help_heading = OUTPUT, display_order = LATE, long, value_name = "TAG", ignore_case = true, value_parser = term::<Language>())]
    pub(crate) lang: Option<Language>,
}
