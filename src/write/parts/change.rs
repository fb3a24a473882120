//! Places where the set-up changes: rope up, unrope. Nobody is told to unrope on ice.

use crate::{
    plan::{leg::Leg, off::RopeOff},
    say::{arg::Arg, place, round::Round, span::Said, voice::Voice},
    trip::clock::Clock,
    write::{parts::sentence, sheet::Sheet},
};

/// One place where the team stops to handle the rope.
///
/// ```
/// use schrund::{say::voice::Voice, write::{Scene, Sheet, parts::change::changes}};
///
/// let job = schrund::example::job()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let changes = changes(&Sheet::of(&job, &plan, &scene));
/// assert_eq!(changes[0].title(Voice::default()).to_string(), "1. Rope up");
/// assert_eq!(changes[0].utm.as_deref(), Some("31W 455524 7377205"));
/// assert_eq!(changes[0].clock.map(|clock| clock.to_string()).as_deref(), Some("06:08"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct ChangePoint<'a> {
    /// Number from 1 over the whole plan.
    pub number: usize,
    /// Number of the stage.
    pub stage: usize,
    /// Chainage of the first person.
    pub at_m: f64,
    /// Longitude, latitude.
    pub at: [f64; 2],
    /// The same in decimal degrees, for reading.
    pub degrees: String,
    /// The same in the UTM grid; absent near the poles.
    pub utm: Option<String>,
    /// Time of day: when roping up begins, or when unroping is done; absent where nobody said when to start.
    pub clock: Option<Clock>,
    /// What is done there.
    pub kind: ChangeKind,
    /// The roped leg that begins or ends here.
    pub leg: &'a Leg,
}

/// What is done at a change.
///
/// ```
/// use schrund::write::{Scene, Sheet, parts::change::{ChangeKind::{EndsOnIce, OffByWord, RopeUp}, changes}};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let changes = changes(&Sheet::of(&job, &plan, &scene));
/// let kinds: Vec<_> = changes.iter().map(|change| (change.kind, change.leg.leg)).collect();
/// // All of it is ice: nobody is told to unrope.
/// assert_eq!(kinds, [(RopeUp, 2), (OffByWord, 2), (RopeUp, 4), (EndsOnIce, 4)]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangeKind {
    /// Onto the rope.
    RopeUp,
    /// Off the rope, where no ice is known.
    Unrope,
    /// Off the rope on ice, because the leader says so.
    OffByWord,
    /// The line ends on ice, the team on the rope.
    EndsOnIce,
}

impl ChangeKind {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::RopeUp => "rope up",
            Self::Unrope => "unrope",
            Self::OffByWord => "rope off by your word",
            Self::EndsOnIce => "route ends on ice",
        }
    }

    /// To which side its chainage is rounded where it is shown: nobody ropes up later than was worked out, or unropes
    /// earlier.
    #[must_use]
    pub fn round(self) -> Round {
        match self {
            Self::RopeUp => Round::Down,
            Self::Unrope | Self::OffByWord | Self::EndsOnIce => Round::Up,
        }
    }

    /// The words.
    #[must_use]
    pub fn says(self, voice: Voice) -> Said {
        match self {
            Self::RopeUp => voice.say("change-rope-up", &[]),
            Self::Unrope => voice.say("change-unrope", &[]),
            Self::OffByWord => voice.say("change-off-by-word", &[]),
            Self::EndsOnIce => voice.say("change-ends-on-ice", &[]),
        }
    }

    /// What is done where a roped leg ends.
    fn at_end(leg: &Leg) -> Self {
        match leg.rope_off {
            Some(RopeOff::ByWord) => Self::OffByWord,
            Some(RopeOff::EndsOnIce) => Self::EndsOnIce,
            Some(RopeOff::Unrope) | None => Self::Unrope,
        }
    }
}

impl ChangePoint<'_> {
    /// `3. Rope up`.
    #[must_use]
    pub fn title(&self, voice: Voice) -> Said {
        let args = [
            ("number", Arg::Count(self.number)),
            ("what", Arg::Said(self.kind.says(voice).capital())),
        ];
        voice.say("change-title", &args)
    }

    /// What is done here, in sentences.
    #[must_use]
    pub fn description(&self, voice: Voice) -> Said {
        let key = match self.kind {
            ChangeKind::RopeUp => return sentence::leg_description(self.leg, voice),
            ChangeKind::Unrope => "change-end",
            ChangeKind::OffByWord => "change-end-by-word",
            ChangeKind::EndsOnIce => "change-end-on-ice",
        };
        voice.say(key, &[("leg", Arg::Count(self.leg.leg))])
    }
}

/// All changes in walking order: two for each roped leg.
#[must_use]
pub fn changes<'a>(sheet: &Sheet<'a>) -> Vec<ChangePoint<'a>> {
    let ends = |leg: &'a Leg| {
        [
            (ChangeKind::RopeUp, leg.start_m, leg.start, leg.start_clock),
            (ChangeKind::at_end(leg), leg.end_m, leg.end, leg.end_clock),
        ]
    };
    let roped = sheet.plan.legs.iter().filter(|leg| leg.roped);
    let places = roped.flat_map(|leg| ends(leg).map(|end| (leg, end)));
    places
        .enumerate()
        .map(|(i, (leg, (kind, at_m, at, clock)))| ChangePoint {
            number: i + 1,
            stage: leg.stage,
            at_m,
            at,
            degrees: place::degrees(at),
            utm: place::utm(at),
            clock,
            kind,
            leg,
        })
        .collect()
}
