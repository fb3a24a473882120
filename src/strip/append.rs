//! One zone more in a zones file, all that stands there left as it is, to the byte.

use std::ops::Range;

use super::LineStrip;
use crate::{
    fault::{
        Code, Fault, Level, Noted, Place, Wrong, geojson::InGeojson, instead::Instead,
        strip::InStrip,
    },
    read::{
        input::{Input, utf8},
        kind, lay,
    },
    trip::zone::Zone,
};

/// A width that stands in while a file is read that need not give any yet.
const ANY_GAP_M: f64 = 1.0;
/// How features stand in a file that had none.
const INDENT: &str = "  ";

/// A zones file with one zone more, or several.
///
/// ```
/// use schrund::strip::append::{Appended, to};
///
/// let mine = r#"{"type": "FeatureCollection", "mine": [1, 2], "features": []}"#;
/// let Appended { text, zones } = to("zones.geojson", Some(mine.as_bytes().to_vec()), &[])?;
/// assert_eq!((text.as_str(), zones), (mine, None), "nothing to add, and no zone there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Appended {
    /// What the file is to hold.
    pub text: String,
    /// How many zones it then holds; nothing where it cannot be said, since something is wrong with one of the others.
    pub zones: Option<usize>,
}

/// The text of a file with these strips behind all that is there; a new file where there is none.
///
/// # Errors
/// It is no collection of features in longitude and latitude. What is wrong with the properties of the zones in it is
/// none of this: they are handed on as they are.
pub fn to(name: &str, file: Option<Vec<u8>>, strips: &[LineStrip]) -> Result<Appended, Vec<Fault>> {
    let features: Vec<String> = strips.iter().map(LineStrip::feature).collect();
    let text = match file {
        None => new(&features),
        Some(bytes) if kind::is_flatgeobuf(&bytes) => {
            let is = InStrip::Is(Instead::FlatGeobuf);
            return Err(vec![Fault::new(is, Place::file(name))]);
        }
        Some(bytes) => {
            let found = faults(name, &bytes);
            if !found.is_empty() {
                return Err(found);
            }
            let text = utf8(name, bytes).map_err(|fault| vec![fault])?;
            let no_collection = || vec![Fault::new(InStrip::NoCollection, Place::file(name))];
            let list = list(text.as_bytes()).ok_or_else(no_collection)?;
            with(&text, list, &features).ok_or_else(no_collection)?
        }
    };
    let zones = read(name, text.as_bytes())
        .ok()
        .map(|zones| zones.value.len());
    Ok(Appended { text, zones })
}

fn read(name: &str, bytes: &[u8]) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    lay::zones(Input::text(name, bytes), Some(ANY_GAP_M))
}

/// What is wrong with the form of a file or its positions.
fn faults(name: &str, bytes: &[u8]) -> Vec<Fault> {
    let mut faults = read(name, bytes).err().unwrap_or_default();
    let of_zones = [
        Code::NoZones,
        Code::BadNumber,
        Code::BadWord,
        Code::BadName,
        Code::RangeOrder,
    ];
    faults.retain(|fault| fault.level() == Level::Error && !of_zones.contains(&fault.kind()));
    for fault in &mut faults {
        // The cure is another one than where zones are read.
        fault.what = match &fault.what {
            Wrong::Geojson(InGeojson::Is(instead)) => InStrip::Is(instead.clone()).into(),
            Wrong::Geojson(InGeojson::Empty) => InStrip::Empty.into(),
            _ => continue,
        };
    }
    faults
}

fn new(features: &[String]) -> String {
    let list = features.join(&format!(",\n{INDENT}{INDENT}"));
    format!(
        "{{\n{INDENT}\"type\": \"FeatureCollection\",\n{INDENT}\"features\": [\n{INDENT}{INDENT}{list}\n{INDENT}]\n}}\n"
    )
}

/// The text with these features at the end of the list, laid out as the first one is.
fn with(text: &str, list: Range<usize>, features: &[String]) -> Option<String> {
    let (before, inside, behind) = (
        text.get(..list.start)?,
        text.get(list.clone())?,
        text.get(list.end..)?,
    );
    if features.is_empty() {
        return Some(text.to_owned());
    }
    let kept = inside.trim_end_matches(JSON_SPACE);
    let first = inside.trim_start_matches(JSON_SPACE);
    if first.is_empty() {
        let line_end = if text.contains("\r\n") { "\r\n" } else { "\n" };
        let line = before.rsplit('\n').next().unwrap_or_default();
        let indent = line.get(..line.len() - line.trim_start_matches(JSON_SPACE).len())?;
        let each = format!("{line_end}{indent}{INDENT}");
        let list = features.join(&format!(",{each}"));
        return Some(format!("{before}{each}{list}{line_end}{indent}{behind}"));
    }
    let lead = inside.get(..inside.len() - first.len())?;
    let space = inside.get(kept.len()..)?;
    let list = features.join(&format!(",{lead}"));
    Some(format!("{before}{kept},{lead}{list}{space}{behind}"))
}

/// What JSON calls white space.
const JSON_SPACE: [char; 4] = [' ', '\t', '\n', '\r'];

/// Where the inside of the list of features stands in a text of sound JSON; nothing where it is no one object with such a
/// list.
fn list(text: &[u8]) -> Option<Range<usize>> {
    let (mut depth, mut at) = (0_usize, 0);
    let mut key: &[u8] = &[];
    let (mut begun, mut found, mut ended) = (None, None, false);
    while let Some(&sign) = text.get(at) {
        match sign {
            b'"' => {
                let end = quoted_end(text, at)?;
                if depth == 1 {
                    key = text.get(at + 1..end)?;
                }
                at = end;
            }
            b'{' | b'[' if ended => return None,
            b'{' | b'[' => {
                if depth == 1 && sign == b'[' && key == b"features" && found.is_none() {
                    begun = Some(at + 1);
                }
                depth += 1;
            }
            b'}' | b']' => {
                depth = depth.checked_sub(1)?;
                if let Some(from) = begun.take_if(|_| depth == 1) {
                    found = Some(from..at);
                }
                ended = depth == 0;
            }
            _ => {}
        }
        at += 1;
    }
    found
}

/// Where the text that begins with the quotation mark here ends, on its other one.
fn quoted_end(text: &[u8], from: usize) -> Option<usize> {
    let mut at = from + 1;
    loop {
        match text.get(at)? {
            b'"' => return Some(at),
            b'\\' => at += 2,
            _ => at += 1,
        }
    }
}
