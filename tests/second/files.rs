//! A trip as files, and what the library makes of them.

use std::fmt::Write as _;

use schrund::{
    fault::Fault,
    read::{input::Input, lay::Sources, trip},
    say::voice::Voice,
    write::{FORMATS, Look, Scene, Sheet},
};
use serde_json::{Value, json};

use crate::fixture::texts::{collection, escaped, feature_of, gpx_of, point, ring_of};
use schrund::geometry::LonLat;

use super::{
    case::{Case, KnotsWord, Patch, Spot, Word, Zone},
    line::{Line, place},
    slope::heights,
};

/// The files of a trip.
#[derive(Debug)]
pub(super) struct Files {
    pub(super) route: String,
    pub(super) zones: String,
    pub(super) trip: String,
    pub(super) inventory: Option<String>,
}

fn lon_lat(spot: Spot) -> LonLat {
    let (lon, lat) = place(spot);
    LonLat::new(lon, lat)
}

fn route(case: &Case, line: &Line) -> String {
    let mut heights = heights(case, line).into_iter().flatten();
    let (mut last, mut height_m) = (None, None);
    let mut text = String::new();
    for spots in &case.segments {
        text.push_str("<trkseg>");
        for &spot in spots {
            if last != Some(spot) {
                height_m = heights.next().map(|h| h.height_m);
            }
            last = Some(spot);
            text.push_str(&point(lon_lat(spot), height_m));
        }
        text.push_str("</trkseg>");
    }
    let name = escaped(&format!("seed {}", case.seed));
    gpx_of(&format!("<trk><name>{name}</name>{text}</trk>"))
}

fn geometry(patches: &[Patch]) -> String {
    let ring = |ring: &Vec<Spot>| ring_of(&ring.iter().copied().map(lon_lat).collect::<Vec<_>>());
    let polygon = |patch: &Patch| {
        let rings: Vec<String> = patch.rings().map(ring).collect();
        format!("[{}]", rings.join(","))
    };
    let all: Vec<String> = patches.iter().map(polygon).collect();
    match &all[..] {
        [one] => format!(r#"{{"type":"Polygon","coordinates":{one}}}"#),
        _ => format!(
            r#"{{"type":"MultiPolygon","coordinates":[{}]}}"#,
            all.join(",")
        ),
    }
}

fn feature(zone: &Zone) -> String {
    let mut properties = json!({ "gap_m": zone.gap_m });
    if let Some(snow_m) = zone.snow_m {
        properties["snow_depth_m"] = json!(snow_m);
    }
    if zone.bare {
        properties["surface"] = json!("bare");
    }
    if let Some((deg, uncertainty)) = zone.strike {
        properties["strike_deg"] = json!(deg);
        if let Some(uncertainty) = uncertainty {
            properties["strike_uncertainty_deg"] = json!(uncertainty);
        }
    }
    match zone.word {
        Word::Auto => {}
        Word::Always => properties["rope"] = json!("always"),
        Word::Never => properties["rope"] = json!("never"),
    }
    feature_of(&properties.to_string(), &geometry(&zone.patches))
}

fn knots_word(word: KnotsWord) -> &'static str {
    match word {
        KnotsWord::Auto => "auto",
        KnotsWord::Always => "always",
        KnotsWord::Never => "never",
    }
}

fn trip_file(case: &Case) -> String {
    let mut text = match &case.masses_kg {
        Some(all) => format!("party = {all:?}\n"),
        None => format!("party = {}\n", case.people),
    };
    let mut add = |line: String| {
        text.push_str(&line);
        text.push('\n');
    };
    add(format!("practice = {:?}", case.practice.name));
    if let Some(word) = case.knots {
        add(format!("knots = {:?}", knots_word(word)));
    }
    if case.cover_anyone {
        add(r#"cover = "anyone""#.to_owned());
    }
    if !case.rope_on_bare {
        add("rope_on_bare = false".to_owned());
    }
    if case.only_tell && !case.inventory.is_empty() {
        add(r#"undrawn_ice = "tell""#.to_owned());
    }
    for rope in &case.ropes {
        add(format!("[[rope]]\nlength_m = {:?}", rope.length_m));
        if let Some(mm) = rope.diameter_mm {
            add(format!("diameter_mm = {mm:?}"));
        }
    }
    text + &assumed(case)
}

fn assumed(case: &Case) -> String {
    let mut text = String::from("[assume]\n");
    let figures = [
        ("margin_m", case.margin_m),
        ("least_unroped_m", case.least_unroped_m),
        ("knot_first_m", case.layout.first_m),
        ("knot_step_m", case.layout.step_m),
        ("tie_in_m", case.tie_in_m()),
        ("sling_m", case.sling_m),
        ("coil_most_m", case.coil_most_m),
        ("coil_most_kg", case.coil_most_kg),
    ];
    for (name, value) in figures {
        writeln!(text, "{name} = {value:?}").expect("memory takes everything");
    }
    writeln!(text, "knot_count = {}", case.layout.knots).expect("memory takes everything");
    text
}

impl Files {
    pub(super) fn of(case: &Case) -> Self {
        let features: Vec<String> = case.zones.iter().map(feature).collect();
        let ice: Vec<String> = case
            .inventory
            .iter()
            .map(|p| feature_of("{}", &geometry(std::slice::from_ref(p))))
            .collect();
        Self {
            route: route(case, &Line::of(&case.segments)),
            zones: collection(&features),
            trip: trip_file(case),
            inventory: (!ice.is_empty()).then(|| collection(&ice)),
        }
    }

    /// The plan as the program prints it with `--format json`.
    pub(super) fn planned(&self) -> Result<Value, Vec<Fault>> {
        let mut sources = Sources::new(
            Input::text("route.gpx", self.route.as_bytes()),
            Input::text("zones.geojson", self.zones.as_bytes()),
        );
        sources.trip = Some(trip::file(Input::text("trip.toml", self.trip.as_bytes())));
        if let Some(ice) = &self.inventory {
            sources.glaciers = Some(Input::text("ice.geojson", ice.as_bytes()));
        }
        let job = sources.job()?;
        let plan = schrund::plan(&job)?;
        let scene = Scene::default();
        let look = Look {
            voice: Voice::default(),
            ..Look::default()
        };
        let sheet = Sheet {
            plan: &plan,
            route: &job.route,
            zones: &job.zones,
            glaciers: &[],
            ropes: &job.ropes,
            trip: None,
            emergency: &[],
            scene: &scene,
            look,
        };
        let json = FORMATS.iter().find(|f| f.name() == "json");
        let mut bytes = Vec::new();
        let written = json.expect("a format").write(&mut bytes, &sheet);
        written.expect("memory takes everything");
        Ok(serde_json::from_slice(&bytes).expect("JSON"))
    }
}
