//! Places to look at, and which way a line is walked.

use geo::{Coord, LineString};
use maud::{Markup, html};

use super::{
    labels::{Labels, apart, round_at},
    paper::{Paper, PaperSpot, u},
};
use crate::write::parts::look::{LookPoint, LookSort};

/// Size of a sign, units. Our judgement.
const SIZE: f64 = 9.0;
/// Along a line from one arrow to the next, units; how far to the right of the line it stands, so that who comes back on the
/// same line has arrows of their own. Our judgement.
const ARROWS_APART: f64 = 64.0;
const ASIDE: f64 = 5.5;

/// A sign about a spot.
pub(super) fn drawn(sort: LookSort, (x, y): PaperSpot) -> Markup {
    let data = match sort {
        LookSort::Along => "M-3.5-3.5V3.5M0-3.5V3.5M3.5-3.5V3.5",
        LookSort::Fall => "M-4-3.5H4L0 4Z",
        LookSort::Steep => "M-4 3.5L4 3.5L4-4Z",
        LookSort::RollOver => "M-4.5 0A4.5 4.5 0 0 1 4.5 0L4.5 3.5",
    };
    html! {
        g class={ "sign " (class(sort)) } transform={ "translate(" (u(x)) " " (u(y)) ")" } {
            path class="under" d=(data) {}
            path d=(data) {}
        }
    }
}

fn class(sort: LookSort) -> &'static str {
    match sort {
        LookSort::Along => "along",
        LookSort::Fall => "fall",
        LookSort::Steep => "steep",
        LookSort::RollOver => "roll-over",
    }
}

/// Those on a paper, and where they are kept free of labels.
pub(super) fn on(all: &[LookPoint<'_>], paper: &Paper, labels: &mut Labels) -> Markup {
    let mut shown: Vec<(LookSort, PaperSpot)> = Vec::new();
    for look in all {
        let (sort, spot) = (look.sort, paper.at(look.at));
        let known = |(s, other): &(LookSort, PaperSpot)| *s == sort && apart(*other, spot) < SIZE;
        if !labels.is_on(spot) || shown.iter().any(known) {
            continue;
        }
        if let Some(free) = labels.place_sign(&beside(spot), SIZE) {
            shown.push((sort, free));
        }
    }
    html! { @for (sort, spot) in &shown { (drawn(*sort, *spot)) } }
}

/// A spot, and places close beside it.
fn beside((x, y): PaperSpot) -> Vec<PaperSpot> {
    let around = round_at((x, y), 1.2 * SIZE);
    std::iter::once((x, y)).chain(around).collect()
}

/// Arrows to the right of the lines, in walking direction.
pub(super) fn arrows<'l>(
    lines: impl Iterator<Item = &'l LineString>,
    labels: &mut Labels,
) -> Markup {
    let mut shown: Vec<(PaperSpot, f64)> = Vec::new();
    let mut since = ARROWS_APART / 2.0;
    for edge in lines.flat_map(LineString::lines) {
        let (way, length) = (edge.delta(), edge.delta().x.hypot(edge.delta().y));
        let mut walked = ARROWS_APART - since;
        while walked <= length && length > 0.0 {
            let (east, down) = (way.x / length, way.y / length);
            let on = edge.start
                + Coord {
                    x: east * walked,
                    y: down * walked,
                };
            let spot = (on.x - down * ASIDE, on.y + east * ASIDE);
            if labels.place_sign(&[spot], ASIDE).is_some() {
                shown.push((spot, down.atan2(east).to_degrees()));
                walked += ARROWS_APART;
            } else {
                walked += ASIDE;
            }
        }
        since = ARROWS_APART - (walked - length);
    }
    html! {
        @for ((x, y), turn) in &shown {
            path class="arrow" d="M-2.6-2.6L2.6 0L-2.6 2.6"
                transform={ "translate(" (u(*x)) " " (u(*y)) ") rotate(" (u(*turn)) ")" } {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_goes_out_and_comes_back_has_arrows_on_either_side() {
        let way = LineString::from(vec![(10.0, 100.0), (200.0, 100.0), (10.0, 100.0)]);
        let mut labels = Labels::on(300.0, 200.0, false);
        let drawn = arrows([way].iter(), &mut labels).into_string();
        assert_eq!(drawn.matches("rotate(0)").count(), 3, "{drawn}");
        assert_eq!(drawn.matches("rotate(180)").count(), 3, "{drawn}");
        assert_eq!(
            drawn.matches(" 105.5)").count(),
            3,
            "below, to the right of who goes east: {drawn}"
        );
        assert_eq!(
            drawn.matches(" 94.5)").count(),
            3,
            "above, to the right of who goes west: {drawn}"
        );
    }
}
