//! How far into a leg the team is after how many minutes.
//!
//! *Model:* the rules of thumb give minutes for a whole leg, and do not add up over pieces of it. So the leg is cut into pieces
//! of at most `timed_piece_m`, each is timed alone, with its own share of the leg's ups and downs, and the leg's minutes are given
//! out in proportion; within a piece the team walks evenly. Pieces are cut by the leg alone, so a halt changes when the team
//! is where by its own minutes and by nothing else. *Valid:* for any leg; without heights it is walked evenly. *Checked:*
//! below, tests/times/inside.rs.

use crate::{
    ground::climb::Climb,
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::pace,
    trip::route::Stretch,
};

/// So far behind where a belay begins it is begun, metres: nobody measures that.
const BEHIND_M: f64 = 1e-6;

/// The most pieces of a leg, beside those that its belays begin; the pieces of one that is longer than any walk are longer.
const PIECES_MOST: f64 = 10_000.0;

/// Minutes from the begin of a leg to places on it, and from there back, rest included and halts not.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct InsideLeg {
    /// By chainage, the begin and the end of the leg among them.
    reached: Vec<Reached>,
}

/// A place on a leg, and how long it takes to it.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Reached {
    /// Chainage, metres.
    at_m: f64,
    /// Minutes from the begin of the leg.
    out_min: f64,
    /// Minutes back to it.
    back_min: f64,
    /// Minutes more for who turns here, both ways: they make whole belays, as many as are begun.
    turn_min: f64,
}

impl InsideLeg {
    pub(super) fn of(leg: &RopedLeg<'_>, rules: &Rules) -> Self {
        let ends = ends(leg.sketch.stretch, rules[Rule::TimedPieceM]);
        let climbing = leg.stage.met.under.line.climbing();
        let threshold_m = rules[Rule::AscentThresholdM];
        let climbs = climbing.climbed(leg.sketch.stretch, threshold_m, &ends);
        let climb = leg.footing.climb.unwrap_or_default();
        let roped = leg.sketch.roped;
        Self::paced(&ends, climb, &climbs, Going { roped, rules })
    }

    /// With the ups and downs as far as each end of the pieces.
    fn paced(ends: &[f64], climb: Climb, climbs: &[Climb], going: Going<'_>) -> Self {
        let pieces = || ends.windows(2).zip(climbs.windows(2));
        let length_m = match (ends.first(), ends.last()) {
            (Some(first_m), Some(last_m)) => last_m - first_m,
            _ => 0.0,
        };
        let minutes = |of: fn(Climb) -> Climb| {
            let each = pieces().map(|(ends, climbs)| match (ends, climbs) {
                ([from_m, to_m], [from, to]) => {
                    going.with_rest_min(to_m - from_m, of(to.since(*from)))
                }
                _ => 0.0,
            });
            let each: Vec<f64> = each.collect();
            up_to(going.with_rest_min(length_m, of(climb)), &each)
        };
        let both = minutes(|climb| climb)
            .into_iter()
            .zip(minutes(Climb::reversed));
        let reached = ends.iter().zip(both);
        let reached = reached.map(|(&at_m, (out_min, back_min))| Reached {
            at_m,
            out_min,
            back_min,
            turn_min: 0.0,
        });
        Self {
            reached: reached.collect(),
        }
    }

    /// The same with belays on stretches of it, out and back, given out evenly over each; those at a single place are made behind it.
    pub(super) fn with(&self, belays: &[Belayed]) -> Self {
        let (Some(first), Some(last)) = (self.reached.first(), self.reached.last()) else {
            return self.clone();
        };
        let begun = belays.iter().flat_map(Belayed::begins_m);
        let inside = begun.filter(|at_m| first.at_m < *at_m && *at_m < last.at_m);
        let mut reached = self.reached.clone();
        reached.extend(inside.map(|at_m| self.at(at_m)));
        reached.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
        reached.dedup_by(|a, b| a.at_m <= b.at_m);
        for r in &mut reached {
            // What is asked for at its very end is made on it too.
            let at_m = if r.at_m < last.at_m {
                r.at_m
            } else {
                f64::INFINITY
            };
            let out_min: f64 = belays.iter().map(|b| b.upto_min(at_m)).sum();
            let begun_min: f64 = belays.iter().map(|b| b.begun_min(at_m)).sum();
            r.out_min += out_min;
            r.back_min += out_min;
            r.turn_min += 2.0 * (begun_min - out_min);
        }
        Self { reached }
    }

    /// The same with the way back of another one over the same leg, and no more for who turns.
    pub(super) fn back_as(&self, other: &Self) -> Self {
        let reached = self.reached.iter().map(|out| Reached {
            back_min: other.back_min(out.at_m),
            turn_min: 0.0,
            ..*out
        });
        Self {
            reached: reached.collect(),
        }
    }

    /// Minutes from the begin of the leg to a place on it.
    pub(crate) fn out_min(&self, at_m: f64) -> f64 {
        self.at(at_m).out_min
    }

    /// Minutes more for who turns at a place on the leg, both ways.
    pub(crate) fn turn_min(&self, at_m: f64) -> f64 {
        self.at(at_m).turn_min
    }

    /// Minutes from a place on the leg back to its begin.
    pub(crate) fn back_min(&self, at_m: f64) -> f64 {
        self.at(at_m).back_min
    }

    /// Minutes over a stretch of the leg.
    pub(crate) fn over_min(&self, stretch: Stretch) -> f64 {
        self.out_min(stretch.to_m) - self.out_min(stretch.from_m)
    }

    /// The same the other way round.
    pub(crate) fn back_over_min(&self, stretch: Stretch) -> f64 {
        self.back_min(stretch.to_m) - self.back_min(stretch.from_m)
    }

    /// How far the team comes from the begin of a stretch in so many minutes, at most to its end.
    pub(crate) fn out_in(&self, stretch: Stretch, min: f64) -> f64 {
        let from_min = self.out_min(stretch.from_m);
        self.come_in(stretch, from_min + min.max(0.0), |r| r.out_min)
    }

    /// How far it comes so that it is back at the begin of the stretch after so many minutes, at most to its end.
    pub(crate) fn out_and_back_in(&self, stretch: Stretch, min: f64) -> f64 {
        let from = self.at(stretch.from_m);
        let until_min = from.out_min + from.back_min + min.max(0.0);
        self.come_in(stretch, until_min, |r| r.out_min + r.back_min + r.turn_min)
    }

    fn come_in(&self, stretch: Stretch, until_min: f64, of: fn(&Reached) -> f64) -> f64 {
        let after = self.reached.partition_point(|r| of(r) <= until_min);
        let before = after.checked_sub(1).and_then(|i| self.reached.get(i));
        let at_m = match (before, self.reached.get(after)) {
            (Some(before), Some(next)) => {
                let share = (until_min - of(before)) / (of(next) - of(before));
                before.at_m + share * (next.at_m - before.at_m)
            }
            (None, _) => stretch.from_m,
            (_, None) => stretch.to_m,
        };
        at_m.clamp(stretch.from_m, stretch.to_m.max(stretch.from_m))
    }

    fn at(&self, at_m: f64) -> Reached {
        let after = self.reached.partition_point(|r| r.at_m <= at_m);
        let before = after.checked_sub(1).and_then(|i| self.reached.get(i));
        match (before, self.reached.get(after)) {
            (Some(&before), Some(next)) => {
                let share = (at_m - before.at_m) / (next.at_m - before.at_m);
                let between =
                    |of: fn(&Reached) -> f64| of(&before) + share * (of(next) - of(&before));
                Reached {
                    at_m,
                    out_min: between(|r| r.out_min),
                    back_min: between(|r| r.back_min),
                    turn_min: between(|r| r.turn_min),
                }
            }
            (Some(&only), None) | (None, Some(&only)) => only,
            (None, None) => Reached {
                at_m,
                out_min: 0.0,
                back_min: 0.0,
                turn_min: 0.0,
            },
        }
    }
}

/// The begins of the pieces of a leg, and its end.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a whole number of pieces, and a leg has few"
)]
fn ends(whole: Stretch, piece_m: f64) -> Vec<f64> {
    let pieces = (whole.length_m() / piece_m).ceil().clamp(1.0, PIECES_MOST) as usize;
    let at_m = |i: usize| whole.from_m + whole.length_m() * (i as f64 / pieces as f64);
    (0..pieces).map(at_m).chain([whole.to_m]).collect()
}

/// Belays on a stretch of a leg.
#[derive(Clone, Copy, Debug)]
pub(super) struct Belayed {
    pub(super) on: Stretch,
    pub(super) belays: f64,
    /// Minutes that each takes.
    pub(super) each_min: f64,
}

impl Belayed {
    /// How many are made as far as a place.
    fn upto(&self, at_m: f64) -> f64 {
        match self.on.length_m() > 0.0 {
            true => self.belays * ((at_m - self.on.from_m) / self.on.length_m()).clamp(0.0, 1.0),
            false if at_m > self.on.from_m => self.belays,
            false => 0.0,
        }
    }

    /// Where each begins, and just behind that: there it is begun.
    fn begins_m(&self) -> impl Iterator<Item = f64> {
        let (from_m, each_m) = (self.on.from_m, self.on.length_m() / self.belays.max(1.0));
        let places = std::iter::successors(Some(0.0), |k| Some(k + 1.0));
        let places = places.take_while(|k| *k < self.belays);
        places.flat_map(move |k| [0.0, BEHIND_M].map(|m| from_m + k * each_m + m))
    }

    fn upto_min(&self, at_m: f64) -> f64 {
        self.upto(at_m) * self.each_min
    }

    /// The same of all that are begun.
    fn begun_min(&self, at_m: f64) -> f64 {
        (self.upto(at_m) - 1e-9).ceil().max(0.0) * self.each_min
    }
}

/// How a leg is walked.
#[derive(Clone, Copy)]
struct Going<'a> {
    roped: bool,
    rules: &'a Rules,
}

impl Going<'_> {
    /// Minutes for a piece, rest included.
    fn with_rest_min(self, length_m: f64, climb: Climb) -> f64 {
        let walking_min = pace::walking_min(length_m, climb, self.roped, self.rules);
        walking_min + pace::break_min(walking_min, self.rules)
    }
}

/// The minutes of a whole as far as each end of its pieces, in proportion to what each takes alone.
fn up_to(whole_min: f64, each_min: &[f64]) -> Vec<f64> {
    let all_min: f64 = each_min.iter().sum();
    let before_min = each_min.iter().scan(0.0, |sum_min, min| {
        let before_min = *sum_min;
        *sum_min += min;
        Some(before_min)
    });
    let share = |before_min: f64| match all_min > 0.0 {
        true => whole_min * before_min / all_min,
        false => 0.0,
    };
    before_min.map(share).chain([whole_min]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        ground::climb::{Climbed, at_places},
        practice::set::Source,
    };

    /// 100 m in ten minutes out and twenty back, with four belays of ten minutes on its last 80 m.
    fn belayed() -> [InsideLeg; 2] {
        let at = |at_m: f64| Reached {
            at_m,
            out_min: at_m / 10.0,
            back_min: at_m / 5.0,
            turn_min: 0.0,
        };
        let bare = InsideLeg {
            reached: vec![at(0.0), at(100.0)],
        };
        let belays = Belayed {
            on: Stretch {
                from_m: 20.0,
                to_m: 100.0,
            },
            belays: 4.0,
            each_min: 10.0,
        };
        [bare.with(&[belays]), bare]
    }

    #[test]
    fn who_passes_makes_belays_evenly_and_who_turns_whole_ones() {
        let [leg, _] = belayed();
        let is = |got: f64, want: f64| assert!((got - want).abs() < 1e-3, "{got}, not {want}");
        // Half a belay beyond the first: one and a half each way, two by who turns there.
        is(leg.out_min(50.0), 5.0 + 15.0);
        is(leg.back_min(50.0), 10.0 + 15.0);
        is(leg.turn_min(50.0), 2.0 * 5.0);
        for edge_m in [0.0, 20.0, 40.0, 60.0, 80.0, 100.0] {
            is(leg.turn_min(edge_m), 0.0);
        }
        let whole = Stretch {
            from_m: 0.0,
            to_m: 100.0,
        };
        // What 40 m and two belays take is missed by a minute: one is enough up to where the second begins.
        is(leg.out_and_back_in(whole, 4.0 + 8.0 + 40.0 - 1.0), 40.0);
        is(leg.out_and_back_in(whole, 5.0 + 10.0 + 40.0), 50.0);
    }

    #[test]
    fn a_way_back_without_belays_is_that_of_the_bare_leg() {
        let [belayed, bare] = belayed();
        let unbelayed = belayed.back_as(&bare);
        for at_m in [0.0, 10.0, 20.0, 33.0, 50.0, 99.0, 100.0] {
            let back_min = unbelayed.back_min(at_m);
            assert!((back_min - bare.back_min(at_m)).abs() < 1e-9, "{at_m}");
            assert!((unbelayed.out_min(at_m) - belayed.out_min(at_m)).abs() < 1e-9);
            assert!(unbelayed.turn_min(at_m).abs() < 1e-9);
        }
    }

    const WHOLE: Stretch = Stretch {
        from_m: 1000.0,
        to_m: 3000.0,
    };

    fn unroped(rules: &Rules) -> Going<'_> {
        let roped = false;
        Going { roped, rules }
    }

    fn climbed(places: &[(f64, f64)]) -> Vec<Climbed> {
        let climbed = places.iter().map(|&(at_m, ascent_m)| Climbed {
            at_m,
            climb: Climb {
                ascent_m,
                ..Climb::default()
            },
        });
        climbed.collect()
    }

    fn paced(climbed: &[Climbed]) -> InsideLeg {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let climb = climbed.last().map(|c| c.climb).unwrap_or_default();
        let ends = ends(WHOLE, rules[Rule::TimedPieceM]);
        let climbs = at_places(climbed.iter().copied(), &ends);
        InsideLeg::paced(&ends, climb, &climbs, unroped(&rules))
    }

    #[track_caller]
    fn near(got: f64, want: f64) {
        assert!((got - want).abs() < 1e-9, "{got} for {want}");
    }

    /// By DIN 33466 the first kilometre with 300 m up takes 60 + 7.5 min, the flat one 15 min: 82.5 alone. The whole takes
    /// 60 + 15 = 75, so the first takes 75 · 67.5 / 82.5 = 61.36 min, and with rest of 5 min an hour 66.48.
    #[test]
    fn a_leg_that_climbs_first_takes_most_of_its_time_first() {
        let inside = paced(&climbed(&[(1000.0, 0.0), (2000.0, 300.0), (3000.0, 300.0)]));
        let rested = 65.0 / 60.0;
        near(inside.out_min(2000.0), rested * 75.0 * 67.5 / 82.5);
        near(inside.out_min(1500.0), rested * 75.0 * 33.75 / 82.5);
        near(inside.out_min(3000.0), rested * 75.0);
        near(inside.out_in(WHOLE, rested * 75.0 * 67.5 / 82.5), 2000.0);
        near(inside.back_min(3000.0), inside.back_over_min(WHOLE));
    }

    #[test]
    fn without_heights_a_leg_is_walked_evenly() {
        let inside = paced(&[]);
        let (half, all) = (inside.out_min(2000.0), inside.out_min(3000.0));
        near(2.0 * half, all);
        near(inside.out_and_back_in(WHOLE, all), 2000.0);
        near(inside.out_and_back_in(WHOLE, 3.0 * all), 3000.0);
        near(inside.out_in(WHOLE, -1.0), 1000.0);
    }

    #[test]
    fn a_leg_without_length_takes_no_time() {
        let point = Stretch {
            from_m: 5.0,
            to_m: 5.0,
        };
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let ends = ends(point, rules[Rule::TimedPieceM]);
        let inside = InsideLeg::paced(&ends, Climb::default(), &[], unroped(&rules));
        near(inside.out_min(5.0) + inside.back_min(5.0), 0.0);
        near(inside.out_in(point, 3.0), 5.0);
    }
}
