//! How long a gap is along the rope: every chord of one spacing that lies over a touched place.

use super::{
    case::{Reading, Zone},
    figures::{ALONG_DEG, ALONG_FACTOR},
    line::{Line, Place, step_m},
    meet::Stretch,
};

/// A rope both of whose ends are (but for a decimetre) at one place has no direction worth the name.
const NO_WAY_M: f64 = 0.1;

/// The way over the widest gap, and whether the team runs along the crevasses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Effective {
    pub(super) gap_m: f64,
    pub(super) along: bool,
}

/// Degrees from the direction to the nearest of the two ends of the strike's axis, −90 to 90.
fn off_axis(direction_deg: f64, strike_deg: f64) -> f64 {
    (direction_deg - strike_deg + 90.0).rem_euclid(180.0) - 90.0
}

fn bearing(way: (f64, f64)) -> f64 {
    way.0.atan2(way.1).to_degrees()
}

/// While both ends of a rope walk straight on, the way between them changes in a straight line from `first` to
/// `last`: it turns one way only, by less than half a turn.
fn least_angle(
    first: (f64, f64),
    last: (f64, f64),
    strike_deg: f64,
    reading: Reading,
) -> Option<f64> {
    let long = |way: (f64, f64)| way.0.hypot(way.1) > NO_WAY_M;
    let ends = [first, last].into_iter().filter(|&w| long(w)).map(bearing);
    let ends: Vec<f64> = ends.collect();
    let at_ends = ends.iter().map(|&b| off_axis(b, strike_deg).abs());
    let least = at_ends.reduce(f64::min)?;
    let [from, to] = ends[..] else {
        return Some(least);
    };
    let change = (last.0 - first.0, last.1 - first.1);
    let twice_area = first.0 * change.1 - first.1 * change.0;
    let passes_nothing = twice_area.abs() <= NO_WAY_M * change.0.hypot(change.1);
    let turn = (to - from + 180.0).rem_euclid(360.0) - 180.0;
    if passes_nothing && turn.abs() > 90.0 {
        // Out and back on one line: the rope folds, and points along that line all the time.
        return Some(if reading.folds_turn { 0.0 } else { least });
    }
    let start = off_axis(from, strike_deg);
    let (low, high) = (start.min(start + turn), start.max(start + turn));
    let meets_axis = [-180.0, 0.0, 180.0].iter().any(|&a| low <= a && a <= high);
    Some(if meets_axis { 0.0 } else { least })
}

/// The least angle between the strike and any rope of this length over the touched stretch.
fn angle(
    line: &Line,
    touched: Stretch,
    spacing_m: f64,
    strike_deg: f64,
    reading: Reading,
) -> Option<f64> {
    let mut least: Option<f64> = None;
    for (segment, from_m, to_m) in line.segments() {
        if touched.to_m < from_m || touched.from_m > to_m {
            continue;
        }
        let rope_m = spacing_m.min(to_m - from_m);
        let first = (touched.from_m - rope_m).clamp(from_m, to_m - rope_m);
        let last = touched.to_m.clamp(from_m, to_m - rope_m);
        let own = line.edges.iter().filter(|e| e.segment == segment);
        let corners = own.flat_map(|e| [e.from_m, e.from_m - rope_m]);
        let mut stops: Vec<f64> = corners.filter(|&c| c > first && c < last).collect();
        stops.extend([first, last]);
        stops.sort_by(f64::total_cmp);
        let way = |s: f64| -> (f64, f64) {
            let ends: [Place; 2] = [line.at(segment, s), line.at(segment, s + rope_m)];
            step_m(ends[0], ends[1])
        };
        let ways: Vec<(f64, f64)> = stops.iter().map(|&s| way(s)).collect();
        for pair in ways.windows(2) {
            let next = least_angle(pair[0], pair[1], strike_deg, reading);
            least = match (least, next) {
                (Some(a), Some(b)) => Some(a.min(b)),
                (a, b) => a.or(b),
            };
        }
    }
    least
}

/// The way over the gaps of a zone on its touched stretches, for a rope of this spacing. Without a strike they are met
/// squarely; a strike without its uncertainty is taken as exact.
pub(super) fn effective(
    line: &Line,
    zone: &Zone,
    touched: &[Stretch],
    spacing_m: f64,
    reading: Reading,
) -> Effective {
    let square = Effective {
        gap_m: zone.gap_m,
        along: false,
    };
    let Some((strike_deg, uncertainty_deg)) = zone.strike else {
        return square;
    };
    let angles = touched.iter();
    let angles = angles.filter_map(|&t| angle(line, t, spacing_m, strike_deg, reading));
    let Some(least) = angles.reduce(f64::min) else {
        return square;
    };
    let worst = (least - uncertainty_deg.unwrap_or(0.0)).max(0.0);
    let along = worst < ALONG_DEG;
    let factor = if along {
        ALONG_FACTOR
    } else {
        1.0 / worst.to_radians().sin()
    };
    Effective {
        gap_m: zone.gap_m * factor,
        along,
    }
}
