//! The worst that a leg holds: the longest way over a gap, for a given spacing.
//!
//! A gap of width w met at the angle θ is w / sin θ long along the route. Below the angle at which the
//! team runs along the crevasses no spacing helps, and the leg is marked; the arithmetic stops at so many
//! widths, and where it stops the leg is marked too. Two figures, so that marking earlier never makes a
//! gap count less.

use crate::meet::{
    angle::{Angle, KnownAngles},
    contact::Contact,
};
use crate::{
    ground::met::MetStage,
    practice::{Rule, Rules},
    trip::{
        route::{Stage, Stretch},
        zone::{ProposedStrike, Zone},
    },
};

/// What a rope of one spacing meets on a leg.
///
/// ```
/// use schrund::{legs::{spacing::{base_m, choose, over_one_gap}, worst::Meeting}, practice::{Rules, set::Source}};
///
/// // A gap 12 m wide that is met at 30° is twice as long along the line.
/// let factor = 1.0 / 30_f64.to_radians().sin();
/// let askew = |_| Meeting { effective_gap_m: 12.0 * factor, factor, ..Meeting::default() };
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// let chosen = choose(4, base_m(4, false, &rules), &rules, &askew);
/// assert_eq!(chosen.spacing_m, 19.5, "0.8 of 24 m (common practice), rounded up");
/// assert_eq!(over_one_gap(4, chosen.spacing_m, chosen.meeting.effective_gap_m), 2);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Meeting {
    /// Longest way over a gap along the route, metres; 0 where no zone gives a gap.
    pub effective_gap_m: f64,
    /// How many times longer than the gap is wide that way is, in the zone that decides.
    pub factor: f64,
    /// The greatest such factor of all zones: what counts if every gap were as wide.
    pub greatest_factor: f64,
    /// Index of the zone that decides.
    pub zone: Option<usize>,
    /// Where the team runs along crevasses, if anywhere: zone index and chainage.
    pub along: Option<(usize, f64)>,
}

/// A leg's zones, ready to be met with any spacing.
#[derive(Clone, Debug)]
pub(crate) struct Worst<'a> {
    stage: &'a Stage,
    angles: &'a KnownAngles,
    held: Vec<ZoneHeld<'a>>,
    along_deg: f64,
    most_widths: f64,
}

/// One zone on the leg.
#[derive(Clone, Debug)]
struct ZoneHeld<'a> {
    /// Its index.
    index: usize,
    zone: &'a Zone,
    /// Where the leg touches it.
    touches: Vec<Stretch>,
    /// Strikes that count where the zone gives none.
    proposed: Vec<ProposedStrike>,
}

impl<'a> Worst<'a> {
    /// The contacts `held` of a stage, as far as they lie on `stretch`. Strikes that are proposed count where a zone gives
    /// none, if the leader wants them to; such a strike can only lengthen the way over a gap.
    #[must_use]
    pub(crate) fn new(
        stage: &'a Stage,
        met: &'a MetStage,
        zones: &'a [Zone],
        held: &[usize],
        stretch: Stretch,
        rules: &Rules,
    ) -> Self {
        let (contacts, proposed) = (&met.contacts, met.under.counted(rules));
        let on_leg = |c: &Contact| {
            c.touches
                .iter()
                .copied()
                .filter(|t| t.meets(&stretch))
                .collect()
        };
        let held = held
            .iter()
            .filter_map(|&i| Some((contacts.get(i)?, proposed.get(i))))
            .filter_map(|(c, proposed)| {
                let index = c.of.zone()?;
                let proposed = proposed.into_iter().flatten().copied();
                Some(ZoneHeld {
                    index,
                    zone: zones.get(index)?,
                    touches: on_leg(c),
                    proposed: proposed.filter(|p| p.stretch.meets(&stretch)).collect(),
                })
            })
            .collect();
        Self {
            stage,
            angles: &met.under.line.angles,
            held,
            along_deg: rules[Rule::AlongDeg],
            most_widths: rules[Rule::GapMostWidths],
        }
    }

    /// Everything that the answers of [`Worst::at`] rest on besides the spacing, within one job: two legs with the
    /// same key meet the same.
    #[must_use]
    pub(crate) fn key(&self) -> Vec<u64> {
        let figures = [self.along_deg, self.most_widths].map(f64::to_bits);
        let mut key = vec![self.stage.number as u64];
        key.extend(figures);
        for held in &self.held {
            key.extend([held.index as u64, held.touches.len() as u64]);
            let ends = held.touches.iter().flat_map(|t| [t.from_m, t.to_m]);
            key.extend(ends.map(f64::to_bits));
            for p in &held.proposed {
                let strike = [p.strike.deg, p.strike.doubt_deg()];
                let figures = [p.stretch.from_m, p.stretch.to_m].into_iter().chain(strike);
                key.extend(figures.map(f64::to_bits));
            }
        }
        key
    }

    /// What a rope with this spacing meets.
    #[must_use]
    pub(crate) fn at(&self, spacing_m: f64) -> Meeting {
        let mut worst = Meeting {
            factor: 1.0,
            greatest_factor: 1.0,
            ..Meeting::default()
        };
        for held in &self.held {
            let (factor, along) = self.factor(held, spacing_m);
            let effective_gap_m = factor * held.zone.gap.max_m;
            worst.greatest_factor = worst.greatest_factor.max(factor);
            if worst.zone.is_none() || effective_gap_m > worst.effective_gap_m {
                worst.effective_gap_m = effective_gap_m;
                worst.factor = factor;
                worst.zone = Some(held.index);
            }
            worst.along = worst.along.or(along.map(|at_m| (held.index, at_m)));
        }
        worst
    }

    /// Length of the way over a gap in widths, and where it runs along, if it does.
    fn factor(&self, held: &ZoneHeld<'_>, spacing_m: f64) -> (f64, Option<f64>) {
        let Some(worst) = self.angle(held, spacing_m) else {
            return (1.0, None);
        };
        let (widths, along) = widths(worst.deg, self.along_deg, self.most_widths);
        (widths, along.then_some(worst.at_m))
    }

    /// The worst angle to the strike given, or to those proposed.
    fn angle(&self, held: &ZoneHeld<'_>, spacing_m: f64) -> Option<Angle> {
        let met =
            |touches: &[Stretch], strike| self.angles.worst(self.stage, touches, spacing_m, strike);
        if let Some(strike) = held.zone.strike {
            return met(&held.touches, strike);
        }
        let proposed = held.proposed.iter();
        proposed
            .filter_map(|p| met(&[p.stretch], p.strike))
            .min_by(|a, b| a.deg.total_cmp(&b.deg))
    }
}

/// How many widths long the way over a gap is that is met at this angle, and whether the team runs along it: below
/// `along_deg`, and wherever the arithmetic stops, at `most_widths`.
pub(crate) fn widths(deg: f64, along_deg: f64, most_widths: f64) -> (f64, bool) {
    let widths = 1.0 / deg.to_radians().sin();
    // Compared with a hair to spare: at the angle itself the way is as long as the limit.
    let stops = widths > most_widths + 1e-9;
    (widths.min(most_widths), stops || deg < along_deg - 1e-9)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{Meeting, Worst, ZoneHeld, widths};
    use crate::{example, meet::angle::KnownAngles, trip::route::Stage};

    proptest! {
        #[test]
        fn a_gap_met_askew_never_counts_less_because_it_is_marked_earlier(
            deg in 0.0..=90.0_f64, lower in 1.0..=90.0_f64, higher in 1.0..=90.0_f64,
        ) {
            let (lower, higher) = (lower.min(higher), lower.max(higher));
            let (early, late) = (widths(deg, higher, 2.0), widths(deg, lower, 2.0));
            prop_assert!(early.0 >= late.0, "{deg}°: {early:?} at {higher}°, {late:?} at {lower}°");
            prop_assert!(early.1 || !late.1, "{deg}° is marked at {lower}° and not at {higher}°");
        }

        #[test]
        fn what_is_not_marked_counts_in_full_and_nothing_counts_less_than_its_width(
            deg in 0.0..=90.0_f64, along in 1.0..=90.0_f64, most in 1.0..=10.0_f64,
        ) {
            let (counted, marked) = widths(deg, along, most);
            let whole = 1.0 / deg.to_radians().sin();
            prop_assert!(marked || (counted - whole).abs() < 1e-8, "{deg}°: {counted} of {whole}");
            prop_assert!(counted >= 1.0, "{deg}°: {counted}");
        }
    }

    #[test]
    fn the_arithmetic_stops_at_two_widths_and_says_so() {
        // Trade rules, section 4: below 30° the way stops at 2 w, and the leg is marked.
        for (deg, want, marked) in [
            (90.0, 1.0, false),
            (45.0, 2.0_f64.sqrt(), false),
            (30.0, 2.0, false),
            (29.0, 2.0, true),
            (0.0, 2.0, true),
        ] {
            let (widths, along) = widths(deg, 30.0, 2.0);
            assert!(
                (widths - want).abs() < 1e-9 && along == marked,
                "{deg}°: {widths} {along}"
            );
        }
    }

    /// What is met of zones with gaps so wide and no strike, 12 m apart.
    fn meeting(gaps_m: &[f64]) -> Meeting {
        let drawn = example::job().unwrap().zones.remove(0);
        let zone = |gap_m: &f64| {
            let mut zone = drawn.clone();
            zone.gap.max_m = *gap_m;
            zone
        };
        let zones: Vec<_> = gaps_m.iter().map(zone).collect();
        let held = |(index, zone)| ZoneHeld {
            index,
            zone,
            touches: Vec::new(),
            proposed: Vec::new(),
        };
        let worst = Worst {
            stage: &Stage::new(None),
            angles: &KnownAngles::default(),
            held: zones.iter().enumerate().map(held).collect(),
            along_deg: 30.0,
            most_widths: 2.0,
        };
        worst.at(12.0)
    }

    #[test]
    fn the_first_of_the_widest_zones_decides_and_where_there_is_none_a_gap_is_as_long_as_wide() {
        let square = |effective_gap_m, zone| Meeting {
            effective_gap_m,
            factor: 1.0,
            greatest_factor: 1.0,
            zone,
            along: None,
        };
        assert_eq!(meeting(&[]), square(0.0, None));
        assert_eq!(meeting(&[3.0, 5.0, 5.0, 4.0]), square(5.0, Some(1)));
    }
}
