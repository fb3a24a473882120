//! Places to look at before the team goes on: along the crevasses, where a fall is held worst, where the ground steepens.

use crate::{
    geometry::LonLat,
    plan::{
        fact::Fact,
        finding::{At, Finding},
        leg::Leg,
        place::RollOver,
    },
    say::{arg::Arg, finding, round::Round, span::Said, voice::Voice},
    write::sheet::Sheet,
};

/// Why a place is worth a look.
///
/// ```
/// use schrund::write::{Scene, Sheet, parts::look::{LookSort, looks}};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let sorts: Vec<LookSort> = looks(&Sheet::of(&job, &plan, &scene)).iter().map(|look| look.sort).collect();
/// assert!(sorts.contains(&LookSort::RollOver), "the ground steepens under leg 2");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LookSort {
    /// The team goes along the crevasses.
    Along,
    /// A fall is held worst, or roping together is no answer.
    Fall,
    /// The ground steepens: gaps open there.
    RollOver,
}

impl LookSort {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Along, Self::Fall, Self::RollOver];

    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Along => "along crevasses",
            Self::Fall => "fall held worst",
            Self::RollOver => "roll-over",
        }
    }

    fn of(finding: &Finding) -> Option<Self> {
        match finding.fact()? {
            Fact::Along { .. } => Some(Self::Along),
            Fact::HeldInNone { .. }
            | Fact::HeldInNoneOnce { .. }
            | Fact::HeldOffCentre { .. }
            | Fact::TooSteep { .. }
            | Fact::SteepBareIce { .. } => Some(Self::Fall),
            _ => None,
        }
    }

    /// What it stands for, in words.
    #[must_use]
    pub fn says(self, voice: Voice) -> Said {
        match self {
            Self::Along => voice.say("legend-along", &[]),
            Self::Fall => voice.say("legend-fall", &[]),
            Self::RollOver => voice.say("legend-roll-over", &[]),
        }
    }
}

/// One place to look at.
///
/// ```
/// use schrund::{say::voice::Voice, write::{Scene, Sheet, parts::look::looks}};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let found = looks(&Sheet::of(&job, &plan, &scene));
/// let roll = found.iter().find(|look| look.finding.is_none()).expect("the ground steepens under leg 2");
/// assert_eq!(roll.code(Voice::default()), format!("LOOK 2.{}", roll.number));
/// assert!(roll.description(Voice::default()).to_string().starts_with("Leg 2"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct LookPoint<'a> {
    /// Number from 1 on its leg.
    pub number: usize,
    /// Its leg.
    pub leg: &'a Leg,
    /// Why.
    pub sort: LookSort,
    /// Chainage, metres.
    pub at_m: f64,
    /// Where it is.
    pub at: LonLat,
    /// What was found there; nothing where the ground steepens.
    pub finding: Option<&'a Finding>,
    /// By how many degrees the ground below is steeper; 0 where something was found.
    pub steepens_deg: f64,
}

impl LookPoint<'_> {
    /// `LOOK 6.1`: ASCII, and unique in a plan.
    #[must_use]
    pub fn code(&self, voice: Voice) -> String {
        let number = format!("{}.{}", self.leg.leg, self.number);
        voice
            .say("device-look", &[("number", Arg::Figure(number))])
            .to_string()
    }

    /// `Look: along the crevasses`.
    #[must_use]
    pub fn title(&self, voice: Voice) -> Said {
        voice.say("look-title", &[("what", Arg::Said(self.sort.says(voice)))])
    }

    /// Which leg it is on, and what was found there, in a sentence.
    #[must_use]
    pub fn description(&self, voice: Voice) -> Said {
        let says = match self.finding {
            Some(found) => finding::short(found, voice),
            None => voice.say(
                "look-steepens",
                &[(
                    "steeper",
                    Arg::Degrees(self.steepens_deg, 0, Round::Nearest),
                )],
            ),
        };
        let args = [
            ("leg", Arg::Count(self.leg.leg)),
            ("at", Arg::Walked(self.at_m)),
            ("says", Arg::Said(says)),
        ];
        voice.say("look-place", &args)
    }
}

/// All of a plan, leg by leg in walking order.
#[must_use]
pub fn looks<'a>(sheet: &Sheet<'a>) -> Vec<LookPoint<'a>> {
    let legs = sheet.plan.legs.iter();
    legs.flat_map(|leg| of_leg(sheet, leg)).collect()
}

fn of_leg<'a>(sheet: &Sheet<'a>, leg: &'a Leg) -> Vec<LookPoint<'a>> {
    let stage = sheet.route.stages.iter().find(|s| s.number == leg.stage);
    let found = leg.findings.iter().filter_map(|finding| {
        let At::Leg(place) = &finding.at else {
            return None;
        };
        let at_m = f64::midpoint(place.from_m, place.to_m);
        Some(LookPoint {
            number: 0,
            leg,
            sort: LookSort::of(finding)?,
            at_m,
            at: stage?.at(at_m)?,
            finding: Some(finding),
            steepens_deg: 0.0,
        })
    });
    let rolls = leg.look_here.iter().filter(|_| leg.roped);
    let rolls = rolls.map(
        |&RollOver {
             at_m,
             at,
             steepens_deg,
         }| LookPoint {
            number: 0,
            leg,
            sort: LookSort::RollOver,
            at_m,
            at: LonLat::new(at[0], at[1]),
            finding: None,
            steepens_deg,
        },
    );
    let mut all: Vec<LookPoint<'a>> = found.chain(rolls).collect();
    all.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    for (number, look) in (1..).zip(&mut all) {
        look.number = number;
    }
    all
}
