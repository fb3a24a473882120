//! `schrund survey`: many tracks against one set of outlines.

mod lines;
mod near;

use std::{
    fs,
    io::{self, Write},
    path::PathBuf,
};

use lines::TracksHeld;
use near::IndexedIce;
use schrund::{
    Job, Survey,
    fault::{Fault, files::WrittenAs},
    plan::track::TrackFacts,
    read::lay::{self, Sources},
    survey::{SAME_WAY_M, apart},
    trip::route::Route,
    write::survey::{ComparedLine, SurveyLine, compared},
};

use crate::{
    End,
    answer::Answer,
    args::{SurveyArgs, SurveyFormat, voice},
    inputs, naming,
    save::Saver,
    show::{self, Show},
    source,
};

/// Tracks that are held before their lines are written: enough for all cores, few enough to be lost without regret. Our
/// judgement.
const AT_ONCE: usize = 64;
/// Lines that are set side by side at most: more do not fit a terminal. Our judgement.
const SIDE_BY_SIDE: usize = 5;

pub(crate) fn run(args: &SurveyArgs, show: &Show) -> End {
    let ended = match args.compare {
        true => compare(args, show),
        false => survey(args, show),
    };
    ended.unwrap_or_else(|problems| show.problems(&problems))
}

fn survey(args: &SurveyArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let tracks = tracks(args)?;
    if let Some(answer) = is_there(args) {
        return Ok(show.misused(&answer));
    }
    let inputs = inputs::laid_files(&args.laid);
    let inputs = inputs.iter().chain([&args.zones]).chain(&tracks);
    let saver = Saver::new(inputs.map(String::as_str), args.force || args.resume);
    let refusals = saver.refusals(args.out.as_slice(), WrittenAs::Output);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let (job, near) = job(args)?;
    show.notices(&job.notices);
    let format = format(args);
    let (out, done): (Box<dyn Write>, _) = match &args.out {
        None => (Box::new(io::stdout().lock()), TracksHeld::default()),
        Some(path) => match lines::opened(path, format, args.resume) {
            Ok((file, done)) => (Box::new(file), done),
            Err(answer) => return Ok(show.misused(&answer)),
        },
    };
    let left = tracks.into_iter().filter(|track| !done.holds(track));
    let left: Vec<String> = left.collect();
    let head = (format == SurveyFormat::Csv && done.is_empty()).then(SurveyLine::csv_head);
    let mut ended = End::Done;
    let written = Written {
        out,
        format,
        ended: &mut ended,
        show,
        near: &near,
    }
    .all(&head.unwrap_or_default(), &left, &Survey::over(&job));
    Ok(match written {
        Ok(()) => ended,
        Err(fault) if fault.kind() == io::ErrorKind::BrokenPipe && args.out.is_none() => ended,
        Err(fault) => show.unexpected(&format!("{}: {fault}", place(args))),
    })
}

/// A file that nobody said what to do with.
fn is_there(args: &SurveyArgs) -> Option<Answer> {
    let there = args.out.as_ref().filter(|path| path.exists())?;
    (!args.resume && !args.force).then(|| Answer {
        says: format!("{} is there already", there.display()),
        cure: "`--resume` to go on with it, or `--force` to begin anew".to_owned(),
    })
}

/// Where lines go, and what comes of it.
struct Written<'a> {
    out: Box<dyn Write>,
    format: SurveyFormat,
    ended: &'a mut End,
    show: &'a Show,
    /// Ice that is read for each track.
    near: &'a IndexedIce,
}

impl Written<'_> {
    /// Holds the tracks against the ice, some at a time.
    fn all(mut self, head: &str, tracks: &[String], survey: &Survey<'_>) -> io::Result<()> {
        self.out.write_all(head.as_bytes())?;
        for (i, some) in tracks.chunks(AT_ONCE).enumerate() {
            self.show.progress(i * AT_ONCE, tracks.len());
            let near = self.near;
            let found = survey.each(some, |survey, track| {
                near.held(survey, track, &line(track)?)
            });
            near.notices(self.show);
            let mut text = String::new();
            for (track, found) in some.iter().zip(&found) {
                text += &written(track, found, self.format, self.ended, self.show);
            }
            self.out.write_all(text.as_bytes())?;
            self.out.flush()?;
        }
        self.show.progress(tracks.len(), tracks.len());
        Ok(())
    }
}

fn place(args: &SurveyArgs) -> String {
    let named = args.out.as_ref().map(|path| path.display().to_string());
    named.unwrap_or_else(|| "standard output".to_owned())
}

/// The line of a track; one that is at fault is told, and how the program ends because of it.
fn written(
    track: &str,
    found: &Result<TrackFacts, Vec<Fault>>,
    format: SurveyFormat,
    ended: &mut End,
    show: &Show,
) -> String {
    let shown = source::shown(track);
    let found = found.as_ref().map_err(|faults| {
        if *ended == End::Done {
            *ended = show::worst(faults);
        }
        show.one_lost(&shown, faults)
    });
    let line = SurveyLine {
        track: &shown,
        found: found.as_deref().map_err(String::as_str),
    };
    match format {
        SurveyFormat::Csv => line.csv(),
        SurveyFormat::Jsonl => line.json(),
    }
}

/// The lines beside each other.
fn compare(args: &SurveyArgs, show: &Show) -> Result<End, Vec<Fault>> {
    let tracks = tracks(args)?;
    if !(2..=SIDE_BY_SIDE).contains(&tracks.len()) {
        return Ok(show.misused(&Answer {
            says: format!(
                "--compare takes two to {SIDE_BY_SIDE} lines, and here are {}",
                tracks.len()
            ),
            cure: "name the lines of one trip, or leave --compare out".to_owned(),
        }));
    }
    let (job, near) = job(args)?;
    show.notices(&job.notices);
    let survey = Survey::over(&job);
    let (mut routes, mut faults) = (Vec::new(), Vec::new());
    for track in &tracks {
        match line(track) {
            Ok(route) => routes.push(route),
            Err(wrong) => faults.extend(wrong),
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let apart = apart(&routes.iter().collect::<Vec<_>>(), SAME_WAY_M);
    let names: Vec<String> = tracks.iter().map(|track| source::shown(track)).collect();
    let lines = names
        .iter()
        .zip(&routes)
        .zip(apart)
        .map(|((track, route), apart)| {
            let facts = near.held(&survey, track, route)?;
            Ok(ComparedLine {
                track,
                facts,
                apart,
            })
        });
    let lines = lines.collect::<Result<Vec<_>, Vec<Fault>>>()?;
    near.notices(show);
    let text = compared(&lines, SAME_WAY_M, voice(job.language, args.units));
    Ok(show.result(|out| out.write_all(text.as_bytes())))
}

/// Ice, party and rules; and the ice of which only what lies near each track is read.
fn job(args: &SurveyArgs) -> Result<(Job, IndexedIce), Vec<Fault>> {
    let ice = Sources::of_ice(inputs::text(&args.zones));
    let mut sources = inputs::laid_over(ice, &args.laid);
    let near = IndexedIce::taken_from(&mut sources, args);
    Ok((sources.job()?, near))
}

/// A track as a route.
fn line(track: &str) -> Result<Route, Vec<Fault>> {
    lay::route(inputs::text(track)).map(|read| read.value)
}

/// The files that are named, and those of folders, by name.
fn tracks(args: &SurveyArgs) -> Result<Vec<String>, Vec<Fault>> {
    let mut all = Vec::new();
    for name in &args.tracks {
        match naming::path(name).is_dir() {
            true => all.extend(in_folder(name)?),
            false => all.push(name.clone()),
        }
    }
    Ok(all)
}

fn in_folder(name: &str) -> Result<Vec<String>, Vec<Fault>> {
    let unreadable = |fault: io::Error| vec![source::unreadable(name, source::refused(&fault))];
    let entries = fs::read_dir(naming::path(name)).map_err(unreadable)?;
    let mut files: Vec<PathBuf> = Vec::new();
    for entry in entries {
        files.push(entry.map_err(unreadable)?.path());
    }
    let gpx = |file: &PathBuf| {
        file.extension()
            .is_some_and(|end| end.eq_ignore_ascii_case("gpx"))
    };
    files.retain(gpx);
    files.sort();
    Ok(files
        .into_iter()
        .map(|file| naming::text(file.as_os_str()))
        .collect())
}

/// What is asked for, or what the ending says.
fn format(args: &SurveyArgs) -> SurveyFormat {
    let ending = args.out.as_ref().and_then(|path| path.extension());
    let json = |ending: &std::ffi::OsStr| {
        ["jsonl", "ndjson", "json"]
            .iter()
            .any(|known| ending.eq_ignore_ascii_case(known))
    };
    args.format.unwrap_or(match ending.is_some_and(json) {
        true => SurveyFormat::Jsonl,
        false => SurveyFormat::Csv,
    })
}
