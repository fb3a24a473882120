//! What lies there whatever is drawn: the line, the heights round it, outlines of an inventory. In JSON.

use serde::Serialize;

use crate::{
    geometry::{LonLat, Polygon},
    ground::relief::Relief,
    trip::{
        route::{Route, Stage},
        zone::Zone,
    },
    write::{
        geojson::form::{mm, position, positions},
        parts::contours::{HeightLine, ReliefPart},
        report::paper::{round_step, steps},
    },
};

/// Height lines on a page are at most so many: a page is looked at from nearer than a sheet of paper. Our judgement.
const MOST_LINES: f64 = 40.0;
/// Nearest height lines, metres: what models of 30 m can bear. Our judgement.
const LEAST_STEP_M: f64 = 10.0;
/// Every so many lines one is drawn heavier and has its height. A habit of maps, no source.
const HEAVIER: f64 = 5.0;

/// What lies there, as JSON.
///
/// # Errors
/// Only if a value cannot stand in JSON, which none does.
///
/// ```
/// use schrund::{ground::relief::Relief, write::page::ground};
///
/// let job = schrund::example::pair()?;
/// let relief = Relief::around(&job.route, &job.terrain).map_err(|fault| vec![fault])?;
/// let json = ground::json(&job.route, relief.as_ref(), &job.glaciers).expect("it can stand in JSON");
/// let ground: serde_json::Value = serde_json::from_str(&json).expect("it is JSON");
/// let runs = ground["stages"][0]["runs"].as_array().expect("runs");
/// assert_eq!(runs.len(), 2, "a jump between them");
/// assert_eq!(ground["relief"]["heights_m"].as_array().map(Vec::len), relief.map(|r| r.columns * r.rows));
/// assert!(!ground["inventory"].as_array().expect("outlines").is_empty());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn json(
    route: &Route,
    relief: Option<&Relief>,
    glaciers: &[Zone],
) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Ground {
        stages: route.stages.iter().map(GroundStage::of).collect(),
        relief: relief.map(GroundRelief::of),
        inventory: glaciers.iter().map(GroundOutline::of).collect(),
    })
}

#[derive(Serialize)]
struct Ground<'a> {
    stages: Vec<GroundStage<'a>>,
    relief: Option<GroundRelief>,
    inventory: Vec<GroundOutline<'a>>,
}

#[derive(Serialize)]
struct GroundStage<'a> {
    stage: usize,
    name: Option<&'a str>,
    length_m: f64,
    runs: Vec<Vec<Spot>>,
}

/// Longitude, latitude, metres walked, height.
type Spot = (f64, f64, f64, Option<f64>);

impl<'a> GroundStage<'a> {
    fn of(stage: &'a Stage) -> Self {
        let spot = |i: usize| {
            let [lon, lat] = position(stage.points().at(i));
            let height_m = stage.height_m(i).map(|m| mm(f64::from(m)));
            (lon, lat, mm(stage.chainage_m()[i]), height_m)
        };
        let runs = stage.segments().map(|run| run.map(spot).collect());
        Self {
            stage: stage.number,
            name: stage.name.as_deref(),
            length_m: mm(stage.length_m()),
            runs: runs.collect(),
        }
    }
}

#[derive(Serialize)]
struct GroundRelief {
    south_west: [f64; 2],
    north_east: [f64; 2],
    columns: usize,
    rows: usize,
    heights_m: Vec<Option<f64>>,
    contours: Vec<Contour>,
}

impl GroundRelief {
    fn of(relief: &Relief) -> Self {
        let decimetres = |m: f32| (f64::from(m) * 10.0).round() / 10.0;
        Self {
            south_west: position(relief.south_west),
            north_east: position(relief.north_east),
            columns: relief.columns,
            rows: relief.rows,
            heights_m: relief.heights_m.iter().map(|m| m.map(decimetres)).collect(),
            contours: contours(relief),
        }
    }
}

/// All lines of one height.
#[derive(Serialize)]
struct Contour {
    height_m: f64,
    index: bool,
    lines: Vec<Vec<[f64; 2]>>,
}

fn contours(relief: &Relief) -> Vec<Contour> {
    let part = ReliefPart::all(relief);
    let Some(((low, high), part)) = part.and_then(|part| Some((part.range()?, part))) else {
        return Vec::new();
    };
    let step_m = round_step((high - low) / MOST_LINES).max(LEAST_STEP_M);
    let lines = part.lines(&steps(low, high, step_m)).into_iter();
    let contour = |line: HeightLine| Contour {
        height_m: line.height_m,
        index: (line.height_m / step_m).round() % HEAVIER == 0.0,
        lines: line.parts.iter().map(|part| coarse(part)).collect(),
    };
    lines.map(contour).filter(|c| !c.lines.is_empty()).collect()
}

/// A height line is drawn to the metre: nothing is measured on it.
fn coarse(line: &[LonLat]) -> Vec<[f64; 2]> {
    let rounded = |deg: f64| (deg * 1e5).round() / 1e5;
    let mut coarse: Vec<_> = line
        .iter()
        .map(|at| [rounded(at.lon_deg), rounded(at.lat_deg)])
        .collect();
    coarse.dedup();
    coarse
}

#[derive(Serialize)]
struct GroundOutline<'a> {
    name: Option<&'a str>,
    polygons: Vec<Vec<Vec<[f64; 2]>>>,
}

impl<'a> GroundOutline<'a> {
    fn of(ice: &'a Zone) -> Self {
        let rings = |p: &Polygon| {
            let rings = std::iter::once(&p.outer).chain(&p.holes);
            rings.map(|ring| positions(ring)).collect()
        };
        Self {
            name: ice.name.as_deref(),
            polygons: ice.outline.polygons.iter().map(rings).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A height line that leaves the window, and one beside ground without a height.
    #[test]
    fn height_lines_have_positions_only_and_stay_in_their_window() {
        let (south_west, north_east) = (LonLat::new(8.0, 46.0), LonLat::new(8.1, 46.1));
        let heights_m = (0_u8..121).map(|i| (i != 60).then(|| f32::from(i % 11) * 100.0));
        let relief = Relief {
            south_west,
            north_east,
            columns: 11,
            rows: 11,
            heights_m: heights_m.collect(),
        };
        let spots: Vec<[f64; 2]> = contours(&relief)
            .into_iter()
            .flat_map(|c| c.lines)
            .flatten()
            .collect();
        assert!(spots.len() > 100, "{}", spots.len());
        let inside =
            |[lon, lat]: &[f64; 2]| (8.0..=8.1).contains(lon) && (46.0..=46.1).contains(lat);
        assert!(spots.iter().all(inside), "{spots:?}");
    }
}
