//! A track or route while it is being read.

use crate::trip::route::Stage;

use super::fix::quoted;

/// Whether it is a `trk` or a `rte`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sort {
    Track,
    Route,
}

impl Sort {
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Track => "track",
            Self::Route => "route",
        }
    }
}

/// A track or route and what was met in it.
#[derive(Debug)]
pub(super) struct Part {
    pub(super) sort: Sort,
    /// From 1, among its sort.
    pub(super) number: usize,
    pub(super) stage: Stage,
    /// Segments begun; a route has none.
    pub(super) segments: usize,
    /// Points begun, usable or not, repeats included.
    pub(super) points: usize,
    /// The same in the running segment.
    pub(super) in_segment: usize,
    /// Segments that held a single position.
    pub(super) lone_segments: usize,
    /// Points of the line found inside route points.
    pub(super) detail: usize,
    /// Positions found where they belong nowhere.
    pub(super) aside: usize,
}

impl Part {
    pub(super) fn new(sort: Sort, number: usize) -> Self {
        Self {
            sort,
            number,
            stage: Stage::default(),
            segments: 0,
            points: 0,
            in_segment: 0,
            lone_segments: 0,
            detail: 0,
            aside: 0,
        }
    }

    /// `track 2 "Descent"`, or without the name where there is none yet.
    pub(super) fn label(&self) -> String {
        let word = self.sort.word();
        match &self.stage.name {
            Some(name) => format!("{word} {} {}", self.number, quoted(name)),
            None => format!("{word} {}", self.number),
        }
    }

    /// Whether there is something to walk.
    pub(super) fn is_usable(&self) -> bool {
        self.stage.length_m() > 0.0
    }
}

/// `2 tracks with 1 point`, `1 route without a point`; nothing where there are none.
pub(super) fn holding(held: Held, sort: Sort) -> Option<String> {
    let points = match held.points {
        0 => "without a point".to_owned(),
        n => format!("with {}", counted(n, "point")),
    };
    (held.parts > 0).then(|| format!("{} {points}", counted(held.parts, sort.word())))
}

/// How many of a sort the file holds, and with how many points.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Held {
    pub(super) parts: usize,
    pub(super) points: usize,
}

/// `1 point`, `3 points`.
pub(super) fn counted(count: usize, word: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {word}{plural}")
}
