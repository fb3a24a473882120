//! A leg in sentences: for popups, messages and people who cannot see the colours.

use crate::{
    plan::leg::{Leg, Verdict},
    trip::zone::{RopeWord, Surface, Zone},
};
use crate::{
    say::units::Units,
    write::row::{Row, TeamRow},
};

/// What a verdict means, in words that promise nothing.
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Unroped => "unroped",
        Verdict::Inside => "inside the limits you gave",
        Verdict::Look => "look: near a limit or resting on a guess",
        Verdict::Outside => "outside the limits you gave",
    }
}

/// `leg 4`, `legs 4, 12`.
#[must_use]
pub fn legs(legs: &[usize]) -> String {
    let numbers: Vec<String> = legs.iter().map(usize::to_string).collect();
    let word = if numbers.len() > 1 { "legs" } else { "leg" };
    format!("{word} {}", numbers.join(", "))
}

/// `Leg 2: 3 × 13 m, look`.
#[must_use]
pub fn leg_title(leg: &Leg, units: Units) -> String {
    let row = Row::new(leg, units);
    let how = match row.teams.as_slice() {
        [] => return format!("Leg {}: {}", leg.leg, leg.verdict.as_str()),
        teams => teams
            .iter()
            .map(|t| t.spacing.clone())
            .collect::<Vec<_>>()
            .join(" and "),
    };
    format!("Leg {}: {how}, {}", leg.leg, leg.verdict.as_str())
}

/// The verdict, the set-up and what must be said, in sentences.
#[must_use]
pub fn leg_description(leg: &Leg, units: Units) -> String {
    let row = Row::new(leg, units);
    let mut says = vec![format!(
        "{} {}, {} {}: {}.",
        row.from_to,
        units.long(),
        row.length,
        units.short(),
        verdict(leg.verdict)
    )];
    says.extend(
        row.teams
            .iter()
            .map(|team| team_sentence(team, row.teams.len(), units)),
    );
    says.extend(
        leg.findings
            .iter()
            .map(|f| format!("{}.", units.sentence(&capital(&f.says)))),
    );
    says.join(" ")
}

fn team_sentence(team: &TeamRow, teams: usize, units: Units) -> String {
    let who = if teams > 1 {
        format!("Team {}: ", team.team)
    } else {
        String::new()
    };
    let short = units.short();
    let rope = match (team.at_hand.as_str(), team.sold.as_str()) {
        ("", "") => "more than any rope sold".to_owned(),
        ("", sold) => format!("take {sold} {short}"),
        (at_hand, _) => format!("rope at hand {at_hand} {short}"),
    };
    format!(
        "{who}{}; rope needed {} {short}, {rope}.",
        team.setup(),
        team.needed
    )
}

/// What is known of a zone, in a sentence.
#[must_use]
pub fn zone_description(zone: &Zone, units: Units) -> String {
    use crate::say::units::Side;
    let mut says = vec![format!(
        "gaps up to {}",
        units.length(zone.gap.max_m, Side::Demand)
    )];
    if zone.gap.assumed {
        says.push("width assumed".to_owned());
    }
    says.push(
        match zone.surface {
            Surface::Snow => "hidden under snow",
            Surface::Bare => "bare ice",
        }
        .to_owned(),
    );
    says.extend(
        zone.snow_depth_m
            .map(|m| format!("snow {}", units.length(m, Side::AtHand))),
    );
    says.extend(zone.strike.map(|s| match s.uncertainty_deg {
        Some(doubt_deg) => format!("strike {}° ± {doubt_deg}°", s.deg),
        None => format!("strike {}°, taken as exact", s.deg),
    }));
    match zone.rope {
        RopeWord::Auto => {}
        RopeWord::Always => says.push("the leader says: always rope".to_owned()),
        RopeWord::Never => says.push("the leader says: never rope".to_owned()),
    }
    format!("{}.", capital(&says.join(", ")))
}

/// What the leader wrote of a zone: when it was seen, where that comes from, and the note.
#[must_use]
pub fn zone_told(zone: &Zone) -> String {
    let told = [
        ("Observed", &zone.observed_on),
        ("Source:", &zone.source),
        ("Note:", &zone.note),
    ];
    let sentence = |(what, text): (&str, &Option<String>)| {
        Some(format!("{what} {}.", text.as_ref()?.trim_end_matches('.')))
    };
    told.into_iter()
        .filter_map(sentence)
        .collect::<Vec<_>>()
        .join(" ")
}

/// The text with its first letter in upper case.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}
