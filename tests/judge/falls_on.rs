//! What a frozen crust makes of a plan's falls is what a plan on a frozen crust finds of them.

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    fault::Level,
    physics::assumed::Snow,
    plan::{Plan, falls_on::IfFrozen, finding::Finding, leg::Leg},
    practice::Origin,
};

use crate::fixture::trip::{SNOW, Trip};

/// Findings that the fall model alone makes.
const OF_FALLS: [&str; 5] = [
    "fall-held-in-none",
    "fall-held-in-none-at-one-place",
    "fall-not-held-in-the-middle-case",
    "bare-ice-too-steep",
    "one-slip-pulls-all",
];

fn of_falls(leg: &Leg) -> Option<Level> {
    let falls = |finding: &&Finding| OF_FALLS.contains(&finding.code());
    let found = leg.findings.iter().filter(falls);
    found.map(Finding::level).min()
}

/// What the falls come to where a plan on frozen snow finds them; on bare ice the snow says nothing.
fn if_frozen(plan: &Plan, frozen: &Plan, bare: Option<usize>) -> IfFrozen {
    let mut found = IfFrozen::default();
    for (leg, on_frozen) in plan.legs.iter().zip(&frozen.legs) {
        let bare_only = leg.zones.iter().all(|zone| Some(*zone) == bare);
        match of_falls(on_frozen) {
            Some(Level::Stop) if !bare_only => found.stop.push(leg.leg),
            Some(Level::Look) if of_falls(leg).is_none() => found.look.push(leg.leg),
            _ => {}
        }
    }
    found
}

/// On bare ice the snow says nothing, and without a rope nobody is held.
#[test]
fn frozen_snow_is_told_of_only_where_a_team_is_roped_on_snow() {
    let told = |zone: &str, snow: &str| {
        let trip = Trip::straight(&[zone]).rules(&format!("snow = \"{snow}\""));
        trip.plan().falls_on
    };
    let snow = told(SNOW, "firm").expect("roped on snow");
    assert!(snow.if_frozen.is_some());
    let frozen = told(SNOW, "refrozen").expect("roped on snow");
    assert_eq!(frozen.if_frozen, None, "it is reckoned so");
    let bare = r#"{"gap_m":4,"surface":"bare","rope":"always"}"#;
    let never = r#"{"gap_m":4,"snow_depth_m":2,"rope":"never"}"#;
    assert_eq!([bare, never].map(|zone| told(zone, "firm")), [None, None]);
}

/// Five over 8 m on ground that falls by a tenth are not held in the middle case on frozen snow, and on firm snow neither.
#[test]
fn what_is_to_be_looked_at_on_the_snow_of_the_plan_is_not_told_of_frozen_snow() {
    let on = |snow: &str| {
        let trip = Trip::straight(&[r#"{"gap_m":8,"snow_depth_m":1}"#]).people(5);
        let plan = trip
            .falling(0.1)
            .rules(&format!("snow = \"{snow}\""))
            .plan();
        let level = of_falls(&plan.legs[1]);
        (
            level,
            plan.falls_on
                .expect("roped on snow")
                .if_frozen
                .expect("not frozen")
                .look,
        )
    };
    assert_eq!(on("firm"), (Some(Level::Look), vec![]));
    assert_eq!(on("settled"), (None, vec![2]));
}

proptest! {
    #![proptest_config(Config::with_cases(24))]
    #[test]
    fn it_is_what_a_plan_on_frozen_snow_finds(
        gaps_m in prop::collection::vec(0.0..20.0_f64, 1..4),
        bare in any::<bool>(),
        people in 2_usize..6,
        falls in -0.4..0.4_f64,
        snow in prop_oneof![Just("soft"), Just("settled"), Just("firm")],
    ) {
        let zones: Vec<String> = gaps_m.iter().enumerate().map(|(i, gap_m)| match bare && i == 0 {
            true => format!(r#"{{"gap_m":{gap_m},"surface":"bare"}}"#),
            false => format!(r#"{{"gap_m":{gap_m},"snow_depth_m":1}}"#),
        }).collect();
        let zones: Vec<&str> = zones.iter().map(String::as_str).collect();
        // No knots: what is asked for on one snow would be tied on the other.
        let rules = format!("snow = \"{snow}\"\nknots = \"never\"");
        let mut job = Trip::straight(&zones).people(people).rules(&rules).falling(falls).job();
        let plan = schrund::plan(&job).expect("it meets the ice");
        prop_assert!(job.rules.choices.set_word("snow", "refrozen", Origin::Flag));
        let frozen = schrund::plan(&job).expect("it meets the ice");
        let want = if_frozen(&plan, &frozen, bare.then_some(1));
        let told = plan.falls_on.map(|on| (on.reckoned.as_str(), on.assumed, on.if_frozen));
        let snow_met = !bare || gaps_m.len() > 1;
        prop_assert_eq!(told, snow_met.then_some((snow, false, Some(want))));
        let on_frozen = frozen.falls_on.map(|on| (on.reckoned, on.if_frozen));
        prop_assert_eq!(on_frozen, snow_met.then_some((Snow::Refrozen, None)));
    }
}
