//! Polygons whose rings do not lie in one another as they should: no ice is lost.

use geo::{Contains, Point};
use proptest::prelude::*;
use schrund::{
    geometry::{LonLat, Outline, area::Area},
    trip::zone::Polygon,
};

use super::{good, noted, ring};

const SQUARE: &str = "[[0,0],[8,0],[8,8],[0,8],[0,0]]";
const INSIDE: &str = "[[2,2],[4,2],[4,4],[2,4],[2,2]]";
const OVER_THE_EDGE: &str = "[[6,2],[10,2],[10,4],[6,4],[6,2]]";
const APART: &str = "[[20,0],[22,0],[22,2],[20,2],[20,0]]";

fn warned(says: &str) -> String {
    format!("warning[rings-misnested]: {says}")
}

#[track_caller]
fn polygons(rings: &[&str], warnings: &[&str]) -> Vec<Polygon> {
    let warnings: Vec<String> = warnings.iter().map(|w| warned(w)).collect();
    let warnings: Vec<&str> = warnings.iter().map(String::as_str).collect();
    let mut zones = noted(&ring(&rings.join(",")), &warnings);
    zones.remove(0).outline.polygons
}

const ORDER: &str = "1 polygon whose outer ring does not come first: the largest ring that holds another was taken\n  at: z.geojson\n  do: write the outer ring first, as GeoJSON has it";
const OF_ITS_OWN: &str = "1 ring lies in no outer ring and counts as ice of its own\n  at: z.geojson\n  do: where it was meant as a hole, draw it inside its zone";
const STICKS_OUT: &str = "1 hole sticks out of its outer ring: cut out where it lies inside, ice where it sticks out\n  at: z.geojson\n  do: where no ice is meant, draw the hole inside its zone";

#[test]
fn the_largest_ring_that_holds_another_is_the_outer_one() {
    let right = polygons(&[SQUARE, INSIDE], &[]);
    assert_eq!(polygons(&[INSIDE, SQUARE], &[ORDER]), right);
    // A thin ring with a larger box that holds nothing is none.
    let thin = "[[-30,-30],[-29,-30],[40,39],[40,40],[-30,-30]]";
    let far = polygons(&[SQUARE, INSIDE, thin], &[STICKS_OUT]);
    assert_eq!(far[0].outer, right[0].outer);
    // Rings with one box: the one that covers more.
    let diamond = "[[4,0],[8,4],[4,8],[0,4],[4,0]]";
    assert_eq!(
        polygons(&[diamond, SQUARE], &[ORDER])[0].outer,
        right[0].outer
    );
}

#[test]
fn a_ring_that_lies_in_no_other_is_ice_of_its_own() {
    let two = polygons(&[SQUARE, APART], &[OF_ITS_OWN]);
    assert_eq!(two.len(), 2);
    assert!(two.iter().all(|p| p.holes.is_empty()), "{two:?}");
    // The ring drawn twice does not cut itself out.
    let twice = polygons(&[SQUARE, SQUARE], &[OF_ITS_OWN]);
    assert!(twice.iter().all(|p| p.holes.is_empty()), "{twice:?}");
    // An outer ring without area takes nothing with it.
    assert_eq!(polygons(&["[[0,0],[1,1],[0,0]]", APART], &[]).len(), 1);
}

#[test]
fn a_hole_is_cut_out_only_where_it_lies_inside() {
    let polygons = polygons(&[SQUARE, OVER_THE_EDGE], &[STICKS_OUT]);
    let area = Area::new(&Outline { polygons }, 0.0).unwrap();
    for (x, y, ice) in [
        (5.0, 3.0, true),
        (7.0, 3.0, false),
        (9.0, 3.0, true),
        (9.0, 5.0, false),
    ] {
        assert_eq!(area.contains(LonLat::new(x, y)), ice, "{x} {y}");
    }
}

#[test]
fn what_is_told_is_counted_over_the_file() {
    let rings = [
        INSIDE,
        SQUARE,
        APART,
        OVER_THE_EDGE,
        "[[6,5],[10,5],[10,6],[6,6],[6,5]]",
    ];
    let read = good(&ring(&rings.join(",")));
    let told: Vec<String> = read.notes.iter().map(ToString::to_string).collect();
    assert_eq!(told.len(), 3, "{told:#?}");
    assert!(
        told[0].starts_with(&warned("1 polygon ")) && told[1].starts_with(&warned("1 ring ")),
        "{told:#?}"
    );
    assert!(told[2].starts_with(&warned("2 holes ")), "{told:#?}");
}

/// A star-shaped ring on a grid, so that rings share corners and edges now and then.
fn any_star() -> impl Strategy<Value = Vec<(i32, i32)>> {
    let middle = (-6..=6_i32, -6..=6_i32);
    (middle, proptest::collection::vec(1..=6_i32, 4)).prop_map(|((x, y), reach)| {
        let ways = [(1, 0), (0, 1), (-1, 0), (0, -1)];
        let corner = |((dx, dy), r): (&(i32, i32), &i32)| (x + dx * r, y + dy * r);
        ways.iter().zip(&reach).map(corner).collect()
    })
}

fn written(ring: &[(i32, i32)]) -> String {
    let corners = ring
        .iter()
        .chain(ring.first())
        .map(|(x, y)| format!("[{x},{y}]"));
    format!("[{}]", corners.collect::<Vec<_>>().join(","))
}

fn holds(ring: &[(i32, i32)], x: f64, y: f64) -> bool {
    let line = ring.iter().map(|&(x, y)| (f64::from(x), f64::from(y)));
    geo::Polygon::new(line.collect(), Vec::new()).contains(&Point::new(x, y))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn of_two_rings_all_is_ice_that_lies_in_one_of_them_whatever_their_order(a in any_star(), b in any_star()) {
        let ice = |rings: [&Vec<(i32, i32)>; 2]| {
            let text = ring(&rings.map(|r| written(r)).join(","));
            Area::new(&good(&text).value[0].outline, 0.0).unwrap()
        };
        let (ab, ba) = (ice([&a, &b]), ice([&b, &a]));
        let same: bool = {
            let corners = |r: &[(i32, i32)]| r.iter().copied().collect::<std::collections::BTreeSet<_>>();
            corners(&a) == corners(&b)
        };
        for i in 0..26_i32 {
            for j in 0..26_i32 {
                let (x, y) = (f64::from(i) - 12.6173, f64::from(j) - 12.3714);
                let (in_a, in_b) = (holds(&a, x, y), holds(&b, x, y));
                let want = if same { in_a } else { in_a != in_b };
                let p = LonLat::new(x, y);
                prop_assert_eq!(ab.contains(p), want, "{} {} in the first order", x, y);
                prop_assert_eq!(ba.contains(p), want, "{} {} in the other order", x, y);
            }
        }
    }
}
