//! What the plan rests on, as it is read.

use serde_json::Value;

use crate::say::{round::Round, voice::Voice};

/// A value as it is read: words without quotes, numbers as short as they are worth.
pub(super) fn shown(value: &Value, voice: Voice) -> String {
    match (value.as_f64(), value) {
        (Some(x), _) => voice.marked(rounded(x)),
        (None, Value::Bool(true)) => voice.say("yes", &[]).to_string(),
        (None, Value::Bool(false)) => voice.say("no", &[]).to_string(),
        (None, _) => plain(value),
    }
}

/// The same with all its digits, for programs.
pub(super) fn plain(value: &Value) -> String {
    match value {
        Value::String(word) => word.clone(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(n) => n.as_f64().map_or_else(|| n.to_string(), |x| format!("{x}")),
        other => other.to_string(),
    }
}

/// Two decimals, three below one, as figures are shown elsewhere; none that says nothing.
fn rounded(x: f64) -> String {
    let decimals = if x.abs() < 1.0 { 3 } else { 2 };
    let shown = Round::Nearest.fixed(x, decimals);
    shown.trim_end_matches('0').trim_end_matches('.').to_owned()
}
