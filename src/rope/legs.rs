//! Every leg of the trip with what lies under it and the drafts of its teams, before ropes are given out.

use crate::{
    cores,
    ground::footing::Footing,
    legs::{
        knots::Hardship,
        over::Over,
        sketch::{LegSketch, Sketch},
        spacing::Spacing,
    },
    practice::Rules,
    rope::draft::Draft,
    trip::{job::Brief, party::RopeTeam, zone::Zone},
};

/// A leg, roped or not, as everything after it sees it.
#[derive(Debug)]
pub(crate) struct RopedLeg<'a> {
    /// Number from 1 over the whole trip.
    pub(crate) number: usize,
    /// Its stage.
    pub(crate) stage: &'a Sketch<'a>,
    /// From where to where, over which contacts.
    pub(crate) sketch: &'a LegSketch,
    /// The zones met, in file order.
    pub(crate) zones: Vec<&'a Zone>,
    /// Whether there is ice beside them whose gaps and snow nobody gave, and that counts in the set-up.
    pub(crate) undrawn: bool,
    /// What lies under it.
    pub(crate) footing: Footing,
    /// What makes holding harder on it, where it is roped.
    pub(crate) hardship: Hardship,
    /// One draft for each team; empty where it is unroped.
    pub(crate) teams: Vec<Draft>,
}

/// All legs of the trip in walking order.
pub(crate) fn legs<'a>(
    job: &Brief<'a>,
    teams: &[RopeTeam],
    stages: &'a [Sketch<'a>],
) -> Vec<RopedLeg<'a>> {
    let all = stages
        .iter()
        .flat_map(|s| s.legs.iter().map(move |l| (s, l)));
    let all: Vec<(usize, (&'a Sketch<'a>, &'a LegSketch))> = all.enumerate().collect();
    let leg = |&(i, (stage, sketch)): &(usize, (&'a Sketch<'a>, &'a LegSketch))| {
        let zones = stage.zones(sketch, job.zones);
        let footing = stage.footing(sketch, job.rules);
        let hardship = Hardship {
            steepest_descent_deg: footing.steepness.descent_deg,
        };
        let undrawn = stage.undrawn(sketch, job.rules);
        let over = Over {
            zones: &zones,
            undrawn,
        };
        RopedLeg {
            number: i + 1,
            teams: drafts(sketch, teams, over, hardship, job.rules),
            undrawn,
            hardship,
            footing,
            zones,
            stage,
            sketch,
        }
    };
    cores::map(&all, leg)
}

fn drafts(
    sketch: &LegSketch,
    teams: &[RopeTeam],
    over: Over<'_>,
    hardship: Hardship,
    rules: &Rules,
) -> Vec<Draft> {
    let spaced = teams.iter().zip(&sketch.spacings);
    let draft =
        |(team, spacing): (&RopeTeam, &Spacing)| Draft::new(team, *spacing, over, hardship, rules);
    spaced.map(draft).collect()
}

/// By team: most rope that any leg asks it for, metres.
pub(crate) fn demands_m(legs: &[RopedLeg<'_>], teams: &[RopeTeam]) -> Vec<f64> {
    let drafts = || legs.iter().flat_map(|leg| &leg.teams);
    let demand_m = |team: &RopeTeam| {
        let of_team = drafts().filter(|d| d.team == team.number);
        of_team.map(|d| d.ledger.total_m).fold(0.0, f64::max)
    };
    teams.iter().map(demand_m).collect()
}

impl RopedLeg<'_> {
    /// The ice that it is walked over.
    pub(crate) fn over(&self) -> Over<'_> {
        Over {
            zones: &self.zones,
            undrawn: self.undrawn,
        }
    }
}
