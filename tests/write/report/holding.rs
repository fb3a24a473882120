//! What the report says of falls, hauls and kept set-ups: the numbers of the JSON plan, every one of them.

use schrund::{physics::haul::System, write::json};
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

use crate::fixture::{
    page::{as_planned, number, select, text},
    planned::{Planned, over_the_pass},
};

fn json_and_page(trip: &Planned) -> (Value, Html) {
    let plan = serde_json::from_str(&json::plan(&trip.plan).unwrap()).unwrap();
    (plan, Html::parse_document(&trip.written("html")))
}

/// Every set-up of the plan with its leg.
fn setups(plan: &Value) -> Vec<(&Value, &Value)> {
    let legs = plan["legs"].as_array().unwrap().iter();
    legs.flat_map(|leg| {
        let teams = leg["teams"].as_array().unwrap().iter();
        teams.map(move |team| (&leg["leg"], team))
    })
    .collect()
}

/// The tables of a class that are for the set-up: `data-uses` has `leg/team`.
fn tables_for<'a>(page: &'a Html, class: &str, leg: &Value, team: &Value) -> Vec<ElementRef<'a>> {
    let this = format!("{leg}/{}", team["team"]);
    let all = select(page, &format!("table.{class}[data-uses]"));
    let is_for = |t: &ElementRef<'_>| t.attr("data-uses").unwrap().split(' ').any(|u| u == this);
    all.into_iter().filter(is_for).collect()
}

fn rows<'a>(table: ElementRef<'a>) -> Vec<ElementRef<'a>> {
    table
        .select(&Selector::parse("tbody tr").unwrap())
        .collect()
}

fn all_close(row: ElementRef<'_>, want: &Value, names: &[(&str, &str)]) {
    for (attribute, pointer) in names {
        let want = want.pointer(pointer).unwrap();
        as_planned(pointer, number(row, attribute), want);
    }
}

#[test]
fn the_worst_falls_are_those_of_the_json_plan() {
    for people in [2, 3, 7] {
        let (plan, page) = json_and_page(&over_the_pass(people));
        let setups = setups(&plan);
        let answered = setups
            .iter()
            .filter(|(_, team)| team.get("arrest").is_some());
        let found = select(&page, "tr[data-arrest]");
        assert!(!found.is_empty(), "{people}: the model answers somewhere");
        assert_eq!(found.len(), answered.clone().count(), "{people}");
        for (leg, team) in answered {
            let arrest = &team["arrest"];
            let selector = format!("tr[data-arrest=\"{leg}\"][data-team=\"{}\"]", team["team"]);
            let row = select(&page, &selector)[0];
            all_close(
                row,
                arrest,
                &[
                    ("data-falls", "/falls"),
                    ("data-slide-from-m", "/slide_m/0"),
                    ("data-slide-to-m", "/slide_m/1"),
                    ("data-from-kn", "/holder_force_kn/0"),
                    ("data-to-kn", "/holder_force_kn/1"),
                    ("data-slope-deg", "/slope_deg"),
                ],
            );
            let holds = arrest["holds"].as_array().unwrap();
            let holds: Vec<String> = holds.iter().map(Value::to_string).collect();
            assert_eq!(row.attr("data-holds").unwrap(), holds.join(" "));
            assert_eq!(row.attr("data-held"), arrest["verdict"].as_str());
            let shown = text(row);
            for word in ["says", "snow"] {
                assert!(shown.contains(arrest[word].as_str().unwrap()), "{shown}");
            }
        }
    }
}

#[test]
fn free_rope_for_everybodys_fall_is_that_of_the_json_plan() {
    for people in [3, 7] {
        let (plan, page) = json_and_page(&over_the_pass(people));
        for (leg, team) in setups(&plan) {
            let tables = tables_for(&page, "reserve", leg, team);
            assert_eq!(tables.len(), 1, "leg {leg}");
            let (rows, falls) = (rows(tables[0]), team["reach"].as_array().unwrap());
            assert_eq!(rows.len(), falls.len(), "leg {leg}");
            let no_place = text(tables[0]).contains("No place for");
            assert_eq!(falls.is_empty(), no_place, "leg {leg}");
            for (row, fall) in rows.iter().zip(falls) {
                all_close(
                    *row,
                    fall,
                    &[
                        ("data-person", "/person"),
                        ("data-free-m", "/free_m"),
                        ("data-depth-m", "/depth_m"),
                    ],
                );
            }
        }
    }
}

#[test]
fn hauls_are_those_of_the_json_plan() {
    for people in [2, 3, 7] {
        let (plan, page) = json_and_page(&over_the_pass(people));
        for (leg, team) in setups(&plan) {
            let tables = tables_for(&page, "haul", leg, team);
            let Some(haul) = team.get("haul") else {
                assert!(tables.is_empty(), "leg {leg}");
                continue;
            };
            assert_eq!(tables.len(), 1, "leg {leg}");
            all_close(
                tables[0],
                haul,
                &[("data-person", "/person"), ("data-haulers", "/haulers")],
            );
            assert!(text(tables[0]).contains(haul["says"].as_str().unwrap()));
            let (rows, systems) = (rows(tables[0]), haul["systems"].as_array().unwrap());
            assert!(rows.len() == systems.len() && !rows.is_empty(), "leg {leg}");
            assert_eq!(systems.len(), System::ALL.len(), "every way");
            for ((row, system), way) in rows.iter().zip(systems).zip(System::ALL) {
                haul_row(*row, system, way);
            }
        }
    }
}

fn haul_row(row: ElementRef<'_>, system: &Value, way: System) {
    all_close(row, system, &[("data-pull-kn", "/pull_kn")]);
    for (attribute, name) in [("data-haul-rope-m", "rope_m"), ("data-strokes", "strokes")] {
        match system.get(name) {
            Some(want) => as_planned(name, number(row, attribute), want),
            None => assert_eq!(row.attr(attribute), None, "{name}"),
        }
    }
    let stable = serde_json::to_value(way).unwrap();
    assert_eq!(system["system"], stable, "which way");
    assert_eq!(
        row.attr("data-system"),
        system["system"].as_str(),
        "which way"
    );
    assert_eq!(row.attr("data-can"), system["can"].as_str(), "who can pull");
    let possible = system["possible"].to_string();
    assert_eq!(
        row.attr("data-possible"),
        Some(possible.as_str()),
        "whether the rope reaches"
    );
    let shown = text(row).to_lowercase();
    assert!(shown.ends_with(system["can"].as_str().unwrap()), "{shown}");
}

#[test]
fn kept_set_ups_are_those_of_the_json_plan() {
    let mut seen = 0;
    for people in [2, 3, 4, 7] {
        let (plan, page) = json_and_page(&over_the_pass(people));
        let costs = select(&page, "p[data-planned-changes]");
        let Some(keep) = plan.get("keep_setup") else {
            assert!(costs.is_empty(), "{people}");
            continue;
        };
        seen += 1;
        all_close(
            costs[0],
            keep,
            &[
                ("data-planned-changes", "/as_planned/changes"),
                ("data-planned-min", "/as_planned/minutes"),
                ("data-kept-changes", "/kept/changes"),
                ("data-kept-min", "/kept/minutes"),
            ],
        );
        let runs = keep["runs"].as_array().unwrap().iter();
        let teams: Vec<&Value> = runs.flat_map(|r| r["teams"].as_array().unwrap()).collect();
        let shown = select(&page, "span[data-kept-team]");
        assert_eq!(shown.len(), teams.len());
        for (span, team) in shown.iter().zip(teams) {
            all_close(
                *span,
                team,
                &[
                    ("data-kept-team", "/team"),
                    ("data-kept-spacing-m", "/spacing_m"),
                    ("data-kept-knots", "/knots_each_end"),
                    ("data-kept-coil-m", "/coil_m"),
                    ("data-kept-rope-m", "/needed_m"),
                ],
            );
        }
    }
    assert!(seen > 0, "some party keeps a set-up");
}
