//! What the targets share: parcels of several files in one string of bytes, faults told in all languages, what must hold of
//! every plan and every text that is written, and numbers damaged in a sound form.
#![forbid(unsafe_code)]

pub mod parcel;
pub mod spoil;
pub mod told;
pub mod written;
