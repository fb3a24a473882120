//! A window of heights round a route, for drawing.

use crate::{
    fault::Fault,
    geometry::{Bounds, LonLat},
    raster::Terrain,
    trip::route::Route,
};

/// Share of its size by which the box round the route is widened on every side. Our judgement.
const WIDER: f64 = 0.15;
/// Least width of that strip, metres, so that a short or straight line has ground round it. Our judgement.
const LEAST_M: f64 = 400.0;
/// Most heights along the longer side: enough for a sheet of paper. Our judgement.
const MOST: f64 = 240.0;

/// Heights on a lattice in longitude and latitude, corners included.
///
/// ```
/// use schrund::ground::relief::Relief;
///
/// let job = schrund::example::pair()?;
/// let relief = Relief::around(&job.route, &job.terrain).map_err(|fault| vec![fault])?;
/// let relief = relief.expect("the tile has heights there");
/// assert_eq!(relief.heights_m.len(), relief.columns * relief.rows);
/// // The first row is the north, where this ground is highest.
/// assert!(relief.height_m(0, 0) > relief.height_m(0, relief.rows - 1));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Relief {
    /// Lower left corner.
    pub south_west: LonLat,
    /// Upper right corner; east of 180° where the window crosses the antimeridian.
    pub north_east: LonLat,
    /// Heights in a row, from west to east.
    pub columns: usize,
    /// Rows, the first in the north.
    pub rows: usize,
    /// Metres, row by row; `None` where no model has a height.
    pub heights_m: Vec<Option<f32>>,
}

impl Relief {
    /// The ground round all stages; `None` without a line or where the terrain has no height at all there.
    ///
    /// # Errors
    /// If a terrain file turns out to be broken where it is read.
    pub fn around(route: &Route, terrain: &Terrain) -> Result<Option<Self>, Fault> {
        let Some(line) = route.bounds() else {
            return Ok(None);
        };
        let (south_west, north_east) = widened(line);
        Self::within(south_west, north_east, terrain)
    }

    /// The ground of a window, for a map that shows just that; `None` where the terrain has no height in it.
    ///
    /// # Errors
    /// If a terrain file turns out to be broken where it is read.
    pub fn within(
        south_west: LonLat,
        north_east: LonLat,
        terrain: &Terrain,
    ) -> Result<Option<Self>, Fault> {
        let (columns, rows) = lattice(south_west, north_east, terrain);
        let heights_m = terrain.relief(south_west, north_east, columns, rows)?;
        if heights_m.iter().all(Option::is_none) {
            return Ok(None);
        }
        Ok(Some(Self {
            south_west,
            north_east,
            columns,
            rows,
            heights_m,
        }))
    }

    /// The height at a column and row, metres.
    #[must_use]
    pub fn height_m(&self, column: usize, row: usize) -> Option<f32> {
        if column >= self.columns {
            return None;
        }
        *self
            .heights_m
            .get(row.checked_mul(self.columns)? + column)?
    }
}

fn widened(line: Bounds) -> (LonLat, LonLat) {
    let (width, height) = (
        line.high.lon_deg - line.low.lon_deg,
        line.high.lat_deg - line.low.lat_deg,
    );
    let least = line.widened(LEAST_M);
    let aside = WIDER * width.max(height);
    (
        LonLat::new(
            least.low.lon_deg.min(line.low.lon_deg - aside),
            least.low.lat_deg.min(line.low.lat_deg - aside).max(-90.0),
        ),
        LonLat::new(
            least.high.lon_deg.max(line.high.lon_deg + aside),
            least.high.lat_deg.max(line.high.lat_deg + aside).min(90.0),
        ),
    )
}

/// As fine as the finest model, but not finer than the paper.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to 2..=MOST"
)]
fn lattice(south_west: LonLat, north_east: LonLat, terrain: &Terrain) -> (usize, usize) {
    let middle = south_west.along_edge(north_east, 0.5);
    let across_m = LonLat::new(south_west.lon_deg, middle.lat_deg)
        .distance_m(LonLat::new(north_east.lon_deg, middle.lat_deg));
    let up_m = LonLat::new(middle.lon_deg, south_west.lat_deg)
        .distance_m(LonLat::new(middle.lon_deg, north_east.lat_deg));
    let cell_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    let step_m = cell_m.max(across_m.max(up_m) / MOST);
    let count = |length_m: f64| (length_m / step_m).ceil().clamp(2.0, MOST) as usize;
    (count(across_m), count(up_m))
}
