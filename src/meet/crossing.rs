//! Walks a line through one area and notes where it is inside and where it is near.
//!
//! An edge that touches no ring edge is inside as a whole or not at all, so one exact question settles
//! it and all edges after it up to the next touch. An edge that does touch is cut at every touch and
//! each piece is asked at its middle; pieces that run along a ring edge are inside.

use crate::meet::contact::{Block, Contact, Of, SAME_PLACE_M};
use crate::{
    geometry::{
        Bounds, LonLat,
        area::{Area, Edge},
        frame::Frame,
        segment::{self, EdgePart},
    },
    trip::route::{Stage, Stretch},
};

/// Longest piece of an edge measured in one flat frame, degrees (2.2 km of latitude): keeps the
/// margin true to a centimetre. Our judgement, after the error table of [`crate::geometry::frame`].
const FLAT_DEG: f64 = 0.02;

/// What was found along one stage for one zone.
#[derive(Debug, Default)]
pub(super) struct Trace {
    /// Inside stretches by segment, in any order.
    inside: Vec<(usize, Stretch)>,
    /// Stretches within the margin of a ring edge.
    near: Vec<Stretch>,
}

/// Index of the edge's first point.
type EdgeIndex = usize;

impl Trace {
    /// Follows the stage through the blocks that come near the area.
    pub(super) fn walk(&mut self, stage: &Stage, area: &Area, blocks: &[Block], margin_m: f64) {
        let mut inside_at_end: Option<(usize, bool)> = None;
        for block in blocks {
            let known = inside_at_end
                .filter(|(at, _)| *at == block.first)
                .map(|(_, inside)| inside);
            let edges: Vec<Edge> = area.edges_near(block.bounds.widened(margin_m)).collect();
            let state = self.walk_block(stage, area, block, &edges, known);
            inside_at_end = state.map(|inside| (block.last, inside));
            if margin_m > 0.0 {
                self.mark_near(stage, block, &edges, margin_m);
            }
        }
    }

    /// Returns whether the last point of the block is inside, if that is settled.
    fn walk_block(
        &mut self,
        stage: &Stage,
        area: &Area,
        block: &Block,
        edges: &[Edge],
        known: Option<bool>,
    ) -> Option<bool> {
        let points = stage.points();
        let mut state = known;
        for i in block.first..block.last {
            let (a, b) = (points[i], points[i + 1]);
            let touches = touches(a, b, edges);
            if touches.is_empty() {
                let inside = state.unwrap_or_else(|| area.contains(a));
                state = Some(inside);
                if inside {
                    let (from_m, to_m) = (stage.chainage_m()[i], stage.chainage_m()[i + 1]);
                    self.push(block.segment, Stretch { from_m, to_m });
                }
            } else {
                state = None;
                self.cut(stage, area, block.segment, i, &touches);
            }
        }
        state
    }

    /// Cuts a touched edge and keeps the pieces that are inside.
    fn cut(&mut self, stage: &Stage, area: &Area, segment: usize, i: EdgeIndex, touches: &[Touch]) {
        let (a, b) = (stage.points()[i], stage.points()[i + 1]);
        let ends = touches.iter().flat_map(|t| [t.part.from, t.part.to]);
        let mut cuts: Vec<f64> = ends.chain([0.0, 1.0]).collect();
        cuts.sort_by(f64::total_cmp);
        cuts.dedup();
        for pair in cuts.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            let middle = a.along_edge(b, f64::midpoint(from, to));
            let along = |t: &&Touch| t.part.from <= from && to <= t.part.to;
            let along_border = touches
                .iter()
                .filter(along)
                .any(|t| !t.of_hole || area.encloses(middle));
            if along_border || area.contains(middle) {
                let (from_m, to_m) = (chainage(stage, i, from), chainage(stage, i, to));
                self.push(segment, Stretch { from_m, to_m });
            }
        }
    }

    fn push(&mut self, segment: usize, next: Stretch) {
        match self.inside.last_mut() {
            Some((s, last)) if *s == segment && (next.from_m - last.to_m).abs() <= SAME_PLACE_M => {
                last.to_m = next.to_m;
            }
            _ => self.inside.push((segment, next)),
        }
    }

    fn mark_near(&mut self, stage: &Stage, block: &Block, edges: &[Edge], margin_m: f64) {
        if edges.is_empty() {
            return;
        }
        for i in block.first..block.last {
            let parts = near_parts(stage.points()[i], stage.points()[i + 1], edges, margin_m);
            for part in parts {
                let (from_m, to_m) = (chainage(stage, i, part.from), chainage(stage, i, part.to));
                self.near.push(Stretch { from_m, to_m });
            }
        }
        self.near = Stretch::merged(std::mem::take(&mut self.near), SAME_PLACE_M);
    }

    /// The result, or nothing where the stage neither crosses the zone nor comes near it.
    pub(super) fn contact(self, stage: &Stage, zone: usize, margin_m: f64) -> Option<Contact> {
        let crossings = self.crossings();
        let length_m = stage.length_m();
        let widened = crossings.iter().map(|c| Stretch {
            from_m: (c.from_m - margin_m).max(0.0),
            to_m: (c.to_m + margin_m).min(length_m),
        });
        let touches = Stretch::merged(widened.chain(self.near).collect(), SAME_PLACE_M);
        (!touches.is_empty()).then_some(Contact {
            of: Of::Zone(zone),
            crossings,
            touches,
        })
    }

    fn crossings(&self) -> Vec<Stretch> {
        let mut by_segment = self.inside.clone();
        by_segment.sort_by_key(|(segment, _)| *segment);
        by_segment
            .chunk_by(|(a, _), (b, _)| a == b)
            .flat_map(|run| Stretch::merged(run.iter().map(|(_, s)| *s).collect(), SAME_PLACE_M))
            .filter(|s| s.length_m() > SAME_PLACE_M)
            .collect()
    }
}

/// Chainage at fraction `t` of edge `i`: that of its start plus the geodesic from there.
fn chainage(stage: &Stage, i: EdgeIndex, t: f64) -> f64 {
    let (start_m, end_m) = (stage.chainage_m()[i], stage.chainage_m()[i + 1]);
    if t <= 0.0 {
        start_m
    } else if t >= 1.0 {
        end_m
    } else {
        let (a, b) = (stage.points()[i], stage.points()[i + 1]);
        (start_m + a.distance_m(a.along_edge(b, t))).min(end_m)
    }
}

/// Where a ring edge touches an edge of the line.
#[derive(Clone, Copy, Debug)]
struct Touch {
    part: EdgePart,
    /// The border of a hole is ice only where the hole lies in ice.
    of_hole: bool,
}

fn touches(a: LonLat, b: LonLat, edges: &[Edge]) -> Vec<Touch> {
    let bounds = edge_bounds(a, b);
    let near = edges.iter().filter(|e| e.bounds().meets(&bounds));
    let touch = |e: &Edge| {
        let part = segment::contact(a, b, e.from, e.to)?;
        Some(Touch {
            part,
            of_hole: e.of_hole,
        })
    };
    near.filter_map(touch).collect()
}

fn edge_bounds(a: LonLat, b: LonLat) -> Bounds {
    Bounds { low: a, high: a }.with(Bounds { low: b, high: b })
}

/// The parts of an edge within the margin of any ring edge, as fractions of the whole edge.
fn near_parts(a: LonLat, b: LonLat, edges: &[Edge], margin_m: f64) -> Vec<EdgePart> {
    let bounds = edge_bounds(a, b).widened(margin_m);
    let near: Vec<&Edge> = edges.iter().filter(|e| e.bounds().meets(&bounds)).collect();
    if near.is_empty() {
        return Vec::new();
    }
    let size = (b.lon_deg - a.lon_deg)
        .abs()
        .max((b.lat_deg - a.lat_deg).abs());
    let pieces = (size / FLAT_DEG).ceil().max(1.0);
    let steps = std::iter::successors(Some(0.0), |k| Some(k + 1.0)).take_while(|&k| k < pieces);
    steps
        .map(|k| EdgePart {
            from: k / pieces,
            to: (k + 1.0) / pieces,
        })
        .flat_map(|piece| near_in_piece(a, b, piece, &near, margin_m))
        .collect()
}

fn near_in_piece(
    a: LonLat,
    b: LonLat,
    piece: EdgePart,
    edges: &[&Edge],
    margin_m: f64,
) -> Vec<EdgePart> {
    let (start, end) = (a.along_edge(b, piece.from), a.along_edge(b, piece.to));
    let bounds = Bounds::with(
        Bounds {
            low: start,
            high: start,
        },
        Bounds {
            low: end,
            high: end,
        },
    );
    let wide = bounds.widened(margin_m);
    let frame = Frame::at(start.along_edge(end, 0.5));
    let scale = piece.to - piece.from;
    edges
        .iter()
        .filter(|e| e.bounds().meets(&wide))
        .filter_map(|e| {
            let local = |p| frame.local(p);
            segment::within(
                local(start),
                local(end),
                local(e.from),
                local(e.to),
                margin_m,
            )
        })
        .map(|part| EdgePart {
            from: piece.from + scale * part.from,
            to: piece.from + scale * part.to,
        })
        .collect()
}
