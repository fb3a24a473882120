//! Heights along a stage, jump by jump, and how steep the line is.

use std::ops::Range;

use crate::{
    ground::{
        lone::{Lone, least_steep},
        marks::Marks,
        samples::{Kept, Sample, Samples},
    },
    trip::route::{Stage, Stretch},
};

/// Heights at chainages, in walking order; chainages never decrease.
///
/// A jump of the line is not walked: what it rises belongs to no climb and no slope, and nothing is known between the
/// last height before it and its place. So each height stands twice: as it is, and as walked, without the jumps.
///
/// ```
/// use schrund::{geometry::LonLat, ground::profile::Profile, trip::route::{Stage, Stretch}};
///
/// let stage = &schrund::example::job()?.route.stages[0];
/// let profile = Profile::of_route(stage);
/// let [first, second] = [0, 1].map(|i| profile.samples().get(i).expect("heights"));
/// let between_m = (first.at_m + second.at_m) / 2.0;
/// assert_eq!(profile.height_m(between_m), Some(1250.0), "half way from 1200 to 1300 m");
/// assert_eq!(profile.height_m(stage.length_m() + 1.0), None, "nothing is made up beyond the end");
///
/// let mut stage = Stage::new(None);
/// stage.push(LonLat::new(8.0, 46.500), Some(2000.0));
/// stage.push(LonLat::new(8.0, 46.501), Some(2020.0));
/// stage.break_segment(); // a lift of 1000 m
/// stage.push(LonLat::new(8.0, 46.510), Some(3020.0));
/// stage.push(LonLat::new(8.0, 46.511), Some(3050.0));
///
/// let all = Stretch { from_m: 0.0, to_m: stage.length_m() };
/// let climb = Profile::of_route(&stage).climb(all, 10.0).expect("heights");
/// assert_eq!(climb.ascent_m, 50.0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Profile {
    samples: Kept,
    /// Index of the first height behind each jump.
    breaks: Vec<usize>,
    /// What the jumps rise as far as each of them, metres: so much less are the heights behind it as walked.
    jumped_m: Vec<f64>,
    /// See [`Profile::missing`].
    missing: Vec<Stretch>,
    /// The heights that dip or stick out alone, which decide no slope.
    lone: Marks,
    /// And how far off the heights beside them may be, metres.
    lone_within_m: f64,
}

/// A profile while it is put together, place by place.
#[derive(Debug, Default)]
pub(super) struct Gathering {
    profile: Profile,
    samples: Vec<Sample>,
    /// The next place begins a segment.
    begins: bool,
    /// The last place of the segment with a height.
    known_m: Option<f64>,
    /// Where no height was known since.
    open: Option<Stretch>,
}

impl Gathering {
    /// The next place of the segment, and its height where one is known.
    pub(super) fn place(&mut self, at_m: f64, height_m: Option<f64>) {
        let Some(height_m) = height_m else {
            let from_m = self.open.map_or(self.known_m.unwrap_or(at_m), |o| o.from_m);
            self.open = Some(Stretch { from_m, to_m: at_m });
            return;
        };
        let open = self.open.take();
        self.profile
            .missing
            .extend(open.map(|o| Stretch { to_m: at_m, ..o }));
        let last = self.samples.last().filter(|_| self.begins);
        if let Some(before_m) = last.map(|last| last.height_m) {
            self.profile.jump(self.samples.len(), before_m, height_m);
        }
        self.begins = false;
        self.known_m = Some(at_m);
        self.samples.push(Sample { at_m, height_m });
    }

    /// The segment ends here; the line goes on elsewhere.
    pub(super) fn jump(&mut self) {
        self.profile.missing.extend(self.open.take());
        (self.known_m, self.begins) = (None, true);
    }

    /// All heights, the last segment being over.
    pub(super) fn done(mut self) -> Profile {
        self.jump();
        Profile {
            samples: Kept::Own(self.samples),
            ..self.profile
        }
    }
}

impl Profile {
    /// The heights that the route file gives; points without one are left out.
    #[must_use]
    pub fn of_route(stage: &Stage) -> Self {
        if stage.knows_all_heights() {
            return Self::sharing(stage);
        }
        let mut gathering = Gathering::default();
        for segment in stage.segments() {
            let chainage = stage.chainage_m()[segment.clone()].iter();
            for (&at_m, i) in chainage.zip(segment) {
                gathering.place(at_m, stage.height_m(i).map(f64::from));
            }
            gathering.jump();
        }
        gathering.done()
    }

    /// The heights of a stage that has one at every point: a million are not kept twice.
    fn sharing(stage: &Stage) -> Self {
        let mut profile = Self {
            samples: Kept::Shared(stage.clone()),
            ..Self::default()
        };
        for segment in stage.segments().skip(1) {
            let height_m = |i: usize| profile.samples.get(i).map(|s| s.height_m);
            let sides = segment
                .start
                .checked_sub(1)
                .and_then(height_m)
                .zip(height_m(segment.start));
            if let Some((before_m, height_m)) = sides {
                profile.jump(segment.start, before_m, height_m);
            }
        }
        profile
    }

    /// A jump from one height to another, which is the next one.
    fn jump(&mut self, next: usize, from_m: f64, to_m: f64) {
        let walked_m = from_m - self.jumped_m.last().copied().unwrap_or_default();
        self.breaks.push(next);
        self.jumped_m.push(to_m - walked_m);
    }

    /// The same heights, measured one by one: none that dips or sticks out alone decides a slope, where those beside it are
    /// no farther off.
    #[must_use]
    pub(crate) fn measured(mut self, within_m: f64) -> Self {
        self.lone_within_m = within_m;
        let lone = (0..self.samples.len()).map(|i| self.lone_at(i).is_some());
        self.lone = Marks::of(lone);
        self
    }

    /// Whether a height is lower or higher than both beside it: most are not, and are soon told from one that may be alone.
    fn is_outermost(&self, i: usize) -> bool {
        let height_m = |i: usize| self.samples.get(i).map(|s| s.height_m);
        let beside = i.checked_sub(1).and_then(height_m).zip(height_m(i + 1));
        let sides = beside.zip(height_m(i));
        sides.is_some_and(|((before_m, after_m), here_m)| {
            (here_m > before_m && here_m > after_m) || (here_m < before_m && here_m < after_m)
        })
    }

    /// The height of an index, if it dips or sticks out alone in its run.
    fn lone_at(&self, i: usize) -> Option<Lone> {
        if !self.is_outermost(i) {
            return None;
        }
        let run = self.run_at(i);
        let place = |i: usize| {
            let sample = self.samples.get(i).filter(|_| run.contains(&i))?;
            Some((sample.at_m, sample.height_m))
        };
        let back = |by: usize| i.checked_sub(by).and_then(place);
        let outer = || [back(2), place(i + 2)];
        Lone::of(
            [back(1)?, place(i)?, place(i + 1)?],
            outer,
            self.lone_within_m,
        )
    }

    /// Heights that dip or stick out alone and reach into a window.
    pub(super) fn lone_in(&self, window: Stretch) -> impl Iterator<Item = Lone> {
        let from = self.samples.all().up_to(window.from_m);
        let to = self.samples.all().before(window.to_m);
        // The height before it and the one behind may lie outside.
        let near = self.lone.within(from.saturating_sub(1)..to + 1);
        near.filter_map(|i| self.lone_at(i))
    }

    /// Heights from elsewhere, in walking order, without a jump.
    #[must_use]
    pub fn of_samples(samples: &[Sample]) -> Self {
        let mut gathering = Gathering::default();
        for sample in samples {
            gathering.place(sample.at_m, Some(sample.height_m));
        }
        gathering.done()
    }

    /// All heights.
    #[must_use]
    pub fn samples(&self) -> Samples<'_> {
        self.samples.all()
    }

    /// The heights in pieces that are walked without a jump.
    pub fn runs(&self) -> impl Iterator<Item = Samples<'_>> {
        let starts = std::iter::once(0).chain(self.breaks.iter().copied());
        let ends = self.breaks.iter().copied().chain([self.samples.len()]);
        let run = |(from, to)| self.samples.part(from..to);
        starts.zip(ends).map(run).filter(|run| !run.is_empty())
    }

    /// The heights of the run in which a place is, or behind the end of which it is; none before the first height.
    pub(super) fn run_of(&self, at_m: f64) -> Option<Samples<'_>> {
        let before = self.first_behind(at_m).checked_sub(1)?;
        Some(self.samples.part(self.run_at(before)))
    }

    /// Which heights are the run of one of them.
    fn run_at(&self, i: usize) -> Range<usize> {
        let next = self.breaks.partition_point(|b| *b <= i);
        let from = next.checked_sub(1).and_then(|i| self.breaks.get(i));
        let to = self.breaks.get(next).copied();
        from.copied().unwrap_or(0)..to.unwrap_or(self.samples.len())
    }

    /// Where places of the line have no height: from the last height before to the first behind, or to the ends of
    /// the segment.
    #[must_use]
    pub fn missing(&self) -> &[Stretch] {
        &self.missing
    }

    /// Whether there are heights to go by.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.samples.len() < 2
    }

    /// Height at a chainage, linear between neighbours, on the later side of a jump; `None` outside the heights known.
    #[must_use]
    pub fn height_m(&self, at_m: f64) -> Option<f64> {
        let height_m = |i: usize| self.samples.get(i).map(|s| s.height_m);
        self.find(at_m)?.between(height_m)
    }

    /// Metres that a stretch rises from its begin to its end, jumps left out; `None` where that is not known.
    #[must_use]
    pub fn rise_m(&self, stretch: Stretch) -> Option<f64> {
        self.rise_between_m(&self.find(stretch.from_m)?, &self.find(stretch.to_m)?)
    }

    /// A height less what the jumps before it rise.
    fn walked_m(&self, i: usize) -> Option<f64> {
        let height_m = self.samples.get(i)?.height_m;
        let jumps = self.breaks.partition_point(|b| *b <= i).checked_sub(1);
        let jumped_m = jumps.and_then(|last| self.jumped_m.get(last));
        Some(jumped_m.map_or(height_m, |jumped_m| height_m - jumped_m))
    }

    pub(super) fn rise_between_m(&self, from: &Between, to: &Between) -> Option<f64> {
        if self.jumps_into_the_unknown(from.before, to.before) {
            return None;
        }
        let walked_m = |i: usize| self.walked_m(i);
        Some(to.between(walked_m)? - from.between(walked_m)?)
    }

    /// The same whichever height that stands alone is doubted: the least of all.
    #[must_use]
    pub(crate) fn sure_rise_m(&self, stretch: Stretch) -> Option<f64> {
        Some(self.doubted_m(self.rise_m(stretch)?, stretch))
    }

    pub(super) fn doubted_m(&self, plain_m: f64, stretch: Stretch) -> f64 {
        let doubted = self
            .lone_in(stretch)
            .map(|l| plain_m + l.raises_m(stretch.to_m) - l.raises_m(stretch.from_m));
        least_steep(plain_m, doubted)
    }

    /// Whether between two heights lies a jump with an unknown height on one of its sides.
    fn jumps_into_the_unknown(&self, first: usize, last: usize) -> bool {
        let from = self.breaks.partition_point(|&b| b <= first);
        let between = self.breaks.iter().skip(from).take_while(|&&b| b <= last);
        let at_m = |i: usize| self.samples.get(i).map(|s| s.at_m);
        between
            .into_iter()
            .any(|&b| at_m(b) != at_m(b.saturating_sub(1)))
    }

    /// Where the first height behind a place is.
    pub(super) fn first_behind(&self, at_m: f64) -> usize {
        self.samples.all().up_to(at_m)
    }

    fn find(&self, at_m: f64) -> Option<Between> {
        self.found(self.first_behind(at_m), at_m)
    }

    /// The same for chainages asked one behind the other: `near` is where the last one was, and then where this one is.
    pub(super) fn find_on(&self, near: &mut usize, at_m: f64) -> Option<Between> {
        *near = self.first_behind_on(*near, at_m);
        self.found(*near, at_m)
    }

    fn first_behind_on(&self, near: usize, at_m: f64) -> usize {
        let passed = |s: &Sample| s.at_m <= at_m;
        let last = near.checked_sub(1).and_then(|i| self.samples.get(i));
        if last.is_none_or(|last| passed(&last)) {
            let ahead = self.samples.part(near..self.samples.len());
            near + ahead.iter().take_while(passed).count()
        } else {
            self.first_behind(at_m)
        }
    }

    /// The least and the greatest height, as walked, that a place between two has; `near` as for [`Profile::find_on`].
    pub(super) fn extremes_m(&self, near: &mut usize, first_m: f64, last_m: f64) -> [f64; 2] {
        *near = self.first_behind_on(*near, first_m);
        let behind = self.first_behind_on(*near, last_m);
        let from = near.saturating_sub(1);
        let heights_m = (from..=behind).filter_map(|i| self.walked_m(i));
        let mut extremes_m = [f64::INFINITY, f64::NEG_INFINITY];
        for height_m in heights_m {
            if height_m < extremes_m[0] {
                extremes_m[0] = height_m;
            }
            if height_m > extremes_m[1] {
                extremes_m[1] = height_m;
            }
        }
        extremes_m
    }

    /// The place before the first height behind it.
    fn found(&self, after: usize, at_m: f64) -> Option<Between> {
        let before = after.checked_sub(1)?;
        let here = self.samples.get(before)?;
        let next = self.samples.get(after);
        let next = next.filter(|_| self.breaks.binary_search(&after).is_err());
        let share = match next {
            Some(next) => (at_m - here.at_m) / (next.at_m - here.at_m),
            None if at_m - here.at_m < 1e-6 => 0.0,
            None => return None,
        };
        Some(Between { before, share })
    }

    /// The heights that lie inside a stretch, without its ends.
    pub(super) fn inside(&self, stretch: Stretch) -> Range<usize> {
        let from = self.first_behind(stretch.from_m);
        let to = self.samples.all().before(stretch.to_m);
        from..to.max(from)
    }

    /// The heights of a stretch as walked, its ends included.
    pub(super) fn walked(&self, stretch: Stretch) -> impl Iterator<Item = Sample> {
        let walked_m = |i: usize| self.walked_m(i);
        let end = |at_m: f64| {
            let height_m = self.find(at_m)?.between(walked_m)?;
            Some(Sample { at_m, height_m })
        };
        let inside = self.inside(stretch);
        let inner = inside.filter_map(|i| {
            let at_m = self.samples.get(i)?.at_m;
            let height_m = self.walked_m(i)?;
            Some(Sample { at_m, height_m })
        });
        let (first, last) = (end(stretch.from_m), end(stretch.to_m));
        first.into_iter().chain(inner).chain(last)
    }
}

/// A place among the heights.
pub(super) struct Between {
    /// Index of the last height at or before it.
    before: usize,
    /// How much of the way to the next one.
    share: f64,
}

impl Between {
    fn between(&self, height_m: impl Fn(usize) -> Option<f64>) -> Option<f64> {
        let here = height_m(self.before)?;
        if self.share == 0.0 {
            return Some(here);
        }
        Some(here + self.share * (height_m(self.before + 1)? - here))
    }
}
