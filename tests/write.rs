//! What is handed out.

mod again;
mod alarms;
mod changes;
mod csv;
mod depth;
mod figures;
mod first;
mod gpx;
mod ice;
mod kml;
mod names;
mod packs;
mod page;
mod report;
mod sheet;
mod table;
mod text;
mod ways;
mod zones;
