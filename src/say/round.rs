//! The one place where a figure is rounded, always with a direction.

/// To which side a shown figure may err.
///
/// ```
/// use schrund::say::round::Round;
///
/// assert_eq!(Round::Up.tenths(43.21), "43.3");      // rope needed
/// assert_eq!(Round::Down.tenths(43.29), "43.2");    // rope at hand
/// assert_eq!(Round::Nearest.tenths(60.04), "60");   // a length measured
/// assert_eq!(Round::Up.tenths(10.3 * 3.0), "30.9"); // 30.9 and 4e-15: noise, not need
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Round {
    /// What is needed: never shown as less.
    Up,
    /// What there is: never shown as more.
    Down,
    /// What is measured.
    Nearest,
}

/// What counts as noise of the arithmetic, in the unit shown.
///
/// A figure written as 43.2 and a sum that ought to be 43.2 differ in the last bits of a double: some 1e-14 after
/// the few dozen operations between an input and a length, 1e-12 in the worst sums. Without a slack such a sum
/// would be shown as 43.3. A billionth lies a thousand times above that noise and a thousand times below the
/// micrometre to which plans keep their lengths, so no length that differs from a tenth by as little as a plan can
/// tell is ever shown on the wrong side. `[our judgement]`
const NOISE: f64 = 1e-9;

/// More decimals than anything is shown with.
const MOST_DECIMALS: u8 = 6;

impl Round {
    /// The figure with exactly so many decimals, six at most.
    #[must_use]
    pub fn fixed(self, value: f64, decimals: u8) -> String {
        let decimals = decimals.min(MOST_DECIMALS);
        let steps = 10_f64.powi(i32::from(decimals));
        let whole = self.steps(value, steps);
        // Nothing is shown as -0.
        format!("{:.*}", usize::from(decimals), whole / steps + 0.0)
    }

    /// Whether figures shown in tenths come to the sum that is shown of them.
    #[must_use]
    pub fn adds_up(self, parts: &[f64], sum: f64) -> bool {
        let tenths = |value: f64| self.steps(value, 10.0);
        let parts: f64 = parts.iter().map(|part| tenths(*part)).sum();
        (parts - tenths(sum)).abs() < 0.5
    }

    /// So many steps of a unit, a whole number.
    fn steps(self, value: f64, steps: f64) -> f64 {
        match self {
            Self::Up => ((value - NOISE) * steps).ceil(),
            Self::Down => ((value + NOISE) * steps).floor(),
            Self::Nearest => (value * steps).round(),
        }
    }

    /// The figure with at most one decimal; `.0` is dropped.
    #[must_use]
    pub fn tenths(self, value: f64) -> String {
        let mut shown = self.fixed(value, 1);
        if shown.ends_with(".0") {
            shown.truncate(shown.len() - 2);
        }
        shown
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn noise_of_the_last_bits_moves_nothing_and_nanometres_do() {
        let noisy = 10.3 * 3.0;
        assert!(noisy > 30.9, "the example is noisy");
        assert_eq!(Round::Up.tenths(noisy), "30.9");
        assert_eq!(Round::Up.tenths(43.2), "43.2");
        assert_eq!(Round::Up.tenths(43.200_001), "43.3");
        assert_eq!(Round::Up.tenths(43.2 + 3e-9), "43.3");
        assert_eq!(Round::Down.tenths(43.2 - 7e-15), "43.2");
        assert_eq!(Round::Down.tenths(43.199_999), "43.1");
        assert_eq!(Round::Down.tenths(43.2 - 3e-9), "43.1");
    }

    #[test]
    fn rows_that_are_rounded_singly_need_not_add_up() {
        assert!(Round::Up.adds_up(&[27.0, 7.2, 3.0, 13.0], 50.2));
        let feet = [27.0, 7.2, 3.0, 13.0].map(|m| m / 0.3048);
        assert!(!Round::Up.adds_up(&feet, 50.2 / 0.3048));
    }

    #[test]
    fn below_nothing_up_and_down_stay_up_and_down() {
        assert_eq!(Round::Up.tenths(-0.04), "0");
        assert_eq!(Round::Down.tenths(-0.04), "-0.1");
        assert_eq!(Round::Nearest.tenths(-0.04), "0");
        assert_eq!(Round::Nearest.fixed(-0.3, 0), "0");
    }

    #[test]
    fn decimals_are_kept_where_they_are_asked_for() {
        assert_eq!(Round::Nearest.fixed(8.7, 2), "8.70");
        assert_eq!(Round::Up.fixed(37.01, 0), "38");
        assert_eq!(Round::Down.fixed(0.309, 2), "0.30");
        assert_eq!(Round::Nearest.fixed(1.0, 200), "1.000000");
    }
}
