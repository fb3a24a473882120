//! The shape of the ground under a map: a shaded picture and height lines.
//!
//! *Model:* slopes between neighbouring heights, light from the north-west half way up, the habit of maps.
//! *Error:* it is a picture; nothing is measured in it.

use base64::{Engine, engine::general_purpose::STANDARD};
use geo::LineString;
use maud::{Markup, html};

use super::{
    extent::{Footprint, HEIGHT},
    labels::Labels,
    paper::{Paper, PaperSpot, path, round_step, simplified, steps, u},
};
use crate::{
    ground::relief::Relief,
    write::parts::contours::{ReliefPart, height, is_whole, position},
};

/// Height lines on a map are at most so many. Our judgement.
const MOST_LINES: f64 = 14.0;
/// Grey of level ground and the depth of full shade, of 255. Our judgement: pale enough for black lines.
const LEVEL: f64 = 244.0;
const DEPTH: f64 = 78.0;
/// Elevation and azimuth of the light, degrees. Habit of maps, no source.
const LIGHT_DEG: (f64, f64) = (45.0, 315.0);

/// Height lines on a paper, each with its height.
pub(super) struct HeightLines(Vec<(String, Vec<LineString>)>);

/// The shaded ground under a map.
pub(super) fn shading(relief: &Relief, paper: &Paper) -> Markup {
    if is_whole(relief) {
        picture(relief, paper)
    } else {
        html! {}
    }
}

fn picture(relief: &Relief, paper: &Paper) -> Markup {
    let Some(png) = png(relief) else {
        return html! {};
    };
    #[expect(
        clippy::cast_precision_loss,
        reason = "a lattice has some thousand columns"
    )]
    let (east, south) = (relief.columns as f64 - 0.5, relief.rows as f64 - 0.5);
    let (x0, y0) = paper.at(position(relief, -0.5, -0.5));
    let (x1, y1) = paper.at(position(relief, east, south));
    html! {
        image x=(u(x0)) y=(u(y0)) width=(u(x1 - x0)) height=(u(y1 - y0))
            preserveAspectRatio="none" href={ "data:image/png;base64," (STANDARD.encode(png)) } {}
    }
}

fn png(relief: &Relief) -> Option<Vec<u8>> {
    let (width, height) = (
        u32::try_from(relief.columns).ok()?,
        u32::try_from(relief.rows).ok()?,
    );
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, width, height);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().ok()?;
    writer.write_image_data(&shades(relief)).ok()?;
    writer.finish().ok()?;
    Some(bytes)
}

fn shades(relief: &Relief) -> Vec<u8> {
    let here = position(relief, 0.0, 0.0);
    let cell = (
        here.distance_m(position(relief, 1.0, 0.0)).max(1e-6),
        here.distance_m(position(relief, 0.0, 1.0)).max(1e-6),
    );
    (0..relief.rows)
        .flat_map(|row| (0..relief.columns).map(move |column| (column, row)))
        .map(|(column, row)| shade(relief, column, row, cell).unwrap_or(u8::MAX))
        .collect()
}

/// Grey of one position; `None` where its neighbours have no height.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a byte"
)]
fn shade(relief: &Relief, column: usize, row: usize, cell: (f64, f64)) -> Option<u8> {
    let slope = |a: Option<f64>, here: f64, b: Option<f64>, step_m: f64| match (a, b) {
        (Some(a), Some(b)) => (b - a) / (2.0 * step_m),
        (None, Some(b)) => (b - here) / step_m,
        (Some(a), None) => (here - a) / step_m,
        (None, None) => 0.0,
    };
    let here = height(relief, column, row)?;
    let side = |c: Option<usize>, r: Option<usize>| height(relief, c?, r?);
    let (west, east) = (column.checked_sub(1), column.checked_add(1));
    let (north, south) = (row.checked_sub(1), row.checked_add(1));
    let (c, r) = (Some(column), Some(row));
    let to_east = slope(side(west, r), here, side(east, r), cell.0);
    let to_north = slope(side(c, south), here, side(c, north), cell.1);
    let (up, azimuth) = (LIGHT_DEG.0.to_radians(), LIGHT_DEG.1.to_radians());
    let light = (azimuth.sin() * up.cos(), azimuth.cos() * up.cos(), up.sin());
    let facing = (light.2 - to_east * light.0 - to_north * light.1)
        / (1.0 + to_east * to_east + to_north * to_north).sqrt();
    let grey = LEVEL + DEPTH * (facing - up.sin()) / up.sin();
    Some(grey.clamp(0.0, 255.0) as u8)
}

// --- height lines ---

impl HeightLines {
    /// Those under a map; none where the relief is not whole.
    pub(super) fn under(relief: &Relief, paper: &Paper) -> Self {
        let part = is_whole(relief).then(|| under(relief, paper));
        let known = part.and_then(|part| Some((part.range()?, part)));
        let Some(((low, high), part)) = known else {
            return Self(Vec::new());
        };
        let step_m = round_step((high - low) / MOST_LINES).max(10.0);
        Self(on_paper(&part, &steps(low, high, step_m), paper))
    }

    /// The lines.
    pub(super) fn drawn(&self) -> Markup {
        html! {
            g class="contour" {
                @for (height_m, parts) in &self.0 {
                    path d=(parts.iter().map(|part| path(part, false)).collect::<String>())
                        data-height-m=(height_m) {}
                }
            }
        }
    }

    /// Heights beside the lines, in metres as the lines are: on each line one, where it hides nothing.
    pub(super) fn heights(&self, labels: &mut Labels) -> Markup {
        let mut placed = Vec::new();
        for (height_m, parts) in &self.0 {
            let longest = parts.iter().max_by_key(|part| part.0.len());
            let spots = longest.map_or_else(Vec::new, along);
            let room = Footprint::text(height_m, HEIGHT, 3.0);
            placed.extend(labels.place_clear(&spots, &room).map(|at| (height_m, at)));
        }
        html! {
            @for (height_m, placed) in &placed {
                text class={ "height " (placed.class()) } x=(u(placed.at.0)) y=(u(placed.at.1 + 3.0)) { (height_m) }
            }
        }
    }
}

/// Places along a line, the middle first.
fn along(line: &LineString) -> Vec<PaperSpot> {
    const SHARES: [usize; 9] = [4, 5, 3, 6, 2, 7, 1, 8, 0];
    let points = &line.0;
    let at = |share: usize| points.get(points.len().saturating_sub(1) * share / 8);
    SHARES
        .into_iter()
        .filter_map(at)
        .map(|c| (c.x, c.y))
        .collect()
}

/// The part of a relief under one map.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "clamped to the lattice, which has some thousand columns"
)]
fn under<'a>(relief: &'a Relief, paper: &Paper) -> ReliefPart<'a> {
    let shown = paper.bounds();
    let (sw, ne) = (relief.south_west, relief.north_east);
    let index = |share: f64, count: usize| {
        let last = (count - 1) as f64;
        (share * last).clamp(0.0, last)
    };
    let column = |lon: f64| {
        index(
            (lon - sw.lon_deg) / (ne.lon_deg - sw.lon_deg),
            relief.columns,
        )
    };
    let row = |lat: f64| index((ne.lat_deg - lat) / (ne.lat_deg - sw.lat_deg), relief.rows);
    let (west, east) = (column(shown.low.lon_deg), column(shown.high.lon_deg));
    let (north, south) = (row(shown.high.lat_deg), row(shown.low.lat_deg));
    let first = (west.floor() as usize, north.floor() as usize);
    ReliefPart {
        relief,
        first,
        columns: east.ceil() as usize - first.0 + 1,
        rows: south.ceil() as usize - first.1 + 1,
    }
}

/// Lines with their heights, on a paper.
fn on_paper(
    part: &ReliefPart<'_>,
    heights_m: &[f64],
    paper: &Paper,
) -> Vec<(String, Vec<LineString>)> {
    let lines = part.lines(heights_m).into_iter();
    let drawn = lines.map(|line| {
        let parts = line.parts.into_iter();
        let drawn = parts.map(|part| simplified(part.into_iter().map(|p| paper.at(p))));
        let drawn = drawn.filter(|part| part.0.len() > 1);
        (format!("{:.0}", line.height_m), drawn.collect::<Vec<_>>())
    });
    drawn.filter(|(_, drawn)| !drawn.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Bounds, LonLat};

    /// Ground that rises to the east by 100 m in each of its ten columns.
    fn ramp() -> Relief {
        Relief {
            south_west: LonLat::new(8.0, 46.0),
            north_east: LonLat::new(8.1, 46.1),
            columns: 11,
            rows: 11,
            heights_m: (0..121_u8)
                .map(|i| Some(f32::from(i % 11) * 100.0))
                .collect(),
        }
    }

    #[test]
    fn a_height_line_lies_where_the_ground_has_that_height() {
        let relief = ramp();
        let bounds = Bounds {
            low: relief.south_west,
            high: relief.north_east,
        };
        let paper = Paper::showing(&bounds, 480.0);
        let part = under(&relief, &paper);
        let lines = on_paper(&part, &[350.0], &paper);
        let (want, _) = paper.at(LonLat::new(8.035, 46.05));
        let (_, parts) = &lines[0];
        let x = parts[0].0[0].x;
        assert!((x - want).abs() < 0.5, "{parts:?} should begin near {want}");
    }

    #[test]
    fn ground_towards_the_light_is_brighter() {
        let relief = ramp();
        let mut falling = relief.clone();
        for row in falling.heights_m.chunks_mut(11) {
            row.reverse();
        }
        let middle = |r: &Relief| shade(r, 5, 5, (1000.0, 1000.0)).unwrap();
        assert!(
            middle(&relief) > middle(&falling),
            "west slopes face the light"
        );
    }

    #[test]
    fn ground_without_heights_draws_nothing_and_fails_at_nothing() {
        let mut relief = ramp();
        relief.heights_m.fill(None);
        let paper = Paper::showing(
            &Bounds {
                low: relief.south_west,
                high: relief.north_east,
            },
            480.0,
        );
        let lines = HeightLines::under(&relief, &paper).drawn();
        assert!(!lines.0.contains("<path"), "no line");
        relief.heights_m.pop();
        assert_eq!(shading(&relief, &paper).0, "", "not whole");
    }
}
