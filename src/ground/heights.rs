//! Heights of a terrain model along a stage.

use crate::{
    fault::Fault,
    ground::{
        places::places,
        profile::{Gathering, Profile},
        samples::Sample,
        smooth::{Smoothing, Weighed},
    },
    practice::{Rule, Rules},
    raster::Terrain,
    trip::route::{Stage, Stretch},
};

/// Farthest two heights lie apart, in cells of the finest model: a bilinear surface holds nothing finer.
const MOST_CELLS: f64 = 0.5;
/// Nearest two heights lie together, in cells. Our judgement: keeps dense tracks from costing more.
const LEAST_CELLS: f64 = 0.125;

/// Most heights put in between on one stage: bounds the work whatever a file says its cells are.
const MOST_HEIGHTS: f64 = 400_000.0;

/// What a model knows of a stage.
///
/// ```
/// use schrund::ground::heights::heights;
///
/// let job = schrund::example::pair()?;
/// let stage = &job.route.stages[0];
/// let model = heights(stage, &job.terrain, &job.rules).map_err(|fault| vec![fault])?;
/// let from_to = (model.profile.height_m(0.0), model.profile.height_m(stage.length_m()));
/// assert_eq!(from_to, (Some(1200.0), Some(1510.0)));
/// assert_eq!(model.void_m(), 0.0, "the tile covers the line");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ModelHeights {
    /// The heights, as fine as the model has them, in walking order: for slopes.
    pub profile: Profile,
    /// The same a cell apart and averaged along the line: for climbs and nothing else, since it relaxes slopes.
    pub climbing: Profile,
    /// Cell of the coarsest model that answered, metres; `None` where none did.
    pub coarsest_m: Option<f64>,
}

/// Heights at the points of the route and at most half a cell apart, and what of them counts for climbs.
///
/// # Errors
/// If a terrain file turns out to be broken where it is read.
pub fn heights(stage: &Stage, terrain: &Terrain, rules: &Rules) -> Result<ModelHeights, Fault> {
    let finest_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    let most_m = (MOST_CELLS * finest_m).max(stage.length_m() / MOST_HEIGHTS);
    let mut coarsest_m: Option<f64> = None;
    let mut fine = Gathering::default();
    let mut smooth = Smoothing::over(rules[Rule::ClimbCells], most_m);
    for segment in places(stage, LEAST_CELLS * finest_m, most_m) {
        let mut weighed = Vec::with_capacity(segment.len());
        for (at_m, at) in segment {
            let found = terrain.sample(at)?;
            fine.place(at_m, found.map(|f| f.height_m));
            weighed.extend(found.map(|f| Weighed {
                sample: Sample {
                    at_m,
                    height_m: f.height_m,
                },
                cell_m: f.resolution_m,
            }));
        }
        let cells = weighed.iter().map(|w| w.cell_m);
        coarsest_m = cells.chain(coarsest_m).reduce(f64::max);
        fine.jump();
        smooth.segment(&weighed);
    }
    Ok(ModelHeights {
        profile: fine.done(),
        climbing: smooth.done(),
        coarsest_m,
    })
}

impl ModelHeights {
    /// Metres of the line without a height.
    #[must_use]
    pub fn void_m(&self) -> f64 {
        let void = self.profile.missing().iter();
        void.map(Stretch::length_m).sum::<f64>() + 0.0
    }
}
