//! Places to look at before the team goes on, and places that stop it: along the crevasses, where a fall is held worst, where
//! it is too steep for a rope without anchors, where the ground steepens.

use crate::{
    fault::Level,
    geometry::LonLat,
    plan::{
        fact::Fact,
        finding::{At, Finding},
        leg::{Leg, Verdict},
    },
    say::{arg::Arg, finding, round::Round, span::Said, voice::Voice},
    trip::route::Stage,
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
    /// A fall is held worst.
    Fall,
    /// It is too steep for a rope without anchors.
    Steep,
    /// The ground steepens: gaps open there.
    RollOver,
}

impl LookSort {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Along, Self::Fall, Self::Steep, Self::RollOver];

    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Along => "along crevasses",
            Self::Fall => "fall held worst",
            Self::Steep => "too steep",
            Self::RollOver => "roll-over",
        }
    }

    fn of(finding: &Finding) -> Option<Self> {
        match finding.fact()? {
            Fact::Along { .. } => Some(Self::Along),
            Fact::HeldInNone { .. } | Fact::HeldInNoneOnce { .. } | Fact::HeldOffCentre { .. } => {
                Some(Self::Fall)
            }
            Fact::TooSteep { .. } | Fact::SteepBareIce { .. } => Some(Self::Steep),
            _ => None,
        }
    }

    /// What it stands for, in words.
    #[must_use]
    pub fn says(self, voice: Voice) -> Said {
        match self {
            Self::Along => voice.say("legend-along", &[]),
            Self::Fall => voice.say("legend-fall", &[]),
            Self::Steep => voice.say("legend-steep", &[]),
            Self::RollOver => voice.say("legend-roll-over", &[]),
        }
    }
}

/// Longest name that every device takes `[from memory]`.
pub const NAME_MOST: usize = 10;

/// One place to look at. It stands where what was found begins, so that who walks up to it is not in it yet.
///
/// ```
/// use schrund::{say::voice::Voice, write::{Scene, Sheet, parts::look::looks}};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let found = looks(&Sheet::of(&job, &plan, &scene));
/// let roll = found.iter().find(|look| look.finding.is_none()).expect("the ground steepens under leg 2");
/// assert_eq!(roll.code(Voice::default()), format!("LOOK 2.{}", roll.number));
/// assert!(roll.description(Voice::default()).to_string().starts_with("Look on leg 2 at "));
/// assert!(roll.height_m.is_some(), "as the terrain model has it");
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
    /// Height there, metres, where one is known.
    pub height_m: Option<f64>,
    /// What was found there; nothing where the ground steepens.
    pub finding: Option<&'a Finding>,
    /// Whether it is the place that the finding names, and not another one that stops for the same reason.
    pub named: bool,
    /// By how many degrees the ground below is steeper; 0 where something was found.
    pub steepens_deg: f64,
}

impl LookPoint<'_> {
    /// Whether it stops the team.
    #[must_use]
    pub fn stops(&self) -> bool {
        self.finding
            .is_some_and(|found| found.level() == Level::Stop)
    }

    /// What chooses between its two words.
    fn level(&self) -> (&'static str, Arg<'static>) {
        let level = if self.stops() { "stop" } else { "look" };
        ("level", Arg::Word(level))
    }

    /// `STOP 4.1`, `LOOK 6.2`: ASCII, at most ten characters, and unique in a plan. Where the word has no room a sign stands
    /// for it.
    #[must_use]
    pub fn code(&self, voice: Voice) -> String {
        let number = format!("{}.{}", self.leg.leg, self.number);
        let named = |key| {
            let number = ("number", Arg::Figure(number.clone()));
            voice.say(key, &[self.level(), number]).to_string()
        };
        let name = named("device-look");
        if name.len() > NAME_MOST {
            named("device-look-sign")
        } else {
            name
        }
    }

    /// `Stop: too steep without anchors`, in the words of what was found; `Look: the ground steepens`.
    #[must_use]
    pub fn title(&self, voice: Voice) -> Said {
        let what = match self.finding {
            Some(found) => finding::brief(found, voice),
            None => voice.say("look-roll-over", &[]),
        };
        voice.say("look-title", &[self.level(), ("what", Arg::Said(what))])
    }

    /// The title, and what to do about it: one line for a watch.
    #[must_use]
    pub fn line(&self, voice: Voice) -> Said {
        let cure = match self.finding {
            Some(found) => finding::cure(found, voice),
            None => Some(voice.say("look-for", &[])),
        };
        finding::with_cure(self.title(voice), cure)
    }

    /// Which leg it is on, what was found there, and what to do about it, in a sentence.
    #[must_use]
    pub fn description(&self, voice: Voice) -> Said {
        let says = match self.finding {
            Some(found) if self.named => finding::short_with_cure(found, voice),
            Some(found) => {
                finding::with_cure(finding::brief(found, voice), finding::cure(found, voice))
            }
            None => {
                let steeper = Arg::Degrees(self.steepens_deg, 0, Round::Nearest);
                voice.say("look-steepens", &[("steeper", steeper)])
            }
        };
        let args = [
            self.level(),
            ("leg", Arg::Count(self.leg.leg)),
            ("named", Arg::yes(self.named)),
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
        let found = found_at(leg, stage?, finding, (place.from_m, place.height_m))?;
        Some(LookPoint {
            named: true,
            ..found
        })
    });
    let rolls = leg.look_here.iter().filter(|_| leg.roped);
    let rolls = rolls.map(|roll| LookPoint {
        number: 0,
        leg,
        sort: LookSort::RollOver,
        at_m: roll.at_m,
        at: LonLat::new(roll.at[0], roll.at[1]),
        height_m: roll.height_m,
        finding: None,
        named: false,
        steepens_deg: roll.steepens_deg,
    });
    let found: Vec<LookPoint<'a>> = found.collect();
    let more = further_stops(leg, stage, &found);
    let mut all: Vec<LookPoint<'a>> = found.into_iter().chain(rolls).chain(more).collect();
    all.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    for (number, look) in (1..).zip(&mut all) {
        look.number = number;
    }
    all
}

/// A place at which something was found that has a sign, at this chainage and height; not yet numbered.
fn found_at<'a>(
    leg: &'a Leg,
    stage: &Stage,
    finding: &'a Finding,
    (at_m, height_m): (f64, Option<f64>),
) -> Option<LookPoint<'a>> {
    Some(LookPoint {
        number: 0,
        leg,
        sort: LookSort::of(finding)?,
        at_m,
        at: stage.at(at_m)?,
        height_m,
        finding: Some(finding),
        named: false,
        steepens_deg: 0.0,
    })
}

/// Where the leg stops besides: a finding of falls or of steepness names its worst place only. One for each piece of the leg
/// that stops and holds none of those that are `known`.
fn further_stops<'a>(
    leg: &'a Leg,
    stage: Option<&Stage>,
    known: &[LookPoint<'a>],
) -> Vec<LookPoint<'a>> {
    let pieces = leg.pieces().into_iter();
    let stops = pieces.filter(|piece| piece.verdict == Verdict::Stop);
    let more = stops.filter_map(|piece| {
        let within = |m: f64| m >= piece.from_m - 1e-6 && m <= piece.to_m + 1e-6;
        if known.iter().any(|look| look.stops() && within(look.at_m)) {
            return None;
        }
        let mut begins = leg.stretches.iter().filter(|s| within(s.from_m));
        let first = begins.find(|s| s.verdict == Verdict::Stop)?;
        let finding = leg.findings.iter().find(|f| f.code() == first.code)?;
        found_at(leg, stage?, finding, (first.from_m, first.height_m))
    });
    more.collect()
}
