//! What goes into the packs: ropes that nobody is tied to, and a set-up that no rope is long enough for.

use crate::fixture::{
    planned::{Planned, setup},
    trip::{NORTHWARD, SNOW, Trip},
};

/// A gap that three need 48 m for, and behind it one for which they carry short coils.
const TWO: [&str; 2] = [
    r#"{"gap_m":16.6,"snow_depth_m":2}"#,
    r#"{"gap_m":4,"snow_depth_m":2}"#,
];

fn of(ropes: &[f64]) -> Trip {
    Trip::straight(&TWO).people(3).ropes(ropes)
}

/// What is told of the ropes that nobody is tied to.
fn told(planned: &Planned) -> Vec<String> {
    let text = planned.written("text");
    let lines = text.lines().filter(|line| {
        line.starts_with("Carry ") && line.contains(" too") || line.starts_with("No set-up")
    });
    lines.map(str::to_owned).collect()
}

/// The first page, its lines not broken.
fn on_one_line(planned: Planned) -> String {
    let first = planned.first_page().written("table");
    first.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn left_over(ropes: &[f64]) -> Vec<String> {
    told(&of(ropes).planned())
}

#[test]
fn each_rope_that_a_finding_asks_for_is_carried() {
    // On legs 2 and 4 a loop ends short of the lip. One by itself takes once and a half the spacing and 2.5 m: on leg 2, at 15 m,
    // 25 m of rope, on leg 4, at 13 m, 22 m.
    let joined = |length: &str| format!("Carry the {length} rope too: joined on leg 2");
    // It is for the one in the middle.
    let rescue = |length: &str, legs: &str| {
        let by = "with person 1 or person 3";
        format!("Carry the {length} rope too, {by}: rescue on {legs}")
    };
    let stays = |length: &str| format!("No set-up needs the {length} rope");
    assert_eq!(
        left_over(&[42.0, 8.0, 30.0]),
        [joined("8 m"), rescue("30 m", "legs 2, 4")]
    );
    assert_eq!(
        left_over(&[42.0, 12.0, 12.0]),
        [joined("12 m"), stays("12 m")]
    );
    // On leg 2 of 60 m a loop ends 10 m short: of two ropes the lighter one is named, and one on which a loop reaches before both.
    assert_eq!(
        left_over(&[60.0, 40.0, 30.0]),
        [rescue("30 m", "legs 2, 4"), stays("40 m")]
    );
    let mut light = of(&[60.0, 40.0, 30.0]).job();
    light.ropes[1].diameter_mm = Some(6.0);
    light.ropes[2].diameter_mm = Some(10.5);
    assert_eq!(
        told(&Planned::of(light)),
        [rescue("40 m", "legs 2, 4"), stays("30 m")]
    );
    let longer = of(&[60.0, 80.0, 30.0]).planned();
    let instead = "Carry the 80 m rope instead, its loops reach below the lip; or too, with person 1 or person 3: rescue on legs 2, 4";
    let says = told(&longer).join(" ");
    assert_eq!(says, format!("{instead} {}", stays("30 m")));
    // Where it is no longer than the rope of the team it is none in place of it.
    assert!(!left_over(&[80.0, 80.0]).join(" ").contains("instead"));
}

/// Who falls takes along what they carry: of a pair for whom no loop reaches, nobody can carry the spare for both.
#[test]
fn whoever_a_rope_is_for_does_not_carry_it() {
    let trip = Trip::straight(&TWO[1..]).people(2).ropes(&[60.0, 40.0]);
    let trip = trip.rules("[assume]\nreach_factor = 1.0\ncoil_most_m = 14");
    let planned = trip.planned();
    let spare = &planned.plan.spares[0];
    let of: Vec<usize> = spare.rescue_of.iter().map(|called| called.number).collect();
    assert_eq!((&of[..], &spare.carried_by[..]), (&[1, 2][..], &[][..]));
    let told = told(&planned).join(" ");
    assert!(
        told.ends_with(
            "too: rescue on leg 2; no help unless whoever carries it is left on the side that hauls"
        ),
        "{told}"
    );
}

/// Of four the second is hauled out from behind and the third from ahead: one rope does not help both, and who is not helped stays
/// uncovered.
#[test]
fn nobody_carries_a_spare_who_is_left_alone_across_the_gap() {
    let planned =
        |zone: &str, ropes: &[f64]| Trip::straight(&[zone]).people(4).ropes(ropes).planned();
    let of = planned(TWO[1], &[40.0, 40.0]);
    let spare = &of.plan.spares[0];
    let numbers = |people: &[schrund::trip::party::Called]| -> Vec<usize> {
        people.iter().map(|called| called.number).collect()
    };
    assert_eq!(
        [&spare.rescue_of, &spare.carried_by].map(|p| numbers(p)),
        [vec![2, 3], vec![]]
    );
    let first = on_one_line(of);
    for want in [
        "is left on the side that hauls",
        "a loop down to person 2, person 3 (leg 2)",
    ] {
        assert!(first.contains(want), "{want}: {first}");
    }
}

/// Two teams of three in which no loop reaches the one in the middle: each has a spare of its own, be it named by a finding or not.
#[test]
fn one_rope_is_no_spare_of_two_teams() {
    for own_m in [50.0, 60.0] {
        for (spares, carried) in [(&[30.0][..], 1), (&[30.0, 31.0][..], 2)] {
            let ropes = [&[own_m, own_m], spares].concat();
            let mut job = Trip::straight(&TWO[1..]).people(6).ropes(&ropes).job();
            job.party.teams = vec![3, 3];
            let planned = Planned::of(job);
            let spares = planned.plan.spares.iter();
            let teams: Vec<usize> = spares.filter_map(|spare| spare.team).collect();
            assert_eq!(teams, [1, 2][..carried], "{own_m} m");
            let told = told(&planned).join("\n");
            assert!(told.contains("too, team 1, with person"), "{told}");
        }
    }
}

/// On leg 2 team 1 has the rope that does there; on leg 4 it takes the same one, and team 2 the other.
#[test]
fn a_spare_stays_with_its_team_on_every_leg() {
    let mut job = Trip::straight(&TWO)
        .people(6)
        .ropes(&[54.0, 54.0, 26.0, 24.0])
        .job();
    job.party.teams = vec![3, 3];
    let planned = Planned::of(job);
    let spares = planned.plan.spares.iter();
    let carried: Vec<(Option<usize>, &[usize])> = spares
        .map(|spare| (spare.team, &spare.rescue_on[..]))
        .collect();
    assert_eq!(carried, [(Some(1), &[2, 4][..]), (Some(2), &[4][..])]);
    let first = planned.first_page().written("table");
    assert!(
        first.contains("a loop down to person"),
        "on leg 2 team 2 has none: {first}"
    );
}

/// Of a rope on which a loop just reaches the lip nobody is told that it reaches, nor of cord to tie into it.
#[test]
fn a_rope_is_told_in_place_of_another_only_where_it_helps() {
    let told = |metres: f64, across_mm: Option<f64>| {
        let trip = Trip::straight(&TWO[1..]).people(3).ropes(&[55.0, metres]);
        let mut job = trip.job();
        job.ropes[0].diameter_mm = Some(9.0);
        job.ropes[1].diameter_mm = across_mm;
        told(&Planned::of(job)).join(" ").contains("instead")
    };
    assert!(!told(60.0, Some(9.0)), "it ends at the lip");
    assert!(told(62.0, Some(9.0)), "a metre below it");
    assert!(!told(62.0, Some(6.9)), "as thin as cord");
    assert!(
        !told(80.0, Some(11.0)),
        "heavier by the metre, of which less is carried"
    );
}

/// Everybody whom those left cannot haul is named, those of the same legs together.
#[test]
fn nobody_who_cannot_be_hauled_is_left_out() {
    let trip = Trip::straight(&TWO).people(2).ropes(&[50.0]);
    let first = on_one_line(trip.planned());
    let want = "a haul of person 1, person 2 (legs 2, 4)";
    assert!(first.contains(want), "{first}");
}

/// Of two teams one whose rope is too short takes nothing from what is told of the other.
#[test]
fn a_rope_that_is_too_short_is_told_of_its_team() {
    let mut job = Trip::straight(&TWO[1..])
        .people(5)
        .ropes(&[60.0, 50.0])
        .job();
    job.party.teams = vec![3, 2];
    let first = on_one_line(Planned::of(job));
    for want in [
        "any gap on leg 2 as planned, team 2: the rope is too short",
        "a loop down to person",
    ] {
        assert!(first.contains(want), "{want}: {first}");
    }
}

/// Of three at 13 m a loop for the one in the middle ends at the lip on 60 m of rope, and 1.1 m below it on 62.2 m.
#[test]
fn a_loop_that_just_reaches_the_lip_covers_nobody_below_it() {
    let not_covered = |ropes: &[f64]| {
        let planned = Trip::straight(&TWO[1..]).people(3).ropes(ropes).planned();
        let first = planned.first_page().written("table");
        first.contains("a loop down to person 2 (leg 2)")
    };
    assert!(not_covered(&[60.0]));
    assert!(!not_covered(&[62.2]));
    assert!(!not_covered(&[60.0, 30.0]), "a spare is carried for it");
}

/// Three over a gap so wide need 93 m of rope, and 80 m are the longest sold: nobody is spaced so.
#[test]
fn nobody_is_spaced_by_a_rope_that_is_not_sold() {
    for ropes in [&[][..], &[80.0]] {
        let trip = Trip::straight(&[r#"{"gap_m":33,"snow_depth_m":2}"#]);
        let planned = trip.people(3).ropes(ropes).planned();
        let setup = setup(&planned.plan);
        assert!(
            setup.lacks_rope() && setup.ledger.total_m > 80.0,
            "{setup:?}"
        );
        assert_eq!((setup.as_tied_gap_m, setup.as_tied_along_m), (None, None));
        let detail = planned.written("table");
        assert!(
            detail.contains("as tied: none, the rope is too short"),
            "{detail}"
        );
        let first = planned.first_page().written("table");
        assert!(
            first.contains("Not covered: any gap on leg 2 as planned"),
            "{first}"
        );
    }
}

/// A rope on which nobody walks as far apart as is taught covers nothing where nobody gave a width either.
#[test]
fn a_rope_that_is_too_short_covers_nothing_where_nobody_gave_a_width() {
    let detail = |rope_m: f64| {
        let far = Trip::along(&NORTHWARD).zone((5000.0, -200.0), (5400.0, 200.0), SNOW);
        let trip = far.inventory((-300.0, -400.0), (300.0, 0.0));
        let trip = trip.people(3).ropes(&[rope_m]);
        trip.planned().written("table")
    };
    let (long, short) = (detail(60.0), detail(20.0));
    assert!(
        long.contains("not reckoned, nobody gave a gap width here"),
        "{long}"
    );
    assert!(short.contains("none: the rope is too short"), "{short}");
}
