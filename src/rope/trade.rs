//! Ropes that do not hold every demand: who gets which, so that the legs where falls are gravest are held first.
//!
//! One rope serves a team for the whole trip. Where the ropes at hand cannot hold all demands, some legs stay outside. Of
//! all ways to give the ropes out that one is taken which leaves the fewest legs with grave falls outside, then the fewest
//! legs, then the least rope missing; of equals the one that the demands alone would give. Where they hold all demands,
//! teams exchange them so that as few as can be have little to spare or somebody beyond every loop. Where the strand for a
//! rescue that brake knots oblige to does not fit on the ropes so given, and fits on others at hand, those are taken.

use std::cmp::Ordering;

use crate::{
    physics::holding::Holding,
    plan::leg::Verdict,
    rope::{
        answers::Answers,
        arrest,
        carried::RopeLoad,
        legs::RopedLeg,
        share::{self, Fit, Shared, Supply},
        tied::Tied,
    },
    trip::job::Brief,
};

/// Ways to give ropes out that are tried; where there are more, the demanding teams choose first. Our judgement.
const MOST_TRIED: usize = 20_000;

/// What a team asks for on a leg.
#[derive(Clone, Copy)]
struct Asked {
    team: usize,
    needed_m: f64,
    /// How its falls stand there: 2 held in none of the cases, 1 not in the centre, 0 better.
    gravity: usize,
}

/// The legs as far as ropes are shared out over them.
pub(crate) struct Trade {
    legs: Vec<Vec<Asked>>,
}

/// What a way to give the ropes out leaves undone; less is better, compared field by field.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Undone {
    /// Legs outside with a fall held in none of the cases, then with one that is not held in the centre.
    pub(crate) grave: [usize; 2],
    /// Legs outside.
    pub(crate) legs: usize,
    short_m: f64,
}

impl PartialOrd for Undone {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        let counts = |undone: &Self| (undone.grave, undone.legs);
        let short = || self.short_m.total_cmp(&other.short_m);
        Some(counts(self).cmp(&counts(other)).then_with(short))
    }
}

impl Trade {
    pub(crate) fn of(legs: &[RopedLeg<'_>], answers: &Answers) -> Self {
        let leg = |(i, leg): (usize, &RopedLeg<'_>)| {
            let teams = leg.teams.iter().enumerate();
            let asked = teams.map(|(place, draft)| Asked {
                team: draft.team,
                needed_m: draft.ledger.total_m,
                gravity: match answers.fall(i, place) {
                    Some(Ok(fall)) => gravity(&fall.holding),
                    _ => 0,
                },
            });
            asked.collect()
        };
        Self {
            legs: legs.iter().enumerate().map(leg).collect(),
        }
    }

    /// What is left undone where each team, by its number, carries one of these.
    pub(crate) fn undone(&self, given: &[Supply]) -> Undone {
        let mut undone = Undone::default();
        let length_m = |team: usize| {
            let supply = team.checked_sub(1).and_then(|i| given.get(i));
            supply.map_or(0.0, |s| s.length_m)
        };
        for leg in &self.legs {
            let short = leg.iter();
            let short = short.filter(|a| !share::holds(length_m(a.team), a.needed_m));
            let gravest = short.clone().map(|a| a.gravity).max();
            let Some(gravest) = gravest else { continue };
            undone.legs += 1;
            match gravest {
                0 => {}
                1 => undone.grave[1] += 1,
                _ => undone.grave[0] += 1,
            }
            undone.short_m += short.map(|a| a.needed_m - length_m(a.team)).sum::<f64>();
        }
        undone
    }
}

fn gravity(holding: &Holding) -> usize {
    match arrest::severity(holding) {
        (2.., ..) => 2,
        (_, true, _) => 1,
        _ => 0,
    }
}

/// The best way to give the ropes out: those of the demands alone where they hold all of them, whoever carries which; heavier
/// ones only where a rescue strand that knots oblige to asks for them.
pub(crate) fn best(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    trade: &Trade,
    demands_m: &[f64],
) -> Shared {
    let by_demand = share::best(demands_m, job.ropes, job.rules);
    let teams = u32::try_from(demands_m.len()).unwrap_or(u32::MAX);
    let ways = (job.ropes.len() + 1).checked_pow(teams);
    let few = ways.is_some_and(|ways| ways <= MOST_TRIED);
    if job.ropes.is_empty() || !few {
        return by_demand;
    }
    let supply = || share::supply_for(demands_m, job.ropes, job.rules);
    let short = by_demand.fit == Fit::Short;
    let looks = |given: &[Supply]| looks(job, legs, demands_m, given);
    let picked = if short {
        least(&|given| trade.undone(given), supply(), by_demand)
    } else {
        least(&looks, by_demand.given.clone(), by_demand)
    };
    let strands = |given: &[Supply]| strands_short(job, legs, given);
    if strands(&picked.given) == 0 {
        return picked;
    }
    let mass_kg = |given: &[Supply]| given.iter().map(|s| s.mass_kg).sum::<f64>();
    let cost = |given: &[Supply]| (trade.undone(given), strands(given), mass_kg(given));
    least(&cost, supply(), picked)
}

/// Teams on a leg whose rope cannot give the strand for a rescue that their knots oblige to.
fn strands_short(job: &Brief<'_>, legs: &[RopedLeg<'_>], given: &[Supply]) -> usize {
    let drafts = legs.iter().flat_map(|leg| &leg.teams);
    let short = drafts.filter(|draft| {
        let supply = draft.team.checked_sub(1).and_then(|i| given.get(i));
        supply.is_some_and(|supply| {
            Tied::of(draft).by_reach(RopeLoad::given(supply, job.ropes), job.rules)
                == Verdict::Outside
        })
    });
    short.count()
}

/// Demands that are not held, then teams that have little to spare or leave somebody beyond every loop.
fn looks(
    job: &Brief<'_>,
    legs: &[RopedLeg<'_>],
    demands_m: &[f64],
    given: &[Supply],
) -> [usize; 2] {
    let near_m = share::near_m(job.ropes, job.rules);
    let pairs = || demands_m.iter().zip(given);
    let short = pairs().filter(|(demand_m, s)| !share::holds(s.length_m, **demand_m));
    let look = |(team, (demand_m, supply)): &(usize, (&f64, &Supply))| {
        let load = RopeLoad::given(supply, job.ropes);
        let mut drafts = legs.iter().flat_map(|leg| &leg.teams);
        !share::holds(supply.length_m, *demand_m + near_m)
            || drafts.any(|draft| {
                draft.team == *team && Tied::of(draft).by_reach(load, job.rules) > Verdict::Inside
            })
    };
    [short.count(), (1..).zip(pairs()).filter(look).count()]
}

/// Of all ways to give this out the one that costs least; `first` where none is better.
fn least<C: PartialOrd>(
    cost: &dyn Fn(&[Supply]) -> C,
    supply: Vec<Supply>,
    first: Shared,
) -> Shared {
    let mut search = Search {
        cost,
        left: supply,
        given: Vec::new(),
        least: cost(&first.given),
        teams: first.given.len(),
        best: first,
    };
    search.go();
    search.best
}

/// Every way to give the ropes out, tried.
struct Search<'a, C> {
    cost: &'a dyn Fn(&[Supply]) -> C,
    left: Vec<Supply>,
    given: Vec<Supply>,
    least: C,
    best: Shared,
    teams: usize,
}

impl<C: PartialOrd> Search<'_, C> {
    fn go(&mut self) {
        if self.given.len() == self.teams {
            let cost = (self.cost)(&self.given);
            if cost < self.least {
                self.least = cost;
                self.best.given.clone_from(&self.given);
            }
            return;
        }
        for i in 0..self.left.len() {
            let alike = |s: &Supply| s.alike(&self.left[i]);
            if self.left.iter().take(i).any(alike) {
                continue;
            }
            let supply = self.left.remove(i);
            self.given.push(supply);
            self.go();
            self.given.pop();
            self.left.insert(i, supply);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        example,
        physics::holding::{Faller, HoldingAnswer},
        trip::rope::Rope,
    };

    fn rope(index: usize, length_m: f64) -> Supply {
        Supply {
            index: Some(index),
            length_m,
            mass_kg: length_m / 10.0,
            cord: false,
        }
    }

    /// Two teams on legs with what each asks for and how their falls stand; ropes of 70 and 50 m, the longer with team 1.
    fn given(legs: &[[(f64, usize); 2]]) -> Vec<f64> {
        let leg = |teams: &[(f64, usize); 2]| {
            let numbered = teams.iter().zip(1..);
            let asked = numbered.map(|(&(needed_m, gravity), team)| Asked {
                team,
                needed_m,
                gravity,
            });
            asked.collect()
        };
        let trade = Trade {
            legs: legs.iter().map(leg).collect(),
        };
        let ropes = vec![rope(0, 70.0), rope(1, 50.0)];
        let first = Shared {
            fit: Fit::Short,
            given: ropes.clone(),
        };
        let shared = least(&|given| trade.undone(given), ropes, first);
        shared.given.iter().map(|s| s.length_m).collect()
    }

    #[test]
    fn the_fewest_legs_are_left_outside() {
        let (wide, small) = ([(72.0, 0), (69.0, 0)], [(48.0, 0), (51.0, 0)]);
        assert_eq!(given(&[wide, small, small]), [50.0, 70.0]);
        assert_eq!(
            given(&[wide]),
            [70.0, 50.0],
            "as the demands alone give them"
        );
    }

    #[test]
    fn a_leg_with_a_graver_fall_comes_before_two_without() {
        let (grave, small) = ([(65.0, 2), (45.0, 0)], [(48.0, 0), (51.0, 0)]);
        assert_eq!(given(&[grave, small, small]), [70.0, 50.0]);
        let milder = [(65.0, 0), (45.0, 0)];
        assert_eq!(given(&[milder, small, small]), [50.0, 70.0]);
        let off_centre = [(48.0, 0), (51.0, 1)];
        assert_eq!(
            given(&[grave, off_centre, small]),
            [70.0, 50.0],
            "held in no case is graver"
        );
    }

    #[test]
    fn what_is_left_undone_is_counted_leg_by_leg_with_the_metres_missing() {
        let asked = |(needed_m, gravity)| {
            let team = 1;
            vec![Asked {
                team,
                needed_m,
                gravity,
            }]
        };
        let legs = [(60.0, 0), (72.0, 1), (75.0, 1), (80.0, 2), (71.0, 0)];
        let trade = Trade {
            legs: legs.map(asked).to_vec(),
        };
        // On 70 m the first fits; of the others 2, 5, 10 and 1 m are missing.
        let want = Undone {
            grave: [1, 2],
            legs: 4,
            short_m: 18.0,
        };
        assert_eq!(trade.undone(&[rope(0, 70.0)]), want);
    }

    #[test]
    fn a_fall_held_in_no_case_is_gravest_and_one_not_held_in_the_centre_comes_next() {
        use HoldingAnswer::{DependsOn, HeldInAll, HeldInNone};
        let gravity = |verdict: HoldingAnswer, held_in_centre| {
            let faller = Faller {
                index: 0,
                verdict: verdict.clone(),
                alone: true,
                held_in_centre,
                slide_m: (1.0, 4.0),
                slide_share: (0.1, 0.9),
                peak_holder_force_n: (800.0, 2400.0),
            };
            gravity(&Holding {
                verdict,
                alone: true,
                worst: 0,
                slide_m: faller.slide_m,
                peak_holder_force_n: faller.peak_holder_force_n,
                fallers: vec![faller],
            })
        };
        let depends = |centre| gravity(DependsOn(Vec::new()), centre);
        assert_eq!(gravity(HeldInNone, false), 2);
        assert_eq!([depends(false), depends(true)], [1, 0]);
        assert_eq!(gravity(HeldInAll, true), 0);
    }

    /// The lengths that teams get of these at hand, where legs ask them for so much and no fall is grave; in metres.
    fn shared_m(ropes_m: &[f64], legs: &[&[f64]]) -> Vec<f64> {
        let rope = |&length_m: &f64| Rope {
            length_m,
            diameter_mm: None,
            name: None,
            joined: false,
        };
        let ropes: Vec<Rope> = ropes_m.iter().map(rope).collect();
        let asked = |(&needed_m, team): (&f64, usize)| Asked {
            team,
            needed_m,
            gravity: 0,
        };
        let asked = |leg: &&[f64]| leg.iter().zip(1..).map(asked).collect();
        let trade = Trade {
            legs: legs.iter().map(asked).collect(),
        };
        let most_m = |team: usize| legs.iter().map(|leg| leg[team]).fold(0.0, f64::max);
        let demands_m: Vec<f64> = (0..legs[0].len()).map(most_m).collect();
        let job = example::job().unwrap();
        let job = Brief {
            ropes: &ropes,
            ..job.case()
        };
        let shared = best(&job, &[], &trade, &demands_m);
        shared.given.iter().map(|s| s.length_m).collect()
    }

    /// Ropes as long as each other and not as heavy: of two that hold what is asked the lighter is given out.
    #[test]
    fn of_ropes_as_long_as_each_other_each_is_tried() {
        let ropes = [(70.0, 7.7), (70.0, 3.7)].into_iter().enumerate();
        let ropes = ropes.map(|(i, (length_m, mass_kg))| Supply {
            mass_kg,
            ..rope(i, length_m)
        });
        let first = Shared {
            fit: Fit::Ample,
            given: vec![rope(2, 80.0)],
        };
        let mass_kg = |given: &[Supply]| given.iter().map(|s| s.mass_kg).sum::<f64>();
        let shared = least(&mass_kg, ropes.collect(), first);
        assert_eq!(shared.given[0].index, Some(1));
    }

    /// By their demands the fours, who ask for most on the wide leg, would get the long ropes: all three legs were outside.
    #[test]
    fn legs_decide_who_gets_which_rope_up_to_so_many_ways_to_give_them_out() {
        let legs: [&[f64]; 3] = [&[48.4, 49.6], &[72.4, 69.6], &[48.4, 49.6]];
        assert_eq!(shared_m(&[74.0, 49.0], &legs), [49.0, 74.0]);
        let three: [&[f64]; 2] = [&[48.4, 48.4, 49.6], &[72.4, 72.4, 69.6]];
        let ropes_m = [74.0, 74.0, 49.0];
        assert_eq!(shared_m(&ropes_m, &three), [74.0, 49.0, 74.0]);
        // Each team one of the ropes or none: 141 × 141 ways are tried, 142 × 142 are more than 20 000 (ours).
        let many = |ropes: usize| [vec![74.0], vec![49.0; ropes - 1]].concat();
        assert_eq!(shared_m(&many(140), &legs), [49.0, 74.0]);
        assert_eq!(shared_m(&many(141), &legs), [74.0, 49.0]);
    }

    #[test]
    fn teams_with_little_to_spare_are_counted_beside_demands_that_are_not_held() {
        let job = example::job().unwrap();
        let looks = |given_m: [f64; 2]| {
            let given = given_m.map(|length_m| rope(0, length_m));
            looks(&job.case(), &[], &[60.0, 50.0], &given)
        };
        // Less than a metre to spare is little (ours).
        assert_eq!(looks([61.0, 51.0]), [0, 0]);
        assert_eq!(looks([60.5, 51.0]), [0, 1]);
        assert_eq!(looks([60.5, 50.5]), [0, 2]);
        assert_eq!(looks([59.5, 51.0]), [1, 1]);
    }
}
