//! Rings of positions become outlines: closed, without doubled vertices, unrolled across the antimeridian, the outer
//! one first.

use geojson::Position;

use super::nesting::{self, Misnested};
use crate::{
    fault::{
        Fault, Place,
        coordinates::{Misplaced, NoLonLat},
        geojson::InGeojson,
    },
    geometry::lonlat::{ANTIMERIDIAN_MISSED_DEG, LonLat, ROUNDING_DEG},
    trip::zone::{Outline, Polygon},
};

/// Beyond this no longitude is meant, even one that went round the world; our judgement.
const PROJECTED_DEG: f64 = 360.0;
/// Different points below which a ring covers nothing.
const FEWEST_POINTS: usize = 3;

/// What was mended, counted over the file.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Mended {
    pub(super) closed: usize,
    pub(super) no_area: usize,
    /// Longitudes just beyond ±180, drawn back.
    pub(super) beyond: usize,
    pub(super) misnested: Misnested,
}

impl Mended {
    /// Counts what was mended elsewhere too.
    pub(super) fn add(&mut self, more: &Self) {
        self.closed += more.closed;
        self.no_area += more.no_area;
        self.beyond += more.beyond;
        self.misnested.order += more.misnested.order;
        self.misnested.apart += more.misnested.apart;
        self.misnested.partly += more.misnested.partly;
    }
}

/// A position as it was written.
pub(super) trait Numbers {
    /// Longitude, latitude, and whatever stands behind them.
    fn numbers(&self) -> &[f64];
}

impl Numbers for Position {
    fn numbers(&self) -> &[f64] {
        self.as_slice()
    }
}

impl Numbers for [f64; 2] {
    fn numbers(&self) -> &[f64] {
        self
    }
}

/// The outline of a feature; empty where none of its polygons has an area.
///
/// # Errors
/// The first position that is no longitude and latitude in degrees.
pub(super) fn outline<P: Numbers>(
    polygons: Vec<Vec<Vec<P>>>,
    mended: &mut Mended,
) -> Result<Outline, Fault> {
    let several = polygons.len() > 1;
    let mut outline = Outline::default();
    for (index, rings) in polygons.into_iter().enumerate() {
        let found = polygons_of(rings, mended).map_err(|mut misplaced| {
            misplaced.polygon = several.then_some(index + 1);
            Fault::new(InGeojson::Misplaced(misplaced), Place::default())
        })?;
        outline.polygons.extend(found);
    }
    outline.polygons.shrink_to_fit();
    Ok(outline)
}

/// The polygons that the rings of one come to: nearly always just one.
fn polygons_of<P: Numbers>(
    rings: Vec<Vec<P>>,
    mended: &mut Mended,
) -> Result<Vec<Polygon>, Misplaced> {
    let mut closed = Vec::with_capacity(rings.len());
    for (number, positions) in rings.into_iter().enumerate() {
        closed.extend(ring(&positions, number, mended)?);
    }
    if closed.is_empty() {
        mended.no_area += 1;
    }
    Ok(nesting::nested(closed, &mut mended.misnested))
}

/// A closed ring, or none where fewer than three of its points differ.
fn ring<P: Numbers>(
    positions: &[P],
    number: usize,
    mended: &mut Mended,
) -> Result<Option<Vec<LonLat>>, Misplaced> {
    let mut ring: Vec<LonLat> = Vec::with_capacity(positions.len() + 1);
    for (index, position) in positions.iter().enumerate() {
        let here = lonlat(position.numbers()).map_err(|why| Misplaced {
            numbers: position.numbers().iter().take(2).copied().collect(),
            why,
            position: index + 1,
            ring: number,
            polygon: None,
            grids: Vec::new(),
        })?;
        mended.beyond += usize::from(here.beyond_deg() > ROUNDING_DEG);
        let here = here.taken_back();
        if ring.last() != Some(&here) {
            ring.push(here);
        }
    }
    let closed = ring.first() == ring.last();
    if !closed {
        ring.extend(ring.first().copied());
    }
    let mut ring = unrolled(ring);
    // What stood at 180 and at -180 stands in one place now.
    ring.dedup();
    if distinct(&ring) < FEWEST_POINTS {
        return Ok(None);
    }
    mended.closed += usize::from(!closed);
    ring.shrink_to_fit();
    Ok(Some(ring))
}

/// Different points of a ring, counted only as far as it matters.
fn distinct(ring: &[LonLat]) -> usize {
    let mut seen: Vec<LonLat> = Vec::with_capacity(FEWEST_POINTS);
    for point in ring {
        if !seen.contains(point) {
            seen.push(*point);
        }
        if seen.len() == FEWEST_POINTS {
            break;
        }
    }
    seen.len()
}

/// The ring with its longitudes running on across the antimeridian, where a jump shows that it crosses
/// and the ring closes again.
///
/// A ring round a pole does not close, and one drawn along both edges of the map shrinks to a line:
/// both stay as they are.
fn unrolled(ring: Vec<LonLat>) -> Vec<LonLat> {
    let jumps = |edge: &[LonLat]| matches!(edge, [a, b] if (b.lon_deg - a.lon_deg).abs() > 180.0);
    if !ring.windows(2).any(jumps) {
        return ring;
    }
    let mut turns = 0.0;
    let mut last_deg = ring.first().map_or(0.0, |p| p.lon_deg);
    let run_on = ring.iter().map(|point| {
        turns -= ((point.lon_deg - last_deg) / 360.0).round();
        last_deg = point.lon_deg;
        LonLat::new(point.lon_deg + 360.0 * turns, point.lat_deg)
    });
    let run_on: Vec<LonLat> = run_on.collect();
    let (west, east) = nesting::extent_deg(&run_on);
    if run_on.first() == run_on.last() && east > west {
        run_on
    } else {
        ring
    }
}

/// The position; its longitude may still miss the antimeridian.
fn lonlat(numbers: &[f64]) -> Result<LonLat, NoLonLat> {
    let [lon, lat, ..] = *numbers else {
        return Err(NoLonLat::TooShort);
    };
    let within = |value: f64, limit: f64| value.abs() <= limit + ROUNDING_DEG;
    if lon.abs() <= 180.0 + ANTIMERIDIAN_MISSED_DEG && within(lat, 90.0) {
        return Ok(LonLat::new(lon, lat.clamp(-90.0, 90.0)));
    }
    Err(
        if !within(lon, PROJECTED_DEG) || !within(lat, PROJECTED_DEG) {
            NoLonLat::Projected
        } else if within(lat, 90.0) {
            NoLonLat::Longitude
        } else if within(lat, 180.0) && within(lon, 90.0) {
            NoLonLat::Swapped
        } else {
            NoLonLat::Latitude
        },
    )
}
