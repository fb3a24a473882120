//! Falls followed so far: the same fall is followed once.

use std::{collections::HashMap, mem, sync::Arc};

use super::fall::{Fall, GapSide, Outcome};
use crate::fault::refusal::Refusal;

/// What became of every fall that was asked for.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Corner, Snow}, hold_dynamic::Followed, holding::Team};
///
/// let team = Team {
///     masses_kg: vec![80.0; 3], spacing_m: 13.0, gap_m: 4.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let case = Assumed::built_in()?.case(team.snow, false, |_| Corner::Central);
/// let mut followed = Followed::default();
/// let [first, last] = [0, 2].map(|who| followed.run(&team.fall_of(who, &case)));
/// assert_eq!((first?, followed.falls()), (last?, 1), "equal people: the last falls as the first does");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Followed {
    /// For earlier plans: never changed, so that a copy costs nothing.
    before: Arc<Outcomes>,
    now: Outcomes,
}

type Outcomes = HashMap<Box<[u64]>, Outcome>;

/// Falls that are kept from plan to plan: some tens of plans of five people, some tens of megabytes `[ours]`.
const MOST_KEPT: usize = 30_000;

impl Followed {
    /// What becomes of a fall, followed in the usual steps where it was not yet.
    ///
    /// # Errors
    /// As [`Fall::run`].
    pub fn run(&mut self, fall: &Fall) -> Result<Outcome, Refusal> {
        let key = key(fall);
        if let Some(known) = self.now.get(&key).or_else(|| self.before.get(&key)) {
            return Ok(*known);
        }
        let outcome = fall.run()?;
        self.now.insert(key, outcome);
        Ok(outcome)
    }

    /// Takes in what was followed elsewhere.
    pub fn take_in(&mut self, other: Self) {
        self.now.extend(other.now);
    }

    /// What was followed for earlier plans alone, to follow others beside these.
    #[must_use]
    pub fn before(&self) -> Self {
        Self {
            before: Arc::clone(&self.before),
            now: Outcomes::default(),
        }
    }

    /// All of it as what the next plan finds followed; what would be too much to keep is let go but for the latest plan's.
    #[must_use]
    pub fn kept(mut self) -> Self {
        let now = mem::take(&mut self.now);
        let mut before = Arc::unwrap_or_clone(self.before);
        if before.is_empty() || before.len() + now.len() > MOST_KEPT {
            before = now;
        } else {
            before.extend(now);
        }
        Self {
            before: Arc::new(before),
            now: Outcomes::default(),
        }
    }

    /// How many different falls were followed.
    #[must_use]
    pub fn falls(&self) -> usize {
        self.before.len() + self.now.len()
    }
}

/// All figures of a fall, lists with their lengths. Between two sides it is the same fall whichever of them is named first.
fn key(fall: &Fall) -> Box<[u64]> {
    let Fall {
        victim_kg,
        sides,
        modulus_n,
        rope_damping,
        delay_s,
    } = fall;
    let mut key: Vec<u64> = Vec::with_capacity(4 + 16 * sides.len());
    key.extend([victim_kg, modulus_n, rope_damping, delay_s].map(|x| x.to_bits()));
    let mut of_sides: Vec<Vec<u64>> = sides.iter().map(key_of_side).collect();
    of_sides.sort_unstable();
    key.extend(of_sides.into_iter().flatten());
    key.into()
}

fn key_of_side(side: &GapSide) -> Vec<u64> {
    let GapSide {
        holders_kg,
        spacing_m,
        slack_m,
        beyond_m,
        slope_rad,
        lip_mu,
        mu_before,
        mu_after,
        knots_m,
        knot_n,
        bite_m,
    } = side;
    let lone = [
        spacing_m, slack_m, beyond_m, slope_rad, lip_mu, mu_before, mu_after, knot_n, bite_m,
    ];
    let mut key: Vec<u64> = lone.map(|x| x.to_bits()).to_vec();
    for list in [holders_kg, knots_m] {
        key.push(list.len() as u64);
        key.extend(list.iter().map(|x| x.to_bits()));
    }
    key
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        fault::refusal::Refusal,
        physics::{
            assumed::{Assumed, Corner, Snow},
            holding::Team,
        },
    };

    #[test]
    fn a_fall_seen_from_the_other_side_is_the_same_to_the_last_bit() -> Result<(), Refusal> {
        let team = Team {
            masses_kg: vec![70.0, 80.0, 95.0, 60.0],
            spacing_m: 13.0,
            gap_m: 5.0,
            knots: None,
            snow: Snow::Settled,
            on_skis: false,
            down_deg: [6.0; 2],
            rope_ea_n: 21_213.0,
        };
        let case = Assumed::built_in()?.case(team.snow, false, |_| Corner::Adverse);
        let mut fall = team.fall_of(1, &case);
        let one = fall.run()?;
        let known = key(&fall);
        fall.sides.reverse();
        assert_eq!(fall.run()?, one, "the figures are the same");
        assert_eq!(key(&fall), known, "so it is followed once");
        Ok(())
    }
}
