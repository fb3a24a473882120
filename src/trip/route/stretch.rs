//! Parts of a stage, by chainage.

/// A part of a stage, by chainage.
///
/// ```
/// use schrund::trip::route::Stretch;
///
/// let roped = [(1000.0, 1400.0), (0.0, 300.0), (1500.0, 1600.0)].map(|(from_m, to_m)| Stretch { from_m, to_m });
/// let merged = Stretch::merged(roped.to_vec(), 150.0);
/// assert_eq!(merged, [Stretch { from_m: 0.0, to_m: 300.0 }, Stretch { from_m: 1000.0, to_m: 1600.0 }]);
/// assert_eq!(merged[1].length_m(), 600.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Where it begins, metres of chainage.
    pub from_m: f64,
    /// Where it ends, metres of chainage; never before `from_m`.
    pub to_m: f64,
}

impl Stretch {
    /// Metres from its begin to its end.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }

    /// Whether the two share a point.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.from_m <= other.to_m && other.from_m <= self.to_m
    }

    /// Whether the two share more than a point.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.from_m < other.to_m && other.from_m < self.to_m
    }

    /// The parts of others that lie on this stretch, in their order.
    #[must_use]
    pub fn clip(&self, others: &[Self]) -> Vec<Self> {
        let part = |other: &Self| Self {
            from_m: other.from_m.max(self.from_m),
            to_m: other.to_m.min(self.to_m),
        };
        let mut parts: Vec<Self> = others.iter().map(part).collect();
        parts.retain(|part| part.from_m < part.to_m);
        parts
    }

    /// Stretches in order, those that meet within `gap_m` made one.
    #[must_use]
    pub fn merged(mut stretches: Vec<Self>, gap_m: f64) -> Vec<Self> {
        stretches.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
        let mut merged: Vec<Self> = Vec::new();
        for next in stretches {
            match merged.last_mut() {
                Some(last) if next.from_m - last.to_m <= gap_m => {
                    last.to_m = last.to_m.max(next.to_m)
                }
                _ => merged.push(next),
            }
        }
        merged
    }
}
