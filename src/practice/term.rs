//! Words by their stable names: as data files, plans and flags have them.

use serde_json::Value;

use crate::physics::assumed::Snow;

/// One word of a choice: its name, the word, and what it means in a sentence.
///
/// ```
/// use schrund::practice::{Cover, term::{Term, Terms}};
///
/// let anyone: &Term<Cover> = &Cover::TERMS[1];
/// assert_eq!((anyone.name, anyone.word, anyone.means.trim()), ("anyone", Cover::Anyone, "Anyone on the rope."));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Term<T: 'static> {
    /// As data files, plans and flags have it.
    pub name: &'static str,
    /// The word.
    pub word: T,
    /// What it means.
    pub means: &'static str,
}

/// A choice among a few words.
///
/// ```
/// use schrund::practice::{Travel, term::Terms};
///
/// assert_eq!(Travel::named("ski"), Some(Travel::Ski));
/// assert_eq!(Travel::names(), ["foot", "snowshoe", "ski"]);
/// ```
pub trait Terms: Copy + PartialEq + 'static {
    /// The table: everything that reads, lists or offers the words goes by it.
    const TERMS: &'static [Term<Self>];

    /// The word of that name.
    #[must_use]
    fn named(name: &str) -> Option<Self> {
        let term = Self::TERMS.iter().find(|term| term.name == name);
        term.map(|term| term.word)
    }

    /// The name of the word.
    #[must_use]
    fn name(self) -> &'static str {
        let term = Self::TERMS.iter().find(|term| term.word == self);
        term.map_or("", |term| term.name)
    }

    /// All names, in the order of the table.
    #[must_use]
    fn names() -> Vec<&'static str> {
        Self::TERMS.iter().map(|term| term.name).collect()
    }

    /// The word as plans list it.
    #[must_use]
    fn value(self) -> Value {
        Value::from(self.name())
    }
}

/// An enum whose words, names and meanings are one table.
macro_rules! terms {
    ($($(#[doc = $doc:literal])+ $name:ident {
        $($(#[doc = $means:literal])+ $(#[$default:meta])? $variant:ident $term:literal,)+
    })+) => {
        $($(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Deserialize, serde::Serialize, schemars::JsonSchema)]
        pub enum $name {
            $($(#[doc = $means])+ $(#[$default])? #[serde(rename = $term)] $variant,)+
        }

        impl $crate::practice::term::Terms for $name {
            const TERMS: &'static [$crate::practice::term::Term<Self>] = &[$(
                $crate::practice::term::Term {
                    name: $term,
                    word: Self::$variant,
                    means: concat!($($means),+),
                },
            )+];
        })+
    };
}
pub(crate) use terms;

impl Terms for bool {
    const TERMS: &'static [Term<Self>] = &[
        Term {
            name: "true",
            word: true,
            means: "Yes.",
        },
        Term {
            name: "false",
            word: false,
            means: "No.",
        },
    ];

    fn value(self) -> Value {
        Value::Bool(self)
    }
}

impl Terms for Snow {
    const TERMS: &'static [Term<Self>] = &[
        Term {
            name: "soft",
            word: Self::Soft,
            means: "Fresh or wet: one sinks in.",
        },
        Term {
            name: "settled",
            word: Self::Settled,
            means: "Old snow that has settled.",
        },
        Term {
            name: "firm",
            word: Self::Firm,
            means: "Firm firn: boots leave shallow prints.",
        },
        Term {
            name: "refrozen",
            word: Self::Refrozen,
            means: "Frozen crust: boots scratch.",
        },
        Term {
            name: "ice",
            word: Self::Ice,
            means: "Ice underfoot: hidden gaps stay hidden.",
        },
    ];
}
