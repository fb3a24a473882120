//! Figures for tests, spread evenly and the same every time.

/// A hundredth of a golden turn, again and again.
pub(super) fn spread(i: u32, salt: f64) -> f64 {
    (f64::from(i) * 0.618_033_988_749_894_9 * salt).fract()
}
