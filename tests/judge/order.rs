//! Another order is named as a cure where one was tried and is better, and nowhere else.

use schrund::{
    plan::{Plan, fall::OrderAdvice},
    say::{finding, voice::Voice},
};

use crate::fixture::{
    planned::{findings, setups},
    trip::Trip,
};

const ZONE: &str = r#"{"gap_m":6,"snow_depth_m":2}"#;

/// What is to be done about falls that are not held in the centre, or in no case.
fn hints(plan: &Plan) -> Vec<(&'static str, String)> {
    let falls = findings(plan).filter(|f| f.code().starts_with("fall-"));
    let hint = |f| finding::hint(f, Voice::default()).map(|hint| (f.code(), hint.to_string()));
    falls.filter_map(hint).collect()
}

fn advice(plan: &Plan) -> Vec<OrderAdvice> {
    let arrests = setups(plan).filter_map(|setup| setup.arrest.as_ref());
    arrests.filter_map(|arrest| arrest.order.clone()).collect()
}

fn trip(masses_kg: &[f64], share: f64, snow: &str) -> Plan {
    Trip::straight(&[ZONE])
        .party(masses_kg)
        .ropes(&[80.0])
        .falling(share)
        .rules(&format!("snow = \"{snow}\""))
        .plan()
}

/// "Another order" was said to be a cure though every order had been tried and none was better, and later one that was better
/// but left the alarm.
#[test]
fn the_cure_agrees_with_the_orders_that_were_tried() {
    let masses: [&[f64]; 5] = [
        &[80.0, 80.0, 80.0],
        &[110.0, 60.0, 70.0],
        &[60.0, 110.0, 70.0],
        &[60.0, 70.0, 110.0, 65.0],
        &[90.0, 60.0],
    ];
    let (mut named, mut silent) = (0, 0);
    for masses_kg in masses {
        for share in [0.0, 0.1, 0.3] {
            for snow in ["settled", "firm", "refrozen"] {
                let plan = trip(masses_kg, share, snow);
                let advice = advice(&plan);
                let better = advice.iter().find(|advice| advice.worth_it);
                for (code, hint) in hints(&plan) {
                    let left = |order: &&OrderAdvice| match code {
                        "fall-not-held-in-the-middle-case" => order.not_held.iter().sum(),
                        _ => order.not_held[0],
                    };
                    let better = better.filter(|order| left(order) == 0);
                    assert!(!hint.contains("another order"), "{hint}");
                    let numbers = |order: &OrderAdvice| {
                        let people = order.order.iter();
                        let said = people.map(|p| format!("person {}", p.position));
                        said.collect::<Vec<_>>().join(", ")
                    };
                    match better {
                        Some(order) => {
                            let want = format!("; else the order {}; ", numbers(order));
                            assert!(hint.contains(&want), "{want} should stand in {hint}");
                            named += 1;
                        }
                        None => {
                            assert!(!hint.contains("order"), "{hint}");
                            silent += 1;
                        }
                    }
                }
            }
        }
    }
    assert!(named > 0 && silent > 0, "{named} named, {silent} not");
}

/// Nobody is held on bare ice, whoever goes first: the orders were tried there and not over the hidden gaps.
#[test]
fn orders_are_tried_over_hidden_gaps_first() {
    let bare = r#"{"gap_m":6,"surface":"bare"}"#;
    let plan = Trip::straight(&[bare, ZONE])
        .party(&[110.0, 60.0, 70.0])
        .ropes(&[80.0])
        .falling(0.1)
        .plan();
    let advised = plan.legs.iter().filter(|leg| {
        let mut arrests = leg.teams.iter().filter_map(|team| team.arrest.as_ref());
        arrests.any(|arrest| arrest.order.is_some())
    });
    assert_eq!(advised.map(|leg| leg.leg).collect::<Vec<_>>(), [4]);
}
