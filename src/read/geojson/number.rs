//! Numbers as people write them, and the bounds they must keep.

use super::text::unmasked;
use crate::{
    fault::geojson::{Measure, NoNumber, Quantity},
    read::number::{self, number},
};

/// Above 100 m a width is a mistake of unit, or ice that no rope spans; our judgement.
pub(super) const GAP: Quantity = Quantity {
    what: Measure::GapWidth,
    min: 0.0,
    max: 100.0,
    upper_counts: true,
};
/// Above 50 m it is not the winter's snow that is meant; our judgement.
pub(super) const SNOW_DEPTH: Quantity = Quantity {
    what: Measure::SnowDepth,
    min: 0.0,
    max: 50.0,
    upper_counts: false,
};
/// A direction, turned once at most; taken modulo 180 afterwards.
pub(super) const STRIKE: Quantity = Quantity {
    what: Measure::Strike,
    min: -360.0,
    max: 360.0,
    upper_counts: true,
};
/// With ±90° every direction is possible.
pub(super) const STRIKE_UNCERTAINTY: Quantity = Quantity {
    what: Measure::StrikeUncertainty,
    min: 0.0,
    max: 90.0,
    upper_counts: true,
};

/// Whether the value may be; NaN may not.
pub(super) fn admits(quantity: Quantity, value: f64) -> bool {
    (quantity.min..=quantity.max).contains(&value)
}

/// What a text holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Written {
    Nothing,
    One(f64),
    Range(f64, f64),
}

/// Reads `3.5`, `3,5`, `3.5 m`, `2-4`, `2 – 4 m`, `2 to 4`.
pub(super) fn written(text: &str, quantity: Quantity) -> Result<Written, NoNumber> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(Written::Nothing);
    }
    if is_no_number(text) {
        return Err(NoNumber::NotFinite);
    }
    let (first, rest) = number(text)?;
    let rest = without_unit(rest, quantity);
    if rest.is_empty() {
        return Ok(Written::One(first));
    }
    let Some(rest) = after_dash(rest) else {
        let is_unit = rest.chars().all(char::is_alphabetic);
        return Err(if is_unit {
            NoNumber::Unit(rest.to_owned())
        } else {
            NoNumber::NotPlain
        });
    };
    let (second, rest) = number(rest)?;
    if without_unit(rest, quantity).is_empty() {
        Ok(Written::Range(first, second))
    } else {
        Err(NoNumber::NotPlain)
    }
}

/// The words programs print for values that are none.
fn is_no_number(text: &str) -> bool {
    let word = text.trim_start_matches(['-', '+']).to_ascii_lowercase();
    unmasked(text).is_some() || ["nan", "inf", "infinity"].contains(&word.as_str())
}

fn without_unit(text: &str, quantity: Quantity) -> &str {
    let unit = if quantity.is_length() { "m" } else { "°" };
    number::without_unit(text, unit)
}

/// What stands behind the mark of a range.
fn after_dash(text: &str) -> Option<&str> {
    let marks = [
        "-", "\u{2010}", "\u{2011}", "\u{2012}", "–", "—", "\u{2212}", "to ",
    ];
    let rest = marks.iter().find_map(|mark| text.strip_prefix(mark))?;
    Some(rest.trim_start())
}
