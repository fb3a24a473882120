//! The leg table for a terminal: one row a leg, folded where the width is short, never cut.

use unicode_width::UnicodeWidthStr;

use super::{
    Sheet,
    row::Row,
    style,
    units::{Side, Units},
    words,
};
use crate::{leg::Verdict, plan::Finding, problem::Level};

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
    zones(&mut out, sheet, look);
    carry(&mut out, sheet, look);
    findings(&mut out, sheet, look);
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
        route.name.as_deref().map_or("Route".to_owned(), one_line),
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
    out.push('\n');
}

// --- legs ---

const COLUMNS: usize = 8;
/// Columns that are read as numbers and stand to the right.
const RIGHT: [bool; COLUMNS] = [true, true, true, false, false, true, false, true];

fn legs(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let units = look.units;
    let head = [
        "leg".to_owned(),
        units.long().to_owned(),
        units.short().to_owned(),
        "height".to_owned(),
        "zones".to_owned(),
        format!("gap {}", units.short()),
        "set-up".to_owned(),
        format!("rope {}", units.short()),
    ];
    let mut lines: Vec<Line> = vec![Line {
        cells: head,
        verdict: None,
    }];
    let stages = sheet.plan.route.stages.len() > 1;
    for leg in &sheet.plan.legs {
        lines.extend(Line::of(&Row::new(leg, units), stages));
    }
    let widths = widths(&lines);
    let total: usize = widths.iter().sum::<usize>() + 2 * COLUMNS + "outside ✕".width();
    for line in &lines {
        line.print(out, &widths, total > look.width, look.colour);
    }
}

/// A printed line before padding; only the first of a leg has a verdict.
struct Line {
    cells: [String; COLUMNS],
    verdict: Option<Verdict>,
}

impl Line {
    fn of(row: &Row, stages: bool) -> Vec<Self> {
        let number = if stages {
            format!("{}/{}", row.stage, row.leg)
        } else {
            row.leg.to_string()
        };
        let first = row.teams.first();
        let main = Self {
            cells: [
                number,
                row.from_to.clone(),
                row.length.clone(),
                row.heights.clone(),
                row.zones.clone(),
                row.gap.clone(),
                first.map_or_else(String::new, |t| setup(row, t)),
                first.map_or_else(String::new, super::row::TeamRow::rope),
            ],
            verdict: Some(row.verdict),
        };
        let more = row.teams.iter().skip(1).map(|team| {
            let mut cells: [String; COLUMNS] = Default::default();
            cells[6] = setup(row, team);
            cells[7] = team.rope();
            Self {
                cells,
                verdict: None,
            }
        });
        std::iter::once(main).chain(more).collect()
    }

    fn print(&self, out: &mut String, widths: &[usize; COLUMNS], folded: bool, colour: bool) {
        let first = if folded { 6 } else { COLUMNS };
        let mut text = String::new();
        for (i, width) in widths.iter().enumerate().take(first) {
            text += &padded(&self.cells[i], *width, RIGHT[i]);
            text += "  ";
        }
        text += &self
            .verdict
            .map_or_else(|| self.verdict_head(), |v| verdict_shown(v, colour));
        out.push_str(text.trim_end());
        out.push('\n');
        if folded && !self.cells[6].is_empty() {
            let rope = if self.cells[0] == "leg" { "" } else { "rope " };
            out.push_str(&format!(
                "     {}   {rope}{}\n",
                self.cells[6], self.cells[7]
            ));
        }
    }

    fn verdict_head(&self) -> String {
        if self.cells[0] == "leg" {
            "verdict".to_owned()
        } else {
            String::new()
        }
    }
}

fn setup(row: &Row, team: &super::row::TeamRow) -> String {
    if row.teams.len() > 1 {
        format!("team {}: {}", team.team, team.setup())
    } else {
        team.setup()
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

fn padded(text: &str, width: usize, right: bool) -> String {
    let pad = " ".repeat(width.saturating_sub(text.width()));
    if right {
        format!("{pad}{text}")
    } else {
        format!("{text}{pad}")
    }
}

fn verdict_shown(verdict: Verdict, colour: bool) -> String {
    let word = format!("{} {}", verdict.as_str(), style::sign(verdict));
    let word = word.trim_end();
    match (colour, verdict) {
        (false, _) | (_, Verdict::Inside) => word.to_owned(),
        (_, Verdict::Unroped) => format!("\u{1b}[2m{word}\u{1b}[0m"),
        (_, Verdict::Look) => format!("\u{1b}[1m{word}\u{1b}[0m"),
        (_, Verdict::Outside) => format!("\u{1b}[1;7m{word}\u{1b}[0m"),
    }
}

// --- what stands below ---

fn zones(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let mut met: Vec<usize> = sheet
        .plan
        .legs
        .iter()
        .flat_map(|l| l.zones.iter().copied())
        .collect();
    met.sort_unstable();
    met.dedup();
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
            .map_or_else(String::new, |n| format!("{}: ", one_line(n)));
        let text = format!("{name}{}", words::zone_description(zone, look.units));
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
            rope.why
        );
        bullet(out, "  · ", &text, look.width);
    }
}

fn findings(out: &mut String, sheet: &Sheet<'_>, look: Look) {
    let of_legs = sheet.plan.legs.iter().flat_map(|l| &l.findings);
    let mut all: Vec<&Finding> = of_legs.chain(&sheet.plan.findings).collect();
    all.sort_by_key(|f| f.level);
    for (level, title) in [
        (Level::Grave, "Grave"),
        (Level::Warning, "Look at this"),
        (Level::Note, "Good to know"),
    ] {
        let grouped = grouped(all.iter().filter(|f| f.level == level));
        if !grouped.is_empty() {
            out.push_str(&format!("\n{title}\n"));
        }
        for (places, finding) in grouped {
            let hint = finding
                .hint
                .as_ref()
                .map_or_else(String::new, |h| format!(" → {h}"));
            let text = format!(
                "{}: {}{hint} [{}]",
                places.join(", "),
                finding.says,
                finding.code
            );
            bullet(out, "  · ", &one_line(&text), look.width);
        }
    }
}

/// Findings that say the same of several places, as one with all the places.
fn grouped<'a, 'b: 'a>(
    findings: impl Iterator<Item = &'a &'b Finding>,
) -> Vec<(Vec<&'b str>, &'b Finding)> {
    let mut groups: Vec<(Vec<&str>, &Finding)> = Vec::new();
    for finding in findings {
        let same =
            |(_, f): &&mut (Vec<&str>, &Finding)| f.code == finding.code && f.says == finding.says;
        match groups.iter_mut().find(same) {
            Some((places, _)) => places.push(&finding.place),
            None => groups.push((vec![&finding.place], finding)),
        }
    }
    groups
}

/// Text with line breaks and control characters made spaces, so that it stays where it is printed.
fn one_line(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

/// A paragraph behind a sign, wrapped at spaces, with the following lines indented under it.
fn bullet(out: &mut String, sign: &str, text: &str, width: usize) {
    let room = width.saturating_sub(sign.width()).max(20);
    let mut line = String::new();
    let mut lead = sign.to_owned();
    for word in text.split(' ') {
        if !line.is_empty() && line.width() + 1 + word.width() > room {
            out.push_str(&format!("{lead}{line}\n"));
            lead = " ".repeat(sign.width());
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    out.push_str(&format!("{lead}{line}\n"));
}
