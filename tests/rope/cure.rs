//! What is tied or carried otherwise so that a rope holds.

use schrund::plan::{change::Change, cure::RopeCure, fact::Fact};

use crate::fixture::{
    planned::roped,
    trip::{SNOW, Trip},
};

const TIGHTER: Change = Change::TighterLayout {
    first_m: 2.0,
    step_m: 1.0,
};

/// What would make a rope hold a pair at 15 m, which takes 15 m of span, 2 m of tie-ins, six knots of 1.2 m and two coils of
/// 22.5 m: 69.2 m.
fn cure(rope_m: f64) -> Option<RopeCure> {
    cure_under("", rope_m)
}

fn cure_under(rules: &str, rope_m: f64) -> Option<RopeCure> {
    let plan = Trip::straight(&[SNOW])
        .rules(rules)
        .party(&[80.0; 2])
        .ropes(&[rope_m])
        .plan();
    let mut found = roped(&plan).findings.iter();
    let lacks = found.find_map(|found| match found.fact()? {
        Fact::NoRope { cure, .. } => Some(cure.clone()),
        _ => None,
    });
    lacks.expect("the rope is too short")
}

/// Butterflies take half of what bulky knots do; a sling of 2.4 m shortens each coil by as much; under the tighter layout, which asks
/// for 9 m, a pair at d takes d + 2 + 7.2 + 2 × 1.5 d.
#[test]
fn the_fewest_changes_that_a_rope_holds_are_the_cure() {
    let closer = |spacing_m: f64| vec![TIGHTER, Change::Closer { spacing_m }];
    for (rope_m, changes, needed_m) in [
        (66.0, vec![Change::Butterflies], 65.6),
        (65.0, vec![Change::LongSling { sling_m: 2.4 }], 64.4),
        (61.0, closer(12.5), 59.2),
        (50.0, closer(10.0), 49.2),
    ] {
        let cure = cure(rope_m).expect("one holds");
        assert_eq!(cure.changes, changes, "{rope_m}");
        assert!((cure.needed_m - needed_m).abs() < 1e-9, "{cure:?}");
    }
    assert_eq!(cure(30.0), None, "9 m with all three changes take 36.8 m");
}

/// With the first knot 15 m from each (ours) the layout asks for 30 m and leaves no room for a knot: 122 m of rope. Tied tighter the
/// pair takes as much as any other.
#[test]
fn a_tighter_layout_is_the_cure_where_the_planned_one_has_no_room_for_knots() {
    let far = |rope_m: f64| cure_under("[assume]\nknot_first_m = 15", rope_m);
    let tighter = far(70.0).expect("one holds");
    assert_eq!(tighter.changes, [TIGHTER]);
    assert!(
        (tighter.planned_spacing_m - 30.0).abs() < 1e-9,
        "{tighter:?}"
    );
    assert!(
        (tighter.needed_m - (14.5 + 2.0 + 7.2 + 3.0 * 14.5)).abs() < 1e-9,
        "{tighter:?}"
    );
    assert_eq!(
        far(50.0).expect("one holds").changes,
        cure(50.0).expect("one holds").changes
    );
}

/// A pair over gaps of 16 m walks 21 m apart and needs 93 m: 60 and 40 m joined hold the set-up, 56 and 36 m do not, so the 36 m are a
/// spare, long enough for a loop by itself, which takes once and a half the spacing and 2.5 m.
#[test]
fn a_rope_that_is_joined_to_that_of_the_team_is_no_spare_beside_it() {
    let told = |ropes: &[f64]| {
        let zone = r#"{"gap_m":16,"snow_depth_m":2}"#;
        let trip = Trip::straight(&[zone]).party(&[80.0; 2]);
        let plan = trip.ropes(ropes).plan();
        let (mut joined, mut spares) = (None, Vec::new());
        for fact in roped(&plan).findings.iter().filter_map(|f| f.fact()) {
            match fact {
                Fact::NoRope { cure, .. } => joined = cure.clone().and_then(|c| c.joined_to),
                Fact::NotReached { spare, .. } => spares.extend(spare.as_ref().map(|s| s.rope)),
                _ => {}
            }
        }
        (joined.map(|name| name.rope), spares)
    };
    assert_eq!(told(&[60.0, 40.0]), (Some(2), vec![]));
    assert_eq!(told(&[56.0, 36.0]), (None, vec![2, 2]));
    assert_eq!(told(&[56.0, 33.9]), (None, vec![]));
    // Of two pairs each joins one of the two that are left: neither is a spare to the other.
    let zone = r#"{"gap_m":5,"snow_depth_m":2}"#;
    let pairs = Trip::straight(&[zone]).party(&[80.0; 4]);
    let mut job = pairs.ropes(&[40.0, 30.0, 40.0, 30.0]).job();
    job.party.teams = vec![2, 2];
    let plan = schrund::plan(&job).expect("a plan");
    let spares: Vec<(bool, bool)> = plan
        .spares
        .iter()
        .map(|spare| (spare.joined_on.is_empty(), spare.rescue_on.is_empty()))
        .collect();
    assert_eq!(spares, [(false, true), (false, true)]);
}
