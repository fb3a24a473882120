//! Words and figures of what is found of the line: where it ends, jumps, contours, and lies on ice that nobody drew.

use super::placeable::{FactArgs, near};
use crate::{
    plan::{
        fact::Fact,
        finding::At,
        name::IceNames,
        place::{JumpSummary, Piece, RouteEnd},
    },
    say::{arg::Arg, name::ice, span::Said, voice::Voice},
};

/// All of one fact of the line.
pub(super) fn of<'a>(fact: &Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::CutOff { at: end } => vec![("end", Arg::Word(route_end(*end)))],
        Fact::TurnFound { back_m } => vec![near(at), ("back", Arg::Whole(*back_m))],
        Fact::ClimbUnknown { unknown_m, first_m } => vec![
            ("unknown", Arg::Whole(*unknown_m)),
            ("first", Arg::Walked(*first_m)),
        ],
        Fact::IceWithoutGap { pieces, roped } => vec![
            ("spans", Arg::Said(spans(pieces, voice))),
            ("roped", Arg::yes(*roped)),
        ],
        Fact::MayRunAlong { pieces } => contours(pieces),
        Fact::JumpOverIce { jumps, ice: under } => over_ice(jumps, under, voice),
        Fact::StageGapOverIce {
            before,
            after,
            length_m,
            ice: under,
        } => vec![
            ("before", Arg::Count(*before)),
            ("after", Arg::Count(*after)),
            ("length", Arg::Whole(*length_m)),
            ("ice", Arg::Said(ice(under, voice))),
        ],
        _ => Vec::new(),
    }
}

/// How often, how far in all, and the longest jump.
fn over_ice<'a>(jumps: &[JumpSummary], under: &IceNames, voice: Voice) -> FactArgs<'a> {
    let longest = jumps
        .iter()
        .max_by(|a, b| a.length_m.total_cmp(&b.length_m));
    let (at_m, longest_m) = longest.map_or((0.0, 0.0), |j| (j.at_m, j.length_m));
    vec![
        ("count", Arg::Count(jumps.len())),
        ("all", Arg::Whole(jumps.iter().map(|j| j.length_m).sum())),
        ("longest", Arg::Whole(longest_m)),
        ("at", Arg::Walked(at_m)),
        ("ice", Arg::Said(ice(under, voice))),
    ]
}

/// From where to where, piece after piece.
fn spans(pieces: &[Piece], voice: Voice) -> Said {
    let span = |p: &Piece| {
        let span = Arg::Between(p.from_m, p.to_m);
        voice.say("ice-span", &[("span", span)])
    };
    Said::join(pieces.iter().map(span), ", ")
}

fn route_end(end: RouteEnd) -> &'static str {
    match end {
        RouteEnd::Begin => "begin",
        RouteEnd::End => "end",
    }
}

/// How often, how far in all, and the longest piece.
fn contours<'a>(pieces: &[Piece]) -> FactArgs<'a> {
    let length_m = |p: &Piece| p.to_m - p.from_m;
    let longer = |a: &&Piece, b: &&Piece| length_m(a).total_cmp(&length_m(b));
    let longest = pieces.iter().max_by(longer);
    let (from_m, to_m) = longest.map_or((0.0, 0.0), |p| (p.from_m, p.to_m));
    vec![
        ("count", Arg::Count(pieces.len())),
        ("all", Arg::Whole(pieces.iter().map(length_m).sum())),
        ("longest", Arg::Between(from_m, to_m)),
    ]
}
