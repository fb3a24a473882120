//! What a page asks of the program that it holds, without its files: `schrund page ground`, `panel`, `ways`, `trip` and `toml`, of a
//! parcel like that of a plan. Every answer is JSON, and who asks a second time, with all that is remembered, gets the same.
#![no_main]
#![forbid(unsafe_code)]

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    Job, Memory, Planner, example,
    fault::Fault,
    ground::relief::Relief,
    plan::depth::Depth,
    practice::{Rules, set},
    read::{
        geojson::KnownShapes,
        input::Input,
        lay,
        trip::{Trip, toml_of_json},
    },
    say::{interface::Interface, voice::Voice},
    trip::route::Route,
    write::{
        Look, Sheet,
        page::{ground, panel, trip, ways},
    },
};
use schrund_fuzz::{parcel::Parcel, spoil, told};
use serde_json::{Value, from_str};

type Answer = Result<String, Vec<Fault>>;

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let parcel = Parcel::of(bytes);
    let asks = |word: &str| parcel.says("ask", word);
    let (memory, shapes) = (Memory::default(), KnownShapes::default());
    let ask = || match () {
        () if asks("ground") => self::ground(&parcel),
        () if asks("ways") => job(&parcel, &shapes).and_then(|job| ways(&job, &memory)),
        () if asks("trip") => self::trip(&parcel),
        () if asks("toml") => toml(parcel.get("trip").unwrap_or_default()),
        () => job(&parcel, &shapes).and_then(|job| panel(&job, &parcel, &memory)),
    };
    let first = ask();
    match &first {
        Ok(json) => assert!(asks("toml") || from_str::<Value>(json).is_ok(), "{json}"),
        Err(faults) => told::all(faults, bytes),
    }
    assert_eq!(first, ask(), "another answer the second time");
});

fn job(parcel: &Parcel<'_>, shapes: &KnownShapes) -> Result<Job, Vec<Fault>> {
    parcel.job(Some(shapes))
}

fn ground(parcel: &Parcel<'_>) -> Answer {
    let asked = parcel
        .trip()
        .source
        .map(|trip| trip.files())
        .unwrap_or_default();
    let route = lay::route(parcel.text("route", example::ROUTE_GPX));
    let route = route.map_or_else(|_| Route::new(None, Vec::new()), |read| read.value);
    let terrain = lay::terrain(parcel.terrain(&asked))?.value;
    let relief = Relief::around(&route, &terrain).map_err(|fault| vec![fault])?;
    let ice = parcel
        .get("glaciers")
        .map(|ice| lay::zones(Input::text("ice", ice), Some(0.0)));
    let ice = ice.transpose()?.map(|ice| ice.value).unwrap_or_default();
    Ok(json(ground::json(&route, relief.as_ref(), &ice)))
}

fn panel(job: &Job, parcel: &Parcel<'_>, memory: &Memory) -> Answer {
    let planner = Planner::after(job, memory)?;
    let open = ["field", "ropes", "rescue", "profile", "legs", "assumptions"];
    let open: Vec<String> = open
        .into_iter()
        .filter(|id| parcel.says("ask", id))
        .map(str::to_owned)
        .collect();
    let depth = if open.len() > 1 {
        Depth::Whole
    } else {
        Depth::Frozen
    };
    let (plan, scene) = (planner.to(depth)?, planner.profiles());
    let look = Look {
        voice: voice(job),
        ..Look::default()
    };
    let sheet = Sheet {
        look,
        ..Sheet::of(job, &plan, &scene)
    };
    let answer = json(panel::planned(&sheet, &job.notices, &open));
    planner.leave();
    Ok(answer)
}

fn ways(job: &Job, memory: &Memory) -> Answer {
    let options = Planner::after(job, memory)?.options()?;
    Ok(json(ways::json(&options, voice(job))))
}

fn trip(parcel: &Parcel<'_>) -> Answer {
    let said = parcel.trip().source?.over(Trip::default());
    let set = set::Source::Named(said.practice.as_deref().unwrap_or(set::EMBEDDED[0].0));
    let rules = Rules::with_practice(&set)?;
    let answer = said
        .json()
        .and_then(|said| trip::json(&said, &rules, Voice::default()));
    Ok(json(answer))
}

/// A page writes what it shows as a trip file: what comes of it can be read as JSON or not at all.
fn toml(bytes: &[u8]) -> Answer {
    let text = String::from_utf8_lossy(bytes);
    Ok(toml_of_json(&text).unwrap_or_default())
}

fn json(written: serde_json::Result<String>) -> String {
    written.unwrap_or_else(|why| panic!("{why}"))
}

fn voice(job: &Job) -> Voice {
    let language = job.language;
    Voice {
        language,
        interface: Interface::Page,
        ..Voice::default()
    }
}
