//! FlatGeobuf files in words.

use super::{
    geojson::command,
    phrase::{Phrase, name, number},
};
use crate::{fault::flatgeobuf::InFlatgeobuf, say::arg::Arg};

/// `file` is where it stands.
pub(super) fn phrase(what: &InFlatgeobuf, file: &str) -> Phrase {
    match what {
        InFlatgeobuf::Version(version) => Phrase::of(
            "zones-flatgeobuf-version",
            [("version", number(version)), ("command", command(file, ""))],
        ),
        InFlatgeobuf::CutOff => Phrase::plain("zones-flatgeobuf-cut-off"),
        InFlatgeobuf::Broken(part) => Phrase::of(
            "zones-flatgeobuf-broken",
            [("part", Arg::Word(part.word()))],
        ),
        InFlatgeobuf::TooLong { part, most_mib } => Phrase::of(
            "zones-flatgeobuf-too-long",
            [("part", Arg::Word(part.word())), ("most", number(most_mib))],
        ),
        InFlatgeobuf::NearOnly { near, held } => Phrase::of(
            "zones-flatgeobuf-near-only",
            [("near", Arg::Count(*near)), ("held", Arg::Count(*held))],
        ),
        InFlatgeobuf::Curved(kind) => Phrase::of(
            "zones-flatgeobuf-curved",
            [
                ("kind", name(*kind)),
                ("command", command(file, "-nlt MULTIPOLYGON ")),
            ],
        ),
    }
}
