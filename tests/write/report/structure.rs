//! How the report is built: nothing fetched, nothing that runs, and a structure that everybody can follow.

use std::collections::BTreeSet;

use scraper::{Html, Selector};

use super::reports;
use crate::fixture::{
    page::{select, text},
    trip::Trip,
};

#[test]
fn nothing_is_fetched_and_nothing_runs() {
    for (what, report) in reports() {
        assert!(
            !report.contains("http://") && !report.contains("https://"),
            "{what}"
        );
        let css = report.replace("url(#", "");
        assert!(!css.contains("url(") && !css.contains("@import"), "{what}");
        let page = Html::parse_document(report);
        for gone in [
            "script",
            "iframe",
            "object",
            "embed",
            "link",
            "img",
            "video",
            "audio",
            "base",
            "form",
            "foreignObject",
            "use",
        ] {
            assert!(select(&page, gone).is_empty(), "{what}: {gone}");
        }
        for element in select(&page, "*") {
            for (name, value) in element.value().attrs() {
                assert!(
                    !name.starts_with("on")
                        && !matches!(name, "src" | "srcset" | "action" | "style"),
                    "{what}: {name}"
                );
                let inside = value.starts_with('#') || value.starts_with("data:image/png;base64,");
                assert!(!name.ends_with("href") || inside, "{what}: {name}={value}");
            }
        }
    }
}

#[test]
fn it_is_built_so_that_everybody_can_follow() {
    for (what, report) in reports() {
        let page = Html::parse_document(report);
        assert_eq!(select(&page, "html")[0].attr("lang"), Some("en"), "{what}");
        for one in [
            "head > title",
            "h1",
            "main",
            "body > header",
            "body > footer",
        ] {
            assert_eq!(select(&page, one).len(), 1, "{what}: {one}");
        }
        let levels: Vec<u32> = select(&page, "h1,h2,h3,h4,h5,h6")
            .iter()
            .map(|h| h.value().name()[1..].parse().unwrap())
            .collect();
        assert!(
            levels.windows(2).all(|w| w[1] <= w[0] + 1),
            "{what}: {levels:?}"
        );
        for table in select(&page, "table") {
            let has = |s: &str| table.select(&Selector::parse(s).unwrap()).next().is_some();
            assert!(
                has("caption") && has("thead th[scope=col]"),
                "{what}: {}",
                table.html()
            );
        }
        for svg in select(&page, "svg") {
            let named = svg.attr("role") == Some("img") && svg.attr("aria-labelledby").is_some();
            assert!(
                named || svg.attr("aria-hidden") == Some("true"),
                "{what}: a drawing without words"
            );
        }
        ids_resolve(what, &page);
    }
}

fn ids_resolve(what: &str, page: &Html) {
    let ids: Vec<&str> = select(page, "[id]")
        .iter()
        .filter_map(|e| e.attr("id"))
        .collect();
    let unique: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(ids.len(), unique.len(), "{what}: an id stands twice");
    let labelled = select(page, "[aria-labelledby]");
    let labelled = labelled.iter().filter_map(|e| e.attr("aria-labelledby"));
    let labels = select(page, "label");
    let labels = labels.iter().filter_map(|e| e.attr("for"));
    let links = select(page, "a");
    let links = links
        .iter()
        .filter_map(|e| e.attr("href")?.strip_prefix('#'));
    let clips = select(page, "[clip-path]");
    let clips = clips.iter().filter_map(|e| {
        e.attr("clip-path")?
            .strip_prefix("url(#")?
            .strip_suffix(')')
    });
    for id in labelled.chain(labels).chain(links).chain(clips) {
        assert!(unique.contains(id), "{what}: nothing has the id {id}");
    }
}

/// What found no place on the map of the route fills it (`RoomLeft` asks 200 times, ours); the map of a leg has its own places.
#[test]
fn the_map_of_a_leg_has_its_number_however_many_legs_there_are() {
    let mut trip = Trip::along(&[(0.0, 0.0), (0.0, 110_000.0)]).people(2);
    for zone in 0..205 {
        let south = 400.0 + 530.0 * f64::from(zone);
        trip = trip.zone((-200.0, south), (200.0, south + 60.0), r#"{"gap_m":2}"#);
    }
    let planned = trip.ropes(&[80.0]).planned();
    let page = Html::parse_document(&planned.written("html"));
    let last = planned
        .plan
        .legs
        .iter()
        .rfind(|leg| leg.roped)
        .expect("a roped leg");
    assert_eq!(
        planned.plan.legs.iter().filter(|leg| leg.roped).count(),
        205
    );
    let map = select(&page, "svg.drawing");
    let title = format!("map-leg{}", last.leg);
    let own = map
        .iter()
        .find(|svg| svg.value().attr("aria-labelledby") == Some(&title));
    let own = own.expect("its map");
    let pills = Selector::parse("text.pill").expect("a selector");
    let numbers: Vec<String> = own.select(&pills).map(text).collect();
    let is_own = |number: &String| number.split(' ').next() == Some(&last.leg.to_string());
    assert!(numbers.iter().any(is_own), "{numbers:?}");
}
