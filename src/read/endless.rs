//! A line that nobody walks to its end: a position in it is wrong, and to plan it would take hours and gigabytes.

use crate::{
    fault::{Fault, Noted, Place, gpx::InGpx},
    limits::{InputLimit, InputLimits},
    read::gpx::edges_m,
    trip::route::Route,
};

/// The line, unless it is longer than the limit says; what was noticed in it may tell why, and is told then too.
pub(super) fn refused(
    read: Noted<Route>,
    name: &str,
    limits: &InputLimits,
) -> Result<Noted<Route>, Vec<Fault>> {
    match endless(&read.value, limits[InputLimit::RouteKm]) {
        None => Ok(read),
        Some(endless) => {
            let fault = Fault::new(endless, Place::file(name));
            Err(std::iter::once(fault).chain(read.notes).collect())
        }
    }
}

#[expect(clippy::cast_precision_loss, reason = "no limit is above 2^30")]
fn endless(route: &Route, most_km: u64) -> Option<InGpx> {
    let length_m = route.length_m();
    if length_m <= most_km as f64 * 1000.0 {
        return None;
    }
    let edges = route.stages.iter().flat_map(edges_m);
    let (at_m, edge_m) = edges.max_by(|(_, a), (_, b)| a.total_cmp(b))?;
    Some(InGpx::Endless {
        length_m,
        most_km,
        edge_m,
        at_m,
    })
}
