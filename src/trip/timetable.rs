//! The leader's times of day: when to start, until when snow bridges are trusted, when to be back; and which day it is.

use serde_json::Value;

use crate::{
    practice::{
        Origin, Standing,
        words::{Word, WordInForce},
    },
    trip::{
        clock::Clock,
        day::{Day, UtcOffset},
    },
};

/// Times of day, each with who gave it.
///
/// ```
/// use schrund::{practice::Origin, trip::timetable::Timetable};
///
/// let mut times = Timetable::default();
/// assert_eq!(times.set("bridges_until", "10:00", Origin::Flag), Some(true));
/// assert_eq!(times.set("bridges_until", "ten", Origin::Flag), Some(false), "no time of day: nothing changes");
/// assert_eq!(times.set("supper", "19:00", Origin::Flag), None);
/// assert_eq!(times.set("date", "2027-07-14", Origin::Flag), Some(true));
/// let [start, _, until, .., date, _] = times.said();
/// assert!(start.value.is_null() && until.value == "10:00" && date.value == "2027-07-14");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Timetable {
    /// When the party starts each stage, if the leader says so.
    pub start: Word<Option<Clock>>,
    /// Where the hour of the start counts, if not where a stage begins, kilometres from there: who is under way says so what
    /// time it is. Of a stage that is shorter it is the end.
    pub start_at_km: Word<Option<f64>>,
    /// Until when the leader trusts snow bridges, if they say so.
    pub bridges_until: Word<Option<Clock>>,
    /// When the party wants to be at the end of its line, if the leader says so.
    pub back_by: Word<Option<Clock>>,
    /// The day of the trip, if the leader says so.
    pub date: Word<Option<Day>>,
    /// How far the clocks of the trip are from UTC, if the leader says so.
    pub utc_offset: Word<Option<UtcOffset>>,
}

impl Default for Timetable {
    fn default() -> Self {
        Self {
            start: Word::default_of(None, Standing::Leader),
            start_at_km: Word::default_of(None, Standing::Leader),
            bridges_until: Word::default_of(None, Standing::Leader),
            back_by: Word::default_of(None, Standing::Leader),
            date: Word::default_of(None, Standing::Leader),
            utc_offset: Word::default_of(None, Standing::Leader),
        }
    }
}

impl Timetable {
    /// Every word, null where nobody gave it.
    #[must_use]
    pub fn said(&self) -> [WordInForce; 6] {
        let until = "until when snow bridges are trusted";
        let at = "where that hour counts, if not where a stage begins";
        [
            listed(&self.start, "start", "when each stage is started"),
            listed(&self.start_at_km, "start_at_km", at),
            listed(&self.bridges_until, "bridges_until", until),
            listed(&self.back_by, "back_by", "when the line is to be done"),
            listed(&self.date, "date", "the day of the trip"),
            listed(&self.utc_offset, "utc_offset", "its clock against UTC"),
        ]
    }

    /// Whether who is under way has this chainage of a stage behind them, metres.
    pub(crate) fn is_past(&self, at_m: f64) -> bool {
        self.start_at_m().is_some_and(|here_m| here_m >= at_m)
    }

    /// Where the hour of the start counts, metres from where a stage begins; `None` where it counts there.
    pub(crate) fn start_at_m(&self) -> Option<f64> {
        self.start_at_km.value.map(|km| 1000.0 * km)
    }

    /// Puts a word in force by its name. `None` where there is no such name, false where the text is no such thing.
    #[must_use]
    pub fn set(&mut self, name: &str, text: &str, origin: Origin) -> Option<bool> {
        Some(match name {
            "start" => self.start.put(Clock::parse(text).ok().map(Some), origin),
            "start_at_km" => {
                let km = text.parse().ok().filter(|km| is_on_a_line(*km));
                self.start_at_km.put(km.map(Some), origin)
            }
            "bridges_until" => {
                let until = Clock::parse(text).ok().map(Some);
                self.bridges_until.put(until, origin)
            }
            "back_by" => self.back_by.put(Clock::parse(text).ok().map(Some), origin),
            "date" => self.date.put(Day::parse(text).ok().map(Some), origin),
            "utc_offset" => {
                let offset = UtcOffset::parse(text).ok().map(Some);
                self.utc_offset.put(offset, origin)
            }
            _ => return None,
        })
    }
}

/// Whether a line can have such a kilometre.
pub(crate) fn is_on_a_line(km: f64) -> bool {
    km.is_finite() && km >= 0.0
}

fn listed<T: ToString>(
    word: &Word<Option<T>>,
    name: &'static str,
    says: &'static str,
) -> WordInForce {
    let value = word.value.as_ref().map(ToString::to_string);
    word.said(name, says, value.map_or(Value::Null, Value::from))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_set_by_the_name_it_is_listed_under() {
        let mut times = Timetable::default();
        let texts = ["04:30", "5.5", "04:30", "04:30", "2027-07-14", "+02:00"];
        for (i, text) in texts.into_iter().enumerate() {
            let name = times.said()[i].name;
            assert_eq!(times.said()[i].value, Value::Null, "{name}");
            assert_eq!(times.set(name, text, Origin::Flag), Some(true), "{name}");
            assert_eq!(times.said()[i].value, text, "{name}");
            assert_eq!(times.set(name, "4h30", Origin::Flag), Some(false), "{name}");
        }
        assert_eq!(times.set("travel", "4:30", Origin::Flag), None);
    }
}
