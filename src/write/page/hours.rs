//! The hours for somebody who stands on the line, as a page shows them.

use serde::Serialize;

use crate::{
    plan::{Plan, leg::Leg, part},
    say::voice::Voice,
    write::{
        geojson::form::mm,
        parts::clock::on_the_way::{OnTheWay, on_the_way},
        report::markup::spans,
    },
};

/// What the hours ask of who stands in a stage before a place.
#[derive(Serialize)]
pub(super) struct PanelHour {
    stage: usize,
    to_m: Option<f64>,
    late: bool,
    says: String,
    turns: Option<String>,
    /// When whoever goes on has left the last bridges.
    on: Option<String>,
}

pub(super) fn hours(plan: &Plan, voice: Voice) -> Vec<PanelHour> {
    let clock = plan.clock.iter();
    let asked = clock.flat_map(|all| on_the_way(all, voice));
    let hour = |asked: OnTheWay| PanelHour {
        stage: asked.stage,
        to_m: asked.to_m.map(mm),
        late: asked.late,
        says: spans(&asked.says).into_string(),
        turns: asked.turns.map(|says| spans(&says).into_string()),
        on: asked.on.map(|on| on.to_string()),
    };
    asked.map(hour).collect()
}

/// A place, when it is left, and when whoever turns back there is off the bridges, with whether that is in time.
pub(super) type PanelPlace = (f64, String, Option<(String, bool)>);

/// The places of a leg with their hours.
pub(super) fn walk(leg: &Leg, plan: &Plan) -> Vec<PanelPlace> {
    let walked = leg.walk.iter();
    walked
        .map(|place| (mm(place.at_m), place.left.to_string(), back(place, plan)))
        .collect()
}

fn back(place: &part::WalkedPlace, plan: &Plan) -> Option<(String, bool)> {
    let at = place.back_off_bridges?;
    let until = plan.clock.as_ref()?.first.bridges_until;
    let in_time = until.is_some_and(|until| !at.is_later_than(until));
    Some((at.to_string(), in_time))
}
