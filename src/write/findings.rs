//! Findings as they are read: by level, the same of several places said once.

use std::collections::BTreeMap;

use super::{Sheet, paragraph::bullet, table::Look};
use crate::{fault::Level, plan::Finding};

/// Places named one by one before the rest is counted. Our judgement.
const NAMED: usize = 6;

/// All findings of the legs and of the whole, the graver first.
fn all<'a>(sheet: &Sheet<'a>) -> Vec<&'a Finding> {
    let of_legs = sheet.plan.legs.iter().flat_map(|l| &l.findings);
    let mut all: Vec<&Finding> = of_legs.chain(&sheet.plan.findings).collect();
    all.sort_by_key(|f| f.level);
    all
}

/// `1 grave finding, 3 to look at`; empty where there is neither.
#[must_use]
pub fn count(sheet: &Sheet<'_>) -> String {
    let all = all(sheet);
    let of = |level| grouped(all.iter().filter(|f| f.level == level)).len();
    let grave = match of(Level::Grave) {
        0 => None,
        1 => Some("1 grave finding".to_owned()),
        n => Some(format!("{n} grave findings")),
    };
    let look = Some(of(Level::Warning))
        .filter(|n| *n > 0)
        .map(|n| format!("{n} to look at"));
    grave.into_iter().chain(look).collect::<Vec<_>>().join(", ")
}

/// The findings of these levels, each level under its title.
pub(super) fn paragraphs(out: &mut String, sheet: &Sheet<'_>, levels: &[Level], look: Look) {
    let all = all(sheet);
    for level in levels {
        let title = match level {
            Level::Error => "Wrong",
            Level::Grave => "Grave",
            Level::Warning => "Look at this",
            Level::Note => "Good to know",
        };
        let grouped = grouped(all.iter().filter(|f| f.level == *level));
        if !grouped.is_empty() {
            out.push_str(&format!("\n{title}\n"));
        }
        for (places, finding) in grouped {
            let hint = finding
                .hint
                .as_ref()
                .map_or_else(String::new, |h| format!(" → {h}"));
            let places = listed(&places);
            let text = format!("{places}: {}{hint} [{}]", finding.says, finding.code);
            bullet(out, "  · ", &look.units.sentence(&text), look.width);
        }
    }
}

/// Places in a row, `legs 2, 4` where all are legs; many are counted.
pub(super) fn listed(places: &[&str]) -> String {
    let numbers: Option<Vec<&str>> = places.iter().map(|p| leg_number(p)).collect();
    let (lead, names) = match numbers {
        Some(numbers) if places.len() > 1 => ("legs ", numbers),
        _ => ("", places.to_vec()),
    };
    if names.len() <= NAMED + 1 {
        return format!("{lead}{}", names.join(", "));
    }
    format!(
        "{lead}{} and {} more",
        names[..NAMED].join(", "),
        names.len() - NAMED
    )
}

/// `4` of `leg 4`; nothing else will do.
fn leg_number(place: &str) -> Option<&str> {
    place
        .strip_prefix("leg ")
        .filter(|n| n.chars().all(|c| c.is_ascii_digit()))
}

/// Findings that say the same of several places, as one with all the places.
pub(super) fn grouped<'a, 'b: 'a>(
    findings: impl Iterator<Item = &'a &'b Finding>,
) -> Vec<(Vec<&'b str>, &'b Finding)> {
    let mut groups: Vec<(Vec<&str>, &Finding)> = Vec::new();
    let mut known: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for finding in findings {
        let at = *known
            .entry((&finding.code, &finding.says))
            .or_insert(groups.len());
        match groups.get_mut(at) {
            Some((places, _)) if places.last() == Some(&finding.place.as_str()) => {}
            Some((places, _)) => places.push(&finding.place),
            None => groups.push((vec![&finding.place], finding)),
        }
    }
    groups
}
