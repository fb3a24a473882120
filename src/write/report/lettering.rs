//! What is written on a map: numbers of zones with their widths and names, letters of changes, numbers of legs.

use geo::{BoundingRect, Contains, InteriorPoint, Polygon};
use maud::{Markup, html};

use super::{
    beside,
    drawn::MapPicture,
    extent::{Footprint, NAME, NUMBER, PILL, pill_width},
    labels::{Labels, Placed, RoomLeft, apart, round},
    layers::{LegWay, OnPaper},
    paper::{Paper, PaperSpot, u},
    signs,
};
use crate::{
    geometry::LonLat,
    plan::leg::{Leg, Verdict},
    say::{arg::Arg, plain, round::Round, voice::Voice},
    trip::zone::Zone,
    write::parts::{
        change::{ChangePoint, letter},
        style,
    },
};

/// Radius of the disc of a change and of its dot, units. Our judgement.
const DISC: f64 = 7.2;
const DOT: f64 = 3.4;
/// Discs nearer than this would lie on each other, their numbers too. Our judgement.
const APART: f64 = 2.4 * DISC;
/// The line that words stand on lies so far below the middle of their place, units.
pub(super) const LINE: f64 = 3.6;
/// Characters of a zone's name on a map. Our judgement.
const NAME_MOST: usize = 22;
/// A name stands in its zone or so near that no line leads to it far: so many places round its middle. Our judgement.
const NAME_ROUND: usize = 64;
/// The number of a leg stands so far from its line where there is room, units. Our judgement.
const FROM_LINE: [f64; 5] = [12.0, 15.0, 19.0, 24.0, 30.0];

/// All that is written, the first to find its place first. A map of the whole route may leave out what finds none; the map of
/// its leg shows it.
pub(super) fn signs(
    picture: &MapPicture<'_>,
    paper: &Paper,
    (zones, ways, changes): (&[OnPaper<'_>], &[LegWay<'_>], &[ChangeSpot]),
    labels: &mut Labels,
) -> Markup {
    let voice = picture.sheet.look.voice;
    let letters = letters(changes, labels);
    let legs = leg_numbers(ways, labels);
    let zones: Vec<Worded<'_>> = zones.iter().filter_map(Worded::of).collect();
    let widths = widths(&zones, voice, labels);
    let looks = signs::on(&picture.signs, paper, labels);
    let names = zone_names(&zones, labels);
    html! {
        (leaders(&letters)) (leaders(&legs)) (leaders(&widths))
        (shown_names(&names)) (shown_widths(&widths)) (looks) (dots(changes)) (shown_letters(&letters)) (pills(&legs))
    }
}

/// Thin lines to what stands away from its spot, under all words.
fn leaders<T>(placed: &[(T, Placed)]) -> Markup {
    html! { @for (_, placed) in placed { (placed.led()) } }
}

// --- changes ---

/// A change on this paper; the letters of those that would lie on each other stand beside dots.
pub(super) struct ChangeSpot {
    number: usize,
    at: PaperSpot,
    crowded: bool,
}

/// The changes on this paper, kept free of words.
pub(super) fn changes(
    picture: &MapPicture<'_>,
    paper: &Paper,
    ways: &[LegWay<'_>],
    labels: &mut Labels,
) -> Vec<ChangeSpot> {
    let spots = picture.changes.iter().filter_map(|change| {
        let way = way_of(ways, change.leg.leg)?;
        Some((change.number, change_spot(change, paper, way)))
    });
    let on: Vec<_> = spots.filter(|(_, spot)| labels.is_on(*spot)).collect();
    let crowded = |number: usize, at: PaperSpot| {
        let near = |(n, other): &(usize, PaperSpot)| *n != number && apart(*other, at) < APART;
        on.iter().any(near)
    };
    let spots = on.iter().map(|&(number, at)| ChangeSpot {
        number,
        at,
        crowded: crowded(number, at) || !labels.holds(at, 2.0 * DISC),
    });
    let spots: Vec<ChangeSpot> = spots.collect();
    for spot in &spots {
        let radius = if spot.crowded { DOT + 0.8 } else { DISC + 0.8 };
        labels.keep(spot.at, 2.0 * radius);
    }
    spots
}

/// The way of a leg; they lie in walking order.
fn way_of<'w, 'a>(ways: &'w [LegWay<'a>], leg: usize) -> Option<&'w LegWay<'a>> {
    let at = ways.binary_search_by_key(&leg, |way| way.leg.leg).ok()?;
    ways.get(at)
}

/// Where a change lies: at the end of the line of its leg, which may be drawn beside the way.
fn change_spot(change: &ChangePoint<'_>, paper: &Paper, way: &LegWay<'_>) -> PaperSpot {
    // The plan gives longitudes within half a turn, and the paper may lie on another one.
    let spot = paper.at_wherever(LonLat::new(change.at[0], change.at[1]));
    let near = way
        .ends()
        .filter(|end| apart(*end, spot) <= beside::ASIDE + 0.5);
    near.min_by(|a, b| apart(*a, spot).total_cmp(&apart(*b, spot)))
        .unwrap_or(spot)
}

fn letters(places: &[ChangeSpot], labels: &mut Labels) -> Vec<(String, Placed)> {
    let mut left = RoomLeft::default();
    let crowded = places.iter().filter(|spot| spot.crowded);
    let placed = crowded.filter_map(|spot| {
        let letter = letter(spot.number);
        let room = Footprint::text(&letter, NUMBER, LINE);
        let placed = left.find(|| labels.place_by(spot.at, &round(spot.at), &room))?;
        Some((letter, placed))
    });
    placed.collect()
}

/// Discs with their letters, and dots.
fn dots(places: &[ChangeSpot]) -> Markup {
    html! {
        @for ChangeSpot { number, at: (x, y), crowded } in places {
            @if *crowded {
                circle class="change" cx=(u(*x)) cy=(u(*y)) r=(u(DOT)) {}
            } @else {
                circle class="change" cx=(u(*x)) cy=(u(*y)) r=(u(DISC)) {}
                text class="disc" x=(u(*x)) y=(u(y + 3.4)) { (letter(*number)) }
            }
        }
    }
}

fn shown_letters(letters: &[(String, Placed)]) -> Markup {
    html! {
        @for (letter, placed) in letters {
            text class={ "number " (placed.class()) } x=(u(placed.at.0)) y=(u(placed.at.1 + LINE)) { (letter) }
        }
    }
}

// --- zones ---

/// Of so many places in a zone a line may lead to one. Our judgement.
const LED_BY: usize = 7;

/// A zone that the route meets, with places for words inside it.
struct Worded<'z> {
    zone: &'z Zone,
    inside: Vec<PaperSpot>,
}

impl<'z> Worded<'z> {
    fn of(on: &OnPaper<'z>) -> Option<Self> {
        let shapes = on.shape.iter().filter(|_| on.met);
        let largest = shapes.max_by(|a, b| extent(a).total_cmp(&extent(b)))?;
        let inside = within(largest);
        Some(Self {
            zone: on.zone,
            inside,
        })
    }

    /// Places inside it, and round some of them with a line to it.
    fn places(&self) -> Vec<(Option<PaperSpot>, PaperSpot)> {
        let inside = self.inside.iter().map(|at| (None, *at));
        let led = self.inside.iter().step_by(LED_BY);
        let around = led.flat_map(|at| round(*at).into_iter().map(|to| (Some(*at), to)));
        inside.chain(around).collect()
    }
}

/// Number and width of a zone, as they are written.
struct ZoneSign {
    number: String,
    width: String,
}

/// The number of each zone with its width, or else alone.
fn widths(zones: &[Worded<'_>], voice: Voice, labels: &mut Labels) -> Vec<(ZoneSign, Placed)> {
    let mut left = RoomLeft::default();
    let signs = zones.iter();
    let signs = signs.filter_map(|on| left.find(|| zone_sign(on, voice, labels)));
    signs.collect()
}

fn zone_sign(on: &Worded<'_>, voice: Voice, labels: &mut Labels) -> Option<(ZoneSign, Placed)> {
    let number = [("zone", Arg::Count(on.zone.number))];
    let number = voice.say("map-zone", &number).to_string();
    let mut width = voice.length(on.zone.gap.max_m, Round::Up);
    if on.zone.gap.assumed {
        width.push_str(" ?");
    }
    let places = on.places();
    let both = Footprint::text(&format!("{number} {width}"), NUMBER, LINE);
    let alone = Footprint::text(&number, NUMBER, LINE);
    let ways = [
        (&both, true),
        (&alone, true),
        (&both, false),
        (&alone, false),
    ];
    let mut ways = ways.into_iter().enumerate();
    let found = ways
        .find_map(|(i, (room, everywhere))| Some((i, labels.best_at(&places, room, everywhere)?)));
    let (i, at) = found?;
    let width = if i % 2 == 0 { width } else { String::new() };
    Some((ZoneSign { number, width }, at))
}

fn shown_widths(widths: &[(ZoneSign, Placed)]) -> Markup {
    html! {
        @for (sign, placed) in widths {
            text class={ "width " (placed.class()) } x=(u(placed.at.0)) y=(u(placed.at.1 + LINE)) {
                tspan class="zone-number" { (sign.number) }
                @if !sign.width.is_empty() { " " (sign.width) }
            }
        }
    }
}

/// Names of zones, where there is room for them.
fn zone_names(zones: &[Worded<'_>], labels: &mut Labels) -> Vec<(String, Placed)> {
    let mut left = RoomLeft::default();
    let named = zones
        .iter()
        .filter_map(|on| Some((on, on.zone.name.as_ref()?)));
    let names = named.filter_map(|(on, name)| {
        let place = || {
            let name = plain::short(name, NAME_MOST);
            let mut places = on.places();
            places.truncate(on.inside.len() + NAME_ROUND);
            let at = labels.best(&places, &Footprint::text(&name, NAME, LINE))?;
            Some((name, at))
        };
        left.find(place)
    });
    names.collect()
}

fn shown_names(names: &[(String, Placed)]) -> Markup {
    html! {
        (leaders(names))
        @for (name, placed) in names {
            text class={ "zone-name " (placed.class()) } x=(u(placed.at.0)) y=(u(placed.at.1 + LINE)) { (name) }
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

// --- legs ---

/// The number of each leg beside its line, to the right of it first: there is room for the way back on the other side.
fn leg_numbers(ways: &[LegWay<'_>], labels: &mut Labels) -> Vec<((Verdict, String), Placed)> {
    let (mut placed, mut left) = (Vec::new(), RoomLeft::default());
    let roped = |roped: bool| ways.iter().filter(move |way| way.leg.roped == roped);
    for way in roped(true).chain(roped(false)) {
        let text = leg_sign(way.leg);
        let room = Footprint::pill(&text);
        if let Some(at) = left.find(|| labels.best(&pill_places(way, labels), &room)) {
            placed.push(((way.leg.verdict, text), at));
        }
    }
    placed
}

/// Places beside a way, each with the spot on it that it stands for.
fn pill_places(way: &LegWay, labels: &Labels) -> Vec<(Option<PaperSpot>, PaperSpot)> {
    let along = beside::along(&way.lines);
    let on: Vec<_> = along.iter().filter(|(at, _)| labels.is_on(*at)).collect();
    let aside = |far: f64| {
        let by = move |(at, right): &&(PaperSpot, PaperSpot)| {
            (*at, (at.0 + right.0 * far, at.1 + right.1 * far))
        };
        on.iter().map(by).collect::<Vec<_>>()
    };
    let near = FROM_LINE.into_iter().flat_map(|far| [far, -far]);
    let near = near.flat_map(aside);
    let away = on.iter().take(3);
    let away = away.flat_map(|(at, _)| round(*at).into_iter().map(|to| (*at, to)));
    let all = near.chain(away);
    all.map(|(at, to)| (Some(at), to)).collect()
}

fn pills(legs: &[((Verdict, String), Placed)]) -> Markup {
    html! {
        @for ((verdict, text), placed) in legs {
            g class=[placed.roomy.then_some("roomy")] { (pill(*verdict, text, placed.at)) }
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
    let width = pill_width(text);
    html! {
        rect class={ "pill " (verdict.as_str()) } x=(u(x - width / 2.0)) y=(u(y - PILL / 2.0))
            width=(u(width)) height=(u(PILL)) rx=(u(PILL / 2.0)) {}
        text class={ "pill " (verdict.as_str()) } x=(u(x)) y=(u(y + LINE)) { (text) }
    }
}
