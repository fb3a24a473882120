//! Points of the annotated map: where the set-up changes, halts, and places to look at.

use geojson::{Feature, GeometryValue, JsonObject, Position};
use serde_json::{Value, json};

use super::form::{feature, mm, position, put};
use crate::{
    geometry::LonLat,
    plan::finding::Finding,
    say::span::Said,
    write::{
        parts::{change::ChangePoint, halt::HaltPoint, look::LookPoint, style},
        sheet::Look,
    },
};

pub(super) fn place(change: &ChangePoint<'_>, look: Look) -> Feature {
    let told = json!({
        "change": change.number,
        "letter": change.letter(),
        "what": change.kind.as_str(),
        "stage": change.stage,
        "at_m": mm(change.at_m),
        "degrees": change.degrees,
        "utm": change.utm,
        "clock": change.clock,
        "height_m": change.height_m.map(mm),
        "leg": change.leg.leg,
    });
    let says = [change.title(look.voice), change.told(look.voice)];
    let at = LonLat::new(change.at[0], change.at[1]);
    point(("change", "medium"), at, says, told, look)
}

pub(super) fn halted(halt: &HaltPoint<'_>, look: Look) -> Feature {
    let told = json!({
        "halt": halt.number,
        "halt_name": halt.part.name,
        "halt_min": mm(halt.part.halt_min),
        "stage": halt.stage,
        "leg": halt.leg,
        "at_m": mm(halt.at_m),
        "arrive": halt.arrive,
        "depart": halt.depart,
        "height_m": halt.part.end_height_m.map(mm),
    });
    let says = [halt.title(look.voice), halt.description(look.voice)];
    point(("halt", "small"), halt.at, says, told, look)
}

pub(super) fn looked_at(look_at: &LookPoint<'_>, look: Look) -> Feature {
    let told = json!({
        "look": look_at.code(look.voice),
        "what": look_at.sort.as_str(),
        "stage": look_at.leg.stage,
        "leg": look_at.leg.leg,
        "at_m": mm(look_at.at_m),
        "height_m": look_at.height_m.map(mm),
        "level": if look_at.stops() { "stop" } else { "look" },
        "code": look_at.finding.map(Finding::code),
    });
    let says = [look_at.title(look.voice), look_at.description(look.voice)];
    point(("look", "small"), look_at.at, says, told, look)
}

/// A point of a role, marked so large, with what is said of it and what else is told.
fn point(
    (role, size): (&str, &str),
    at: LonLat,
    says: [Said; 2],
    told: Value,
    look: Look,
) -> Feature {
    let [title, description] = says.map(|said| said.to_string());
    let mut properties = JsonObject::new();
    put(
        &mut properties,
        json!({ "role": role, "name": title, "title": title, "description": description }),
    );
    put(&mut properties, told);
    if look.styled {
        put(
            &mut properties,
            json!({ "marker-color": style::CHANGE, "marker-size": size }),
        );
    }
    let coordinates = Position::from(position(at));
    feature(GeometryValue::Point { coordinates }, properties)
}
