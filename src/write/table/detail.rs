//! All that is known of a plan, for a terminal: one row a leg, folded where the width is short, never cut.

use std::ops::Range;

use unicode_width::UnicodeWidthStr;

use crate::{
    fault::Level,
    plan::leg::{Leg, Verdict},
    say::{arg::Arg, carry::carry_why, cautions::cautions, plain, span::Said, voice::Voice},
    write::{
        parts::{
            change, clock, findings, itinerary, keep,
            packs::left_over,
            paragraph::{bullet, hanging, padded},
            row::{self, LegRow, TeamRow},
            sentence, setups, style, walk,
        },
        sheet::{Look, Sheet},
        table::painted::Table,
    },
};

/// A title above what follows.
fn title(out: &mut String, key: &str, voice: Voice) {
    out.push_str(&format!("\n{}\n", voice.say(key, &[])));
}

/// The whole plan.
pub(super) fn whole(sheet: &Sheet<'_>) -> Table {
    let look = sheet.look;
    let mut out = Table::default();
    let groups = findings::groups(sheet.plan, look.voice);
    let paragraphs = |out: &mut Table, levels: &[Level]| {
        findings::paragraphs(&mut out.text, &groups, levels, look.voice, look.width);
    };
    head(&mut out.text, sheet, look);
    legs(&mut out, sheet, look);
    carry(&mut out.text, sheet, look);
    paragraphs(&mut out, &[Level::Stop, Level::Outside, Level::Look]);
    changes(&mut out.text, sheet, look);
    clock(&mut out.text, sheet, look);
    setups::blocks(&mut out.text, sheet.plan, look.width, look.voice);
    zones(&mut out.text, sheet, look);
    fewer_changes(&mut out.text, sheet, look);
    paragraphs(&mut out, &[Level::Note]);
    title(&mut out.text, "title-cautions", look.voice);
    for caution in cautions(look.voice) {
        bullet(&mut out.text, "  · ", &caution.to_string(), look.width);
    }
    out
}

fn head(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let (route, voice) = (&sheet.plan.route, look.voice);
    let title = [
        ("name", Arg::Said(sheet.title())),
        ("length", Arg::Walked(route.length_m)),
        ("up", Arg::Whole(route.ascent_m.unwrap_or_default())),
        ("down", Arg::Whole(route.descent_m.unwrap_or_default())),
        ("threshold", Arg::Whole(route.ascent_threshold_m)),
    ];
    let key = match route.ascent_m {
        Some(_) => "title",
        None => "title-without-heights",
    };
    hanging(out, &voice.say(key, &title).to_string(), look.width);
    let times = itinerary::times(sheet.plan, voice).to_string();
    bullet(out, "", &times, look.width);
    let count = findings::count(sheet.plan, voice);
    if !count.is_empty() {
        let args = [("count", Arg::Said(count.capital()))];
        let count = voice.say("count-below", &args).to_string();
        bullet(out, "", &count, look.width);
    }
    for word in [Verdict::Stop, Verdict::Outside] {
        let told = sentence::where_it_holds(&sheet.plan.legs, word, voice);
        told.iter()
            .for_each(|told| bullet(out, "", &told.to_string(), look.width));
    }
    out.push('\n');
}

// --- legs ---

const COLUMNS: usize = 9;
/// Columns that are read as numbers and stand to the right.
const RIGHT: [bool; COLUMNS] = [true, true, true, false, false, true, false, true, false];
/// Columns that go to a second line where the width is short: the set-up and its rope.
const FOLDED: Range<usize> = 6..8;

fn legs(out: &mut Table, sheet: &Sheet<'_>, look: Look) {
    let voice = look.voice;
    let stages = sheet.plan.route.stages.len() > 1;
    let rows: Vec<LegRow<'_>> = sheet
        .plan
        .legs
        .iter()
        .map(|leg| LegRow::new(leg, voice))
        .collect();
    let mut lines: Vec<Vec<Line>> = vec![vec![Line::head(&sheet.plan.legs, voice)]];
    lines.extend(rows.iter().map(|row| Line::of(row, stages, voice)));
    let widths = widths(lines.iter().flatten());
    let total: usize = widths.iter().sum::<usize>() + 2 * (COLUMNS - 1);
    let folds = total > look.width;
    let left_out = if folds { FOLDED } else { 0..COLUMNS };
    lines[0][0].print(out, &widths, left_out.clone());
    for ((leg, row), lines) in sheet.plan.legs.iter().zip(&rows).zip(&lines[1..]) {
        let shown = if folds { 1 } else { lines.len() };
        for line in lines.iter().take(shown) {
            line.print(out, &widths, left_out.clone());
        }
        let folded = row.teams.iter().map(|team| folded(row, team, voice));
        let in_part = sentence::word_in_part(leg, voice).map(|word| word.to_string());
        for text in folded.filter(|_| folds).chain(in_part) {
            bullet(&mut out.text, "       ", &text, look.width);
        }
    }
}

/// The set-up in words, for a line of its own.
fn folded(row: &LegRow<'_>, team: &TeamRow<'_>, voice: Voice) -> String {
    let args = [
        ("teams", Arg::Count(row.teams.len())),
        ("team", Arg::Count(team.setup.team)),
        ("setup", Arg::Said(Said::figure(team.setup()))),
        ("needed", Arg::Said(Said::figure(&team.needed))),
        ("at-hand", Arg::Said(Said::figure(&team.at_hand))),
        ("unit", Arg::Said(Said::words(voice.units.short()))),
    ];
    let key = if team.at_hand.is_empty() {
        "folded"
    } else {
        "folded-at-hand"
    };
    voice.say(key, &args).to_string()
}

/// A printed line before padding.
struct Line {
    cells: [String; COLUMNS],
    verdict: Option<Verdict>,
}

impl Line {
    fn head(legs: &[Leg], voice: Voice) -> Self {
        let unit = |unit: &'static str| [("unit", Arg::Said(Said::words(unit)))];
        let (short, long) = (unit(voice.units.short()), unit(voice.units.long()));
        let column = |key: &str, unit: &[(&str, Arg<'_>)]| voice.say(key, unit).to_string();
        let cells = [
            column("column-leg", &[]),
            column("column-unit", &long),
            column("column-unit", &short),
            column("column-height", &[]),
            column("column-zones", &[]),
            row::gap_head(legs, voice).to_string(),
            column("column-set-up", &[]),
            column("column-rope", &short),
            column("column-verdict", &[]),
        ];
        Self {
            cells,
            verdict: None,
        }
    }

    /// The line of a leg, and one more for each further team.
    fn of(row: &LegRow<'_>, stages: bool, voice: Voice) -> Vec<Self> {
        let more = row.teams.iter().skip(1).map(|team| {
            let mut cells: [String; COLUMNS] = Default::default();
            cells[6] = team.short_setup();
            cells[7] = team.rope();
            Self {
                cells,
                verdict: None,
            }
        });
        std::iter::once(Self::main(row, stages, voice))
            .chain(more)
            .collect()
    }

    fn main(row: &LegRow<'_>, stages: bool, voice: Voice) -> Self {
        let number = if stages {
            format!("{}/{}", row.stage, row.leg)
        } else {
            row.leg.to_string()
        };
        let first = row.teams.first();
        let cells = [
            number,
            row.from_to.clone(),
            row.length.clone(),
            row.heights.clone(),
            walk::short_zones(row.zones),
            row.gap.clone(),
            first.map_or_else(|| unroped(row, voice), TeamRow::short_setup),
            first.map_or_else(String::new, TeamRow::rope),
            format!(
                "{} {}",
                sentence::verdict(row.verdict, voice),
                style::sign(row.verdict)
            )
            .trim_end()
            .to_owned(),
        ];
        Self {
            cells,
            verdict: Some(row.verdict),
        }
    }

    fn print(&self, out: &mut Table, widths: &[usize; COLUMNS], left_out: Range<usize>) {
        let whole = left_out == (0..COLUMNS);
        let shown = |i: &usize| whole || !left_out.contains(i);
        let cells = (0..COLUMNS)
            .filter(shown)
            .map(|i| padded(&self.cells[i], widths[i], RIGHT[i]));
        let line = cells.collect::<Vec<_>>().join("  ");
        out.text.push_str(line.trim_end());
        // The verdict is the last cell.
        if let Some(verdict) = self.verdict {
            let end = out.text.len();
            let start = end - self.cells[COLUMNS - 1].len();
            out.verdicts.push((start..end, verdict));
        }
        out.text.push('\n');
    }
}

/// Said in place of a set-up where the verdict does not say it already.
fn unroped(row: &LegRow<'_>, voice: Voice) -> String {
    let silent = row.roped || row.verdict == Verdict::Unroped;
    if silent {
        String::new()
    } else {
        sentence::verdict(Verdict::Unroped, voice).to_string()
    }
}

fn widths<'l>(lines: impl Iterator<Item = &'l Line>) -> [usize; COLUMNS] {
    let mut widths = [0; COLUMNS];
    for line in lines {
        for (width, cell) in widths.iter_mut().zip(&line.cells) {
            *width = (*width).max(cell.width());
        }
    }
    widths
}

// --- what stands below ---

fn changes(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let changes = change::changes(sheet);
    if changes.is_empty() {
        return;
    }
    let stages = sheet.plan.route.stages.len();
    title(out, "title-changes", look.voice);
    for change in &changes {
        let sign = format!("  {:>2} ", change.letter());
        bullet(
            out,
            &sign,
            &itinerary::change(change, stages, look.voice),
            look.width,
        );
    }
}

fn clock(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let lines = clock::lines(sheet.plan, look.voice);
    if lines.is_empty() {
        return;
    }
    title(out, "title-clock", look.voice);
    for line in lines {
        bullet(out, "  · ", &line.to_string(), look.width);
    }
}

fn zones(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let met = sheet.plan.zones_met();
    if met.is_empty() {
        return;
    }
    title(out, "title-zones-met", look.voice);
    for zone in sheet
        .zones
        .iter()
        .filter(|z| met.binary_search(&z.number).is_ok())
    {
        let name = zone
            .name
            .as_deref()
            .map_or_else(String::new, |n| format!("{}: ", plain::line(n)));
        let (description, told) = (
            sentence::zone_description(zone, look.voice),
            sentence::zone_told(zone, look.voice),
        );
        let text = format!("{name}{description} {told}");
        bullet(out, &format!("  {:>2} ", zone.number), &text, look.width);
    }
}

fn carry(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    title(out, "title-carry", look.voice);
    if sheet.plan.carry.is_empty() {
        let none = look.voice.say("carry-none", &[]).to_string();
        bullet(out, "  ", &none, look.width);
    }
    let teams = sheet.plan.carry.len();
    for rope in &sheet.plan.carry {
        let args = [
            ("length", Arg::There(rope.length_m)),
            ("why", Arg::Said(carry_why(rope, teams, look.voice))),
        ];
        let text = look.voice.say("carry", &args).to_string();
        bullet(out, "  · ", &text, look.width);
    }
    for left in left_over(sheet.plan, look.voice) {
        bullet(out, "  · ", &left.to_string(), look.width);
    }
}

/// Both ways side by side: changing before each leg, and keeping set-ups.
fn fewer_changes(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let Some(keep) = &sheet.plan.keep_setup else {
        return;
    };
    let voice = look.voice;
    title(out, "title-fewer-changes", voice);
    let costs = format!("{}:", keep::costs(keep, voice));
    bullet(out, "  ", &costs, look.width);
    for run in &keep.runs {
        let teams = run.teams.iter().map(|t| keep::team(run, t, voice));
        let legs = keep::legs(run, voice).then(Said::from(": "));
        let roped = Said::from("; ").then(keep::stretches(run, voice));
        let text = legs.then(Said::join(teams, "; ")).then(roped).to_string();
        bullet(out, "  · ", &text, look.width);
    }
}
