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
    // On legs 2 and 4 a loop ends short of the lip. One by itself takes once and a half the spacing and 2.5 m: on leg 2, at 15 m,
    // 25 m of rope, on leg 4, at 13 m, 22 m.
    let joined = |length: &str| format!("Carry the {length} rope too: joined on leg 2");
    let rescue = |length: &str, legs: &str| {
        format!("Carry the {length} rope too: for a rescue on {legs}; no set-up needs it")
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
        [rescue("30 m", "leg 2"), stays("40 m")]
    );
    let mut light = of(&[60.0, 40.0, 30.0]).job();
    light.ropes[1].diameter_mm = Some(6.0);
    light.ropes[2].diameter_mm = Some(10.5);
    assert_eq!(
        told(&Planned::of(light)),
        [rescue("40 m", "leg 2"), stays("30 m")]
    );
    let longer = of(&[60.0, 80.0, 30.0]).planned();
    assert_eq!(told(&longer), [rescue("80 m", "leg 2"), stays("30 m")]);
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
