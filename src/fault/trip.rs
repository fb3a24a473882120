//! What can be wrong with trip files, flags and practice files.

use serde::Serialize;

use super::{code::Code, place::Item, refusal::Refusal};

/// What is wrong with what the leader says, by trip file or flag.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InTrip {
    /// A trip file has no such member.
    NoMember {
        /// As given.
        name: String,
        /// A member that may be meant.
        near: Option<String>,
    },
    /// A member that does not parse, in the words of the parser.
    Member {
        /// The member.
        name: String,
        /// What the parser says.
        says: String,
    },
    /// A party of none.
    Nobody,
    /// More people than are planned for.
    TooMany {
        /// How many; `None` where it is too large for a count.
        people: Option<usize>,
        /// The most that are planned for.
        most: usize,
    },
    /// Nobody said how many go.
    NobodySaid,
    /// A mass that cannot be.
    Mass {
        /// Which person, from 1.
        person: usize,
        /// What the leader calls them.
        name: Option<String>,
        /// Kilograms with pack.
        kg: f64,
        /// Least mass.
        min_kg: f64,
        /// Greatest mass.
        max_kg: f64,
    },
    /// A rope of so many metres cannot be.
    RopeLength {
        /// Its length, metres.
        length_m: f64,
        /// Least and greatest length, metres.
        within_m: [f64; 2],
    },
    /// A rope so thick or thin cannot be.
    RopeAcross {
        /// Its diameter, millimetres.
        diameter_mm: f64,
        /// Least and greatest diameter, millimetres.
        within_mm: [f64; 2],
    },
    /// The route has no such stage.
    NoStage {
        /// Which was asked for.
        asked: Asked,
        /// Number and name of those it has.
        has: Vec<(usize, Option<String>)>,
    },
    /// Bridges are trusted until a time, and nobody said when the party starts.
    BridgesWithoutStart {
        /// Until when, minutes of the day.
        until_min: f64,
    },
    /// No figure and no word has that name.
    NoFigure(String),
    /// A name that a plan lists and that something else sets.
    SetElsewhere {
        /// The name.
        name: String,
        /// What sets it.
        by: Setter,
    },
    /// A word that is not taken.
    NoWord {
        /// The name of the choice.
        name: String,
        /// As given.
        found: String,
        /// What it takes.
        words: Vec<&'static str>,
    },
    /// Something that is no time of day, where one is taken.
    NoTime {
        /// The name.
        name: String,
        /// As given.
        found: String,
    },
    /// Something that is no number, where one is taken.
    NoNumber {
        /// The name of the figure.
        name: String,
        /// As given.
        found: String,
    },
    /// A figure that is not taken.
    Figure(Refusal),
}

/// A stage as it was asked for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Asked {
    /// By number.
    Number(usize),
    /// By name.
    Name(String),
}

/// What sets something that is listed among the assumptions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Setter {
    /// The practice set.
    Practice,
    /// Who goes.
    Party,
    /// The ropes at hand.
    Rope,
    /// The terrain models.
    Terrain,
    /// The gap width of zones that give none.
    Gap,
    /// The lengths in which ropes are sold.
    Sold,
}

/// What is wrong with a practice set or file.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPractice {
    /// No set has that name.
    NoSet {
        /// As given.
        name: String,
        /// The sets there are.
        sets: Vec<&'static str>,
    },
    /// A set gives a figure that does not exist.
    NoFigure(String),
    /// A set does not give a figure that it must.
    Missing(&'static str),
    /// The spacing grows with the number of people.
    Growing {
        /// So many people have less.
        few: usize,
        /// So many have more.
        many: usize,
    },
    /// A figure in another unit than the one it has.
    Unit {
        /// As given.
        found: String,
        /// The unit of the figure.
        takes: String,
    },
    /// A figure that is not taken.
    Figure(Refusal),
    /// A file that comes with the program is broken; a test proves that none is.
    BuiltIn(Refusal),
}

/// Why there is no plan of sound inputs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPlan {
    /// So many people cannot rope up.
    Alone(usize),
    /// None of so many zones is met.
    NoZoneMet(usize),
    /// A window of heights is empty or too large.
    Window {
        /// Columns of heights.
        columns: usize,
        /// Rows of heights.
        rows: usize,
        /// The most heights there can be.
        most: usize,
    },
}

impl InTrip {
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::NoMember { .. }
            | Self::NoStage { .. }
            | Self::NoFigure(_)
            | Self::SetElsewhere { .. }
            | Self::NoWord { .. } => Code::UnknownName,
            Self::NoNumber { .. } | Self::Figure(_) => Code::BadNumber,
            _ => Code::BadTrip,
        }
    }
}

impl InPractice {
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::NoSet { .. } | Self::NoFigure(_) => Code::UnknownName,
            Self::Missing(_) => Code::MissingFigure,
            Self::Growing { .. } | Self::Figure(_) | Self::Unit { .. } => Code::BadNumber,
            Self::BuiltIn(_) => Code::BrokenText,
        }
    }
}

impl InPlan {
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::Alone(_) => Code::Alone,
            Self::NoZoneMet(_) => Code::NoZoneMet,
            Self::Window { .. } => Code::BadNumber,
        }
    }

    /// What it is about.
    #[must_use]
    pub fn item(&self) -> Item {
        match self {
            Self::Alone(_) => Item::Party,
            Self::NoZoneMet(_) => Item::Zones,
            Self::Window { .. } => Item::Relief,
        }
    }
}
