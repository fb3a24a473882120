//! Hours of a trip that cannot count: without a start, or at a kilometre that is on no line.

use crate::{
    fault::{Fault, Place, trip::InTrip},
    practice::Origin,
    read::trip::READ_OFF_M,
    trip::{
        route::{Route, Stage},
        timetable::{Timetable, is_on_a_line},
    },
};

/// A kilometre at which no hour counts, and times that nothing can be told of without a start; `place` is where what was said so stands.
pub(super) fn without_start(times: &Timetable, place: &impl Fn(Origin) -> Place) -> Vec<Fault> {
    let started = times.start.value.is_some();
    let at = times.start_at_km.value.and_then(|at_km| {
        let what = match started {
            true if is_on_a_line(at_km) => return None,
            true => InTrip::StartBefore { at_km },
            false => InTrip::PlaceWithoutStart { at_km },
        };
        Some((what, times.start_at_km.origin, "start_at_km"))
    });
    let bridges = times.bridges_until.value.map(|until| {
        let until_min = until.min();
        let what = InTrip::BridgesWithoutStart { until_min };
        (what, times.bridges_until.origin, "bridges_until")
    });
    let back = times.back_by.value.map(|by| {
        let what = InTrip::BackWithoutStart { by_min: by.min() };
        (what, times.back_by.origin, "back_by")
    });
    let hours = [bridges, back].into_iter().flatten();
    let told = at.into_iter().chain(hours.filter(|_| !started));
    told.map(|(what, origin, name)| Fault::new(what, place(origin).with_property(name)))
        .collect()
}

/// An hour that counts beyond the end of every stage.
pub(super) fn start_beyond(
    times: &Timetable,
    route: &Route,
    place: &impl Fn(Origin) -> Place,
) -> Option<Fault> {
    let at_km = times.start_at_km.value?;
    let lengths = route.stages.iter().map(Stage::length_m);
    let length_m = lengths.fold(0.0, f64::max);
    (1000.0 * at_km > length_m + READ_OFF_M).then(|| {
        let what = InTrip::StartBeyond { at_km, length_m };
        let place = place(times.start_at_km.origin);
        Fault::new(what, place.with_property("start_at_km"))
    })
}
