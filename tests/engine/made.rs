//! Invented trips: a straight line north over square zones, one after another.

use schrund::{
    Job,
    fault::Place,
    plan::Plan,
    practice::{Origin, Rules, set::Source},
    read::{geojson, gpx, trip},
    trip::{party::Party, rope::Rope, route::Route, timetable::Timetable, zone::Zone},
};

/// Metres in a degree of latitude near 46° N, near enough for drawing. From memory.
const DEGREE_M: f64 = 111_150.0;

/// Everything a plan is made from, owned.
#[derive(Clone)]
pub(crate) struct Made {
    pub(crate) route: Route,
    pub(crate) zones: Vec<Zone>,
    pub(crate) party: Party,
    pub(crate) ropes: Vec<Rope>,
    pub(crate) rules: Rules,
    pub(crate) timetable: Timetable,
}

/// A trip over zones of 200 m, 600 m apart; each is given by its properties as JSON.
pub(crate) fn made(masses_kg: &[f64], ropes_m: &[f64], zones: &[&str]) -> Made {
    let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
    Made {
        route: route(zones.len(), |_| None),
        zones: drawn(zones),
        party: Party::weighing(masses_kg),
        ropes: ropes_m.iter().map(|&length_m| rope(length_m)).collect(),
        rules,
        timetable: Timetable::default(),
    }
}

pub(crate) fn rope(length_m: f64) -> Rope {
    Rope {
        length_m,
        diameter_mm: None,
        name: None,
    }
}

impl Made {
    /// The same with a trip file's words and figures laid over the rules.
    pub(crate) fn with(mut self, text: &str) -> Self {
        let trip = trip::trip("trip.toml", text).unwrap_or_else(|p| panic!("{text}: {p:?}"));
        let mut laid = trip::Laid {
            rules: self.rules,
            timetable: self.timetable,
        };
        trip.lay_over(&mut laid, &Place::file("trip.toml"), &Origin::Trip)
            .unwrap_or_else(|p| panic!("{text}: {p:?}"));
        (self.rules, self.timetable) = (laid.rules, laid.timetable);
        self
    }

    /// The same with the ground falling by so many metres in each metre walked.
    pub(crate) fn falling(mut self, share: f64) -> Self {
        self.route = route(self.zones.len(), |walked_m| Some(3000.0 - share * walked_m));
        self
    }

    pub(crate) fn job(&self) -> Job {
        Job {
            route: self.route.clone(),
            zones: self.zones.clone(),
            party: self.party.clone(),
            ropes: self.ropes.clone(),
            timetable: self.timetable.clone(),
            ..Job::under(self.rules.clone())
        }
    }

    pub(crate) fn plan(&self) -> Plan {
        schrund::plan(&self.job()).unwrap_or_else(|p| panic!("{p:?}"))
    }
}

fn route(zones: usize, height_m: impl Fn(f64) -> Option<f64>) -> Route {
    let metres = (0..=(zones + 1) * 30).map(|i| 20.0 * f64::from(u16::try_from(i).unwrap()));
    let point = |walked_m: f64| {
        let lat = 46.0 + walked_m / DEGREE_M;
        let ele = height_m(walked_m).map_or_else(String::new, |h| format!("<ele>{h:.3}</ele>"));
        format!("<trkpt lat=\"{lat:.9}\" lon=\"8\">{ele}</trkpt>")
    };
    let points: String = metres.map(point).collect();
    let text = format!(
        "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>{points}</trkseg></trk></gpx>"
    );
    gpx::route("made.gpx", text.as_bytes()).unwrap().value
}

fn drawn(zones: &[&str]) -> Vec<Zone> {
    let feature = |(i, properties): (usize, &&str)| {
        let south = 46.0 + (600.0 * f64::from(u16::try_from(i).unwrap()) + 400.0) / DEGREE_M;
        let north = south + 200.0 / DEGREE_M;
        format!(
            "{{\"type\":\"Feature\",\"properties\":{properties},\"geometry\":{{\"type\":\"Polygon\",\"coordinates\":\
             [[[7.9,{south}],[8.1,{south}],[8.1,{north}],[7.9,{north}],[7.9,{south}]]]}}}}"
        )
    };
    let features: Vec<String> = zones.iter().enumerate().map(feature).collect();
    let text = format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[{}]}}",
        features.join(",")
    );
    geojson::zones("made.geojson", text.as_bytes(), &geojson::Given::default())
        .unwrap()
        .value
}
