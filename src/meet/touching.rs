//! Which contacts of a stage touch a stretch of it, found without asking each of them.

use crate::{meet::Contact, trip::route::Stretch};

/// The contacts of a stage by where they touch it. A touch along all of the stage lets every stretch be compared with all touches
/// that begin before it ends; else only with those near it.
#[derive(Debug)]
pub(crate) struct Touching {
    /// Each touch with the index of its contact, by where it begins.
    touches: Vec<(Stretch, usize)>,
    /// How far along the stage one of the touches up to each reaches, metres of chainage.
    reach_m: Vec<f64>,
}

impl Touching {
    pub(crate) fn of(contacts: &[Contact]) -> Self {
        let all = contacts.iter().enumerate();
        let all = all.flat_map(|(i, c)| c.touches.iter().map(move |touch| (*touch, i)));
        let mut touches: Vec<(Stretch, usize)> = all.collect();
        touches.sort_by(|(a, _), (b, _)| a.from_m.total_cmp(&b.from_m));
        let mut most_m = f64::NEG_INFINITY;
        let reach_m = touches.iter().map(|(touch, _)| {
            most_m = most_m.max(touch.to_m);
            most_m
        });
        Self {
            reach_m: reach_m.collect(),
            touches,
        }
    }

    /// Indices of the contacts with a touch that shares a point with a stretch, in their order.
    pub(crate) fn meeting(&self, stretch: &Stretch) -> Vec<usize> {
        self.with(stretch, Stretch::meets)
    }

    /// Indices of the contacts with a touch that shares more than a point with a stretch, in their order.
    pub(crate) fn overlapping(&self, stretch: &Stretch) -> Vec<usize> {
        self.with(stretch, Stretch::overlaps)
    }

    fn with(&self, stretch: &Stretch, shares: fn(&Stretch, &Stretch) -> bool) -> Vec<usize> {
        let first = self.reach_m.partition_point(|m| *m < stretch.from_m);
        let near = self.touches.iter().skip(first);
        let near = near.take_while(|(touch, _)| touch.from_m <= stretch.to_m);
        let sharing = near.filter(|(touch, _)| shares(touch, stretch));
        let mut indices: Vec<usize> = sharing.map(|(_, i)| *i).collect();
        indices.sort_unstable();
        indices.dedup();
        indices
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::meet::contact::Of;

    fn stretch((from_m, length_m): (u8, u8)) -> Stretch {
        let from_m = f64::from(from_m);
        Stretch {
            from_m,
            to_m: from_m + f64::from(length_m),
        }
    }

    proptest! {
        #[test]
        fn what_is_found_is_what_each_contact_asked_by_itself_says(
            touches in prop::collection::vec(prop::collection::vec((0..60_u8, 0..30_u8), 0..4), 0..8),
            part in (0..80_u8, 0..20_u8),
        ) {
            let contact = |touches: &Vec<(u8, u8)>| Contact {
                of: Of::KnownIce,
                crossings: Vec::new(),
                touches: touches.iter().copied().map(stretch).collect(),
            };
            let contacts: Vec<Contact> = touches.iter().map(contact).collect();
            let (touching, part) = (Touching::of(&contacts), stretch(part));
            let each = |shares: fn(&Stretch, &Stretch) -> bool| -> Vec<usize> {
                let all = contacts.iter().enumerate();
                let met = all.filter(|(_, c)| c.touches.iter().any(|t| shares(t, &part)));
                met.map(|(i, _)| i).collect()
            };
            prop_assert_eq!(touching.meeting(&part), each(Stretch::meets));
            prop_assert_eq!(touching.overlapping(&part), each(Stretch::overlaps));
        }
    }
}
