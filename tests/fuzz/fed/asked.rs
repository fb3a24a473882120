//! What a page asks, as `schrund page` answers it, but of parcels and not of files.

use schrund::{
    Job, Memory, Planner, example,
    fault::Fault,
    ground::relief::Relief,
    plan::depth::Depth,
    practice::{Rules, set},
    read::{
        geojson::KnownShapes,
        input::Input,
        lay,
        trip::{Trip, toml_of_json},
    },
    say::{interface::Interface, voice::Voice},
    trip::route::Route,
    write::{
        Look, Sheet,
        page::{ground, panel, trip, ways},
    },
};

use crate::parcel::Parcel;

/// An answer, or why there is none.
pub type Answer = Result<String, Vec<Fault>>;

/// The parts of a panel that can be open.
pub const PARTS: [&str; 15] = [
    "figures",
    "findings",
    "legs",
    "carry",
    "changes",
    "clock",
    "ropes",
    "zones",
    "limits",
    "holding",
    "field",
    "gear",
    "party",
    "cautions",
    "assumptions",
];
/// A part that is there whatever a plan was asked for.
const FIELD: &str = "field";
/// A gap width for outlines whose gaps nobody asks for.
const UNASKED_M: Option<f64> = Some(0.0);

/// A page with what it remembers from answer to answer.
#[derive(Debug)]
pub struct Asked<'p> {
    parcel: &'p Parcel<'p>,
    memory: Memory,
    shapes: KnownShapes,
}

impl<'p> Asked<'p> {
    /// A page that holds these files and was asked nothing yet.
    #[must_use]
    pub fn of(parcel: &'p Parcel<'p>) -> Self {
        Self {
            parcel,
            memory: Memory::default(),
            shapes: KnownShapes::default(),
        }
    }

    fn job(&self) -> Result<Job, Vec<Fault>> {
        self.parcel.job(Some(&self.shapes))
    }

    /// The line, the ground round it, the inventory.
    ///
    /// # Errors
    /// What is wrong with terrain or inventory.
    pub fn ground(&self) -> Answer {
        let parcel = self.parcel;
        let asked = parcel.trip().source.map(|trip| trip.files());
        let route = lay::route(parcel.text("route", example::ROUTE_GPX));
        let route = route.map_or_else(|_| Route::new(None, Vec::new()), |read| read.value);
        let terrain = lay::terrain(parcel.terrain(&asked.unwrap_or_default()))?.value;
        let relief = Relief::around(&route, &terrain).map_err(|fault| vec![fault])?;
        let ice = parcel.get("glaciers");
        let ice = ice.map(|ice| lay::zones(Input::text("glaciers", ice), UNASKED_M));
        let ice = ice.transpose()?.map(|ice| ice.value).unwrap_or_default();
        Ok(json(ground::json(&route, relief.as_ref(), &ice)))
    }

    /// A plan for map and panel with these parts open.
    ///
    /// # Errors
    /// Why there is none.
    pub fn panel(&self, open: &[String]) -> Answer {
        let job = self.job()?;
        let planner = Planner::after(&job, &self.memory)?;
        let depth = match open.iter().all(|id| id == FIELD) {
            true => Depth::Frozen,
            false => Depth::Whole,
        };
        let (plan, scene) = (planner.to(depth)?, planner.profiles());
        let look = Look {
            voice: voice(&job),
            ..Look::default()
        };
        let sheet = Sheet {
            look,
            ..Sheet::of(&job, &plan, &scene)
        };
        let answer = json(panel::planned(&sheet, &job.notices, open));
        planner.leave();
        Ok(answer)
    }

    /// Ways to split the party and use the ropes.
    ///
    /// # Errors
    /// Why there is none.
    pub fn ways(&self) -> Answer {
        let job = self.job()?;
        let options = Planner::after(&job, &self.memory)?.options()?;
        Ok(json(ways::json(&options, voice(&job))))
    }

    /// What the trip file says, and all that it could.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn trip(&self) -> Answer {
        let said = Trip::default().over(self.parcel.trip().source?);
        let name = said.practice.as_deref().unwrap_or(set::EMBEDDED[0].0);
        let rules = Rules::with_practice(&set::Source::Named(name))?;
        let voice = Voice {
            language: said.language.unwrap_or_default(),
            ..Voice::default()
        };
        let answer = said
            .json()
            .and_then(|said| trip::json(&said, &rules, voice));
        Ok(json(answer))
    }

    /// A trip in JSON as a file; nothing where it is no JSON.
    #[must_use]
    pub fn toml(&self) -> String {
        let text = String::from_utf8_lossy(self.parcel.get("trip").unwrap_or_default());
        toml_of_json(&text).unwrap_or_default()
    }
}

fn json(written: serde_json::Result<String>) -> String {
    written.unwrap_or_else(|why| panic!("{why}"))
}

fn voice(job: &Job) -> Voice {
    Voice {
        language: job.language,
        interface: Interface::Page,
        ..Voice::default()
    }
}
