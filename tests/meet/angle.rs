//! The angle between rope and crevasses, against a search of all places where the rope can be.

use schrund::{
    meet::angle::worst_angle,
    trip::{
        route::{Stage, Stretch},
        zone::Strike,
    },
};

use crate::fixture::{any::at, close};

type Spot = (f64, f64);

const SPACING_M: f64 = 12.0;

fn stage(parts: &[&[Spot]]) -> Stage {
    let mut stage = Stage::new(None);
    for part in parts {
        stage.break_segment();
        for (x, y) in *part {
            stage.push(at(*x, *y), None);
        }
    }
    stage
}

fn strike(deg: f64) -> Strike {
    Strike {
        deg,
        uncertainty_deg: None,
    }
}

fn length_m(part: &[Spot]) -> f64 {
    let edges = part.windows(2);
    edges
        .map(|e| (e[1].0 - e[0].0).hypot(e[1].1 - e[0].1))
        .sum()
}

/// The spot so many metres along a part.
fn along(part: &[Spot], mut m: f64) -> Spot {
    for e in part.windows(2) {
        let (x, y) = (e[1].0 - e[0].0, e[1].1 - e[0].1);
        let edge_m = x.hypot(y);
        if m <= edge_m {
            return (e[0].0 + x * m / edge_m, e[0].1 + y * m / edge_m);
        }
        m -= edge_m;
    }
    part[part.len() - 1]
}

/// The least angle at any place of the rear end, two centimetres apart, from which an end of the rope is on the touched
/// stretch; the rope ends where its part of the line does.
fn searched(parts: &[&[Spot]], touch: Stretch, strike_deg: f64) -> f64 {
    let (sin, cos) = strike_deg.to_radians().sin_cos();
    let (mut begin_m, mut least_deg) = (0.0, f64::INFINITY);
    for part in parts {
        let end_m = begin_m + length_m(part);
        let is_touched = touch.from_m <= end_m && begin_m <= touch.to_m;
        let last_m = (end_m - SPACING_M).max(begin_m);
        let first_m = (touch.from_m - SPACING_M).clamp(begin_m, last_m);
        let last_m = touch.to_m.clamp(first_m, last_m);
        let places = ((last_m - first_m) / 0.02).ceil() as u32;
        for place in (0..=places).filter(|_| is_touched) {
            let rear_m = (first_m + 0.02 * f64::from(place)).min(last_m) - begin_m;
            let (rear, front) = (along(part, rear_m), along(part, rear_m + SPACING_M));
            let (x, y) = (front.0 - rear.0, front.1 - rear.1);
            let deg = (sin * y - cos * x).abs().atan2((sin * x + cos * y).abs());
            least_deg = least_deg.min(deg.to_degrees());
        }
        begin_m = end_m;
    }
    least_deg
}

/// Two parts of about 160 m with bends every few metres, the second far off and turned away from the first.
fn bends() -> (Vec<Spot>, Vec<Spot>) {
    let bearing = |i: i32| 0.9 * (f64::from(i) * 2.1).sin();
    let walk = |from: Spot, toward: f64| {
        let mut spots = vec![from];
        for i in 0..24 {
            let (sin, cos) = (toward + bearing(i)).sin_cos();
            let (x, y) = spots[spots.len() - 1];
            let step_m = 4.0 + 5.0 * f64::from(i * 7 % 11) / 10.0;
            spots.push((x + step_m * sin, y + step_m * cos));
        }
        spots
    };
    (walk((0.0, 0.0), 0.3), walk((400.0, -300.0), 1.6))
}

#[test]
fn no_place_of_the_rope_on_the_touched_stretch_has_a_lesser_angle() {
    let (first, second) = bends();
    let parts = [&first[..], &second[..]];
    let stage = stage(&parts);
    let jump_m = length_m(&first);
    let end_m = jump_m + length_m(&second);
    // At both ends of the line, before the jump, behind it, over it, and between.
    let ends = [
        (0.0, 3.0),
        (end_m - 2.0, end_m),
        (jump_m - 9.0, jump_m - 1.0),
    ];
    let over = [(jump_m + 1.0, jump_m + 4.0), (jump_m - 5.0, jump_m + 5.0)];
    let short = (0..50).map(|i| (6.3 * f64::from(i), 6.3 * f64::from(i) + 0.5));
    let long = (0..10).map(|i| (25.0 * f64::from(i), 25.0 * f64::from(i) + 31.0));
    let touches = ends.into_iter().chain(over).chain(short).chain(long);
    for (from_m, to_m) in touches {
        let touch = Stretch {
            from_m,
            to_m: to_m.min(end_m),
        };
        for strike_deg in (0..180).step_by(15).map(f64::from) {
            let found = worst_angle(&stage, &[touch], SPACING_M, strike(strike_deg));
            let want = searched(&parts, touch, strike_deg);
            let what = format!("{touch:?}, strike {strike_deg}°");
            // Both ends move by 2 cm from one place to the next: 12 m of rope turn by at most 0.2°, and by 0.4° where bends
            // bring the ends within 6 m of each other.
            close(&what, found.expect("long enough").deg, want, 0.5);
        }
    }
}

#[test]
fn a_part_that_is_not_touched_says_nothing_of_the_angle() {
    // The first part runs along the crevasses, the second, which is touched in its middle, square to them.
    let parts: [&[Spot]; 2] = [
        &[(0.0, 0.0), (0.0, 300.0)],
        &[(50.0, 300.0), (350.0, 300.0)],
    ];
    let stage = stage(&parts);
    for (from_m, to_m, want) in [(400.0, 450.0, 90.0), (100.0, 150.0, 0.0)] {
        let touch = Stretch { from_m, to_m };
        let found = worst_angle(&stage, &[touch], SPACING_M, strike(0.0));
        close("alone", found.expect("long enough").deg, want, 0.01);
    }
}

#[test]
fn a_rope_that_comes_to_lie_along_the_crevasses_is_met_where_it_does() {
    // North-east, or north-west, and from 200 m on due north: there the rope is in line as soon as its rear end is round the bend.
    for side in [1.0, -1.0] {
        let x = side * 200.0 * std::f64::consts::FRAC_1_SQRT_2;
        let stage = stage(&[&[(-x, -x.abs()), (0.0, 0.0), (0.0, 300.0)]]);
        let found = worst_angle(&stage, &[stage.whole()], SPACING_M, strike(0.0));
        let found = found.expect("long enough");
        close("in line", found.deg, 0.0, 1e-9);
        close("round the bend", found.at_m, 200.0, 0.1);
    }
}

#[test]
fn a_way_back_three_centimetres_beside_the_way_out_is_no_swing() {
    // Nobody's receiver knows three centimetres: the rope turns over there, and never lies across the line.
    let stage = stage(&[&[(0.0, 0.0), (0.0, 200.0), (0.03, 0.0)]]);
    let found = worst_angle(&stage, &[stage.whole()], SPACING_M, strike(90.0));
    close("square", found.expect("long enough").deg, 90.0, 0.1);
}
