//! What stops a plan, what asks for a look, and in which order it is said. Limits: trade rules, our judgement.

use schrund::{
    plan::leg::Verdict,
    say::voice::Voice,
    write::parts::sentence::{part_of_word, word_in_part},
};
use scraper::Html;

use crate::fixture::{
    page::select,
    planned::{codes, roped, setup},
    trip::{BARE, SNOW, Trip},
};

#[test]
fn hidden_gaps_unroped_stop_the_plan_but_for_skis_in_deep_snow_over_narrow_gaps() {
    let unroped = |travel: &str, gap_m: f64, snow: &str| {
        let zone = format!(r#"{{"gap_m":{gap_m},"rope":"never"{snow}}}"#);
        let plan = Trip::straight(&[&zone])
            .rules(&format!("travel = \"{travel}\""))
            .plan();
        (
            plan.verdict(),
            codes(&plan.legs[0].findings).contains(&"hidden-gaps-skied-unroped"),
        )
    };
    let (stop, look) = ((Verdict::Stop, false), (Verdict::Look, true));
    let deep = r#","snow_depth_m":1.6"#;
    assert_eq!(unroped("foot", 4.0, deep), stop);
    assert_eq!(unroped("snowshoe", 4.0, deep), stop);
    assert_eq!(unroped("ski", 5.0, deep), look);
    assert_eq!(unroped("ski", 5.1, deep), stop);
    assert_eq!(unroped("ski", 5.0, r#","snow_depth_m":1.5"#), stop);
    assert_eq!(unroped("ski", 5.0, ""), stop, "nobody said how much snow");
}

/// Nobody unties on known ice, be it ever so short: with the margin on both sides and the team of 26 m it makes a leg of 72 m, but
/// what is told is the 6 m of ice.
#[test]
fn six_metres_of_known_ice_are_roped_and_told_as_six_metres() {
    let far = ((5000.0, 5000.0), (5100.0, 5100.0));
    let trip = Trip::straight(&[])
        .zone(far.0, far.1, r#"{"gap_m":4}"#)
        .people(3);
    let plan = trip.inventory((-50.0, 297.0), (50.0, 303.0)).plan();
    let leg = roped(&plan);
    assert!((leg.length_m - 72.0).abs() < 0.1, "{}", leg.length_m);
    let ice_m: f64 = leg
        .ice_without_zone
        .iter()
        .map(|piece| piece.to_m - piece.from_m)
        .sum();
    assert!((ice_m - 6.0).abs() < 0.1, "{ice_m}");
    let told = leg
        .stretches
        .iter()
        .filter(|s| s.code == "ice-without-a-gap-width");
    let told_m: f64 = told.map(|s| s.to_m - s.from_m).sum();
    assert!((told_m - 6.0).abs() < 0.1, "{told_m}");
}

#[test]
fn ice_that_is_unroped_by_word_is_told_where_it_is() {
    let never = r#"{"gap_m":4,"rope":"never"}"#;
    let plan = Trip::straight(&[never, never]).plan();
    let leg = &plan.legs[0];
    assert_eq!((plan.legs.len(), leg.verdict), (1, Verdict::Stop));
    for code in ["never-on-hidden-gaps", "unroped-on-ice-by-your-word"] {
        let stretches = leg.stretches.iter().filter(|s| s.code == code);
        let whole: Vec<[f64; 2]> = stretches
            .map(|s| [s.from_m.round(), s.to_m.round()])
            .collect();
        assert_eq!(whole, [[400.0, 600.0], [1000.0, 1200.0]], "{code}");
    }
}

#[test]
fn bare_ice_is_an_alarm_only_where_it_is_steep() {
    const ROPED: &str = r#"{"gap_m":4,"surface":"bare","rope":"always"}"#;
    let on = |share: f64| {
        let plan = Trip::straight(&[ROPED])
            .ropes(&[80.0])
            .falling(share)
            .plan();
        let leg = roped(&plan);
        let told: Vec<&str> = codes(&leg.findings);
        let of_ice = told
            .into_iter()
            .find(|c| c.contains("ice") || c.contains("slip"));
        (leg.verdict, of_ice.map(str::to_owned))
    };
    let told = |code: &str| Some(code.to_owned());
    assert_eq!(
        on(0.0),
        (Verdict::Inside, None),
        "flat, roped by the leader's word"
    );
    assert_eq!(on(0.25), (Verdict::Inside, None), "14 degrees");
    assert_eq!(
        on(0.29),
        (Verdict::Look, told("one-slip-pulls-all")),
        "16 degrees"
    );
    assert_eq!(
        on(0.49),
        (Verdict::Stop, told("bare-ice-too-steep")),
        "26 degrees"
    );
}

/// Ice underfoot holds nobody; only ice that was drawn as bare shows its gaps.
#[test]
fn ice_as_the_snow_of_the_trip_does_not_bring_hidden_gaps_into_sight() {
    let on = |zone: &str, snow: &str| {
        let rules = format!("snow = \"{snow}\"");
        let plan = Trip::straight(&[zone]).ropes(&[80.0]).rules(&rules).plan();
        let leg = roped(&plan);
        let falls = codes(&leg.findings);
        let told = falls.into_iter().find(|code| code.starts_with("fall-"));
        (leg.verdict, told.map(str::to_owned))
    };
    let stop = (Verdict::Stop, Some("fall-held-in-none".to_owned()));
    for zone in [SNOW, r#"{"gap_m":4}"#, r#"{"gap_m":0}"#] {
        assert_eq!(on(zone, "ice"), stop, "{zone}");
    }
    let bare = r#"{"gap_m":4,"surface":"bare","rope":"always"}"#;
    assert_eq!(
        on(bare, "ice"),
        on(bare, "settled"),
        "its gaps are in sight"
    );
    let words = ["settled", "firm", "refrozen", "ice"].map(|snow| on(SNOW, snow).0);
    assert!(words.is_sorted(), "held by less, never milder: {words:?}");
    // Soft snow holds most falls, and its bridges are looked at all the same.
    assert_eq!(on(SNOW, "soft"), (Verdict::Look, None));
}

/// A slip is not stopped by seeing the gaps.
#[test]
fn bare_ice_that_is_walked_without_a_rope_tells_where_it_is_steep() {
    const NEVER: &str = r#"{"gap_m":1,"surface":"bare","rope":"never"}"#;
    let told = |zone: &str, share: f64| {
        let plan = Trip::straight(&[zone]).falling(share).plan();
        codes(&plan.legs[0].findings).contains(&"unroped-on-steep-bare-ice")
    };
    assert!(!told(NEVER, 0.25), "14 degrees");
    assert!(told(NEVER, 0.29), "16 degrees");
    assert!(told(NEVER, -0.49), "26 degrees, up");
    let snow = r#"{"gap_m":1,"snow_depth_m":2,"rope":"never"}"#;
    assert!(!told(snow, -0.49), "that is not bare");
}

#[test]
fn what_stops_is_said_before_what_is_outside_and_that_before_what_to_look_at() {
    let never = r#"{"gap_m":4,"rope":"never","name":"Hidden"}"#;
    let plan = Trip::straight(&[BARE, SNOW, never]).ropes(&[20.0]).plan();
    let all: Vec<_> = plan.legs.iter().map(|l| l.verdict).collect();
    assert_eq!(plan.verdict(), Verdict::Stop, "{all:?}");
    for leg in &plan.legs {
        let levels: Vec<_> = leg
            .findings
            .iter()
            .map(schrund::plan::finding::Finding::alarm)
            .collect();
        assert!(levels.is_sorted(), "{levels:?}");
    }
    assert_eq!(
        roped(&plan).verdict,
        Verdict::Outside,
        "a rope of 20 m holds nobody"
    );
}

/// Three on a line north, on ice from 200 m to 200 m before its end, over one step in ground that falls by 2°.
fn one_step(length_m: f64, step_from_m: f64, step_m: f64, deg: f64) -> Trip {
    let zone = r#"{"gap_m":4,"snow_depth_m":2}"#;
    one_step_on(zone, length_m, (step_from_m, step_m), deg)
}

fn one_step_on(zone: &str, length_m: f64, (step_from_m, step_m): (f64, f64), deg: f64) -> Trip {
    let count = (length_m / 20.0).round() as u32;
    let line: Vec<(f64, f64)> = (0..=count).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let gentle = 2.0_f64.to_radians().tan();
    let steep = deg.to_radians().tan();
    let height_m = move |_: f64, north: f64| {
        let on_step = (north - step_from_m).clamp(0.0, step_m);
        4000.0 - gentle * (north - on_step) - steep * on_step
    };
    Trip::along(&line)
        .zone((-300.0, 200.0), (300.0, length_m - 200.0), zone)
        .ropes(&[60.0])
        .heights(height_m)
        .rules("snow = \"firm\"")
}

#[test]
fn one_steep_step_carries_the_word_and_the_rest_is_judged_as_flat() {
    // 60 m of 36° in six kilometres at 2°: the heights stand every 20 m, so the step is between 60 and 100 m long.
    let plan = one_step(6_000.0, 3_000.0, 60.0, 36.0).plan();
    let leg = roped(&plan);
    assert_eq!(leg.verdict, Verdict::Stop);
    let stops: Vec<_> = leg
        .stretches
        .iter()
        .filter(|s| s.verdict == Verdict::Stop)
        .collect();
    assert!(!stops.is_empty(), "{:?}", leg.stretches);
    for stop in &stops {
        assert!(2_950.0 < stop.from_m && stop.to_m < 3_110.0, "{stop:?}");
    }
    let held = setup(&plan).held.expect("an answer");
    assert!((30.0..120.0).contains(&held.none_m), "{held:?}");
    assert!(held.all_m + held.depends_m > 5_000.0, "{held:?}");
    let flat = one_step(6_000.0, 3_000.0, 60.0, 2.0).plan();
    assert!(roped(&flat).verdict < Verdict::Stop && setup(&flat).held.unwrap().none_m < 1e-9);
}

/// On ice no fall is held, steep or flat: the step alone is too steep, and not the tongue that it lies in.
#[test]
fn one_steep_step_of_bare_ice_does_not_condemn_the_tongue() {
    let zone = r#"{"gap_m":2,"surface":"bare"}"#;
    let plan = one_step_on(zone, 2_400.0, (1_000.0, 80.0), 29.0).plan();
    let leg = roped(&plan);
    assert_eq!(leg.verdict, Verdict::Stop);
    let stops = leg.stretches.iter().filter(|s| s.verdict == Verdict::Stop);
    let stops: Vec<(f64, f64)> = stops.map(|s| (s.from_m, s.to_m)).collect();
    assert!(!stops.is_empty());
    assert!(
        stops.iter().all(|s| s.0 > 950.0 && s.1 < 1_150.0),
        "{stops:?}"
    );
}

#[test]
fn the_stretch_of_a_stop_stands_wherever_its_word_does() {
    let planned = one_step(6_000.0, 3_000.0, 60.0, 36.0).planned();
    let leg = roped(&planned.plan);
    let told = word_in_part(leg, Voice::default())
        .expect("the rest is milder")
        .to_string();
    assert!(
        told.starts_with("stop at 3.0") && told.contains("; the rest "),
        "{told}"
    );
    let plain = |text: String| {
        // Figures stand in pieces that do not break.
        let text = text
            .replace("<span class=\"w\">", "")
            .replace("</span>", "");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    for format in ["table", "geojson", "kml", "html"] {
        let shown = plain(planned.written(format));
        assert!(shown.contains(&told), "{told} is not in {format}");
    }
    let head = plain(planned.written("table"));
    let first = format!(
        "Stop: leg {} at {}",
        leg.leg,
        part_of_word(leg, Voice::default()).unwrap()
    );
    assert!(head.contains(&first), "{first}");
    // On the map the step alone is barred, and the rest of the leg stands in its own style.
    let page = Html::parse_document(&planned.written("html"));
    let drawn = |class: &str| {
        let lines = select(
            &page,
            &format!("svg[aria-labelledby=map-overview] path.leg.{class}"),
        );
        lines
            .iter()
            .map(|line| line.attr("d").unwrap().len())
            .sum::<usize>()
    };
    let rest = leg
        .pieces()
        .into_iter()
        .map(|piece| piece.verdict)
        .min()
        .unwrap();
    assert!(drawn("stop") > 0 && drawn("bars") > 0, "the step");
    assert!(drawn(rest.as_str()) > 0, "the rest, {rest:?}");
}

#[test]
fn every_place_of_a_fall_is_a_stretch_and_the_finding_names_the_worst() {
    let two = |x_m: f64, first_m: f64| {
        let on = |x: f64, from: f64| (x - from).clamp(0.0, 60.0);
        on(x_m, first_m) + on(x_m, 4_000.0)
    };
    let line: Vec<_> = (0..=300).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let trip = Trip::along(&line).zone((-500.0, -100.0), (500.0, 6_100.0), SNOW);
    let plan = trip.heights(move |_, y| -0.727 * two(y, 2_000.0)).plan();
    let leg = roped(&plan);
    let falls = leg.stretches.iter().filter(|s| s.code.starts_with("fall-"));
    let middles: Vec<f64> = falls.map(|s| f64::midpoint(s.from_m, s.to_m)).collect();
    for near_m in [2_030.0, 4_030.0] {
        assert!(
            middles.iter().any(|m| (m - near_m).abs() < 60.0),
            "{near_m}: {:?}",
            leg.stretches
        );
    }
}

#[test]
fn a_place_no_longer_than_a_spacing_is_looked_at_and_does_not_stop() {
    let short = (10..60).find_map(|step_m| {
        let plan = one_step(1_000.0, 500.0, f64::from(step_m), 36.0).plan();
        let codes = codes(&roped(&plan).findings);
        codes
            .contains(&"fall-held-in-none-at-one-place")
            .then_some(plan)
    });
    let plan = short.expect("a step between too short to matter and long enough to stop");
    let (held, spacing_m) = (setup(&plan).held.unwrap(), setup(&plan).spacing_m);
    assert!(0.0 < held.none_m && held.none_m <= spacing_m, "{held:?}");
    assert_eq!(roped(&plan).verdict, Verdict::Look);
}

#[test]
fn a_wider_gap_never_gets_the_milder_word_for_falls() {
    let words = |masses_kg: &[f64], rules: &str, share: f64| {
        let word = |gap_m: i32| {
            let zone = format!(r#"{{"gap_m":{gap_m},"snow_depth_m":2}}"#);
            let trip = Trip::straight(&[&zone]).party(masses_kg).rules(rules);
            let plan = trip.ropes(&[120.0]).falling(share).plan();
            let leg = roped(&plan);
            let of_falls = leg
                .findings
                .iter()
                .filter(|f| f.code().starts_with("fall-"));
            let word = of_falls.map(schrund::plan::finding::Finding::level).min();
            (word.map_or(9, |level| level as u8), setup(&plan).spacing_m)
        };
        (0..=24).map(word).collect::<Vec<_>>()
    };
    // Found by trying teams at random. Over 4 m alone, between its knots, the first holds better than over 3 m.
    let mut seen = std::collections::BTreeSet::new();
    for (masses_kg, rules, share) in [
        (
            &[56.0, 77.0, 83.0][..],
            "knots = \"always\"\n[assume]\nspacing_3_m = 10",
            0.3,
        ),
        (&[93.0, 85.0], "", 0.1),
        (&[105.0, 120.0, 80.0, 95.0, 94.0], "snow = \"firm\"", 0.0),
        (&[71.0, 116.0], "snow = \"firm\"", 0.07),
        (&[75.0, 53.0, 59.0, 116.0, 60.0], "snow = \"soft\"", 0.08),
    ] {
        let along = words(masses_kg, rules, share);
        // A wider gap that asks for a longer spacing leaves holders more room: that is another set-up.
        let alike = along.iter().zip(&along[1..]).filter(|(a, b)| a.1 == b.1);
        for (narrow, wide) in alike {
            assert!(
                wide.0 <= narrow.0,
                "{masses_kg:?} {rules} {share}: {along:?}"
            );
        }
        seen.extend(along.iter().map(|(word, _)| *word));
    }
    assert!(seen.len() >= 3, "stop, look and neither came up: {seen:?}");
}

/// Two steep steps: the finding names the worse, and the other one was told as if it were inside.
#[test]
fn every_step_that_is_too_steep_is_a_stretch() {
    let line: Vec<(f64, f64)> = (0..=100).map(|i| (0.0, 20.0 * f64::from(i))).collect();
    let trip = |zone: &str| {
        let height_m = |_: f64, north: f64| {
            let on = |from_m: f64, share: f64| share * (north - from_m).clamp(0.0, 100.0);
            4000.0 - 0.02 * north - on(600.0, 1.0) - on(1300.0, 1.2)
        };
        let trip = Trip::along(&line).zone((-300.0, 200.0), (300.0, 1800.0), zone);
        trip.ropes(&[60.0]).heights(height_m).plan()
    };
    let begins = |plan: &schrund::plan::Plan, code: &str| {
        let legs = plan.legs.iter().flat_map(|leg| &leg.stretches);
        let steep = legs.filter(|s| s.code == code);
        steep
            .map(|s| (s.from_m / 100.0).round())
            .collect::<Vec<_>>()
    };
    let snow = trip(SNOW);
    assert_eq!(
        begins(&snow, "too-steep-to-rope-without-anchors"),
        [6.0, 13.0]
    );
    let bare = trip(r#"{"gap_m":4,"surface":"bare","rope":"never"}"#);
    assert_eq!(begins(&bare, "unroped-on-steep-bare-ice"), [6.0, 13.0]);
}
