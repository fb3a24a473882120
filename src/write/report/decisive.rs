//! Which assumptions decide whether a fall of this plan is held.

use std::collections::BTreeSet;

use crate::plan::{Assumption, Plan};

/// The names that begin those of the assumptions that decide: `snow.settled.mu_after.`, `delay_s.`.
pub(super) struct Decisive(BTreeSet<String>);

impl Decisive {
    pub(super) fn of(plan: &Plan) -> Self {
        let teams = plan.legs.iter().flat_map(|leg| &leg.teams);
        let arrests = teams.filter_map(|team| team.arrest.as_ref());
        let names = arrests.flat_map(|arrest| {
            arrest.depends_on.iter().flat_map(|parameter| {
                let name = parameter.as_str();
                let of_snow = format!("snow.{}.{name}.", arrest.snow.as_str());
                [of_snow, format!("{name}.")]
            })
        });
        Self(names.collect())
    }

    pub(super) fn decides(&self, assumption: &Assumption) -> bool {
        let name = &assumption.name;
        self.0.iter().any(|begin| name.starts_with(begin.as_str()))
    }
}
