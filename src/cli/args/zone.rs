//! The flags of `zone`: a stretch of the line, and what is known of the ice there, each by its property of a zones file.

use std::path::PathBuf;

use clap::builder::PossibleValue;
use schrund::{
    strip::{HALF_WIDTH_M, asked::KILOMETRES},
    trip::language::Language,
};

use super::job::{ICE, LATE, OUTPUT, term};
use crate::{naming, number};

/// Under what the stretch stands in the help.
const WHERE: &str = "Where it lies";

#[derive(Debug, clap::Args)]
pub(crate) struct ZoneArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
    pub(crate) route: String,
    /// From which kilometre to which, as in 5.9-8.3; again for each zone.
    #[arg(value_name = KILOMETRES, required = true)]
    pub(crate) stretches: Vec<String>,
    /// How far the ice reaches to either side of the line, in metres.
    #[arg(help_heading = WHERE, long, value_name = "METRES", value_parser = number::metres, allow_hyphen_values = true,
        default_value_t = HALF_WIDTH_M)]
    pub(crate) half_width: f64,
    /// On which stage, by number or name, where the route file has several.
    #[arg(help_heading = WHERE, long, value_name = "N|NAME")]
    pub(crate) stage: Option<String>,
    /// The widest gap that you expect, in metres, or a range such as 3-5. Without it a plan asks for it.
    #[arg(help_heading = ICE, long, value_name = "METRES", allow_hyphen_values = true)]
    pub(crate) gap: Option<String>,
    /// Snow lying on the ice, in metres.
    #[arg(help_heading = ICE, long = "snow", value_name = "METRES", allow_hyphen_values = true)]
    pub(crate) snow_depth: Option<String>,
    /// In which direction the gaps run, degrees clockwise from true north.
    #[arg(help_heading = ICE, long, value_name = "DEGREES", allow_hyphen_values = true)]
    pub(crate) strike: Option<String>,
    /// How far the strike may be off, degrees.
    #[arg(help_heading = ICE, long, value_name = "DEGREES", allow_hyphen_values = true)]
    pub(crate) strike_uncertainty: Option<String>,
    /// What lies on the ice.
    #[arg(help_heading = ICE, long, value_name = "WORD", ignore_case = true, value_parser = [
        PossibleValue::new("snow").help("Snow that hides the gaps; so it is where nothing is said"),
        PossibleValue::new("bare").help("Bare ice: the gaps are in sight"),
    ])]
    pub(crate) surface: Option<String>,
    /// Your word about roping there.
    #[arg(help_heading = ICE, long = "rope", value_name = "WORD", ignore_case = true, value_parser = [
        PossibleValue::new("auto").help("As is taught; so it is where nothing is said"),
        PossibleValue::new("always").help("Rope there whatever is taught"),
        PossibleValue::new("never").help("Do not rope because of this zone"),
    ])]
    pub(crate) rope_word: Option<String>,
    /// What you call the zone.
    #[arg(help_heading = ICE, long = "name", value_name = "NAME")]
    pub(crate) called: Option<String>,
    /// When the ice was seen so, such as 2027-07-04.
    #[arg(help_heading = ICE, long, value_name = "DAY")]
    pub(crate) observed_on: Option<String>,
    /// Where the widths come from: a guidebook, a hut, your own eyes. Without it the file says how the zone was made.
    #[arg(help_heading = ICE, long, value_name = "TEXT")]
    pub(crate) source: Option<String>,
    /// Anything else.
    #[arg(help_heading = ICE, long, value_name = "TEXT")]
    pub(crate) note: Option<String>,
    /// The zones file: its other features stay as they are, and a file that is not there is made.
    #[arg(help_heading = OUTPUT, long, value_name = "FILE")]
    pub(crate) into: PathBuf,
    /// The language of what is printed.
    #[arg(help_heading = OUTPUT, display_order = LATE, long, value_name = "TAG", ignore_case = true, value_parser = term::<Language>())]
    pub(crate) lang: Option<Language>,
}
