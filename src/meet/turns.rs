//! Where a line turns back on itself.
//!
//! Two people walk away from a place, one on along the line and one back along it, as far as they can while they stay
//! near each other. Where they come far, the line goes out and back and turns there. Hairpins end after a few steps.

use crate::{
    geometry::{LonLat, frame::Frame},
    trip::route::{Stage, Stretch},
};

/// A place where a line turns back on itself.
///
/// ```
/// use schrund::{geometry::LonLat, meet::turns::turns, trip::route::Stage};
///
/// let mut stage = Stage::new(None);
/// for lat in [46.500, 46.510, 46.500] {
///     stage.push(LonLat::new(8.0, lat), None);
/// }
/// let [turn] = turns(&stage, 20.0, 300.0)[..] else { panic!("one summit") };
/// assert!((turn.at_m - stage.length_m() / 2.0).abs() < 0.001, "at the summit: {turn:?}");
/// assert!((turn.back_m - turn.at_m).abs() < 20.0, "the way back is the way up: {turn:?}");
/// assert!(turns(&stage, 20.0, 1200.0).is_empty(), "no turn where so much is asked for");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnBack {
    /// Chainage, metres.
    pub at_m: f64,
    /// How far the line then runs back along itself, metres.
    pub back_m: f64,
}

/// Nearer than this nothing is said to lie along a line, metres: no receiver is so good. Our judgement.
const LEAST_NEAR_M: f64 = 2.0;
/// Steps between two places from which nearness says something: neighbours on a line are always near. Our judgement.
const APART: usize = 5;
/// Steps after which a place is tried again where the line did not turn. Our judgement.
const NEXT_TRY: usize = 5;
/// Steps after which a way back is followed no further: whoever goes on is told of so many and the last one. Our judgement.
const MOST_STEPS: usize = 10_000;

/// What a step may be longer in a flat frame some hundred metres away, as a factor: `frame` is off by less. Our judgement.
const LONGER: f64 = 1.01;

/// A piece longer than this is no walk, and is not followed, metres: a receiver that jumps about the globe. Our judgement.
const LONGEST_M: f64 = 1e6;

/// Where a stage turns back on itself and lies within `near_m` metres of itself for more than `least_m`, in walking order.
///
/// Receivers wander and people take shortcuts: where the two ways part and meet again within `least_m` they go on as one.
/// Who stands about goes nowhere: the way back has to come half of `least_m` away. Each piece of the line counts for itself,
/// since nothing is known of what lies between them.
#[must_use]
pub fn turns(stage: &Stage, near_m: f64, least_m: f64) -> Vec<TurnBack> {
    if near_m < LEAST_NEAR_M {
        return Vec::new();
    }
    let pieces = stage.segments().filter_map(|range| {
        let chainage = stage.chainage_m().get(range)?;
        let (from_m, to_m) = (*chainage.first()?, *chainage.last()?);
        Some(Stretch { from_m, to_m })
    });
    let walked = |length_m: f64| length_m > 2.0 * least_m && length_m <= LONGEST_M;
    let found = pieces.filter(|piece| walked(piece.length_m()));
    let found = found.flat_map(|piece| Steps::along(stage, piece, near_m, least_m).turns());
    found.collect()
}

/// Places along a piece of a stage, evenly spread from its begin.
struct Steps<'s> {
    stage: &'s Stage,
    piece: Stretch,
    near_m: f64,
    least_m: f64,
    step_m: f64,
    places: Vec<LonLat>,
    /// One at each place.
    frames: Vec<Frame>,
}

/// Two places near each other, by their steps: one on the way out, one on the way back.
#[derive(Clone, Copy)]
struct Pair {
    out: usize,
    back: usize,
}

/// A way back, from the first two places near each other to the last.
#[derive(Clone, Copy)]
struct WayBack {
    first: Pair,
    last: Pair,
}

impl WayBack {
    /// Whether a pair belongs to the same turn, which lies between the first two places.
    fn holds(&self, pair: Pair) -> bool {
        let out = self.last.out..=self.first.back;
        let back = self.first.out..=self.last.back;
        out.contains(&pair.out) && back.contains(&pair.back)
    }
}

impl<'s> Steps<'s> {
    fn along(stage: &'s Stage, piece: Stretch, near_m: f64, least_m: f64) -> Self {
        let step_m = near_m / 2.0;
        let steps = (0..).map(|step| piece.from_m + step_m * count(step));
        let places = steps.take_while(|at_m| *at_m < piece.to_m);
        let places: Vec<LonLat> = places.filter_map(|at_m| stage.at(at_m)).collect();
        Self {
            frames: places.iter().map(|at| Frame::at(*at)).collect(),
            stage,
            piece,
            near_m,
            least_m,
            step_m,
            places,
        }
    }

    fn turns(&self) -> Vec<TurnBack> {
        let mut found: Vec<WayBack> = Vec::new();
        let mut next = 0;
        for pair in self.seeds() {
            let known = found.iter().rev().take(4).any(|way| way.holds(pair));
            if known || pair.back < next {
                continue;
            }
            match self.way_back(pair) {
                Some(way) => found.push(way),
                None => next = pair.back + NEXT_TRY,
            }
        }
        found.iter().map(|way| self.turn(way)).collect()
    }

    /// Places near each other about which the line may turn, innermost first: at most so far apart that the ways between
    /// them are as long as they may part.
    fn seeds(&self) -> impl Iterator<Item = Pair> {
        let most = 2 * self.may_part() + APART;
        (0..self.places.len()).filter_map(move |back| {
            let out = self.nearest_before(back, most)?;
            Some(Pair { out, back })
        })
    }

    /// The last place at least [`APART`] and at most so many steps before one, that is near it. A place that is far off is
    /// followed by none that is near for as many steps as lead there.
    fn nearest_before(&self, back: usize, most: usize) -> Option<usize> {
        let mut steps = APART;
        while steps <= most {
            let out = back.checked_sub(steps)?;
            let away_m = self.away_m(out, back)?;
            if away_m <= self.near_m {
                return Some(out);
            }
            steps += whole_steps((away_m - self.near_m) / (self.step_m * LONGER)).max(1);
        }
        None
    }

    /// The way back from a pair on; `None` where it is too short or goes nowhere.
    fn way_back(&self, first: Pair) -> Option<WayBack> {
        let (mut pair, mut joined, mut steps, mut gone) = (first, first, 0, false);
        let along = |from: Pair, to: Pair| (from.out - to.out).min(to.back - from.back);
        loop {
            let so_far = steps + along(joined, pair);
            let tried = self.step_m * count(so_far) > 2.0 * self.least_m;
            gone = gone || self.goes_away(first, pair);
            if so_far > MOST_STEPS || (tried && !gone) {
                break;
            }
            if let Some(next) = self.together(pair) {
                pair = next;
                continue;
            }
            let Some(next) = self.meets_again(pair) else {
                break;
            };
            (steps, joined, pair) = (so_far, next, next);
        }
        let length_m = self.step_m * count(steps + along(joined, pair));
        let turns = gone && length_m > self.least_m;
        turns.then_some(WayBack { first, last: pair })
    }

    /// One step on for both or for one of them, near each other.
    fn together(&self, pair: Pair) -> Option<Pair> {
        let moves = [(1, 1), (1, 0), (0, 1)].into_iter();
        moves
            .filter_map(|(out, back)| pair.on(out, back))
            .find(|p| self.near(*p))
    }

    /// Where two ways that part meet again, first.
    fn meets_again(&self, pair: Pair) -> Option<Pair> {
        let most = self.may_part();
        let ahead = (1..=2 * most).flat_map(|sum| {
            let shares = sum.saturating_sub(most)..=sum.min(most);
            shares.map(move |out| (out, sum - out))
        });
        let mut ahead = ahead.filter_map(|(out, back)| pair.on(out, back));
        ahead.find(|p| self.near(*p))
    }

    /// Steps for which the two ways may part.
    fn may_part(&self) -> usize {
        let mut steps = 0;
        while self.step_m * count(steps + 1) <= self.least_m {
            steps += 1;
        }
        steps
    }

    fn goes_away(&self, first: Pair, last: Pair) -> bool {
        let away_m = self.away_m(first.out, last.out);
        away_m.is_some_and(|m| m >= self.least_m / 2.0)
    }

    fn near(&self, pair: Pair) -> bool {
        let away_m = self.away_m(pair.out, pair.back);
        away_m.is_some_and(|m| m <= self.near_m)
    }

    /// Metres from one place to another not far from it.
    fn away_m(&self, from: usize, to: usize) -> Option<f64> {
        let frame = self.frames.get(from)?;
        Some(frame.local(*self.places.get(to)?).length_m())
    }

    fn turn(&self, way: &WayBack) -> TurnBack {
        let at_m = |step: usize| self.piece.from_m + self.step_m * count(step);
        let tip_m = self.tip_m(at_m(way.first.out), at_m(way.first.back));
        TurnBack {
            at_m: tip_m,
            back_m: at_m(way.last.back) - tip_m,
        }
    }

    /// The point of the line between two places near each other that lies farthest from where it comes from.
    fn tip_m(&self, out_m: f64, back_m: f64) -> f64 {
        let middle_m = f64::midpoint(out_m, back_m);
        let before_m = (out_m - self.least_m / 2.0).max(self.piece.from_m);
        let Some(origin) = self.stage.at(before_m) else {
            return middle_m;
        };
        let chainage = self.stage.chainage_m();
        let from = chainage.partition_point(|m| *m < out_m);
        let points = self.stage.points().iter().zip(chainage).skip(from);
        let between = points.take_while(|(_, m)| **m <= back_m);
        let origin = Frame::at(origin);
        let away = between.map(|(p, m)| (*m, origin.local(p).length_m()));
        let tip = away.max_by(|a, b| a.1.total_cmp(&b.1));
        tip.map_or(middle_m, |(m, _)| m)
    }
}

impl Pair {
    /// So many steps on along both ways.
    fn on(self, out: usize, back: usize) -> Option<Self> {
        Some(Self {
            out: self.out.checked_sub(out)?,
            back: self.back + back,
        })
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "rounded down, not negative, and a length on the globe by one of a metre"
)]
fn whole_steps(steps: f64) -> usize {
    steps as usize
}

#[expect(
    clippy::cast_precision_loss,
    reason = "steps of a line are far fewer than 2^52"
)]
fn count(n: usize) -> f64 {
    n as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(spots: &[(f64, f64)]) -> Stage {
        let origin = LonLat::new(8.0, 46.5);
        let mut stage = Stage::new(None);
        for (east_m, north_m) in spots {
            let at = origin.toward(90.0, *east_m).toward(0.0, *north_m);
            stage.push(at, None);
        }
        stage
    }

    #[test]
    fn a_wandering_way_back_is_found_and_hairpins_are_not() {
        let wobble = |i: u32| 6.0 * (f64::from(i) * 1.7).sin();
        let up = (0..=40).map(|i| (wobble(i), 25.0 * f64::from(i)));
        let down = (0..40)
            .rev()
            .map(|i| (wobble(i + 100), 25.0 * f64::from(i) + 9.0));
        let out_and_back = line(&up.chain(down).collect::<Vec<_>>());
        let found = turns(&out_and_back, 20.0, 300.0);
        assert_eq!(found.len(), 1, "{found:?}");
        let middle_m = out_and_back.length_m() / 2.0;
        assert!(
            (found[0].at_m - middle_m).abs() < 40.0,
            "{found:?}, {middle_m}"
        );
        assert!(found[0].back_m > 900.0, "{found:?}");

        let zigzag: Vec<(f64, f64)> = (0..12)
            .map(|i| (if i % 2 == 0 { 0.0 } else { 400.0 }, 60.0 * f64::from(i)))
            .collect();
        assert_eq!(turns(&line(&zigzag), 20.0, 300.0), []);
    }

    #[test]
    fn standing_about_is_no_turn_and_a_shortcut_ends_no_way_back() {
        let about = (0..4000_u32).map(|i| {
            let turn = f64::from(i) * 2.4;
            (9.0 * turn.cos(), 9.0 * turn.sin())
        });
        assert_eq!(turns(&line(&about.collect::<Vec<_>>()), 20.0, 300.0), []);
        let shortcut = line(&[
            (0.0, 0.0),
            (0.0, 1000.0),
            (100.0, 1050.0),
            (0.0, 1100.0),
            (0.0, 2000.0),
            (0.0, 0.0),
        ]);
        let found = turns(&shortcut, 20.0, 300.0);
        assert_eq!(found.len(), 1, "{found:?}");
        assert!((1980.0..=2010.0).contains(&found[0].back_m), "{found:?}");
    }

    #[test]
    fn who_walks_to_and_fro_turns_at_every_end() {
        let ends: Vec<(f64, f64)> = (0..6)
            .map(|i| (0.0, if i % 2 == 0 { 0.0 } else { 500.0 }))
            .collect();
        let found = turns(&line(&ends), 20.0, 300.0);
        let at: Vec<f64> = found
            .iter()
            .map(|t| (t.at_m / 10.0).round() * 10.0)
            .collect();
        assert_eq!(at, [500.0, 1000.0, 1500.0, 2000.0], "{found:?}");
    }

    #[test]
    fn a_spur_is_told_where_it_ends_and_how_far_back_it_goes() {
        let spur = line(&[
            (0.0, 0.0),
            (0.0, 1000.0),
            (500.0, 1000.0),
            (0.0, 1000.0),
            (0.0, 2000.0),
        ]);
        let found = turns(&spur, 20.0, 300.0);
        assert_eq!(found.len(), 1, "{found:?}");
        assert!((found[0].at_m - 1500.0).abs() < 1.0, "{found:?}");
        assert!((480.0..=530.0).contains(&found[0].back_m), "{found:?}");
        assert_eq!(turns(&spur, 1.0, 300.0), [], "no receiver is so good");
    }

    fn steps(stage: &Stage, least_m: f64) -> Steps<'_> {
        Steps::along(stage, stage.whole(), 20.0, least_m)
    }

    #[test]
    fn the_nearest_place_before_is_that_of_a_search_step_by_step() {
        let straight = line(&[(0.0, 0.0), (0.0, 2004.0), (0.0, 0.0)]);
        let wandering: Vec<(f64, f64)> = (0..300_u32)
            .map(|i| {
                let t = f64::from(i);
                (90.0 * (0.31 * t).sin(), 70.0 * (0.47 * t).cos())
            })
            .collect();
        for stage in [straight, line(&wandering)] {
            let steps = steps(&stage, 300.0);
            for most in [APART, 40, steps.places.len()] {
                for back in 0..steps.places.len() {
                    let mut before = (APART..=most).map_while(|n| back.checked_sub(n));
                    let want = before.find(|&out| steps.near(Pair { out, back }));
                    assert_eq!(steps.nearest_before(back, most), want, "{back}, {most}");
                }
            }
        }
    }

    #[test]
    fn ways_part_for_as_many_whole_steps_as_are_asked_for() {
        let stage = line(&[(0.0, 0.0), (0.0, 1000.0)]);
        for (least_m, want) in [(300.0, 30), (309.0, 30), (10.0, 1), (9.0, 0)] {
            assert_eq!(steps(&stage, least_m).may_part(), want, "{least_m} m");
        }
    }
}
