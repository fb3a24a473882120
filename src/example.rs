//! An invented trip, small enough to try the library with: the examples of this documentation plan it.

use crate::{
    fault::Fault,
    read::{input::Input, lay::Sources, trip},
    trip::job::Job,
};

/// A line of three kilometres up an invented glacier, with heights.
pub const ROUTE_GPX: &str = r#"<gpx><trk><name>Invented glacier</name><trkseg>
    <trkpt lat="66.500" lon="2.0"><ele>1200</ele></trkpt>
    <trkpt lat="66.509" lon="2.0"><ele>1300</ele></trkpt>
    <trkpt lat="66.518" lon="2.0"><ele>1450</ele></trkpt>
    <trkpt lat="66.527" lon="2.0"><ele>1500</ele></trkpt></trkseg></trk></gpx>"#;

/// One drawn zone across it: gaps of 15 m under snow.
pub const ZONES_GEOJSON: &str = r#"{"type": "Feature",
    "properties": {"name": "Middle icefall", "gap_m": 15, "snow_depth_m": 1.5},
    "geometry": {"type": "Polygon",
        "coordinates": [[[1.99, 66.511], [2.01, 66.511], [2.01, 66.517], [1.99, 66.517], [1.99, 66.511]]]}}"#;

/// Three people and one rope.
pub const TRIP_TOML: &str = r#"party = [{ name = "Ane", mass_kg = 82 }, { name = "Bo", mass_kg = 75 }, { name = "Cy", mass_kg = 90 }]
rope = [{ length_m = 60, name = "blue" }]
snow = "settled"
start = "05:30"
"#;

/// The trip, read.
///
/// ```
/// let job = schrund::example::job()?;
/// let plan = schrund::plan(&job)?;
/// let roped: Vec<bool> = plan.legs.iter().map(|leg| leg.roped).collect();
/// assert_eq!(roped, [false, true, false]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
///
/// # Errors
/// None: the files are without a fault. It reads them as any others, so that `?` works as it does there.
pub fn job() -> Result<Job, Vec<Fault>> {
    let mut sources = Sources::new(
        Input::text("route.gpx", ROUTE_GPX.as_bytes()),
        Input::text("zones.geojson", ZONES_GEOJSON.as_bytes()),
    );
    sources.trip = Some(trip::file(Input::text("trip.toml", TRIP_TOML.as_bytes())));
    sources.job()
}
