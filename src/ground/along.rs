//! The slope of the ground at places along a stage.

use crate::{
    fault::Fault,
    geometry::LonLat,
    ground::places,
    practice::{Rule, Rules},
    raster::Terrain,
    trip::route::{Stage, Stretch},
};

/// Most places of one stage at which the slope is asked for: bounds the work (about a second), and on a
/// line so long nothing finer is read from a plan.
const MOST_SPOTS: f64 = 50_000.0;

/// The slopes of the ground at places along a stage, in walking order; places without a slope are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Slopes {
    spots: Vec<SlopeSpot>,
}

/// The inclination of the ground at one place of the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SlopeSpot {
    /// Metres of chainage.
    pub(crate) at_m: f64,
    /// Where that is.
    pub(crate) at: LonLat,
    /// Degrees from the horizontal, 0 to 90.
    pub(crate) slope_deg: f64,
    /// Direction of steepest descent, degrees clockwise from true north; `None` on level ground.
    pub(crate) aspect_deg: Option<f64>,
}

impl Slopes {
    /// Asks the terrain for its slope every half cell of the finest model, but not more often than
    /// [`Rule::GroundStepM`].
    ///
    /// # Errors
    /// If a terrain file turns out to be broken where it is read.
    pub(crate) fn along(stage: &Stage, terrain: &Terrain, rules: &Rules) -> Result<Self, Fault> {
        let finest_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
        let step_m = (finest_m / 2.0)
            .max(rules[Rule::GroundStepM])
            .max(stage.length_m() / MOST_SPOTS);
        let mut spots = Vec::new();
        for (at_m, at) in places::places(stage, step_m, step_m) {
            if let Some(slope) = terrain.slope(at)? {
                spots.push(SlopeSpot {
                    at_m,
                    at,
                    slope_deg: slope.slope_deg,
                    aspect_deg: slope.aspect_deg,
                });
            }
        }
        Ok(Self { spots })
    }

    /// The places of a stretch.
    #[must_use]
    pub(crate) fn within(&self, stretch: Stretch) -> &[SlopeSpot] {
        let from = self.spots.partition_point(|s| s.at_m < stretch.from_m);
        let to = self.spots.partition_point(|s| s.at_m <= stretch.to_m);
        self.spots.get(from..to).unwrap_or_default()
    }

    /// The places of a stretch and the one before and behind it, so that a short stretch has some too.
    #[must_use]
    pub(crate) fn around(&self, stretch: Stretch) -> &[SlopeSpot] {
        let from = self.spots.partition_point(|s| s.at_m < stretch.from_m);
        let to = self.spots.partition_point(|s| s.at_m <= stretch.to_m);
        let (from, to) = (from.saturating_sub(1), (to + 1).min(self.spots.len()));
        self.spots.get(from..to).unwrap_or_default()
    }

    /// The steepest place on or next to a stretch.
    #[must_use]
    pub(crate) fn steepest(&self, stretch: Stretch) -> Option<&SlopeSpot> {
        self.around(stretch)
            .iter()
            .max_by(|a, b| a.slope_deg.total_cmp(&b.slope_deg))
    }
}

impl SlopeSpot {
    /// How steeply the ground falls in a direction, degrees; negative where it rises.
    #[must_use]
    pub(crate) fn fall_deg(&self, bearing_deg: f64) -> f64 {
        let Some(aspect_deg) = self.aspect_deg else {
            return 0.0;
        };
        let fall =
            self.slope_deg.to_radians().tan() * (aspect_deg - bearing_deg).to_radians().cos();
        fall.atan().to_degrees()
    }
}
