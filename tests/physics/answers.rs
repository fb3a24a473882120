//! The answer for a team and the assumptions it rests on.

use super::*;

#[test]
fn parameters_named_do_flip_the_answer() {
    let mut named_ran = 0;
    for snow in Snow::ALL {
        for people in 2..=4 {
            let team = Team {
                gap_m: 4.0,
                ..team(snow, people)
            };
            for faller in answer(&team)
                .fallers
                .iter()
                .filter(|f| f.alone && f.index == 0)
            {
                let HoldingAnswer::DependsOn(named) = &faller.verdict else {
                    continue;
                };
                assert!(!named.is_empty(), "{snow:?} {people}: nothing named");
                let toward = if faller.held_in_centre {
                    Corner::Adverse
                } else {
                    Corner::Favourable
                };
                for parameter in named {
                    let case = assumed().case(snow, false, |p| {
                        if p == *parameter {
                            toward
                        } else {
                            Corner::Central
                        }
                    });
                    let run = team.fall_of(0, &case).run().expect("inside bounds");
                    assert_ne!(
                        run.held, faller.held_in_centre,
                        "{snow:?} {people} {parameter:?}"
                    );
                    named_ran += 1;
                }
            }
        }
    }
    assert!(named_ran > 3, "only {named_ran} named");
}

#[test]
fn standing_over_the_same_gap_is_not_held_and_the_bridge_is_named() {
    let team = Team {
        gap_m: 16.0,
        ..team(Snow::Soft, 4)
    };
    let end = &answer(&team).fallers[0];
    assert!(
        matches!(&end.verdict, HoldingAnswer::DependsOn(p) if p.contains(&Parameter::BreakPoint)),
        "{end:?}"
    );
    close("share used at the far edge", end.slide_share.1, 1.0, 1e-12);
}

#[test]
fn the_best_order_is_one_of_the_team_and_none_is_better() {
    let team = Team {
        masses_kg: vec![100.0, 55.0, 75.0, 60.0],
        ..team(Snow::Settled, 4)
    };
    let advice = team
        .best_order(&assumed(), &mut Followed::default())
        .expect("inside bounds");
    let mut sorted = advice.order.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, [0, 1, 2, 3], "everybody once");
    assert!(advice.best <= advice.as_given, "{advice:?}");
    let swapped = Team {
        masses_kg: vec![55.0, 100.0, 60.0, 75.0],
        ..team.clone()
    };
    assert!(
        advice.best <= swapped.score(&assumed()).expect("inside bounds"),
        "{advice:?}"
    );
}

#[test]
fn equal_people_gain_nothing_by_changing_places() {
    let advice = team(Snow::Firm, 4)
        .best_order(&assumed(), &mut Followed::default())
        .expect("inside bounds");
    assert_eq!(
        (advice.order, advice.worth_it),
        (vec![0, 1, 2, 3], false),
        "order"
    );
}

#[test]
fn figures_out_of_bounds_are_refused_in_words() {
    let bad = [
        (
            Team {
                masses_kg: vec![80.0],
                ..team(Snow::Soft, 2)
            },
            "people on one rope 1 is outside 2 to 12",
        ),
        (
            Team {
                gap_m: f64::NAN,
                ..team(Snow::Soft, 2)
            },
            "gap width NaN m is outside 0 to 400 m",
        ),
        (
            Team {
                spacing_m: 0.0,
                ..team(Snow::Soft, 2)
            },
            "spacing 0 m is outside 1 to 200 m",
        ),
        (
            Team {
                rope_ea_n: -1.0,
                ..team(Snow::Soft, 2)
            },
            "rope modulus -1 N is outside 1000 to 1000000 N",
        ),
        (
            Team {
                masses_kg: vec![80.0, 0.0],
                ..team(Snow::Soft, 2)
            },
            "mass of a person with pack 0 kg is outside 20 to 250 kg",
        ),
    ];
    for (team, want) in bad {
        let refused = team.holding(&assumed()).map_err(|e| e.to_string());
        assert_eq!(refused, Err(want.to_owned()), "{team:?}");
    }
}

#[test]
fn every_figure_can_be_set_by_the_name_it_is_listed_under() {
    let mut changed = assumed();
    let names: Vec<(String, f64)> = changed.figures().map(|f| (f.name, f.value)).collect();
    assert!(names.len() >= 50, "only {}", names.len());
    for (name, value) in &names {
        changed.set(name, *value).expect("its own value");
    }
    assert!(
        changed.figures().all(|f| f.standing == "given"),
        "standing is told"
    );
    changed.set("delay_s", 0.0).expect("at once");
    assert_eq!(
        (changed.delay_s.adverse, changed.delay_s.favourable),
        (0.0, 0.0),
        "both ends"
    );
}

#[test]
fn a_figure_that_is_none_or_cannot_be_is_refused() {
    let mut changed = assumed();
    let says =
        |r: Result<(), schrund::fault::refusal::Refusal>| r.expect_err("let through").to_string();
    assert_eq!(
        says(changed.set("snow.slush.lip", 1.0)),
        "no assumption is called `snow.slush.lip`",
        "unknown"
    );
    assert_eq!(
        says(changed.set("snow.soft.lip.adverse", 0.5)),
        "snow.soft.lip.adverse: lip factor 0.5 is outside 1 to 20",
        "bound"
    );
    assert_eq!(changed, assumed(), "nothing changed");
    changed
        .set("slack_m.favourable", 3.0)
        .expect("within bounds");
    assert_eq!(
        says(changed.check()),
        "slack_m: adverse 1.5, central 2.25 and favourable 3 are out of order",
        "order"
    );
}

#[test]
fn a_middle_person_hangs_between_lips_one_gap_apart() {
    let team = team(Snow::Firm, 4);
    for corner in [Corner::Favourable, Corner::Central, Corner::Adverse] {
        let falls = falls(&(team.clone(), corner));
        for fall in &falls[1..3] {
            let across_m: f64 = fall.sides.iter().map(|s| s.beyond_m).sum();
            close("gap", across_m, team.gap_m, 1e-12);
        }
        for fall in [&falls[0], &falls[3]] {
            assert_eq!(fall.sides.len(), 1, "an end person has one side");
        }
    }
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(48))]

    #[test]
    fn whatever_is_within_bounds_gets_finite_answers_in_order(
        masses_kg in proptest::collection::vec(20.0_f64..250.0, 2..6),
        spacing_m in 1.0_f64..40.0,
        gap_m in 0.0_f64..60.0,
        slopes_deg in [-60.0_f64..60.0, -60.0..60.0],
        knots in proptest::option::of((0_u32..20, 0.0_f64..10.0, 0.0_f64..5.0)),
        kind in 0_usize..5,
        rope_ea_n in 1e3_f64..1e5,
    ) {
        let knots = knots.map(|(count_per_side, first_m, step_m)| BrakeKnots { count_per_side, first_m, step_m });
        let snow = Snow::ALL[kind];
        let [one_deg, other_deg] = slopes_deg;
        let down_deg = [one_deg.min(other_deg), one_deg.max(other_deg)];
        let team = Team { masses_kg, spacing_m, gap_m, knots, snow, on_skis: false, down_deg, rope_ea_n };
        let holding = answer(&team);
        assert_eq!(holding.fallers.len(), team.masses_kg.len(), "one line each");
        for (low, high) in [holding.slide_m, holding.peak_holder_force_n] {
            assert!(low.is_finite() && high.is_finite() && 0.0 <= low && low <= high, "{holding:?}");
        }
        assert!(holding.verdict != HoldingAnswer::DependsOn(vec![]), "named");
    }
}
