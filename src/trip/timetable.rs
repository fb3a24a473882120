//! The leader's times of day: when to start, and until when snow bridges are trusted.

use serde_json::Value;

use crate::{
    practice::{
        Origin, Standing,
        words::{Word, WordInForce},
    },
    trip::clock::Clock,
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
/// let [start, until] = times.said();
/// assert!(start.value.is_null() && until.value == "10:00");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Timetable {
    /// When the party starts each stage, if the leader says so.
    pub start: Word<Option<Clock>>,
    /// Until when the leader trusts snow bridges, if they say so.
    pub bridges_until: Word<Option<Clock>>,
}

impl Default for Timetable {
    fn default() -> Self {
        Self {
            start: Word::default_of(None, Standing::Leader),
            bridges_until: Word::default_of(None, Standing::Leader),
        }
    }
}

impl Timetable {
    /// Every time, null where nobody gave it.
    #[must_use]
    pub fn said(&self) -> [WordInForce; 2] {
        let value = |word: &Word<Option<Clock>>| {
            let time = word.value.map(|clock| clock.to_string());
            time.map_or(Value::Null, Value::from)
        };
        let (start, until) = (&self.start, &self.bridges_until);
        [
            start.said("start", "when each stage is started", value(start)),
            until.said(
                "bridges_until",
                "until when snow bridges are trusted",
                value(until),
            ),
        ]
    }

    /// Puts a time in force by its name. `None` where there is no such name, false where the text is no time of day.
    #[must_use]
    pub fn set(&mut self, name: &str, text: &str, origin: Origin) -> Option<bool> {
        let word = match name {
            "start" => &mut self.start,
            "bridges_until" => &mut self.bridges_until,
            _ => return None,
        };
        let time = Clock::parse(text).ok();
        Some(word.put(time.map(Some), origin))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_set_by_the_name_it_is_listed_under() {
        let mut times = Timetable::default();
        for i in 0..2 {
            let name = times.said()[i].name;
            assert_eq!(times.said()[i].value, Value::Null, "{name}");
            assert_eq!(times.set(name, "4:30", Origin::Flag), Some(true), "{name}");
            assert_eq!(times.said()[i].value, "04:30", "{name}");
            assert_eq!(times.set(name, "4h30", Origin::Flag), Some(false), "{name}");
        }
        assert_eq!(times.set("travel", "4:30", Origin::Flag), None);
    }
}
