//! Where the cells of a raster lie on its map: an affine frame from pixel to plane and back.

/// Cells counted from the upper left: cell (c, r) covers columns c to c + 1 and rows r to r + 1, its centre is
/// at (c + ½, r + ½). Rotated and south-up rasters are ordinary cases.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Grid {
    /// Plane coordinates of the outer corner of cell (0, 0).
    pub(crate) origin: (f64, f64),
    /// Plane step from one column to the next.
    pub(crate) column: (f64, f64),
    /// Plane step from one row to the next.
    pub(crate) row: (f64, f64),
    /// Cells in a row.
    pub(crate) columns: u32,
    /// Rows.
    pub(crate) rows: u32,
}

impl Grid {
    /// The grid, if its steps span a plane at all.
    pub(crate) fn checked(self) -> Option<Self> {
        let all = [self.origin, self.column, self.row];
        let finite = all.iter().all(|p| p.0.is_finite() && p.1.is_finite());
        (finite && self.cell_area() > 0.0).then_some(self)
    }

    /// The same grid moved by half a cell, for tie points that name cell centres.
    pub(crate) fn moved_by_cells(mut self, columns: f64, rows: f64) -> Self {
        self.origin = self.plane(columns, rows);
        self
    }

    /// Area of a cell in square plane units.
    pub(crate) fn cell_area(&self) -> f64 {
        self.determinant().abs()
    }

    /// Plane coordinates of a pixel position.
    pub(crate) fn plane(&self, column: f64, row: f64) -> (f64, f64) {
        (
            self.origin.0 + column * self.column.0 + row * self.row.0,
            self.origin.1 + column * self.column.1 + row * self.row.1,
        )
    }

    /// Pixel position of plane coordinates.
    pub(crate) fn pixel(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (dx, dy) = (x - self.origin.0, y - self.origin.1);
        let det = self.determinant();
        (
            (dx * self.row.1 - dy * self.row.0) / det,
            (dy * self.column.0 - dx * self.column.1) / det,
        )
    }

    /// True for a pixel position on the raster.
    pub(crate) fn holds(&self, (column, row): (f64, f64)) -> bool {
        column >= 0.0
            && row >= 0.0
            && column < f64::from(self.columns)
            && row < f64::from(self.rows)
    }

    /// True if the other grid has the same steps, so that cells of both can lie in one lattice.
    pub(crate) fn same_steps(&self, other: &Self) -> bool {
        let tolerance = 1e-6 * self.cell_area().sqrt();
        let near = |a: (f64, f64), b: (f64, f64)| {
            (a.0 - b.0).abs() < tolerance && (a.1 - b.1).abs() < tolerance
        };
        near(self.column, other.column) && near(self.row, other.row)
    }

    fn determinant(&self) -> f64 {
        self.column.0 * self.row.1 - self.column.1 * self.row.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_on_a_rotated_grid() {
        let grid = Grid {
            origin: (500.0, -70.0),
            column: (3.0, 1.0),
            row: (0.5, -2.0),
            columns: 10,
            rows: 10,
        };
        let (c, r) = grid.pixel(grid.plane(4.25, 7.5));
        assert!((c - 4.25).abs() < 1e-12, "column {c}");
        assert!((r - 7.5).abs() < 1e-12, "row {r}");
    }
}
