//! What a leader probably meant by a value that is not taken, written so that it is: shown to be looked at, never planned with.

use super::phrase::{PhraseArgs, name};
use crate::{say::arg::Arg, trip::clock::Clock};

/// No rope that is taken along is shorter, metres. Our judgement.
const SHORTEST_ROPE_M: f64 = 15.0;
/// Nobody who stands on a glacier weighs less, kilograms. Our judgement.
const LIGHTEST_KG: f64 = 20.0;
/// Units that a member is counted in by its name, beside those that end in `_` and the unit.
const UNITS: [(&str, &str); 3] = [("party", "kg"), ("rope", "m"), ("minutes", "min")];

/// Units that people end a name with.
const ENDINGS: [&str; 14] = [
    "m", "cm", "mm", "dm", "km", "ft", "feet", "foot", "inch", "inches", "yd", "kg", "lb", "lbs",
];

/// The unit of a name that may be meant, where the one as given ends with another.
pub(super) fn unit_apart<'n>(given: &str, near: &'n str) -> Option<&'n str> {
    let (_, unit) = near.rsplit_once('_')?;
    let (_, other) = given.rsplit_once(['_', '-'])?;
    let units = [unit, other].map(|unit| ENDINGS.contains(&unit));
    (units == [true, true] && unit != other).then_some(unit)
}

/// What is said of it beside the name.
pub(super) fn unit_args(given: &str, near: &str) -> PhraseArgs {
    let unit = unit_apart(given, near);
    vec![
        ("apart", Arg::yes(unit.is_some())),
        ("unit", name(unit.unwrap_or_default())),
    ]
}

/// A line of a trip file that may be meant, and the other one where there are two.
pub(super) struct MeantLine {
    /// How they are told apart: the name of a variant in the catalogue.
    pub(super) word: &'static str,
    /// The first line.
    pub(super) write: String,
    /// The other line, or nothing.
    pub(super) other: String,
}

fn one(word: &'static str, write: String) -> MeantLine {
    let other = String::new();
    MeantLine { word, write, other }
}

/// Name and value of a line, without what is remarked behind it.
pub(super) fn halves(line: &str) -> Option<(&str, &str)> {
    let (member, value) = line.split_once('=')?;
    let value = value.split('#').next().unwrap_or(value);
    Some((member.trim(), value.trim()))
}

/// Numbers with commas between them and no brackets, or in brackets where none of these is taken.
pub(super) fn numbers(member: &str, value: &str) -> Option<MeantLine> {
    let inner = value.trim_matches(['[', ']']);
    let parts: Vec<&str> = inner
        .split(',')
        .map(str::trim)
        .filter(|p| !p.is_empty())
        .collect();
    let parts: Vec<&str> = parts
        .into_iter()
        .map(|part| alone(member, part))
        .collect::<Option<_>>()?;
    let last = member.rsplit('.').next().unwrap_or(member);
    Some(match (last, parts.as_slice()) {
        (_, []) => return None,
        ("rope", parts) => ropes(parts),
        // A greater number is the mass of one, and nobody goes alone.
        ("party", [number]) if below(number, LIGHTEST_KG) => {
            one("line", format!("party = {number}"))
        }
        ("party", [_]) => return None,
        ("party", [whole, part]) if below(part, LIGHTEST_KG) => {
            one("half-mass", format!("{whole}.{part}"))
        }
        ("party" | "teams", parts) => one("list", format!("{last} = [{}]", parts.join(", "))),
        (_, [number]) => one("line", format!("{last} = {number}")),
        (_, [whole, part]) if part.len() == 3 && !whole.contains('.') => MeantLine {
            word: "thousand",
            write: format!("{last} = {whole}.{part}"),
            other: format!("{last} = {whole}{part}"),
        },
        (_, [whole, part]) if !whole.contains('.') && !part.contains('.') => {
            one("point", format!("{last} = {whole}.{part}"))
        }
        (_, parts) => one("list", format!("{last} = [{}]", parts.join(", "))),
    })
}

/// One number of a list.
pub(super) fn number(member: &str, value: &str) -> Option<MeantLine> {
    Some(one("alone", alone(member, value)?.to_owned()))
}

/// Each rope is a table; a second number that is no rope's length are the decimals of the first.
fn ropes(parts: &[&str]) -> MeantLine {
    let all = |lengths: &[&str]| {
        let each = lengths.iter().map(|m| format!("{{ length_m = {m} }}"));
        format!("rope = [{}]", each.collect::<Vec<_>>().join(", "))
    };
    match parts {
        [whole, part] if !whole.contains('.') && !part.contains('.') => {
            let pointed = format!("{whole}.{part}");
            let (write, other) = (all(&[&pointed]), all(parts));
            if below(part, SHORTEST_ROPE_M) {
                one("half-rope", write)
            } else {
                let word = "ropes-or-one";
                MeantLine { word, write, other }
            }
        }
        parts => one("ropes", all(parts)),
    }
}

fn below(number: &str, least: f64) -> bool {
    number.parse::<f64>().is_ok_and(|number| number < least)
}

/// The number of a text, if nothing stands behind it but the unit that the member is counted in.
fn alone<'t>(member: &str, text: &'t str) -> Option<&'t str> {
    let text = text.trim_matches(['"', '\'']).trim();
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.');
    let (number, unit) = text.split_at(end.unwrap_or(text.len()));
    let last = member.rsplit('.').next().unwrap_or(member);
    let unit = unit.trim();
    let counted = last
        .strip_suffix(unit)
        .is_some_and(|name| name.ends_with('_'));
    let known = unit.is_empty() || counted || UNITS.contains(&(last, unit));
    (known && number.parse::<f64>().is_ok()).then_some(number)
}

/// A text without quotation marks, with them; `true` and `false` have none.
pub(super) fn words(member: &str, value: &str) -> Option<MeantLine> {
    let bare = value.trim_matches(['"', '\'']);
    Some(match (member, bare.to_lowercase().as_str()) {
        (_, "yes" | "on" | "true" | "ja") => one("line", format!("{member} = true")),
        (_, "no" | "off" | "false" | "nein") => one("line", format!("{member} = false")),
        ("party", _) => one("people", "party = 3".to_owned()),
        ("start" | "bridges_until" | "back_by", _) => time(member, bare)?,
        ("date", _) => date(bare)?,
        (member, _) if member.is_empty() || bare.is_empty() || bare.contains('"') => return None,
        (member, _) => one("quoted", format!("{member} = \"{bare}\"")),
    })
}

/// A time of day in another form.
pub(super) fn time(member: &str, value: &str) -> Option<MeantLine> {
    let clock = Clock::meant(value.trim_matches(['"', '\'']))?;
    Some(one("line", format!("{member} = \"{clock}\"")))
}

/// A day without quotation marks, or with the day of the month first.
pub(super) fn date(value: &str) -> Option<MeantLine> {
    let bare = value.trim_matches(['"', '\'']);
    let parts: Vec<&str> = bare.split(['.', '-']).map(str::trim).collect();
    let digits = |part: &&str| part.bytes().all(|b| b.is_ascii_digit());
    let [year, month, day] = (match parts[..] {
        [a, b, c] if parts.iter().all(digits) && a.len() == 4 => Some([a, b, c]),
        [a, b, c] if parts.iter().all(digits) && c.len() == 4 => Some([c, b, a]),
        _ => None,
    })?;
    Some(one(
        "line",
        format!("date = \"{year}-{month:0>2}-{day:0>2}\""),
    ))
}
