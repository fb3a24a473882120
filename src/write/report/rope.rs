//! The rope laid out on the snow: people, knots and coils where they come along it.

use maud::{Markup, html};

use super::{
    markup::{self, column, word},
    paper::{WIDTH, u},
    same::{Same, grouped},
};
use crate::{
    plan::leg::{Leg, Mark, MarkKind, TeamSetup},
    say::{arg::Arg, mark, plain, round::Round, setup::knots_why, span::Said, voice::Voice},
    write::{json::number, parts::row::TeamRow},
};

const LEFT: f64 = 14.0;
const RIGHT: f64 = WIDTH - 14.0;
/// Where the rope lies.
const ROPE_Y: f64 = 46.0;
const HEIGHT: f64 = 122.0;
/// What is left of a rope is drawn at this width, whatever its length, so that the set-up has room.
const LEFT_OVER: f64 = 60.0;
/// Width of a spare coil likewise.
const COIL: f64 = 56.0;
/// Height of a written number, units, at its largest.
const SIGN_HEIGHT: f64 = 14.0;
/// Signs of a name beside the rope; the table has all of it. Our judgement.
const NAME_SIGNS: usize = 9;

/// Each set-up once, with the legs it is for.
pub(super) fn ropes(legs: &[Leg], voice: Voice) -> Markup {
    html! { @for (_, drawn) in each(legs, voice) { (drawn) } }
}

/// Each set-up once, with the numbers of the legs it is for.
pub(in crate::write) fn each(legs: &[Leg], voice: Voice) -> Vec<(Vec<usize>, Markup)> {
    let all = grouped(legs);
    let drawn = all.iter().zip(1..).filter_map(|(same, count)| {
        let legs = same.uses.iter().map(|(leg, _)| leg.leg).collect();
        Some((legs, rope(count, same, same.setup()?, voice)))
    });
    drawn.collect()
}

fn rope(count: usize, same: &Same<'_>, setup: &TeamSetup, voice: Voice) -> Markup {
    let legs = same.shown(voice);
    html! {
        article class="rope" {
            h3 { (legs) " – " (TeamRow::new(setup, voice).spacing) }
            p { (markup::spans(&knots(setup, voice))) }
            div class="pair" {
                div {
                    (drawing(count, same, setup, voice))
                    @if let Some(none) = mark::no_place(setup, voice) { p class="fine" { (markup::spans(&none.capital())) "." } }
                    (ledger(setup, voice))
                }
                (marks(same, setup, voice))
            }
        }
    }
}

/// How many knots, and why.
fn knots(setup: &TeamSetup, voice: Voice) -> Said {
    let count = [
        ("count", Arg::Count(setup.knots.count)),
        ("each", Arg::Count(setup.knots.each_end)),
    ];
    let knots = match setup.knots.count {
        0 => word("same-knots-none", voice),
        _ => voice.say("same-knots-some", &count),
    };
    let why = knots_why(&setup.knots.why, voice).capital();
    let args = [("knots", Arg::Said(knots)), ("why", Arg::Said(why))];
    voice.say("same-knots", &args)
}

// --- the drawing ---

/// Metres of rope to units. Coils are wound up and drawn at one width, so that knots have room.
struct Scale {
    coil_m: f64,
    total_m: f64,
    coil: f64,
    end: f64,
}

impl Scale {
    fn of(setup: &TeamSetup) -> Self {
        let end_m = setup.marks.last().map_or(0.0, |m| m.at_m);
        Self {
            coil_m: setup.coil_carried_m,
            total_m: end_m,
            coil: if setup.coil_carried_m > 0.0 {
                COIL
            } else {
                0.0
            },
            end: if setup.bag_m > 1e-9 || setup.rope_short_m().is_some() {
                RIGHT - LEFT_OVER
            } else {
                RIGHT
            },
        }
    }

    fn x(&self, at_m: f64) -> f64 {
        let laid_m = (self.total_m - 2.0 * self.coil_m).max(1e-9);
        let laid = self.end - LEFT - 2.0 * self.coil;
        let wound = |share_m: f64| self.coil * (share_m / self.coil_m.max(1e-9)).clamp(0.0, 1.0);
        let between = laid * ((at_m - self.coil_m) / laid_m).clamp(0.0, 1.0);
        LEFT + wound(at_m) + between + wound(at_m - self.coil_m - laid_m)
    }
}

fn drawing(count: usize, same: &Same<'_>, setup: &TeamSetup, voice: Voice) -> Markup {
    let scale = Scale::of(setup);
    let args = [
        ("legs", Arg::Said(Said::words(same.shown(voice)))),
        ("people", Arg::Count(setup.people)),
        ("knots", Arg::Count(setup.knots.count)),
        ("coil", Arg::There(setup.coil_carried_m)),
    ];
    let says = voice.say("drawn-says", &args);
    let id = format!("rope-{count}");
    html! {
        svg class="drawing wide" role="img" aria-labelledby=(id) viewBox={ "0 0 " (u(WIDTH)) " " (u(HEIGHT)) } {
            title id=(id) { (says) }
            (cord(setup, &scale, voice))
            (coils(setup, &scale, voice))
            (spans(setup, &scale, voice))
            @for mark in told(setup, &scale) { (mark_sign(mark, &scale, voice)) }
            (people(setup, &scale, same.one_team()))
        }
    }
}

/// The rope itself to its end, and what goes into a bag.
fn cord(setup: &TeamSetup, scale: &Scale, voice: Voice) -> Markup {
    let solid = scale.end;
    html! {
        path class="cord" d={ "M" (u(LEFT)) " " (u(ROPE_Y)) "H" (u(solid)) } {}
        @if let Some(short_m) = setup.rope_short_m() {
            path class="cord missing" d={ "M" (u(solid)) " " (u(ROPE_Y - 9.0)) "v18" } {}
            text x=(u(RIGHT)) y="12" text-anchor="end" { (mark::rope_ends(short_m, voice)) }
        } @else if RIGHT - solid > 0.5 {
            path class="cord left" d={ "M" (u(solid)) " " (u(ROPE_Y)) "H" (u(RIGHT)) } {}
            text x=(u(RIGHT)) y="12" text-anchor="end" { (voice.say("drawn-bag", &[("length", Arg::There(setup.bag_m))])) }
        }
    }
}

/// Loops over the stretches that the end people carry.
fn coils(setup: &TeamSetup, scale: &Scale, voice: Voice) -> Markup {
    if setup.coil_carried_m <= 0.0 {
        return html! {};
    }
    let ends = [
        (0.0, setup.coil_carried_m),
        (scale.total_m - setup.coil_carried_m, scale.total_m),
    ];
    let says = voice.length(setup.coil_carried_m, Round::Down);
    html! {
        @for (from_m, to_m) in ends {
            @let (x0, x1) = (scale.x(from_m), scale.x(to_m));
            path class="coil" d=(loops(x0, x1)) {}
            text x=(u(f64::midpoint(x0, x1))) y=(u(HEIGHT - 8.4)) text-anchor="middle" { (says) }
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a drawing is some hundred units wide"
)]
fn loops(x0: f64, x1: f64) -> String {
    const SIZE: f64 = 8.0;
    let count = ((x1 - x0) / SIZE).floor().clamp(1.0, 60.0) as usize;
    let step = (x1 - x0) / count as f64;
    let ring = |i: usize| {
        let x = x0 + step * (i as f64 + 0.5);
        let r = SIZE * 0.5;
        format!("M{} {}a{r} {} 0 1 0 0.1 0z", u(x), u(ROPE_Y - 6.0), u(6.0))
    };
    (0..count).map(ring).collect()
}

/// Walking distances between neighbours, under the marks.
fn spans(setup: &TeamSetup, scale: &Scale, voice: Voice) -> Markup {
    let ties: Vec<f64> = of(setup, MarkKind::TieIn)
        .map(|m| scale.x(m.at_m))
        .collect();
    let says = voice.length(setup.spacing_m, Round::Up);
    let y = HEIGHT - 12.0;
    html! {
        @for pair in ties.windows(2) {
            @if let [from, to] = pair {
                path class="span" d={ "M" (u(*from)) " " (u(y - 4.0)) "v8m0 -4H" (u(*to)) "m0 -4v8" } {}
                text class="plate" x=(u(f64::midpoint(*from, *to))) y=(u(y + 3.6)) text-anchor="middle" { (says) }
            }
        }
    }
}

fn of(setup: &TeamSetup, kind: MarkKind) -> impl Iterator<Item = &Mark> {
    setup.marks.iter().filter(move |m| m.kind == kind)
}

/// The marks, without the end of the rope where it has no room beside the last tie-in.
fn told<'a>(setup: &'a TeamSetup, scale: &Scale) -> Vec<&'a Mark> {
    let last_tie = of(setup, MarkKind::TieIn)
        .last()
        .map_or(0.0, |m| scale.x(m.at_m));
    let room = |m: &&Mark| m.kind != MarkKind::End || scale.x(m.at_m) - last_tie > SIGN_HEIGHT;
    setup.marks.iter().filter(room).collect()
}

/// The metres of one mark, written along it, since knots lie close; and the knot.
fn mark_sign(mark: &Mark, scale: &Scale, voice: Voice) -> Markup {
    let (x, y) = (scale.x(mark.at_m), ROPE_Y + 12.0);
    let middle = y + 26.0;
    html! {
        @if mark.kind == MarkKind::Knot {
            path class="knot" d={ "M" (u(x)) " " (u(ROPE_Y - 5.0)) "l5 5l-5 5l-5 -5z" } {}
        }
        path class="drop" d={ "M" (u(x)) " " (u(ROPE_Y + 6.0)) "v5" } {}
        text class="along" x=(u(x)) y=(u(middle)) text-anchor="end"
            transform={ "rotate(-90 " (u(x)) " " (u(middle)) ") translate(26 3.5)" } {
            (voice.number(mark.at_m, Round::Down))
        }
    }
}

fn people(setup: &TeamSetup, scale: &Scale, named: bool) -> Markup {
    let ties = of(setup, MarkKind::TieIn).zip(&setup.persons);
    html! {
        @for (i, (mark, person)) in ties.enumerate() {
            @let x = scale.x(mark.at_m);
            circle class="person" cx=(u(x)) cy=(u(ROPE_Y)) r="8" {}
            text class="person" x=(u(x)) y=(u(ROPE_Y + 3.6)) { (i + 1) }
            @if let Some(name) = person.called.name.as_ref().filter(|_| named) {
                text x=(u(x)) y=(u(ROPE_Y - 14.0)) text-anchor="middle" { (plain::short(name, NAME_SIGNS)) }
            }
        }
    }
}

// --- the tables ---

fn marks(same: &Same<'_>, setup: &TeamSetup, voice: Voice) -> Markup {
    html! {
        table class="marks" {
            caption { (word("marks-caption", voice)) }
            thead { tr {
                th scope="col" { (word("marks-what", voice)) }
                th scope="col" class="n" { (column("marks-at", voice.units.short(), voice)) }
                th scope="col" class="n" { (word("marks-arm-spans", voice)) }
            } }
            tbody {
                @for (i, mark) in setup.marks.iter().enumerate() {
                    tr data-at-m=(number(mark.at_m)) {
                        th scope="row" { (markup::spans(&same.at(i, voice))) }
                        td class="n" { (voice.number(mark.at_m, Round::Down)) }
                        td class="n" { (voice.fixed(mark.at_arm_spans, 1, Round::Nearest)) }
                    }
                }
            }
        }
    }
}

/// Where rope goes.
const LEDGER: [&str; 6] = [
    "ledger-spans",
    "ledger-knots",
    "ledger-tie-ins",
    "ledger-coils",
    "ledger-bag",
    "ledger-in-all",
];

/// The coils as carried, and what the rope lacks or which one is sold.
fn ledger_says(setup: &TeamSetup, voice: Voice) -> Said {
    let sold = setup.sold_length_m.filter(|_| setup.rope.is_none());
    let rest = match (setup.rope_short_m(), sold) {
        (Some(m), _) => voice.say("ledger-short", &[("short", Arg::Needed(m))]),
        (None, Some(m)) => voice.say("ledger-sold", &[("length", Arg::Measured(m))]),
        (None, None) => Said::default(),
    };
    let args = [
        ("unit", Arg::Said(voice.units.short().into())),
        ("coil", Arg::There(setup.coil_carried_m)),
        ("rest", Arg::Said(rest)),
    ];
    voice.say("ledger-caption", &args)
}

/// What is needed and what is carried, each in a row that adds up, or whose sum is marked where rounding keeps it from that.
fn ledger(setup: &TeamSetup, voice: Voice) -> Markup {
    let ledger = &setup.ledger;
    let tied_m = [ledger.spans_m, ledger.knots_m, ledger.tie_ins_m];
    let needed_m = [tied_m.as_slice(), &[ledger.coils_m, 0.0, ledger.total_m]].concat();
    let coils_m = 2.0 * setup.coil_carried_m;
    let all_m = tied_m.iter().sum::<f64>() + coils_m + setup.bag_m;
    let carried_m = [tied_m.as_slice(), &[coils_m, setup.bag_m, all_m]].concat();
    html! {
        table class="ledger" {
            caption { (ledger_says(setup, voice)) }
            thead { tr {
                td {}
                @for what in LEDGER { th scope="col" class="n" { (word(what, voice)) } }
            } }
            tbody {
                (ledger_row("ledger-needed", &needed_m, Round::Up, voice))
                @if setup.no_place.is_empty() { (ledger_row("ledger-carried", &carried_m, Round::Nearest, voice)) }
            }
        }
    }
}

fn ledger_row(label: &str, lengths_m: &[f64], side: Round, voice: Voice) -> Markup {
    let Some((total_m, parts_m)) = lengths_m.split_last() else {
        return Markup::default();
    };
    let unit_m = voice.units.short_m();
    let parts: Vec<f64> = parts_m.iter().map(|m| m / unit_m).collect();
    let exact = side.adds_up(&parts, total_m / unit_m);
    html! {
        tr {
            th scope="row" { (word(label, voice)) }
            @for m in parts_m { td class="n" { (voice.number(*m, side)) } }
            td class="n total" { @if !exact { "≈ " } (voice.number(*total_m, side)) }
        }
    }
}
