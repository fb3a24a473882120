//! Something that must be said: where it belongs and what it is, in numbers and names.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};
use serde_json::Value;

use crate::{
    fault::{Fault, Level, Place},
    plan::{fact::Fact, name::ZoneName},
};

/// Something that must be said. What it reads like is made by [`crate::say`], and only there.
///
/// ```
/// use schrund::plan::{fact::Fact, finding::{At, Finding, JobPart}};
///
/// let finding = Finding::new(At::Part { of: JobPart::Route }, Fact::NoHeights {});
/// assert_eq!(finding.code(), "no-heights");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Where it belongs.
    pub at: At,
    /// What it is.
    pub what: What,
}

/// What was found.
///
/// ```
/// use schrund::{fault::Code, plan::finding::What};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// // The reader of the line saw a jump; a leader reads the plan, so it stands there.
/// let read = plan.findings.iter().filter_map(|finding| match &finding.what {
///     What::Read(notice) => Some(notice.kind()),
///     What::Planned(_) => None,
/// });
/// assert!(read.collect::<Vec<_>>().contains(&Code::Jump));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// By planning.
    Planned(Fact),
    /// By reading the inputs.
    Read(Fault),
}

/// Where a finding belongs.
///
/// ```
/// use schrund::plan::finding::At;
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// for leg in &plan.legs {
///     assert!(leg.findings.iter().all(|finding| finding.at.leg() == Some(leg.leg)));
/// }
/// // What is said of the whole belongs to no leg.
/// assert!(plan.findings.iter().all(|finding| !matches!(finding.at, At::Leg(_))));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum At {
    /// A leg, or a place on it.
    Leg(LegPlace),
    /// Several legs.
    Legs {
        /// Their numbers.
        legs: Vec<usize>,
    },
    /// A stage, or a place on it.
    Stage(StagePlace),
    /// A zone.
    Zone(ZoneName),
    /// A part of the job that is no place on the line.
    Part {
        /// Which.
        of: JobPart,
    },
    /// A place in a file.
    Input(Place),
}

/// A leg, or a place on it.
///
/// ```
/// use schrund::plan::finding::At;
///
/// let job = schrund::example::pair()?;
/// let plan = schrund::plan(&job)?;
/// let place = plan.legs[0].findings.iter().find_map(|finding| match &finding.at {
///     At::Leg(place) if finding.code() == "ice-without-a-gap-width" => Some(place),
///     _ => None,
/// });
/// let place = place.expect("the inventory has ice below the lower step");
/// let begins = job.route.stages[0].at(place.from_m).expect("on the line");
/// assert!((begins.lat_deg - place.lon_lat[1]).abs() < 1e-9, "ready for a map");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LegPlace {
    /// Number of the leg.
    pub leg: usize,
    /// Number of the rope team, where there are several and it holds for this one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub team: Option<usize>,
    /// Number of the stage.
    pub stage: usize,
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres; the same for a single place.
    pub to_m: f64,
    /// Longitude and latitude of where it begins.
    pub lon_lat: [f64; 2],
    /// Height there, metres; absent where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height_m: Option<f64>,
}

/// A stage.
///
/// ```
/// use schrund::plan::finding::{At, StagePlace};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let heights = plan.findings.iter().find(|finding| finding.code() == "heights-compared");
/// let stage = StagePlace { stage: 1, name: Some("Invented steps".to_owned()) };
/// assert_eq!(heights.map(|finding| &finding.at), Some(&At::Stage(stage)));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct StagePlace {
    /// Number of the stage.
    pub stage: usize,
    /// What the file calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
}

/// Parts of a job.
///
/// ```
/// use schrund::plan::finding::{At, JobPart};
///
/// let mut job = schrund::example::job()?;
/// job.ropes.clear();
/// let plan = schrund::plan(&job)?;
/// let finding = plan.findings.iter().find(|finding| finding.code() == "no-rope-named");
/// assert_eq!(finding.map(|f| &f.at), Some(&At::Part { of: JobPart::Ropes }));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum JobPart {
    /// The line.
    Route,
    /// The ice.
    Zones,
    /// The ropes at hand.
    Ropes,
    /// The terrain models.
    Terrain,
}

impl Finding {
    /// Something that planning found.
    #[must_use]
    pub fn new(at: At, fact: Fact) -> Self {
        Self {
            at,
            what: What::Planned(fact),
        }
    }

    /// The fact, where planning found it.
    #[must_use]
    pub fn fact(&self) -> Option<&Fact> {
        match &self.what {
            What::Planned(fact) => Some(fact),
            What::Read(_) => None,
        }
    }

    /// Its kind; `schrund check --explain CODE` tells more.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match &self.what {
            What::Planned(fact) => fact.code(),
            What::Read(notice) => notice.code(),
        }
    }

    /// How much it matters.
    #[must_use]
    pub fn level(&self) -> Level {
        match &self.what {
            What::Planned(fact) => fact.level(),
            What::Read(notice) => notice.level(),
        }
    }

    /// One finding for two places of which the same is said, with a cure that holds at both; `None` where another one is named.
    #[must_use]
    pub fn for_both(&self, other: &Self) -> Option<Self> {
        let (What::Planned(one), What::Planned(two)) = (&self.what, &other.what) else {
            return Some(self.clone());
        };
        let what = What::Planned(one.for_both(two)?);
        Some(Self {
            at: self.at.clone(),
            what,
        })
    }

    /// For sorting: what can kill first comes first, what was read after what was planned.
    #[must_use]
    pub fn alarm(&self) -> (Level, usize) {
        match &self.what {
            What::Planned(fact) => (fact.level(), fact.alarm()),
            What::Read(notice) => (notice.level(), usize::MAX),
        }
    }

    /// The numbers, names and texts that belong to it, by name, as those of a [`Fault`].
    #[must_use]
    pub fn values(&self) -> Value {
        match &self.what {
            What::Planned(fact) => fact.values(),
            What::Read(notice) => notice.values(),
        }
    }

    /// What its kind means and what to do, in a few sentences.
    #[must_use]
    pub fn explain(&self) -> String {
        match &self.what {
            What::Planned(fact) => fact.explain(),
            What::Read(notice) => notice.explain(),
        }
    }
}

/// A notice from reading an input.
impl From<Fault> for Finding {
    fn from(notice: Fault) -> Self {
        Self {
            at: At::Input(notice.at.clone()),
            what: What::Read(notice),
        }
    }
}

impl At {
    /// The leg, where it belongs to just one.
    #[must_use]
    pub fn leg(&self) -> Option<usize> {
        match self {
            Self::Leg(place) => Some(place.leg),
            _ => None,
        }
    }
}

/// A finding as a document holds it: `level`, `at`, `code` and `values`; a writer puts the sentence beside them.
#[derive(Serialize, JsonSchema)]
#[schemars(rename = "Finding")]
struct FindingDocument<'a> {
    /// How much it matters.
    level: Level,
    /// Where it belongs.
    at: &'a At,
    /// Its kind and the figures that belong to it.
    #[serde(flatten)]
    what: Facts<'a>,
}

/// A fact, or a notice of reading.
#[derive(Serialize, JsonSchema)]
#[serde(untagged)]
enum Facts<'a> {
    Planned(&'a Fact),
    Read { code: &'a str, values: Value },
}

impl Serialize for Finding {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let what = match &self.what {
            What::Planned(fact) => Facts::Planned(fact),
            What::Read(notice) => Facts::Read {
                code: notice.code(),
                values: notice.values(),
            },
        };
        let document = FindingDocument {
            level: self.level(),
            at: &self.at,
            what,
        };
        document.serialize(to)
    }
}

impl JsonSchema for Finding {
    fn schema_name() -> Cow<'static, str> {
        FindingDocument::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        FindingDocument::json_schema(generator)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fault::gpx::InGpx;

    #[test]
    fn a_fault_and_a_finding_have_one_form() {
        let jump = InGpx::Jump {
            length_m: 1200.0,
            at_m: 350.0,
        };
        let fault = Fault::new(jump, Place::file("tour.gpx"));
        let finding = Finding::from(fault.clone());
        assert_eq!(
            serde_json::to_value(&fault).unwrap(),
            serde_json::to_value(&finding).unwrap()
        );
        assert_eq!(
            (fault.code(), fault.level()),
            (finding.code(), finding.level())
        );
        assert_eq!(fault.values(), finding.values());
        assert_eq!(fault.explain(), finding.explain());
        let planned = Finding::new(
            At::Part { of: JobPart::Zones },
            Fact::ZoneMissed { zones: vec![2] },
        );
        let document = serde_json::to_value(&planned).unwrap();
        assert_eq!(document["values"], planned.values());
        assert_eq!(document["code"], planned.code());
    }
}
