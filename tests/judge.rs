//! What is found on a leg.

mod findings;
