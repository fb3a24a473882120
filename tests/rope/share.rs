//! Which of the ropes at hand is given to whom.

use schrund::{
    plan::why::CarryWhy,
    rope::share::{Fit, Shared, Supply},
    say::{finding::hint, voice::Voice},
};

use crate::fixture::{
    planned::{codes, roped},
    trip::{SNOW, Trip},
};

/// Numbers of the ropes carried, team by team.
fn carried(trip: &Trip) -> Vec<usize> {
    let carry = trip.plan().carry;
    carry
        .iter()
        .map(|c| c.rope.as_ref().unwrap().rope)
        .collect()
}

#[test]
fn the_lightest_rope_that_holds_the_set_up_is_carried() {
    // Three at 13 m take 42 m (see the findings).
    let mut trip = Trip::straight(&[SNOW]).ropes(&[80.0, 50.0, 60.0, 40.0]);
    assert_eq!(carried(&trip), [2], "50 m");
    trip.ropes[2].diameter_mm = Some(7.0);
    assert_eq!(carried(&trip), [3], "60 m of thin rope weigh less");
    // So thin it may be cord (our judgement): only where no other one does.
    trip.ropes[2].diameter_mm = Some(6.9);
    assert_eq!(carried(&trip), [2]);
    // Be it with little to spare.
    trip.ropes[0].length_m = 40.0;
    trip.ropes[1].length_m = 42.5;
    assert_eq!(carried(&trip), [2]);
    trip.ropes[1].length_m = 40.0;
    assert_eq!(carried(&trip), [3]);
}

#[test]
fn who_needs_most_gets_enough_and_nobody_more_than_enough() {
    // Seven are a team of four and one of three.
    let trip = Trip::straight(&[SNOW])
        .people(7)
        .ropes(&[80.0, 45.0, 70.0, 50.0]);
    let plan = trip.plan();
    for carry in &plan.carry {
        let given_m = carry.rope.as_ref().unwrap().length_m;
        assert!(given_m >= carry.needed_m, "{carry:?}");
        assert!(given_m < 70.0, "a shorter one holds: {carry:?}");
    }
    assert_eq!(plan.carry.len(), 2);
}

#[test]
fn where_ropes_do_not_hold_everything_the_fewest_legs_stay_outside_and_the_trade_is_told() {
    // With chest coils three ask for more rope than four where gaps are narrow (49.6 and 48.4 m), and for less where
    // they are wide (69.6 and 72.4 m): whoever carries the longer rope decides how many legs are outside.
    let (narrow, wide) = (SNOW, r#"{"gap_m":20,"snow_depth_m":2}"#);
    let trip = Trip::straight(&[narrow, wide, narrow])
        .people(7)
        .ropes(&[70.0, 49.0]);
    let trip = trip.rules(
        "reserve = \"chest-coils\"\n[assume]\nspacing_3_m = 8\nspacing_4_m = 8\n\
         chest_coils_3 = 9\nchest_coils_4 = 6\nchest_coil_m = 1.7",
    );
    let plan = trip.plan();
    assert_eq!(carried(&trip), [2, 1], "the three carry 70 m");
    let outside = |leg: &&schrund::plan::leg::Leg| codes(&leg.findings).contains(&"no-rope-fits");
    assert_eq!(
        plan.legs.iter().filter(outside).count(),
        1,
        "the wide gaps alone"
    );
    let why = CarryWhy::LeftToAnother {
        other_team: 2,
        graver_falls: false,
        legs_outside: 1,
        legs_exchanged: 3,
    };
    let told = plan.carry.iter().map(|carry| carry.why).collect::<Vec<_>>();
    assert_eq!(told, [why, CarryWhy::LongestSetUp]);
}

/// On soft snow falls of four are held, on bare ice those of nobody: one leg on it outside is graver than two on snow.
#[test]
fn a_leg_with_falls_that_nobody_holds_comes_before_two_on_which_all_are_held() {
    // With chest coils four at 12 m ask for 60.4 m and three at 8 m for 49.6 m; over the tongue, 8 and 9 m apart, for 48.4 and
    // 51.6 m.
    let tongue = r#"{"gap_m":10,"surface":"bare"}"#;
    let trip = Trip::straight(&[SNOW, SNOW, tongue])
        .people(7)
        .ropes(&[70.0, 50.0]);
    let rules = "snow = \"soft\"\nreserve = \"chest-coils\"\n[assume]\nspacing_3_m = 8\nspacing_4_m = 12\n\
         chest_coils_3 = 9\nchest_coils_4 = 6\nchest_coil_m = 1.7";
    assert_eq!(carried(&trip.rules(rules)), [2, 1]);
}

/// A pair with six knots at 15 m whose set asks for shorter coils than knots oblige to: 46.2 m hold the set-up, 69.2 m the
/// strand for a rescue too.
#[test]
fn a_rope_at_hand_that_keeps_the_leg_inside_is_carried() {
    let less = "[assume]\nreach_factor = 1";
    let pair = |ropes_m: &[f64]| {
        let trip = Trip::straight(&[SNOW]).party(&[80.0; 2]);
        trip.ropes(ropes_m).rules(less)
    };
    let short = codes(&roped(&pair(&[60.0]).plan()).findings).contains(&"no-rope-for-the-reserve");
    assert!(short, "60 m hold the set-up alone");
    let trip = pair(&[60.0, 80.0]);
    assert_eq!(carried(&trip), [2], "80 m");
    let plan = trip.plan();
    assert!(!codes(&roped(&plan).findings).contains(&"no-rope-for-the-reserve"));
    assert_eq!(carried(&pair(&[60.0, 62.0])), [1], "neither does");
}

/// Where a coil of more than 1.2 kg is a burden (ours), 80 m of thin rope give the strand and 80 m of thick rope do not.
#[test]
fn of_ropes_as_long_as_each_other_it_does_not_matter_which_is_named_first() {
    let given_mm = |diameters_mm: [f64; 3]| {
        let mut trip = Trip::straight(&[SNOW])
            .party(&[80.0; 2])
            .ropes(&[56.0, 80.0, 80.0])
            .rules("[assume]\nreach_factor = 1\ncoil_most_kg = 1.2");
        for (rope, diameter_mm) in trip.ropes.iter_mut().zip(diameters_mm) {
            rope.diameter_mm = Some(diameter_mm);
        }
        diameters_mm[carried(&trip)[0] - 1]
    };
    assert_eq!([[9.0, 11.0, 8.0], [9.0, 8.0, 11.0]].map(given_mm), [8.0; 2]);
}

/// Three at 13.5 m on 60 m: the loop for the one in the middle ends 1 m short of the lip, and on 80 m it does not.
#[test]
fn a_rope_left_at_home_that_reaches_everybody_is_named() {
    let zone = r#"{"gap_m":15,"snow_depth_m":2}"#;
    let told = |ropes_m: &[f64]| {
        let trip = Trip::straight(&[zone]).party(&[80.0; 3]).ropes(ropes_m);
        let plan = trip.plan();
        let mut found = roped(&plan).findings.iter();
        let short = found.find(|f| f.code() == "loop-ends-short-of-the-lip");
        hint(short.expect("1 m short"), Voice::default()).map(|hint| hint.to_string())
    };
    let named = told(&[60.0, 80.0]).expect("a rope is there");
    assert!(named.starts_with("tie into the 80 m rope there"), "{named}");
    let spare = told(&[60.0, 61.0]).expect("a rope is there");
    let want = "take the 61 m rope as a spare for that";
    assert!(spare.starts_with(want), "{spare}");
    let none = told(&[60.0, 0.5]).expect("something can be done");
    assert!(none.starts_with("plan another rescue"), "{none}");
}

#[test]
fn a_length_is_bought_where_none_is_at_hand_and_one_is_given() {
    let supply = |index, length_m| Supply {
        index,
        length_m,
        mass_kg: 0.0,
        cord: false,
    };
    let given = vec![supply(None, 60.0), supply(Some(0), 50.0), supply(None, 0.0)];
    let shared = Shared {
        fit: Fit::Short,
        given,
    };
    let bought_m = [0, 1, 2, 3, 4].map(|team| shared.bought_m(team));
    assert_eq!(bought_m, [None, Some(60.0), None, None, None]);
}
