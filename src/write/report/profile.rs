//! The height profile of a stage, with zones, legs and steep stretches under the same ruler.

use maud::{Markup, html};

use super::{
    layers,
    markup::word,
    paper::{WIDTH, path, round_step, simplified, steps, u},
};
use crate::{
    ground::profile::{Profile, Sample},
    plan::{leg::Leg, pieces::WordPiece},
    say::{arg::Arg, finding, plain, span::Said, voice::Voice},
    trip::route::{Stage, Stretch},
    write::{
        parts::{change, style},
        sheet::Sheet,
    },
};

const LEFT: f64 = 46.0;
const RIGHT: f64 = WIDTH - 10.0;
const TOP: f64 = 16.0;
/// Room for a letter on the top edge, units.
const LETTER: f64 = 9.0;
const GROUND: f64 = 126.0;
const STRIP: f64 = 14.0;
const GAP: f64 = 5.0;
/// The ruler's numbers stand below the strips.
const BOTTOM: f64 = GROUND + 3.0 * (STRIP + GAP) + 26.0;

/// One stage's ruler.
struct Ruler<'a> {
    stage: &'a Stage,
    profile: &'a Profile,
    low_m: f64,
    high_m: f64,
}

impl Ruler<'_> {
    fn x(&self, at_m: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * at_m / self.stage.length_m().max(1e-9)
    }

    fn y(&self, height_m: f64) -> f64 {
        GROUND - (GROUND - TOP) * (height_m - self.low_m) / (self.high_m - self.low_m).max(1.0)
    }
}

/// The profile; a sentence where no heights are known.
pub(super) fn stage(sheet: &Sheet<'_>, stage: &Stage, profile: &Profile) -> Markup {
    let voice = sheet.look.voice;
    let heights = profile.samples().iter().map(|s| s.height_m);
    let (low, high) = (heights.clone().reduce(f64::min), heights.reduce(f64::max));
    let (Some(low_m), Some(high_m), false) = (low, high, profile.is_empty()) else {
        return html! { p { (word("profile-none", voice)) } };
    };
    let ruler = Ruler {
        stage,
        profile,
        low_m: low_m - 0.04 * (high_m - low_m),
        high_m,
    };
    let label = finding::stage(stage.number, stage.name.as_deref(), voice);
    let args = [
        ("stage", Arg::Said(label)),
        ("low", Arg::Figure(voice.units.whole(low_m))),
        ("high", Arg::Figure(voice.units.whole(high_m))),
        ("unit", Arg::Said(voice.units.short().into())),
    ];
    let says = voice.say("profile-says", &args).to_string();
    let id = format!("profile-{}", stage.number);
    html! {
        svg class="drawing wide" role="img" aria-labelledby=(id) viewBox={ "0 0 " (u(WIDTH)) " " (u(BOTTOM)) } {
            title id=(id) { (plain::line(&says)) }
            defs {
                pattern id={ "hatch-" (stage.number) } width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)" {
                    path class="hatch" d="M2.5 0v5" {}
                }
            }
            (scale(&ruler, sheet.look.voice))
            (ground(&ruler))
            (letters(&ruler, sheet))
            (strips(&ruler, sheet))
            (kilometres(&ruler, sheet.look.voice))
        }
    }
}

/// The hill, in as many pieces as jumps leave: between them nothing is walked and nothing drawn.
fn ground(ruler: &Ruler<'_>) -> Markup {
    html! { @for run in ruler.profile.runs() { (hill(ruler, run)) } }
}

fn hill(ruler: &Ruler<'_>, run: &[Sample]) -> Markup {
    let line = simplified(run.iter().map(|s| (ruler.x(s.at_m), ruler.y(s.height_m))));
    let (first, last) = (line.0.first(), line.0.last());
    let (Some(first), Some(last)) = (first, last) else {
        return html! {};
    };
    let data = path(&line, false);
    html! {
        path class="hill" d={ (data) "L" (u(last.x)) " " (u(GROUND)) "L" (u(first.x)) " " (u(GROUND)) "z" } {}
        path class="ground" d=(data) {}
    }
}

/// Where the set-up changes, lettered as on the maps; who stands too close to the one before is moved on, never drawn over.
fn letters(ruler: &Ruler<'_>, sheet: &Sheet<'_>) -> Markup {
    let all = change::changes(sheet);
    let here = all.iter().filter(|c| c.stage == ruler.stage.number);
    let mut free = f64::NEG_INFINITY;
    let placed = here.map(|change| {
        let (x, letter) = (ruler.x(change.at_m), change.letter());
        let half = letter.chars().map(|_| LETTER / 2.0).sum::<f64>();
        let middle = x.max(free + half);
        free = middle + half;
        (x, middle, letter, ruler.profile.height_m(change.at_m))
    });
    let placed: Vec<_> = placed.collect();
    html! {
        @if free <= WIDTH {
            g class="at" {
                @for (x, middle, letter, height_m) in &placed {
                    path d={ "M" (u(*middle)) " " (u(TOP - 5.0)) "L" (u(*x)) " " (u(TOP)) "V" (u(height_m.map_or(GROUND, |m| ruler.y(m)))) } {}
                    text x=(u(*middle)) y=(u(TOP - 7.0)) text-anchor="middle" { (letter) }
                }
            }
        }
    }
}

/// Heights at the left, round ones.
fn scale(ruler: &Ruler<'_>, voice: Voice) -> Markup {
    let unit_m = voice.units.short_m();
    let step = round_step((ruler.high_m - ruler.low_m).max(1.0) / unit_m / 4.0);
    let heights = steps(ruler.low_m / unit_m, ruler.high_m / unit_m, step);
    html! {
        g class="ticks" {
            @for height in heights {
                @let y = ruler.y(height * unit_m);
                path d={ "M" (u(LEFT)) " " (u(y)) "H" (u(RIGHT)) } {}
                text x=(u(LEFT - 5.0)) y=(u(y + 3.4)) text-anchor="end" { (format!("{height:.0}")) }
            }
            text x=(u(LEFT - 5.0)) y="9" text-anchor="end" { (voice.units.short()) }
        }
    }
}

fn kilometres(ruler: &Ruler<'_>, voice: Voice) -> Markup {
    let unit_m = voice.units.long_m();
    let step = round_step(ruler.stage.length_m() / unit_m / 6.0);
    let y = BOTTOM - 22.0;
    html! {
        g class="ruler" {
            path d={ "M" (u(LEFT)) " " (u(y)) "H" (u(RIGHT)) } {}
            @for at in steps(0.0, ruler.stage.length_m() / unit_m, step) {
                @let x = ruler.x(at * unit_m);
                path d={ "M" (u(x)) " " (u(y)) "v4" } {}
                text x=(u(x)) y=(u(y + 15.0)) text-anchor="middle" { (voice.marked(round_shown(at))) }
            }
            text x=(u(LEFT - 14.0)) y=(u(y + 15.0)) text-anchor="end" { (voice.units.long()) }
        }
    }
}

fn round_shown(at: f64) -> String {
    let shown = format!("{at:.2}");
    shown.trim_end_matches('0').trim_end_matches('.').to_owned()
}

// --- strips ---

fn strips(ruler: &Ruler<'_>, sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let row = |n: f64| GROUND + GAP + n * (STRIP + GAP);
    html! {
        (name("profile-zones", voice, row(0.0)))
        (zones(ruler, sheet, row(0.0)))
        (name("profile-legs", voice, row(1.0)))
        (legs(ruler, sheet, row(1.0)))
        (name("profile-steep", voice, row(2.0)))
        (steep(ruler, sheet, row(2.0)))
    }
}

fn name(what: &str, voice: Voice, y: f64) -> Markup {
    html! { text class="strip-name" x=(u(LEFT - 5.0)) y=(u(y + 10.5)) text-anchor="end" { (word(what, voice)) } }
}

fn zones(ruler: &Ruler<'_>, sheet: &Sheet<'_>, y: f64) -> Markup {
    html! {
        @for zone in &sheet.plan.zones {
            @for c in zone.crossings.iter().filter(|c| c.stage == ruler.stage.number) {
                @let (x0, x1) = (ruler.x(c.enter_m), ruler.x(c.exit_m));
                rect class="zone" x=(u(x0)) y=(u(y)) width=(u((x1 - x0).max(0.8))) height=(u(STRIP))
                    fill=(style::zone_fill(zone.gap_m)) {}
                @if x1 - x0 > 16.0 {
                    text class="width" x=(u(f64::midpoint(x0, x1))) y=(u(y + 10.5)) { (zone.zone) }
                }
            }
        }
    }
}

fn legs(ruler: &Ruler<'_>, sheet: &Sheet<'_>, y: f64) -> Markup {
    let middle = y + STRIP / 2.0;
    html! {
        @for leg in sheet.plan.legs.iter().filter(|l| l.stage == ruler.stage.number) {
            @let (x0, x1) = (ruler.x(leg.start_m), ruler.x(leg.end_m));
            @for piece in graver_last(leg) {
                @let (from, to) = (ruler.x(piece.from_m), ruler.x(piece.to_m));
                (layers::stroke(piece.verdict, &format!("M{} {}H{}", u(from), u(middle), u(to.max(from + 1.0)))))
            }
            @if x1 - x0 > 26.0 {
                (layers::pill(leg.verdict, &layers::leg_sign(leg), (f64::midpoint(x0, x1), middle)))
            }
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
