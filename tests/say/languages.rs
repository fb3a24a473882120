//! Every language says everything, in its own words and within the room there is.

use schrund::{
    say::{language::Language, voice::Voice},
    write::{FORMATS, Look, Sheet, text},
};

use crate::fixture::planned::over_the_pass;

/// What English text cannot do without, and German never has between spaces.
const ENGLISH: [&str; 16] = [
    "the", "and", "of", "is", "are", "to", "with", "for", "on", "at", "no", "not", "from", "where",
    "leg", "gap",
];

/// Formats that people read. JSON and CSV are for programs.
const READ: [&str; 6] = ["table", "geojson", "kml", "gpx", "html", "text"];

/// The text with everything that is no word as a space, without what stands in tags.
fn words(text: &str) -> String {
    let mut inside = false;
    let of_text = text.chars().map(|c| {
        inside = match c {
            '<' => true,
            '>' => false,
            _ => inside,
        };
        // A code is one word.
        let of_word = c.is_alphanumeric() || c == '-' || c == '_';
        if of_word && !inside { c } else { ' ' }
    });
    let text: String = of_text.collect();
    format!(
        " {} ",
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    )
}

/// The members of a map that are sentences.
fn sentences(map: &str) -> String {
    let map: serde_json::Value = serde_json::from_str(map).unwrap();
    let features = map["features"].as_array().unwrap().iter();
    let said = features
        .flat_map(|f| ["title", "description"].map(|name| f["properties"][name].to_string()));
    said.collect::<Vec<_>>().join(" ")
}

/// What a format shows, without its styles and the stable names of types.
fn shown(name: &str, written: &str) -> String {
    match name {
        "geojson" => words(&sentences(written)),
        "gpx" => words(&without(written, "<type>", "</type>")),
        "html" => words(&without(written, "<style>", "</style>")),
        _ => words(written),
    }
}

/// The text without what stands between these two.
fn without(text: &str, begin: &str, end: &str) -> String {
    let parts = text.split(begin).enumerate();
    let parts = parts.map(|(i, part)| match i {
        0 => part,
        _ => part.split_once(end).map_or("", |(_, rest)| rest),
    });
    parts.collect()
}

#[test]
fn no_english_is_left_in_german_outputs() {
    let mut left = Vec::new();
    for mut job in [
        schrund::example::job().unwrap(),
        schrund::example::pair().unwrap(),
    ] {
        job.name = None;
        let planner = schrund::Planner::new(&job).unwrap();
        let plan = planner.plan().unwrap();
        let scene = planner.scene(&plan).unwrap();
        for detail in [false, true] {
            let look = Look {
                detail,
                ..Look::of(Language::German)
            };
            let sheet = Sheet {
                look,
                ..Sheet::of(&job, &plan, &scene)
            };
            for name in READ {
                let format = FORMATS.iter().find(|format| format.name() == name).unwrap();
                let mut out = Vec::new();
                format.write(&mut out, &sheet).unwrap();
                let said = shown(name, &String::from_utf8(out).unwrap());
                for word in ENGLISH {
                    if let Some(at) = said.find(&format!(" {word} ")) {
                        let from = said[..at]
                            .char_indices()
                            .rev()
                            .nth(40)
                            .map_or(0, |(i, _)| i);
                        left.push(format!(
                            "{name}: {}",
                            said[from..].chars().take(90).collect::<String>()
                        ));
                    }
                }
            }
        }
    }
    assert!(left.is_empty(), "{}", left.join("\n"));
}

#[test]
fn the_language_of_the_trip_is_that_of_its_outputs() {
    let mut job = schrund::example::job().unwrap();
    job.language = Language::German;
    let (plan, scene) = (
        schrund::plan(&job).unwrap(),
        schrund::write::Scene::default(),
    );
    let sheet = Sheet::of(&job, &plan, &scene);
    assert!(
        text::message(&sheet).contains("13,5 ohne Knoten"),
        "{}",
        text::message(&sheet)
    );
    assert!(schrund::write::report::page(&sheet).contains("<html lang=\"de\">"));
}

#[test]
fn every_leg_fits_a_short_message_in_every_language() {
    for people in [2, 3, 4, 5, 7, 23, 60] {
        let trip = over_the_pass(people);
        for &language in Language::ALL {
            let voice = Voice {
                language,
                ..Voice::default()
            };
            for leg in &trip.plan.legs {
                let said = text::leg(leg, &trip.plan.zones, voice);
                assert!(
                    said.is_ascii() && said.len() <= text::MOST,
                    "{language:?}, {people} people: {said}"
                );
            }
        }
    }
}

#[test]
fn names_on_devices_are_short_plain_and_unique_in_every_language() {
    let trip = over_the_pass(3);
    for &language in Language::ALL {
        let look = Look::of(language);
        let mut out = Vec::new();
        let format = FORMATS
            .iter()
            .find(|format| format.name() == "gpx")
            .unwrap();
        format
            .write(
                &mut out,
                &Sheet {
                    look,
                    ..trip.sheet()
                },
            )
            .unwrap();
        let device = ::gpx::read(out.as_slice()).unwrap();
        let mut names: Vec<String> = device
            .waypoints
            .into_iter()
            .filter_map(|w| w.name)
            .collect();
        assert!(
            names.iter().all(|name| name.is_ascii() && name.len() <= 10),
            "{names:?}"
        );
        let all = names.len();
        names.sort_unstable();
        names.dedup();
        assert!(names.len() == all && all > 0, "{language:?}: {names:?}");
    }
}
