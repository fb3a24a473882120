//! A zone as a feature of a zones file, and what is typed of it.

use std::fmt;

use serde_json::{Map, Value, json};

use super::asked;
use crate::{
    fault::{Fault, Noted, Wrong, geojson::InGeojson},
    geometry::{LonLat, Polygon},
    read::geojson::{Given, zones},
    trip::zone::{RopeWord, Surface, Zone},
};

/// The properties that a flag gives, in the order in which they are written.
const FLAGS: [(&str, &str); 10] = [
    ("name", "--name"),
    ("gap_m", "--gap"),
    ("snow_depth_m", "--snow"),
    ("surface", "--surface"),
    ("strike_deg", "--strike"),
    ("strike_uncertainty_deg", "--strike-uncertainty"),
    ("rope", "--rope"),
    ("observed_on", "--observed-on"),
    ("source", "--source"),
    ("note", "--note"),
];

/// Any ground at all, so that what is typed is read as it would be in a file.
const ANYWHERE: [[f64; 2]; 4] = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [0.0, 0.0]];
/// A width that stands in while it is read whether one is given.
const ANY_GAP_M: f64 = 1.0;

/// What is said of a zone, read as a zones file is: the same numbers are taken, the same are refused.
///
/// # Errors
/// Everything that a zones file may not say, at its flag.
pub(super) fn said(typed: &[(&'static str, String)]) -> Result<Noted<Zone>, Vec<Fault>> {
    let properties: Map<String, Value> = typed
        .iter()
        .map(|(name, text)| ((*name).to_owned(), Value::from(text.as_str())))
        .collect();
    let feature = json!({
        "type": "Feature",
        "properties": properties,
        "geometry": {"type": "Polygon", "coordinates": [ANYWHERE]},
    });
    let given = Given {
        gap_m: Some(ANY_GAP_M),
    };
    let read = zones("", feature.to_string().as_bytes(), &given);
    let Noted { value, notes } = read.map_err(at_flags)?;
    let mut notes = at_flags(notes);
    // Both ends of a range are written, and a width that is not given is told with what was written.
    notes.retain(|note| {
        let of_gap = note.at.item == asked::flag("--gap").item;
        !of_gap && !matches!(note.what, Wrong::Geojson(InGeojson::GapAssumed { .. }))
    });
    let zone = value.into_iter().next().ok_or_else(Vec::new)?;
    Ok(Noted { value: zone, notes })
}

fn at_flags(faults: Vec<Fault>) -> Vec<Fault> {
    let at_flag = |fault: Fault| {
        let property = fault.at.property.as_deref();
        let flag = FLAGS.iter().find(|(name, _)| property == Some(*name));
        let at = flag.map_or_else(|| fault.at.clone(), |(_, flag)| asked::flag(flag));
        Fault { at, ..fault }
    };
    faults.into_iter().map(at_flag).collect()
}

/// The feature on one line, its coordinates with seven decimals.
pub(super) struct FeatureText<'z>(pub(super) &'z Zone);

impl fmt::Display for FeatureText<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(r#"{"type": "Feature", "properties": {"#)?;
        for (i, (name, value)) in properties(self.0).iter().enumerate() {
            let comma = if i == 0 { "" } else { ", " };
            write!(f, r#"{comma}"{name}": {value}"#)?;
        }
        f.write_str(r#"}, "geometry": "#)?;
        geometry(f, &self.0.outline.polygons)?;
        f.write_str("}")
    }
}

/// What is known, each under its name. A width that nobody gave is written empty, so that it is seen that it is missing.
fn properties(zone: &Zone) -> Vec<(&'static str, Value)> {
    let gap = zone.gap;
    let text = |text: &Option<String>| text.clone().map(Value::from);
    let number = |number: Option<f64>| number.map(plain);
    let surface = (zone.surface == Surface::Bare).then(|| Value::from("bare"));
    let rope = match zone.rope {
        RopeWord::Auto => None,
        RopeWord::Always => Some(Value::from("always")),
        RopeWord::Never => Some(Value::from("never")),
    };
    let gaps = match gap.min_m {
        _ if gap.assumed => [Some(("gap_m", Value::Null)), None],
        Some(low_m) => {
            [("gap_min_m", low_m), ("gap_max_m", gap.max_m)].map(|(n, m)| Some((n, plain(m))))
        }
        None => [Some(("gap_m", plain(gap.max_m))), None],
    };
    let strike = zone.strike;
    let others = [
        ("snow_depth_m", number(zone.snow_depth_m)),
        ("surface", surface),
        ("strike_deg", number(strike.map(|s| s.deg))),
        (
            "strike_uncertainty_deg",
            number(strike.and_then(|s| s.uncertainty_deg)),
        ),
        ("rope", rope),
        ("observed_on", text(&zone.observed_on)),
        ("source", text(&zone.source)),
        ("note", text(&zone.note)),
    ];
    let name = text(&zone.name).map(|name| ("name", name));
    let others = others
        .into_iter()
        .filter_map(|(name, value)| Some((name, value?)));
    name.into_iter()
        .chain(gaps.into_iter().flatten())
        .chain(others)
        .collect()
}

/// A whole number without a point.
fn plain(number: f64) -> Value {
    let text = number.to_string();
    text.parse::<i64>()
        .map_or_else(|_| Value::from(number), Value::from)
}

fn geometry(f: &mut fmt::Formatter<'_>, parts: &[Polygon]) -> fmt::Result {
    match parts {
        [one] => {
            f.write_str(r#"{"type": "Polygon", "coordinates": "#)?;
            polygon(f, one)?;
        }
        all => {
            f.write_str(r#"{"type": "MultiPolygon", "coordinates": "#)?;
            list(f, all, polygon)?;
        }
    }
    f.write_str("}")
}

fn polygon(f: &mut fmt::Formatter<'_>, part: &Polygon) -> fmt::Result {
    let rings: Vec<&Vec<LonLat>> = part.rings().collect();
    list(f, &rings, |f, ring| list(f, ring, position))
}

fn position(f: &mut fmt::Formatter<'_>, at: &LonLat) -> fmt::Result {
    // On the lattice of seven decimals already.
    write!(f, "[{}, {}]", at.lon_deg + 0.0, at.lat_deg + 0.0)
}

fn list<T>(
    f: &mut fmt::Formatter<'_>,
    all: &[T],
    each: impl Fn(&mut fmt::Formatter<'_>, &T) -> fmt::Result,
) -> fmt::Result {
    f.write_str("[")?;
    for (i, one) in all.iter().enumerate() {
        if i > 0 {
            f.write_str(", ")?;
        }
        each(f, one)?;
    }
    f.write_str("]")
}
