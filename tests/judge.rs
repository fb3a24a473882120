//! What is found on a leg.

mod findings;
mod jumps;
mod verdicts;
