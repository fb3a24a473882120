//! Rasters, lines and zones on a metre grid round one spot, in a plane that touches the earth there.

use std::io::Cursor;

use schrund::{
    geometry::{LonLat, projection::Projection},
    raster::Terrain,
    read,
    trip::{
        route::{Route, Stage},
        zone::Zone,
    },
};
use tiff::{
    encoder::{TiffEncoder, colortype::Gray32Float},
    tags::Tag,
};

/// Cells along one side of the raster.
const CELLS: u32 = 400;
/// What stands where a height is missing.
const VOID: f32 = -9999.0;

const MIDDLE: LonLat = LonLat::new(9.0, 46.5);

fn plane() -> Projection {
    let (lat, lon) = (MIDDLE.lat_deg, MIDDLE.lon_deg);
    Projection::parse(&format!(
        "+proj=tmerc +lat_0={lat} +lon_0={lon} +k=1 +datum=WGS84"
    ))
    .expect("plane")
}

/// The place so many metres east and north of the middle.
pub(crate) fn at(east_m: f64, north_m: f64) -> LonLat {
    plane().inverse(east_m, north_m).expect("near")
}

/// A GeoTIFF in UTM (zone 32, on whose middle the spot lies, so grid north is true north) with heights
/// by metres east and north of the middle; NaN is void.
pub(crate) fn raster(cell_m: f64, height_m: impl Fn(f64, f64) -> f64) -> Vec<u8> {
    let (utm, plane) = (
        Projection::parse("+proj=utm +zone=32 +datum=WGS84").expect("map"),
        plane(),
    );
    let (x, y) = utm.forward(MIDDLE).expect("inside");
    let half = f64::from(CELLS) / 2.0 * cell_m;
    let corner = (x - half, y + half);
    let mut heights = Vec::new();
    for row in 0..CELLS {
        for column in 0..CELLS {
            let x = corner.0 + (f64::from(column) + 0.5) * cell_m;
            let y = corner.1 - (f64::from(row) + 0.5) * cell_m;
            let there = utm.inverse(x, y).expect("inside");
            let (east, north) = plane.forward(there).expect("near");
            let height = height_m(east, north);
            heights.push(if height.is_nan() { VOID } else { height as f32 });
        }
    }
    encode(corner, cell_m, &heights)
}

fn encode(corner: (f64, f64), cell_m: f64, heights: &[f32]) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).expect("encoder");
    let mut image = encoder
        .new_image::<Gray32Float>(CELLS, CELLS)
        .expect("image");
    image.rows_per_strip(16).expect("strips");
    let keys: [u16; 12] = [1, 1, 0, 2, 1024, 0, 1, 1, 3072, 0, 1, 32632];
    let tags = image.encoder();
    tags.write_tag(Tag::GeoKeyDirectoryTag, &keys[..])
        .expect("keys");
    tags.write_tag(Tag::ModelPixelScaleTag, &[cell_m, cell_m, 0.0][..])
        .expect("scale");
    let tie = [0.0, 0.0, 0.0, corner.0, corner.1, 0.0];
    tags.write_tag(Tag::ModelTiepointTag, &tie[..])
        .expect("tie");
    tags.write_tag(Tag::GdalNodata, "-9999").expect("nodata");
    image.write_data(heights).expect("data");
    bytes.into_inner()
}

pub(crate) fn terrain(cell_m: f64, height_m: impl Fn(f64, f64) -> f64) -> Terrain {
    let mut terrain = Terrain::new();
    terrain
        .add("made.tif", Box::new(Cursor::new(raster(cell_m, height_m))))
        .unwrap_or_else(|fault| panic!("{fault}"));
    terrain
}

/// Ground that falls at this angle toward this bearing.
pub(crate) fn tilted(slope_deg: f64, aspect_deg: f64) -> impl Fn(f64, f64) -> f64 {
    let fall = slope_deg.to_radians().tan();
    let (sin, cos) = aspect_deg.to_radians().sin_cos();
    move |east, north| 3000.0 - fall * (east * sin + north * cos)
}

/// A line through places in metres with the heights given, if any.
pub(crate) fn route(line_m: &[(f64, f64)], height_m: Option<&dyn Fn(f64, f64) -> f64>) -> Route {
    let mut stage = Stage::new(None);
    for &(east, north) in line_m {
        stage.push(at(east, north), height_m.map(|h| h(east, north) as f32));
    }
    Route::new(None, vec![stage])
}

/// A rectangle in metres as a GeoJSON feature.
pub(crate) fn rectangle(
    (west, south): (f64, f64),
    (east, north): (f64, f64),
    properties: &str,
) -> String {
    let corners = [
        (west, south),
        (east, south),
        (east, north),
        (west, north),
        (west, south),
    ];
    let ring: Vec<String> = corners
        .iter()
        .map(|&(x, y)| at(x, y))
        .map(|p| format!("[{},{}]", p.lon_deg, p.lat_deg))
        .collect();
    format!(
        "{{\"type\":\"Feature\",\"properties\":{properties},\"geometry\":{{\"type\":\"Polygon\",\"coordinates\":[[{}]]}}}}",
        ring.join(",")
    )
}

pub(crate) fn collection(features: &[String]) -> String {
    format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[{}]}}",
        features.join(",")
    )
}

pub(crate) fn zones(features: &[String]) -> Vec<Zone> {
    let given = read::geojson::Given { gap_m: Some(1.0) };
    let read = read::geojson::zones("zones.geojson", collection(features).as_bytes(), &given);
    read.unwrap_or_else(|faults| panic!("{faults:#?}")).value
}

/// A zone with gaps of 6 m over the middle of a line that runs north or east through the spot.
pub(crate) fn middle_zone() -> Vec<Zone> {
    zones(&[rectangle(
        (-200.0, -200.0),
        (200.0, 200.0),
        "{\"gap_m\":6,\"snow_depth_m\":1.5}",
    )])
}

/// From south to north through the spot.
pub(crate) const NORTHWARD: [(f64, f64); 2] = [(0.0, -900.0), (0.0, 900.0)];
