//! Plan → bytes: one file a format behind one trait. Writers are pure and round only when they write.
//!
//! [`FORMATS`] is the one list of what can be handed out: `--format`, `--out`, completions and the README's table
//! derive from it.

pub mod csv;
pub mod format;
pub mod geojson;
pub mod gpx;
pub mod json;
mod json_text;
pub mod kml;
pub mod options;
pub mod page;
pub mod parts;
pub mod report;
pub mod sheet;
#[cfg(feature = "survey")]
pub mod survey;
pub mod table;
pub mod text;

pub use format::{FORMATS, Format};
pub use sheet::{Look, Scene, Sheet};
