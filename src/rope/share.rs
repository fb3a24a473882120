//! Which of the ropes at hand each team carries.

use crate::{
    practice::{Rule, Rules, SOLD_LENGTHS_M},
    trip::rope::Rope,
};

/// For each team, by index, the rope it carries: the demanding teams choose first, each the shortest
/// rope that holds its demand, or the longest left where none does. `None` where no rope is left.
///
/// If the ropes can be shared out so that all demands are met, this does so: a shorter rope that fits
/// the greatest demand fits every other one too.
#[must_use]
pub fn share(demands_m: &[f64], ropes: &[Rope]) -> Vec<Option<usize>> {
    let mut order: Vec<usize> = (0..demands_m.len()).collect();
    order.sort_by(|&a, &b| demands_m[b].total_cmp(&demands_m[a]));
    let mut left: Vec<usize> = (0..ropes.len()).collect();
    left.sort_by(|&a, &b| ropes[a].length_m.total_cmp(&ropes[b].length_m));
    let mut given = vec![None; demands_m.len()];
    for team in order {
        let fits = |&&r: &&usize| ropes[r].length_m + 1e-9 >= demands_m[team];
        let chosen = left.iter().find(fits).or(left.last()).copied();
        left.retain(|&r| Some(r) != chosen);
        given[team] = chosen;
    }
    given
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

/// Length sold that holds the demand, or the longest sold.
#[must_use]
pub fn to_buy_m(demand_m: f64) -> f64 {
    let longest = SOLD_LENGTHS_M[SOLD_LENGTHS_M.len() - 1];
    super::ledger::sold_length_m(demand_m).unwrap_or(longest)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ropes(lengths_m: &[f64]) -> Vec<Rope> {
        lengths_m
            .iter()
            .map(|&length_m| Rope {
                length_m,
                diameter_mm: None,
                name: None,
            })
            .collect()
    }

    #[test]
    fn the_longest_rope_is_kept_for_who_needs_it() {
        assert_eq!(
            share(&[40.0, 55.0], &ropes(&[60.0, 50.0])),
            [Some(1), Some(0)]
        );
        assert_eq!(
            share(&[40.0, 55.0], &ropes(&[60.0, 30.0])),
            [Some(1), Some(0)],
            "30 m is all that is left"
        );
        assert_eq!(share(&[40.0, 55.0], &ropes(&[60.0])), [None, Some(0)]);
    }
}
