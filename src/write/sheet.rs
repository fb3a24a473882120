//! What every writer writes from: the plan, the geometry it was made from, what is drawn beside it, and for whom.

use crate::{
    fault::Fault,
    ground::{profile::Profile, relief::Relief},
    plan::Plan,
    say::voice::Voice,
    trip::{party::EmergencyContact, route::Route, zone::Zone},
};

/// What every writer writes from.
#[derive(Clone, Copy, Debug)]
pub struct Sheet<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The stages planned.
    pub route: &'a Route,
    /// The zones, numbered as in the plan.
    pub zones: &'a [Zone],
    /// What the leader calls the trip; without it the route's name stands on top.
    pub trip: Option<&'a str>,
    /// Whom to call; without anybody there are lines to fill in.
    pub emergency: &'a [EmergencyContact],
    /// What the report shows beside the plan.
    pub scene: &'a Scene,
    /// How it is shown.
    pub look: Look,
}

/// How a plan is shown. Values for programs stay in metres whatever is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Whose words and figures.
    pub voice: Voice,
    /// Columns that a table must fit.
    pub width: usize,
    /// With styling members in the GeoJSON.
    pub styled: bool,
}

/// Columns that tables are made for.
pub const FULL_WIDTH: usize = 100;

impl Default for Look {
    fn default() -> Self {
        Self {
            voice: Voice::default(),
            width: FULL_WIDTH,
            styled: true,
        }
    }
}

/// What the report shows beside the plan.
#[derive(Clone, Debug, Default)]
pub struct Scene {
    /// Heights of each stage, in order. Without them those of the route file.
    pub profiles: Vec<Profile>,
    /// The shape of the ground round the route.
    pub relief: Option<Relief>,
    /// The same trip with other parties.
    pub others: Vec<Other>,
}

/// The same trip with another party.
#[derive(Clone, Debug, PartialEq)]
pub struct Other {
    /// How it differs from the party of the trip.
    pub party: OtherParty,
    /// How many go.
    pub people: usize,
    /// The plan, or why there is none. Its falls say whether they are held, not what that depends on.
    pub plan: Result<Plan, Vec<Fault>>,
}

/// How another party differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OtherParty {
    /// The last person named stays away.
    OneFewer,
    /// Somebody joins whose mass the rules assume.
    OneMore,
}
