//! Words and figures of what is found of the line: where it ends, jumps, contours, and lies on ice that nobody drew.

use crate::{
    plan::{
        fact::{Fact, RouteEnd},
        finding::At,
        name::IceNames,
        place::{JumpSummary, Piece},
    },
    say::{arg::Arg, name::ice, voice::Voice},
};

/// A placeable's name with what stands in its place.
pub(super) type FactArgs<'a> = Vec<(&'static str, Arg<'a>)>;

/// All of one fact of the line.
pub(super) fn of<'a>(fact: &Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::CutOff { at } => vec![("end", Arg::Word(route_end(*at)))],
        Fact::GlacierWithoutZone { length_m } => {
            vec![("length", Arg::Whole(*length_m)), span_of(at)]
        }
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

/// The stretch of the place.
pub(super) fn span_of<'a>(at: &At) -> (&'static str, Arg<'a>) {
    let (from_m, to_m) = match at {
        At::Leg(place) => (place.from_m, place.to_m),
        _ => (0.0, 0.0),
    };
    ("span", Arg::Between(from_m, to_m))
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
