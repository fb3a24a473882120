//! Every room of the program tried, in the order in which they stand in `src/`: one folder a room, one binary for all.
#![allow(
    clippy::unwrap_used,
    clippy::cast_possible_truncation,
    clippy::float_cmp,
    clippy::result_large_err,
    reason = "tests: what cannot go on has failed, numbers are small, exact values are meant, complaints are met once"
)]

mod fixture;

mod geometry;
mod physics;
mod raster;

mod practice;

mod trip;

mod read;

mod meet;

mod strip;

mod ground;

mod legs;

mod rope;

mod times;

mod judge;

mod whole;

mod options;

mod memory;

mod say;

mod write;

mod fetch;

mod cli;

mod second;

mod house;
mod project;
