//! The form of a trip file, and what it changes among figures, words and times.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{
    assume::{self, Assume},
    folk::Folk,
    halts::HaltEntry,
    laid::Laid,
    ropes::RopeEntry,
    stage::StageWord,
};
use crate::{
    fault::{Fault, Place, trip::InTrip},
    physics::assumed::Snow,
    practice::{Chosen, Cover, Knots, Origin, Pace, Reserve, Travel, UndrawnIce, toml_text::told},
    trip::{
        clock::Clock,
        day::{Day, UtcOffset},
        language::Language,
        party::EmergencyContact,
    },
};

/// What a trip file can hold. All of it is optional; flags win over it.
///
/// ```
/// use schrund::{fault::Place, practice::Knots, read::trip::{Trip, check, trip}};
///
/// let said: Trip = trip("trip.toml", "party = 3\nknots = \"always\"\n[assume]\nmargin_m = 35\nperson_kg = 900\n")?;
/// assert_eq!(said.knots, Some(Knots::Always));
/// let faults = check(&said, &Place::file("trip.toml"), &Default::default()).expect_err("nobody weighs 900 kg");
/// assert_eq!(faults.len(), 1, "the margin is good");
/// assert_eq!(faults[0].at.property.as_deref(), Some("person_kg"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Trip {
    /// What the leader calls the trip.
    pub name: Option<String>,
    /// The language of what is printed: `en` or `de`.
    #[schemars(with = "Option<String>")]
    pub language: Option<Language>,
    /// Name of a practice set, or path of a practice file.
    pub practice: Option<String>,
    /// How many go, their masses with pack in kg, or each with a name.
    pub party: Option<Folk>,
    /// How many go on each rope: `[3, 2]`, the heavier people spread over them; without it the party is split as is taught.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub teams: Vec<f64>,
    /// The ropes at hand; without it nobody said which there are, and what is needed is told.
    pub rope: Option<Vec<RopeEntry>>,
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
    /// What is done on ice of the inventory on which no zone is drawn: `rope` (default) or `tell`.
    #[schemars(with = "Option<String>")]
    pub undrawn_ice: Option<UndrawnIce>,
    /// By which rule walking times are reckoned: `din`, `munter` or `naismith`.
    #[schemars(with = "Option<String>")]
    pub pace: Option<Pace>,
    /// Whether a strike proposed from the terrain model counts; it can only make a plan more careful.
    pub use_proposed_strike: Option<bool>,
    /// When each stage is started: `"04:30"`.
    #[schemars(with = "Option<String>")]
    pub start: Option<Clock>,
    /// Where that hour counts, kilometres from where a stage begins, for who is under way already: `4.5`. Without it there.
    pub start_at_km: Option<f64>,
    /// Until when snow bridges are trusted: `"10:00"`.
    #[schemars(with = "Option<String>")]
    pub bridges_until: Option<Clock>,
    /// When the line is to be done: `"16:00"`. The latest time to turn round is reckoned back from it.
    #[schemars(with = "Option<String>")]
    pub back_by: Option<Clock>,
    /// The day of the trip: `"2027-07-14"`. It gives sunrise and sunset.
    #[schemars(with = "Option<String>")]
    pub date: Option<Day>,
    /// How far its clocks are from UTC: `"+02:00"`. Without it sunrise and sunset are told in UTC.
    #[schemars(with = "Option<String>")]
    pub utc_offset: Option<UtcOffset>,
    /// Where the party halts, and for how long.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub halt: Vec<HaltEntry>,
    /// Terrain models, paths relative to the folder of this file.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub terrain: Vec<String>,
    /// A glacier inventory (GeoJSON), its path relative to the folder of this file.
    pub glaciers: Option<String>,
    /// Whom to call in an emergency; printed on the report.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub emergency: Vec<EmergencyContact>,
    /// What the team stands on where there is snow: soft, settled, firm, refrozen or ice.
    #[schemars(with = "Option<String>")]
    pub snow: Option<Snow>,
    /// Figures and words to change, by the names that a plan lists them under; names with dots may be tables.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub assume: BTreeMap<String, Assume>,
}

/// The files a trip asks for, as it names them.
///
/// ```
/// use schrund::read::trip::{TripFiles, trip};
///
/// let said = trip("trip.toml", "practice = \"club.toml\"\nterrain = [\"N66E002.hgt\"]\n")?;
/// let practice = Some("club.toml".to_owned());
/// let files = TripFiles { practice, terrain: vec!["N66E002.hgt".to_owned()], glaciers: None };
/// assert_eq!(said.files(), files, "whoever reads the trip opens them; the library does not");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TripFiles {
    /// Name of a practice set, or a practice file.
    pub practice: Option<String>,
    /// Terrain models.
    pub terrain: Vec<String>,
    /// A glacier inventory.
    pub glaciers: Option<String>,
}

/// What stands before the name of a figure or word that is given beside the trip file.
const ASSUMED: &str = "assume.";

impl Trip {
    /// The files it asks for; whoever reads the trip opens them.
    #[must_use]
    pub fn files(&self) -> TripFiles {
        TripFiles {
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
            undrawn_ice: self.undrawn_ice,
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
        timetable.start.set(self.start.map(Some), *origin);
        timetable
            .start_at_km
            .set(self.start_at_km.map(Some), *origin);
        let until = self.bridges_until.map(Some);
        timetable.bridges_until.set(until, *origin);
        timetable.back_by.set(self.back_by.map(Some), *origin);
        timetable.date.set(self.date.map(Some), *origin);
        timetable.utc_offset.set(self.utc_offset.map(Some), *origin);
        let figures = self.assume.iter().flat_map(|(name, a)| a.figures(name));
        let set = |(name, value): (String, &Assume)| {
            let why = assume::set(laid, &name, value, place, origin).err()?;
            Some((name, why))
        };
        let not_set: Vec<_> = figures.filter_map(set).collect();
        let by_flag = *origin == Origin::Flag;
        let mut faults = told(not_set, |(name, why)| {
            let fault = why.fault(&name, &laid.rules, place);
            let at = fault.at.property.as_deref().filter(|_| by_flag);
            let at = at.map(|name| place.clone().with_property(format!("{ASSUMED}{name}")));
            Fault {
                at: at.unwrap_or(fault.at.clone()),
                ..fault
            }
        });
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
}
