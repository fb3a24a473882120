//! Where the bulletin has to be read: one line of the steep ground of all legs.

use crate::{
    plan::{
        Plan,
        fact::Fact,
        finding::{At, LegPlace},
    },
    say::{arg::Arg, finding, round::Round, span::Said, voice::Voice},
};

/// `Avalanche ground, from 30°, on legs 2, 4: up to 49° near 7.09 km; the bulletin comes first`; nothing where no leg has any.
pub(crate) fn avalanche_ground(plan: &Plan, voice: Voice) -> Option<Said> {
    let found = plan.legs.iter().flat_map(|leg| &leg.findings);
    let steep = found.filter_map(|finding| match (finding.fact()?, &finding.at) {
        (Fact::AvalancheTerrain { slope_deg, .. }, At::Leg(place)) => Some((*slope_deg, place)),
        _ => None,
    });
    let steep: Vec<(f64, &LegPlace)> = steep.collect();
    let (slope_deg, worst) = steep.iter().max_by(|a, b| a.0.total_cmp(&b.0))?;
    let mut legs: Vec<usize> = steep.iter().map(|(_, place)| place.leg).collect();
    legs.dedup();
    let args = [
        (
            "from",
            Arg::Degrees(plan.figures.avalanche_deg, 0, Round::Nearest),
        ),
        ("legs", Arg::Said(finding::legs(&legs, voice))),
        ("slope", Arg::Degrees(*slope_deg, 0, Round::Up)),
        ("at", Arg::Walked(worst.from_m)),
        ("stages", Arg::Count(plan.route.stages.len())),
        ("stage", Arg::Count(worst.stage)),
    ];
    Some(voice.say("page-avalanche", &args))
}
