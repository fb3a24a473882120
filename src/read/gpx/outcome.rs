//! The whole file → route, with a note on everything odd about its line.

use crate::fault::{Code, Fault, Level, Noted, Place, gpx::InGpx};
use crate::trip::route::{Route, Stage};

use super::document::GpxDocument;
use super::part::Part;
use super::suspect::suspicions;
use super::tally::Tally;

/// The route, or every fault of the file.
pub(super) fn route(mut document: GpxDocument<'_>) -> Result<Noted<Route>, Vec<Fault>> {
    std::mem::take(&mut document.odd).told(document.file, &mut document.tally);
    let empty = document.tracks.is_empty() && document.routes.is_empty();
    if empty && !document.tally.has_errors() {
        let fault = no_line(&document);
        document.tally.add((Code::NoLine, ""), || fault);
    }
    if document.tally.has_errors() {
        let mut faults = document.tally.into_faults();
        faults.retain(|p| p.level() != Level::Note);
        return Err(faults);
    }
    let parts = used_parts(&mut document);
    for part in &parts {
        let place = Place::file(document.file).with_item(part.item());
        note_jumps(&mut document.tally, &place, &part.stage);
        note_suspicions(&mut document.tally, &place, &part.stage);
    }
    let stages = parts.into_iter().map(|part| part.stage).collect();
    Ok(Noted {
        value: Route {
            waypoints: document.named,
            ..Route::new(document.name, stages)
        },
        notes: document.tally.into_faults(),
    })
}

/// The tracks, or the routes where no track has a line.
fn used_parts(document: &mut GpxDocument<'_>) -> Vec<Part> {
    let (tracks, routes) = (
        std::mem::take(&mut document.tracks),
        std::mem::take(&mut document.routes),
    );
    if tracks.is_empty() {
        return routes;
    }
    if !routes.is_empty() {
        let beside = InGpx::RoutesBesideTracks(routes.len());
        let fault = Fault::new(beside, Place::file(document.file));
        document.tally.add((Code::PartLeftOut, "routes"), || fault);
    }
    tracks
}

fn no_line(document: &GpxDocument<'_>) -> Fault {
    let no_line = InGpx::NoLine {
        waypoints: document.waypoints,
        tracks: document.held_tracks,
        routes: document.held_routes,
    };
    Fault::new(no_line, Place::file(document.file))
}

fn note_jumps(tally: &mut Tally, place: &Place, stage: &Stage) {
    for jump in stage.jumps().filter(|jump| jump.length_m > 0.0) {
        tally.add((Code::Jump, ""), || {
            let (length_m, at_m) = (jump.length_m, jump.at_m);
            Fault::new(InGpx::Jump { length_m, at_m }, place.clone())
        });
    }
}

fn note_suspicions(tally: &mut Tally, place: &Place, stage: &Stage) {
    for what in suspicions(stage) {
        tally.add((what.kind(), ""), || Fault::new(what, place.clone()));
    }
}
