//! Where the party halts, as a trip file says it, and where on the line that is.

use serde::{Deserialize, Serialize};

use super::{READ_OFF_M, stage::StageWord};
use crate::{
    fault::{Fault, Place, name, trip::InTrip},
    practice::alike::nearest,
    trip::{
        halt::Halt,
        near::Passed,
        route::{NamedPlace, Route, Stage},
    },
};

/// One halt of a trip file: at a kilometre of the line, or at a waypoint of the route file.
///
/// ```
/// use schrund::{fault::{Place, trip::InTrip}, read::trip::{HaltEntry, StageWord, Trip}};
///
/// let route = schrund::example::job()?.route;
/// let lunch = HaltEntry { at_km: Some(1.5), stage: None, name: Some("Lunch".to_owned()), minutes: 20.0 };
/// let with = |entry: &HaltEntry| Trip { halt: vec![entry.clone()], ..Trip::default() };
/// let halts = with(&lunch).halts(&route, 20.0, &Place::file("trip.toml"))?;
/// assert_eq!((halts[0].at_m, halts[0].name.as_deref()), (1500.0, Some("Lunch")));
/// let named = HaltEntry { at_km: None, ..lunch };
/// let faults = with(&named).halts(&route, 20.0, &Place::default()).expect_err("the file has no waypoint");
/// let no_waypoint = InTrip::NoWaypoint { name: "Lunch".to_owned(), near: None, has: 0 };
/// assert_eq!(faults[0].what, no_waypoint.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HaltEntry {
    /// Kilometres from the start of its stage. Without it `name` is that of a waypoint of the route file.
    pub at_km: Option<f64>,
    /// Number or name of the stage, where there are several.
    pub stage: Option<StageWord>,
    /// What it is called.
    pub name: Option<String>,
    /// How long, minutes.
    pub minutes: f64,
}

/// Shortest and longest halt, minutes. Our judgement: whoever rests for more than a day begins a new stage.
const HALT_MIN: [f64; 2] = [0.0, 1440.0];

impl HaltEntry {
    /// The halt on a route; a waypoint counts where it lies within `margin_m` metres of the line.
    pub(super) fn halt(
        &self,
        route: &Route,
        margin_m: f64,
        place: &Place,
    ) -> Result<Halt, Vec<Fault>> {
        let found = match self.at_km {
            Some(at_km) => self.at_km(route, at_km),
            None => self.at_waypoint(route, margin_m),
        };
        let told = |what, property| Fault::new(what, place.clone().with_property(property));
        let mut faults: Vec<Fault> = self
            .wrong_minutes()
            .map(|w| told(w, "minutes"))
            .into_iter()
            .collect();
        match found {
            Ok((stage, at_m)) if faults.is_empty() => Ok(Halt {
                stage,
                at_m,
                minutes: self.minutes,
                name: self.name.as_ref().and_then(|text| name::tidy(text)),
            }),
            Ok(_) => Err(faults),
            Err((what, property)) => {
                faults.push(told(what, property));
                Err(faults)
            }
        }
    }

    /// What is wrong with how long it is.
    pub(super) fn wrong_minutes(&self) -> Option<InTrip> {
        let [least, most] = HALT_MIN;
        let minutes = self.minutes;
        let within = HALT_MIN;
        (!(least..=most).contains(&minutes)).then_some(InTrip::HaltMinutes { minutes, within })
    }

    /// What is wrong with where it is, as far as that is seen without a route.
    pub(super) fn wrong_place(&self) -> Option<(InTrip, &'static str)> {
        match (self.at_km, &self.name) {
            (Some(at_km), _) if !(at_km >= 0.0 && at_km.is_finite()) => {
                Some((InTrip::HaltBefore { at_km }, "at_km"))
            }
            (None, None) => Some((InTrip::HaltNowhere, "at_km")),
            _ => None,
        }
    }

    fn at_km(&self, route: &Route, at_km: f64) -> Result<(usize, f64), Wrong> {
        self.wrong_place().map_or(Ok(()), Err)?;
        let stage = match self.stages(route)?[..] {
            [stage] => stage,
            ref several => {
                let has = several.iter().map(|s| known(s)).collect();
                return Err((InTrip::HaltOnWhichStage { has }, "stage"));
            }
        };
        let (at_m, length_m) = (1000.0 * at_km, stage.length_m());
        // A length read off a table has two decimals of a kilometre.
        if at_m > length_m + READ_OFF_M {
            return Err((InTrip::HaltBeyond { at_km, length_m }, "at_km"));
        }
        Ok((stage.number, at_m.min(length_m)))
    }

    fn at_waypoint(&self, route: &Route, margin_m: f64) -> Result<(usize, f64), Wrong> {
        self.wrong_place().map_or(Ok(()), Err)?;
        let called = self
            .name
            .as_deref()
            .and_then(name::tidy)
            .unwrap_or_default();
        let place = waypoint(route, &called).map_err(|what| (what, "name"))?;
        let stages = self.stages(route)?;
        let passed = |s: &&Stage| Some((s.number, s.passes(place.at, margin_m)?));
        let passed: Vec<(usize, Passed)> = stages.iter().filter_map(passed).collect();
        if let Some((stage, near)) = passed.iter().find(|(_, near)| near.away_m <= margin_m) {
            return Ok((*stage, near.at_m));
        }
        let away_m = passed.iter().map(|(_, near)| near.away_m);
        let away = InTrip::WaypointAway {
            name: called,
            away_m: away_m.fold(f64::INFINITY, f64::min),
            margin_m,
        };
        Err((away, "name"))
    }

    /// The stages that it can be on.
    fn stages<'r>(&self, route: &'r Route) -> Result<Vec<&'r Stage>, Wrong> {
        let Some(word) = &self.stage else {
            return Ok(route.stages.iter().collect());
        };
        let asked: Vec<&Stage> = route.stages.iter().filter(|s| word.is(s)).collect();
        if asked.is_empty() {
            let has = route.stages.iter().map(known).collect();
            let asked = word.asked();
            return Err((InTrip::NoStage { asked, has }, "stage"));
        }
        Ok(asked)
    }
}

/// What is wrong, and with which member.
type Wrong = (InTrip, &'static str);

fn known(stage: &Stage) -> (usize, Option<String>) {
    (stage.number, stage.name.clone())
}

/// The waypoint of that name; of several the first.
fn waypoint<'r>(route: &'r Route, called: &str) -> Result<&'r NamedPlace, InTrip> {
    let mut places = route.waypoints.iter();
    places.find(|place| place.name == called).ok_or_else(|| {
        let names = route.waypoints.iter().map(|place| place.name.as_str());
        InTrip::NoWaypoint {
            name: called.to_owned(),
            near: nearest(called, names).map(str::to_owned),
            has: route.waypoints.len(),
        }
    })
}
