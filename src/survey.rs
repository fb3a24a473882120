//! Many tracks over one set of outlines: the ice is made ready once, each track is told in figures.

mod along;
mod apart;

pub use apart::{SAME_WAY_M, apart};

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::{
    Memory, Planner, cores,
    fault::Fault,
    ground::{
        known::KnownLines,
        met::{Met, MetStage, Prepared},
    },
    meet::{Ice, contact::Of},
    plan::{depth::Depth, leg::Leg, track::TrackFacts, verdict::Verdict},
    trip::{
        job::{Brief, Job},
        route::{Route, Stretch},
        zone::Zone,
    },
    whole::worked::Worked,
};

/// Ice that was read for one line alone; nothing where the job's counts.
///
/// ```
/// use schrund::{Survey, example, survey::IceNear};
///
/// let job = example::pair()?;
/// let survey = Survey::over(&job);
/// let near = IceNear { zones: Some(&job.zones), glaciers: Some(&job.glaciers) };
/// assert_eq!(survey.of_line_near(&job.route, near)?, survey.of(&job.route)?);
/// let nothing = IceNear { zones: Some(&[]), glaciers: Some(&[]) };
/// assert_eq!(survey.of_line_near(&job.route, nothing)?.legs_roped, 0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct IceNear<'a> {
    /// Drawn zones.
    pub zones: Option<&'a [Zone]>,
    /// Ice of an inventory.
    pub glaciers: Option<&'a [Zone]>,
}

/// The ice, the party and the rules of a job, for any number of lines.
///
/// It can be asked from many threads at once; what one of them makes ready of the ice serves all.
///
/// ```
/// use schrund::{Survey, example, plan::verdict::Verdict};
///
/// let (job, pair) = (example::job()?, example::pair()?);
/// let survey = Survey::over(&pair);
/// let its_own = survey.of(&pair.route)?;
/// assert_eq!(its_own.legs_roped, 2);
/// // A track that meets no ice is an answer here, and no fault.
/// let beside = survey.of(&job.route)?;
/// assert_eq!((beside.ice_m, beside.crossings, beside.verdict), (0.0, 0, Verdict::Unroped));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct Survey<'j> {
    job: &'j Job,
    zones: Arc<Ice<'j>>,
    glaciers: Arc<Ice<'j>>,
    /// One for each thread that asks at once.
    memories: Mutex<Vec<Memory>>,
}

impl<'j> Survey<'j> {
    /// Makes the ice of a job ready; its route and halts are not looked at.
    #[must_use]
    pub fn over(job: &'j Job) -> Self {
        Self {
            job,
            zones: Arc::new(Ice::of(&job.zones)),
            glaciers: Arc::new(Ice::of(&job.glaciers)),
            memories: Mutex::default(),
        }
    }

    /// What is known of a line.
    ///
    /// # Errors
    /// The party cannot go, or a terrain file is broken where it is read.
    pub fn of(&self, route: &Route) -> Result<TrackFacts, Vec<Fault>> {
        self.of_line_near(route, IceNear::default())
    }

    /// The same, where ice near the line was read for it alone: that stands in the place of the job's.
    ///
    /// # Errors
    /// As [`Survey::of`].
    pub fn of_line_near(&self, route: &Route, near: IceNear<'_>) -> Result<TrackFacts, Vec<Fault>> {
        let own = self.job.case();
        let case = Brief {
            route,
            halts: &[],
            zones: near.zones.unwrap_or(own.zones),
            glaciers: near.glaciers.unwrap_or(own.glaciers),
            ..own
        };
        let zones = near.zones.map(|zones| Arc::new(Ice::of(zones)));
        let glaciers = near.glaciers.map(|ice| Arc::new(Ice::of(ice)));
        let ice = [
            zones.unwrap_or_else(|| Arc::clone(&self.zones)),
            glaciers.unwrap_or_else(|| Arc::clone(&self.glaciers)),
        ];
        self.told(case, ice)
    }

    fn told<'a>(
        &'a self,
        case: Brief<'a>,
        [zones, glaciers]: [Arc<Ice<'a>>; 2],
    ) -> Result<TrackFacts, Vec<Fault>> {
        let ice = Prepared {
            zones,
            glaciers,
            lines: KnownLines::default(),
        };
        let met = Met::of(&case, &ice).map_err(|fault| vec![fault])?;
        let planner = Planner::having_met(case, ice, met);
        let memory = self.memories().pop().unwrap_or_default();
        planner.recalling(&memory);
        let told = planner.remembering(|falls| {
            planner.worked_to(&planner.case, Depth::Legs, falls, |worked| {
                facts(&planner, &worked)
            })
        });
        planner.passing_on(&memory);
        self.memories().push(memory);
        told
    }

    /// What is known of many tracks, on all cores where threads are allowed, in the order in which they were given: `told` holds
    /// one of them, by [`Survey::of`] or [`Survey::of_line_near`].
    pub fn each<T: Sync>(
        &self,
        tracks: &[T],
        told: impl Fn(&Self, &T) -> Result<TrackFacts, Vec<Fault>> + Send + Sync,
    ) -> Vec<Result<TrackFacts, Vec<Fault>>> {
        cores::map(tracks, |track| told(self, track))
    }

    fn memories(&self) -> MutexGuard<'_, Vec<Memory>> {
        self.memories.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn facts(planner: &Planner<'_>, worked: &Worked<'_>) -> TrackFacts {
    let (route, legs) = (planner.case.route, &worked.planned);
    let met = || route.stages.iter().zip(&planner.met.stages);
    let ice = || met().flat_map(|(_, stage)| &stage.ice);
    let hidden_ice: Vec<(usize, Stretch)> = met()
        .flat_map(|(stage, met)| {
            let hidden = hidden(met, planner.case.zones);
            hidden.into_iter().map(|stretch| (stage.number, stretch))
        })
        .collect();
    let roped = || legs.iter().filter(|leg| leg.roped);
    let sum = |of: fn(&Leg) -> Option<f64>| legs.iter().map(of).sum::<Option<f64>>();
    TrackFacts {
        name: route.name.clone(),
        stages: route.stages.len(),
        length_m: route.length_m(),
        ascent_m: sum(|leg| leg.ascent_m),
        descent_m: sum(|leg| leg.descent_m),
        ice_m: ice().map(Stretch::length_m).sum(),
        hidden_ice_m: hidden_ice.iter().map(|(_, s)| s.length_m()).sum(),
        crossings: ice().count(),
        longest_crossing_m: ice().map(Stretch::length_m).fold(0.0, f64::max),
        widest_gap_m: most(roped().filter_map(|leg| leg.gap_m)),
        gaps_unknown: roped().any(|leg| !leg.gap_known || leg.gap_assumed),
        legs_roped: roped().count(),
        roped_m: roped().map(|leg| leg.length_m).sum(),
        along_m: along::along_m(planner, legs),
        steepest_roped_deg: most(roped().filter_map(|leg| leg.steepest_deg)),
        verdict: legs
            .iter()
            .map(|leg| leg.verdict)
            .max()
            .unwrap_or(Verdict::Unroped),
        time_min: legs.iter().map(Leg::all_min).sum(),
        hidden_ice,
    }
}

fn most(figures: impl Iterator<Item = f64>) -> Option<f64> {
    figures.reduce(f64::max)
}

/// Where a stage is on ice that hides its gaps, in walking order.
fn hidden(met: &MetStage, zones: &[Zone]) -> Vec<Stretch> {
    let hides = |of: Of| of.zone().is_none_or(|zone| zones[zone].hides_gaps());
    let hidden = met.contacts.iter().filter(|contact| hides(contact.of));
    Stretch::merged(
        hidden
            .flat_map(|contact| contact.crossings.clone())
            .collect(),
        0.0,
    )
}
