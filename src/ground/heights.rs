//! Heights of a terrain model along a stage.

use crate::ground::places::places;
use crate::{
    fault::Fault,
    ground::profile::{Profile, Sample},
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
/// let model = heights(stage, &job.terrain).map_err(|fault| vec![fault])?;
/// let from_to = (model.profile.height_m(0.0), model.profile.height_m(stage.length_m()));
/// assert_eq!(from_to, (Some(1200.0), Some(1510.0)));
/// assert_eq!(model.void_m(), 0.0, "the tile covers the line");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ModelHeights {
    /// The heights, in walking order.
    pub profile: Profile,
    /// Where the model has none: from the last height before to the first behind, or to the segment's end.
    pub void: Vec<Stretch>,
    /// Cell of the coarsest model that answered, metres; `None` where none did.
    pub coarsest_m: Option<f64>,
}

/// Heights at the points of the route and at most half a cell apart.
///
/// # Errors
/// If a terrain file turns out to be broken where it is read.
pub fn heights(stage: &Stage, terrain: &Terrain) -> Result<ModelHeights, Fault> {
    let finest_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    let most_m = (MOST_CELLS * finest_m).max(stage.length_m() / MOST_HEIGHTS);
    let places = places(stage, LEAST_CELLS * finest_m, most_m);
    let mut samples = Vec::with_capacity(places.len());
    let mut heights = ModelHeights::default();
    let mut unknown: Option<Stretch> = None;
    for (at_m, at) in places {
        let Some(sample) = terrain.sample(at)? else {
            let known_m = samples.last().map_or(at_m, |s: &Sample| s.at_m);
            let from_m = unknown.map_or(known_m, |u| u.from_m);
            unknown = Some(Stretch { from_m, to_m: at_m });
            continue;
        };
        heights
            .void
            .extend(unknown.take().map(|u| Stretch { to_m: at_m, ..u }));
        let coarsest_m = heights.coarsest_m.unwrap_or(0.0).max(sample.resolution_m);
        heights.coarsest_m = Some(coarsest_m);
        samples.push(Sample {
            at_m,
            height_m: sample.height_m,
        });
    }
    heights.void.extend(unknown);
    heights.profile = Profile::of_samples(samples);
    Ok(heights)
}

impl ModelHeights {
    /// Metres of the line without a height.
    #[must_use]
    pub fn void_m(&self) -> f64 {
        self.void.iter().map(Stretch::length_m).sum::<f64>() + 0.0
    }
}
