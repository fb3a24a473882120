//! Places where the set-up changes: rope up, unrope. Nobody is told to unrope on ice.

use crate::{
    plan::{
        fact::Fact,
        finding::{At, LegPlace},
        leg::Leg,
        off::RopeOff,
    },
    say::{arg::Arg, place, round::Round, span::Said, voice::Voice},
    trip::clock::Clock,
    write::{
        parts::{popup, sentence},
        sheet::Sheet,
    },
};

/// One place where the team stops to handle the rope.
///
/// ```
/// use schrund::{say::voice::Voice, write::{Scene, Sheet, parts::change::changes}};
///
/// let job = schrund::example::job()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let changes = changes(&Sheet::of(&job, &plan, &scene));
/// assert_eq!(changes[0].title(Voice::default()).to_string(), "A. Rope up");
/// assert_eq!(changes[0].utm.as_deref(), Some("31W 455524 7377205"));
/// assert_eq!(changes[0].clock.map(|clock| clock.to_string()).as_deref(), Some("06:08"));
/// assert_eq!(changes[0].height(Voice::default()).as_deref(), Some("1330 m"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct ChangePoint<'a> {
    /// Number from 1 over the whole plan; it is shown as [`ChangePoint::letter`].
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
    /// Height, metres: an altimeter works in cloud. Absent where none is known.
    pub height_m: Option<f64>,
    /// What is done there.
    pub kind: ChangeKind,
    /// The roped leg that begins or ends here; of ice without a rope the leg that it lies on.
    pub leg: &'a Leg,
}

/// What is done at a change.
///
/// ```
/// use schrund::write::{Scene, Sheet, parts::change::{ChangeKind::{EndsOnIce, OffByWord, OntoIce, RopeUp}, changes}};
///
/// let job = schrund::example::pair()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let changes = changes(&Sheet::of(&job, &plan, &scene));
/// let kinds: Vec<_> = changes.iter().map(|change| (change.kind, change.leg.leg)).collect();
/// // From behind a jump on all of it is ice: nobody is told to unrope, and where it begins these two are not roped.
/// assert_eq!(kinds, [(OntoIce, 1), (RopeUp, 2), (OffByWord, 2), (RopeUp, 4), (EndsOnIce, 4)]);
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
    /// Onto ice without a rope, because the leader says so.
    OntoIce,
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
            Self::OntoIce => "on to ice, unroped by your word",
        }
    }

    /// To which side its chainage is rounded where it is shown: nobody ropes up later than was worked out, or unropes
    /// earlier; where the line ends nobody goes on.
    #[must_use]
    pub fn round(self) -> Round {
        match self {
            Self::RopeUp | Self::OntoIce => Round::Down,
            Self::Unrope | Self::OffByWord => Round::Up,
            Self::EndsOnIce => Round::Nearest,
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
            Self::OntoIce => voice.say("change-onto-ice", &[]),
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
    /// `A`, `B`, … `Z`, `AA`: legs are numbered, changes lettered.
    #[must_use]
    pub fn letter(&self) -> String {
        letter(self.number)
    }

    /// `C. Rope up`.
    #[must_use]
    pub fn title(&self, voice: Voice) -> Said {
        let args = [
            ("letter", Arg::Figure(self.letter())),
            ("what", Arg::Said(self.kind.says(voice).capital())),
        ];
        voice.say("change-title", &args)
    }

    /// The height in whole metres or feet.
    #[must_use]
    pub fn height(&self, voice: Voice) -> Option<String> {
        Some(voice.shown(&Arg::Whole(self.height_m?)).to_string())
    }

    /// When and how high it is, and what is done here, in sentences; without what [`ChangePoint::alarm`] says.
    #[must_use]
    pub fn description(&self, voice: Voice) -> Said {
        let leg = [("leg", Arg::Count(self.leg.leg))];
        let done = match self.kind {
            ChangeKind::RopeUp => popup::leg_after_alarm(self.leg, voice),
            ChangeKind::Unrope => voice.say("change-end", &leg),
            ChangeKind::OffByWord => voice.say("change-end-by-word", &leg),
            ChangeKind::EndsOnIce => voice.say("change-end-on-ice", &leg),
            ChangeKind::OntoIce => voice.say("change-begin-on-ice", &leg),
        };
        let when = sentence::spot(self.clock, self.height_m, voice);
        let when = when.map(|when| when.capital().then("."));
        Said::join(when.into_iter().chain([done]), " ")
    }

    /// Where a leg begins that stops the team or is outside the limits: the gravest thing found on it and what to do about
    /// it, in a sentence to be read before all else.
    #[must_use]
    pub fn alarm(&self, voice: Voice) -> Option<Said> {
        let begins = matches!(self.kind, ChangeKind::RopeUp | ChangeKind::OntoIce);
        begins.then(|| popup::alarm(self.leg, voice)).flatten()
    }

    /// The alarm, if there is one, and the description.
    #[must_use]
    pub fn told(&self, voice: Voice) -> Said {
        let alarm = self.alarm(voice).into_iter();
        Said::join(alarm.chain([self.description(voice)]), " ")
    }
}

/// The letter of a number from 1: after `Z` comes `AA`.
pub(crate) fn letter(number: usize) -> String {
    let mut left = number;
    let mut letters = Vec::new();
    while let Some(before) = left.checked_sub(1) {
        letters.extend(('A'..='Z').nth(before % 26));
        left = before / 26;
    }
    letters.iter().rev().collect()
}

/// One end of a roped leg.
struct LegEnd {
    kind: ChangeKind,
    at_m: f64,
    at: [f64; 2],
    clock: Option<Clock>,
    height_m: Option<f64>,
}

/// Where an unroped leg comes onto ice by the leader's word. Where it begins there, behind a roped leg, the rope has just come
/// off, and that is said.
fn onto_ice(leg: &Leg, before: Option<&Leg>) -> Vec<LegEnd> {
    let after_rope = before.is_some_and(|before| before.roped && before.stage == leg.stage);
    let places = leg
        .findings
        .iter()
        .filter_map(|found| match (found.fact()?, &found.at) {
            (
                &Fact::UnropedByWord {
                    onto_clock,
                    onto_height_m,
                    ..
                },
                At::Leg(place),
            ) => Some((place, onto_clock, onto_height_m)),
            _ => None,
        });
    let begins = |place: &LegPlace| place.from_m - leg.start_m < 1e-6;
    let told = places.filter(|(place, ..)| !(after_rope && begins(place)));
    let end = told.map(|(place, clock, height_m)| LegEnd {
        kind: ChangeKind::OntoIce,
        at_m: place.from_m,
        at: place.lon_lat,
        clock,
        height_m,
    });
    end.collect()
}

/// All changes in walking order: two for each roped leg, and one wherever an unroped one comes onto ice by the leader's word.
#[must_use]
pub fn changes<'a>(sheet: &Sheet<'a>) -> Vec<ChangePoint<'a>> {
    let ends = |leg: &'a Leg| {
        [
            LegEnd {
                kind: ChangeKind::RopeUp,
                at_m: leg.start_m,
                at: leg.start,
                clock: leg.start_clock,
                height_m: leg.start_height_m,
            },
            LegEnd {
                kind: ChangeKind::at_end(leg),
                at_m: leg.end_m,
                at: leg.end,
                clock: leg.end_clock,
                height_m: leg.end_height_m,
            },
        ]
    };
    let legs = &sheet.plan.legs;
    let before = std::iter::once(None).chain(legs.iter().map(Some));
    let places = legs.iter().zip(before).flat_map(|(leg, before)| {
        let of_leg = match leg.roped {
            true => ends(leg).into(),
            false => onto_ice(leg, before),
        };
        of_leg.into_iter().map(move |end| (leg, end))
    });
    places
        .enumerate()
        .map(|(i, (leg, end))| ChangePoint {
            number: i + 1,
            stage: leg.stage,
            at_m: end.at_m,
            at: end.at,
            degrees: place::degrees(end.at),
            utm: place::utm(end.at),
            clock: end.clock,
            height_m: end.height_m,
            kind: end.kind,
            leg,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_go_on_after_z() {
        let shown = [0, 1, 2, 26, 27, 52, 53, 702, 703].map(letter);
        assert_eq!(shown, ["", "A", "B", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
    }
}
