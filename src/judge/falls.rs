//! What is found of falls: held or not, hauled or not, and coils that are a burden.

use crate::{
    physics::{assumed::Snow, haul::Can},
    plan::{
        fact::Fact,
        fall::{HaulAnswer, Held},
        leg::TeamSetup,
        name::PersonName,
    },
    practice::{Rule, Rules},
};

/// The findings of one team on one leg.
pub(super) fn findings(setup: &TeamSetup, rules: &Rules) -> Vec<Fact> {
    let found = [
        held_in_none(setup, rules),
        haul_too_weak(setup),
        coil(setup, rules),
    ];
    found.into_iter().flatten().collect()
}

fn held_in_none(setup: &TeamSetup, rules: &Rules) -> Option<Fact> {
    let arrest = setup.arrest.as_ref().filter(|a| a.verdict == Held::None)?;
    if arrest.snow == Snow::Ice {
        return on_bare_ice(arrest.slope_deg, rules);
    }
    Some(Fact::HeldInNone {
        falls: PersonName::at(arrest.falls, &setup.persons),
        snow: arrest.snow,
    })
}

/// That no team holds a fall on ice is no alarm of its own where it is nearly flat.
fn on_bare_ice(slope_deg: f64, rules: &Rules) -> Option<Fact> {
    if slope_deg > rules[Rule::BareStopDeg] {
        Some(Fact::SteepBareIce { slope_deg })
    } else if slope_deg > rules[Rule::BareSlipDeg] {
        Some(Fact::SlipPullsAll { slope_deg })
    } else {
        None
    }
}

fn haul_too_weak(setup: &TeamSetup) -> Option<Fact> {
    let table = setup.haul.as_ref()?;
    let reach = setup.reach.iter().find(|r| r.person == table.person);
    if reach.is_some_and(|r| r.depth_m < -1e-9) {
        return None; // found already: the drop loop does not reach them
    }
    let can = match table.answer {
        HaulAnswer::Best { can, .. } => can,
        HaulAnswer::TooShort { .. } | HaulAnswer::AnchorTooNear { .. } => Can::No,
    };
    (can == Can::No).then(|| Fact::HaulTooWeak {
        falls: PersonName::at(table.person, &setup.persons),
        haul: table.answer,
    })
}

fn coil(setup: &TeamSetup, rules: &Rules) -> Option<Fact> {
    let (most_m, most_kg) = (rules[Rule::CoilMostM], rules[Rule::CoilMostKg]);
    let burden = setup.coil_carried_m > most_m + 1e-9 || setup.coil_kg > most_kg + 1e-9;
    burden.then_some(Fact::CoilHeavy {
        coil_m: setup.coil_carried_m,
        coil_kg: setup.coil_kg,
        most_m,
        most_kg,
    })
}
