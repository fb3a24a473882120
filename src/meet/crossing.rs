//! Walks a line through one area and notes where it is inside and where it is near.
//!
//! An edge that touches no ring edge is inside as a whole or not at all, so one exact question settles
//! it and all edges after it up to the next touch. An edge that does touch is cut at every touch and
//! each piece is asked at its middle; pieces that run along a ring edge are inside.
//!
//! A hole that other ice covers is no edge of the ice: a crossing ends there all the same, since what lies in it
//! belongs to the other zone, but no margin is laid round it.

use crate::meet::contact::{Block, Contact, Of, SAME_PLACE_M};
use crate::{
    geometry::{
        Bounds, LonLat,
        area::{Area, Edge, HoleIndex},
        frame::Frame,
        segment::{self, EdgePart},
    },
    trip::route::{Stage, Stretch},
};

/// Longest piece of an edge measured in one flat frame, degrees (2.2 km of latitude): keeps the
/// margin true to a centimetre. Our judgement, after the error table of [`crate::geometry::frame`].
const FLAT_DEG: f64 = 0.02;

/// One zone as a line meets it.
#[derive(Clone, Copy)]
pub(super) struct Ground<'a> {
    pub(super) area: &'a Area,
    /// Its holes that other ice covers.
    pub(super) covered: &'a [HoleIndex],
    pub(super) margin_m: f64,
}

impl Ground<'_> {
    fn is_covered(&self, hole: Option<HoleIndex>) -> bool {
        hole.is_some_and(|hole| self.covered.contains(&hole))
    }
}

/// What was found along one stage for one zone.
#[derive(Debug, Default)]
pub(super) struct Trace {
    /// Inside stretches by segment, in any order.
    inside: Vec<(usize, Stretch)>,
    /// Stretches within the margin of a ring edge.
    near: Vec<Stretch>,
    /// Where the line meets the border of a covered hole and nothing else: segment and chainage.
    seams: Vec<(usize, f64)>,
}

/// Index of the edge's first point.
type EdgeIndex = usize;

impl Trace {
    /// Follows the stage through the blocks that come near the area.
    pub(super) fn walk(&mut self, stage: &Stage, ground: Ground<'_>, blocks: &[Block]) {
        let margin_m = ground.margin_m;
        let mut inside_at_end: Option<(usize, bool)> = None;
        for block in blocks {
            let known = inside_at_end
                .filter(|(at, _)| *at == block.first)
                .map(|(_, inside)| inside);
            let around = block.bounds.widened(margin_m);
            let near = ground.area.edges_near(around);
            let mut edges: Vec<Edge> = near.filter(|e| e.bounds().meets(&around)).collect();
            let state = self.walk_block(stage, ground, block, &edges, known);
            inside_at_end = state.map(|inside| (block.last, inside));
            if margin_m > 0.0 {
                edges.retain(|edge| !ground.is_covered(edge.hole));
                self.mark_near(stage, block, &edges, margin_m);
            }
        }
    }

    /// Returns whether the last point of the block is inside, if that is settled.
    fn walk_block(
        &mut self,
        stage: &Stage,
        ground: Ground<'_>,
        block: &Block,
        edges: &[Edge],
        known: Option<bool>,
    ) -> Option<bool> {
        let points = stage.points();
        let mut state = known;
        for i in block.first..block.last {
            let (a, b) = points.edge(i);
            let touches = touches(a, b, edges);
            if touches.is_empty() {
                let inside = state.unwrap_or_else(|| ground.area.contains(a));
                state = Some(inside);
                if inside {
                    let (from_m, to_m) = (stage.chainage_m()[i], stage.chainage_m()[i + 1]);
                    self.push(block.segment, Stretch { from_m, to_m });
                }
            } else {
                state = None;
                self.cut(stage, ground, (block.segment, i), &touches);
            }
        }
        state
    }

    /// Cuts a touched edge and keeps the pieces that are inside.
    fn cut(
        &mut self,
        stage: &Stage,
        ground: Ground<'_>,
        (segment, i): (usize, EdgeIndex),
        touches: &[Touch],
    ) {
        let (a, b) = stage.points().edge(i);
        if !ground.covered.is_empty() {
            let seams = seams(touches, ground).map(|t| (segment, chainage(stage, i, t)));
            self.seams.extend(seams);
        }
        for piece in EdgePart::pieces(touches.iter().map(|t| t.part)) {
            let along_border = touches.iter().any(|t| t.part.holds(&piece));
            if along_border || ground.area.contains(a.along_edge(b, piece.middle())) {
                let (from_m, to_m) = (chainage(stage, i, piece.from), chainage(stage, i, piece.to));
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
            let (a, b) = stage.points().edge(i);
            for part in near_parts(a, b, edges, margin_m) {
                let (from_m, to_m) = (chainage(stage, i, part.from), chainage(stage, i, part.to));
                self.near.push(Stretch { from_m, to_m });
            }
        }
        self.near = Stretch::merged(std::mem::take(&mut self.near), SAME_PLACE_M);
    }

    /// The result, or nothing where the stage neither crosses the zone nor comes near it.
    pub(super) fn contact(self, stage: &Stage, zone: usize, margin_m: f64) -> Option<Contact> {
        let length_m = stage.length_m();
        let crossings = self.crossings();
        let widened = crossings.iter().map(|&(segment, c)| {
            let margin_m = |end_m: f64| {
                if self.is_seam(segment, end_m) {
                    0.0
                } else {
                    margin_m
                }
            };
            Stretch {
                from_m: (c.from_m - margin_m(c.from_m)).max(0.0),
                to_m: (c.to_m + margin_m(c.to_m)).min(length_m),
            }
        });
        let touches = widened.chain(self.near.iter().copied()).collect();
        let touches = Stretch::merged(touches, SAME_PLACE_M);
        (!touches.is_empty()).then(|| Contact {
            of: Of::Zone(zone),
            crossings: crossings.into_iter().map(|(_, c)| c).collect(),
            touches,
        })
    }

    fn is_seam(&self, segment: usize, at_m: f64) -> bool {
        let mut here = self.seams.iter().filter(|(of, _)| *of == segment);
        here.any(|(_, m)| (m - at_m).abs() <= SAME_PLACE_M)
    }

    /// The crossings in walking order, each with its segment.
    fn crossings(&self) -> Vec<(usize, Stretch)> {
        let mut by_segment = self.inside.clone();
        by_segment.sort_by_key(|(segment, _)| *segment);
        let in_segment = |run: &[(usize, Stretch)]| {
            let segment = run.first().map_or(0, |(segment, _)| *segment);
            let merged = Stretch::merged(run.iter().map(|(_, s)| *s).collect(), SAME_PLACE_M);
            merged.into_iter().map(move |s| (segment, s))
        };
        by_segment
            .chunk_by(|(a, _), (b, _)| a == b)
            .flat_map(in_segment)
            .filter(|(_, s)| s.length_m() > SAME_PLACE_M)
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
        let (a, b) = stage.points().edge(i);
        (start_m + a.distance_m(a.along_edge(b, t))).min(end_m)
    }
}

/// Where a ring edge touches an edge of the line.
#[derive(Clone, Copy, Debug)]
struct Touch {
    part: EdgePart,
    /// Of which hole it is the border, if of one.
    hole: Option<HoleIndex>,
}

/// Fractions of an edge at which it meets the border of covered holes and no other.
fn seams<'t>(touches: &'t [Touch], ground: Ground<'t>) -> impl Iterator<Item = f64> + 't {
    let (covered, edges): (Vec<&Touch>, Vec<&Touch>) =
        touches.iter().partition(|t| ground.is_covered(t.hole));
    let ends = covered.into_iter().flat_map(|t| [t.part.from, t.part.to]);
    ends.filter(move |&t| {
        let here = EdgePart { from: t, to: t };
        !edges.iter().any(|edge| edge.part.holds(&here))
    })
}

fn touches(a: LonLat, b: LonLat, edges: &[Edge]) -> Vec<Touch> {
    let bounds = edge_bounds(a, b);
    let near = edges.iter().filter(|e| e.bounds().meets(&bounds));
    let touch = |e: &Edge| {
        let part = segment::contact(a, b, e.from, e.to)?;
        Some(Touch { part, hole: e.hole })
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
