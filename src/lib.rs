//! Plans the rope set-up of a team for every leg of a glacier route.
//!
//! Each arrow is one folder, each thing carried along it is one file:
//!
//! ```text
//! GPX, GeoJSON, TOML ─read▶ Route, Zones, Trip ─split▶ Legs ─rope▶ Plan ─write▶ table, GeoJSON, JSON, CSV …
//!                                                       ▲
//!                                 rules (practice) ─────┴───── physics (nature)
//! ```
#![warn(clippy::print_stdout, clippy::print_stderr)]

pub mod problem;

pub mod geometry;
pub mod physics;
pub mod terrain;

pub mod clock;
pub mod rules;

pub mod pace;
pub mod profile;
pub mod relief;
pub mod route;
pub mod team;
pub mod zone;

pub mod leg;
pub mod options;
pub mod plan;

pub mod read;

pub mod ground;
pub mod split;

pub mod rope;

pub mod planning;

pub mod write;

pub use planning::{Job, plan};
