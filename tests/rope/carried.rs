//! The rope as carried: coils, bag, marks, how deep loops and hauls reach; and that no two of them contradict each other.

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    plan::{
        Plan,
        change::Change,
        cure::RopeCure,
        fact::Fact,
        field::FieldLimit,
        finding::Finding,
        leg::{MarkKind, TeamSetup, Verdict},
    },
    practice::{Origin, Reserve},
};

use crate::fixture::{
    planned::{codes, roped, setup},
    trip::{SNOW, Trip},
};

fn three(rope_m: f64) -> Plan {
    Trip::straight(&[SNOW])
        .party(&[80.0; 3])
        .ropes(&[rope_m])
        .plan()
}

fn depths_m(setup: &TeamSetup) -> Vec<f64> {
    setup.reach.iter().map(|r| r.depth_m).collect()
}

#[test]
fn three_at_thirteen_metres_on_ropes_of_several_lengths() {
    // Worked by hand from the trade rules: 29 m without coils, half of the rest to each end; 2.5 m for hands and hitches.
    for (rope_m, coil_m, end_m, middle_m) in [
        (45.0, 8.0, 5.5, -7.5),
        (50.0, 10.5, 8.0, -5.0),
        (60.0, 15.5, 10.0, 0.0),
        (80.0, 25.5, 10.0, 10.0),
    ] {
        let plan = three(rope_m);
        let setup = setup(&plan);
        assert!((setup.spacing_m - 13.0).abs() < 1e-9 && (setup.coil_m - 6.5).abs() < 1e-9);
        assert!(
            (setup.coil_carried_m - coil_m).abs() < 1e-9,
            "{rope_m}: {}",
            setup.coil_carried_m
        );
        assert_eq!(depths_m(setup), [end_m, middle_m, end_m], "{rope_m}");
        let ties: Vec<f64> = setup.marks.iter().map(|m| m.at_m).collect();
        assert_eq!(
            ties,
            [coil_m, coil_m + 14.0, coil_m + 28.0, rope_m],
            "{rope_m}"
        );
        let told = codes(&roped(&plan).findings).contains(&"loop-ends-short-of-the-lip");
        assert_eq!(told, middle_m < 0.0, "{rope_m}");
    }
    let plan = three(40.0);
    assert_eq!(roped(&plan).verdict, Verdict::Outside, "2 m short");
    let spare_m = setup(&plan).rope.as_ref().unwrap().spare_m;
    assert!((spare_m + 2.0).abs() < 1e-9, "{spare_m}");
}

#[test]
fn who_must_untie_is_named_with_the_depth() {
    let plan = three(60.0);
    let untied: Vec<&[usize]> = setup(&plan)
        .reach
        .iter()
        .map(|r| r.needs_untied.as_slice())
        .collect();
    assert_eq!(untied, [&[3][..], &[], &[1]]);
}

/// What is told of the reserve of a pair with six knots at 15 m, which asks for 22.5 m in each coil: 69.2 m of rope.
fn reserve_told(reserve: Reserve, rope_m: f64, rules: &str) -> Option<(&'static str, f64)> {
    let trip = Trip::straight(&[SNOW]).party(&[80.0; 2]).ropes(&[rope_m]);
    let mut pair = trip.rules(rules);
    let choice = &mut pair.laid.rules.choices.reserve;
    choice.set(Some(reserve), Origin::Practice);
    let plan = pair.plan();
    let told = roped(&plan).findings.iter().find_map(|f| match f.fact()? {
        Fact::ReserveShort { short_m, .. } => Some((f.code(), *short_m)),
        Fact::NoReserve { short_m, .. } => Some((f.code(), *short_m)),
        _ => None,
    });
    told.map(|(code, short_m)| (code, (short_m * 1e6).round() / 1e6))
}

#[test]
fn a_reserve_that_knots_make_obligatory_is_told_where_it_is_short() {
    let told = reserve_told;
    assert_eq!(
        told(Reserve::Reach, 70.0, ""),
        None,
        "the reach factor sizes it"
    );
    // 66 m of rope leave 20.9 m for each coil, whatever the chest coils ask for.
    let outside = Some(("no-rope-for-the-reserve", 1.6));
    assert_eq!(
        told(Reserve::ChestCoils, 66.0, ""),
        outside,
        "69.2 m do not fit on 66 m"
    );
    assert_eq!(
        told(Reserve::ChestCoils, 70.0, ""),
        None,
        "what is left over lies in the coils"
    );
    let light = "[assume]\nchest_coils_2 = 12\nchest_coil_m = 1.7\ncoil_most_kg = 0.5";
    let look = Some(("reserve-left-short", 2.1));
    assert_eq!(
        told(Reserve::ChestCoils, 80.0, light),
        look,
        "the rest lies in the bag"
    );
}

#[test]
fn a_leader_who_asks_for_less_than_is_taught_is_told_what_is_missing() {
    let less = "[assume]\nreach_factor = 1\ncoil_most_kg = 0.5";
    let look = Some(("reserve-left-short", 7.5));
    assert_eq!(
        reserve_told(Reserve::Reach, 80.0, less),
        look,
        "15 m instead of 22.5 m"
    );
    let outside = Some(("no-rope-for-the-reserve", 4.6));
    assert_eq!(
        reserve_told(Reserve::Reach, 60.0, less.split("\ncoil").next().unwrap()),
        outside
    );
    let more = "[assume]\nobliged_reach_factor = 1\nreach_factor = 1";
    assert_eq!(
        reserve_told(Reserve::Reach, 60.0, more),
        None,
        "by their own word on both"
    );
}

/// What one set-up says of itself in several places, each against the others.
fn agrees(setup: &TeamSetup, rope_m: f64) -> Result<(), TestCaseError> {
    rope_is_where_it_is_said_to_be(setup, rope_m)?;
    loop_and_depth_agree(setup)?;
    hauls_and_depths_agree(setup)
}

fn rope_is_where_it_is_said_to_be(setup: &TeamSetup, rope_m: f64) -> Result<(), TestCaseError> {
    let surplus_m = 2.0 * (setup.coil_carried_m - setup.coil_m) + setup.bag_m;
    let spare_m = rope_m - setup.ledger.total_m;
    prop_assert!(
        spare_m < 0.0 || (surplus_m - spare_m).abs() < 1e-6,
        "{surplus_m} of {spare_m} m"
    );
    prop_assert!(setup.bag_m < 1e-9 || setup.coil_carried_m >= setup.coil_m - 1e-9);
    let at = |kind: MarkKind| {
        setup
            .marks
            .iter()
            .filter(move |m| m.kind == kind)
            .map(|m| m.at_m)
    };
    let first_m = at(MarkKind::TieIn).next().unwrap();
    prop_assert!(
        (first_m - setup.coil_carried_m).abs() < 1e-9,
        "tied in after the coil"
    );
    prop_assert!(setup.marks.windows(2).all(|w| w[0].at_m <= w[1].at_m));
    let end_m = at(MarkKind::End).next().unwrap();
    let too_short = setup.coil_carried_m < 1e-9;
    prop_assert!(
        too_short || (end_m - (rope_m - setup.bag_m)).abs() < 1e-6,
        "{end_m} of {rope_m}"
    );
    Ok(())
}

fn loop_and_depth_agree(setup: &TeamSetup) -> Result<(), TestCaseError> {
    let deepest_m = (setup.spacing_m - 3.0).max(0.0);
    for reach in &setup.reach {
        let on_loop = reach
            .hauls
            .iter()
            .find(|h| h.system.as_str() == "loop-at-lip");
        prop_assert_eq!(on_loop.is_some(), reach.depth_m > -1e-9, "{:?}", reach);
        let same = on_loop.is_none_or(|h| (h.to_m - reach.depth_m).abs() < 1e-9);
        prop_assert!(same, "{reach:?}");
        prop_assert!(reach.depth_m <= deepest_m + 1e-9, "{reach:?}");
        prop_assert_eq!(
            reach.whoever,
            (reach.depth_m - deepest_m).abs() < 1e-9,
            "{:?}",
            reach
        );
    }
    Ok(())
}

fn hauls_and_depths_agree(setup: &TeamSetup) -> Result<(), TestCaseError> {
    let Some(table) = &setup.haul else {
        return Ok(());
    };
    let (reach, hangs_m) = (&setup.reach[table.person - 1], table.lip_to_person_m);
    for system in &table.systems {
        let reaches = reach.hauls.iter().find(|h| h.system == system.system);
        let there = reaches.is_some_and(|h| h.from_m - 1e-6 <= hangs_m && hangs_m <= h.to_m + 1e-6);
        prop_assert_eq!(
            system.possible,
            there,
            "{:?} at {} m: {:?}",
            system,
            hangs_m,
            reaches
        );
    }
    Ok(())
}

/// The cures of the legs.
fn cures(plan: &Plan) -> Vec<RopeCure> {
    let cure = |found: &Finding| match found.fact()? {
        Fact::NoRope { cure, .. } => cure.clone(),
        _ => None,
    };
    let findings = plan.legs.iter().flat_map(|leg| &leg.findings);
    findings.filter_map(cure).collect()
}

/// The rows of the field table and the sentence above them.
fn table_agrees(plan: &Plan) -> Result<(), TestCaseError> {
    for row in &plan.field.rows {
        let of_row = |limit: &&FieldLimit| (limit.team, limit.ground) == (row.team, row.ground);
        let limit = plan.field.limits.iter().find(of_row).expect("one");
        let within = |to_m: Option<f64>| to_m.is_some_and(|to_m| row.gap_m <= to_m + 1e-9);
        prop_assert_eq!(
            row.fits == Some(true),
            within(limit.holds_to_gap_m),
            "{:?} {:?}",
            row,
            limit
        );
        let Some(tied) = &row.otherwise else {
            continue;
        };
        prop_assert!(row.fits == Some(false), "{row:?}");
        let way = &limit.otherwise[tied.way - 1];
        prop_assert!(within(Some(way.to_gap_m)), "{row:?} {limit:?}");
        // Who only walks closer does so by the rope, whatever the gap.
        prop_assert!(
            !way.changes.is_empty() || (tied.spacing_m - way.spacing_m).abs() < 1e-9,
            "{row:?} {limit:?}"
        );
    }
    for cure in cures(plan)
        .iter()
        .filter(|cure| matches!(cure.changes[..], [Change::Closer { .. }]))
    {
        let limit = &plan.field.limits[0];
        let closer = limit.otherwise.first();
        let closer =
            closer.expect("one cannot walk closer and have a rope too short for any set-up");
        prop_assert!(closer.changes.is_empty(), "closer is all: {closer:?}");
        prop_assert!(
            cure.spacing_m <= closer.spacing_m + 1e-9,
            "{cure:?} {limit:?}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(Config { cases: 150, failure_persistence: None, ..Config::default() })]
    #[test]
    fn no_two_statements_about_a_set_up_contradict_each_other(
        people in 2_usize..=5, rope_m in 20.0..120.0_f64, gap_m in 1.0..25.0_f64, snow_m in 0.0..2.0_f64,
        sling_m in prop::sample::select(vec![0.0, 2.4]),
    ) {
        let zone = format!("{{\"gap_m\":{gap_m:.2},\"snow_depth_m\":{snow_m:.2}}}");
        let made = Trip::straight(&[&zone]).party(&vec![80.0; people]).ropes(&[rope_m]);
        let plan = made.rules(&format!("[assume]\nsling_m = {sling_m:?}")).plan();
        agrees(setup(&plan), rope_m)?;
        table_agrees(&plan)?;
    }

    /// What the finding of a leg says of a rope that is too short, the field table says too.
    #[test]
    fn a_cure_and_the_field_table_say_the_same(people in 2_usize..=5, rope_m in 20.0..70.0_f64, gap in 0..9_usize) {
        let gap_m = [2, 4, 6, 8, 10, 15, 20, 25, 30][gap];
        let zone = format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":2}}");
        let plan = Trip::straight(&[&zone]).party(&vec![80.0; people]).ropes(&[rope_m]).plan();
        table_agrees(&plan)?;
        let row = plan.field.rows.iter().find(|row| row.gap_m == f64::from(gap_m)).expect("one of the widths");
        let tied = row.otherwise.as_ref();
        for cure in cures(&plan).iter().filter(|cure| cure.joined_to.is_none()) {
            let tied = tied.expect("a leg is tied otherwise over such gaps");
            let way = &plan.field.limits[0].otherwise[tied.way - 1];
            let changes = cure.changes.iter().filter(|change| !matches!(change, Change::Closer { .. }));
            // A cure is judged with its falls too, so it may be one that changes more.
            prop_assert!(changes.clone().count() >= way.changes.len(), "{cure:?} {way:?}");
            if changes.eq(&way.changes) {
                prop_assert!((tied.spacing_m - cure.spacing_m).abs() < 1e-9, "{cure:?} {tied:?}");
                prop_assert!((tied.rope_m - cure.needed_m).abs() < 1e-9, "{cure:?} {tied:?}");
            }
        }
    }

    #[test]
    fn up_to_the_limit_of_coils_a_longer_rope_never_reaches_less_deep(
        people in 2_usize..=5, rope_m in 20.0..110.0_f64, longer_m in 0.1..10.0_f64, gap_m in 1.0..20.0_f64,
    ) {
        let zone = format!("{{\"gap_m\":{gap_m:.2},\"snow_depth_m\":2}}");
        let made = Trip::straight(&[&zone]).party(&vec![80.0; people]);
        let depths = |rope_m: f64| depths_m(setup(&made.clone().ropes(&[rope_m]).plan()));
        let pairs = depths(rope_m).into_iter().zip(depths(rope_m + longer_m));
        for (shorter_m, longer_m) in pairs {
            prop_assert!(longer_m >= shorter_m - 1e-9, "{shorter_m} then {longer_m}");
        }
    }
}
