//! A coarse window of heights for drawing.

use crate::raster::{
    model::{Files, Model},
    terrain::Terrain,
};
use crate::{
    fault::{Fault, Place, plan::InPlan},
    geometry::LonLat,
};

/// Most heights in one window (our judgement: a sheet of paper at 300 dpi needs fewer).
const MOST_HEIGHTS: usize = 4_000_000;

impl Terrain {
    /// Heights in metres on a lattice of `columns` × `rows` positions, corners included, row 0 in the north;
    /// `None` where no model has a height. Memory: 16 bytes a position beside what is kept of the files.
    ///
    /// A window across the antimeridian has its east beyond 180°.
    ///
    /// # Errors
    /// If the window is empty or too large, or a file turns out to be broken where it is read.
    pub fn relief(
        &self,
        south_west: LonLat,
        north_east: LonLat,
        columns: usize,
        rows: usize,
    ) -> Result<Vec<Option<f32>>, Fault> {
        let count = columns
            .checked_mul(rows)
            .filter(|n| (1..=MOST_HEIGHTS).contains(n));
        let Some(count) = count else {
            let window = InPlan::Window {
                columns,
                rows,
                most: MOST_HEIGHTS,
            };
            let at = Place::item(window.item());
            return Err(Fault::new(window, at));
        };
        let window = Window {
            south_west,
            north_east,
            columns,
            rows,
        };
        let mut heights = vec![None; count];
        let mut files = self.files();
        for model in &self.models {
            self.fill(&mut files, model, &window, &mut heights)?;
        }
        Ok(heights)
    }

    /// Answers what is still open from one model, in the order its parts lie in the file.
    #[expect(
        clippy::cast_possible_truncation,
        reason = "relief is drawn: f32 keeps a millimetre at 9000 m"
    )]
    fn fill(
        &self,
        files: &mut Files,
        model: &Model,
        window: &Window,
        heights: &mut [Option<f32>],
    ) -> Result<(), Fault> {
        let open = heights
            .iter()
            .enumerate()
            .filter(|(_, h)| h.is_none())
            .map(|(i, _)| i);
        let mut asked: Vec<(u32, usize)> = open
            .filter_map(|i| Some((model.part(model.pixel(window.at(i))?), i)))
            .collect();
        asked.sort_unstable();
        for (_, i) in asked {
            let height_m = self.bilinear_m(files, model, window.at(i))?;
            if let Some(slot) = heights.get_mut(i) {
                *slot = height_m.map(|h| h as f32);
            }
        }
        Ok(())
    }
}

struct Window {
    south_west: LonLat,
    north_east: LonLat,
    columns: usize,
    rows: usize,
}

impl Window {
    fn at(&self, i: usize) -> LonLat {
        let east = share(i % self.columns, self.columns);
        let south = share(i / self.columns, self.rows);
        let (sw, ne) = (self.south_west, self.north_east);
        LonLat::new(
            sw.lon_deg + east * (ne.lon_deg - sw.lon_deg),
            ne.lat_deg + south * (sw.lat_deg - ne.lat_deg),
        )
    }
}

#[expect(clippy::cast_precision_loss, reason = "counts are below four million")]
fn share(step: usize, steps: usize) -> f64 {
    if steps < 2 {
        0.5
    } else {
        step as f64 / (steps - 1) as f64
    }
}
