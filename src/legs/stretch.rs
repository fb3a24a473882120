//! Which stretches of a stage are walked on the rope.
//!
//! The rope team is on rope from the first person's margin before the ice until the last person is past
//! the margin behind it: the stretch is as long as the ice plus the team. Stretches with too little
//! between them to unrope become one. A longer stretch can hold more zones, more zones can ask for a
//! longer team, and a longer team makes the stretch longer: all of it only grows, so it ends.

use crate::meet::contact::Contact;
use crate::meet::touching::Touching;
use crate::trip::route::Stretch;

/// A stretch walked on the rope in one set-up.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Roped {
    /// From roping up to unroping, by the first person's chainage.
    pub(crate) stretch: Stretch,
    /// Indices into the contacts of the stage: every zone met on the way, in zone order.
    pub(crate) contacts: Vec<usize>,
    /// The touched part: where the first person is within the margin of a zone that asks for the rope.
    touched: Stretch,
}

/// Which contacts ask for the rope, and how long the team is that meets a set of them.
pub(crate) struct Asking<'a> {
    /// By contact index: whether this zone puts the team on the rope.
    pub(crate) ropes: &'a dyn Fn(usize) -> bool,
    /// Length of the longest rope team set up for these contacts on this stretch, metres. Must not
    /// shrink when contacts are added or the stretch grows.
    pub(crate) team_length_m: &'a dyn Fn(&[usize], Stretch) -> f64,
    /// Shortest stretch worth unroping for, metres.
    pub(crate) least_unroped_m: f64,
}

/// The roped stretches of a stage of this length, in walking order, with at least `least_unroped_m`
/// between them.
#[must_use]
pub(crate) fn roped_stretches(
    length_m: f64,
    contacts: &[Contact],
    asking: &Asking<'_>,
) -> Vec<Roped> {
    let asked = contacts
        .iter()
        .enumerate()
        .filter(|(i, _)| (asking.ropes)(*i));
    let touches: Vec<Stretch> = asked.flat_map(|(_, c)| c.touches.iter().copied()).collect();
    let mut groups: Vec<Roped> = Stretch::merged(touches, 0.0)
        .into_iter()
        .map(|touched| Roped {
            stretch: touched,
            contacts: Vec::new(),
            touched,
        })
        .collect();
    let touching = Touching::of(contacts);
    loop {
        for group in &mut groups {
            group.grow(length_m, &touching, asking);
        }
        let before = groups.len();
        groups = joined(groups, asking.least_unroped_m);
        if groups.len() == before {
            return groups;
        }
    }
}

impl Roped {
    /// Takes in the zones it covers and the length of the team they ask for, until neither changes.
    fn grow(&mut self, length_m: f64, touching: &Touching, asking: &Asking<'_>) {
        loop {
            let held = touching.meeting(&self.stretch);
            let end_m = self.touched.to_m + (asking.team_length_m)(&held, self.stretch);
            let end_m = end_m.min(length_m).max(self.stretch.to_m);
            if held == self.contacts && end_m <= self.stretch.to_m {
                return;
            }
            self.stretch.to_m = end_m;
            self.contacts = held;
        }
    }

    fn join(&mut self, next: &Self) {
        self.touched.to_m = self.touched.to_m.max(next.touched.to_m);
        self.stretch.to_m = self.stretch.to_m.max(next.stretch.to_m);
    }
}

fn joined(groups: Vec<Roped>, least_unroped_m: f64) -> Vec<Roped> {
    let mut joined: Vec<Roped> = Vec::new();
    for next in groups {
        match joined.last_mut() {
            Some(last) if next.stretch.from_m - last.stretch.to_m < least_unroped_m => {
                last.join(&next)
            }
            _ => joined.push(next),
        }
    }
    joined
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meet::contact::Of;

    fn contact(zone: usize, from_m: f64, to_m: f64) -> Contact {
        let touches = vec![Stretch {
            from_m: from_m - 20.0,
            to_m: to_m + 20.0,
        }];
        Contact {
            of: Of::Zone(zone),
            crossings: vec![Stretch { from_m, to_m }],
            touches,
        }
    }

    fn roped(contacts: &[Contact], length_m: &dyn Fn(&[usize]) -> f64) -> Vec<(f64, f64)> {
        let asking = Asking {
            ropes: &|_| true,
            team_length_m: &|held, _| length_m(held),
            least_unroped_m: 150.0,
        };
        let stretches = roped_stretches(5000.0, contacts, &asking);
        stretches
            .iter()
            .map(|r| (r.stretch.from_m, r.stretch.to_m))
            .collect()
    }

    #[test]
    fn three_people_at_twelve_metres_are_roped_until_the_last_is_off() {
        // Trade rules, section 3, worked example: crossing 1000–1400 m, margin 20 m, L = 24 m.
        assert_eq!(
            roped(&[contact(0, 1000.0, 1400.0)], &|_| 24.0),
            [(980.0, 1444.0)]
        );
    }

    #[test]
    fn ninety_six_metres_are_not_worth_unroping_for() {
        // The same, with a second crossing from 1560 m: its stretch begins at 1540 m.
        let both = [contact(0, 1000.0, 1400.0), contact(1, 1560.0, 1600.0)];
        assert_eq!(roped(&both, &|_| 24.0), [(980.0, 1644.0)]);
        let apart = [contact(0, 1000.0, 1400.0), contact(1, 1615.0, 1700.0)];
        assert_eq!(roped(&apart, &|_| 24.0).len(), 2, "151 m are");
        // The rule is "shorter than": 1614 − 20 − 1444 is as long as the least itself.
        let just = [contact(0, 1000.0, 1400.0), contact(1, 1614.0, 1700.0)];
        assert_eq!(roped(&just, &|_| 24.0).len(), 2, "150 m are");
    }

    #[test]
    fn a_zone_drawn_into_the_leg_by_the_team_itself_lengthens_the_team_again() {
        let zones = [
            contact(0, 1000.0, 1400.0),
            contact(1, 1600.0, 1700.0),
            contact(2, 1900.0, 2000.0),
        ];
        let length = |held: &[usize]| if held.len() > 1 { 60.0 } else { 40.0 };
        // 1460 to 1580: 120 m, joined; 1780 to 1880: 100 m because the joined team is longer.
        assert_eq!(roped(&zones, &length), [(980.0, 2080.0)]);
    }
}
