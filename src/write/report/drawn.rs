//! What is drawn on every map: the legs with their lines, and the places where the set-up changes.

use geo::LineString;

use crate::{
    geometry::{Bounds, LonLat},
    plan::{Plan, leg::Leg, pieces::WordPiece, verdict::Verdict},
    trip::{
        route::{Route, Stretch},
        zone::Zone,
    },
    write::{
        parts::{
            change::{self, ChangePoint},
            look::{self, LookPoint},
        },
        report::paper::{Paper, WIDTH},
        sheet::Sheet,
    },
};

/// Ground shown round the route: this share of its extent, and at least so many metres. Our judgement.
const ROUND_ROUTE: (f64, f64) = (0.08, 120.0);

/// What is drawn on every map.
pub(super) struct MapPicture<'a> {
    pub(super) sheet: &'a Sheet<'a>,
    /// The zones, drawn by hand.
    pub(super) zones: Vec<ZoneBox<'a>>,
    /// The ice that is known and not drawn as a zone.
    pub(super) ice: Vec<ZoneBox<'a>>,
    /// In walking order.
    pub(super) legs: Vec<LegLine<'a>>,
    pub(super) changes: Vec<ChangePoint<'a>>,
    /// Numbers of the zones that the route meets, rising.
    pub(super) met: Vec<usize>,
    /// Places to look at.
    pub(super) signs: Vec<LookPoint<'a>>,
}

/// A zone with the boxes about its polygons: most maps show few of them.
pub(super) struct ZoneBox<'a> {
    pub(super) zone: &'a Zone,
    pub(super) boxes: Vec<Option<Bounds>>,
}

impl<'a> ZoneBox<'a> {
    fn of(zone: &'a Zone) -> Self {
        let polygons = zone.outline.polygons.iter();
        Self {
            zone,
            boxes: polygons.map(|p| Bounds::of(&p.outer)).collect(),
        }
    }
}

/// A leg with its line.
pub(in crate::write) struct LegLine<'a> {
    pub(super) leg: &'a Leg,
    /// By the word that holds on each piece of it.
    pub(in crate::write) pieces: Vec<(Verdict, Vec<Vec<LonLat>>)>,
    pub(super) bounds: Option<Bounds>,
}

impl<'a> LegLine<'a> {
    pub(in crate::write) fn new(route: &Route, leg: &'a Leg) -> Self {
        let stage = route.stages.iter().find(|s| s.number == leg.stage);
        let piece = |piece: WordPiece| {
            let stretch = Stretch {
                from_m: piece.from_m,
                to_m: piece.to_m,
            };
            let parts = stage.map(|s| s.line(stretch)).unwrap_or_default();
            (piece.verdict, parts)
        };
        let pieces: Vec<_> = leg.pieces().into_iter().map(piece).collect();
        let parts = pieces.iter().flat_map(|(_, parts)| parts);
        Self {
            leg,
            bounds: parts.filter_map(|p| Bounds::of(p)).reduce(Bounds::with),
            pieces,
        }
    }

    /// Whether some of it can lie in a box.
    pub(super) fn is_near(&self, shown: &Bounds) -> bool {
        self.bounds.is_some_and(|own| own.meets(shown))
    }

    /// Its pieces on a paper, each with its word and in as many lines as it takes; what lies off the paper is left out.
    pub(super) fn on(&self, paper: &Paper) -> Vec<(Verdict, Vec<LineString>)> {
        let shown = paper.bounds();
        let lines = |parts: &Vec<Vec<LonLat>>| {
            let near = parts.iter().flat_map(|part| near(part, &shown));
            near.map(|part| paper.line(part)).collect()
        };
        let pieces = self.pieces.iter();
        pieces.map(|(word, parts)| (*word, lines(parts))).collect()
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

impl<'a> MapPicture<'a> {
    pub(super) fn new(sheet: &'a Sheet<'a>) -> Self {
        let legs = sheet.plan.legs.iter();
        Self {
            zones: sheet.zones.iter().map(ZoneBox::of).collect(),
            ice: sheet.glaciers.iter().map(ZoneBox::of).collect(),
            legs: legs.map(|leg| LegLine::new(sheet.route, leg)).collect(),
            changes: change::changes(sheet),
            met: sheet.plan.zones_met(),
            signs: look::looks(sheet),
            sheet,
        }
    }

    /// The paper of the whole route; `None` for a route without a line.
    pub(super) fn paper(&self) -> Option<Paper> {
        paper(&self.legs)
    }
}

/// The paper of the whole route, with ground round it to see where it lies.
fn paper(legs: &[LegLine<'_>]) -> Option<Paper> {
    let bounds = legs.iter().filter_map(|l| l.bounds);
    let bounds = with_room(bounds.reduce(Bounds::with)?, ROUND_ROUTE);
    Some(Paper::showing(&bounds, WIDTH))
}

/// The window that the map of a route shows, south-west and north-east corner; `None` for a route without a line.
#[must_use]
pub fn window(plan: &Plan, route: &Route) -> Option<(LonLat, LonLat)> {
    let legs = plan.legs.iter().map(|leg| LegLine::new(route, leg));
    let legs: Vec<LegLine<'_>> = legs.collect();
    let shown = paper(&legs)?.bounds();
    Some((shown.low, shown.high))
}

/// The box with room round it: a share of its longer side in metres, and at least so much.
pub(super) fn with_room(bounds: Bounds, (share, least_m): (f64, f64)) -> Bounds {
    let corner = LonLat::new(bounds.high.lon_deg, bounds.low.lat_deg);
    let (east_m, north_m) = (
        bounds.low.distance_m(corner),
        corner.distance_m(bounds.high),
    );
    bounds.widened((share * east_m.max(north_m)).max(least_m))
}
