//! How far the rope that a team is given reaches, whichever rope that is.

use crate::{
    plan::leg::{Ledger, Verdict},
    practice::Rules,
    rope::{
        carried::{Carried, RopeLoad},
        draft::Draft,
        reserve, share,
    },
};

/// What a team ties on a leg, as far as the rope that it is given decides how deep a loop reaches.
#[derive(Clone, Debug)]
pub(crate) struct Tied {
    people: usize,
    spacing_m: f64,
    knots: bool,
    ledger: Ledger,
}

impl Tied {
    pub(crate) fn of(draft: &Draft) -> Self {
        Self {
            people: draft.persons.len(),
            spacing_m: draft.spacing.spacing_m,
            knots: draft.knots.count > 0,
            ledger: draft.ledger,
        }
    }

    /// The shortest rope with which nobody is, carried in two equal coils, metres.
    pub(crate) fn reaching_m(&self, rules: &Rules) -> f64 {
        let coil_m = self.ledger.coils_m / 2.0;
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let short_m = all.iter().map(|free| -free.depth_m(self.spacing_m, rules));
        let obliged_m = reserve::obliged_coil_m(self.people, self.spacing_m, rules);
        let obliged_m = if self.knots { obliged_m - coil_m } else { 0.0 };
        self.ledger.total_m + 2.0 * short_m.fold(obliged_m.max(0.0), f64::max)
    }

    /// Coil of each end person with this rope as carried, metres.
    pub(crate) fn coil_carried_m(&self, load: RopeLoad, rules: &Rules) -> f64 {
        Carried::of(&self.ledger, load, rules).coil_m
    }

    /// Whether a loop reaches a person below the lip, by place from 1, with this rope as carried.
    pub(crate) fn reaches(&self, person: usize, load: RopeLoad, rules: &Rules) -> bool {
        let coil_m = self.coil_carried_m(load, rules);
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let mut falls = all.iter().filter(|free| free.person == person);
        falls.any(|free| free.is_below_lip(self.spacing_m, rules))
    }

    /// How it stands with this rope as carried: whether somebody is beyond every loop, or a rescue strand is short.
    pub(crate) fn by_reach(&self, load: RopeLoad, rules: &Rules) -> Verdict {
        let coil_m = self.coil_carried_m(load, rules);
        let all = reserve::free(self.people, self.spacing_m, coil_m);
        let beyond = all
            .iter()
            .any(|free| free.depth_m(self.spacing_m, rules) < -1e-9);
        let short = || reserve::short(self.people, self.spacing_m, &self.ledger, coil_m, rules);
        match self.knots.then(short).flatten() {
            Some(short) if !share::holds(load.length_m, short.whole_m) => Verdict::Outside,
            Some(_) => Verdict::Look,
            None if beyond => Verdict::Look,
            None => Verdict::Inside,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        legs::{knots::Hardship, over::Over, spacing::Spacing, worst::Meeting},
        practice::{Origin, Rule, set::Source},
        trip::party::Party,
    };

    fn tied(people: usize, spacing_m: f64, rules: &Rules) -> Tied {
        let team = Party::weighing(&vec![80.0; people]).split_into(1).remove(0);
        let spacing = Spacing::tried(people, spacing_m, rules, &|_| Meeting::default());
        let over = Over {
            zones: &[],
            undrawn: true,
        };
        Tied::of(&Draft::new(
            &team,
            spacing,
            over,
            Hardship::default(),
            rules,
        ))
    }

    fn rope(length_m: f64) -> RopeLoad {
        RopeLoad {
            length_m,
            diameter_mm: None,
        }
    }

    #[test]
    fn the_shortest_rope_that_reaches_everybody_reaches_the_one_in_the_middle() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        // Three at 13 m take 42 m; coils of 6.5 m end 6.5 − 13 − 2.5 = −9 m below the lip in the middle, so each is 9 m longer.
        let three = tied(3, 13.0, &rules);
        assert!((three.reaching_m(&rules) - 60.0).abs() < 1e-9);
        let reached = |rope_m| [1, 2, 3].map(|person| three.reaches(person, rope(rope_m), &rules));
        // Who hangs does so no less than a metre below the lip (our judgement).
        assert_eq!(reached(62.0), [true; 3]);
        assert_eq!(reached(61.8), [true, false, true]);
        assert_eq!(three.by_reach(rope(60.0), &rules), Verdict::Inside);
        assert_eq!(three.by_reach(rope(59.8), &rules), Verdict::Look);
        // A pair at 15 m carries coils that reach 5 m: 69.2 m of rope, and no more for its knots.
        let pair = tied(2, 15.0, &rules);
        assert!((pair.reaching_m(&rules) - 69.2).abs() < 1e-9);
    }

    #[test]
    fn a_reserve_that_the_rope_cannot_give_is_graver_than_one_left_in_the_bag() {
        let mut rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        rules.set(Rule::ReachFactor, 1.0, Origin::Trip).unwrap();
        rules.set(Rule::CoilMostKg, 0.5, Origin::Trip).unwrap();
        // Coils of 15 m are asked for, where knots oblige to 22.5 m: 54.2 and 69.2 m of rope.
        let pair = tied(2, 15.0, &rules);
        assert!((pair.reaching_m(&rules) - 69.2).abs() < 1e-9);
        assert_eq!(pair.by_reach(rope(60.0), &rules), Verdict::Outside);
        assert_eq!(pair.by_reach(rope(80.0), &rules), Verdict::Look);
    }

    #[test]
    fn without_knots_nobody_is_obliged_to_a_reserve() {
        let mut rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        rules.set(Rule::ReachFactor, 1.0, Origin::Trip).unwrap();
        // Three at 13 m carry no coil by that factor, 29 m in all, and tie no knots, which would oblige to 1.5 × 13 m − 13 m.
        let three = tied(3, 13.0, &rules);
        assert_eq!(three.by_reach(rope(29.0), &rules), Verdict::Look);
    }
}
