//! The one allocator: which of the ropes at hand, or which length sold, each team carries over the trip.

use crate::{
    practice::{Rule, Rules, SOLD_LENGTHS_M},
    trip::rope::Rope,
};

/// A rope that can be given out.
///
/// ```
/// use schrund::{practice::{Rules, set::Source}, rope::share::supply};
///
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// // Where no rope was named, every length sold is there for each team.
/// let sold = supply(&[], 2, &rules);
/// assert!(sold.iter().all(|rope| rope.index.is_none()));
/// assert_eq!(sold.iter().filter(|rope| rope.length_m == 60.0).count(), 2);
/// assert!(sold.windows(2).all(|pair| pair[0].mass_kg <= pair[1].mass_kg), "longer is heavier");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Index among the ropes at hand; `None` for a length sold, or where no rope is left.
    pub index: Option<usize>,
    /// Metres; 0 where no rope is left.
    pub length_m: f64,
    /// Kilograms.
    pub mass_kg: f64,
    /// Whether it is as thin as cord: given out where no thicker one does.
    pub cord: bool,
}

impl Supply {
    /// Whether giving out the one or the other is the same, as far as that looks: they are as long and as heavy.
    pub(crate) fn alike(&self, other: &Self) -> bool {
        let length = self.length_m.total_cmp(&other.length_m);
        length.then(self.mass_kg.total_cmp(&other.mass_kg)).is_eq()
    }
}

/// How the ropes given out suit the demands.
///
/// ```
/// use schrund::rope::share::{Fit, best};
///
/// let job = schrund::example::job()?; // one rope of 60 m
/// let fit = |demand_m| best(&[demand_m], &job.ropes, &job.rules).fit;
/// // Less than a metre to spare is a near thing (our judgement).
/// assert_eq!([43.5, 59.5, 60.5].map(fit), [Fit::Ample, Fit::Near, Fit::Short]);
/// assert!(Fit::Ample < Fit::Short, "worse is greater");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// Every team has enough to spare.
    Ample,
    /// Every demand is met, some with little to spare.
    Near,
    /// Some demand is not met.
    Short,
}

/// One way to give the ropes out: the rope of each team, by its index.
///
/// ```
/// use schrund::{rope::share::best, trip::rope::Rope};
///
/// let rules = schrund::example::job()?.rules;
/// let rope = |length_m| Rope { length_m, diameter_mm: None, name: None, joined: false };
/// let ropes = [rope(60.0), rope(40.0), rope(80.0)];
/// let shared = best(&[38.0, 55.0], &ropes, &rules);
/// let given = [1, 2].map(|team| shared.of_team(team, &ropes).map(|(number, _)| number));
/// assert_eq!(given, [Some(2), Some(1)], "each the lightest that holds");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Shared {
    /// How it suits.
    pub fit: Fit,
    /// One for each team.
    pub given: Vec<Supply>,
}

impl Shared {
    /// The length sold that a team takes where no rope at hand was named, metres.
    #[must_use]
    pub fn bought_m(&self, team: usize) -> Option<f64> {
        let supply = self.given.get(team.checked_sub(1)?)?;
        (supply.index.is_none() && supply.length_m > 0.0).then_some(supply.length_m)
    }

    /// The rope at hand that a team carries, with its number from 1.
    #[must_use]
    pub fn of_team<'r>(&self, team: usize, ropes: &'r [Rope]) -> Option<(usize, &'r Rope)> {
        let index = self.given.get(team.checked_sub(1)?)?.index?;
        Some((index + 1, ropes.get(index)?))
    }
}

/// What is there to be given to so many teams: the ropes at hand, and nothing for as many teams; or, where none was
/// named, every length sold for each.
#[must_use]
pub fn supply(ropes: &[Rope], teams: usize, rules: &Rules) -> Vec<Supply> {
    if ropes.is_empty() {
        let sold = SOLD_LENGTHS_M.iter().map(|&length_m| Supply {
            index: None,
            length_m,
            mass_kg: mass_kg(length_m, None, rules),
            cord: false,
        });
        return sold.flat_map(|s| std::iter::repeat_n(s, teams)).collect();
    }
    let at_hand = ropes.iter().enumerate().map(|(index, rope)| Supply {
        index: Some(index),
        length_m: rope.length_m,
        mass_kg: mass_kg(rope.length_m, rope.diameter_mm, rules),
        cord: is_cord(rope, rules),
    });
    let nothing = Supply {
        index: None,
        length_m: 0.0,
        mass_kg: 0.0,
        cord: false,
    };
    at_hand.chain(std::iter::repeat_n(nothing, teams)).collect()
}

/// How much a rope must have over before it stops being a near thing, metres: nothing for lengths sold, which nobody
/// has to make do with.
#[must_use]
pub fn near_m(ropes: &[Rope], rules: &Rules) -> f64 {
    if ropes.is_empty() {
        0.0
    } else {
        rules[Rule::NearRopeM]
    }
}

/// The ways to give the ropes out that can be worth it, the best fit first: for each fit within reach the lightest
/// ropes that give it. Never empty.
#[must_use]
pub fn ways(demands_m: &[f64], supply: &[Supply], near_m: f64) -> Vec<Shared> {
    let with_spare = |spare_m: f64, fit: Fit| {
        let given = lightest(demands_m, spare_m, supply);
        let holds = |(s, d): (&Supply, &f64)| holds(s.length_m, d + spare_m);
        let all = given.iter().zip(demands_m).all(holds);
        (all, Shared { fit, given })
    };
    let mut ways = Vec::new();
    let (all, ample) = with_spare(near_m, Fit::Ample);
    if all {
        ways.push(ample);
    }
    let (all, near) = with_spare(0.0, Fit::Near);
    let known = ways.iter().any(|w: &Shared| w.given == near.given);
    if all && !known {
        ways.push(near);
    } else if ways.is_empty() {
        let fit = Fit::Short;
        ways.push(Shared { fit, ..near });
    }
    ways
}

/// The same without those as thin as cord, where the others hold these demands.
pub(crate) fn without_cord(supply: Vec<Supply>, demands_m: &[f64]) -> Vec<Supply> {
    let ropes: Vec<Supply> = supply.iter().copied().filter(|s| !s.cord).collect();
    let given = lightest(demands_m, 0.0, &ropes);
    let all = given.len() == demands_m.len();
    let mut pairs = given.iter().zip(demands_m);
    match all && pairs.all(|(s, demand_m)| holds(s.length_m, *demand_m)) {
        true => ropes,
        false => supply,
    }
}

/// What there is to be given for these demands, cord only where the others do not hold them.
pub(crate) fn supply_for(demands_m: &[f64], ropes: &[Rope], rules: &Rules) -> Vec<Supply> {
    without_cord(supply(ropes, demands_m.len(), rules), demands_m)
}

/// The best of [`ways`].
#[must_use]
pub fn best(demands_m: &[f64], ropes: &[Rope], rules: &Rules) -> Shared {
    let supply = supply_for(demands_m, ropes, rules);
    let nothing = Shared {
        fit: Fit::Short,
        given: Vec::new(),
    };
    let ways = ways(demands_m, &supply, near_m(ropes, rules));
    ways.into_iter().next().unwrap_or(nothing)
}

/// Whether a rope of this length holds a demand.
#[must_use]
pub fn holds(length_m: f64, demand_m: f64) -> bool {
    length_m + 1e-9 >= demand_m
}

/// The demanding teams choose first, each the lightest rope that leaves it so much to spare, cord last, or the longest left where
/// none does. If the ropes can be shared out so that all demands are met, this does so: whatever holds a greater
/// demand holds every smaller one too.
fn lightest(demands_m: &[f64], spare_m: f64, supply: &[Supply]) -> Vec<Supply> {
    let mut order: Vec<usize> = (0..demands_m.len()).collect();
    order.sort_by(|&a, &b| demands_m[b].total_cmp(&demands_m[a]));
    let mut left: Vec<Supply> = supply.to_vec();
    left.sort_by(|a, b| {
        let mass = a.cord.cmp(&b.cord).then(a.mass_kg.total_cmp(&b.mass_kg));
        mass.then(a.length_m.total_cmp(&b.length_m))
    });
    let mut given: Vec<(usize, Supply)> = Vec::new();
    for team in order {
        let fits = |s: &Supply| holds(s.length_m, demands_m[team] + spare_m);
        let chosen = left.iter().position(fits).or_else(|| longest(&left));
        given.extend(chosen.map(|i| (team, left.remove(i))));
    }
    given.sort_by_key(|(team, _)| *team);
    given.into_iter().map(|(_, supply)| supply).collect()
}

/// Place of the longest rope, cord last; the first of equal ones.
fn longest(left: &[Supply]) -> Option<usize> {
    let longer = |best: usize, i: usize| {
        let key = |i: usize| (!left[i].cord, left[i].length_m);
        if key(i) > key(best) { i } else { best }
    };
    (0..left.len()).reduce(longer)
}

/// Mass in kilograms of so much rope of that diameter, or of the assumed one; the heaviest make of it. Beyond the
/// diameters listed the mass goes with the cross-section. Derived.
#[must_use]
pub fn mass_kg(length_m: f64, diameter_mm: Option<f64>, rules: &Rules) -> f64 {
    let diameter_mm = diameter_mm.unwrap_or(rules[Rule::RopeDiameterMm]);
    let gear = &rules.nature.gear;
    let heaviest = |d: f64| gear.rope_g_per_m(d).map(|[_, heavy]| heavy);
    let scaled = || {
        let (first, last) = (gear.mass.first()?, gear.mass.last()?);
        let near = if diameter_mm < first.diameter_mm {
            first
        } else {
            last
        };
        let [_, heavy] = near.g_per_m;
        Some(heavy * (diameter_mm / near.diameter_mm).powi(2))
    };
    heaviest(diameter_mm).or_else(scaled).unwrap_or(0.0) * length_m / 1000.0
}

/// Whether a rope is so thin that it may be cord.
pub(crate) fn is_cord(rope: &Rope, rules: &Rules) -> bool {
    rope.diameter_mm
        .is_some_and(|mm| mm < rules[Rule::ThinRopeMm])
}

/// Length sold that holds the demand, or the longest sold.
#[must_use]
pub fn to_buy_m(demand_m: f64) -> f64 {
    let longest = SOLD_LENGTHS_M[SOLD_LENGTHS_M.len() - 1];
    super::ledger::sold_length_m(demand_m).unwrap_or(longest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::set::Source;

    /// Ropes of these lengths, a kilogram for ten metres.
    fn ropes(lengths_m: &[f64]) -> Vec<Supply> {
        let rope = |(index, &length_m): (usize, &f64)| Supply {
            index: Some(index),
            length_m,
            mass_kg: length_m / 10.0,
            cord: false,
        };
        lengths_m.iter().enumerate().map(rope).collect()
    }

    fn shared(demands_m: &[f64], lengths_m: &[f64], near_m: f64) -> Vec<(Fit, Vec<Option<usize>>)> {
        let ways = ways(demands_m, &ropes(lengths_m), near_m);
        let indices = |w: Shared| (w.fit, w.given.iter().map(|s| s.index).collect());
        ways.into_iter().map(indices).collect()
    }

    #[test]
    fn the_longest_rope_is_kept_for_who_needs_it() {
        let both = vec![Some(1), Some(0)];
        assert_eq!(
            shared(&[40.0, 55.0], &[60.0, 50.0], 0.0),
            [(Fit::Ample, both.clone())]
        );
        assert_eq!(
            shared(&[40.0, 55.0], &[60.0, 30.0], 0.0),
            [(Fit::Short, both)],
            "30 m is all that is left"
        );
    }

    #[test]
    fn nobody_carries_more_than_holds_the_demand() {
        let lightest = [(Fit::Ample, vec![Some(1)])];
        assert_eq!(shared(&[42.0], &[60.0, 50.0, 80.0], 1.0), lightest);
    }

    #[test]
    fn a_little_more_to_spare_comes_before_a_little_less_to_carry() {
        assert_eq!(
            shared(&[49.5], &[60.0, 50.0], 1.0),
            [(Fit::Ample, vec![Some(0)]), (Fit::Near, vec![Some(1)])]
        );
    }

    #[test]
    fn a_rope_too_short_is_short_however_little_is_missing() {
        let only = [(Fit::Short, vec![Some(0)])];
        assert_eq!(shared(&[60.5], &[60.0], 1.0), only);
    }

    #[test]
    fn beyond_the_diameters_listed_the_mass_goes_with_the_cross_section() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let kg = |diameter_mm| mass_kg(100.0, diameter_mm, &rules);
        // Makers' figures: 6 mm up to 29 g/m, 9 mm 49 g/m; 9.5 mm 60 g/m from memory.
        for (diameter_mm, want_kg) in [
            (6.0, 2.9),
            (3.0, 2.9 / 4.0),
            (9.0, 4.9),
            (9.5, 6.0),
            (19.0, 24.0),
        ] {
            let got_kg = kg(Some(diameter_mm));
            assert!((got_kg - want_kg).abs() < 1e-9, "{diameter_mm}: {got_kg}");
        }
        assert!((kg(None) - 4.9).abs() < 1e-9, "9 mm are assumed (ours)");
    }

    #[test]
    fn who_buys_takes_the_next_length_sold_and_nothing_to_spare() {
        let sold_m = [30.0, 43.0, 60.1, 90.0].map(to_buy_m).to_vec();
        assert_eq!(sold_m, [30.0, 50.0, 70.0, 80.0]);
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        assert!(near_m(&[], &rules) < 1e-9, "another length is sold as well");
    }
}
