//! What is shown beside a plan: heights, the ground under the map of the report, the trip with something missing.

use crate::{
    Planner,
    fault::Fault,
    ground::relief::Relief,
    plan::{Plan, leg::Verdict, name::RopeName, without::Difference},
    practice::Rule,
    rope::answers::Depth,
    trip::{
        job::{Brief, Burden},
        party::{Called, Person},
        rope::Rope,
    },
    write::{
        report,
        sheet::{Other, Scene},
    },
};

impl Planner<'_> {
    /// What the report shows beside a plan: heights, the ground under its map, and the trip with something missing.
    ///
    /// # Errors
    /// A terrain file is broken where it is read.
    pub fn scene(&self, plan: &Plan) -> Result<Scene, Vec<Fault>> {
        let window = report::window(plan, self.case.route);
        let relief = match (self.case.terrain, window) {
            (Some(terrain), Some((low, high))) => {
                Relief::within(low, high, terrain).map_err(|fault| vec![fault])?
            }
            _ => None,
        };
        let stages = self.met.stages.iter();
        Ok(Scene {
            profiles: stages.map(|s| s.under.profile.clone()).collect(),
            relief,
            others: self.others(plan),
        })
    }

    /// The same trip with one person fewer, with one more, with each rope lost that a team carries, the worst first, and
    /// with one person hurt and carried along, each planned or refused, and all but the second with no ropes but those that
    /// the plan carries. Whatever was asked of route and ice is not asked again.
    #[must_use]
    pub fn others(&self, plan: &Plan) -> Vec<Other> {
        let ropes = self.carried(plan);
        let mut all = vec![self.one_fewer(&ropes), self.one_more()];
        all.extend(self.ropes_lost(plan, &ropes));
        all.extend(self.one_hurt(&ropes));
        all
    }

    /// The ropes at hand, those that nobody carries without any length, so that the others keep their numbers: what the
    /// plan leaves at home is not there when something goes missing on the way.
    fn carried(&self, plan: &Plan) -> Vec<Rope> {
        let carried: Vec<usize> = plan
            .carry
            .iter()
            .filter_map(|carry| Some(carry.rope.as_ref()?.rope))
            .collect();
        let mut ropes = self.case.ropes.to_vec();
        for (rope, number) in ropes.iter_mut().zip(1..) {
            if !carried.contains(&number) {
                rope.length_m = 0.0;
            }
        }
        ropes
    }

    fn other(&self, differs: Difference, job: &Brief<'_>) -> Other {
        Other {
            differs,
            people: job.party.people.len(),
            plan: self.plan_to(job, Depth::Verdicts),
        }
    }

    /// The last person named is the one who stays away.
    fn one_fewer(&self, ropes: &[Rope]) -> Other {
        let mut party = self.case.party.clone();
        party.people.pop();
        let job = Brief {
            party: &party,
            ropes,
            ..self.case
        };
        self.other(Difference::OneFewer, &job)
    }

    /// The one who joins has the mass that the rules assume. That is known before the trip, so ropes that would stay at home
    /// can be taken.
    fn one_more(&self) -> Other {
        let mut party = self.case.party.clone();
        party.people.push(Person {
            called: Called::number(party.people.len() + 1),
            mass_kg: self.case.rules[Rule::PersonKg],
            mass_given: false,
        });
        let job = Brief {
            party: &party,
            ..self.case
        };
        self.other(Difference::OneMore, &job)
    }

    /// Each rope that a team carries, the worst first; the loss of one that stays at home changes nothing.
    fn ropes_lost(&self, plan: &Plan, ropes: &[Rope]) -> Vec<Other> {
        let carried = plan.carry.iter().filter_map(|carry| carry.rope.as_ref());
        let mut lost: Vec<Other> = carried.map(|rope| self.rope_lost(rope, ropes)).collect();
        lost.sort_by_key(|other| std::cmp::Reverse(badness(other)));
        lost
    }

    /// The rope stays in its place without any length, so that the others keep their numbers.
    fn rope_lost(&self, rope: &RopeName, ropes: &[Rope]) -> Other {
        let mut ropes: Vec<Rope> = ropes.to_vec();
        let at = rope.rope.checked_sub(1);
        if let Some(lost) = at.and_then(|at| ropes.get_mut(at)) {
            lost.length_m = 0.0;
        }
        let job = Brief {
            ropes: &ropes,
            ..self.case
        };
        self.other(Difference::RopeLost { rope: rope.clone() }, &job)
    }

    /// The heaviest is hurt: the most to carry, and the most that is missing where somebody has to hold. The heaviest of
    /// the others carries them. Our judgement.
    fn one_hurt(&self, ropes: &[Rope]) -> Option<Other> {
        let mut party = self.case.party.clone();
        let hurt = party.people.remove(heaviest(&party.people)?);
        let carrier = heaviest(&party.people).and_then(|at| party.people.get(at));
        let job = Brief {
            party: &party,
            ropes,
            burden: carrier.map(|person| Burden {
                carried_by: person.called.number,
                mass_kg: hurt.mass_kg,
            }),
            ..self.case
        };
        let differs = Difference::OneHurt {
            carried_by: carrier.map(|person| person.called.clone()),
            hurt: hurt.called,
        };
        Some(self.other(differs, &job))
    }
}

/// The first of the heaviest.
fn heaviest(people: &[Person]) -> Option<usize> {
    let mass_kg = |at: &usize| people[*at].mass_kg;
    (0..people.len())
        .rev()
        .max_by(|a, b| mass_kg(a).total_cmp(&mass_kg(b)))
}

/// How bad a loss is: the gravest verdict, and on how many legs there is one as grave.
fn badness(other: &Other) -> (Option<Verdict>, usize) {
    let Ok(plan) = &other.plan else {
        return (None, 0);
    };
    let worst = plan.verdict();
    let legs = plan.legs.iter().filter(|leg| leg.verdict == worst);
    (Some(worst), legs.count())
}
