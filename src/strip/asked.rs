//! From kilometre to kilometre, as people type it.

use crate::{
    fault::{Fault, Item, Place, geojson::NoNumber, strip::InStrip},
    read::number,
    trip::route::{Stage, Stretch},
};

/// Metres in a kilometre.
const KM: f64 = 1000.0;
/// A stretch shorter than that is a slip of the finger. Our judgement.
const LEAST_M: f64 = 1.0;
/// Outputs tell the end of a line in hundredths of a kilometre, rounded up where it is where to unrope; so far beyond the
/// line the end is meant.
const PRINTED_M: f64 = 10.0;
/// Whoever asks for as many kilometres may mean metres. Our judgement: nobody walks so far in a day.
const LONG_M: f64 = 100.0 * KM;
/// What stands between two kilometres.
const MARKS: [&str; 8] = [
    "-", "\u{2010}", "\u{2011}", "\u{2012}", "–", "—", "\u{2212}", "to ",
];
/// What calls the words of a call that are kilometres, in its help too.
pub const KILOMETRES: &str = "KM-KM";

/// A stretch of a line as it was asked for; whether the line has it is not yet known.
///
/// ```
/// use schrund::strip::asked::{AskedStretch, stretch};
///
/// for typed in ["5.9-8.3", "5,9-8,3", " 5.9 km – 8.3 km", "5.9 to 8.3km"] {
///     let AskedStretch { from_m, to_m, .. } = stretch(typed)?;
///     assert!((from_m - 5900.0).abs() < 1e-6 && (to_m - 8300.0).abs() < 1e-6, "{typed}");
/// }
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct AskedStretch {
    /// As typed.
    pub found: String,
    /// Where it begins, metres.
    pub from_m: f64,
    /// Where it ends, metres.
    pub to_m: f64,
}

/// Reads `5.9-8.3`.
///
/// # Errors
/// Why it is no stretch of any line.
pub fn stretch(typed: &str) -> Result<AskedStretch, Fault> {
    read(typed).map_err(|what| Fault::new(what, flag(KILOMETRES)))
}

/// The words of a call with those put together that a shell took apart: `5.9 - 8.3`.
///
/// ```
/// use schrund::strip::asked::together;
///
/// let words = ["5.9", "-", "8.3", "9-9.4", "9.6", "to", "9.8"].map(str::to_owned);
/// assert_eq!(together(&words), ["5.9 - 8.3", "9-9.4", "9.6 to 9.8"]);
/// ```
#[must_use]
pub fn together(words: &[String]) -> Vec<String> {
    let is_mark = |word: &str| MARKS.iter().any(|mark| mark.trim() == word);
    let mut all: Vec<String> = Vec::new();
    let mut open = false;
    for word in words {
        let mark = is_mark(word);
        match all.last_mut() {
            Some(last) if open || mark => *last += &format!(" {word}"),
            _ => all.push(word.clone()),
        }
        open = mark;
    }
    all
}

/// Where a flag stands.
pub(super) fn flag(name: &'static str) -> Place {
    Place::item(Item::Flag(name))
}

fn read(typed: &str) -> Result<AskedStretch, InStrip> {
    let text = typed.trim();
    let found = text.to_owned();
    let no_stretch = || InStrip::NoStretch {
        found: found.clone(),
    };
    let comma = |why: NoNumber| match why {
        NoNumber::Comma(_) => InStrip::Comma {
            found: found.clone(),
            pointed: text.replace(',', "."),
            whole: text.replace(',', ""),
        },
        _ => no_stretch(),
    };
    let (from, rest) = number::number(text).map_err(comma)?;
    let (from_unit, rest) = unit(rest);
    let rest = MARKS
        .iter()
        .find_map(|mark| rest.strip_prefix(mark))
        .ok_or_else(no_stretch)?;
    let (to, rest) = number::number(rest.trim_start()).map_err(comma)?;
    let (to_unit, rest) = unit(rest);
    if !rest.is_empty() {
        return Err(no_stretch());
    }
    if from_unit == Some("m") || to_unit == Some("m") {
        return Err(InStrip::Metres {
            meant: typed_km(from / KM, to / KM),
            found,
        });
    }
    if from < 0.0 || to < 0.0 {
        return Err(InStrip::Before { found });
    }
    if from > to {
        return Err(InStrip::Backwards {
            meant: typed_km(to, from),
            found,
        });
    }
    let (from_m, to_m) = (from * KM, to * KM);
    if to_m - from_m < LEAST_M {
        return Err(InStrip::Short {
            found,
            least_m: LEAST_M,
        });
    }
    Ok(AskedStretch {
        found,
        from_m,
        to_m,
    })
}

/// The unit that a text begins with, and what follows.
fn unit(text: &str) -> (Option<&'static str>, &str) {
    for unit in ["km", "m"] {
        if let Some(rest) = text
            .strip_prefix(unit)
            .filter(|rest| !rest.starts_with(char::is_alphabetic))
        {
            return (Some(unit), rest.trim_start());
        }
    }
    (None, text)
}

/// To a metre.
fn typed_km(from: f64, to: f64) -> String {
    let [from, to] = [from, to].map(|km| (km * KM).round() / KM);
    format!("{from}-{to}")
}

impl AskedStretch {
    /// The stretch of a stage that is meant. A printed end is taken for the end.
    pub(super) fn on(&self, stage: &Stage) -> Result<Stretch, Fault> {
        let length_m = stage.length_m();
        let (from_m, to_m) = (self.from_m, self.to_m.min(length_m));
        if self.to_m > length_m + PRINTED_M || to_m - from_m < LEAST_M.min(length_m) {
            let as_metres = self.to_m >= LONG_M && self.to_m / KM <= length_m + PRINTED_M;
            let meant = as_metres.then(|| typed_km(self.from_m / KM / KM, self.to_m / KM / KM));
            let found = self.found.clone();
            return Err(self.fault(InStrip::Beyond {
                found,
                length_m,
                meant,
            }));
        }
        Ok(Stretch { from_m, to_m })
    }

    pub(super) fn fault(&self, what: InStrip) -> Fault {
        Fault::new(what, flag(KILOMETRES))
    }
}
