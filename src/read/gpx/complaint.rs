//! The document's complaints, each with its place.

use quick_xml::events::{BytesStart, attributes::AttrError};

use crate::fault::{
    Code, Fault, Place,
    files::InFiles,
    gpx::{InGpx, NoDegrees, Xml},
    place::Excerpt,
};

use super::document::GpxDocument;
use super::fix::MisplacedAxis;
use super::part::Part;
use super::source::{GpxSpot, Lines};
use super::tally::COMMA;
use super::xml_fault;

impl GpxDocument<'_> {
    pub(super) fn broken_text(&mut self, spot: GpxSpot, why: Xml) {
        let fault = Fault::new(InGpx::Xml(why), self.here(spot));
        self.tally.add((Code::BrokenText, ""), || fault);
    }

    pub(super) fn bad_attribute(&mut self, e: &AttrError, tag: &BytesStart<'_>, lines: &Lines<'_>) {
        let read = tag.as_bytes();
        // The `<` is not among the bytes of the tag, but one column of it.
        let upto = xml_fault::attribute_offset(e).saturating_sub(1);
        let mut spot = lines.event();
        spot.column += 1;
        let spot = spot.after(read.get(..upto).unwrap_or(read));
        self.broken_text(spot, Xml::Attribute(xml_fault::attribute(e)));
    }

    pub(super) fn bad_position(&mut self, faults: Vec<MisplacedAxis>, lines: &Lines<'_>) {
        for (axis, why) in faults {
            let mut tally = std::mem::take(&mut self.tally);
            let kind = match why {
                NoDegrees::NoNumber { comma: true, .. } => COMMA,
                _ => axis.property(),
            };
            tally.add((Code::BadPosition, kind), || {
                let place = self.here(lines.event()).with_property(axis.property());
                Fault::new(InGpx::Position { axis, why }, place)
            });
            self.tally = tally;
        }
    }

    pub(super) fn bad_name(&mut self, nul: InFiles, lines: &Lines<'_>) {
        let fault = Fault::new(nul, self.here(lines.held()).with_property("name"));
        self.tally.add((Code::BadName, "name"), || fault);
    }

    pub(super) fn bad_height(&mut self, found: Excerpt, lines: &Lines<'_>) {
        let mut tally = std::mem::take(&mut self.tally);
        tally.add((Code::BadHeight, "ele"), || {
            let place = self.here(lines.held()).with_property("ele");
            Fault::new(InGpx::Height(found), place)
        });
        self.tally = tally;
    }

    /// What a finished track or route has that its stage does not show.
    pub(super) fn note_part(&mut self, part: &Part) {
        let place = Place::file(self.file).with_item(part.item());
        self.note_aside(place.clone(), part.aside);
        if !part.is_usable() {
            self.tally.add((Code::PartLeftOut, "part"), || {
                Fault::new(InGpx::NoTwoPoints(part.points), place)
            });
            return;
        }
        if part.lone_segments > 0 {
            self.tally.add((Code::PartLeftOut, "segment"), || {
                Fault::new(InGpx::LoneSegments(part.lone_segments), place.clone())
            });
        }
        if part.detail > 0 {
            self.tally.add((Code::DetailUsed, ""), || {
                Fault::new(InGpx::DetailUsed(part.detail), place)
            });
        }
    }

    pub(super) fn note_aside(&mut self, place: Place, count: usize) {
        if count > 0 {
            self.tally.add((Code::DetailIgnored, ""), || {
                Fault::new(InGpx::DetailIgnored(count), place)
            });
        }
    }
}
