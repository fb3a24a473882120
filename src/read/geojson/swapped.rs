//! Whether zones lie elsewhere because latitude and longitude were exchanged.

use crate::{geometry::LonLat, trip::zone::Zone};

/// A box in degrees: south-west and north-east corner.
type Corners = (LonLat, LonLat);

/// True if no zone comes near the route, but with longitude and latitude exchanged one would.
///
/// `route_box` is the south-west and north-east corner of the route, degrees. Boxes are compared, also
/// a whole turn apart, so this is a test for a hint and not for a crossing.
#[must_use]
pub fn swapped_would_meet(zones: &[Zone], route_box: (LonLat, LonLat)) -> bool {
    let boxes: Vec<Corners> = zones.iter().filter_map(corners).collect();
    let exchanged = |p: LonLat| LonLat::new(p.lat_deg, p.lon_deg);
    let as_drawn = boxes.iter().any(|zone| meet(*zone, route_box));
    let swapped = |(low, high): &Corners| meet((exchanged(*low), exchanged(*high)), route_box);
    !as_drawn && boxes.iter().any(swapped)
}

fn corners(zone: &Zone) -> Option<Corners> {
    let mut points = zone.outline.polygons.iter().flat_map(|p| &p.outer);
    let first = *points.next()?;
    Some(points.fold((first, first), |(low, high), p| {
        let low = LonLat::new(low.lon_deg.min(p.lon_deg), low.lat_deg.min(p.lat_deg));
        (
            low,
            LonLat::new(high.lon_deg.max(p.lon_deg), high.lat_deg.max(p.lat_deg)),
        )
    }))
}

fn meet(zone: Corners, route: Corners) -> bool {
    let lat = zone.0.lat_deg <= route.1.lat_deg && route.0.lat_deg <= zone.1.lat_deg;
    let lon = |turn_deg: f64| {
        zone.0.lon_deg + turn_deg <= route.1.lon_deg && route.0.lon_deg <= zone.1.lon_deg + turn_deg
    };
    lat && [-360.0, 0.0, 360.0].into_iter().any(lon)
}
