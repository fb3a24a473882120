//! What is in force while trip file and flags are laid over it.

use crate::{practice::Rules, trip::timetable::Timetable};

/// The figures, words and times in force.
///
/// ```
/// use schrund::{fault::Place, practice::Origin, read::trip::{Laid, Trip}};
///
/// let mut laid = Laid::of(schrund::example::job()?.rules);
/// let at = |time: &str| Trip { start: time.parse().ok(), ..Trip::default() };
/// at("05:30").lay_over(&mut laid, &Place::file("trip.toml"), &Origin::Trip)?;
/// at("04:00").lay_over(&mut laid, &Place::default(), &Origin::Flag)?;
/// let start = laid.timetable.start;
/// assert_eq!(start.value.map(|clock| clock.min()), Some(240.0), "the last word counts");
/// assert_eq!(start.origin, Origin::Flag);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// The figures and words.
    pub rules: Rules,
    /// The leader's times of day.
    pub timetable: Timetable,
}

impl Laid {
    /// These rules, and no time yet.
    #[must_use]
    pub fn of(rules: Rules) -> Self {
        Self {
            rules,
            timetable: Timetable::default(),
        }
    }
}
