//! What is in force while trip file and flags are laid over it.

use crate::{practice::Rules, trip::timetable::Timetable};

/// The figures, words and times in force.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// The figures and words.
    pub rules: Rules,
    /// The leader's times of day.
    pub timetable: Timetable,
}

impl Laid {
    /// These rules, and no time yet.
    #[must_use]
    pub fn of(rules: Rules) -> Self {
        Self {
            rules,
            timetable: Timetable::default(),
        }
    }
}
