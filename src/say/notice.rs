//! What reading the inputs noticed, in words.

use crate::fault::Problem;

use super::span::Said;

/// What was noticed.
#[must_use]
pub fn says(notice: &Problem) -> Said {
    Said::with_code(&notice.says)
}

/// What to do about it, if there is a way.
#[must_use]
pub fn hint(notice: &Problem) -> Option<Said> {
    notice.hint.as_deref().map(Said::with_code)
}
