//! The choices of a practice set that are no figures: one table of names, words, defaults and meanings.

use crate::{
    physics::assumed::Snow,
    practice::{
        standing::{Origin, Standing},
        term::{Terms, terms},
        words::{Word, WordInForce},
    },
};

terms! {
    /// When brake knots are tied.
    Knots {
        /// Two people: where the snow lets them work. Three: when holding is harder. More: none.
        #[default]
        Auto "auto",
        /// Two and three people always tie them.
        Always "always",
        /// Nobody ties them.
        Never "never",
    }
    /// How much spare rope the end persons carry.
    Reserve {
        /// As much as a drop loop needs: reach factor × spacing.
        #[default]
        Reach "reach",
        /// A number of chest coils.
        ChestCoils "chest-coils",
    }
    /// Whose fall the spare rope must reach.
    Cover {
        /// An end person; what is missing for a middle one is printed.
        #[default]
        Ends "ends",
        /// Anyone on the rope.
        Anyone "anyone",
    }
    /// How the party travels; changes pace and habit.
    Travel {
        /// On foot.
        #[default]
        Foot "foot",
        /// On snowshoes.
        Snowshoe "snowshoe",
        /// On skis.
        Ski "ski",
    }
    /// What is done on ice that the inventory knows and nobody drew.
    UndrawnIce {
        /// It is roped with the base spacing, its gaps unknown.
        #[default]
        Rope "rope",
        /// It is told and walked as the zones alone would have it, by the leader's word.
        Tell "tell",
    }
    /// By which rule walking times are reckoned.
    Pace {
        /// Way and heights, the longer plus half the shorter (DIN 33466).
        #[default]
        Din "din",
        /// Kilometres and hundreds of metres by a rate up, a rate down and one on skis.
        Munter "munter",
        /// Way plus climb; nothing for the descent.
        Naismith "naismith",
    }
}

macro_rules! choices {
    ($($(#[doc = $doc:literal])+ $name:ident: $type:ty = $default:expr, $standing:ident, $says:literal;)+) => {
        /// The words in force.
        #[derive(Clone, Debug, PartialEq)]
        pub struct Choices { $($(#[doc = $doc])+ pub $name: Word<$type>,)+ }

        /// Words that somebody chose; the others stay as they are.
        #[derive(Clone, Debug, Default, PartialEq, Eq)]
        pub struct Chosen { $($(#[doc = $doc])+ pub $name: Option<$type>,)+ }

        impl Default for Choices {
            fn default() -> Self {
                Self { $($name: Word::default_of($default, Standing::$standing),)+ }
            }
        }

        impl Choices {
            /// The names of all choices, in the order they are listed in.
            pub const NAMES: &'static [&'static str] = &[$(stringify!($name),)+];

            /// The words that a name can take; `None` where no choice has that name.
            #[must_use]
            pub fn words(name: &str) -> Option<Vec<&'static str>> {
                match name {
                    $(stringify!($name) => Some(<$type>::names()),)+
                    _ => None,
                }
            }

            /// Every word in force.
            #[must_use]
            pub fn said(&self) -> Vec<WordInForce> {
                vec![$(self.$name.said(stringify!($name), $says, self.$name.value.value()),)+]
            }

            /// Puts a word in force by its name. False where there is no such name or it does not take that word.
            #[must_use]
            pub fn set_word(&mut self, name: &str, text: &str, origin: Origin) -> bool {
                match name {
                    $(stringify!($name) => self.$name.put(<$type>::named(text), origin),)+
                    _ => false,
                }
            }

            /// Puts what was chosen in force.
            pub fn lay(&mut self, chosen: &Chosen, origin: &Origin) {
                $(self.$name.set(chosen.$name, origin.clone());)+
            }

            /// Takes over what the trip file or a flag put in force.
            pub(super) fn keep_leaders(&mut self, from: &Self) {
                $(self.$name.keep(&from.$name);)+
            }
        }
    };
}

choices! {
    /// How the party travels.
    travel: Travel = Travel::default(), Judgement, "how the party travels";
    /// When brake knots are tied.
    knots: Knots = Knots::default(), Practice, "when brake knots are tied";
    /// How much spare rope.
    reserve: Reserve = Reserve::default(), Practice, "how the spare rope is measured";
    /// For whom.
    cover: Cover = Cover::default(), Practice, "whose fall the spare rope must reach";
    /// Whether bare ice is roped where the zone does not say.
    rope_on_bare: bool = true, Judgement, "whether bare ice is roped where the zone does not say";
    /// Whether ice of the inventory on which no zone is drawn is roped or only told.
    undrawn_ice: UndrawnIce = UndrawnIce::default(), Judgement, "whether ice of the inventory on which no zone is drawn is roped or only told";
    /// By which rule walking times are reckoned.
    pace: Pace = Pace::default(), Judgement, "by which rule walking times are reckoned";
    /// Whether a strike proposed from the ground enters the arithmetic; it can only lengthen the way over a gap.
    use_proposed_strike: bool = false, Judgement, "whether a strike proposed from the ground counts";
    /// What the team stands on where there is snow, for the fall model.
    snow: Snow = Snow::default(), Judgement, "what the team stands on where there is snow, for the fall model";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_listed_can_be_set_by_the_name_it_is_listed_under() {
        let mut choices = Choices::default();
        for (i, name) in Choices::NAMES.iter().enumerate() {
            for word in Choices::words(name).unwrap() {
                assert!(choices.set_word(name, word, Origin::Flag), "{name}={word}");
                let said = &choices.said()[i];
                let value = said.value.as_str().map(str::to_owned);
                let shown = value.unwrap_or_else(|| said.value.to_string());
                let want = (word, *name, &Origin::Flag);
                assert_eq!((shown.as_str(), said.name, &said.origin), want);
            }
            let unknown = choices.set_word(name, "no-such-word", Origin::Flag);
            assert!(!unknown, "{name}");
        }
    }

    #[test]
    fn snow_is_called_here_as_in_the_model() {
        assert_eq!(Snow::names(), Snow::ALL.map(Snow::as_str));
    }
}
