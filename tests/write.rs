//! What is handed out.

mod changes;
mod csv;
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
