//! Which stage of a route is planned.

use serde::Deserialize;

use crate::{
    fault::{
        Fault, Item, Place, name,
        trip::{Asked, InTrip},
    },
    trip::route::{Route, Stage},
};

/// A stage by number or name.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, schemars::JsonSchema)]
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

    /// The route with this stage alone.
    ///
    /// # Errors
    /// The route has no such stage.
    pub fn of(&self, route: Route) -> Result<Route, Fault> {
        let known = |stage: &Stage| (stage.number, stage.name.clone());
        let has = route.stages.iter().map(known).collect();
        let stages = route.stages.into_iter();
        let stages: Vec<Stage> = stages.filter(|s| self.is(s)).collect();
        if stages.is_empty() {
            let asked = self.asked();
            let no_stage = InTrip::NoStage { asked, has };
            return Err(Fault::new(no_stage, Place::item(Item::Stage)));
        }
        Ok(Route {
            name: route.name,
            stages,
        })
    }

    fn is(&self, stage: &Stage) -> bool {
        match self {
            Self::Number(number) => *number == stage.number,
            Self::Name(name) => stage.name.as_deref() == Some(name.as_str()),
        }
    }

    fn asked(&self) -> Asked {
        match self {
            Self::Number(number) => Asked::Number(*number),
            Self::Name(name) => Asked::Name(name.clone()),
        }
    }
}
