//! What is found on a leg.

mod cure;
mod findings;
mod jumps;
mod verdicts;
