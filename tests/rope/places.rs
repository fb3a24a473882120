//! What is told of falls and hauls where: at the worst place, on the first leg, for everybody on the rope.

use schrund::{
    Planner,
    physics::assumed::Snow,
    plan::{
        fall::{HaulAnswer, Held, Reach},
        leg::Leg,
    },
    trip::job::{Brief, Burden},
};

use crate::fixture::{
    planned::setup,
    trip::{BARE, SNOW, Trip},
};

#[test]
fn of_legs_alike_the_first_has_the_advice_on_the_order() {
    let trip = Trip::straight(&[SNOW, SNOW]).party(&[100.0, 60.0, 75.0]);
    let plan = trip.ropes(&[60.0]).plan();
    let advised = |leg: &Leg| {
        let arrest = leg.teams.first()?.arrest.as_ref()?;
        arrest.order.as_ref().map(|_| leg.leg)
    };
    let legs: Vec<usize> = plan.legs.iter().filter_map(advised).collect();
    assert_eq!(legs, [2], "the first of them that is roped");
}

#[test]
fn snow_is_called_assumed_unless_the_leader_named_it() {
    let trip = Trip::straight(&[SNOW]).ropes(&[60.0]);
    let assumed = |trip: &Trip| setup(&trip.plan()).arrest.as_ref().map(|a| a.snow_assumed);
    assert_eq!(assumed(&trip), Some(true));
    assert_eq!(assumed(&trip.rules("snow = \"firm\"")), Some(false));
}

/// Gently down over snow and steeply down over a bare tongue, on one leg.
#[test]
fn the_worst_place_is_told_with_the_slopes_of_ground_like_it_alone() {
    let zones = [SNOW, BARE];
    let trip = Trip::straight(&zones).party(&[80.0; 3]).ropes(&[60.0]);
    let trip = trip.rules("[assume]\nleast_unroped_m = 500");
    let fall_m = |north: f64| 0.1 * north.min(800.0) + 0.4 * (north - 800.0).max(0.0);
    let plan = trip
        .clone()
        .heights(move |_, north| 3000.0 - fall_m(north))
        .plan();
    assert_eq!(plan.legs.iter().filter(|leg| leg.roped).count(), 1);
    let steep = setup(&plan).arrest.clone().unwrap();
    assert_eq!(steep.snow, Snow::Ice, "{steep:?}");
    assert!(steep.from_m > 900.0, "the tongue begins at 1 km: {steep:?}");
    // 0.4 in 1 is 21.8°, 0.1 in 1 5.7°.
    assert_eq!(steep.down_deg, [21.0, 22.0]);
    let even = trip.falling(0.1).plan();
    let even = setup(&even).arrest.clone().unwrap();
    let alike = even.runs.iter().find(|run| run.held == even.verdict);
    let first_m = alike.expect("the worst is one of them").from_m;
    assert_eq!(even.from_m, first_m, "of places alike the first: {even:?}");
}

#[test]
fn everybodys_haul_is_that_of_those_who_are_left_for_it() {
    let plan = Trip::straight(&[SNOW])
        .party(&[80.0; 4])
        .ropes(&[80.0])
        .plan();
    let haulers = |reach: &Reach| match reach.haul {
        Some(HaulAnswer::Best { haulers, .. } | HaulAnswer::TooShort { haulers, .. }) => haulers,
        _ => 0,
    };
    let haulers: Vec<usize> = setup(&plan).reach.iter().map(haulers).collect();
    assert_eq!(
        haulers,
        [3, 2, 2, 3],
        "of four, on the side with more of them"
    );
}

/// Who carries somebody falls with the weight of both, and no lighter fall is told in its stead.
#[test]
fn the_fall_of_who_carries_somebody_hurt_is_told_where_it_is_worse() {
    let job = Trip::straight(&[SNOW])
        .party(&[80.0; 3])
        .ropes(&[60.0])
        .job();
    let slide = |burden: Option<Burden>| {
        let planner = Planner::of(Brief {
            burden,
            ..job.case()
        })
        .unwrap();
        let plan = planner.plan().unwrap();
        let arrest = setup(&plan).arrest.clone().unwrap();
        (arrest.falls, arrest.verdict, arrest.slide_m)
    };
    let heavy = Burden {
        carried_by: 2,
        mass_kg: 70.0,
    };
    let (alone, carrying) = (slide(None), slide(Some(heavy)));
    assert_eq!(carrying.0, 2, "{carrying:?}");
    assert!(
        carrying.1 >= alone.1 && carrying.2[1] > alone.2[1],
        "{alone:?}, {carrying:?}"
    );
}

/// On soft snow 1.1 holders are enough with everything adverse (trade rules, section 13, derived), and two stand on either side.
#[test]
fn five_on_soft_snow_are_held_in_all_cases_everywhere() {
    let trip = Trip::straight(&[SNOW]).party(&[80.0; 5]).ropes(&[60.0]);
    let plan = trip.rules("snow = \"soft\"").plan();
    let arrest = setup(&plan).arrest.as_ref().unwrap();
    let told: Vec<_> = arrest
        .runs
        .iter()
        .map(|run| (run.held, run.in_centre, run.falls))
        .collect();
    assert_eq!(told, [(Held::All, true, None)]);
    assert_eq!(arrest.everybody, [Held::All; 5]);
    assert_eq!(arrest.depends_on, []);
}
