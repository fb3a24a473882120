//! In which order a team of given people holds best.
//!
//! *Model:* every order (turned round they are the same on the flat) gets the corners of every fall; fewer falls held in none
//! come first, then fewer not held in all, then fewer not held in the centre, then less of the room used.
//! *Valid:* up to five people. *Error:* as `holding`; a gain in room used below 5 % is called none `[ours]`.
//! *Source:* `[ours]`.   *Checked:* tests/physics (equal people gain nothing; no order tried is better).

use super::{Assumed, Team};
use crate::{fault::refusal::Refusal, physics::hold_dynamic::Followed};

/// Largest team whose orders are all tried.
pub const MOST_PEOPLE: usize = 5;
/// Smallest gain in room used that is worth telling, as a share of the room `[ours]`.
const WORTH: f64 = 0.05;

/// How an order fares; smaller is better, compared field by field.
///
/// ```
/// use schrund::physics::holding::order::Score;
///
/// let never = Score { held_in_none: 1, ..Score::default() };
/// let perhaps = Score { not_in_all: 3, not_in_centre: 3, centre_share: 1.0, adverse_share: 1.0, ..Score::default() };
/// assert!(perhaps < never, "three falls that may be held are better than one that never is");
/// assert!(Score::default() < perhaps, "the least is the best");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Score {
    /// Falls held in none of the corners.
    pub held_in_none: u32,
    /// Falls not held in all corners.
    pub not_in_all: u32,
    /// Falls not held with everything central.
    pub not_in_centre: u32,
    /// Most of the room used with everything central, 0 to 1.
    pub centre_share: f64,
    /// Most of the room used with everything adverse, 0 to 1.
    pub adverse_share: f64,
}

/// Advice on the order.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Snow}, hold_dynamic::Followed, holding::{Team, order::Advice}};
///
/// let heavy_in_the_middle = Team {
///     masses_kg: vec![60.0, 110.0, 80.0], spacing_m: 15.0, gap_m: 6.0, knots: None, snow: Snow::Settled,
///     on_skis: false, down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let advice: Advice = heavy_in_the_middle.best_order(&Assumed::built_in()?, &mut Followed::default())?;
/// assert_eq!(advice.order, [0, 2, 1], "80 kg in the middle, 110 kg at the end");
/// assert!(advice.worth_it && advice.best < advice.as_given);
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// Positions in the team as given, from the first to the last person.
    pub order: Vec<usize>,
    /// How the team fares as given.
    pub as_given: Score,
    /// How it fares in this order.
    pub best: Score,
    /// Whether the difference is worth changing places for.
    pub worth_it: bool,
}

impl Team {
    /// The order with the best worst case on this ground; the one given where none is better. What is good on a climb need not
    /// be on a descent: where a line does both, the team has to be given with both.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be, or when there are more than five people.
    pub fn best_order(
        &self,
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<Advice, Refusal> {
        self.check()?;
        assumed.check()?;
        let people = self.masses_kg.len();
        if people > MOST_PEOPLE {
            return Err(Refusal::Orders(people));
        }
        // Turned round it is the same team where the ground falls as much ahead as behind.
        let [least_deg, most_deg] = self.down_deg;
        let turns_alike = (least_deg + most_deg).abs() < 1e-9;
        let given: Vec<usize> = (0..people).collect();
        let as_given = self
            .score_below(assumed, followed, None)?
            .unwrap_or_default();
        let (mut order, mut best) = (given.clone(), as_given);
        let mut tried: Vec<Vec<f64>> = vec![self.masses_kg.clone()];
        for next in orders(people) {
            let masses_kg: Vec<f64> = next
                .iter()
                .filter_map(|&i| self.masses_kg.get(i).copied())
                .collect();
            if seen(&tried, &masses_kg, turns_alike) {
                continue;
            }
            let team = Self {
                masses_kg: masses_kg.clone(),
                ..self.clone()
            };
            tried.push(masses_kg);
            if let Some(score) = team.score_below(assumed, followed, Some(&best))? {
                (order, best) = (next, score);
            }
        }
        Ok(Advice {
            order,
            as_given,
            best,
            worth_it: worth_it(&as_given, &best),
        })
    }

    /// How this order fares.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn score(&self, assumed: &Assumed) -> Result<Score, Refusal> {
        let score = self.score_below(assumed, &mut Followed::default(), None)?;
        Ok(score.unwrap_or_default())
    }

    /// The score if it is below `best`. No field ever falls, so the first fall that spoils it ends the work.
    fn score_below(
        &self,
        assumed: &Assumed,
        followed: &mut Followed,
        best: Option<&Score>,
    ) -> Result<Option<Score>, Refusal> {
        let mut score = Score::default();
        for index in 0..self.masses_kg.len() {
            let runs = self.corners(index, assumed, followed)?;
            let [_, central, adverse] = runs;
            score.held_in_none += u32::from(runs.iter().all(|r| !r.held));
            score.not_in_all += u32::from(runs.iter().any(|r| !r.held));
            score.not_in_centre += u32::from(!central.held);
            score.centre_share = score.centre_share.max(central.slide_share);
            score.adverse_share = score.adverse_share.max(adverse.slide_share);
            if best.is_some_and(|b| score >= *b) {
                return Ok(None);
            }
        }
        Ok(Some(score))
    }
}

fn worth_it(given: &Score, best: &Score) -> bool {
    let counts = |s: &Score| (s.held_in_none, s.not_in_all, s.not_in_centre);
    counts(best) < counts(given)
        || given.centre_share - best.centre_share > WORTH
        || given.adverse_share - best.adverse_share > WORTH
}

/// Whether the same masses were tried in this order or turned round.
fn seen(tried: &[Vec<f64>], masses_kg: &[f64], turns_alike: bool) -> bool {
    let same = |a: f64, b: f64| (a - b).abs() < 1e-9;
    tried.iter().any(|t| {
        t.iter().zip(masses_kg).all(|(a, b)| same(*a, *b))
            || turns_alike
                && t.iter()
                    .zip(masses_kg.iter().rev())
                    .all(|(a, b)| same(*a, *b))
    })
}

/// All orders of `0..people`, in lexical order.
fn orders(people: usize) -> Vec<Vec<usize>> {
    let mut all: Vec<Vec<usize>> = vec![Vec::new()];
    for _ in 0..people {
        all = all
            .into_iter()
            .flat_map(|start| {
                let rest: Vec<usize> = (0..people).filter(|i| !start.contains(i)).collect();
                rest.into_iter().map(move |i| {
                    let mut longer = start.clone();
                    longer.push(i);
                    longer
                })
            })
            .collect();
    }
    all
}
