//! Nouns going in: the line, the ice, who goes with which ropes, and the job that they make together.

pub mod clock;
pub mod day;
mod extent;
pub mod halt;
pub mod job;
pub mod language;
pub mod near;
pub mod party;
pub mod points;
pub mod rope;
pub mod route;
pub mod timetable;
pub mod zone;
