//! Steepness and facing of the ground out of a terrain model.
//!
//! *Model:* weighted central differences over eight heights around the place (Horn's weights, from memory), taken at
//! geodesic offsets to true north, east, south and west of one cell of the model (its longest side); so no
//! grid convergence enters. *Valid:* where all eight heights come from one model. *Error* of the upright on the ground
//! with 10 m cells: on a plane of 35° below 0.01°; on a cone of 35° below 0.2° from ten cells off its tip; on a dome with a
//! radius of 100 cells below 0.06° up to 40°. The error of the facing is that divided by the sine of the slope.
//! What is narrower than three cells is flattened. *Checked:* tests/raster/slopes.rs

use crate::raster::{
    model::{Files, Model},
    terrain::Terrain,
};
use crate::{fault::Fault, geometry::LonLat};

/// The inclination of the ground at a place.
///
/// ```
/// use schrund::{geometry::LonLat, raster::{GroundSlope, Terrain}};
///
/// // A tile that rises by 50 m from row to row toward the south: 3 seconds of latitude, 92.6 m at 46.5° N.
/// let heights: Vec<u8> = (0..1201_i16).flat_map(|row| (5 * row).to_be_bytes().repeat(1201)).collect();
/// let mut terrain = Terrain::new();
/// terrain.add("N46E007.hgt", Box::new(std::io::Cursor::new(heights)))?;
/// let slope: GroundSlope = terrain.slope(LonLat::new(7.5, 46.5))?.expect("inside the tile");
/// assert!((slope.slope_deg - (5.0_f64 / 92.63).atan().to_degrees()).abs() < 0.01, "{slope:?}");
/// let facing_deg = slope.aspect_deg.expect("not level");
/// assert!(facing_deg.min(360.0 - facing_deg) < 0.01, "it descends to the north");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundSlope {
    /// Degrees from the horizontal, 0 to 90.
    pub slope_deg: f64,
    /// Direction of steepest descent, degrees clockwise from true north; `None` on level ground.
    pub aspect_deg: Option<f64>,
    /// Distance between the heights it was taken from and the place, metres: one cell.
    pub reach_m: f64,
}

/// Bearing (degrees), distance (cells) and weights to north and to east of the heights around.
const AROUND: [(f64, f64, f64, f64); 8] = [
    (0.0, 1.0, 2.0, 0.0),
    (45.0, std::f64::consts::SQRT_2, 1.0, 1.0),
    (90.0, 1.0, 0.0, 2.0),
    (135.0, std::f64::consts::SQRT_2, -1.0, 1.0),
    (180.0, 1.0, -2.0, 0.0),
    (225.0, std::f64::consts::SQRT_2, -1.0, -1.0),
    (270.0, 1.0, 0.0, -2.0),
    (315.0, std::f64::consts::SQRT_2, 1.0, -1.0),
];

impl Terrain {
    /// Steepness and facing of the ground, from the finest model that has all heights around the place.
    ///
    /// # Errors
    /// If a file turns out to be broken where it is read.
    pub fn slope(&self, at: LonLat) -> Result<Option<GroundSlope>, Fault> {
        let mut files = self.files();
        for model in &self.models {
            if let Some(slope) = self.slope_in(&mut files, model, at)? {
                return Ok(Some(slope));
            }
        }
        Ok(None)
    }

    fn slope_in(
        &self,
        files: &mut Files,
        model: &Model,
        at: LonLat,
    ) -> Result<Option<GroundSlope>, Fault> {
        let Some(reach_m) = model.pixel(at).and_then(|p| model.longest_side_m(p)) else {
            return Ok(None);
        };
        let (mut north, mut east) = (0.0, 0.0);
        for (bearing_deg, cells, to_north, to_east) in AROUND {
            let there = at.toward(bearing_deg, cells * reach_m);
            let Some(height_m) = self.bilinear_or_sheet_m(files, model, there)? else {
                return Ok(None);
            };
            north += to_north * height_m;
            east += to_east * height_m;
        }
        Ok(Some(inclination(
            north / (8.0 * reach_m),
            east / (8.0 * reach_m),
            reach_m,
        )))
    }

    /// A height from the model or a sheet cut from the same lattice.
    fn bilinear_or_sheet_m(
        &self,
        files: &mut Files,
        model: &Model,
        at: LonLat,
    ) -> Result<Option<f64>, Fault> {
        if model.pixel(at).is_some() {
            return self.bilinear_m(files, model, at);
        }
        for sheet in self.models.iter().filter(|m| m.continues(model)) {
            if sheet.pixel(at).is_some() {
                return self.bilinear_m(files, sheet, at);
            }
        }
        Ok(None)
    }
}

fn inclination(north: f64, east: f64, reach_m: f64) -> GroundSlope {
    let rise = north.hypot(east);
    let level = rise < 1e-9;
    GroundSlope {
        slope_deg: rise.atan().to_degrees(),
        aspect_deg: (!level).then(|| (-east).atan2(-north).to_degrees().rem_euclid(360.0)),
        reach_m,
    }
}
