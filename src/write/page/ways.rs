//! Ways to split the party and to use the ropes, as a page shows them. In JSON.

use serde::Serialize;

use crate::{
    plan::options::{Options, Way, WayTrip},
    say::voice::Voice,
    write::{parts::way, report},
};

/// The ways as cards, each with what a trip says to plan it, as JSON.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no text fails to.
///
/// ```
/// use schrund::{Planner, write::page::ways};
///
/// let job = schrund::example::pair()?;
/// let options = Planner::new(&job)?.options()?;
/// let json = ways::json(&options, Default::default()).expect("it can stand in JSON");
/// let said: serde_json::Value = serde_json::from_str(&json).expect("it is JSON");
/// let cards = said["ways"].as_array().map(Vec::as_slice).unwrap_or_default();
/// assert_eq!(cards.len(), options.ways.len(), "a card for each");
/// let html = cards[0]["html"].as_str().unwrap_or_default();
/// assert!(html.contains("Dag") && html.contains("Eli"), "{html}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn json(options: &Options, voice: Voice) -> Result<String, serde_json::Error> {
    let shown = way::shown(&options.ways);
    let told = way::shared(shown, voice);
    let cards = shown.iter().map(|way: &Way| Card {
        html: report::ways::card(way, options, &told, voice).into_string(),
        trip: way.trip.as_ref(),
        holds: way::holds(way),
        took: report::markup::spans(&way::took(way, voice)).into_string(),
    });
    serde_json::to_string(&Ways {
        faults: [],
        head: report::ways::head(options, voice).into_string(),
        ways: cards.collect(),
        foot: report::ways::foot(options, &told, voice).into_string(),
    })
}

#[derive(Serialize)]
struct Ways<'a> {
    faults: [(); 0],
    head: String,
    /// The best first.
    ways: Vec<Card<'a>>,
    foot: String,
}

#[derive(Serialize)]
struct Card<'a> {
    html: String,
    /// See [`Way::trip`].
    trip: Option<&'a WayTrip>,
    /// It is no way to go on where nothing holds.
    holds: bool,
    /// What is said once it is planned with.
    took: String,
}
