//! Who has what on them: whole things, for the haul that the plan picked.

use schrund::{
    physics::haul::System,
    plan::{
        fall::HaulAnswer,
        gear::{GearItem, GearUse},
    },
};

use crate::fixture::trip::{BARE, SNOW, Trip};

#[test]
fn the_haul_is_that_of_the_plan_and_lies_at_both_ends() {
    for people in [2, 3, 4, 5, 7] {
        let plan = Trip::straight(&[SNOW, BARE])
            .people(people)
            .sixty_each()
            .plan();
        let of_haul = |row: &&schrund::plan::gear::GearRow| row.purpose == GearUse::HaulTurns;
        let setups = || plan.legs.iter().flat_map(|leg| &leg.teams);
        for row in plan.gear.iter().filter(of_haul) {
            let picked = setups().filter(|s| s.team == row.team).filter_map(|s| {
                match s.haul.as_ref()?.answer {
                    HaulAnswer::Best { system, .. } | HaulAnswer::TooShort { system, .. } => {
                        Some(system)
                    }
                    HaulAnswer::AnchorTooNear { .. } => None,
                }
            });
            let system = row.system.expect("of a haul");
            assert!(picked.clone().any(|p| p == system));
            assert!(
                picked.map(System::turns).max() == Some(row.count),
                "{row:?}"
            );
            let team = setups().find(|s| s.team == row.team).expect("a team");
            let ends = [team.persons.first(), team.persons.last()];
            assert!(
                ends.iter().flatten().any(|p| p.called == row.person),
                "{row:?}"
            );
        }
        let teams = setups().map(|s| s.team).max().unwrap_or(0);
        assert_eq!(
            plan.gear.iter().filter(of_haul).count(),
            2 * teams,
            "{people} people"
        );
    }
}

#[test]
fn anchors_go_by_the_ice_that_is_walked_on_the_rope() {
    let has = |zones: &[&str], item| {
        let plan = Trip::straight(zones).people(3).plan();
        let rows = plan.gear.iter().filter(|row| row.what == item);
        rows.map(|row| row.person.number).collect::<Vec<_>>()
    };
    assert_eq!(has(&[SNOW, BARE], GearItem::SnowAnchor), [1, 2, 3]);
    assert_eq!(has(&[SNOW, BARE], GearItem::IceScrew), [1, 2, 3]);
    assert!(has(&[SNOW], GearItem::IceScrew).is_empty());
    assert!(has(&[BARE], GearItem::SnowAnchor).is_empty());
    assert_eq!(has(&[BARE], GearItem::Crampons), [1, 2, 3]);
    assert!(has(&[SNOW], GearItem::Crampons).is_empty());
    // Bare ice is stood on where nobody is roped as well.
    let unroped = r#"{"gap_m":2,"surface":"bare","rope":"never"}"#;
    assert_eq!(has(&[SNOW, unroped], GearItem::Crampons), [1, 2, 3]);
    assert!(has(&[SNOW, unroped], GearItem::IceScrew).is_empty());
    assert_eq!(has(&[SNOW], GearItem::Probe), [1, 3], "either may go first");
    assert!(has(&[BARE], GearItem::Probe).is_empty());
    assert_eq!(has(&[BARE], GearItem::Headlamp), [1, 2, 3]);
}

#[test]
fn the_leader_says_how_many() {
    let trip = Trip::straight(&[SNOW]).people(3);
    let count = |trip: &Trip, item| {
        let gear = trip.plan().gear;
        let rows = gear
            .iter()
            .filter(|row| row.person.number == 2 && row.what == item);
        rows.map(|row| (row.count, row.standing.clone()))
            .collect::<Vec<_>>()
    };
    let practice = "common practice, no source".to_owned();
    assert_eq!(count(&trip, GearItem::PrusikCord), [(2, practice)]);
    let mine = trip.rules("[assume]\nkit_cords = 3\nkit_helmets = 0");
    assert_eq!(count(&mine, GearItem::PrusikCord)[0].0, 3);
    assert!(
        count(&mine, GearItem::Helmet).is_empty(),
        "what nobody wants is not listed"
    );
}
