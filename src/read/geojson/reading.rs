//! A file while it is read: from its top level down to each feature.

use serde_json::Value;

use super::{
    crs,
    gap::Missing,
    given::Given,
    kind::{bare, document_type, type_of},
    known::{Counts, KnownShapes, Shape, ShapesOfFile},
    log::Log,
    members::{Found, MemberText, Members},
    names::MeantNames,
    properties::Properties,
    shape,
    text::Spot,
};
use crate::{
    fault::{
        Code, Fault, Item, Place,
        geojson::{InGeojson, Object},
    },
    trip::zone::{Outline, Zone},
};

/// A file while it is read.
pub(super) struct ZonesReading<'k> {
    pub(super) file: String,
    pub(super) given: Given,
    pub(super) log: Log,
    pub(super) zones: Vec<Zone>,
    /// Features met so far, polygons or not.
    pub(super) features: usize,
    /// Features with ice met so far, sound or not.
    pub(super) numbers: usize,
    /// The text is inside a feature that is not counted yet.
    pub(super) inside_feature: bool,
    /// The first of the list that comes stands for features that were read already.
    pub(super) some_read: bool,
    pub(super) counts: Counts,
    /// The last feature that was left out.
    pub(super) left_out: Option<Item>,
    pub(super) shapes: ShapesOfFile<'k>,
    pub(super) missing: Missing,
    /// What the names of properties so far were meant to be.
    pub(super) names: MeantNames,
}

/// A feature as it was met.
pub(super) struct HeldFeature {
    pub(super) members: Members,
    /// Its geometry, where that was read already.
    pub(super) shape: Option<Shape>,
    /// Its properties, where they were.
    pub(super) properties: Option<Result<Properties, Fault>>,
}

impl HeldFeature {
    /// Of which nothing was read.
    pub(super) fn unread(members: Members) -> Self {
        Self {
            members,
            shape: None,
            properties: None,
        }
    }
}

/// What became of a geometry.
enum Met {
    Ice(Outline),
    Nothing,
    /// It was complained about.
    Unread,
    /// The same, but a polygon was meant, so its properties matter.
    Faulty,
}

impl Met {
    fn of(outline: Outline) -> Self {
        if outline.polygons.is_empty() {
            Self::Nothing
        } else {
            Self::Ice(outline)
        }
    }
}

impl<'k> ZonesReading<'k> {
    pub(super) fn new(file: &str, given: Given, known: Option<&'k KnownShapes>) -> Self {
        let mut reading = Self {
            file: file.to_owned(),
            given,
            log: Log::new(),
            zones: Vec::new(),
            features: 0,
            numbers: 0,
            inside_feature: false,
            some_read: false,
            counts: Counts::default(),
            left_out: None,
            shapes: ShapesOfFile::of(file, known),
            missing: Missing::default(),
            names: MeantNames::default(),
        };
        if let Some(fault) = given.fault(&Place::item(Item::Flags)) {
            reading.log.add(fault);
        }
        reading
    }

    /// Files a complaint, with the file, the feature and where that begins.
    pub(super) fn add(&mut self, mut fault: Fault, feature: Option<&Item>, at: Spot) {
        fault.at.file = Some(self.file.clone());
        fault.at.item = feature.cloned();
        if fault.at.line.is_none() {
            fault.at.line = Some(at.line);
            fault.at.column = Some(at.column);
        }
        self.log.add(fault);
    }

    /// The text makes no sense any more.
    pub(super) fn broken(&mut self, mut fault: Fault) {
        fault.at.file = Some(self.file.clone());
        if self.inside_feature && fault.kind() != Code::WrongKind {
            fault.at.item = Some(Item::Feature {
                number: self.features + 1,
                name: None,
            });
        }
        self.log.add(fault);
    }

    /// One top-level value; the features of a collection were streamed before.
    pub(super) fn document(&mut self, found: Found, at: Spot) {
        let mut members = match found {
            Found::Object(members) => members,
            other => {
                let (found, due) = (other.thing(), Object::File);
                return self.add(fault(InGeojson::Stands { found, due }), None, at);
            }
        };
        self.members_of(&members, None, at);
        let known = [&["FeatureCollection", "Feature"], &shape::WORDS[..]].concat();
        let kind = match document_type(type_of(&members).as_ref(), Object::File, &known) {
            Ok(kind) => kind,
            Err(fault) => return self.add(fault, None, at),
        };
        if kind == "FeatureCollection" {
            return self.collection(members.features.as_ref(), at);
        }
        if members.features.is_some() {
            self.add(fault(InGeojson::HoldsFeatures(kind)), None, at);
        }
        self.features += 1;
        if kind == "Feature" {
            self.object(HeldFeature::unread(*members), at);
        } else {
            let geometry = bare(kind, &mut members, at);
            let label = self.item(None);
            let shape = self.shape(Some(geometry), &label);
            self.zone_of(shape, Ok(Properties::default()), &label, at);
        }
    }

    fn collection(&mut self, features: Option<&Found>, at: Spot) {
        let what = match features {
            Some(Found::List) => return,
            Some(other) => InGeojson::FeaturesNoList(other.thing()),
            None => InGeojson::NoFeatures,
        };
        self.add(fault(what), None, at);
    }

    /// One element of `features`.
    pub(super) fn feature(&mut self, found: Found, at: Spot) {
        self.features += 1;
        let label = self.item(None);
        let members = match found {
            Found::Object(members) => members,
            other => {
                let (found, due) = (other.thing(), Object::Feature);
                return self.add(fault(InGeojson::Stands { found, due }), Some(&label), at);
            }
        };
        self.held(HeldFeature::unread(*members), &label, at);
    }

    /// One element of `features` of which something may be read already.
    pub(super) fn held_feature(&mut self, feature: HeldFeature, at: Spot) {
        self.features += 1;
        let label = self.item(None);
        self.held(feature, &label, at);
    }

    fn held(&mut self, feature: HeldFeature, label: &Item, at: Spot) {
        let kind = type_of(&feature.members);
        match document_type(kind.as_ref(), Object::Feature, &["Feature"]) {
            Ok(_) => self.object(feature, at),
            Err(fault) => self.add(fault, Some(label), at),
        }
    }

    /// The members of a Feature, wherever it stood.
    fn object(&mut self, feature: HeldFeature, at: Spot) {
        let HeldFeature {
            mut members,
            shape,
            properties,
        } = feature;
        let properties = properties.unwrap_or_else(|| Properties::read(members.get("properties")));
        let label = self.item(properties.as_ref().ok());
        self.members_of(&members, Some(&label), at);
        let shape = match shape {
            Some(shape) => Met::of(shape.counted(&mut self.counts)),
            None => self.shape(members.take("geometry"), &label),
        };
        self.zone_of(shape, properties, &label, at);
    }

    /// Faults that any object can have.
    fn members_of(&mut self, members: &Members, feature: Option<&Item>, at: Spot) {
        if let Some(name) = members.doubled {
            self.add(fault(InGeojson::MemberTwice(name)), feature, at);
        }
        if let Some(piece) = members.get("crs") {
            let value = serde_json::from_str(&piece.json).unwrap_or(Value::Bool(false));
            if let Err(fault) = crs::check(&value) {
                self.add(fault, feature, piece.at);
            }
        }
    }

    fn zone_of(
        &mut self,
        shape: Met,
        properties: Result<Properties, Fault>,
        label: &Item,
        at: Spot,
    ) {
        match (properties, shape) {
            (Err(fault), _) => self.add(fault, Some(label), at),
            (Ok(properties), Met::Nothing) => {
                self.left_out = Some(label.clone());
                if let Some(name) = properties.of_ice() {
                    self.add(fault(InGeojson::IceUndrawn(name)), Some(label), at);
                }
            }
            (Ok(_), Met::Unread) => self.left_out = Some(label.clone()),
            (Ok(properties), Met::Faulty) => self.zone(Outline::default(), properties, label, at),
            (Ok(properties), Met::Ice(outline)) => self.zone(outline, properties, label, at),
        }
    }

    fn shape(&mut self, geometry: Option<MemberText>, feature: &Item) -> Met {
        let Some(piece) = geometry.filter(|piece| piece.json != "null") else {
            self.counts.skipped.empty += 1;
            return Met::Nothing;
        };
        let start = piece.at;
        let looks_like_ice = piece.json.contains("Polygon");
        match self.shapes.outline(piece, &mut self.counts) {
            Ok(outline) => Met::of(outline),
            Err(fault) => {
                self.add(fault, Some(feature), start);
                if looks_like_ice {
                    Met::Faulty
                } else {
                    Met::Unread
                }
            }
        }
    }

    fn item(&self, properties: Option<&Properties>) -> Item {
        Item::Feature {
            number: self.features,
            name: properties.and_then(Properties::name),
        }
    }
}

fn fault(what: InGeojson) -> Fault {
    Fault::new(what, Place::default())
}
