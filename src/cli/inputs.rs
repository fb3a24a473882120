//! From flags to a job: reads everything, tells all faults at once.

use std::path::Path;

use schrund::{
    Job,
    fault::{Code, Noted, Place, Problem},
    geometry::Bounds,
    practice::{GivenBy, Origin, Pace, Rule, Rules, Travel, set},
    read::{
        self,
        geojson::Given,
        trip::{Assume, Folk, RopeEntry, StageWord, Trip},
    },
    trip::{
        party::{Party, Rope},
        route::Route,
        zone::Zone,
    },
};

use crate::{
    args::{self, JobArgs},
    source, terrain,
};

/// Stands in for the gap widths that an inventory does not give; nothing is reckoned from it.
const ANY_GAP_M: f64 = 1.0;

/// Reads the files and lays trip file and flags over the rules.
pub(crate) fn read(args: &JobArgs) -> Result<Job, Vec<Problem>> {
    let mut faults = Faults::default();
    faults.check(only_one_standard_input(args));
    let trip = faults.take(read_trip(args));
    // Who goes may stand in the part that could not be read.
    let party_known = trip.is_some() || !args.party.is_empty();
    let trip = trip.unwrap_or_default();
    let rules = faults.take(rules(args, &trip));
    let gap_m = args.gap.or(trip.gap_m);
    let (route, zones) = route_and_zones(args, gap_m);
    let (route, zones) = (faults.take(route), faults.take(zones));
    let terrain = faults.take(terrain::open(&terrain_files(args, &trip)));
    let glaciers = faults.take(read_glaciers(args, &trip));
    let party = party_known.then(|| party(args, &trip, rules.as_ref()));
    let party = party.and_then(|party| faults.take(party));
    let ropes = faults.take(ropes(args, &trip));
    let (Some(rules), Some(route), Some(zones)) = (rules, route, zones) else {
        return Err(faults.0);
    };
    let (Some(terrain), Some(glaciers)) = (terrain, glaciers) else {
        return Err(faults.0);
    };
    faults.check(bridges_without_start(&rules));
    faults.check(swapped(
        &route.value,
        &zones.value,
        source::shown(&args.zones),
    ));
    let mut notices = route.notes;
    notices.extend(zones.notes);
    notices.extend(terrain.notes);
    notices.extend(glaciers.notes);
    let route = faults.take(staged(route.value, args, &trip));
    match (party, ropes, route) {
        (Some(party), Some(ropes), Some(route)) if faults.0.is_empty() => Ok(Job {
            name: trip.name,
            terrain: terrain.value,
            glaciers: glaciers.value,
            route,
            zones: zones.value,
            party,
            ropes,
            rules,
            emergency: trip.emergency,
            notices,
        }),
        _ => Err(faults.0),
    }
}

/// Faults of several readers, gathered.
#[derive(Default)]
struct Faults(Vec<Problem>);

impl Faults {
    fn take<T>(&mut self, result: Result<T, Vec<Problem>>) -> Option<T> {
        result.map_err(|faults| self.0.extend(faults)).ok()
    }

    fn check(&mut self, fault: Option<Problem>) {
        self.0.extend(fault);
    }
}

fn only_one_standard_input(args: &JobArgs) -> Option<Problem> {
    let inputs = [
        Some(&args.route),
        Some(&args.zones),
        args.trip.as_ref(),
        args.glaciers.as_ref(),
    ];
    let dashes = inputs
        .into_iter()
        .flatten()
        .filter(|name| *name == "-")
        .count();
    (dashes > 1).then(|| {
        let says = "standard input can give only one of the inputs";
        Problem::new(Code::Unreadable, Place::file("standard input"), says)
            .hint("name files for the others")
    })
}

type Read<T> = Result<Noted<T>, Vec<Problem>>;

/// Both files; one fault where each was given in the place of the other.
fn route_and_zones(args: &JobArgs, gap_m: Option<f64>) -> (Read<Route>, Read<Vec<Zone>>) {
    let (route, zones) = (read_route(&args.route), read_zones(&args.zones, gap_m));
    let begins =
        |name: &str, signs: &[u8]| source::first_sign(name).is_some_and(|b| signs.contains(&b));
    let both_failed = route.is_err() && zones.is_err();
    if !(both_failed && begins(&args.route, b"{[") && begins(&args.zones, b"<")) {
        return (route, zones);
    }
    let says = format!(
        "the two files look swapped: {} is GeoJSON and {} is GPX",
        args.route, args.zones
    );
    let hint = format!("name the line first: `{} {}`", args.zones, args.route);
    let swapped = Problem::new(Code::BrokenText, Place::file(&args.route), says).hint(hint);
    (Err(vec![swapped]), Err(Vec::new()))
}

pub(crate) fn read_route(name: &str) -> Result<Noted<Route>, Vec<Problem>> {
    let text = source::open(name).map_err(|fault| vec![fault])?;
    read::gpx::route(source::shown(name), text)
}

pub(crate) fn read_zones(name: &str, gap_m: Option<f64>) -> Result<Noted<Vec<Zone>>, Vec<Problem>> {
    let text = source::open(name).map_err(|fault| vec![fault])?;
    read::geojson::zones(source::shown(name), text, &Given { gap_m })
}

/// A path of the trip file, which is relative to the folder the trip file lies in.
fn beside_trip(args: &JobArgs, path: &str) -> String {
    let folder = args.trip.as_deref().filter(|t| !source::is_address(t));
    let folder = folder.and_then(|t| Path::new(t).parent());
    match folder {
        Some(folder) if !source::is_address(path) => folder.join(path).display().to_string(),
        _ => path.to_owned(),
    }
}

/// The terrain models of the flags, or else of the trip file.
pub(crate) fn terrain_files(args: &JobArgs, trip: &Trip) -> Vec<String> {
    if !args.terrain.is_empty() {
        return args.terrain.clone();
    }
    trip.terrain.iter().map(|t| beside_trip(args, t)).collect()
}

/// The ice of the inventory. What it says about gaps means nothing here, and a file without a polygon is a fault.
fn read_glaciers(args: &JobArgs, trip: &Trip) -> Result<Noted<Vec<Zone>>, Vec<Problem>> {
    let of_trip = || trip.glaciers.as_ref().map(|g| beside_trip(args, g));
    let Some(name) = args.glaciers.clone().or_else(of_trip) else {
        return Ok(Noted {
            value: Vec::new(),
            notes: Vec::new(),
        });
    };
    let mut read = read_zones(&name, Some(ANY_GAP_M))?;
    read.notes.retain(|note| note.code != Code::GapAssumed);
    Ok(read)
}

fn bridges_without_start(rules: &Rules) -> Option<Problem> {
    let choices = &rules.choices;
    let until = choices.bridges_until.value?;
    if choices.start.value.is_some() {
        return None;
    }
    let says = format!("bridges are trusted until {until}, but nobody said when the party starts");
    Some(
        Problem::new(Code::BadTrip, Place::item("start"), says)
            .hint("`--start 04:30`, or `start = \"04:30\"` in the trip file"),
    )
}

/// Zones that no box of the route meets, and that would be met with longitude and latitude swapped.
pub(crate) fn swapped(route: &Route, zones: &[Zone], name: &str) -> Option<Problem> {
    let lines = route.stages.iter().filter_map(|s| Bounds::of(s.points()));
    let bounds = lines.reduce(Bounds::with)?;
    read::geojson::swapped_would_meet(zones, (bounds.low, bounds.high)).then(|| {
        let says = "no zone lies near the route, but with longitude and latitude swapped zones would meet it";
        Problem::new(Code::BadPosition, Place::file(name), says)
            .hint("GeoJSON positions are [longitude, latitude]; swap the two numbers of each")
    })
}

fn trip_place(args: &JobArgs) -> Place {
    Place::file(args.trip.as_deref().map_or("trip file", source::shown))
}

fn read_trip(args: &JobArgs) -> Result<Trip, Vec<Problem>> {
    let Some(name) = &args.trip else {
        return Ok(Trip::default());
    };
    let text = source::text(name).map_err(|fault| vec![fault])?;
    read::trip::trip(source::shown(name), &text)
}

/// A practice set by name, or by path where no set has that name.
pub(crate) fn practice_rules(name: &str) -> Result<Rules, Vec<Problem>> {
    let embedded = set::EMBEDDED.iter().any(|(n, _)| *n == name);
    if embedded || !(Path::new(name).exists() || name.contains(['/', '\\', '.'])) {
        return Rules::with_practice(&set::Source::Named(name));
    }
    let text = source::text(name).map_err(|fault| vec![fault])?;
    Rules::with_practice(&set::Source::File { name, text: &text })
}

fn rules(args: &JobArgs, trip: &Trip) -> Result<Rules, Vec<Problem>> {
    let (name, origin) = match (&args.practice, &trip.practice) {
        (Some(name), _) => (name.as_str(), Origin::Flag),
        (None, Some(name)) => (name.as_str(), Origin::Trip),
        (None, None) => (set::EMBEDDED[0].0, Origin::Default),
    };
    let mut rules = practice_rules(name)?;
    rules.practice_origin = origin;
    rules.given = given_by(args);
    let mut faults = Faults::default();
    faults.take(trip.lay_over(&mut rules, &trip_place(args), &Origin::Trip));
    faults.take(flags(args).lay_over(&mut rules, &Place::item("flags"), &Origin::Flag));
    if faults.0.is_empty() {
        Ok(rules)
    } else {
        Err(faults.0)
    }
}

/// A flag wins over the trip file.
fn given_by(args: &JobArgs) -> GivenBy {
    let by = |flag: bool| if flag { Origin::Flag } else { Origin::Trip };
    GivenBy {
        party: by(!args.party.is_empty()),
        ropes: by(!args.rope.is_empty()),
        terrain: by(!args.terrain.is_empty()),
        gap: by(args.gap.is_some()),
    }
}

/// The flags in the form of a trip file.
fn flags(args: &JobArgs) -> Trip {
    let margin = args.margin.map(Assume::Value);
    let margin = margin.map(|m| (Rule::MarginM.name().to_owned(), m));
    Trip {
        travel: args.travel.map(|t| match t {
            args::Travel::Foot => Travel::Foot,
            args::Travel::Snowshoe => Travel::Snowshoe,
            args::Travel::Ski => Travel::Ski,
        }),
        pace: args.pace.map(|p| match p {
            args::Pace::Din => Pace::Din,
            args::Pace::Munter => Pace::Munter,
            args::Pace::Naismith => Pace::Naismith,
        }),
        start: args.start,
        bridges_until: args.bridges_until,
        party: folk(&args.party),
        rope: args
            .rope
            .iter()
            .map(|&length_m| RopeEntry {
                length_m,
                diameter_mm: None,
                name: None,
            })
            .collect(),
        stage: args.stage.as_ref().map(|s| stage_word(s)),
        snow: args.snow.map(Into::into),
        assume: args.assume.iter().cloned().chain(margin).collect(),
        ..Trip::default()
    }
}

/// One whole number is a head count, however large; anything else is masses.
fn folk(numbers: &[f64]) -> Option<Folk> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "known to be whole and not below nought; a huge one stays huge"
    )]
    match numbers {
        [] => None,
        [n] if n.fract() == 0.0 && *n >= 0.0 => Some(Folk::Number(*n as usize)),
        masses => Some(Folk::Masses(masses.to_vec())),
    }
}

fn stage_word(text: &str) -> StageWord {
    text.parse()
        .map_or_else(|_| StageWord::Name(text.to_owned()), StageWord::Number)
}

/// The party; where the rules themselves are at fault, the default ones are enough to find its faults.
fn party(args: &JobArgs, trip: &Trip, rules: Option<&Rules>) -> Result<Party, Vec<Problem>> {
    let default = practice_rules(set::EMBEDDED[0].0)?;
    let rules = rules.unwrap_or(&default);
    let given = match flags(args).party(&Place::item("flags"), rules)? {
        Some(party) => Some(party),
        None => trip.party(&trip_place(args), rules)?,
    };
    given.ok_or_else(|| {
        let says = "nobody said how many go";
        vec![
            Problem::new(Code::BadTrip, Place::item("party"), says)
                .hint("`--party 3`, or their masses with pack: `--party 82,75,90`"),
        ]
    })
}

fn ropes(args: &JobArgs, trip: &Trip) -> Result<Vec<Rope>, Vec<Problem>> {
    if args.rope.is_empty() {
        trip.ropes(&trip_place(args))
    } else {
        flags(args).ropes(&Place::item("flags"))
    }
}

/// The stage asked for, or all.
fn staged(route: Route, args: &JobArgs, trip: &Trip) -> Result<Route, Vec<Problem>> {
    let Some(word) = flags(args).stage.or_else(|| trip.stage.clone()) else {
        return Ok(route);
    };
    let is_it = |number: usize, name: Option<&str>| match &word {
        StageWord::Number(n) => *n == number,
        StageWord::Name(n) => name == Some(n.as_str()),
    };
    let labels: Vec<String> = route
        .stages
        .iter()
        .map(schrund::trip::route::Stage::label)
        .collect();
    let stages: Vec<_> = route
        .stages
        .into_iter()
        .filter(|s| is_it(s.number, s.name.as_deref()))
        .collect();
    if stages.is_empty() {
        let says = format!("the route has no such stage: {}", word_shown(&word));
        let hint = format!("it has {}", labels.join(", "));
        return Err(vec![
            Problem::new(Code::UnknownName, Place::item("stage"), says).hint(hint),
        ]);
    }
    Ok(Route {
        name: route.name,
        stages,
    })
}

fn word_shown(word: &StageWord) -> String {
    match word {
        StageWord::Number(n) => n.to_string(),
        StageWord::Name(name) => format!("\"{name}\""),
    }
}
