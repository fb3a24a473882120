//! `schrund page`: what a page asks of the program that it holds. It is hidden from the help; a page calls it.

use std::io::Read;

use schrund::{
    Job, Planner,
    fault::{Fault, Noted},
    ground::relief::Relief,
    plan::depth::Depth,
    practice::{Rules, set},
    read::{
        lay,
        trip::{Trip, toml_of_json},
    },
    say::{interface::Interface, voice::Voice},
    trip::{route::Route, zone::Zone},
    write::{
        Look, Sheet,
        page::{ground, panel, trip, ways},
    },
};

use crate::{
    End,
    args::{JobArgs, LaidArgs, PageCall, UnitsFlag, voice},
    inputs, kept,
    show::Show,
    source,
};

pub(crate) fn run(call: &PageCall, show: &Show) -> End {
    let answer = match call {
        PageCall::Ground { route, laid } => ground(route.as_deref(), laid, show),
        PageCall::Panel { job, units, open } => {
            return answered(job, *units, show, |job, voice| {
                self::panel(job, voice, open)
            });
        }
        PageCall::Ways { job, units } => return answered(job, *units, show, ways),
        PageCall::Trip { laid } => self::trip(laid, show),
        PageCall::Toml { file } => toml(file, show),
    };
    answer.unwrap_or_else(|faults| show.problems(&faults))
}

/// The line, the ground round it, the inventory.
fn ground(route: Option<&str>, laid: &LaidArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let trip = inputs::trip_file(laid);
    let files = inputs::files(laid, trip.as_ref());
    let route = route
        .map(|name| lay::route(inputs::text(name)))
        .transpose()?;
    let route = route.map_or_else(|| Route::new(None, Vec::new()), |route| route.value);
    let ground = kept::ground(&files.terrain)?;
    let relief = Relief::around(&route, &ground.value).map_err(|fault| vec![fault])?;
    let glaciers = files.glaciers.as_deref();
    let glaciers = glaciers.map(|name| lay::zones(inputs::text(name), UNASKED_M));
    let glaciers: Option<Noted<Vec<Zone>>> = glaciers.transpose()?;
    let glaciers = glaciers.map(|ice| ice.value).unwrap_or_default();
    Ok(printed(
        ground::json(&route, relief.as_ref(), &glaciers),
        show,
    ))
}

/// A gap width for outlines whose gaps nobody asks for.
const UNASKED_M: Option<f64> = Some(0.0);

/// A part that is there whatever a plan was asked for.
const FIELD: &str = "field";

/// What is asked about a job in JSON, or why there is no answer.
fn answered(
    args: &JobArgs,
    units: UnitsFlag,
    show: &Show,
    ask: impl FnOnce(&Job, Voice) -> Result<serde_json::Result<String>, Vec<Fault>>,
) -> End {
    let read = inputs::over_kept_ground(args);
    let language = read.as_ref().ok().map(|job| job.language);
    let voice = Voice {
        interface: Interface::Page,
        ..voice(language.or(args.laid.lang).unwrap_or_default(), units)
    };
    match read.and_then(|job| ask(&job, voice)) {
        Ok(json) => printed(json, show),
        Err(faults) => {
            let end = printed(panel::refused(&faults, voice), show);
            if end == End::Done { End::Wrong } else { end }
        }
    }
}

fn panel(
    job: &Job,
    voice: Voice,
    open: &[String],
) -> Result<serde_json::Result<String>, Vec<Fault>> {
    let planner = Planner::after(job, &kept::MEMORY)?;
    let depth = match open.iter().all(|id| id == FIELD) {
        true => Depth::Frozen,
        false => Depth::Whole,
    };
    let plan = planner.to(depth)?;
    let scene = planner.profiles();
    let sheet = Sheet {
        look: Look {
            voice,
            ..Look::default()
        },
        ..Sheet::of(job, &plan, &scene)
    };
    let json = panel::planned(&sheet, &job.notices, open);
    planner.leave();
    Ok(json)
}

fn ways(job: &Job, voice: Voice) -> Result<serde_json::Result<String>, Vec<Fault>> {
    let options = Planner::after(job, &kept::MEMORY)?.options()?;
    Ok(ways::json(&options, voice))
}

/// What trip file and flags say together.
fn trip(laid: &LaidArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let file = inputs::trip_file(laid)
        .map(|file| file.source)
        .transpose()?;
    let said = inputs::flags(laid).over(file.unwrap_or_default());
    let rules = rules(&said)?;
    let voice = Voice {
        language: said.language.unwrap_or_default(),
        ..Voice::default()
    };
    let json = said
        .json()
        .and_then(|said| trip::json(&said, &rules, voice));
    Ok(printed(json, show))
}

/// The figures of the practice set in force, before anything is assumed otherwise.
fn rules(said: &Trip) -> Result<Rules, Vec<Fault>> {
    let name = said.practice.as_deref().unwrap_or(set::EMBEDDED[0].0);
    match inputs::practice_text(name)? {
        Some(text) => Rules::with_practice(&set::Source::File { name, text: &text }),
        None => Rules::with_practice(&set::Source::Named(name)),
    }
}

fn toml(file: &str, show: &Show) -> Result<End, Vec<Fault>> {
    let mut json = String::new();
    let read = source::open(file)
        .map_err(|fault| vec![fault])?
        .read_to_string(&mut json);
    let toml = read
        .map_err(|why| why.to_string())
        .and_then(|_| toml_of_json(&json));
    match toml {
        Ok(toml) => Ok(show.result(|out| out.write_all(toml.as_bytes()))),
        Err(why) => Ok(show.unexpected(&why)),
    }
}

fn printed(json: serde_json::Result<String>, show: &Show) -> End {
    match json {
        Ok(json) => show.result(|out| out.write_all(json.as_bytes())),
        Err(why) => show.unexpected(&why.to_string()),
    }
}
