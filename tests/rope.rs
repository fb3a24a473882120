//! One rope team on one leg.

mod carried;
mod covers;
mod everybody;
mod falls;
mod knots;
mod share;
