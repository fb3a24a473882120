//! A plan of a zone by kilometre enters and leaves it where was asked.

use proptest::prelude::*;
use schrund::{
    fault::{Code, Fault},
    geometry::LonLat,
    meet::Ice,
    plan::Plan,
    read::{
        geojson::{Given, zones},
        input::Input,
        lay::Sources,
        trip::{Folk, Trip},
    },
    strip::{LineStrip, StripWanted, append, asked::stretch, strips},
    trip::{
        route::{Route, Stage},
        zone::Gap,
    },
};

use crate::fixture::{
    any::{at, route},
    close,
    texts::{gpx_of, point, segment_of},
};

fn gap_of(typed: &str) -> StripWanted {
    let typed = vec![("gap_m", typed.to_owned())];
    StripWanted {
        typed,
        ..StripWanted::default()
    }
}

fn made(route: &Route, typed: &str, wanted: &StripWanted) -> LineStrip {
    let made = strips(route, &[stretch(typed).unwrap()], wanted);
    made.unwrap_or_else(|f| panic!("{f:#?}")).value.remove(0)
}

fn faults(route: &Route, typed: &str, wanted: &StripWanted) -> Vec<Fault> {
    strips(route, &[stretch(typed).unwrap()], wanted).expect_err(typed)
}

/// Where the line is in the zone as a file holds it.
fn crossings(route: &Route, strip: &LineStrip) -> Vec<(f64, f64)> {
    let text = append::to("zones.geojson", None, std::slice::from_ref(strip))
        .unwrap()
        .text;
    let read = zones("zones.geojson", text.as_bytes(), &Given::default()).unwrap();
    assert_eq!(read.notes, [], "{text}");
    let contacts = Ice::of(&read.value).contacts(&route.stages[0], 0.0);
    let crossings = contacts.into_iter().flat_map(|contact| contact.crossings);
    crossings.map(|c| (c.from_m, c.to_m)).collect()
}

fn planned(line: &[LonLat], zones: &str) -> Plan {
    let points: String = line.iter().map(|at| point(at.normal(), None)).collect();
    let line = segment_of(&points);
    let mut sources = Sources::new(
        Input::text("route.gpx", line.as_bytes()),
        Input::text("zones.geojson", zones.as_bytes()),
    );
    sources.flags = Trip {
        party: Some(Folk::Number(3)),
        ..Trip::default()
    };
    let job = sources.job().unwrap_or_else(|f| panic!("{f:#?}"));
    schrund::plan(&job).unwrap_or_else(|f| panic!("{f:#?}"))
}

/// A line of so many metres a step that turns as it is told.
fn walked(start: LonLat, step_m: f64, headings: impl IntoIterator<Item = f64>) -> Vec<LonLat> {
    let mut line = vec![start];
    for deg in headings {
        let last = *line.last().unwrap();
        let next = last.toward(deg, step_m);
        // Unrolled, as a stage has it.
        let turns = ((last.lon_deg - next.lon_deg) / 360.0).round();
        line.push(LonLat::new(next.lon_deg + 360.0 * turns, next.lat_deg));
    }
    line
}

#[test]
fn straight_winding_hairpin_and_over_the_antimeridian() {
    let start = LonLat::new(8.0, 46.0);
    let many = |n: u32| (0..n).map(f64::from);
    let winding = many(120).map(|i| 40.0 * (i / 6.0).sin());
    let hairpin = many(120).map(|i| if i < 60.0 { 10.0 } else { 170.0 });
    let trembling = many(400).map(|i| 30.0 + 55.0 * (i * 2.4).sin());
    for (what, line) in [
        ("straight", walked(start, 50.0, many(100).map(|_| 20.0))),
        ("winding", walked(start, 40.0, winding)),
        ("hairpin", walked(start, 40.0, hairpin)),
        ("trembling", walked(start, 12.0, trembling)),
        (
            "antimeridian",
            walked(
                LonLat::new(179.98, 52.0),
                40.0,
                many(100).map(|i| 90.0 + 20.0 * (i / 9.0).sin()),
            ),
        ),
    ] {
        let strip = made(&route(&line), "1.2-2.9", &gap_of("3-5"));
        let text = append::to("zones.geojson", None, std::slice::from_ref(&strip))
            .unwrap()
            .text;
        let plan = planned(&line, &text);
        let zone = &plan.zones[0];
        let [crossing] = &zone.crossings[..] else {
            panic!("{what}: {:?}", zone.crossings)
        };
        close(what, crossing.enter_m, 1200.0, 1.0);
        close(what, crossing.exit_m, 2900.0, 1.0);
        let roped: Vec<_> = plan.legs.iter().filter(|leg| leg.roped).collect();
        // The margin is told along the line and as the crow flies, whichever is more of the line.
        let early_m = 1180.0 - roped[0].start_m;
        assert!(
            (-1.0..=if what == "trembling" { 20.0 } else { 1.0 }).contains(&early_m),
            "{what}: {early_m}"
        );
        assert_eq!(roped[0].gap_m, Some(5.0), "{what}");
        assert_eq!(
            strip.zone.gap,
            Gap {
                min_m: Some(3.0),
                max_m: 5.0,
                assumed: false
            },
            "{what}"
        );
        assert_eq!(strip.again, [], "{what}");
        let parts = strip.zone.outline.polygons.len();
        assert_eq!(parts, if what == "antimeridian" { 2 } else { 1 }, "{what}");
    }
}

#[test]
fn a_line_that_comes_back_is_told() {
    let out = (0..=100).map(|i| at(0.0, 20.0 * f64::from(i)));
    let back = (0..100).rev().map(|i| at(0.0, 20.0 * f64::from(i)));
    let line = route(&out.chain(back).collect::<Vec<_>>());
    let strip = made(&line, "0.5-1.2", &gap_of("4"));
    let [again] = strip.again[..] else {
        panic!("{:?}", strip.again)
    };
    close(
        "its way back",
        again.from_m,
        2.0 * line.length_m() / 2.0 - 1200.0,
        1.0,
    );
    close("its end", again.to_m, line.length_m() - 500.0, 1.0);
}

#[test]
fn a_jump_is_not_bridged() {
    let mut stage = Stage::new(None);
    (0..=50).for_each(|i| stage.push(at(0.0, 20.0 * f64::from(i)), None));
    stage.break_segment();
    (0..=50).for_each(|i| stage.push(at(0.0, 3000.0 + 20.0 * f64::from(i)), None));
    let line = Route::new(None, vec![stage]);
    let strip = made(&line, "0.7-1.4", &gap_of("4"));
    assert_eq!(strip.zone.outline.polygons.len(), 2);
    close("area", strip.area_m2, 700.0 * 300.0, 2000.0);
    let crossings = crossings(&line, &strip);
    assert_eq!(crossings.len(), 2, "one on either side: {crossings:?}");
}

#[test]
fn what_the_line_has_not_is_refused() {
    let line = route(
        &(0..=50)
            .map(|i| at(0.0, 20.0 * f64::from(i)))
            .collect::<Vec<_>>(),
    );
    for typed in ["0.5-1.5", "2-3", "1.0-1.2"] {
        assert_eq!(
            faults(&line, typed, &gap_of("4"))[0].kind(),
            Code::BadNumber,
            "{typed}"
        );
    }
    let long = line.length_m();
    assert!((999.0..1001.0).contains(&long), "{long}");
    assert_eq!(
        made(&line, "0.5-1.01", &gap_of("4")).stretch.to_m,
        long,
        "a printed end is the end"
    );
    let metres = faults(&line, "500-900", &gap_of("4"))[0].to_string();
    assert!(
        metres.contains("do: write kilometres: `0.5-0.9`"),
        "{metres}"
    );
    for half_width_m in [f64::NAN, f64::INFINITY, -1.0, 0.0, 9.9, 1001.0] {
        let wanted = StripWanted {
            half_width_m,
            ..gap_of("4")
        };
        let fault = &faults(&line, "0.5-0.9", &wanted)[0];
        assert!(fault.to_string().contains("at: `--half-width`"), "{fault}");
    }
}

#[test]
fn the_pole_and_half_a_continent_are_refused() {
    let north = walked(LonLat::new(20.0, 89.7), 100.0, (0..400).map(|_| 0.0));
    let far = [LonLat::new(8.0, 40.0), LonLat::new(8.0, 60.0)];
    for (line, typed) in [(route(&north), "10-39"), (route(&far), "10-2000")] {
        assert_eq!(
            faults(&line, typed, &gap_of("4"))[0].kind(),
            Code::BadPosition,
            "{typed}"
        );
    }
    let high = walked(LonLat::new(20.0, 85.0), 100.0, (0..100).map(|_| 40.0));
    let strip = made(&route(&high), "2-6", &gap_of("4"));
    close("its area", strip.area_m2, 4000.0 * 300.0, 20_000.0);
}

#[test]
fn several_stages_are_asked_about() {
    let stage = |east: f64| {
        let mut stage = Stage::new(None);
        (0..=50).for_each(|i| stage.push(at(east, 20.0 * f64::from(i)), None));
        stage
    };
    let two = Route::new(None, vec![stage(0.0), stage(3000.0)]);
    let told = faults(&two, "0.1-0.5", &gap_of("4"))[0].to_string();
    assert!(told.contains("it has stage 1, stage 2"), "{told}");
}

#[test]
fn what_is_typed_of_the_ice_is_read_as_in_a_file() {
    let line = route(
        &(0..=50)
            .map(|i| at(0.0, 20.0 * f64::from(i)))
            .collect::<Vec<_>>(),
    );
    let wanted = |typed: &[(&'static str, &str)]| StripWanted {
        typed: typed
            .iter()
            .map(|(name, text)| (*name, (*text).to_owned()))
            .collect(),
        ..StripWanted::default()
    };
    let typed = [
        ("gap_m", "3,5 m"),
        ("snow_depth_m", "1.2"),
        ("strike_deg", "130"),
        ("surface", "bare"),
        ("rope", "never"),
    ];
    let feature = made(&line, "0.1-0.5", &wanted(&typed)).feature();
    let properties = r#""properties": {"gap_m": 3.5, "snow_depth_m": 1.2, "surface": "bare", "strike_deg": 130, "rope": "never"}"#;
    assert!(feature.contains(properties), "{feature}");
    let silent = made(&line, "0.1-0.5", &wanted(&[])).feature();
    assert!(
        silent.contains(r#""properties": {"gap_m": null}"#),
        "a width is never guessed: {silent}"
    );
    let all = [
        ("gap_m", "wide"),
        ("snow_depth_m", "-1"),
        ("strike_deg", "400"),
    ];
    let told = faults(&line, "0.1-0.5", &wanted(&all));
    let told: Vec<String> = told.iter().map(ToString::to_string).collect();
    for (flag, told) in ["--gap", "--snow", "--strike"].iter().zip(&told) {
        assert!(
            told.contains(&format!("at: `{flag}`")) && !told.contains("null"),
            "{told}"
        );
    }
    assert_eq!(told.len(), 3, "{told:?}");
}

proptest! {
    /// On a line that keeps a direction the zone begins and ends where was asked, and is nowhere else.
    #[test]
    fn a_plan_enters_and_leaves_where_was_asked(
        headings in prop::collection::vec(-40.0..40.0, 60..100), step_m in 15.0..60.0,
        from in 0.1..0.4, to in 0.5..0.9, half_m in 20.0..400.0,
    ) {
        let line = route(&walked(LonLat::new(8.0, 46.0), step_m, headings));
        let km = line.length_m() / 1000.0;
        let wanted = StripWanted { half_width_m: half_m, ..gap_of("4") };
        let (from, to) = (format!("{:.2}", from * km), format!("{:.2}", to * km));
        let strip = made(&line, &format!("{from}-{to}"), &wanted);
        let crossings = crossings(&line, &strip);
        prop_assert_eq!(crossings.len(), 1, "{:?}", crossings);
        let [from_m, to_m] = [from, to].map(|km| km.parse::<f64>().unwrap() * 1000.0);
        prop_assert!((crossings[0].0 - from_m).abs() < 0.1 && (crossings[0].1 - to_m).abs() < 0.1, "{:?}", crossings);
    }

    /// On any line all of what was asked is in the zone, to the metre where the line runs along its border, and what else of
    /// the line is in it is told.
    #[test]
    fn nothing_of_what_was_asked_is_left_out(
        headings in prop::collection::vec(prop_oneof![Just(0.0), -180.0..180.0], 60..100), step_m in 15.0..60.0,
        from in 0.1..0.4, to in 0.5..0.9,
    ) {
        let line = route(&walked(LonLat::new(8.0, 46.0), step_m, headings));
        let km = line.length_m() / 1000.0;
        let strip = made(&line, &format!("{:.2}-{:.2}", from * km, to * km), &gap_of("4"));
        let (from_m, to_m) = (strip.stretch.from_m, strip.stretch.to_m);
        let inside = |m: f64| strip.again.iter().any(|a| a.from_m - 1.0 <= m && m <= a.to_m + 1.0)
            || (from_m - 1.1..=to_m + 1.1).contains(&m);
        let mut reached = from_m;
        for (enter, exit) in crossings(&line, &strip) {
            prop_assert!(exit - enter < 1.0 || inside(enter) && inside(exit), "{enter}-{exit}: {:?}", strip.again);
            if enter <= reached + 1.0 {
                reached = reached.max(exit);
            }
        }
        prop_assert!(reached >= to_m - 1.0, "in it only as far as {reached}, not {to_m}: {:?}", crossings(&line, &strip));
    }
}

#[test]
fn several_tracks_of_a_file_are_stages_and_one_can_be_chosen() {
    let track = |east: f64| {
        let points: String = (0..=50)
            .map(|i| point(at(east, 20.0 * f64::from(i)), None))
            .collect();
        format!("<trk><trkseg>{points}</trkseg></trk>")
    };
    let file = gpx_of(&(track(0.0) + &track(3000.0)));
    let read = schrund::read::gpx::route("tour.gpx", file.as_bytes())
        .unwrap()
        .value;
    let second = schrund::read::trip::StageWord::Number(2)
        .of(read, &schrund::fault::Place::default())
        .unwrap();
    let strip = made(&second, "0.2-0.6", &gap_of("4"));
    let bounds = strip.zone.outline.bounds().unwrap();
    assert!(bounds.low.lon_deg > at(2000.0, 0.0).lon_deg, "{bounds:?}");
}

/// Found by chance: its last bend, less than a metre before its end, lay some centimetres ahead of the cut there.
#[test]
fn a_line_that_bends_just_before_its_end_is_in_the_zone() {
    let turns: &[(usize, f64)] = &[
        (0, 95.22327336713008),
        (1, -15.039992044749745),
        (11, 29.740384653666908),
        (23, -77.1783234795577),
        (27, -162.14797906343807),
        (33, -35.423119504115824),
        (37, -135.76440514887653),
        (48, -29.059011730140977),
        (49, -11.173577351688028),
        (51, -107.9371338026526),
        (52, 59.311975305115205),
    ];
    let mut headings = vec![0.0; 80];
    for (at, deg) in turns {
        headings[*at] = *deg;
    }
    let line = route(&walked(LonLat::new(8.0, 46.0), 43.05930257156394, headings));
    let km = line.length_m() / 1000.0;
    let part = format!("{:.2}-{:.2}", 0.1 * km, 0.6499202673945437 * km);
    let strip = made(&line, &part, &gap_of("4"));
    let crossings = crossings(&line, &strip);
    assert_eq!(crossings.len(), 1, "{crossings:?}");
    assert!(crossings[0].1 >= strip.stretch.to_m, "{crossings:?}");
}

/// Found by chance: a line that turns back before its end ran along the cut there, three centimetres outside; and of one
/// that went to and fro, the first of two turns lay past the cut behind the second.
#[test]
fn a_line_that_turns_back_before_its_end_is_in_the_zone() {
    let along = [
        -52.86916433397744,
        -23.964445336733295,
        -50.271554296160154,
        -155.22517066375352,
    ];
    let along = [0.0; 55].into_iter().chain(along).chain([0.0; 8]).collect();
    let twice = [
        -111.26274634441913,
        -8.059379663051763,
        25.314939809478336,
        0.0,
        0.0,
        0.0,
    ];
    let twice = [0.0; 40].into_iter().chain(twice);
    let back = [
        -169.3285262238759,
        176.9386325518775,
        0.0,
        0.0,
        178.6223383387031,
    ];
    let twice = twice.chain(back).chain([0.0; 13]).collect();
    let lines: [(f64, Vec<f64>, &str, f64); 2] = [
        (50.65872143073986, along, "0.34-2.98", 2980.0),
        (52.472379385860705, twice, "0.34-2.67", 2670.0),
    ];
    for (step_m, headings, asked, end_m) in lines {
        let line = route(&walked(LonLat::new(8.0, 46.0), step_m, headings));
        let strip = made(&line, asked, &gap_of("4"));
        let crossings = crossings(&line, &strip);
        assert_eq!(crossings.len(), 1, "{crossings:?}");
        assert!(crossings[0].1 > end_m - 0.2, "{crossings:?}");
    }
}
