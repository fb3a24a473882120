//! Features that came as numbers and not as text: of a format whose outlines mean the same.

use std::io::Read;

use super::{
    given::Given,
    known::Shape,
    members::{MemberText, Members},
    plain,
    positions::WrittenPolygons,
    properties::Properties,
    reading::{HeldFeature, ZonesReading},
    text::Spot,
};
use crate::{
    fault::{Fault, Noted},
    trip::zone::Zone,
};

/// A feature with a sound outline and sound properties, whether they mean something or not.
pub(in crate::read) struct PlainFeature(HeldFeature);

impl PlainFeature {
    /// A feature by its polygons and the JSON of its properties; `None` where something is wrong with it.
    pub(in crate::read) fn of(polygons: WrittenPolygons, properties: String) -> Option<Self> {
        let shape = Shape::written(polygons)?;
        let member = |json: String| MemberText {
            json,
            at: Spot::FIRST,
            lead: 0,
        };
        let properties = member(properties);
        let read = Properties::read(Some(&properties)).ok()?;
        let mut members = Members::begun(Spot::FIRST);
        members.keep("type", member(r#""Feature""#.to_owned()));
        Some(Self(HeldFeature {
            members,
            shape: Some(shape),
            properties: Some(Ok(read)),
        }))
    }
}

/// Zones of a file of which some features come as numbers, and the rest as a text.
pub(in crate::read) struct ZonesTaken<'n>(ZonesReading<'n>);

impl ZonesTaken<'_> {
    pub(in crate::read) fn new(name: &str, given: &Given) -> Self {
        Self(ZonesReading::new(name, *given, None))
    }

    pub(in crate::read) fn take(&mut self, feature: PlainFeature) {
        self.0.held_feature(feature.0, Spot::FIRST);
    }

    /// The zones of all, with those of a collection in which [`READ`] stands for what was taken, if anything was.
    ///
    /// # Errors
    /// Every fault at once, as of a text.
    ///
    /// [`READ`]: super::plain::READ
    pub(in crate::read) fn then(mut self, rest: impl Read) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
        self.0.some_read = self.0.features > 0;
        plain::read(rest, &mut self.0);
        self.0.finish()
    }
}
