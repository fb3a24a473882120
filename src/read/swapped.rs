//! Whether route and zones lie apart because latitude and longitude were exchanged, and in which of the two files.
//!
//! Exchanged back, either file would meet the other: that tells that one of them is wrong, and not which. That is told
//! by where ice can lie, and by the inventory where there is one.

use crate::{
    fault::{Fault, Place, files::InFiles, geojson::InGeojson, gpx::InGpx},
    geometry::{Bounds, LonLat},
    trip::{route::Route, zone::Zone},
};

/// Where in degrees there is no glacier between them but in the [`TROPICS`] `[from memory]`: the southernmost of the
/// Himalaya lie at 27° N.
const FIRST_LAT_DEG: f64 = 25.0;
/// North and south of this lies no land but the Antarctic plateau `[from memory]`.
const LAST_LAT_DEG: f64 = 84.0;
/// Glaciers of the tropics, west, south, east, north `[from memory]`: Andes and Mexico, East Africa, New Guinea.
const TROPICS: [[f64; 4]; 3] = [
    [-105.0, -25.0, -60.0, 25.0],
    [28.0, -5.0, 39.0, 2.0],
    [134.0, -7.0, 143.0, -2.0],
];

/// What the messages call the two files.
///
/// ```
/// use schrund::{example, geometry::LonLat, read::swapped::{FileNames, swapped}};
///
/// let (job, names) = (example::job().unwrap(), FileNames { route: "line.gpx", zones: "ice.geojson" });
/// assert!(swapped(&job.route, &job.zones, &[], names).is_none(), "the line meets the ice");
/// let mut zones = job.zones;
/// for point in zones.iter_mut().flat_map(|zone| &mut zone.outline.polygons).flat_map(|p| &mut p.outer) {
///     *point = LonLat::new(point.lat_deg, point.lon_deg);
/// }
/// let fault = swapped(&job.route, &zones, &[], names).expect("they would meet the other way round");
/// assert_eq!(fault.at.file.as_deref(), Some("ice.geojson"));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct FileNames<'n> {
    /// The route.
    pub route: &'n str,
    /// The zones.
    pub zones: &'n str,
}

/// That no box of the zones meets the route, and one would with longitude and latitude swapped in one of the files.
/// Boxes are compared, also a whole turn apart: a test for a hint, not for a crossing.
#[must_use]
pub fn swapped(
    route: &Route,
    zones: &[Zone],
    glaciers: &[Zone],
    names: FileNames<'_>,
) -> Option<Fault> {
    let line = route.bounds()?;
    let ice: Vec<Bounds> = boxes(zones).collect();
    let as_drawn = ice.iter().any(|zone| meet(zone, &line));
    let swapped: Vec<&Bounds> = ice
        .iter()
        .filter(|zone| meet(&exchanged(zone), &line))
        .collect();
    let (first, false) = (*swapped.first()?, as_drawn) else {
        return None;
    };
    let known = |here: &Bounds| boxes(glaciers).any(|glacier| meet(&glacier, here));
    let line_fits = (known(&line), can_have_ice(&line));
    let ice_fits = (known(first), can_have_ice(first));
    Some(match line_fits.cmp(&ice_fits) {
        std::cmp::Ordering::Less => Fault::new(InGpx::SwappedAxes, Place::file(names.route)),
        std::cmp::Ordering::Greater => Fault::new(InGeojson::SwappedAxes, Place::file(names.zones)),
        std::cmp::Ordering::Equal => {
            let (route, zones) = (names.route.to_owned(), names.zones.to_owned());
            let either = InFiles::SwappedAxes { route, zones };
            Fault::new(either, Place::default())
        }
    })
}

fn boxes(zones: &[Zone]) -> impl Iterator<Item = Bounds> + '_ {
    zones.iter().filter_map(|zone| zone.outline.bounds())
}

fn exchanged(bounds: &Bounds) -> Bounds {
    let exchanged = |p: LonLat| LonLat::new(p.lat_deg, p.lon_deg);
    Bounds {
        low: exchanged(bounds.low),
        high: exchanged(bounds.high),
    }
}

fn meet(a: &Bounds, b: &Bounds) -> bool {
    let turned = |by_deg: f64| a.moved_east(by_deg).meets(b);
    [-360.0, 0.0, 360.0].into_iter().any(turned)
}

/// Whether glaciers lie in these parts of the earth.
fn can_have_ice(bounds: &Bounds) -> bool {
    let p = bounds.low.along_edge(bounds.high, 0.5);
    let lat_deg = p.lat_deg.abs();
    let in_tropics = |[west, south, east, north]: &[f64; 4]| {
        (*west..=*east).contains(&p.lon_deg) && (*south..=*north).contains(&p.lat_deg)
    };
    (FIRST_LAT_DEG..=LAST_LAT_DEG).contains(&lat_deg) || TROPICS.iter().any(in_tropics)
}
