//! Whether the rope team holds: the set-up put before the fall model, and its answer in the field's words.

use crate::{
    physics::{
        assumed::{Assumed, Parameter},
        hold_dynamic::Followed,
        holding::{Faller, Holding, HoldingAnswer, Team},
    },
    plan::{
        fall::{Arrest, Held, OrderAdvice},
        name::{PersonName, PersonOnRope},
    },
    rope::held::HeldAlong,
};

/// The fall of one team on one leg, put before the model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FallAnswer {
    /// The team as the model sees it.
    pub(crate) team: Team,
    /// What it answers.
    pub(crate) holding: Holding,
    /// How everybody's fall is held over whichever width the gap has, in rope order; nobody where only verdicts were asked.
    pub(crate) everybody: Vec<Held>,
    /// Whether nobody said what snow there is.
    pub(crate) snow_assumed: bool,
    /// The same question all along the leg.
    pub(crate) along: HeldAlong,
}

/// The model's answer as a plan holds it; `None` if nobody is on the rope.
#[must_use]
pub(crate) fn answer(fall: &FallAnswer, order: Option<OrderAdvice>) -> Option<Arrest> {
    let (team, holding) = (&fall.team, &fall.holding);
    let worst = holding.fallers.get(holding.worst)?;
    let falls = worst.index + 1;
    let kilonewtons = |n: f64| n / 1000.0;
    Some(Arrest {
        from_m: fall.along.piece.from_m,
        to_m: fall.along.piece.to_m,
        runs: fall.along.runs.clone(),
        falls,
        holds: (1..=team.masses_kg.len()).filter(|&p| p != falls).collect(),
        verdict: held(&worst.verdict),
        depends_on: depends_on(worst),
        alone: worst.alone,
        slide_m: worst.slide_m.into(),
        holder_force_kn: <[f64; 2]>::from(worst.peak_holder_force_n).map(kilonewtons),
        snow: team.snow,
        snow_assumed: fall.snow_assumed,
        slope_deg: team.toward_lip_deg(worst.index),
        down_deg: team.down_deg,
        slope_known: fall.along.slope_known,
        gap_m: team.gap_m,
        knots_counted: team.knots.is_some(),
        everybody: fall.everybody.clone(),
        order,
    })
}

/// How everybody's fall is held over the one gap that was asked about.
pub(crate) fn everybody(holding: &Holding) -> Vec<Held> {
    holding.fallers.iter().map(|f| held(&f.verdict)).collect()
}

fn held(verdict: &HoldingAnswer) -> Held {
    match verdict {
        HoldingAnswer::HeldInAll => Held::All,
        HoldingAnswer::DependsOn(_) => Held::Depends,
        HoldingAnswer::HeldInNone => Held::None,
    }
}

fn depends_on(faller: &Faller) -> Vec<Parameter> {
    match &faller.verdict {
        HoldingAnswer::DependsOn(named) => named.clone(),
        _ => Vec::new(),
    }
}

/// How badly a team is held, for finding its worst leg: higher is worse.
#[must_use]
pub(crate) fn severity(holding: &Holding) -> (u8, bool, f64) {
    let worst = holding.fallers.get(holding.worst);
    let centre = worst.is_some_and(|f| !f.held_in_centre);
    let share = worst.map_or(0.0, |f| f.slide_share.0 + f.slide_share.1);
    (holding.verdict.rank(), centre, share)
}

/// The model's advice on the order, by names. Equal people are not asked about.
#[must_use]
pub(crate) fn advice(
    fall: &FallAnswer,
    persons: &[PersonOnRope],
    assumed: &Assumed,
    followed: &mut Followed,
) -> Option<OrderAdvice> {
    let masses_kg = &fall.team.masses_kg;
    let first = masses_kg.first()?;
    if masses_kg.iter().all(|m| (m - first).abs() < 1e-9) {
        return None;
    }
    // On all the ground of the leg where the team stands as it does there, climbs and descents.
    let team = Team {
        down_deg: fall.along.down_deg,
        ..fall.team.clone()
    };
    let advice = team.best_order(assumed, followed).ok()?;
    let named = advice.order.iter().map(|i| PersonName::at(i + 1, persons));
    Some(OrderAdvice {
        order: named.collect(),
        worth_it: advice.worth_it,
        not_held: [advice.best.held_in_none, advice.best.not_in_centre],
    })
}
