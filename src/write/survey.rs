//! Tracks held against one set of outlines: a line each for spreadsheets and programs, and a few of them side by side.

mod beside;

use serde::Serialize;

use crate::{
    plan::track::TrackFacts,
    say::plain,
    write::{
        csv::{guarded, number},
        json_text,
    },
};

pub use beside::{ComparedLine, compared};

const HEAD: [&str; 19] = [
    "track",
    "name",
    "stages",
    "length_m",
    "ascent_m",
    "descent_m",
    "ice_m",
    "hidden_ice_m",
    "crossings",
    "longest_crossing_m",
    "widest_gap_m",
    "gaps_unknown",
    "legs_roped",
    "roped_m",
    "along_m",
    "steepest_roped_deg",
    "verdict",
    "time_min",
    "error",
];

/// One track: its file, and what is known of it or what is wrong with it, in a line.
///
/// ```
/// use schrund::{Survey, write::survey::SurveyLine};
///
/// let job = schrund::example::job()?;
/// let facts = Survey::over(&job).of(&job.route)?;
/// let [good, bad] = [Ok(&facts), Err("no line")].map(|found| SurveyLine { track: "day.gpx", found });
/// assert!(SurveyLine::csv_head().starts_with("track,name,stages,length_m,"));
/// assert!(good.csv().starts_with("day.gpx,") && good.csv().contains(",look,"), "{}", good.csv());
/// assert!(bad.csv().ends_with(",no line\r\n"));
/// let json: serde_json::Value = serde_json::from_str(&good.json()).expect("it is JSON");
/// assert_eq!((&json["track"], &json["crossings"]), (&"day.gpx".into(), &1.into()));
/// assert_eq!(bad.json(), "{\"track\":\"day.gpx\",\"error\":\"no line\"}\n");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct SurveyLine<'a> {
    /// The file, as it was named.
    pub track: &'a str,
    /// What is known of it, or what is wrong with it.
    pub found: Result<&'a TrackFacts, &'a str>,
}

impl SurveyLine<'_> {
    /// The names of the columns, with the end of the line.
    #[must_use]
    pub fn csv_head() -> String {
        record(&HEAD.map(str::to_owned))
    }

    /// Its record (RFC 4180), with the end of the line. Lengths in metres, whatever units are shown elsewhere.
    #[must_use]
    pub fn csv(&self) -> String {
        let mut cells = match self.found {
            Ok(facts) => cells(facts),
            Err(_) => Default::default(),
        };
        cells[0] = Self::cell(self.track);
        let error = self.found.err().map(plain::line);
        cells[HEAD.len() - 1] = error.as_deref().map(guarded).unwrap_or_default();
        record(&cells)
    }

    /// A track as it stands in a record.
    #[must_use]
    pub fn cell(track: &str) -> String {
        guarded(&plain::line(track))
    }

    /// Its line of JSON, with the end of the line.
    #[must_use]
    pub fn json(&self) -> String {
        #[derive(Serialize)]
        struct Line<'a> {
            track: &'a str,
            #[serde(flatten, skip_serializing_if = "Option::is_none")]
            facts: Option<TrackFacts>,
            #[serde(skip_serializing_if = "Option::is_none")]
            error: Option<&'a str>,
        }
        let line = Line {
            track: self.track,
            facts: self.found.ok().map(rounded),
            error: self.found.err(),
        };
        let json = json_text::line(&line).unwrap_or_default();
        json + "\n"
    }
}

/// Millimetres, seconds and thousandths of a degree: no more than the model has.
fn rounded(facts: &TrackFacts) -> TrackFacts {
    let mm = crate::write::geojson::form::mm;
    let maybe = |x: Option<f64>| x.map(mm);
    TrackFacts {
        length_m: mm(facts.length_m),
        ascent_m: maybe(facts.ascent_m),
        descent_m: maybe(facts.descent_m),
        ice_m: mm(facts.ice_m),
        hidden_ice_m: mm(facts.hidden_ice_m),
        longest_crossing_m: mm(facts.longest_crossing_m),
        widest_gap_m: maybe(facts.widest_gap_m),
        roped_m: mm(facts.roped_m),
        along_m: mm(facts.along_m),
        steepest_roped_deg: maybe(facts.steepest_roped_deg),
        time_min: mm(facts.time_min),
        ..facts.clone()
    }
}

fn cells(facts: &TrackFacts) -> [String; HEAD.len()] {
    let maybe = |x: Option<f64>| x.map(number).unwrap_or_default();
    [
        String::new(),
        facts
            .name
            .as_deref()
            .map(|name| guarded(&plain::line(name)))
            .unwrap_or_default(),
        facts.stages.to_string(),
        number(facts.length_m),
        maybe(facts.ascent_m),
        maybe(facts.descent_m),
        number(facts.ice_m),
        number(facts.hidden_ice_m),
        facts.crossings.to_string(),
        number(facts.longest_crossing_m),
        maybe(facts.widest_gap_m),
        facts.gaps_unknown.to_string(),
        facts.legs_roped.to_string(),
        number(facts.roped_m),
        number(facts.along_m),
        maybe(facts.steepest_roped_deg),
        facts.verdict.as_str().to_owned(),
        number(facts.time_min),
        String::new(),
    ]
}

fn record(cells: &[String]) -> String {
    let mut csv = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    // Memory takes everything.
    let bytes = csv
        .write_record(cells)
        .ok()
        .and_then(|()| csv.into_inner().ok());
    String::from_utf8_lossy(&bytes.unwrap_or_default()).into_owned()
}
