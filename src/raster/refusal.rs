//! Faults and notes of one terrain file.

use crate::fault::{
    Fault, Place,
    terrain::{Damage, InTerrain, Told, Unusable},
};

/// The file is understood but not usable as heights.
pub(crate) fn refused(name: &str, why: Unusable) -> Fault {
    Fault::new(InTerrain::Refused(why), Place::file(name))
}

/// The file is broken.
pub(crate) fn broken(name: &str, how: Damage) -> Fault {
    Fault::new(InTerrain::Broken(how), Place::file(name))
}

/// Something a reader of the heights ought to know.
pub(crate) fn note(name: &str, told: Told) -> Fault {
    Fault::new(InTerrain::Note(told), Place::file(name))
}
