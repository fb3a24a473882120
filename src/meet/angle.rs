//! The angle between the rope and the crevasses it crosses.
//!
//! The rope's direction is the chord from the last of two neighbours to the first, one spacing of
//! chainage apart, wherever that chord has an end in the zone. While both ends move along straight
//! edges the chord turns one way only, so the worst angle of each such part is at one of its ends, or
//! zero where the chord swings past the strike.
//!
//! Where a line turns back on itself the chord shrinks to nothing and grows again the other way: it turned
//! over, it did not swing round. What counts there is the line on both sides.

use crate::{
    answered::Answered,
    geometry::{
        LonLat,
        frame::{Frame, Local},
    },
    trip::{
        route::{Stage, Stretch},
        zone::Strike,
    },
};

/// A shorter chord, as in the apex of a hairpin, has no direction worth the name: places on the line are
/// good to a tenth of a micrometre. Our judgement.
const LEAST_CHORD_M: f64 = 0.05;

/// Angles nearer to each other than this are one: which of them is less is rounding. Our judgement.
const SAME_DEG: f64 = 1e-4;

/// Worst angle found.
///
/// ```
/// use schrund::{meet::angle::worst_angle, trip::{route::Stretch, zone::Strike}};
///
/// let stage = &schrund::example::job()?.route.stages[0]; // straight north
/// let all = [Stretch { from_m: 0.0, to_m: stage.length_m() }];
/// let met_at = |uncertainty_deg| {
///     let strike = Strike { deg: 30.0, uncertainty_deg };
///     worst_angle(stage, &all, 12.0, strike).map(|angle| angle.deg.round())
/// };
/// assert_eq!(met_at(None), Some(30.0));
/// assert_eq!(met_at(Some(10.0)), Some(20.0), "in doubt the flatter angle");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Angle {
    /// Least angle between rope and crevasses that the strike's uncertainty allows, 0 to 90°.
    pub deg: f64,
    /// Chainage of the rope's rear end where it is first met.
    pub at_m: f64,
}

/// The least angle at which a rope with this spacing meets crevasses of this strike while one of its
/// ends is on a touched stretch. `None` where the line is too short to have a direction.
#[must_use]
pub fn worst_angle(
    stage: &Stage,
    touches: &[Stretch],
    spacing_m: f64,
    strike: Strike,
) -> Option<Angle> {
    let axis = CrevasseAxis::of(strike);
    let all: Vec<Angle> = segments_by_chainage(stage)
        .flat_map(|segment| {
            touches
                .iter()
                .filter_map(move |t| rear_ends(segment, *t, spacing_m))
        })
        .flat_map(|(segment, rear)| turns(stage, segment, rear, spacing_m, axis))
        .collect();
    let deg = all.iter().map(|a| a.deg).reduce(f64::min)?;
    let first = all.iter().find(|a| a.deg <= deg + SAME_DEG)?;
    Some(Angle {
        deg: (deg - strike.doubt_deg()).max(0.0),
        at_m: first.at_m,
    })
}

/// Worst angles on one line that were asked for before: to meet a rope again, its spacing, its strike and its ice have to be
/// the same to the last bit.
#[derive(Debug, Default)]
pub(crate) struct KnownAngles(Answered<Vec<u64>, Option<Angle>>);

/// Figures that are kept of what was asked, eight bytes each `[ours]`.
const MOST_KNOWN: usize = 500_000;

impl KnownAngles {
    /// [`worst_angle`] on the line that this belongs to.
    pub(crate) fn worst(
        &self,
        stage: &Stage,
        touches: &[Stretch],
        spacing_m: f64,
        strike: Strike,
    ) -> Option<Angle> {
        let ends = touches.iter().flat_map(|t| [t.from_m, t.to_m]);
        let asked = [spacing_m, strike.deg, strike.doubt_deg()].into_iter();
        let key: Vec<u64> = asked.chain(ends).map(f64::to_bits).collect();
        let ask = || worst_angle(stage, touches, spacing_m, strike);
        self.0.to(key, MOST_KNOWN, |key, _| key.len(), ask)
    }
}

/// The direction of the crevasses as a unit vector.
#[derive(Clone, Copy, Debug)]
struct CrevasseAxis(Local);

impl CrevasseAxis {
    fn of(strike: Strike) -> Self {
        let (sin, cos) = strike.deg.to_radians().sin_cos();
        Self(Local { x_m: sin, y_m: cos })
    }

    /// Angle between the axis and a chord, 0 to 90°.
    fn angle_deg(self, chord: Local) -> f64 {
        self.0
            .cross(chord)
            .abs()
            .atan2(self.0.dot(chord).abs())
            .to_degrees()
    }

    /// Whether a chord that turns from `a` to `b`, by less than half a turn, passes the axis on its way:
    /// whichever way it turns, it changes sides only along the axis. One that turns over passes nothing.
    fn is_passed(self, a: Local, b: Local) -> bool {
        self.0.cross(a) * self.0.cross(b) < 0.0 && !turns_over(a, b)
    }
}

/// Whether a chord on its way from `a` to `b` is too short to have a direction: both its ends move evenly, so its
/// tip goes straight from the one to the other.
fn turns_over(a: Local, b: Local) -> bool {
    let opposed = a.dot(b) < 0.0;
    opposed && a.cross(b).abs() <= LEAST_CHORD_M * a.to(b).length_m()
}

fn segments_by_chainage(stage: &Stage) -> impl Iterator<Item = Stretch> + '_ {
    let chainage = stage.chainage_m();
    stage.segments().map(|r| Stretch {
        from_m: chainage[r.start],
        to_m: chainage[r.end - 1],
    })
}

/// Where the rear end of the rope can be while the rope reaches into the touched stretch.
fn rear_ends(segment: Stretch, touch: Stretch, spacing_m: f64) -> Option<(Stretch, Stretch)> {
    if !segment.meets(&touch) || segment.length_m() <= 0.0 {
        return None;
    }
    let last_m = (segment.to_m - spacing_m).max(segment.from_m);
    let from_m = (touch.from_m - spacing_m).clamp(segment.from_m, last_m);
    let to_m = touch.to_m.clamp(from_m, last_m);
    Some((segment, Stretch { from_m, to_m }))
}

/// The worst angle between each two neighbouring places where an end of the chord passes a vertex.
fn turns(
    stage: &Stage,
    segment: Stretch,
    rear: Stretch,
    spacing_m: f64,
    axis: CrevasseAxis,
) -> impl Iterator<Item = Angle> {
    let places = breakpoints(stage, rear, spacing_m);
    let chord = move |at_m: f64| chord(stage, segment, at_m, spacing_m);
    let chords: Vec<(f64, Local)> = places
        .into_iter()
        .filter_map(|at_m| Some((at_m, chord(at_m)?)))
        .collect();
    let swings = chords
        .windows(2)
        .filter(|pair| axis.is_passed(pair[0].1, pair[1].1));
    let passed: Vec<Angle> = swings
        .map(|pair| Angle {
            deg: 0.0,
            at_m: pair[0].0,
        })
        .collect();
    let ends = chords.into_iter().map(move |(at_m, chord)| Angle {
        deg: axis.angle_deg(chord),
        at_m,
    });
    passed.into_iter().chain(ends)
}

fn breakpoints(stage: &Stage, rear: Stretch, spacing_m: f64) -> Vec<f64> {
    let chainage = stage.chainage_m();
    let between = |from_m: f64, to_m: f64| {
        let from = chainage.partition_point(|&c| c <= from_m);
        let to = chainage.partition_point(|&c| c < to_m).max(from);
        chainage[from..to].iter().copied()
    };
    let mut places = vec![rear.from_m, rear.to_m];
    places.extend(between(rear.from_m, rear.to_m));
    places.extend(between(rear.from_m + spacing_m, rear.to_m + spacing_m).map(|c| c - spacing_m));
    places.sort_by(f64::total_cmp);
    places.dedup();
    places
}

/// The rope from its rear end to one spacing ahead, cut off where the segment ends.
fn chord(stage: &Stage, segment: Stretch, rear_m: f64, spacing_m: f64) -> Option<Local> {
    let (rear, front): (LonLat, LonLat) = (
        stage.at(rear_m)?,
        stage.at((rear_m + spacing_m).min(before_jump(stage, segment)))?,
    );
    let chord = Frame::at(rear).local(front);
    (chord.length_m() > LEAST_CHORD_M).then_some(chord)
}

/// The end of a segment, kept on its own side of the jump.
fn before_jump(stage: &Stage, segment: Stretch) -> f64 {
    if segment.to_m < stage.length_m() {
        segment.to_m.next_down()
    } else {
        segment.to_m
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A line through points given in metres east and north of a spot in the mountains.
    fn stage(points_m: &[(f64, f64)]) -> Stage {
        let mut stage = Stage::new(None);
        for (x, y) in points_m {
            stage.push(LonLat::new(8.0 + x / 77_463.3, 46.0 + y / 111_151.3), None);
        }
        stage
    }

    fn angle(
        points_m: &[(f64, f64)],
        strike_deg: f64,
        uncertainty_deg: f64,
        spacing_m: f64,
    ) -> f64 {
        let stage = stage(points_m);
        let all = [Stretch {
            from_m: 0.0,
            to_m: stage.length_m(),
        }];
        let strike = Strike {
            deg: strike_deg,
            uncertainty_deg: Some(uncertainty_deg),
        };
        worst_angle(&stage, &all, spacing_m, strike).unwrap().deg
    }

    #[test]
    fn a_straight_line_meets_the_strike_at_the_angle_between_them() {
        let north = [(0.0, 0.0), (0.0, 500.0)];
        for (strike, uncertainty, want) in [
            (90.0, 0.0, 90.0),
            (0.0, 0.0, 0.0),
            (150.0, 0.0, 30.0),
            (60.0, 0.0, 60.0),
            (60.0, 20.0, 40.0),
            (10.0, 20.0, 0.0),
        ] {
            let got = angle(&north, strike, uncertainty, 12.0);
            assert!(
                (got - want).abs() < 1e-3,
                "strike {strike} ± {uncertainty}: {got}, want {want}"
            );
        }
    }

    #[test]
    fn the_rope_smooths_out_a_wobble_that_single_edges_would_report() {
        // Steps of 2 m north with 1 m to either side: each edge runs at 45° to 27° off the line.
        let wobble: Vec<(f64, f64)> = (0..200)
            .map(|i| (if i % 2 == 0 { 0.0 } else { 1.0 }, 2.0 * f64::from(i)))
            .collect();
        let got = angle(&wobble, 90.0, 0.0, 15.0);
        assert!(
            got > 84.0,
            "the chord of 15 m turns less than 6° from north: {got}"
        );
    }

    #[test]
    fn in_a_hairpin_the_rope_swings_through_half_a_turn() {
        let hairpin = [(0.0, 0.0), (0.0, 200.0), (3.0, 0.0)];
        for strike in [30.0, 60.0, 90.0, 120.0] {
            assert!(angle(&hairpin, strike, 0.0, 12.0) < 1e-9, "past {strike}°");
        }
    }

    #[test]
    fn where_the_line_turns_back_on_itself_the_line_on_both_sides_counts() {
        // Far legs in one edge, in short edges, and crooked: out and back over the same points.
        let straight = vec![(0.0, 0.0), (0.0, 200.0)];
        let short: Vec<(f64, f64)> = (0..=40).map(|i| (0.0, 5.3 * f64::from(i))).collect();
        let slanting: Vec<(f64, f64)> = (0..=40)
            .map(|i| (0.9 * f64::from(i), 5.3 * f64::from(i)))
            .collect();
        for (out, strikes) in [
            (straight, [(90.0, 90.0), (60.0, 60.0)]),
            (short, [(90.0, 90.0), (120.0, 60.0)]),
            (slanting, [(99.64, 90.0), (39.64, 30.0)]),
        ] {
            let line: Vec<(f64, f64)> = out
                .iter()
                .chain(out.iter().rev().skip(1))
                .copied()
                .collect();
            for (strike, want) in strikes {
                for spacing_m in [7.0, 12.0, 13.7, 30.0] {
                    let got = angle(&line, strike, 0.0, spacing_m);
                    assert!(
                        (got - want).abs() < 0.1,
                        "{strike}° at {spacing_m} m: {got}, want {want}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_bend_past_the_strike_runs_along_it_for_a_moment() {
        let bend = [(0.0, 0.0), (0.0, 200.0), (200.0, 200.0)];
        assert!(
            angle(&bend, 45.0, 0.0, 12.0) < 1e-9,
            "turning from north to east passes north-east"
        );
        assert!(
            angle(&bend, 135.0, 0.0, 12.0) > 44.9,
            "but never south-east"
        );
    }
}
