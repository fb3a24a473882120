//! The rope engine: falls, hauls, margins, set-ups kept, and everything a plan rests on.
#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot go on is a test that failed"
)]

#[path = "engine/assumptions.rs"]
mod assumptions;
#[path = "engine/falls.rs"]
mod falls;
#[path = "engine/findings.rs"]
mod findings;
#[path = "engine/keeping.rs"]
mod keeping;
#[path = "engine/made.rs"]
mod made;
#[path = "engine/margins.rs"]
mod margins;
#[path = "engine/shown.rs"]
mod shown;
