//! Invented trips, small enough to try the library with: the examples of this documentation plan them.

use std::io::Cursor;

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

/// A line of three kilometres up other invented ice, in two pieces with a jump between them; it ends on the ice.
pub const PAIR_ROUTE_GPX: &str = r#"<gpx><trk><name>Invented steps</name><trkseg>
    <trkpt lat="66.500" lon="2.5"><ele>1205</ele></trkpt>
    <trkpt lat="66.506" lon="2.5"><ele>1205</ele></trkpt></trkseg><trkseg>
    <trkpt lat="66.508" lon="2.5"><ele>1205</ele></trkpt>
    <trkpt lat="66.515" lon="2.5"><ele>1389</ele></trkpt>
    <trkpt lat="66.530" lon="2.5"><ele>1515</ele></trkpt></trkseg></trk></gpx>"#;

/// Two drawn zones across it; the second one is crossed askew.
pub const PAIR_ZONES_GEOJSON: &str = r#"{"type": "FeatureCollection", "features": [
    {"type": "Feature", "properties": {"name": "Lower step", "gap_m": 4, "snow_depth_m": 1.5},
     "geometry": {"type": "Polygon",
        "coordinates": [[[2.49, 66.510], [2.51, 66.510], [2.51, 66.516], [2.49, 66.516], [2.49, 66.510]]]}},
    {"type": "Feature", "properties": {"name": "Upper step", "gap_m": 10, "snow_depth_m": 0.8, "strike_deg": 60},
     "geometry": {"type": "Polygon",
        "coordinates": [[[2.49, 66.522], [2.51, 66.522], [2.51, 66.535], [2.49, 66.535], [2.49, 66.522]]]}}]}"#;

/// The ice of an invented inventory, which reaches farther down than the zones.
pub const PAIR_GLACIERS_GEOJSON: &str = r#"{"type": "Feature", "properties": {"name": "Invented ice"},
    "geometry": {"type": "Polygon",
        "coordinates": [[[2.48, 66.508], [2.52, 66.508], [2.52, 66.54], [2.48, 66.54], [2.48, 66.508]]]}}"#;

/// Two people and one rope, who go unroped by their own word where no zone is drawn. It asks for two more files:
/// [`pair_terrain_hgt`] and [`PAIR_GLACIERS_GEOJSON`].
pub const PAIR_TRIP_TOML: &str = r#"name = "Two on the invented steps"
party = [{ name = "Dag", mass_kg = 70 }, { name = "Eli", mass_kg = 95 }]
rope = [{ length_m = 80, name = "red" }]
terrain = ["N66E002.hgt"]
glaciers = "ice.geojson"
undrawn_ice = "tell"
"#;

/// The bytes of an invented terrain model, `N66E002.hgt`: level in the south, 14° steep on
/// the lower step, 4° above it.
///
/// ```
/// use std::io::Cursor;
/// use schrund::{example, geometry::LonLat, raster::Terrain};
///
/// let mut terrain = Terrain::new();
/// let notes = terrain.add("N66E002.hgt", Box::new(Cursor::new(example::pair_terrain_hgt())))?;
/// assert_eq!(notes.len(), 1, "above which zero its heights are");
/// assert_eq!(terrain.height_m(LonLat::new(2.5, 66.515))?, Some(1384.0));
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[must_use]
pub fn pair_terrain_hgt() -> Vec<u8> {
    const NODES: u16 = 1201;
    let height_m = |node: u16| {
        let past = |other: u16| node.saturating_sub(other);
        1200 + 23 * past(610) - 16 * past(618)
    };
    let row = |node: u16| height_m(node).to_be_bytes().repeat(NODES.into());
    (0..NODES).rev().flat_map(row).collect()
}

/// The trip of two, read with the files that it asks for: brake knots, a jump, heights from two sources, an inventory.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let knots: Vec<usize> = plan.legs.iter().flat_map(|leg| &leg.teams).map(|team| team.knots.count).collect();
/// assert_eq!(knots, [6, 6]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
///
/// # Errors
/// None, as for [`job`].
pub fn pair() -> Result<Job, Vec<Fault>> {
    let mut sources = Sources::new(
        Input::text("route.gpx", PAIR_ROUTE_GPX.as_bytes()),
        Input::text("zones.geojson", PAIR_ZONES_GEOJSON.as_bytes()),
    );
    let trip = Input::text("trip.toml", PAIR_TRIP_TOML.as_bytes());
    sources.trip = Some(trip::file(trip));
    let glaciers = Input::text("ice.geojson", PAIR_GLACIERS_GEOJSON.as_bytes());
    sources.glaciers = Some(glaciers);
    let ground = Box::new(Cursor::new(pair_terrain_hgt()));
    sources.terrain.push(Input::new("N66E002.hgt", ground));
    sources.job()
}
