//! Times of day in sentences.

use crate::{
    say::{arg::Arg, voice::Voice},
    trip::clock::Clock,
};

/// `04:30`; `00:10 the day after`, `23:50 the day before`, both as seen from the day of the start.
#[must_use]
pub fn hour(clock: Clock, voice: Voice) -> Arg<'static> {
    let of_day = Arg::Figure(clock.of_day().to_string());
    let key = match clock.day() {
        0.0 => return of_day,
        1.0 => "hour-day-after",
        -1.0 => "hour-day-before",
        _ => "hour-days-away",
    };
    let days = Arg::Figure(format!("{:+.0}", clock.day()));
    Arg::Said(voice.say(key, &[("hour", of_day), ("days", days)]))
}

/// The same of an hour that is told beside one of another day: that of the start is then named as well.
#[must_use]
pub fn hour_beside(clock: Clock, other: Clock, voice: Voice) -> Arg<'static> {
    if clock.day() != 0.0 || other.day() == 0.0 {
        return hour(clock, voice);
    }
    let hour = [("hour", Arg::Figure(clock.to_string()))];
    Arg::Said(voice.say("hour-day-of-start", &hour))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_day_is_said_in_words() {
        let shown = |min: f64| {
            let said = hour(Clock::of_min(min), Voice::default());
            said.said(Voice::default().units).to_string()
        };
        assert_eq!(shown(270.0), "04:30");
        assert_eq!(shown(-10.0), "23:50 the day before");
        assert_eq!(shown(-0.4), "00:00");
        assert_eq!(shown(1450.0), "00:10 the day after");
        assert_eq!(shown(3000.0), "02:00 (+2 days)");
    }
}
