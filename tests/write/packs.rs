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
    let lines = text
        .lines()
        .filter(|line| line.contains(" too: ") || line.starts_with("No set-up"));
    lines.map(str::to_owned).collect()
}

fn left_over(ropes: &[f64]) -> Vec<String> {
    told(&of(ropes).planned())
}

#[test]
fn each_rope_that_a_finding_asks_for_is_carried() {
    // The loop on leg 4 lacks 9 m, and so does the rope that is joined.
    let joined = "Carry the 8 m rope too: joined on leg 2";
    let rescue = "Carry the 30 m rope too: for a rescue on leg 4; no set-up needs it";
    assert_eq!(left_over(&[42.0, 8.0, 30.0]), [joined, rescue]);
    let both = "Carry the 12 m rope too: joined on leg 2, and for a rescue on leg 4";
    assert_eq!(
        left_over(&[42.0, 12.0, 12.0]),
        [both, "No set-up needs the 12 m rope"]
    );
}

/// Of two ropes that do for all rescues the shorter one is taken, or the one that findings name because it is lighter.
#[test]
fn one_rope_is_carried_for_rescues() {
    let stays = |rope: &str| format!("No set-up needs the {rope} rope");
    let taken = |rope: &str| {
        format!("Carry the {rope} rope too: for a rescue on leg 2; no set-up needs it")
    };
    assert_eq!(
        left_over(&[60.0, 40.0, 30.0]),
        [taken("30 m"), stays("40 m")]
    );
    let mut light = of(&[60.0, 40.0, 30.0]).job();
    light.ropes[1].diameter_mm = Some(6.0);
    light.ropes[2].diameter_mm = Some(10.5);
    let told = told(&Planned::of(light));
    assert_eq!(told, [taken("40 m"), stays("30 m")]);
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
