//! What reading the inputs noticed, in words.

use crate::fault::Fault;

use super::{fault, span::Said};

/// What was noticed.
#[must_use]
pub fn says(notice: &Fault) -> Said {
    Said::with_code(&fault::says(notice))
}

/// What to do about it, if there is a way.
#[must_use]
pub fn hint(notice: &Fault) -> Option<Said> {
    fault::hint(notice).as_deref().map(Said::with_code)
}
