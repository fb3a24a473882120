//! One fact for two places of which the same is said.

use crate::plan::{fact::Fact, name::PersonName};

impl Fact {
    /// This fact with figures that hold at the place of another one too, of which the same is said; `None` where something
    /// else is to be done there.
    #[must_use]
    pub fn for_both(&self, other: &Self) -> Option<Self> {
        match (self, other) {
            (
                Self::NoRope {
                    needed_m,
                    lack,
                    cure: Some(cure),
                },
                Self::NoRope {
                    cure: Some(there), ..
                },
            ) => Some(Self::NoRope {
                needed_m: *needed_m,
                lack: lack.clone(),
                cure: Some(cure.for_both(there)?),
            }),
            (Self::NoRope { cure, .. }, Self::NoRope { cure: there, .. }) => {
                (cure == there).then(|| self.clone())
            }
            (
                Self::TwoOverGap { one_by_one, .. },
                Self::TwoOverGap {
                    one_by_one: there, ..
                },
            ) => (one_by_one == there).then(|| self.clone()),
            // Each stage has a latest start of its own.
            (
                Self::BridgesLate {
                    start_by,
                    under_way,
                    ..
                },
                Self::BridgesLate {
                    start_by: there,
                    under_way: there_too,
                    ..
                },
            ) => ((start_by, under_way) == (there, there_too)).then(|| self.clone()),
            (
                Self::NotReached { longer, spare, .. },
                Self::NotReached {
                    longer: longer_there,
                    spare: spare_there,
                    ..
                },
            ) => ((longer, spare) == (longer_there, spare_there)).then(|| self.clone()),
            _ => (self.order() == other.order()).then(|| self.clone()),
        }
    }

    /// The order in which a fall is held better.
    fn order(&self) -> &[PersonName] {
        match self {
            Self::HeldInNone { order, .. }
            | Self::HeldInNoneOnce { order, .. }
            | Self::HeldOffCentre { order, .. } => order,
            _ => &[],
        }
    }
}
