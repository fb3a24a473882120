//! What a GPX file holds, gathered event by event.

use std::borrow::Cow;
use std::ops::ControlFlow::{self, Break, Continue};

use quick_xml::events::{BytesRef, BytesStart, Event};
use quick_xml::{
    Error, encoding::EncodingError, errors::IllFormedError, escape::resolve_predefined_entity,
};

use crate::fault::{
    Code, Fault, Place,
    files::InFiles,
    gpx::{InGpx, PartCount, Xml},
    name,
    place::{Item, Sort},
};
use crate::geometry::LonLat;
use crate::trip::route::NamedPlace;

use super::element::Element;
use super::fix::{self, NoHeight, WrittenPosition};
use super::odd::Odd;
use super::part::Part;
use super::plain;
use super::source::{GpxSpot, Lines};
use super::tally::Tally;
use super::{wrong_kind, xml_fault};

/// A point while its element is open.
#[derive(Debug, Default)]
struct Point {
    /// Nothing where the position is faulty.
    at: Option<LonLat>,
    height_m: Option<f32>,
    detail: Vec<LonLat>,
}

/// The file while it is being read.
pub(super) struct GpxDocument<'n> {
    pub(super) file: &'n str,
    pub(super) name: Option<String>,
    /// Usable parts only.
    pub(super) tracks: Vec<Part>,
    pub(super) routes: Vec<Part>,
    /// Everything the file holds, usable or not.
    pub(super) held_tracks: PartCount,
    pub(super) held_routes: PartCount,
    pub(super) waypoints: usize,
    /// Those with a name and a position.
    pub(super) named: Vec<NamedPlace>,
    /// Where the open waypoint is, until its name comes.
    waypoint: Option<LonLat>,
    pub(super) tally: Tally,
    pub(super) odd: Odd,
    /// Positions in the file's own extensions.
    aside: usize,
    pub(super) open: Vec<Element>,
    rooted: bool,
    /// Prefix of the innermost `gpx`, `trk` or `rte`, as written.
    prefix: Option<String>,
    part: Option<Part>,
    point: Point,
    text: String,
}

impl<'n> GpxDocument<'n> {
    pub(super) fn new(file: &'n str) -> Self {
        Self {
            file,
            name: None,
            tracks: Vec::new(),
            routes: Vec::new(),
            held_tracks: PartCount::default(),
            held_routes: PartCount::default(),
            waypoints: 0,
            named: Vec::new(),
            waypoint: None,
            tally: Tally::default(),
            odd: Odd::default(),
            aside: 0,
            open: Vec::new(),
            rooted: false,
            prefix: None,
            part: None,
            point: Point::default(),
            text: String::new(),
        }
    }

    /// Takes the next event; breaks off where nothing after it can be understood.
    pub(super) fn take(&mut self, event: &Event<'_>, lines: &mut Lines<'_>) -> ControlFlow<()> {
        match event {
            Event::Start(tag) => return self.start(tag, lines),
            Event::End(_) => self.end(lines),
            Event::Text(text) => return self.text(text, lines),
            Event::CData(text) => return self.text(text, lines),
            Event::GeneralRef(reference) => return self.text(&resolved(reference), lines),
            Event::Decl(_) if self.rooted => return self.second(lines),
            _ => {}
        }
        Continue(())
    }

    fn start(&mut self, tag: &BytesStart<'_>, lines: &mut Lines<'_>) -> ControlFlow<()> {
        let name = tag.name();
        let local = name.local_name();
        let Some(&parent) = self.open.last() else {
            return self.root(tag, lines);
        };
        let prefix = name.prefix().map(|p| p.into_inner());
        let element = parent.child(local.as_ref(), prefix == self.prefix.as_deref());
        self.open.push(element);
        if matches!(element, Element::Track | Element::Route) {
            self.prefix = prefix.map(str::to_owned);
        }
        match fix::written(tag) {
            Ok(written) => self.begin(element, Some(&written), lines),
            Err(e) => {
                self.begin(element, None, lines);
                self.bad_attribute(&e, tag, lines);
            }
        }
        Continue(())
    }

    fn root(&mut self, tag: &BytesStart<'_>, lines: &Lines<'_>) -> ControlFlow<()> {
        let name = tag.name();
        if self.rooted {
            return self.second(lines);
        }
        if name.local_name().as_ref() != "gpx" {
            let fault = wrong_kind::by_root(self.file, name.local_name().as_ref());
            self.tally.add((Code::WrongKind, "root"), || fault);
            return Break(());
        }
        self.rooted = true;
        self.open.push(Element::Gpx);
        self.prefix = name.prefix().map(|p| p.into_inner().to_owned());
        if let Err(e) = fix::written(tag) {
            self.bad_attribute(&e, tag, lines);
        }
        Continue(())
    }

    fn second(&mut self, lines: &Lines<'_>) -> ControlFlow<()> {
        self.broken_text(lines.event(), Xml::Second);
        Break(())
    }

    /// `written` is missing where the attributes are faulty, which was complained about.
    fn begin(
        &mut self,
        element: Element,
        written: Option<&WrittenPosition<'_>>,
        lines: &mut Lines<'_>,
    ) {
        let position = written.filter(|w| w.is_position());
        match element {
            Element::Track => self.begin_part(Sort::Track),
            Element::Route => self.begin_part(Sort::Route),
            Element::Segment => self.begin_segment(),
            Element::TrackPoint | Element::RoutePoint => self.begin_point(written, lines),
            Element::Waypoint => {
                self.waypoints += 1;
                self.waypoint = written.and_then(|w| fix::position(w).ok());
            }
            Element::Name | Element::Height => {
                self.text.clear();
                lines.hold();
            }
            Element::Detail => position.into_iter().for_each(|w| self.detail(w, lines)),
            Element::Aside if position.is_some() => {
                *self.part.as_mut().map_or(&mut self.aside, |p| &mut p.aside) += 1;
            }
            _ => {}
        }
    }

    fn begin_part(&mut self, sort: Sort) {
        let held = match sort {
            Sort::Track => &mut self.held_tracks,
            Sort::Route => &mut self.held_routes,
        };
        held.parts += 1;
        self.part = Some(Part::new(sort, held.parts));
    }

    fn begin_segment(&mut self) {
        if let Some(part) = &mut self.part {
            part.segments += 1;
            part.in_segment = 0;
        }
    }

    fn begin_point(&mut self, written: Option<&WrittenPosition<'_>>, lines: &Lines<'_>) {
        if let Some(part) = &mut self.part {
            part.points += 1;
            part.in_segment += 1;
        }
        self.point.height_m = None;
        self.point.detail.clear();
        self.point.at = match written.map(fix::position) {
            Some(Ok(at)) => Some(self.odd.taken_back(at)),
            Some(Err(faults)) => {
                self.bad_position(faults, lines);
                None
            }
            None => None,
        };
    }

    fn detail(&mut self, written: &WrittenPosition<'_>, lines: &Lines<'_>) {
        if let Some(part) = &mut self.part {
            part.detail += 1;
        }
        match fix::position(written) {
            Ok(at) => self.point.detail.push(self.odd.taken_back(at)),
            Err(faults) => self.bad_position(faults, lines),
        }
    }

    fn end(&mut self, lines: &Lines<'_>) {
        match self.open.pop() {
            Some(Element::Name) => self.end_name(lines),
            Some(Element::Height) => self.end_height(lines),
            Some(Element::TrackPoint | Element::RoutePoint) => self.end_point(),
            Some(Element::Segment) => self.end_segment(),
            Some(Element::Track | Element::Route) => self.end_part(),
            Some(Element::Gpx) => self.note_aside(Place::file(self.file), self.aside),
            _ => {}
        }
    }

    /// The first name that is not empty counts.
    fn end_name(&mut self, lines: &Lines<'_>) {
        if self.open.last() == Some(&Element::Waypoint) {
            return self.name_waypoint();
        }
        if let Some(nul) = name::nul(&self.text) {
            self.bad_name(nul, lines);
        }
        let name = match (self.open.last(), &mut self.part) {
            (Some(Element::Track | Element::Route), Some(part)) => &mut part.stage.name,
            _ => &mut self.name,
        };
        if name.is_none() {
            *name = name::tidy(&self.text);
        }
    }

    /// A waypoint with a faulty position or name is left out, as all were when nothing asked for them.
    fn name_waypoint(&mut self) {
        let name = name::tidy(&self.text).filter(|text| name::nul(text).is_none());
        let place = name.and_then(|name| {
            let at = self.waypoint.take()?.taken_back();
            Some(NamedPlace { name, at })
        });
        self.named.extend(place);
    }

    fn end_height(&mut self, lines: &Lines<'_>) {
        match fix::height_m(&self.text) {
            Ok(height_m) => self.point.height_m = self.point.height_m.or(height_m),
            Err(NoHeight::NoNumber(found)) => self.bad_height(found, lines),
            Err(NoHeight::Outside(found)) => {
                let place = self.here(lines.held()).with_property("ele");
                self.odd.height(found, place);
            }
        }
    }

    fn end_point(&mut self) {
        let Some(part) = &mut self.part else { return };
        if let Some(at) = self.point.at {
            part.stage.push(at, self.point.height_m);
        }
        for at in self.point.detail.drain(..) {
            part.stage.push(at, None);
        }
    }

    /// Takes the points that follow in a segment for as long as they are written the plain way.
    pub(super) fn plain_points(&mut self, lines: &mut Lines<'_>) {
        let plain = self.open.last() == Some(&Element::Segment) && self.prefix.is_none();
        let Some(part) = self.part.as_mut().filter(|_| plain) else {
            return;
        };
        plain::take(lines, &mut self.odd, part);
    }

    fn end_segment(&mut self) {
        let Some(part) = &mut self.part else { return };
        if part.stage.drop_lone_point() {
            part.lone_segments += 1;
        }
        part.stage.break_segment();
    }

    fn end_part(&mut self) {
        let Some(part) = self.part.take() else { return };
        self.note_part(&part);
        let (held, kept) = match part.sort {
            Sort::Track => (&mut self.held_tracks, &mut self.tracks),
            Sort::Route => (&mut self.held_routes, &mut self.routes),
        };
        held.points += part.points;
        if part.is_usable() {
            kept.push(part);
        }
    }

    fn text(&mut self, text: &str, lines: &Lines<'_>) -> ControlFlow<()> {
        match self.open.last() {
            Some(Element::Name | Element::Height) => self.text.push_str(text),
            None if !text.trim().is_empty() => {
                self.broken_text(lines.event(), Xml::TextOutside);
                return Break(());
            }
            _ => {}
        }
        Continue(())
    }

    /// Notes what the parser stumbled over; breaks off unless it can go on.
    pub(super) fn broken(
        &mut self,
        error: &Error,
        read: &[u8],
        lines: &Lines<'_>,
    ) -> ControlFlow<()> {
        if let (Error::Io(e), false) = (error, lines.overlong()) {
            let fault = Fault::new(InFiles::Stopped(e.to_string()), Place::file(self.file));
            self.tally.add((Code::Unreadable, ""), || fault);
            return Break(());
        }
        let good = match error {
            Error::Encoding(EncodingError::Utf8(e)) => read.get(..e.valid_up_to()),
            _ => None,
        };
        let spot = lines.event().after(good.unwrap_or_default());
        self.broken_text(spot, xml_fault::of(error, lines.most_mib));
        match error {
            Error::IllFormed(IllFormedError::UnclosedReference) => Continue(()),
            _ => Break(()),
        }
    }

    /// Complains where the text ends too early.
    pub(super) fn end_of_file(&mut self, lines: &Lines<'_>) {
        if !self.rooted {
            let fault = Fault::new(InGpx::NoElement, Place::file(self.file));
            self.tally.add((Code::WrongKind, "root"), || fault);
        } else if let Some(tag) = self.open.iter().rev().find_map(|e| e.tag()) {
            self.broken_text(lines.event(), Xml::EndsBefore(tag));
        }
    }

    /// Where in the file the running event stands, in the user's words.
    pub(super) fn here(&self, spot: GpxSpot) -> Place {
        let place = Place::file(self.file).at_line(spot.line, spot.column);
        let Some(part) = &self.part else { return place };
        let mut way = part.way();
        let inside = |kinds: &[Element]| self.open.iter().any(|e| kinds.contains(e));
        if inside(&[Element::Segment]) {
            way.segment = Some(part.segments);
        }
        if inside(&[Element::TrackPoint, Element::RoutePoint]) {
            way.point = Some(part.in_segment);
        }
        if self.open.last() == Some(&Element::Detail) && part.detail > 0 {
            way.detail = Some(part.detail);
        }
        place.with_item(Item::Line(way))
    }
}

/// The text a reference stands for; what the file declares itself stays as written.
fn resolved<'t>(reference: &'t BytesRef<'_>) -> Cow<'t, str> {
    if let Ok(Some(character)) = reference.resolve_char_ref() {
        return Cow::Owned(character.to_string());
    }
    if is_nul(reference) {
        return Cow::Borrowed("\0");
    }
    match resolve_predefined_entity(reference) {
        Some(text) => Cow::Borrowed(text),
        None => Cow::Owned(format!("&{};", &**reference)),
    }
}

/// Whether a reference is one to the character that XML forbids most strictly: `&#0;`, `&#x0;`.
fn is_nul(reference: &str) -> bool {
    let digits = reference
        .strip_prefix('#')
        .map(|d| d.trim_start_matches('x'));
    digits.is_some_and(|digits| !digits.is_empty() && digits.chars().all(|c| c == '0'))
}
