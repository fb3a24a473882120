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
    ///
    /// ```
    /// use schrund::practice::{Knots, Rule};
    ///
    /// let mut job = schrund::example::job()?;
    /// job.rules.choices.knots.value = Knots::Always;
    /// let ledger = &schrund::plan(&job)?.legs[1].teams[0].ledger;
    /// let six_m = 6.0 * job.rules[Rule::KnotRopeM];
    /// assert!((ledger.knots_m - six_m).abs() < 1e-9, "three from either end, 1.2 m of rope each: {ledger:?}");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
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
    ///
    /// ```
    /// use schrund::practice::{Reserve, Rule};
    ///
    /// let mut job = schrund::example::job()?;
    /// let coil_m = |job: &schrund::Job| schrund::plan(job).map(|plan| plan.legs[1].teams[0].coil_m);
    /// let reach_m = job.rules[Rule::ReachFactor] * 13.5;
    /// assert_eq!(coil_m(&job)?, reach_m - 13.5, "a loop of 1.5 × the spacing, less the span itself");
    /// job.rules.choices.reserve.value = Reserve::ChestCoils;
    /// assert_eq!(coil_m(&job)?, 0.0, "three of the set arm-span carry no chest coils");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
    Reserve {
        /// As much as a drop loop needs: reach factor × spacing.
        #[default]
        Reach "reach",
        /// A number of chest coils.
        ChestCoils "chest-coils",
    }
    /// Whose fall the spare rope must reach.
    ///
    /// ```
    /// use schrund::{Job, practice::Cover};
    ///
    /// let mut job = schrund::example::job()?;
    /// let coil_m = |job: &Job| schrund::plan(job).map(|plan| plan.legs[1].teams[0].coil_m);
    /// assert_eq!(coil_m(&job)?, 6.75, "for an end person: a loop of 1.5 × 13.5 m less the span itself");
    /// job.rules.choices.cover.value = Cover::Anyone;
    /// assert_eq!(coil_m(&job)?, 20.25, "for the one in the middle either end carries the loop whole");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
    Cover {
        /// An end person; what is missing for a middle one is printed.
        #[default]
        Ends "ends",
        /// Anyone on the rope.
        Anyone "anyone",
    }
    /// How the party travels; changes pace and habit.
    ///
    /// ```
    /// use schrund::practice::{Rule, Travel};
    ///
    /// let mut job = schrund::example::job()?;
    /// let walk_min = |job: &schrund::Job| schrund::plan(job).map(|plan| plan.legs[0].time_min);
    /// let on_foot_min = walk_min(&job)?;
    /// job.rules.choices.travel.value = Travel::Snowshoe;
    /// let slower = walk_min(&job)? / on_foot_min;
    /// assert!((slower - job.rules[Rule::SnowshoeFactor]).abs() < 1e-9, "1.25 times as long");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
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
        /// It is told, and roped only where a zone says so: the rest is walked on the leader's word.
        Tell "tell",
    }
    /// By which rule walking times are reckoned.
    ///
    /// ```
    /// use schrund::practice::{Pace, Rule};
    ///
    /// let mut job = schrund::example::job()?;
    /// job.rules.choices.pace.value = Pace::Naismith;
    /// let leg = &schrund::plan(&job)?.legs[0];
    /// let way_h = leg.length_m / 1000.0 / job.rules[Rule::NaismithKmh];
    /// let climb_h = leg.ascent_m.unwrap_or(0.0) / job.rules[Rule::NaismithMPerH];
    /// assert!((leg.time_min - 60.0 * (way_h + climb_h)).abs() < 1e-6, "the way plus the climb");
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
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
        ///
        /// ```
        /// use schrund::{physics::assumed::Snow, practice::{Choices, Origin}};
        ///
        /// let mut choices = Choices::default();
        /// assert!(choices.set_word("snow", "firm", Origin::Flag));
        /// assert_eq!((choices.snow.value, choices.snow.standing.as_str()), (Snow::Firm, "the leader's word"));
        /// assert!(!choices.set_word("snow", "sugar", Origin::Flag), "no such word: nothing changes");
        /// assert_eq!(Choices::words("knots"), Some(vec!["auto", "always", "never"]));
        /// ```
        #[derive(Clone, Debug, PartialEq)]
        pub struct Choices { $($(#[doc = $doc])+ pub $name: Word<$type>,)+ }

        /// Words that somebody chose; the others stay as they are.
        ///
        /// ```
        /// use schrund::practice::{Choices, Chosen, Knots, Origin, Travel};
        ///
        /// let mut choices = Choices::default();
        /// choices.lay(&Chosen { travel: Some(Travel::Ski), ..Chosen::default() }, &Origin::Trip);
        /// assert_eq!((choices.travel.value, choices.travel.origin), (Travel::Ski, Origin::Trip));
        /// assert_eq!(choices.knots.value, Knots::Auto, "not chosen, not changed");
        /// assert_eq!(choices.knots.origin, Origin::Default);
        /// ```
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
