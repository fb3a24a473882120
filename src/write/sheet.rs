//! What every writer writes from: the plan, the geometry it was made from, what is drawn beside it, and for whom.

use crate::{
    fault::Fault,
    ground::{profile::Profile, relief::Relief},
    plan::{
        Plan,
        without::{Difference, Without},
    },
    say::{span::Said, voice::Voice},
    trip::{
        job::Job, language::Language, party::EmergencyContact, rope::Rope, route::Route, zone::Zone,
    },
};

/// What every writer writes from.
///
/// ```
/// use schrund::write::{Scene, Sheet, text};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let sheet = Sheet::of(&job, &plan, &scene);
/// assert_eq!(sheet.trip, Some("Two on the invented steps"), "as the trip file calls it");
/// let message = text::message(&sheet);
/// assert!(message.starts_with("Two on the invented steps: 3.12 km, 4 legs"), "{message}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Sheet<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The stages planned.
    pub route: &'a Route,
    /// The zones, numbered as in the plan.
    pub zones: &'a [Zone],
    /// Ice of an inventory.
    pub glaciers: &'a [Zone],
    /// The ropes at hand, numbered as in the plan.
    pub ropes: &'a [Rope],
    /// What the leader calls the trip; without it the route's name stands on top.
    pub trip: Option<&'a str>,
    /// Whom to call; without anybody there are lines to fill in.
    pub emergency: &'a [EmergencyContact],
    /// What the report shows beside the plan.
    pub scene: &'a Scene,
    /// How it is shown.
    pub look: Look,
}

impl<'a> Sheet<'a> {
    /// A job and its plan, shown as it is where nobody asks for anything else.
    #[must_use]
    pub fn of(job: &'a Job, plan: &'a Plan, scene: &'a Scene) -> Self {
        Self {
            plan,
            route: &job.route,
            zones: &job.zones,
            glaciers: &job.glaciers,
            ropes: &job.ropes,
            trip: job.name.as_deref(),
            emergency: &job.emergency,
            scene,
            look: Look::of(job.language),
        }
    }

    /// What the trip is called, else the route.
    #[must_use]
    pub fn name(&self) -> Option<&'a str> {
        let route: &'a Option<String> = &self.plan.route.name;
        self.trip.or(route.as_deref())
    }

    /// The same, or the word for a route that nobody named.
    #[must_use]
    pub(crate) fn title(&self) -> Said {
        let word = || self.look.voice.say("route", &[]);
        self.name().map_or_else(word, Said::name)
    }
}

/// How a plan is shown. Values for programs stay in metres whatever is shown.
///
/// ```
/// use schrund::{say::{units::Units, voice::Voice}, write::{Look, Scene, Sheet, table}};
///
/// let job = schrund::example::job()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let voice = Voice { units: Units::Imperial, ..Voice::default() };
/// let sheet = Sheet { look: Look { voice, width: 60, ..Look::default() }, ..Sheet::of(&job, &plan, &scene) };
/// let text = table::plan(&sheet).text;
/// assert!(text.contains("3 people, 44.3 ft apart"), "13.5 m, rounded up: {text}");
/// assert!(text.lines().all(|line| line.chars().count() <= 60), "{text}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Whose words and figures.
    pub voice: Voice,
    /// Columns that a table must fit.
    pub width: usize,
    /// All that is known in the table, and not only what a leader needs first.
    pub detail: bool,
    /// With styling members in the GeoJSON.
    pub styled: bool,
}

impl Look {
    /// As it is shown where nobody asks for anything but a language.
    #[must_use]
    pub fn of(language: Language) -> Self {
        let voice = Voice {
            language,
            ..Voice::default()
        };
        Self {
            voice,
            ..Self::default()
        }
    }
}

/// Columns that tables are made for.
pub const FULL_WIDTH: usize = 100;

impl Default for Look {
    fn default() -> Self {
        Self {
            voice: Voice::default(),
            width: FULL_WIDTH,
            detail: false,
            styled: true,
        }
    }
}

/// What the report shows beside the plan; the plan for programs shows the others only.
///
/// ```
/// use schrund::Planner;
///
/// let job = schrund::example::pair()?;
/// let planner = Planner::new(&job)?;
/// let scene = planner.scene(&planner.plan()?)?;
/// // The heights of the terrain model, not only those at the five points of the file.
/// assert!(scene.profiles[0].samples().len() > 50);
/// assert!(scene.relief.is_some_and(|relief| relief.rows > 1));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Scene {
    /// Heights of each stage, in order. Without them those of the route file.
    pub profiles: Vec<Profile>,
    /// The shape of the ground round the route.
    pub relief: Option<Relief>,
    /// The same trip with something missing.
    pub others: Vec<Other>,
}

/// The same trip with something missing.
///
/// ```
/// use schrund::{Planner, plan::without::Difference};
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let others = planner.others(&planner.plan()?);
/// let more = others.iter().find(|other| other.differs == Difference::OneMore).expect("it is asked");
/// assert_eq!(more.people, 4);
/// // Four walk 0.8 of the gap apart (common practice), three 0.9 of it.
/// let spacing_m = more.plan.as_ref().map(|plan| plan.legs[1].teams[0].spacing_m);
/// assert_eq!(spacing_m, Ok(12.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Other {
    /// How it differs from the trip that was planned.
    pub differs: Difference,
    /// How many walk.
    pub people: usize,
    /// The plan, or why there is none. Its falls say whether they are held, not what that depends on; it has no kept
    /// set-ups and no cures for ropes. A rope that is lost has no length in it.
    pub plan: Result<Plan, Vec<Fault>>,
}

impl Other {
    /// What is said of it beside the plan that it differs from.
    #[must_use]
    pub fn beside(&self, plan: &Plan) -> Without {
        let trip = self.plan.as_ref().map_err(Vec::as_slice);
        Without::of(&self.differs, self.people, trip, plan)
    }
}
