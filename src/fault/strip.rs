//! What can be wrong with a zone along the line by kilometre.

use serde::Serialize;

use super::{code::Code, instead::Instead};

/// What is wrong with a zone that is asked for by kilometre, or with the file it is to go into.
///
/// ```
/// use schrund::{fault::{Fault, strip::InStrip}, strip::asked::stretch};
///
/// let faults = ["5.9", "8.3-5.9", "5.9 - 8.3 km"].map(|typed| stretch(typed).map_err(|fault: Fault| fault.what));
/// assert_eq!(faults[0], Err(InStrip::NoStretch { found: "5.9".to_owned() }.into()));
/// let meant = "5.9-8.3".to_owned();
/// assert_eq!(faults[1], Err(InStrip::Backwards { found: "8.3-5.9".to_owned(), meant }.into()));
/// assert!(faults[2].is_ok());
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum InStrip {
    /// No two kilometres.
    NoStretch {
        /// As typed.
        found: String,
    },
    /// A comma that can mean two things.
    Comma {
        /// As typed.
        found: String,
        /// With points for its commas.
        pointed: String,
        /// Without its commas.
        whole: String,
    },
    /// Metres, where kilometres are due.
    Metres {
        /// As typed.
        found: String,
        /// The same in kilometres.
        meant: String,
    },
    /// It ends before it begins.
    Backwards {
        /// As typed.
        found: String,
        /// The other way round.
        meant: String,
    },
    /// It begins before the line does.
    Before {
        /// As typed.
        found: String,
    },
    /// It is no longer than a slip of the finger.
    Short {
        /// As typed.
        found: String,
        /// The shortest there is, metres.
        least_m: f64,
    },
    /// It ends beyond the line.
    Beyond {
        /// As typed.
        found: String,
        /// Length of the line, metres.
        length_m: f64,
        /// The same read as metres, where that lies on the line.
        meant: Option<String>,
    },
    /// A half width that cannot be.
    HalfWidth {
        /// As given, metres.
        half_width_m: f64,
        /// Least and greatest, metres.
        within_m: [f64; 2],
    },
    /// The route has several stages, and nobody said which.
    WhichStage {
        /// Number and name of those it has.
        has: Vec<(usize, Option<String>)>,
    },
    /// So long, or so near a pole, that the strip would not be as wide as was asked.
    Stretched {
        /// As typed.
        found: String,
        /// The share by which widths may be wrong at most.
        most: f64,
    },
    /// The file that it is to go into is something else.
    Is(Instead),
    /// The file that it is to go into is empty.
    Empty,
    /// GeoJSON, but no collection of features that one more could be put into.
    NoCollection,
    /// Something else was written into the file meanwhile.
    Changed,
}

impl InStrip {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::NoStretch { .. }
            | Self::Comma { .. }
            | Self::Metres { .. }
            | Self::Before { .. }
            | Self::Short { .. }
            | Self::Beyond { .. }
            | Self::HalfWidth { .. } => Code::BadNumber,
            Self::Backwards { .. } => Code::RangeOrder,
            Self::WhichStage { .. } => Code::UnknownName,
            Self::Stretched { .. } => Code::BadPosition,
            Self::Is(_) | Self::Empty => Code::WrongKind,
            Self::NoCollection => Code::BadGeojson,
            Self::Changed => Code::WouldOverwrite,
        }
    }
}
