//! Ways to split the party and use the ropes.

mod ways;
