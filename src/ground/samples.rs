//! The heights of a profile: those of a stage where its file gives one for every point, shared with it, or gathered one by one.

use std::ops::Range;

use crate::trip::route::Stage;

/// One height.
///
/// ```
/// use schrund::{ground::{profile::Profile, samples::Sample}, trip::route::Stretch};
///
/// // Heights of one's own, say of an altimeter: level, then down by 30 m in 100 m.
/// let read = [(0.0, 2500.0), (100.0, 2500.0), (200.0, 2470.0)];
/// let profile = Profile::of_samples(&read.map(|(at_m, height_m)| Sample { at_m, height_m }));
/// let whole = Stretch { from_m: 0.0, to_m: 200.0 };
/// assert_eq!(profile.steep_descent_m(whole, 0.2, 100.0), Some(30.0), "steeper than 1 in 5");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Metres of chainage.
    pub at_m: f64,
    /// Metres above the datum of the source.
    pub height_m: f64,
}

/// Where the heights of a profile are.
#[derive(Clone, Debug)]
pub(super) enum Kept {
    /// Here.
    Own(Vec<Sample>),
    /// Every point of this stage has one: a copy shares them.
    Shared(Stage),
}

impl Default for Kept {
    fn default() -> Self {
        Self::Own(Vec::new())
    }
}

impl Kept {
    pub(super) fn len(&self) -> usize {
        match self {
            Self::Own(samples) => samples.len(),
            Self::Shared(stage) => stage.points().len(),
        }
    }

    pub(super) fn get(&self, i: usize) -> Option<Sample> {
        match self {
            Self::Own(samples) => samples.get(i).copied(),
            Self::Shared(stage) => Some(Sample {
                at_m: *stage.chainage_m().get(i)?,
                height_m: f64::from(stage.height_m(i)?),
            }),
        }
    }

    /// Some of them in a row.
    pub(super) fn part(&self, range: Range<usize>) -> Samples<'_> {
        let to = range.end.min(self.len());
        let range = range.start.min(to)..to;
        Samples { kept: self, range }
    }

    pub(super) fn all(&self) -> Samples<'_> {
        self.part(0..self.len())
    }
}

/// Heights in a row; chainages never decrease.
///
/// ```
/// let stage = &schrund::example::job()?.route.stages[0];
/// let profile = schrund::ground::profile::Profile::of_route(stage);
/// let all = profile.samples();
/// assert_eq!(all.len(), stage.points().len(), "the file gives one for every point");
/// assert_eq!(all.iter().next(), all.get(0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Samples<'p> {
    kept: &'p Kept,
    range: Range<usize>,
}

impl<'p> Samples<'p> {
    /// How many.
    #[must_use]
    pub fn len(&self) -> usize {
        self.range.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.range.is_empty()
    }

    /// One by its place in the row.
    #[must_use]
    pub fn get(&self, i: usize) -> Option<Sample> {
        (i < self.len()).then(|| self.kept.get(self.range.start + i))?
    }

    /// All of them.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = Sample> + Clone + use<'p> {
        let kept = self.kept;
        self.range.clone().filter_map(|i| kept.get(i))
    }

    /// Some of them.
    pub(super) fn part(&self, range: Range<usize>) -> Samples<'p> {
        let to = (self.range.start + range.end).min(self.range.end);
        self.kept.part((self.range.start + range.start).min(to)..to)
    }

    /// How many of them lie before a place, or on it.
    pub(super) fn up_to(&self, at_m: f64) -> usize {
        self.partition_point(|here_m| here_m <= at_m)
    }

    /// How many of them lie before a place.
    pub(super) fn before(&self, at_m: f64) -> usize {
        self.partition_point(|here_m| here_m < at_m)
    }

    fn partition_point(&self, is_before: impl Fn(f64) -> bool) -> usize {
        let range = self.range.clone();
        match self.kept {
            Kept::Own(samples) => {
                let samples = samples.get(range).unwrap_or_default();
                samples.partition_point(|sample| is_before(sample.at_m))
            }
            Kept::Shared(stage) => {
                let chainage_m = stage.chainage_m().get(range).unwrap_or_default();
                chainage_m.partition_point(|at_m| is_before(*at_m))
            }
        }
    }
}

impl PartialEq for Kept {
    fn eq(&self, other: &Self) -> bool {
        self.all() == other.all()
    }
}

impl PartialEq for Samples<'_> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}
