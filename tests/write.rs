//! What is handed out.

mod changes;
mod gpx;
mod kml;
mod names;
mod report;
mod table;
mod text;
