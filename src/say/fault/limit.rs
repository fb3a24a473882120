//! Which limit of inputs a fault is about, and how it is raised.

use crate::{
    fault::{
        Wrong,
        files::InFiles,
        flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
        gpx::{InGpx, Xml},
        network::InNetwork,
        terrain::{InTerrain, Unusable},
        trip::InTrip,
    },
    limits::InputLimit,
    say::{arg::Arg, interface::Interface, span::Said, voice::Voice},
};

/// The cure with the limit behind it that who gives flags may raise.
pub(super) fn raised(cure: Said, what: &Wrong, voice: Voice) -> Said {
    match of(what) {
        Some(limit) if voice.interface == Interface::Flags => {
            let (name, code) = (limit.name(), format!("--limit {}=NUMBER", limit.name()));
            let args = [
                ("cure", Arg::Said(cure)),
                ("name", Arg::Word(name)),
                ("flag", Arg::Said(Said::code(code))),
            ];
            voice.say("limit-raised", &args)
        }
        _ => cure,
    }
}

fn of(what: &Wrong) -> Option<InputLimit> {
    Some(match what {
        Wrong::Files(InFiles::TooLarge { .. }) => InputLimit::TextMib,
        Wrong::Gpx(InGpx::Xml(Xml::Overlong(_))) => InputLimit::TagMib,
        Wrong::Gpx(InGpx::Endless { .. }) => InputLimit::RouteKm,
        Wrong::Flatgeobuf(InFlatgeobuf::TooLong { part, .. }) => match part {
            FlatgeobufPart::Header => InputLimit::HeaderMib,
            _ => InputLimit::FeatureMib,
        },
        Wrong::Terrain(InTerrain::Refused(Unusable::BigParts(_))) => InputLimit::PartMib,
        Wrong::Terrain(InTerrain::Refused(Unusable::BigTables)) => InputLimit::TableMib,
        Wrong::Trip(InTrip::TooMany { .. }) => InputLimit::People,
        Wrong::Trip(InTrip::TooManyRopes { .. }) => InputLimit::Ropes,
        Wrong::Network(what) => return of_network(what),
        _ => return None,
    })
}

fn of_network(what: &InNetwork) -> Option<InputLimit> {
    Some(match what {
        InNetwork::TooBig { page: true, .. } => InputLimit::PageMib,
        InNetwork::TooBig { .. } => InputLimit::AnswerMib,
        InNetwork::Late { .. } => InputLimit::AnswerSeconds,
        InNetwork::ManyPages { .. } => InputLimit::Pages,
        InNetwork::ManyTiles { .. } => InputLimit::Tiles,
        InNetwork::ManyCells { .. } => InputLimit::WindowCells,
        _ => return None,
    })
}
