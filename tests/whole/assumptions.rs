//! Everything a plan rests on is listed, and changing it in the trip file changes the plan.

use std::collections::{BTreeMap, BTreeSet};

use schrund::{fault::Place, plan::Plan, practice::Origin};
use serde_json::Value;

use crate::fixture::trip::Trip;

const ZONES: [&str; 3] = [
    "{\"gap_m\":4,\"snow_depth_m\":2}",
    "{\"gap_m\":9,\"snow_depth_m\":0.6,\"strike_deg\":60}",
    "{\"gap_m\":4,\"surface\":\"bare\"}",
];

/// A trip on which the figure can matter: people, snow and practice after its name.
fn scene(name: &str) -> Trip {
    let number = |c: char| c.is_ascii_digit();
    let people = match name.find(number).and_then(|i| name[i..].chars().next()) {
        Some(digit) if name.starts_with("spacing_") || name.starts_with("chest_coils_") => {
            digit.to_digit(10).unwrap_or(3)
        }
        _ if ["gap_share_four"].contains(&name) => 4,
        _ if ["gap_share_three", "heavier_factor"].contains(&name) => 3,
        _ => 2,
    };
    let masses: Vec<f64> = (0..people)
        .map(|i| 80.0 + 25.0 * f64::from(i % 2))
        .collect();
    let gaps = if name.starts_with("gap_share") {
        vec!["{\"gap_m\":24,\"snow_depth_m\":2}"]
    } else {
        ZONES.to_vec()
    };
    let scene = Trip::straight(&gaps)
        .party(&masses)
        .ropes(&[70.0])
        .falling(0.35);
    let snow = name
        .strip_prefix("snow.")
        .and_then(|n| n.split('.').next())
        .unwrap_or("settled");
    let travel = if name.starts_with("skis") {
        "ski"
    } else {
        "foot"
    };
    let reserve = if name.starts_with("chest_coil") {
        "chest-coils"
    } else {
        "reach"
    };
    let coils = if name == "chest_coil_m" {
        "\n[assume]\nchest_coils_2 = 5"
    } else {
        ""
    };
    // So that the way back up the line is reckoned too.
    let clock = "start = \"05:00\"\nback_by = \"06:30\"";
    scene.rules(&format!(
        "{clock}\nsnow = \"{snow}\"\ntravel = \"{travel}\"\nreserve = \"{reserve}\"{coils}"
    ))
}

/// The plan without its list of assumptions.
fn rest(plan: &Plan) -> Value {
    let mut value = serde_json::to_value(plan).unwrap();
    value["assumptions"] = Value::Null;
    value
}

fn entry(plan: &Plan, name: &str) -> Value {
    let found = plan.assumptions.iter().find(|a| a.name == name);
    serde_json::to_value(found.unwrap_or_else(|| panic!("{name} is not listed"))).unwrap()
}

/// The scene with the figure a little off, either way, as far as its bounds and its fellows allow.
fn moved(scene: &Trip, name: &str, value: f64) -> Option<Trip> {
    // An end that its fellow pins is moved together with it.
    let whole = name.rsplit_once('.').map(|(range, _)| range);
    moved_to(scene, name, value).or_else(|| moved_to(scene, whole?, value))
}

fn moved_to(scene: &Trip, name: &str, value: f64) -> Option<Trip> {
    // Of a thing that somebody carries there is no part.
    let parts: &[f64] = if name.starts_with("kit_") {
        &[]
    } else {
        &[0.7, 1.3, 0.9, 1.1]
    };
    let tries = parts
        .iter()
        .map(|f| value * f)
        .chain([value + 1.0, value - 1.0, value + 0.1]);
    for next in tries.filter(|n| (n - value).abs() > 1e-9) {
        let text = format!("[assume]\n{name} = {next:?}");
        let trip = schrund::read::trip::trip("trip.toml", &text).unwrap();
        let (mut other, place) = (scene.clone(), Place::default());
        if trip
            .lay_over(&mut other.laid, &place, &Origin::Trip)
            .is_ok()
        {
            return Some(other);
        }
    }
    None
}

/// Figures whose little move these scenes do not show elsewhere, by the reason.
const UNMOVED: [(&str, &[&str]); 7] = [
    (
        "of the ground: no terrain model here, and one straight line",
        &[
            "ascents_apart_share",
            "climb_cells",
            "climb_unknown_m",
            "convex_deg",
            "convex_most",
            "convex_over_m",
            "fall_line_deg",
            "ground_step_m",
            "heights_apart_m",
            "lone_height_m",
            "proposed_strike_deg",
            "straight_m",
            "tight_first_m",
            "tight_step_m",
            "effort_climb_m",
            "effort_steep_share",
        ],
    ),
    (
        "a threshold that nothing here lies near to",
        &[
            "obliged_reach_factor",
            "least_unroped_m",
            "turn_back_m",
            "longest_stage_h",
            "one_place_m",
            "spacing_floor_m",
            "spacing_2_m",
            "knots_no_bite_m",
            "knot_clear_m",
            "steep_descent_deg",
            "near_cap_m",
            "near_lip_m",
            "thin_rope_mm",
            "avalanche_deg",
            "bare_slip_deg",
            "thin_snow_m",
            "anchors_deg",
            "belay_pitch_m",
            "pull.weak_n",
        ],
    ),
    ("everybody's mass is given", &["person_kg"]),
    ("no day is given", &["observed_days"]),
    ("of no weight on this ground", &["wide_min_per_km_m"]),
    (
        "for `options`, or for ropes of other diameters",
        &[
            "long_sling_m",
            "join_bend_m",
            "rope_g_per_m.6mm",
            "rope_g_per_m.8mm",
            "rope_g_per_m.9_5mm",
            "skied_gap_m",
            "skied_snow_m",
        ],
    ),
    ("not held either way", &[]),
];

#[test]
fn every_figure_listed_can_be_changed_and_most_changes_are_seen() {
    let mut names: Vec<String> = Vec::new();
    for reserve in ["reach", "chest-coils"] {
        let plan = scene("").rules(&format!("reserve = \"{reserve}\"")).plan();
        for a in plan.assumptions.iter().filter(|a| a.value.is_number()) {
            // Who goes and with what stands in the list too, and is set by flags and members of its own.
            let told = ["party.", "rope.", "terrain.", "gap."]
                .iter()
                .any(|t| a.name.starts_with(t));
            if !told && !names.contains(&a.name) {
                names.push(a.name.clone());
            }
        }
    }
    assert!(names.len() > 100, "only {} figures", names.len());
    let mut quiet = BTreeSet::new();
    let mut plans: BTreeMap<String, Plan> = BTreeMap::new();
    for name in &names {
        let scene = scene(name);
        let of_scene = format!(
            "{:?}",
            (&scene.party, scene.geojson(), &scene.laid.rules.choices)
        );
        let plan = plans
            .entry(of_scene)
            .or_insert_with(|| scene.plan())
            .clone();
        let value = entry(&plan, name)["value"].as_f64().unwrap();
        let other = moved(&scene, name, value)
            .unwrap_or_else(|| panic!("{name} cannot be moved from {value}"));
        let changed = other.plan();
        let listed = entry(&changed, name);
        assert_ne!(entry(&plan, name), listed, "{name}");
        assert_eq!(
            (&listed["origin"], &listed["standing"]),
            (&"trip file".into(), &"the leader's word".into()),
            "{name}"
        );
        if rest(&plan) == rest(&changed) {
            quiet.insert(name.as_str());
        }
    }
    let reasons = UNMOVED.iter().flat_map(|(_, names)| names.iter());
    let expected: BTreeSet<&str> = reasons.copied().collect();
    let unnamed: Vec<_> = quiet.difference(&expected).collect();
    assert!(
        unnamed.is_empty(),
        "{unnamed:?} change nothing: take a scene where they matter, or list them in UNMOVED with the reason"
    );
    let moved: Vec<_> = expected.difference(&quiet).collect();
    assert!(
        moved.is_empty(),
        "{moved:?} change something: take them out of UNMOVED"
    );
}

#[test]
fn every_word_listed_can_be_changed() {
    let pair = Trip::straight(&ZONES).party(&[80.0, 80.0]).ropes(&[70.0]);
    let three = Trip::straight(&ZONES).party(&[80.0; 3]).ropes(&[70.0]);
    for (scene, name, word) in [
        (&pair, "travel", "\"ski\""),
        (&pair, "knots", "\"never\""),
        (&pair, "reserve", "\"chest-coils\""),
        (&three, "cover", "\"anyone\""),
        (&pair, "rope_on_bare", "false"),
        (&pair, "snow", "\"firm\""),
    ] {
        let (plan, changed) = (
            scene.plan(),
            scene.clone().rules(&format!("{name} = {word}")).plan(),
        );
        assert_ne!(entry(&plan, name), entry(&changed, name), "{name}");
        assert_ne!(rest(&plan), rest(&changed), "{name}");
    }
}
