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

    /// A sentence about metres and kilometres in the units shown: each number before ` m` or ` km` is
    /// turned, to the nearest tenth of a foot or hundredth of a mile.
    #[must_use]
    pub fn sentence(self, text: &str) -> String {
        if self == Self::Metric {
            return text.to_owned();
        }
        let words: Vec<&str> = text.split(' ').collect();
        let mut turned: Vec<String> = Vec::with_capacity(words.len());
        let mut i = 0;
        while let Some(word) = words.get(i) {
            match words.get(i + 1).and_then(|unit| self.turned(word, unit)) {
                Some(both) => {
                    turned.push(both);
                    i += 2;
                }
                None => {
                    turned.push((*word).to_owned());
                    i += 1;
                }
            }
        }
        turned.join(" ")
    }

    /// `12.5` and `m,` as `41 ft,`; ranges like `7.98–8.71` and `km` too.
    fn turned(self, number: &str, unit: &str) -> Option<String> {
        let name: &str = unit.trim_end_matches(|c: char| !c.is_alphanumeric());
        let ending = &unit[name.len()..];
        let factor = match name {
            "m" => 1.0,
            "km" => 1000.0,
            _ => return None,
        };
        let (lead, digits) = number.split_at(number.len() - number.trim_start_matches('(').len());
        let ends: Option<Vec<f64>> = digits.split('–').map(|n| n.parse().ok()).collect();
        let shown = |metres: f64| match name {
            "m" => self.number(metres, Round::Nearest),
            _ => self.chainage(metres),
        };
        let ends: Vec<String> = ends?.into_iter().map(|n: f64| shown(n * factor)).collect();
        let unit = if name == "m" {
            self.short()
        } else {
            self.long()
        };
        Some(format!("{lead}{} {unit}{ending}", ends.join("–")))
    }

    /// A distance walked in whole metres or feet, without its name.
    #[must_use]
    pub fn whole(self, metres: f64) -> String {
        Round::Nearest.fixed(metres / self.short_m(), 0)
    }

    /// A chainage in the long unit without its name, two decimals.
    #[must_use]
    pub fn chainage(self, metres: f64) -> String {
        Round::Nearest.fixed(metres / self.long_m(), 2)
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
    fn sentences_are_turned_number_by_number() {
        let said =
            "gap of 20.1 m at once with 18.5 m between them, near 7.98–8.71 km (60 m), zone 3 may";
        assert_eq!(Units::Metric.sentence(said), said);
        assert_eq!(
            Units::Imperial.sentence(said),
            "gap of 65.9 ft at once with 60.7 ft between them, near 4.96–5.41 mi (196.9 ft), zone 3 may"
        );
    }

    #[test]
    fn minutes_are_read_as_hours() {
        assert_eq!(minutes(65.4), "1 h 05");
        assert_eq!(minutes(59.6), "1 h 00");
        assert_eq!(minutes(12.0), "12 min");
    }
}
