//! Ways to split the party and to use the ropes: the cards of the page say what the table of the terminal says.

use schrund::{
    Planner,
    plan::options::Options,
    read::trip::trip,
    say::{language::Language, units::Units, voice::Voice},
    write::{Look, options::table, page::ways},
};

use scraper::Html;

use crate::fixture::{
    page::{select, text},
    trip::Trip,
};

const ZONES: [&str; 2] = [
    "{\"gap_m\":4,\"snow_depth_m\":2}",
    "{\"gap_m\":17,\"snow_depth_m\":0.6}",
];

fn options(people: usize, ropes: &[f64]) -> Options {
    let job = Trip::straight(&ZONES).people(people).ropes(ropes).job();
    Planner::new(&job).unwrap().options().unwrap()
}

fn cards(options: &Options, voice: Voice) -> Html {
    let json = ways::json(options, voice).unwrap();
    let answer: serde_json::Value = serde_json::from_str(&json).unwrap();
    let cards = answer["ways"].as_array().unwrap();
    let items = cards
        .iter()
        .map(|card| format!("<li>{}</li>", card["html"].as_str().unwrap()));
    Html::parse_fragment(&format!(
        "<ol class=ways>{}</ol>",
        items.collect::<String>()
    ))
}

#[test]
fn cards_hold_the_figures_of_the_table() {
    let trips = [
        options(3, &[60.0]),
        options(5, &[60.0, 50.0]),
        options(5, &[30.0]),
        options(4, &[]),
    ];
    for options in &trips {
        for (language, units) in [
            (Language::English, Units::Metric),
            (Language::German, Units::Imperial),
        ] {
            let voice = Voice {
                language,
                units,
                ..Voice::default()
            };
            let look = Look {
                voice,
                width: 500,
                ..Look::default()
            };
            let rows = table(options, look);
            let page = cards(options, voice);
            let all = select(&page, "ol.ways > li");
            assert!(!all.is_empty(), "{}", page.html());
            for (number, card) in (1..).zip(all) {
                let told = text(card);
                let row = row(&rows, number);
                // Spacing, rope and rope needed, of each team; mass, left, help, coil.
                for figure in row[2..].iter().flat_map(|cell| cell.split(['+', '/'])) {
                    let drawn = figure != "–";
                    assert!(
                        !drawn || told.contains(figure),
                        "{figure} in {told}\n{rows}"
                    );
                }
            }
        }
    }
}

/// The cells of a way but for its verdict, which may be several words.
fn row(table: &str, number: usize) -> Vec<&str> {
    let start = format!("{number}  ");
    let line = table.lines().find(|line| line.starts_with(&start)).unwrap();
    line.split_whitespace().take(9).collect()
}

#[test]
fn what_the_leader_wrote_stays_text_on_the_cards() {
    let mut job = Trip::straight(&ZONES).people(2).ropes(&[60.0]).job();
    job.party.people[0].called.name = Some("<img src=x onerror=alert(1)>".to_owned());
    let options = Planner::new(&job).unwrap().options().unwrap();
    let page = cards(&options, Voice::default());
    assert!(text(page.root_element()).contains("onerror=alert(1)"));
    assert!(select(&page, "img").is_empty(), "{}", page.html());
}

#[test]
fn a_card_says_whether_its_way_holds_and_what_a_trip_says_of_it() {
    for (options, holds) in [(options(3, &[60.0]), true), (options(5, &[30.0]), false)] {
        let json = ways::json(&options, Voice::default()).unwrap();
        let answer: serde_json::Value = serde_json::from_str(&json).unwrap();
        for (card, way) in answer["ways"].as_array().unwrap().iter().zip(&options.ways) {
            assert_eq!(card["holds"], holds, "{way:?}");
            assert_eq!(card["trip"].is_object(), way.trip.is_some(), "{way:?}");
            let told = card["html"].as_str().unwrap();
            assert_eq!(told.contains("missing this way"), !holds, "{told}");
        }
    }
}

#[test]
fn what_every_way_asks_for_is_told_once_under_the_cards() {
    let options = options(5, &[60.0, 50.0]);
    let json = ways::json(&options, Voice::default()).unwrap();
    let answer: serde_json::Value = serde_json::from_str(&json).unwrap();
    let words = |html: &serde_json::Value| {
        let page = Html::parse_fragment(html.as_str().unwrap());
        text(page.root_element()).to_lowercase()
    };
    let foot = words(&answer["foot"]);
    let (_, alike) = foot.split_once("the same in every usable way: ").unwrap();
    let alike: Vec<&str> = alike.lines().next().unwrap().split("; ").collect();
    let cards = answer["ways"].as_array().unwrap();
    let holding: Vec<_> = cards.iter().filter(|card| card["holds"] == true).collect();
    assert!(holding.len() > 1, "{cards:#?}");
    for (number, card) in (1..).zip(holding) {
        let told = words(&card["html"]);
        assert!(!told.contains(alike[0]), "{} in {told}", alike[0]);
        let took = words(&card["took"]);
        assert!(
            took.starts_with(&format!("planned with way {number} now")),
            "{took}"
        );
        let (_, changes) = took.split_once(": ").unwrap_or_default();
        assert!(told.contains(changes), "{changes} in {told}");
    }
}

#[test]
fn how_often_the_set_up_changes_is_told_without_ropes_and_of_what_does_not_hold_too() {
    for options in [options(4, &[]), options(5, &[30.0])] {
        let look = Look {
            width: 2000,
            ..Look::default()
        };
        let rows = table(&options, look);
        let shown = options
            .ways
            .iter()
            .take_while(|way| rows.contains(&format!("\n{}  ", way.way)));
        let mut told = 0;
        for way in shown.filter(|way| way.setup_changes > 0) {
            let (_, below) = rows.split_once(&format!("\n{}  ", way.way)).unwrap();
            let below = below.lines().nth(1).unwrap_or_default();
            let alike = rows
                .lines()
                .any(|line| line.starts_with("The same") && line.contains("the set-up changes"));
            assert!(alike || below.contains("the set-up changes"), "{rows}");
            told += 1;
        }
        assert!(told > 0, "{rows}");
    }
}

/// What stands under a way, read as the trip file that it is said to stand in, is the way.
#[test]
fn a_trip_file_with_what_stands_under_a_way_plans_it() {
    let mut held = 0;
    for options in [
        options(3, &[60.0]),
        options(5, &[60.0, 50.0]),
        options(5, &[40.0, 40.0]),
    ] {
        let look = Look {
            width: 400,
            ..Look::default()
        };
        let told = table(&options, look);
        let mut under = told.split("\n     ").filter_map(|line| {
            let (_, member) = line.split_once("in the trip file: ")?;
            member.lines().next().map(str::to_owned)
        });
        for way in options
            .ways
            .iter()
            .take(schrund::plan::options::Way::COMPARED)
        {
            let want = way.trip.as_ref().expect("its set has a name");
            let members = [
                !want.teams.is_empty(),
                want.practice.is_some(),
                !want.assume.is_empty(),
                !want.ropes.is_empty(),
            ];
            let count = members.into_iter().filter(|said| *said).count();
            let text: Vec<String> = under.by_ref().take(count).collect();
            let trip = trip("way.toml", &text.join("\n")).expect("a trip file reads it");
            assert_eq!(
                trip.teams,
                want.teams
                    .iter()
                    .map(|&people| people as f64)
                    .collect::<Vec<_>>(),
                "{text:?}"
            );
            assert_eq!(trip.practice, want.practice, "{text:?}");
            let ropes: Vec<f64> = trip
                .rope
                .iter()
                .flatten()
                .map(|rope| rope.length_m)
                .collect();
            let wanted: Vec<f64> = want.ropes.iter().map(|rope| rope.length_m).collect();
            assert_eq!(ropes, wanted, "{text:?}");
            held += count;
        }
    }
    assert!(held > 2, "{held} members held");
}
