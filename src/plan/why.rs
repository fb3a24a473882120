//! Why something is as it is: reasons that stand beside a figure without being a finding.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{practice::Origin, trip::party::Called};

/// Why brake knots are tied or not.
///
/// ```
/// use schrund::{plan::why::KnotsWhy, say::{setup::knots_why, voice::Voice}};
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let why = &plan.legs[1].teams[0].knots.why;
/// assert_eq!(*why, KnotsWhy::Three { heights_known: true });
/// let said = knots_why(why, Voice::default()).to_string();
/// assert_eq!(said, "for three only where one is clearly heavier, on a steep descent, or where the leader wants them (common practice)");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum KnotsWhy {
    /// Bare ice or too little snow: they would not bite.
    WouldNotBite,
    /// Somebody said never.
    Unwanted {
        /// Who.
        by: Origin,
    },
    /// Four or more on the rope.
    Many,
    /// Three on the rope, and nothing makes holding harder.
    Three {
        /// Whether heights say how steep it goes down.
        heights_known: bool,
    },
    /// Wanted, but not one set fits between two people.
    NoRoom {
        /// What they are wanted for.
        wanted: KnotsWanted,
        /// Walking distance between neighbours, metres.
        spacing_m: f64,
    },
    /// Tied.
    Tied {
        /// What for.
        wanted: KnotsWanted,
        /// Fewer than a whole set, where no more fit.
        #[serde(skip_serializing_if = "Option::is_none")]
        fewer: Option<FewerKnots>,
    },
}

/// What brake knots are wanted for.
///
/// ```
/// use schrund::{plan::why::{KnotsWanted, KnotsWhy}, trip::party::{Called, Party}};
///
/// let mut job = schrund::example::job()?;
/// // Clearly heavier is 1.3 times the mean of the others (our judgement).
/// job.party = Party::weighing(&[70.0, 70.0, 91.0]);
/// let plan = schrund::plan(&job)?;
/// let wanted = KnotsWanted::Heavier { who: Called::number(3) };
/// assert_eq!(plan.legs[1].teams[0].knots.why, KnotsWhy::Tied { wanted, fewer: None });
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "wanted", rename_all = "kebab-case")]
pub enum KnotsWanted {
    /// Somebody said always.
    Word {
        /// Who.
        by: Origin,
    },
    /// One person alone must hold.
    OneAlone,
    /// One of three is clearly heavier than the others.
    Heavier {
        /// That person.
        who: Called,
    },
    /// Three go steeply down.
    SteepDescent {
        /// Steepest descent on the leg, degrees.
        deg: f64,
    },
}

/// A set that is not whole.
///
/// ```
/// use schrund::{plan::why::KnotsWhy, practice::{Origin, Rule}};
///
/// let mut job = schrund::example::pair()?;
/// job.rules.set(Rule::SpacingCapM, 14.5, Origin::Trip).expect("inside its bounds");
/// let plan = schrund::plan(&job)?;
/// let KnotsWhy::Tied { fewer: Some(fewer), .. } = plan.legs[1].teams[0].knots.why else { panic!("two are") };
/// assert_eq!((fewer.tied, fewer.asked), (2, 3));
/// // Two sets of three reach 3 + 2 + 2 m each, and a metre is left between them (common practice): 15 m in all.
/// assert_eq!(fewer.spacing_m, 14.5);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FewerKnots {
    /// Knots tied in each set.
    pub tied: usize,
    /// Knots of a whole set.
    pub asked: usize,
    /// Walking distance between neighbours into which no more fit, metres.
    pub spacing_m: f64,
}

/// Why neighbours walk so far apart.
///
/// ```
/// use schrund::plan::why::SpacingWhy;
///
/// let job = schrund::example::job()?;
/// let why = |plan: &schrund::plan::Plan| plan.legs[1].teams[0].spacing_why;
/// assert_eq!(why(&schrund::plan(&job)?), SpacingWhy::Gap, "15 m of gap ask three people for 13.5 m");
/// let mut narrow = job;
/// narrow.zones[0].gap.max_m = 4.0;
/// assert_eq!(why(&schrund::plan(&narrow)?), SpacingWhy::Habit, "13 m is what is taught for three");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SpacingWhy {
    /// So many walk so far apart by the practice set, whatever the gaps.
    Habit,
    /// Only bare ice: the least spacing, since every gap is in sight.
    Least,
    /// A whole layout of brake knots takes so much room.
    Knots,
    /// The way over a gap asks for it.
    Gap,
    /// The gaps ask for more than the greatest spacing; this is the greatest.
    Cap,
}

/// Who put the ropes where: what a rope is carried for.
///
/// ```
/// use schrund::plan::why::CarryWhy;
///
/// let mut job = schrund::example::job()?;
/// assert_eq!(schrund::plan(&job)?.carry[0].why, CarryWhy::LongestSetUp);
/// job.ropes[0].length_m = 40.0;
/// let carry = &schrund::plan(&job)?.carry[0];
/// assert_eq!(carry.why, CarryWhy::TooShort);
/// assert!(carry.length_m < carry.needed_m);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum CarryWhy {
    /// It is long enough for the longest set-up.
    LongestSetUp,
    /// It is the best there is, and too short.
    TooShort,
    /// It is too short, and a longer one is left to another team: one rope serves a team for the whole trip.
    LeftToAnother {
        /// Number of that team.
        other_team: usize,
        /// Whether with the two ropes exchanged legs with graver falls would be outside.
        graver_falls: bool,
        /// Legs that some rope is too short for.
        legs_outside: usize,
        /// Legs that some rope were too short for, with the two exchanged.
        legs_exchanged: usize,
    },
}
