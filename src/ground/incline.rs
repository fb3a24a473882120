//! The slope that decides, piece by piece along a leg: over a window, not at one height.

use std::sync::Arc;

use crate::{
    ground::{
        along::SlopeSpot,
        gradient::Gradient,
        pieces::Falls,
        underway::{Underway, heading_deg},
    },
    practice::{Rule, Rules},
    trip::route::Stretch,
};

/// The pieces of a roped leg in walking order. How they fall is shared with whoever asks again.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Inclines {
    cut: Cut,
    falls: Arc<Falls>,
    /// From which piece on which contacts touch them.
    touched: Vec<(usize, Vec<usize>)>,
}

impl Inclines {
    fn of(leg: &Underway<'_>, cut: Cut, falls: Arc<Falls>) -> Self {
        let mut touched: Vec<(usize, Vec<usize>)> = Vec::new();
        for (i, piece) in cut.pieces().enumerate() {
            let contacts = touching(leg, piece);
            if touched.last().is_none_or(|(_, last)| *last != contacts) {
                touched.push((i, contacts));
            }
        }
        Self {
            cut,
            falls,
            touched,
        }
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = Incline<'_>> {
        let mut runs = self.touched.iter().peekable();
        let mut contacts: &[usize] = &[];
        let pieces = self.cut.pieces().zip(&self.falls.down_deg).enumerate();
        pieces.map(move |(i, (piece, down_deg))| {
            if let Some((_, touching)) = runs.next_if(|(begin, _)| *begin == i) {
                contacts = touching;
            }
            Incline {
                piece,
                down_deg: *down_deg,
                ground_deg: self.falls.ground_deg.get(i).copied().flatten(),
                contacts,
            }
        })
    }
}

/// A piece of a roped leg no longer than one spacing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Incline<'a> {
    /// From where to where.
    pub(crate) piece: Stretch,
    /// How steeply it falls in walking direction, degrees, negative where it rises: by the source that says least and by
    /// the one that says most. `None` where no heights are known.
    pub(crate) down_deg: Option<[f64; 2]>,
    /// How steep the ground is there, whichever way it falls, degrees.
    pub(crate) ground_deg: Option<f64>,
    /// Indices of the contacts that touch it: gaps are to be expected.
    pub(crate) contacts: &'a [usize],
}

impl Incline<'_> {
    /// How steep the line is, up or down, degrees.
    pub(crate) fn steepest_deg(&self) -> Option<f64> {
        self.steeper_deg().map(f64::abs)
    }

    /// How steeply it falls in walking direction by the source that makes it steeper, degrees, negative where it rises.
    pub(crate) fn steeper_deg(&self) -> Option<f64> {
        let [least_deg, most_deg] = self.down_deg?;
        let climbs = least_deg.abs() > most_deg.abs();
        Some(if climbs { least_deg } else { most_deg })
    }
}

/// The least of two figures that are told with their least and most, and the most.
pub(crate) fn least_and_most<T: PartialOrd>([a, b]: [T; 2], [c, d]: [T; 2]) -> [T; 2] {
    [if c < a { c } else { a }, if d > b { d } else { b }]
}

/// The pieces of a leg, one spacing long.
pub(crate) fn inclines(leg: &Underway<'_>, rope_m: f64, rules: &Rules) -> Inclines {
    let over_m = rules[Rule::SteepOverM].max(2.0 * rope_m);
    let cut = Cut::of(leg.stretch, rope_m);
    let line = &leg.met.under.line;
    let falls = line.pieces.of(leg.stretch, [rope_m, over_m], || {
        Arc::new(cut.falls(leg, rope_m, over_m))
    });
    Inclines::of(leg, cut, falls)
}

/// A leg cut at whole multiples of a length from where its stage begins: where ice that was drawn longer or shorter makes a
/// leg begin or end elsewhere, what lies between is asked at the same places as before.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Cut {
    from_m: f64,
    to_m: f64,
    step_m: f64,
    /// How many lengths lie before the first piece, a whole number.
    before: f64,
    /// How many pieces there are, a whole number.
    count: f64,
}

/// A piece shorter than this share of the others is none.
const SLIVER: f64 = 1e-6;

impl Cut {
    /// Into pieces of at most so many metres each.
    fn of(stretch: Stretch, most_m: f64) -> Self {
        let step_m = most_m.max(1.0);
        let before = (stretch.from_m / step_m + SLIVER).floor();
        let to = (stretch.to_m / step_m - SLIVER).ceil();
        Self {
            from_m: stretch.from_m,
            to_m: stretch.to_m,
            step_m,
            before,
            count: (to - before).max(1.0),
        }
    }

    fn pieces(self) -> impl Iterator<Item = Stretch> {
        let last = self.count - 1.0;
        let mark_m = move |i: f64| (self.before + i) * self.step_m;
        std::iter::successors(Some(0.0), |i| Some(i + 1.0))
            .take_while(move |i| *i <= last)
            .map(move |i| Stretch {
                from_m: if i > 0.0 { mark_m(i) } else { self.from_m },
                to_m: if i < last { mark_m(i + 1.0) } else { self.to_m },
            })
    }

    fn falls(self, leg: &Underway<'_>, rope_m: f64, over_m: f64) -> Falls {
        let falls = self.pieces().map(|piece| falls(leg, piece, rope_m, over_m));
        let (down_deg, mut ground_deg): (Vec<_>, Vec<_>) = falls.unzip();
        if ground_deg.iter().all(Option::is_none) {
            ground_deg.clear();
        }
        Falls {
            down_deg: down_deg.into(),
            ground_deg: ground_deg.into(),
        }
    }
}

/// How steeply a piece falls, and its ground.
fn falls(
    leg: &Underway<'_>,
    piece: Stretch,
    rope_m: f64,
    over_m: f64,
) -> (Option<[f64; 2]>, Option<f64>) {
    let middle_m = f64::midpoint(piece.from_m, piece.to_m);
    let window = leg.stage.about(middle_m, over_m);
    let (fall, ground_deg) = of_ground(leg, middle_m, rope_m, window);
    let line = &leg.met.under.line;
    let lines = [&line.profile, &line.second]
        .into_iter()
        .filter_map(|heights| Gradient::of(heights).rise(middle_m, window))
        .map(|rise| -rise);
    let falls = lines.chain(fall).map(|fall| fall.atan().to_degrees());
    let falls = falls.map(|deg| [deg; 2]);
    (falls.reduce(least_and_most), ground_deg)
}

/// Mean fall of the ground in the direction of a rope there, and its mean slope in degrees.
#[expect(clippy::cast_precision_loss, reason = "few places")]
fn of_ground(
    leg: &Underway<'_>,
    middle_m: f64,
    rope_m: f64,
    window: Stretch,
) -> (Option<f64>, Option<f64>) {
    let parts = leg.met.under.line.ground.around(window);
    let spots: Vec<&SlopeSpot> = parts.flat_map(|(_, spots)| spots).collect();
    if spots.is_empty() {
        return (None, None);
    }
    let count = spots.len() as f64;
    let slope_deg = spots.iter().map(|s| s.slope_deg).sum::<f64>() / count;
    let heading = heading_deg(leg.stage, middle_m, rope_m);
    let fall = heading.map(|heading| {
        let falls = spots.iter().map(|s| s.fall_deg(heading).to_radians().tan());
        falls.sum::<f64>() / count
    });
    (fall, Some(slope_deg))
}

fn touching(leg: &Underway<'_>, piece: Stretch) -> Vec<usize> {
    let touches = |&&i: &&usize| {
        let contact = leg.met.contacts.get(i);
        contact.is_some_and(|c| c.touches.iter().any(|t| t.overlaps(&piece)))
    };
    leg.contacts.iter().filter(touches).copied().collect()
}
