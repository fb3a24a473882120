//! The report: the numbers of the plan, nothing fetched, and a structure that everybody can follow.

mod holding;
mod same;
mod structure;

use std::{collections::BTreeSet, sync::LazyLock};

use schrund::{
    fault::Fault,
    ground::relief::Relief,
    plan::{Plan, without::Difference},
    say::{round::Round, units::Units, voice::Voice},
    trip::party::EmergencyContact,
    write::{json, sheet::Other},
};
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

use crate::fixture::{
    ground::at,
    page::{as_planned, number, select, text},
    planned::{Planned, codes, findings, over_the_pass, setups},
    trip::{SNOW, Trip},
};

fn others() -> Vec<Other> {
    let other = |(differs, people)| {
        let job = Trip::over_the_pass().people(people).ropes(&[]).job();
        let plan: Result<Plan, Vec<Fault>> = schrund::plan(&job);
        Other {
            differs,
            people,
            plan,
        }
    };
    [(Difference::OneFewer, 1), (Difference::OneMore, 4)]
        .map(other)
        .to_vec()
}

fn relief() -> Relief {
    Relief {
        south_west: at(-1500.0, -2200.0),
        north_east: at(5400.0, 2200.0),
        columns: 30,
        rows: 20,
        heights_m: (0..600_u16)
            .map(|i| (i % 97 != 0).then(|| 2500.0 + f32::from(i % 30) * 20.0))
            .collect(),
    }
}

/// A trip with everything that a report can show, in feet.
fn everything() -> Planned {
    let contacts = [EmergencyContact {
        name: "Rescue".to_owned(),
        contact: "channel 3".to_owned(),
        note: Some("from the saddle on".to_owned()),
    }];
    let trip = Trip::over_the_pass().named("Two days in June", &contacts);
    let mut trip = trip.planned().spoken(Voice {
        units: Units::Imperial,
        ..Voice::default()
    });
    trip.scene.relief = Some(relief());
    trip.scene.others = others();
    trip
}

/// Reports of several kinds of trip, for what must hold of all; written anew.
fn write_reports() -> Vec<(&'static str, String)> {
    let flat = Trip::over_the_pass().flat().planned();
    vec![
        ("one team", over_the_pass(3).written("html")),
        ("two teams", over_the_pass(7).written("html")),
        ("no heights", flat.written("html")),
        ("everything", everything().written("html")),
    ]
}

/// The same, written once for all tests.
fn reports() -> &'static [(&'static str, String)] {
    static REPORTS: LazyLock<Vec<(&str, String)>> = LazyLock::new(write_reports);
    &REPORTS
}

fn report(name: &str) -> &'static str {
    let (_, report) = reports().iter().find(|(n, _)| *n == name).unwrap();
    report
}

#[test]
fn its_numbers_are_those_of_the_json_plan() {
    let trip = over_the_pass(7);
    let plan: Value = serde_json::from_str(&json::plan(&trip.plan).unwrap()).unwrap();
    let page = Html::parse_document(&trip.written("html"));
    let legs = plan["legs"].as_array().unwrap();
    let rows = select(&page, "tr[data-verdict]");
    assert_eq!(rows.len(), legs.len());
    for (row, leg) in rows.iter().zip(legs) {
        for (attribute, name) in [
            ("data-start-m", "start_m"),
            ("data-end-m", "end_m"),
            ("data-length-m", "length_m"),
            ("data-leg", "leg"),
        ] {
            as_planned(name, number(*row, attribute), &leg[name]);
        }
        assert_eq!(row.attr("data-verdict"), leg["verdict"].as_str());
    }
    let teams: Vec<&Value> = legs
        .iter()
        .flat_map(|l| l["teams"].as_array().unwrap())
        .collect();
    let rows = select(&page, "tr[data-spacing-m]");
    assert!(rows.len() >= 4, "two teams on some legs");
    assert_eq!(rows.len(), teams.len());
    for (row, team) in rows.iter().zip(&teams) {
        as_planned(
            "spacing",
            number(*row, "data-spacing-m"),
            &team["spacing_m"],
        );
        as_planned("knots", number(*row, "data-knots"), &team["knots"]["count"]);
        as_planned("coil", number(*row, "data-coil-m"), &team["coil_m"]);
        as_planned(
            "rope",
            number(*row, "data-rope-m"),
            &team["ledger"]["total_m"],
        );
    }
    let covers = teams.iter().filter_map(|t| t.get("covers_gap_m"));
    let cells = select(&page, "td[data-covers-gap-m]");
    assert_eq!(cells.len(), covers.clone().count());
    for (cell, covers) in cells.iter().zip(covers) {
        as_planned("covers", number(*cell, "data-covers-gap-m"), covers);
    }
}

#[test]
fn every_assumption_and_finding_of_the_plan_is_there() {
    let trip = over_the_pass(3);
    let page = Html::parse_document(&trip.written("html"));
    let rows = select(&page, "tr[data-name]");
    let shown: BTreeSet<&str> = rows.iter().filter_map(|r| r.attr("data-name")).collect();
    let rests_on: BTreeSet<&str> = trip
        .plan
        .assumptions
        .iter()
        .map(|a| a.name.as_str())
        .collect();
    assert!(
        rests_on.len() > 30,
        "the fixture rests on the whole rule book"
    );
    assert_eq!(shown, rests_on);
    for assumption in &trip.plan.assumptions {
        let row = rows
            .iter()
            .find(|r| r.attr("data-name") == Some(&assumption.name))
            .unwrap();
        let row = text(*row);
        assert!(
            row.contains(&assumption.standing) && row.contains(assumption.origin.as_str()),
            "{row}"
        );
    }
    let shown: BTreeSet<&str> = select(&page, "li[data-code]")
        .iter()
        .filter_map(|r| r.attr("data-code"))
        .collect();
    let said: BTreeSet<&str> = codes(findings(&trip.plan)).into_iter().collect();
    assert!(said.len() > 3, "the fixture gives something to say");
    assert_eq!(shown, said);
}

fn marks_of(table: ElementRef<'_>) -> Vec<f64> {
    let rows = Selector::parse("tr[data-at-m]").unwrap();
    table
        .select(&rows)
        .map(|r| number(r, "data-at-m"))
        .collect()
}

#[test]
fn every_rope_is_drawn_with_all_its_marks() {
    let trip = over_the_pass(2);
    let page = Html::parse_document(&trip.written("html"));
    let drawn = select(&page, "article.rope");
    let roped: Vec<_> = trip.plan.legs.iter().filter(|l| l.roped).collect();
    assert!(
        !drawn.is_empty() && drawn.len() <= roped.len(),
        "{}",
        drawn.len()
    );
    let marks: Vec<Vec<f64>> = select(&page, "table.marks")
        .iter()
        .map(|t| marks_of(*t))
        .collect();
    for leg in roped {
        let want = leg.teams[0].marks.iter().map(|m| m.at_m);
        let same = |marks: &&Vec<f64>| {
            marks.len() == want.len()
                && marks
                    .iter()
                    .zip(want.clone())
                    .all(|(a, b)| (a - b).abs() < 1e-6)
        };
        assert!(marks.iter().any(|m| same(&m)), "leg {}: {marks:?}", leg.leg);
    }
    let knots = setups(&trip.plan).map(|t| t.knots.count).max().unwrap();
    assert!(knots > 0, "the fixture has a leg with knots");
    assert!(
        !select(&page, "svg path.knot").is_empty(),
        "knots are drawn"
    );
}

#[test]
fn it_promises_nothing() {
    for (what, report) in reports() {
        let page = Html::parse_document(report);
        let said = text(page.root_element()).to_lowercase();
        let words: Vec<&str> = said.split(|c: char| !c.is_alphabetic()).collect();
        for promise in [
            "safe",
            "safely",
            "safety",
            "secure",
            "guaranteed",
            "harmless",
        ] {
            assert!(!words.contains(&promise), "{what}: {promise}");
        }
        assert!(said.contains("inside the planning limits"), "{what}");
    }
}

#[test]
fn the_same_trip_gives_the_same_bytes() {
    assert!(reports() == write_reports(), "two runs, two reports");
}

#[test]
fn other_parties_are_shown_or_refused_with_the_reason() {
    let page = Html::parse_document(report("everything"));
    assert_eq!(
        select(&page, ".panel").len(),
        3,
        "as planned, and two others"
    );
    assert_eq!(select(&page, "input[type=radio][checked]").len(), 1);
    let refused = select(&page, ".refused");
    assert_eq!(
        text(refused[0]),
        "a party of 1 cannot rope up: nobody goes alone."
    );
    let other = others();
    let spacing = other[1].plan.as_ref().unwrap().legs[1].teams[0].people;
    assert!(
        text(select(&page, "#panel-2")[0]).contains(&format!("{spacing} people, ")),
        "its set-ups"
    );
}

#[test]
fn what_is_given_is_shown_and_what_is_not_given_is_said() {
    let everything = Html::parse_document(report("everything"));
    let emergency = text(select(&everything, "#emergency")[0]);
    for part in ["Rescue", "channel 3", "from the saddle on"] {
        assert!(emergency.contains(part), "{emergency}");
    }
    assert_eq!(text(select(&everything, "h1")[0]), "Two days in June");
    assert_eq!(
        select(&everything, "#map image").len(),
        1,
        "the shaded ground"
    );
    assert!(
        !select(&everything, "#map .contour path").is_empty(),
        "height lines"
    );
    let plain = Html::parse_document(report("one team"));
    assert!(
        !select(&plain, "#emergency .lines div").is_empty(),
        "lines to fill in"
    );
    assert!(select(&plain, "#map image").is_empty(), "no ground known");
    assert_eq!(select(&plain, "#profile svg").len(), 1);
    let flat = Html::parse_document(report("no heights"));
    assert!(
        select(&flat, "#profile svg").is_empty(),
        "no heights, no profile"
    );
    assert!(
        text(select(&flat, "#profile")[0]).contains("No heights are known"),
        "it says so"
    );
}

#[test]
fn every_zone_met_has_its_number_and_width_on_the_map_of_its_leg() {
    let trip = over_the_pass(3);
    let page = Html::parse_document(&trip.written("html"));
    let roped = trip.plan.legs.iter().filter(|l| l.roped);
    let maps = select(&page, "#insets figure");
    assert_eq!(maps.len(), roped.clone().count());
    for (map, leg) in maps.iter().zip(roped) {
        let widths = Selector::parse("text.width").unwrap();
        let shown: Vec<String> = map.select(&widths).map(text).collect();
        for zone in &leg.zones {
            let gap_m = trip.job.zones[zone - 1].gap.max_m;
            let width = Units::Metric.length(gap_m, Round::Up);
            let width = format!("Z{zone} {width}");
            assert!(
                shown.contains(&width),
                "leg {}: {width} in {shown:?}",
                leg.leg
            );
        }
    }
}

/// "Party 0 on 0 ropes" is not true of people who walk.
#[test]
fn who_walks_without_a_rope_is_not_counted_as_nobody() {
    let never = r#"{"gap_m":4,"surface":"bare","rope":"never"}"#;
    let html = Trip::straight(&[never]).planned().written("html");
    assert!(html.contains("nobody roped") && !html.contains("on 0 ropes"));
}

/// Rope needed and rope carried are rows of their own, and each adds up.
#[test]
fn both_rows_of_the_ledger_add_up() {
    let html = Trip::straight(&[SNOW])
        .ropes(&[100.0])
        .planned()
        .written("html");
    let page = Html::parse_document(&html);
    let rows = select(&page, "table.ledger tbody tr");
    assert_eq!(rows.len(), 2, "needed and carried");
    let mut totals = Vec::new();
    for row in rows {
        let cells = row.child_elements().skip(1).map(text);
        let mut lengths: Vec<f64> = cells.map(|cell| cell.parse().expect("metres")).collect();
        let total = lengths.pop().expect("the last is all of them");
        assert!(
            (lengths.iter().sum::<f64>() - total).abs() < 1e-9,
            "{lengths:?}"
        );
        totals.push(total);
    }
    assert_eq!(totals, [42.0, 100.0]);
}

/// Feet are rounded row by row: where they do not come to the sum that stands elsewhere too, it is marked.
#[test]
fn a_ledger_in_feet_adds_up_or_says_that_it_is_rounded() {
    let page = Html::parse_document(report("everything"));
    let (mut rounded, mut exact) = (0, 0);
    for row in select(&page, "table.ledger tbody tr") {
        let cells: Vec<String> = row.child_elements().skip(1).map(text).collect();
        let (total, parts) = cells.split_last().expect("cells");
        let feet = |cell: &String| cell.parse::<f64>().expect("feet");
        let sum: f64 = parts.iter().map(feet).sum();
        let shown = total.trim_start_matches("≈ ").to_owned();
        let adds_up = (sum - feet(&shown)).abs() < 1e-6;
        assert_eq!(adds_up, shown == *total, "{cells:?}");
        *(if adds_up { &mut exact } else { &mut rounded }) += 1;
    }
    assert!(rounded > 0, "{rounded} rounded, {exact} exact");
}

#[test]
fn a_report_in_feet_has_no_metres_under_its_profile_and_letters_are_points() {
    let page = Html::parse_document(report("everything"));
    let key = select(&page, "p.fine").into_iter().map(text);
    let steep: Vec<String> = key.filter(|text| text.contains("Steep: ")).collect();
    assert!(
        !steep.is_empty() && steep.iter().all(|text| text.ends_with(" ft.")),
        "{steep:?}"
    );
    let heads = select(&page, "table.changes thead th");
    assert_eq!(text(heads[0]), "Point");
}

/// A third more was printed with sixteen decimals.
#[test]
fn assumptions_are_printed_as_figures_are_shown() {
    let html = over_the_pass(3).written("html");
    let page = Html::parse_document(&html);
    let row = select(&page, "tr[data-name=slower_factor]")[0];
    assert!(
        text(row).contains("1.33") && !text(row).contains("1.333"),
        "{}",
        text(row)
    );
    for name in [
        "snow",
        "rope_diameter_mm",
        "climb_unknown_m",
        "one_place_m",
        "timed_piece_m",
    ] {
        let rows = select(&page, &format!("tr[data-name={name}]"));
        assert_eq!(rows.len(), 1, "{name}");
    }
}
