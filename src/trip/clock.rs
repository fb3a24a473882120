//! Times of day as a leader writes them; no clock is ever read.

use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize, Serializer};

/// Minutes of a day: 24 × 60.
const DAY_MIN: f64 = 1440.0;
/// Times this near are one: what sums of minutes leave is far less.
const SAME_MIN: f64 = 1e-6;

/// Minutes after the midnight before the start; may run past the next one, or before it where times are reckoned backwards.
///
/// ```
/// use schrund::trip::clock::Clock;
///
/// let start: Clock = "4:30".parse()?;
/// assert_eq!(start.after(125.4).to_string(), "06:35");
/// assert_eq!(Clock::parse("23:50")?.after(20.0).to_string(), "00:10 +1", "the next day");
/// assert_eq!(start.after(0.9).cut_off(), start);
/// assert!(Clock::parse("24:00").is_err());
/// # Ok::<(), String>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Deserialize, JsonSchema)]
#[serde(try_from = "String")]
#[schemars(with = "String")]
pub struct Clock {
    min: f64,
}

impl Clock {
    /// The earlier of two.
    #[must_use]
    pub(crate) fn earlier(self, other: Self) -> Self {
        if self.is_later_than(other) {
            other
        } else {
            self
        }
    }

    /// `04:30`, or `4:30`; `05:00 +1` on the day after.
    ///
    /// # Errors
    /// A sentence that quotes what was found.
    pub fn parse(text: &str) -> Result<Self, String> {
        let wrong = || {
            format!("\"{text}\" is no time of day: write it as 04:30, or 04:30 +1 on the day after")
        };
        let (of_day, days) = match text.trim().split_once(" +") {
            Some((of_day, days)) => (of_day.trim_end(), days),
            None => (text.trim(), "0"),
        };
        let days = match days.as_bytes() {
            [day @ b'0'..=b'9'] => f64::from(day - b'0'),
            _ => return Err(wrong()),
        };
        let (hours, minutes) = of_day.split_once(':').ok_or_else(wrong)?;
        let digits = |s: &str| s.len() <= 2 && s.bytes().all(|b| b.is_ascii_digit());
        if !digits(hours) || !digits(minutes) || minutes.len() != 2 {
            return Err(wrong());
        }
        let hours: u8 = hours.parse().map_err(|_| wrong())?;
        let minutes: u8 = minutes.parse().map_err(|_| wrong())?;
        if hours > 23 || minutes > 59 {
            return Err(wrong());
        }
        Ok(Self {
            min: DAY_MIN * days + 60.0 * f64::from(hours) + f64::from(minutes),
        })
    }

    /// The time of day that a text written otherwise may mean: `4h30`, `4.30`, `4am`, `16 Uhr`; a guess to be shown, never
    /// one to plan with.
    ///
    /// ```
    /// use schrund::trip::clock::Clock;
    ///
    /// let meant = |text| Clock::meant(text).map(|clock| clock.to_string());
    /// assert_eq!(meant("4h30").as_deref(), Some("04:30"));
    /// assert_eq!(meant("4 pm").as_deref(), Some("16:00"));
    /// assert_eq!(meant("at dawn"), None);
    /// ```
    #[must_use]
    pub fn meant(text: &str) -> Option<Self> {
        let lower = text.trim().to_lowercase();
        let numbers = lower.split(|c: char| !c.is_ascii_digit());
        let mut numbers = numbers.filter(|n| !n.is_empty());
        let (hours, minutes) = (numbers.next()?, numbers.next().unwrap_or("00"));
        if numbers.next().is_some() || !lower.starts_with(|c: char| c.is_ascii_digit()) {
            return None;
        }
        let (hours, minutes) = match (hours.len(), minutes) {
            (3 | 4, "00") if hours.is_ascii() => hours.split_at(hours.len() - 2),
            _ => (hours, minutes),
        };
        let hours: u8 = hours.parse().ok()?;
        let hours = match hours {
            1..=11 if lower.ends_with("pm") => hours + 12,
            12 if lower.ends_with("am") => 0,
            hours => hours,
        };
        Self::parse(&format!("{hours}:{minutes}")).ok()
    }

    /// So many minutes after midnight.
    #[must_use]
    pub fn of_min(min: f64) -> Self {
        Self { min }
    }

    /// The midnight with which a day begins, so many days after that of the start.
    pub(crate) fn of_day_after(days: f64) -> Self {
        Self {
            min: DAY_MIN * days,
        }
    }

    /// The day it is on, rounded to the minute: 0 that of the start, 1 the day after, -1 the day before.
    #[must_use]
    pub fn day(self) -> f64 {
        (self.min.round() / DAY_MIN).floor()
    }

    /// The same on the day of the start.
    #[must_use]
    pub fn of_day(self) -> Self {
        Self {
            min: self.min - DAY_MIN * self.day(),
        }
    }

    /// Minutes after midnight.
    #[must_use]
    pub fn min(self) -> f64 {
        self.min
    }

    /// The same cut off to the whole minute: for what must not be later.
    #[must_use]
    pub fn cut_off(self) -> Self {
        Self {
            min: (self.min + SAME_MIN).floor(),
        }
    }

    /// Whether this is later, and not merely by what sums leave.
    #[must_use]
    pub fn is_later_than(self, other: Self) -> bool {
        self.min > other.min + SAME_MIN
    }

    /// So many minutes later.
    #[must_use]
    pub fn after(self, min: f64) -> Self {
        Self {
            min: self.min + min,
        }
    }
}

/// `04:30`; `00:10 +1` past midnight, `23:50 -1` before the one before the start, the number counting the days. Rounded
/// to the minute.
impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let min = self.min.round();
        let (days, of_day) = (self.day(), min.rem_euclid(DAY_MIN) + 0.0);
        write!(f, "{:02.0}:{:02.0}", (of_day / 60.0).floor(), of_day % 60.0)?;
        if days != 0.0 {
            write!(f, " {days:+.0}")?;
        }
        Ok(())
    }
}

impl std::str::FromStr for Clock {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        Self::parse(text)
    }
}

impl TryFrom<String> for Clock {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Self::parse(&text)
    }
}

impl Serialize for Clock {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_and_roll_over_midnight() {
        let start = Clock::parse("4:30").unwrap();
        assert_eq!(start.to_string(), "04:30");
        assert_eq!(start.after(125.4).to_string(), "06:35");
        assert_eq!(
            Clock::parse("23:50").unwrap().after(20.0).to_string(),
            "00:10 +1"
        );
        assert_eq!(
            Clock::parse("23:59").unwrap().after(0.6).to_string(),
            "00:00 +1"
        );
        assert_eq!(start.after(2.0 * DAY_MIN).to_string(), "04:30 +2");
        assert_eq!(start.after(-280.0).to_string(), "23:50 -1");
        let late = Clock::parse("5:00 +1").unwrap();
        assert_eq!(
            (late.min(), late.to_string().as_str()),
            (1740.0, "05:00 +1")
        );
        assert_eq!(
            (late.day(), late.of_day().to_string().as_str()),
            (1.0, "05:00")
        );
    }

    #[test]
    fn what_is_no_time_is_refused() {
        for text in [
            "", "4", "24:00", "12:60", "1:5", "-1:30", "04:30:00", "４:30", "+4:30", "4:30 +",
            "4:30 +10", "4:30+1", "4:30 -1", "4:30 + 1",
        ] {
            assert!(Clock::parse(text).is_err(), "{text}");
        }
    }
}
