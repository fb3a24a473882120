//! Why coordinates of a zones file are no positions.

use serde::Serialize;

use super::{code::Code, place::Excerpt};

/// Why a value is no position.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoPosition {
    /// It is something else.
    Is(Excerpt),
    /// It holds this in the place of a number.
    Holds(Excerpt),
    /// It is empty.
    Empty,
    /// It has one number only.
    OneNumber(Excerpt),
}

/// Numbers that are no longitude and latitude, and where they stand.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Misplaced {
    /// The first two.
    pub numbers: Vec<f64>,
    /// Why not.
    pub why: NoLonLat,
    /// From 1.
    pub position: usize,
    /// 0 is the outer ring, others are holes.
    pub ring: usize,
    /// Number of the polygon, where there are several.
    pub polygon: Option<usize>,
}

/// Why two numbers are no longitude and latitude.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoLonLat {
    /// There are not two.
    TooShort,
    /// One is beyond ±360: metres of a map grid.
    Projected,
    /// The longitude is beyond ±180.
    Longitude,
    /// The latitude is beyond ±90.
    Latitude,
    /// The latitude is beyond ±90, but the other way round both would do.
    Swapped,
}

impl NoLonLat {
    pub(super) fn kind(self) -> Code {
        match self {
            Self::TooShort => Code::BadGeojson,
            Self::Projected => Code::ProjectedPosition,
            Self::Longitude | Self::Latitude | Self::Swapped => Code::BadPosition,
        }
    }
}
