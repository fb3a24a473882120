//! Halts as places, for maps and devices.

use crate::{
    geometry::LonLat,
    plan::part::LegPart,
    say::{arg::Arg, span::Said, voice::Voice},
    trip::clock::Clock,
    write::{parts::clock, sheet::Sheet},
};

/// A place where the leader halts.
///
/// ```
/// use schrund::{say::voice::Voice, trip::halt::Halt, write::{Scene, Sheet, parts::halt::halts}};
///
/// let mut job = schrund::example::job()?;
/// job.halts.push(Halt { stage: 1, at_m: 1500.0, minutes: 20.0, name: Some("Firn edge".to_owned()) });
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let found = halts(&Sheet::of(&job, &plan, &scene));
/// assert_eq!(found[0].title(Voice::default()).to_string(), "Halt \"Firn edge\", 20 min");
/// assert_eq!((found.len(), found[0].leg, found[0].at_m), (1, 2, 1500.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct HaltPoint<'a> {
    /// Number from 1 over the whole plan.
    pub number: usize,
    /// Number of the stage.
    pub stage: usize,
    /// The leg that it lies on.
    pub leg: usize,
    /// Chainage of the first person.
    pub at_m: f64,
    /// Where it is.
    pub at: LonLat,
    /// When the team is there; absent where nobody said when to start.
    pub arrive: Option<Clock>,
    /// When it goes on.
    pub depart: Option<Clock>,
    /// The part of the leg that ends here.
    pub part: &'a LegPart,
}

impl HaltPoint<'_> {
    /// `Halt "Summit", 20 min`.
    #[must_use]
    pub fn title(&self, voice: Voice) -> Said {
        let minutes = ("minutes", Arg::Minutes(self.part.halt_min));
        match &self.part.name {
            Some(name) => voice.say("halt-title-named", &[("name", Arg::Name(name)), minutes]),
            None => voice.say("halt-title", &[minutes]),
        }
    }

    /// `Halt at 4.20 km, 2310 m: 09:10 to 09:40.`
    #[must_use]
    pub fn description(&self, voice: Voice) -> Said {
        clock::halt(self.part, voice).capital().then(".")
    }
}

/// All halts in walking order; a turn without a halt is none.
#[must_use]
pub fn halts<'a>(sheet: &Sheet<'a>) -> Vec<HaltPoint<'a>> {
    let parts = sheet.plan.legs.iter();
    let parts = parts.flat_map(|leg| leg.parts.iter().map(move |part| (leg, part)));
    let halted = parts.filter(|(_, part)| part.halt_min > 0.0);
    let placed = halted.filter_map(|(leg, part)| {
        let stages = &sheet.route.stages;
        let stage = stages.iter().find(|stage| stage.number == leg.stage)?;
        Some((leg, part, stage.at(part.to_m)?))
    });
    placed
        .enumerate()
        .map(|(i, (leg, part, at))| HaltPoint {
            number: i + 1,
            stage: leg.stage,
            leg: leg.leg,
            at_m: part.to_m,
            at: at.normal(),
            arrive: part.arrive,
            depart: part.arrive.map(|arrive| arrive.after(part.halt_min)),
            part,
        })
        .collect()
}
