//! What would make a rope at hand hold a leg: the set-ups with something done otherwise, the least asked of people first.

use crate::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        spacing::{self, Spacing},
        worst::Meeting,
    },
    plan::{change::Change, name::RopeName, why::KnotsWhy},
    practice::{Rule, Rules},
    rope::{draft::Draft, legs::RopedLeg, otherwise, share},
    trip::{job::Brief, party::RopeTeam, rope::Rope},
};

/// A set-up that its rope holds.
#[derive(Clone, Debug)]
pub(crate) struct Fitting {
    pub(crate) changes: Vec<Change>,
    pub(crate) rules: Rules,
    pub(crate) draft: Draft,
    /// The rope that holds it.
    pub(crate) rope: Rope,
    /// Number of the rope that the team carries, from 1.
    pub(crate) number: usize,
    /// Number of the rope that is joined to it.
    pub(crate) joined_to: Option<usize>,
}

/// Walking closer than the habit on some ground, so that a rope is long enough: for legs and for the field table.
#[derive(Clone, Copy)]
pub(crate) struct Closer<'a> {
    pub(crate) team: &'a RopeTeam,
    pub(crate) over: Over<'a>,
    pub(crate) hardship: Hardship,
    pub(crate) rules: &'a Rules,
    pub(crate) rope_m: f64,
}

impl Closer<'_> {
    /// The set-up with the widest spacing below one, metres, that suits the gaps and that the rope holds; never below the floor
    /// or what the knots ask for.
    pub(crate) fn below(&self, spacing_m: f64, meet: &dyn Fn(f64) -> Meeting) -> Option<Draft> {
        let hardship = || self.hardship;
        let knots_m = knots::least_m(self.team, self.over, hardship, self.rules);
        let least_m = knots_m.max(self.rules[Rule::SpacingFloorM]);
        let below: Vec<f64> = spacing::choices_m(least_m, self.rules)
            .take_while(|d| *d < spacing_m - 1e-9)
            .collect();
        let fits = |d: f64| {
            let spacing = Spacing::tried(self.team.size(), d, self.rules, meet);
            let draft = Draft::new(self.team, spacing, self.over, self.hardship, self.rules);
            let holds = share::holds(self.rope_m, draft.ledger.total_m);
            (spacing.enough && holds).then_some(draft)
        };
        below.into_iter().rev().find_map(fits)
    }
}

/// A team on a leg that its rope does not hold as planned.
#[derive(Clone, Copy)]
pub(crate) struct TooShort<'a> {
    pub(crate) job: &'a Brief<'a>,
    pub(crate) leg: &'a RopedLeg<'a>,
    pub(crate) team: &'a RopeTeam,
    pub(crate) planned: &'a Draft,
    /// Number and rope.
    pub(crate) rope: (usize, &'a Rope),
    /// Numbers of the ropes that nobody carries.
    pub(crate) left: &'a [usize],
}

impl TooShort<'_> {
    /// Every set-up that fits: walking closer before tying or carrying something else, fewer changes before more, joined
    /// ropes last. The order is our judgement.
    pub(crate) fn fitting(&self) -> Vec<Fitting> {
        let mut all: Vec<Fitting> = Vec::new();
        // Where no knots are wanted nothing of them is tied otherwise.
        let wanted = matches!(
            self.planned.knots.why,
            KnotsWhy::Tied { .. } | KnotsWhy::NoRoom { .. }
        );
        let knots: &[otherwise::Otherwise] = &[otherwise::butterflies, otherwise::tighter];
        let knots = knots.iter().filter(|_| wanted).copied();
        let makes: Vec<_> = knots.chain([otherwise::long_sling as _]).collect();
        for (changes, rules) in otherwise::mixes(self.job.rules, &makes) {
            let closer = self.closer(&rules).map(|(change, rules, draft)| {
                let changes = changes.iter().cloned().chain([change]).collect();
                self.on_own(changes, rules, draft)
            });
            let tied = self.tied(&rules).filter(|_| !changes.is_empty());
            all.extend(tied.map(|draft| self.on_own(changes.clone(), rules.clone(), draft)));
            all.extend(closer);
        }
        all.sort_by_key(|fitting| fitting.changes.len());
        all.extend(self.joined());
        all
    }

    fn on_own(&self, changes: Vec<Change>, rules: Rules, draft: Draft) -> Fitting {
        let (number, rope) = self.rope;
        Fitting {
            changes,
            rules,
            draft,
            rope: rope.clone(),
            number,
            joined_to: None,
        }
    }

    /// The set-up that some rules ask for, where the rope holds it.
    fn tied(&self, rules: &Rules) -> Option<Draft> {
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let (over, hardship) = (self.leg.over(), || self.leg.hardship);
        let spacing = spacing::of_team(self.team, over, hardship, rules, &meets);
        let draft = self.draft(spacing, rules);
        (spacing.enough && self.holds(&draft)).then_some(draft)
    }

    /// The widest spacing below the planned one that suits the gaps and that the rope holds. Where nobody gave the gaps
    /// nobody walks closer than is taught.
    fn closer(&self, rules: &Rules) -> Option<(Change, Rules, Draft)> {
        if self.leg.undrawn {
            return None;
        }
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let closer = Closer {
            team: self.team,
            over: self.leg.over(),
            hardship: self.leg.hardship,
            rules,
            rope_m: self.rope.1.length_m,
        };
        let draft = closer.below(self.planned.spacing.spacing_m, &meets)?;
        let (change, rules) = otherwise::closer(rules, draft.spacing.spacing_m)?;
        Some((change, rules, draft))
    }

    /// The set-up as planned on this rope and another that nobody carries: the lightest two that hold it.
    fn joined(&self) -> Option<Fitting> {
        let rules = self.job.rules;
        let (number, own) = self.rope;
        let mass_kg = |r: &Rope| share::mass_kg(r.length_m, r.diameter_mm, rules);
        let pair = |&other: &usize| {
            let second = self.job.rope(other)?;
            let both = otherwise::joined(own, second, rules)?;
            let holds = share::holds(both.length_m, self.planned.ledger.total_m);
            holds.then(|| (RopeName::of(other, second), mass_kg(second), both))
        };
        let pairs = self.left.iter().filter_map(pair);
        let (other, _, both) = pairs.min_by(|(_, a, _), (_, b, _)| a.total_cmp(b))?;
        let change = Change::JoinedRopes {
            ropes: [RopeName::of(number, own), other.clone()],
            length_m: both.length_m,
        };
        self.planned.spacing.enough.then(|| Fitting {
            changes: vec![change],
            rules: rules.clone(),
            draft: self.planned.clone(),
            rope: both,
            number,
            joined_to: Some(other.rope),
        })
    }

    fn draft(&self, spacing: Spacing, rules: &Rules) -> Draft {
        Draft::new(
            self.team,
            spacing,
            self.leg.over(),
            self.leg.hardship,
            rules,
        )
    }

    fn holds(&self, draft: &Draft) -> bool {
        share::holds(self.rope.1.length_m, draft.ledger.total_m)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{practice::set::Source, trip::party::Party};

    /// How far apart three walk on such a rope over a gap of this length, closer than so many metres.
    fn closer_m(below_m: f64, rope_m: f64, effective_gap_m: f64) -> Option<f64> {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let team = Party::weighing(&[80.0; 3]).split_into(1).remove(0);
        let closer = Closer {
            team: &team,
            over: Over::drawn(&[]),
            hardship: Hardship::default(),
            rules: &rules,
            rope_m,
        };
        let meet = |_| Meeting {
            effective_gap_m,
            ..Meeting::default()
        };
        let draft = closer.below(below_m, &meet)?;
        Some(draft.spacing.spacing_m)
    }

    #[test]
    fn nobody_walks_closer_than_rope_gap_and_floor_ask_for() {
        assert_eq!(
            closer_m(13.0, 100.0, 4.0),
            Some(12.5),
            "a step closer, no more"
        );
        // Three at d take 2d of spans, d of coils and 3 m of tie-ins.
        assert_eq!(closer_m(13.0, 36.0, 4.0), Some(11.0));
        assert_eq!(
            closer_m(13.0, 36.0, 12.3),
            None,
            "0.9 of the gap are 11.07 m"
        );
        assert_eq!(closer_m(13.0, 24.0, 4.0), Some(7.0), "the floor (ours)");
        assert_eq!(closer_m(13.0, 23.9, 4.0), None);
        assert_eq!(closer_m(7.0, 100.0, 4.0), None, "nothing is closer");
    }
}
