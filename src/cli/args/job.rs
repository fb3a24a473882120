//! What a job is read from: the flags that every command which plans has.

use clap::{
    ValueEnum,
    builder::{PossibleValue, PossibleValuesParser, TypedValueParser},
};
use schrund::{
    physics::assumed::Snow,
    practice::{
        Pace, Travel, UndrawnIce,
        term::{Term, Terms},
    },
    read::trip::{Assume, Folk},
    trip::{clock::Clock, language::Language},
};

use crate::{naming, number};

// Under what options stand in the help, in the order of use.
pub(super) const PARTY: &str = "The party and the ropes";
pub(super) const ICE: &str = "The ice and the ground";
pub(super) const DAY: &str = "The day";
pub(super) const TAUGHT: &str = "What is taught";
pub(super) const TRIP: &str = "All of it in one file";
pub(super) const OUTPUT: &str = "Output";
pub(super) const SAID: &str = "Messages and help";

/// Behind the others under its heading.
pub(super) const LATE: usize = 900;

/// What a plan is made from.
#[derive(Debug, clap::Args)]
pub(crate) struct JobArgs {
    /// The line: a GPX file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
    pub(crate) route: String,
    /// The ice: a GeoJSON or FlatGeobuf file, an http(s) address, or - for standard input.
    #[arg(value_parser = naming::input())]
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
    #[arg(help_heading = ICE, long, value_name = "FILE", value_parser = naming::input())]
    pub(crate) terrain: Vec<String>,
    /// A glacier inventory (GeoJSON or FlatGeobuf): where the line is on its ice and no zone is drawn, it is roped, the gaps unknown.
    #[arg(help_heading = ICE, long, value_name = "FILE", value_parser = naming::input())]
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
    /// Where that hour counts, in kilometres from where a stage begins, for who is under way already.
    #[arg(help_heading = DAY, long, value_name = "KM", value_parser = number::kilometres, allow_hyphen_values = true)]
    pub(crate) start_at_km: Option<f64>,
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
    #[arg(help_heading = TAUGHT, long, value_name = "NAME|FILE", value_parser = naming::input())]
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
    #[arg(help_heading = TRIP, long, value_name = "FILE", value_parser = naming::input())]
    pub(crate) trip: Option<String>,
    /// The language of what is printed.
    #[arg(help_heading = OUTPUT, display_order = LATE, long, value_name = "TAG", ignore_case = true, value_parser = term::<Language>())]
    pub(crate) lang: Option<Language>,
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

/// The words of a choice, by the table that everything else goes by too.
pub(super) fn term<T: Terms + Send + Sync>() -> impl TypedValueParser<Value = T> {
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
