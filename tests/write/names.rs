//! The leader's words stay words: no writer lets a name become markup, a formula or another line.

use std::collections::BTreeMap;

use schrund::{
    plan::{
        fact::Fact,
        finding::{At, What},
        leg::Leg,
        name::ZoneName,
    },
    say::plain,
    trip::party::EmergencyContact,
    write::csv,
};
use scraper::{Html, Selector};

use super::kml::texts;
use crate::fixture::{planned::Planned, trip::Trip};

fn names() -> Vec<String> {
    let names = [
        "<script>alert(1)</script>",
        "</title></svg></style><img src=x onerror=alert(1)>",
        "]]>",
        "=cmd|' /C calc'!A0",
        "a\u{202E}gnp.exe",
        "🧗‍♀️ Gletscher & \"Eis\" 'blau'",
        "&lt;b&gt;&#60;i&#62;",
        "bell\u{7}nul\u{0}line\u{2028}break\n# markdown",
        "$[name] {{x}} ${y}",
    ];
    let long = "<i>x".repeat(75);
    names.into_iter().map(str::to_owned).chain([long]).collect()
}

/// The trip with every word of the leader replaced by one.
fn named(name: &str) -> Planned {
    let mut trip = Trip::over_the_pass().people(6).sixty_each().planned();
    trip.job.route.name = Some(name.to_owned());
    trip.plan.route.name = Some(name.to_owned());
    for (zone, summary) in trip.job.zones.iter_mut().zip(&mut trip.plan.zones) {
        zone.name = Some(name.to_owned());
        summary.name = Some(name.to_owned());
        zone.note = Some(name.to_owned());
        zone.source = Some(name.to_owned());
        zone.observed_on = Some(name.to_owned());
    }
    for stage in &mut trip.job.route.stages {
        stage.name = Some(name.to_owned());
    }
    trip.plan.legs.iter_mut().for_each(|leg| rename(leg, name));
    for carry in &mut trip.plan.carry {
        carry.rope.as_mut().unwrap().name = Some(name.to_owned());
    }
    trip
}

/// Every finding says the name of a zone, with a hint or without one as it comes.
fn rename(leg: &mut Leg, name: &str) {
    let zone = ZoneName {
        zone: 1,
        name: Some(name.to_owned()),
    };
    for finding in &mut leg.findings {
        finding.at = At::Zone(zone.clone());
        finding.what = What::Planned(Fact::Along { zone: zone.clone() });
    }
    for team in &mut leg.teams {
        for person in &mut team.persons {
            person.called.name = Some(name.to_owned());
        }
        if let Some(rope) = &mut team.rope {
            rope.name = Some(name.to_owned());
        }
    }
}

fn report(name: &str) -> String {
    let mut trip = named(name);
    trip.job.name = Some(name.to_owned());
    trip.job.emergency = vec![EmergencyContact {
        name: name.to_owned(),
        contact: name.to_owned(),
        note: Some(name.to_owned()),
    }];
    trip.written("html")
}

/// How often each element stands in a page.
fn elements(html: &str) -> Vec<(String, usize)> {
    let page = Html::parse_document(html);
    assert!(
        page.errors.is_empty() || !page.errors.iter().any(|e| e.contains("Unexpected")),
        "{:?}",
        page.errors
    );
    let mut counts = BTreeMap::new();
    for element in page.select(&Selector::parse("*").unwrap()) {
        *counts.entry(element.value().name().to_owned()).or_insert(0) += 1;
    }
    counts.remove("code");
    counts.remove("bdi");
    counts.into_iter().collect()
}

#[test]
fn in_the_report_names_are_text_and_the_page_is_built_as_ever() {
    let plain_page = elements(&report("Icefall"));
    for name in names() {
        let html = report(&name);
        assert_eq!(elements(&html), plain_page, "{name:?}");
        let page = Html::parse_document(&html);
        let title = page.select(&Selector::parse("h1").unwrap()).next().unwrap();
        assert_eq!(title.text().collect::<String>(), plain::line(&name));
        assert!(
            !html.contains(['\u{0}', '\u{7}', '\u{202E}', '\u{2028}']),
            "{name:?}"
        );
    }
}

#[test]
fn in_gpx_names_are_text() {
    for name in names() {
        let text = named(&name).written("gpx");
        let read = ::gpx::read(text.as_bytes()).unwrap_or_else(|e| panic!("{name:?}: {e}"));
        let metadata = read.metadata.unwrap().name.unwrap();
        assert_eq!(metadata.trim(), plain::line(&name).trim());
        assert_eq!(
            read.tracks[0].name.as_deref().map(str::trim),
            Some(plain::line(&name).trim())
        );
        assert!(
            read.waypoints.iter().any(|w| w
                .description
                .as_deref()
                .unwrap()
                .contains(plain::line(&name).trim())),
            "{name:?}"
        );
    }
}

#[test]
fn in_kml_names_are_text_for_xml_and_for_the_html_of_balloons() {
    for name in names() {
        let text = named(&name).written("kml");
        let shown = plain::line(&name);
        assert!(
            texts(&text, "name").iter().any(|n| n.contains(&shown)),
            "{name:?}"
        );
        let descriptions = texts(&text, "description");
        assert!(!descriptions[0].contains('<'), "{name:?}: {descriptions:?}");
        for description in &descriptions[1..] {
            let as_html = Html::parse_fragment(description);
            let all = Selector::parse("*").unwrap();
            let tags = as_html.select(&all).map(|e| e.value().name());
            assert_eq!(
                tags.collect::<Vec<_>>(),
                ["html", "b", "br"],
                "the root of the fragment, and the title of the balloon: {description}"
            );
        }
    }
}

#[test]
fn in_json_and_geojson_names_are_the_very_same() {
    for name in names() {
        let trip = named(&name);
        let plan: serde_json::Value = serde_json::from_str(&trip.written("json")).unwrap();
        assert_eq!(plan["route"]["name"].as_str(), Some(name.as_str()));
        let map: serde_json::Value = serde_json::from_str(&trip.written("geojson")).unwrap();
        assert_eq!(
            map["features"][0]["properties"]["note"].as_str(),
            Some(name.as_str())
        );
    }
}

#[test]
fn in_a_spreadsheet_no_cell_is_a_formula() {
    for name in names() {
        let text = named(&name).written("csv");
        let mut reader = ::csv::Reader::from_reader(text.as_bytes());
        let mut cells = 0;
        for record in reader.records() {
            for cell in record.unwrap().iter() {
                let number = cell.parse::<f64>().is_ok();
                assert!(
                    number || !cell.starts_with(['=', '+', '-', '@', '\t', '\r']),
                    "{cell}"
                );
                cells += 1;
            }
        }
        assert!(cells > 0, "the table has cells");
    }
    assert_eq!(csv::guarded("=cmd|' /C calc'!A0"), "'=cmd|' /C calc'!A0");
}

#[test]
fn in_a_message_and_a_terminal_names_stay_on_their_line() {
    let lines = |text: &str| text.lines().count();
    let usual = lines(&named("Icefall").written("text"));
    for name in names() {
        let trip = named(&name);
        let message = trip.written("text");
        assert_eq!(lines(&message), usual, "{name:?}");
        for text in [message, trip.written("table")] {
            let odd =
                |c: char| c != '\n' && (c.is_control() || matches!(c, '\u{2028}' | '\u{202E}'));
            assert!(!text.contains(odd), "{name:?}");
        }
    }
}

#[test]
fn hostile_files_are_read_and_written_like_any_other() {
    let mut ran = 0;
    for name in names() {
        // A NUL in a name is refused, and told.
        let title = name.replace('\0', "");
        let trip = Trip::over_the_pass_of(&title, &title, &name).planned();
        let html = trip.written("html");
        assert!(
            !html.contains("<script>") && !html.contains("<img"),
            "{name:?}"
        );
        let globe = trip.written("kml");
        assert!(!texts(&globe, "name").is_empty(), "{name:?}");
        ran += 1;
    }
    assert!(ran >= 10, "every name ran");
}
