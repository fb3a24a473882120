//! Numbers as people write them: with a decimal comma where that is clear, and with their unit.

use crate::fault::geojson::NoNumber;

/// Units by the sign that figures bear, with the words for them.
const UNITS: [(&str, &[&str]); 4] = [
    ("m", &["m", "metre", "metres", "meter", "meters"]),
    ("°", &["°", "deg", "degree", "degrees"]),
    ("kg", &["kg", "kilo", "kilos", "kilogram", "kilograms"]),
    ("min", &["min", "minute", "minutes"]),
];

/// The number a text begins with, and what follows.
///
/// ```
/// use schrund::read::number::number;
///
/// assert_eq!(number("60,5 m"), Ok((60.5, "m")));
/// assert!(number("3,500").is_err(), "3.5 to some and 3500 to others");
/// ```
///
/// # Errors
/// Why it is no number, or not a clear one.
pub fn number(text: &str) -> Result<(f64, &str), NoNumber> {
    let (sign, digits) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (-1.0, rest),
        None => (1.0, text),
    };
    let end = digits.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',');
    let (digits, rest) = digits.split_at(end.unwrap_or(digits.len()));
    let value = match digits.split_once(',') {
        None => digits.parse::<f64>(),
        Some((whole, part)) if could_be_thousands(whole, part) => {
            return Err(NoNumber::Comma(digits.to_owned()));
        }
        Some((whole, part)) if part.bytes().all(|b| b.is_ascii_digit()) && !part.is_empty() => {
            format!("{whole}.{part}").parse()
        }
        Some(_) => return Err(NoNumber::NotPlain),
    };
    match value {
        Ok(value) if value.is_finite() => Ok((sign * value, rest.trim_start())),
        Ok(_) => Err(NoNumber::NotFinite),
        Err(_) => Err(NoNumber::NotPlain),
    }
}

/// `3,500` is 3.5 to some and 3500 to others; `0,500` and `3,50` are clear.
fn could_be_thousands(whole: &str, part: &str) -> bool {
    let three_digits = part.len() == 3 && part.bytes().all(|b| b.is_ascii_digit());
    three_digits && (1..=3).contains(&whole.len()) && !whole.starts_with('0')
}

/// What is left of a text behind a unit that it begins with; all of it where it begins with none.
///
/// ```
/// use schrund::read::number::without_unit;
///
/// assert_eq!(without_unit("metres apart", "m"), "apart");
/// assert_eq!(without_unit("ft", "m"), "ft");
/// ```
#[must_use]
pub fn without_unit<'t>(text: &'t str, unit: &str) -> &'t str {
    let end = text
        .find(|c: char| !c.is_alphabetic() && c != '°')
        .unwrap_or(text.len());
    let (word, rest) = text.split_at(end);
    let named = UNITS.iter().find(|(sign, _)| *sign == unit);
    let is_unit = match named {
        Some((_, words)) => words.iter().any(|w| w.eq_ignore_ascii_case(word)),
        None => !word.is_empty() && word == unit,
    };
    if is_unit { rest.trim_start() } else { text }
}

/// A number that is all there is of a text beside its unit; plain numbers in any form that programs write.
#[must_use]
pub fn alone(text: &str, unit: &str) -> Option<f64> {
    let text = text.trim();
    if let Ok(value) = text.parse() {
        return Some(value);
    }
    let (value, rest) = number(text).ok()?;
    without_unit(rest, unit).is_empty().then_some(value)
}
