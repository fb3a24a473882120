//! Points of the annotated map: where the set-up changes, and halts.

use geojson::{Feature, GeometryValue, JsonObject, Position};
use serde_json::json;

use super::form::{feature, mm, position, put};
use crate::{
    geometry::LonLat,
    write::{
        parts::{change::ChangePoint, halt::HaltPoint, style},
        sheet::Look,
    },
};

pub(super) fn place(change: &ChangePoint<'_>, look: Look) -> Feature {
    let title = change.title(look.voice).to_string();
    let mut properties = JsonObject::new();
    put(
        &mut properties,
        json!({
            "role": "change",
            "name": title,
            "title": title,
            "description": change.description(look.voice).to_string(),
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
        }),
    );
    if look.styled {
        put(
            &mut properties,
            json!({ "marker-color": style::CHANGE, "marker-size": "medium" }),
        );
    }
    let at = position(LonLat::new(change.at[0], change.at[1]));
    feature(
        GeometryValue::Point {
            coordinates: Position::from(at),
        },
        properties,
    )
}

pub(super) fn halted(halt: &HaltPoint<'_>, look: Look) -> Feature {
    let title = halt.title(look.voice).to_string();
    let mut properties = JsonObject::new();
    put(
        &mut properties,
        json!({
            "role": "halt",
            "name": title,
            "title": title,
            "description": halt.description(look.voice).to_string(),
            "halt": halt.number,
            "halt_name": halt.part.name,
            "halt_min": mm(halt.part.halt_min),
            "stage": halt.stage,
            "leg": halt.leg,
            "at_m": mm(halt.at_m),
            "arrive": halt.arrive,
            "depart": halt.depart,
            "height_m": halt.part.end_height_m.map(mm),
        }),
    );
    if look.styled {
        put(
            &mut properties,
            json!({ "marker-color": style::CHANGE, "marker-size": "small" }),
        );
    }
    feature(
        GeometryValue::Point {
            coordinates: Position::from(position(halt.at)),
        },
        properties,
    )
}
