//! Hours on the way.

mod clock;
