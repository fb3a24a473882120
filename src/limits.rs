//! How much is read, fetched and planned for: every limit of inputs in one table, each with its standing, and each to be raised or
//! lowered by who knows better (`--limit NAME=NUMBER`).
//!
//! Limits keep a damaged or hostile file from filling the memory, and a wrong one from being worked on for hours. What bounds the work
//! inside (how many answers are kept, how finely is asked) is none of them: it refuses nothing.

use std::ops::Index;

/// A limit of inputs.
///
/// ```
/// use schrund::limits::InputLimit;
///
/// assert_eq!(InputLimit::of("text-mib"), Some(InputLimit::TextMib));
/// assert!(InputLimit::ALL.iter().all(|limit| InputLimit::of(limit.name()) == Some(*limit)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum InputLimit {
    /// A trip or practice file.
    TextMib,
    /// One tag, text or comment of a GPX file.
    TagMib,
    /// A line.
    RouteKm,
    /// The header of a FlatGeobuf file.
    HeaderMib,
    /// One outline of a FlatGeobuf file with all that belongs to it.
    FeatureMib,
    /// One strip or tile of a terrain model, unpacked.
    PartMib,
    /// One table of a terrain model.
    TableMib,
    /// What is cut out of a terrain model round a line.
    WindowCells,
    /// Who goes.
    People,
    /// The ropes at hand.
    Ropes,
    /// A file from a server, unpacked too.
    AnswerMib,
    /// A page of outlines from a server, unpacked too.
    PageMib,
    /// Pages of outlines from a server.
    Pages,
    /// Tiles of a terrain model from a server that a line is looked up in.
    Tiles,
    /// The wait for a whole answer of a server, its last byte too.
    AnswerSeconds,
}

/// A row of the table.
#[derive(Debug)]
struct LimitRow {
    limit: InputLimit,
    name: &'static str,
    usual: u64,
    says: &'static str,
    standing: &'static str,
}

const fn row(
    limit: InputLimit,
    (name, usual): (&'static str, u64),
    says: &'static str,
    standing: &'static str,
) -> LimitRow {
    LimitRow {
        limit,
        name,
        usual,
        says,
        standing,
    }
}

/// The table, in the order of [`InputLimit`].
const ROWS: [LimitRow; 15] = [
    row(
        InputLimit::TextMib,
        ("text-mib", 1),
        "a trip file or practice file, MiB",
        "our judgement: hundreds of times the longest that comes with the program",
    ),
    row(
        InputLimit::TagMib,
        ("tag-mib", 64),
        "one tag, text or comment of a GPX file, MiB",
        "our judgement",
    ),
    row(
        InputLimit::RouteKm,
        ("route-km", 5000),
        "a line, kilometres walked",
        "our judgement: nobody walks so far, and a position is wrong",
    ),
    row(
        InputLimit::HeaderMib,
        ("header-mib", 4),
        "the header of a FlatGeobuf file, MiB",
        "our judgement: columns by the thousand and a system in words have room in it",
    ),
    row(
        InputLimit::FeatureMib,
        ("feature-mib", 256),
        "one outline of a FlatGeobuf file, MiB",
        "our judgement: sixteen million points; the largest outline measured has some hundred thousand",
    ),
    row(
        InputLimit::PartMib,
        ("part-mib", 64),
        "one strip or tile of a terrain model, unpacked, MiB",
        "our judgement",
    ),
    row(
        InputLimit::TableMib,
        ("table-mib", 8),
        "one table of a terrain model, MiB",
        "our judgement",
    ),
    row(
        InputLimit::WindowCells,
        ("window-cells", 25_000_000),
        "cells cut out of a terrain model round a line",
        "our judgement: a window of 150 km in cells of 30 m",
    ),
    row(
        InputLimit::People,
        ("people", 60),
        "people who go",
        "our judgement: beyond it, somebody mistyped",
    ),
    row(
        InputLimit::Ropes,
        ("ropes", 30),
        "ropes at hand",
        "our judgement: a rope for each two of the people",
    ),
    row(
        InputLimit::AnswerMib,
        ("answer-mib", 1024),
        "a file from a server, MiB",
        "our judgement: ten times the largest file measured",
    ),
    row(
        InputLimit::PageMib,
        ("page-mib", 64),
        "a page of outlines from a server, MiB",
        "our judgement: a page of a thousand fine outlines is a tenth of it",
    ),
    row(
        InputLimit::Pages,
        ("pages", 200),
        "pages of outlines from a server",
        "our judgement",
    ),
    row(
        InputLimit::Tiles,
        ("tiles", 16),
        "tiles of a terrain model from a server",
        "our judgement: a route through more than that is no day's walk",
    ),
    row(
        InputLimit::AnswerSeconds,
        ("answer-s", 120),
        "the wait for a whole answer of a server, seconds",
        "our judgement: a small file over a hut's network",
    ),
];

impl InputLimit {
    /// All of them, in the order of the table.
    pub const ALL: [Self; ROWS.len()] = {
        let mut all = [Self::TextMib; ROWS.len()];
        let mut at = 0;
        while at < ROWS.len() {
            all[at] = ROWS[at].limit;
            at += 1;
        }
        all
    };

    /// The greatest number that any of them takes: in MiB a pebibyte, in seconds thirty years.
    pub const MOST: u64 = 1 << 30;

    /// The limit of this name.
    #[must_use]
    pub fn of(name: &str) -> Option<Self> {
        let row = ROWS.iter().find(|row| row.name == name);
        row.map(|row| row.limit)
    }

    fn row(self) -> &'static LimitRow {
        &ROWS[self as usize]
    }

    /// What it is called where it is raised.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.row().name
    }

    /// What it limits, with its unit.
    #[must_use]
    pub fn says(self) -> &'static str {
        self.row().says
    }

    /// Where the number in use comes from.
    #[must_use]
    pub fn standing(self) -> &'static str {
        self.row().standing
    }
}

/// The limits in force.
///
/// ```
/// use schrund::limits::{InputLimit, InputLimits};
///
/// let limits = InputLimits::default().with(InputLimit::TextMib, 4);
/// assert_eq!((limits[InputLimit::TextMib], limits[InputLimit::People]), (4, 60));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InputLimits([u64; ROWS.len()]);

impl Default for InputLimits {
    fn default() -> Self {
        Self(ROWS.map(|row| row.usual))
    }
}

impl InputLimits {
    /// The same with another number, at most [`InputLimit::MOST`].
    #[must_use]
    pub fn with(mut self, limit: InputLimit, most: u64) -> Self {
        self.0[limit as usize] = most.min(InputLimit::MOST);
        self
    }

    /// A limit in MiB as bytes.
    #[must_use]
    pub fn bytes(&self, limit: InputLimit) -> u64 {
        self[limit] << 20
    }

    /// The same for memory.
    #[must_use]
    pub fn count(&self, limit: InputLimit) -> usize {
        usize::try_from(self[limit]).unwrap_or(usize::MAX)
    }
}

impl Index<InputLimit> for InputLimits {
    type Output = u64;

    fn index(&self, limit: InputLimit) -> &u64 {
        &self.0[limit as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_limit_has_its_row() {
        for (limit, row) in InputLimit::ALL.iter().zip(&ROWS) {
            assert_eq!(*limit, row.limit);
            assert_eq!(InputLimits::default()[*limit], row.usual);
            assert!(!row.says.is_empty() && row.standing.starts_with("our judgement"));
            assert_eq!(
                InputLimits::default().with(*limit, u64::MAX)[*limit],
                InputLimit::MOST
            );
        }
    }
}
