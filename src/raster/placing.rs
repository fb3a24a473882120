//! Where a GeoTIFF lies on its map: transformation matrix, or tie point and cell size.

use crate::{fault::terrain::NoPlacing, raster::grid::Grid};

/// The three tags, as far as the file has them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Placing {
    /// `ModelPixelScale`: width, height and height-unit of a cell.
    pub(crate) scale: Vec<f64>,
    /// `ModelTiepoint`: pixel column, row, level and plane x, y, z, six numbers each.
    pub(crate) ties: Vec<f64>,
    /// `ModelTransformation`: four rows of four.
    pub(crate) matrix: Vec<f64>,
    /// Tie points name cell centres.
    pub(crate) names_centres: bool,
}

impl Placing {
    /// The frame of a raster of this size, or why there is none.
    pub(crate) fn grid(&self, columns: u32, rows: u32) -> Result<Grid, NoPlacing> {
        let steps = if self.scale.is_empty() {
            self.by_matrix()?
        } else {
            self.by_tie_point()?
        };
        let grid = Grid {
            origin: steps[0],
            column: steps[1],
            row: steps[2],
            columns,
            rows,
        };
        let grid = grid.checked().ok_or(NoPlacing::NoCellSize)?;
        let half = if self.names_centres { -0.5 } else { 0.0 };
        Ok(grid.moved_by_cells(half, half))
    }

    fn by_matrix(&self) -> Result<[(f64, f64); 3], NoPlacing> {
        match self.matrix.as_slice() {
            [a, b, _, x, d, e, _, y, ..] => Ok([(*x, *y), (*a, *d), (*b, *e)]),
            _ if self.ties.len() > 6 => Err(NoPlacing::ControlPoints),
            _ => Err(NoPlacing::Unsaid),
        }
    }

    fn by_tie_point(&self) -> Result<[(f64, f64); 3], NoPlacing> {
        let (&[width, height, ..], &[column, row, level, x, y, z, ..]) =
            (self.scale.as_slice(), self.ties.as_slice())
        else {
            return Err(NoPlacing::Unsaid);
        };
        let tall = self.scale.get(2).copied().unwrap_or(0.0);
        if moves_heights(tall, level, z) {
            return Err(NoPlacing::Stretched {
                tall,
                from: level,
                to: z,
            });
        }
        let origin = (x - column * width, y + row * height);
        self.agree(origin, width, height)?;
        Ok([origin, (width, 0.0), (0.0, -height)])
    }

    /// Further tie points must say the same within a hundredth of a cell (our judgement).
    fn agree(&self, origin: (f64, f64), width: f64, height: f64) -> Result<(), NoPlacing> {
        let off = |tie: &[f64]| {
            let &[column, row, _, x, y, _] = tie else {
                return false;
            };
            (x - column * width - origin.0).abs() > 0.01 * width.abs()
                || (y + row * height - origin.1).abs() > 0.01 * height.abs()
        };
        if self.ties.chunks_exact(6).any(off) {
            return Err(NoPlacing::Contradicting);
        }
        Ok(())
    }
}

/// A vertical cell size other than none or one, or with it a shift.
fn moves_heights(tall: f64, level: f64, z: f64) -> bool {
    let none = tall.abs() < f64::EPSILON;
    let one = (tall - 1.0).abs() < f64::EPSILON && (z - level).abs() < f64::EPSILON;
    !(none || one)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn placed(scale: &[f64], ties: &[f64]) -> Placing {
        Placing {
            scale: scale.to_vec(),
            ties: ties.to_vec(),
            ..Placing::default()
        }
    }

    #[test]
    fn a_tie_point_in_the_middle_counts_back_to_the_corner() {
        let grid = placed(&[10.0, 10.0, 0.0], &[3.0, 2.0, 0.0, 130.0, 480.0, 55.0])
            .grid(8, 8)
            .unwrap();
        assert_eq!(
            grid.origin,
            (100.0, 500.0),
            "a z without a vertical size means nothing"
        );
    }

    #[test]
    fn what_leaves_the_place_open_is_an_error() {
        assert!(
            placed(&[], &[0.0; 24]).grid(8, 8).is_err(),
            "control points"
        );
        assert!(
            placed(&[10.0, 10.0, 2.0], &[0.0; 6]).grid(8, 8).is_err(),
            "stretched heights"
        );
        assert!(
            placed(&[10.0, 0.0, 0.0], &[0.0; 6]).grid(8, 8).is_err(),
            "flat cells"
        );
        let two = [
            0.0, 0.0, 0.0, 100.0, 500.0, 0.0, 4.0, 0.0, 0.0, 160.0, 500.0, 0.0,
        ];
        assert!(
            placed(&[10.0, 10.0, 0.0], &two).grid(8, 8).is_err(),
            "contradiction"
        );
    }
}
