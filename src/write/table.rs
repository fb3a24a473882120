//! The leg table for a terminal: one row a leg, folded where the width is short, never cut.

use unicode_width::UnicodeWidthStr;

use crate::{fault::Level, plan::leg::Verdict};
use crate::{
    say::{
        plain,
        units::{Side, Units},
        words,
    },
    write::{
        Sheet, change, findings, itinerary, keep,
        paragraph::{bullet, padded},
        row::{Row, TeamRow},
        setups, style,
    },
};

/// How the table is printed.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    /// Columns to fit; below 100 the set-up goes to a line of its own.
    pub width: usize,
    /// With terminal colours.
    pub colour: bool,
    /// Units shown.
    pub units: Units,
}

/// The width the table is made for.
pub const FULL_WIDTH: usize = 100;

/// The plan as a reader in a hut sees it.
#[must_use]
pub fn plan(sheet: &Sheet<'_>, look: Look) -> String {
    let mut out = String::new();
    head(&mut out, sheet, look);
    legs(&mut out, sheet, look);
    carry(&mut out, sheet, look);
    findings::paragraphs(&mut out, sheet, &[Level::Grave, Level::Warning], look);
    changes(&mut out, sheet, look);
    setups::blocks(&mut out, sheet, look.width, look.units);
    zones(&mut out, sheet, look);
    fewer_changes(&mut out, sheet, look);
    findings::paragraphs(&mut out, sheet, &[Level::Note], look);
    out.push_str("\nRead with this plan\n");
    for caution in &sheet.plan.cautions {
        bullet(&mut out, "  · ", caution, look.width);
    }
    out
}

fn head(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let route = &sheet.plan.route;
    let units = look.units;
    let mut title = format!(
        "{}: {} {}",
        route
            .name
            .as_deref()
            .map_or("Route".to_owned(), plain::line),
        units.chainage(route.length_m),
        units.long()
    );
    if let (Some(up), Some(down)) = (route.ascent_m, route.descent_m) {
        title += &format!(
            ", up {} {short}, down {} {short} (turns under {} {short} not counted)",
            units.whole(up),
            units.whole(down),
            units.whole(route.ascent_threshold_m),
            short = units.short()
        );
    }
    bullet(out, "", &title, look.width);
    bullet(out, "", &itinerary::times(sheet.plan), look.width);
    let count = findings::count(sheet);
    if !count.is_empty() {
        bullet(
            out,
            "",
            &format!("{}, below the legs", words::capital(&count)),
            look.width,
        );
    }
    out.push('\n');
}

// --- legs ---

const COLUMNS: usize = 9;
/// Columns that are read as numbers and stand to the right.
const RIGHT: [bool; COLUMNS] = [true, true, true, false, false, true, false, true, false];
/// Columns that go to a second line where the width is short: the set-up and its rope.
const FOLDED: std::ops::Range<usize> = 6..8;

fn legs(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let units = look.units;
    let stages = sheet.plan.route.stages.len() > 1;
    let rows: Vec<Row> = sheet
        .plan
        .legs
        .iter()
        .map(|leg| Row::new(leg, units))
        .collect();
    let mut lines: Vec<Line> = vec![Line::head(units)];
    lines.extend(rows.iter().flat_map(|row| Line::of(row, stages)));
    let widths = widths(&lines);
    let total: usize = widths.iter().sum::<usize>() + 2 * (COLUMNS - 1);
    if total <= look.width {
        for line in &lines {
            line.print(out, &widths, 0..COLUMNS, look.colour);
        }
        return;
    }
    lines[0].print(out, &widths, FOLDED, look.colour);
    for row in &rows {
        let line = Line::main(row, stages);
        line.print(out, &widths, FOLDED, look.colour);
        for team in &row.teams {
            bullet(out, "       ", &folded(row, team, units), look.width);
        }
    }
}

/// The set-up in words, for a line of its own.
fn folded(row: &Row, team: &TeamRow, units: Units) -> String {
    let short = units.short();
    let who = if row.teams.len() > 1 {
        format!("team {}: ", team.team)
    } else {
        String::new()
    };
    let at_hand = match team.at_hand.as_str() {
        "" => String::new(),
        at_hand => format!(" of {at_hand}"),
    };
    format!(
        "{who}{}; rope {}{at_hand} {short}",
        team.setup(),
        team.needed
    )
}

/// A printed line before padding.
struct Line {
    cells: [String; COLUMNS],
    verdict: Option<Verdict>,
}

impl Line {
    fn head(units: Units) -> Self {
        let cells = [
            "leg".to_owned(),
            units.long().to_owned(),
            units.short().to_owned(),
            "height".to_owned(),
            "zones".to_owned(),
            format!("gap {}", units.short()),
            "spacing, knots, coil".to_owned(),
            format!("rope {}", units.short()),
            "verdict".to_owned(),
        ];
        Self {
            cells,
            verdict: None,
        }
    }

    /// The line of a leg, and one more for each further team.
    fn of(row: &Row, stages: bool) -> Vec<Self> {
        let more = row.teams.iter().skip(1).map(|team| {
            let mut cells: [String; COLUMNS] = Default::default();
            cells[6] = team.short_setup();
            cells[7] = team.rope();
            Self {
                cells,
                verdict: None,
            }
        });
        std::iter::once(Self::main(row, stages))
            .chain(more)
            .collect()
    }

    fn main(row: &Row, stages: bool) -> Self {
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
            short_zones(&row.zones),
            row.gap.clone(),
            first.map_or_else(|| unroped(row), TeamRow::short_setup),
            first.map_or_else(String::new, TeamRow::rope),
            format!("{} {}", row.verdict.as_str(), style::sign(row.verdict))
                .trim_end()
                .to_owned(),
        ];
        Self {
            cells,
            verdict: Some(row.verdict),
        }
    }

    fn print(
        &self,
        out: &mut String,
        widths: &[usize; COLUMNS],
        left_out: std::ops::Range<usize>,
        colour: bool,
    ) {
        let whole = left_out == (0..COLUMNS);
        let shown = |i: &usize| whole || !left_out.contains(i);
        let cells = (0..COLUMNS).filter(shown).map(|i| {
            let text = padded(&self.cells[i], widths[i], RIGHT[i]);
            if i + 1 == COLUMNS {
                self.coloured(text.trim_end(), colour)
            } else {
                text
            }
        });
        let line = cells.collect::<Vec<_>>().join("  ");
        out.push_str(line.trim_end());
        out.push('\n');
    }

    fn coloured(&self, text: &str, colour: bool) -> String {
        match self.verdict.filter(|_| colour) {
            None | Some(Verdict::Inside) => text.to_owned(),
            Some(Verdict::Unroped) => format!("\u{1b}[2m{text}\u{1b}[0m"),
            Some(Verdict::Look) => format!("\u{1b}[1m{text}\u{1b}[0m"),
            Some(Verdict::Outside) => format!("\u{1b}[1;7m{text}\u{1b}[0m"),
        }
    }
}

/// Zone numbers, the many counted: `1 2 3 4 +96`.
fn short_zones(zones: &str) -> String {
    const NAMED: usize = 4;
    let numbers: Vec<&str> = zones.split(' ').collect();
    if numbers.len() <= NAMED + 1 {
        return zones.to_owned();
    }
    format!("{} +{}", numbers[..NAMED].join(" "), numbers.len() - NAMED)
}

/// Said in place of a set-up where the verdict does not say it already.
fn unroped(row: &Row) -> String {
    let silent = row.roped || row.verdict == Verdict::Unroped;
    if silent {
        String::new()
    } else {
        "unroped".to_owned()
    }
}

fn widths(lines: &[Line]) -> [usize; COLUMNS] {
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
    let stages = sheet.plan.route.stages.len() > 1;
    out.push_str("\nChanges\n");
    for change in &changes {
        let sign = format!("  {:>2} ", change.number);
        bullet(
            out,
            &sign,
            &itinerary::change(change, stages, look.units),
            look.width,
        );
    }
}

fn zones(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let met = sheet.plan.zones_met();
    if met.is_empty() {
        return;
    }
    out.push_str("\nZones met\n");
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
            words::zone_description(zone, look.units),
            words::zone_told(zone),
        );
        let text = format!("{name}{description} {told}");
        bullet(out, &format!("  {:>2} ", zone.number), &text, look.width);
    }
}

fn carry(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    out.push_str("\nCarry\n");
    if sheet.plan.carry.is_empty() {
        out.push_str("  no leg is walked on the rope\n");
    }
    for rope in &sheet.plan.carry {
        let text = format!(
            "{} rope for {}",
            look.units.length(rope.length_m, Side::AtHand),
            look.units.sentence(&rope.why)
        );
        bullet(out, "  · ", &text, look.width);
    }
}

/// Both ways side by side: changing before each leg, and keeping set-ups.
fn fewer_changes(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let Some(keep) = &sheet.plan.keep_setup else {
        return;
    };
    out.push_str("\nFewer changes\n");
    bullet(out, "  ", &format!("{}:", keep::costs(keep)), look.width);
    for run in &keep.runs {
        let teams = run.teams.iter().map(|t| keep::team(run, t, look.units));
        let text = format!(
            "{}: {}",
            keep::legs(run),
            teams.collect::<Vec<_>>().join("; ")
        );
        bullet(out, "  · ", &text, look.width);
    }
}
