//! Why it is open how and where a raster lies and what its heights are, in words.

use super::phrase::{Phrase, figure, name, number};
use crate::fault::terrain::{NoHeights, NoPlacing, NoSystem};

pub(super) fn no_system(why: &NoSystem) -> Phrase {
    match why {
        NoSystem::NoKeys | NoSystem::Unsaid => Phrase::plain("terrain-no-system"),
        NoSystem::NotGreenwich => Phrase::plain("terrain-not-greenwich"),
        NoSystem::Geocentric => Phrase::plain("terrain-geocentric"),
        NoSystem::CellUnit { epsg, unit } => Phrase::of(
            "terrain-cell-unit",
            [("epsg", number(epsg)), ("unit", number(unit))],
        ),
        NoSystem::AngleUnit(unit) => Phrase::of("terrain-angle-unit", [("unit", number(unit))]),
        NoSystem::Unlisted(epsg) => Phrase::of("terrain-unlisted", [("epsg", number(epsg))]),
        NoSystem::NoDatum => Phrase::plain("terrain-no-datum"),
        NoSystem::Method(method) => Phrase::of("terrain-method", [("method", number(method))]),
        NoSystem::PolarTwice => Phrase::plain("terrain-polar-twice"),
        NoSystem::UnknownUnit(unit) => Phrase::of("terrain-unknown-unit", [("unit", number(unit))]),
        NoSystem::Lacks(key) => Phrase::of("terrain-lacks", [("key", number(key))]),
        NoSystem::NotProjectable(system) => {
            Phrase::of("terrain-not-projectable", [("name", name(system))])
        }
    }
}

pub(super) fn no_placing(why: NoPlacing) -> Phrase {
    match why {
        NoPlacing::NoCellSize => Phrase::plain("terrain-no-cell-size"),
        NoPlacing::ControlPoints => Phrase::plain("terrain-control-points"),
        NoPlacing::Unsaid => Phrase::plain("terrain-no-place"),
        NoPlacing::Stretched { tall, from, to } => Phrase::of(
            "terrain-stretched",
            [
                ("tall", number(tall)),
                ("from", number(from)),
                ("to", number(to)),
            ],
        ),
        NoPlacing::Contradicting => Phrase::plain("terrain-contradicting"),
    }
}

pub(super) fn no_heights(why: &NoHeights) -> Phrase {
    match why {
        NoHeights::UnitCode(epsg) => Phrase::of("terrain-unit-code", [("epsg", number(epsg))]),
        NoHeights::UnitName(unit) => {
            let unit = name(unit.escape_debug().to_string());
            Phrase::of("terrain-unit-name", [("found", unit)])
        }
        NoHeights::TwoUnits(one, other, by) => {
            let (one, other) = (figure(one, "m"), figure(other, "m"));
            let both = [("one", one), ("other", other)];
            match by {
                Some(epsg) => {
                    Phrase::of("terrain-two-units-by", both).and(vec![("epsg", number(epsg))])
                }
                None => Phrase::of("terrain-two-units", both),
            }
        }
        NoHeights::Depths(system) => Phrase::of("terrain-depths", [("name", name(*system))]),
    }
}
