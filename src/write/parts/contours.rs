//! Lines of equal height through a relief, as positions.

use contour::ContourBuilder;
use geo::LineString;

use crate::{geometry::LonLat, ground::relief::Relief};

/// Whether every position has its place.
pub(crate) fn is_whole(relief: &Relief) -> bool {
    relief.columns > 1
        && relief.rows > 1
        && relief.columns.checked_mul(relief.rows) == Some(relief.heights_m.len())
}

/// The height at a column and row, metres.
pub(crate) fn height(relief: &Relief, column: usize, row: usize) -> Option<f64> {
    relief.height_m(column, row).map(f64::from)
}

/// The position at a column and row, counted from the first height of each.
#[expect(
    clippy::cast_precision_loss,
    reason = "a lattice has some thousand columns"
)]
pub(crate) fn position(relief: &Relief, column: f64, row: f64) -> LonLat {
    let (sw, ne) = (relief.south_west, relief.north_east);
    LonLat::new(
        sw.lon_deg + column / (relief.columns - 1) as f64 * (ne.lon_deg - sw.lon_deg),
        ne.lat_deg - row / (relief.rows - 1) as f64 * (ne.lat_deg - sw.lat_deg),
    )
}

/// A part of a relief.
pub(crate) struct ReliefPart<'a> {
    pub(crate) relief: &'a Relief,
    pub(crate) first: (usize, usize),
    pub(crate) columns: usize,
    pub(crate) rows: usize,
}

/// All lines of one height.
pub(crate) struct HeightLine {
    pub(crate) height_m: f64,
    pub(crate) parts: Vec<Vec<LonLat>>,
}

impl<'a> ReliefPart<'a> {
    /// All of it; nothing where it is not whole.
    pub(crate) fn all(relief: &'a Relief) -> Option<Self> {
        is_whole(relief).then_some(Self {
            relief,
            first: (0, 0),
            columns: relief.columns,
            rows: relief.rows,
        })
    }

    fn values(&self) -> Vec<f64> {
        let rows = self.first.1..self.first.1 + self.rows;
        let columns = self.first.0..self.first.0 + self.columns;
        rows.flat_map(|r| columns.clone().map(move |c| (c, r)))
            .map(|(c, r)| height(self.relief, c, r).unwrap_or(f64::NAN))
            .collect()
    }

    /// The lowest and the highest.
    pub(crate) fn range(&self) -> Option<(f64, f64)> {
        let values = self.values();
        let known = values.iter().copied().filter(|v| v.is_finite());
        let low = known.clone().reduce(f64::min)?;
        Some((low, known.reduce(f64::max)?))
    }

    /// Lines with their heights. Pieces that only close a ring along the edge are left out.
    pub(crate) fn lines(&self, heights_m: &[f64]) -> Vec<HeightLine> {
        let builder = ContourBuilder::new(self.columns, self.rows, true);
        let lines = builder.lines(&self.values(), heights_m).unwrap_or_default();
        let line = |line: &contour::Line| HeightLine {
            height_m: line.threshold(),
            parts: line
                .geometry()
                .0
                .iter()
                .flat_map(|ring| self.open(ring))
                .collect(),
        };
        lines.iter().map(line).collect()
    }

    /// A ring cut where it runs along the edge of the part, as positions. The crate counts from the corner
    /// of the first cell, half a step before its middle.
    #[expect(
        clippy::cast_precision_loss,
        reason = "a lattice has some thousand columns"
    )]
    fn open(&self, ring: &LineString) -> Vec<Vec<LonLat>> {
        let (west, north) = (self.first.0 as f64, self.first.1 as f64);
        let (last_column, last_row) = (self.columns as f64, self.rows as f64);
        let edge =
            |x: f64, y: f64| x <= 0.5 || y <= 0.5 || x >= last_column - 0.5 || y >= last_row - 0.5;
        let mut parts: Vec<Vec<LonLat>> = vec![Vec::new()];
        let mut outside = false;
        for c in ring.coords() {
            // Beside a void, and on the frame that the crate closes rings along, nothing lies between two heights.
            if !(c.x.is_finite() && c.y.is_finite()) {
                parts.push(Vec::new());
                outside = true;
                continue;
            }
            let on_edge = edge(c.x, c.y);
            if on_edge && outside {
                parts.push(Vec::new());
            }
            outside = on_edge;
            if let Some(part) = parts.last_mut() {
                part.push(position(self.relief, west + c.x - 0.5, north + c.y - 0.5));
            }
        }
        parts.retain(|part| part.len() > 1);
        parts
    }
}
