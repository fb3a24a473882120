//! When the sun rises and sets.
//!
//! *Model:* the sun's upper edge at a level horizon at sea level, 34' of refraction `[spa2004]`, by the algorithm of Reda and
//! Andreas through the crate `solar-positioning`. *Valid:* for planning; mountains hide the sun, and from 3000 m it is
//! seen some ten minutes longer at either end (derived: the horizon lies 1.6° lower). *Error:* under a minute up to 60° of
//! latitude, some minutes where the sun rises at a flat angle. *Checked:* tests/times/sun.rs, against the printed example
//! of the same algorithm and almanacs.

use std::cell::RefCell;

use solar_positioning::{Horizon, Location, SolarEvents, delta_t, time::JulianDate};

use crate::{
    geometry::LonLat,
    trip::{
        clock::Clock,
        day::{Day, UtcOffset},
    },
};

/// The sun over a day, by the clocks of the trip.
///
/// ```
/// use schrund::{geometry::LonLat, times::sun::SunDay, trip::{clock::Clock, day::{Day, UtcOffset}}};
///
/// // Polar day and polar night on Svalbard.
/// let on = |day: &str| {
///     let day = Day::parse(day).ok()?;
///     SunDay::at(LonLat::new(15.6, 78.2), day, UtcOffset::parse("+01:00").ok()?)
/// };
/// let (summer, winter) = (on("2027-06-21").expect("a day"), on("2027-12-21").expect("a day"));
/// assert_eq!((summer.rises, summer.up_all_day), (None, Some(true)));
/// assert_eq!((winter.sets, winter.up_all_day), (None, Some(false)));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SunDay {
    /// When it rises on that day.
    pub rises: Option<Clock>,
    /// When it sets after that; it may be past midnight.
    pub sets: Option<Clock>,
    /// Where it does neither, whether it is up.
    pub up_all_day: Option<bool>,
}

const DAY_MIN: f64 = 1440.0;

/// Days that are remembered `[ours]`: a plan and those of the same trip with something missing ask for the same two.
const REMEMBERED: usize = 16;

type Asked = ([u64; 3], Day, UtcOffset);

thread_local! {
    /// The latest answers: one takes a millisecond.
    static ANSWERED: RefCell<Vec<(Asked, Option<SunDay>)>> = const { RefCell::new(Vec::new()) };
}

impl SunDay {
    /// At a place, on a day that begins at midnight by the clocks of the trip. `None` where the model has no answer.
    #[must_use]
    pub fn at(place: LonLat, day: Day, offset: UtcOffset) -> Option<Self> {
        Self::days_after(0.0, place, day, offset)
    }

    /// The same so many days after a day, by the clock of that day: sunrise on the next one is `06:12 +1`.
    #[must_use]
    pub fn days_after(days: f64, place: LonLat, day: Day, offset: UtcOffset) -> Option<Self> {
        let figures = [days, place.lon_deg, place.lat_deg].map(f64::to_bits);
        let asked = (figures, day, offset);
        let known = ANSWERED.with_borrow(|all| all.iter().find(|(of, _)| *of == asked).copied());
        if let Some((_, answer)) = known {
            return answer;
        }
        let answer = Self::reckoned(days, place, day, offset);
        ANSWERED.with_borrow_mut(|all| {
            all.truncate(REMEMBERED - 1);
            all.insert(0, (asked, answer));
        });
        answer
    }

    fn reckoned(days: f64, place: LonLat, day: Day, offset: UtcOffset) -> Option<Self> {
        let (year, month) = (i32::from(day.year()), u32::from(day.month()));
        let delta_t = delta_t::estimate_from_date(year, month).ok()?;
        let midnight = JulianDate::from_utc(year, month, u32::from(day.day()), 0, 0, 0.0, delta_t);
        let start = midnight.ok()?.julian_date() - offset.min() / DAY_MIN;
        let begins = start + days;
        let place = place.normal();
        let location = Location {
            latitude: place.lat_deg,
            longitude: place.lon_deg,
        };
        let horizon = Horizon::SunriseSunset;
        let sun = SolarEvents::new();
        let events = sun
            .for_interval_from_julian(begins, begins + 1.0, location, delta_t, horizon)
            .ok()?;
        let clock = |julian: f64| Clock::of_min((julian - start) * DAY_MIN);
        let rises = events.rises.first().copied();
        let sets = match rises {
            Some(rises) => sun
                .next_set_from_julian(rises, rises + 1.0, location, delta_t, horizon)
                .ok()?,
            None => events.sets.first().copied(),
        };
        let neither = rises.is_none() && sets.is_none();
        Some(Self {
            rises: rises.map(clock),
            sets: sets.map(clock),
            up_all_day: neither.then(|| events.always_above()),
        })
    }
}
