//! Borders, corners and rings that cross themselves: what the exact cutter says of them.

use super::{
    case::{Patch, Spot},
    exact::pieces,
};

fn ring(outer: &[Spot]) -> Patch {
    Patch {
        outer: outer.to_vec(),
        holes: Vec::new(),
    }
}

fn square() -> Patch {
    ring(&[(0, 0), (10, 0), (10, 10), (0, 10)])
}

#[track_caller]
fn inside(what: &str, a: Spot, b: Spot, patch: &Patch, want: &[(f64, f64)]) {
    let got = pieces(a, b, std::slice::from_ref(patch));
    let got: Vec<(f64, f64)> = got.iter().map(|(a, b)| (a.value(), b.value())).collect();
    assert_eq!(got, want, "{what}");
}

#[test]
fn touches_and_borders() {
    let square = square();
    inside("through", (-10, 5), (30, 5), &square, &[(0.25, 0.5)]);
    inside("past a corner", (-5, 5), (5, -5), &square, &[]);
    let along = [(0.25, 0.5)];
    inside("along a border", (-10, 10), (30, 10), &square, &along);
    inside("beyond it", (-10, 11), (30, 11), &square, &[]);
    let within = [(0.0, 1.0)];
    inside("within a border", (2, 0), (8, 0), &square, &within);
}

#[test]
fn rings_that_cross_themselves() {
    // Round the middle twice: by the even-odd rule it would be a hole.
    let pentagram = ring(&[(0, 100), (59, -81), (-95, 31), (95, 31), (-59, -81)]);
    let all: f64 = pieces((-200, 0), (200, 0), std::slice::from_ref(&pentagram))
        .iter()
        .map(|(a, b)| (b.value() - a.value()) * 400.0)
        .sum();
    assert!(all > 100.0, "{all}: its middle is in it");
    // Two triangles, left and right, one of each winding: both are in it.
    let tie = ring(&[(0, 0), (10, 10), (10, 0), (0, 10)]);
    let both = [(0.0, 0.1), (0.9, 1.0)];
    inside("a bow tie", (0, 9), (10, 9), &tie, &both);
    inside("a bow tie", (0, 1), (10, 1), &tie, &both);
}

#[test]
fn a_rock_island_is_outside_and_its_border_is_not() {
    let mut patch = square();
    patch.holes = vec![vec![(4, 4), (6, 4), (6, 6), (4, 6)]];
    let around = [(0.0, 0.4), (0.6, 1.0)];
    inside("through it", (0, 5), (10, 5), &patch, &around);
    let pieces = pieces((0, 4), (10, 4), std::slice::from_ref(&patch));
    assert_eq!(pieces.len(), 3, "along its border: cut, and all of it ice");
}
