//! `schrund plan`: the main job.

use std::{
    fs,
    io::{self, Write},
    path::PathBuf,
};

use schrund::{
    Planner,
    fault::Fault,
    plan::leg::Verdict,
    write::{self, Sheet, report::Extras},
};

use crate::{
    End,
    args::{Format, PlanArgs},
    inputs,
    save::{self, Saver},
    scene::Scene,
    show::Show,
};

/// Files of `--out`, in the order they are written.
const FILES: [(&str, Format); 7] = [
    ("plan.json", Format::Json),
    ("legs.csv", Format::Csv),
    ("map.geojson", Format::Geojson),
    ("map.kml", Format::Kml),
    ("route.gpx", Format::Gpx),
    ("report.html", Format::Html),
    ("message.txt", Format::Text),
];

pub(crate) fn run(args: &PlanArgs, show: &Show) -> End {
    match plan(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&problems),
    }
}

fn plan(args: &PlanArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let saver = saver(args);
    let refusals = saver.refusals(&targets(args));
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let job = inputs::read(&args.job)?;
    show.detail(&format!(
        "{} stages, {} zones, {} people, practice set {}",
        job.route.stages.len(),
        job.zones.len(),
        job.party.people.len(),
        job.rules.practice
    ));
    let planner = Planner::new(&job)?;
    let plan = planner.plan()?;
    // The table holds the notices itself.
    if args.format != Format::Table || args.output.is_some() {
        show.notices(&job.notices);
    }
    let sheet = Sheet {
        plan: &plan,
        route: &job.route,
        zones: &job.zones,
    };
    let scene = if wants_report(args) {
        Scene::of(&job, &planner, &sheet)?
    } else {
        Scene::default()
    };
    let extras = Extras {
        units: args.units.into(),
        trip: job.name.as_deref(),
        profiles: &scene.profiles,
        relief: scene.relief.as_ref(),
        variants: &scene.variants,
        emergency: &job.emergency,
    };
    let hand_out = HandOut {
        args,
        sheet,
        extras,
    };
    save_set(&hand_out, &saver, show)?;
    let end = print(&hand_out, &saver, show)?;
    Ok(match (end, plan.verdict()) {
        (End::Done, Verdict::Outside) => End::Outside,
        (end, _) => end,
    })
}

fn saver(args: &PlanArgs) -> Saver {
    let job = &args.job;
    let named = [
        Some(&job.route),
        Some(&job.zones),
        job.trip.as_ref(),
        job.practice.as_ref(),
        job.glaciers.as_ref(),
    ];
    let named = named.into_iter().flatten().chain(&job.terrain);
    Saver::new(named.map(String::as_str), args.force)
}

/// Every file that will be written.
fn targets(args: &PlanArgs) -> Vec<PathBuf> {
    let set = args
        .out
        .iter()
        .flat_map(|dir| FILES.iter().map(move |(name, _)| dir.join(name)));
    set.chain(args.output.clone()).collect()
}

/// What is written, and how it was asked for.
struct HandOut<'a> {
    args: &'a PlanArgs,
    sheet: Sheet<'a>,
    extras: Extras<'a>,
}

/// The report alone needs the other parties planned.
fn wants_report(args: &PlanArgs) -> bool {
    args.out.is_some() || args.format == Format::Html
}

fn save_set(hand_out: &HandOut<'_>, saver: &Saver, show: &Show) -> Result<(), Vec<Fault>> {
    let Some(dir) = &hand_out.args.out else {
        return Ok(());
    };
    fs::create_dir_all(dir).map_err(|fault| vec![save::no_folder(dir, &fault)])?;
    for (name, format) in FILES {
        let path = dir.join(name);
        let write =
            |out: &mut dyn Write| write_as(format, out, hand_out, write::table::FULL_WIDTH, false);
        saver.save(&path, write).map_err(|fault| vec![fault])?;
        show.say(&format!("wrote {}", path.display()));
    }
    Ok(())
}

/// Prints the one thing asked for, or saves it with `-o`.
fn print(hand_out: &HandOut<'_>, saver: &Saver, show: &Show) -> Result<End, Vec<Fault>> {
    let format = hand_out.args.format;
    let output = hand_out.args.output.as_ref();
    let Some(path) = output.filter(|p| p.as_os_str() != "-") else {
        let (width, colour) = (show.width(), show.colour());
        return Ok(show.result(|out| write_as(format, out, hand_out, width, colour)));
    };
    let write =
        |out: &mut dyn Write| write_as(format, out, hand_out, write::table::FULL_WIDTH, false);
    saver.save(path, write).map_err(|fault| vec![fault])?;
    show.say(&format!("wrote {}", path.display()));
    Ok(End::Done)
}

fn write_as(
    format: Format,
    out: &mut dyn Write,
    hand_out: &HandOut<'_>,
    width: usize,
    colour: bool,
) -> io::Result<()> {
    let (sheet, units) = (&hand_out.sheet, hand_out.extras.units);
    let table = write::table::Look {
        width,
        colour,
        units,
    };
    let map = write::geojson::Look {
        styled: !hand_out.args.no_style,
        units,
    };
    match format {
        Format::Table => out.write_all(write::table::plan(sheet, table).as_bytes()),
        Format::Json => out.write_all(write::json::plan(sheet.plan)?.as_bytes()),
        Format::Csv => write::csv::legs(out, sheet),
        Format::Geojson => write::geojson::map(out, sheet, map),
        Format::Gpx => write::gpx::device(out, sheet, units),
        Format::Kml => write::kml::globe(out, sheet, units),
        Format::Html => out.write_all(write::report::page(sheet, &hand_out.extras).as_bytes()),
        Format::Text => out.write_all(write::text::message(sheet, units).as_bytes()),
    }
}
