//! What stops a plan, what asks for a look, and in which order it is said. Limits: trade rules, our judgement.

use schrund::plan::leg::Verdict;

use crate::fixture::{
    planned::{codes, roped},
    trip::{BARE, SNOW, Trip},
};

#[test]
fn hidden_gaps_unroped_stop_the_plan_but_for_skis_in_deep_snow_over_narrow_gaps() {
    let unroped = |travel: &str, gap_m: f64, snow: &str| {
        let zone = format!(r#"{{"gap_m":{gap_m},"rope":"never"{snow}}}"#);
        let plan = Trip::straight(&[&zone])
            .rules(&format!("travel = \"{travel}\""))
            .plan();
        (
            plan.verdict(),
            codes(&plan.legs[0].findings).contains(&"hidden-gaps-skied-unroped"),
        )
    };
    let (stop, look) = ((Verdict::Stop, false), (Verdict::Look, true));
    let deep = r#","snow_depth_m":1.6"#;
    assert_eq!(unroped("foot", 4.0, deep), stop);
    assert_eq!(unroped("snowshoe", 4.0, deep), stop);
    assert_eq!(unroped("ski", 5.0, deep), look);
    assert_eq!(unroped("ski", 5.1, deep), stop);
    assert_eq!(unroped("ski", 5.0, r#","snow_depth_m":1.5"#), stop);
    assert_eq!(unroped("ski", 5.0, ""), stop, "nobody said how much snow");
}

#[test]
fn bare_ice_is_an_alarm_only_where_it_is_steep() {
    const ROPED: &str = r#"{"gap_m":4,"surface":"bare","rope":"always"}"#;
    let on = |share: f64| {
        let plan = Trip::straight(&[ROPED])
            .ropes(&[80.0])
            .falling(share)
            .plan();
        let leg = roped(&plan);
        let told: Vec<&str> = codes(&leg.findings);
        let of_ice = told
            .into_iter()
            .find(|c| c.contains("ice") || c.contains("slip"));
        (leg.verdict, of_ice.map(str::to_owned))
    };
    let told = |code: &str| Some(code.to_owned());
    assert_eq!(
        on(0.0),
        (Verdict::Inside, None),
        "flat, roped by the leader's word"
    );
    assert_eq!(on(0.25), (Verdict::Inside, None), "14 degrees");
    assert_eq!(
        on(0.29),
        (Verdict::Look, told("one-slip-pulls-all")),
        "16 degrees"
    );
    assert_eq!(
        on(0.49),
        (Verdict::Stop, told("bare-ice-too-steep")),
        "26 degrees"
    );
}

#[test]
fn what_stops_is_said_before_what_is_outside_and_that_before_what_to_look_at() {
    let never = r#"{"gap_m":4,"rope":"never","name":"Hidden"}"#;
    let plan = Trip::straight(&[BARE, SNOW, never]).ropes(&[20.0]).plan();
    let all: Vec<_> = plan.legs.iter().map(|l| l.verdict).collect();
    assert_eq!(plan.verdict(), Verdict::Stop, "{all:?}");
    for leg in &plan.legs {
        let levels: Vec<_> = leg
            .findings
            .iter()
            .map(schrund::plan::finding::Finding::alarm)
            .collect();
        assert!(levels.is_sorted(), "{levels:?}");
    }
    assert_eq!(
        roped(&plan).verdict,
        Verdict::Outside,
        "a rope of 20 m holds nobody"
    );
}
