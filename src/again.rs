//! What one plan leaves for the next, for those who plan again and again: falls that were followed. It changes no plan.

use std::sync::PoisonError;

use crate::{Planner, physics::hold_dynamic::Followed};

impl Planner<'_> {
    /// The same planner, which finds these falls followed: who plans again and again waits less, for the same plan.
    ///
    /// ```
    /// use schrund::{Planner, example, physics::hold_dynamic::Followed};
    ///
    /// let job = example::job()?;
    /// let first = Planner::new(&job)?.knowing(Followed::default());
    /// let plan = first.plan()?;
    /// let followed = first.followed();
    /// let falls = followed.falls();
    /// let second = Planner::new(&job)?.knowing(followed);
    /// assert_eq!(second.plan()?, plan);
    /// assert_eq!((second.followed().falls(), falls > 0), (falls, true), "no fall was followed twice");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
    #[must_use]
    pub fn knowing(self, followed: Followed) -> Self {
        self.known().slopes.followed = followed.kept();
        self
    }

    /// The falls that were followed so far, for the next planner.
    #[must_use]
    pub fn followed(self) -> Followed {
        let falls = self.falls.into_inner();
        let known = falls.unwrap_or_else(PoisonError::into_inner);
        known.slopes.followed.kept()
    }
}
