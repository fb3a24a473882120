//! Random trips: a seed makes one trip, always the same.

use super::{
    case::{Case, KnotsWord, Patch, Reading, Rope, Spot, Word, Zone},
    dice::Dice,
    figures::{COIL_MOST_KG, COIL_MOST_M, LAYOUTS, LEAST_UNROPED_M, MARGIN_M, PRACTICES, Reserve},
    line::{apart_m, degree_m, place},
    shapes::{Flat, along_edge, line, polygon},
};

/// From metres round a spot to millionths of a degree.
struct Ground {
    lon_deg: f64,
    lat_deg: f64,
}

impl Ground {
    fn spot(&self, (x, y): Flat) -> Spot {
        let (east, north) = degree_m(self.lat_deg);
        let micro = |degrees: f64| (degrees * 1e6).round() as i64;
        (
            micro(self.lon_deg + x / east),
            micro(self.lat_deg + y / north),
        )
    }

    fn ring(&self, ring: &[Flat]) -> Vec<Spot> {
        ring.iter().map(|&p| self.spot(p)).collect()
    }

    fn patch(&self, rings: &[Vec<Flat>]) -> Patch {
        Patch {
            outer: self.ring(&rings[0]),
            holes: rings[1..].iter().map(|r| self.ring(r)).collect(),
        }
    }
}

fn on_line(dice: &mut Dice, flat: &[Flat]) -> Flat {
    let edge = dice.whole(1, flat.len() as u32 - 1) as usize;
    let (a, b) = (flat[edge - 1], flat[edge]);
    let share = dice.within(0.0, 1.0);
    (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1))
}

/// The outlines of one zone.
fn patches(dice: &mut Dice, ground: &Ground, flat: &[Flat], grid: bool) -> Vec<Patch> {
    if dice.chance(0.12) {
        let edge = dice.whole(1, flat.len() as u32 - 1) as usize;
        let ring = along_edge(dice, flat[edge - 1], flat[edge]);
        return vec![ground.patch(&[ring])];
    }
    let reach_m = dice.pick(&[60.0, 150.0, 300.0, 600.0, 1000.0]);
    let (x, y) = on_line(dice, flat);
    let off = reach_m * 0.8;
    let centre = (x + dice.within(-off, off), y + dice.within(-off, off));
    let one = polygon(dice, centre, reach_m, grid);
    let two = dice.maybe(0.15, |dice| {
        let beside = (centre.0 + reach_m, centre.1 + dice.within(-off, off));
        polygon(dice, beside, reach_m * 0.7, grid)
    });
    let rings = std::iter::once(one).chain(two);
    rings.map(|r| ground.patch(&r)).collect()
}

fn zone(dice: &mut Dice, patches: Vec<Patch>) -> Zone {
    let wide = dice.chance(0.15);
    let gap_m = if wide {
        dice.tenths(15.0, 40.0)
    } else {
        dice.tenths(0.5, 16.0)
    };
    let strike = dice.maybe(0.5, |dice| {
        let deg = dice.tenths(0.0, 179.9);
        (deg, dice.maybe(0.6, |dice| dice.tenths(0.0, 40.0)))
    });
    let depth = |dice: &mut Dice| {
        let any = dice.tenths(0.0, 3.0);
        dice.pick(&[any, any, any, 0.3, 1.0])
    };
    Zone {
        patches,
        gap_m,
        strike,
        snow_m: dice.maybe(0.75, depth),
        bare: dice.chance(0.2),
        word: dice.pick(&[
            Word::Auto,
            Word::Auto,
            Word::Auto,
            Word::Auto,
            Word::Always,
            Word::Never,
        ]),
    }
}

/// Ice of an inventory: somewhere on the line, or a zone's own outline drawn a little otherwise.
fn inventory(dice: &mut Dice, ground: &Ground, flat: &[Flat], grid: bool) -> Vec<Patch> {
    let number = dice.pick(&[0, 1, 1, 2]);
    (0..number)
        .map(|_| {
            let reach_m = dice.pick(&[40.0, 200.0, 700.0, 1500.0]);
            let centre = on_line(dice, flat);
            ground.patch(&polygon(dice, centre, reach_m, grid))
        })
        .collect()
}

fn segments(dice: &mut Dice, ground: &Ground, flat: &[Flat]) -> Vec<Vec<Spot>> {
    let spots = ground.ring(flat);
    if spots.len() < 5 || !dice.chance(0.15) {
        return vec![spots];
    }
    let cut = dice.whole(2, spots.len() as u32 - 3) as usize;
    // One point later it is a jump, from the same point on it is none.
    let again = if dice.chance(0.6) { cut } else { cut - 1 };
    vec![spots[..cut].to_vec(), spots[again..].to_vec()]
}

fn masses(dice: &mut Dice, people: usize) -> Vec<f64> {
    let usual = dice.chance(0.5);
    let mass = |dice: &mut Dice| {
        if usual {
            dice.tenths(70.0, 90.0)
        } else {
            dice.tenths(45.0, 125.0)
        }
    };
    (0..people).map(|_| mass(dice)).collect()
}

fn ropes(dice: &mut Dice) -> Vec<Rope> {
    let number = dice.pick(&[0, 1, 1, 1, 2]);
    (0..number)
        .map(|_| Rope {
            length_m: dice.pick(&[30.0, 40.0, 45.5, 50.0, 60.0, 70.0, 80.0, 100.0]),
            diameter_mm: dice.pick(&[None, None, Some(8.0), Some(9.0), Some(9.5)]),
        })
        .collect()
}

/// Points between those of some edges in a row, as a receiver that records all the way would give them, and heights that are
/// off: most of them one by one, some beside each other.
fn recorded(dice: &mut Dice, case: &mut Case) {
    let (step_m, most) = (dice.within(10.0, 28.0), 60);
    let mut added = 0;
    let mut left = dice.whole(0, 12);
    for spots in &mut case.segments {
        let mut all = vec![spots[0]];
        for pair in spots.windows(2) {
            let skipped = left > 0 || added >= most;
            left = left.saturating_sub(1);
            if !skipped {
                let between = between(pair[0], pair[1], step_m);
                added += between.len();
                all.extend(between);
            }
            all.push(pair[1]);
        }
        *spots = all;
    }
    let points: usize = case.segments.iter().map(Vec::len).sum();
    for number in 0..points {
        if dice.chance(0.2) {
            let off_m = dice.pick(&[-1.0, 1.0]) * dice.tenths(2.0, 30.0);
            case.off_m.push((number, off_m));
        }
    }
}

/// Points of an edge about so far apart, the same whichever way it is walked, and none on an edge of many kilometres.
fn between(a: Spot, b: Spot, step_m: f64) -> Vec<Spot> {
    let (low, high) = (a.min(b), a.max(b));
    let parts = (apart_m(place(a), place(b)) / step_m).round().min(100.0) as i64;
    let at = |part: i64| {
        let along = |from: i64, to: i64| from + (to - from) * part / parts;
        (along(low.0, high.0), along(low.1, high.1))
    };
    let mut spots: Vec<Spot> = (1..parts).map(at).collect();
    if a > b {
        spots.reverse();
    }
    spots
}

/// The trip of a seed.
pub(super) fn case(seed: u64) -> Case {
    let dice = &mut Dice::of(seed);
    let ground = Ground {
        lon_deg: dice.within(-170.0, 170.0),
        lat_deg: dice.within(-60.0, 72.0),
    };
    let (flat, grid) = line(dice);
    let people = dice.whole(2, 5) as usize;
    let practice = dice.pick(&[
        &PRACTICES[0],
        &PRACTICES[0],
        &PRACTICES[1],
        &PRACTICES[2],
        &PRACTICES[3],
    ]);
    let chest = matches!(practice.reserve, Reserve::Chest { .. });
    let zones = (0..dice.whole(1, 6))
        .map(|_| {
            let patches = patches(dice, &ground, &flat, grid);
            zone(dice, patches)
        })
        .collect();
    let words = [KnotsWord::Auto, KnotsWord::Always, KnotsWord::Never];
    let inventory = inventory(dice, &ground, &flat, grid);
    let mut any = |usual: f64, others: &[f64]| {
        let other = dice.maybe(0.2, |dice| dice.pick(others));
        other.unwrap_or(usual)
    };
    let mut case = Case {
        seed,
        reading: Reading::default(),
        margin_m: any(MARGIN_M, &[5.0, 12.5, 30.0, 40.0]),
        least_unroped_m: any(LEAST_UNROPED_M, &[50.0, 100.0, 300.0]),
        sling_m: any(0.0, &[1.2, 2.4]),
        coil_most_m: any(COIL_MOST_M, &[10.0, 20.0]),
        coil_most_kg: any(COIL_MOST_KG, &[0.5, 1.0]),
        tie_in_m: dice.maybe(0.15, |dice| dice.tenths(1.0, 1.5)),
        segments: segments(dice, &ground, &flat),
        fall_deg: dice.maybe(0.25, |dice| dice.pick(&[8.0, 26.0])),
        off_m: Vec::new(),
        zones,
        inventory,
        only_tell: dice.chance(0.15),
        people,
        masses_kg: dice.maybe(0.5, |dice| masses(dice, people)),
        ropes: ropes(dice),
        practice,
        // What chest coils are worth beside knots no rule says.
        knots: dice.maybe(0.3, |dice| dice.pick(&words)).filter(|_| !chest),
        cover_anyone: dice.chance(0.15),
        rope_on_bare: dice.chance(0.85),
        layout: if dice.chance(0.7) {
            LAYOUTS[0]
        } else {
            dice.pick(&LAYOUTS)
        },
    };
    if case.fall_deg.is_some() && dice.chance(0.6) {
        recorded(dice, &mut case);
    }
    case
}
