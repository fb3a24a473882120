//! Heights that dip or stick out alone: one noisy height decides nothing.
//!
//! *Model:* a height stands alone where it is lower or higher than both heights beside it, neither of them farther off than
//! `lone_height_m`, and than these flanks drawn on from the height behind each: the tip of a ridge that its flanks lead up to
//! does not stick out. Each in turn is brought towards the straight line between these two by twice what it sticks out, at most
//! onto that line: a dip of a hand is a dip of a hand, a dip of twenty metres goes. The least steep answer of all stands,
//! and the ground counts as level where two disagree which way it falls. *Valid:* for slopes by heights that were
//! measured one by one; those of a raster are no such heights. What falls or rises from height to height is never taken
//! for noise, so a step stays as steep as it is, and so does a dip that two heights know. *Checked:* below, in
//! `gradient.rs`, in tests/ground/lone.rs and by the second implementation.

use crate::trip::route::Stretch;

/// One such height, and what it would be worth if it were not alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lone {
    /// From the height before it to the one behind.
    span: Stretch,
    at_m: f64,
    /// Metres by which it is raised.
    raised_m: f64,
}

impl Lone {
    /// The middle one of three heights in a row, each with its chainage, if it stands alone; the heights before and behind
    /// these, where there are such, are asked for only of one that is lower or higher than both.
    pub(super) fn of(
        three: [(f64, f64); 3],
        outer: impl FnOnce() -> [Option<(f64, f64)>; 2],
        within_m: f64,
    ) -> Option<Self> {
        let [(from_m, before_m), (at_m, here_m), (to_m, after_m)] = three;
        let (back_m, ahead_m) = (at_m - from_m, to_m - at_m);
        let is_near = |edge_m: f64| edge_m > 0.0 && edge_m <= within_m;
        let (least_m, greatest_m) = (before_m.min(after_m), before_m.max(after_m));
        let is_between = (least_m..=greatest_m).contains(&here_m);
        if is_between || !is_near(back_m) || !is_near(ahead_m) {
            return None;
        }
        let flank = |far: Option<(f64, f64)>, (foot_at_m, foot_m): (f64, f64)| {
            let (far_at_m, far_m) = far.filter(|far| is_near((foot_at_m - far.0).abs()))?;
            Some(foot_m + (foot_m - far_m) / (foot_at_m - far_at_m) * (at_m - foot_at_m))
        };
        let [far_back, far_ahead] = outer();
        let flanks = [flank(far_back, three[0]), flank(far_ahead, three[2])];
        let flanks = || flanks.into_iter().flatten();
        let over_m = here_m - flanks().fold(greatest_m, f64::max);
        let under_m = flanks().fold(least_m, f64::min) - here_m;
        let out_m = over_m.max(under_m);
        if out_m <= 0.0 {
            return None;
        }
        let line_m = before_m + back_m / (back_m + ahead_m) * (after_m - before_m);
        let most_m = 2.0 * out_m;
        Some(Self {
            span: Stretch { from_m, to_m },
            at_m,
            raised_m: (line_m - here_m).clamp(-most_m, most_m),
        })
    }

    /// By how much the line is higher at a place with this height raised.
    pub(super) fn raises_m(&self, at_m: f64) -> f64 {
        let foot_m = if at_m < self.at_m {
            self.span.from_m
        } else {
            self.span.to_m
        };
        let share = (at_m - foot_m) / (self.at_m - foot_m);
        self.raised_m * share.clamp(0.0, 1.0)
    }

    /// ∫(x − c)·h dx of what it raises over a window, c being the middle of the window.
    pub(super) fn moment(&self, window: Stretch) -> f64 {
        let middle_m = f64::midpoint(window.from_m, window.to_m);
        let at = |at_m: f64| (at_m - middle_m) * self.raises_m(at_m);
        let flank = |from_m: f64, to_m: f64| {
            let (from_m, to_m) = (from_m.max(window.from_m), to_m.min(window.to_m));
            let width_m = (to_m - from_m).max(0.0);
            // By Simpson's rule, exact for it.
            width_m / 6.0 * (at(from_m) + 4.0 * at(f64::midpoint(from_m, to_m)) + at(to_m))
        };
        flank(self.span.from_m, self.at_m) + flank(self.at_m, self.span.to_m)
    }
}

/// The slope that stands whichever answer is believed: the least steep, level where they disagree which way it falls.
pub(super) fn least_steep(plain: f64, others: impl Iterator<Item = f64>) -> f64 {
    let gentler = |least: f64, next: f64| {
        if least * next <= 0.0 {
            0.0
        } else if next.abs() < least.abs() {
            next
        } else {
            least
        }
    };
    others.fold(plain, gentler)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By how much each height is raised that stands alone, heights every 20 m.
    fn raised(heights: &[f64], within_m: f64) -> Vec<(f64, f64)> {
        let places = heights.iter().enumerate();
        let places: Vec<(f64, f64)> = places.map(|(i, h)| (20.0 * i as f64, *h)).collect();
        let threes = places.windows(3).enumerate();
        let outer = |i: usize| places.get(i).copied();
        let all = threes.filter_map(|(i, t)| {
            let before = i.checked_sub(1).and_then(outer);
            Lone::of([t[0], t[1], t[2]], || [before, outer(i + 3)], within_m)
        });
        all.map(|l| (l.at_m, l.raises_m(l.at_m))).collect()
    }

    #[test]
    fn a_dip_or_a_spike_goes_and_a_slope_a_step_and_a_wide_dip_stay() {
        let none: [(f64, f64); 0] = [];
        assert_eq!(raised(&[0.0, 0.0, -20.0, 0.0, 0.0], 30.0), [(40.0, 20.0)]);
        assert_eq!(raised(&[0.0, 0.0, 20.0, 4.0, 4.0], 30.0), [(40.0, -18.0)]);
        assert_eq!(raised(&[0.0, 0.0, 20.0, 20.0], 30.0), none, "a step");
        assert_eq!(raised(&[0.0, -20.0, -20.0, 0.0], 30.0), none, "two of them");
        assert_eq!(raised(&[0.0, 7.0, 9.0, 21.0], 30.0), none, "uphill");
        assert_eq!(raised(&[0.0, -20.0, 0.0], 19.0), none, "too far apart");
        assert_eq!(raised(&[0.0, -20.0, 0.0], 0.0), none, "not asked for");
        assert_eq!(raised(&[-20.0, 0.0, -20.0], 30.0), [(20.0, -20.0)]);
    }

    #[test]
    fn the_tip_of_a_ridge_that_its_flanks_lead_up_to_stays() {
        let none: [(f64, f64); 0] = [];
        assert_eq!(raised(&[0.0, 9.0, 18.0, 27.0, 18.0, 9.0], 30.0), none);
        assert_eq!(raised(&[0.0, -9.0, -18.0, -9.0, 0.0], 30.0), none);
        // A metre more than the flanks account for.
        assert_eq!(raised(&[0.0, 9.0, 19.0, 9.0, 0.0], 30.0), [(40.0, -2.0)]);
    }

    #[test]
    fn it_is_moved_by_no_more_than_twice_what_it_sticks_out() {
        let top_of_a_step = [0.0, 0.0, 20.5, 20.0, 20.0];
        assert_eq!(raised(&top_of_a_step, 30.0), [(40.0, -1.0)]);
    }

    #[test]
    fn the_least_steep_answer_stands() {
        for (plain, others, want) in [
            (0.5, &[0.6, 0.2, 0.3][..], 0.2),
            (-0.5, &[-0.6, -0.4], -0.4),
            // They disagree.
            (0.5, &[-0.1, 0.4], 0.0),
            (0.5, &[], 0.5),
        ] {
            let got = least_steep(plain, others.iter().copied());
            assert!((got - want).abs() < 1e-12, "{plain}, {others:?}: {got}");
        }
    }
}
