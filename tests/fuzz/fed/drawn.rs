//! What must hold of zones that were read.

use std::iter::once;

use schrund::{
    geometry::LonLat,
    read::geojson::{Given, zones},
    strip::{LineStrip, append},
    trip::{route::Stretch, zone::Zone},
};

/// A width for those that give none.
pub const GIVEN: Given = Given { gap_m: Some(4.0) };

/// Widest gap that a zone can have, as the schema of zones files says.
const MOST_M: f64 = 100.0;

/// A zone has numbers that are some, rings that close, and is the same once it was written down again.
///
/// # Panics
/// Where it is otherwise.
pub fn sound(zone: &Zone) {
    let gap = zone.gap;
    assert!((0.0..=MOST_M).contains(&gap.max_m), "{gap:?}");
    let low = gap.min_m.is_none_or(|min_m| min_m <= gap.max_m);
    assert!(low, "{gap:?}");
    let strike = zone.strike;
    let axis = strike.is_none_or(|strike| (0.0..180.0).contains(&strike.deg));
    assert!(axis, "{strike:?}");
    for polygon in &zone.outline.polygons {
        for ring in once(&polygon.outer).chain(&polygon.holes) {
            assert!(ring.len() >= 4 && ring.iter().all(on_earth), "{ring:?}");
        }
    }
    again(zone);
}

fn on_earth(at: &LonLat) -> bool {
    at.lat_deg.abs() <= 90.0 && at.lon_deg.is_finite()
}

/// Strips are cut where they cross the antimeridian; a zone that was read lies over it, with longitudes beyond 180°.
fn may_be_strip(zone: &Zone) -> bool {
    let rings = zone
        .outline
        .polygons
        .iter()
        .flat_map(|p| once(&p.outer).chain(&p.holes));
    let mut positions = rings.flatten();
    positions.all(|at| at.lon_deg.abs() <= 180.0)
}

fn again(zone: &Zone) {
    if !may_be_strip(zone) {
        return;
    }
    let feature = strip(zone).feature();
    let read = zones("again.geojson", feature.as_bytes(), &GIVEN);
    let read = read.unwrap_or_else(|faults| panic!("{faults:?}: {feature}"));
    let read = Zone {
        number: zone.number,
        feature: zone.feature,
        other: zone.other.clone(),
        ..read.value[0].clone()
    };
    assert_eq!(&read, zone, "written down again as {feature}");
}

fn strip(zone: &Zone) -> LineStrip {
    LineStrip {
        stretch: Stretch {
            from_m: 0.0,
            to_m: 1.0,
        },
        half_width_m: 1.0,
        area_m2: 1.0,
        again: Vec::new(),
        zone: zone.clone(),
    }
}

/// The file with its first zone behind it once more: the others are as they were.
///
/// # Panics
/// Where they are not.
pub fn one_more(bytes: &[u8], all: &[Zone]) {
    let strips: Vec<LineStrip> = all
        .iter()
        .take(1)
        .filter(|zone| may_be_strip(zone))
        .map(strip)
        .collect();
    let Ok(file) = append::to("ice.geojson", Some(bytes.to_vec()), &strips) else {
        return;
    };
    let count = all.len() + strips.len();
    assert_eq!(file.zones, Some(count), "{}", file.text);
    let read = zones("ice.geojson", file.text.as_bytes(), &GIVEN);
    let read = read.map(|read| read.value).unwrap_or_default();
    assert_eq!(read.get(..all.len()), Some(all), "{}", file.text);
}
