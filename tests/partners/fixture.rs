//! A small invented trip: a line over three zones, whole enough for every output.

use schrund::{
    Planner,
    plan::Plan,
    practice::{Rules, set::Source},
    read::{self, geojson::Given},
    trip::job::Case,
    trip::{party::Party, rope::Rope, route::Route, zone::Zone},
    write::Sheet,
};

/// What a plan was made from, and the plan.
pub(crate) struct Trip {
    pub(crate) route: Route,
    pub(crate) zones: Vec<Zone>,
    pub(crate) plan: Plan,
}

impl Trip {
    pub(crate) fn sheet(&self) -> Sheet<'_> {
        Sheet {
            plan: &self.plan,
            route: &self.route,
            zones: &self.zones,
        }
    }

    /// A plan for so many people with a 60 m rope for each team.
    pub(crate) fn of(route: &str, zones: &str, people: usize) -> Self {
        let route = read::gpx::route("route.gpx", route.as_bytes())
            .unwrap()
            .value;
        let given = Given { gap_m: None };
        let zones = read::geojson::zones("zones.geojson", zones.as_bytes(), &given)
            .unwrap()
            .value;
        Self::planned(route, zones, people)
    }

    fn planned(route: Route, zones: Vec<Zone>, people: usize) -> Self {
        let rules = rules();
        let party = Party::of(people, &rules);
        let rope = Rope {
            length_m: 60.0,
            diameter_mm: None,
            name: None,
        };
        let ropes = vec![rope; party.rope_teams().len()];
        let case = Case {
            route: &route,
            zones: &zones,
            party: &party,
            ropes: &ropes,
            rules: &rules,
            timetable: &Default::default(),
            terrain: None,
            glaciers: &[],
            notices: &[],
        };
        let plan = Planner::of(case).and_then(|p| p.plan()).unwrap();
        Self { route, zones, plan }
    }

    /// The same job with another route.
    pub(crate) fn on(&self, route: Route, people: usize) -> Self {
        Self::planned(route, self.zones.clone(), people)
    }
}

pub(crate) fn rules() -> Rules {
    Rules::with_practice(&Source::Named("arm-span")).unwrap()
}

/// A line to the east, heights rising and falling, in two segments with a jump between them.
pub(crate) fn route(name: &str) -> String {
    let point = |i: u32| {
        let (lon, lat) = (
            8.0 + f64::from(i) * 0.0004,
            46.5 + f64::from(i % 7) * 0.0001,
        );
        let ele = 2500.0 + f64::from(if i < 60 { i } else { 130 - i }) * 6.3;
        format!("<trkpt lat=\"{lat:.7}\" lon=\"{lon:.7}\"><ele>{ele:.1}</ele></trkpt>")
    };
    let points = |range: std::ops::Range<u32>| range.map(point).collect::<String>();
    format!(
        "<gpx version=\"1.1\"><metadata><name>{name}</name></metadata><trk><name>{name}</name>\
         <trkseg>{}</trkseg><trkseg>{}</trkseg></trk></gpx>",
        points(0..100),
        points(103..130)
    )
}

/// Three zones across that line: 4 m, 14 m and 40 m.
pub(crate) fn zones(name: &str, note: &str) -> String {
    let zone = |west: f64, east: f64, gap_m: f64, snow_m: f64| {
        serde_json::json!({
            "type": "Feature",
            "properties": { "name": name, "gap_m": gap_m, "snow_depth_m": snow_m, "note": note },
            "geometry": { "type": "Polygon", "coordinates":
                [[[west, 46.49], [east, 46.49], [east, 46.51], [west, 46.51], [west, 46.49]]] },
        })
    };
    let features = [
        zone(8.004, 8.008, 4.0, 1.4),
        zone(8.015, 8.019, 14.0, 0.2),
        zone(8.030, 8.034, 40.0, 0.8),
    ];
    serde_json::json!({ "type": "FeatureCollection", "features": features }).to_string()
}

/// The trip as it mostly is.
pub(crate) fn trip(people: usize) -> Trip {
    Trip::of(
        &route("Over the pass"),
        &zones("Icefall", "seen in June"),
        people,
    )
}

/// Everything that a writer gives.
pub(crate) fn written(write: impl FnOnce(&mut Vec<u8>) -> std::io::Result<()>) -> String {
    let mut out = Vec::new();
    write(&mut out).unwrap();
    String::from_utf8(out).unwrap()
}
