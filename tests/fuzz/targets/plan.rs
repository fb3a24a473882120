//! A whole plan: a parcel of line, zones, trip, inventory, terrain and practice file, each of them perhaps that of the example.
//! The legs tile the line, and every format is what its readers take.
#![no_main]

use libfuzzer_sys::{fuzz_mutator, fuzz_target};
use schrund::{
    Job, Planner,
    fault::Fault,
    say::{units::Units, voice::Voice},
    write::sheet::{FULL_WIDTH, Look},
};
use schrund_fuzz::{parcel::Parcel, spoil, told, written};

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    spoil::spoilt(data, size, max_size, seed)
});

fuzz_target!(|bytes: &[u8]| {
    let parcel = Parcel::of(bytes);
    let planned = parcel
        .job(None)
        .and_then(|job| planned(&job, look(&parcel, &job), bytes));
    if let Err(faults) = planned {
        assert!(!faults.is_empty(), "refused for nothing");
        told::all(&faults, bytes);
    }
});

fn planned(job: &Job, look: Look, bytes: &[u8]) -> Result<(), Vec<Fault>> {
    told::all(&job.notices, bytes);
    let planner = Planner::new(job)?;
    let plan = planner.plan()?;
    written::adds_up(&plan, &job.route);
    let scene = planner.scene(&plan)?;
    for other in scene
        .others
        .iter()
        .filter_map(|other| other.plan.as_ref().ok())
    {
        written::adds_up(other, &job.route);
    }
    written::all_formats(job, &plan, &scene, look, bytes);
    Ok(())
}

/// How it is shown, by the words of a part of its own.
fn look(parcel: &Parcel<'_>, job: &Job) -> Look {
    let says = |word: &str| parcel.says("look", word);
    let units = match says("imperial") {
        true => Units::Imperial,
        false => Units::Metric,
    };
    Look {
        voice: Voice {
            units,
            ..Look::of(job.language).voice
        },
        width: if says("narrow") { 40 } else { FULL_WIDTH },
        detail: says("detail"),
        styled: !says("plain"),
    }
}
