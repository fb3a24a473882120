//! A track or route while it is being read.

use crate::fault::place::{GpxWay, Item, Sort};
use crate::trip::route::Stage;

use super::fix::excerpt;

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

    /// The way to it in the file, with its name where it has one yet.
    pub(super) fn way(&self) -> GpxWay {
        GpxWay {
            sort: self.sort,
            number: self.number,
            name: self.stage.name.as_deref().map(excerpt),
            segment: None,
            point: None,
            detail: None,
        }
    }

    /// The track or route as a whole.
    pub(super) fn item(&self) -> Item {
        Item::Line(self.way())
    }

    /// Whether there is something to walk.
    pub(super) fn is_usable(&self) -> bool {
        self.stage.length_m() > 0.0
    }
}
