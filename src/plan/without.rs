//! The trip with something differs: what those left can still do, each case planned, never scaled.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    fault::Fault,
    plan::{
        Plan,
        fall::{HaulAnswer, Held},
        leg::{Leg, TeamSetup, Verdict},
        name::{PersonName, RopeName},
    },
    trip::party::Called,
};

/// How a trip differs from the one that was planned.
///
/// ```
/// use schrund::{Planner, plan::without::Difference};
///
/// let job = schrund::example::pair()?;
/// let planner = Planner::new(&job)?;
/// let others = planner.others(&planner.plan()?);
/// let refused: Vec<_> = others.iter().filter(|other| other.plan.is_err()).map(|other| &other.differs).collect();
/// // One of two cannot go alone, nor carry the other.
/// assert!(matches!(refused[..], [Difference::OneFewer, Difference::OneHurt { .. }]));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "without", rename_all = "kebab-case")]
pub enum Difference {
    /// The last person named stays away.
    OneFewer,
    /// Somebody joins whose mass the rules assume.
    OneMore,
    /// A rope that a team carries is lost.
    RopeLost {
        /// Which.
        rope: RopeName,
    },
    /// The heaviest person is hurt and carried along: they hold nothing and haul nothing. The others walk on the rope.
    /// Whoever carries them falls with the weight of both, and holds with their own.
    OneHurt {
        /// Who.
        hurt: Called,
        /// The heaviest of the others, who is taken to carry them; absent where nobody is left.
        #[serde(skip_serializing_if = "Option::is_none")]
        carried_by: Option<Called>,
    },
}

/// One such trip beside the plan.
///
/// ```
/// use schrund::{Planner, plan::{leg::Verdict, without::Without}};
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let plan = planner.plan()?;
/// let all: Vec<Without> = planner.others(&plan).iter().map(|other| other.beside(&plan)).collect();
/// assert_eq!(all.len(), 4, "one fewer, one more, the rope lost, one hurt");
/// let rope_lost = &all[2];
/// assert_eq!(rope_lost.verdict, Some(Verdict::Outside), "without a rope no set-up fits");
/// assert_eq!(rope_lost.legs[0].teams[0].fits, Some(false));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Without {
    /// How it differs.
    #[serde(flatten)]
    pub differs: Difference,
    /// How many walk.
    pub people: usize,
    /// The worst verdict of all its legs; absent where it is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub verdict: Option<Verdict>,
    /// Why there is no plan, by code; absent where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refused: Option<&'static str>,
    /// Its roped legs.
    pub legs: Vec<LegWithout>,
    /// Ropes of the leader that it takes along and the plan leaves at home.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub takes: Vec<RopeName>,
}

/// A roped leg of such a trip.
///
/// ```
/// use schrund::Planner;
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let plan = planner.plan()?;
/// let others = planner.others(&plan);
/// let fewer = others[0].beside(&plan);
/// // The only roped leg. A pair walks farther apart, so that it is a little longer.
/// let (leg, was) = (&fewer.legs[0], &plan.legs[1]);
/// assert_eq!((leg.as_leg, leg.was), (Some(was.leg), Some(was.verdict)));
/// assert!(leg.teams[0].spacing_m > was.teams[0].spacing_m);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LegWithout {
    /// Number from 1 over that trip.
    pub leg: usize,
    /// Number of the stage.
    pub stage: usize,
    /// Where it begins, metres from the start of the stage.
    pub start_m: f64,
    /// Where it ends.
    pub end_m: f64,
    /// The roped leg of the plan with which it shares most of its way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_leg: Option<usize>,
    /// The verdict of that one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub was: Option<Verdict>,
    /// How it stands.
    pub verdict: Verdict,
    /// One set-up for each rope team.
    pub teams: Vec<TeamWithout>,
}

/// A rope team on such a leg.
///
/// ```
/// use schrund::{Planner, plan::without::Difference};
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let plan = planner.plan()?;
/// let others = planner.others(&plan);
/// let hurt = others[3].beside(&plan);
/// let Difference::OneHurt { hurt: who, carried_by: Some(carrier) } = &hurt.differs else { panic!("{hurt:?}") };
/// assert_eq!((who.name.as_deref(), carrier.name.as_deref()), (Some("Cy"), Some("Ane")));
/// // Whoever carries is held worst: of the two that are left one holds, against the weight of two.
/// let team = &hurt.legs[0].teams[0];
/// assert_eq!(team.falls.as_ref().map(|person| &person.called), Some(carrier));
/// assert_eq!(team.holds.len(), 1);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TeamWithout {
    /// Number of the rope team.
    pub team: usize,
    /// How many are on the rope.
    pub people: usize,
    /// Walking distance between neighbours, metres.
    pub spacing_m: f64,
    /// Brake knots in all.
    pub knots: usize,
    /// Spare rope that each end person needs, metres.
    pub coil_m: f64,
    /// Rope needed, metres.
    pub rope_m: f64,
    /// Whether the rope that the team carries holds it; absent where no rope was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fits: Option<bool>,
    /// Whose fall is held worst; absent where the model has no answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub falls: Option<PersonName>,
    /// Who holds it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holds: Vec<PersonName>,
    /// Whether they do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held: Option<Held>,
    /// Which haul remains for the person who is hardest to haul, who need not be the one who is held worst.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub haul: Option<HaulAnswer>,
}

impl Without {
    /// A trip beside the plan that it differs from.
    #[must_use]
    pub fn of(
        differs: &Difference,
        people: usize,
        trip: Result<&Plan, &[Fault]>,
        plan: &Plan,
    ) -> Self {
        let roped = trip.into_iter().flat_map(|trip| &trip.legs);
        let roped = roped.filter(|leg| leg.roped);
        Self {
            differs: differs.clone(),
            people,
            verdict: trip.ok().map(Plan::verdict),
            refused: trip.err().and_then(|faults| Some(faults.first()?.code())),
            legs: roped.map(|leg| LegWithout::of(leg, plan)).collect(),
            takes: trip.map(|trip| taken(trip, plan)).unwrap_or_default(),
        }
    }
}

/// The ropes that a trip carries and another does not.
fn taken(trip: &Plan, plan: &Plan) -> Vec<RopeName> {
    let ropes = |plan: &Plan| -> Vec<RopeName> {
        let carried = plan.carry.iter().filter_map(|carry| carry.rope.clone());
        carried.collect()
    };
    let planned = ropes(plan);
    let mut taken = ropes(trip);
    // A rope that is not there is in its place without any length.
    taken.retain(|rope| rope.length_m > 0.0 && planned.iter().all(|known| known.rope != rope.rope));
    taken
}

impl LegWithout {
    fn of(leg: &Leg, plan: &Plan) -> Self {
        let shared_m = |other: &Leg| leg.end_m.min(other.end_m) - leg.start_m.max(other.start_m);
        let alike = plan
            .legs
            .iter()
            .filter(|other| other.roped && other.stage == leg.stage && shared_m(other) > 0.0);
        let was = alike.max_by(|a, b| shared_m(a).total_cmp(&shared_m(b)));
        Self {
            leg: leg.leg,
            stage: leg.stage,
            start_m: leg.start_m,
            end_m: leg.end_m,
            as_leg: was.map(|leg| leg.leg),
            was: was.map(|leg| leg.verdict),
            verdict: leg.verdict,
            teams: leg.teams.iter().map(TeamWithout::of).collect(),
        }
    }

    /// Whether it is judged more gravely than in the plan.
    #[must_use]
    pub fn is_graver(&self) -> bool {
        self.was.is_none_or(|was| self.verdict > was)
    }
}

impl TeamWithout {
    fn of(setup: &TeamSetup) -> Self {
        let arrest = setup.arrest.as_ref();
        let name = |position: usize| PersonName::at(position, &setup.persons);
        let holds = arrest.into_iter().flat_map(|arrest| &arrest.holds);
        Self {
            team: setup.team,
            people: setup.people,
            spacing_m: setup.spacing_m,
            knots: setup.knots.count,
            coil_m: setup.coil_m,
            rope_m: setup.ledger.total_m,
            fits: setup.rope.as_ref().map(|rope| rope.spare_m >= -1e-9),
            falls: arrest.map(|arrest| name(arrest.falls)),
            holds: holds.map(|&position| name(position)).collect(),
            held: arrest.map(|arrest| arrest.verdict),
            haul: setup.haul.as_ref().map(|haul| haul.answer),
        }
    }
}
