//! Every limit of inputs is told with the flag that raises it, and raised by it.

use std::fs;

use schrund::{
    fault::{
        Fault, Place, Wrong,
        flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
        network::InNetwork,
        terrain::{InTerrain, Unusable},
    },
    fetch::Manners,
    limits::{InputLimit, InputLimits},
    say::{self, interface::Interface, voice::Voice},
};
use serde_json::json;

use crate::fixture::{
    flatgeobuf::{Form, flatgeobuf},
    program::{folder_of_example, schrund, text},
};

/// A call that is refused under a low limit, and not under the usual one.
#[track_caller]
fn is_raised(folder: &std::path::Path, limit: InputLimit, low: u64, call: &[&str]) {
    let asked = |most: u64| {
        let flag = format!("{}={most}", limit.name());
        let ran = schrund(folder, &[call, &["--limit", &flag]].concat());
        (ran.status.code(), text(&ran.stderr))
    };
    let (code, told) = asked(low);
    assert!(
        matches!(code, Some(3 | 4 | 6)),
        "{limit:?}: {code:?} {told}"
    );
    let cure = format!("`--limit {}=NUMBER`", limit.name());
    assert!(told.contains(&cure), "{limit:?}: {told}");
    let (code, told) = asked(InputLimits::default()[limit]);
    assert!(matches!(code, Some(0 | 5)), "{limit:?}: {code:?} {told}");
    assert!(!told.contains(&cure), "{limit:?}: {told}");
}

#[test]
fn of_a_trip_file_and_of_who_goes() {
    let folder = folder_of_example();
    let write = |name: &str, text: &str| fs::write(folder.path().join(name), text).unwrap();
    let plan = ["plan", "route.gpx", "zones.geojson"];
    let long = format!("party = 3\n{}", "# a long story\n".repeat(100_000));
    write("long.toml", &long);
    let call = [&plan[..], &["--trip", "long.toml"]].concat();
    let refused = schrund(folder.path(), &call);
    assert_eq!(refused.status.code(), Some(4), "{}", text(&refused.stderr));
    let raised = schrund(
        folder.path(),
        &[&call[..], &["--limit", "text-mib=2"]].concat(),
    );
    assert_eq!(raised.status.code(), Some(0), "{}", text(&raised.stderr));
    let practice = schrund(folder.path(), &["practice", "arm-span", "--toml"]);
    write(
        "set.toml",
        &(text(&practice.stdout) + &"# a long story\n".repeat(100_000)),
    );
    let set = ["check", "set.toml", "--limit", "text-mib=2"];
    let set = schrund(folder.path(), &set);
    assert_eq!(set.status.code(), Some(0), "{}", text(&set.stderr));
    let people = [&plan[..], &["--party", "4"]].concat();
    is_raised(folder.path(), InputLimit::People, 3, &people);
    let ropes = [
        &plan[..],
        &[
            "--party", "3", "--rope", "30", "--rope", "40", "--rope", "50", "--rope", "60",
        ],
    ]
    .concat();
    is_raised(folder.path(), InputLimit::Ropes, 3, &ropes);
    write("four.toml", "party = 4\n");
    is_raised(
        folder.path(),
        InputLimit::People,
        3,
        &["check", "four.toml"],
    );
}

#[test]
fn of_a_line() {
    let folder = folder_of_example();
    let plan = ["plan", "route.gpx", "zones.geojson", "--party", "3"];
    is_raised(folder.path(), InputLimit::RouteKm, 2, &plan);
    // Half round the world over the pole: twice the meridian quadrant of WGS 84, 10 001.966 km.
    let far = r#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2"/><trkpt lat="66.52" lon="2"/><trkpt lat="-66.52" lon="-178"/></trkseg></trk></gpx>"#;
    fs::write(folder.path().join("far.gpx"), far).unwrap();
    let ran = schrund(
        folder.path(),
        &["plan", "far.gpx", "zones.geojson", "--party", "3"],
    );
    let told = text(&ran.stderr);
    assert_eq!(ran.status.code(), Some(4), "{told}");
    assert!(
        told.contains("Its longest straight piece, 20003.93 km")
            && told.contains("begins at 2.23 km"),
        "{told}"
    );
}

/// A device without a fix writes 0/0: the line is refused, and the point is told with it.
#[test]
fn what_may_have_made_a_line_so_long_is_told_with_it() {
    let folder = folder_of_example();
    let line = fs::read_to_string(folder.path().join("route.gpx")).unwrap();
    let nought = "<trkseg><trkpt lat=\"0\" lon=\"0\"/>";
    fs::write(
        folder.path().join("nought.gpx"),
        line.replace("<trkseg>", nought),
    )
    .unwrap();
    let ran = schrund(
        folder.path(),
        &["plan", "nought.gpx", "zones.geojson", "--party", "3"],
    );
    let told = text(&ran.stderr);
    assert_eq!(ran.status.code(), Some(4), "{told}");
    assert!(
        told.contains("error[bad-position]: the line is 73"),
        "{told}"
    );
    assert!(told.contains("warning[zero-point]"), "{told}");
}

#[test]
fn of_one_tag() {
    let folder = folder_of_example();
    let line = fs::read_to_string(folder.path().join("route.gpx")).unwrap();
    let story = format!("<trkseg><!--{}-->", "a long story ".repeat(200_000));
    fs::write(
        folder.path().join("long.gpx"),
        line.replace("<trkseg>", &story),
    )
    .unwrap();
    is_raised(
        folder.path(),
        InputLimit::TagMib,
        1,
        &["plan", "long.gpx", "zones.geojson", "--party", "3"],
    );
}

#[test]
fn of_a_file_of_outlines() {
    let folder = folder_of_example();
    let turn = |i: i32| f64::from(i % 80_000) / 80_000.0 * std::f64::consts::TAU;
    let ring =
        (0..=80_000).map(|i| json!([2.0 + 0.01 * turn(i).cos(), 66.514 + 0.002 * turn(i).sin()]));
    let ice = json!({
        "type": "Feature",
        "properties": {"name": "fine"},
        "geometry": {"type": "Polygon", "coordinates": [ring.collect::<Vec<_>>()]},
    });
    let fine = flatgeobuf(&ice.to_string(), Form::default());
    fs::write(folder.path().join("fine.fgb"), fine).unwrap();
    let call = [
        "plan",
        "route.gpx",
        "fine.fgb",
        "--party",
        "3",
        "--gap",
        "4",
    ];
    is_raised(folder.path(), InputLimit::FeatureMib, 1, &call);
    let glaciers = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--glaciers",
        "fine.fgb",
    ];
    is_raised(folder.path(), InputLimit::FeatureMib, 1, &glaciers);
}

/// What is told of limits that want gigabytes or hours to be met.
fn beyond() -> [(Wrong, InputLimit); 9] {
    let (most_mib, part) = (4, FlatgeobufPart::Header);
    [
        (
            InFlatgeobuf::TooLong { part, most_mib }.into(),
            InputLimit::HeaderMib,
        ),
        (
            InTerrain::Refused(Unusable::BigParts(80)).into(),
            InputLimit::PartMib,
        ),
        (
            InTerrain::Refused(Unusable::BigTables).into(),
            InputLimit::TableMib,
        ),
        (
            InNetwork::ManyCells { cells: 9, most: 8 }.into(),
            InputLimit::WindowCells,
        ),
        (
            InNetwork::TooBig {
                most_mib,
                unpacked: true,
                page: false,
            }
            .into(),
            InputLimit::AnswerMib,
        ),
        (
            InNetwork::TooBig {
                most_mib,
                unpacked: false,
                page: true,
            }
            .into(),
            InputLimit::PageMib,
        ),
        (InNetwork::ManyPages { most: 2 }.into(), InputLimit::Pages),
        (
            InNetwork::ManyTiles {
                tiles: 20,
                most: 16,
            }
            .into(),
            InputLimit::Tiles,
        ),
        (
            InNetwork::Late { allowed_s: 120 }.into(),
            InputLimit::AnswerSeconds,
        ),
    ]
}

/// They are told, and handed to whoever keeps to them.
#[test]
fn of_everything_else() {
    let limits = InputLimit::ALL.into_iter().zip(101..);
    let low = limits.fold(InputLimits::default(), |low, (limit, most)| {
        low.with(limit, most)
    });
    let manners = Manners::of(&low);
    assert_eq!(manners.limits, low);
    assert_eq!(manners.total.as_secs(), low[InputLimit::AnswerSeconds]);
    assert_eq!(manners.most_bytes, low[InputLimit::AnswerMib] << 20);
    assert_eq!(manners.most_page_bytes, low[InputLimit::PageMib] << 20);
    assert_eq!(manners.most_pages as u64, low[InputLimit::Pages]);
    assert_eq!(manners.most_tiles as u64, low[InputLimit::Tiles]);
    for (what, limit) in beyond() {
        let fault = Fault::new(what, Place::file("there"));
        let cure = format!("`--limit {}=NUMBER`", limit.name());
        let told = |interface| {
            say::fault::told(
                &fault,
                Voice {
                    interface,
                    ..Voice::default()
                },
            )
        };
        assert!(
            told(Interface::Flags).contains(&cure),
            "{}",
            told(Interface::Flags)
        );
        assert!(
            !told(Interface::Members).contains("--limit"),
            "{}",
            told(Interface::Members)
        );
    }
}

#[test]
fn what_is_no_limit_is_answered_with_those_there_are() {
    let folder = folder_of_example();
    let plan = [
        "plan",
        "route.gpx",
        "zones.geojson",
        "--party",
        "3",
        "--limit",
    ];
    for (typed, says) in [
        (
            "text=4",
            "there is no limit `text`; there are text-mib, tag-mib",
        ),
        ("people", "from 1 to"),
        ("people=0", "from 1 to"),
        ("people=-3", "from 1 to"),
        ("people=9999999999999999999999", "from 1 to"),
        ("people=2.5", "a whole number"),
    ] {
        let ran = schrund(folder.path(), &[&plan[..], &[typed]].concat());
        let told = text(&ran.stderr);
        assert_eq!(ran.status.code(), Some(2), "{typed}: {told}");
        assert!(told.contains(says), "{typed}: {told}");
    }
    let help = schrund(folder.path(), &["help", "plan"]);
    let help = text(&help.stdout);
    for limit in InputLimit::ALL {
        let line = format!("{}={}", limit.name(), InputLimits::default()[limit]);
        assert!(help.contains(&line), "{line} in {help}");
    }
}
