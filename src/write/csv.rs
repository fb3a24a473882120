//! One line a leg and rope team, RFC 4180, for spreadsheets.

use std::io;

use crate::{
    fault::Level,
    plan::leg::{Leg, TeamSetup},
    say::plain,
    trip::clock::Clock,
    write::sheet::Sheet,
};

const HEAD: [&str; 33] = [
    "leg",
    "stage",
    "roped",
    "start_m",
    "end_m",
    "length_m",
    "ascent_m",
    "descent_m",
    "time_min",
    "zones",
    "gap_m",
    "effective_gap_m",
    "verdict",
    "team",
    "people",
    "spacing_m",
    "knots",
    "coil_m",
    "coil_carried_m",
    "rope_m",
    "findings",
    "zone_names",
    "start_height_m",
    "end_height_m",
    "halt_min",
    "start_clock",
    "end_clock",
    "latest_start",
    "at_bridges_until_m",
    "turn_round_m",
    "turn_round",
    "sunrise",
    "sunset",
];

/// The legs as CSV with a head line; numbers in metres whatever units are shown elsewhere.
///
/// # Errors
/// Whatever `out` refuses.
pub fn legs(out: impl io::Write, sheet: &Sheet<'_>) -> io::Result<()> {
    let mut csv = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(out);
    csv.write_record(HEAD)?;
    for leg in &sheet.plan.legs {
        let of_leg = of_leg(leg);
        let mut teams: Vec<[String; 7]> = leg.teams.iter().map(of_team).collect();
        if teams.is_empty() {
            teams.push(Default::default());
        }
        for team in teams {
            let cells = of_leg
                .iter()
                .cloned()
                .chain(team)
                .chain([findings(leg), names(sheet, leg)])
                .chain(clock(sheet, leg));
            csv.write_record(cells.map(|c| guarded(&c)))?;
        }
    }
    csv.flush()
}

fn number(x: f64) -> String {
    format!("{:.3}", x + 0.0)
}

fn of_leg(leg: &Leg) -> [String; 13] {
    let zones: Vec<String> = leg.zones.iter().map(usize::to_string).collect();
    let maybe = |x: Option<f64>| x.map_or_else(String::new, number);
    [
        leg.leg.to_string(),
        leg.stage.to_string(),
        leg.roped.to_string(),
        number(leg.start_m),
        number(leg.end_m),
        number(leg.length_m),
        maybe(leg.ascent_m),
        maybe(leg.descent_m),
        number(leg.time_min),
        zones.join(" "),
        maybe(leg.gap_m),
        maybe(leg.effective_gap_m),
        leg.verdict.as_str().to_owned(),
    ]
}

/// The heights and hours of a leg, and the clock of its stage.
fn clock(sheet: &Sheet<'_>, leg: &Leg) -> [String; 11] {
    let maybe = |x: Option<f64>| x.map_or_else(String::new, number);
    let time = |at: Option<Clock>| at.map_or_else(String::new, |at| at.to_string());
    let mut clocks = sheet.plan.clock.iter().flat_map(|clock| clock.stages());
    let clock = clocks.find(|clock| clock.stage == leg.stage);
    let planned = clock.map(|clock| clock.as_planned).unwrap_or_default();
    [
        maybe(leg.start_height_m),
        maybe(leg.end_height_m),
        number(leg.halt_min),
        time(leg.start_clock),
        time(leg.end_clock),
        time(planned.latest_start),
        maybe(planned.at_bridges_until_m),
        maybe(planned.turn_round.map(|turn| turn.at_m)),
        time(planned.turn_round.map(|turn| turn.by)),
        time(clock.and_then(|clock| clock.sunrise)),
        time(clock.and_then(|clock| clock.sunset)),
    ]
}

/// Names of the zones met, `; ` between them.
fn names(sheet: &Sheet<'_>, leg: &Leg) -> String {
    let met = sheet.zones.iter().filter(|z| leg.zones.contains(&z.number));
    met.filter_map(|z| z.name.as_deref())
        .map(plain::line)
        .collect::<Vec<_>>()
        .join("; ")
}

/// Codes of what must be looked at, apart by spaces.
fn findings(leg: &Leg) -> String {
    let said = leg.findings.iter().filter(|f| f.level() <= Level::Look);
    let mut codes: Vec<&str> = said.map(|f| f.code()).collect();
    codes.dedup();
    codes.join(" ")
}

fn of_team(team: &TeamSetup) -> [String; 7] {
    [
        team.team.to_string(),
        team.people.to_string(),
        number(team.spacing_m),
        team.knots.count.to_string(),
        number(team.coil_m),
        number(team.coil_carried_m),
        number(team.ledger.total_m),
    ]
}

/// A cell that no spreadsheet takes for a formula.
#[must_use]
pub fn guarded(text: &str) -> String {
    let number = text.parse::<f64>().is_ok();
    let formula = !number && text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    if formula {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_that_look_like_formulas_are_guarded_and_numbers_are_not() {
        assert_eq!(guarded("=cmd|' /C calc'!A0"), "'=cmd|' /C calc'!A0");
        assert_eq!(guarded("+1+1"), "'+1+1");
        assert_eq!(guarded("-3.5"), "-3.5");
    }
}
