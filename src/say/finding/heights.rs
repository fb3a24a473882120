//! What is found of heights, in words and figures.

use crate::{
    plan::{
        fact::{Fact, HeightsApart, TerrainVoid},
        place::HeightsFrom,
    },
    say::{arg::Arg, setup, span::Said, voice::Voice},
};

/// Words and figures for the placeables of a message.
type FactArgs<'a> = Vec<(&'static str, Arg<'a>)>;

/// How far two sources of heights differ.
pub(super) fn apart<'a>(apart: &HeightsApart, voice: Voice) -> FactArgs<'a> {
    vec![
        ("median", Arg::Said(above(apart.median_m, voice))),
        ("worst", Arg::Said(above(apart.worst_m, voice))),
        ("at", Arg::Walked(apart.worst_at_m)),
        ("used", Arg::Said(setup::heights_from(apart.used, voice))),
    ]
}

/// The ascent by two sources of heights.
pub(super) fn ascents(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    let Fact::AscentsApart {
        file_m,
        model_m,
        used,
    } = fact
    else {
        return Vec::new();
    };
    vec![
        ("file", Arg::Whole(*file_m)),
        ("model", Arg::Whole(*model_m)),
        ("used", Arg::Said(setup::heights_from(*used, voice))),
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

/// Where a model has none; the stage in words.
pub(super) fn terrain_void<'a>(void: &TerrainVoid, stage: Said) -> FactArgs<'a> {
    let place = match (void.void_m, void.used) {
        (None, _) => "nowhere",
        (Some(_), HeightsFrom::TerrainModel) => "model",
        (Some(_), HeightsFrom::RouteFile) => "file",
    };
    vec![
        ("where", Arg::Word(place)),
        ("stage", Arg::Said(stage)),
        ("metres", Arg::Whole(void.void_m.unwrap_or_default())),
        ("first", Arg::Walked(void.first_m.unwrap_or_default())),
        (
            "other",
            Arg::Word(if void.file_has_heights { "yes" } else { "no" }),
        ),
    ]
}
