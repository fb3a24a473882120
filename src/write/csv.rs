//! One line a leg and rope team, RFC 4180, for spreadsheets.

use std::io;

use crate::{
    fault::Level,
    plan::{
        leg::{Leg, TeamSetup},
        pieces::WordPiece,
    },
    say::{place, plain},
    trip::clock::Clock,
    write::{
        parts::{
            change::{self, ChangePoint},
            walk::{self, Step},
        },
        sheet::Sheet,
    },
};

const HEAD: [&str; 42] = [
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
    "change",
    "start_lon",
    "start_lat",
    "start_utm",
    "rope_at_hand_m",
    "gap_assumed",
    "gravest_level",
    "verdict_at_m",
    "verdict_length_m",
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
    let changes = change::changes(sheet);
    for step in walk::steps(sheet.plan, &changes) {
        let Step::Leg(leg, change) = step else {
            continue;
        };
        let of_leg = of_leg(leg);
        let mut teams: Vec<([String; 7], String)> = leg.teams.iter().map(of_team).collect();
        if teams.is_empty() {
            teams.push(Default::default());
        }
        for (team, at_hand) in teams {
            let cells = of_leg
                .iter()
                .cloned()
                .chain(team)
                .chain([findings(leg), names(sheet, leg)])
                .chain(clock(sheet, leg))
                .chain(begins(leg, change))
                .chain([at_hand])
                .chain(judged(leg));
            csv.write_record(cells.map(|c| guarded(&c)))?;
        }
    }
    csv.flush()
}

/// A figure with three decimals, as all cells for spreadsheets have them.
pub(super) fn number(x: f64) -> String {
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

/// The letter of the change at which a leg begins, and where that is.
fn begins(leg: &Leg, change: Option<&ChangePoint<'_>>) -> [String; 4] {
    let degrees = |deg: f64| format!("{:.7}", deg + 0.0);
    [
        change.map(ChangePoint::letter).unwrap_or_default(),
        degrees(leg.start[0]),
        degrees(leg.start[1]),
        place::utm(leg.start).unwrap_or_default(),
    ]
}

/// Whether the width was assumed, the level of the gravest finding, and where the word of the leg holds: `1020.000-1080.000`,
/// apart by spaces, and how long that is in all.
fn judged(leg: &Leg) -> [String; 4] {
    let level = leg.findings.iter().map(|f| f.level()).min();
    let mut pieces = leg.pieces();
    pieces.retain(|piece| piece.verdict == leg.verdict);
    let span = |p: &WordPiece| format!("{}-{}", number(p.from_m), number(p.to_m));
    let spans: Vec<String> = pieces.iter().map(span).collect();
    let assumed = leg.roped.then(|| leg.gap_assumed.to_string());
    [
        assumed.unwrap_or_default(),
        level.map(Level::as_str).unwrap_or_default().to_owned(),
        spans.join(" "),
        number(pieces.iter().map(WordPiece::length_m).sum()),
    ]
}

/// The set-up of a team, and the length of its rope.
fn of_team(team: &TeamSetup) -> ([String; 7], String) {
    let at_hand = team.rope.as_ref().map(|rope| number(rope.length_m));
    let set_up = [
        team.team.to_string(),
        team.people.to_string(),
        number(team.spacing_m),
        team.knots.count.to_string(),
        number(team.coil_m),
        number(team.coil_carried_m),
        number(team.ledger.total_m),
    ];
    (set_up, at_hand.unwrap_or_default())
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
