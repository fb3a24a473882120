//! The rope as carried: nobody drags a tail, so what a set-up leaves over goes to the end coils and the rest to a bag.

use crate::{
    plan::leg::Ledger,
    practice::{Rule, Rules},
    rope::share::{self, Supply},
    trip::rope::Rope,
};

/// A rope that a team carries.
///
/// ```
/// use schrund::rope::carried::{Carried, RopeLoad};
///
/// let job = schrund::example::job()?;
/// let ledger = schrund::plan(&job)?.legs[1].teams[0].ledger;
/// let on = |diameter_mm| Carried::of(&ledger, RopeLoad { length_m: 120.0, diameter_mm }, &job.rules);
/// // A coil ends at 30 m or 2 kg (our judgement), whichever comes first: of a thick rope less is carried.
/// let (thin, thick) = (on(Some(6.0)), on(Some(12.0)));
/// assert!(thin.coil_m == 30.0 && thin.coil_kg < 2.0, "{thin:?}");
/// assert!(thick.coil_m < 30.0 && (thick.coil_kg - 2.0).abs() < 1e-9, "{thick:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RopeLoad {
    /// Metres.
    pub length_m: f64,
    /// Millimetres; without it the rules assume one.
    pub diameter_mm: Option<f64>,
}

impl RopeLoad {
    /// A rope at hand.
    #[must_use]
    pub(crate) fn of(rope: &Rope) -> Self {
        Self {
            length_m: rope.length_m,
            diameter_mm: rope.diameter_mm,
        }
    }

    /// One that is given out, of these at hand.
    pub(crate) fn given(supply: &Supply, ropes: &[Rope]) -> Self {
        Self {
            length_m: supply.length_m,
            diameter_mm: supply.index.and_then(|i| ropes.get(i)?.diameter_mm),
        }
    }
}

/// How a rope is carried on a leg.
///
/// ```
/// use schrund::rope::carried::{Carried, RopeLoad};
///
/// let job = schrund::example::job()?;
/// let ledger = schrund::plan(&job)?.legs[1].teams[0].ledger; // three take 43.5 m, two coils of 6.75 m in it
/// let on = |length_m| {
///     let carried = Carried::of(&ledger, RopeLoad { length_m, diameter_mm: None }, &job.rules);
///     (carried.coil_m, carried.bag_m)
/// };
/// assert_eq!(on(60.0), (15.0, 0.0), "each end takes half of what is left over");
/// assert_eq!(on(100.0), (30.0, 10.0), "a coil of more than 30 m is a burden (our judgement): the rest goes into a bag");
/// assert_eq!(on(40.0), (5.0, 0.0), "3.5 m short: the coils are what is there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carried {
    /// Coil of each end person, metres.
    pub coil_m: f64,
    /// Mass of that coil, kilograms.
    pub coil_kg: f64,
    /// What is carried in a bag, metres.
    pub bag_m: f64,
}

impl Carried {
    /// What is left over in equal parts on both coils (common practice: the ends carry the rest), up to what a person
    /// carries and never less than the coil needed; of a rope that is too short what is there.
    #[must_use]
    pub fn of(ledger: &Ledger, load: RopeLoad, rules: &Rules) -> Self {
        let needed_m = ledger.coils_m / 2.0;
        let kg_per_m = share::mass_kg(1.0, load.diameter_mm, rules);
        let by_mass_m = rules[Rule::CoilMostKg] / kg_per_m;
        let most_m = rules[Rule::CoilMostM].min(by_mass_m).max(needed_m);
        let over_m = load.length_m - ledger.total_m;
        let coil_m = (needed_m + over_m / 2.0).clamp(0.0, most_m);
        Self {
            coil_m,
            coil_kg: coil_m * kg_per_m,
            bag_m: (over_m - 2.0 * (coil_m - needed_m)).max(0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        legs::{knots::Hardship, over::Over},
        practice::{Origin, set::Source},
        rope::ledger,
    };

    /// Three people on a rope so long: coil at each end and bag.
    fn three(spacing_m: f64, length_m: f64, rules: &Rules) -> (f64, f64) {
        let team = crate::trip::party::Party::of(3, rules)
            .split_into(1)
            .remove(0);
        let knots = crate::legs::knots::choose(
            &team,
            spacing_m,
            Over::drawn(&[]),
            Hardship::default(),
            rules,
        );
        let ledger = ledger::ledger(3, spacing_m, &knots, rules);
        let load = RopeLoad {
            length_m,
            diameter_mm: None,
        };
        let carried = Carried::of(&ledger, load, rules);
        (carried.coil_m, carried.bag_m)
    }

    #[test]
    fn what_is_left_over_goes_to_the_ends_and_then_into_a_bag() {
        let mut rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        // Worked by hand: three at 13 m take 29 m without coils, half of the rest goes to each end.
        for (length_m, coil_m) in [(45.0, 8.0), (50.0, 10.5), (60.0, 15.5), (80.0, 25.5)] {
            let (carried_m, bag_m) = three(13.0, length_m, &rules);
            assert!(
                (carried_m - coil_m).abs() < 1e-9 && bag_m < 1e-9,
                "{length_m}: {carried_m}"
            );
        }
        let (short_m, _) = three(13.0, 40.0, &rules);
        assert!((short_m - 5.5).abs() < 1e-9, "two metres short: {short_m}");
        // Three at 7 m on 80 m: (80 − 17) / 2 = 31.5, so 30 m at each end and 3 m in the bag.
        let (coil_m, bag_m) = three(7.0, 80.0, &rules);
        assert!(
            (coil_m - 30.0).abs() < 1e-9 && (bag_m - 3.0).abs() < 1e-9,
            "{coil_m}, {bag_m}"
        );
        rules.set(Rule::CoilMostKg, 0.98, Origin::Trip).unwrap();
        let (by_mass_m, _) = three(7.0, 80.0, &rules);
        assert!(
            (by_mass_m - 20.0).abs() < 1e-9,
            "0.98 kg of 49 g/m: {by_mass_m}"
        );
    }
}
