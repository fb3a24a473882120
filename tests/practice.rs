//! The figures in force.

mod figures;
mod published;
mod sets;
