//! The ropes of the sheet: each set-up once, drawn with who ties in where, and under it what is left after a fall.

use maud::{Markup, html};

use super::rescue;
use crate::{
    plan::leg::{MarkKind, TeamSetup},
    say::{arg::Arg, mark, plain, round::Round, span::Said, voice::Voice},
    write::{
        json::number,
        parts::tied,
        report::{markup::spans, paper::u, same::Same},
    },
};

/// Set-ups that are drawn over the whole width; more of them stand two by two. Our judgement.
const WIDE: usize = 3;
/// People of whom two drawings have room beside each other. Our judgement.
const SIDE_BY_SIDE: usize = 4;
/// People under each of whom there is room for all that is told of a fall. Our judgement.
const ROOMY: usize = 3;
/// Units that the drawings are wide, printed each about a point.
const WHOLE: u16 = 368;
const HALF: u16 = 178;
const HEIGHT: f64 = 29.5;
/// Where the rope lies, above which the marks stand, and under it the distances.
const ROPE_Y: f64 = 15.5;
const MARK_Y: f64 = 7.5;
const SPAN_Y: f64 = 28.5;
/// Room for a coil, and for what lies beyond the second one.
const COIL: f64 = 30.0;
const BEYOND: f64 = 16.0;
const EDGE: f64 = 9.0;

/// One card for each set-up.
pub(super) fn cards(setups: &[Same<'_>], crowded: bool, voice: Voice) -> Markup {
    let few = setups.len() <= WIDE;
    let many = |same: &Same<'_>| same.setup().is_some_and(|s| s.people > SIDE_BY_SIDE);
    let wide = few || setups.iter().any(many);
    html! {
        div class={ "cards" @if !wide { " two-by-two" } } {
            @for (i, same) in setups.iter().enumerate() {
                @if let Some(setup) = same.setup() { (card(i + 1, same, setup, Card { wide, crowded }, voice)) }
            }
        }
    }
}

/// How much room a card has.
#[derive(Clone, Copy)]
struct Card {
    wide: bool,
    crowded: bool,
}

fn card(
    count: usize,
    same: &Same<'_>,
    setup: &TeamSetup,
    Card { wide, crowded }: Card,
    voice: Voice,
) -> Markup {
    let args = [
        ("legs", Arg::Said(Said::words(same.shown(voice)))),
        ("setup", Arg::Said(set_up(setup, wide, voice))),
    ];
    html! {
        article class="card" data-tied-m=(number(setup.spacing_m)) data-wound-m=(number(setup.coil_carried_m)) {
            h3 { (spans(&voice.say("sheet-set-up-of", &args))) }
            (drawing(count, same, setup, if wide { WHOLE } else { HALF }, voice))
            @match short(setup, voice) {
                // Nobody is tied so, and nothing is told of a fall.
                Some(short) => p { strong { (spans(&short.capital())) "." } }
                None => { (rescue::after_a_fall(same, crowded || setup.people > ROOMY, voice)) }
            }
        }
    }
}

/// That the rope ends too soon, and for what.
fn short(setup: &TeamSetup, voice: Voice) -> Option<Said> {
    let ends = mark::rope_ends(setup.rope_short_m()?, voice);
    let none = mark::no_place(setup, voice).map(|none| none.map_names(plain::line));
    Some(Said::join([ends].into_iter().chain(none), "; "))
}

/// `3 people, 13 m apart, no knots, coils 15.5 m`; the coils stand in the drawing alone where there is less room.
fn set_up(setup: &TeamSetup, wide: bool, voice: Voice) -> Said {
    let args = [
        ("people", Arg::Count(setup.people)),
        ("spacing", Arg::Needed(setup.spacing_m)),
        ("knots", Arg::Said(tied::knots(setup, voice))),
        ("knotted", Arg::yes(wide || setup.knots.count > 0)),
        ("wide", Arg::yes(wide || setup.bag_m > 1e-9)),
        ("coils", Arg::Said(tied::carried(setup, voice))),
    ];
    voice.say("sheet-set-up", &args)
}

// --- the drawing ---

/// Where along the drawing the people stand: evenly, since they walk evenly.
struct Line<'a> {
    setup: &'a TeamSetup,
    /// Tie-ins that have a place on the rope: metres of rope, and units.
    ties: Vec<(f64, f64)>,
    coil: f64,
    right: f64,
    width: f64,
}

impl<'a> Line<'a> {
    fn of(setup: &'a TeamSetup, width: u16) -> Self {
        let width = f64::from(width);
        let coil = if setup.coil_carried_m > 0.0 {
            COIL
        } else {
            0.0
        };
        let right = width - if setup.bag_m > 1e-9 { BEYOND } else { 1.0 };
        let (first, last) = (1.0 + coil + EDGE, right - coil - EDGE);
        let spans = u32::try_from(setup.people.saturating_sub(1)).unwrap_or(u32::MAX);
        let step = (last - first) / f64::from(spans.max(1));
        let marks = setup.marks.iter().filter(|m| m.kind == MarkKind::TieIn);
        let places = std::iter::successors(Some(first), |x| Some(x + step));
        Self {
            ties: marks.map(|m| m.at_m).zip(places).collect(),
            setup,
            coil,
            right,
            width,
        }
    }

    /// A place between two people; `None` outside them.
    fn between(&self, at_m: f64) -> Option<f64> {
        let pair = self.ties.windows(2).find(|pair| at_m <= pair[1].0)?;
        let ((from_m, from), (to_m, to)) = (pair[0], pair[1]);
        let share = (at_m - from_m) / (to_m - from_m).max(1e-9);
        (share > 0.0).then_some(from + share * (to - from))
    }

    /// Where the words over a person stand: over the ends of a rope without coils they would leave the drawing.
    fn label(&self, person: usize, x: f64) -> (f64, &'static str) {
        let is_last = person + 1 == self.ties.len() && self.setup.no_place.is_empty();
        match person {
            _ if self.coil > 0.0 => (x, "middle"),
            0 => (1.0, "start"),
            _ if is_last => (self.width - 1.0, "end"),
            _ => (x, "middle"),
        }
    }

    /// Where the rope as it is laid out ends.
    fn end(&self) -> f64 {
        if self.setup.no_place.is_empty() {
            return self.right;
        }
        self.ties.last().map_or(1.0, |(_, x)| x + 2.0 * EDGE)
    }
}

fn drawing(count: usize, same: &Same<'_>, setup: &TeamSetup, width: u16, voice: Voice) -> Markup {
    let line = Line::of(setup, width);
    let args = [
        ("legs", Arg::Said(Said::words(same.shown(voice)))),
        ("people", Arg::Count(setup.people)),
    ];
    let id = format!("drawn-{count}");
    html! {
        svg class="line" role="img" aria-labelledby=(id) viewBox={ "0 0 " (width) " " (u(HEIGHT)) } {
            title id=(id) { (voice.say("sheet-drawn", &args)) }
            (cord(&line))
            (coils(&line, voice))
            (knots(&line))
            (walked(&line, voice))
            (people(&line, same.one_team(), usize::from(width), voice))
        }
    }
}

/// The rope, what of it goes into a bag, and where it ends too soon.
fn cord(line: &Line<'_>) -> Markup {
    let end = line.end();
    html! {
        path class="cord" d={ "M1 " (u(ROPE_Y)) "H" (u(end)) } {}
        @if !line.setup.no_place.is_empty() {
            path class="cord" d={ "M" (u(end)) " " (u(ROPE_Y - 7.0)) "v14" } {}
        } @else if line.setup.bag_m > 1e-9 {
            path class="cord left" d={ "M" (u(end)) " " (u(ROPE_Y)) "H" (u(line.width - 1.0)) } {}
        }
    }
}

/// What the end people carry, wound up.
fn coils(line: &Line<'_>, voice: Voice) -> Markup {
    if line.coil <= 0.0 {
        return html! {};
    }
    let says = voice.number(line.setup.coil_carried_m, Round::Down);
    let second = line.setup.no_place.is_empty().then_some(line.right - COIL);
    html! {
        @for from in [Some(1.0), second].into_iter().flatten() {
            path class="coil" d={
                @for ring in [3.0, 8.0, 13.0, 18.0, 23.0] {
                    "M" (u(from + ring)) " " (u(ROPE_Y - 5.5)) "a3.6 5.5 0 1 0 0.1 0z"
                }
            } {}
        }
        text x="1" y=(u(SPAN_Y)) { (says) }
        @if second.is_some() { text x=(u(line.right)) y=(u(SPAN_Y)) text-anchor="end" { (says) } }
    }
}

fn knots(line: &Line<'_>) -> Markup {
    let knots = line.setup.marks.iter().filter(|m| m.kind == MarkKind::Knot);
    html! {
        @for x in knots.filter_map(|knot| line.between(knot.at_m)) {
            path class="knot" d={ "M" (u(x)) " " (u(ROPE_Y - 4.0)) "l4 4l-4 4l-4 -4z" } {}
        }
    }
}

/// Distances walked, between neighbours.
fn walked(line: &Line<'_>, voice: Voice) -> Markup {
    let says = voice.length(line.setup.spacing_m, Round::Up);
    html! {
        @for pair in line.ties.windows(2) {
            text x=(u(f64::midpoint(pair[0].1, pair[1].1))) y=(u(SPAN_Y)) text-anchor="middle" { (says) }
        }
    }
}

/// Who ties in at how many metres from the free end.
fn people(line: &Line<'_>, named: bool, width: usize, voice: Voice) -> Markup {
    let people = line.setup.people.max(1);
    let signs = (width / people / 5).saturating_sub(6);
    html! {
        @for ((i, (at_m, x)), person) in line.ties.iter().enumerate().zip(&line.setup.persons) {
            circle class="person" cx=(u(*x)) cy=(u(ROPE_Y)) r="6.2" {}
            text class="person" x=(u(*x)) y=(u(ROPE_Y + 2.9)) { (i + 1) }
            @let (at, anchor) = line.label(i, *x);
            text x=(u(at)) y=(u(MARK_Y)) text-anchor=(anchor) {
                @if let Some(called) = person.called.name.as_ref().filter(|_| named && signs > 2) { (plain::short(called, signs)) " " }
                tspan class="mark" { (voice.number(*at_m, Round::Down)) }
            }
        }
    }
}
