//! Everything that can be wrong with inputs or odd about them, one variant a fault.

use serde::Serialize;

use super::{
    code::Code,
    files::InFiles,
    geojson::InGeojson,
    gpx::InGpx,
    terrain::InTerrain,
    toml::InToml,
    trip::{InPlan, InPractice, InTrip},
};

/// What is wrong, with all that its sentence needs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum Wrong {
    /// With files, addresses or flags.
    Files(InFiles),
    /// With a route file.
    Gpx(InGpx),
    /// With a zones file or an inventory.
    Geojson(InGeojson),
    /// With a terrain file.
    Terrain(InTerrain),
    /// With the text or the form of a trip file or a practice file.
    Toml(InToml),
    /// With a practice set.
    Practice(InPractice),
    /// With a trip file or the flags.
    Trip(InTrip),
    /// With all of them together.
    Plan(InPlan),
    /// So many more of the kind that was told before.
    More(Code, usize),
}

impl Wrong {
    /// Its code.
    #[must_use]
    pub fn code(&self) -> Code {
        match self {
            Self::Files(what) => what.code(),
            Self::Gpx(what) => what.code(),
            Self::Geojson(what) => what.code(),
            Self::Terrain(what) => what.code(),
            Self::Toml(what) => what.code(),
            Self::Practice(what) => what.code(),
            Self::Trip(what) => what.code(),
            Self::Plan(what) => what.code(),
            Self::More(code, _) => *code,
        }
    }
}

macro_rules! from {
    ($($variant:ident $type:ident,)+) => {
        $(impl From<$type> for Wrong {
            fn from(what: $type) -> Self {
                Self::$variant(what)
            }
        })+
    };
}

from! {
    Files InFiles,
    Gpx InGpx,
    Geojson InGeojson,
    Terrain InTerrain,
    Toml InToml,
    Practice InPractice,
    Trip InTrip,
    Plan InPlan,
}
