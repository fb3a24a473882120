//! Slopes along a profile: the steepest of a stretch, and what it goes down steeply.

use std::ops::Range;

use crate::{ground::profile::Profile, trip::route::Stretch};

/// A slope along the line.
///
/// ```
/// use schrund::{ground::{profile::Profile, samples::Sample}, trip::route::Stretch};
///
/// let read = [(0.0, 2000.0), (500.0, 2050.0), (550.0, 2000.0)];
/// let profile = Profile::of_samples(&read.map(|(at_m, height_m)| Sample { at_m, height_m }));
/// let whole = Stretch { from_m: 0.0, to_m: 550.0 };
/// let steep = profile.steepest(whole, 50.0).expect("heights");
/// assert_eq!((steep.deg.round(), steep.at_m), (-45.0, 525.0), "down by 50 m in 50 m");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steep {
    /// Degrees, positive uphill in walking direction.
    pub deg: f64,
    /// Chainage of the middle of the stretch it was taken over.
    pub at_m: f64,
}

/// How steep a stretch is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Steepness {
    /// The steepest slope, up or down.
    pub(crate) steepest: Option<Steep>,
    /// The steepest descent, degrees, 0 where it never goes down: for who holds what is below. `None` where heights are not
    /// known, and where nobody asked.
    pub(crate) descent_deg: Option<f64>,
}

/// Rises that differ by less count as much, metres `[ours]`: where a line is straight all windows of it do, and no last bit may
/// choose among them.
const ALIKE_M: f64 = 1e-9;

impl Profile {
    /// The steepest slope of a stretch, taken over `over_m` (over all of it where it is shorter).
    #[must_use]
    pub fn steepest(&self, stretch: Stretch, over_m: f64) -> Option<Steep> {
        let [steepest] = self.steepest_by(stretch, over_m, [f64::abs]);
        steepest
    }

    /// The steepest descent of a stretch, degrees, positive; 0 where it never goes down.
    #[must_use]
    pub fn steepest_descent_deg(&self, stretch: Stretch, over_m: f64) -> Option<f64> {
        let [descent] = self.steepest_by(stretch, over_m, [down]);
        descent.map(Steep::descent_deg)
    }

    /// Both, for little more than one of them costs.
    pub(crate) fn steepness(&self, stretch: Stretch, over_m: f64) -> Steepness {
        let [steepest, descent] = self.steepest_by(stretch, over_m, [f64::abs, down]);
        Steepness {
            steepest,
            descent_deg: descent.map(Steep::descent_deg),
        }
    }

    /// Metres that a stretch goes down in pieces steeper than `share` (rise over run), taken over `over_m`; `None` where
    /// heights are missing on one of them: how it falls there is unknown, not level.
    #[must_use]
    pub fn steep_descent_m(&self, stretch: Stretch, share: f64, over_m: f64) -> Option<f64> {
        if self.is_empty() || over_m <= 0.0 {
            return None;
        }
        let mut from_m = stretch.from_m;
        let mut steep_m = 0.0;
        while from_m < stretch.to_m {
            let to_m = (from_m + over_m).min(stretch.to_m);
            let drop_m = -self.rise_m(Stretch { from_m, to_m })?;
            if drop_m > share * (to_m - from_m) {
                steep_m += drop_m;
            }
            from_m = if to_m > from_m { to_m } else { stretch.to_m };
        }
        Some(steep_m)
    }

    /// By each way to count: the window whose rise counts most, the last of those that count as much; windows begin or end at a
    /// height.
    fn steepest_by<const WAYS: usize>(
        &self,
        stretch: Stretch,
        over_m: f64,
        ways: [fn(f64) -> f64; WAYS],
    ) -> [Option<Steep>; WAYS] {
        let over_m = over_m.min(stretch.length_m());
        if over_m <= 0.0 {
            return [None; WAYS];
        }
        let mut windows = Windows::of(self, stretch, over_m);
        let together = windows.together();
        let mut all = ways.map(|counts| Steepest::by(counts, windows.surely(counts, &together)));
        for Together { heights, within_m } in together {
            let worth = within_m.map(|between_m| all.iter().any(|one| one.may_be_in(between_m)));
            for i in heights {
                for sort in SORTS.into_iter().filter(|sort| worth[*sort]) {
                    if let Some(window) = windows.at_height(sort, i) {
                        all.iter_mut().for_each(|one| one.consider(self, window));
                    }
                }
            }
        }
        let ends = [stretch.from_m, windows.last_m];
        let ends = ends.map(|start_m| windows.from(BEGINS, start_m));
        for window in ends.into_iter().flatten() {
            all.iter_mut().for_each(|one| one.consider(self, window));
        }
        all.map(|one| one.slope(over_m))
    }
}

impl Steep {
    /// Degrees down, 0 uphill.
    fn descent_deg(self) -> f64 {
        (-self.deg).max(0.0)
    }
}

/// What a window counts at most that rises so much.
fn most_of(counts: fn(f64) -> f64, [falls_m, rises_m]: [f64; 2]) -> f64 {
    counts(falls_m).max(counts(rises_m))
}

/// What goes down counts.
fn down(rise_m: f64) -> f64 {
    -rise_m
}

/// The window whose rise counts most so far.
struct Steepest {
    counts: fn(f64) -> f64,
    best: Option<(f64, Stretch)>,
    /// What that one counts, or is known to count at least.
    most: f64,
}

impl Steepest {
    /// One window counts so much at least.
    fn by(counts: fn(f64) -> f64, surely: f64) -> Self {
        Self {
            counts,
            best: None,
            most: surely,
        }
    }

    /// Whether a window that rises so much may be it.
    fn may_be_in(&self, between_m: [f64; 2]) -> bool {
        most_of(self.counts, between_m) >= self.most - SURELY_M
    }

    /// To doubt a height makes a slope gentler, so that it is only asked for what would be steepest without.
    fn consider(&mut self, profile: &Profile, (rise_m, over): (f64, Stretch)) {
        if (self.counts)(rise_m) < self.most - ALIKE_M {
            return;
        }
        let rise_m = profile.doubted_m(rise_m, over);
        let counts = (self.counts)(rise_m);
        if counts >= self.most - ALIKE_M {
            self.best = Some((rise_m, over));
            self.most = counts;
        }
    }

    fn slope(self, over_m: f64) -> Option<Steep> {
        self.best.map(|(rise_m, over)| Steep {
            deg: (rise_m / over_m).atan().to_degrees(),
            at_m: over.from_m + over_m / 2.0,
        })
    }
}

/// Windows that begin at a height, and those that end at one.
const SORTS: [usize; 2] = [BEGINS, 1];
const BEGINS: usize = 0;

/// Close neighbours among the heights.
struct Together {
    heights: Range<usize>,
    /// Between what their windows rise, metres, by sort.
    within_m: [[f64; 2]; 2],
}

/// Heights whose windows are looked at together. Our judgement, by the benchmark: of so few close neighbours the steepest
/// window is told well by their highest and lowest.
const TOGETHER: usize = 8;
/// What is less by more than this is less, whatever was rounded, metres `[ours]`.
const SURELY_M: f64 = 1e-6;

/// Windows of one length that begin or end at a height of a stretch; each sort is asked for in walking order.
struct Windows<'p> {
    profile: &'p Profile,
    stretch: Stretch,
    over_m: f64,
    /// Where the last one starts: over all of a stretch there is one, whatever was rounded.
    last_m: f64,
    /// Of each sort, where the begin and the end of the one asked for last were.
    near: [[usize; 2]; 2],
}

impl<'p> Windows<'p> {
    fn of(profile: &'p Profile, stretch: Stretch, over_m: f64) -> Self {
        Self {
            profile,
            stretch,
            over_m,
            last_m: (stretch.to_m - over_m).max(stretch.from_m),
            near: [[profile.first_behind(stretch.from_m); 2]; 2],
        }
    }

    /// The heights of the stretch, some close neighbours at a time.
    fn together(&mut self) -> Vec<Together> {
        let all = self.profile.inside(self.stretch);
        let to = all.end;
        let some = all.step_by(TOGETHER);
        let some = some.map(|from| {
            let heights = from..(from + TOGETHER).min(to);
            let within_m = SORTS.map(|sort| self.within_m(sort, &heights));
            Together { heights, within_m }
        });
        some.collect()
    }

    /// What some window counts: the steepest of those that may be steepest. The others are told by it before they are asked
    /// one by one.
    fn surely(&mut self, counts: fn(f64) -> f64, all: &[Together]) -> f64 {
        let most = |some: &Together| {
            let of_sorts = some.within_m.map(|between_m| most_of(counts, between_m));
            of_sorts.into_iter().fold(f64::NEG_INFINITY, f64::max)
        };
        let likely = all.iter().max_by(|a, b| most(a).total_cmp(&most(b)));
        let mut steepest = Steepest::by(counts, f64::NEG_INFINITY);
        for i in likely.map_or(0..0, |some| some.heights.clone()) {
            let windows = SORTS.map(|sort| self.at_height(sort, i));
            let windows = windows.into_iter().flatten();
            windows.for_each(|window| steepest.consider(self.profile, window));
        }
        steepest.most
    }

    /// Where the window of a height starts.
    fn start_m(&self, sort: usize, i: usize) -> Option<f64> {
        let at_m = self.profile.samples().get(i)?.at_m;
        Some(if sort == BEGINS {
            at_m
        } else {
            at_m - self.over_m
        })
    }

    /// The window of a height, and what the line rises over it, no height doubted.
    fn at_height(&mut self, sort: usize, i: usize) -> Option<(f64, Stretch)> {
        let start_m = self.start_m(sort, i)?;
        self.from(sort, start_m)
    }

    fn from(&mut self, sort: usize, from_m: f64) -> Option<(f64, Stretch)> {
        let to_m = from_m + self.over_m;
        if from_m < self.stretch.from_m || from_m > self.last_m {
            return None;
        }
        let [begins, ends] = self.near.get_mut(sort)?;
        let from = self.profile.find_on(begins, from_m)?;
        let to = self.profile.find_on(ends, to_m)?;
        let rise_m = self.profile.rise_between_m(&from, &to)?;
        Some((rise_m, Stretch { from_m, to_m }))
    }

    /// Between what the windows of some heights rise, metres, no height doubted.
    fn within_m(&mut self, sort: usize, some: &Range<usize>) -> [f64; 2] {
        let last = some.end.saturating_sub(1);
        let starts_m = [some.start, last].map(|i| self.start_m(sort, i).unwrap_or_default());
        let [begins, ends] = [0, 1].map(|side| {
            let shift_m = if side == 0 { 0.0 } else { self.over_m };
            let [first_m, last_m] = starts_m.map(|start_m| start_m + shift_m);
            let near = &mut self.near[sort][side];
            self.profile.extremes_m(near, first_m, last_m)
        });
        [ends[0] - begins[1], ends[1] - begins[0]]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ground::samples::Sample;

    #[test]
    fn only_steep_descents_are_summed() {
        let samples = [(0.0, 500.0), (100.0, 470.0), (200.0, 451.0), (300.0, 500.0)];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(&samples);
        let whole = Stretch {
            from_m: 0.0,
            to_m: 300.0,
        };
        let steep = profile.steep_descent_m(whole, 0.2, 50.0).unwrap();
        assert!((steep - 30.0).abs() < 1e-9, "{steep}");
    }

    #[test]
    fn the_steepest_piece_is_found_wherever_it_lies() {
        let samples = [
            (0.0, 0.0),
            (100.0, 0.0),
            (150.0, 50.0),
            (300.0, 50.0),
            (330.0, 20.0),
            (500.0, 20.0),
        ];
        let samples = samples.map(|(at_m, height_m)| Sample { at_m, height_m });
        let profile = Profile::of_samples(&samples);
        let whole = Stretch {
            from_m: 0.0,
            to_m: 500.0,
        };
        let steep = profile.steepest(whole, 50.0).unwrap();
        assert!(
            (steep.deg - 45.0).abs() < 1e-9 && (steep.at_m - 125.0).abs() < 1e-9,
            "{steep:?}"
        );
        let down = profile.steepest_descent_deg(whole, 50.0).unwrap();
        assert!(
            (down - (30.0_f64 / 50.0).atan().to_degrees()).abs() < 1e-9,
            "{down}"
        );
    }
}
