//! Numbers as people write them, and the bounds they must keep.

/// What a number may be; the check and the message both come from here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Bound {
    /// The quantity, in the field's words.
    pub(super) what: &'static str,
    /// Its unit as printed.
    pub(super) unit: &'static str,
    /// How the unit may be written behind the number.
    pub(super) spellings: &'static [&'static str],
    /// Smallest and largest value accepted.
    pub(super) min: f64,
    pub(super) max: f64,
    /// Which end of a range counts: the worse one.
    pub(super) worse: Worse,
}

/// The end of a range that is the worse case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Worse {
    /// A wider gap.
    Upper,
    /// Less snow for brake knots to bite into.
    Lower,
}

const METRES: &[&str] = &["m", "metre", "metres", "meter", "meters"];
const DEGREES: &[&str] = &["°", "deg", "degree", "degrees"];

/// Above 100 m a width is a mistake of unit, or ice that no rope spans; our judgement.
pub(super) const GAP: Bound = Bound {
    what: "gap width",
    unit: "m",
    spellings: METRES,
    min: 0.0,
    max: 100.0,
    worse: Worse::Upper,
};
/// Above 50 m it is not the winter's snow that is meant; our judgement.
pub(super) const SNOW_DEPTH: Bound = Bound {
    what: "snow depth",
    unit: "m",
    spellings: METRES,
    min: 0.0,
    max: 50.0,
    worse: Worse::Lower,
};
/// A direction, turned once at most; taken modulo 180 afterwards.
pub(super) const STRIKE: Bound = Bound {
    what: "strike",
    unit: "°",
    spellings: DEGREES,
    min: -360.0,
    max: 360.0,
    worse: Worse::Upper,
};
/// With ±90° every direction is possible.
pub(super) const STRIKE_UNCERTAINTY: Bound = Bound {
    what: "strike uncertainty",
    unit: "°",
    spellings: DEGREES,
    min: 0.0,
    max: 90.0,
    worse: Worse::Upper,
};

impl Bound {
    /// Whether the value may be; NaN may not.
    pub(super) fn admits(&self, value: f64) -> bool {
        (self.min..=self.max).contains(&value)
    }

    /// The number as a text in the file, with its unit.
    pub(super) fn cure(&self) -> String {
        let unit = if self.unit == "m" {
            "metres"
        } else {
            "degrees"
        };
        let (min, max) = (self.min, self.max);
        format!("write one plain number in {unit}, {min} to {max}, or null where it is not known")
    }
}

/// What a text holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Written {
    Nothing,
    One(f64),
    Range(f64, f64),
}

/// Why a text is no number.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Unclear {
    NotPlain,
    /// A comma before three digits: a decimal mark for some, thousands for others.
    Comma(String),
    NotFinite,
    /// A plain number with another unit behind it.
    Unit(String),
}

/// Reads `3.5`, `3,5`, `3.5 m`, `2-4`, `2 – 4 m`, `2 to 4`.
pub(super) fn written(text: &str, bound: &Bound) -> Result<Written, Unclear> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(Written::Nothing);
    }
    if is_no_number(text) {
        return Err(Unclear::NotFinite);
    }
    let (first, rest) = number(text)?;
    let rest = without_unit(rest, bound);
    if rest.is_empty() {
        return Ok(Written::One(first));
    }
    let Some(rest) = after_dash(rest) else {
        let is_unit = rest.chars().all(char::is_alphabetic);
        return Err(if is_unit {
            Unclear::Unit(rest.to_owned())
        } else {
            Unclear::NotPlain
        });
    };
    let (second, rest) = number(rest)?;
    if without_unit(rest, bound).is_empty() {
        Ok(Written::Range(first, second))
    } else {
        Err(Unclear::NotPlain)
    }
}

/// The words programs print for values that are none.
fn is_no_number(text: &str) -> bool {
    let word = text.trim_start_matches(['-', '+']).to_ascii_lowercase();
    super::text::unmasked(text).is_some() || ["nan", "inf", "infinity"].contains(&word.as_str())
}

/// The number a text begins with, and what follows.
fn number(text: &str) -> Result<(f64, &str), Unclear> {
    let (sign, digits) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (-1.0, rest),
        None => (1.0, text),
    };
    let end = digits.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',');
    let (digits, rest) = digits.split_at(end.unwrap_or(digits.len()));
    let value = match digits.split_once(',') {
        None => digits.parse::<f64>(),
        Some((whole, part)) if could_be_thousands(whole, part) => {
            return Err(Unclear::Comma(digits.to_owned()));
        }
        Some((whole, part)) if part.bytes().all(|b| b.is_ascii_digit()) && !part.is_empty() => {
            format!("{whole}.{part}").parse()
        }
        Some(_) => return Err(Unclear::NotPlain),
    };
    match value {
        Ok(value) if value.is_finite() => Ok((sign * value, rest.trim_start())),
        Ok(_) => Err(Unclear::NotFinite),
        Err(_) => Err(Unclear::NotPlain),
    }
}

/// `3,500` is 3.5 to some and 3500 to others; `0,500` and `3,50` are clear.
fn could_be_thousands(whole: &str, part: &str) -> bool {
    let three_digits = part.len() == 3 && part.bytes().all(|b| b.is_ascii_digit());
    three_digits && (1..=3).contains(&whole.len()) && !whole.starts_with('0')
}

fn without_unit<'a>(text: &'a str, bound: &Bound) -> &'a str {
    let end = text
        .find(|c: char| !c.is_alphabetic() && c != '°')
        .unwrap_or(text.len());
    let (word, rest) = text.split_at(end);
    let is_unit = bound.spellings.iter().any(|s| s.eq_ignore_ascii_case(word));
    if is_unit { rest.trim_start() } else { text }
}

/// What stands behind the mark of a range.
fn after_dash(text: &str) -> Option<&str> {
    let marks = [
        "-", "\u{2010}", "\u{2011}", "\u{2012}", "–", "—", "\u{2212}", "to ",
    ];
    let rest = marks.iter().find_map(|mark| text.strip_prefix(mark))?;
    Some(rest.trim_start())
}
