//! `schrund fetch`: outlines and heights near a line, from a server into files of this machine.

use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
};

use schrund::{
    fault::{Fault, files::WrittenAs},
    fetch::{
        Address, TileTemplate,
        heights::{HeightExcerpt, TerrainOffer},
        outlines::{OutlinesNear, surroundings},
    },
    geometry::Bounds,
    read::{
        as_text::{TextWithin, text_within},
        input::Input,
        lay,
    },
    say::{fetched, plain, voice::Voice},
    trip::route::Stage,
};

use crate::{
    End,
    answer::Answer,
    args::{FetchCall, FetchTerrainArgs, FetchZonesArgs, NearArgs, UnitsFlag, voice},
    inputs, limits,
    mistaken::ends,
    naming, network,
    save::{self, Saver},
    show::Show,
};

pub(crate) fn run(call: &FetchCall, show: &Show) -> End {
    let done = match call {
        FetchCall::Zones(args) => zones(args, show),
        FetchCall::Terrain(args) => terrain(args, show),
    };
    done.unwrap_or_else(|problems| show.problems(&problems))
}

fn zones(args: &FetchZonesArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let saver = Saver::new([args.route.as_str()], args.force);
    let files: Vec<PathBuf> = args.output.iter().chain(&args.inventory).cloned().collect();
    let refusals = saver.refusals(&files, WrittenAs::Output);
    let address = Address::parse(&args.from).map_err(|fault| vec![fault]);
    let (address, boxes) = match (address, boxes(&args.route, show)) {
        (Ok(address), Ok(boxes)) if refusals.is_empty() => (address, boxes),
        (address, boxes) => {
            let faults = [Some(refusals), address.err(), boxes.err()];
            return Err(faults.into_iter().flatten().flatten().collect());
        }
    };
    let near = outlines(&address, &boxes, args.near.around)?;
    write_zones(args, &near, &saver, show)
}

/// Outlines near a line: of a file with an index only those come, of any other all, of a collection its pages.
fn outlines(
    address: &Address,
    boxes: &[Bounds],
    around_m: f64,
) -> Result<OutlinesNear, Vec<Fault>> {
    let fetcher = network::fetcher();
    let one = |fault| vec![fault];
    if let Some((source, file)) = fetcher.outline_file(address).map_err(one)? {
        let found = text_within(
            Input::new(&file.address, source).within(limits::in_force()),
            &surroundings(boxes, around_m),
        )?;
        if let Some(TextWithin { text, features }) = found {
            return file.near(&text, features, boxes, around_m).map_err(one);
        }
    }
    fetcher.outlines(address, boxes, around_m).map_err(one)
}

fn write_zones(
    args: &FetchZonesArgs,
    near: &OutlinesNear,
    saver: &Saver,
    show: &Show,
) -> Result<End, Vec<Fault>> {
    let voice = told_in(&args.near);
    let source = fetched::source(&near.address, &near.day, near.licence.as_deref(), voice);
    let source = source.to_string();
    if let Some(file) = &args.inventory {
        save(
            saver,
            file,
            plain::json(near.inventory(&source).into()).as_bytes(),
        )?;
        show.wrote(file);
    }
    // Names are the words of a server.
    let zones = plain::json(near.zones(&source).into());
    let end = match &args.output {
        None => show.result(|out| out.write_all(zones.as_bytes())),
        Some(file) => {
            save(saver, file, zones.as_bytes())?;
            show.wrote(file);
            End::Done
        }
    };
    for told in fetched::outlines(near.count(), near.came, near.by_index, voice) {
        show.say(&told.to_string());
    }
    Ok(end)
}

fn terrain(args: &FetchTerrainArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let offer = TerrainOffer::built_in();
    let from = args
        .from
        .as_deref()
        .or(offer.map(|offer| offer.address.as_str()));
    let credit = offer.filter(|_| args.from.is_none());
    let credit = credit.map(|offer| offer.credit.as_str());
    let credit = args.credit.as_deref().or(credit);
    let template = TileTemplate::parse(from.unwrap_or_default()).map_err(|fault| vec![fault]);
    let (template, boxes) = match (template, boxes(&args.route, show)) {
        (Ok(template), Ok(boxes)) => (template, boxes),
        (template, boxes) => {
            let faults = [template.err(), boxes.err()];
            return Err(faults.into_iter().flatten().flatten().collect());
        }
    };
    let around = surroundings(&boxes, args.near.around);
    let tiles = template.tiles(&around, usize::MAX);
    let tiles = tiles.map_err(|fault| vec![fault])?.len();
    let is_file = is_tiff(&args.output);
    if is_file && tiles > 1 {
        return Ok(show.misused(&several(&args.output, tiles)));
    }
    let saver = Saver::new([args.route.as_str()], args.force);
    let one = is_file.then(|| args.output.clone());
    let refusals = saver.refusals(one.as_slice(), WrittenAs::Output);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let near = network::fetcher().heights(&template, &boxes, args.near.around, credit);
    let near = near.map_err(|fault| vec![fault])?;
    let voice = told_in(&args.near);
    for absent in &near.absent {
        show.say(&fetched::no_tile(absent, voice).to_string());
    }
    write_heights(args, &near.excerpts, &saver, show)?;
    Ok(End::Done)
}

fn write_heights(
    args: &FetchTerrainArgs,
    excerpts: &[HeightExcerpt],
    saver: &Saver,
    show: &Show,
) -> Result<(), Vec<Fault>> {
    let dir = &args.output;
    let is_file = is_tiff(dir);
    let path = |excerpt: &HeightExcerpt| {
        if is_file {
            dir.clone()
        } else {
            dir.join(&excerpt.name)
        }
    };
    let paths: Vec<PathBuf> = excerpts.iter().map(path).collect();
    let refusals = saver.refusals(&paths, WrittenAs::Output);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    if !is_file {
        let made = fs::create_dir_all(dir);
        made.map_err(|fault| vec![save::no_folder(dir, &fault, WrittenAs::Set)])?;
    }
    for (path, excerpt) in paths.iter().zip(excerpts) {
        save(saver, path, &excerpt.bytes)?;
        let file = path.display().to_string();
        let credit = excerpt.credit.as_deref();
        let told = fetched::heights(&file, credit, told_in(&args.near));
        show.say(&told.to_string());
    }
    Ok(())
}

/// One file for several tiles.
fn several(output: &Path, tiles: usize) -> Answer {
    let folder = naming::free(&output.with_extension(""));
    Answer {
        says: format!("the surroundings of the line lie on {tiles} tiles, and each becomes a file"),
        cure: format!("name a folder: `-o {}`", naming::typed(&folder)),
    }
}

fn is_tiff(path: &Path) -> bool {
    ends(&path.display().to_string(), &["tif", "tiff"])
}

fn save(saver: &Saver, path: &Path, bytes: &[u8]) -> Result<(), Vec<Fault>> {
    let saved = saver.save(path, |out: &mut dyn Write| out.write_all(bytes));
    saved.map_err(|fault| vec![fault])
}

fn told_in(near: &NearArgs) -> Voice {
    voice(near.lang.unwrap_or_default(), UnitsFlag::Metric)
}

/// The boxes of the stages of a line.
fn boxes(route: &str, show: &Show) -> Result<Vec<Bounds>, Vec<Fault>> {
    let read = lay::route(inputs::text(route))?;
    show.notices(&read.notes);
    let stages = read.value.stages.iter();
    Ok(stages.filter_map(Stage::bounds).collect())
}
