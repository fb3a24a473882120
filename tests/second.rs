//! The rules of the trade written down a second time, slowly and plainly, and many random trips planned by both.
//!
//! Nothing here shares code with the library: lines are cut by exact fractions, margins are found by halving, spacings by
//! trying one after the other. The library is only asked for plans, files in and JSON out. Where the rules leave a
//! choice, the comment beside it says which reading was taken.
//!
//! `parts::PARTS` says what is compared and which differences fail; `parts::EXPLAINED` holds those that are known.
//! One trip again: `SECOND_SEED=17 cargo test --test rooms second::one -- --ignored --nocapture`.

mod case;
mod compare;
mod dice;
mod exact;
mod figures;
mod files;
mod gap;
mod hole;
mod ice;
mod line;
mod many;
mod meet;
mod odd;
mod parts;
mod plan;
mod random;
mod rope;
mod shapes;
mod slope;
mod stretch;
mod worked;
