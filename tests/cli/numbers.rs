//! Numbers of flags: understood as people write them, or answered with what to write.

use crate::fixture::program::{root, schrund, text};

/// Plans the example with one flag more: exit code, plan, standard error.
fn plan(flag: &str, value: &str) -> (Option<i32>, String, String) {
    let mut args = vec![
        "plan",
        "route.gpx",
        "zones.geojson",
        "--format",
        "json",
        flag,
        value,
    ];
    if flag != "--party" {
        args.extend(["--party", "3"]);
    }
    let ran = schrund(&root().join("tests/cases/no-rope-fits"), &args);
    (ran.status.code(), text(&ran.stdout), text(&ran.stderr))
}

/// The values of the assumptions whose names begin so.
fn assumed(plan: &str, name: &str) -> Vec<f64> {
    let plan: serde_json::Value = serde_json::from_str(plan).expect("a plan is JSON");
    let all = plan["assumptions"].as_array().expect("a list");
    let of_name = all
        .iter()
        .filter(|a| a["name"].as_str().is_some_and(|n| n.starts_with(name)));
    of_name.filter_map(|a| a["value"].as_f64()).collect()
}

#[test]
fn lengths_are_understood_as_people_write_them() {
    for (value, want) in [
        ("60", 60.0),
        ("60.5", 60.5),
        ("60,5", 60.5),
        ("60m", 60.0),
        ("60,5 m", 60.5),
        ("60 Metres", 60.0),
        ("6e1", 60.0),
    ] {
        for (flag, name) in [("--margin", "margin_m"), ("--rope", "rope.1")] {
            let (code, out, err) = plan(flag, value);
            assert!(matches!(code, Some(0 | 5)), "{flag} {value}: {err}");
            assert_eq!(assumed(&out, name), [want], "{flag} {value}");
        }
    }
    assert_eq!(assumed(&plan("--margin", "20,25").1, "margin_m"), [20.25]);
    for value in ["margin_m=20m", "margin_m=20 m", "margin_m=20,0"] {
        let (code, out, err) = plan("--assume", value);
        assert!(matches!(code, Some(0 | 5)), "{value}: {err}");
        assert_eq!(assumed(&out, "margin_m"), [20.0], "{value}");
    }
    assert_eq!(
        assumed(&plan("--assume", "along_deg=35°").1, "along_deg"),
        [35.0]
    );
}

#[test]
fn lengths_that_are_not_understood_are_answered_with_what_to_write() {
    for (flag, value, cure) in [
        ("--margin", "200ft", "it takes metres: write `60.96`"),
        ("--gap", "200 ft", "it takes metres: write `60.96`"),
        (
            "--rope",
            "3,500",
            "the comma can mean two things: write `3.500` or `3500`",
        ),
        (
            "--margin",
            "wide",
            "it takes one length in metres, such as `--margin 20`",
        ),
        (
            "--rope",
            "60 x 2",
            "it takes one length in metres, such as `--rope 60`",
        ),
        (
            "--rope",
            "60,70",
            "each rope has its own flag: `--rope 60 --rope 70`; one rope of 60.70 m is `--rope 60.70`\n",
        ),
        (
            "--rope",
            "60+50 m",
            "each rope has its own flag: `--rope 60 --rope 50`",
        ),
        (
            "--rope",
            "50,60,70",
            "each rope has its own flag: `--rope 50 --rope 60 --rope 70`",
        ),
    ] {
        let (code, _, err) = plan(flag, value);
        assert_eq!(code, Some(2), "{flag} {value}: {err}");
        assert!(err.contains(cure), "{flag} {value}: {err}");
    }
    let (code, _, err) = plan("--assume", "margin_m=20ft");
    assert_eq!(code, Some(2));
    assert!(err.contains("write `--assume margin_m=6.1`"), "{err}");
}

#[test]
fn people_are_counted_or_weighed() {
    for value in ["3", "3p", "3 people", "3 Pers", "3.0"] {
        let (code, out, err) = plan("--party", value);
        assert!(matches!(code, Some(0 | 5)), "{value}: {err}");
        let counted = out.matches("\"mass_kg\": 80.0").count();
        assert!(counted > 0 && !out.contains("\"mass_kg\": 3.0"), "{value}");
    }
    for value in ["82.5,75", "82.5kg, 75 kg", "82,5; 75", "82,5 kg;75kg"] {
        let (code, out, err) = plan("--party", value);
        assert!(matches!(code, Some(0 | 5)), "{value}: {err}");
        assert!(out.contains("\"mass_kg\": 82.5"), "{value}");
    }
    for (value, cure) in [
        (
            "82,5",
            "a comma stands between people, and nobody weighs 5 kg: if one person weighs 82.5 kg, write `--party 82.5,…`, and the mass of everybody else",
        ),
        (
            "82,75,5",
            "nobody weighs 5 kg: if one person weighs 75.5 kg, write `--party 82,75.5`; if 5 is a slip, write that mass in full",
        ),
        (
            "3p,75",
            "`3p` is a head count: give one count, or the mass of each",
        ),
        (
            "many",
            "`many` is no number: give a head count, `--party 3`, or masses with pack in kg",
        ),
        (
            "82,,75",
            "`` is no number: give a head count, `--party 3`, or masses with pack in kg",
        ),
    ] {
        let (code, _, err) = plan("--party", value);
        assert_eq!(code, Some(2), "{value}: {err}");
        assert!(err.contains(cure), "{value}: {err}");
    }
}

#[test]
fn masses_that_look_like_pounds_are_asked_about_and_counted_as_given() {
    let (code, pounds, _) = plan("--party", "180,165,200");
    let told: serde_json::Value = serde_json::from_str(&pounds).expect("a plan");
    let notices = told["findings"].to_string();
    assert!(notices.contains("[82, 75, 91]"), "{notices}");
    assert!(notices.contains("\"perhaps-pounds\""), "{notices}");
    assert_eq!(assumed(&pounds, "party.2"), [165.0]);
    let (same, one_light, _) = plan("--party", "180,139,200");
    assert!(!one_light.contains("perhaps-pounds"), "one is plausible");
    assert_eq!(code, same, "a question is no fault");
}
