//! One rope team on one leg.

mod carried;
mod covers;
mod cure;
mod everybody;
mod falls;
mod knots;
mod places;
mod share;
