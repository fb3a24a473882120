//! Figures as they are read: metric or imperial, rounded by one function that is told the direction.

/// International foot `[from memory: exact by definition since 1959]`.
const FOOT_M: f64 = 0.3048;
/// International mile, 5280 feet; derived.
const MILE_M: f64 = 5280.0 * FOOT_M;

/// How far a figure may lie beyond a tenth and still count as that tenth, in tenths. Sums of a few lengths are off by
/// their last bits, some 1e-14 of a metre: 43.2 m must not be asked for as 43.3 m. No figure that is more than noise
/// is that small. Our judgement.
const NOISE: f64 = 1e-9;

/// Which units are shown. Files in GeoJSON and JSON stay in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Metres and kilometres.
    #[default]
    Metric,
    /// Feet and miles.
    Imperial,
}

/// To which side a shown figure may err.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Round {
    /// What is needed.
    Up,
    /// What there is.
    Down,
    /// What is measured.
    Nearest,
}

impl Round {
    /// To a whole number.
    #[must_use]
    pub fn whole(self, x: f64) -> f64 {
        // Adding 0 turns −0 into 0.
        0.0 + match self {
            Self::Up => (x - NOISE).ceil(),
            Self::Down => (x + NOISE).floor(),
            Self::Nearest => x.round(),
        }
    }

    /// With one decimal at most.
    #[must_use]
    pub fn tenths(self, x: f64) -> String {
        let shown = format!("{:.1}", self.whole(x * 10.0) / 10.0);
        match shown.strip_suffix(".0") {
            Some(whole) => whole.to_owned(),
            None => shown,
        }
    }
}

impl Units {
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
        format!("{:.0}", Round::Nearest.whole(metres / self.short_m()))
    }

    /// A chainage in the long unit without its name, two decimals.
    #[must_use]
    pub fn chainage(self, metres: f64) -> String {
        format!("{:.2}", metres / self.long_m())
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
        assert_eq!(metric.length(14.4 + 14.4 + 14.4, Round::Up), "43.2 m");
        assert_eq!(metric.length(43.21, Round::Up), "43.3 m");
        assert_eq!(metric.length(43.29, Round::Down), "43.2 m");
        assert_eq!(metric.length(60.0, Round::Up), "60 m");
        assert_eq!(Units::Imperial.length(15.24, Round::Up), "50 ft");
        assert_eq!(Units::Imperial.length(15.25, Round::Up), "50.1 ft");
        assert_eq!(Units::Imperial.length(60.0, Round::Down), "196.8 ft");
        assert_eq!(metric.length(-0.04, Round::Nearest), "0 m");
    }

    #[test]
    fn minutes_are_read_as_hours() {
        assert_eq!(minutes(65.4), "1 h 05");
        assert_eq!(minutes(59.6), "1 h 00");
        assert_eq!(minutes(12.0), "12 min");
    }
}
