//! Fewer changes of the set-up, in words: what changing costs, what keeping costs, and which set-up is kept where.

use crate::plan::{KeepSetup, KeptRun, KeptTeam};
use crate::say::{
    units::{Side, Units, minutes},
    words,
};

/// `as planned the set-up changes 3 times, 15 min; with set-ups kept 2 times, 13 min (wider walking counted)`.
#[must_use]
pub(super) fn costs(keep: &KeepSetup) -> String {
    let (planned, kept) = (keep.as_planned, keep.kept);
    format!(
        "as planned the set-up changes {} times, {}; with set-ups kept {} times, {} (wider walking counted; not judged for falls)",
        planned.changes,
        minutes(planned.minutes),
        kept.changes,
        minutes(kept.minutes)
    )
}

/// `legs 2, 4`.
pub(super) fn legs(run: &KeptRun) -> String {
    words::legs(&run.legs)
}

/// `13 m, no knots, coils 6.5 m, rope 42 m`, with the team in front where there are several.
pub(super) fn team(run: &KeptRun, team: &KeptTeam, units: Units) -> String {
    let who = if run.teams.len() > 1 {
        format!("team {} ", team.team)
    } else {
        String::new()
    };
    format!(
        "{who}{}, {}, {}, rope {}",
        units.length(team.spacing_m, Side::Demand),
        match team.knots_each_end {
            0 => "no knots".to_owned(),
            n => format!("{n} knots from each end"),
        },
        if team.coil_m > 0.0 {
            format!("coils {}", units.length(team.coil_m, Side::Demand))
        } else {
            "no coils".to_owned()
        },
        units.length(team.needed_m, Side::Demand)
    )
}
