//! What lies on a map: zones by width of their gaps, legs by verdict.

use geo::{BooleanOps, LineString, MultiPolygon, OpType, Polygon, algorithm::bool_ops::FillRule};
use maud::{Markup, html};

use super::{
    beside::Ways,
    drawn::{MapPicture, ZoneBox},
    labels::Labels,
    paper::{Paper, PaperSpot, path},
    signs,
};
use crate::{
    geometry::{Bounds, LonLat},
    plan::leg::{Leg, Verdict},
    trip::zone::Zone,
    write::parts::style,
};

/// A zone as it lies on one paper.
pub(super) struct OnPaper<'a> {
    pub(super) zone: &'a Zone,
    /// Whether the route meets it.
    pub(super) met: bool,
    pub(super) shape: MultiPolygon,
}

/// The zones that a paper shows; `met` holds the numbers of those that the route meets, rising.
pub(super) fn zones<'a>(zones: &[ZoneBox<'a>], met: &[usize], paper: &Paper) -> Vec<OnPaper<'a>> {
    let bounds = paper.bounds();
    let on = |ZoneBox { zone, boxes }: &ZoneBox<'a>| {
        let polygons = boxes.iter().zip(&zone.outline.polygons);
        let shown = polygons.flat_map(|(own, polygon)| {
            let turns = own.iter().flat_map(|own| turns(own, &bounds));
            turns.flat_map(|by| clipped(polygon, paper, by))
        });
        let shown: Vec<Polygon> = shown.collect();
        (!shown.is_empty()).then(|| OnPaper {
            zone,
            met: met.binary_search(&zone.number).is_ok(),
            shape: MultiPolygon(shown),
        })
    };
    zones.iter().filter_map(on).collect()
}

/// The turns of the earth, degrees, by which a box has to be moved to lie on a paper.
fn turns(own: &Bounds, shown: &Bounds) -> impl Iterator<Item = f64> {
    let turns = [-360.0, 0.0, 360.0].into_iter();
    turns.filter(|&by| own.moved_east(by).meets(shown))
}

/// The part of a polygon on the paper, holes taken out, its longitudes moved by so many degrees.
fn clipped(polygon: &crate::geometry::Polygon, paper: &Paper, by_deg: f64) -> Vec<Polygon> {
    let mut area = MultiPolygon::from(paper.rect().to_polygon());
    area = combined(&area, &polygon.outer, paper, by_deg, OpType::Intersection);
    for hole in &polygon.holes {
        area = combined(&area, hole, paper, by_deg, OpType::Difference);
    }
    area.0
}

fn combined(
    area: &MultiPolygon,
    ring: &[LonLat],
    paper: &Paper,
    by_deg: f64,
    how: OpType,
) -> MultiPolygon {
    let moved: Vec<LonLat> = ring
        .iter()
        .map(|p| LonLat::new(p.lon_deg + by_deg, p.lat_deg))
        .collect();
    let shape = MultiPolygon::from(Polygon::new(paper.line(&moved), Vec::new()));
    area.boolean_op_with_fill_rule(&shape, how, FillRule::NonZero)
}

/// Ice that is known and not drawn as a zone: pale, under everything else.
pub(super) fn ice(ice: &[OnPaper<'_>]) -> Markup {
    html! { @for on in ice { path class="ice" d=(area(&on.shape)) {} } }
}

/// The areas themselves.
pub(super) fn zone_shapes(zones: &[OnPaper<'_>]) -> Markup {
    html! {
        @for on in zones {
            path class=(if on.met { "zone" } else { "zone unmet" }) fill=(style::zone_fill(on.zone.gap.max_m)) d=(area(&on.shape)) {}
        }
    }
}

/// The outlines of an area as path data.
pub(super) fn area(shape: &MultiPolygon) -> String {
    shape
        .iter()
        .flat_map(|p| std::iter::once(p.exterior()).chain(p.interiors()))
        .map(|ring| path(ring, true))
        .collect()
}

// --- legs ---

/// A leg as it is drawn on one paper.
pub(super) struct LegWay<'a> {
    pub(super) leg: &'a Leg,
    /// By the word that holds on each piece of it.
    pieces: Vec<(Verdict, Vec<LineString>)>,
    /// All of it in walking order.
    pub(super) lines: Vec<LineString>,
}

impl LegWay<'_> {
    /// Where it begins and where it ends.
    pub(super) fn ends(&self) -> impl Iterator<Item = PaperSpot> {
        let first = self.lines.first().and_then(|line| line.0.first());
        let last = self.lines.last().and_then(|line| line.0.last());
        first.into_iter().chain(last).map(|c| (c.x, c.y))
    }
}

/// The legs on a paper in walking order, each way that is walked back to the right of its line.
pub(super) fn ways<'a>(picture: &MapPicture<'a>, paper: &Paper) -> Vec<LegWay<'a>> {
    let bounds = paper.bounds();
    let near = picture.legs.iter().filter(|line| line.is_near(&bounds));
    let legs: Vec<_> = near.map(|line| (line.leg, line.on(paper))).collect();
    let all = legs.iter().flat_map(|(_, pieces)| pieces);
    let all = all.flat_map(|(_, parts)| parts);
    let (walked, mut along) = (Ways::of(all), 0.0);
    let mut moved = |(verdict, parts): (Verdict, Vec<LineString>)| {
        let parts = parts.iter().map(|part| walked.moved(part, &mut along));
        (verdict, parts.collect::<Vec<_>>())
    };
    let way = |(leg, pieces): (&'a Leg, Vec<_>)| {
        let pieces: Vec<_> = pieces.into_iter().map(&mut moved).collect();
        let lines = pieces.iter().flat_map(|(_, parts)| parts.clone());
        LegWay {
            leg,
            lines: lines.collect(),
            pieces,
        }
    };
    legs.into_iter().map(way).collect()
}

/// The lines of all legs, each piece in the style of the word that holds on it, the graver ones above, and which way each
/// is walked.
pub(super) fn legs(ways: &[LegWay<'_>], labels: &mut Labels) -> Markup {
    let lines = || ways.iter().flat_map(|way| &way.lines);
    lines().for_each(|line| labels.avoid(line));
    let pieces = ways.iter().flat_map(|way| &way.pieces);
    let data = |parts: &[LineString]| parts.iter().map(|part| path(part, false)).collect();
    let drawn = pieces.map(|(verdict, parts)| (*verdict, data(parts)));
    let mut drawn: Vec<(Verdict, String)> = drawn.collect();
    drawn.sort_by_key(|(verdict, _)| *verdict);
    let arrows = signs::arrows(lines(), labels);
    html! {
        @for (verdict, data) in drawn.iter().filter(|(_, data)| !data.is_empty()) {
            (stroke(*verdict, data))
        }
        (arrows)
    }
}

/// A line in the style of a verdict. On top of a white edge, so that it stands out on dark zones.
pub(super) fn stroke(verdict: Verdict, data: &str) -> Markup {
    html! {
        path class="halo" d=(data) {}
        path class={ "leg " (verdict.as_str()) } d=(data) {}
        @if verdict == Verdict::Outside { path class="leg core" d=(data) {} }
        @if verdict == Verdict::Stop { path class="leg bars" d=(data) {} }
    }
}
