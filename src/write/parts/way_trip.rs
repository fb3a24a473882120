//! A way to use ropes and people as a trip file says it.

use toml::{Table, Value};

use crate::plan::options::{WayRope, WayTrip};

/// The members of a trip file that plan the way, one after another: `teams = [3, 2]`, `assume = { sling_m = 2.4 }`; none where it
/// is planned anyway.
pub(in crate::write) fn members(trip: &WayTrip) -> Vec<String> {
    let teams: Vec<Value> = trip.teams.iter().map(|&people| whole(people)).collect();
    let assume = trip
        .assume
        .iter()
        .map(|(name, &value)| (name.clone(), Value::Float(value)));
    let assume: Table = assume.collect();
    let ropes: Vec<Value> = trip.ropes.iter().map(rope).collect();
    let practice = trip.practice.clone().map(Value::String);
    let all = [
        ("teams", (!teams.is_empty()).then_some(Value::Array(teams))),
        ("practice", practice),
        (
            "assume",
            (!assume.is_empty()).then_some(Value::Table(assume)),
        ),
        ("rope", (!ropes.is_empty()).then_some(Value::Array(ropes))),
    ];
    let said = all
        .into_iter()
        .filter_map(|(name, value)| Some(format!("{name} = {}", value?)));
    said.collect()
}

fn rope(rope: &WayRope) -> Value {
    let members = [
        ("name", rope.name.clone().map(Value::String)),
        ("length_m", Some(Value::Float(rope.length_m))),
        ("diameter_mm", rope.diameter_mm.map(Value::Float)),
        ("joined", rope.joined.then_some(Value::Boolean(true))),
    ];
    let given = members
        .into_iter()
        .filter_map(|(name, value)| Some((name.to_owned(), value?)));
    Value::Table(given.collect())
}

fn whole(count: usize) -> Value {
    Value::Integer(i64::try_from(count).unwrap_or(i64::MAX))
}
