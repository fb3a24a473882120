//! Why it is open how and where a raster lies and what its heights are, in words.

use crate::fault::terrain::{NoHeights, NoPlacing, NoSystem};

pub(super) fn no_system(why: &NoSystem) -> String {
    match why {
        NoSystem::NoKeys | NoSystem::Unsaid => {
            "it does not say in which coordinate system it is drawn".to_owned()
        }
        NoSystem::NotGreenwich => "its longitudes do not count from Greenwich".to_owned(),
        NoSystem::Geocentric => "its coordinates are geocentric".to_owned(),
        NoSystem::CellUnit { epsg, unit } => format!(
            "it is drawn in EPSG:{epsg} but its cells are not measured in metres (unit EPSG:{unit})"
        ),
        NoSystem::AngleUnit(unit) => format!("its angles are not degrees (unit EPSG:{unit})"),
        NoSystem::Unlisted(epsg) => {
            format!("its coordinate system EPSG:{epsg} is not one this program knows")
        }
        NoSystem::NoDatum => "it does not say on which datum it is drawn".to_owned(),
        NoSystem::Method(method) => {
            format!("its projection (GeoTIFF method {method}) is not one this program knows")
        }
        NoSystem::PolarTwice => {
            "its polar projection gives both a true latitude and a scale".to_owned()
        }
        NoSystem::UnknownUnit(unit) => {
            format!("its cells are measured in an unknown unit (EPSG:{unit})")
        }
        NoSystem::Lacks(key) => format!("its projection lacks a figure (GeoKey {key})"),
        NoSystem::NotProjectable(name) => {
            format!("its coordinate system {name} cannot be projected to")
        }
    }
}

pub(super) fn no_placing(why: NoPlacing) -> String {
    match why {
        NoPlacing::NoCellSize => "its cells have no size".to_owned(),
        NoPlacing::ControlPoints => "it is tied to the map by control points only, which leaves open how cells between them lie".to_owned(),
        NoPlacing::Unsaid => "it does not say where on the map it lies".to_owned(),
        NoPlacing::Stretched { tall, from, to } => format!(
            "its tie point shifts or stretches the heights (cell height {tall}, from {from} to {to}), which programs read differently"
        ),
        NoPlacing::Contradicting => "its tie points contradict each other".to_owned(),
    }
}

pub(super) fn no_heights(why: &NoHeights) -> String {
    match why {
        NoHeights::UnitCode(epsg) => {
            format!("its heights are in a unit this program does not know (EPSG:{epsg})")
        }
        NoHeights::UnitName(name) => {
            format!("its heights are in a unit this program does not know ({name:?})")
        }
        NoHeights::TwoUnits(a, b, None) => {
            format!("its heights are said to be in two units at once ({a} m and {b} m)")
        }
        NoHeights::TwoUnits(a, b, Some(epsg)) => format!(
            "its heights are said to be in two units at once ({a} m and, by EPSG:{epsg}, {b} m)"
        ),
        NoHeights::Depths(name) => format!("it holds depths, not heights ({name})"),
    }
}
