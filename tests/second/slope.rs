//! Heights along the line and how steep they say it is.
//!
//! One noisy height decides nothing: a height that is lower or higher than both beside it, neither farther than
//! `LONE_HEIGHT_M`, may be wrong, unless the ground beside it leads up or down to it: each of both drawn on from the one behind it. So every slope is taken as often as there are such heights, one of them mended each time,
//! and once with none mended; the least steep counts, and level where two of them fall in opposite directions. To mend a
//! height is to move it towards the straight line between those beside it, by twice what it sticks out, never past the line.

use super::{
    case::Case,
    figures::{LONE_HEIGHT_M, STEEP_OVER_M},
    line::Line,
    meet::Stretch,
};

/// Height at which every line begins: high enough that none ends below what counts as a height.
const TOP_M: f64 = 8900.0;

/// A height of the line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Height {
    pub(super) at_m: f64,
    pub(super) height_m: f64,
}

/// The heights of each segment, in whole millimetres; none where the trip gives none.
pub(super) fn heights(case: &Case, line: &Line) -> Vec<Vec<Height>> {
    let Some(fall_deg) = case.fall_deg else {
        return Vec::new();
    };
    let mut number = 0;
    let mut height = |at_m: f64| {
        let off = case.off_m.iter().find(|off| off.0 == number);
        number += 1;
        let height_m =
            TOP_M - at_m * fall_deg.to_radians().tan() + off.map_or(0.0, |(_, off_m)| *off_m);
        Height {
            at_m,
            height_m: (height_m * 1000.0).round() / 1000.0,
        }
    };
    let mut all = Vec::new();
    for (segment, from_m, _) in line.segments() {
        let mut own = vec![height(from_m)];
        let edges = line.edges.iter().filter(|e| e.segment == segment);
        own.extend(edges.map(|e| height(e.to_m)));
        all.push(own);
    }
    all
}

/// Where the straight lines between heights run at a place.
fn height_m(of: &[Height], at_m: f64) -> f64 {
    let pair = of.windows(2).find(|p| at_m <= p[1].at_m);
    let pair = pair.unwrap_or(&of[of.len() - 2..]);
    let share = (at_m - pair[0].at_m) / (pair[1].at_m - pair[0].at_m);
    pair[0].height_m + share.clamp(0.0, 1.0) * (pair[1].height_m - pair[0].height_m)
}

/// A height that may be wrong, mended.
fn mended(own: &[Height], middle: usize) -> Option<Height> {
    let (before, here, after) = (own[middle - 1], own[middle], own[middle + 1]);
    let far = (here.at_m - before.at_m).max(after.at_m - here.at_m);
    let (mut low, mut high) = if before.height_m < after.height_m {
        (before.height_m, after.height_m)
    } else {
        (after.height_m, before.height_m)
    };
    if middle >= 2 && before.at_m - own[middle - 2].at_m <= LONE_HEIGHT_M {
        let slope =
            (before.height_m - own[middle - 2].height_m) / (before.at_m - own[middle - 2].at_m);
        let led_m = before.height_m + slope * (here.at_m - before.at_m);
        (low, high) = (low.min(led_m), high.max(led_m));
    }
    if middle + 2 < own.len() && own[middle + 2].at_m - after.at_m <= LONE_HEIGHT_M {
        let slope =
            (own[middle + 2].height_m - after.height_m) / (own[middle + 2].at_m - after.at_m);
        let led_m = after.height_m - slope * (after.at_m - here.at_m);
        (low, high) = (low.min(led_m), high.max(led_m));
    }
    let out_m = (low - here.height_m).max(here.height_m - high);
    if far > LONE_HEIGHT_M || out_m <= 0.0 {
        return None;
    }
    let line_m = height_m(&[before, after], here.at_m);
    let twice_m = if line_m > here.height_m {
        here.height_m + 2.0 * out_m
    } else {
        here.height_m - 2.0 * out_m
    };
    let nearer = (twice_m - here.height_m).abs() < (line_m - here.height_m).abs();
    Some(Height {
        height_m: if nearer { twice_m } else { line_m },
        ..here
    })
}

/// The heights as they are, and once for every one that may be wrong, all of a segment.
fn readings(own: &[Height]) -> Vec<Vec<Height>> {
    let mut all = vec![own.to_vec()];
    for middle in 1..own.len() - 1 {
        if let Some(height) = mended(own, middle) {
            let mut one = own.to_vec();
            one[middle] = height;
            all.push(one);
        }
    }
    all
}

fn least_steep(slopes: &[f64]) -> f64 {
    if slopes.iter().any(|s| *s <= 0.0) && slopes.iter().any(|s| *s >= 0.0) {
        return 0.0;
    }
    let least = slopes.iter().min_by(|a, b| a.abs().total_cmp(&b.abs()));
    *least.expect("a slope")
}

/// The straight line that fits heights best over a window: rise over run. Two places of each straight piece stand for
/// all of it, as Gauss found.
fn fitted(of: &[Height], window: Stretch) -> f64 {
    let middle_m = f64::midpoint(window.from_m, window.to_m);
    let inner = of.iter().map(|h| h.at_m);
    let mut cuts: Vec<f64> = inner
        .filter(|m| window.from_m < *m && *m < window.to_m)
        .collect();
    cuts.insert(0, window.from_m);
    cuts.push(window.to_m);
    let (mut over, mut under) = (0.0, 0.0);
    for piece in cuts.windows(2) {
        let (half_m, centre_m) = (
            (piece[1] - piece[0]) / 2.0,
            f64::midpoint(piece[0], piece[1]),
        );
        for at_m in [
            centre_m - half_m / 3_f64.sqrt(),
            centre_m + half_m / 3_f64.sqrt(),
        ] {
            let off_m = at_m - middle_m;
            over += half_m * off_m * (height_m(of, at_m) - of[0].height_m);
            under += half_m * off_m * off_m;
        }
    }
    over / under
}

/// How the line lies on a roped leg, degrees.
#[derive(Debug)]
pub(super) struct Slopes {
    /// Steepest over the length that a slope is taken over, up or down.
    pub(super) steepest_deg: f64,
    /// Steepest fall toward the lip where ice is met, walking on and looking back.
    pub(super) lip_deg: f64,
    pub(super) lip_behind_deg: f64,
    /// Whether one height alone would have made it steeper.
    pub(super) doubted: bool,
}

/// The slopes over windows that begin or end at a height, whichever way: rise over run, uphill positive.
fn along(case: &Case, line: &Line, stretch: Stretch, doubting: bool) -> Vec<f64> {
    let over_m = STEEP_OVER_M.min(stretch.length_m());
    let last_m = stretch.to_m - over_m;
    // A jump is not walked: what lies behind it is shifted to the height at which it begins.
    let mut segments = heights(case, line);
    for later in 1..segments.len() {
        let reached_m = segments[later - 1].last().expect("a height").height_m;
        let jumped_m = segments[later][0].height_m - reached_m;
        segments[later]
            .iter_mut()
            .for_each(|h| h.height_m -= jumped_m);
    }
    let mut all = vec![segments.concat()];
    for (number, segment) in segments.iter().enumerate().filter(|_| doubting) {
        for reading in readings(segment).into_iter().skip(1) {
            let mut one = segments.clone();
            one[number] = reading;
            all.push(one.concat());
        }
    }
    let near = |h: &&Height| stretch.from_m <= h.at_m && h.at_m <= stretch.to_m;
    let at_heights = all[0].iter().filter(near);
    let starts = at_heights.flat_map(|h| [h.at_m, h.at_m - over_m]);
    let starts = starts.chain([stretch.from_m, last_m]);
    let starts = starts.filter(|s| stretch.from_m <= *s && *s <= last_m);
    let slope = |from_m: f64| {
        let rise_m = |of: &Vec<Height>| height_m(of, from_m + over_m) - height_m(of, from_m);
        let rises: Vec<f64> = all.iter().map(rise_m).collect();
        least_steep(&rises) / over_m
    };
    starts.map(slope).collect()
}

/// The steepest descent of a stretch, degrees; none without heights.
pub(super) fn descent_deg(case: &Case, line: &Line, stretch: Stretch) -> Option<f64> {
    case.fall_deg?;
    let slopes = along(case, line, stretch, true);
    let falls = slopes.into_iter().map(|s| (-s).atan().to_degrees());
    falls.reduce(f64::max).map(|deg| deg.max(0.0))
}

/// The slopes of a roped leg; none without heights.
pub(super) fn slopes(
    case: &Case,
    line: &Line,
    leg: Stretch,
    spacing_m: f64,
    ice: &[Stretch],
) -> Option<Slopes> {
    case.fall_deg?;
    let steepest = |doubting: bool| {
        let all = along(case, line, leg, doubting).into_iter();
        all.map(f64::abs).fold(0.0, f64::max).atan().to_degrees()
    };
    let half_m = STEEP_OVER_M.max(2.0 * spacing_m) / 2.0;
    let segments = heights(case, line);
    let (mut lip_deg, mut lip_behind_deg) = (0.0_f64, 0.0_f64);
    // Every multiple of the spacing from the start of the line is a cut, whatever leg it lies in.
    for number in 0..(line.length_m() / spacing_m) as usize + 1 {
        let mark_m = number as f64 * spacing_m;
        let piece = Stretch {
            from_m: mark_m.max(leg.from_m),
            to_m: (mark_m + spacing_m).min(leg.to_m),
        };
        if piece.to_m - piece.from_m < 1e-5 {
            continue;
        }
        if !ice.iter().any(|t| t.common(piece).is_some()) {
            continue;
        }
        let at_m = f64::midpoint(piece.from_m, piece.to_m);
        let own = segments.iter().rfind(|s| s[0].at_m <= at_m);
        let own = own.expect("a segment");
        let window = Stretch {
            from_m: (at_m - half_m).max(own[0].at_m),
            to_m: (at_m + half_m).min(own[own.len() - 1].at_m),
        };
        let of_each: Vec<f64> = readings(own).iter().map(|r| fitted(r, window)).collect();
        let fall_deg = -least_steep(&of_each).atan().to_degrees();
        lip_deg = lip_deg.max(fall_deg);
        lip_behind_deg = lip_behind_deg.max(-fall_deg);
    }
    Some(Slopes {
        steepest_deg: steepest(true),
        lip_deg,
        lip_behind_deg,
        doubted: steepest(false) > steepest(true) + 1.0,
    })
}
