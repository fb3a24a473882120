//! One fact for two places of which the same is said.

use crate::plan::fact::Fact;

impl Fact {
    /// This fact with a cure for a rope that is too short that holds at the place of another one too, of which the same is said;
    /// `None` where something else is done there. A fact without such a cure stays as it is.
    #[must_use]
    pub fn for_both(&self, other: &Self) -> Option<Self> {
        let (
            Self::NoRope {
                needed_m,
                lack,
                cure,
            },
            Self::NoRope { cure: there, .. },
        ) = (self, other)
        else {
            return Some(self.clone());
        };
        let cure = match (cure, there) {
            (Some(cure), Some(there)) => Some(cure.for_both(there)?),
            (None, None) => None,
            _ => return None,
        };
        Some(Self::NoRope {
            needed_m: *needed_m,
            lack: lack.clone(),
            cure,
        })
    }
}
