//! What is said of the ways to split the party and use the ropes.

use schrund::{
    plan::{
        change::Change,
        leg::Verdict,
        options::{Remark, Way},
    },
    practice::SOLD_LENGTHS_M,
    say::{self, voice::Voice},
    trip::party::RopeTeam,
    write::{Look, options},
};
use unicode_width::UnicodeWidthStr;

use super::weighed;
use crate::fixture::trip::{SNOW, Trip, rope};

fn sizes(way: &Way) -> Vec<usize> {
    way.teams.iter().map(|t| t.people).collect()
}

#[test]
fn one_of_four_and_two_of_two_are_both_shown() {
    let options = weighed(
        &Trip::straight(&[SNOW])
            .party(&[80.0; 4])
            .ropes(&[70.0, 70.0]),
    );
    let shown: Vec<Vec<usize>> = options.ways.iter().map(sizes).collect();
    assert!(
        shown.contains(&vec![4]) && shown.contains(&vec![2, 2]),
        "{shown:?}"
    );
    assert_eq!(options.remarks[0], Remark::OneAndTwo);
    let says = say::options::remark(options.remarks[0], Voice::default()).to_string();
    assert!(
        says.ends_with("both are taught, so both are shown"),
        "{says}"
    );
    let one_rope = weighed(&Trip::straight(&[SNOW]).party(&[80.0; 4]).ropes(&[60.0]));
    assert_eq!(one_rope.remarks[0], Remark::OnlyOne);
    let says = say::options::remark(one_rope.remarks[0], Voice::default()).to_string();
    assert!(
        says.ends_with("the ropes and limits leave no way with two here"),
        "{says}"
    );
}

#[test]
fn the_split_of_the_plan_stands_as_the_plan_has_it() {
    for (people, ropes) in [
        (3, vec![60.0]),
        (2, vec![65.0]),
        (7, vec![50.0, 42.5]),
        (3, vec![30.0]),
    ] {
        let made = Trip::straight(&[SNOW, "{\"gap_m\":12,\"snow_depth_m\":0.5}"])
            .party(&vec![80.0; people])
            .ropes(&ropes);
        let plan = made.plan();
        let planned = plan.verdict();
        let split: Vec<usize> = made.party.rope_teams().iter().map(RopeTeam::size).collect();
        let options = weighed(&made);
        let plain = options
            .ways
            .iter()
            .find(|w| sizes(w) == split && w.changes.is_empty());
        match plain {
            Some(way) => assert_eq!(way.verdict, planned, "{people} people on {ropes:?}"),
            None => assert_eq!(
                planned,
                Verdict::Outside,
                "{people} people on {ropes:?}: {:?}",
                options.ways
            ),
        }
    }
}

#[test]
fn without_ropes_the_lengths_sold_are_shown() {
    let options = weighed(&Trip::straight(&[SNOW]).party(&[80.0; 5]));
    assert!(
        options.remarks.contains(&Remark::NoRopeNamed),
        "{:?}",
        options.remarks
    );
    for team in options.ways.iter().flat_map(|w| &w.teams) {
        let sold = SOLD_LENGTHS_M
            .iter()
            .any(|m| (m - team.rope_m).abs() < 1e-9);
        let holds = team.rope_m + 1e-9 >= team.needed_m;
        assert!(sold && holds && team.rope.is_none(), "{team:?}");
    }
}

#[test]
fn another_rope_at_hand_never_makes_the_best_way_worse() {
    let mut made = Trip::straight(&[SNOW, "{\"gap_m\":11}"])
        .party(&[80.0, 95.0, 70.0, 80.0, 60.0, 85.0])
        .ropes(&[30.0]);
    let mut before = weighed(&made).verdict();
    for length_m in [40.0, 45.0, 60.0, 70.0] {
        made.ropes.push(rope(length_m));
        let after = weighed(&made).verdict();
        assert!(
            after <= before,
            "{after:?} with {length_m} m more, {before:?} without"
        );
        before = after;
    }
    assert_ne!(before, Verdict::Outside, "these ropes hold six people");
}

#[test]
fn a_butterfly_makes_a_rope_fit_and_is_said_to_bite_less() {
    // Two people at 15 m with six bulky knots take 69.2 m (trade rules, common practice); 66 m hold butterflies.
    let options = weighed(&Trip::straight(&[SNOW]).party(&[80.0, 80.0]).ropes(&[66.0]));
    assert!(
        options.ways.iter().all(|w| !w.changes.is_empty()),
        "it does not fit as it is"
    );
    assert!(
        options
            .ways
            .iter()
            .any(|w| w.changes == [Change::Butterflies]),
        "{:?}",
        options.ways.iter().map(|w| &w.changes).collect::<Vec<_>>()
    );
    let says = say::options::change(&Change::Butterflies, Voice::default()).to_string();
    assert_eq!(says, "butterflies for brake knots (they bite less)");
}

#[test]
fn the_table_fits_and_numbers_from_one() {
    let made = Trip::straight(&[SNOW, "{\"gap_m\":14}"])
        .party(&[80.0; 12])
        .ropes(&[60.0, 50.0, 30.0, 40.0, 60.0, 70.0, 30.0, 40.0]);
    let weighed = weighed(&made);
    assert_eq!(weighed.ways[0].way, 1);
    for width in [80, 100] {
        let text = options::table(
            &weighed,
            Look {
                width,
                ..Look::default()
            },
        );
        for line in text.lines() {
            assert!(line.width() <= width, "{} wide: {line}", line.width());
        }
    }
}

#[test]
fn a_way_without_rope_enough_never_stands_where_another_has_it() {
    // Climbing on firm snow trios hold no fall and pairs may; but of two ropes three pairs have one too few.
    let zone = r#"{"gap_m":4,"snow_depth_m":2}"#;
    let steep = Trip::straight(&[zone])
        .party(&[80.0; 6])
        .ropes(&[60.0, 60.0]);
    let steep = steep.rules("snow = \"firm\"").falling(-0.5);
    let ways = weighed(&steep).ways;
    assert!(
        !ways.is_empty() && ways.iter().all(|way| way.verdict == Verdict::Stop),
        "{ways:?}"
    );
    assert!(ways.iter().all(|way| way.short_m < 1e-9), "{ways:?}");
}

/// The ropes of a way that joins two, by number.
fn joined(way: &Way) -> Option<[usize; 2]> {
    way.changes.iter().find_map(|change| match change {
        Change::JoinedRopes { ropes, .. } => Some([ropes[0].rope, ropes[1].rope]),
        _ => None,
    })
}

#[test]
fn of_all_pairs_of_ropes_only_those_are_joined_that_no_other_beats() {
    let lengths = [34.0, 30.0, 32.0, 30.0, 31.0, 33.0];
    let made = |ropes: &[f64]| {
        let trip = Trip::straight(&["{\"gap_m\":9}"]).party(&[80.0; 3]);
        weighed(&trip.ropes(ropes))
    };
    let all = made(&lengths);
    let only_joined = |way: &Way| way.changes.len() == 1 && joined(way).is_some();
    let shown: Vec<&Way> = all.ways.iter().filter(|way| only_joined(way)).collect();
    // Each pair alone: for each verdict the lightest of them.
    let pairs = (0..6).flat_map(|a| (a + 1..6).map(move |b| [a, b]));
    let alone = pairs.flat_map(|pair| made(&pair.map(|i| lengths[i])).ways);
    let alone: Vec<Way> = alone.filter(only_joined).collect();
    let best = |verdict: Verdict| {
        let up_to = alone.iter().filter(|way| way.verdict <= verdict);
        up_to.map(|way| way.rope_mass_kg).reduce(f64::min)
    };
    for way in &shown {
        let best_kg = best(way.verdict).expect("a pair alone gives it");
        assert!(
            (way.rope_mass_kg - best_kg).abs() < 1e-9,
            "{way:?}, {best_kg} kg"
        );
    }
    assert!(!shown.is_empty(), "{:?}", all.ways);
    let best_verdict = alone.iter().map(|way| way.verdict).min();
    assert_eq!(shown.first().map(|way| way.verdict), best_verdict);
    assert!(shown.len() <= 2, "one for each verdict: {shown:?}");
    // Of ropes that are alike the first is taken.
    assert!(
        shown
            .iter()
            .all(|way| joined(way).is_some_and(|pair| !pair.contains(&4) || pair == [2, 4]))
    );
}

#[test]
fn sixty_people_may_choose_among_thirty_ropes() {
    let ropes: Vec<f64> = (25..55).map(f64::from).collect();
    let made = Trip::straight(&[SNOW]).party(&[80.0; 60]).ropes(&ropes);
    let options = weighed(&made);
    assert!(options.ways.len() <= 12, "{} ways", options.ways.len());
    assert!(
        options
            .ways
            .iter()
            .all(|way| way.verdict < Verdict::Outside)
    );
}
