//! The points of a line, in as few bytes as hold them exactly.

use std::ops::Range;

use crate::geometry::LonLat;

/// Positions in walking order.
///
/// As long as all are written with seven decimals of a degree at most, as devices do, one takes eight bytes, else sixteen:
/// there may be a million. What comes out is to the bit what went in.
///
/// ```
/// use schrund::{geometry::LonLat, trip::points::Points};
///
/// let written = [LonLat::new(8.0123456, -46.5), LonLat::new(187.25, 46.6)];
/// let mut line: Points = written.into_iter().collect();
/// assert!(line.iter().eq(written));
/// line.push(LonLat::new(1.0 / 3.0, 0.0));
/// assert_eq!(line.last(), Some(LonLat::new(1.0 / 3.0, 0.0)), "whatever it is");
/// assert!(line.part(0..2).eq(written));
/// ```
#[derive(Clone, Debug)]
pub struct Points(Kept);

#[derive(Clone, Debug)]
enum Kept {
    Short(Vec<ShortPoint>),
    Whole(Vec<LonLat>),
}

/// A position of decimals that are whole numbers of this many parts of a degree.
#[derive(Clone, Copy, Debug)]
struct ShortPoint {
    lon: i32,
    lat: i32,
}

/// Parts of a degree.
const PARTS: f64 = 1e7;

impl ShortPoint {
    /// `None` where it would come out otherwise.
    fn of(at: LonLat) -> Option<Self> {
        let short = Self {
            lon: parts(at.lon_deg),
            lat: parts(at.lat_deg),
        };
        let same = |a: f64, b: f64| a.to_bits() == b.to_bits();
        let back = LonLat::from(short);
        (same(back.lon_deg, at.lon_deg) && same(back.lat_deg, at.lat_deg)).then_some(short)
    }
}

/// As whole a number as there is near; what lies outside comes out otherwise and is found out by that.
#[expect(
    clippy::cast_possible_truncation,
    reason = "`as` saturates, which is compared afterwards"
)]
fn parts(deg: f64) -> i32 {
    (deg * PARTS).round() as i32
}

impl From<ShortPoint> for LonLat {
    /// A quotient is rounded as a decimal is when it is read: both are the number nearest to the same fraction.
    fn from(short: ShortPoint) -> Self {
        Self::new(f64::from(short.lon) / PARTS, f64::from(short.lat) / PARTS)
    }
}

impl Default for Points {
    fn default() -> Self {
        Self(Kept::Short(Vec::new()))
    }
}

impl PartialEq for Points {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl FromIterator<LonLat> for Points {
    fn from_iter<I: IntoIterator<Item = LonLat>>(points: I) -> Self {
        let mut all = Self::default();
        points.into_iter().for_each(|at| all.push(at));
        all
    }
}

impl Points {
    /// How many.
    #[must_use]
    pub fn len(&self) -> usize {
        match &self.0 {
            Kept::Short(points) => points.len(),
            Kept::Whole(points) => points.len(),
        }
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The one at that place, from 0.
    #[must_use]
    pub fn get(&self, place: usize) -> Option<LonLat> {
        match &self.0 {
            Kept::Short(points) => points.get(place).map(|&short| short.into()),
            Kept::Whole(points) => points.get(place).copied(),
        }
    }

    /// The same, of a place that there is.
    ///
    /// # Panics
    /// Past the last one.
    #[must_use]
    pub fn at(&self, place: usize) -> LonLat {
        match &self.0 {
            Kept::Short(points) => points[place].into(),
            Kept::Whole(points) => points[place],
        }
    }

    /// The ends of the edge that begins at a place.
    ///
    /// # Panics
    /// Where none begins there.
    #[must_use]
    pub fn edge(&self, place: usize) -> (LonLat, LonLat) {
        (self.at(place), self.at(place + 1))
    }

    /// The first one.
    #[must_use]
    pub fn first(&self) -> Option<LonLat> {
        self.get(0)
    }

    /// The last one.
    #[must_use]
    pub fn last(&self) -> Option<LonLat> {
        self.get(self.len().checked_sub(1)?)
    }

    /// All of them.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = LonLat> + Clone + '_ {
        self.part(0..self.len())
    }

    /// Some in a row; those past the last one are none.
    pub fn part(&self, places: Range<usize>) -> impl ExactSizeIterator<Item = LonLat> + Clone + '_ {
        let end = places.end.min(self.len());
        (places.start.min(end)..end).map(|place| self.at(place))
    }

    /// Adds one behind the last one.
    pub fn push(&mut self, at: LonLat) {
        match &mut self.0 {
            Kept::Whole(points) => points.push(at),
            Kept::Short(points) => match ShortPoint::of(at) {
                Some(short) => points.push(short),
                None => self.0 = Kept::Whole(self.iter().chain([at]).collect()),
            },
        }
    }

    /// Takes the last one away.
    pub fn pop(&mut self) {
        match &mut self.0 {
            Kept::Short(points) => drop(points.pop()),
            Kept::Whole(points) => drop(points.pop()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_come_out_as_they_are_read() {
        let decimals = (-2_000_000_000_i64..2_000_000_000).step_by(1_234_567);
        for parts in decimals.chain([0, 1, -1, 1_800_000_000, 2_147_483_647, -2_147_483_648]) {
            let text = format!("{parts}e-7");
            let deg: f64 = text.parse().expect("a number");
            let at = LonLat::new(deg, -deg / 2.0);
            let short = ShortPoint::of(LonLat::new(deg, deg)).expect("seven decimals");
            assert_eq!(
                LonLat::from(short).lon_deg.to_bits(),
                deg.to_bits(),
                "{text}"
            );
            let line: Points = [at, at].into_iter().collect();
            assert_eq!(line.last(), Some(at), "{text}");
        }
    }

    #[test]
    fn whatever_is_none_is_kept_whole() {
        let odd = [
            0.1 + 0.2,
            1e-8,
            214.8,
            -214.8,
            1e300,
            -0.0,
            f64::MIN_POSITIVE,
        ];
        for deg in odd {
            assert!(ShortPoint::of(LonLat::new(deg, 1.0)).is_none(), "{deg}");
            let before = LonLat::new(8.5, 46.5);
            let line: Points = [before, LonLat::new(1.0, deg), before]
                .into_iter()
                .collect();
            assert!(
                line.iter()
                    .map(|p| p.lat_deg.to_bits())
                    .eq([46.5, deg, 46.5].map(f64::to_bits))
            );
            let mut shorter = line.clone();
            shorter.pop();
            assert_eq!((shorter.len(), line.len()), (2, 3));
        }
    }
}
