//! Words and figures of what is found of heights and of the ground they show.

use crate::{
    plan::{
        fact::Fact,
        finding::At,
        heights::{HeightsApart, TerrainVoid},
        place::{HeightsFrom, Piece, RollOver},
    },
    say::{
        arg::Arg,
        finding::{placeable::FactArgs, whereabouts},
        round::Round,
        setup,
        span::Said,
        voice::Voice,
    },
};

/// All of one fact about heights, found at a place.
pub(super) fn of<'a>(fact: &Fact, at: &At, voice: Voice) -> FactArgs<'a> {
    match fact {
        Fact::HeightsCompared { apart } | Fact::HeightsFarApart { apart } => apart_by(apart, voice),
        Fact::AscentsApart {
            file_m,
            model_m,
            used,
        } => vec![
            ("file", Arg::Whole(*file_m)),
            ("model", Arg::Whole(*model_m)),
            ("used", Arg::Said(setup::heights_from(*used, voice))),
        ],
        Fact::SlopePartlyUnknown { pieces, .. } => contours(pieces),
        Fact::TerrainVoid { void } => terrain_void(void, at, voice),
        Fact::TerrainFlattens { cell_m } => vec![("cell", Arg::Whole(*cell_m))],
        Fact::ConvexGround { places } => convex(places, voice),
        _ => Vec::new(),
    }
}

fn apart_by<'a>(apart: &HeightsApart, voice: Voice) -> FactArgs<'a> {
    vec![
        ("median", Arg::Said(above(apart.median_m, voice))),
        ("worst", Arg::Said(above(apart.worst_m, voice))),
        ("at", Arg::Walked(apart.worst_at_m)),
        ("used", Arg::Said(setup::heights_from(apart.used, voice))),
    ]
}

/// `12 m above`, `12 m below` or `within a metre of`.
fn above(by_m: f64, voice: Voice) -> Said {
    let by = [("by", Arg::Whole(by_m.abs()))];
    match by_m.round() {
        m if m > 0.0 => voice.say("height-above", &by),
        m if m < 0.0 => voice.say("height-below", &by),
        _ => voice.say("height-level", &[]),
    }
}

fn terrain_void<'a>(void: &TerrainVoid, at: &At, voice: Voice) -> FactArgs<'a> {
    let place = match (void.void_m, void.used) {
        (None, _) => "nowhere",
        (Some(_), HeightsFrom::TerrainModel) => "model",
        (Some(_), HeightsFrom::RouteFile) => "file",
    };
    vec![
        ("where", Arg::Word(place)),
        ("stage", Arg::Said(whereabouts::place(at, voice))),
        ("metres", Arg::Whole(void.void_m.unwrap_or_default())),
        ("first", Arg::Walked(void.first_m.unwrap_or_default())),
        ("other", Arg::yes(void.file_has_heights)),
    ]
}

fn convex<'a>(places: &[RollOver], voice: Voice) -> FactArgs<'a> {
    let each = places.iter().map(|p| {
        let steeper = Arg::Degrees(p.steepens_deg, 0, Round::Nearest);
        voice.say(
            "convex-place",
            &[("at", Arg::Walked(p.at_m)), ("steeper", steeper)],
        )
    });
    vec![("places", Arg::Said(Said::join(each, ", ")))]
}

/// How often, how far in all, and the longest piece.
pub(super) fn contours<'a>(pieces: &[Piece]) -> FactArgs<'a> {
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
