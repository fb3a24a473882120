//! Several files in one string of bytes: each stands behind a line `%% name`, and what is not there is that of the library's own
//! example, so that a few bytes of one file are asked for within a trip that is sound otherwise.

use std::io::Cursor;

use schrund::{
    Job, example,
    fault::Fault,
    raster::RasterSource,
    read::{
        geojson::KnownShapes,
        input::{Input, Text},
        kind,
        lay::Sources,
        trip::{self, Trip, TripFiles},
    },
};

/// What begins the line before a file.
const MARK: &[u8] = b"%% ";

/// The files by their names, in the order in which they stand.
#[derive(Debug)]
pub struct Parcel<'b>(Vec<(&'b str, &'b [u8])>);

impl<'b> Parcel<'b> {
    /// The files in these bytes; what stands before the first of them is none.
    #[must_use]
    pub fn of(bytes: &'b [u8]) -> Self {
        let begins = |at: &usize| {
            let line = *at == 0 || bytes[at - 1] == b'\n';
            line && bytes[*at..].starts_with(MARK)
        };
        let starts: Vec<usize> = (0..bytes.len()).filter(begins).collect();
        let ends = starts.iter().skip(1).copied().chain([bytes.len()]);
        let parts = starts.iter().zip(ends).map(|(from, to)| &bytes[*from..to]);
        Self(parts.filter_map(named).collect())
    }

    /// The first file of that name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&'b [u8]> {
        self.0.iter().find(|file| file.0 == name).map(|file| file.1)
    }

    /// Whether a word stands in the file of that name.
    #[must_use]
    pub fn says(&self, name: &str, word: &str) -> bool {
        let text = self.get(name).unwrap_or_default();
        let mut words = text.split(u8::is_ascii_whitespace);
        words.any(|said| said == word.as_bytes())
    }

    /// A text by its name, or that of the example.
    #[must_use]
    pub fn text(&self, name: &str, example: &'static str) -> Input<Text<'b>> {
        Input::text(name, self.get(name).unwrap_or(example.as_bytes()))
    }

    /// The trip file, read.
    #[must_use]
    pub fn trip(&self) -> Input<Trip> {
        trip::file(self.text("trip", example::TRIP_TOML))
    }

    /// Terrain models, those that the trip names with the same bytes: a name ends with `.hgt` or `.tif`.
    #[must_use]
    pub fn terrain(&self, asked: &TripFiles) -> Vec<Input<RasterSource>> {
        let is_model = |name: &str| name.ends_with(".hgt") || name.ends_with(".tif");
        let Some((name, bytes)) = self.0.iter().find(|file| is_model(file.0)) else {
            return Vec::new();
        };
        let own = [(*name).to_owned()];
        let names = if asked.terrain.is_empty() {
            &own
        } else {
            asked.terrain.as_slice()
        };
        let model = |name: &String| {
            let source: RasterSource = Box::new(Cursor::new(ground(name, bytes)));
            Input::new(name, source)
        };
        names.iter().take(MOST_MODELS).map(model).collect()
    }

    /// All that is here laid together, as whoever uses the library lays it.
    #[must_use]
    pub fn sources<'a>(&self, known: Option<&'a KnownShapes>) -> Sources<'a>
    where
        'b: 'a,
    {
        let trip = self.trip();
        let asked = trip.source.as_ref().map(Trip::files).unwrap_or_default();
        let route = self.text("route", example::ROUTE_GPX);
        let mut sources = Sources::new(route, self.text("zones", example::ZONES_GEOJSON));
        sources.zones_near = self.sought("zones");
        sources.glaciers_near = self.sought("glaciers");
        let glaciers = self.get("glaciers");
        sources.glaciers = glaciers.map(|ice| Input::text("glaciers", ice));
        sources.terrain = self.terrain(&asked);
        let practice = self.get("practice");
        sources.practice = practice.map(|set| Input::text("practice", set));
        sources.trip = Some(trip);
        sources.known = known;
        sources
    }

    /// The job of all that is here.
    ///
    /// # Errors
    /// Every fault of every file.
    pub fn job(&self, known: Option<&KnownShapes>) -> Result<Job, Vec<Fault>> {
        self.sources(known).job()
    }

    /// A file of outlines that is read here and there, where it is of that kind.
    fn sought(&self, name: &str) -> Option<Input<Box<dyn schrund::raster::ReadSeek>>> {
        let bytes = self.get(name).filter(|ice| kind::is_flatgeobuf(ice))?;
        Some(Input::new(name, Box::new(Cursor::new(bytes.to_vec()))))
    }
}

/// So many models of one trip are opened: they are all the same.
const MOST_MODELS: usize = 3;

/// Name and bytes of a part; the line break before the next mark is none of its own.
fn named(part: &[u8]) -> Option<(&str, &[u8])> {
    let end = part.iter().position(|byte| *byte == b'\n')?;
    let name = std::str::from_utf8(part.get(MARK.len()..end)?).ok()?;
    let bytes = &part[end + 1..];
    Some((name.trim(), bytes.strip_suffix(b"\n").unwrap_or(bytes)))
}

/// Bytes of the shortest tile that there is.
const TILE: usize = 2 * 1201 * 1201;

/// The bytes of a terrain model. A tile without a beginning of its own is what is there over and over, so that one of real size
/// is told in a few bytes.
#[must_use]
pub fn ground(name: &str, bytes: &[u8]) -> Vec<u8> {
    let is_tile = name.ends_with(".hgt") && !bytes.is_empty() && bytes.len() < TILE;
    match is_tile && bytes.len().is_multiple_of(2) {
        true => bytes.iter().copied().cycle().take(TILE).collect(),
        false => bytes.to_vec(),
    }
}
