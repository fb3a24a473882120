//! Which map grid metres are in that were given as degrees: one in which they lie where the route is.

use std::cell::LazyCell;

use crate::{
    fault::{
        Fault, Noted, Wrong,
        coordinates::{MapGrid, NoLonLat},
        geojson::InGeojson,
    },
    geometry::{Bounds, LonLat, projection::Projection},
    raster::{CoordinateSystem, projected},
    trip::route::Route,
};

/// How far from the route ice drawn for it can begin, metres: an icefall or a glacier, and a map wider than the line. Our
/// judgement; the narrowest zones of grids are a degree wide, more than that up to 80° of latitude.
const NEAR_M: f64 = 20_000.0;
/// Grids in which the same numbers lie no farther apart than this are one for this purpose, metres: the members of the WGS 84
/// family, see `data/crs.toml`.
const SAME_M: f64 = 5.0;

/// The faults of zones, with the grids that bring metres near the route in every fault about metres.
pub(super) fn named(mut faults: Vec<Fault>, route: Option<&Noted<Route>>) -> Vec<Fault> {
    let line = route.and_then(|route| route.value.bounds());
    let Some(near) = line.map(|line| line.widened(NEAR_M)) else {
        return faults;
    };
    let systems = LazyCell::new(|| projected().filter_map(readied).collect::<Vec<_>>());
    for fault in &mut faults {
        if let Wrong::Geojson(InGeojson::Misplaced(misplaced)) = &mut fault.what
            && misplaced.why == NoLonLat::Projected
        {
            misplaced.grids = grids(&systems, &misplaced.numbers, &near);
        }
    }
    faults
}

fn readied(system: CoordinateSystem) -> Option<(CoordinateSystem, Projection)> {
    let grid = Projection::parse(&system.proj)?;
    Some((system, grid))
}

/// Of grids in which the numbers are the same place the first.
fn grids(
    systems: &[(CoordinateSystem, Projection)],
    numbers: &[f64],
    near: &Bounds,
) -> Vec<MapGrid> {
    let [x, y] = *numbers else {
        return Vec::new();
    };
    let mut found: Vec<(MapGrid, LonLat)> = Vec::new();
    for (system, grid) in systems {
        let is_new = |at: &LonLat| {
            let mut known = found.iter();
            known.all(|(_, known)| known.distance_m(*at) > SAME_M)
        };
        if let Some(at) = place(grid, (x, y), near).filter(is_new) {
            let (epsg, name) = (system.epsg, system.name.clone());
            found.push((MapGrid { epsg, name }, at));
        }
    }
    found.into_iter().map(|(grid, _)| grid).collect()
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
    use crate::{fault::coordinates::Misplaced, read::gpx};

    fn route(lon: f64, lat: f64) -> Noted<Route> {
        let text = format!(
            r#"<gpx><trk><trkseg><trkpt lon="{lon}" lat="{lat}"/><trkpt lon="{lon}" lat="{}"/></trkseg></trk></gpx>"#,
            lat + 0.02
        );
        gpx::route("r.gpx", text.as_bytes()).unwrap()
    }

    fn epsg(numbers: [f64; 2], lon: f64, lat: f64) -> Vec<u32> {
        let misplaced = Misplaced {
            numbers: numbers.to_vec(),
            why: NoLonLat::Projected,
            position: 1,
            ring: 0,
            polygon: None,
            grids: Vec::new(),
        };
        let fault = Fault::new(InGeojson::Misplaced(misplaced), Default::default());
        let route = route(lon, lat);
        let faults = named(vec![fault], Some(&route));
        match &faults[0].what {
            Wrong::Geojson(InGeojson::Misplaced(misplaced)) => {
                misplaced.grids.iter().map(|grid| grid.epsg).collect()
            }
            _ => Vec::new(),
        }
    }

    /// The numbers are those of `tests/reference/crs.csv`, made with other software.
    #[test]
    fn the_grid_of_the_place_is_found_and_seldom_another() {
        let (mut rows, mut alone) = (0, 0);
        for line in include_str!("../../tests/reference/crs.csv").lines() {
            let mut cells = line.split(',');
            let code: Option<u32> = cells.next().and_then(|c| c.parse().ok());
            let numbers: Vec<f64> = cells.filter_map(|c| c.parse().ok()).collect();
            let (Some(code), [lon, lat, x, y, _]) = (code, &numbers[..]) else {
                continue;
            };
            if projected().all(|system| system.epsg != code) {
                continue;
            }
            let place = |epsg: u32| {
                let system = projected().find(|system| system.epsg == epsg);
                let grid = Projection::parse(&system.unwrap().proj).unwrap();
                grid.inverse(*x, *y).unwrap()
            };
            let found = epsg([*x, *y], *lon, lat.min(89.9));
            let apart_m = |epsg: &u32| place(*epsg).distance_m(place(code));
            assert!(
                found.iter().any(|epsg| apart_m(epsg) <= SAME_M),
                "{code}: {found:?}"
            );
            rows += 1;
            alone += usize::from(found.len() == 1);
        }
        assert!(rows >= 300, "only {rows} rows");
        assert!(10 * alone > 9 * rows, "{alone} of {rows} alone");
    }

    #[test]
    fn elsewhere_none_is_named() {
        assert_eq!(epsg([2_600_000.0, 1_200_000.0], 7.44, 46.95), [2056]);
        assert!(epsg([2_600_000.0, 1_200_000.0], 15.0, 68.0).is_empty());
        assert_eq!(epsg([455_500.0, 7_377_200.0], 2.0, 66.5), [32631]);
    }
}
