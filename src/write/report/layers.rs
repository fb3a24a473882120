//! What lies on a map: zones by width of their gaps, legs by verdict, numbers and signs.

use geo::{
    BooleanOps, BoundingRect, Contains, InteriorPoint, LineString, MultiPolygon, OpType, Polygon,
    algorithm::bool_ops::FillRule,
};
use maud::{Markup, html};

use super::{
    drawn::MapPicture,
    labels::{Labels, round},
    paper::{Paper, PaperSpot, path, u},
    signs,
};
use crate::{
    geometry::{Bounds, LonLat},
    plan::leg::{Leg, Verdict},
    say::{plain, round::Round},
    trip::zone::Zone,
    write::parts::{change::letter, style},
};

/// Radius of the disc of a change, units. Our judgement.
const DISC: f64 = 7.2;

/// Discs nearer than this would lie on each other, their numbers too. Our judgement.
const APART: f64 = 2.4 * DISC;

/// A zone as it lies on one paper.
pub(super) struct OnPaper<'a> {
    pub(super) zone: &'a Zone,
    /// Whether the route meets it.
    met: bool,
    pub(super) shape: MultiPolygon,
}

/// The zones that a paper shows; `met` holds the numbers of those that the route meets, rising.
pub(super) fn zones<'a>(zones: &'a [Zone], met: &[usize], paper: &Paper) -> Vec<OnPaper<'a>> {
    let on = |zone: &'a Zone| {
        let polygons = zone.outline.polygons.iter();
        let shown: Vec<Polygon> = polygons.flat_map(|p| clipped(p, paper)).collect();
        (!shown.is_empty()).then_some(OnPaper {
            zone,
            met: met.binary_search(&zone.number).is_ok(),
            shape: MultiPolygon(shown),
        })
    };
    zones.iter().filter_map(on).collect()
}

/// The part of a polygon on the paper, holes taken out, wherever its longitudes were unrolled to.
fn clipped(polygon: &crate::geometry::Polygon, paper: &Paper) -> Vec<Polygon> {
    let (Some(bounds), shown) = (Bounds::of(&polygon.outer), paper.bounds()) else {
        return Vec::new();
    };
    let turns = [-360.0, 0.0, 360.0].into_iter();
    let turns = turns.filter(|&by| bounds.moved_east(by).meets(&shown));
    turns
        .flat_map(|by| {
            let mut area = MultiPolygon::from(paper.rect().to_polygon());
            area = combined(&area, &polygon.outer, paper, by, OpType::Intersection);
            for hole in &polygon.holes {
                area = combined(&area, hole, paper, by, OpType::Difference);
            }
            area.0
        })
        .collect()
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

/// The lines of all legs, each piece in the style of the word that holds on it, the graver ones above, and which way each
/// is walked.
pub(super) fn legs(picture: &MapPicture<'_>, paper: &Paper, labels: &mut Labels) -> Markup {
    let mut drawn: Vec<(Verdict, String)> = Vec::new();
    let mut walked: Vec<LineString> = Vec::new();
    for line in &picture.legs {
        for (verdict, parts) in line.on(paper) {
            parts.iter().for_each(|part| labels.avoid(part));
            let data: String = parts.iter().map(|part| path(part, false)).collect();
            drawn.push((verdict, data));
            walked.extend(parts);
        }
    }
    drawn.sort_by_key(|(verdict, _)| *verdict);
    let arrows = signs::arrows(&walked, labels);
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

// --- numbers and signs ---

/// Widths in the zones and their names, places to look at, numbers of legs, letters of changes. A map of the whole route may leave out
/// a number that finds no place; the map of its leg shows it.
pub(super) fn signs(
    picture: &MapPicture<'_>,
    paper: &Paper,
    zones: &[OnPaper<'_>],
    labels: &mut Labels,
    whole: bool,
) -> Markup {
    let places = places(picture, paper, labels);
    let looks = signs::on(&picture.signs, paper, labels);
    let numbers = change_numbers(&places, labels, whole);
    let zones: Vec<Worded<'_>> = zones.iter().filter_map(Worded::of).collect();
    let widths = widths(&zones, picture, labels);
    let legs = leg_numbers(picture, paper, labels);
    let names = zone_names(&zones, labels);
    html! { (names) (widths) (looks) (numbers) (legs) }
}

/// The changes on this paper.
fn places(picture: &MapPicture<'_>, paper: &Paper, labels: &mut Labels) -> Vec<(usize, PaperSpot)> {
    let west = paper.bounds().low.lon_deg;
    let on = picture.changes.iter().map(|c| {
        // The plan gives positions as they lie on the unrolled line.
        let turns = ((west - c.at[0]) / 360.0).round();
        let at = LonLat::new(c.at[0] + 360.0 * turns, c.at[1]);
        let straight = paper.at(LonLat::new(c.at[0], c.at[1]));
        let spot = if inside(paper, straight) {
            straight
        } else {
            paper.at(at)
        };
        (c.number, spot)
    });
    let on: Vec<(usize, PaperSpot)> = on.filter(|(_, spot)| inside(paper, *spot)).collect();
    on.iter()
        .for_each(|(_, spot)| labels.keep(*spot, 2.0 * DISC));
    on
}

fn inside(paper: &Paper, (x, y): PaperSpot) -> bool {
    (0.0..=paper.width).contains(&x) && (0.0..=paper.height).contains(&y)
}

/// A disc with its letter; where discs would lie on each other, dots with letters beside them.
fn change_numbers(places: &[(usize, PaperSpot)], labels: &mut Labels, whole: bool) -> Markup {
    let crowded = |number: usize, (x, y): PaperSpot| {
        let near = |(n, s): &(usize, PaperSpot)| *n != number && (s.0 - x).hypot(s.1 - y) < APART;
        places.iter().any(near)
    };
    html! {
        @for &(number, (x, y)) in places {
            @if crowded(number, (x, y)) {
                circle class="change" cx=(u(x)) cy=(u(y)) r="3.6" {}
                @let beside = labels.place(&round((x, y)), letter(number).len());
                @if let Some((x, y)) = beside.or((!whole).then_some((x, y - 12.0))) {
                    text class="number" x=(u(x)) y=(u(y + 3.6)) { (letter(number)) }
                }
            } @else {
                circle class="change" cx=(u(x)) cy=(u(y)) r=(u(DISC)) {}
                text class="disc" x=(u(x)) y=(u(y + 3.4)) { (letter(number)) }
            }
        }
    }
}

/// A zone that the route meets, with places for words inside it and round its middle.
struct Worded<'z> {
    zone: &'z Zone,
    inside: Vec<PaperSpot>,
    around: Vec<PaperSpot>,
}

impl<'z> Worded<'z> {
    fn of(on: &OnPaper<'z>) -> Option<Self> {
        let shapes = on.shape.iter().filter(|_| on.met);
        let largest = shapes.max_by(|a, b| extent(a).total_cmp(&extent(b)))?;
        let inside = within(largest);
        let middle = inside.first();
        Some(Self {
            zone: on.zone,
            around: middle.map_or_else(Vec::new, |&middle| round(middle)),
            inside,
        })
    }
}

fn widths(zones: &[Worded<'_>], picture: &MapPicture<'_>, labels: &mut Labels) -> Markup {
    let voice = picture.sheet.look.voice;
    let mut placed = Vec::new();
    for on in zones {
        let mut shown = voice.length(on.zone.gap.max_m, Round::Up);
        if on.zone.gap.assumed {
            shown.push_str(" ?");
        }
        let signs = shown.chars().count();
        let spot = labels.place(&on.inside, signs);
        if let Some((x, y)) = spot.or_else(|| labels.place(&on.around, signs)) {
            placed.push((shown, x, y));
        }
    }
    html! {
        @for (shown, x, y) in &placed {
            text class="width" x=(u(*x)) y=(u(*y + 3.6)) { (shown) }
        }
    }
}

/// Characters of a zone's name on a map. Our judgement.
const NAME_MOST: usize = 22;

/// Names of zones, where there is room for them.
fn zone_names(zones: &[Worded<'_>], labels: &mut Labels) -> Markup {
    let mut placed = Vec::new();
    for on in zones {
        let Some(name) = &on.zone.name else { continue };
        let name = plain::short(name, NAME_MOST);
        let places = [on.inside.as_slice(), &on.around].concat();
        if let Some((x, y)) = labels.place_small(&places, name.chars().count()) {
            placed.push((name, x, y));
        }
    }
    html! {
        @for (name, x, y) in &placed {
            text class="zone-name" x=(u(*x)) y=(u(*y + 3.6)) { (name) }
        }
    }
}

/// Places inside a polygon, one that surely is inside first.
fn within(polygon: &Polygon) -> Vec<PaperSpot> {
    const STEPS: [f64; 7] = [0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875];
    let sure = polygon.interior_point().map(|p| (p.x(), p.y()));
    let grid = polygon.bounding_rect().into_iter().flat_map(|rect| {
        let (low, width, height) = (rect.min(), rect.width(), rect.height());
        let spot = move |x: f64, y: f64| (low.x + x * width, low.y + y * height);
        STEPS
            .into_iter()
            .flat_map(move |y| STEPS.map(|x| spot(x, y)))
    });
    let inside = grid.filter(|&(x, y)| polygon.contains(&geo::Point::new(x, y)));
    sure.into_iter().chain(inside).collect()
}

fn extent(polygon: &Polygon) -> f64 {
    use geo::Area;
    polygon.unsigned_area()
}

fn leg_numbers(picture: &MapPicture<'_>, paper: &Paper, labels: &mut Labels) -> Markup {
    let mut placed = Vec::new();
    let roped_first = |roped: bool| picture.legs.iter().filter(move |l| l.leg.roped == roped);
    for line in roped_first(true).chain(roped_first(false)) {
        let spot = line.middle.map(|p| paper.at(p));
        let Some(spot) = spot.filter(|spot| labels.may_place(*spot)) else {
            continue;
        };
        let text = leg_sign(line.leg);
        if let Some(at) = labels.place(&round(spot), text.chars().count() + 1) {
            placed.push((line.leg.verdict, text, at));
        }
    }
    html! {
        @for (verdict, text, (x, y)) in &placed {
            (pill(*verdict, text, (*x, *y)))
        }
    }
}

/// `2`, `2 ?`, `2 ✕`.
pub(super) fn leg_sign(leg: &Leg) -> String {
    format!("{} {}", leg.leg, style::sign(leg.verdict))
        .trim_end()
        .to_owned()
}

/// The number of a leg on a plate of its colour.
pub(super) fn pill(verdict: Verdict, text: &str, (x, y): PaperSpot) -> Markup {
    #[expect(clippy::cast_precision_loss, reason = "some signs")]
    let width = text.chars().count() as f64 * 6.2 + 8.0;
    html! {
        rect class={ "pill " (verdict.as_str()) } x=(u(x - width / 2.0)) y=(u(y - 7.0))
            width=(u(width)) height="14" rx="7" {}
        text class={ "pill " (verdict.as_str()) } x=(u(x)) y=(u(y + 3.6)) { (text) }
    }
}
