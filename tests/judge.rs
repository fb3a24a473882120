//! What is found on a leg.

mod cure;
mod falls_on;
mod findings;
mod halts;
mod jumps;
mod limits;
mod one_by_one;
mod order;
mod teams;
mod verdicts;
