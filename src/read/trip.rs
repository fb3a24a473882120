//! The trip file: who goes, with what, and what the leader sets differently.

mod assume;
mod faults;
mod laid;
mod stage;

use std::collections::BTreeMap;

use serde::Deserialize;

pub use assume::{Assume, assume};
pub use laid::Laid;
pub use stage::StageWord;

use crate::{
    fault::{Fault, Place, trip::InTrip},
    physics::assumed::Snow,
    practice::{Chosen, Cover, Knots, Origin, Pace, Reserve, Rule, Rules, Travel, set},
    read::input::{Input, Text},
    trip::{
        clock::Clock,
        party::{Contact, Party, Person},
        rope::Rope,
    },
};

/// What a trip file can hold. All of it is optional; flags win over it.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Trip {
    /// What the leader calls the trip.
    pub name: Option<String>,
    /// Name of a practice set, or path of a practice file.
    pub practice: Option<String>,
    /// How many go, their masses with pack in kg, or each with a name.
    pub party: Option<Folk>,
    /// The ropes at hand.
    pub rope: Vec<RopeEntry>,
    /// Gap width, metres, for zones that give none.
    pub gap_m: Option<f64>,
    /// Number or name of the stage to plan.
    pub stage: Option<StageWord>,
    /// On foot, on snowshoes or on skis.
    #[schemars(with = "Option<String>")]
    pub travel: Option<Travel>,
    /// When brake knots are tied.
    #[schemars(with = "Option<String>")]
    pub knots: Option<Knots>,
    /// How the spare rope is measured.
    #[schemars(with = "Option<String>")]
    pub reserve: Option<Reserve>,
    /// Whose fall the spare rope must reach.
    #[schemars(with = "Option<String>")]
    pub cover: Option<Cover>,
    /// Whether bare ice is roped where the zone does not say.
    pub rope_on_bare: Option<bool>,
    /// By which rule walking times are reckoned: `din`, `munter` or `naismith`.
    #[schemars(with = "Option<String>")]
    pub pace: Option<Pace>,
    /// Whether a strike proposed from the terrain model counts; it can only make a plan more careful.
    pub use_proposed_strike: Option<bool>,
    /// When each stage is started: `"04:30"`.
    #[schemars(with = "Option<String>")]
    pub start: Option<Clock>,
    /// Until when snow bridges are trusted: `"10:00"`.
    #[schemars(with = "Option<String>")]
    pub bridges_until: Option<Clock>,
    /// Terrain models, paths relative to the folder of this file.
    pub terrain: Vec<String>,
    /// A glacier inventory (GeoJSON), its path relative to the folder of this file.
    pub glaciers: Option<String>,
    /// Whom to call in an emergency; printed on the report.
    pub emergency: Vec<Contact>,
    /// What the team stands on where there is snow: soft, settled, firm, refrozen or ice.
    #[schemars(with = "Option<String>")]
    pub snow: Option<Snow>,
    /// Figures and words to change, by the names that a plan lists them under; names with dots may be tables.
    pub assume: BTreeMap<String, Assume>,
}

/// Who goes, in one of three forms.
#[derive(Clone, Debug, PartialEq, Deserialize, schemars::JsonSchema)]
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
    fn nobody(&self) -> bool {
        match self {
            Self::Number(number) => *number == 0,
            Self::Masses(masses) => masses.is_empty(),
            Self::Named(people) => people.is_empty(),
        }
    }
}

fn nobody(place: Place) -> Fault {
    Fault::new(InTrip::Nobody, place)
}

/// One person of a trip file.
#[derive(Clone, Debug, PartialEq, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PersonEntry {
    /// What the leader calls them.
    pub name: String,
    /// Kilograms with pack.
    pub mass_kg: Option<f64>,
}

/// One rope of a trip file.
#[derive(Clone, Debug, PartialEq, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RopeEntry {
    /// Metres.
    pub length_m: f64,
    /// Millimetres.
    pub diameter_mm: Option<f64>,
    /// What the leader calls it.
    pub name: Option<String>,
}

/// Most people that are planned for. Our judgement: beyond it, somebody mistyped.
const MOST_PEOPLE: usize = 60;

/// Shortest and longest rope, metres. The longest single ropes made are 200 m rolls `[from memory]`; more is a slip
/// of the pen.
const ROPE_M: [f64; 2] = [5.0, 200.0];
/// Thinnest and thickest rope, millimetres. Our judgement.
const ROPE_MM: [f64; 2] = [4.0, 14.0];

/// Reads a trip file.
///
/// # Errors
/// The text does not parse, or holds a member that means nothing here.
pub fn trip(name: &str, text: &str) -> Result<Trip, Vec<Fault>> {
    toml::from_str(text).map_err(|e| faults::all(name, text, &e))
}

/// Reads a trip file as an input among others.
#[must_use]
pub fn file(input: Input<Text<'_>>) -> Input<Trip> {
    let name = input.name.clone();
    let source = input.whole().and_then(|text| trip(&name, &text));
    Input { name, source }
}

/// The files a trip asks for, as it names them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Files {
    /// Name of a practice set, or a practice file.
    pub practice: Option<String>,
    /// Terrain models.
    pub terrain: Vec<String>,
    /// A glacier inventory.
    pub glaciers: Option<String>,
}

/// JSON Schema of the trip file.
///
/// # Errors
/// Only if the schema cannot stand in JSON.
pub fn schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schemars::schema_for!(Trip))?;
    text.push('\n');
    Ok(text)
}

impl Trip {
    /// The files it asks for; whoever reads the trip opens them.
    #[must_use]
    pub fn files(&self) -> Files {
        Files {
            practice: self.practice.clone(),
            terrain: self.terrain.clone(),
            glaciers: self.glaciers.clone(),
        }
    }

    fn chosen(&self) -> Chosen {
        Chosen {
            travel: self.travel,
            knots: self.knots,
            reserve: self.reserve,
            cover: self.cover,
            rope_on_bare: self.rope_on_bare,
            pace: self.pace,
            use_proposed_strike: self.use_proposed_strike,
            snow: self.snow,
        }
    }

    /// Lays the words, times and figures over what is in force.
    ///
    /// # Errors
    /// Every figure that does not exist or lies outside its bounds.
    pub fn lay_over(
        &self,
        laid: &mut Laid,
        place: &Place,
        origin: &Origin,
    ) -> Result<(), Vec<Fault>> {
        let timetable = &mut laid.timetable;
        laid.rules.choices.lay(&self.chosen(), origin);
        timetable.start.set(self.start.map(Some), origin.clone());
        let until = self.bridges_until.map(Some);
        timetable.bridges_until.set(until, origin.clone());
        let figures = self.assume.iter().flat_map(|(name, a)| a.figures(name));
        let set =
            |(name, value): (String, &Assume)| assume(laid, &name, value, place, origin).err();
        let mut faults: Vec<Fault> = figures.filter_map(set).collect();
        if let (Err(why), true) = (laid.rules.nature.check(), faults.is_empty()) {
            let place = place.clone().with_property("assume");
            faults.push(Fault::new(InTrip::Figure(why), place));
        }
        if faults.is_empty() {
            Ok(())
        } else {
            Err(faults)
        }
    }

    /// The party, if the file names one.
    ///
    /// # Errors
    /// A mass that cannot be, or nobody.
    pub fn party(&self, place: &Place, rules: &Rules) -> Result<Option<Party>, Vec<Fault>> {
        let place = place.clone().with_property("party");
        let party = match &self.party {
            None => return Ok(None),
            Some(folk) if folk.nobody() => return Err(vec![nobody(place)]),
            Some(Folk::Number(number)) if *number <= MOST_PEOPLE => Party::of(*number, rules),
            Some(Folk::Number(number)) => {
                let too_many = InTrip::TooMany {
                    // A flag too large for a count stands here as the greatest there is.
                    people: Some(*number).filter(|n| *n < usize::MAX),
                    most: MOST_PEOPLE,
                };
                return Err(vec![Fault::new(too_many, place)]);
            }
            Some(Folk::Masses(masses)) => Party::weighing(masses),
            Some(Folk::Named(people)) => Party {
                people: people.iter().map(|p| p.person(rules)).collect(),
            },
        };
        let faults = wrong_masses(&party, &place, rules);
        if faults.is_empty() {
            Ok(Some(party))
        } else {
            Err(faults)
        }
    }

    /// The ropes at hand.
    ///
    /// # Errors
    /// Every rope whose length or diameter cannot be.
    pub fn ropes(&self, place: &Place) -> Result<Vec<Rope>, Vec<Fault>> {
        let faults: Vec<Fault> = self
            .rope
            .iter()
            .flat_map(|rope| rope.faults(&place.clone().with_property("rope")))
            .collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(self.rope.iter().map(RopeEntry::rope).collect())
    }
}

fn wrong_masses(party: &Party, place: &Place, rules: &Rules) -> Vec<Fault> {
    let wrong = party
        .people
        .iter()
        .filter(|p| p.mass_given)
        .filter_map(|p| {
            rules.figure(Rule::PersonKg).check(p.mass_kg).err()?;
            let figure = rules.figure(Rule::PersonKg);
            let mass = InTrip::Mass {
                person: p.name.clone(),
                kg: p.mass_kg,
                min_kg: figure.min,
                max_kg: figure.max,
            };
            Some(Fault::new(mass, place.clone()))
        });
    wrong.collect()
}

impl PersonEntry {
    fn person(&self, rules: &Rules) -> Person {
        Person {
            name: self.name.clone(),
            mass_kg: self.mass_kg.unwrap_or(rules[Rule::PersonKg]),
            mass_given: self.mass_kg.is_some(),
        }
    }
}

impl RopeEntry {
    /// A rope of so many metres of which nothing else is known.
    #[must_use]
    pub fn long(length_m: f64) -> Self {
        Self {
            length_m,
            diameter_mm: None,
            name: None,
        }
    }

    fn rope(&self) -> Rope {
        Rope {
            length_m: self.length_m,
            diameter_mm: self.diameter_mm,
            name: self.name.clone(),
        }
    }

    fn faults(&self, place: &Place) -> Vec<Fault> {
        let mut faults = Vec::new();
        let (length_m, [min_m, max_m]) = (self.length_m, ROPE_M);
        if !(min_m..=max_m).contains(&length_m) {
            let within_m = ROPE_M;
            let length = InTrip::RopeLength { length_m, within_m };
            faults.push(Fault::new(length, place.clone()));
        }
        let [min_mm, max_mm] = ROPE_MM;
        let across = self.diameter_mm;
        if let Some(diameter_mm) = across.filter(|d| !(min_mm..=max_mm).contains(d)) {
            let across = InTrip::RopeAcross {
                diameter_mm,
                within_mm: ROPE_MM,
            };
            faults.push(Fault::new(across, place.clone()));
        }
        faults
    }
}

/// Checks what a trip file says on its own, without route and ice.
///
/// # Errors
/// Every figure, mass and rope that cannot be.
pub fn check(trip: &Trip, place: &Place) -> Result<(), Vec<Fault>> {
    let mut laid = Laid::of(Rules::with_practice(&set::Source::Named(
        set::EMBEDDED[0].0,
    ))?);
    trip.lay_over(&mut laid, place, &Origin::Trip)?;
    trip.party(place, &laid.rules)?;
    trip.ropes(place).map(|_| ())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rules() -> Rules {
        Rules::with_practice(&set::Source::Named("arm-span")).unwrap()
    }

    #[test]
    fn a_party_comes_in_three_forms() {
        let place = Place::file("trip.toml");
        let people = |text: &str| {
            trip("trip.toml", text)
                .unwrap()
                .party(&place, &rules())
                .unwrap()
                .unwrap()
        };
        assert_eq!(people("party = 3").people.len(), 3);
        assert_eq!(
            people("party = [82, 75.5]").people[1].mass_kg.to_string(),
            "75.5"
        );
        let named = people("[[party]]\nname = \"Ada\"\nmass_kg = 70\n[[party]]\nname = \"Ben\"\n");
        assert_eq!(
            (named.people[0].name.as_str(), named.people[1].mass_given),
            ("Ada", false)
        );
    }

    #[test]
    fn every_wrong_figure_is_told_with_its_place() {
        let trip = trip("trip.toml", "[assume]\nmargin_m = -5\nmargin = 3\n").unwrap();
        let faults = trip
            .lay_over(
                &mut Laid::of(rules()),
                &Place::file("trip.toml"),
                &Origin::Trip,
            )
            .unwrap_err();
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            told,
            [
                "error[unknown-name]: there is no figure \"margin\"\n  at: trip.toml, `margin`\n  do: `schrund practice arm-span` prints the figures and words there are",
                "error[bad-number]: margin_m -5 m is outside 0 to 1000 m\n  at: trip.toml, `margin_m`",
            ]
        );
    }

    #[test]
    fn every_member_at_fault_is_told_in_the_order_of_the_file() {
        let text = "party = 3\nfoo = 1\nstages = 2\nrope = [60]\n";
        let told: Vec<String> = trip("t.toml", text)
            .unwrap_err()
            .iter()
            .map(ToString::to_string)
            .collect();
        assert_eq!(
            told,
            [
                "error[unknown-name]: a trip file has no `foo`\n  at: t.toml, line 2 column 1, `foo`\n  do: `schrund new DIR` writes a trip file that shows every member",
                "error[unknown-name]: a trip file has no `stages`\n  at: t.toml, line 3 column 1, `stages`\n  do: perhaps `stage` is meant; figures go under [assume]",
                "error[bad-trip]: `rope` is not in a form that is understood\n  at: t.toml, line 4 column 1, `rope`\n  do: it takes [[rope]] blocks with `length_m`, and `diameter_mm` and `name` where known",
            ]
        );
    }

    #[test]
    fn a_member_that_means_nothing_is_refused_with_its_line() {
        let fault = &trip("trip.toml", "gap_m = 6\nropes = 3\n").unwrap_err()[0];
        assert_eq!(fault.at.to_string(), "trip.toml, line 2 column 1, `ropes`");
    }
}
