//! The JSON Schema of a practice file: its words, and every figure with its unit and bounds.

use serde_json::{Map, Value, json};

use crate::{
    practice::{
        Choices, Cover, Figure, Knots, Reserve, Rule, Rules,
        figure::FigureEntry,
        set::{AboutSet, EMBEDDED, Source},
        term::Terms,
    },
    schema,
};

/// What the schema refers to.
#[derive(schemars::JsonSchema)]
#[expect(dead_code, reason = "only its schema is asked for")]
struct Parts {
    figure: FigureEntry,
    about: AboutSet,
}

/// JSON Schema of a practice file.
///
/// ```
/// let schema: serde_json::Value = serde_json::from_str(&schrund::read::practice::schema().unwrap()).unwrap();
/// assert_eq!(schema["properties"]["margin_m"]["properties"]["value"]["maximum"], 1000.0);
/// ```
///
/// # Errors
/// Only if the schema cannot stand in JSON.
pub fn schema() -> Result<String, serde_json::Error> {
    let parts = schema::of::<Parts>(schemars::generate::SchemaSettings::draft2020_12());
    let refers = |to: &str| json!({ "$ref": format!("#/$defs/{to}") });
    let (entry, told) = (refers("FigureEntry"), refers("AboutSet"));
    let [(default, _), ..] = EMBEDDED;
    let rules = Rules::with_practice(&Source::Named(default)).ok();
    let mut properties = words(&told);
    let figures = rules
        .iter()
        .flat_map(|rules| Rule::ALL.iter().map(|rule| rules.figure(*rule)));
    for figure in figures {
        properties.insert(figure.rule.name().to_owned(), of_figure(figure, &entry));
    }
    let needed = (2..=5).map(|people| Rule::base_spacing(people).name());
    let needed: Vec<&str> = std::iter::once("name").chain(needed).collect();
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Practice set",
        "description": "Figures and words that are taught together. `schrund practice NAME --toml` prints one to edit.",
        "type": "object",
        "properties": properties,
        "required": needed,
        "additionalProperties": false,
        "$defs": parts.get("$defs"),
    });
    let mut text = serde_json::to_string_pretty(&schema)?;
    text.push('\n');
    Ok(text)
}

/// What is no figure.
fn words(told: &Value) -> Map<String, Value> {
    let about = |says: &str| json!({ "description": says, "allOf": [told] });
    let sets: Vec<&str> = EMBEDDED.iter().map(|(name, _)| *name).collect();
    let said = Choices::default().said();
    let says = |name: &str| said.iter().find(|s| s.name == name).map_or("", |s| s.says);
    let word = |name: &str, names: Vec<&str>| json!({ "description": says(name), "enum": names });
    let words = json!({
        "name": { "description": "What the set is called.", "type": "string" },
        "says": { "description": "What it is, in a sentence.", "type": "string" },
        "comes_from": about("Where it comes from."),
        "used": about("When people use it."),
        "beside": {
            "description": "The embedded sets that options weigh beside this one.",
            "type": "array",
            "items": { "enum": sets },
        },
        "reserve": word("reserve", Reserve::names()),
        "knots": word("knots", Knots::names()),
        "cover": word("cover", Cover::names()),
        "rope_on_bare": { "description": says("rope_on_bare"), "type": "boolean" },
    });
    match words {
        Value::Object(words) => words,
        _ => Map::new(),
    }
}

fn of_figure(figure: &Figure, entry: &Value) -> Value {
    json!({
        "description": format!("{} ({})", figure.says, figure.unit),
        "allOf": [entry],
        "properties": {
            "value": { "minimum": figure.min, "maximum": figure.max },
            "unit": { "const": figure.unit },
        },
    })
}
