//! Whether the rope team holds: the set-up put before the fall model, and its answer in the field's words.

use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Parameter, Snow},
        bound,
        holding::{BrakeKnots, Faller, Holding, HoldingAnswer, Team},
    },
    plan::{
        fall::{Arrest, Held, OrderAdvice},
        leg::{Bite, KnotSet},
        name::{PersonName, PersonOnRope},
    },
    practice::{Rules, Travel},
    rope::draft::Draft,
};

/// The fall of one team on one leg, put before the model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FallAnswer {
    /// The team as the model sees it.
    pub(crate) team: Team,
    /// What it answers.
    pub(crate) holding: Holding,
    /// Whether nobody said what snow there is.
    pub(crate) snow_assumed: bool,
    /// Whether heights say how steep it is toward the lip.
    pub(crate) slope_known: bool,
}

/// What a leg adds to the set-up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Stance {
    /// What the team stands on.
    pub(crate) snow: Snow,
    /// Slope of the ground towards the lip, degrees, 0 or more; `None` where no heights are known.
    pub(crate) slope_deg: Option<f64>,
}

impl Stance {
    /// Bare legs are ice; everywhere else the leader's word about the snow holds.
    #[must_use]
    pub(crate) fn of(bare_only: bool, slope_deg: Option<f64>, rules: &Rules) -> Self {
        Self {
            snow: if bare_only {
                Snow::Ice
            } else {
                rules.choices.snow.value
            },
            slope_deg: slope_deg.map(|deg| deg.clamp(0.0, bound::SLOPE_DEG.max)),
        }
    }
}

/// The team as the fall model sees it. Knots bear only where the snow is known to be deep enough; ground whose slope
/// nobody knows is taken as flat (our judgement), and the plan says so.
///
/// # Errors
/// A sentence when the rope's figures are those of no spring.
pub(crate) fn team(draft: &Draft, stance: Stance, rules: &Rules) -> Result<Team, Refusal> {
    Ok(Team {
        masses_kg: draft.persons.iter().map(|p| p.mass_kg).collect(),
        spacing_m: draft.spacing.spacing_m,
        gap_m: draft.spacing.meeting.effective_gap_m,
        knots: counted(&draft.knots),
        snow: stance.snow,
        on_skis: rules.choices.travel.value == Travel::Ski,
        slope_toward_lip_deg: stance.slope_deg.unwrap_or_default(),
        rope_ea_n: rules.nature.gear.rope.usual.modulus_n()?,
    })
}

fn counted(knots: &KnotSet) -> Option<BrakeKnots> {
    if knots.count == 0 || knots.bite != Bite::Yes {
        return None;
    }
    Some(BrakeKnots {
        count_per_side: u32::try_from(knots.each_end).ok()?,
        first_m: knots.first_m,
        step_m: knots.step_m,
    })
}

/// The model's answer as a plan holds it; `None` if nobody is on the rope.
#[must_use]
pub(crate) fn answer(fall: &FallAnswer, order: Option<OrderAdvice>) -> Option<Arrest> {
    let (team, holding) = (&fall.team, &fall.holding);
    let worst = holding.fallers.get(holding.worst)?;
    let falls = worst.index + 1;
    let kilonewtons = |n: f64| n / 1000.0;
    Some(Arrest {
        falls,
        holds: (1..=team.masses_kg.len()).filter(|&p| p != falls).collect(),
        verdict: held(&worst.verdict),
        depends_on: depends_on(worst),
        alone: worst.alone,
        slide_m: worst.slide_m.into(),
        holder_force_kn: <[f64; 2]>::from(worst.peak_holder_force_n).map(kilonewtons),
        snow: team.snow,
        snow_assumed: fall.snow_assumed,
        slope_deg: team.slope_toward_lip_deg,
        slope_known: fall.slope_known,
        knots_counted: team.knots.is_some(),
        everybody: holding.fallers.iter().map(|f| held(&f.verdict)).collect(),
        order,
    })
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
    rules: &Rules,
) -> Option<OrderAdvice> {
    let masses_kg = &fall.team.masses_kg;
    let first = masses_kg.first()?;
    if masses_kg.iter().all(|m| (m - first).abs() < 1e-9) {
        return None;
    }
    let advice = fall.team.best_order(&rules.nature.assumed).ok()?;
    let named = advice.order.iter().map(|i| PersonName::at(i + 1, persons));
    Some(OrderAdvice {
        order: named.collect(),
        worth_it: advice.worth_it,
    })
}
