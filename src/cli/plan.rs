//! `schrund plan`: the main job.

use std::{
    fs,
    io::{self, Write},
    path::PathBuf,
};

use schrund::{
    leg::Verdict,
    planning::{self, Job},
    problem::{Code, Place, Problem},
    write::{self, Sheet, units},
};

use crate::{
    End,
    args::{Format, PlanArgs, Units},
    inputs::Inputs,
    save::Saver,
    show::Show,
};

/// Files of `--out`, in the order they are written.
const FILES: [(&str, Format); 3] = [
    ("plan.json", Format::Json),
    ("legs.csv", Format::Csv),
    ("map.geojson", Format::Geojson),
];

pub(crate) fn run(args: &PlanArgs, show: &Show) -> End {
    match plan(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&problems),
    }
}

fn plan(args: &PlanArgs, show: &Show) -> Result<End, Vec<Problem>> {
    let saver = saver(args);
    let refusals = saver.refusals(&targets(args));
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let inputs = Inputs::read(&args.job)?;
    let job = Job {
        route: &inputs.route,
        zones: &inputs.zones,
        party: &inputs.party,
        ropes: &inputs.ropes,
        rules: &inputs.rules,
        terrain: (!inputs.terrain.is_empty()).then_some(&inputs.terrain),
        glaciers: &inputs.glaciers,
        notices: &inputs.notices,
    };
    show.detail(&format!(
        "{} stages, {} zones, {} people, practice set {}",
        inputs.route.stages.len(),
        inputs.zones.len(),
        inputs.party.people.len(),
        inputs.rules.practice
    ));
    let plan = planning::plan(&job)?;
    // The table holds the notices itself.
    if args.format != Format::Table || args.output.is_some() {
        show.notices(&inputs.notices);
    }
    let sheet = Sheet {
        plan: &plan,
        route: &inputs.route,
        zones: &inputs.zones,
    };
    save_set(args, &saver, &sheet, show)?;
    let end = print(args, &saver, &sheet, show)?;
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

fn save_set(
    args: &PlanArgs,
    saver: &Saver,
    sheet: &Sheet<'_>,
    show: &Show,
) -> Result<(), Vec<Problem>> {
    let Some(dir) = &args.out else { return Ok(()) };
    fs::create_dir_all(dir).map_err(|fault| {
        let says = format!("cannot make the folder {}: {fault}", dir.display());
        vec![Problem::new(
            Code::Unreadable,
            Place::file(&dir.display().to_string()),
            says,
        )]
    })?;
    for (name, format) in FILES {
        let path = dir.join(name);
        let write = |out: &mut dyn Write| {
            write_as(format, out, sheet, args, write::table::FULL_WIDTH, false)
        };
        saver.save(&path, write).map_err(|fault| vec![fault])?;
        show.say(&format!("wrote {}", path.display()));
    }
    Ok(())
}

/// Prints the one thing asked for, or saves it with `-o`.
fn print(
    args: &PlanArgs,
    saver: &Saver,
    sheet: &Sheet<'_>,
    show: &Show,
) -> Result<End, Vec<Problem>> {
    let Some(path) = args.output.as_ref().filter(|p| p.as_os_str() != "-") else {
        let (width, colour) = (show.width(), show.colour());
        return Ok(show.result(|out| write_as(args.format, out, sheet, args, width, colour)));
    };
    let write = |out: &mut dyn Write| {
        write_as(
            args.format,
            out,
            sheet,
            args,
            write::table::FULL_WIDTH,
            false,
        )
    };
    saver.save(path, write).map_err(|fault| vec![fault])?;
    show.say(&format!("wrote {}", path.display()));
    Ok(End::Done)
}

fn write_as(
    format: Format,
    out: &mut dyn Write,
    sheet: &Sheet<'_>,
    args: &PlanArgs,
    width: usize,
    colour: bool,
) -> io::Result<()> {
    let units = match args.units {
        Units::Metric => units::Units::Metric,
        Units::Imperial => units::Units::Imperial,
    };
    match format {
        Format::Table => {
            let look = write::table::Look {
                width,
                colour,
                units,
            };
            out.write_all(write::table::plan(sheet, look).as_bytes())
        }
        Format::Json => out.write_all(write::json::plan(sheet.plan)?.as_bytes()),
        Format::Csv => write::csv::legs(out, sheet),
        Format::Geojson => write::geojson::map(
            out,
            sheet,
            write::geojson::Look {
                styled: !args.no_style,
                units,
            },
        ),
    }
}
