//! Where lines of one trip go different ways.

use rstar::{AABB, RTree, primitives::GeomWithData, primitives::Rectangle};

use crate::{
    geometry::{Bounds, LonLat, frame::Frame},
    trip::route::{Route, Stage, Stretch},
};

/// Lines that are no farther apart than this go the same way, metres: twice what a receiver in steep ground errs. Our judgement.
pub const SAME_WAY_M: f64 = 50.0;
/// A line is looked at every so many metres. Our judgement.
const STEP_M: f64 = 10.0;

/// For each line where none of the others is within so many metres, by number of the stage and chainage.
///
/// ```
/// use schrund::{read::gpx, survey::{SAME_WAY_M, apart}};
///
/// let line = |bend: &str| {
///     let text = format!(r#"<gpx><trk><trkseg><trkpt lat="46.50" lon="8"/><trkpt lat="46.52" lon="{bend}"/>
///         <trkpt lat="46.54" lon="8"/></trkseg></trk></gpx>"#);
///     gpx::route("line.gpx", text.as_bytes()).map(|read| read.value)
/// };
/// let (straight, round) = (line("8.0")?, line("8.02")?);
/// let [of_straight, of_round] = &apart(&[&straight, &round], SAME_WAY_M)[..] else { panic!("two lines") };
/// assert_eq!((of_straight.len(), of_round.len()), (1, 1), "they part once and meet at the end");
/// assert!(of_straight[0].1.from_m > 60.0 && of_straight[0].1.to_m < straight.length_m() - 60.0);
/// assert!(apart(&[&straight, &straight], SAME_WAY_M).iter().all(Vec::is_empty));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[must_use]
pub fn apart(lines: &[&Route], within_m: f64) -> Vec<Vec<(usize, Stretch)>> {
    let edges: Vec<Edges> = lines.iter().map(|line| edges(line)).collect();
    let of_line = |(own, line): (usize, &&Route)| {
        let beside = |at: LonLat| {
            let mut others = edges.iter().enumerate().filter(|(other, _)| *other != own);
            others.any(|(_, edges)| is_near(at, edges, within_m))
        };
        let stages = line.stages.iter();
        stages
            .flat_map(|stage| alone(stage, beside).into_iter().map(|s| (stage.number, s)))
            .collect()
    };
    lines.iter().enumerate().map(of_line).collect()
}

type Edges = RTree<GeomWithData<Rectangle<[f64; 2]>, [LonLat; 2]>>;

fn edges(line: &Route) -> Edges {
    let edge = |pair: (LonLat, LonLat)| {
        let ends = [pair.0, pair.1];
        let [low, high] = corners(Bounds::of(&ends)?);
        Some(GeomWithData::new(Rectangle::from_corners(low, high), ends))
    };
    let runs = line
        .stages
        .iter()
        .flat_map(|stage| stage.segments().map(|run| stage.points().part(run)));
    let pairs = runs.flat_map(|run| run.clone().zip(run.skip(1)));
    RTree::bulk_load(pairs.filter_map(edge).collect())
}

fn corners(bounds: Bounds) -> [[f64; 2]; 2] {
    [bounds.low, bounds.high].map(|at| [at.lon_deg, at.lat_deg])
}

/// Whether one of the edges comes within so many metres, whichever way round the earth they are counted.
fn is_near(at: LonLat, edges: &Edges, within_m: f64) -> bool {
    let at = at.taken_back();
    let turns = [-360.0, 0.0, 360.0];
    turns.into_iter().any(|east_deg| {
        let at = LonLat::new(at.lon_deg + east_deg, at.lat_deg);
        let Some(around) = Bounds::of(&[at]) else {
            return false;
        };
        let [low, high] = corners(around.widened(within_m));
        let near = edges.locate_in_envelope_intersecting(&AABB::from_corners(low, high));
        let frame = Frame::at(at);
        near.map(|edge| edge.data.map(|end| frame.local(end)))
            .any(|[from, to]| {
                let (way, back) = (from.to(to), from.to(frame.local(at)));
                let long = way.dot(way);
                let t = if long > 0.0 {
                    (back.dot(way) / long).clamp(0.0, 1.0)
                } else {
                    0.0
                };
                let off = [back.x_m - t * way.x_m, back.y_m - t * way.y_m];
                off[0].hypot(off[1]) <= within_m
            })
    })
}

/// Where a stage is beside none, in walking order. A place stands for the way to the next one.
fn alone(stage: &Stage, beside: impl Fn(LonLat) -> bool) -> Vec<Stretch> {
    let length_m = stage.length_m();
    let steps = (length_m / STEP_M).ceil().max(1.0);
    let step_m = length_m / steps;
    let places = std::iter::successors(Some(0.0), |step| Some(step + 1.0));
    let places = places
        .take_while(|step| *step < steps)
        .map(|step| step * step_m);
    let alone = places.filter(|at_m| {
        let middle = stage.at(at_m + step_m / 2.0);
        middle.is_some_and(|at| !beside(at))
    });
    let pieces = alone.map(|from_m| Stretch {
        from_m,
        to_m: (from_m + step_m).min(length_m),
    });
    Stretch::merged(pieces.collect(), step_m / 2.0)
}
