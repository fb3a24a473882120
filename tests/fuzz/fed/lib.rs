//! What the targets share: parcels of several files in one string of bytes, faults told in all languages, what must hold of
//! every plan and every text that is written, and damage in a sound form.

pub mod asked;
pub mod drawn;
pub mod parcel;
pub mod spoil;
pub mod told;
pub mod written;
