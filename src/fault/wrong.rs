//! Everything that can be wrong with inputs or odd about them, one variant a fault.

use serde::Serialize;

use super::{
    code::Code,
    files::InFiles,
    flatgeobuf::InFlatgeobuf,
    geojson::InGeojson,
    gpx::InGpx,
    network::InNetwork,
    plan::InPlan,
    strip::InStrip,
    terrain::InTerrain,
    toml::InToml,
    trip::{InPractice, InTrip},
};

/// What is wrong, with all that its sentence needs.
///
/// ```
/// use schrund::{fault::{Code, Wrong}, practice::{Rules, set::Source}};
///
/// let faults = Rules::with_practice(&Source::Named("no-such-set")).expect_err("no set is called so");
/// assert!(matches!(faults[0].what, Wrong::Practice(_)), "each room's faults are a family");
/// assert_eq!(faults[0].what.kind(), Code::UnknownName);
/// assert_eq!(Wrong::More(Code::Jump, 12).kind(), Code::Jump, "twelve more jumps, not told one by one");
/// ```
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum Wrong {
    /// With files, addresses or flags.
    Files(InFiles),
    /// With an address, or what came from there.
    Network(InNetwork),
    /// With a route file.
    Gpx(InGpx),
    /// With a zones file or an inventory.
    Geojson(InGeojson),
    /// With a zones file or an inventory in FlatGeobuf, as a file.
    Flatgeobuf(InFlatgeobuf),
    /// With a terrain file.
    Terrain(InTerrain),
    /// With the text or the form of a trip file or a practice file.
    Toml(InToml),
    /// With a practice set.
    Practice(InPractice),
    /// With a trip file or the flags.
    Trip(InTrip),
    /// With a zone that is asked for by kilometre.
    Strip(InStrip),
    /// With all of them together.
    Plan(InPlan),
    /// So many more of the kind that was told before.
    More(Code, usize),
}

impl Wrong {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> Code {
        match self {
            Self::Files(what) => what.kind(),
            Self::Network(what) => what.kind(),
            Self::Gpx(what) => what.kind(),
            Self::Geojson(what) => what.kind(),
            Self::Flatgeobuf(what) => what.kind(),
            Self::Terrain(what) => what.kind(),
            Self::Toml(what) => what.kind(),
            Self::Practice(what) => what.kind(),
            Self::Trip(what) => what.kind(),
            Self::Strip(what) => what.kind(),
            Self::Plan(what) => what.kind(),
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
    Network InNetwork,
    Gpx InGpx,
    Geojson InGeojson,
    Flatgeobuf InFlatgeobuf,
    Terrain InTerrain,
    Toml InToml,
    Practice InPractice,
    Trip InTrip,
    Strip InStrip,
    Plan InPlan,
}
