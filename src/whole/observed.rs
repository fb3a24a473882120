//! How old the leader's view of the ice is on the day of the trip.

use crate::{
    plan::{fact::Fact, name::ZoneName},
    practice::Rule,
    trip::{day::Day, job::Brief, zone::Zone},
};

/// Zones on the way that were observed long before the day of the trip; nothing where either day is not known.
pub(super) fn long_ago(job: &Brief<'_>, met: &[&Zone]) -> Option<Fact> {
    let trip = job.timetable.date.value?;
    let old = met.iter().filter_map(|zone| {
        let on = observed(zone)?;
        let days = trip.days_after(on);
        (f64::from(days) > job.rules[Rule::ObservedDays]).then_some((days, on, zone))
    });
    let old: Vec<_> = old.collect();
    let &(days, observed_on, _) = old.iter().max_by_key(|(days, ..)| *days)?;
    let zones = old.iter().map(|(.., zone)| ZoneName::from(**zone));
    Some(Fact::ObservedLongAgo {
        zones: zones.collect(),
        observed_on,
        days,
    })
}

/// The day that `observed_on` begins with, where it is written as `2027-07-14` or `20270714`, as inventories do; other
/// ways of writing one are not read.
fn observed(zone: &Zone) -> Option<Day> {
    let written = zone.observed_on.as_deref()?.trim();
    let day = written.split(['T', ' ']).next()?;
    let parts = day.get(..4).zip(day.get(4..6)).zip(day.get(6..8));
    let basic = parts.filter(|_| day.len() == 8);
    let basic = basic.map(|((year, month), of_month)| format!("{year}-{month}-{of_month}"));
    Day::parse(basic.as_deref().unwrap_or(day)).ok()
}
