//! FlatGeobuf means what the same outlines mean as GeoJSON, and of a large file only what is near is read.

mod broken;
mod near;
mod real;

use schrund::{
    example,
    fault::{
        Fault, Noted,
        flatgeobuf::InFlatgeobuf,
        geojson::{InGeojson, NotPolygons},
    },
    read::{as_text::zones_text, input::Input, lay},
    trip::zone::Zone,
};

use flatgeobuf::{FgbCrs, GeometryType};

use crate::fixture::{
    flatgeobuf::{Form, flatgeobuf, of_type},
    texts::{collection, feature_of, polygon},
};

type Read = Result<Noted<Vec<Zone>>, Vec<Fault>>;

fn read(bytes: &[u8], gap_m: Option<f64>) -> Read {
    lay::zones(Input::text("ice", bytes), gap_m)
}

/// What was read of a text, without the lines and columns that a file of bytes has none of.
fn without_lines(read: Read) -> Read {
    let bare = |faults: Vec<Fault>| {
        let bare = faults.into_iter().map(|mut fault| {
            (fault.at.line, fault.at.column) = (None, None);
            fault
        });
        bare.collect()
    };
    match read {
        Ok(Noted { value, notes }) => Ok(Noted {
            value,
            notes: bare(notes),
        }),
        Err(faults) => Err(bare(faults)),
    }
}

/// Both formats in the same order of features.
#[track_caller]
fn same(collection: &str, gap_m: Option<f64>) -> Read {
    let as_json = without_lines(read(collection.as_bytes(), gap_m));
    for heights in [false, true] {
        let form = Form {
            index: false,
            heights,
            ..Form::default()
        };
        let packed = read(&flatgeobuf(collection, form), gap_m);
        assert_eq!(packed, as_json, "with heights: {heights}");
    }
    as_json
}

const SQUARE: &str = "[[8.0,46.0],[8.1,46.0],[8.1,46.1],[8.0,46.1],[8.0,46.0]]";

#[test]
fn the_zones_of_the_examples_are_the_same() {
    for text in [example::ZONES_GEOJSON, example::PAIR_ZONES_GEOJSON] {
        let zones = same(text, None).expect("sound").value;
        assert!(!zones.is_empty(), "{text}");
    }
}

#[test]
fn rings_are_read_by_the_same_rules() {
    let inside = "[[8.02,46.02],[8.05,46.02],[8.05,46.05],[8.02,46.02]]";
    let apart = "[[9.0,46.0],[9.1,46.0],[9.1,46.1],[9.0,46.0]]";
    let open = "[[8.0,46.0],[8.1,46.0],[8.1,46.1]]";
    let tangled = "[[8.0,46.0],[8.1,46.1],[8.1,46.0],[8.0,46.1],[8.0,46.0]]";
    let flat = "[[8.0,46.0],[8.1,46.0],[8.0,46.0]]";
    let over = "[[179.9,66.0],[-179.9,66.0],[-179.9,66.1],[179.9,66.1],[179.9,66.0]]";
    let rings = [
        SQUARE.to_owned(),
        format!("{SQUARE},{inside}"),
        format!("{inside},{SQUARE}"),
        format!("{SQUARE},{apart}"),
        open.to_owned(),
        tangled.to_owned(),
        flat.to_owned(),
        over.to_owned(),
        "[[180.0005,66.0],[179.9,66.0],[179.9,66.1],[180.0005,66.0]]".to_owned(),
    ];
    let mut features: Vec<String> = rings
        .iter()
        .map(|rings| feature_of("{}", &polygon(rings)))
        .collect();
    features.push(feature_of(
        "{}",
        &format!(r#"{{"type":"MultiPolygon","coordinates":[[{SQUARE},{inside}],[{apart}]]}}"#),
    ));
    let read = same(&collection(&features), Some(3.0)).expect("sound");
    assert_eq!(read.value.len(), features.len() - 1, "one covers nothing");
    let codes: Vec<&str> = read.notes.iter().map(Fault::code).collect();
    for code in [
        "ring-closed",
        "ring-tangled",
        "rings-misnested",
        "no-area",
        "longitude-taken-back",
    ] {
        assert!(codes.contains(&code), "{code}: {codes:?}");
    }
}

#[test]
fn properties_are_read_by_the_same_rules() {
    let properties = [
        r#"{"gap_m": 3, "name": "Grün \"é\"", "length": 7, "observed_on": "2026-08-01"}"#,
        r#"{"gap_m": "2-4", "snow_depth_m": "1,5 m", "surface": "bare", "other": [1, {"a": null}]}"#,
        r#"{"gap_m": 2.25, "strike_deg": 40, "rope": "always", "truth": true}"#,
        r#"{"gap_min_m": 1, "gap_max_m": 5.5, "gap_n": 4, "name": "3\u0001"}"#,
    ];
    let features = properties.map(|p| feature_of(p, &polygon(SQUARE)));
    let read = same(&collection(&features), None).expect("sound");
    assert_eq!(read.value[0].name.as_deref(), Some("Grün \"é\""));
    assert!(
        read.value[1].other.contains_key("other"),
        "it passes through"
    );
    assert!(
        read.notes.iter().any(|note| note.code() == "near-miss"),
        "{:?}",
        read.notes
    );
}

#[test]
fn what_is_wrong_is_told_of_the_same_features() {
    let properties = [
        r#"{"gap_m": -3, "name": "A"}"#,
        r#"{"name": "B"}"#,
        r#"{"gap_m": "ca. 3", "surface": "wet", "name": "C"}"#,
    ];
    let mut features = properties.map(|p| feature_of(p, &polygon(SQUARE))).to_vec();
    let far = "[[2600000,1200000],[2600100,1200000],[2600100,1200100],[2600000,1200000]]";
    features.push(feature_of(r#"{"gap_m": 3}"#, &polygon(far)));
    let faults = same(&collection(&features), None).expect_err("all of it");
    let codes: Vec<&str> = faults.iter().map(Fault::code).collect();
    for code in [
        "bad-number",
        "gap-not-given",
        "bad-word",
        "projected-position",
    ] {
        assert!(codes.contains(&code), "{code}: {codes:?}");
    }
}

#[test]
fn points_lines_and_nothing_are_left_out_and_counted() {
    let point = r#"{"type":"Point","coordinates":[8.0,46.0]}"#;
    let line = r#"{"type":"LineString","coordinates":[[8.0,46.0],[8.1,46.0]]}"#;
    let features = [
        feature_of("{}", point),
        feature_of(r#"{"gap_m": 3}"#, &polygon(SQUARE)),
        feature_of("{}", line),
    ];
    let read = same(&collection(&features), None).expect("one zone");
    assert_eq!(read.value.len(), 1);
    assert_eq!(read.value[0].feature, 2, "by its number in the file");
    let told: Vec<String> = read.notes.iter().map(ToString::to_string).collect();
    assert!(told[0].contains("not-a-polygon"), "{told:?}");
}

fn of_one_square(form: Form<'_>) -> Vec<u8> {
    let square = feature_of(r#"{"gap_m": 3}"#, &polygon(SQUARE));
    flatgeobuf(&collection(&[square]), form)
}

#[test]
fn longitude_and_latitude_on_wgs_84_pass_by_all_their_names() {
    let passes = [
        FgbCrs::default(),
        FgbCrs {
            code: 4326,
            ..FgbCrs::default()
        },
        FgbCrs {
            org: Some("epsg"),
            code: 4326,
            name: Some("WGS 84"),
            ..FgbCrs::default()
        },
        FgbCrs {
            org: Some("OGC"),
            code_string: Some("CRS84"),
            ..FgbCrs::default()
        },
    ];
    for crs in passes {
        let told = format!("{crs:?}");
        let read = read(
            &of_one_square(Form {
                crs,
                ..Form::default()
            }),
            None,
        );
        assert_eq!(read.map(|read| read.value.len()), Ok(1), "{told}");
    }
}

#[test]
fn any_other_system_is_refused_with_the_command_that_converts() {
    let refused = [
        (
            FgbCrs {
                code: 2056,
                ..FgbCrs::default()
            },
            "EPSG:2056",
        ),
        (
            FgbCrs {
                org: Some("ESRI"),
                code: 4326,
                ..FgbCrs::default()
            },
            "ESRI:4326",
        ),
        (
            FgbCrs {
                name: Some("CH1903+ / LV95"),
                ..FgbCrs::default()
            },
            "CH1903+ / LV95",
        ),
    ];
    for (crs, name) in refused {
        let bytes = of_one_square(Form {
            crs,
            ..Form::default()
        });
        let faults = lay::zones(Input::text("ice.fgb", &bytes[..]), None).expect_err(name);
        assert_eq!(
            faults[0].what,
            InGeojson::ForeignCrs(name.to_owned()).into()
        );
        let told = faults[0].to_string();
        assert!(
            told.contains("ogr2ogr -t_srs EPSG:4326") && told.contains(" ice.fgb`"),
            "{told}"
        );
    }
}

#[test]
fn a_surface_is_never_left_out_in_silence() {
    let two = [polygon(SQUARE), polygon(SQUARE)].map(|shape| feature_of("{}", &shape));
    let form = Form {
        index: false,
        ..Form::default()
    };
    let sound = flatgeobuf(&collection(&two), form);
    for (kind, name) in [
        (GeometryType::MultiSurface, "MultiSurface"),
        (GeometryType::CurvePolygon, "CurvePolygon"),
        (GeometryType::TIN, "TIN"),
    ] {
        let faults = read(&of_type(&sound, kind), Some(3.0)).expect_err(name);
        assert_eq!(faults[1].what, InFlatgeobuf::Curved(name).into());
        assert_eq!(faults[1].code(), "curved-outline");
        assert_eq!(faults[1].at.to_string(), "ice, feature 2");
        assert!(
            faults[1].to_string().contains("-nlt MULTIPOLYGON"),
            "{}",
            faults[1]
        );
    }
    for kind in [
        GeometryType::CompoundCurve,
        GeometryType::MultiCurve,
        GeometryType::LineString,
    ] {
        let faults = read(&of_type(&sound, kind), Some(3.0)).expect_err("lines");
        assert_eq!(faults[0].code(), "no-zones", "{kind:?}: {faults:?}");
        let lines = NotPolygons {
            lines: 2,
            ..NotPolygons::default()
        };
        assert_eq!(
            faults[0].what,
            InGeojson::NoZones(2, lines).into(),
            "{kind:?}"
        );
    }
}

#[test]
fn as_text_it_is_the_same_zones() {
    let bytes = flatgeobuf(
        example::PAIR_ZONES_GEOJSON,
        Form {
            index: false,
            ..Form::default()
        },
    );
    let text = zones_text("ice.fgb", &bytes, &Default::default())
        .expect("sound")
        .expect("it was no text");
    assert_eq!(
        read(text.as_bytes(), None),
        read(example::PAIR_ZONES_GEOJSON.as_bytes(), None)
    );
}
