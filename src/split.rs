//! Route × zones → legs: where the line crosses the ice, and which stretches of it are walked on the rope.

pub mod angle;
pub mod contact;
pub mod crossing;
pub mod stretch;
pub mod worst;

pub use contact::{Contact, contacts};
