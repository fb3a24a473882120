//! The ice that a leg is walked over, as far as its set-up goes by it.

use crate::{
    plan::leg::Bite,
    practice::{Rule, Rules, UndrawnIce},
    trip::zone::{Surface, Zone},
};

/// The zones of a leg, and whether it holds ice of the inventory that nobody drew.
///
/// ```
/// use schrund::{legs::over::Over, plan::leg::Bite};
///
/// let job = schrund::example::job()?;
/// let zones = [&job.zones[0]]; // 1.5 m of snow
/// let (drawn, more) = (Over::drawn(&zones), Over { zones: &zones, undrawn: true });
/// assert_eq!([drawn, more].map(|over| over.bite(&job.rules)), [Bite::Yes, Bite::Unknown]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Over<'a> {
    /// The zones, in file order.
    pub zones: &'a [&'a Zone],
    /// Whether there is ice beside them whose gaps and snow nobody gave.
    pub undrawn: bool,
}

impl<'a> Over<'a> {
    /// Drawn zones and no other ice.
    #[must_use]
    pub fn drawn(zones: &'a [&'a Zone]) -> Self {
        let undrawn = false;
        Self { zones, undrawn }
    }

    /// Whether every gap of the leg is in sight.
    #[must_use]
    pub fn bare_only(self) -> bool {
        let bare = |z: &&Zone| z.surface_counted() == Surface::Bare;
        !self.undrawn && !self.zones.is_empty() && self.zones.iter().all(bare)
    }

    /// Whether knots bite everywhere; the worst counts, and nobody knows the snow where nothing is drawn.
    #[must_use]
    pub fn bite(self, rules: &Rules) -> Bite {
        match bite(self.zones.iter().copied(), rules) {
            Bite::No => Bite::No,
            _ if self.undrawn => Bite::Unknown,
            bite => bite,
        }
    }

    /// Whether knots could work anywhere: they are tied for the ice that needs them, and carried through that where
    /// they do not bite.
    #[must_use]
    pub fn may_bite(self, rules: &Rules) -> bool {
        let zones = self.zones.iter();
        self.undrawn || zones.copied().any(|z| bite([z], rules) != Bite::No)
    }
}

/// Whether ice of the inventory that nobody drew puts the team on the rope.
pub(crate) fn ropes_undrawn(rules: &Rules) -> bool {
    rules.choices.undrawn_ice.value == UndrawnIce::Rope
}

/// Whether knots bite in all of these zones; the worst counts. Unknown where no zone says how deep the
/// snow lies and none is known to be too thin.
#[must_use]
pub fn bite<'a>(zones: impl IntoIterator<Item = &'a Zone>, rules: &Rules) -> Bite {
    let in_zone = |zone: &Zone| match (zone.surface_counted(), zone.snow_depth_m) {
        (Surface::Bare, _) => Bite::No,
        (_, None) => Bite::Unknown,
        (_, Some(depth_m)) if depth_m <= rules[Rule::KnotsNoBiteM] => Bite::No,
        (_, Some(depth_m)) if depth_m <= rules[Rule::KnotsBiteM] => Bite::Doubtful,
        _ => Bite::Yes,
    };
    let rank = |bite: Bite| match bite {
        Bite::Yes => 0,
        Bite::Doubtful => 1,
        Bite::Unknown => 2,
        Bite::No => 3,
    };
    zones
        .into_iter()
        .map(in_zone)
        .max_by_key(|&b| rank(b))
        .unwrap_or(Bite::Unknown)
}
