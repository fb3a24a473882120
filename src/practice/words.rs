//! One word in force, with what stands behind it and who put it there.

use serde_json::Value;

use crate::practice::standing::{Origin, Standing};

/// A word in force, and what stands behind it.
///
/// ```
/// use schrund::practice::{Origin, Pace, Standing, words::Word};
///
/// let mut pace = Word::default_of(Pace::Din, Standing::Judgement);
/// pace.set(None, Origin::Flag);
/// assert_eq!(pace.origin, Origin::Default, "nobody said anything");
/// pace.set(Some(Pace::Munter), Origin::Flag);
/// assert_eq!((pace.value, pace.standing), (Pace::Munter, Standing::Leader));
/// ```
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
    /// A word that nobody chose.
    #[must_use]
    pub fn default_of(value: T, standing: Standing) -> Self {
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

    /// The same, and whether there was one.
    pub fn put(&mut self, value: Option<T>, origin: Origin) -> bool {
        let known = value.is_some();
        self.set(value, origin);
        known
    }

    /// Ready to be listed.
    #[must_use]
    pub fn said(&self, name: &'static str, says: &'static str, value: Value) -> WordInForce {
        WordInForce {
            name,
            says,
            value,
            standing: self.standing,
            origin: self.origin,
        }
    }
}

impl<T: Clone> Word<T> {
    /// Takes over what the trip file or a flag put in force.
    pub(super) fn keep(&mut self, from: &Self) {
        if matches!(from.origin, Origin::Trip | Origin::Flag) {
            *self = from.clone();
        }
    }
}

/// One word in force, ready to be listed.
///
/// ```
/// use schrund::practice::{Choices, Standing, words::WordInForce};
///
/// let said: Vec<WordInForce> = Choices::default().said();
/// let bare = said.iter().find(|word| word.name == "rope_on_bare").expect("it is listed");
/// assert!(bare.value == true && bare.standing == Standing::Judgement);
/// assert_eq!(bare.says, "whether bare ice is roped where the zone does not say");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct WordInForce {
    /// The name that sets it.
    pub name: &'static str,
    /// What it is.
    pub says: &'static str,
    /// The word; null for a time that nobody gave.
    pub value: Value,
    /// What stands behind it.
    pub standing: Standing,
    /// Who put it in force.
    pub origin: Origin,
}
