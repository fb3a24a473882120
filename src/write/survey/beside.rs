//! Lines of one trip side by side: a column each, then which has least of hidden gaps and where they go different ways.

use unicode_width::UnicodeWidthStr;

use crate::{
    plan::track::TrackFacts,
    say::{arg::Arg, plain, round::Round, span::Said, voice::Voice},
    trip::route::Stretch,
    write::parts::{paragraph::padded, sentence},
};

/// A line of a trip beside others.
///
/// ```
/// use schrund::{Survey, say::voice::Voice, survey::{SAME_WAY_M, apart}, write::survey::{ComparedLine, compared}};
///
/// let (job, pair) = (schrund::example::job()?, schrund::example::pair()?);
/// let survey = Survey::over(&job);
/// let routes = [&job.route, &pair.route];
/// let apart = apart(&routes, SAME_WAY_M);
/// let lines = routes.into_iter().zip(apart).zip(["one.gpx", "two.gpx"]).map(|((route, apart), track)| {
///     Ok(ComparedLine { track, facts: survey.of(route)?, apart })
/// });
/// let lines = lines.collect::<Result<Vec<_>, Vec<schrund::fault::Fault>>>()?;
/// let text = compared(&lines, SAME_WAY_M, Voice::default());
/// assert!(text.contains("Least on hidden gaps: line 2, 0.00 km."), "{text}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug)]
pub struct ComparedLine<'a> {
    /// The file, as it was named.
    pub track: &'a str,
    /// What is known of it.
    pub facts: TrackFacts,
    /// Where no other line goes: number of the stage, chainage.
    pub apart: Vec<(usize, Stretch)>,
}

type Row = (&'static str, fn(&TrackFacts, Voice) -> Option<Said>);

/// What is told of each line, in this order.
const ROWS: [Row; 14] = [
    ("survey-length", |f, v| walked(f.length_m, v)),
    ("survey-ascent", |f, v| whole(f.ascent_m?, v)),
    ("survey-descent", |f, v| whole(f.descent_m?, v)),
    ("survey-ice", |f, v| walked(f.ice_m, v)),
    ("survey-hidden", |f, v| walked(f.hidden_ice_m, v)),
    ("survey-crossings", |f, v| {
        Some(v.shown(&Arg::Count(f.crossings)))
    }),
    ("survey-longest", |f, v| whole(f.longest_crossing_m, v)),
    ("survey-gap", gap),
    ("survey-roped-legs", |f, v| {
        Some(v.shown(&Arg::Count(f.legs_roped)))
    }),
    ("survey-roped", |f, v| walked(f.roped_m, v)),
    ("survey-along", |f, v| whole(f.along_m, v)),
    ("survey-steepest", |f, v| {
        Some(v.shown(&Arg::Degrees(f.steepest_roped_deg?, 0, Round::Up)))
    }),
    ("survey-time", |f, v| {
        Some(v.shown(&Arg::Minutes(f.time_min)))
    }),
    ("survey-word", |f, v| Some(sentence::verdict(f.verdict, v))),
];

fn walked(m: f64, voice: Voice) -> Option<Said> {
    Some(voice.shown(&Arg::Walked(m)))
}

fn whole(m: f64, voice: Voice) -> Option<Said> {
    Some(voice.shown(&Arg::Whole(m)))
}

fn gap(facts: &TrackFacts, voice: Voice) -> Option<Said> {
    match (facts.widest_gap_m, facts.gaps_unknown) {
        (None, false) => None,
        (None, true) => Some(Said::words("?")),
        (Some(m), false) => Some(voice.shown(&Arg::Needed(m))),
        (Some(m), true) => Some(voice.say("survey-gap-doubted", &[("gap", Arg::Needed(m))])),
    }
}

/// The lines beside each other; `within_m` is how near they count as going the same way.
#[must_use]
pub fn compared(lines: &[ComparedLine<'_>], within_m: f64, voice: Voice) -> String {
    let mut out = String::new();
    for (i, line) in lines.iter().enumerate() {
        out += &format!("{}\n", called(i + 1, line, voice));
    }
    out.push('\n');
    out += &columns(lines, voice);
    out.push('\n');
    if lines.iter().any(|line| line.facts.gaps_unknown) {
        out += &format!("{}\n", voice.say("survey-gap-note", &[]));
    }
    for says in least(lines, voice) {
        out += &format!("{says}\n");
    }
    for says in ways(lines, within_m, voice) {
        out += &format!("{says}\n");
    }
    out
}

/// `1 = Over the col (col.gpx)`.
fn called(number: usize, line: &ComparedLine<'_>, voice: Voice) -> Said {
    let file = plain::line(line.track);
    let name = line.facts.name.as_deref().map(plain::line);
    let beside = name
        .as_ref()
        .map(|_| voice.say("survey-line-file", &[("file", Arg::Name(&file))]));
    let args = [
        ("number", Arg::Count(number)),
        ("name", Arg::Name(name.as_deref().unwrap_or(&file))),
        ("file", Arg::Said(beside.unwrap_or_default())),
    ];
    voice.say("survey-line", &args)
}

fn columns(lines: &[ComparedLine<'_>], voice: Voice) -> String {
    let none = || voice.say("survey-none", &[]);
    let numbers = (1..=lines.len()).map(|n| n.to_string());
    let head: Vec<String> = std::iter::once(String::new()).chain(numbers).collect();
    let row = |(key, figure): &Row| -> Vec<String> {
        let cells = lines
            .iter()
            .map(|line| figure(&line.facts, voice).unwrap_or_else(none).to_string());
        std::iter::once(voice.say(key, &[]).to_string())
            .chain(cells)
            .collect()
    };
    let rows: Vec<Vec<String>> = std::iter::once(head).chain(ROWS.iter().map(row)).collect();
    let wide = |column: usize| {
        rows.iter()
            .filter_map(|row| row.get(column))
            .map(|cell| cell.width())
            .max()
    };
    let mut out = String::new();
    for row in &rows {
        let cells = row
            .iter()
            .enumerate()
            .map(|(i, cell)| padded(cell, wide(i).unwrap_or(0), i > 0));
        out += cells.collect::<Vec<_>>().join("  ").trim_end();
        out.push('\n');
    }
    out
}

/// Which line has least of hidden gaps, and how much more the others have, as it is shown.
fn least(lines: &[ComparedLine<'_>], voice: Voice) -> Vec<Said> {
    let hidden = |line: &ComparedLine<'_>| line.facts.hidden_ice_m;
    let Some((best, line)) = lines
        .iter()
        .enumerate()
        .min_by(|(_, a), (_, b)| hidden(a).total_cmp(&hidden(b)))
    else {
        return Vec::new();
    };
    let least_m = hidden(line);
    let least = ("least", Arg::Walked(least_m));
    let more: Vec<Said> = lines
        .iter()
        .enumerate()
        .filter(|(i, other)| *i != best && hidden(other) > least_m)
        .map(|(i, other)| {
            let more = Arg::Walked(hidden(other) - least_m);
            voice.say(
                "survey-more",
                &[("number", Arg::Count(i + 1)), ("more", more)],
            )
        })
        .collect();
    if more.is_empty() {
        return vec![voice.say("survey-least-all", &[least])];
    }
    let first = voice.say("survey-least", &[("number", Arg::Count(best + 1)), least]);
    std::iter::once(first).chain(more).collect()
}

fn ways(lines: &[ComparedLine<'_>], within_m: f64, voice: Voice) -> Vec<Said> {
    let within = || [("within", Arg::Whole(within_m))];
    if lines.iter().all(|line| line.apart.is_empty()) {
        return vec![voice.say("survey-together", &within())];
    }
    let line =
        |(i, line): (usize, &ComparedLine<'_>)| Said::from("  ").then(way(i + 1, line, voice));
    let head = voice.say("survey-apart", &within());
    std::iter::once(head)
        .chain(lines.iter().enumerate().map(line))
        .collect()
}

/// Where a line goes alone, and how much of that is on hidden gaps.
fn way(number: usize, line: &ComparedLine<'_>, voice: Voice) -> Said {
    let number = ("number", Arg::Count(number));
    if line.apart.is_empty() {
        return voice.say("survey-apart-none", &[number]);
    }
    let place = |&(stage, s): &(usize, Stretch)| {
        let where_ = voice.shown(&Arg::Between(s.from_m, s.to_m));
        if line.facts.stages < 2 {
            return where_;
        }
        let args = [("stage", Arg::Count(stage)), ("text", Arg::Said(where_))];
        voice.say("clock-of-stage", &args)
    };
    let length_m: f64 = line.apart.iter().map(|(_, s)| s.length_m()).sum();
    let args = [
        number,
        (
            "where",
            Arg::Said(Said::join(line.apart.iter().map(place), ", ")),
        ),
        ("length", Arg::Walked(length_m)),
        ("hidden", Arg::Walked(hidden_m(line))),
    ];
    voice.say("survey-apart-line", &args)
}

/// Metres on hidden gaps where it goes alone.
fn hidden_m(line: &ComparedLine<'_>) -> f64 {
    let of_stage = |stage: usize| {
        line.facts
            .hidden_ice
            .iter()
            .filter(move |(of, _)| *of == stage)
            .map(|(_, s)| *s)
    };
    let alone = line.apart.iter();
    alone
        .flat_map(|(stage, way)| way.clip(&of_stage(*stage).collect::<Vec<_>>()))
        .map(|s| s.length_m())
        .sum()
}
