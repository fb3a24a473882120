//! `schrund height`: heights of terrain models at places, for scripts and for trust.
//!
//! One line a place, tab-separated: longitude and latitude as given, the height of the cell that holds the
//! place, and the height between the four cells around it, in metres; `void` where there is none.

use std::io::{self, BufRead};

use schrund::{
    fault::{Fault, Item, Place, files::InFiles},
    geometry::{LonLat, Utm},
    raster::Terrain,
};

use crate::{End, args::HeightArgs, show::Show, source, terrain};

/// What stands where a model has no height.
const VOID: &str = "void";

/// What the columns are, for people; scripts read standard output alone.
const COLUMNS: &str = "longitude, latitude, nearest m, bilinear m";

pub(crate) fn run(args: &HeightArgs, show: &Show) -> End {
    match answer(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&problems),
    }
}

fn answer(args: &HeightArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let (opened, places) = match (terrain::open(&args.files), asked(args)) {
        (Ok(opened), Ok(places)) => (opened, places),
        (opened, places) => {
            let faults = [places.err(), opened.err()];
            return Err(faults.into_iter().flatten().flatten().collect());
        }
    };
    let mut lines = Vec::new();
    for place in &places {
        lines.push(line(place, &opened.value).map_err(|fault| vec![fault])?);
    }
    show.notices(&opened.notes);
    show.notices(&opened.value.notes());
    show.say(COLUMNS);
    Ok(show.result(|out| lines.iter().try_for_each(|line| writeln!(out, "{line}"))))
}

/// A place with its numbers as they were written.
struct AskedPlace {
    lon: String,
    lat: String,
    at: LonLat,
}

fn asked(args: &HeightArgs) -> Result<Vec<AskedPlace>, Vec<Fault>> {
    let mut places = Vec::new();
    let mut faults = Vec::new();
    let mut take = |place: Place, text: &str| match parse(text) {
        Some(asked) => places.push(asked),
        None => faults.push(wrong(place, text)),
    };
    for text in &args.at {
        if text != "-" {
            take(Place::item(Item::Flag("--at")), text);
            continue;
        }
        for (i, line) in (1..).zip(io::stdin().lock().lines()) {
            let place = Place::file(&source::shown("-")).at_line(i, 1);
            match line {
                Ok(line) if line.trim().is_empty() => {}
                Ok(line) => take(place, &line),
                Err(fault) => {
                    let stopped = InFiles::Stopped(fault.to_string());
                    return Err(vec![Fault::new(stopped, place)]);
                }
            }
        }
    }
    if faults.is_empty() {
        Ok(places)
    } else {
        Err(faults)
    }
}

/// `7.65,45.97`, or with blanks or a tab between; or as plans print a place: `45.97000° N 7.65000° E`,
/// `32T 396088 5092288`.
fn parse(text: &str) -> Option<AskedPlace> {
    // Slashes part the numbers in some notations.
    if let Some(at) = Utm::place(&text.replace('/', " ")) {
        let [lon, lat] = [at.lon_deg, at.lat_deg].map(|deg| format!("{deg:.7}"));
        return Some(AskedPlace { lon, lat, at });
    }
    let turned = printed(text);
    let text = turned.as_deref().unwrap_or(text);
    let mut parts = text
        .split([',', ' ', '\t', '\r'])
        .filter(|part| !part.is_empty());
    let (lon, lat) = (parts.next()?, parts.next()?);
    let at = LonLat::new(lon.parse().ok()?, lat.parse().ok()?);
    let inside = (-360.0..=360.0).contains(&at.lon_deg) && (-90.0..=90.0).contains(&at.lat_deg);
    (parts.next().is_none() && inside).then(|| AskedPlace {
        lon: lon.to_owned(),
        lat: lat.to_owned(),
        at,
    })
}

/// `45.97° N 7.65° E` as `7.65,45.97`.
fn printed(text: &str) -> Option<String> {
    let (lat, rest) = text.split_once(['N', 'S'])?;
    let lon = rest.trim_matches([' ', ',']);
    let (east, west) = (lon.strip_suffix('E'), lon.strip_suffix('W'));
    let number = |text: &str| text.replace('°', "").trim().to_owned();
    let signed =
        |minus: bool, text: &str| format!("{}{}", if minus { "-" } else { "" }, number(text));
    let south = text.contains('S');
    Some(format!(
        "{},{}",
        signed(west.is_some(), east.or(west)?),
        signed(south, lat)
    ))
}

fn wrong(place: Place, text: &str) -> Fault {
    let parts = text.split([',', ' ', '\t', '\r', ';', '/']);
    let mut parts = parts.filter(|part| !part.is_empty());
    let one = parts.next().filter(|_| parts.next().is_none());
    let what = match one.map(str::parse::<f64>) {
        Some(Ok(_)) => InFiles::OneNumber(text.to_owned()),
        _ => other_band(text).unwrap_or_else(|| InFiles::NoPlace(text.to_owned())),
    };
    Fault::new(what, place)
}

/// A place of the UTM grid whose letter is not that of its band, perhaps with slashes between its parts.
fn other_band(text: &str) -> Option<InFiles> {
    let text = text.replace(['/', ',', ';'], " ");
    let end = text.find(|c: char| !c.is_ascii_digit())?;
    let (zone, rest) = text.split_at(end);
    let letter = rest.chars().next().filter(char::is_ascii_alphabetic)?;
    let rest: Vec<&str> = rest.get(1..)?.split_whitespace().collect();
    let with = |letter: char| format!("{zone}{letter} {}", rest.join(" "));
    let upper = letter.to_ascii_uppercase();
    let suits = |letter: &char| Utm::place(&with(*letter)).is_some();
    // `N` stands for the north in many programs and `S` for the south, and each is the letter of a band too.
    let north = BANDS.split_at(BANDS.len() / 2).1;
    let asked = if upper == 'N' { north } else { BANDS };
    let meant: Vec<String> = asked.chars().filter(suits).map(with).collect();
    (!meant.is_empty()).then_some(InFiles::NoBand { letter, meant })
}

/// The letters of the bands of the grid from south to north, as many on either side of the equator.
const BANDS: &str = "CDEFGHJKLMNPQRSTUVWX";

fn line(asked: &AskedPlace, terrain: &Terrain) -> Result<String, Fault> {
    let nearest = number(terrain.nearest_m(asked.at)?);
    let between = number(terrain.height_m(asked.at)?);
    Ok(format!(
        "{}\t{}\t{nearest}\t{between}",
        asked.lon, asked.lat
    ))
}

/// A tenth of a millimetre, without idle noughts.
fn number(height_m: Option<f64>) -> String {
    let Some(height_m) = height_m else {
        return VOID.to_owned();
    };
    let text = format!("{:.4}", height_m + 0.0);
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}
