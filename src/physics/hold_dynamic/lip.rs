//! Elastic rope that slides over a lip with friction and brake knots.
//!
//! *Model:* two weightless springs of modulus EA that exchange rope over the lip. It slides towards the faller
//! when T_v > λ(T_h + F_k), back when T_h > λT_v, and sticks between. F_k is what the knot at the lip bears, from
//! where it meets the lip until it has been dragged through the bite.
//! *Valid:* λ ≥ 1, rope left on both sides. *Error:* none for a path that goes one way within a step.
//! *Source:* capstan and Hooke; the amount slid solves a quadratic, `[derived]`.
//! *Checked:* tests/physics (energy never created, length of rope kept, fixed holder at λ = 1).

use super::{fall::GapSide, row::positive, wrap::Lip};

/// The faller's span.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct OverLip {
    modulus_n: f64,
    /// Unstretched rope of the span, m.
    total_m: f64,
    /// Half its inverse, 1/m.
    half_per_m: f64,
    /// Unstretched rope beyond the lip, m.
    past_m: f64,
    /// Where a bite begins or ends and what the lip bears from there on, in order.
    bites: Vec<(f64, f64)>,
    reach_m: f64,
    back_m: f64,
    /// Rope that went over the lip last time, m; kept with the book of energy only.
    slid_m: f64,
    /// Tension at the faller, N.
    pub(super) victim_n: f64,
    /// Tension at the first holder, N.
    pub(super) holder_n: f64,
    peak_victim_n: f64,
}

impl OverLip {
    /// The span at rest, `past_m` of it beyond the lip.
    #[must_use]
    pub(super) fn new(side: &GapSide, past_m: f64, modulus_n: f64) -> Self {
        let total_m = side.spacing_m + side.slack_m;
        Self {
            modulus_n,
            total_m,
            half_per_m: 0.5 / total_m,
            past_m,
            bites: bites(side, past_m),
            reach_m: past_m,
            back_m: total_m - past_m,
            slid_m: 0.0,
            victim_n: 0.0,
            holder_n: 0.0,
            peak_victim_n: 0.0,
        }
    }

    /// Largest relative stretch so far.
    #[must_use]
    pub(super) fn peak_stretch(&self) -> f64 {
        self.peak_victim_n / self.modulus_n
    }

    /// Lets the rope find its place when the holder is `back_m` behind the lip and the faller `reach_m` beyond.
    #[inline]
    pub(super) fn settle(&mut self, back_m: f64, reach_m: f64, lip: Lip) {
        self.back_m = back_m;
        self.reach_m = reach_m;
        self.pull();
        if self.bites.is_empty() {
            self.slide(lip);
        } else {
            self.slide_by_bites(lip.factor);
        }
        if self.victim_n > self.peak_victim_n {
            self.peak_victim_n = self.victim_n;
        }
    }

    /// Slides where nothing but friction bears: the tensions follow from the balance itself.
    #[inline]
    fn slide(&mut self, lip: Lip) {
        if self.victim_n > lip.factor * self.holder_n {
            let even = self.balance(self.back_m, self.reach_m, lip.factor, 0.0);
            if even.rest_m > self.past_m {
                self.past_m = even.rest_m;
                self.victim_n = self.modulus_n * even.stretch;
                self.holder_n = self.victim_n * lip.leaves;
            }
        } else if self.holder_n > lip.factor * self.victim_n {
            let even = self.balance(self.reach_m, self.back_m, lip.factor, 0.0);
            let past_m = self.total_m - even.rest_m;
            if past_m < self.past_m {
                self.past_m = past_m;
                self.holder_n = self.modulus_n * even.stretch;
                self.victim_n = self.holder_n * lip.leaves;
            }
        }
    }

    fn slide_by_bites(&mut self, lip: f64) {
        if self.victim_n > lip * (self.holder_n + self.bears_n()) {
            self.slide_out(lip);
            self.pull();
        }
        if self.holder_n > lip * self.victim_n {
            let even = self.balance(self.reach_m, self.back_m, lip, 0.0);
            self.past_m = self.past_m.min(self.total_m - even.rest_m);
            self.pull();
        }
    }

    /// Rope beyond the lip, m, and what friction and knots bear, N: for the book of energy.
    pub(super) fn standing(&self) -> (f64, f64) {
        (self.past_m, self.drag_n())
    }

    /// What friction and knots took since the rope stood so before it settled, J.
    pub(super) fn lost_j(&mut self, (from_m, before_n): (f64, f64)) -> f64 {
        let slid_m = self.past_m - from_m;
        let goes_on = slid_m * self.slid_m > 0.0;
        self.slid_m = slid_m;
        let last_n = self.drag_n();
        let mean_n = if goes_on {
            0.5 * (before_n + last_n)
        } else {
            last_n
        };
        slid_m * mean_n
    }

    /// Brings the tensions up to date with the rope on both sides.
    fn pull(&mut self) {
        self.victim_n = self.tension_n(self.reach_m, self.past_m);
        self.holder_n = self.tension_n(self.back_m, self.total_m - self.past_m);
    }

    /// What a knot at the lip bears, N.
    fn bears_n(&self) -> f64 {
        let reached = self.bites.partition_point(|b| b.0 <= self.past_m);
        let last = reached.checked_sub(1).and_then(|i| self.bites.get(i));
        last.map_or(0.0, |b| b.1)
    }

    /// What friction and knots bear: the difference of both tensions, each with the stretched rope it carries over.
    fn drag_n(&self) -> f64 {
        let carried = |n: f64| n + 0.5 * n * n / self.modulus_n;
        carried(self.victim_n) - carried(self.holder_n)
    }

    /// Energy in the stretched rope, J.
    #[must_use]
    pub(super) fn stored_j(&self) -> f64 {
        let spring = |long_m: f64, rest_m: f64| {
            let over_m = (long_m - rest_m).max(0.0);
            0.5 * self.modulus_n * over_m * over_m / rest_m
        };
        spring(self.reach_m, self.past_m) + spring(self.back_m, self.total_m - self.past_m)
    }

    fn tension_n(&self, long_m: f64, rest_m: f64) -> f64 {
        self.modulus_n * positive((long_m - rest_m) / rest_m)
    }

    /// Slides towards the faller, from one end of a bite to the next.
    fn slide_out(&mut self, lip: f64) {
        for _ in 0..=self.bites.len() {
            let next = self.bites.iter().find(|b| b.0 > self.past_m);
            let end = next.map_or(f64::INFINITY, |b| b.0);
            let bears = self.bears_n() / self.modulus_n;
            let to_m = self.balance(self.back_m, self.reach_m, lip, bears).rest_m;
            if to_m < end {
                self.past_m = self.past_m.max(to_m);
                return;
            }
            self.past_m = end;
        }
    }

    /// The pulling side once T_pull = λ(T_other + F): the rope beyond that would slide has slid.
    ///
    /// `other_m` and `pull_m` are the straight distances on both sides, `bears` is F/EA.
    #[inline]
    fn balance(&self, other_m: f64, pull_m: f64, lip: f64, bears: f64) -> Even {
        let total_m = self.total_m;
        let loose_m = pull_m / (1.0 + lip * bears);
        if other_m <= total_m - loose_m {
            return Even {
                rest_m: loose_m,
                stretch: lip * bears,
            };
        }
        let square = 1.0 - lip * (1.0 - bears);
        let linear = square * total_m + pull_m + lip * other_m;
        let root = positive(linear * linear - 4.0 * square * pull_m * total_m).sqrt();
        Even {
            rest_m: 2.0 * pull_m * total_m / (linear + root),
            stretch: positive((linear + root) * self.half_per_m - 1.0),
        }
    }
}

/// A side that pulls no more than the lip bears.
struct Even {
    /// Its unstretched rope, m.
    rest_m: f64,
    /// How much longer than that it is, as a share.
    stretch: f64,
}

/// Where knots meet the lip and leave it; those beyond it before the rope is taut never do. Bites that run into each other add up.
fn bites(side: &GapSide, past_m: f64) -> Vec<(f64, f64)> {
    if side.knot_n <= 0.0 || side.bite_m <= 0.0 {
        return Vec::new();
    }
    let mut edges: Vec<(f64, f64)> = side
        .knots_m
        .iter()
        .filter(|at| **at > past_m + side.slack_m)
        .flat_map(|&at| [(at, side.knot_n), (at + side.bite_m, -side.knot_n)])
        .collect();
    edges.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut bears_n = 0.0;
    for edge in &mut edges {
        bears_n += edge.1;
        edge.1 = f64::max(bears_n, 0.0);
    }
    edges
}

#[cfg(test)]
mod tests {
    use super::*;

    fn span(knots_m: Vec<f64>) -> OverLip {
        let side = GapSide {
            holders_kg: vec![80.0],
            spacing_m: 12.0,
            slack_m: 0.0,
            beyond_m: 2.0,
            slope_rad: 0.0,
            lip_mu: 0.0,
            mu_before: 0.3,
            mu_after: 0.6,
            knots_m,
            knot_n: 400.0,
            bite_m: 0.8,
        };
        OverLip::new(&side, 2.0, 20_000.0)
    }

    #[test]
    fn the_lip_never_bears_more_than_it_can_either_way() {
        let lip = 1.7;
        let mut rope = span(vec![]);
        for step in 0..400_u32 {
            // Faller and holder to and fro at different paces: out, back and loose all come up.
            let t = f64::from(step) / 10.0;
            rope.settle(
                9.7 + 0.5 * (0.7 * t).sin(),
                2.5 + 0.6 * t.sin(),
                Lip::new(lip),
            );
            let (front_n, back_n) = (rope.victim_n, rope.holder_n);
            assert!(front_n <= lip * back_n + 1e-6, "out: {front_n} {back_n}");
            assert!(back_n <= lip * front_n + 1e-6, "back: {front_n} {back_n}");
        }
    }

    #[test]
    fn a_knot_bears_its_force_through_its_bite_and_not_beyond() {
        let lip = 1.5;
        let mut rope = span(vec![3.0]);
        let (mut biting, mut free) = (0, 0);
        for step in 0..700_u32 {
            // Both go the same way: the rope runs out over the lip, taut.
            let way_m = f64::from(step) / 100.0;
            rope.settle(10.0 - way_m, 2.5 + way_m, Lip::new(lip));
            let bears_n = rope.victim_n / lip - rope.holder_n;
            let past_m = rope.past_m;
            if past_m > 3.01 && past_m < 3.79 {
                assert!((bears_n - 400.0).abs() < 1e-6, "{bears_n} N at {past_m} m");
                biting += 1;
            } else if !(2.99..=3.81).contains(&past_m) {
                assert!(bears_n.abs() < 1e-6, "{bears_n} N at {past_m} m");
                free += 1;
            }
        }
        assert!(biting > 50 && free > 200, "{biting} biting, {free} free");
    }
}
