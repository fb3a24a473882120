//! Numbers and words of a zone's properties, in words.

use super::place::as_it_stands;
use crate::fault::{
    geojson::{InGeojson, NoNumber, Quantity, Silent, Widthless},
    place::Excerpt,
};

/// Zones named by the warning about an assumed width before it only counts them; our judgement.
const NAMED_ASSUMED: usize = 10;

pub(super) fn says(what: &InGeojson) -> String {
    match what {
        InGeojson::Number {
            quantity,
            found,
            why,
        } => number(*quantity, found, why),
        InGeojson::Unreadable(found) => {
            format!("{} cannot be read as a value", as_it_stands(found))
        }
        InGeojson::Downwards { quantity, found } => format!(
            "the range {} of the {} runs downwards",
            as_it_stands(found),
            quantity.what
        ),
        InGeojson::OneEnd {
            quantity,
            found,
            value,
        } => one_end(*quantity, found, *value),
        InGeojson::GapsDiffer(upper_m) => {
            format!("`gap_m` and `gap_max_m` differ: the wider one counts, {upper_m} m")
        }
        InGeojson::GapsCrossed { low_m, high_m } => {
            format!("the lower gap width {low_m} m is above the upper one, {high_m} m")
        }
        InGeojson::StrikeRange { low_deg, high_deg } => {
            format!("a strike is one direction, not a range from {low_deg} to {high_deg}")
        }
        InGeojson::StrikeMissing => {
            "an uncertainty without a strike says nothing and was not used".to_owned()
        }
        InGeojson::Word {
            property, found, ..
        } => format!("{} is no word for `{property}`", as_it_stands(found)),
        InGeojson::NearMiss { given, .. } => {
            format!("the property `{given}` means nothing here and was not used")
        }
        InGeojson::NotANumber => "NaN or Infinity is no JSON and was read as null".to_owned(),
        InGeojson::GapNotGiven(zones) => {
            let verb = if zones.count == 1 {
                "zone gives"
            } else {
                "zones give"
            };
            format!(
                "{} {verb} no gap width: {}",
                zones.count,
                list(zones, usize::MAX)
            )
        }
        InGeojson::GapAssumed { gap_m, zones, of } => gap_assumed(*gap_m, zones, *of),
        _ => String::new(),
    }
}

pub(super) fn hint(what: &InGeojson) -> Option<String> {
    let hint = match what {
        InGeojson::Number { quantity, .. } => return Some(cure(*quantity)),
        InGeojson::Unreadable(_) => {
            "it is too large for a number, or nested too deeply: correct it or take it out"
        }
        InGeojson::Downwards { .. } => "write the smaller number first",
        InGeojson::GapsCrossed { .. } => "correct the one that is wrong",
        InGeojson::StrikeRange { low_deg, high_deg } => {
            let (middle, half) = (low_deg.midpoint(*high_deg), (high_deg - low_deg) / 2.0);
            return Some(format!(
                "write `strike_deg` {middle} and `strike_uncertainty_deg` {half} if that is what you mean"
            ));
        }
        InGeojson::StrikeMissing => "add `strike_deg`, the direction in which the gaps run",
        InGeojson::Word { words, .. } => {
            let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
            return Some(format!("write one of {}", words.join(", ")));
        }
        InGeojson::NearMiss { right, .. } => return Some(format!("the name is `{right}`")),
        InGeojson::GapNotGiven(_) => {
            "write `gap_m`, the width of the widest gap expected in metres, into the file, \
             or say what to assume with `--gap`, such as `--gap 6`"
        }
        InGeojson::GapAssumed { .. } => "write `gap_m` into the file where the ice is known",
        _ => return None,
    };
    Some(hint.to_owned())
}

fn number(quantity: Quantity, found: &Excerpt, why: &NoNumber) -> String {
    let Quantity {
        what,
        unit,
        min,
        max,
        ..
    } = quantity;
    let found = as_it_stands(found);
    match why {
        NoNumber::NotPlain => format!("{what} {found} is not a plain number"),
        NoNumber::NotFinite => format!("{what} {found} is not a finite number"),
        NoNumber::Unit(given) => format!("{what} {found} is in \"{given}\", not in {unit}"),
        NoNumber::Comma(digits) => format!(
            "{what} {found} can mean {} or {}",
            digits.replace(',', ".").trim_end_matches('0'),
            digits.replace(',', "")
        ),
        NoNumber::Outside => format!("{what} {found} is outside {min} to {max} {unit}"),
    }
}

fn cure(quantity: Quantity) -> String {
    let unit = if quantity.unit == "m" {
        "metres"
    } else {
        "degrees"
    };
    let (min, max) = (quantity.min, quantity.max);
    format!("write one plain number in {unit}, {min} to {max}, or null where it is not known")
}

fn one_end(quantity: Quantity, found: &Excerpt, value: f64) -> String {
    let end = if quantity.upper_counts {
        "upper"
    } else {
        "lower"
    };
    let (what, unit) = (quantity.what, quantity.unit);
    let found = as_it_stands(found);
    format!("of the {what} {found} the {end} end counts: {value} {unit}")
}

fn gap_assumed(gap_m: f64, zones: &Widthless, of: usize) -> String {
    let who = match (zones.count, of) {
        (1, 1) => "the only zone, which gives none".to_owned(),
        (count, of) if count == of => format!("all {of} zones, which give none"),
        (1, of) => format!("1 of {of} zones, which gives none"),
        (count, of) => format!("{count} of {of} zones, which give none"),
    };
    let lower = if zones.lower_end {
        ", or the lower end given where that is wider,"
    } else {
        ""
    };
    let list = list(zones, NAMED_ASSUMED);
    format!("{gap_m} m{lower} assumed as the gap width of {who}: {list}")
}

fn list(zones: &Widthless, most: usize) -> String {
    let named: Vec<String> = zones.named.iter().take(most).map(silent).collect();
    let list = named.join(", ");
    match zones.count - named.len() {
        0 => list,
        more => format!("{list} and {more} more"),
    }
}

fn silent(zone: &Silent) -> String {
    let told = match (&zone.near, zone.at_least_m) {
        (Some(name), _) => format!(" (`{name}` is no name; write `gap_m`)"),
        (None, Some(low_m)) => format!(" (at least {low_m} m by `gap_min_m`)"),
        (None, None) => String::new(),
    };
    format!("{}{told}", zone.feature)
}
