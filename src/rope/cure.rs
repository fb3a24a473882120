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

/// How a team may be tied otherwise than the rules in force say.
#[derive(Clone, Debug)]
pub(crate) struct Tying {
    /// What is tied or carried otherwise.
    pub(crate) changes: Vec<Change>,
    /// The rules with that.
    pub(crate) rules: Rules,
    /// Whether the team walks closer too.
    pub(crate) closer: bool,
}

impl Tying {
    /// All that there is beside a set-up as planned: walking closer before tying or carrying something else, fewer changes before
    /// more. The order is our judgement. Where no knots are wanted nothing of them is tied otherwise.
    pub(crate) fn all(planned: &Draft, rules: &Rules) -> Vec<Self> {
        let wanted = matches!(
            planned.knots.why,
            KnotsWhy::Tied { .. } | KnotsWhy::NoRoom { .. }
        );
        let knots: &[otherwise::Otherwise] = &[otherwise::butterflies, otherwise::tighter];
        let knots = knots.iter().filter(|_| wanted).copied();
        let makes: Vec<_> = knots.chain([otherwise::long_sling as _]).collect();
        let mut all = Vec::new();
        for (changes, rules) in otherwise::mixes(rules, &makes) {
            let tying = |closer| Self {
                changes: changes.clone(),
                rules: rules.clone(),
                closer,
            };
            all.extend((!changes.is_empty()).then(|| tying(false)));
            all.push(tying(true));
        }
        all.sort_by_key(|tying| tying.changes.len() + usize::from(tying.closer));
        all
    }
}

/// A team on some ground with a rope that does not hold it as planned, tied by other rules: for legs and for the field table.
#[derive(Clone, Copy)]
pub(crate) struct OnRope<'a> {
    pub(crate) team: &'a RopeTeam,
    pub(crate) over: Over<'a>,
    pub(crate) hardship: Hardship,
    pub(crate) rules: &'a Rules,
    pub(crate) rope_m: f64,
}

impl OnRope<'_> {
    /// The set-up that the rules ask for, where the rope holds it.
    pub(crate) fn as_asked(&self, meet: &dyn Fn(f64) -> Meeting) -> Option<Draft> {
        let hardship = || self.hardship;
        let spacing = spacing::of_team(self.team, self.over, hardship, self.rules, meet);
        self.held(spacing)
    }

    /// The set-up with the widest spacing below one, metres, that suits the gaps and that the rope holds; never below the floor
    /// or what the knots ask for. Where nobody gave the gaps nobody walks closer than is taught.
    pub(crate) fn below(&self, spacing_m: f64, meet: &dyn Fn(f64) -> Meeting) -> Option<Draft> {
        if self.over.undrawn {
            return None;
        }
        let hardship = || self.hardship;
        let knots_m = knots::least_m(self.team, self.over, hardship, self.rules);
        let least_m = knots_m.max(self.rules[Rule::SpacingFloorM]);
        let below: Vec<f64> = spacing::choices_m(least_m, self.rules)
            .take_while(|d| *d < spacing_m - 1e-9)
            .collect();
        let tried = |d: f64| Spacing::tried(self.team.size(), d, self.rules, meet);
        below.into_iter().rev().find_map(|d| self.held(tried(d)))
    }

    fn held(&self, spacing: Spacing) -> Option<Draft> {
        let draft = Draft::new(self.team, spacing, self.over, self.hardship, self.rules);
        let holds = share::holds(self.rope_m, draft.ledger.total_m);
        (spacing.enough && holds).then_some(draft)
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
    /// Every set-up that fits: tied otherwise, joined ropes last.
    pub(crate) fn fitting(&self) -> Vec<Fitting> {
        let all = Tying::all(self.planned, self.job.rules).into_iter();
        let on_own = all.filter_map(|tying| match tying.closer {
            true => self.closer(tying),
            false => self.as_asked(tying),
        });
        on_own.chain(self.joined()).collect()
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

    fn as_asked(&self, tying: Tying) -> Option<Fitting> {
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let draft = self.on_rope(&tying.rules).as_asked(&meets)?;
        Some(self.on_own(tying.changes, tying.rules, draft))
    }

    /// The widest spacing below the planned one that suits the gaps and that the rope holds.
    fn closer(&self, tying: Tying) -> Option<Fitting> {
        let meets = self.leg.stage.meets(self.job, self.leg.sketch);
        let planned_m = self.planned.spacing.spacing_m;
        let draft = self.on_rope(&tying.rules).below(planned_m, &meets)?;
        let (change, rules) = otherwise::closer(&tying.rules, draft.spacing.spacing_m)?;
        let changes = tying.changes.into_iter().chain([change]).collect();
        Some(self.on_own(changes, rules, draft))
    }

    fn on_rope<'b>(&'b self, rules: &'b Rules) -> OnRope<'b> {
        OnRope {
            team: self.team,
            over: self.leg.over(),
            hardship: self.leg.hardship,
            rules,
            rope_m: self.rope.1.length_m,
        }
    }

    /// The set-up as planned on this rope and another that nobody carries: the lightest two that hold it, cord last.
    fn joined(&self) -> Option<Fitting> {
        let rules = self.job.rules;
        let (number, own) = self.rope;
        let mass_kg = |r: &Rope| share::mass_kg(r.length_m, r.diameter_mm, rules);
        let pair = |&other: &usize| {
            let second = self.job.rope(other)?;
            let both = otherwise::joined(own, second, rules)?;
            let holds = share::holds(both.length_m, self.planned.ledger.total_m);
            let cost = (share::is_cord(second, rules), mass_kg(second));
            holds.then(|| (RopeName::of(other, second), cost, both))
        };
        let pairs = self.left.iter().filter_map(pair);
        let (other, _, both) =
            pairs.min_by(|(_, a, _), (_, b, _)| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))?;
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{practice::set::Source, trip::party::Party};

    /// How far apart three walk on such a rope over a gap of this length, closer than so many metres.
    fn closer_m(below_m: f64, rope_m: f64, effective_gap_m: f64) -> Option<f64> {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let team = Party::weighing(&[80.0; 3]).split_into(1).remove(0);
        let on_rope = OnRope {
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
        let draft = on_rope.below(below_m, &meet)?;
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
