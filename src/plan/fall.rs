//! What happens after a fall: who holds, what rope is free, and whether those left can haul.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    physics::{
        assumed::{Parameter, Snow},
        haul::{Can, System},
    },
    plan::name::PersonName,
};

/// The fall model's answer for one rope team on one leg. It holds for the assumptions of the plan only.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let arrest = plan.legs[1].teams[0].arrest.as_ref().expect("the model has an answer");
/// // The fall that is held worst is that of Bo, in the middle; the two others hold.
/// assert_eq!((arrest.falls, &arrest.holds[..]), (2, &[1, 3][..]));
/// assert_eq!(arrest.everybody[arrest.falls - 1], arrest.verdict);
/// assert!(!arrest.depends_on.is_empty(), "a verdict that depends says on what");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Arrest {
    /// Position on the rope, from 1, of the person whose fall is held worst.
    pub falls: usize,
    /// Positions of those who hold.
    pub holds: Vec<usize>,
    /// Whether they do.
    pub verdict: Held,
    /// The assumptions that decide; empty unless the verdict is `depends`, and where only verdicts were asked for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub depends_on: Vec<Parameter>,
    /// Whether each of them decides by itself; otherwise only in combination do they.
    pub alone: bool,
    /// Least and most slide of the first holder over the assumed cases, metres; where not held, the way to the lip.
    pub slide_m: [f64; 2],
    /// Least and most peak force on the first holder, kilonewtons.
    pub holder_force_kn: [f64; 2],
    /// What the team was taken to stand on.
    pub snow: Snow,
    /// Whether nobody said what snow there is, so that it was assumed.
    pub snow_assumed: bool,
    /// How steeply the ground falls towards the lip under those who hold, degrees, negative where it falls away from it:
    /// they are pulled uphill then. Of a fall in the middle on the side where it falls more; 0 where no heights are known.
    pub slope_deg: f64,
    /// How steeply the ground falls there in walking direction, at least and at most, degrees, negative where it climbs.
    pub down_deg: [f64; 2],
    /// Whether heights say how steep it is there.
    pub slope_known: bool,
    /// The gap over which falls are held worst there, along the route, metres, in half metres; 0 where nobody gave any.
    pub gap_m: f64,
    /// Whether the model let the brake knots bear: only where the snow is known to be deep enough.
    pub knots_counted: bool,
    /// Where that is: from this chainage, metres,
    pub from_m: f64,
    /// to this one.
    pub to_m: f64,
    /// The same question wherever gaps are to be expected on the leg, in walking order.
    pub runs: Vec<HeldRun>,
    /// The verdict for everybody's fall, in rope order: the worst over all widths that the gap may have, which need not be the
    /// one over which the worst fall is held worst, and over climb and descent wherever the team stands on the leg as there.
    pub everybody: Vec<Held>,
    /// Advice on the order; stands on the leg where the team is held worst, hidden gaps before those in sight, and only there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order: Option<OrderAdvice>,
}

/// On how many metres of a leg a team holds everybody's fall, where gaps are to be expected.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let team = &plan.legs[1].teams[0];
/// let (held, arrest) = (team.held.expect("the model answers"), team.arrest.as_ref().expect("so too"));
/// let runs_m: f64 = arrest.runs.iter().map(|run| run.length_m()).sum();
/// assert!((held.all_m + held.depends_m + held.none_m - runs_m).abs() < 1e-6, "every run counts once");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct HeldMetres {
    /// In all assumed cases.
    pub all_m: f64,
    /// In some.
    pub depends_m: f64,
    /// In none.
    pub none_m: f64,
}

impl HeldMetres {
    /// Of these runs.
    #[must_use]
    pub fn of(runs: &[HeldRun]) -> Self {
        let of = |held: Held| {
            let alike = runs.iter().filter(|run| run.held == held);
            alike.map(HeldRun::length_m).sum()
        };
        Self {
            all_m: of(Held::All),
            depends_m: of(Held::Depends),
            none_m: of(Held::None),
        }
    }
}

/// A run of places on a leg where everybody's fall is held alike.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let arrest = plan.legs[1].teams[0].arrest.as_ref().expect("the model answers");
/// let ends = arrest.runs.windows(2).all(|pair| pair[0].to_m <= pair[1].from_m);
/// assert!(ends && !arrest.runs.is_empty(), "in walking order");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HeldRun {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres.
    pub to_m: f64,
    /// In how many cases; the worst fall counts.
    pub held: Held,
    /// Whether with everything assumed central.
    pub in_centre: bool,
    /// What the team stands on.
    pub snow: Snow,
    /// Whether every gap there is in sight: drawn as bare ice and nothing else.
    pub in_sight: bool,
    /// Position of somebody whose fall is held so, where it is steepest; absent where every fall is held in all cases.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub falls: Option<usize>,
    /// How steeply the line falls in walking direction at its steepest, degrees, negative up; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub down_deg: Option<f64>,
    /// Whether a gap width is given there; otherwise falls are judged as over a gap of no width, the mildest.
    pub gap_given: bool,
}

impl HeldRun {
    /// Metres.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }

    /// How steep the line is at its steepest, up or down, degrees.
    #[must_use]
    pub fn steepest_deg(&self) -> Option<f64> {
        self.down_deg.map(f64::abs)
    }

    /// Whether another one says the same where this one ends.
    #[must_use]
    pub fn goes_on(&self, next: &Self) -> bool {
        let gaps = |run: &Self| (run.in_sight, run.gap_given);
        let said = |run: &Self| (run.held, run.in_centre, run.snow, gaps(run));
        said(self) == said(next) && next.from_m - self.to_m < 1e-6
    }
}

/// Whether a fall is held over the corners of everything assumed. No probability.
///
/// ```
/// use schrund::plan::fall::Held;
///
/// let arrest = schrund::plan(&schrund::example::job()?)?.legs[1].teams[0].arrest.clone();
/// let arrest = arrest.expect("the model has an answer");
/// // Worse is greater: the verdict of a team is that of its worst fall.
/// assert!(Held::All < Held::Depends && Held::Depends < Held::None);
/// assert_eq!(arrest.everybody.iter().max(), Some(&arrest.verdict));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Held {
    /// In all assumed cases.
    All,
    /// In some.
    Depends,
    /// In none.
    None,
}

/// In which order the people of a team are held best, as the model has it.
///
/// ```
/// use schrund::trip::party::Party;
///
/// let mut job = schrund::example::job()?;
/// let order = |plan: schrund::plan::Plan| plan.legs[1].teams[0].arrest.clone()?.order;
/// let advice = order(schrund::plan(&job)?).expect("Ane, Bo and Cy differ in mass");
/// assert_eq!(advice.order.len(), 3, "everybody once");
/// job.party = Party::weighing(&[80.0; 3]);
/// assert_eq!(order(schrund::plan(&job)?), None, "equal people need no advice");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OrderAdvice {
    /// From the first to the last person, with the positions they have now.
    pub order: Vec<PersonName>,
    /// Whether changing places is worth it.
    pub worth_it: bool,
    /// Falls that the model holds in that order in no case, and those that it does not hold with middling assumptions.
    pub not_held: [u32; 2],
}

/// Ways to haul out the person who is hardest to haul with what those left have; of equals whose fall is held worst.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let team = &plan.legs[1].teams[0];
/// let table = team.haul.as_ref().expect("the model has an answer");
/// // The anchor stands half a spacing from the lip (common practice); the rest of it hangs below.
/// assert_eq!([table.anchor_to_lip_m, table.lip_to_person_m], [team.spacing_m / 2.0; 2]);
/// assert!(table.needs_own_strand, "brake knots block the loaded one");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulTable {
    /// Position on the rope, from 1, of the person in the crevasse.
    pub person: usize,
    /// People left to pull: those on the side with more free rope.
    pub haulers: usize,
    /// From the anchor to the lip, metres.
    pub anchor_to_lip_m: f64,
    /// From the lip down to the person, metres: the anchor is where `anchor_share` says.
    pub lip_to_person_m: f64,
    /// Share of the force that the lip leaves.
    pub lip_share: f64,
    /// Whether brake knots block the loaded strand, so that a haul needs its own.
    pub needs_own_strand: bool,
    /// One line for each system.
    pub systems: Vec<HaulSystem>,
    /// What of it those left can do with the rope they have.
    pub answer: HaulAnswer,
    /// Rope that hands and hitches take, metres; counted in what each system needs.
    pub hands_m: f64,
}

impl HaulTable {
    /// Rope by itself that a drop loop from the lip takes, metres.
    #[must_use]
    pub fn own_loop_m(&self) -> Option<f64> {
        let mut systems = self.systems.iter();
        systems
            .find(|line| line.system == System::LoopAtLip)?
            .rope_m
    }
}

/// One way to haul.
///
/// ```
/// use schrund::physics::haul::System;
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let table = plan.legs[1].teams[0].haul.as_ref().expect("the model has an answer");
/// let of = |system| table.systems.iter().find(|line| line.system == system).expect("all systems");
/// let (three, nine) = (of(System::ThreeLoaded), of(System::Nine));
/// assert!(nine.rope_m > three.rope_m && nine.pull_kn < three.pull_kn, "more turns: more rope, less force");
/// assert!(three.strokes.is_some() && of(System::LoopAtLip).strokes.is_none(), "a loop goes in one");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulSystem {
    /// Which.
    pub system: System,
    /// Rope it takes beyond the loaded strand, metres; absent where the anchor is too near for a stroke.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope_m: Option<f64>,
    /// Whether the free rope is enough and knots do not block its strand.
    pub possible: bool,
    /// Force at the hands, kilonewtons.
    pub pull_kn: f64,
    /// How often it is pulled through; absent where it goes in one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strokes: Option<u32>,
    /// Whether those left can pull it.
    pub can: Can,
}

/// What those left can do with the rope they have.
///
/// ```
/// use schrund::{physics::haul::{Can, System}, plan::fall::HaulAnswer};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let [first, last] = [1, 3].map(|leg| &plan.legs[leg].teams[0]);
/// let [near, far] = [first, last].map(|team| team.haul.as_ref().expect("the model has an answer"));
/// // One person is left. The coil carried is long enough for a loop, which one cannot pull.
/// assert!(matches!(near.answer, HaulAnswer::Best { system: System::LoopAtLip, can: Can::No, haulers: 1, .. }));
/// // 2 m farther apart the loop takes more than that coil.
/// let HaulAnswer::TooShort { missing_m, .. } = far.answer else { panic!("{far:?}") };
/// let loop_m = far.anchor_to_lip_m + 2.0 * far.lip_to_person_m + far.hands_m;
/// assert!((missing_m - (loop_m - last.coil_carried_m)).abs() < 1e-9);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "answer", rename_all = "kebab-case")]
pub enum HaulAnswer {
    /// The surest system that the free rope allows.
    Best {
        /// Which.
        system: System,
        /// Whether those left can pull it.
        can: Can,
        /// How many are left to pull.
        haulers: usize,
        /// Force at the hands, kilonewtons.
        pull_kn: f64,
        /// The least force at the hands of all systems that the free rope allows, kilonewtons.
        least_kn: f64,
    },
    /// The free rope is too short for any.
    TooShort {
        /// The system for which least is missing.
        system: System,
        /// Metres missing for it, hands and hitches counted.
        missing_m: f64,
        /// How many are left to pull.
        haulers: usize,
    },
    /// The anchor is too near for any haul.
    AnchorTooNear {
        /// How many are left to pull.
        haulers: usize,
    },
}

impl HaulAnswer {
    /// Whether those left can pull some system, perhaps at the edge of their strength.
    #[must_use]
    pub fn is_possible(&self) -> bool {
        matches!(
            self,
            Self::Best {
                can: Can::Yes | Can::Perhaps,
                ..
            }
        )
    }
}

impl Held {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Depends => "depends",
            Self::None => "none",
        }
    }
}
