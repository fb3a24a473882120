//! Files, trip and flags laid together: where their faults are said to be, and what is never passed over in silence.

use std::io::Cursor;

use schrund::{
    example,
    fault::{Fault, Place},
    read::{
        input::{Input, Text},
        lay::Sources,
        trip::{self, Trip},
    },
    say::{fault::place, interface::Interface, voice::Voice},
};

/// The invented trip with another trip file.
fn sources(trip: &'static str) -> Sources<'static> {
    let text =
        |name, text: &'static str| -> Input<Text<'static>> { Input::text(name, text.as_bytes()) };
    let mut sources = Sources::new(
        text("route.gpx", example::ROUTE_GPX),
        text("zones.geojson", example::ZONES_GEOJSON),
    );
    sources.trip = Some(trip::file(text("trip.toml", trip)));
    sources
}

/// What is wrong, each as it is printed.
fn told(sources: Sources<'_>) -> Vec<String> {
    let faults = sources.job().err().unwrap_or_default();
    faults.iter().map(ToString::to_string).collect()
}

/// A terrain model that nobody reads from.
fn model(name: &str) -> Input<schrund::raster::RasterSource> {
    Input::new(name, Box::new(Cursor::new(Vec::new())))
}

#[test]
fn a_file_that_the_trip_names_and_nobody_laid_is_a_fault() {
    let all = "party = 3\nterrain = [\"a.tif\", \"b.tif\"]\nglaciers = \"ice/inventory.geojson\"\npractice = \"ours.toml\"\n";
    let told = told(sources(all));
    assert_eq!(
        told,
        [
            "error[unreadable]: the terrain model a.tif is named and was not opened\n  at: trip.toml, `terrain`\n  do: whoever reads the trip has to open that file and lay it beside the trip; to plan without it, take it out of `terrain`",
            "error[unreadable]: the terrain model b.tif is named and was not opened\n  at: trip.toml, `terrain`\n  do: whoever reads the trip has to open that file and lay it beside the trip; to plan without it, take it out of `terrain`",
            "error[unreadable]: the glacier inventory ice/inventory.geojson is named and was not opened\n  at: trip.toml, `glaciers`\n  do: whoever reads the trip has to open that file and lay it beside the trip; to plan without it, take it out of `glaciers`",
            "error[unreadable]: the practice file ours.toml is named and was not opened\n  at: trip.toml, `practice`\n  do: whoever reads the trip has to open that file and lay it beside the trip; to plan without it, take it out of `practice`",
        ]
    );
}

#[test]
fn what_is_laid_is_not_missed_whatever_folder_it_came_from() {
    let mut one_of_two = sources("party = 3\nterrain = [\"a.tif\", \"b.tif\"]\n");
    one_of_two.terrain = vec![model("maps/b.tif")];
    let missed = told(one_of_two);
    assert!(
        missed
            .iter()
            .any(|t| t.contains("terrain model a.tif is named")),
        "{missed:?}"
    );
    assert!(!missed.iter().any(|t| t.contains("model b.tif is named")));
    let mut renamed = sources("party = 3\nterrain = [\"a.tif\"]\n");
    renamed.terrain = vec![model("the model")];
    let missed = told(renamed);
    assert!(!missed.iter().any(|t| t.contains("is named")), "{missed:?}");
}

#[test]
fn a_file_that_a_flag_names_in_its_place_must_be_laid_too() {
    let mut by_flag = sources("party = 3\nterrain = [\"a.tif\"]\n");
    by_flag.flags = Trip {
        terrain: vec!["b.tif".to_owned()],
        ..Trip::default()
    };
    let told = told(by_flag);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains("model b.tif"), "{told:?}");
    assert!(told[0].contains("at: flags, `terrain`"), "{told:?}");
}

#[test]
fn trip_and_practice_files_have_a_limit_and_are_utf8() {
    let huge = "#".repeat((1 << 20) + 1);
    let large = || Input::text("large.toml", Cursor::new(huge.clone().into_bytes()));
    let latin = || Input::text("latin.toml", &b"party = 3\nname = \"\xFC\"\n"[..]);
    let of = |fault: &str, at: &str, cure: &str| format!("error[{fault}\n  at: {at}\n  do: {cure}");
    let too_large = of(
        "wrong-kind]: the file is larger than 1 MiB, and no trip file or practice file is",
        "large.toml",
        "was another file given in its place?",
    );
    let no_utf8 = of(
        "broken-text]: the file is not UTF-8 text",
        "latin.toml, line 2 column 9",
        "save it as UTF-8 from a text editor",
    );
    for (input, want) in [(large(), &too_large), (latin(), &no_utf8)] {
        let mut wrong = sources("");
        wrong.trip = Some(trip::file(input));
        assert_eq!(told(wrong).first(), Some(want));
    }
    for (input, want) in [(large(), too_large), (latin(), no_utf8)] {
        let mut wrong = sources("party = 3");
        wrong.practice = Some(input);
        assert_eq!(told(wrong), [want]);
    }
}

/// The places of faults that lie outside the files of line and ice, in the words of the library and of the command line.
fn places(sources: Sources<'_>) -> Vec<[String; 2]> {
    let flags = Voice {
        interface: Interface::Flags,
        ..Voice::default()
    };
    let faults = sources.job().err().unwrap_or_default();
    let both = |fault: &Fault| [Voice::default(), flags].map(|v| place(&fault.at, v).to_string());
    faults.iter().map(both).collect()
}

#[test]
fn what_the_trip_file_says_is_mended_there_and_what_a_flag_says_at_the_flag() {
    for (said, property, flag) in [
        ("stage = 7", "stage", "--stage"),
        ("practice = \"nope\"", "practice", "--practice"),
        ("gap_m = nan", "gap_m", "--gap"),
        ("party = 1", "party", "--party"),
        ("party = []", "party", "--party"),
        ("party = [82, 1]", "party", "--party"),
        (
            "bridges_until = \"10:00\"",
            "bridges_until",
            "--bridges-until",
        ),
        ("[[rope]]\nlength_m = 1", "rope", "--rope"),
    ] {
        let party = if said.starts_with("party") {
            ""
        } else {
            "party = 3\n"
        };
        let text = format!("{party}{said}\n").leak();
        let in_file = format!("trip.toml, `{property}`");
        assert_eq!(
            places(sources(text)),
            [[in_file.clone(), in_file]],
            "{said}"
        );
        let mut by_flag = sources("party = 3\n");
        by_flag.flags = trip::trip("flags", said).unwrap();
        let want = [format!("flags, `{property}`"), format!("`{flag}`")];
        assert_eq!(places(by_flag), [want], "{said}");
    }
}

#[test]
fn people_are_counted_however_they_are_named() {
    let text = format!("party = [{}]", "80, ".repeat(61)).leak();
    let told = told(sources(text));
    assert_eq!(
        told,
        [
            "error[bad-trip]: a party of 61 is more than the 60 that are planned for\n  at: trip.toml, `party`\n  do: one number is a head count, and masses in kg come for two and more; a larger group is planned in parts"
        ]
    );
}

#[test]
fn a_trip_file_is_checked_as_a_whole_on_its_own() {
    let all = "party = 1\ngap_m = nan\n[[rope]]\nlength_m = 1\n[assume]\nmargin_m = -1\n";
    let trip = trip::trip("trip.toml", all).unwrap();
    let faults = trip::check(&trip, &Place::file("trip.toml"), &Default::default()).unwrap_err();
    let codes: Vec<&str> = faults.iter().map(|fault| fault.code()).collect();
    assert_eq!(codes, ["bad-number", "alone", "bad-trip", "bad-number"]);
}

#[test]
fn a_name_under_assume_that_is_none_is_led_to_the_right_one() {
    let of = |name: &str| {
        let text = format!("party = 3\n[assume]\n{name} = 80\n").leak();
        told(sources(text)).join("\n")
    };
    let cured = |name: &str, cure: &str| {
        let told = of(name);
        assert!(told.ends_with(&format!("do: {cure}")), "{told}");
    };
    cured(
        "mass_kg",
        "a mass stands with the person: `mass_kg` in a [[party]] block, or `party = [82, 75]`; `person_kg` is the mass of whoever gives none",
    );
    cured(
        "stage",
        "write `stage` into the trip file above its first table in brackets",
    );
    cured("margin", "perhaps `margin_m` is meant");
    cured(
        "snow.settled.mu_aftr.adverse",
        "perhaps `snow.settled.mu_after.adverse` is meant",
    );
    cured(
        "colour",
        "the assumptions of a plan list the figures and words there are",
    );
    cured(
        "gap_m",
        "`gap_m` of the trip sets it, or better `gap_m` of the zone",
    );
}

#[test]
fn numbers_and_names_beyond_measure_are_cut() {
    let name = "x".repeat(5000);
    for text in [
        "party = 3\n[[rope]]\nlength_m = 1e300\n".to_owned(),
        "party = [1e300, 1e-300]\n".to_owned(),
        "party = 3\ngap_m = 1e300\n".to_owned(),
        "party = 3\n[assume]\nmargin_m = 1e300\nknots = 1e300\nstart = 1e300\n".to_owned(),
        format!("party = 3\n{name} = 1\n"),
        format!("party = 3\nstage = \"{name}\"\n"),
        format!("party = 3\npractice = \"{name}\"\n"),
        format!("party = 3\n[assume]\n{name} = 1\nknots = \"{name}\"\nmargin_m = \"{name}\"\n"),
        format!("[[party]]\nname = \"{name}\"\nmass_kg = 1\n"),
    ] {
        let told = told(sources(text.leak()));
        assert!(
            !told.is_empty() && told.iter().all(|t| t.len() < 400),
            "{told:?}"
        );
    }
    let rope = told(sources("party = 3\n[[rope]]\nlength_m = 1e300\n"));
    let says = "error[bad-trip]: a rope of 1e300 m is outside 5 to 200 m";
    assert!(rope[0].starts_with(says), "{rope:?}");
}

#[test]
fn an_empty_inventory_is_not_to_be_drawn() {
    let mut without = sources("party = 3");
    let none = r#"{"type": "FeatureCollection", "features": []}"#;
    without.glaciers = Some(Input::text("ice.geojson", none.as_bytes()));
    assert_eq!(
        told(without),
        [
            "error[no-zones]: the glacier inventory holds no feature at all\n  at: ice.geojson\n  do: take an inventory that holds the glaciers of the region as polygons, or plan without one"
        ]
    );
    let mut empty = sources("party = 3");
    empty.glaciers = Some(Input::text("ice.geojson", &b""[..]));
    assert_eq!(
        told(empty),
        [
            "error[wrong-kind]: the glacier inventory is empty\n  at: ice.geojson\n  do: fetch it again, or plan without it"
        ]
    );
}

#[test]
fn without_a_drawn_zone_an_inventory_is_enough() {
    let none = r#"{"type": "FeatureCollection", "features": []}"#;
    let points = r#"{"type": "Point", "coordinates": [2, 66]}"#;
    let drawn = |zones: &'static str| {
        let mut sources = sources("party = 3");
        sources.zones = Input::text("zones.geojson", zones.as_bytes());
        sources
    };
    assert!(
        told(drawn(none))[0].starts_with("error[no-zones]"),
        "nobody knows any ice"
    );
    let mut known = drawn(none);
    known.glaciers = Some(Input::text(
        "ice.geojson",
        example::ZONES_GEOJSON.as_bytes(),
    ));
    let job = known.job().expect("every stretch on known ice is roped");
    assert!(job.zones.is_empty() && !job.glaciers.is_empty());
    let mut wrong = drawn(points);
    wrong.glaciers = Some(Input::text(
        "ice.geojson",
        example::ZONES_GEOJSON.as_bytes(),
    ));
    assert!(
        told(wrong)[0].starts_with("error[no-zones]"),
        "another file was meant"
    );
}

#[test]
fn every_fault_is_told_at_once_whichever_input_it_is_in() {
    let all = "party = 1\npractice = \"nope\"\ngap_m = nan\nstage = 7\nterrain = [\"a.tif\"]\nglaciers = \"b.geojson\"\n[[rope]]\nlength_m = 1\n";
    let faults = sources(all).job().err().unwrap_or_default();
    let properties: Vec<&str> = faults
        .iter()
        .filter_map(|f| f.at.property.as_deref())
        .collect();
    assert_eq!(
        properties,
        [
            "terrain", "glaciers", "practice", "gap_m", "party", "rope", "stage"
        ]
    );
    let mut unread = sources("party = 3\nstart = \"04:30\"\nroute = 1\n");
    unread.flags.bridges_until = "10:00".parse().ok();
    let told = told(unread);
    assert_eq!(
        told.len(),
        1,
        "the start may stand in what was not read: {told:?}"
    );
}
