//! The sheet: the numbers of the plan, the same alone as on top of the report, and whole whatever anything is called.

use schrund::{practice::Origin, say::voice::Voice, write::json};
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

use crate::fixture::{
    page::{as_planned, number, select, text},
    planned::{Planned, over_the_pass},
    trip::Trip,
};

fn sheet(trip: &Planned) -> Html {
    Html::parse_document(&trip.written("sheet"))
}

fn inside<'a>(element: ElementRef<'a>, what: &str) -> Vec<ElementRef<'a>> {
    element.select(&Selector::parse(what).unwrap()).collect()
}

#[test]
fn its_numbers_are_those_of_the_json_plan() {
    for people in [2, 3, 7] {
        let trip = over_the_pass(people);
        let plan: Value = serde_json::from_str(&json::plan(&trip.plan).unwrap()).unwrap();
        let page = sheet(&trip);
        let legs = plan["legs"].as_array().unwrap();
        let rows = select(&page, "tr[data-step-leg]");
        assert_eq!(rows.len(), legs.len(), "a row a leg");
        for (row, leg) in rows.iter().zip(legs) {
            as_planned("from", number(*row, "data-from-m"), &leg["start_m"]);
        }
        let teams = legs.iter().flat_map(|leg| leg["teams"].as_array().unwrap());
        let drawn = select(&page, "article.card");
        for team in teams {
            let is = |card: &ElementRef<'_>| {
                let same = |attribute: &str, name: &str| {
                    (number(*card, attribute) - team[name].as_f64().unwrap()).abs() < 1e-9
                };
                same("data-tied-m", "spacing_m") && same("data-wound-m", "coil_carried_m")
            };
            let card = drawn
                .iter()
                .find(|card| is(card))
                .expect("every set-up is drawn");
            let marks = inside(*card, "tspan.mark");
            let ties = team["marks"].as_array().unwrap().iter();
            let ties: Vec<f64> = ties
                .filter(|mark| mark["kind"] == "tie-in")
                .map(|mark| mark["at_m"].as_f64().unwrap())
                .collect();
            assert_eq!(marks.len(), ties.len(), "where each ties in");
            for (mark, at_m) in marks.iter().zip(ties) {
                let shown: f64 = text(*mark).parse().unwrap();
                assert!((shown - at_m).abs() <= 0.05 + 1e-9, "{shown} for {at_m}");
            }
        }
    }
}

#[test]
fn the_field_table_has_every_gap_with_its_set_up() {
    let trip = over_the_pass(3);
    let page = sheet(&trip);
    let apart = select(&page, "table.seen td[data-seen-m]");
    let rows: Vec<_> = trip.plan.field.rows.iter().collect();
    for row in &rows {
        let shown = row.set_up.as_ref().map_or("–".to_owned(), |set_up| {
            let units = Voice::default().units;
            units.number(set_up.spacing_m, schrund::say::round::Round::Up)
        });
        let of_gap =
            |cell: &&ElementRef<'_>| (number(**cell, "data-seen-m") - row.gap_m).abs() < 1e-9;
        assert!(
            apart.iter().filter(of_gap).any(|cell| text(*cell) == shown),
            "{} m: {shown}",
            row.gap_m
        );
    }
    assert!(
        select(&page, "table.seen .askew").len() == 2,
        "met at 45° and 30°"
    );
}

/// The sheet stands on top of the report as it stands alone.
#[test]
fn it_is_the_first_of_the_report() {
    let trip = over_the_pass(3);
    let report = Html::parse_document(&trip.written("html"));
    let alone = sheet(&trip);
    for part in ["body > header", "main > div.sheet"] {
        let [there, here] = [&report, &alone].map(|page| select(page, part)[0].html());
        assert_eq!(there, here, "{part}");
    }
    let first = text(select(&alone, ".first")[0]);
    assert!(
        first.contains("No rope here is long enough: 93 m needed")
            && first.contains("Rope up first at A"),
        "{first}"
    );
}

#[test]
fn what_the_leader_wrote_is_text() {
    let name = "<script>alert(1)</script>";
    let zone = r#"{"name":"<script>alert(1)</script>","gap_m":9,"snow_depth_m":1}"#;
    let mut trip = Trip::straight(&[zone])
        .people(3)
        .ropes(&[40.0])
        .named(name, &[]);
    trip.ropes[0].name = Some(name.to_owned());
    let html = trip.planned().written("sheet");
    let page = Html::parse_document(&html);
    assert!(select(&page, "script").is_empty());
    assert_eq!(text(select(&page, "h1")[0]), name);
    assert!(!html.contains('⟦'), "every word is there");
}

/// Nobody is told of a rope who has none, and nothing falls over.
#[test]
fn a_trip_without_a_roped_leg_has_its_sheet() {
    let never = r#"{"gap_m":4,"surface":"bare","rope":"never"}"#;
    let page = sheet(&Trip::straight(&[never]).planned());
    assert!(select(&page, "article.card").is_empty() && select(&page, "#laid").is_empty());
    assert!(text(select(&page, ".day")[0]).contains("nobody roped"));
}

/// The hours of the latest start are those of a plan that starts then, and there are none where the start is early enough.
#[test]
fn the_hours_for_the_latest_start_are_those_of_a_plan_that_starts_then() {
    let starting = |start: &str| {
        let mut job = schrund::example::job().expect("the example");
        assert_eq!(job.timetable.set("start", start, Origin::Flag), Some(true));
        assert_eq!(
            job.timetable.set("bridges_until", "06:30", Origin::Flag),
            Some(true)
        );
        Planned::of(job)
    };
    let hours = |page: &Html, class: &str| -> Vec<String> {
        let cells = select(page, class);
        cells.into_iter().map(text).collect()
    };
    let planned = starting("06:00");
    let clock = planned.plan.clock.as_ref().expect("a start is given");
    let latest = clock.first.as_planned.latest_start.expect("bridges");
    let told = hours(&sheet(&planned), ".walk td.latest");
    let early = sheet(&starting(&latest.to_string()));
    let rows = hours(&early, ".walk tr:not(.tied):not(.stage) > .letter + td");
    assert_eq!(told, rows, "from {latest}");
    assert!(told.len() > 3 && told[0] == latest.to_string(), "{told:?}");
    assert!(hours(&early, ".latest").is_empty(), "early enough");
}
