//! The stages of a route, for who named none of them.

use super::{phrase::row, place::numbered};
use crate::say::{arg::Arg, span::Said, voice::Voice};

/// The stages there are, by number and name.
pub(super) fn stages(has: &[(usize, Option<String>)], voice: Voice) -> Arg<'static> {
    let stage = |(number, called): &(usize, Option<String>)| -> Said {
        let keys = ["trip-stage", "trip-stage-named"];
        numbered(keys, *number, called.clone(), Vec::new()).says(voice)
    };
    row(has.iter().map(stage))
}
