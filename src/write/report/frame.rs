//! Round a map: coordinates along its edges, a scale bar and north.

use maud::{Markup, html};

use super::{
    extent::{DEGREES, Footprint},
    labels::{Labels, Placed},
    paper::{Paper, round_step, steps, u},
};
use crate::{geometry::LonLat, say::voice::Voice};

/// Lines of longitude and of latitude on a map are about so many. Our judgement.
const LINES: f64 = 4.0;
/// The scale bar takes at most this share of the width. Our judgement.
const BAR_SHARE: f64 = 0.3;
/// Where the degrees of a parallel begin, units.
const LEFT: f64 = 4.0;

/// A line across the map, with its degrees where they find a place.
struct Tick {
    at: f64,
    says: Option<(String, Placed)>,
}

/// Degrees stand so far above the middle line of their place, units.
const ABOVE: f64 = 2.0;

/// Lines of longitude and latitude with their degrees.
pub(super) fn ticks(paper: &Paper, labels: &mut Labels) -> Markup {
    let bottom = paper.height - 8.0;
    let across = meridians(paper, labels, bottom);
    let down = parallels(paper, labels);
    html! {
        g class="ticks" {
            @for tick in &across {
                path d={ "M" (u(tick.at)) " 0v" (u(paper.height)) } {}
                @if let Some((says, placed)) = &tick.says {
                    text class=(placed.class()) x=(u(tick.at)) y=(u(bottom + 3.6)) text-anchor="middle" { (says) }
                }
            }
            @for tick in &down {
                path d={ "M0 " (u(tick.at)) "h" (u(paper.width)) } {}
                @if let Some((says, placed)) = &tick.says {
                    text class=(placed.class()) x=(u(LEFT)) y=(u(tick.at - ABOVE)) { (says) }
                }
            }
        }
    }
}

fn meridians(paper: &Paper, labels: &mut Labels, bottom: f64) -> Vec<Tick> {
    let (low, high) = (paper.bounds().low, paper.bounds().high);
    let step = round_step((high.lon_deg - low.lon_deg) / LINES);
    let tick = |lon_deg: f64| {
        let (at, _) = paper.at(LonLat::new(lon_deg, low.lat_deg));
        let says = east(lon_deg, step);
        let placed = labels.place(&[(at, bottom)], &Footprint::text(&says, DEGREES, 3.6));
        Tick {
            at,
            says: placed.map(|placed| (says, placed)),
        }
    };
    steps(low.lon_deg, high.lon_deg, step)
        .into_iter()
        .map(tick)
        .collect()
}

fn parallels(paper: &Paper, labels: &mut Labels) -> Vec<Tick> {
    let (low, high) = (paper.bounds().low, paper.bounds().high);
    let step = round_step((high.lat_deg - low.lat_deg) / LINES);
    let tick = |lat_deg: f64| {
        let (_, at) = paper.at(LonLat::new(low.lon_deg, lat_deg));
        let says = degrees(lat_deg, step, ("N", "S"));
        let room = Footprint::text_from(&says, DEGREES, -ABOVE);
        let placed = labels.place(&[(LEFT, at)], &room);
        Tick {
            at,
            says: placed.map(|placed| (says, placed)),
        }
    };
    steps(low.lat_deg, high.lat_deg, step)
        .into_iter()
        .map(tick)
        .collect()
}

fn east(lon_deg: f64, step: f64) -> String {
    let lon_deg = LonLat::new(lon_deg, 0.0).normal().lon_deg;
    degrees(lon_deg, step, ("E", "W"))
}

/// Degrees with as many decimals as the step has.
fn degrees(deg: f64, step: f64, (plus, minus): (&str, &str)) -> String {
    let decimals = (0..8).find(|&d| {
        let scaled = step * 10_f64.powi(d);
        (scaled - scaled.round()).abs() < 1e-6
    });
    let decimals = usize::try_from(decimals.unwrap_or(8)).unwrap_or(8);
    let side = if deg < 0.0 { minus } else { plus };
    format!("{:.decimals$}° {side}", deg.abs())
}

/// The strip under a map.
pub(super) struct Strip {
    length_m: f64,
    says: String,
}

impl Strip {
    /// Units.
    pub(super) const HEIGHT: f64 = 24.0;

    /// The longest round length that is not too long for this map.
    pub(super) fn of(paper: &Paper, voice: Voice) -> Self {
        let most_m = BAR_SHARE * paper.width / paper.scale;
        let (unit_m, name) = if most_m < voice.units.long_m() {
            (voice.units.short_m(), voice.units.short())
        } else {
            (voice.units.long_m(), voice.units.long())
        };
        let most = most_m / unit_m;
        // The least round number not below two fifths of the most never exceeds it.
        let number = round_step(most * 0.4);
        Self {
            length_m: number * unit_m,
            says: voice.marked(format!("{number} {name}")),
        }
    }

    pub(super) fn drawn(&self, paper: &Paper) -> Markup {
        let (y, length) = (paper.height + 15.0, self.length_m * paper.scale);
        let (end, north) = (4.0 + length, paper.width - 12.0);
        html! {
            g class="strip" {
                path class="bar" d={ "M4 " (u(y - 4.0)) "v8m0 -4h" (u(length)) "m0 -4v8" } {}
                text x=(u(end + 6.0)) y=(u(y + 3.6)) { (self.says) }
                path class="north" d={ "M" (u(north)) " " (u(y + 6.0)) "v-13m-3.5 4.5l3.5 -5.5l3.5 5.5z" } {}
                text x=(u(north - 8.0)) y=(u(y + 3.6)) text-anchor="end" { "N" }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_have_as_many_decimals_as_their_step() {
        assert_eq!(degrees(-8.05, 0.05, ("E", "W")), "8.05° W");
        assert_eq!(east(181.0, 1.0), "179° W");
    }
}
