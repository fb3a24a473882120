//! All that the rooms made of a job, before it becomes a plan or the figures of a track.

use crate::{
    legs::sketch::Sketch,
    plan::leg::Leg,
    rope::{legs::RopedLeg, share::Shared, trade::Trade},
    times::hours::Hours,
    trip::party::RopeTeam,
};

/// All that the rooms made of a job.
pub(crate) struct Worked<'w> {
    pub(crate) teams: &'w [RopeTeam],
    pub(crate) stages: &'w [Sketch<'w>],
    pub(crate) legs: &'w [RopedLeg<'w>],
    pub(crate) hours: &'w [Hours],
    pub(crate) demands_m: &'w [f64],
    pub(crate) trade: &'w Trade,
    pub(crate) ropes: &'w Shared,
    /// The legs as they are handed out.
    pub(crate) planned: Vec<Leg>,
}
