//! Which zones a stage meets, and where.

use std::collections::BTreeMap;

use rstar::{AABB, RTree, primitives::GeomWithData, primitives::Rectangle};

use crate::meet::crossing;
use crate::{
    geometry::{Bounds, area::Area},
    trip::{
        route::{Stage, Stretch},
        zone::Zone,
    },
};

/// Edges of the route that are looked up together: most are nowhere near a zone. Our judgement.
const BLOCK: usize = 64;

/// Pieces that meet within this many metres are one, shorter ones are mere touches.
pub const SAME_PLACE_M: f64 = 1e-6;

/// Where one stage meets one zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Index of the zone in the slice it came from.
    pub zone: usize,
    /// The bare crossings of the polygon, without margin, in walking order; never across a jump.
    pub crossings: Vec<Stretch>,
    /// The same widened by the margin along and beside the line, cut off at the ends of the stage.
    pub touches: Vec<Stretch>,
}

/// A run of route edges inside one segment, with its box.
#[derive(Clone, Copy, Debug)]
pub(super) struct Block {
    /// Index of the first point.
    pub(super) first: usize,
    /// Index of the last point; the next block may begin with it.
    pub(super) last: usize,
    /// Which segment of the stage it belongs to.
    pub(super) segment: usize,
    /// Box round its points.
    pub(super) bounds: Bounds,
}

/// Every zone that the stage comes within `margin_m` metres of, in zone order.
#[must_use]
pub fn contacts(stage: &Stage, zones: &[Zone], margin_m: f64) -> Vec<Contact> {
    let blocks = blocks_of(stage);
    let Some(reach) = blocks.iter().map(|b| b.bounds).reduce(Bounds::with) else {
        return Vec::new();
    };
    let tree = box_tree(zones);
    let mut found: BTreeMap<usize, crossing::Trace> = BTreeMap::new();
    for turn in turns(&tree, reach.widened(margin_m)) {
        let east_deg = 360.0 * turn;
        for (zone, near) in zones_near(&tree, &blocks, margin_m, east_deg) {
            if let Some(area) = Area::new(&zones[zone].outline, east_deg) {
                found
                    .entry(zone)
                    .or_default()
                    .walk(stage, &area, &near, margin_m);
            }
        }
    }
    found
        .into_iter()
        .filter_map(|(zone, trace)| trace.contact(stage, zone, margin_m))
        .collect()
}

type BoxTree = RTree<GeomWithData<Rectangle<[f64; 2]>, usize>>;

fn corners(b: &Bounds) -> ([f64; 2], [f64; 2]) {
    (
        [b.low.lon_deg, b.low.lat_deg],
        [b.high.lon_deg, b.high.lat_deg],
    )
}

fn box_tree(zones: &[Zone]) -> BoxTree {
    let boxes = zones.iter().enumerate().filter_map(|(i, zone)| {
        let (low, high) = corners(&zone.outline.bounds()?);
        Some(GeomWithData::new(Rectangle::from_corners(low, high), i))
    });
    RTree::bulk_load(boxes.collect())
}

/// By how many whole turns the zones must be moved east to meet the unrolled line.
fn turns(tree: &BoxTree, reach: Bounds) -> impl Iterator<Item = f64> + use<> {
    let all = tree.root().envelope();
    let least = ((reach.low.lon_deg - all.upper()[0]) / 360.0).ceil();
    let most = ((reach.high.lon_deg - all.lower()[0]) / 360.0).floor();
    std::iter::successors(Some(least), |t| Some(t + 1.0)).take_while(move |&t| t <= most)
}

/// For every zone whose box comes near a block, those blocks in walking order.
fn zones_near(
    tree: &BoxTree,
    blocks: &[Block],
    margin_m: f64,
    east_deg: f64,
) -> BTreeMap<usize, Vec<Block>> {
    let mut near: BTreeMap<usize, Vec<Block>> = BTreeMap::new();
    for block in blocks {
        let (low, high) = corners(&block.bounds.widened(margin_m).moved_east(-east_deg));
        for hit in tree.locate_in_envelope_intersecting(&AABB::from_corners(low, high)) {
            near.entry(hit.data).or_default().push(*block);
        }
    }
    near
}

fn blocks_of(stage: &Stage) -> Vec<Block> {
    let mut blocks = Vec::new();
    for (segment, range) in stage.segments().enumerate() {
        for first in (range.start..range.end.saturating_sub(1)).step_by(BLOCK) {
            let last = (first + BLOCK).min(range.end - 1);
            if let Some(bounds) = Bounds::of(&stage.points()[first..=last]) {
                blocks.push(Block {
                    first,
                    last,
                    segment,
                    bounds,
                });
            }
        }
    }
    blocks
}
