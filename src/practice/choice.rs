//! The words of a practice set that are not figures.

use serde::{Deserialize, Serialize};

use crate::practice::{Origin, Standing};
use crate::{physics::assumed::Snow, trip::clock::Clock};

/// When brake knots are tied.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Knots {
    /// Two people: where the snow lets them work. Three: when holding is harder. More: none.
    #[default]
    Auto,
    /// Two and three people always tie them.
    Always,
    /// Nobody ties them.
    Never,
}

/// How much spare rope the end persons carry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reserve {
    /// As much as a drop loop needs: reach factor × spacing.
    #[default]
    Reach,
    /// A number of chest coils.
    ChestCoils,
}

/// Whose fall the spare rope must reach.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cover {
    /// An end person; what is missing for a middle one is printed.
    #[default]
    Ends,
    /// Anyone on the rope.
    Anyone,
}

/// How the party travels; changes pace and habit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Travel {
    /// On foot.
    #[default]
    Foot,
    /// On snowshoes.
    Snowshoe,
    /// On skis.
    Ski,
}

/// By which rule walking times are reckoned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pace {
    /// Time for the way and time for the heights: the longer plus half the shorter.
    #[default]
    Din,
    /// Effort units (km and hundreds of metres) by a rate up, a rate down, a rate on skis.
    Munter,
    /// Time for the way plus time for the climb; nothing for the descent.
    Naismith,
}

/// A word in force, and what stands behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Word<T> {
    /// The word.
    pub value: T,
    /// What stands behind it.
    pub standing: Standing,
    /// Who put it in force.
    pub origin: Origin,
}

impl<T> Word<T> {
    fn default_of(value: T, standing: Standing) -> Self {
        Self {
            value,
            standing,
            origin: Origin::Default,
        }
    }

    /// Puts another word in force, if there is one.
    pub fn set(&mut self, value: Option<T>, origin: Origin) {
        if let Some(value) = value {
            let standing = match origin {
                Origin::Trip | Origin::Flag => Standing::Leader,
                Origin::Default | Origin::Practice => Standing::Judgement,
            };
            *self = Self {
                value,
                standing,
                origin,
            };
        }
    }
}

/// The words in force.
#[derive(Clone, Debug, PartialEq)]
pub struct Choices {
    /// When brake knots are tied.
    pub knots: Word<Knots>,
    /// How much spare rope.
    pub reserve: Word<Reserve>,
    /// For whom.
    pub cover: Word<Cover>,
    /// Whether bare ice is roped where the zone does not say.
    pub rope_on_bare: Word<bool>,
    /// How the party travels.
    pub travel: Word<Travel>,
    /// By which rule walking times are reckoned.
    pub pace: Word<Pace>,
    /// Whether a strike proposed from the ground enters the arithmetic; it can only lengthen the way over a gap.
    pub use_proposed_strike: Word<bool>,
    /// When the party starts each stage, if the leader says so.
    pub start: Word<Option<Clock>>,
    /// Until when the leader trusts snow bridges, if they say so.
    pub bridges_until: Word<Option<Clock>>,
    /// What the team stands on where there is snow, for the fall model.
    pub snow: Word<Snow>,
}

impl Choices {
    /// Takes over what the trip file or a flag put in force.
    pub(super) fn keep_leaders(&mut self, from: &Self) {
        keep(&mut self.knots, &from.knots);
        keep(&mut self.reserve, &from.reserve);
        keep(&mut self.cover, &from.cover);
        keep(&mut self.rope_on_bare, &from.rope_on_bare);
        keep(&mut self.travel, &from.travel);
        keep(&mut self.pace, &from.pace);
        keep(&mut self.use_proposed_strike, &from.use_proposed_strike);
        keep(&mut self.start, &from.start);
        keep(&mut self.bridges_until, &from.bridges_until);
        keep(&mut self.snow, &from.snow);
    }
}

fn keep<T: Clone>(word: &mut Word<T>, from: &Word<T>) {
    if matches!(from.origin, Origin::Trip | Origin::Flag) {
        *word = from.clone();
    }
}

impl Default for Choices {
    fn default() -> Self {
        Self {
            knots: Word::default_of(Knots::default(), Standing::Practice),
            reserve: Word::default_of(Reserve::default(), Standing::Practice),
            cover: Word::default_of(Cover::default(), Standing::Practice),
            rope_on_bare: Word::default_of(true, Standing::Judgement),
            travel: Word::default_of(Travel::default(), Standing::Judgement),
            pace: Word::default_of(Pace::default(), Standing::Judgement),
            use_proposed_strike: Word::default_of(false, Standing::Judgement),
            start: Word::default_of(None, Standing::Leader),
            bridges_until: Word::default_of(None, Standing::Leader),
            snow: Word::default_of(Snow::default(), Standing::Judgement),
        }
    }
}
