//! `schrund check`: reads files, reports every fault and oddity, plans nothing.

use std::io::BufRead;

use schrund::{
    fault::{Fault, Noted, Place},
    read::{
        input::{Input, Text},
        kind::{self, Kind},
        lay,
        swapped::{FileNames, swapped},
        trip,
    },
    trip::{route::Route, zone::Zone},
};

#[cfg(feature = "shell")]
use crate::explain;
use crate::{End, args::CheckArgs, limits, show::Show, source, terrain};

pub(crate) fn run(args: &CheckArgs, show: &Show) -> End {
    #[cfg(feature = "shell")]
    match &args.explain {
        Some(Some(code)) => return explain::one(code, show),
        Some(None) => return show.result(|out| explain::list(out, show.columns())),
        None => {}
    }
    let mut problems = Vec::new();
    let mut read = ReadSoFar {
        gap_m: args.gap,
        ..ReadSoFar::default()
    };
    // What a trip file says to assume holds for the zones, wherever the two were named.
    let (trips, others): (Vec<&String>, Vec<_>) =
        args.files.iter().partition(|name| name.ends_with(".toml"));
    for name in trips.into_iter().chain(others) {
        match check(name, &mut read) {
            Ok(Noted { value, notes }) => {
                show.notices(&notes);
                show.say(&value);
            }
            Err(faults) => problems.extend(faults),
        }
    }
    problems.extend(read.swapped());
    show.problems(&problems)
}

/// What was read so far, for questions that take two files.
#[derive(Default)]
struct ReadSoFar {
    route: Option<(String, Route)>,
    zones: Option<(String, Vec<Zone>)>,
    /// What to assume for zones that give no gap width, metres.
    gap_m: Option<f64>,
}

impl ReadSoFar {
    /// Files that would meet with longitude and latitude swapped in one of them.
    fn swapped(&self) -> Option<Fault> {
        let ((line, route), (ice, zones)) = (self.route.as_ref()?, self.zones.as_ref()?);
        let names = FileNames {
            route: line,
            zones: ice,
        };
        swapped(route, zones, &[], names)
    }
}

/// Reads a file as what it is, and says in a line what it holds.
fn check(name: &str, read: &mut ReadSoFar) -> Result<Noted<String>, Vec<Fault>> {
    let shown = &source::shown(name);
    if source::is_address(name) && matches!(kind::of(shown, &[]), Kind::Terrain) {
        // Only the parts that are looked at come.
        return terrain::check(name);
    }
    let mut text = source::open(name).map_err(|fault| vec![fault])?;
    let start = text.fill_buf().unwrap_or_default();
    let (kind, packed) = (kind::of(shown, start), kind::is_flatgeobuf(start));
    let input = Input::text(shown, text).within(limits::in_force());
    match kind {
        Kind::Terrain => terrain::check(name),
        Kind::Zones => {
            let zones = lay::zones(input, read.gap_m)?;
            let format = if packed { " in FlatGeobuf" } else { "" };
            let says = format!("{shown}: {} zones{format}", zones.value.len());
            read.zones = Some((shown.clone(), zones.value));
            Ok(noted(says, zones.notes))
        }
        Kind::Route => {
            let route = lay::route(input)?;
            let says = route_says(shown, &route.value);
            read.route = Some((shown.clone(), route.value));
            Ok(noted(says, route.notes))
        }
        Kind::Toml => toml(input, read).map(|says| noted(says, Vec::new())),
    }
}

fn noted(value: String, notes: Vec<Fault>) -> Noted<String> {
    Noted { value, notes }
}

fn route_says(shown: &str, route: &Route) -> String {
    let points: usize = route.stages.iter().map(|s| s.points().len()).sum();
    let stages = match route.stages.len() {
        1 => "1 stage".to_owned(),
        n => format!("{n} stages"),
    };
    format!(
        "{shown}: a route of {stages}, {:.2} km, {points} points",
        route.length_m() / 1000.0
    )
}

/// A trip file, or a practice file.
fn toml(input: Input<Text<'_>>, read: &mut ReadSoFar) -> Result<String, Vec<Fault>> {
    let (shown, limits) = (input.name.clone(), input.limits);
    let text = input.whole()?;
    if kind::is_practice(&text) {
        let rules = lay::practice(Input::text(&shown, text.as_bytes()).within(limits))?;
        return Ok(format!("{shown}: practice set {}", rules.practice));
    }
    let trip = trip::trip(&shown, &text)?;
    trip::check(&trip, &Place::file(&shown), &limits)?;
    read.gap_m = read.gap_m.or(trip.gap_m);
    Ok(format!("{shown}: a trip file"))
}
