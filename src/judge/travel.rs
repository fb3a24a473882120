//! What is found of the way over a leg: its ends, how the party travels, where the line turns back, and the hour at which
//! bridges are crossed.

use crate::{
    judge::place::place_at,
    physics::assumed::Snow,
    plan::{
        fact::Fact,
        finding::{At, Finding},
        in_time::InTime,
        place::RouteEnd,
    },
    practice::{Rules, Travel},
    rope::legs::RopedLeg,
    times::{bridges::hidden, hours::Hours},
    trip::{job::Brief, route::Stretch},
};

/// Where the route begins or ends on the ice.
pub(super) fn ends(leg: &RopedLeg<'_>) -> Vec<Fact> {
    let length_m = leg.stage.stage.length_m();
    let met = leg.stage.met;
    let (begins, ends) = (met.on_ice(0.0), met.on_ice(length_m));
    let stretch = leg.sketch.stretch;
    let (first, last) = (stretch.from_m <= 0.0, stretch.to_m >= length_m);
    let mut found = Vec::new();
    if first && begins {
        let at = RouteEnd::Begin;
        found.push(Fact::CutOff { at });
    }
    if last && ends {
        let at = RouteEnd::End;
        found.push(Fact::CutOff { at });
    } else if last {
        found.push(Fact::LastOnIce {});
    }
    found
}

/// What the way of travelling adds.
pub(super) fn travel(rules: &Rules) -> Option<Fact> {
    (rules.choices.travel.value == Travel::Ski).then_some(Fact::OnSkis {})
}

/// Bridges of fresh or wet snow, whatever the hour.
pub(super) fn soft(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Option<Fact> {
    let is_soft = job.rules.choices.snow.value == Snow::Soft;
    (is_soft && !hidden(job, leg).is_empty()).then_some(Fact::BridgesSoft {})
}

/// Ice with hidden gaps whose last crossing on the leg ends later than bridges are trusted, told of what is crossed after that,
/// and to who is under way of what lies ahead.
pub(super) fn bridges(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    hours: &Hours,
    in_time: Option<InTime>,
) -> Vec<Finding> {
    let Some((until, in_time)) = job.timetable.bridges_until.value.zip(in_time) else {
        return Vec::new();
    };
    let ahead = hidden(job, leg).into_iter();
    let ahead = ahead.filter(|gaps| !job.timetable.is_past(gaps.ends_m));
    let late = ahead.filter_map(|gaps| {
        let left_at = hours.left_at(gaps.ends_m)?;
        left_at.is_later_than(until).then(|| {
            let fact = Fact::BridgesLate {
                zone: gaps.zone.map(Into::into),
                left_at,
                until,
                start_by: in_time.start_by,
                turns: in_time.turns,
                off: in_time.off,
            };
            // Where a halt on the ice is not over yet the team is still on it.
            let reached_m = hours.reached_at(until).unwrap_or(gaps.begins_m);
            let on = gaps.beyond(reached_m);
            Finding::new(At::Leg(place_at(leg, on.from_m, on.to_m)), fact)
        })
    });
    late.collect()
}

/// Where the line turns back on itself.
pub(super) fn turns(leg: &RopedLeg<'_>) -> Vec<Finding> {
    let stretch = leg.sketch.stretch;
    let turns = leg.stage.met.under.line.turns.iter();
    let on_leg = turns.filter(|turn| is_on(stretch, turn.at_m));
    let found = on_leg.map(|turn| {
        let fact = Fact::TurnFound {
            back_m: turn.back_m,
        };
        Finding::new(At::Leg(place_at(leg, turn.at_m, turn.at_m)), fact)
    });
    found.collect()
}

/// Whether a leg tells of a place: of one where a leg ends and the next begins the first of them does.
fn is_on(leg: Stretch, at_m: f64) -> bool {
    leg.from_m < at_m && at_m <= leg.to_m
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_where_one_leg_ends_and_the_next_begins_is_told_once() {
        let legs = [(0.0, 100.0), (100.0, 250.0)].map(|(from_m, to_m)| Stretch { from_m, to_m });
        let told = |at_m: f64| legs.map(|leg| is_on(leg, at_m));
        assert_eq!(told(100.0), [true, false]);
        assert_eq!(told(99.0), [true, false]);
        assert_eq!(told(101.0), [false, true]);
        assert_eq!(told(250.0), [false, true]);
    }
}
