//! Which stage of a route is planned.

use serde::Deserialize;

use crate::{
    fault::{Code, Place, Problem},
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
        text.parse()
            .map_or_else(|_| Self::Name(text.to_owned()), Self::Number)
    }

    /// The route with this stage alone.
    ///
    /// # Errors
    /// The route has no such stage.
    pub fn of(&self, route: Route) -> Result<Route, Problem> {
        let labels: Vec<String> = route.stages.iter().map(Stage::label).collect();
        let stages = route.stages.into_iter();
        let stages: Vec<Stage> = stages.filter(|s| self.is(s)).collect();
        if stages.is_empty() {
            let says = format!("the route has no such stage: {}", self.shown());
            let hint = format!("it has {}", labels.join(", "));
            return Err(Problem::new(Code::UnknownName, Place::item("stage"), says).hint(hint));
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

    fn shown(&self) -> String {
        match self {
            Self::Number(n) => n.to_string(),
            Self::Name(name) => format!("\"{name}\""),
        }
    }
}
