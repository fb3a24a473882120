//! What is handed out.

mod changes;
mod figures;
mod gpx;
mod ice;
mod kml;
mod names;
mod of_legs;
mod page;
mod report;
mod sheet;
mod table;
mod text;
