//! What plans leave for those after them, for whoever plans again and again. It changes no plan.

use std::sync::{Mutex, MutexGuard, PoisonError};

use crate::{
    Planner,
    fault::Fault,
    ground::known::KnownLines,
    physics::hold_dynamic::Followed,
    plan::{Plan, depth::Depth},
    trip::job::{Brief, Job},
};

/// What was found out for earlier plans: falls that were followed, and the ground under the line of the last one.
///
/// ```
/// use schrund::{Memory, Planner, example};
///
/// let (job, memory) = (example::pair()?, Memory::default());
/// let first = Planner::after(&job, &memory)?;
/// let plan = first.plan()?;
/// first.leave();
/// let falls = memory.falls();
///
/// let second = Planner::after(&job, &memory)?;
/// assert_eq!(second.plan()?, plan);
/// second.leave();
/// assert_eq!((memory.falls(), falls > 0), (falls, true), "no fall was followed twice");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug, Default)]
pub struct Memory {
    followed: Mutex<Followed>,
    lines: KnownLines,
}

impl Memory {
    /// How many falls are known.
    #[must_use]
    pub fn falls(&self) -> usize {
        self.followed().falls()
    }

    fn followed(&self) -> MutexGuard<'_, Followed> {
        self.followed.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl<'j> Planner<'j> {
    /// The same planner as [`Planner::new`], which knows what earlier ones found out: who plans again and again waits
    /// less, for the same plan.
    ///
    /// # Errors
    /// See [`Planner::new`].
    pub fn after(job: &'j Job, memory: &'j Memory) -> Result<Self, Vec<Fault>> {
        let planner = Self::on(job.case(), memory.lines.clone())?;
        planner.recalling(memory);
        Ok(Self {
            memory: Some(memory),
            ..planner
        })
    }

    /// Takes over the falls that were followed for others.
    pub(crate) fn recalling(&self, memory: &Memory) {
        self.known().slopes.followed = memory.followed().before();
    }

    /// Plans the legs for the same line with other choices, again and again.
    pub(crate) fn beside(&self) -> impl Fn(Brief<'_>) -> Result<Plan, Vec<Fault>> {
        let (lines, memory) = (self.ice.lines.clone(), Memory::default());
        move |case| {
            let planner = Planner::on(case, lines.clone())?;
            planner.recalling(&memory);
            let plan = planner.to(Depth::Legs);
            planner.passing_on(&memory);
            plan
        }
    }

    /// Leaves what it found out to the planners after it.
    pub fn leave(self) {
        if let Some(memory) = self.memory {
            self.passing_on(memory);
        }
    }

    /// Leaves the falls that it followed to others.
    pub(crate) fn passing_on(self, memory: &Memory) {
        let falls = self.falls.into_inner();
        let known = falls.unwrap_or_else(PoisonError::into_inner);
        let mut followed = memory.followed();
        // What it holds is the same falls: let go first, they are taken over and not copied.
        *followed = Followed::default();
        *followed = known.slopes.followed.kept();
    }
}
