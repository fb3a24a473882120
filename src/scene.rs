//! What is shown beside a plan: heights, the ground under the map of the report, the trip with something missing.

use std::{cell::RefCell, cmp::Reverse, iter::once};

use crate::{
    Planner, cores,
    fault::Fault,
    ground::relief::Relief,
    plan::{Plan, depth::Depth, leg::Verdict, name::RopeName, without::Difference},
    practice::Rule,
    rope::answers::KnownFalls,
    trip::{
        job::{Brief, Burden},
        party::{Called, ON_ONE_ROPE, Party, Person, RopeTeam},
        rope::Rope,
    },
    write::{
        report,
        sheet::{Other, Scene},
    },
};

impl Planner<'_> {
    /// The heights under each stage, and nothing else of a scene.
    #[must_use]
    pub fn profiles(&self) -> Scene {
        let stages = self.met.stages.iter();
        Scene {
            profiles: stages.map(|s| s.under.line.profile.clone()).collect(),
            ..Scene::default()
        }
    }

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
        Ok(Scene {
            relief,
            others: self.others(plan),
            ..self.profiles()
        })
    }

    /// The same trip with one person fewer, with one more, with each rope lost that a team carries, the worst first, and
    /// with one person hurt and carried along, each planned or refused, and all but the second with no ropes but those that
    /// the plan carries. Whatever was asked of route and ice is not asked again.
    #[must_use]
    pub fn others(&self, plan: &Plan) -> Vec<Other> {
        let ropes = self.carried(plan);
        let carried = plan.carry.iter().filter_map(|carry| carry.rope.as_ref());
        let shortest_m = carried.clone().map(|rope| rope.length_m);
        let shortest_m = shortest_m.fold(f64::INFINITY, f64::min);
        let lost = carried.map(|rope| self.rope_lost(rope, &ropes, shortest_m));
        // Whoever is left when one stays away is left when one is hurt: of the same people the same falls are asked.
        let alike = [
            once(self.one_fewer(&ropes))
                .chain(self.one_hurt(&ropes))
                .collect::<Vec<_>>(),
            once(self.one_more()).chain(lost).collect(),
        ];
        let others = cores::map(&alike, |trips| {
            let known = RefCell::new(self.known().clone());
            let planned = trips.iter().map(|trip| self.other(trip, &known));
            (planned.collect::<Vec<_>>(), known.into_inner())
        });
        let (others, known): (Vec<_>, Vec<_>) = others.into_iter().unzip();
        for known in known {
            self.known().slopes.followed.take_in(known.slopes.followed);
        }
        let mut others: Vec<Other> = others.into_iter().flatten().collect();
        others.sort_by_key(order);
        others
    }

    /// The ropes at hand, those that nobody carries without any length, so that the others keep their numbers: what the
    /// plan leaves at home is not there when something goes missing on the way, what it has carried for a rescue is.
    fn carried(&self, plan: &Plan) -> Vec<Rope> {
        let tied = plan.carry.iter().filter_map(|carry| carry.rope.as_ref());
        let spares = plan.spares.iter().filter(|spare| spare.is_carried());
        let carried = tied.chain(spares.map(|spare| &spare.rope));
        let carried: Vec<usize> = carried.map(|name| name.rope).collect();
        let mut ropes = self.case.ropes.to_vec();
        for (rope, number) in ropes.iter_mut().zip(1..) {
            if !carried.contains(&number) {
                rope.length_m = 0.0;
            }
        }
        ropes
    }

    /// Plans a trip by itself, from what is known of falls so far.
    fn other(&self, trip: &Missing, known: &RefCell<KnownFalls>) -> Other {
        let job = Brief {
            party: &trip.party,
            ropes: &trip.ropes,
            burden: trip.burden,
            ..self.case
        };
        Other {
            differs: trip.differs.clone(),
            people: trip.party.people.len(),
            plan: self.plan_to(&job, Depth::Legs, known),
        }
    }

    /// The last person named is the one who stays away.
    fn one_fewer(&self, ropes: &[Rope]) -> Missing {
        let mut party = self.case.party.clone();
        party.people.pop();
        Missing {
            differs: Difference::OneFewer,
            party,
            ropes: ropes.to_vec(),
            burden: self.case.burden,
        }
    }

    /// The one who joins has the mass that the rules assume. That is known before the trip, so ropes that would stay at home
    /// can be taken.
    fn one_more(&self) -> Missing {
        let mut party = self.case.party.clone();
        party.people.push(Person {
            called: Called::number(party.people.len() + 1),
            mass_kg: self.case.rules[Rule::PersonKg],
            mass_given: false,
        });
        Missing {
            differs: Difference::OneMore,
            party,
            ropes: self.case.ropes.to_vec(),
            burden: self.case.burden,
        }
    }

    /// The rope stays in its place without any length, so that the others keep their numbers. The loss of one that stays at
    /// home changes nothing. A rope shorter than the shortest that somebody ties into is none to tie into.
    fn rope_lost(&self, rope: &RopeName, ropes: &[Rope], shortest_m: f64) -> Missing {
        let mut ropes: Vec<Rope> = ropes.to_vec();
        let at = rope.rope.checked_sub(1);
        if let Some(lost) = at.and_then(|at| ropes.get_mut(at)) {
            lost.length_m = 0.0;
        }
        Missing {
            differs: Difference::RopeLost { rope: rope.clone() },
            party: on_fewer(self.case.party, &ropes, shortest_m),
            ropes,
            burden: self.case.burden,
        }
    }

    /// The heaviest is hurt: the most to carry, and the most that is missing where somebody has to hold. The heaviest of
    /// the others carries them. Our judgement.
    fn one_hurt(&self, ropes: &[Rope]) -> Option<Missing> {
        let mut party = self.case.party.clone();
        let hurt = party.people.remove(heaviest(&party.people)?);
        let carrier = heaviest(&party.people).and_then(|at| party.people.get(at));
        let burden = carrier.map(|person| Burden {
            carried_by: person.called.number,
            mass_kg: hurt.mass_kg,
        });
        let differs = Difference::OneHurt {
            carried_by: carrier.map(|person| person.called.clone()),
            hurt: hurt.called,
        };
        Some(Missing {
            differs,
            party,
            ropes: ropes.to_vec(),
            burden,
        })
    }
}

/// The party in as many rope teams as there are ropes no shorter than one that somebody ties into as planned, where those are fewer than its teams and hold everybody: with a rope lost nobody
/// stays without one.
fn on_fewer(party: &Party, ropes: &[Rope], shortest_m: f64) -> Party {
    let left = ropes
        .iter()
        .filter(|rope| rope.length_m >= shortest_m)
        .count();
    let fewer = (1..party.rope_teams().len()).contains(&left);
    let mut party = party.clone();
    if fewer && party.people.len() <= left * ON_ONE_ROPE.end() {
        let teams = party.split_into(left);
        party.teams = teams.iter().map(RopeTeam::size).collect();
    }
    party
}

/// A trip with something missing, before it is planned.
struct Missing {
    differs: Difference,
    party: Party,
    ropes: Vec<Rope>,
    burden: Option<Burden>,
}

/// Where a trip stands among the others: by what is missing, and of lost ropes the worst first.
fn order(other: &Other) -> (u8, Reverse<(Option<Verdict>, usize)>) {
    match other.differs {
        Difference::OneFewer => (0, Reverse((None, 0))),
        Difference::OneMore => (1, Reverse((None, 0))),
        Difference::RopeLost { .. } => (2, Reverse(badness(other))),
        Difference::OneHurt { .. } => (3, Reverse((None, 0))),
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
