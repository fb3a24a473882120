//! The ice of a job, indexed once: which zones a stage meets, and where.

use std::{collections::BTreeMap, sync::OnceLock};

use rstar::{AABB, RTree, primitives::GeomWithData, primitives::Rectangle};

use crate::{
    geometry::{
        Bounds, LonLat,
        area::{Area, HoleIndex},
    },
    meet::{
        contact::{Block, Contact},
        covered,
        crossing::{Ground, Trace},
    },
    trip::{route::Stage, zone::Zone},
};

/// Edges of the route that are looked up together: most are nowhere near a zone. Our judgement.
const BLOCK: usize = 64;

/// Outlines ready to be met by any number of lines: boxes in a tree, rings in runs of edges made on first use.
///
/// ```
/// use schrund::{example, meet::Ice};
///
/// let (job, pair) = (example::job()?, example::pair()?);
/// let ice = Ice::of(&pair.zones);
/// // The same ice is met by any number of lines.
/// let met = ice.contacts(&pair.route.stages[0], 0.0).into_iter().filter_map(|contact| contact.of.zone());
/// assert_eq!(met.collect::<Vec<_>>(), [0, 1]);
/// assert!(ice.contacts(&job.route.stages[0], 0.0).is_empty(), "22 km west of it");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct Ice<'z> {
    zones: &'z [Zone],
    tree: BoxTree,
    /// By index of the zone, as the file has it; outlines moved east by whole turns are made when asked for.
    areas: Vec<OnceLock<Option<Area>>>,
    /// By index of the zone: its holes that other zones cover.
    covered: Vec<OnceLock<Vec<HoleIndex>>>,
}

impl<'z> Ice<'z> {
    /// Makes the ice of these zones ready.
    #[must_use]
    pub fn of(zones: &'z [Zone]) -> Self {
        Self {
            zones,
            tree: box_tree(zones),
            areas: zones.iter().map(|_| OnceLock::new()).collect(),
            covered: zones.iter().map(|_| OnceLock::new()).collect(),
        }
    }

    /// Every zone that the stage comes within `margin_m` metres of, in zone order.
    #[must_use]
    pub fn contacts(&self, stage: &Stage, margin_m: f64) -> Vec<Contact> {
        let blocks = blocks_of(stage);
        let Some(reach) = blocks.iter().map(|b| b.bounds).reduce(Bounds::with) else {
            return Vec::new();
        };
        let mut found: BTreeMap<usize, Trace> = BTreeMap::new();
        for turn in turns(&self.tree, reach.widened(margin_m)) {
            let east_deg = 360.0 * turn;
            for (zone, near) in zones_near(&self.tree, &blocks, margin_m, east_deg) {
                let trace = found.entry(zone).or_default();
                let covered = self.covered(zone, margin_m);
                self.walk(zone, east_deg, |area| {
                    let ground = Ground {
                        area,
                        covered,
                        margin_m,
                    };
                    trace.walk(stage, ground, &near);
                });
            }
        }
        found
            .into_iter()
            .filter_map(|(zone, trace)| trace.contact(stage, zone, margin_m))
            .collect()
    }

    /// Indices of the zones that the straight way from one place to another passes over.
    #[must_use]
    pub fn under(&self, from: LonLat, to: LonLat) -> Vec<usize> {
        let mut way = Stage::new(None);
        way.push(from, None);
        way.push(to, None);
        let contacts = self.contacts(&way, 0.0);
        contacts
            .iter()
            .filter_map(|contact| contact.of.zone())
            .collect()
    }

    fn walk(&self, zone: usize, east_deg: f64, walk: impl FnOnce(&Area)) {
        if east_deg == 0.0 {
            if let Some(area) = self.area(zone) {
                walk(area);
            }
        } else if let Some(area) = Area::new(&self.zones[zone].outline, east_deg) {
            walk(&area);
        }
    }

    fn area(&self, zone: usize) -> Option<&Area> {
        let area = self.areas.get(zone)?;
        area.get_or_init(|| Area::new(&self.zones[zone].outline, 0.0))
            .as_ref()
    }

    /// The holes of a zone that other zones cover; without a margin it makes no difference.
    fn covered(&self, zone: usize, margin_m: f64) -> &[HoleIndex] {
        if margin_m <= 0.0 {
            return &[];
        }
        let others = |bounds: &Bounds| {
            let (low, high) = corners(bounds);
            let near = AABB::from_corners(low, high);
            let hits = self.tree.locate_in_envelope_intersecting(&near);
            let others = hits.map(|hit| hit.data).filter(|&other| other != zone);
            let ice = |i: usize| Some((self.zones.get(i)?, self.area(i)?));
            others.filter_map(ice).collect()
        };
        let covered = self.covered.get(zone);
        covered.map_or(&[], |known| {
            known.get_or_init(|| covered::holes(&self.zones[zone], others))
        })
    }
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
            if let Some(bounds) = Bounds::over(stage.points().part(first..last + 1)) {
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
