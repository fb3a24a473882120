//! `schrund plan`: the main job.

use std::{
    io::Write,
    path::{Path, PathBuf},
};

use anstyle::Style;
use schrund::{
    Job, Planner,
    fault::{Fault, files::WrittenAs},
    plan::{Plan, depth::Depth, leg::Verdict},
    write::{
        FORMATS, Format, Look, Scene, Sheet,
        table::{self, Table},
    },
};

#[cfg(feature = "page")]
use crate::draw;
use crate::{
    End,
    args::{PlanArgs, voice},
    ending, inputs, kept,
    save::{Content, Saver},
    show::Show,
};

pub(crate) fn run(args: &PlanArgs, show: &Show) -> End {
    match plan(args, show) {
        Ok(end) => end,
        Err(problems) => show.problems(&inputs::named(problems, &args.job)),
    }
}

fn plan(args: &PlanArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let saver = Saver::sparing(&args.job, args.force);
    let mut refusals = saver.refusals(&set(args), WrittenAs::Set);
    refusals.extend(saver.refusals(args.output.as_slice(), WrittenAs::Output));
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let format = match ending::format(args) {
        Ok(format) => format,
        Err(answer) => return Ok(show.misused(&answer)),
    };
    // Inputs of a set are read again for its page.
    #[cfg(feature = "page")]
    if args.out.is_some() {
        let own = [&args.job.route, &args.job.zones].into_iter();
        inputs::keep_standard_input(own, &args.job.laid)?;
    }
    let job = inputs::read(&args.job)?;
    show.detail(&format!(
        "{} stages, {} zones, {} people, practice set {}",
        job.route.stages.len(),
        job.zones.len(),
        job.party.people.len(),
        job.rules.practice
    ));
    let planner = Planner::after(&job, &kept::MEMORY)?;
    let look = Look {
        voice: voice(job.language, args.units),
        detail: args.detail,
        styled: !args.no_style,
        ..Look::default()
    };
    let plan = planner.to(match args.out {
        Some(_) => Depth::Whole,
        None => format.depth(&look),
    })?;
    // The table holds the notices itself.
    if format.name() != ending::UNASKED || args.output.is_some() {
        show.notices(&job.notices);
    }
    let scene = scene(args, format, &planner, &plan)?;
    // Nothing more is asked: what is written takes its place.
    planner.leave();
    let sheet = Sheet {
        look,
        ..Sheet::of(&job, &plan, &scene)
    };
    save_set(args, &job, &sheet, &saver, show)?;
    let end = print((args, format), &sheet, &saver, show)?;
    let verdict = plan.verdict();
    Ok(match (end, verdict) {
        (End::Done, Verdict::Outside | Verdict::Stop) => End::Outside,
        (end, _) => end,
    })
}

/// The files that `--out` writes.
fn set(args: &PlanArgs) -> Vec<PathBuf> {
    let dirs = args.out.iter();
    let names = |dir: &PathBuf| {
        let names = files().map(|(name, _)| name);
        #[cfg(feature = "page")]
        let names = names.chain([PAGE]);
        names.map(|name| dir.join(name)).collect::<Vec<_>>()
    };
    dirs.flat_map(names).collect()
}

/// The page of the set.
#[cfg(feature = "page")]
const PAGE: &str = "draw.html";

/// The files of `--out`, in the order they are written.
fn files() -> impl Iterator<Item = (&'static str, &'static dyn Format)> {
    FORMATS.into_iter().filter_map(|f| Some((f.file()?, f)))
}

/// As much beside the plan as is shown.
fn scene(
    args: &PlanArgs,
    format: &dyn Format,
    planner: &Planner<'_>,
    plan: &Plan,
) -> Result<Scene, Vec<Fault>> {
    if args.out.is_some() || format.needs_scene() {
        return planner.scene(plan);
    }
    let others = format.needs_others().then(|| planner.others(plan));
    Ok(Scene {
        others: others.unwrap_or_default(),
        ..Scene::default()
    })
}

/// The set, with the page of it: a partner who opens that can change party, rope, snow and gaps, and sees the plan follow.
fn save_set(
    args: &PlanArgs,
    #[cfg_attr(
        not(feature = "page"),
        expect(unused_variables, reason = "the page alone asks")
    )]
    job: &Job,
    sheet: &Sheet<'_>,
    saver: &Saver,
    show: &Show,
) -> Result<(), Vec<Fault>> {
    let Some(dir) = &args.out else {
        return Ok(());
    };
    let of_format = |(name, format): (&'static str, &'static dyn Format)| {
        let write: Content<'_> = Box::new(move |out| format.write(out, sheet));
        (name, write)
    };
    let set = files().map(of_format);
    #[cfg(feature = "page")]
    let page = draw::beside(&args.job, job, sheet.plan)?;
    #[cfg(feature = "page")]
    let set = set.chain(std::iter::once_with(|| {
        let write: Content<'_> = Box::new(|out| out.write_all(page.as_bytes()));
        (PAGE, write)
    }));
    let set: Vec<(&'static str, Content<'_>)> = set.collect();
    let names: Vec<&str> = set.iter().map(|(name, _)| *name).collect();
    saver.save_set(dir, set).map_err(|fault| vec![fault])?;
    for name in names {
        show.wrote(&dir.join(name));
    }
    Ok(())
}

fn save(
    format: &dyn Format,
    path: &Path,
    sheet: &Sheet<'_>,
    saver: &Saver,
    show: &Show,
) -> Result<(), Vec<Fault>> {
    let write = |out: &mut dyn Write| format.write(out, sheet);
    saver.save(path, write).map_err(|fault| vec![fault])?;
    show.wrote(path);
    Ok(())
}

/// Prints the one thing asked for, or saves it with `-o`.
fn print(
    (args, format): (&PlanArgs, &dyn Format),
    sheet: &Sheet<'_>,
    saver: &Saver,
    show: &Show,
) -> Result<End, Vec<Fault>> {
    let output = args.output.as_ref();
    if let Some(path) = output.filter(|p| p.as_os_str() != "-") {
        save(format, path, sheet, saver, show)?;
        return Ok(End::Done);
    }
    let on_terminal = Sheet {
        look: Look {
            width: show.width(),
            ..sheet.look
        },
        ..*sheet
    };
    if format.name() == ending::UNASKED && show.colour() {
        let table = table::plan(&on_terminal);
        return Ok(show.result(|out| out.write_all(painted(&table).as_bytes())));
    }
    Ok(show.result(|out| format.write(out, &on_terminal)))
}

/// The table with its verdicts in terminal styles.
fn painted(table: &Table) -> String {
    let mut out = String::new();
    let mut at = 0;
    for (range, verdict) in &table.verdicts {
        let style = match verdict {
            Verdict::Unroped => Style::new().dimmed(),
            Verdict::Inside => Style::new(),
            Verdict::Look => Style::new().bold(),
            Verdict::Outside | Verdict::Stop => Style::new().bold().invert(),
        };
        out.push_str(&table.text[at..range.start]);
        let text = &table.text[range.clone()];
        out.push_str(&format!("{style}{text}{style:#}"));
        at = range.end;
    }
    out.push_str(&table.text[at..]);
    out
}
