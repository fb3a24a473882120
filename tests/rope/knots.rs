//! When brake knots count.
