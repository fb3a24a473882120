//! Who goes, as a trip file says it.

use serde::{Deserialize, Serialize};

use crate::{
    fault::{Fault, Place, trip::InTrip},
    practice::{Rule, Rules},
    trip::party::{Called, Party, Person},
};

/// Who goes, in one of three forms.
///
/// ```
/// use schrund::{fault::Place, read::trip::{Folk, trip}};
///
/// let rules = schrund::example::job()?.rules;
/// let masses = Folk::Masses(vec![82.0, 75.0, 90.0]);
/// for (text, said) in [("party = 3", Folk::Number(3)), ("party = [82, 75, 90]", masses)] {
///     let trip = trip("trip.toml", text)?;
///     assert_eq!(trip.party, Some(said));
///     let party = trip.party(&Place::file("trip.toml"), &rules, &Default::default())?;
///     assert_eq!(party.map(|party| party.people.len()), Some(3));
/// }
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(untagged)]
pub enum Folk {
    /// How many.
    Number(usize),
    /// Their masses with pack, kg.
    Masses(Vec<f64>),
    /// Each with a name.
    Named(Vec<PersonEntry>),
}

impl Folk {
    pub(super) fn count(&self) -> usize {
        match self {
            Self::Number(number) => *number,
            Self::Masses(masses) => masses.len(),
            Self::Named(people) => people.len(),
        }
    }
}

/// One person of a trip file.
///
/// ```
/// use schrund::read::trip::{Folk, PersonEntry, trip};
///
/// let trip = trip("trip.toml", "[[party]]\nname = \"Ane\"\nmass_kg = 82\n[[party]]\nname = \"Bo\"\n")?;
/// let entry = |name: &str, mass_kg| PersonEntry { name: name.to_owned(), mass_kg };
/// assert_eq!(trip.party, Some(Folk::Named(vec![entry("Ane", Some(82.0)), entry("Bo", None)])));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PersonEntry {
    /// What the leader calls them.
    pub name: String,
    /// Kilograms with pack.
    pub mass_kg: Option<f64>,
}

pub(super) fn wrong_masses(party: &Party, place: &Place, rules: &Rules) -> Vec<Fault> {
    let wrong = party
        .people
        .iter()
        .filter(|p| p.mass_given)
        .filter_map(|p| {
            rules.figure(Rule::PersonKg).check(p.mass_kg).err()?;
            let figure = rules.figure(Rule::PersonKg);
            let mass = InTrip::Mass {
                person: p.called.number,
                name: p.called.name.clone(),
                kg: p.mass_kg,
                min_kg: figure.min,
                max_kg: figure.max,
                decimals_of: before(party, p),
            };
            Some(Fault::new(mass, place.clone()))
        });
    wrong.collect()
}

/// The mass of the person before somebody, where it is whole and that of this one less than ten: `82,5` in a list is two people.
fn before(party: &Party, person: &Person) -> Option<f64> {
    let is_digit = (0.0..10.0).contains(&person.mass_kg) && person.mass_kg.fract() == 0.0;
    let at = person.called.number.checked_sub(2).filter(|_| is_digit)?;
    let before = party.people.get(at)?;
    let whole = before.mass_given && before.mass_kg.fract() == 0.0;
    whole.then_some(before.mass_kg)
}

impl PersonEntry {
    pub(super) fn person(&self, number: usize, rules: &Rules) -> Person {
        let name = (!self.name.is_empty()).then(|| self.name.clone());
        Person {
            called: Called { number, name },
            mass_kg: self.mass_kg.unwrap_or(rules[Rule::PersonKg]),
            mass_given: self.mass_kg.is_some(),
        }
    }
}
