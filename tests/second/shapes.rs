//! Lines and outlines in metres round a spot, simple and odd.

use super::dice::Dice;

/// Metres east and north.
pub(super) type Flat = (f64, f64);

/// Grid on which squared lines and rectangles stand, so that they share borders and corners, metres.
const GRID_M: f64 = 50.0;

fn on_grid(p: Flat) -> Flat {
    (
        (p.0 / GRID_M).round() * GRID_M,
        (p.1 / GRID_M).round() * GRID_M,
    )
}

fn ahead(from: Flat, heading_deg: f64, way_m: f64) -> Flat {
    let (sin, cos) = heading_deg.to_radians().sin_cos();
    (from.0 + way_m * sin, from.1 + way_m * cos)
}

/// A line of 2 to 40 points and about 0.5 to 8 km; whether it keeps to the grid.
pub(super) fn line(dice: &mut Dice) -> (Vec<Flat>, bool) {
    let points = dice.whole(2, 40);
    let length_m = dice.within(500.0, 8000.0);
    let step_m = length_m / f64::from(points - 1);
    let kind = dice.whole(0, 6);
    let mut heading = dice.within(0.0, 360.0);
    let mut all = vec![(0.0, 0.0)];
    for number in 1..points {
        let last = all[all.len() - 1];
        let way_m = step_m * dice.within(0.4, 1.6);
        let next = match kind {
            // Straight on, with a receiver's noise.
            0 => ahead(last, heading + dice.within(-4.0, 4.0), way_m),
            // Hairpins.
            1 => {
                let turned = heading + if number % 2 == 0 { 0.0 } else { 155.0 };
                ahead(last, turned, way_m)
            }
            // Right angles on the grid.
            2 => {
                heading += dice.pick(&[0.0, 0.0, 90.0, -90.0]);
                let squared = (heading / 90.0).round() * 90.0;
                on_grid(ahead(last, squared, way_m.max(GRID_M)))
            }
            // Wandering.
            _ => {
                heading += dice.within(-50.0, 50.0);
                ahead(last, heading, way_m)
            }
        };
        all.push(next);
    }
    if kind == 3 && dice.chance(0.5) {
        // Out and back on the same points.
        let back: Vec<Flat> = all.iter().rev().skip(1).copied().collect();
        all.extend(back);
    }
    (all, kind == 2)
}

fn rectangle(centre: Flat, half: Flat, turned_deg: f64) -> Vec<Flat> {
    let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let (sin, cos) = turned_deg.to_radians().sin_cos();
    let corner = |(x, y): Flat| {
        let (x, y) = (x * half.0, y * half.1);
        (centre.0 + x * cos + y * sin, centre.1 - x * sin + y * cos)
    };
    corners.map(corner).to_vec()
}

/// A ring whose corners lie round a centre in this order of turns.
fn round(centre: Flat, radii_m: &[f64], turns: f64) -> Vec<Flat> {
    let step = 360.0 * turns / radii_m.len() as f64;
    let corner = |(i, r): (usize, &f64)| ahead(centre, step * i as f64, *r);
    radii_m.iter().enumerate().map(corner).collect()
}

fn star(dice: &mut Dice, centre: Flat, reach_m: f64) -> Vec<Flat> {
    let corners = dice.whole(3, 13);
    let radii: Vec<f64> = (0..corners)
        .map(|_| reach_m * dice.within(0.2, 1.0))
        .collect();
    round(centre, &radii, 1.0)
}

/// Teeth that stand on one bar.
fn comb(centre: Flat, reach_m: f64, teeth: u32) -> Vec<Flat> {
    let pitch = reach_m / f64::from(teeth);
    let mut ring = vec![(0.0, -reach_m / 4.0), (0.0, reach_m)];
    for tooth in 0..teeth {
        let x = f64::from(tooth) * pitch;
        ring.extend([
            (x + pitch * 0.5, reach_m),
            (x + pitch * 0.5, 0.0),
            (x + pitch, 0.0),
            (x + pitch, reach_m),
        ]);
    }
    ring.extend([
        (reach_m + pitch * 0.3, reach_m),
        (reach_m + pitch * 0.3, -reach_m / 4.0),
    ]);
    let shift = |(x, y): Flat| (centre.0 + x - reach_m / 2.0, centre.1 + y - reach_m / 4.0);
    ring.into_iter().map(shift).collect()
}

/// The rings of one polygon, the outer one first.
pub(super) fn polygon(dice: &mut Dice, centre: Flat, reach_m: f64, grid: bool) -> Vec<Vec<Flat>> {
    let half = (
        reach_m * dice.within(0.2, 1.0),
        reach_m * dice.within(0.2, 1.0),
    );
    let turned = dice.within(0.0, 180.0);
    let mut rings = match dice.whole(0, 8) {
        _ if grid => {
            let half = on_grid((half.0.max(GRID_M), half.1.max(GRID_M)));
            vec![rectangle(on_grid(centre), half, 0.0)]
        }
        0 => vec![rectangle(centre, half, 0.0)],
        1 => vec![rectangle(centre, half, turned)],
        // A thin strip.
        2 => vec![rectangle(centre, (dice.within(1.0, 20.0), reach_m), turned)],
        3 => vec![comb(centre, reach_m, dice.whole(1, 4))],
        // A pentagram, whose middle it goes round twice.
        4 => vec![round(centre, &[reach_m; 5], 2.0)],
        // Two triangles that meet in a point, one of each winding.
        5 => {
            let ring = rectangle(centre, half, turned);
            vec![vec![ring[0], ring[2], ring[1], ring[3]]]
        }
        // A rock island or two.
        6 | 7 => {
            let outer = rectangle(centre, half, turned);
            let small = half.0.min(half.1) * dice.within(0.1, 0.6);
            let one = round(centre, &[small; 7], 1.0);
            let off = ahead(centre, turned + 45.0, small * 1.2);
            let two = dice.maybe(0.4, |_| round(off, &[small * 0.5; 4], 1.0));
            std::iter::once(outer).chain([one]).chain(two).collect()
        }
        _ => vec![star(dice, centre, reach_m)],
    };
    for ring in &mut rings {
        if dice.chance(0.5) {
            ring.reverse();
        }
        if dice.chance(0.1) {
            let doubled = ring[0];
            ring.insert(0, doubled);
        }
    }
    rings
}

/// A rectangle that only passes along one edge of the line, a few metres off it.
pub(super) fn along_edge(dice: &mut Dice, a: Flat, b: Flat) -> Vec<Flat> {
    let way = (b.0 - a.0, b.1 - a.1);
    let length = way.0.hypot(way.1).max(1.0);
    let heading = way.0.atan2(way.1).to_degrees();
    let side = dice.pick(&[-90.0, 90.0]);
    let near = dice.within(2.0, 45.0);
    let from = ahead(a, heading, length * dice.within(0.0, 0.6));
    let to = ahead(from, heading, dice.within(30.0, 400.0));
    let off = dice.within(20.0, 200.0);
    vec![
        ahead(from, heading + side, near),
        ahead(to, heading + side, near),
        ahead(to, heading + side, near + off),
        ahead(from, heading + side, near + off),
    ]
}
