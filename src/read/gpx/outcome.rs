//! The whole file → route, with a note on everything odd about its line.

use crate::fault::{Code, Level, Noted, Place, Problem};
use crate::trip::route::{Route, Stage};

use super::document::Document;
use super::part::{Part, Sort, counted, holding};
use super::tally::Tally;

/// An edge longer than this is noted, metres. \[ours\]
const LONG_EDGE_M: f64 = 5_000.0;

/// The route, or every fault of the file.
pub(super) fn route(mut document: Document<'_>) -> Result<Noted<Route>, Vec<Problem>> {
    let empty = document.tracks.is_empty() && document.routes.is_empty();
    if empty && !document.tally.has_errors() {
        let problem = no_line(&document);
        document.tally.add((Code::NoLine, ""), || problem);
    }
    if document.tally.has_errors() {
        let mut problems = document.tally.into_problems();
        problems.retain(|p| p.level() != Level::Note);
        return Err(problems);
    }
    let parts = used_parts(&mut document);
    for part in &parts {
        let place = Place::file(document.file).with_item(part.label());
        note_jumps(&mut document.tally, &place, &part.stage);
        note_long_edges(&mut document.tally, &place, &part.stage);
    }
    let stages = parts.into_iter().map(|part| part.stage).collect();
    Ok(Noted {
        value: Route::new(document.name, stages),
        notes: document.tally.into_problems(),
    })
}

/// The tracks, or the routes where no track has a line.
fn used_parts(document: &mut Document<'_>) -> Vec<Part> {
    let (tracks, routes) = (
        std::mem::take(&mut document.tracks),
        std::mem::take(&mut document.routes),
    );
    if tracks.is_empty() {
        return routes;
    }
    if !routes.is_empty() {
        let says = format!(
            "{} beside the tracks left out",
            counted(routes.len(), Sort::Route.word())
        );
        let problem = Problem::new(Code::PartLeftOut, Place::file(document.file), says)
            .hint("to plan along a route, take the tracks out of the file");
        document
            .tally
            .add((Code::PartLeftOut, "routes"), || problem);
    }
    tracks
}

fn no_line(document: &Document<'_>) -> Problem {
    let waypoints = document.waypoints;
    let held: Vec<String> = [
        (waypoints > 0).then(|| counted(waypoints, "waypoint")),
        holding(document.held_tracks, Sort::Track),
        holding(document.held_routes, Sort::Route),
    ]
    .into_iter()
    .flatten()
    .collect();
    let repeats = document.held_tracks.points > 1 || document.held_routes.points > 1;
    let held = if held.is_empty() {
        "no waypoint, track or route".to_owned()
    } else {
        held.join(", ")
    };
    let says = format!("no line to walk: the file holds {held}");
    Problem::new(Code::NoLine, Place::file(document.file), says).hint(if repeats {
        "a line needs two different points in a row within one segment"
    } else {
        "export the track or the route itself, not only its waypoints"
    })
}

fn note_jumps(tally: &mut Tally, place: &Place, stage: &Stage) {
    for jump in stage.jumps().filter(|jump| jump.length_m > 0.0) {
        tally.add((Code::Jump, ""), || {
            let says = format!(
                "the line jumps {:.1} m at {:.1} m; the jump is not walked and adds no length",
                jump.length_m, jump.at_m
            );
            Problem::new(Code::Jump, place.clone(), says)
        });
    }
}

fn note_long_edges(tally: &mut Tally, place: &Place, stage: &Stage) {
    for (&from_m, &to_m) in stage
        .chainage_m()
        .iter()
        .zip(stage.chainage_m().iter().skip(1))
    {
        let length_m = to_m - from_m;
        if length_m > LONG_EDGE_M {
            tally.add((Code::LongEdge, ""), || {
                let says = format!("no point for {length_m:.1} m from {from_m:.1} m on");
                Problem::new(Code::LongEdge, place.clone(), says)
                    .hint("was the receiver off? The line is taken as straight there")
            });
        }
    }
}
