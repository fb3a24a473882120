//! Ways to split the party and to use the ropes, as a page shows them. In JSON.

use serde::Serialize;

use crate::{plan::options::Options, say::voice::Voice, write::report};

/// The ways as cards, as JSON.
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
/// let cards: serde_json::Value = serde_json::from_str(&json).expect("it is JSON");
/// let html = cards["html"].as_str().unwrap_or_default();
/// assert_eq!(html.matches("class=\"way\"").count(), options.ways.len(), "a card for each");
/// assert!(html.contains("Dag") && html.contains("Eli"), "{html}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn json(options: &Options, voice: Voice) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Ways {
        faults: [],
        html: report::ways::cards(options, voice).into_string(),
    })
}

#[derive(Serialize)]
struct Ways {
    faults: [(); 0],
    html: String,
}
