//! What a leg's findings say, and when they say nothing: each shown beside a trip that is only a little better.

use schrund::{
    plan::{fact::Fact, finding::At},
    say::{finding::hint, voice::Voice},
};

use crate::fixture::{
    planned::{codes, findings, roped, setup},
    trip::Trip,
};

/// Says it here, and not there.
#[track_caller]
fn only(code: &str, here: &Trip, there: &Trip) {
    let (here, there) = (here.plan(), there.plan());
    let (said, unsaid) = (codes(findings(&here)), codes(findings(&there)));
    assert!(said.contains(&code), "{code} is missing: {said:?}");
    assert!(
        !unsaid.contains(&code),
        "{code} should not be said: {unsaid:?}"
    );
}

fn zone(gap_m: f64, snow_m: f64) -> String {
    format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":{snow_m}}}")
}

fn trip(people: usize, rope_m: f64, gap_m: f64, snow_m: f64) -> Trip {
    Trip::straight(&[&zone(gap_m, snow_m)])
        .party(&vec![80.0; people])
        .ropes(&[rope_m])
}

#[test]
fn limits_that_are_near_are_told() {
    // A pair needs the gap and 5 m more (our judgement); 30 m is the greatest spacing (common practice).
    only(
        "spacing-near-limit",
        &trip(2, 150.0, 24.5, 2.0),
        &trip(2, 150.0, 20.0, 2.0),
    );
    // Three at 13 m take 42 m: 26 between them, 3 in tie-ins, 13 in coils.
    only(
        "rope-near-limit",
        &trip(3, 42.5, 4.0, 2.0),
        &trip(3, 43.0, 4.0, 2.0),
    );
}

#[test]
fn snow_that_may_not_hold_knots_is_told() {
    let unknown = Trip::straight(&["{\"gap_m\":4}"])
        .party(&[80.0; 2])
        .ropes(&[80.0]);
    only("snow-depth-not-given", &unknown, &trip(2, 80.0, 4.0, 2.0));
    only(
        "knots-doubtful",
        &trip(2, 80.0, 4.0, 0.5),
        &trip(2, 80.0, 4.0, 2.0),
    );
    only(
        "pair-without-knots",
        &trip(2, 80.0, 4.0, 0.2),
        &trip(2, 80.0, 4.0, 2.0),
    );
    // One leg over two zones: knots for the first, none that bite in the second.
    let zones = [zone(4.0, 2.0), zone(4.0, 0.1)];
    let both = Trip::straight(&[&zones[0], &zones[1]])
        .party(&[80.0; 2])
        .ropes(&[80.0]);
    only(
        "knots-do-not-bite-everywhere",
        &both.clone().rules("[assume]\nleast_unroped_m = 1000"),
        &both,
    );
}

#[test]
fn a_coil_is_a_burden_by_its_length_or_by_its_weight() {
    // A pair carries coils of 22.5 m, 1.1025 kg of 9 mm rope (makers' figures).
    let pair = trip(2, 80.0, 4.0, 2.0);
    let most = |figure: &str| pair.clone().rules(&format!("[assume]\n{figure}"));
    let (light, heavy) = (most("coil_most_kg = 1.11"), most("coil_most_kg = 1.1"));
    only("coil-is-a-burden", &heavy, &light);
    let (short, long) = (most("coil_most_m = 22.5"), most("coil_most_m = 22.4"));
    only("coil-is-a-burden", &long, &short);
}

#[test]
fn steep_ground_and_skis_are_told() {
    let flat = trip(3, 60.0, 4.0, 2.0);
    // Slopes of 0.6 and 0.9 are 31° and 42°.
    only(
        "avalanche-terrain",
        &flat.clone().falling(0.6),
        &flat.clone().falling(0.5),
    );
    only(
        "too-steep-to-rope-without-anchors",
        &flat.clone().falling(0.9),
        &flat.clone().falling(0.8),
    );
    only(
        "bridges-in-soft-snow",
        &flat.clone().rules("snow = \"soft\""),
        &flat,
    );
    only("on-skis", &flat.clone().rules("travel = \"ski\""), &flat);
}

#[test]
fn a_strike_that_is_not_given_is_told_where_a_rope_asks_for_it() {
    let never = r#"{"gap_m":4,"snow_depth_m":2,"rope":"never"}"#;
    let unroped = Trip::straight(&[never]).party(&[80.0; 3]);
    only("strike-not-given", &trip(3, 60.0, 4.0, 2.0), &unroped);
}

/// Five go on for 80 m behind the ice, and there alone heights are known.
#[test]
fn where_no_slope_is_known_on_the_ice_that_is_told_once() {
    let told = |known_from_m: f64| {
        let trip = Trip::straight(&[&zone(25.0, 2.0)])
            .people(5)
            .ropes(&[120.0]);
        let height_m = move |_: f64, north: f64| match north < known_from_m {
            true => f64::NAN,
            false => 3000.0 - 0.1 * north,
        };
        let codes = codes(findings(&trip.heights(height_m).plan()));
        let slopes = codes.into_iter().filter(|code| code.starts_with("slope-"));
        slopes.collect::<Vec<_>>()
    };
    assert_eq!(told(650.0), ["slope-unknown"]);
    assert_eq!(
        told(590.0),
        ["slope-partly-unknown"],
        "its far edge is known"
    );
}

#[test]
fn a_zone_beside_the_line_is_told() {
    let zone = zone(4.0, 2.0);
    let zone = zone.as_str();
    let both = Trip::straight(&[zone; 3]).party(&[80.0; 3]).ropes(&[60.0]);
    let beside = both.clone().on_the_line_of(&Trip::straight(&[zone]));
    only("zone-not-met", &beside, &both);
}

#[test]
fn snow_on_ice_called_bare_is_told_and_counts_as_snow() {
    let zone = |more: &str| Trip::straight(&[&format!(r#"{{"gap_m":4{more}}}"#)]).party(&[80.0; 2]);
    let (bare, snow, both) = (
        zone(r#","surface":"bare""#),
        zone(r#","snow_depth_m":2"#),
        zone(r#","surface":"bare","snow_depth_m":2"#),
    );
    only("snow-on-bare-ice", &both, &bare);
    only("snow-on-bare-ice", &both, &snow);
    only(
        "snow-on-bare-ice",
        &both,
        &zone(r#","surface":"bare","snow_depth_m":0"#),
    );
    let [of_snow, of_both] = [&snow, &both].map(Trip::plan);
    let set = |plan| {
        (
            setup(plan).spacing_m,
            setup(plan).knots.count,
            setup(plan).arrest.clone(),
        )
    };
    assert_eq!(set(&of_snow), set(&of_both), "spacing, knots and falls");
    only(
        "never-on-hidden-gaps",
        &zone(r#","surface":"bare","snow_depth_m":2,"rope":"never""#),
        &bare,
    );
}

#[test]
fn knots_are_judged_zone_by_zone() {
    let (thin, doubtful) = (zone(4.0, 0.2), zone(4.0, 0.5));
    let all = [&thin, r#"{"gap_m":4}"#, &doubtful, &zone(4.0, 2.0)];
    let plan = Trip::straight(&all)
        .party(&[80.0; 2])
        .rules("[assume]\nleast_unroped_m = 1000")
        .plan();
    let leg = roped(&plan);
    for (code, zone) in [
        ("knots-do-not-bite-everywhere", 1),
        ("snow-depth-not-given", 2),
        ("knots-doubtful", 3),
    ] {
        let told = leg.findings.iter().find(|f| f.code() == code).expect(code);
        let zones = match told.fact() {
            Some(
                Fact::KnotsNoBite { zones }
                | Fact::SnowUnknown { zones }
                | Fact::KnotsDoubtful { zones },
            ) => zones,
            other => panic!("{other:?}"),
        };
        let numbers: Vec<usize> = zones.iter().map(|z| z.zone).collect();
        assert_eq!(numbers, [zone], "{code}");
    }
}

#[test]
fn knots_always_where_none_are_tied_is_told_with_the_reason() {
    let always =
        |people: usize, snow_m: f64| trip(people, 80.0, 4.0, snow_m).rules("knots = \"always\"");
    let code = "knots-always-and-none-tied";
    only(code, &always(4, 2.0), &trip(4, 80.0, 4.0, 2.0));
    only(code, &always(3, 0.2), &always(3, 2.0));
    only(code, &always(2, 0.2), &trip(2, 80.0, 4.0, 0.2));
}

/// Nobody is told to set what is set.
#[test]
fn coils_sized_for_anyone_are_not_asked_to_be_sized_for_anyone() {
    let told = |rules: &str| {
        let plan = trip(3, 40.0, 4.0, 2.0).rules(rules).plan();
        let mut all = findings(&plan);
        let short = all.find(|f| f.code() == "loop-ends-short-of-the-lip");
        let hint = hint(short.expect("the rope is short"), Voice::default());
        hint.expect("a way out").to_string()
    };
    assert!(told("").contains("cover"), "{}", told(""));
    let set = told("cover = \"anyone\"");
    assert_eq!(set, "plan another rescue for them, or a longer rope");
}

/// Two spans and three tie-ins take 29 m: on 28 m the third person has no place, and no loop or haul is what it would be.
#[test]
fn nothing_is_told_of_loops_and_hauls_where_the_rope_ends_before_somebody() {
    let plan = trip(3, 28.0, 4.0, 2.0).plan();
    let setup = setup(&plan);
    assert!(setup.no_place.iter().any(|none| none.person == Some(3)));
    assert!(setup.reach.is_empty() && setup.haul.is_none());
    let told = codes(findings(&plan));
    for code in ["loop-ends-short-of-the-lip", "haul-beyond-those-left"] {
        assert!(!told.contains(&code), "{told:?}");
    }
    assert!(told.contains(&"no-rope-fits"), "{told:?}");
}

/// "Worst at" gave the whole leg where the answer is the same all along it.
#[test]
fn the_worst_place_of_a_fall_is_where_it_is_steepest() {
    let steeper = |_: f64, north: f64| match north {
        north if north < 700.0 => 4000.0 - 0.3 * north,
        north if north < 800.0 => 3790.0 - 0.4 * (north - 700.0),
        north => 3750.0 - 0.3 * (north - 800.0),
    };
    let line: Vec<(f64, f64)> = (0..=75).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let plan = Trip::along(&line)
        .zone((-300.0, 200.0), (300.0, 1300.0), &zone(4.0, 2.0))
        .ropes(&[60.0])
        .heights(steeper)
        .rules("snow = \"refrozen\"")
        .plan();
    let mut all = findings(&plan);
    let fall = all
        .find(|f| f.code().starts_with("fall-"))
        .expect("not held");
    let At::Leg(place) = &fall.at else {
        panic!("{:?}", fall.at)
    };
    assert!(place.from_m >= 650.0 && place.to_m <= 850.0, "{place:?}");
    let Some(stretch) = roped(&plan)
        .stretches
        .iter()
        .find(|s| s.code == fall.code())
    else {
        panic!("its stretches stay whole")
    };
    assert!(stretch.to_m - stretch.from_m > 500.0, "{stretch:?}");
}

#[test]
fn a_rope_as_thin_as_cord_is_told_where_somebody_ties_into_it() {
    // 7 mm (our judgement).
    let of = |ropes: &[(f64, Option<f64>)]| {
        let lengths: Vec<f64> = ropes.iter().map(|(length_m, _)| *length_m).collect();
        let mut trip = trip(3, 60.0, 4.0, 2.0).ropes(&lengths);
        for (rope, (_, across_mm)) in trip.ropes.iter_mut().zip(ropes) {
            rope.diameter_mm = *across_mm;
        }
        trip
    };
    let code = "rope-thin-as-cord";
    for thick in [Some(7.0), Some(9.8), None] {
        only(code, &of(&[(60.0, Some(6.9))]), &of(&[(60.0, thick)]));
    }
    // Where a thicker one does nobody ties into it; a spare is hauled on, and one that stays at home holds nothing.
    let short = [(44.0, Some(9.0)), (30.0, Some(6.0))];
    only(
        code,
        &of(&short),
        &of(&[(44.0, Some(9.0)), (20.0, Some(6.0))]),
    );
    let (cord, rope) = ((70.0, Some(6.0)), (70.0, Some(9.0)));
    only(code, &of(&[cord]), &of(&[rope, cord]));
}

#[test]
fn hidden_gaps_under_thin_snow_are_told() {
    // 0.3 m (our judgement).
    only(
        "thin-snow-on-hidden-gaps",
        &trip(3, 60.0, 4.0, 0.3),
        &trip(3, 60.0, 4.0, 0.31),
    );
    let bare = r#"{"gap_m":4,"surface":"bare","snow_depth_m":0}"#;
    only(
        "thin-snow-on-hidden-gaps",
        &trip(3, 60.0, 4.0, 0.0),
        &Trip::straight(&[bare]).party(&[80.0; 3]).ropes(&[60.0]),
    );
    only(
        "thin-snow-on-hidden-gaps",
        &trip(3, 60.0, 4.0, 0.4).rules("[assume]\nthin_snow_m = 0.5"),
        &trip(3, 60.0, 4.0, 0.2).rules("[assume]\nthin_snow_m = 0.1"),
    );
}

#[test]
fn zones_observed_long_before_the_trip_are_told() {
    let seen = |on: &str| {
        let zone = format!(r#"{{"gap_m":4,"snow_depth_m":2,"observed_on":"{on}"}}"#);
        Trip::straight(&[&zone]).party(&[80.0; 3])
    };
    let undated = seen("2026-08-21");
    let seen = |on: &str| seen(on).rules("date = \"2027-08-21\"\nutc_offset = \"+02:00\"");
    // 30 days (our judgement): 21 July is 31 days before 21 August.
    let newer = seen("2027-07-22");
    for old in [
        "2027-07-21",
        "20270721",
        "2027-07-21T09:30:00Z",
        "1999-07-21",
    ] {
        only("observed-long-before", &seen(old), &newer);
    }
    // After the trip, in words, and without a day of the trip.
    for none in ["2027-09-30", "last summer", "21.7.2027"] {
        only("observed-long-before", &seen("2027-07-21"), &seen(none));
    }
    only("observed-long-before", &seen("2026-08-21"), &undated);
    let told = seen("2026-08-21").plan();
    let told = findings(&told).find_map(|f| match f.fact()? {
        Fact::ObservedLongAgo { zones, days, .. } => Some((zones.len(), *days)),
        _ => None,
    });
    assert_eq!(told, Some((1, 365)));
}
