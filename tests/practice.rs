//! The figures in force.

mod published;
mod sets;
