//! Figures in print, as excerpted, each with its source, against what comes out of the rules.

use schrund::{
    legs::{spacing, worst::Meeting},
    physics::gear::Gear,
    plan::{
        leg::{Bite, KnotSet},
        why::KnotsWhy,
    },
    practice::{Origin, Rule, Rules, set::Source},
    rope::{ledger, reserve},
};

use crate::fixture::close;

/// International foot, metres. From memory: exact by definition since 1959.
const FOOT_M: f64 = 0.3048;

fn rules(set: &str) -> Rules {
    Rules::with_practice(&Source::Named(set)).expect("an embedded set")
}

/// The spacing where the gaps ask for nothing.
fn base_m(set: &str, people: usize) -> f64 {
    spacing::base_m(people, false, &rules(set))
}

fn knots(each_end: usize, rope_each_m: f64) -> KnotSet {
    KnotSet {
        count: 2 * each_end,
        each_end,
        first_m: 3.0,
        step_m: 2.0,
        rope_each_m,
        bite: Bite::Yes,
        why: KnotsWhy::WouldNotBite,
    }
}

#[test]
fn ten_less_n_arm_spans() {
    // Common practice, no source: 14.4, 12.6, 10.8, 9.0 m for two to five.
    for (people, want_m) in [(2, 14.4), (3, 12.6), (4, 10.8), (5, 9.0)] {
        close(
            &format!("{people} people"),
            base_m("arm-span", people),
            want_m,
            1e-9,
        );
    }
}

#[test]
fn the_constant_set_lies_in_both_printed_ranges() {
    // [usap17], as excerpted: 12.2–13.7 m. [foh], as excerpted: 40–50 ft, 12.2–15.2 m.
    for people in 2..=5 {
        let spacing_m = base_m("constant", people);
        assert!(
            (12.2..=13.7 + 1e-9).contains(&spacing_m),
            "{people} people: {spacing_m} m, usap17"
        );
        let feet = spacing_m / FOOT_M;
        assert!(
            (40.0..=50.0).contains(&feet),
            "{people} people: {feet} ft, foh"
        );
    }
}

#[test]
fn three_go_on_a_hundred_and_twenty_feet_and_four_on_a_hundred_and_fifty() {
    // [foh], as excerpted: 3 on 120 ft, 4 on 150 ft, 40–50 ft between people. [usap17]: 150 ft ropes.
    // Spans alone, as the source counts; at the closer end both fit, at the wider end only four no longer do.
    for (people, rope_ft) in [(3_u8, 120.0), (4, 150.0)] {
        let spans_m = reserve::spans_m(usize::from(people - 1), 40.0 * FOOT_M);
        assert!(
            spans_m <= rope_ft * FOOT_M,
            "{people} people at 40 ft: {spans_m} m"
        );
    }
    let rules = rules("constant");
    let four = ledger::ledger(4, base_m("constant", 4), &knots(0, 0.0), &rules);
    close(
        "four at 13.7 m need no coil: twice the spacing lies behind",
        four.coils_m,
        0.0,
        1e-9,
    );
    assert!(four.total_m <= 150.0 * FOOT_M, "{four:?} on 150 ft");
}

#[test]
fn rescue_rope_reaches_at_least_twice_from_anchor_to_victim() {
    // [foh], as excerpted: at least twice the distance between anchor and victim; all of the spacing may hang.
    let rules = rules("constant");
    for spacing_m in [12.2, 13.7] {
        assert!(
            reserve::loop_m(spacing_m, &rules) >= 2.0 * spacing_m - 1e-9,
            "{spacing_m} m"
        );
    }
}

#[test]
fn chest_coils_on_fifty_metres() {
    // [trekmountain], as excerpted: 50 m rope, 8 m gaps, 12/9/6 coils for 2/3/4.
    let rules = rules("club-coils");
    for (people, coils) in [(2, 12.0), (3, 9.0), (4, 6.0)] {
        close("coils", rules[Rule::chest_coils(people)], coils, 1e-9);
        close("gap", base_m("club-coils", people), 8.0, 1e-9);
        let total_m = ledger::ledger(people, 8.0, &knots(0, 0.0), &rules).total_m;
        assert!(total_m <= 50.0 + 1e-9, "{people} people take {total_m} m");
    }
}

#[test]
fn the_ledger_of_a_hundred_and_sixty_five_feet() {
    // [aai2006], as excerpted: 165 ft, three people 30–40 ft apart, 10–15 ft in three knots (their tie-ins),
    // 80–85 ft left for rescue.
    let mut rules = rules("short-alpine");
    let mut left_ft = Vec::new();
    for tie_ft in [10.0, 15.0] {
        let tie_in_m = tie_ft / 3.0 * FOOT_M;
        rules
            .set(Rule::TieInM, tie_in_m, Origin::Trip)
            .expect("1.0 to 1.5 m each");
        for spacing_ft in [30.0, 40.0] {
            let lines = ledger::ledger(3, spacing_ft * FOOT_M, &knots(0, 0.0), &rules);
            left_ft.push(165.0 - (lines.spans_m + lines.tie_ins_m) / FOOT_M);
        }
    }
    let (least, most) = left_ft
        .iter()
        .fold((f64::MAX, f64::MIN), |(a, b), &x| (a.min(x), b.max(x)));
    assert!(least <= 80.0 && 85.0 <= most, "left: {least} to {most} ft");
}

#[test]
fn tie_ins_lie_in_the_printed_range() {
    // [aai2006], as excerpted: three tie-ins take 10–15 ft.
    let three_ft = 3.0 * rules("arm-span")[Rule::TieInM] / FOOT_M;
    // The default is the lower end rounded to 1.0 m: 9.84 ft.
    assert!((9.8..=15.0).contains(&three_ft), "{three_ft} ft");
}

#[test]
fn fifteen_metres_for_two() {
    // [cicerone], as excerpted: 15 m.
    close("two people", base_m("short-alpine", 2), 15.0, 1e-9);
}

#[test]
fn three_at_ten_metres_or_more_keep_ten_metres_spare_at_each_end() {
    // [alpin], as excerpted: three people on a half rope, at least 10 m gaps and at least 10 m spare at each end.
    // With the handbook's reach [foh] a 50 m rope, less 2 × 10 m and the tie-ins, is the printed method.
    let mut rules = rules("constant");
    rules
        .set(Rule::Spacing3M, 10.0, Origin::Trip)
        .expect("10 m");
    assert!(
        reserve::coil_m(3, 10.0, &rules) >= 10.0 - 1e-9,
        "κ = 2: d at each end"
    );
    let total_m = ledger::ledger(3, 10.0, &knots(0, 0.0), &rules).total_m;
    assert!(total_m <= 50.0, "{total_m} m");
}

#[test]
fn the_worked_ledgers_and_the_way_over_wide_gaps() {
    // Common practice, no source: four people over gaps of 25 m walk about 20 m apart, 60 m of rope in the spans.
    let rules = rules("short-alpine");
    let meet = |_: f64| Meeting {
        effective_gap_m: 25.0,
        factor: 1.0,
        greatest_factor: 1.0,
        zone: Some(0),
        along: None,
    };
    let four = spacing::choose(4, spacing::base_m(4, false, &rules), &rules, &meet);
    close("spacing of four", four.spacing_m, 20.0, 1e-9);
    let lines = ledger::ledger(4, four.spacing_m, &knots(0, 1.2), &rules);
    close("spans", lines.spans_m, 60.0, 1e-9);
    close(
        "behind a faller",
        reserve::free(4, 20.0, 0.0)[0].free_m,
        40.0,
        1e-9,
    );
    close("needed", reserve::loop_m(20.0, &rules), 30.0, 1e-9);
}

#[test]
fn ropes_and_cords_as_the_standards_have_them() {
    let gear = Gear::built_in().expect("data/gear.toml");
    // [EN 892], as quoted in the Alberta OHS Code Explanation Guide, 2009: static elongation, peak force, mass, factor.
    let ropes = [
        (&gear.rope.single, 0.10, 12_000.0, 80.0),
        (&gear.rope.half, 0.12, 8_000.0, 55.0),
        (&gear.rope.twin, 0.10, 12_000.0, 80.0),
    ];
    for (rope, elongation, force_n, mass_kg) in ropes {
        close(
            "static elongation",
            rope.static_elongation,
            elongation,
            1e-12,
        );
        close("peak force", rope.peak_force_n, force_n, 1e-9);
        close("mass", rope.test_mass_kg, mass_kg, 1e-9);
        close("fall factor", rope.fall_factor, 1.77, 1e-12);
    }
    // The usual rope stays within the single rope's limits.
    assert!(gear.rope.usual.peak_force_n <= gear.rope.single.peak_force_n);
    assert!(gear.rope.usual.static_elongation <= gear.rope.single.static_elongation);
    // [EN 564], as excerpted: 4 to 8 mm.
    for (mm, kn) in [(4.0, 3.2), (5.0, 5.0), (6.0, 7.2), (7.0, 9.8), (8.0, 12.8)] {
        close(
            &format!("cord of {mm} mm"),
            gear.cord.strength_n(mm),
            1000.0 * kn,
            1e-6,
        );
        let listed = gear
            .cord
            .strength
            .iter()
            .find(|c| (c.diameter_mm - mm).abs() < 1e-9);
        close(
            "as listed",
            listed.expect("listed").force_n,
            1000.0 * kn,
            1e-9,
        );
    }
}
