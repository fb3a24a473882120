//! The height profile of a stage, over strips under the same ruler.

use maud::{Markup, html};

use super::{
    drawn::MapPicture,
    extent::{Footprint, LETTER, NUMBER},
    labels::{Labels, Placed},
    lettering::LINE,
    markup::word,
    paper::{WIDTH, path, round_step, simplified, steps, u},
    ruler::{GROUND, LEFT, RIGHT, Ruler, TOP, inward},
    strips::strips,
};
use crate::{
    ground::{profile::Profile, samples::Samples},
    say::{arg::Arg, finding, plain, voice::Voice},
    trip::route::Stage,
    write::parts::change::ChangePoint,
};

/// Middles of the rows of letters above the profile, units over its upper edge, and half of such a row. Our judgement.
const ROWS: [f64; 4] = [-10.5, -24.5, -38.5, -52.5];
const HALF_ROW: f64 = 7.0;
/// So far beside its place a letter may stand, units. Our judgement.
const BESIDE: [f64; 9] = [0.0, 4.0, -4.0, 8.0, -8.0, 13.0, -13.0, 19.0, -19.0];
/// The unit of the heights takes so much room beside the letters, units.
const UNIT: f64 = 16.0;
/// Under the strips stand the numbers of the ruler: its line and their line, and what they take in all, units.
const RULE: f64 = 4.0;
const NUMBERS: f64 = 15.0;
const RULER: f64 = 26.0;

/// The profile; a sentence where no heights are known.
pub(super) fn stage(picture: &MapPicture<'_>, stage: &Stage, profile: &Profile) -> Markup {
    let sheet = picture.sheet;
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
    let letters = letters(&ruler, &picture.changes);
    let highest = letters.iter().map(|l| l.placed.at.1 - HALF_ROW);
    let top = (TOP + highest.fold(0.0, f64::min)).min(0.0);
    let (strips, lowest) = strips(&ruler, sheet);
    html! {
        svg class="drawing wide" role="img" aria-labelledby=(id) viewBox={ "0 " (u(top)) " " (u(WIDTH)) " " (u(lowest + RULER - top)) } {
            title id=(id) { (plain::line(&says)) }
            defs {
                pattern id={ "hatch-" (stage.number) } width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)" {
                    path class="hatch" d="M2.5 0v5" {}
                }
            }
            (scale(&ruler, voice))
            (ground(&ruler))
            (shown_letters(&letters))
            (strips)
            (kilometres(&ruler, lowest + RULE, voice))
        }
    }
}

/// The hill, in as many pieces as jumps leave: between them nothing is walked and nothing drawn.
fn ground(ruler: &Ruler<'_>) -> Markup {
    html! { @for run in ruler.profile.runs() { (hill(ruler, &run)) } }
}

fn hill(ruler: &Ruler<'_>, run: &Samples<'_>) -> Markup {
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

/// A letter above the profile.
struct Lettered {
    letter: String,
    x: f64,
    ground: f64,
    placed: Placed,
}

/// Where the set-up changes, lettered as on the maps: in rows above the profile, whose upper edge lies at 0.
fn letters(ruler: &Ruler<'_>, all: &[ChangePoint<'_>]) -> Vec<Lettered> {
    let here = all.iter().filter(|c| c.stage == ruler.stage.number);
    let mut here: Vec<_> = here.collect();
    let edge = |change: &ChangePoint<'_>| inward(ruler.x(change.at_m));
    here.sort_by(|a, b| edge(a).total_cmp(&edge(b)));
    let highest = ROWS.into_iter().fold(0.0, f64::min) - HALF_ROW;
    let mut labels = Labels::over(WIDTH, highest, 0.0, true);
    labels.keep((LEFT - UNIT / 2.0, ROWS[0]), UNIT);
    let mut placed = Vec::new();
    for change in here {
        let (x, letter) = (ruler.x(change.at_m), change.letter());
        let footprint = Footprint::text(&letter, LETTER, LINE);
        let rows = ROWS.into_iter();
        let places = rows.flat_map(|y| BESIDE.map(|by| (x + by, y)));
        let found = labels.place_by((x, 0.0), &places.collect::<Vec<_>>(), &footprint);
        let height_m = ruler.profile.height_m(change.at_m);
        placed.extend(found.map(|placed| Lettered {
            letter,
            x,
            ground: height_m.map_or(GROUND, |m| ruler.y(m)),
            placed,
        }));
    }
    placed
}

fn shown_letters(letters: &[Lettered]) -> Markup {
    html! {
        g class="at" transform={ "translate(0 " (u(TOP)) ")" } {
            @for Lettered { letter, x, ground, placed } in letters {
                @let (middle, y) = placed.at;
                path class=(placed.class()) d={ "M" (u(*x)) " 0V" (u(ground - TOP)) } {}
                @if y >= ROWS[0] {
                    path class=(placed.class()) d={ "M" (u(middle)) " -5L" (u(*x)) " 0" } {}
                }
                (placed.led())
                text class=(placed.class()) x=(u(middle)) y=(u(y + LINE)) text-anchor="middle" { (letter) }
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

fn kilometres(ruler: &Ruler<'_>, y: f64, voice: Voice) -> Markup {
    let unit_m = voice.units.long_m();
    let step = round_step(ruler.stage.length_m() / unit_m / 6.0);
    html! {
        g class="ruler" {
            path d={ "M" (u(LEFT)) " " (u(y)) "H" (u(RIGHT)) } {}
            @for at in steps(0.0, ruler.stage.length_m() / unit_m, step) {
                @let (x, says) = (ruler.x(at * unit_m), voice.marked(round_shown(at)));
                @let most = WIDTH - Footprint::text(&says, NUMBER, LINE).narrow.right;
                path d={ "M" (u(x)) " " (u(y)) "v4" } {}
                text x=(u(x.min(most))) y=(u(y + NUMBERS)) text-anchor="middle" { (says) }
            }
            text x=(u(LEFT - 14.0)) y=(u(y + NUMBERS)) text-anchor="end" { (voice.units.long()) }
        }
    }
}

fn round_shown(at: f64) -> String {
    let shown = format!("{at:.2}");
    shown.trim_end_matches('0').trim_end_matches('.').to_owned()
}
