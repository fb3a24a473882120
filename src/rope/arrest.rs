//! Whether the rope team holds: the set-up put before the fall model, and its answer in the field's words.

use super::{marks::called, setup::Draft};
use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Parameter, Snow},
        bound,
        holding::{Faller, Holding, Knots, Team, Verdict, order::Advice},
    },
    plan::{
        fall::{Arrest, Held, OrderAdvice},
        leg::{Bite, KnotSet, PersonOnRope},
    },
    practice::{Rules, Travel},
};

/// What a leg adds to the set-up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ground {
    /// What the team stands on.
    pub snow: Snow,
    /// Slope of the ground towards the lip, degrees, 0 or more; `None` where no heights are known.
    pub slope_deg: Option<f64>,
}

impl Ground {
    /// Bare legs are ice; everywhere else the leader's word about the snow holds.
    #[must_use]
    pub fn of(bare_only: bool, slope_deg: Option<f64>, rules: &Rules) -> Self {
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
/// Says so when the rope's figures are those of no spring.
pub fn team(draft: &Draft, ground: Ground, rules: &Rules) -> Result<Team, Refusal> {
    Ok(Team {
        masses_kg: draft.persons.iter().map(|p| p.mass_kg).collect(),
        spacing_m: draft.spacing.spacing_m,
        gap_m: draft.spacing.meeting.effective_gap_m,
        knots: counted(&draft.knots),
        snow: ground.snow,
        on_skis: rules.choices.travel.value == Travel::Ski,
        slope_toward_lip_deg: ground.slope_deg.unwrap_or_default(),
        rope_ea_n: rules.nature.gear.rope.usual.modulus_n()?,
    })
}

fn counted(knots: &KnotSet) -> Option<Knots> {
    if knots.count == 0 || knots.bite != Bite::Yes {
        return None;
    }
    Some(Knots {
        count_per_side: u32::try_from(knots.each_end).ok()?,
        first_m: knots.first_m,
        step_m: knots.step_m,
    })
}

/// The model's answer as a plan holds it; `None` if nobody is on the rope.
#[must_use]
pub fn answer(team: &Team, holding: &Holding) -> Option<Arrest> {
    let worst = holding.fallers.get(holding.worst)?;
    let falls = worst.index + 1;
    Some(Arrest {
        falls,
        holds: (1..=team.masses_kg.len()).filter(|&p| p != falls).collect(),
        verdict: held(&worst.verdict),
        says: words(worst),
        depends_on: depends_on(worst, |p| p.as_str()),
        slide_m: worst.slide_m.into(),
        holder_force_kn: [
            worst.peak_holder_force_n.0 / 1000.0,
            worst.peak_holder_force_n.1 / 1000.0,
        ],
        snow: team.snow.as_str().to_owned(),
        slope_deg: team.slope_toward_lip_deg,
        knots_counted: team.knots.is_some(),
        everybody: holding.fallers.iter().map(|f| held(&f.verdict)).collect(),
        order: None,
    })
}

fn held(verdict: &Verdict) -> Held {
    match verdict {
        Verdict::HeldInAll => Held::All,
        Verdict::DependsOn(_) => Held::Depends,
        Verdict::HeldInNone => Held::None,
    }
}

fn depends_on(faller: &Faller, word: fn(Parameter) -> &'static str) -> Vec<String> {
    match &faller.verdict {
        Verdict::DependsOn(named) => named.iter().map(|&p| word(p).to_owned()).collect(),
        _ => Vec::new(),
    }
}

fn words(faller: &Faller) -> String {
    let held = held(&faller.verdict);
    if held != Held::Depends {
        return held.as_str().to_owned();
    }
    let together = if faller.alone {
        ""
    } else {
        ", only in combination"
    };
    let named = depends_on(faller, Parameter::words);
    format!("depends on: {}{together}", named.join(", "))
}

/// How badly a team is held, for finding its worst leg: higher is worse.
#[must_use]
pub fn severity(holding: &Holding) -> (u8, bool, f64) {
    let worst = holding.fallers.get(holding.worst);
    let centre = worst.is_some_and(|f| !f.held_in_centre);
    let share = worst.map_or(0.0, |f| f.slide_share.0 + f.slide_share.1);
    (holding.verdict.rank(), centre, share)
}

/// The model's advice on the order, by names.
#[must_use]
pub fn advice(persons: &[PersonOnRope], advice: &Advice) -> OrderAdvice {
    let names = advice.order.iter().filter_map(|&i| persons.get(i));
    let order: Vec<String> = names.map(|p| p.name.clone()).collect();
    let shown: Vec<String> = advice
        .order
        .iter()
        .map(|i| called(persons, i + 1))
        .collect();
    let says = if advice.worth_it {
        format!(
            "in the model this order gives the better worst case: {}",
            shown.join(", ")
        )
    } else {
        "in the model no other order gives a clearly better worst case".to_owned()
    };
    OrderAdvice {
        order,
        worth_it: advice.worth_it,
        says,
    }
}
