//! GPX 1.0 and 1.1 → [`Route`], streamed: only the points are held, never the file.
//!
//! *What counts as what*
//!
//! * `trk` before `rte`: routes are used only where no track has a usable line, that is a segment with two
//!   different points in a row. Each `trk` (or `rte`) is a stage. What is left out is noted.
//! * Any namespace prefix or none. `name` and `ele` count only with the prefix of the `gpx`, `trk` or `rte`
//!   around them, because GPX 1.0 lets foreign elements stand beside them.
//! * Any element with both `lat` and `lon` inside a `rtept` (planners put the detailed line there, mostly in
//!   `extensions`) is a point of the line to the next `rtept`, and a note says how many there were. Elsewhere in
//!   a track, a route or the file's own extensions nothing tells where such positions belong: they are not used,
//!   and a warning says so. Of waypoints those with a name and a good position are kept, so that a halt can name one;
//!   what is wrong with the others is not told.
//! * Longitudes −180 to 180 are accepted, both included; the GPX 1.1 schema (`longitudeType`, as excerpted)
//!   leaves 180 itself out. Longitudes up to 360 are refused with the number to write instead.
//! * Heights that are no finite number count as not given.
//! * References to entities a file declares itself are never expanded: they stay as text.
//! * UTF-8, UTF-16 with a byte-order mark or an XML declaration, and every encoding of the WHATWG list that the
//!   declaration names. A byte-order mark wins over the declaration.

mod complaint;
mod document;
mod element;
mod fix;
mod odd;
mod outcome;
mod part;
mod plain;
mod source;
mod suspect;
mod tally;
mod wrong_kind;
mod xml_fault;

use std::io::{self, BufRead};

use quick_xml::{Reader, events::Event};

use crate::fault::{Fault, Noted, Place, files::InFiles};
use crate::limits::InputLimits;
use crate::trip::route::Route;

use document::GpxDocument;
use source::Lines;

pub(super) use suspect::edges_m;

/// An event buffer larger than this is given back after use, bytes. \[ours\]
const KEPT_BUFFER_BYTES: usize = 1 << 20;

/// Reads a route; `name` is what the user calls the file and appears in every complaint.
///
/// # Errors
/// Every fault found, in input order, with warnings among them: broken XML, positions that are none, another
/// kind of file, no usable line. Repeats of one kind are given singly twenty times and then counted.
///
/// # Example
/// ```
/// let text = r#"<gpx><trk><trkseg><trkpt lat="46.50" lon="8"/><trkpt lat="46.51" lon="8"/></trkseg></trk></gpx>"#;
/// let read = schrund::read::gpx::route("tour.gpx", text.as_bytes()).expect("a good file");
/// assert_eq!(read.value.stages[0].points().len(), 2);
///
/// let faults = schrund::read::gpx::route("tour.gpx", "<gpx/>".as_bytes()).expect_err("no line");
/// assert_eq!(faults[0].code(), "no-line");
/// ```
pub fn route(name: &str, text: impl BufRead) -> Result<Noted<Route>, Vec<Fault>> {
    route_within(name, text, &InputLimits::default())
}

/// The same with other limits.
pub(super) fn route_within(
    name: &str,
    text: impl BufRead,
    limits: &InputLimits,
) -> Result<Noted<Route>, Vec<Fault>> {
    let unreadable = |e: std::io::Error| {
        let stopped = InFiles::Stopped(e.to_string());
        vec![Fault::new(stopped, Place::file(name))]
    };
    let (first, whole) = source::first_bytes(text).map_err(unreadable)?;
    if let Some(fault) = wrong_kind::by_first_bytes(name, &first) {
        return Err(vec![fault]);
    }
    let mut document = GpxDocument::new(name);
    let text = source::decoded(&first, whole);
    read_all(Lines::new(text, limits), &mut document);
    outcome::route(document)
}

/// The text of a GPX file for who keeps it as a text: whatever letters it is written in and says so, it is UTF-8 then and says
/// that.
///
/// # Errors
/// Letters that its own encoding does not have.
///
/// ```
/// let latin = b"<?xml version='1.0' encoding='ISO-8859-1'?><gpx><trk><name>Gr\xfcn</name></trk></gpx>";
/// let text = schrund::read::gpx::text(latin)?;
/// assert_eq!(text, "<?xml version='1.0' encoding='UTF-8'?><gpx><trk><name>Grün</name></trk></gpx>");
/// let indented = schrund::read::gpx::text(b"\n<?xml version='1.0' encoding=\"KOI8-R\"?><gpx/>")?;
/// assert_eq!(indented, "\n<?xml version='1.0' encoding=\"UTF-8\"?><gpx/>");
/// # Ok::<(), std::io::Error>(())
/// ```
pub fn text(bytes: &[u8]) -> io::Result<String> {
    let (first, whole) = source::first_bytes(bytes)?;
    let text = io::read_to_string(source::decoded(&first, whole))?;
    Ok(source::declared_utf8(text))
}

/// Hands every event to the document, until the end or a fault that nothing can be read after.
fn read_all(lines: Lines<'_>, document: &mut GpxDocument<'_>) {
    let mut reader = Reader::from_reader(lines);
    reader.config_mut().expand_empty_elements = true;
    let mut buffer = Vec::new();
    loop {
        buffer.clear();
        if buffer.capacity() > KEPT_BUFFER_BYTES {
            buffer = Vec::new();
        }
        reader.get_mut().begin_event();
        let flow = match reader.read_event_into(&mut buffer) {
            Ok(Event::Eof) => {
                document.end_of_file(reader.get_ref());
                return;
            }
            Ok(event) => {
                let ended = matches!(event, Event::End(_));
                let flow = document.take(&event, reader.get_mut());
                if ended {
                    // Behind an end tag the parser holds nothing back: what follows can be taken out of its hands.
                    document.plain_points(reader.get_mut());
                }
                flow
            }
            Err(e) => document.broken(&e, &buffer, reader.get_ref()),
        };
        if flow.is_break() {
            return;
        }
    }
}
