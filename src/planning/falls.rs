//! What must be said of falls: held or not, hauled or not, and coils that are a burden.

use super::of_team::up;
use crate::{
    leg::{
        TeamSetup,
        fall::{CanPull, Held},
    },
    problem::{Code, Place, Problem},
    rope::haul,
    rules::{Rule, Rules},
};

/// The findings of one team on one leg.
pub(super) fn say(setup: &TeamSetup, place: &Place, rules: &Rules) -> Vec<Problem> {
    let said = [
        held_in_none(setup, place),
        haul_too_weak(setup, place),
        coil(setup, place, rules),
    ];
    said.into_iter().flatten().collect()
}

fn held_in_none(setup: &TeamSetup, place: &Place) -> Option<Problem> {
    let arrest = setup.arrest.as_ref()?;
    if arrest.verdict != Held::None {
        return None;
    }
    let says = format!(
        "in the model the fall of person {} is {} on {}",
        arrest.falls,
        arrest.verdict.as_str(),
        snow_words(&arrest.snow)
    );
    Some(
        Problem::new(Code::HeldInNone, place.clone(), says)
            .hint("more people on the rope, a belay from an anchor, or another line"),
    )
}

/// `settled snow`, `ice`.
pub(super) fn snow_words(snow: &str) -> String {
    if snow == "ice" {
        snow.to_owned()
    } else {
        format!("{snow} snow")
    }
}

fn haul_too_weak(setup: &TeamSetup, place: &Place) -> Option<Problem> {
    let table = setup.haul.as_ref()?;
    let middle = setup.middle.as_ref();
    if middle.is_some_and(|m| m.person == table.person && m.missing_m > 1e-9) {
        return None; // said already: the drop loop does not reach them
    }
    let can = haul::best(&table.systems).map_or(CanPull::No, |best| best.can);
    if can != CanPull::No {
        return None;
    }
    let says = format!("if person {} falls, {}", table.person, table.says);
    Some(
        Problem::new(Code::HaulTooWeak, place.clone(), says)
            .hint("a second rope team near by, pulleys, or a person who can climb out on the rope"),
    )
}

fn coil(setup: &TeamSetup, place: &Place, rules: &Rules) -> Option<Problem> {
    let (most_m, most_kg) = (rules[Rule::CoilMostM], rules[Rule::CoilMostKg]);
    if setup.coil_m <= most_m + 1e-9 && setup.coil_kg <= most_kg + 1e-9 {
        return None;
    }
    let says = format!(
        "each end person carries a coil of {} m, about {} kg; more than {most_m} m or {most_kg} kg is a burden",
        up(setup.coil_m),
        up(setup.coil_kg)
    );
    Some(
        Problem::new(Code::CoilHeavy, place.clone(), says)
            .hint("more people on the rope, a long sling in the loop, or a thinner rope"),
    )
}

/// The model could not be asked.
pub(super) fn no_answer(says: &str, place: Place) -> Problem {
    let says = format!("the fall model has no answer here: {says}");
    Problem::new(Code::NoAnswer, place, says)
}
