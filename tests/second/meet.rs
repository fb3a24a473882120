//! Where the line crosses ice, and where it comes within the margin of it.

use super::{
    case::{Patch, edges},
    exact,
    figures::MEETS_M,
    line::{Edge, Line, Place, degree_m, place, step_m},
};

/// A stretch of chainage, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
}

impl Stretch {
    pub(super) fn length_m(self) -> f64 {
        self.to_m - self.from_m
    }

    pub(super) fn common(self, other: Self) -> Option<Self> {
        let both = Self {
            from_m: self.from_m.max(other.from_m),
            to_m: self.to_m.min(other.to_m),
        };
        (both.length_m() > MEETS_M).then_some(both)
    }
}

/// Sorted, and what meets joined.
pub(super) fn joined(mut all: Vec<Stretch>) -> Vec<Stretch> {
    all.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
    let mut out: Vec<Stretch> = Vec::new();
    for next in all {
        match out.last_mut() {
            Some(last) if next.from_m <= last.to_m + MEETS_M => {
                last.to_m = last.to_m.max(next.to_m);
            }
            _ => out.push(next),
        }
    }
    out
}

/// What is left of `all` outside `cut`; both sorted and joined.
pub(super) fn without(all: &[Stretch], cut: &[Stretch]) -> Vec<Stretch> {
    let mut left = all.to_vec();
    for hole in cut {
        let sides = left.iter().flat_map(|s| {
            let before = Stretch {
                from_m: s.from_m,
                to_m: s.to_m.min(hole.from_m),
            };
            let after = Stretch {
                from_m: s.from_m.max(hole.to_m),
                to_m: s.to_m,
            };
            [before, after]
        });
        left = sides.filter(|s| s.length_m() > MEETS_M).collect();
    }
    left
}

/// The bare crossings, no margin. A jump joins nothing: what lies between was not walked.
pub(super) fn crossings(line: &Line, patches: &[Patch]) -> Vec<Stretch> {
    let of_segment = |(segment, _, _): (usize, f64, f64)| {
        let own = line.edges.iter().filter(move |e| e.segment == segment);
        let inside = own.flat_map(|edge| {
            let chainage = |share: exact::Share| edge.chainage_m(share.value());
            exact::pieces(edge.a, edge.b, patches)
                .into_iter()
                .map(move |(from, to)| Stretch {
                    from_m: chainage(from),
                    to_m: chainage(to),
                })
        });
        joined(inside.collect())
    };
    line.segments().into_iter().flat_map(of_segment).collect()
}

/// Metres from a place to the nearest edge of any ring: the nearest place of each on a map drawn round the place, on
/// which straight edges stay straight, then the way there.
fn to_border_m(at: Place, patches: &[Patch]) -> f64 {
    let (east, north) = degree_m(at.1);
    let flat = |p: Place| ((p.0 - at.0) * east, (p.1 - at.1) * north);
    let rings = patches.iter().flat_map(Patch::rings);
    let all = rings.flat_map(|ring| edges(ring));
    let distances = all.map(|(c, d)| {
        let (c, d) = (place(c), place(d));
        let (from, to) = (flat(c), flat(d));
        let way = (to.0 - from.0, to.1 - from.1);
        let length2 = way.0 * way.0 + way.1 * way.1;
        let share = if length2 > 0.0 {
            (-(from.0 * way.0 + from.1 * way.1) / length2).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let nearest = (c.0 + share * (d.0 - c.0), c.1 + share * (d.1 - c.1));
        let step = step_m(at, nearest);
        step.0.hypot(step.1)
    });
    distances.fold(f64::INFINITY, f64::min)
}

/// A search along one edge for what lies within the margin of a border.
struct Search<'a> {
    edge: &'a Edge,
    patches: &'a [Patch],
    margin_m: f64,
    found: Vec<Stretch>,
}

/// How finely a border of the margin is found.
const FINE_M: f64 = 1e-5;
/// Metric of a ring edge seen from afar: its bend in metres over its length is far below this share.
const BEND: f64 = 0.01;

impl Search<'_> {
    fn beyond_m(&self, share: f64) -> f64 {
        to_border_m(self.edge.at(share), self.patches) - self.margin_m
    }

    /// Halves a piece until it is wholly within the margin, wholly without, or finer than can be told. Nobody comes
    /// nearer to a border by more than he walks.
    fn halve(&mut self, from: (f64, f64), to: (f64, f64)) {
        let way_m = (to.0 - from.0) * self.edge.length_m();
        let reach_m = way_m * (1.0 + BEND) + BEND * (from.1 + to.1).abs();
        let nearest_m = (from.1 + to.1 - reach_m) / 2.0;
        let farthest_m = (from.1 + to.1 + reach_m) / 2.0;
        if nearest_m > 0.0 {
            return;
        }
        if farthest_m <= 0.0 || (way_m < FINE_M && from.1.min(to.1) <= 0.0) {
            self.found.push(Stretch {
                from_m: self.edge.chainage_m(from.0),
                to_m: self.edge.chainage_m(to.0),
            });
        } else if way_m >= FINE_M {
            let middle = f64::midpoint(from.0, to.0);
            let middle = (middle, self.beyond_m(middle));
            self.halve(from, middle);
            self.halve(middle, to);
        }
    }
}

/// Where the line passes within the margin of a border.
pub(super) fn beside(line: &Line, patches: &[Patch], margin_m: f64) -> Vec<Stretch> {
    let mut all = Vec::new();
    for edge in &line.edges {
        let mut search = Search {
            edge,
            patches,
            margin_m,
            found: Vec::new(),
        };
        let ends = (search.beyond_m(0.0), search.beyond_m(1.0));
        search.halve((0.0, ends.0), (1.0, ends.1));
        all.extend(search.found);
    }
    joined(all)
}

/// A stretch longer by the margin at both ends, as far as the line goes.
pub(super) fn widened(stretch: Stretch, margin_m: f64, line: &Line) -> Stretch {
    Stretch {
        from_m: (stretch.from_m - margin_m).max(0.0),
        to_m: (stretch.to_m + margin_m).min(line.length_m()),
    }
}

/// Within this much of a border a place is on it, metres.
const ON_BORDER_M: f64 = 1e-4;

/// Whether a crossing ends here at a border beside which no margin is laid.
fn is_seam(line: &Line, at_m: f64, patches: &[Patch], bordered: &[Patch]) -> bool {
    let holds = |edge: &&Edge| edge.from_m <= at_m && at_m <= edge.to_m;
    let mut places = line.edges.iter().filter(holds).map(|e| e.at(e.share(at_m)));
    places.any(|place| {
        let off_m = |of: &[Patch]| to_border_m(place, of);
        off_m(patches) <= ON_BORDER_M && off_m(bordered) > ON_BORDER_M
    })
}

/// Crossings widened along the line, and what passes within the margin beside it: where a zone is touched. Beside a hole
/// that other ice covers, which `bordered` lacks, there is no margin.
pub(super) fn touches(
    line: &Line,
    patches: &[Patch],
    bordered: &[Patch],
    margin_m: f64,
) -> Vec<Stretch> {
    let crossed = crossings(line, patches);
    let along = crossed.iter().map(|&c| {
        let wide = widened(c, margin_m, line);
        let seam = |at_m: f64| is_seam(line, at_m, patches, bordered);
        Stretch {
            from_m: if seam(c.from_m) {
                c.from_m
            } else {
                wide.from_m
            },
            to_m: if seam(c.to_m) { c.to_m } else { wide.to_m },
        }
    });
    let beside = beside(line, bordered, margin_m);
    joined(along.chain(beside).collect())
}
