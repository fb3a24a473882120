//! A message: a few short lines a leg, for a phone.
//!
//! The lines of the legs are plain ASCII and at most 160 characters a leg, one short message
//! `[from memory: GSM 03.38; a sign beyond its alphabet cuts the message to 70]`. Where more has to be said
//! the message says less of each team, and never a part of a number.

use crate::{
    fault::Level,
    plan::leg::{Leg, Verdict},
};
use crate::{
    say::{plain, units::Units},
    write::{
        Sheet,
        row::{Row, TeamRow},
    },
};

/// Most characters of a leg.
pub const MOST: usize = 160;
/// Most characters of a route's name in the head line. Our judgement.
const NAME_MOST: usize = 60;

/// The message: a head line, a block for each leg, what to carry and how to read it.
#[must_use]
pub fn message(sheet: &Sheet<'_>, units: Units) -> String {
    let mut blocks = vec![head(sheet, units)];
    blocks.extend(sheet.plan.legs.iter().map(|l| leg(l, units)));
    blocks.push(carry(sheet, units));
    blocks.push(
        "Computed for its assumptions only; what is seen on the spot comes first.".to_owned(),
    );
    blocks.join("\n\n") + "\n"
}

fn head(sheet: &Sheet<'_>, units: Units) -> String {
    let route = &sheet.plan.route;
    let name = route.name.as_deref().unwrap_or("Route");
    format!(
        "{}: {} {}, {} legs",
        plain::short(name, NAME_MOST),
        units.chainage(route.length_m),
        units.long(),
        sheet.plan.legs.len()
    )
}

fn carry(sheet: &Sheet<'_>, units: Units) -> String {
    use crate::say::units::Side;
    let ropes = sheet.plan.carry.iter();
    let lengths: Vec<String> = ropes
        .map(|c| units.length(c.length_m, Side::AtHand))
        .collect();
    match lengths.as_slice() {
        [] => "No leg is walked on the rope.".to_owned(),
        _ => format!("Carry: {}", lengths.join(" + ")),
    }
}

/// One leg within [`MOST`] characters, saying as much as fits.
#[must_use]
pub fn leg(leg: &Leg, units: Units) -> String {
    let row = Row::new(leg, units);
    let reasons = reasons(leg);
    let told = |form: Form| ascii(&(form(leg, &row, units) + &reasons));
    let forms: [Form; 3] = [full, terse, counted];
    let said = forms.into_iter().map(told);
    said.clone()
        .find(|text| text.len() <= MOST)
        .unwrap_or_else(|| ascii(&format!("{}\n! see the report", bare(&row, units))))
}

/// One way to say a leg.
type Form = fn(&Leg, &Row, Units) -> String;

/// Why the leg wants a look, in the words of the codes: `! GRAVE fall held in none`.
fn reasons(leg: &Leg) -> String {
    let of = |level: Level| {
        let codes = leg
            .findings
            .iter()
            .filter(move |f| f.level == level)
            .map(|f| f.code.replace('-', " "));
        let mut codes: Vec<String> = codes.collect();
        codes.dedup();
        codes.join(", ")
    };
    let (grave, warning) = (of(Level::Grave), of(Level::Warning));
    match (grave.as_str(), warning.as_str()) {
        ("", "") => String::new(),
        ("", warning) => format!("\n! {warning}"),
        (grave, "") => format!("\n! GRAVE {grave}"),
        (grave, warning) => format!("\n! GRAVE {grave}; {warning}"),
    }
}

/// The signs of the other outputs in ASCII; what has no twin is left out.
fn ascii(text: &str) -> String {
    text.chars()
        .filter_map(|c| match c {
            '×' => Some('x'),
            '–' | '−' => Some('-'),
            c => c.is_ascii().then_some(c),
        })
        .collect()
}

/// `L2 0.98-1.44 km LOOK`: the line that every form begins with.
fn bare(row: &Row, units: Units) -> String {
    let verdict = match (row.roped, row.verdict) {
        (true, verdict) => format!("ROPED {}", verdict.as_str()),
        (false, Verdict::Unroped) => "unroped".to_owned(),
        (false, verdict) => format!("unroped, {}", verdict.as_str()),
    };
    format!("L{} {} {} {verdict}", row.leg, row.from_to, units.long())
}

fn full(leg: &Leg, row: &Row, units: Units) -> String {
    let mut lines = vec![bare(row, units)];
    let short = units.short();
    lines.extend(teams(row).into_iter().map(|(who, team)| {
        format!(
            "{who}{}, {}, {}, rope {} {short}",
            team.spacing,
            team.knots,
            team.coils,
            team.rope()
        )
    }));
    if !row.gap.is_empty() {
        lines.push(format!("gap {} {short}", row.gap));
    }
    if leg.roped {
        lines.push(format!("up {:.5} {:.5}", leg.start[1], leg.start[0]));
    }
    lines.join("\n")
}

fn terse(_: &Leg, row: &Row, units: Units) -> String {
    let short = units.short();
    let teams = teams(row);
    let said = teams.iter().map(|(who, team)| {
        let knots = team
            .knots
            .replace("no knots", "0 kn")
            .replace(" knots", " kn");
        let coils = team
            .coils
            .replace("coils", "coil")
            .replace("no coil", "coil 0");
        format!(
            "{who}{}, {knots}, {coils}, rope {} {short}",
            team.spacing, team.needed
        )
    });
    let mut lines = vec![bare(row, units)];
    lines.extend(said);
    lines.join("\n")
}

/// Many different teams: how they differ, and where the rest stands.
fn counted(_: &Leg, row: &Row, units: Units) -> String {
    let needed: Vec<f64> = row
        .teams
        .iter()
        .filter_map(|t| t.needed.parse().ok())
        .collect();
    let most = needed.iter().copied().fold(0.0, f64::max);
    format!(
        "{}\n{} teams, each its own set-up: see the report. Rope up to {most} {}",
        bare(row, units),
        row.teams.len(),
        units.short()
    )
}

/// Teams with the same set-up said once: `T1 T3: `, and nothing in front of the only team.
fn teams(row: &Row) -> Vec<(String, &TeamRow)> {
    let mut groups: Vec<(Vec<usize>, &TeamRow)> = Vec::new();
    for team in &row.teams {
        match groups.iter_mut().find(|(_, other)| same(other, team)) {
            Some((numbers, _)) => numbers.push(team.team),
            None => groups.push((vec![team.team], team)),
        }
    }
    let who = |numbers: &[usize]| {
        let named: Vec<String> = numbers.iter().map(|n| format!("T{n}")).collect();
        if row.teams.len() < 2 {
            String::new()
        } else {
            format!("{}: ", named.join(" "))
        }
    };
    groups
        .into_iter()
        .map(|(n, team)| (who(&n), team))
        .collect()
}

/// Whether two teams are told the same but for their numbers.
fn same(a: &TeamRow, b: &TeamRow) -> bool {
    let unnumbered = |t: &TeamRow| TeamRow {
        team: 0,
        ..t.clone()
    };
    unnumbered(a) == unnumbered(b)
}
