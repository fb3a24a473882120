//! The ground under one stage, ready for its legs: the line, strikes proposed where none is given, roll-overs on the ice.

use std::sync::Arc;

use crate::{
    ground::{
        convex::{Convex, convex},
        line::GroundLine,
        proposal::proposals,
    },
    meet::Contact,
    practice::Rules,
    trip::{job::Brief, route::Stretch, zone::ProposedStrike},
};

/// Everything known about the ground of a stage.
#[derive(Debug)]
pub(crate) struct Underfoot {
    /// What lies under the line, whatever ice is there.
    pub(crate) line: Arc<GroundLine>,
    /// By contact: strikes proposed for zones that give none.
    pub(crate) proposed: Vec<Vec<ProposedStrike>>,
    /// Roll-overs on the ice.
    pub(crate) convex: Vec<Convex>,
}

impl Underfoot {
    /// The ground of a line with what the ice on it makes of it; `ice` says where the line is on any.
    pub(crate) fn of(
        job: &Brief<'_>,
        line: Arc<GroundLine>,
        met: &[Contact],
        ice: &[Stretch],
    ) -> Self {
        let Some(terrain) = job.terrain.filter(|t| !t.is_empty()) else {
            return Self {
                line,
                proposed: Vec::new(),
                convex: Vec::new(),
            };
        };
        Self {
            proposed: met.iter().map(|c| proposed(job, &line, c)).collect(),
            convex: convex(&line.ground, terrain, ice, job.rules),
            line,
        }
    }

    /// The strikes that count in the arithmetic: none, unless the leader wants them to.
    pub(crate) fn counted(&self, rules: &Rules) -> &[Vec<ProposedStrike>] {
        if rules.choices.use_proposed_strike.value {
            &self.proposed
        } else {
            &[]
        }
    }
}

fn proposed(job: &Brief<'_>, line: &GroundLine, contact: &Contact) -> Vec<ProposedStrike> {
    let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
    match zone {
        Some(zone) if zone.strike.is_none() => proposals(&line.ground, &contact.touches, job.rules),
        _ => Vec::new(),
    }
}
