//! The formats: what each is called, what its file is called, and the function that writes it.

use std::io::{self, Write};

use super::{
    csv, geojson, gpx, json, kml, report,
    sheet::{Look, Sheet},
    table, text,
};
use crate::plan::depth::Depth;

/// Something that a plan can be handed out as.
///
/// ```
/// use schrund::write::{FORMATS, Scene, Sheet};
///
/// let job = schrund::example::job()?;
/// let (plan, scene) = (schrund::plan(&job)?, Scene::default());
/// let csv = FORMATS.iter().find(|format| format.name() == "csv").expect("a format");
/// assert_eq!((csv.file(), csv.media_type()), (Some("legs.csv"), "text/csv"));
/// let mut bytes = Vec::new();
/// csv.write(&mut bytes, &Sheet::of(&job, &plan, &scene)).expect("memory takes everything");
/// assert_eq!(bytes.split(|byte| *byte == b'\n').count(), 1 + plan.legs.len() + 1, "a head, the legs, an end");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub trait Format: Sync {
    /// What `--format` takes.
    fn name(&self) -> &'static str;

    /// Its file in the set that `--out` writes; `None` where it is for the terminal only.
    fn file(&self) -> Option<&'static str>;

    /// Media type of the bytes.
    fn media_type(&self) -> &'static str;

    /// What it is for, in a few words.
    fn purpose(&self) -> &'static str;

    /// How much of a plan it shows in such a look.
    fn depth(&self, _look: &Look) -> Depth {
        Depth::Whole
    }

    /// Whether it shows all that a [`Scene`](super::Scene) holds; the others do with less, or with an empty one.
    fn needs_scene(&self) -> bool {
        false
    }

    /// Whether it shows the trip with something missing, and nothing else of a scene: [`Scene::others`].
    ///
    /// [`Scene::others`]: super::Scene::others
    fn needs_others(&self) -> bool {
        false
    }

    /// Writes it.
    ///
    /// # Errors
    /// Whatever `out` refuses.
    fn write(&self, out: &mut dyn Write, sheet: &Sheet<'_>) -> io::Result<()>;
}

/// All formats; those of the set in the order they are written.
pub const FORMATS: [&dyn Format; 9] = [
    &TABLE, &JSON, &CSV, &GEOJSON, &KML, &GPX, &HTML, &SHEET, &TEXT,
];

/// What a format shows beside the plan.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Beside {
    Nothing,
    /// The same trip with something missing.
    Others,
    /// A whole scene.
    Scene,
}

/// One row of the registry.
struct Writer {
    name: &'static str,
    file: Option<&'static str>,
    media_type: &'static str,
    purpose: &'static str,
    depth: Depth,
    beside: Beside,
    write: fn(&mut dyn Write, &Sheet<'_>) -> io::Result<()>,
}

impl Format for Writer {
    fn name(&self) -> &'static str {
        self.name
    }

    fn file(&self) -> Option<&'static str> {
        self.file
    }

    fn media_type(&self) -> &'static str {
        self.media_type
    }

    fn purpose(&self) -> &'static str {
        self.purpose
    }

    fn needs_scene(&self) -> bool {
        self.beside == Beside::Scene
    }

    fn needs_others(&self) -> bool {
        self.beside == Beside::Others
    }

    fn depth(&self, look: &Look) -> Depth {
        if look.detail {
            Depth::Whole
        } else {
            self.depth
        }
    }

    fn write(&self, out: &mut dyn Write, sheet: &Sheet<'_>) -> io::Result<()> {
        (self.write)(out, sheet)
    }
}

const TABLE: Writer = Writer {
    name: "table",
    file: None,
    media_type: "text/plain",
    purpose: "a page for a terminal: what stops, the legs, the ropes",
    depth: Depth::Frozen,
    beside: Beside::Nothing,
    write: |out, sheet| out.write_all(table::plan(sheet).text.as_bytes()),
};

const JSON: Writer = Writer {
    name: "json",
    file: Some("plan.json"),
    media_type: "application/json",
    purpose: "the whole plan for programs",
    depth: Depth::Whole,
    beside: Beside::Others,
    write: |out, sheet| out.write_all(json::beside(sheet.plan, &sheet.scene.others)?.as_bytes()),
};

const CSV: Writer = Writer {
    name: "csv",
    file: Some("legs.csv"),
    media_type: "text/csv",
    purpose: "the legs for a spreadsheet",
    depth: Depth::Legs,
    beside: Beside::Nothing,
    write: |out, sheet| csv::legs(out, sheet),
};

const GEOJSON: Writer = Writer {
    name: "geojson",
    file: Some("map.geojson"),
    media_type: "application/geo+json",
    purpose: "zones, legs and changes for any map viewer",
    depth: Depth::Told,
    beside: Beside::Nothing,
    write: |out, sheet| geojson::map(out, sheet),
};

const KML: Writer = Writer {
    name: "kml",
    file: Some("map.kml"),
    media_type: "application/vnd.google-earth.kml+xml",
    purpose: "the same for globes",
    depth: Depth::Told,
    beside: Beside::Nothing,
    write: |out, sheet| kml::globe(out, sheet),
};

const GPX: Writer = Writer {
    name: "gpx",
    file: Some("route.gpx"),
    media_type: "application/gpx+xml",
    purpose: "the line with its changes for a device",
    depth: Depth::Told,
    beside: Beside::Nothing,
    write: |out, sheet| gpx::device(out, sheet),
};

const HTML: Writer = Writer {
    name: "html",
    file: Some("report.html"),
    media_type: "text/html",
    purpose: "the report to read and print",
    depth: Depth::Whole,
    beside: Beside::Scene,
    write: |out, sheet| out.write_all(report::page(sheet).as_bytes()),
};

const SHEET: Writer = Writer {
    name: "sheet",
    file: Some("sheet.html"),
    media_type: "text/html",
    purpose: "the first of the report alone: two sides of A5 to print and carry",
    depth: Depth::Whole,
    beside: Beside::Nothing,
    write: |out, sheet| out.write_all(report::sheet::page(sheet).as_bytes()),
};

const TEXT: Writer = Writer {
    name: "text",
    file: Some("message.txt"),
    media_type: "text/plain",
    purpose: "a few lines a leg for a message",
    depth: Depth::Frozen,
    beside: Beside::Nothing,
    write: |out, sheet| out.write_all(text::message(sheet).as_bytes()),
};
