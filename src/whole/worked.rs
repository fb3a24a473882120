//! All that the rooms made of a job, and the plan of it.

use std::cell::RefCell;

use crate::{
    judge::falls_on::falls_on,
    legs::sketch::Sketch,
    plan::{Plan, SCHEMA_VERSION, depth::Depth, figures::PlanFigures, leg::Leg},
    rope::{answers::KnownFalls, legs::RopedLeg, share::Shared, trade::Trade},
    times::hours::Hours,
    trip::{job::Brief, party::RopeTeam},
    whole::{
        assumptions::assumptions, carry::carry, clock::clock, field::field, findings::findings,
        gear::gear, keep::keep, route::route, spares::spares, zones::zones,
    },
};

/// All that the rooms made of a job, before it becomes a plan or the figures of a track.
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

impl Worked<'_> {
    /// The plan of all that was worked out.
    pub(crate) fn plan(self, job: &Brief<'_>, depth: Depth, falls: &RefCell<KnownFalls>) -> Plan {
        let Self {
            teams,
            stages,
            legs,
            hours,
            demands_m,
            trade,
            ropes,
            planned,
        } = self;
        let keep = || keep(job, legs, ropes, falls);
        let spares = spares(job, &planned);
        Plan {
            schema_version: SCHEMA_VERSION,
            route: route(job, stages, hours),
            zones: zones(job, stages),
            clock: clock(job, legs, hours, &planned),
            carry: carry(job, teams, legs, demands_m, ropes, trade),
            field: field(job, teams, legs, ropes),
            gear: gear(job.rules, teams, legs, &planned),
            keep_setup: (depth == Depth::Whole).then(keep).flatten(),
            falls_on: falls_on(job, legs, depth, falls),
            findings: findings(job, stages, legs, hours, (&planned, &spares)),
            spares,
            assumptions: assumptions(job),
            figures: PlanFigures::of(job.rules),
            legs: planned,
        }
    }
}
