//! The report: the numbers of the plan, nothing fetched, and a structure that everybody can follow.

use std::collections::BTreeSet;

use schrund::{
    Planner,
    geometry::LonLat,
    ground::relief::Relief,
    say::units::Units,
    trip::{
        job::Case,
        party::{Contact, Party},
    },
    write::{
        json,
        report::{Extras, Variant, page},
    },
};
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

use crate::fixture::{Trip, route, rules, trip, zones};

pub(crate) fn select<'a>(page: &'a Html, what: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(what).unwrap()).collect()
}

pub(crate) fn text(element: ElementRef<'_>) -> String {
    element.text().collect()
}

pub(crate) fn number(element: ElementRef<'_>, attribute: &str) -> f64 {
    element.attr(attribute).unwrap().parse().unwrap()
}

pub(crate) fn close(what: &str, got: f64, want: &Value) {
    let want = want.as_f64().unwrap();
    assert!((got - want).abs() < 1e-9, "{what}: got {got}, want {want}");
}

fn others(trip: &Trip) -> Vec<Variant> {
    let rules = rules();
    let variant = |people: usize| {
        let party = Party::of(people, &rules);
        let case = Case {
            route: &trip.route,
            zones: &trip.zones,
            party: &party,
            ropes: &[],
            rules: &rules,
            timetable: &Default::default(),
            terrain: None,
            glaciers: &[],
            notices: &[],
        };
        Variant {
            label: format!("{people} people"),
            plan: Planner::of(case).and_then(|p| p.plan()),
        }
    };
    vec![variant(1), variant(4)]
}

fn relief() -> Relief {
    Relief {
        south_west: LonLat::new(7.98, 46.48),
        north_east: LonLat::new(8.07, 46.52),
        columns: 30,
        rows: 20,
        heights_m: (0..600_u16)
            .map(|i| (i % 97 != 0).then(|| 2500.0 + f32::from(i % 30) * 20.0))
            .collect(),
    }
}

/// Reports of several kinds of trip, for what must hold of all.
pub(crate) fn reports() -> Vec<(&'static str, String)> {
    let plain = |people: usize| page(&trip(people).sheet(), &Extras::default());
    let flat = Trip::of(
        &route("Flat")
            .replace("<ele>", "<!--")
            .replace("</ele>", "-->"),
        &zones("Icefall", ""),
        3,
    );
    let full = trip(3);
    let (variants, relief) = (others(&full), relief());
    let contacts = [Contact {
        name: "Rescue".to_owned(),
        contact: "channel 3".to_owned(),
        note: Some("from the saddle on".to_owned()),
    }];
    let extras = Extras {
        units: Units::Imperial,
        trip: Some("Two days in June"),
        relief: Some(&relief),
        variants: &variants,
        emergency: &contacts,
        ..Extras::default()
    };
    vec![
        ("one team", plain(3)),
        ("two teams", plain(7)),
        ("no heights", page(&flat.sheet(), &Extras::default())),
        ("everything", page(&full.sheet(), &extras)),
    ]
}

fn report(name: &str) -> String {
    reports().into_iter().find(|(n, _)| *n == name).unwrap().1
}

#[test]
fn its_numbers_are_those_of_the_json_plan() {
    let trip = trip(7);
    let plan: Value = serde_json::from_str(&json::plan(&trip.plan).unwrap()).unwrap();
    let page = Html::parse_document(&page(&trip.sheet(), &Extras::default()));
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
            close(name, number(*row, attribute), &leg[name]);
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
        close(
            "spacing",
            number(*row, "data-spacing-m"),
            &team["spacing_m"],
        );
        close("knots", number(*row, "data-knots"), &team["knots"]["count"]);
        close("coil", number(*row, "data-coil-m"), &team["coil_m"]);
        close(
            "rope",
            number(*row, "data-rope-m"),
            &team["ledger"]["total_m"],
        );
    }
    let covers = teams.iter().filter_map(|t| t.get("covers_gap_m"));
    let cells = select(&page, "td[data-covers-gap-m]");
    assert_eq!(cells.len(), covers.clone().count());
    for (cell, covers) in cells.iter().zip(covers) {
        close("covers", number(*cell, "data-covers-gap-m"), covers);
    }
}

#[test]
fn every_assumption_and_finding_of_the_plan_is_there() {
    let trip = trip(3);
    let page = Html::parse_document(&page(&trip.sheet(), &Extras::default()));
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
            row.contains(&assumption.standing) && row.contains(&assumption.origin),
            "{row}"
        );
    }
    let shown: BTreeSet<&str> = select(&page, "li[data-code]")
        .iter()
        .filter_map(|r| r.attr("data-code"))
        .collect();
    let legs = trip.plan.legs.iter().flat_map(|l| &l.findings);
    let said: BTreeSet<&str> = legs
        .chain(&trip.plan.findings)
        .map(|f| f.code.as_str())
        .collect();
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
    let trip = trip(2);
    let page = Html::parse_document(&page(&trip.sheet(), &Extras::default()));
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
    let knots: usize = trip
        .plan
        .legs
        .iter()
        .flat_map(|l| &l.teams)
        .map(|t| t.knots.count)
        .max()
        .unwrap();
    assert!(knots > 0, "the fixture has a leg with knots");
    assert!(
        !select(&page, "svg path.knot").is_empty(),
        "knots are drawn"
    );
}

#[test]
fn it_promises_nothing() {
    for (what, report) in reports() {
        let page = Html::parse_document(&report);
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
        assert!(said.contains("inside the limits you gave"), "{what}");
    }
}

#[test]
fn the_same_trip_gives_the_same_bytes() {
    assert_eq!(reports(), reports());
}

#[test]
fn other_parties_are_shown_or_refused_with_the_reason() {
    let report = report("everything");
    let page = Html::parse_document(&report);
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
    let other = others(&trip(3));
    let spacing = other[1].plan.as_ref().unwrap().legs[1].teams[0].people;
    assert!(
        text(select(&page, "#panel-2")[0]).contains(&format!("{spacing} × ")),
        "its set-ups"
    );
}

#[test]
fn what_is_given_is_shown_and_what_is_not_given_is_said() {
    let everything = Html::parse_document(&report("everything"));
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
    let plain = Html::parse_document(&report("one team"));
    assert!(
        !select(&plain, "#emergency .lines div").is_empty(),
        "lines to fill in"
    );
    assert!(select(&plain, "#map image").is_empty(), "no ground known");
    assert_eq!(select(&plain, "#profile svg").len(), 1);
    let flat = Html::parse_document(&report("no heights"));
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
fn every_zone_met_has_its_width_on_the_map_of_its_leg() {
    let trip = trip(3);
    let page = Html::parse_document(&page(&trip.sheet(), &Extras::default()));
    let roped = trip.plan.legs.iter().filter(|l| l.roped);
    let maps = select(&page, "#insets figure");
    assert_eq!(maps.len(), roped.clone().count());
    for (map, leg) in maps.iter().zip(roped) {
        let widths = Selector::parse("text.width").unwrap();
        let shown: Vec<String> = map.select(&widths).map(text).collect();
        for zone in &leg.zones {
            let width = Units::Metric.length(
                trip.zones[zone - 1].gap.max_m,
                schrund::say::round::Round::Up,
            );
            assert!(
                shown.contains(&width),
                "leg {}: {width} in {shown:?}",
                leg.leg
            );
        }
    }
}
