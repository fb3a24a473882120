//! Words on a map where they hide nothing and each other least.

use geo::{Coord, Intersects, Line, LineString, Rect};

use super::paper::PaperSpot;

/// Rough width of a sign in units, at the largest size a page shows (narrow screens). Our judgement.
const SIGN_WIDTH: f64 = 7.5;
/// Rough height of a line of signs likewise.
const SIGN_HEIGHT: f64 = 17.0;
/// The same of names and heights, which are smaller.
const SMALL: (f64, f64) = (6.2, 13.0);

/// Width of the strip along lines that labels leave free, units. Our judgement.
const LINE_SIZE: f64 = 5.0;

#[derive(Clone, Copy, Debug)]
struct Box {
    low: PaperSpot,
    high: PaperSpot,
}

impl Box {
    fn round((x, y): PaperSpot, width: f64, height: f64) -> Self {
        Self {
            low: (x - width / 2.0, y - height / 2.0),
            high: (x + width / 2.0, y + height / 2.0),
        }
    }

    /// So much larger on every side.
    fn wider(&self, by: f64) -> Rect {
        let by = Coord { x: by, y: by };
        Rect::new(Coord::from(self.low) - by, Coord::from(self.high) + by)
    }

    fn meets(&self, other: &Self) -> bool {
        self.low.0 < other.high.0
            && other.low.0 < self.high.0
            && self.low.1 < other.high.1
            && other.low.1 < self.high.1
    }
}

/// What is taken on one map.
#[derive(Debug)]
pub(super) struct Labels {
    width: f64,
    height: f64,
    taken: Vec<Box>,
    /// Better not covered, if there is another place.
    lines: Vec<Line>,
}

impl Labels {
    pub(super) fn on(width: f64, height: f64) -> Self {
        Self {
            width,
            height,
            taken: Vec::new(),
            lines: Vec::new(),
        }
    }

    /// Keeps a place free of labels.
    pub(super) fn keep(&mut self, at: PaperSpot, size: f64) {
        self.taken.push(Box::round(at, size, size));
    }

    /// Keeps labels off a line where another place is free.
    pub(super) fn avoid(&mut self, line: &LineString) {
        let map = Rect::new(
            Coord::zero(),
            Coord {
                x: self.width,
                y: self.height,
            },
        );
        self.lines
            .extend(line.lines().filter(|line| line.intersects(&map)));
    }

    /// The first of the places where a text of so many signs hides nothing, or else only lines; it is
    /// taken then.
    pub(super) fn place(&mut self, places: &[PaperSpot], signs: usize) -> Option<PaperSpot> {
        self.place_sized(places, signs, (SIGN_WIDTH, SIGN_HEIGHT))
    }

    /// The same for a name or a height.
    pub(super) fn place_small(&mut self, places: &[PaperSpot], signs: usize) -> Option<PaperSpot> {
        self.place_sized(places, signs, SMALL)
    }

    fn place_sized(
        &mut self,
        places: &[PaperSpot],
        signs: usize,
        (sign_width, height): (f64, f64),
    ) -> Option<PaperSpot> {
        #[expect(clippy::cast_precision_loss, reason = "labels have a few signs")]
        let width = signs.max(1) as f64 * sign_width + 4.0;
        let clear = |here: &Box| {
            let strip = here.wider(LINE_SIZE / 2.0);
            let mut lines = self.lines.iter();
            !lines.any(|line| may_meet(line, &strip) && line.intersects(&strip))
        };
        let spot = self.free(places, (width, height), clear);
        let spot = spot.or_else(|| self.free(places, (width, height), |_| true))?;
        self.taken.push(Box::round(spot, width, height));
        Some(spot)
    }

    /// The same for a sign of this size, which may stand on a line.
    pub(super) fn place_sign(&mut self, places: &[PaperSpot], size: f64) -> Option<PaperSpot> {
        let spot = self.free(places, (size, size), |_| true)?;
        self.keep(spot, size);
        Some(spot)
    }

    /// The first of the places where a box of this size hides nothing and is good otherwise.
    fn free(
        &self,
        places: &[PaperSpot],
        (width, height): (f64, f64),
        is_good: impl Fn(&Box) -> bool,
    ) -> Option<PaperSpot> {
        let hides_nothing =
            |here: &Box| self.inside(here) && !self.taken.iter().any(|taken| taken.meets(here));
        let good = |spot: &&PaperSpot| {
            let here = Box::round(**spot, width, height);
            hides_nothing(&here) && is_good(&here)
        };
        places.iter().find(good).copied()
    }

    /// Whether a spot lies on the map.
    pub(super) fn is_on(&self, (x, y): PaperSpot) -> bool {
        (0.0..=self.width).contains(&x) && (0.0..=self.height).contains(&y)
    }

    /// Whether any of the places round a spot may lie on the map.
    pub(super) fn may_place(&self, (x, y): PaperSpot) -> bool {
        let far = FARS.into_iter().fold(0.0, f64::max);
        (-far..=self.width + far).contains(&x) && (-far..=self.height + far).contains(&y)
    }

    fn inside(&self, b: &Box) -> bool {
        b.low.0 >= 0.0 && b.low.1 >= 0.0 && b.high.0 <= self.width && b.high.1 <= self.height
    }
}

/// Whether the box about a line meets another: where it does not, the line does not either.
fn may_meet(line: &Line, strip: &Rect) -> bool {
    let (a, b, low, high) = (line.start, line.end, strip.min(), strip.max());
    a.x.min(b.x) <= high.x
        && a.x.max(b.x) >= low.x
        && a.y.min(b.y) <= high.y
        && a.y.max(b.y) >= low.y
}

/// How far from a spot its words may stand, units. Our judgement.
const FARS: [f64; 3] = [14.0, 22.0, 34.0];

/// Places round a spot, nearest first.
pub(super) fn round(spot: PaperSpot) -> Vec<PaperSpot> {
    FARS.into_iter()
        .flat_map(|far| round_at(spot, far))
        .collect()
}

/// Places so far from a spot.
pub(super) fn round_at((x, y): PaperSpot, far: f64) -> [PaperSpot; 8] {
    const TURNS: [f64; 8] = [7.0, 1.0, 5.0, 3.0, 0.0, 2.0, 4.0, 6.0];
    TURNS.map(|turn| {
        let angle = turn * std::f64::consts::FRAC_PI_4;
        (x + far * angle.cos(), y + far * angle.sin())
    })
}
