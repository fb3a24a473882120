//! How long the walking takes.
//!
//! *Model:* the time for the distance and the time for the heights; the longer of the two plus half the
//! shorter. *Valid:* for planning; rope changes and breaks come on top. *Source:* `[din33466]`.
//! *Checked:* below, worked figures of the same source.

use crate::{
    profile::Climb,
    rules::{Rule, Rules},
};

/// Minutes for a distance with its ups and downs.
#[must_use]
pub fn walking_min(length_m: f64, climb: Climb, rules: &Rules) -> f64 {
    let flat_h = length_m / 1000.0 / rules[Rule::WalkKmh];
    let up_h = climb.ascent_m / rules[Rule::ClimbMPerH];
    let down_h = climb.descent_m / rules[Rule::DescendMPerH];
    let steep_h = up_h + down_h;
    60.0 * (flat_h.max(steep_h) + flat_h.min(steep_h) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::practice::Source;

    #[test]
    fn eight_kilometres_with_nine_hundred_and_twelve_hundred_metres_up() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        for (ascent_m, hours) in [(900.0, 4.0), (1200.0, 5.0)] {
            let got = walking_min(
                8000.0,
                Climb {
                    ascent_m,
                    descent_m: 0.0,
                },
                &rules,
            );
            assert!(
                (got - 60.0 * hours).abs() < 1e-9,
                "{ascent_m} m up: {got} min"
            );
        }
    }
}
