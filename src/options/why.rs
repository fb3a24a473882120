//! What each way is best in among those shown.

use crate::plan::options::{Merit, Way};

/// What a merit is measured by; less is better.
#[expect(clippy::cast_precision_loss, reason = "small counts")]
fn measure(merit: Merit, way: &Way) -> f64 {
    match merit {
        Merit::Verdict => f64::from(way.verdict as u8),
        Merit::NothingChanged => f64::from(u8::from(!way.changes.is_empty())),
        Merit::LeftToHold => -(way.left_to_hold as f64),
        Merit::AnotherTeam => f64::from(u8::from(!way.another_team)),
        Merit::LightestRopes => way.rope_mass_kg,
        Merit::ShortestCoil => way.coil_m,
        Merit::FewestChanges => way.setup_changes as f64,
    }
}

const MERITS: [Merit; 7] = [
    Merit::Verdict,
    Merit::NothingChanged,
    Merit::LeftToHold,
    Merit::AnotherTeam,
    Merit::LightestRopes,
    Merit::ShortestCoil,
    Merit::FewestChanges,
];

/// Gives each way its merits: what it is best in among those shown, as far as not all are alike in it.
pub(super) fn explain(ways: &mut [Way]) {
    for merit in MERITS {
        let Some(best) = best_unless_alike(ways, merit) else {
            continue;
        };
        for way in ways.iter_mut() {
            if (measure(merit, way) - best).abs() < 1e-6 {
                way.best_in.push(merit);
            }
        }
    }
}

fn best_unless_alike(ways: &[Way], merit: Merit) -> Option<f64> {
    let of = |way: &Way| measure(merit, way);
    let least = ways.iter().map(of).reduce(f64::min)?;
    let most = ways.iter().map(of).reduce(f64::max)?;
    // Nothing changed is worth saying wherever it holds.
    let alike = most - least <= 1e-6;
    let always = merit == Merit::NothingChanged && ways.len() > 1 && least < 0.5;
    (!alike || always).then_some(least)
}
