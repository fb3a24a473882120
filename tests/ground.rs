//! The ground in the plan: synthetic rasters whose answer is known, routes and zones on them, and the program itself.

#![allow(
    clippy::cast_possible_truncation,
    clippy::result_large_err,
    reason = "tests: numbers are small, and complaints are met once"
)]

#[path = "ground/command.rs"]
mod command;
#[path = "ground/heights.rs"]
mod heights;
#[path = "ground/ice.rs"]
mod ice;
#[path = "ground/made.rs"]
mod made;
#[path = "ground/slopes.rs"]
mod slopes;
#[path = "ground/strikes.rs"]
mod strikes;
#[path = "ground/times.rs"]
mod times;

use schrund::{
    Planner,
    plan::{Finding, Plan, leg::Leg},
    practice::{Rules, set::Source},
    raster::Terrain,
    trip::job::Case,
    trip::{party::Party, route::Route, timetable::Timetable, zone::Zone},
};

fn rules() -> Rules {
    Rules::with_practice(&Source::Named("arm-span")).expect("the default set loads")
}

/// A plan for three people without a rope named.
struct Trip<'a> {
    route: &'a Route,
    zones: &'a [Zone],
    glaciers: &'a [Zone],
    terrain: Option<&'a Terrain>,
    rules: &'a Rules,
    timetable: Timetable,
}

impl<'a> Trip<'a> {
    /// Without a model and without an inventory.
    fn of(route: &'a Route, zones: &'a [Zone], rules: &'a Rules) -> Self {
        Self {
            route,
            zones,
            glaciers: &[],
            terrain: None,
            rules,
            timetable: Timetable::default(),
        }
    }

    fn on(mut self, terrain: &'a Terrain) -> Self {
        self.terrain = Some(terrain);
        self
    }

    #[track_caller]
    fn plan(&self) -> Plan {
        let party = Party::of(3, self.rules);
        let case = Case {
            route: self.route,
            zones: self.zones,
            party: &party,
            ropes: &[],
            rules: self.rules,
            timetable: &self.timetable,
            terrain: self.terrain,
            glaciers: self.glaciers,
            notices: &[],
        };
        Planner::of(case)
            .and_then(|p| p.plan())
            .unwrap_or_else(|faults| panic!("{faults:#?}"))
    }
}

/// The one roped leg.
#[track_caller]
fn roped(plan: &Plan) -> &Leg {
    let mut roped = plan.legs.iter().filter(|l| l.roped);
    let leg = roped.next().expect("a roped leg");
    assert!(roped.next().is_none(), "only one roped leg");
    leg
}

fn said<'a>(findings: &'a [Finding], code: &str) -> Vec<&'a str> {
    let of_code = findings.iter().filter(|f| f.code == code);
    of_code.map(|f| f.says.as_str()).collect()
}

#[track_caller]
fn close(what: &str, got: Option<f64>, want: f64, tolerance: f64) {
    let got = got.unwrap_or_else(|| panic!("{what}: nothing there"));
    assert!(
        (got - want).abs() <= tolerance,
        "{what}: got {got}, want {want} ± {tolerance}"
    );
}
