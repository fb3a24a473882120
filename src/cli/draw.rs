//! `schrund draw`: one offline page with route, ice, trip and the program itself, for drawing and replanning.

use std::{
    io::{Cursor, IsTerminal, Write, stdout},
    path::{Path, PathBuf},
};

use schrund::{
    Planner,
    fault::{
        Fault, Place,
        files::{InFiles, WrittenAs},
    },
    plan::Plan,
    read::{
        as_text, gpx, input, lay,
        trip::{Trip, TripFiles},
    },
    trip::{job::Job, route::Route},
    write::{
        Look, Scene, Sheet,
        page::file::{PageFile, PageInputs, PageText, document},
    },
};

use crate::{
    End,
    answer::Answer,
    args::{DrawArgs, JobArgs, LaidArgs, UnitsFlag, voice},
    inputs, limits, naming, network,
    save::Saver,
    show::Show,
    source, sparse,
};

pub(crate) fn run(args: &DrawArgs, show: &Show) -> End {
    match draw(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&problems),
    }
}

fn draw(args: &DrawArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let own = args.route.iter().chain(&args.zones).cloned();
    let named: Vec<String> = own.chain(inputs::laid_files(&args.laid)).collect();
    let saver = Saver::new(named.iter().map(String::as_str), args.force);
    let refusals = saver.refusals(args.output.as_slice(), WrittenAs::Output);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let file = args.output.as_deref().filter(|path| *path != "-");
    if file.is_none() && stdout().is_terminal() {
        return Ok(show.misused(&to_terminal()));
    }
    inputs::keep_standard_input(args.route.iter().chain(&args.zones), &args.laid)?;
    let job = args.route.clone().zip(args.zones.clone());
    let given = given(args.route.as_deref(), args.zones.as_deref(), &args.laid)?;
    let planned = job.map(|(route, zones)| {
        let laid = args.laid.clone();
        planned(&JobArgs { route, zones, laid })
    });
    let still = planned.transpose().unwrap_or_else(|faults| {
        // What is missing can be said and drawn on the page.
        show.say("no plan can be made yet, and the page says the same:");
        show.notices(&faults);
        None
    });
    let page = page(&given, still.as_ref())?;
    let write = |out: &mut dyn Write| out.write_all(page.as_bytes());
    let Some(path) = file else {
        return Ok(show.result(write));
    };
    saver.save(path, write).map_err(|fault| vec![fault])?;
    show.wrote(path);
    Ok(End::Done)
}

fn planned(args: &JobArgs) -> Result<(Job, Plan), Vec<Fault>> {
    let job = inputs::read(args)?;
    let plan = Planner::new(&job)?.plan()?;
    Ok((job, plan))
}

/// Two megabytes on a terminal help nobody.
fn to_terminal() -> Answer {
    let free = naming::free(Path::new("draw.html"));
    Answer {
        says: "a page is for a browser, not for a terminal".to_owned(),
        cure: format!("`-o {free}`, and open that file"),
    }
}

/// The page of a job that was planned, for the set of files.
///
/// # Errors
/// A file cannot be read again.
pub(crate) fn beside(args: &JobArgs, job: &Job, plan: &Plan) -> Result<String, Vec<Fault>> {
    let given = given(Some(&args.route), Some(&args.zones), &args.laid)?;
    let scene = Scene::default();
    let sheet = still(job, plan, &scene);
    document(&given, Some(&sheet)).map_err(broken)
}

fn page(given: &PageInputs, planned: Option<&(Job, Plan)>) -> Result<String, Vec<Fault>> {
    let scene = Scene::default();
    let sheet = planned.map(|(job, plan)| still(job, plan, &scene));
    document(given, sheet.as_ref()).map_err(broken)
}

fn still<'a>(job: &'a Job, plan: &'a Plan, scene: &'a Scene) -> Sheet<'a> {
    Sheet {
        look: Look {
            voice: voice(job.language, UnitsFlag::Metric),
            ..Look::default()
        },
        ..Sheet::of(job, plan, scene)
    }
}

fn broken(why: std::io::Error) -> Vec<Fault> {
    vec![Fault::new(
        InFiles::Stopped(why.to_string()),
        Place::default(),
    )]
}

/// What the page is made with: all files under their own names, and flags laid into the trip, where the page can change
/// them.
fn given(
    route: Option<&str>,
    zones: Option<&str>,
    laid: &LaidArgs,
) -> Result<PageInputs, Vec<Fault>> {
    let trip = inputs::trip_file(laid);
    let asked = inputs::files(laid, trip.as_ref());
    let said = trip
        .map(|trip| trip.source)
        .transpose()?
        .unwrap_or_default();
    let said = inputs::flags(laid).over(said);
    let route = route.map(line).transpose()?;
    let (route, line) = route.unzip();
    let line = line.unwrap_or_else(|| Route::new(None, Vec::new()));
    let zones = zones.map(ice).transpose()?;
    let taken = [&route, &zones].into_iter().flatten();
    let taken: Vec<String> = taken.map(|text| text.name.clone()).collect();
    let (said, files) = files(said, &asked, (&line, &taken))?;
    Ok(PageInputs {
        route,
        zones,
        trip: said.json().map_err(|why| broken(why.into()))?,
        files,
        language: said.language.unwrap_or_default(),
    })
}

/// The files beside route and zones, and the trip that names them as they are named in the page.
fn files(
    mut said: Trip,
    asked: &TripFiles,
    (line, taken): (&Route, &[String]),
) -> Result<(Trip, Vec<PageFile>), Vec<Fault>> {
    let mut files: Vec<PageFile> = Vec::new();
    let mut put = |name: &String, bytes: Vec<u8>, cut: bool| {
        let inside = unlike(&own_name(name, "file"), (&files, taken));
        let name = inside.clone();
        files.push(PageFile { name, bytes, cut });
        inside
    };
    let mut terrain = Vec::new();
    for name in &asked.terrain {
        let (round, cut) = ground(line, name)?;
        terrain.push(put(name, round, cut));
    }
    said.terrain = terrain;
    if let Some(name) = &asked.glaciers {
        let (name, bytes) = inventory(name, line)?;
        said.glaciers = Some(put(&name, bytes, false));
    }
    let practice = asked.practice.as_ref();
    if let Some(name) = practice.filter(|name| inputs::practice_file(name).is_some()) {
        said.practice = Some(put(name, bytes(name)?, false));
    }
    Ok((said, files))
}

/// Of a terrain model what lies round the line, and whether that is not all of it. Of one on a server no more ever comes,
/// where parts of it can be taken.
fn ground(line: &Route, name: &str) -> Result<(Vec<u8>, bool), Vec<Fault>> {
    if source::is_address(name)
        && let Some(round) = network::around(name, line).map_err(|fault| vec![fault])?
    {
        return Ok((round, true));
    }
    let round = sparse::around(line, &source::shown(name), bytes(name)?);
    round.map_err(|fault| vec![fault])
}

/// Files that the page makes itself.
const OWN: [&str; 2] = ["trip.toml", "trip.json"];

/// A name that no other file of the page has.
fn unlike(name: &str, (files, others): (&[PageFile], &[String])) -> String {
    let taken = |name: &str| {
        let of_files = files.iter().map(|file| &file.name).chain(others);
        OWN.contains(&name) || of_files.into_iter().any(|other| other == name)
    };
    let numbered = (2..).map(|number| format!("{number}-{name}"));
    let mut names = std::iter::once(name.to_owned()).chain(numbered);
    names.find(|name| !taken(name)).unwrap_or_default()
}

/// The name of a file without its folder.
fn own_name(name: &str, unnamed: &str) -> String {
    let path = PathBuf::from(source::shown(name));
    let last = path
        .file_name()
        .map(|last| last.to_string_lossy().into_owned());
    last.filter(|_| name != "-")
        .unwrap_or_else(|| unnamed.to_owned())
}

/// The line as a text, whatever letters its file is written in; a page without a line that can be read draws nothing.
fn line(name: &str) -> Result<(PageText, Route), Vec<Fault>> {
    let bytes = bytes(name)?;
    let read = lay::route(source::within(name, Ok(Box::new(bytes.as_slice()) as _)))?;
    let text = PageText {
        name: own_name(name, "route.gpx"),
        text: gpx::text(&bytes).map_err(broken)?,
    };
    Ok((text, read.value))
}

/// The zones as a text. Ice that is wrong can be mended on the page, but letters that nobody knows are lost there.
fn ice(name: &str) -> Result<PageText, Vec<Fault>> {
    let shown = &source::shown(name);
    let bytes = bytes(name)?;
    let own = own_name(name, "zones.geojson");
    if let Some(text) = as_text::zones_text(shown, &bytes, &limits::in_force())? {
        return Ok(PageText {
            name: as_geojson(&own),
            text,
        });
    }
    let text = input::utf8(shown, bytes);
    Ok(PageText {
        name: own,
        text: text.map_err(|fault| vec![fault])?,
    })
}

/// The inventory under the name that it has in the page. What is FlatGeobuf is there as the text of what lies near the line,
/// since the program in the page does not read that, and a whole inventory may weigh a gigabyte.
fn inventory(name: &str, line: &Route) -> Result<(String, Vec<u8>), Vec<Fault>> {
    let file = if source::can_be_sought(name) {
        source::indexed(name).map_err(|fault| vec![fault])?
    } else {
        Box::new(Cursor::new(bytes(name)?))
    };
    match as_text::near_text(source::within(name, Ok(file)), line)? {
        Some(text) => Ok((as_geojson(name), text.into_bytes())),
        None => Ok((name.to_owned(), bytes(name)?)),
    }
}

/// The name of a file that is written as GeoJSON.
fn as_geojson(name: &str) -> String {
    let name = Path::new(name).with_extension("geojson");
    name.display().to_string()
}

fn bytes(name: &str) -> Result<Vec<u8>, Vec<Fault>> {
    let whole = source::open(name).and_then(|from| source::whole(name, from));
    whole.map_err(|fault| vec![fault])
}
