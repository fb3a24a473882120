//! `schrund zone`: a zone along the line by kilometre, into a zones file. The one command that writes a file which it
//! reads: built beside it and exchanged whole, with every other feature as it was.

use std::{
    io::ErrorKind,
    path::{Path, PathBuf},
};

use schrund::{
    fault::{Fault, Item, Noted, Place, files::WrittenAs},
    read::{lay, trip::StageWord},
    say,
    strip::{
        LineStrip, StripWanted,
        append::{self, Appended},
        asked::{self, AskedStretch},
        strips,
    },
    trip::route::Route,
};

use crate::{
    End,
    answer::Answer,
    args::{UnitsFlag, ZoneArgs, voice},
    inputs,
    mistaken::ends,
    naming,
    save::Saver,
    show::Show,
    source,
};

pub(crate) fn run(args: &ZoneArgs, show: &Show) -> End {
    if let Some(answer) = no_file(&args.into) {
        return show.misused(&answer);
    }
    match write(args, show) {
        Ok(()) => End::Done,
        Err(problems) => show.problems(&problems),
    }
}

/// A place that no zones can be put into: standard output, an address, a name that nobody would look for them under.
fn no_file(into: &Path) -> Option<Answer> {
    let name = into.display().to_string();
    let says = if name == "-" || source::is_address(&name) {
        format!("zones go into a file, and `{name}` is none")
    } else if !ends(&name, &["geojson", "json"]) && into.symlink_metadata().is_err() {
        format!("a zones file is GeoJSON, and `{name}` is not called so")
    } else {
        return None;
    };
    let free = match into.file_stem() {
        Some(_) if name != "-" && !source::is_address(&name) => into.with_extension("geojson"),
        _ => PathBuf::from("zones.geojson"),
    };
    let free = naming::typed(&free.display().to_string());
    let cure = format!("`--into {free}`");
    Some(Answer { says, cure })
}

fn write(args: &ZoneArgs, show: &Show) -> Result<(), Vec<Fault>> {
    let name = naming::text(args.into.as_os_str());
    let saver = Saver::new([args.route.as_str()], true);
    let mut faults = saver.refusals(std::slice::from_ref(&args.into), WrittenAs::Zones);
    let held = if faults.is_empty() {
        held(&args.into)
    } else {
        Ok(None)
    };
    let (asked, wrong) = asked(args);
    faults.extend(wrong);
    let route = line(args);
    let made = match &route {
        Ok(route) => {
            show.notices(&route.notes);
            made(args, &route.value, &asked)
        }
        Err(_) => Ok(Noted {
            value: Vec::new(),
            notes: Vec::new(),
        }),
    };
    let strips = made.as_ref().map_or(&[][..], |made| &made.value);
    let appended = held
        .as_ref()
        .ok()
        .map(|held| append::to(&source::shown(&name), held.clone(), strips));
    let (Ok(held), Ok(made), Some(Ok(appended)), Ok(_), true) =
        (&held, &made, &appended, &route, faults.is_empty())
    else {
        // All that is wrong is told at once.
        let others = [
            route.err(),
            made.err(),
            held.err(),
            appended.and_then(Result::err),
        ];
        faults.extend(others.into_iter().flatten().flatten());
        return Err(faults);
    };
    let exchanged = saver.exchange(&args.into, held.as_deref(), &appended.text);
    exchanged.map_err(|fault| vec![fault])?;
    show.notices(&made.notes);
    tell(args, &made.value, appended, show);
    Ok(())
}

/// What the file holds; nothing where there is none.
fn held(into: &Path) -> Result<Option<Vec<u8>>, Vec<Fault>> {
    let there = into.symlink_metadata();
    if there.is_err_and(|fault| fault.kind() == ErrorKind::NotFound) {
        return Ok(None);
    }
    let name = naming::text(into.as_os_str());
    let whole = source::open(&name).and_then(|from| source::whole(&name, from));
    whole.map(Some).map_err(|fault| vec![fault])
}

fn asked(args: &ZoneArgs) -> (Vec<AskedStretch>, Vec<Fault>) {
    let (mut good, mut wrong) = (Vec::new(), Vec::new());
    for typed in asked::together(&args.stretches) {
        match asked::stretch(&typed) {
            Ok(stretch) => good.push(stretch),
            Err(fault) => wrong.push(fault),
        }
    }
    (good, wrong)
}

/// The line, of the stage that is asked for.
fn line(args: &ZoneArgs) -> Result<Noted<Route>, Vec<Fault>> {
    let read = lay::route(inputs::text(&args.route))?;
    let Some(stage) = &args.stage else {
        return Ok(read);
    };
    let staged = StageWord::parse(stage).of(read.value, &Place::item(Item::Flags));
    let value = staged.map_err(|fault| vec![fault])?;
    Ok(Noted {
        value,
        notes: read.notes,
    })
}

/// The zones; where nobody says where one comes from it says how it was made, each by its own kilometres.
fn made(
    args: &ZoneArgs,
    route: &Route,
    asked: &[AskedStretch],
) -> Result<Noted<Vec<LineStrip>>, Vec<Fault>> {
    let wanted = StripWanted {
        half_width_m: args.half_width,
        typed: typed(args),
    };
    let mut made = strips(route, asked, &wanted)?;
    let voice = voice(args.lang.unwrap_or_default(), UnitsFlag::Metric);
    for strip in &mut made.value {
        if strip.zone.source.is_none() {
            let said = say::strip::source(
                &source::shown(&args.route),
                strip.stretch,
                strip.half_width_m,
                voice,
            );
            strip.zone.source = Some(said.to_string());
        }
    }
    Ok(made)
}

/// What is said of the ice, by the property of a zones file.
fn typed(args: &ZoneArgs) -> Vec<(&'static str, String)> {
    let flags = [
        ("name", &args.called),
        ("gap_m", &args.gap),
        ("snow_depth_m", &args.snow_depth),
        ("surface", &args.surface),
        ("strike_deg", &args.strike),
        ("strike_uncertainty_deg", &args.strike_uncertainty),
        ("rope", &args.rope_word),
        ("observed_on", &args.observed_on),
        ("source", &args.source),
        ("note", &args.note),
    ];
    flags
        .into_iter()
        .filter_map(|(property, text)| Some((property, text.clone()?)))
        .collect()
}

fn tell(args: &ZoneArgs, made: &[LineStrip], appended: &Appended, show: &Show) {
    let voice = voice(args.lang.unwrap_or_default(), UnitsFlag::Metric);
    let file = args.into.display().to_string();
    for said in say::strip::written(&file, made, appended, voice) {
        show.say(&said.to_string());
    }
}
