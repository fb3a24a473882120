//! The closed list of codes with what each means, for looking one up.

use crate::{
    fault::{Code, Level, code::told},
    plan::fact::Fact,
};

/// A kind of complaint, for looking it up.
///
/// ```
/// use schrund::{fault::Level, plan::explained::explained};
///
/// // What to look up for a code that a plan shows.
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let code = plan.legs[1].findings[0].code();
/// let kind = explained().find(|kind| kind.code == code).expect("every code is explained");
/// assert_eq!((kind.code, kind.level), ("fall-not-held-in-the-middle-case", Level::Look));
/// assert!(kind.text.contains("What to do: put more people on the rope"), "{}", kind.text);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Explained {
    /// The stable name.
    pub code: &'static str,
    /// How much it matters.
    pub level: Level,
    /// What it means and what to do, in a few sentences; broken into lines as they are written.
    pub text: String,
}

/// The closed list: what can be wrong with inputs, then what a plan can find.
pub fn explained() -> impl Iterator<Item = Explained> {
    let faults = Code::ALL.iter().map(|code| Explained {
        code: code.as_str(),
        level: code.level(),
        text: code.explain(),
    });
    let facts = Fact::KINDS.iter();
    // One kind can be found by both: an assumed gap, file by file and zone by zone.
    let own = facts.filter(|(code, ..)| Code::ALL.iter().all(|known| known.as_str() != *code));
    faults.chain(own.map(|&(code, level, doc)| Explained {
        code,
        level,
        text: told(doc),
    }))
}
