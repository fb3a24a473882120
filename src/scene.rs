//! What the report shows beside a plan: heights, the ground under its map, the trip with another party.

use crate::{
    Planner,
    fault::Fault,
    ground::relief::Relief,
    plan::Plan,
    practice::Rule,
    rope::answers::Depth,
    trip::party::{Called, Person},
    write::{
        report,
        sheet::{Other, OtherParty, Scene},
    },
};

impl Planner<'_> {
    /// What the report shows beside a plan: heights, the ground under its map, and the trip with one person fewer and
    /// with one more, each planned or refused.
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
            others: vec![
                self.other(OtherParty::OneFewer),
                self.other(OtherParty::OneMore),
            ],
        })
    }

    /// The last person named is the one who stays away; the one who joins has the mass that the rules assume.
    fn other(&self, other: OtherParty) -> Other {
        let mut party = self.case.party.clone();
        match other {
            OtherParty::OneFewer => {
                party.people.pop();
            }
            OtherParty::OneMore => party.people.push(Person {
                called: Called::number(party.people.len() + 1),
                mass_kg: self.case.rules[Rule::PersonKg],
                mass_given: false,
            }),
        }
        Other {
            party: other,
            people: party.people.len(),
            plan: self.plan_to(&party, Depth::Verdicts),
        }
    }
}
