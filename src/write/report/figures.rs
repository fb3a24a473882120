//! What the plan rests on, by name.

use serde_json::Value;

use crate::{plan::Plan, practice::Rule};

/// The number in force; `None` where this plan does not rest on it.
pub(super) fn value(plan: &Plan, rule: Rule) -> Option<f64> {
    let found = plan.assumptions.iter().find(|a| a.name == rule.name())?;
    found.value.as_f64()
}

/// A value as it is read: words without quotes, numbers as short as they are.
pub(super) fn shown(value: &Value) -> String {
    match value {
        Value::String(word) => word.clone(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(n) => n.as_f64().map_or_else(|| n.to_string(), |x| format!("{x}")),
        other => other.to_string(),
    }
}
