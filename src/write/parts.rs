//! What several formats are made of: rows, places, paragraphs, styles.

pub mod change;
pub mod clock;
pub(crate) mod contours;
pub(crate) mod day;
pub mod falls_on;
pub(crate) mod findings;
pub mod halt;
pub mod itinerary;
pub(crate) mod keep;
pub mod look;
pub(crate) mod outline;
pub(crate) mod packs;
pub(crate) mod paragraph;
pub mod popup;
pub mod rope_line;
pub mod row;
pub mod sentence;
pub(crate) mod setups;
pub(crate) mod slopes;
pub mod style;
pub(crate) mod tied;
pub(crate) mod told;
pub(crate) mod walk;
pub(crate) mod way;
pub(crate) mod way_trip;
pub(crate) mod zones;
