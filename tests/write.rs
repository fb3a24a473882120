//! What is handed out.

mod changes;
mod depth;
mod figures;
mod gpx;
mod ice;
mod kml;
mod names;

mod page;
mod report;
mod sheet;
mod table;
mod text;
