//! The field table against the plan: the same gap, met square on the same snow, is set up the same.

use proptest::prelude::*;
use schrund::plan::{
    Plan,
    field::{FieldGround, FieldRow},
    leg::{Leg, TeamSetup},
};

use crate::fixture::trip::Trip;

/// Gaps of one width on three grounds, met square: deep snow, thin snow, bare ice.
fn over(gap_m: f64, people: usize, falling: f64) -> Plan {
    let ice = |more: &str| format!("{{\"gap_m\":{gap_m},{more}}}");
    let zones = [
        ice("\"snow_depth_m\":2"),
        ice("\"snow_depth_m\":0.2"),
        ice("\"surface\":\"bare\""),
    ];
    let zones: Vec<&str> = zones.iter().map(String::as_str).collect();
    let trip = Trip::straight(&zones).people(people).sixty_each();
    trip.falling(falling).plan()
}

fn row<'p>(plan: &'p Plan, leg: &Leg, team: &TeamSetup, gap_m: f64) -> &'p FieldRow {
    let limits = plan.field.limits.iter();
    let limit = limits
        .filter(|limit| limit.team == team.team && limit.legs.contains(&leg.leg))
        .collect::<Vec<_>>();
    assert_eq!(
        limit.len(),
        1,
        "leg {} is one ground for team {}",
        leg.leg,
        team.team
    );
    let mut rows = plan.field.rows.iter();
    rows.find(|row| {
        (row.team, row.ground) == (team.team, limit[0].ground)
            && row.gap_m.total_cmp(&gap_m).is_eq()
    })
    .expect("a row")
}

#[test]
fn a_leg_met_square_is_set_up_as_the_table_says() {
    let mut seen = std::collections::BTreeSet::new();
    for gap_m in [2.0, 4.0, 6.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0] {
        for people in [2, 3, 4, 5, 7] {
            for falling in [0.0, 0.5] {
                let plan = over(gap_m, people, falling);
                for leg in plan.legs.iter().filter(|leg| leg.roped) {
                    for team in &leg.teams {
                        let row = row(&plan, leg, team, gap_m);
                        seen.insert((row.ground, team.people));
                        same(row, leg, team);
                    }
                }
            }
        }
    }
    assert!(
        seen.contains(&(FieldGround::SnowWithKnots, 2)) && seen.contains(&(FieldGround::Snow, 2))
    );
    assert!(
        seen.contains(&(FieldGround::SnowWithKnots, 3)),
        "a steep descent"
    );
    assert!(
        seen.contains(&(FieldGround::Bare, 4)) && seen.len() >= 9,
        "{seen:?}"
    );
}

fn same(row: &FieldRow, leg: &Leg, team: &TeamSetup) {
    let none = leg.findings.iter().any(|found| found.code() == "no-setup");
    let Some(set_up) = &row.set_up else {
        assert!(none, "leg {} has a set-up for {} m", leg.leg, row.gap_m);
        return;
    };
    let rope = team.rope.as_ref().expect("a rope for each team");
    let close = |a: f64, b: f64| (a - b).abs() < 1e-9;
    assert!(
        close(set_up.spacing_m, team.spacing_m)
            && close(set_up.coil_m, team.coil_m)
            && close(set_up.rope_m, team.ledger.total_m)
            && set_up.knots == team.knots.count
            && row.fits == Some(rope.spare_m >= -1e-9),
        "leg {}, {} people, {row:?}",
        leg.leg,
        team.people
    );
}

#[test]
fn the_rope_holds_up_to_the_gap_that_the_legs_are_told() {
    for people in [2, 3, 4, 7] {
        let plan = over(6.0, people, 0.0);
        for limit in &plan.field.limits {
            let legs = plan.legs.iter().filter(|leg| limit.legs.contains(&leg.leg));
            for team in legs
                .flat_map(|leg| &leg.teams)
                .filter(|t| t.team == limit.team)
            {
                assert_eq!(limit.holds_to_gap_m, team.covers_gap_m);
            }
        }
    }
}

#[test]
fn without_a_roped_leg_snow_of_unknown_depth_is_meant() {
    let plan = Trip::straight(&[r#"{"gap_m":4,"rope":"never"}"#])
        .people(2)
        .ropes(&[80.0])
        .plan();
    let [limit] = &plan.field.limits[..] else {
        panic!("{:?}", plan.field.limits)
    };
    assert!(limit.legs.is_empty() && plan.gear.is_empty());
    assert_eq!(
        limit.ground,
        FieldGround::SnowWithKnots,
        "a pair ties its layout"
    );
    let nothing = Trip::straight(&[r#"{"gap_m":4,"rope":"never"}"#])
        .people(2)
        .plan();
    assert_eq!(
        nothing.field.limits[0].length_m, None,
        "nobody said which rope, and none is carried"
    );
    assert!(nothing.field.rows.iter().all(|row| row.fits.is_none()));
}

#[test]
fn angles_are_counted_as_on_the_legs() {
    let plan = over(4.0, 3, 0.0);
    let widths: Vec<f64> = plan.field.askew.iter().map(|askew| askew.widths).collect();
    // Trade rules, section 4: 1 / sin 45° and 1 / sin 30°; flatter is not in file.
    assert!((widths[0] - 2_f64.sqrt()).abs() < 1e-9 && (widths[1] - 2.0).abs() < 1e-9);
    let early = Trip::straight(&[r#"{"gap_m":4}"#])
        .rules("[assume]\nalong_deg = 50")
        .plan();
    assert!(
        early.field.askew.iter().all(|askew| askew.along),
        "{:?}",
        early.field.askew
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn a_wider_gap_never_needs_less(
        masses in prop::collection::vec(50.0..120.0_f64, 2..9), metres in 20.0..90.0_f64, knots in 0..3_usize,
        falling in 0.0..0.6_f64, set in 0..4_usize,
    ) {
        let word = ["auto", "always", "never"][knots];
        let share = [0.7, 0.9, 1.0, 1.2][set];
        let rules = format!("knots = \"{word}\"\n[assume]\ngap_share_three = {share}");
        let zones = [r#"{"gap_m":9,"snow_depth_m":0.6}"#, r#"{"gap_m":3,"surface":"bare"}"#];
        let trip = Trip::straight(&zones).party(&masses).ropes(&[metres, 60.0]).falling(falling).rules(&rules);
        let field = trip.plan().field;
        for pair in field.rows.windows(2) {
            let [a, b] = pair else { unreachable!() };
            if (a.team, a.ground) != (b.team, b.ground) {
                continue;
            }
            prop_assert!(a.need_m <= b.need_m && (a.fits == Some(true) || b.fits != Some(true)), "{a:?} {b:?}");
            prop_assert!(a.set_up.is_some() || b.set_up.is_none(), "{a:?} {b:?}");
            if let (Some(a), Some(b)) = (&a.set_up, &b.set_up) {
                prop_assert!(a.spacing_m <= b.spacing_m && a.knots <= b.knots, "{a:?} {b:?}");
                prop_assert!(a.rope_m <= b.rope_m + 1e-9 && a.coil_m <= b.coil_m + 1e-9, "{a:?} {b:?}");
            }
        }
        for row in &field.rows {
            let limit = field.limits.iter().find(|l| (l.team, l.ground) == (row.team, row.ground)).expect("one");
            let within = limit.holds_to_gap_m.is_some_and(|gap_m| row.gap_m <= gap_m + 1e-9);
            prop_assert_eq!(row.fits == Some(true), within, "{:?} {:?}", row, limit);
        }
    }
}
