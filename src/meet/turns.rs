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

/// Where a stage turns back on itself and stays within `near_m` metres of itself for more than `least_m`, in walking
/// order. Each piece of the line counts for itself: nothing is known of what lies between them.
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
    let found = pieces.filter(|piece| piece.length_m() > 2.0 * least_m);
    let found =
        found.flat_map(|piece| Steps::along(stage, piece, near_m / 2.0).turns(near_m, least_m));
    found.collect()
}

/// Places along a piece of a stage, evenly spread from its begin.
struct Steps<'s> {
    stage: &'s Stage,
    piece: Stretch,
    step_m: f64,
    places: Vec<LonLat>,
}

impl<'s> Steps<'s> {
    fn along(stage: &'s Stage, piece: Stretch, step_m: f64) -> Self {
        let mut places = Vec::new();
        let mut at_m = piece.from_m;
        while at_m < piece.to_m {
            places.extend(stage.at(at_m));
            at_m = piece.from_m + step_m * count(places.len().max(1));
        }
        Self {
            stage,
            piece,
            step_m,
            places,
        }
    }

    fn turns(&self, near_m: f64, least_m: f64) -> Vec<TurnBack> {
        let back: Vec<usize> = (0..self.places.len())
            .map(|i| self.back(i, near_m))
            .collect();
        let far = |i: &usize| {
            back.get(*i)
                .is_some_and(|n| self.step_m * count(*n) > least_m)
        };
        let all: Vec<usize> = (0..back.len()).filter(far).collect();
        // Steps on both sides of a turn see it too.
        let of_one_turn = |a: &usize, b: &usize| self.step_m * count(b - a) <= 2.0 * near_m;
        let turns = all.chunk_by(of_one_turn).filter_map(|seen| {
            let steps = seen.iter().filter_map(|i| back.get(*i)).max()?;
            let (first, last) = (seen.first()?, seen.last()?);
            let back_m = self.step_m * count(*steps);
            let about = Stretch {
                from_m: self.at_m(*first) - self.step_m,
                to_m: self.at_m(*last) + self.step_m,
            };
            let at_m = self.tip_m(about, least_m);
            Some(TurnBack { at_m, back_m })
        });
        turns.collect()
    }

    fn at_m(&self, i: usize) -> f64 {
        self.piece.from_m + self.step_m * count(i)
    }

    /// How many steps the line runs back along itself from here.
    fn back(&self, here: usize, near_m: f64) -> usize {
        let (mut behind, mut ahead) = (here, here);
        loop {
            let both = (behind.checked_sub(1), ahead + 1);
            let moves = [both, (both.0, ahead), (Some(behind), ahead + 1)];
            let near = |next: &(Option<usize>, usize)| self.near(next.0, next.1, near_m);
            let Some((Some(a), b)) = moves.into_iter().find(near) else {
                return (here - behind).min(ahead - here);
            };
            (behind, ahead) = (a, b);
        }
    }

    fn near(&self, behind: Option<usize>, ahead: usize, near_m: f64) -> bool {
        let places = behind
            .and_then(|i| self.places.get(i))
            .zip(self.places.get(ahead));
        places.is_some_and(|(a, b)| Frame::at(*a).local(*b).length_m() <= near_m)
    }

    /// The place of a stretch that lies farthest from where the line comes from.
    fn tip_m(&self, about: Stretch, least_m: f64) -> f64 {
        let middle_m = f64::midpoint(about.from_m, about.to_m);
        let Some(origin) = self
            .stage
            .at((middle_m - least_m / 2.0).max(self.piece.from_m))
        else {
            return middle_m;
        };
        let frame = Frame::at(origin);
        let places = self.stage.points().iter().zip(self.stage.chainage_m());
        let from = self
            .stage
            .chainage_m()
            .partition_point(|m| *m < about.from_m);
        let on_it = places.skip(from).take_while(|(_, m)| **m <= about.to_m);
        let away = on_it.map(|(p, m)| (*m, frame.local(*p).length_m()));
        let tip = away.max_by(|a, b| a.1.total_cmp(&b.1));
        tip.map_or(middle_m, |(m, _)| m)
    }
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
}
