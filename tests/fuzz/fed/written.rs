//! What must hold of every plan and of every text that is written of it.

use std::str::from_utf8;

use quick_xml::{Reader, events::Event};
use schrund::{
    Job,
    plan::Plan,
    read::gpx,
    trip::route::Route,
    write::{FORMATS, Scene, Sheet, sheet::Look},
};
use serde_json::{Value, from_str};

/// Lengths that are added up otherwise agree to this share of them.
const ALIKE: f64 = 1e-9;
/// What nine decimals of a degree are off, metres on the ground, in a line of so many points each way.
const ROUNDED_M: f64 = 3e-4;

/// The legs tile their stages, nothing is longer than it can be, every figure of a set-up is a number.
///
/// # Panics
/// Where it is otherwise.
pub fn adds_up(plan: &Plan, route: &Route) {
    let whole_m = route.length_m();
    alike(plan.route.length_m, whole_m, "the route");
    for stage in &route.stages {
        let legs = plan.legs.iter().filter(|leg| leg.stage == stage.number);
        let (from_m, to_m): (Vec<f64>, Vec<f64>) = legs.map(|l| (l.start_m, l.end_m)).unzip();
        assert_eq!(from_m.first(), Some(&0.0), "the first leg begins later");
        alike(to_m[to_m.len() - 1], stage.length_m(), "the last leg");
        assert!(to_m.starts_with(&from_m[1..]), "{from_m:?} {to_m:?}");
    }
    let walked_m: f64 = plan.legs.iter().map(|leg| leg.length_m).sum();
    alike(walked_m, whole_m, "all legs");
    let numbers = [plan.route.time.total_min, plan.route.ascent_threshold_m];
    assert!(numbers.iter().all(|n| n.is_finite()), "{numbers:?}");
    plan.legs.iter().for_each(set_up);
    for carry in &plan.carry {
        assert!(
            carry.length_m.is_finite() && carry.needed_m.is_finite(),
            "{carry:?}"
        );
    }
}

fn alike(a_m: f64, b_m: f64, what: &str) {
    let off_m = (a_m - b_m).abs();
    assert!(off_m <= ALIKE * b_m.max(1.0), "{what}: {a_m} and {b_m}");
}

fn set_up(leg: &schrund::plan::leg::Leg) {
    assert!(leg.length_m >= 0.0 && leg.all_min() >= 0.0, "{leg:?}");
    assert!(leg.all_min().is_finite(), "{leg:?}");
    assert_eq!(leg.roped, !leg.teams.is_empty(), "{leg:?}");
    for team in &leg.teams {
        let ledger = team.ledger;
        let lines_m = ledger.spans_m + ledger.knots_m + ledger.tie_ins_m + ledger.coils_m;
        alike(lines_m, ledger.total_m, "the ledger");
        let figures = [
            team.spacing_m,
            team.coil_m,
            team.coil_carried_m,
            team.bag_m,
            team.coil_kg,
        ];
        let sound = figures.iter().all(|m| m.is_finite() && *m >= 0.0);
        assert!(sound && team.spacing_m > 0.0, "{team:?}");
        let marks = team.marks.iter().all(|mark| mark.at_m.is_finite());
        assert!(marks, "{:?}", team.marks);
    }
}

/// Every format of a plan, each held against a reader of its own. Of what the leader wrote nothing is looked for in them.
///
/// # Panics
/// Something is not as its readers take it.
pub fn all_formats(job: &Job, plan: &Plan, scene: &Scene, look: Look, of: &[u8]) {
    let of = String::from_utf8_lossy(of);
    for format in FORMATS {
        let mut bytes = Vec::new();
        let sheet = Sheet {
            look,
            ..Sheet::of(job, plan, scene)
        };
        let written = format.write(&mut bytes, &sheet);
        let name = format.name();
        assert!(written.is_ok(), "{name}: {written:?}");
        let text = from_utf8(&bytes).unwrap_or_else(|e| panic!("{name}: {e}"));
        let gap = ['⟦', '⟧']
            .into_iter()
            .find(|c| text.contains(*c) && !of.contains(*c));
        assert_eq!(gap, None, "something is missing in {name}");
        let none = ["NaN", "inf"]
            .into_iter()
            .find(|word| holds(text, word) && !of.contains(word));
        assert_eq!(none, None, "a figure that is none in {name}");
        match name {
            "json" | "geojson" => assert!(from_str::<Value>(text).is_ok(), "{name}"),
            "csv" => rows(text, plan),
            "kml" => xml(text),
            "gpx" => line(text, &job.route),
            _ => {}
        }
    }
}

/// Whether that word stands there, and not in the letters of a picture.
fn holds(text: &str, word: &str) -> bool {
    let ends = |c: char| !c.is_alphanumeric() && c != '+' && c != '/';
    text.split(ends).any(|found| found == word)
}

/// A head and a row for each leg and rope team, all of one length.
fn rows(text: &str, plan: &Plan) {
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let rows: Result<Vec<_>, _> = rows.records().collect();
    let due = plan.legs.iter().map(|leg| leg.teams.len().max(1)).sum();
    let count = rows.as_ref().map(Vec::len);
    assert_eq!(count.ok(), Some(due), "{rows:?}");
}

fn xml(text: &str) {
    let mut reader = Reader::from_str(text);
    reader.config_mut().check_end_names = true;
    loop {
        match reader.read_event() {
            Ok(Event::Eof) => return,
            Ok(_) => {}
            Err(why) => panic!("no XML: {why}"),
        }
    }
}

/// The line is read again as it was planned.
fn line(text: &str, route: &Route) {
    let again = gpx::route("route.gpx", text.as_bytes());
    let again = again.unwrap_or_else(|faults| panic!("{faults:?}")).value;
    assert_eq!(again.stages.len(), route.stages.len(), "stages");
    for (a, b) in again.stages.iter().zip(&route.stages) {
        let (a_m, b_m) = (a.length_m(), b.length_m());
        let points = b.points().len();
        #[expect(clippy::cast_precision_loss, reason = "no line has so many points")]
        let most_m = ROUNDED_M * points as f64 + ALIKE * b_m;
        assert!((a_m - b_m).abs() <= most_m, "{a_m} and {b_m}");
    }
}
