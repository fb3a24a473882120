//! The maps: one of the whole route, and one of each roped leg.

use geo::LineString;
use maud::{Markup, html};

use super::{
    Extras,
    frame::{Strip, ticks},
    labels::Labels,
    layers,
    paper::{Paper, WIDTH, u},
    relief,
};
use crate::{
    geometry::{Bounds, LonLat},
    plan::leg::Leg,
    trip::route::Stretch,
    write::{
        Sheet,
        change::{self, Change},
    },
};

/// Ground shown round the route: this share of its extent, and at least so many metres. Our judgement.
const ROUND_ROUTE: (f64, f64) = (0.08, 120.0);
/// Likewise round a leg.
const ROUND_LEG: (f64, f64) = (0.12, 40.0);
/// Width of a leg's own map, units: two stand side by side where one of the route does.
const LEG_WIDTH: f64 = WIDTH / 2.0;

/// What is drawn on every map.
pub(super) struct Ground<'a> {
    pub(super) sheet: &'a Sheet<'a>,
    pub(super) extras: &'a Extras<'a>,
    pub(super) legs: Vec<LegLine<'a>>,
    pub(super) changes: Vec<Change<'a>>,
}

/// A leg with its line.
pub(super) struct LegLine<'a> {
    pub(super) leg: &'a Leg,
    pub(super) parts: Vec<Vec<LonLat>>,
    pub(super) middle: Option<LonLat>,
    bounds: Option<Bounds>,
}

impl<'a> LegLine<'a> {
    fn new(sheet: &Sheet<'a>, leg: &'a Leg) -> Self {
        let stage = sheet.route.stages.iter().find(|s| s.number == leg.stage);
        let stretch = Stretch {
            from_m: leg.start_m,
            to_m: leg.end_m,
        };
        let parts = stage.map(|s| s.line(stretch)).unwrap_or_default();
        Self {
            leg,
            bounds: parts
                .iter()
                .filter_map(|p| Bounds::of(p))
                .reduce(Bounds::with),
            middle: stage.and_then(|s| s.at(f64::midpoint(leg.start_m, leg.end_m))),
            parts,
        }
    }

    /// Its line on a paper, in pieces; what lies off the paper is left out.
    pub(super) fn on(&self, paper: &Paper) -> Vec<LineString> {
        let shown = paper.bounds();
        if !self.bounds.is_some_and(|b| b.meets(&shown)) {
            return Vec::new();
        }
        self.parts
            .iter()
            .flat_map(|part| near(part, &shown))
            .map(|part| paper.line(part))
            .collect()
    }
}

/// The runs of a line whose edges can meet the box.
fn near<'p>(line: &'p [LonLat], bounds: &Bounds) -> Vec<&'p [LonLat]> {
    let meets = |edge: &[LonLat]| Bounds::of(edge).is_some_and(|b| b.meets(bounds));
    let mut runs = Vec::new();
    let mut start = None;
    for (i, edge) in line.windows(2).enumerate() {
        match (meets(edge), start) {
            (true, None) => start = Some(i),
            (false, Some(first)) => {
                runs.extend(line.get(first..=i));
                start = None;
            }
            _ => {}
        }
    }
    runs.extend(start.and_then(|first| line.get(first..)));
    runs
}

impl<'a> Ground<'a> {
    pub(super) fn new(sheet: &'a Sheet<'a>, extras: &'a Extras<'a>) -> Self {
        let legs = sheet.plan.legs.iter();
        Self {
            legs: legs.map(|leg| LegLine::new(sheet, leg)).collect(),
            changes: change::changes(sheet),
            sheet,
            extras,
        }
    }

    /// Box round the route, with ground to see where it lies.
    fn bounds(&self) -> Option<Bounds> {
        let legs = self.legs.iter().filter_map(|l| l.bounds);
        legs.reduce(Bounds::with).map(|b| with_room(b, ROUND_ROUTE))
    }

    /// The paper of the whole route.
    pub(super) fn paper(&self) -> Option<Paper> {
        Some(Paper::showing(&self.bounds()?, WIDTH))
    }

    /// The map of the whole route; nothing for a route without a line.
    pub(super) fn overview(&self) -> Markup {
        let Some(paper) = self.paper() else {
            return html! {};
        };
        let legs = self.legs.iter().filter(|l| l.leg.roped).count();
        let says = format!(
            "Map of the route, north up: {} zones in the file, {} legs, {legs} of them roped. \
             The same stands in words in the tables below.",
            self.sheet.zones.len(),
            self.legs.len()
        );
        self.svg(&paper, "overview", &says, true)
    }

    /// A map of one leg.
    pub(super) fn of_leg(&self, line: &LegLine<'_>) -> Markup {
        let Some(bounds) = line.bounds else {
            return html! {};
        };
        let paper = Paper::showing(&with_room(bounds, ROUND_LEG), LEG_WIDTH);
        let number = line.leg.leg;
        let says = format!("Map of leg {number}, north up, with its zones and changes");
        self.svg(&paper, &format!("leg{number}"), &says, false)
    }

    fn svg(&self, paper: &Paper, id: &str, says: &str, whole: bool) -> Markup {
        let mut labels = Labels::on(paper.width, paper.height);
        let strip = Strip::of(paper, self.extras.units);
        let zones = layers::zones(self.sheet.zones, paper);
        let ticks = ticks(paper, &mut labels);
        let lines = layers::legs(self, paper, &mut labels);
        let signs = layers::signs(self, paper, &zones, &mut labels, whole);
        let class = if whole { "drawing wide" } else { "drawing" };
        let clip = format!("clip-{id}");
        html! {
            svg class=(class) role="img" viewBox={ "0 0 " (u(paper.width)) " " (u(paper.height + Strip::HEIGHT)) }
                aria-labelledby={ "map-" (id) } {
                title id={ "map-" (id) } { (says) }
                defs { clipPath id=(clip) { rect width=(u(paper.width)) height=(u(paper.height)) {} } }
                g clip-path={ "url(#" (clip) ")" } {
                    rect class="paper" width=(u(paper.width)) height=(u(paper.height)) {}
                    @if let Some(relief) = self.extras.relief { (relief::ground(relief, paper, whole)) }
                    (layers::zone_shapes(&zones))
                    (ticks)
                    (lines)
                    (signs)
                }
                rect class="frame" x="0.5" y="0.5" width=(u(paper.width - 1.0)) height=(u(paper.height - 1.0)) {}
                (strip.drawn(paper))
            }
        }
    }
}

/// The box with room round it: a share of its longer side in metres, and at least so much.
fn with_room(bounds: Bounds, (share, least_m): (f64, f64)) -> Bounds {
    let corner = LonLat::new(bounds.high.lon_deg, bounds.low.lat_deg);
    let (east_m, north_m) = (
        bounds.low.distance_m(corner),
        corner.distance_m(bounds.high),
    );
    bounds.widened((share * east_m.max(north_m)).max(least_m))
}
