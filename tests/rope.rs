//! One rope team on one leg.

mod covers;
mod falls;
mod knots;
mod share;
