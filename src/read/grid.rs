//! Which map grid metres are in that were given as degrees: the one in which they lie where the route is.

use crate::{
    fault::{
        Fault, Wrong,
        coordinates::{MapGrid, Misplaced, NoLonLat},
        geojson::InGeojson,
    },
    geometry::{Bounds, LonLat, projection::Projection},
    raster::projected,
    trip::route::Route,
};

/// How far from the route ice drawn for it can begin, metres: an icefall or a glacier, and a map wider than the line. Our
/// judgement; the narrowest zones of grids are a degree wide, more than that up to 80° of latitude.
const NEAR_M: f64 = 20_000.0;
/// Grids in which the same numbers lie no farther apart than this are one for this purpose, metres: the members of the WGS 84
/// family, see `data/crs.toml`.
const SAME_M: f64 = 5.0;

/// Names the grid in every fault about metres, where just one brings them near the route.
pub(super) fn named(faults: &mut [Fault], route: &Route) {
    let lines = route.stages.iter().filter_map(|s| Bounds::of(s.points()));
    let Some(near) = lines.reduce(Bounds::with).map(|line| line.widened(NEAR_M)) else {
        return;
    };
    for fault in faults {
        if let Wrong::Geojson(InGeojson::Misplaced(misplaced)) = &mut fault.what {
            misplaced.grid = grid(misplaced, &near);
        }
    }
}

fn grid(misplaced: &Misplaced, near: &Bounds) -> Option<MapGrid> {
    let (NoLonLat::Projected, [x, y]) = (misplaced.why, misplaced.numbers.as_slice()) else {
        return None;
    };
    let mut found: Option<(MapGrid, LonLat)> = None;
    for system in projected() {
        let place = Projection::parse(&system.proj).and_then(|grid| place(&grid, (*x, *y), near));
        match (&found, place) {
            (_, None) => {}
            (None, Some(at)) => {
                let (epsg, name) = (system.epsg, system.name);
                found = Some((MapGrid { epsg, name }, at));
            }
            (Some((_, known)), Some(at)) if known.distance_m(at) <= SAME_M => {}
            (Some(_), Some(_)) => return None,
        }
    }
    found.map(|(grid, _)| grid)
}

/// Where the numbers lie in a grid, if that is near and the grid is valid there.
fn place(grid: &Projection, numbers: (f64, f64), near: &Bounds) -> Option<LonLat> {
    let at = grid.inverse(numbers.0, numbers.1)?;
    let spot = Bounds { low: at, high: at };
    let turned = |by_deg: f64| spot.moved_east(by_deg).meets(near);
    let is_near = [-360.0, 0.0, 360.0].into_iter().any(turned);
    (is_near && grid.leads_back(at, numbers)).then_some(at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::read::gpx;

    fn route(lon: f64, lat: f64) -> Route {
        let text = format!(
            r#"<gpx><trk><trkseg><trkpt lon="{lon}" lat="{lat}"/><trkpt lon="{lon}" lat="{}"/></trkseg></trk></gpx>"#,
            lat + 0.02
        );
        gpx::route("r.gpx", text.as_bytes()).unwrap().value
    }

    fn epsg(numbers: [f64; 2], lon: f64, lat: f64) -> Option<u32> {
        let misplaced = Misplaced {
            numbers: numbers.to_vec(),
            why: NoLonLat::Projected,
            position: 1,
            ring: 0,
            polygon: None,
            grid: None,
        };
        let mut faults = [Fault::new(
            InGeojson::Misplaced(misplaced),
            Default::default(),
        )];
        named(&mut faults, &route(lon, lat));
        match &faults[0].what {
            Wrong::Geojson(InGeojson::Misplaced(misplaced)) => {
                misplaced.grid.as_ref().map(|grid| grid.epsg)
            }
            _ => None,
        }
    }

    /// The numbers are those of `tests/reference/crs.csv`, made with other software.
    #[test]
    fn the_grid_of_the_place_is_found_and_no_other() {
        let (mut rows, mut missed) = (0, Vec::new());
        for line in include_str!("../../tests/reference/crs.csv").lines() {
            let mut cells = line.split(',');
            let code: Option<u32> = cells.next().and_then(|c| c.parse().ok());
            let numbers: Vec<f64> = cells.filter_map(|c| c.parse().ok()).collect();
            let (Some(code), [lon, lat, x, y, _]) = (code, &numbers[..]) else {
                continue;
            };
            let (x, y) = (*x, *y);
            if projected().all(|system| system.epsg != code) {
                continue;
            }
            rows += 1;
            let Some(found) = epsg([x, y], *lon, lat.min(89.9)) else {
                missed.push((code, *lat));
                continue;
            };
            let place = |epsg: u32| {
                let system = projected().find(|system| system.epsg == epsg);
                let grid = Projection::parse(&system.unwrap().proj).unwrap();
                grid.inverse(x, y).unwrap()
            };
            let apart_m = place(found).distance_m(place(code));
            assert!(apart_m <= SAME_M, "{code}: EPSG:{found}, {apart_m} m off");
        }
        assert!(rows >= 300, "only {rows} rows");
        assert_eq!(missed, [], "none is named");
    }

    #[test]
    fn elsewhere_none_is_named() {
        assert_eq!(epsg([2_600_000.0, 1_200_000.0], 7.44, 46.95), Some(2056));
        assert_eq!(epsg([2_600_000.0, 1_200_000.0], 15.0, 68.0), None);
        assert_eq!(epsg([455_500.0, 7_377_200.0], 2.0, 66.5), Some(32631));
    }
}
