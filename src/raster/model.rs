//! One terrain model: which cells lie around a position and how high they are.

use crate::raster::{
    chunks::{Layout, Parts, Shelf},
    geotags::GeoTags,
    grid::Grid,
    met::CellsMet,
    reading::{Meaning, Reading, Stored},
    refusal::broken,
    systems::CoordinateSystem,
};
use crate::{
    fault::{Fault, terrain::Damage},
    geometry::{LonLat, projection::Projection},
};

/// Nearer than this to a cell centre, in cells, a position lies on it (our judgement: rounding of
/// coordinates, far below any height that matters).
const ON_CENTRE: f64 = 1e-6;

/// Sheets whose cells lie apart by less than this share of a cell are one lattice (our judgement).
const OFF_LATTICE: f64 = 0.01;

/// A file that was opened and understood.
pub(crate) struct Opened {
    pub(crate) system: CoordinateSystem,
    pub(crate) grid: Grid,
    pub(crate) reading: Reading,
    pub(crate) layout: Layout,
    pub(crate) parts: Parts,
    pub(crate) notes: Vec<Fault>,
    /// What a GeoTIFF says of where it lies.
    pub(crate) tags: Option<GeoTags>,
    /// Whose it is, in its own words.
    pub(crate) credit: Option<String>,
}

/// A model without its file: what can be asked without reading.
pub(crate) struct Model {
    pub(crate) id: usize,
    pub(crate) name: String,
    pub(crate) map: Projection,
    pub(crate) grid: Grid,
    /// Side of a square cell of the same area, metres on the ground in the middle of the raster.
    pub(crate) resolution_m: f64,
    /// See [`Opened::tags`].
    #[cfg_attr(
        not(feature = "fetch"),
        expect(dead_code, reason = "only excerpts ask for it")
    )]
    pub(crate) tags: Option<GeoTags>,
    /// See [`Opened::credit`].
    pub(crate) credit: Option<String>,
    reading: Reading,
    layout: Layout,
}

/// The files and what is kept of them.
#[derive(Default)]
pub(crate) struct Files {
    pub(crate) parts: Vec<Parts>,
    pub(crate) met: Vec<CellsMet>,
    pub(crate) shelf: Shelf,
}

/// Four cells and how much each counts.
pub(crate) type Stencil = [((i64, i64), f64); 4];

impl Model {
    /// The model, if its projection string is understood.
    pub(crate) fn new(id: usize, name: &str, opened: &Opened) -> Option<Self> {
        let map = Projection::parse(&opened.system.proj)?;
        let grid = opened.grid;
        let middle = (f64::from(grid.columns) / 2.0, f64::from(grid.rows) / 2.0);
        let resolution_m = cell_m(&map, &grid, middle)?;
        Some(Self {
            id,
            name: name.to_owned(),
            map,
            grid,
            resolution_m,
            tags: opened.tags.clone(),
            credit: opened.credit.clone(),
            reading: opened.reading.clone(),
            layout: opened.layout.clone(),
        })
    }

    /// Pixel position of a place, beside the raster too; nearest to it of those that are a turn of the globe apart.
    #[cfg(feature = "fetch")]
    pub(crate) fn unbounded_pixel(&self, at: LonLat) -> Option<(f64, f64)> {
        let (x, y) = self.map.forward(at)?;
        if !self.map.is_geographic() {
            return Some(self.grid.pixel((x, y)));
        }
        let middle = f64::from(self.grid.columns) / 2.0;
        let pixels = [0.0, 360.0, -360.0].map(|turn| self.grid.pixel((x + turn, y)));
        let off = |pixel: &(f64, f64)| (pixel.0 - middle).abs();
        pixels.into_iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// Columns and rows of one part of the file.
    #[cfg(feature = "fetch")]
    pub(crate) fn part_size(&self) -> (u32, u32) {
        self.layout.part
    }

    /// Pixel position of a place, if it lies on the raster.
    pub(crate) fn pixel(&self, at: LonLat) -> Option<(f64, f64)> {
        let plane = self.map.forward(at)?;
        let turns: &[f64] = if self.map.is_geographic() {
            &[0.0, 360.0, -360.0]
        } else {
            &[0.0]
        };
        let shifted = turns.iter().map(|turn| (plane.0 + turn, plane.1));
        let pixel = shifted
            .map(|p| self.grid.pixel(p))
            .find(|p| self.grid.holds(*p))?;
        self.map.leads_back(at, plane).then_some(pixel)
    }

    /// Longest side of a cell at a pixel position, metres on the ground.
    pub(crate) fn longest_side_m(&self, (column, row): (f64, f64)) -> Option<f64> {
        let at = |c: f64, r: f64| {
            let (x, y) = self.grid.plane(c, r);
            self.map.inverse(x, y)
        };
        let here = at(column, row)?;
        let sides = [at(column + 1.0, row)?, at(column, row + 1.0)?];
        Some(sides[0].distance_m(here).max(sides[1].distance_m(here)))
    }

    /// The height stored in a cell, `None` if void or not on the raster.
    pub(crate) fn cell_m(&self, files: &mut Files, cell: (i64, i64)) -> Result<Option<f64>, Fault> {
        let Some(stored) = self.number(files, cell)? else {
            return Ok(None);
        };
        Ok(match self.reading.meaning(stored) {
            Meaning::HeightM(height_m) => Some(height_m),
            Meaning::Void => None,
            Meaning::Unbelievable => {
                if let Some(met) = files.met.get_mut(self.id) {
                    met.unbelievable += 1;
                }
                None
            }
        })
    }

    /// The number stored in a cell, `None` in a part that the file leaves out, where it is declared void, or not on the
    /// raster.
    pub(crate) fn number(
        &self,
        files: &mut Files,
        cell: (i64, i64),
    ) -> Result<Option<Stored>, Fault> {
        let (Some(column), Some(row)) = (
            index(cell.0, self.grid.columns),
            index(cell.1, self.grid.rows),
        ) else {
            return Ok(None);
        };
        let Some(parts) = files.parts.get_mut(self.id) else {
            return Ok(None);
        };
        let stored = files
            .shelf
            .stored(self.id, &self.layout, parts, (column, row));
        let stored =
            stored.map_err(|why| broken(&self.name, Damage::Unpack { column, row, why }))?;
        Ok(stored.filter(|stored| self.reading.meaning(*stored) != Meaning::Void))
    }

    /// True for a cell on the raster.
    pub(crate) fn has(&self, cell: (i64, i64)) -> bool {
        index(cell.0, self.grid.columns).is_some() && index(cell.1, self.grid.rows).is_some()
    }

    /// True for another sheet on the same map with the same cells.
    pub(crate) fn continues(&self, other: &Self) -> bool {
        self.id != other.id
            && self.map.text() == other.map.text()
            && self.grid.same_steps(&other.grid)
    }

    /// Which cell of another sheet is this cell, if both are cut from one lattice.
    pub(crate) fn same_cell(&self, sheet: &Self, cell: (i64, i64)) -> Option<(i64, i64)> {
        if !sheet.continues(self) {
            return None;
        }
        let (column, row) = self.grid.plane(centre(cell.0), centre(cell.1));
        let (column, row) = sheet.grid.pixel((column, row));
        let off = |at: f64| (at - at.floor() - 0.5).abs();
        let there = containing((column, row));
        (off(column) < OFF_LATTICE && off(row) < OFF_LATTICE && sheet.has(there)).then_some(there)
    }

    /// The part of the file a pixel position lies in; positions sorted by it are read once.
    pub(crate) fn part(&self, (column, row): (f64, f64)) -> u32 {
        let (column, row) = containing((column, row));
        match (index(column, self.grid.columns), index(row, self.grid.rows)) {
            (Some(column), Some(row)) => self.layout.find(column, row).0,
            _ => u32::MAX,
        }
    }
}

/// The cell that contains a pixel position.
pub(crate) fn containing((column, row): (f64, f64)) -> (i64, i64) {
    (whole(column), whole(row))
}

/// The four cells whose centres surround a pixel position, with bilinear weights.
pub(crate) fn surrounding((column, row): (f64, f64)) -> Stencil {
    let ((c, right), (r, below)) = (split(column - 0.5), split(row - 0.5));
    let (left, above) = (1.0 - right, 1.0 - below);
    [
        ((c, r), left * above),
        ((c + 1, r), right * above),
        ((c, r + 1), left * below),
        ((c + 1, r + 1), right * below),
    ]
}

#[expect(clippy::cast_precision_loss, reason = "cells are counted in 32 bits")]
fn centre(cell: i64) -> f64 {
    cell as f64 + 0.5
}

fn split(at: f64) -> (i64, f64) {
    let near = at.round();
    if (at - near).abs() < ON_CENTRE {
        return (whole(near), 0.0);
    }
    (whole(at), at - at.floor())
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a cast saturates, and cells out there do not exist"
)]
fn whole(at: f64) -> i64 {
    at.floor() as i64
}

fn index(at: i64, size: u32) -> Option<u32> {
    u32::try_from(at).ok().filter(|i| *i < size)
}

/// Side of a square cell of the same area, from two geodesics.
fn cell_m(map: &Projection, grid: &Grid, (column, row): (f64, f64)) -> Option<f64> {
    let at = |c: f64, r: f64| {
        let (x, y) = grid.plane(c, r);
        map.inverse(x, y)
    };
    let here = at(column, row)?;
    let across = here.distance_m(at(column + 1.0, row)?);
    let down = here.distance_m(at(column, row + 1.0)?);
    let side = (across * down).sqrt();
    (side.is_finite() && side > 0.0).then_some(side)
}
