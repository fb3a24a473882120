//! Everything a plan is made from.

use crate::{
    fault::Fault,
    practice::Rules,
    raster::Terrain,
    trip::{
        halt::Halt,
        language::Language,
        party::{EmergencyContact, Party},
        rope::Rope,
        route::Route,
        timetable::Timetable,
        zone::Zone,
    },
};

/// Everything a plan is made from, owned: what files and flags came to once they were read.
///
/// ```
/// use schrund::{Job, practice::{Rules, set::Source}, read, trip::party::Party};
///
/// let line = br#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2.0"/><trkpt lat="66.52" lon="2.0"/></trkseg></trk></gpx>"#;
/// let ice = br#"{"type": "Feature", "properties": {"gap_m": 4}, "geometry": {"type": "Polygon",
///     "coordinates": [[[1.9, 66.505], [2.1, 66.505], [2.1, 66.51], [1.9, 66.51], [1.9, 66.505]]]}}"#;
/// let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
/// let job = Job {
///     route: read::gpx::route("line.gpx", &line[..]).unwrap().value,
///     zones: read::geojson::zones("ice.geojson", &ice[..], &Default::default()).unwrap().value,
///     party: Party::of(3, &rules),
///     ..Job::under(rules)
/// };
/// assert_eq!(schrund::plan(&job).unwrap().legs.len(), 3);
/// ```
#[derive(Debug)]
pub struct Job {
    /// What the leader calls the trip, if it has a name of its own.
    pub name: Option<String>,
    /// The language in which it is told.
    pub language: Language,
    /// The stages to plan.
    pub route: Route,
    /// The ice.
    pub zones: Vec<Zone>,
    /// Ice of a glacier inventory, gap widths meaning nothing: where no zone is drawn on it, the plan says so.
    pub glaciers: Vec<Zone>,
    /// Whether an inventory was read, of which perhaps nothing lies near the route.
    pub has_inventory: bool,
    /// Heights of the ground; empty where the leader has none.
    pub terrain: Terrain,
    /// Who goes.
    pub party: Party,
    /// The ropes at hand; without one the plan says what to take.
    pub ropes: Vec<Rope>,
    /// The figures and words in force.
    pub rules: Rules,
    /// The leader's times of day.
    pub timetable: Timetable,
    /// Where the leader halts.
    pub halts: Vec<Halt>,
    /// Whom to call.
    pub emergency: Vec<EmergencyContact>,
    /// Notices from reading the inputs; they go into the plan, since a leader reads the paper.
    pub notices: Vec<Fault>,
}

impl Job {
    /// A job under some rules with everything else still to be filled in: no line, no ice, nobody.
    #[must_use]
    pub fn under(rules: Rules) -> Self {
        Self {
            name: None,
            language: Language::default(),
            route: Route::default(),
            zones: Vec::new(),
            glaciers: Vec::new(),
            has_inventory: false,
            terrain: Terrain::default(),
            party: Party::default(),
            ropes: Vec::new(),
            rules,
            timetable: Timetable::default(),
            halts: Vec::new(),
            emergency: Vec::new(),
            notices: Vec::new(),
        }
    }

    /// The job as the steps of the flow see it.
    #[must_use]
    pub fn case(&self) -> Brief<'_> {
        Brief {
            route: &self.route,
            zones: &self.zones,
            party: &self.party,
            ropes: &self.ropes,
            rules: &self.rules,
            timetable: &self.timetable,
            halts: &self.halts,
            terrain: (!self.terrain.is_empty()).then_some(&self.terrain),
            glaciers: &self.glaciers,
            has_inventory: self.has_inventory,
            notices: &self.notices,
            burden: None,
        }
    }
}

/// A job as the steps of the flow see it, perhaps with another party or other rules than its own.
///
/// ```
/// use schrund::{Planner, trip::{job::Brief, party::Party}};
///
/// let job = schrund::example::job()?;
/// let two = Party::weighing(&[82.0, 75.0]);
/// let brief = Brief { party: &two, ..job.case() };
/// let plan = Planner::of(brief)?.plan()?;
/// assert_eq!(plan.legs[1].teams[0].people, 2);
/// assert_eq!(job.party.people.len(), 3, "the job itself stays as it is");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Brief<'a> {
    /// See [`Job::route`].
    pub route: &'a Route,
    /// See [`Job::zones`].
    pub zones: &'a [Zone],
    /// See [`Job::party`].
    pub party: &'a Party,
    /// See [`Job::ropes`].
    pub ropes: &'a [Rope],
    /// See [`Job::rules`].
    pub rules: &'a Rules,
    /// See [`Job::timetable`].
    pub timetable: &'a Timetable,
    /// See [`Job::halts`].
    pub halts: &'a [Halt],
    /// See [`Job::terrain`]; `None` where that is empty.
    pub terrain: Option<&'a Terrain>,
    /// See [`Job::glaciers`].
    pub glaciers: &'a [Zone],
    /// See [`Job::has_inventory`].
    pub has_inventory: bool,
    /// See [`Job::notices`].
    pub notices: &'a [Fault],
    /// Somebody hurt whom one of the party carries; nobody in a job.
    pub burden: Option<Burden>,
}

impl<'a> Brief<'a> {
    /// The rope at hand of that number, from 1.
    #[must_use]
    pub fn rope(&self, number: usize) -> Option<&'a Rope> {
        self.ropes.get(number.checked_sub(1)?)
    }
}

/// Somebody hurt who is carried along, not one of the party that walks.
///
/// ```
/// use schrund::{Planner, trip::job::{Brief, Burden}};
///
/// let job = schrund::example::job()?;
/// let held = |burden| -> Result<_, Vec<schrund::fault::Fault>> {
///     let plan = Planner::of(Brief { burden, ..job.case() })?.plan()?;
///     Ok(plan.legs[1].teams[0].arrest.clone().expect("the model has an answer"))
/// };
/// let (light, heavy) = (held(None)?, held(Some(Burden { carried_by: 2, mass_kg: 80.0 }))?);
/// // Bo, in the middle, falls with the weight of both; the two others hold, as before.
/// assert_eq!((light.falls, heavy.falls, &heavy.holds), (2, 2, &light.holds));
/// assert!(heavy.verdict > light.verdict, "{:?} {:?}", light.verdict, heavy.verdict);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Burden {
    /// Number in the party of the person who carries them: falls with both masses, and holds with their own.
    pub carried_by: usize,
    /// Kilograms.
    pub mass_kg: f64,
}
