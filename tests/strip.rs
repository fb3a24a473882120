//! Zones by kilometre: a plan of what was written says what was asked.

mod append;
mod asked;
mod planned;
