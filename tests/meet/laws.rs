//! Laws of the crossings themselves.

use geo::Contains;
use proptest::prelude::*;
use schrund::{
    geometry::LonLat,
    meet::{Contact, Ice, contact::Of},
    trip::{
        route::{Stage, Stretch},
        zone::Zone,
    },
};

use crate::fixture::any::{any_line, any_zones, stage};

/// Two chainages are the same place. A straight edge in longitude/latitude of 5 km lies up to half a metre
/// beside the geodesic, so a chainage from its other end differs by 8 h²/3L = 0.2 mm; derived.
const SAME_M: f64 = 1e-3;

fn crossings(stage: &Stage, zones: &[Zone]) -> Vec<(usize, Vec<Stretch>)> {
    let with_crossing = |c: Contact| (c.of.zone().expect("drawn"), c.crossings);
    Ice::of(zones)
        .contacts(stage, 0.0)
        .into_iter()
        .map(with_crossing)
        .filter(|(_, c)| !c.is_empty())
        .collect()
}

/// The same crossings, those shorter than a tenth of a millimetre and the gaps as short left aside.
fn alike(a: &[(usize, Vec<Stretch>)], b: &[(usize, Vec<Stretch>)]) -> Result<(), TestCaseError> {
    let tidy = |all: &[(usize, Vec<Stretch>)]| -> Vec<(usize, Stretch)> {
        let long = |s: &Stretch| s.length_m() > 2.0 * SAME_M;
        let one = |(zone, c): &(usize, Vec<Stretch>)| {
            let merged = Stretch::merged(c.clone(), 2.0 * SAME_M);
            merged
                .into_iter()
                .filter(long)
                .map(|s| (*zone, s))
                .collect::<Vec<_>>()
        };
        all.iter().flat_map(one).collect()
    };
    let (a, b) = (tidy(a), tidy(b));
    prop_assert_eq!(a.len(), b.len(), "{:?} against {:?}", a, b);
    for ((zone_a, a), (zone_b, b)) in a.iter().zip(&b) {
        prop_assert_eq!(zone_a, zone_b);
        prop_assert!((a.from_m - b.from_m).abs() <= SAME_M, "{a:?} against {b:?}");
        prop_assert!((a.to_m - b.to_m).abs() <= SAME_M, "{a:?} against {b:?}");
    }
    Ok(())
}

fn moved(line: &[LonLat], by_deg: f64) -> Vec<LonLat> {
    line.iter()
        .map(|p| LonLat::new(p.lon_deg + by_deg, p.lat_deg))
        .collect()
}

fn zones_moved(zones: &[Zone], by_deg: f64) -> Vec<Zone> {
    let mut zones = zones.to_vec();
    let polygons = zones.iter_mut().flat_map(|z| &mut z.outline.polygons);
    for polygon in polygons {
        polygon.outer = moved(&polygon.outer, by_deg);
        polygon.holes = polygon.holes.iter().map(|h| moved(h, by_deg)).collect();
    }
    zones
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 250, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn another_library_agrees_on_what_is_inside(line in any_line(), zones in any_zones()) {
        // `geo` answers point by point, away from the borders where the two may round differently.
        let stage = stage(&line);
        let found = Ice::of(&zones).contacts(&stage, 0.0);
        for (index, zone) in zones.iter().enumerate() {
            let polygon = to_geo(zone);
            let crossings = found.iter().find(|c| c.of == Of::Zone(index)).map_or(&[][..], |c| &c.crossings);
            for k in 0..200_u16 {
                let at_m = stage.length_m() * (f64::from(k) + 0.37) / 200.0;
                let near_border = |s: &Stretch| (s.from_m - at_m).abs() < 0.01 || (s.to_m - at_m).abs() < 0.01;
                if crossings.iter().any(near_border) {
                    continue;
                }
                let inside = crossings.iter().any(|s| s.from_m < at_m && at_m < s.to_m);
                let p = stage.at(at_m).unwrap();
                let theirs = polygon.contains(&geo::Point::new(p.lon_deg, p.lat_deg));
                prop_assert_eq!(inside, theirs, "at {} m, zone {}", at_m, index);
            }
        }
    }

    #[test]
    fn walking_back_mirrors_the_crossings(line in any_line(), zones in any_zones()) {
        let there = stage(&line);
        let back = stage(&line.iter().rev().copied().collect::<Vec<_>>());
        let length_m = there.length_m();
        prop_assert!((length_m - back.length_m()).abs() < SAME_M);
        let mirrored = |s: &Stretch| Stretch { from_m: length_m - s.to_m, to_m: length_m - s.from_m };
        let back: Vec<_> = crossings(&back, &zones)
            .iter()
            .map(|(zone, c)| (*zone, c.iter().rev().map(mirrored).collect()))
            .collect();
        alike(&crossings(&there, &zones), &back)?;
    }

    #[test]
    fn moving_everything_east_changes_nothing(
        line in any_line(),
        zones in any_zones(),
        by_deg in prop_oneof![-170.0..170.0, Just(171.98), Just(-188.02), Just(360.0)],
    ) {
        let here = crossings(&stage(&line), &zones);
        let there = crossings(&stage(&moved(&line, by_deg)), &zones_moved(&zones, by_deg));
        alike(&here, &there)?;
        // The zones alone moved once round the world are the same zones.
        alike(&here, &crossings(&stage(&line), &zones_moved(&zones, 360.0)))?;
    }

    #[test]
    fn a_vertex_more_on_a_straight_edge_changes_nothing(
        line in any_line(),
        zones in any_zones(),
        t in 0.01..0.99,
    ) {
        let mut dense = Vec::new();
        for pair in line.windows(2) {
            dense.extend([pair[0], pair[0].along_edge(pair[1], t)]);
        }
        dense.extend(line.last());
        // The dense line is longer by nothing that counts: edges are straight in longitude/latitude and
        // a few kilometres long, geodesics between their parts add up to a millimetre.
        let (plain, dense) = (stage(&line), stage(&dense));
        prop_assert!((plain.length_m() - dense.length_m()).abs() < 0.02 * line.len() as f64);
        let count = |all: &[(usize, Vec<Stretch>)]| {
            all.iter()
                .flat_map(|(z, c)| c.iter().filter(|s| s.length_m() > 0.1).map(move |_| *z))
                .collect::<Vec<_>>()
        };
        prop_assert_eq!(count(&crossings(&plain, &zones)), count(&crossings(&dense, &zones)));
    }

    #[test]
    fn the_margin_only_adds(line in any_line(), zones in any_zones(), margin_m in 0.0..300.0) {
        let stage = stage(&line);
        let covered = |all: &[Contact], zone: Of, s: &Stretch| {
            all.iter().filter(|c| c.of == zone).flat_map(|c| &c.touches).any(|t| {
                t.from_m <= s.from_m + SAME_M && t.to_m >= s.to_m - SAME_M
            })
        };
        let (small, large) =
            (Ice::of(&zones).contacts(&stage, margin_m), Ice::of(&zones).contacts(&stage, margin_m * 1.3 + 1.0));
        for contact in &small {
            for crossing in &contact.crossings {
                prop_assert!(covered(&small, contact.of, crossing), "a crossing outside its own margin");
            }
            for touch in &contact.touches {
                prop_assert!(covered(&large, contact.of, touch), "{touch:?} got lost in a larger margin");
            }
        }
    }

    #[test]
    fn what_is_near_is_what_is_within_the_margin(line in any_line(), zones in any_zones()) {
        // Distances by `geo` in degrees scaled to metres: a second way to the same answer.
        let (stage, margin_m) = (stage(&line), 120.0);
        let found = Ice::of(&zones).contacts(&stage, margin_m);
        for (index, zone) in zones.iter().enumerate() {
            // A hole that the other zones cover is no edge.
            let zone = &without_covered_holes(zone, &zones);
            let touches = found.iter().find(|c| c.of == Of::Zone(index)).map_or(&[][..], |c| &c.touches);
            for k in 0..60_u16 {
                let at_m = stage.length_m() * (f64::from(k) + 0.41) / 60.0;
                let p = stage.at(at_m).unwrap();
                if in_hole(&zones[index], p) && !in_hole(zone, p) {
                    continue;
                }
                let distance_m = distance_m(zone, p);
                let touched = touches.iter().any(|t| t.from_m <= at_m && at_m <= t.to_m);
                if distance_m < margin_m - 1.0 {
                    prop_assert!(touched, "{distance_m} m from zone {index} at {at_m} m, and not touched");
                }
            }
        }
    }
}

fn to_geo(zone: &Zone) -> geo::MultiPolygon {
    let polygons = zone.outline.polygons.iter();
    polygons
        .map(|p| {
            geo::Polygon::new(
                line_of(&p.outer),
                p.holes.iter().map(|hole| line_of(hole)).collect(),
            )
        })
        .collect()
}

/// The zone with every hole filled that the others cover, slivers aside.
fn without_covered_holes(zone: &Zone, zones: &[Zone]) -> Zone {
    use geo::{Area, BooleanOps};
    let others = zones.iter().filter(|z| z.number != zone.number);
    let others: Vec<geo::MultiPolygon> = others.map(to_geo).collect();
    let mut filled = zone.clone();
    for polygon in &mut filled.outline.polygons {
        polygon.holes.retain(|hole| {
            let ground = geo::MultiPolygon::from(geo::Polygon::new(line_of(hole), Vec::new()));
            let left = others
                .iter()
                .fold(ground, |left, other| left.difference(other));
            left.unsigned_area() > 1e-9
        });
    }
    filled
}

fn in_hole(zone: &Zone, p: LonLat) -> bool {
    let holes = zone.outline.polygons.iter().flat_map(|p| &p.holes);
    let mut holes = holes.map(|hole| geo::Polygon::new(line_of(hole), Vec::new()));
    holes.any(|hole| hole.contains(&geo::Point::new(p.lon_deg, p.lat_deg)))
}

fn line_of(ring: &[LonLat]) -> geo::LineString {
    geo::LineString::from_iter(ring.iter().map(|p| (p.lon_deg, p.lat_deg)))
}

fn distance_m(zone: &Zone, from: LonLat) -> f64 {
    use geo::{Distance, Euclidean, MapCoords};
    let scale = |c: geo::Coord| geo::Coord {
        x: (c.x - 8.0) * 77_463.0,
        y: (c.y - 46.0) * 111_151.0,
    };
    let p = geo::Point::from(scale(geo::Coord {
        x: from.lon_deg,
        y: from.lat_deg,
    }));
    let polygons = to_geo(zone).map_coords(scale);
    polygons
        .iter()
        .map(|polygon| Euclidean.distance(&p, polygon))
        .fold(f64::INFINITY, f64::min)
}
