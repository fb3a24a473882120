//! Under a profile, along its ruler: zones, legs and steep stretches.

use maud::{Markup, html};

use super::{
    extent::{Footprint, NUMBER},
    labels::{Labels, Placed},
    layers,
    lettering::{LINE, leg_sign, pill},
    markup::word,
    paper::{PaperSpot, WIDTH, steps, u},
    ruler::{GROUND, LEFT, Ruler, inward},
};
use crate::{
    ground::profile::Profile,
    plan::{
        leg::{Leg, Verdict},
        pieces::WordPiece,
    },
    say::{arg::Arg, span::Said, voice::Voice},
    trip::route::{Stage, Stretch},
    write::{parts::style, sheet::Sheet},
};

const STRIP: f64 = 14.0;
const GAP: f64 = 5.0;
/// Under the line of a leg its number stands in the first of so many rows that has room, units apart. Our judgement.
const ROWS: [f64; 6] = [22.0, 41.0, 60.0, 79.0, 98.0, 117.0];
/// Half of such a row.
const HALF_ROW: f64 = 9.5;
/// So far beside its leg a number may stand there, units. Our judgement.
const BESIDE: [f64; 17] = [
    0.0, 5.0, -5.0, 10.0, -10.0, 15.0, -15.0, 20.0, -20.0, 26.0, -26.0, 33.0, -33.0, 42.0, -42.0,
    54.0, -54.0,
];

/// All strips of a stage, and where the lowest ends.
pub(super) fn strips(ruler: &Ruler<'_>, sheet: &Sheet<'_>) -> (Markup, f64) {
    let voice = sheet.look.voice;
    let row = |n: f64| GROUND + GAP + n * (STRIP + GAP);
    let numbers = leg_numbers(ruler, sheet);
    let lowest = numbers
        .iter()
        .map(|(_, placed)| placed.at.1)
        .fold(0.0, f64::max);
    let steep_y = row(1.0) + STRIP / 2.0 + (lowest + HALF_ROW).max(STRIP / 2.0) + GAP;
    let drawn = html! {
        (name("profile-zones", voice, row(0.0)))
        (zones(ruler, sheet, row(0.0)))
        (name("profile-legs", voice, row(1.0)))
        (legs(ruler, sheet, row(1.0) + STRIP / 2.0))
        g transform={ "translate(0 " (u(row(1.0) + STRIP / 2.0)) ")" } { (shown_numbers(&numbers)) }
        (name("profile-steep", voice, steep_y))
        (steep(ruler, sheet, steep_y))
    };
    (drawn, steep_y + STRIP)
}

fn name(what: &str, voice: Voice, y: f64) -> Markup {
    html! { text class="strip-name" x=(u(LEFT - 5.0)) y=(u(y + 10.5)) text-anchor="end" { (word(what, voice)) } }
}

/// A crossing in the strip, with the number of its zone where it has room.
struct Crossing {
    zone: usize,
    gap_m: f64,
    from: f64,
    to: f64,
    number: Option<Placed>,
}

fn zones(ruler: &Ruler<'_>, sheet: &Sheet<'_>, y: f64) -> Markup {
    html! {
        @for Crossing { zone, gap_m, from, to, number } in crossings(ruler, sheet) {
            rect class="zone" x=(u(from)) y=(u(y)) width=(u((to - from).max(0.8))) height=(u(STRIP)) fill=(style::zone_fill(gap_m)) {}
            @if let Some(placed) = number {
                text class={ "width " (placed.class()) } x=(u(placed.at.0)) y=(u(y + 10.5)) { (zone) }
            }
        }
    }
}

fn crossings(ruler: &Ruler<'_>, sheet: &Sheet<'_>) -> Vec<Crossing> {
    let mut labels = Labels::on(WIDTH, 4.0 * STRIP, true);
    let mut all = Vec::new();
    for zone in &sheet.plan.zones {
        let here = zone.crossings.iter();
        for c in here.filter(|c| c.stage == ruler.stage.number) {
            let (from, to) = (ruler.x(c.enter_m), ruler.x(c.exit_m));
            let footprint = Footprint::text(&zone.zone.to_string(), NUMBER, LINE);
            let spot = (None, (f64::midpoint(from, to), 2.0 * STRIP));
            let fits = |half: f64| 2.0 * half <= to - from;
            let number = if fits(footprint.narrow.left) {
                labels.best(&[spot], &footprint)
            } else if fits(footprint.wide.left) {
                labels.best_at(&[spot], &footprint, false)
            } else {
                None
            };
            all.push(Crossing {
                zone: zone.zone,
                gap_m: zone.gap_m,
                from,
                to,
                number,
            });
        }
    }
    all
}

// --- legs ---

fn legs(ruler: &Ruler<'_>, sheet: &Sheet<'_>, middle: f64) -> Markup {
    let legs = sheet.plan.legs.iter();
    html! {
        @for leg in legs.filter(|l| l.stage == ruler.stage.number) {
            @for piece in graver_last(leg) {
                @let (from, to) = (ruler.x(piece.from_m), ruler.x(piece.to_m));
                (layers::stroke(piece.verdict, &format!("M{} {}H{}", u(from), u(middle), u(to.max(from + 1.0)))))
            }
        }
    }
}

/// The number of a leg, and the middle of its line.
#[derive(Clone)]
struct LegSign {
    verdict: Verdict,
    text: String,
    at: f64,
    /// Its line is longer than the number.
    long: bool,
}

impl LegSign {
    fn of(leg: &Leg, ruler: &Ruler<'_>) -> Self {
        let (from, to) = (ruler.x(leg.start_m), ruler.x(leg.end_m));
        let text = leg_sign(leg);
        Self {
            verdict: leg.verdict,
            at: f64::midpoint(from, to),
            long: 2.0 * Footprint::pill(&text).narrow.left <= to - from,
            text,
        }
    }
}

type LegNumber = ((Verdict, String), Placed);

/// The number of every leg: on its line where that is long enough, else under it, below the line at 0. Of several orders the
/// one that leaves out the fewest.
fn leg_numbers(ruler: &Ruler<'_>, sheet: &Sheet<'_>) -> Vec<LegNumber> {
    let legs = sheet.plan.legs.iter();
    let here = legs.filter(|l| l.stage == ruler.stage.number);
    let walked: Vec<LegSign> = here.map(|leg| LegSign::of(leg, ruler)).collect();
    let mut inward_first = walked.clone();
    inward_first.sort_by(|a, b| inward(a.at).total_cmp(&inward(b.at)));
    let back: Vec<LegSign> = walked.iter().rev().cloned().collect();
    let orders = [walked, back, inward_first];
    let all = [true, false].into_iter().flat_map(|careful| {
        let orders = orders.iter();
        orders.map(move |order| arranged(order, careful))
    });
    let shown = |numbers: &Vec<LegNumber>| {
        let everywhere = numbers.iter().filter(|(_, placed)| !placed.roomy);
        (everywhere.count(), numbers.len())
    };
    // The first of equals.
    let better = |best: Vec<LegNumber>, other: Vec<LegNumber>| {
        if shown(&other) > shown(&best) {
            other
        } else {
            best
        }
    };
    all.reduce(better).unwrap_or_default()
}

/// The numbers in this order, those on lines first; who is careful leaves the way down from every other leg free if he can.
/// Where no line to a number is free, the number stands without one.
fn arranged(order: &[LegSign], careful: bool) -> Vec<LegNumber> {
    let deepest = ROWS.into_iter().fold(0.0, f64::max) + HALF_ROW;
    let mut labels = Labels::over(WIDTH, -HALF_ROW, deepest, true);
    let (long, short): (Vec<_>, Vec<_>) = order.iter().partition(|sign| sign.long);
    let led: Vec<f64> = short.iter().map(|sign| sign.at).collect();
    let (mut placed, mut rest) = (Vec::new(), Vec::new());
    for sign in long.into_iter().chain(short) {
        let (footprint, places) = (Footprint::pill(&sign.text), number_places(sign));
        let half = footprint.narrow.left;
        let hides = |x: f64| {
            let mut others = led.iter().filter(|at| (*at - sign.at).abs() > 0.1);
            others.any(|at| (at - x).abs() < half)
        };
        let free = places
            .iter()
            .filter(|(_, to)| sign.long || !careful || !hides(to.0));
        match labels.best_at(&free.copied().collect::<Vec<_>>(), &footprint, true) {
            Some(at) => placed.push(((sign.verdict, sign.text.clone()), at)),
            None => rest.push((sign, footprint, places)),
        }
    }
    for (sign, footprint, places) in rest {
        let alone: Vec<_> = places.iter().map(|(_, to)| (None, *to)).collect();
        let led = labels.best(&places, &footprint);
        let found = led.or_else(|| labels.best(&alone, &footprint));
        placed.extend(found.map(|at| ((sign.verdict, sign.text.clone()), at)));
    }
    placed
}

/// Places for the number of a leg: the line where that is long enough, and rows under it with a thin line to it.
fn number_places(sign: &LegSign) -> Vec<(Option<PaperSpot>, PaperSpot)> {
    let at = sign.at;
    let line = sign.long.then_some((None, (at, 0.0)));
    let rows = ROWS.into_iter();
    let under = rows.flat_map(|y| BESIDE.map(|by| (Some((at, 0.0)), (at + by, y))));
    line.into_iter().chain(under).collect()
}

fn shown_numbers(numbers: &[((Verdict, String), Placed)]) -> Markup {
    html! {
        @for (_, placed) in numbers { (placed.led()) }
        @for ((verdict, text), placed) in numbers {
            g class=[placed.roomy.then_some("roomy")] { (pill(*verdict, text, placed.at)) }
        }
    }
}

/// The pieces of a leg, the graver ones drawn over the milder.
fn graver_last(leg: &Leg) -> Vec<WordPiece> {
    let mut pieces = leg.pieces();
    pieces.sort_by_key(|piece| piece.verdict);
    pieces
}

fn steep(ruler: &Ruler<'_>, sheet: &Sheet<'_>, y: f64) -> Markup {
    let (least_deg, over_m) = steepness(sheet);
    let found = steep_stretches(ruler.stage, ruler.profile, least_deg, over_m);
    html! {
        @if found.is_empty() { text class="strip-note" x=(u(LEFT)) y=(u(y + 10.5)) { (word("profile-nowhere", sheet.look.voice)) } }
        @for stretch in found {
            @let (x0, x1) = (ruler.x(stretch.from_m), ruler.x(stretch.to_m));
            rect class="steep" fill={ "url(#hatch-" (ruler.stage.number) ")" } x=(u(x0)) y=(u(y)) width=(u((x1 - x0).max(1.0))) height=(u(STRIP)) {}
        }
    }
}

/// What the strips mean.
pub(super) fn key(sheet: &Sheet<'_>) -> Markup {
    let (least_deg, over_m) = steepness(sheet);
    let args = [
        (
            "slope",
            Arg::Said(Said::figure(
                sheet.look.voice.marked(format!("{least_deg}°")),
            )),
        ),
        ("length", Arg::Measured(over_m)),
    ];
    html! { p class="fine" { (sheet.look.voice.say("profile-key", &args)) } }
}

/// From how steep over what length the plan speaks of avalanche terrain.
fn steepness(sheet: &Sheet<'_>) -> (f64, f64) {
    let figures = sheet.plan.figures;
    (figures.avalanche_deg, figures.steep_over_m)
}

/// Stretches whose slope over a window is at least so steep.
fn steep_stretches(stage: &Stage, profile: &Profile, least_deg: f64, over_m: f64) -> Vec<Stretch> {
    if over_m <= 0.0 {
        return Vec::new();
    }
    let starts = steps(0.0, stage.length_m() - over_m, over_m / 2.0);
    let steep = starts.into_iter().filter_map(|from_m| {
        let stretch = Stretch {
            from_m,
            to_m: from_m + over_m,
        };
        let rise_m = profile.sure_rise_m(stretch)?;
        let deg = (rise_m / over_m).atan().to_degrees().abs();
        (deg >= least_deg).then_some(stretch)
    });
    Stretch::merged(steep.collect(), 0.0)
}
