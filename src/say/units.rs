//! Shown values: metric or imperial.

use crate::say::round::Round;

/// International foot `[from memory: exact by definition since 1959]`.
const FOOT_M: f64 = 0.3048;
/// International mile, 5280 feet; derived.
const MILE_M: f64 = 5280.0 * FOOT_M;

/// Which units are shown. Files in GeoJSON and JSON stay in metres.
///
/// ```
/// use schrund::say::{round::Round, units::Units};
///
/// assert_eq!(Units::Metric.length(60.0, Round::Down), "60 m");
/// assert_eq!(Units::Imperial.length(60.0, Round::Down), "196.8 ft");
/// assert_eq!(Units::Imperial.length(60.0, Round::Up), "196.9 ft");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Metres and kilometres.
    #[default]
    Metric,
    /// Feet and miles.
    Imperial,
}

impl Units {
    /// The name of the system: `metric` or `imperial`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Metric => "metric",
            Self::Imperial => "imperial",
        }
    }

    /// Short unit of lengths of rope and gaps: `m` or `ft`.
    #[must_use]
    pub fn short(self) -> &'static str {
        match self {
            Self::Metric => "m",
            Self::Imperial => "ft",
        }
    }

    /// Unit of distances walked: `km` or `mi`.
    #[must_use]
    pub fn long(self) -> &'static str {
        match self {
            Self::Metric => "km",
            Self::Imperial => "mi",
        }
    }

    /// Metres in the short unit.
    #[must_use]
    pub fn short_m(self) -> f64 {
        match self {
            Self::Metric => 1.0,
            Self::Imperial => FOOT_M,
        }
    }

    /// Metres in the long unit.
    #[must_use]
    pub fn long_m(self) -> f64 {
        match self {
            Self::Metric => 1000.0,
            Self::Imperial => MILE_M,
        }
    }

    /// A length in the short unit without its name, with at most one decimal.
    #[must_use]
    pub fn number(self, metres: f64, round: Round) -> String {
        round.tenths(metres / self.short_m())
    }

    /// A length in the short unit with its name.
    #[must_use]
    pub fn length(self, metres: f64, round: Round) -> String {
        format!("{} {}", self.number(metres, round), self.short())
    }

    /// A distance walked in whole metres or feet, without its name.
    #[must_use]
    pub fn whole(self, metres: f64) -> String {
        Round::Nearest.fixed(metres / self.short_m(), 0)
    }

    /// A chainage in the long unit without its name, two decimals.
    #[must_use]
    pub fn chainage(self, metres: f64, round: Round) -> String {
        round.fixed(metres / self.long_m(), 2)
    }
}

/// Minutes as hours and minutes: `1 h 05`.
#[must_use]
pub fn minutes(min: f64) -> String {
    let whole = min.round();
    let (hours, rest) = ((whole / 60.0).floor(), whole % 60.0);
    if hours > 0.0 {
        format!("{hours:.0} h {rest:02.0}")
    } else {
        format!("{rest:.0} min")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn demands_round_up_and_what_is_at_hand_rounds_down() {
        let metric = Units::Metric;
        assert_eq!(metric.length(43.2, Round::Up), "43.2 m");
        assert_eq!(metric.length(43.21, Round::Up), "43.3 m");
        assert_eq!(metric.length(43.29, Round::Down), "43.2 m");
        assert_eq!(metric.length(60.0, Round::Up), "60 m");
        assert_eq!(Units::Imperial.length(15.24, Round::Up), "50 ft");
        assert_eq!(Units::Imperial.length(15.25, Round::Up), "50.1 ft");
    }

    #[test]
    fn minutes_are_read_as_hours() {
        assert_eq!(minutes(65.4), "1 h 05");
        assert_eq!(minutes(59.6), "1 h 00");
        assert_eq!(minutes(12.0), "12 min");
    }
}
