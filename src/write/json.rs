//! The plan as JSON, rounded: coordinates to 7 decimals (a centimetre), all else to 6 (in metres, a micrometre).

use serde::Serialize;
use serde_json::{Number, Value};

use crate::plan::{Plan, options::Options};

/// Members that hold a longitude and latitude.
const PLACES: [&str; 5] = ["start", "end", "at", "steepest_at", "ground_steepest_at"];
/// Decimals of everything but coordinates: a micrometre.
const DECIMALS: i32 = 6;

/// The whole plan, indented, with a line break at the end.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no plan holds.
pub fn plan(plan: &Plan) -> Result<String, serde_json::Error> {
    document(plan)
}

/// The options, likewise.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no options hold.
pub fn options(options: &Options) -> Result<String, serde_json::Error> {
    document(options)
}

fn document(whole: &impl Serialize) -> Result<String, serde_json::Error> {
    let mut value = serde_json::to_value(whole)?;
    round(&mut value, DECIMALS);
    let mut text = serde_json::to_string_pretty(&value)?;
    text.push('\n');
    Ok(text)
}

/// JSON Schema of the plan.
///
/// # Errors
/// Only if the schema cannot stand in JSON.
pub fn schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schema_of_plan())?;
    text.push('\n');
    Ok(text)
}

/// What is left out when empty is not required of a plan.
fn schema_of_plan() -> schemars::Schema {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    settings.into_generator().into_root_schema_for::<Plan>()
}

/// Rounds every number below `value`; what the leader's own properties hold stays untouched.
fn round(value: &mut Value, decimals: i32) {
    match value {
        Value::Number(n) => {
            if let Some(rounded) = n
                .as_f64()
                .filter(|_| n.is_f64())
                .and_then(|x| rounded(x, decimals))
            {
                *n = rounded;
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| round(item, decimals)),
        Value::Object(members) => {
            for (name, member) in members.iter_mut().filter(|(name, _)| *name != "other") {
                let place = PLACES.contains(&name.as_str());
                round(member, if place { 7 } else { decimals });
            }
        }
        _ => {}
    }
}

/// A number as the plan's JSON has it; nothing for one that is not finite.
pub(super) fn number(x: f64) -> String {
    rounded(x, DECIMALS).map_or_else(String::new, |n| n.to_string())
}

fn rounded(x: f64, decimals: i32) -> Option<Number> {
    let scale = 10_f64.powi(decimals);
    // Adding 0 turns −0 into 0.
    Number::from_f64((x * scale).round() / scale + 0.0)
}
