//! Where a line comes near to a place beside it.

use crate::{
    geometry::{LonLat, frame::Frame},
    trip::route::Stage,
};

/// Where a line passes a place.
///
/// ```
/// use schrund::geometry::LonLat;
///
/// let stage = &schrund::example::job()?.route.stages[0];
/// // A hut 22 m east of the line: a two-thousandth of a degree of longitude.
/// let hut = LonLat::new(2.0005, 66.509);
/// let passed = stage.passes(hut, 30.0).expect("a line");
/// assert!((passed.away_m - 22.3).abs() < 0.1 && (passed.at_m - stage.chainage_m()[1]).abs() < 0.1, "{passed:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passed {
    /// Chainage, metres.
    pub at_m: f64,
    /// How far the line is from the place there, metres.
    pub away_m: f64,
}

impl Stage {
    /// Where the line comes nearest to a place. Where it passes within `near_m` metres more than once, out and back, the
    /// first time counts. `None` for a stage without a line.
    #[must_use]
    pub fn passes(&self, place: LonLat, near_m: f64) -> Option<Passed> {
        let mut best: Option<Passed> = None;
        for next in self.edges_past(place) {
            let Some(nearest) = best else {
                best = Some(next);
                continue;
            };
            if nearest.away_m <= near_m && next.at_m > nearest.at_m + 2.0 * near_m {
                break;
            }
            if next.away_m < nearest.away_m {
                best = Some(next);
            }
        }
        let best = best?;
        let there = self.at(best.at_m)?;
        Some(Passed {
            away_m: there.distance_m(place),
            ..best
        })
    }

    /// Where each edge comes nearest, in walking order, in the flat grid round the place.
    fn edges_past(&self, place: LonLat) -> impl Iterator<Item = Passed> + '_ {
        let frame = Frame::at(place);
        let local = move |p: LonLat| {
            let turns = ((place.lon_deg - p.lon_deg) / 360.0).round();
            frame.local(LonLat::new(p.lon_deg + 360.0 * turns, p.lat_deg))
        };
        let edge = move |i: usize| {
            let (a, b) = (self.points().get(i)?, self.points().get(i + 1)?);
            let (from_m, to_m) = (self.chainage_m().get(i)?, self.chainage_m().get(i + 1)?);
            let (a, b) = (local(a), local(b));
            let way = a.to(b);
            let length2 = way.dot(way);
            let t = if length2 > 0.0 {
                -a.dot(way) / length2
            } else {
                0.0
            };
            let t = t.clamp(0.0, 1.0);
            let (x_m, y_m) = (a.x_m + t * way.x_m, a.y_m + t * way.y_m);
            Some(Passed {
                at_m: from_m + t * (to_m - from_m),
                away_m: x_m.hypot(y_m),
            })
        };
        let edges = self
            .segments()
            .flat_map(|s| s.start..s.end.saturating_sub(1));
        edges.filter_map(edge)
    }
}
