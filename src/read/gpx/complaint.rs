//! The document's complaints, each with its place.

use quick_xml::events::{BytesStart, attributes::AttrError};

use crate::fault::{Code, Place, Problem};

use super::document::Document;
use super::fix::Fault;
use super::part::{Part, counted};
use super::source::{Lines, Spot};
use super::xml_fault;

impl Document<'_> {
    pub(super) fn broken_text(&mut self, spot: Spot, says: &str, cure: &str) {
        let problem = Problem::new(Code::BrokenText, self.here(spot), says).hint(cure);
        self.tally.add((Code::BrokenText, ""), || problem);
    }

    pub(super) fn bad_attribute(&mut self, e: &AttrError, tag: &BytesStart<'_>, lines: &Lines<'_>) {
        let (says, cure) = xml_fault::attribute(e);
        let read = tag.as_bytes();
        // The `<` is not among the bytes of the tag, but one column of it.
        let upto = xml_fault::attribute_offset(e).saturating_sub(1);
        let mut spot = lines.event();
        spot.column += 1;
        let spot = spot.after(read.get(..upto).unwrap_or(read));
        self.broken_text(spot, &says, cure);
    }

    pub(super) fn bad_position(&mut self, faults: Vec<Fault>, lines: &Lines<'_>) {
        for fault in faults {
            let mut tally = std::mem::take(&mut self.tally);
            tally.add((Code::BadPosition, fault.property), || {
                let place = self.here(lines.event()).with_property(fault.property);
                Problem::new(Code::BadPosition, place, fault.says).hint(fault.hint)
            });
            self.tally = tally;
        }
    }

    pub(super) fn bad_height(&mut self, found: &str, lines: &Lines<'_>) {
        let mut tally = std::mem::take(&mut self.tally);
        tally.add((Code::BadHeight, "ele"), || {
            let place = self.here(lines.held()).with_property("ele");
            let says = format!("the height {found} is no finite number and counts as not given");
            Problem::new(Code::BadHeight, place, says).hint("give `ele` in metres, or leave it out")
        });
        self.tally = tally;
    }

    /// What a finished track or route has that its stage does not show.
    pub(super) fn note_part(&mut self, part: &Part) {
        let place = Place::file(self.file).with_item(part.label());
        self.note_aside(place.clone(), part.aside);
        if !part.is_usable() {
            self.tally.add((Code::PartLeftOut, "part"), || {
                let says = format!(
                    "no two different points follow one another here ({}): left out",
                    counted(part.points, "point")
                );
                Problem::new(Code::PartLeftOut, place, says)
            });
            return;
        }
        if part.lone_segments > 0 {
            self.tally.add((Code::PartLeftOut, "segment"), || {
                let says = format!(
                    "{} with a single position left out",
                    counted(part.lone_segments, "segment")
                );
                Problem::new(Code::PartLeftOut, place.clone(), says)
            });
        }
        if part.detail > 0 {
            self.tally.add((Code::DetailUsed, ""), || {
                let says = format!(
                    "{} between the route points taken from their extensions",
                    counted(part.detail, "point")
                );
                Problem::new(Code::DetailUsed, place, says)
            });
        }
    }

    pub(super) fn note_aside(&mut self, place: Place, count: usize) {
        if count > 0 {
            self.tally.add((Code::DetailIgnored, ""), || {
                let says = format!("{} in extensions not used", counted(count, "position"));
                Problem::new(Code::DetailIgnored, place, says)
                    .hint("if they are the line, export it as a track")
            });
        }
    }
}
