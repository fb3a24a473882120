//! Which stage of a route is planned.

use serde::{Deserialize, Serialize};

use crate::{
    fault::{
        Fault, Place, name,
        trip::{Asked, InTrip},
    },
    trip::route::{Route, Stage},
};

/// A stage by number or name.
///
/// ```
/// use schrund::{fault::Place, read::trip::StageWord};
///
/// assert_eq!(StageWord::parse("2"), StageWord::Number(2));
/// let named = StageWord::parse("Invented glacier");
/// let said = Place::file("trip.toml");
/// let route = named.of(schrund::example::job()?.route, &said).map_err(|fault| vec![fault])?;
/// assert_eq!(route.stages.len(), 1);
/// let fault = StageWord::Number(2).of(route, &said).expect_err("it has one stage");
/// assert_eq!(fault.at, said.with_property("stage"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(untagged)]
pub enum StageWord {
    /// By number, from 1.
    Number(usize),
    /// By name.
    Name(String),
}

impl StageWord {
    /// A number where it is one, else a name.
    #[must_use]
    pub fn parse(text: &str) -> Self {
        text.parse().map_or_else(
            |_| Self::Name(name::tidy(text).unwrap_or_default()),
            Self::Number,
        )
    }

    /// The route with this stage alone; `place` is where it was said.
    ///
    /// # Errors
    /// The route has no such stage.
    pub fn of(&self, route: Route, place: &Place) -> Result<Route, Fault> {
        if let Some(fault) = self.missing(&route, place) {
            return Err(fault);
        }
        let mut route = route;
        let stages = std::mem::take(&mut route.stages);
        let stages = stages.into_iter().filter(|s| self.is(s)).collect();
        Ok(Route { stages, ..route })
    }

    /// That the route has no such stage, where it has none.
    #[must_use]
    pub fn missing(&self, route: &Route, place: &Place) -> Option<Fault> {
        if route.stages.iter().any(|stage| self.is(stage)) {
            return None;
        }
        let known = |stage: &Stage| (stage.number, stage.name.clone());
        let has = route.stages.iter().map(known).collect();
        let asked = self.asked();
        let place = place.clone().with_property("stage");
        Some(Fault::new(InTrip::NoStage { asked, has }, place))
    }

    pub(super) fn is(&self, stage: &Stage) -> bool {
        match self {
            Self::Number(number) => *number == stage.number,
            Self::Name(name) => stage.name.as_deref() == Some(name.as_str()),
        }
    }

    pub(super) fn asked(&self) -> Asked {
        match self {
            Self::Number(number) => Asked::Number(*number),
            Self::Name(name) => Asked::Name(name.clone()),
        }
    }
}
