//! The day of a trip, and how far its clock is from UTC.

use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize, Serializer};

use crate::trip::clock::Clock;

/// Years that a trip can be in; our judgement: beyond them somebody mistyped.
const YEARS: std::ops::RangeInclusive<u16> = 1900..=2200;
/// No clock on earth is farther from UTC than 14 hours, minutes.
const FARTHEST_MIN: f64 = 14.0 * 60.0;

/// A day of the calendar, as a leader writes it.
///
/// ```
/// use schrund::trip::day::Day;
///
/// let day: Day = "2028-02-29".parse()?;
/// assert_eq!((day.year(), day.month(), day.day()), (2028, 2, 29));
/// assert!(Day::parse("2027-02-29").is_err(), "no leap year");
/// assert!(Day::parse("14.7.2027").is_err());
/// # Ok::<(), String>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(try_from = "String")]
#[schemars(with = "String")]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    /// `2027-07-14`.
    ///
    /// # Errors
    /// A sentence that quotes what was found.
    pub fn parse(text: &str) -> Result<Self, String> {
        let wrong = || format!("\"{text}\" is no day: write it as 2027-07-14");
        let parts: Vec<&str> = text.trim().split('-').collect();
        let [year, month, day] = parts[..] else {
            return Err(wrong());
        };
        let written = [(year, 4), (month, 2), (day, 2)];
        let digits = |(s, n): (&str, usize)| s.len() == n && s.bytes().all(|b| b.is_ascii_digit());
        if !written.into_iter().all(digits) {
            return Err(wrong());
        }
        let year: u16 = year.parse().map_err(|_| wrong())?;
        let month: u8 = month.parse().map_err(|_| wrong())?;
        let day: u8 = day.parse().map_err(|_| wrong())?;
        let known = YEARS.contains(&year) && (1..=days_of(year, month)).contains(&day);
        known.then_some(Self { year, month, day }).ok_or_else(wrong)
    }

    /// The year.
    #[must_use]
    pub fn year(self) -> u16 {
        self.year
    }

    /// The month, from 1.
    #[must_use]
    pub fn month(self) -> u8 {
        self.month
    }

    /// The day of the month, from 1.
    #[must_use]
    pub fn day(self) -> u8 {
        self.day
    }

    /// Days from another day to this one; negative where this one comes first.
    ///
    /// ```
    /// use schrund::trip::day::Day;
    ///
    /// let (seen, trip) = (Day::parse("2027-07-14")?, Day::parse("2028-07-14")?);
    /// assert_eq!((trip.days_after(seen), seen.days_after(trip)), (366, -366), "a leap day lies between");
    /// # Ok::<(), String>(())
    /// ```
    #[must_use]
    pub fn days_after(self, other: Self) -> i32 {
        self.number() - other.number()
    }

    /// Days of the Gregorian calendar since a day long ago, each year reckoned from March so that a leap day ends it.
    fn number(self) -> i32 {
        let (year, month) = (i32::from(self.year), i32::from(self.month));
        let (year, month) = match month {
            1 | 2 => (year - 1, month + 12),
            _ => (year, month),
        };
        let leap_days = year / 4 - year / 100 + year / 400;
        365 * year + leap_days + (153 * month - 457) / 5 + i32::from(self.day)
    }
}

/// Days of a month; none where there is no such month.
fn days_of(year: u16, month: u8) -> u8 {
    let every = |years: u16| year.is_multiple_of(years);
    let leap = every(4) && (!every(100) || every(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 => 28 + u8::from(leap),
        _ => 0,
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// How far the clocks of a trip are from UTC.
///
/// ```
/// use schrund::trip::day::UtcOffset;
///
/// let summer: UtcOffset = "+02:00".parse()?;
/// assert_eq!(summer.min(), 120.0);
/// assert_eq!(UtcOffset::parse("-03:30")?.to_string(), "-03:30");
/// assert!(UtcOffset::parse("02:00").is_err(), "east or west of Greenwich is not said");
/// # Ok::<(), String>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Deserialize, JsonSchema)]
#[serde(try_from = "String")]
#[schemars(with = "String")]
pub struct UtcOffset {
    min: f64,
}

impl UtcOffset {
    /// `+02:00`, `-03:30`.
    ///
    /// # Errors
    /// A sentence that quotes what was found.
    pub fn parse(text: &str) -> Result<Self, String> {
        let wrong = || format!("\"{text}\" is no distance from UTC: write it as +02:00");
        let written = text.trim();
        let (sign, rest) = match (written.strip_prefix('+'), written.strip_prefix('-')) {
            (Some(rest), _) => (1.0, rest),
            (_, Some(rest)) => (-1.0, rest),
            _ => return Err(wrong()),
        };
        let min = Clock::parse(rest).map_err(|_| wrong())?.min();
        let known = min <= FARTHEST_MIN && rest.trim() == rest;
        let min = sign * min + 0.0;
        known.then_some(Self { min }).ok_or_else(wrong)
    }

    /// Minutes that the clocks are ahead of UTC; negative behind.
    #[must_use]
    pub fn min(self) -> f64 {
        self.min
    }
}

impl fmt::Display for UtcOffset {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.min < 0.0 { '-' } else { '+' };
        write!(f, "{sign}{}", Clock::of_min(self.min.abs()))
    }
}

macro_rules! as_text {
    ($($noun:ty),+) => {$(
        impl std::str::FromStr for $noun {
            type Err = String;

            fn from_str(text: &str) -> Result<Self, String> {
                Self::parse(text)
            }
        }

        impl TryFrom<String> for $noun {
            type Error = String;

            fn try_from(text: String) -> Result<Self, String> {
                Self::parse(&text)
            }
        }

        impl Serialize for $noun {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.collect_str(self)
            }
        }
    )+};
}

as_text!(Day, UtcOffset);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_that_are_none_are_refused() {
        for text in [
            "",
            "2027",
            "2027-7-14",
            "2027-13-01",
            "2027-00-10",
            "2027-04-31",
            "1900-02-29",
            "0027-01-01",
            "2027-07-14T05:00",
            "２０２７-07-14",
        ] {
            assert!(Day::parse(text).is_err(), "{text}");
        }
        assert_eq!(Day::parse("2000-02-29").unwrap().to_string(), "2000-02-29");
    }

    #[test]
    fn days_are_counted_over_every_end_of_a_month() {
        let day = |year, month, day| Day { year, month, day };
        let mut before = day(1999, 12, 31);
        // 2000 is a leap year, 2100 and 2200 are none.
        for year in 2000..=2200 {
            for month in 1..=12 {
                for of_month in 1..=days_of(year, month) {
                    let next = day(year, month, of_month);
                    assert_eq!(next.days_after(before), 1, "{next}");
                    before = next;
                }
            }
        }
    }

    #[test]
    fn offsets_that_are_none_are_refused() {
        for text in [
            "", "2", "+2", "+25:00", "+14:01", "+ 2:00", "UTC", "--02:00",
        ] {
            assert!(UtcOffset::parse(text).is_err(), "{text}");
        }
        let none = UtcOffset::parse("-00:00").unwrap();
        assert_eq!(none.to_string(), "+00:00");
        assert_eq!(UtcOffset::parse("+5:45").unwrap().to_string(), "+05:45");
    }
}
