//! Times worked backwards: by hand, and as laws.

use proptest::prelude::*;
use schrund::{
    plan::{
        Plan,
        clock::{Backwards, TurnKind},
    },
    trip::clock::Clock,
};

use crate::fixture::{
    close_to as close,
    planned::codes,
    trip::{NORTHWARD, SNOW, Trip},
};

/// Level ground: 15 minutes a kilometre, and 5 minutes of rest for each hour.
const MIN_PER_M: f64 = 15.0 / 1000.0 * 65.0 / 60.0;

fn level(line: &[(f64, f64)]) -> Trip {
    Trip::along(line).heights(|_, _| 2500.0)
}

fn clock(text: &str) -> Clock {
    Clock::parse(text).expect("a time")
}

#[track_caller]
fn planned(plan: &Plan) -> Backwards {
    plan.clock
        .as_ref()
        .expect("a start is given")
        .first
        .as_planned
}

fn shown(clock: Option<Clock>) -> Option<String> {
    clock.map(|clock| clock.to_string())
}

/// 1800 m, gaps under snow from 700 to 1100 m. Roped up at 680 m after 11.05 min; the last gap is left after
/// 11.05 + 15 + 6.825 = 32.875 min, a third slower after 43.83 min; done after 29.25 + 20 = 49.25 min.
#[test]
fn a_line_one_way_by_hand() {
    let words =
        |more: &str| format!("start = \"09:00\"\nbridges_until = \"{more}\"\nback_by = \"10:00\"");
    let trip = level(&NORTHWARD).middle(SNOW);
    let plan = trip.clone().rules(&words("10:00")).plan();
    let times = planned(&plan);
    assert_eq!(shown(times.latest_start).as_deref(), Some("09:27"));
    assert_eq!(shown(times.arrival).as_deref(), Some("09:49"));
    assert_eq!(times.at_bridges_until_m, None, "it is done by then");
    let slower = plan
        .clock
        .as_ref()
        .and_then(|clock| clock.first.slower)
        .expect("slower");
    assert_eq!(shown(slower.latest_start).as_deref(), Some("09:16"));

    let roping_up = planned(&trip.clone().rules(&words("09:20")).plan());
    close("roping up", roping_up.at_bridges_until_m, 680.0, 0.5);
    let walking = planned(&trip.rules(&words("09:30")).plan());
    let on_m = 680.0 + (30.0 - 26.05) / MIN_PER_M;
    close("walking", walking.at_bridges_until_m, on_m, 0.5);
    assert_eq!(walking.at_bridges_until_leg, Some(2));
}

/// On the same line: who turns round y m behind 680 m has walked 26.05 min + y, unropes in 5 min and walks the rest back in
/// 11.05 min + y. In 55 min that is 396.9 m; in 60 min the whole roped leg, and unroping to rope up again would take too long.
#[test]
fn the_last_place_to_turn_round_by_hand() {
    let trip = level(&NORTHWARD).middle(SNOW);
    let turn = |by: &str| {
        let words = format!("start = \"09:00\"\nback_by = \"{by}\"");
        let plan = trip.clone().rules(&words).plan();
        (
            planned(&plan).turn_round.expect("there is time to begin"),
            plan,
        )
    };
    let (on_it, _) = turn("09:55");
    close(
        "on the rope",
        Some(on_it.at_m),
        680.0 + 12.9 / (2.0 * MIN_PER_M),
        0.5,
    );
    assert_eq!(
        (on_it.by.to_string().as_str(), on_it.kind),
        ("09:32", TurnKind::OffTheLine)
    );
    let (at_end, plan) = turn("10:00");
    close("at its end", Some(at_end.at_m), plan.legs[1].end_m, 1e-6);
    let home_min = 5.0 + at_end.at_m * MIN_PER_M;
    assert_eq!(at_end.by, clock("10:00").after(-home_min).cut_off());
    let (anywhere, plan) = turn("12:00");
    close(
        "the end of the line",
        Some(anywhere.at_m),
        plan.route.length_m,
        1e-6,
    );
    assert_eq!(
        codes(&turn("09:40").1.findings),
        codes(&turn("09:48").1.findings)
    );
    assert!(
        codes(&turn("09:40").1.findings).contains(&"back-late"),
        "done at 09:49"
    );
}

/// Out 2000 m and back the same way, over the same gaps twice: from the turn it is 32.5 min and 20 min for the rope.
#[test]
fn a_line_that_goes_out_and_back_by_hand() {
    let trip = level(&[(0.0, -1000.0), (0.0, 1000.0), (0.0, -1000.0)]).middle(SNOW);
    let start = "start = \"09:00\"\nback_by = \"12:00\"\n";
    let plan = trip.clone().rules(start).plan();
    let turn = planned(&plan).turn_round.expect("a turn");
    close("the turn", Some(turn.at_m), 2000.0, 0.5);
    assert_eq!((turn.kind, turn.leg), (TurnKind::OfTheLine, 3));
    assert_eq!(turn.by, clock("12:00").after(-52.5).cut_off());
    let leg = &plan.legs[2];
    assert!(
        codes(&leg.findings).contains(&"line-turns-back"),
        "{:?}",
        leg.findings
    );

    let summit = "[[halt]]\nat_km = 2.0\nminutes = 30\nname = \"Summit\"";
    let halted = trip.rules(&format!("{start}{summit}")).plan();
    let turn = planned(&halted).turn_round.expect("a turn");
    assert_eq!(
        turn.by,
        clock("12:00").after(-52.5).cut_off(),
        "left by then, halted or not"
    );
    let [up, down] = &halted.legs[2].parts[..] else {
        panic!("{:?}", halted.legs[2].parts)
    };
    assert_eq!(
        (up.name.as_deref(), up.turns, down.turns),
        (Some("Summit"), true, false)
    );
}

/// The same two lines with an hour for the bridges. One way: who turns round y min behind 680 m, the rope tied after 26.05 min,
/// has left the first gaps at 700 m again after 26.05 min + 2 y - 0.325 min; by 09:40 that is y = 7.1375 min. Out and back:
/// from the turn to the last gap at 3200 m it is 19.5 min and 15 min for the rope, so it is left by 09:55 for 10:30.
#[test]
fn the_way_back_leaves_hidden_gaps_in_time() {
    let words = |until: &str| {
        format!("start = \"09:00\"\nbridges_until = \"{until}\"\nback_by = \"12:00\"")
    };
    let trip = level(&NORTHWARD).middle(SNOW);
    let times = planned(&trip.clone().rules(&words("09:40")).plan());
    let turn = times.turn_round.expect("a turn off the gaps in time");
    close("one way", Some(turn.at_m), 680.0 + 7.1375 / MIN_PER_M, 0.5);
    assert_eq!(turn.by.to_string(), "09:33");
    assert_eq!(shown(turn.bridges_left).as_deref(), Some("09:40"));
    let late = times.turn_round_back_by.expect("later, back by twelve");
    close("to the end", Some(late.at_m), 1800.0, 0.5);
    let home_min = 700.0 * MIN_PER_M + 5.0;
    let left_min = late.bridges_left.map(|left| left.min());
    close("left", left_min, clock("12:00").min() - home_min, 0.02);

    let never = planned(&trip.clone().rules(&words("09:26")).plan());
    assert_eq!(never.turn_round, None, "the gaps are reached at 09:26");
    assert_eq!(never.turn_round_back_by, Some(late));
    let early = planned(&trip.rules(&words("11:45")).plan());
    assert_eq!(early.turn_round, Some(late), "all gaps are left by 11:43");
    assert_eq!(early.turn_round_back_by, None);
    assert_eq!(
        [never.no_turn_in_time, early.no_turn_in_time],
        [true, false]
    );

    let trip = level(&[(0.0, -1000.0), (0.0, 1000.0), (0.0, -1000.0)]).middle(SNOW);
    let times = planned(&trip.rules(&words("10:30")).plan());
    let [turn, late] = [times.turn_round, times.turn_round_back_by].map(|t| t.expect("a turn"));
    assert_eq!((turn.kind, turn.at_m), (TurnKind::OfTheLine, late.at_m));
    assert_eq!(
        [turn.by, late.by].map(|at| at.to_string()),
        ["09:55", "11:07"]
    );
    let left_min = late.bridges_left.map(|left| left.min());
    close("left", left_min, clock("12:00").min() - 52.5 + 34.5, 0.02);
}

/// The first of these lines where nobody says by when to be back. All gaps are left at 09:33, so an hour behind that asks for no
/// turn. By 09:30 it is y = 2.1375 min; by 09:26 there is none.
#[test]
fn an_hour_for_the_bridges_alone_asks_for_a_turn_where_the_plan_is_late() {
    let [early, late, never] = ["09:35", "09:30", "09:26"].map(|until| {
        let words = format!("start = \"09:00\"\nbridges_until = \"{until}\"");
        let times = planned(&level(&NORTHWARD).middle(SNOW).rules(&words).plan());
        assert_eq!(times.turn_round_back_by, None, "nobody has to be back");
        (times.turn_round, times.no_turn_in_time)
    });
    assert_eq!((early, never), ((None, false), (None, true)));
    let turn = late.0.expect("a turn off the gaps in time");
    close("one way", Some(turn.at_m), 680.0 + 2.1375 / MIN_PER_M, 0.5);
    assert_eq!((turn.by.to_string().as_str(), late.1), ("09:28", false));
    assert_eq!(shown(turn.bridges_left).as_deref(), Some("09:30"));
}

/// Out and back, the turn reached after 52.5 min: who has to be done after 100 min leaves it too early to reach it, and turns on
/// the way out instead.
#[test]
fn a_turn_that_is_not_reached_in_time_is_not_the_one_to_keep_to() {
    let trip = level(&[(0.0, -1000.0), (0.0, 1000.0), (0.0, -1000.0)]).middle(SNOW);
    let turn = |by: &str| {
        let words = format!("start = \"09:00\"\nback_by = \"{by}\"");
        planned(&trip.clone().rules(&words).plan())
            .turn_round
            .expect("a turn")
    };
    let (late, early) = (turn("10:46"), turn("10:40"));
    assert_eq!(
        (late.kind, early.kind),
        (TurnKind::OfTheLine, TurnKind::OffTheLine)
    );
    assert!(early.at_m < 2000.0 && early.by < late.by, "{early:?}");
    assert!(early.by > clock("09:00"));
}

/// Ice that only the margin reaches puts the team on the rope, so the clock counts it as well: 400 m of it beside the line.
#[test]
fn gaps_within_the_margin_beside_the_line_are_left_in_time_as_well() {
    let trip = level(&NORTHWARD).zone((10.0, -200.0), (100.0, 200.0), SNOW);
    let words = "start = \"09:00\"\nbridges_until = \"09:30\"";
    let plan = trip.rules(words).plan();
    assert!(plan.zones[0].crossings.is_empty(), "it is never crossed");
    let latest = planned(&plan).latest_start.expect("hidden gaps");
    assert!(latest < clock("09:00"), "{latest}");
    let late = plan
        .legs
        .iter()
        .filter(|l| codes(&l.findings).contains(&"bridges-late"));
    assert!(late.eq(plan.legs.iter().filter(|l| l.roped)));
}

/// A round tour that ends where it begins, and whose way back is another one: the longest halt is its goal.
#[test]
fn the_goal_of_a_round_tour_is_its_longest_halt() {
    let round = [
        (0.0, 0.0),
        (0.0, 1500.0),
        (900.0, 1500.0),
        (900.0, 0.0),
        (0.0, 0.0),
    ];
    let trip = level(&round).zone((-100.0, 500.0), (100.0, 900.0), SNOW);
    let halts = "[[halt]]\nat_km = 0.3\nminutes = 5\n[[halt]]\nat_km = 2\nminutes = 25";
    let words = format!("start = \"09:00\"\nback_by = \"12:00\"\n{halts}");
    let plan = trip.rules(&words).plan();
    let turn = planned(&plan).turn_round.expect("a goal");
    assert_eq!((turn.at_m, turn.kind), (2000.0, TurnKind::OfTheLine));
    let rest_min = (plan.route.length_m - 2000.0) * MIN_PER_M;
    assert_eq!(turn.by, clock("12:00").after(-rest_min).cut_off());
}

#[test]
fn nothing_is_made_up_without_heights_or_start() {
    let words = "start = \"09:00\"\nbridges_until = \"10:00\"\nback_by = \"12:00\"";
    let flat = Trip::along(&NORTHWARD).middle(SNOW);
    let nothing = |trip: Trip| {
        let clock = trip.rules(words).plan().clock.expect("hours are given");
        assert_eq!(clock.first.bridges_until, Some(self::clock("10:00")));
        clock.first.as_planned == Backwards::default()
    };
    assert!(nothing(flat.clone()), "no heights");
    assert_eq!(
        level(&NORTHWARD).middle(SNOW).plan().clock,
        None,
        "no start"
    );
    let part = flat.heights(|_, north| if north < 0.0 { 2500.0 } else { f64::NAN });
    assert!(nothing(part), "heights on the first leg alone");
}

#[test]
fn every_stage_has_its_own() {
    let trip = level(&NORTHWARD)
        .middle(SNOW)
        .then(&[(0.0, 900.0), (0.0, 1700.0)]);
    let plan = trip
        .rules("start = \"09:00\"\nbridges_until = \"10:00\"")
        .plan();
    let clock = plan.clock.expect("a start is given");
    let [second] = &clock.other_stages[..] else {
        panic!("two stages")
    };
    assert_eq!(
        (second.stage, second.as_planned.latest_start),
        (2, None),
        "no bridges there"
    );
    let flat = Trip::along(&NORTHWARD);
    assert!(
        flat.ropes.is_empty() && second.as_planned.arrival.is_some(),
        "it is done at an hour"
    );
}

/// A line over hills, one way or out and back, with bridges somewhere and halts anywhere.
#[derive(Clone, Debug)]
pub(super) struct Made {
    /// Where the bridges begin north of the spot, and how far they reach, metres.
    ice_m: (f64, f64),
    /// Kilometre and minutes of each.
    pub(super) halts: Vec<(f64, f64)>,
    /// Height and length of the hills, metres.
    hills_m: (f64, f64),
    back: bool,
}

impl Made {
    pub(super) fn trip(&self) -> Trip {
        let up = (0..=20).map(|i| (0.0, 100.0 * f64::from(i) - 1000.0));
        let down = (0..20).rev().map(|i| (0.0, 100.0 * f64::from(i) - 1000.0));
        let line: Vec<(f64, f64)> = match self.back {
            true => up.chain(down).collect(),
            false => up.collect(),
        };
        let ((south, wide), (high, long)) = (self.ice_m, self.hills_m);
        Trip::along(&line)
            .zone((-200.0, south), (200.0, south + wide), SNOW)
            .heights(move |_, north| 2500.0 + high * (north / long).sin())
    }
}

pub(super) fn any_trip() -> impl Strategy<Value = Made> {
    let ice_m = (-900.0..500.0_f64, 60.0..600.0_f64);
    let halts = prop::collection::vec((0.0..1.0_f64, 0.0..60.0_f64), 0..4);
    let hills_m = (5.0..60.0_f64, 100.0..900.0_f64);
    let made = (ice_m, halts, hills_m, any::<bool>());
    made.prop_map(|(ice_m, halts, hills_m, back)| {
        let length_km = if back { 3.99 } else { 1.99 };
        let halts = halts
            .into_iter()
            .map(|(share, min)| (share * length_km, min));
        Made {
            ice_m,
            halts: halts.collect(),
            hills_m,
            back,
        }
    })
}

pub(super) fn with(halts: &[(f64, f64)], start: &str) -> String {
    let halts = halts
        .iter()
        .map(|(km, min)| format!("[[halt]]\nat_km = {km}\nminutes = {min}\n"));
    let halts: String = halts.collect();
    format!("start = \"{start}\"\nbridges_until = \"10:00\"\nback_by = \"14:00\"\n{halts}")
}

fn late(plan: &Plan) -> bool {
    plan.legs
        .iter()
        .any(|leg| codes(&leg.findings).contains(&"bridges-late"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Started at the latest start the bridges are left in time, and a minute later they are not.
    #[test]
    fn the_latest_start_is_the_latest(made in any_trip()) {
        let (trip, halts) = (made.trip(), made.halts);
        let plan = trip.clone().rules(&with(&halts, "05:00")).plan();
        let latest = planned(&plan).latest_start.expect("bridges");
        for (more_min, is_late) in [(0.0, false), (1.0, true)] {
            let mut job = trip.clone().rules(&with(&halts, "05:00")).job();
            job.timetable.start.value = Some(latest.after(more_min));
            let plan = schrund::plan(&job).expect("a plan");
            prop_assert_eq!(late(&plan), is_late, "{} later than {}", more_min, latest);
        }
    }

    /// Halts take their minutes and no more, and parts tile their legs.
    #[test]
    fn halts_take_their_minutes_and_parts_tile(made in any_trip()) {
        let (trip, halts) = (made.trip(), made.halts);
        let without = trip.clone().rules(&with(&[], "05:00")).plan();
        let plan = trip.rules(&with(&halts, "05:00")).plan();
        let halted_min: f64 = halts.iter().map(|(_, min)| min).sum();
        let more_min = plan.route.time.total_min - without.route.time.total_min;
        prop_assert!((more_min - halted_min).abs() < 1e-6, "{} of {}", more_min, halted_min);
        for leg in plan.legs.iter().filter(|leg| !leg.parts.is_empty()) {
            let ends: Vec<f64> = leg.parts.iter().map(|part| part.to_m).collect();
            let begins: Vec<f64> = leg.parts.iter().map(|part| part.from_m).collect();
            prop_assert_eq!(begins[0], leg.start_m);
            prop_assert_eq!(ends[ends.len() - 1], leg.end_m);
            prop_assert_eq!(&begins[1..], &ends[..ends.len() - 1]);
            let walked = leg.parts.iter().filter_map(|p| Some(p.arrive?.min() - p.depart?.min()));
            let walked: f64 = walked.sum();
            let belay_min = leg.belays.as_ref().map_or(0.0, |belays| belays.minutes);
            let meant = leg.time_min + leg.break_min + belay_min;
            prop_assert!((walked - meant).abs() < 1e-6, "{} of {}", walked, meant);
        }
    }

    /// A later hour to be back by never makes anybody turn round sooner or nearer.
    #[test]
    fn more_time_takes_nobody_back_sooner(made in any_trip(), hour in 6..20_u32) {
        let (trip, halts) = (made.trip(), made.halts);
        let turn = |hour: u32| {
            let words = with(&halts, "05:00").replace("14:00", &format!("{hour:02}:00"));
            planned(&trip.clone().rules(&words).plan()).turn_round
        };
        if let (Some(early), Some(late)) = (turn(hour), turn(hour + 1)) {
            prop_assert!(late.at_m >= early.at_m - 1e-6, "{:?} {:?}", early, late);
            prop_assert!(late.by >= early.by, "{:?} {:?}", early, late);
        }
    }
}
