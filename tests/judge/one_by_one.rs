//! Crossing one by one: said only where the rope allows it.

use schrund::plan::{cure::OneByOne, fact::Fact};

use crate::fixture::{planned::findings, trip::Trip};

/// What is told of a leg on which two people can stand over one gap; the gap along the route, and how it is crossed one by one.
fn told(trip: &Trip) -> (f64, Option<OneByOne>) {
    all_told(trip).into_iter().next().expect("two over one gap")
}

/// The same of every team.
fn all_told(trip: &Trip) -> Vec<(f64, Option<OneByOne>)> {
    let plan = trip.plan();
    let told = findings(&plan).filter_map(|found| match found.fact()? {
        Fact::TwoOverGap {
            effective_gap_m,
            one_by_one,
            ..
        } => Some((*effective_gap_m, one_by_one.clone())),
        _ => None,
    });
    told.collect()
}

fn three(gap_m: f64, rope_m: f64) -> Trip {
    let zone = format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":2}}");
    Trip::straight(&[&zone]).people(3).ropes(&[rope_m]).flat()
}

/// Three on a gap of 20 m walk 18 m apart. Alone on it each would have to be 20 m from the next: 2 × 20 + 3 m of tie-ins + two
/// coils of 10 m are 63 m. A loop reaches the one in the middle with coils of 20 + 2.5 m: 88 m.
#[test]
fn a_gap_is_crossed_one_by_one_where_the_rope_goes_that_far() {
    let (gap_m, long_enough) = told(&three(20.0, 88.0));
    let alone = long_enough.expect("88 m are enough");
    assert!(alone.spacing_m >= gap_m, "{alone:?}");
    assert!((alone.spacing_m - 20.0).abs() < 1e-9 && (alone.needed_m - 63.0).abs() < 1e-9);
    assert_eq!(told(&three(20.0, 87.9)).1, None, "a hand short of the lip");
    let two_teams = all_told(&three(20.0, 88.0).people(6));
    let offered = two_teams.iter().filter(|(_, alone)| alone.is_some());
    assert_eq!(
        (two_teams.len(), offered.count()),
        (2, 1),
        "one rope for two teams"
    );
    assert_eq!(
        told(&three(32.0, 150.0)).1,
        None,
        "wider than the greatest spacing"
    );
}

/// On bare ice no figure makes a plan so: nobody walks by it where all gaps are in sight.
#[test]
fn on_bare_ice_no_figure_is_named() {
    let figure = |surface: &str| {
        let zone = format!("{{\"gap_m\":12,{surface}}}");
        let trip = Trip::straight(&[&zone]).people(4).ropes(&[80.0]).flat();
        told(&trip).1.map(|alone| (alone.spacing_m, alone.figure))
    };
    assert_eq!(
        figure("\"snow_depth_m\":2"),
        Some((12.0, Some("spacing_4_m")))
    );
    assert_eq!(figure("\"surface\":\"bare\""), Some((12.0, None)));
}

/// Where the team runs along the crevasses no spacing keeps one alone on a gap.
#[test]
fn nobody_is_alone_on_a_gap_along_the_line() {
    let zone = r#"{"gap_m":8,"snow_depth_m":2,"strike_deg":0,"strike_uncertainty_deg":0}"#;
    let along = Trip::straight(&[zone]).people(3).ropes(&[150.0]).flat();
    assert_eq!(told(&along).1, None);
}

/// Four over 12.5 m walk 10 or 11 m apart. Alone on it they are 12.5 m apart: 3 × 12.5 + 4 m of tie-ins, and of the next length
/// sold, 50 m, enough is over for a loop to reach everybody.
#[test]
fn where_no_rope_was_named_one_that_is_sold_will_do() {
    let zone = r#"{"gap_m":12.5,"snow_depth_m":2}"#;
    let four = |ropes: &[f64]| Trip::straight(&[zone]).people(4).ropes(ropes).flat();
    let (_, alone) = told(&four(&[]));
    let alone = alone.expect("50 m are sold");
    assert!((alone.spacing_m - 12.5).abs() < 1e-9 && (alone.needed_m - 41.5).abs() < 1e-9);
    assert_eq!(told(&four(&[41.0])).1, None, "a rope at hand is what it is");
}

#[test]
fn whoever_is_not_over_the_gap_is_left_to_hold() {
    // Five walk 10 m apart over 12 m (0.8 of it would be 9.6 m): two can stand over it.
    let zone = r#"{"gap_m":12,"snow_depth_m":2}"#;
    let plan = Trip::straight(&[zone]).people(5).ropes(&[60.0]).plan();
    let told = findings(&plan).find_map(|found| match found.fact()? {
        Fact::TwoOverGap { over, left, .. } => Some((*over, *left)),
        _ => None,
    });
    assert_eq!(told, Some((2, 3)));
}
