//! What is found of one of several teams: which team it is of, and what ropes nobody carries could do for it.

use schrund::plan::{fact::Fact, finding::At};

use crate::fixture::{
    planned::{findings, roped},
    trip::Trip,
};

/// Falls and running along crevasses are told at their own places, and name the team there too.
#[test]
fn what_is_found_at_one_place_of_one_of_several_teams_names_the_team() {
    let zone = r#"{"gap_m":8,"snow_depth_m":2,"strike_deg":0,"strike_uncertainty_deg":0}"#;
    let teams = |people: usize, code: &str| {
        let trip = Trip::straight(&[zone]).people(people).sixty_each();
        let plan = trip.rules("snow = \"refrozen\"").plan();
        let told = roped(&plan)
            .findings
            .iter()
            .filter(|f| f.code().starts_with(code));
        let teams = told.map(|found| match &found.at {
            At::Leg(place) => place.team,
            at => panic!("{at:?}"),
        });
        let mut teams: Vec<Option<usize>> = teams.collect();
        teams.sort_unstable();
        teams
    };
    for code in ["fall-", "along-the-crevasses"] {
        assert_eq!(teams(6, code), [Some(1), Some(2)], "{code}");
        assert_eq!(teams(3, code), [None], "one alone is not named: {code}");
    }
}

/// What could be carried instead, or beside it, by the number of the rope; of the first whom no loop reaches.
fn left(trip: &Trip) -> (Option<usize>, Option<usize>) {
    let plan = trip.plan();
    let told = findings(&plan).find_map(|found| match found.fact()? {
        Fact::NotReached { longer, spare, .. } => Some((longer.clone(), spare.clone())),
        _ => None,
    });
    let (longer, spare) = told.expect("the one in the middle is beyond every loop");
    (longer.map(|rope| rope.rope), spare.map(|rope| rope.rope))
}

/// Three at 13 m take 42 m; on 62 m a loop reaches the one in the middle a metre below the lip. On 44 m it ends 8 m short.
#[test]
fn a_longer_rope_that_nobody_carries_is_named_where_a_loop_on_it_reaches() {
    let trip = |ropes: &[f64]| {
        let zone = r#"{"gap_m":4,"snow_depth_m":2}"#;
        Trip::straight(&[zone]).people(3).ropes(ropes)
    };
    assert_eq!(
        left(&trip(&[44.0, 70.0, 62.0])),
        (Some(3), Some(3)),
        "the lightest"
    );
    assert_eq!(left(&trip(&[44.0, 61.0])), (None, Some(2)), "half a metre");
    // A loop by itself goes from an anchor half way to the lip down as far and back, and takes 2.5 m for hands and hitches.
    assert_eq!(left(&trip(&[44.0, 1.5 * 13.0 + 2.5])), (None, Some(2)));
    assert_eq!(left(&trip(&[44.0, 21.9])), (None, None));
}
