//! The property names that mean something, and those that only nearly do.

use std::collections::HashMap;

/// The properties of interface section 3, in the order of its table.
pub(super) const KNOWN: [&str; 13] = [
    "gap_m",
    "gap_min_m",
    "gap_max_m",
    "gap_assumed",
    "snow_depth_m",
    "surface",
    "strike_deg",
    "strike_uncertainty_deg",
    "rope",
    "name",
    "observed_on",
    "source",
    "note",
];

/// Those that only ice has, whatever else a file holds.
pub(super) const OF_ICE: [&str; 6] = [
    "gap_m",
    "gap_min_m",
    "gap_max_m",
    "snow_depth_m",
    "strike_deg",
    "rope",
];

/// Names that look like ours and are somebody else's: simplestyle-spec, our own annotated output,
/// and the spelling of inventories that is read as the name.
const OTHERS: [&str; 5] = ["stroke", "role", "type", "Name", "NAME"];

/// Changed, added, dropped or exchanged letters that a slip of the fingers explains; our judgement.
const SLIPS: usize = 2;
/// Below this length a name with as many slips is simply another word; our judgement.
const LONG: usize = 6;
/// Programs cut names to ten characters; from this length on a beginning is taken for its name; our judgement.
const CUT: usize = 8;

/// The known name that was probably meant by an unknown one.
fn meant(given: &str) -> Option<&'static str> {
    if OTHERS.contains(&given) || KNOWN.contains(&given) {
        return None;
    }
    let plain = plain(given);
    let alike = |known: &&str| plain == self::plain(known) || plain == stem(known);
    let near = |known: &&&str| slips(&plain, known).is_some();
    KNOWN.iter().copied().find(alike).or_else(|| {
        let nearest = KNOWN.iter().filter(near).min_by_key(|k| slips(&plain, k));
        let gap = || plain.starts_with("gap").then_some("gap_m");
        nearest.copied().or_else(gap)
    })
}

/// What was meant by each name of a file: features have the same ones again and again.
#[derive(Debug, Default)]
pub(super) struct MeantNames(HashMap<String, Option<&'static str>>);

impl MeantNames {
    /// The known name that was probably meant by an unknown one.
    pub(super) fn meant(&mut self, given: &str) -> Option<&'static str> {
        if let Some(known) = self.0.get(given) {
            return *known;
        }
        let found = meant(given);
        if self.0.len() < MOST_NAMES {
            self.0.insert(given.to_owned(), found);
        }
        found
    }
}

/// Names that are kept; who has more has one for every feature. Our judgement.
const MOST_NAMES: usize = 1000;

/// Units that people end a name with, each in metres. The foot and what is made of it \[memory: exact by definition since
/// 1959\].
const UNITS: [(&str, f64); 10] = [
    ("cm", 0.01),
    ("mm", 0.001),
    ("dm", 0.1),
    ("km", 1000.0),
    ("ft", 0.3048),
    ("feet", 0.3048),
    ("foot", 0.3048),
    ("in", 0.0254),
    ("inches", 0.0254),
    ("yd", 0.9144),
];

/// The unit that a name ends with, and its metres, where the name that was meant is in metres.
pub(super) fn unit(given: &str, right: &str) -> Option<(&'static str, f64)> {
    let lower = given.to_lowercase();
    let (plain, stem) = (plain(given), stem(right));
    let ends = |unit: &str| {
        let apart = lower.split(|c: char| !c.is_alphanumeric()).next_back() == Some(unit);
        apart && lower.len() > unit.len() || plain.strip_suffix(unit) == Some(stem.as_str())
    };
    let found = UNITS.into_iter().find(|(unit, _)| ends(unit));
    found.filter(|_| right.ends_with("_m"))
}

/// A value of a unit in metres, to a centimetre toward the worse: a gap grows no narrower by it, snow no deeper.
pub(super) fn in_metres(right: &str, value: f64, unit_m: f64) -> f64 {
    let centimetres = value * unit_m * 100.0;
    // What lies a hair beside a whole centimetre is one: 80 times 0.01 is not exactly 0.8.
    let worse = if right.starts_with("gap") {
        (centimetres - 1e-6).ceil()
    } else {
        (centimetres + 1e-6).floor()
    };
    worse / 100.0
}

/// Slips between a plain name and a known one, where they are few enough.
fn slips(plain: &str, known: &str) -> Option<usize> {
    let whole = self::plain(known);
    if plain.len() >= CUT && whole.starts_with(plain) {
        return Some(0);
    }
    let stem = stem(known);
    let forms = [whole.as_str(), stem.as_str()];
    let measured = forms.into_iter().filter_map(|form| {
        let few = match form.len() {
            LONG.. => SLIPS,
            // `gapm`: the width itself must not be lost; the short words are too common to guess at.
            4.. if known == "gap_m" => 1,
            _ => return None,
        };
        // A slip on the first letter is rare, and `admin` is not `gap_min`.
        let begins_alike = plain.chars().next() == form.chars().next();
        let slips = strsim::osa_distance(plain, form);
        (slips <= few && begins_alike).then_some(slips)
    });
    measured.min()
}

/// Lower case, without anything that separates words.
fn plain(name: &str) -> String {
    let letters = name.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// A plain name without its unit.
fn stem(known: &str) -> String {
    let name = known
        .strip_suffix("_m")
        .or_else(|| known.strip_suffix("_deg"));
    plain(name.unwrap_or(known))
}
