//! The file that lines are written to as they come, and what is there of an interrupted one.

use std::{
    collections::BTreeSet,
    fs::{self, File, OpenOptions},
    io::{self, Seek, SeekFrom},
    path::Path,
};

use schrund::write::survey::SurveyLine;
use serde::Deserialize;

use crate::{answer::Answer, args::SurveyFormat, source};

/// Tracks that have a line.
#[derive(Debug, Default)]
pub(super) struct TracksHeld {
    tracks: BTreeSet<String>,
    /// Whether anything stands in the file, a head line too.
    any: bool,
}

impl TracksHeld {
    /// Whether the track has one.
    pub(super) fn holds(&self, track: &str) -> bool {
        let track = source::shown(track);
        self.tracks.contains(&track) || self.tracks.contains(&SurveyLine::cell(&track))
    }

    /// Whether nothing stands there, not even a head line.
    pub(super) fn is_empty(&self) -> bool {
        !self.any
    }

    /// The whole lines of a text, and how long they are together: what was cut off within a line is held again.
    fn of(text: &str, format: SurveyFormat) -> Result<(Self, usize), &'static str> {
        let whole = text.rfind('\n').map_or(0, |end| end + 1);
        let text = &text[..whole];
        let tracks = match format {
            SurveyFormat::Csv => of_csv(text),
            SurveyFormat::Jsonl => of_json(text),
        };
        let any = whole > 0;
        Ok((
            Self {
                tracks: tracks?,
                any,
            },
            whole,
        ))
    }
}

fn of_csv(text: &str) -> Result<BTreeSet<String>, &'static str> {
    let Some(lines) = text.strip_prefix(&SurveyLine::csv_head()) else {
        return match text {
            "" => Ok(BTreeSet::new()),
            _ => Err("its first line is not that of a survey"),
        };
    };
    let mut read = csv::ReaderBuilder::new();
    let mut read = read.has_headers(false).from_reader(lines.as_bytes());
    let track = |line: Result<csv::StringRecord, csv::Error>| Some(line.ok()?.get(0)?.to_owned());
    let tracks: Option<BTreeSet<String>> = read.records().map(track).collect();
    tracks.ok_or("not all of its lines are those of a survey")
}

fn of_json(text: &str) -> Result<BTreeSet<String>, &'static str> {
    #[derive(Deserialize)]
    struct Line {
        track: String,
    }
    let track = |line: &str| serde_json::from_str::<Line>(line).map(|line| line.track);
    let tracks: Result<BTreeSet<String>, _> = text.lines().map(track).collect();
    tracks.map_err(|_| "not all of its lines are those of a survey")
}

/// The file, ready to be written on, and the tracks that it holds.
///
/// # Errors
/// It is no such file, or cannot be opened: what is to be written instead.
pub(super) fn opened(
    path: &Path,
    format: SurveyFormat,
    resume: bool,
) -> Result<(File, TracksHeld), Answer> {
    let name = path.display().to_string();
    let answer = |says: String, cure: &str| Answer {
        says,
        cure: cure.to_owned(),
    };
    let held = match fs::read_to_string(path) {
        Ok(text) if resume => text,
        Err(fault) if resume && fault.kind() != io::ErrorKind::NotFound => {
            return Err(answer(
                format!("{name}: {fault}"),
                "another file for `--out`",
            ));
        }
        _ => String::new(),
    };
    let (lines, whole) = TracksHeld::of(&held, format).map_err(|why| {
        answer(
            format!("{name} cannot be gone on with: {why}"),
            "the file of the same survey, or `--force` to begin anew",
        )
    })?;
    let open = || -> io::Result<File> {
        let mut options = OpenOptions::new();
        let mut file = options
            .create(true)
            .write(true)
            .truncate(!resume)
            .open(path)?;
        // A line that was cut off is written again.
        if resume && whole < held.len() {
            file.set_len(whole as u64)?;
        }
        file.seek(SeekFrom::End(0))?;
        Ok(file)
    };
    let file =
        open().map_err(|fault| answer(format!("{name}: {fault}"), "another file for `--out`"))?;
    Ok((file, lines))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_that_was_cut_off_is_held_again() {
        let head = SurveyLine::csv_head();
        let lost = SurveyLine {
            track: "a, b.gpx",
            found: Err("no line"),
        };
        let text = format!("{head}{}c.gp", lost.csv());
        let (lines, whole) = TracksHeld::of(&text, SurveyFormat::Csv).expect("a survey");
        assert!(lines.holds("a, b.gpx") && !lines.holds("c.gp"));
        assert_eq!(whole, text.len() - "c.gp".len());
        let text = format!("{}{{\"track\": \"c", lost.json());
        let (lines, whole) = TracksHeld::of(&text, SurveyFormat::Jsonl).expect("a survey");
        assert_eq!((lines.tracks.len(), whole), (1, lost.json().len()));
    }

    #[test]
    fn another_file_is_not_gone_on_with() {
        assert!(TracksHeld::of("name,height\nhut,3000\n", SurveyFormat::Csv).is_err());
        assert!(TracksHeld::of("{\"type\": \"Feature\"}\n", SurveyFormat::Jsonl).is_err());
        let (lines, whole) = TracksHeld::of("", SurveyFormat::Csv).expect("nothing yet");
        assert!(lines.is_empty() && whole == 0);
    }
}
