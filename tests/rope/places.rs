//! What is told of falls and hauls where: at the worst place, on the first leg, for everybody on the rope.

use schrund::{
    Planner,
    physics::assumed::Snow,
    plan::{
        fall::{HaulAnswer, Held},
        leg::Leg,
        reach::Reach,
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

/// Nobody is held on bare ice, whatever somebody carries there.
#[test]
fn a_fall_that_is_as_bad_without_whom_somebody_carries_is_told_without() {
    let job = Trip::straight(&[BARE]).party(&[80.0; 2]).job();
    let told = |burden: Option<Burden>| {
        let brief = Brief {
            burden,
            ..job.case()
        };
        let plan = Planner::of(brief).unwrap().plan().unwrap();
        let arrest = setup(&plan).arrest.clone().unwrap();
        (arrest.falls, arrest.verdict, arrest.holder_force_kn)
    };
    let alone = told(None);
    assert_eq!(alone.1, Held::None);
    let carried_by = 3 - alone.0;
    let heavy = Burden {
        carried_by,
        mass_kg: 70.0,
    };
    assert_eq!(told(Some(heavy)), alone);
}

/// Up over a bare tongue and down over settled snow, on one leg: on the snow the first is lost and the last, who would be on a
/// climb, is not.
#[test]
fn nobodys_fall_is_told_with_slopes_of_other_ground_than_that_of_the_worst() {
    let ridge_m = 1000.0;
    let snow = r#"{"gap_m":5,"snow_depth_m":0.5}"#;
    let line: Vec<(f64, f64)> = (0..=90).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let over = |first: &str| {
        let trip = Trip::along(&line).party(&[80.0; 2]).ropes(&[70.0]);
        let (west, east) = (-800.0, 800.0);
        let trip = trip.zone((west, 800.0), (east, ridge_m + 100.0), first);
        let trip = trip.zone((west, ridge_m + 100.0), (east, 1300.0), snow);
        let ridge = move |_: f64, north: f64| 3000.0 - 0.5 * (north - ridge_m).abs();
        let plan = trip.rules("snow = \"settled\"").heights(ridge).plan();
        setup(&plan).arrest.clone().unwrap()
    };
    let (snow_alone, tongue) = (over(snow), over(BARE));
    assert_eq!(snow_alone.everybody, [Held::None; 2]);
    assert_eq!(tongue.snow, Snow::Settled, "hidden gaps come first");
    assert_eq!(tongue.everybody, [Held::None, Held::All]);
}

#[test]
fn on_a_rope_with_knots_nobody_is_hauled_on_the_loaded_strand() {
    let loaded = |people: usize| {
        let trip = Trip::straight(&[SNOW]).party(&vec![80.0; people]);
        let plan = trip.ropes(&[80.0]).plan();
        let setup = setup(&plan);
        let hauls = setup.reach.iter().flat_map(|reach| &reach.hauls);
        let loaded = hauls.filter(|haul| haul.system.needs_free_strand());
        (setup.knots.count, loaded.count())
    };
    assert_eq!(loaded(2), (6, 0));
    let (knots, loaded) = loaded(3);
    assert!(knots == 0 && loaded > 0, "{loaded}");
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
