//! Words on a drawing where they hide nothing and each other least.

use geo::{Coord, Intersects, Line, LineString, Rect};
use maud::{Markup, html};
use rstar::{RTree, RTreeObject};

use super::{
    extent::{Extent, Footprint},
    paper::{PaperSpot, u},
};

/// Width of the strip along lines that labels leave free, units. Our judgement.
const LINE_SIZE: f64 = 5.0;
/// A place on a line is as good as one that stands so much farther away, units. Our judgement.
const ON_A_LINE: f64 = 12.0;
/// From so far on a thin line leads from a spot to its words, units, and so far before them it ends. Our judgement.
const LED_FROM: f64 = 20.0;
const LED_TO: f64 = 6.5;
/// This share of it lies on what it begins at.
const OWN_SHARE: f64 = 0.15;

/// Where something stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    pub(super) at: PaperSpot,
    /// On narrow screens it has no room and is not shown.
    pub(super) roomy: bool,
    leader: Option<Line>,
}

impl Placed {
    /// The class of what has room on wide screens only.
    pub(super) fn class(&self) -> &'static str {
        if self.roomy { "roomy" } else { "" }
    }

    /// The thin line to what it belongs to, where it stands away from it.
    pub(super) fn led(&self) -> Markup {
        html! {
            @if let Some(line) = self.leader {
                path class={ "leader " (self.class()) } d={
                    "M" (u(line.start.x)) " " (u(line.start.y)) "L" (u(line.end.x)) " " (u(line.end.y))
                } {}
            }
        }
    }
}

/// What is taken at one size of print. Only what lies near is asked: of a line of many stages every place would ask all others.
#[derive(Debug, Default)]
struct Taken {
    boxes: RTree<Rect>,
    leaders: RTree<Line>,
}

impl Taken {
    fn is_free(&self, here: &Rect, leader: Option<Line>) -> bool {
        let hides = |other: &Rect| overlap(other, here);
        !near(&self.boxes, here).any(hides)
            && !near(&self.leaders, here).any(|other| other.intersects(here))
            && leader.is_none_or(|line| self.lets_through(&line))
    }

    fn take(&mut self, here: Rect, leader: Option<Line>) {
        self.boxes.insert(here);
        if let Some(leader) = leader {
            self.leaders.insert(leader);
        }
    }

    /// Whether a leader meets no other one, and nothing but what it begins in the middle of.
    fn lets_through(&self, line: &Line) -> bool {
        let own = |other: &Rect| apart(other.center().x_y(), line.start.x_y()) < 1.0;
        let mut met = near(&self.boxes, line).filter(|other| line.intersects(*other));
        met.all(own) && !near(&self.leaders, line).any(|other| line.intersects(other))
    }
}

/// What is taken on one drawing.
#[derive(Debug)]
pub(super) struct Labels {
    area: Rect,
    /// Whether words are larger on narrow screens.
    grows: bool,
    narrow: Taken,
    wide: Taken,
    /// Better not covered, if there is another place.
    lines: RTree<Line>,
}

impl Labels {
    /// On a drawing, whose words may be larger on narrow screens.
    pub(super) fn on(width: f64, height: f64, grows: bool) -> Self {
        Self::over(width, 0.0, height, grows)
    }

    /// On a part of a drawing from one height to another, the upper one first.
    pub(super) fn over(width: f64, high: f64, low: f64, grows: bool) -> Self {
        Self {
            area: Rect::new(Coord { x: 0.0, y: high }, Coord { x: width, y: low }),
            grows,
            narrow: Taken::default(),
            wide: Taken::default(),
            lines: RTree::new(),
        }
    }

    /// Keeps a place free of labels.
    pub(super) fn keep(&mut self, at: PaperSpot, size: f64) {
        self.take(at, &Footprint::square(size), None, false);
    }

    /// Keeps labels off a line where another place is free.
    pub(super) fn avoid(&mut self, line: &LineString) {
        let area = self.area;
        let on = line.lines().filter(|line| line.intersects(&area));
        on.for_each(|line| self.lines.insert(line));
    }

    /// The best of the places, nearest first, where something hides nothing; it is taken then.
    pub(super) fn place(&mut self, places: &[PaperSpot], room: &Footprint) -> Option<Placed> {
        let places: Vec<_> = places.iter().map(|at| (None, *at)).collect();
        self.best(&places, room)
    }

    /// The same for what had better not be shown than lie on a line.
    pub(super) fn place_clear(&mut self, places: &[PaperSpot], room: &Footprint) -> Option<Placed> {
        let clear = places
            .iter()
            .filter(|at| !self.covers_line(**at, &room.wide));
        let clear: Vec<PaperSpot> = clear.copied().collect();
        self.place(&clear, room)
    }

    /// The same for something that belongs to a spot: a thin line leads to it where it stands away from it.
    pub(super) fn place_by(
        &mut self,
        spot: PaperSpot,
        places: &[PaperSpot],
        room: &Footprint,
    ) -> Option<Placed> {
        let places: Vec<_> = places.iter().map(|at| (Some(spot), *at)).collect();
        self.best(&places, room)
    }

    /// A sign of this size, which may stand on a line.
    pub(super) fn place_sign(&mut self, places: &[PaperSpot], size: f64) -> Option<PaperSpot> {
        let room = Footprint::square(size);
        let mut places = places.iter();
        let at = places.find(|at| self.is_free(**at, &room, None, true))?;
        self.take(*at, &room, None, false);
        Some(*at)
    }

    /// The best place at both sizes of print, or else on wide screens only; each place may have a spot of its own.
    pub(super) fn best(
        &mut self,
        places: &[(Option<PaperSpot>, PaperSpot)],
        room: &Footprint,
    ) -> Option<Placed> {
        let everywhere = self.best_at(places, room, true);
        everywhere.or_else(|| self.best_at(places, room, false))
    }

    /// The best place at both sizes of print, or on wide screens only.
    pub(super) fn best_at(
        &mut self,
        places: &[(Option<PaperSpot>, PaperSpot)],
        room: &Footprint,
        everywhere: bool,
    ) -> Option<Placed> {
        let room = self.room(room);
        let good = places.iter().enumerate().filter_map(|(i, &(from, at))| {
            let leader = from.and_then(|from| leader(from, at));
            let free = self.is_free(at, &room, leader, everywhere);
            free.then(|| (self.cost((from, at), i, &room.wide), at, leader))
        });
        let best = good.min_by(|a, b| a.0.total_cmp(&b.0));
        let (_, at, leader) = best?;
        self.take(at, &room, leader, !everywhere);
        Some(Placed {
            at,
            roomy: !everywhere,
            leader,
        })
    }

    fn room(&self, room: &Footprint) -> Footprint {
        if self.grows {
            *room
        } else {
            room.same_everywhere()
        }
    }

    fn is_free(&self, at: PaperSpot, room: &Footprint, leader: Option<Line>, narrow: bool) -> bool {
        let free = |taken: &Taken, extent: &Extent| {
            let here = placed(at, extent, 0.0);
            self.inside(&here) && taken.is_free(&here, leader)
        };
        free(&self.wide, &room.wide) && (!narrow || free(&self.narrow, &room.narrow))
    }

    fn take(&mut self, at: PaperSpot, room: &Footprint, leader: Option<Line>, roomy: bool) {
        self.wide.take(placed(at, &room.wide, 0.0), leader);
        if !roomy {
            self.narrow.take(placed(at, &room.narrow, 0.0), leader);
        }
    }

    /// How bad a place is: how far from its spot, what lies under it or between, and how late in the list it stands.
    #[expect(clippy::cast_precision_loss, reason = "there are some hundred places")]
    fn cost(
        &self,
        (from, at): (Option<PaperSpot>, PaperSpot),
        rank: usize,
        extent: &Extent,
    ) -> f64 {
        let between = from.map(|from| Line::new(from, at));
        let between = between.map(|l| Line::new(l.start + l.delta() * OWN_SHARE, l.end));
        let crosses =
            |between: Line| near(&self.lines, &between).any(|line| between.intersects(line));
        let on = [self.covers_line(at, extent), between.is_some_and(crosses)];
        let on: f64 = on.map(|is| if is { ON_A_LINE } else { 0.0 }).iter().sum();
        from.map_or(0.0, |from| apart(from, at)) + on + rank as f64 / 100.0
    }

    fn covers_line(&self, at: PaperSpot, extent: &Extent) -> bool {
        let strip = placed(at, extent, LINE_SIZE / 2.0);
        near(&self.lines, &strip).any(|line| line.intersects(&strip))
    }

    /// Whether a spot lies on the map.
    pub(super) fn is_on(&self, spot: PaperSpot) -> bool {
        self.area.intersects(&Coord::from(spot))
    }

    /// Whether a sign of this size about a spot lies on the map with all of it.
    pub(super) fn holds(&self, spot: PaperSpot, size: f64) -> bool {
        self.inside(&placed(spot, &Footprint::square(size).wide, 0.0))
    }

    fn inside(&self, b: &Rect) -> bool {
        let (low, high) = (self.area.min(), self.area.max());
        b.min().x >= low.x && b.min().y >= low.y && b.max().x <= high.x && b.max().y <= high.y
    }
}

/// What something takes at a place, and so much more on every side.
fn placed((x, y): PaperSpot, extent: &Extent, more: f64) -> Rect {
    let low = (x - extent.left - more, y - extent.up - more);
    let high = (x + extent.right + more, y + extent.down + more);
    Rect::new(Coord::from(low), Coord::from(high))
}

fn overlap(a: &Rect, b: &Rect) -> bool {
    let (a_low, a_high, b_low, b_high) = (a.min(), a.max(), b.min(), b.max());
    a_low.x < b_high.x && b_low.x < a_high.x && a_low.y < b_high.y && b_low.y < a_high.y
}

/// The thin line from a spot to words that stand away from it.
fn leader(from: PaperSpot, at: PaperSpot) -> Option<Line> {
    let far = apart(from, at);
    let share = (far - LED_TO) / far;
    let end = (
        from.0 + (at.0 - from.0) * share,
        from.1 + (at.1 - from.1) * share,
    );
    (far > LED_FROM).then(|| Line::new(from, end))
}

/// How far two spots are apart.
pub(super) fn apart(a: PaperSpot, b: PaperSpot) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// What has a box about it that meets the one about something else: whatever meets it is among them.
fn near<'t, T: RTreeObject>(
    all: &'t RTree<T>,
    here: &impl RTreeObject<Envelope = T::Envelope>,
) -> impl Iterator<Item = &'t T> {
    all.locate_in_envelope_intersecting(&here.envelope())
}

/// Whether there is room left for words of a kind.
///
/// A drawing on which many found no place is full: each place of each other one would be asked for nothing, which takes the square
/// of their number. What is left out there stands on the maps of the legs.
#[derive(Debug, Default)]
pub(super) struct RoomLeft {
    misses: usize,
}

impl RoomLeft {
    /// So many that found no place fill a drawing, on which a few hundred fit at most. Our judgement.
    const FULL: usize = 200;

    /// What is found, if it is still worth asking.
    pub(super) fn find<T>(&mut self, place: impl FnOnce() -> Option<T>) -> Option<T> {
        let found = (self.misses < Self::FULL).then(place).flatten();
        self.misses += usize::from(found.is_none());
        found
    }
}

/// How far from a spot its words may stand, units. Our judgement.
const FARS: [f64; 7] = [13.0, 17.0, 24.0, 32.0, 42.0, 54.0, 68.0];

/// Places round a spot, nearest first.
pub(super) fn round(spot: PaperSpot) -> Vec<PaperSpot> {
    FARS.into_iter()
        .flat_map(|far| round_at(spot, far))
        .collect()
}

/// Places so far from a spot, the upper right one first, and those between the eight directions last.
pub(super) fn round_at((x, y): PaperSpot, far: f64) -> [PaperSpot; 16] {
    const TURNS: [f64; 16] = [
        7.0, 1.0, 5.0, 3.0, 0.0, 2.0, 4.0, 6.0, 7.5, 0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5,
    ];
    TURNS.map(|turn| {
        let angle = turn * std::f64::consts::FRAC_PI_4;
        (x + far * angle.cos(), y + far * angle.sin())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::write::report::extent::NUMBER;

    #[test]
    fn what_fits_on_wide_screens_only_is_told_apart() {
        let mut labels = Labels::on(30.0, 14.0, true);
        let room = Footprint::text("4 m", NUMBER, 3.6);
        let placed = labels.place(&[(15.0, 7.0)], &room);
        assert_eq!(placed.map(|p| p.roomy), Some(true), "{room:?}");
        assert_eq!(labels.place(&[(15.0, 7.0)], &room), None, "it is taken");
        let mut same = Labels::on(30.0, 14.0, false);
        let placed = same.place(&[(15.0, 7.0)], &room);
        assert_eq!(placed.map(|p| p.roomy), Some(false), "one size of print");
    }

    #[test]
    fn a_full_drawing_is_not_asked_any_more() {
        let (mut room, mut asked) = (RoomLeft::default(), 0);
        let mut find = |is_free: bool| {
            room.find(|| {
                asked += 1;
                is_free.then_some(())
            })
        };
        assert!((0..3 * RoomLeft::FULL).all(|_| find(true).is_some()));
        assert!((0..RoomLeft::FULL).all(|_| find(false).is_none()));
        assert_eq!(find(true), None);
        assert_eq!(asked, 4 * RoomLeft::FULL);
    }

    #[test]
    fn a_line_leads_to_what_stands_away_and_nothing_stands_on_it() {
        let mut labels = Labels::on(200.0, 200.0, false);
        let room = Footprint::square(10.0);
        let near = labels.place_by((100.0, 100.0), &[(112.0, 100.0)], &room);
        assert_eq!(near.and_then(|p| p.leader), None, "it stands beside it");
        let far = labels.place_by((100.0, 100.0), &[(100.0, 150.0)], &room);
        assert!(far.is_some_and(|p| p.leader.is_some()), "{far:?}");
        let on = labels.place(&[(102.0, 125.0)], &room);
        assert_eq!(on, None, "it would stand on the leader");
    }
}
