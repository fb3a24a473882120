//! Which rope is given to whom.
