//! The plan as JSON: the facts as they are, rounded, with the sentences that readers want put beside them.
//!
//! Coordinates have 7 decimals (a centimetre), all else 6 (in metres, a micrometre).

use serde_json::{Number, Value};

use crate::{
    plan::{Plan, finding::Finding, leg::TeamSetup, options::Options, without::Without},
    say::{
        self, cautions::cautions, finding, interface::Interface, language::Language, span::Said,
        units::Units, voice::Voice,
    },
    schema,
    write::{json_text, sheet::Other},
};

/// Members that hold a longitude and latitude.
const PLACES: [&str; 6] = [
    "start",
    "end",
    "at",
    "lon_lat",
    "steepest_at",
    "ground_steepest_at",
];
/// Decimals of everything but coordinates: a micrometre.
const DECIMALS: i32 = 6;

/// Sentences are metric and English whatever is shown elsewhere.
const VOICE: Voice = Voice {
    language: Language::English,
    units: Units::Metric,
    interface: Interface::Members,
};

/// The whole plan, indented, with a line break at the end.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no plan holds.
pub fn plan(plan: &Plan) -> Result<String, serde_json::Error> {
    beside(plan, &[])
}

/// The whole plan with the same trip beside it, something missing.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no plan holds.
pub fn beside(plan: &Plan, others: &[Other]) -> Result<String, serde_json::Error> {
    let mut value = serde_json::to_value(plan)?;
    let all: Vec<Without> = others.iter().map(|other| other.beside(plan)).collect();
    if let Value::Object(members) = &mut value
        && !all.is_empty()
    {
        members.insert("without".to_owned(), serde_json::to_value(&all)?);
    }
    let words = Words(VOICE);
    words.of_plan(&mut value, plan);
    words.of_others(&mut value, &all, others);
    document(value)
}

/// The options, likewise.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no options hold.
pub fn options(options: &Options) -> Result<String, serde_json::Error> {
    let mut value = serde_json::to_value(options)?;
    Words(VOICE).of_options(&mut value, options);
    document(value)
}

fn document(mut value: Value) -> Result<String, serde_json::Error> {
    round(&mut value, DECIMALS);
    let mut text = json_text::pretty(&value)?;
    text.push('\n');
    Ok(text)
}

/// Puts sentences beside facts. Values and nouns are walked side by side; nothing is read from a value.
struct Words(Voice);

impl Words {
    fn of_plan(&self, value: &mut Value, plan: &Plan) {
        for (value, leg) in members(value, "legs").iter_mut().zip(&plan.legs) {
            for (value, setup) in members(value, "teams").iter_mut().zip(&leg.teams) {
                self.of_setup(value, setup);
            }
            self.of_findings(value, &leg.findings);
        }
        let teams = plan.carry.len();
        for (value, carry) in members(value, "carry").iter_mut().zip(&plan.carry) {
            put(value, "why", &say::carry::carry_why(carry, teams, self.0));
        }
        self.of_hand(value, plan);
        self.of_findings(value, &plan.findings);
        self.cautions(value);
    }

    /// The field table and the list of gear.
    fn of_hand(&self, value: &mut Value, plan: &Plan) {
        let teams = plan.field.teams();
        let limits = members(value, "field_limits").iter_mut();
        for (value, limit) in limits.zip(&plan.field.limits) {
            put(value, "says", &say::field::limit(limit, teams, self.0));
        }
        for (value, gear) in members(value, "gear").iter_mut().zip(&plan.gear) {
            put(value, "says", &say::gear::row(gear, self.0));
        }
    }

    fn of_others(&self, value: &mut Value, all: &[Without], others: &[Other]) {
        let values = members(value, "without").iter_mut();
        for ((value, without), other) in values.zip(all).zip(others) {
            let faults = other.plan.as_ref().err().map_or(&[][..], Vec::as_slice);
            put(value, "says", &say::without::says(without, faults, self.0));
            for (value, leg) in members(value, "legs").iter_mut().zip(&without.legs) {
                for (value, team) in members(value, "teams").iter_mut().zip(&leg.teams) {
                    if let Some(haul) = &team.haul {
                        put(
                            &mut value["haul"],
                            "says",
                            &say::setup::haul_answer(haul, self.0),
                        );
                    }
                }
            }
        }
    }

    fn of_findings(&self, value: &mut Value, findings: &[Finding]) {
        for (value, found) in members(value, "findings").iter_mut().zip(findings) {
            put(value, "says", &finding::says(found, self.0));
            if let Some(hint) = finding::hint(found, self.0) {
                put(value, "hint", &hint);
            }
        }
    }

    fn of_setup(&self, value: &mut Value, setup: &TeamSetup) {
        let why = say::setup::knots_why(&setup.knots.why, self.0);
        put(&mut value["knots"], "says", &why);
        for (value, mark) in members(value, "marks").iter_mut().zip(&setup.marks) {
            put(value, "what", &say::mark::mark(mark, setup, self.0));
        }
        let beyond = members(value, "no_place").iter_mut();
        for (value, none) in beyond.zip(&setup.no_place) {
            put(value, "what", &say::mark::beyond(none, setup, self.0));
        }
        if let Some(arrest) = &setup.arrest {
            let value = &mut value["arrest"];
            put(value, "says", &say::setup::held(arrest, self.0));
            if let Some(order) = &arrest.order {
                put(
                    &mut value["order"],
                    "says",
                    &say::setup::order(order, self.0),
                );
            }
        }
        if let Some(haul) = &setup.haul {
            let says = say::setup::haul_answer(&haul.answer, self.0);
            put(&mut value["haul"], "says", &says);
        }
    }

    fn of_options(&self, value: &mut Value, options: &Options) {
        let shown = options.ways.len();
        for (value, way) in members(value, "ways").iter_mut().zip(&options.ways) {
            put(value, "why", &say::options::why(way, shown, self.0));
            let changes = members(value, "changes").iter_mut();
            for (value, change) in changes.zip(&way.changes) {
                put(value, "says", &say::options::change(change, self.0));
            }
        }
        let remarks = members(value, "remarks").iter_mut();
        for (value, &remark) in remarks.zip(&options.remarks) {
            put(value, "says", &say::options::remark(remark, self.0));
        }
        self.cautions(value);
    }

    fn cautions(&self, value: &mut Value) {
        let all = cautions(self.0).map(|c| Value::String(c.to_string()));
        if let Value::Object(members) = value {
            members.insert("cautions".to_owned(), all.collect());
        }
    }
}

/// The items of a member; none where it is not there.
fn members<'v>(value: &'v mut Value, name: &str) -> &'v mut [Value] {
    match value.get_mut(name) {
        Some(Value::Array(items)) => items,
        _ => &mut [],
    }
}

fn put(value: &mut Value, name: &str, says: &Said) {
    if let Value::Object(members) = value {
        members.insert(name.to_owned(), Value::String(says.to_string()));
    }
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

/// A plan as it is written, with the same trip beside it, something missing.
#[derive(serde::Serialize, schemars::JsonSchema)]
#[schemars(rename = "Plan")]
struct WithOthers {
    #[serde(flatten)]
    plan: Plan,
    /// The same trip with something missing; absent where nobody asked for it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    without: Vec<Without>,
}

/// What is left out when empty is not required of a plan. Sentences, which stand beside the facts, are described with
/// the rest.
fn schema_of_plan() -> schemars::Schema {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    let mut schema = schema::of::<WithOthers>(settings);
    let sentences = [
        ("Finding", "says", "What it is, in words."),
        ("Finding", "hint", "What to do about it, in words."),
        ("KnotSet", "says", "Why they are tied or not, in words."),
        ("Mark", "what", "What is tied there, in words."),
        ("Arrest", "says", "The verdict in words."),
        ("OrderAdvice", "says", "The advice in words."),
        ("FieldLimit", "says", "The same in words."),
        ("GearRow", "says", "What and what for, in words."),
        (
            "Without",
            "says",
            "What is missing and which legs are graver for it, in words.",
        ),
        ("HaulTable", "says", "What those left can do, in words."),
        (
            "Carry",
            "why",
            "For whom and because of which leg, in words.",
        ),
    ];
    for (of, name, description) in sentences {
        if let Some(Value::Object(properties)) =
            schema.pointer_mut(&format!("/$defs/{of}/properties"))
        {
            let text = serde_json::json!({ "type": "string", "description": description });
            properties.insert(name.to_owned(), text);
        }
    }
    let cautions = serde_json::json!({
        "type": "array",
        "items": { "type": "string" },
        "description": "What every plan must be read with.",
    });
    if let Some(Value::Object(properties)) = schema.pointer_mut("/properties") {
        properties.insert("cautions".to_owned(), cautions);
    }
    schema
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
                let place = PLACES.contains(&name.as_str()) && member.is_array();
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
