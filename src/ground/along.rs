//! The slope of the ground at places along a stage.

use crate::{
    fault::Fault,
    geometry::LonLat,
    ground::{
        places,
        steepening::{over_m, steepens_deg},
    },
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
    runs: Vec<SlopeRun>,
}

/// Those of one segment: what lies beyond a jump is never next to a place.
#[derive(Clone, Debug, PartialEq)]
struct SlopeRun {
    segment: Stretch,
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
    /// By how many degrees the ground below it is steeper than the ground above it.
    pub(crate) steepens_deg: Option<f64>,
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
        let over_m = over_m(terrain, rules);
        let mut runs = Vec::new();
        for places in places::places(stage, step_m, step_m) {
            runs.extend(SlopeRun::of(&places, terrain, over_m)?);
        }
        Ok(Self { runs })
    }

    /// The places of a stretch.
    pub(crate) fn within(&self, stretch: Stretch) -> impl Iterator<Item = &SlopeSpot> {
        self.parts(stretch).flat_map(|(part, run)| {
            let (from, to) = run.within(part);
            run.spots.get(from..to).unwrap_or_default()
        })
    }

    /// The parts of a stretch, one for each segment, with their places and the one before and behind, so that a short
    /// one has some too.
    pub(crate) fn around(&self, stretch: Stretch) -> impl Iterator<Item = (Stretch, &[SlopeSpot])> {
        self.parts(stretch).map(|(part, run)| {
            let (from, to) = run.within(part);
            let (from, to) = (from.saturating_sub(1), (to + 1).min(run.spots.len()));
            (part, run.spots.get(from..to).unwrap_or_default())
        })
    }

    /// The segments that a stretch goes along, and how far; one that it merely ends or begins at is none of them.
    fn parts(&self, stretch: Stretch) -> impl Iterator<Item = (Stretch, &SlopeRun)> {
        let part = move |run: &SlopeRun| Stretch {
            from_m: stretch.from_m.max(run.segment.from_m),
            to_m: stretch.to_m.min(run.segment.to_m),
        };
        let runs = self.runs.iter().map(move |run| (part(run), run));
        runs.filter(move |(part, _)| {
            let (length_m, asked_m) = (part.length_m(), stretch.length_m());
            length_m > 0.0 || (length_m == 0.0 && asked_m <= 0.0)
        })
    }

    /// The steepest place on or next to a stretch.
    #[must_use]
    pub(crate) fn steepest(&self, stretch: Stretch) -> Option<&SlopeSpot> {
        self.around(stretch)
            .flat_map(|(_, spots)| spots)
            .max_by(|a, b| a.slope_deg.total_cmp(&b.slope_deg))
    }
}

impl SlopeRun {
    fn of(places: &[(f64, LonLat)], terrain: &Terrain, over_m: f64) -> Result<Option<Self>, Fault> {
        let (Some(&(from_m, _)), Some(&(to_m, _))) = (places.first(), places.last()) else {
            return Ok(None);
        };
        let mut spots = Vec::new();
        for &(at_m, at) in places {
            if let Some(slope) = terrain.slope(at)? {
                let steepens = |aspect_deg| steepens_deg(terrain, at, aspect_deg, over_m);
                let steepens_deg = slope.aspect_deg.map(steepens).transpose()?.flatten();
                spots.push(SlopeSpot {
                    at_m,
                    at,
                    slope_deg: slope.slope_deg,
                    aspect_deg: slope.aspect_deg,
                    steepens_deg,
                });
            }
        }
        let segment = Stretch { from_m, to_m };
        Ok(Some(Self { segment, spots }))
    }

    /// Indices of the places of a stretch.
    fn within(&self, stretch: Stretch) -> (usize, usize) {
        let from = self.spots.partition_point(|s| s.at_m < stretch.from_m);
        let to = self.spots.partition_point(|s| s.at_m <= stretch.to_m);
        (from, to)
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Places every 10 m of one slope.
    fn run(from_m: f64, to_m: f64, slope_deg: f64) -> SlopeRun {
        let chainage = std::iter::successors(Some(from_m), |at_m| Some(at_m + 10.0));
        let spot = |at_m: f64| SlopeSpot {
            at_m,
            at: LonLat::new(8.0, 46.5),
            slope_deg,
            aspect_deg: Some(180.0),
            steepens_deg: None,
        };
        SlopeRun {
            segment: Stretch { from_m, to_m },
            spots: chainage.take_while(|m| *m <= to_m).map(spot).collect(),
        }
    }

    #[test]
    fn ground_beyond_a_jump_is_not_next_to_a_place() {
        let slopes = Slopes {
            runs: vec![run(0.0, 100.0, 45.0), run(100.0, 500.0, 0.0)],
        };
        let steepest_deg = |from_m: f64, to_m: f64| {
            let spot = slopes.steepest(Stretch { from_m, to_m });
            spot.map(|s| s.slope_deg)
        };
        assert_eq!(steepest_deg(50.0, 100.0), Some(45.0), "before the jump");
        assert_eq!(steepest_deg(100.0, 150.0), Some(0.0), "behind it");
        assert_eq!(steepest_deg(90.0, 110.0), Some(45.0), "over it");
    }
}
