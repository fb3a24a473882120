//! A file while it is read: from its top level down to each feature.

use serde_json::Value;

use super::{
    crs,
    gap::Missing,
    given::Given,
    kind::{bare, document_type, type_of},
    known::{Counts, KnownShapes, ShapesOfFile},
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

/// What became of a geometry.
enum Shape {
    Ice(Outline),
    Nothing,
    /// It was complained about, but a polygon was meant, so its properties matter.
    Faulty,
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
            self.object(*members, at);
        } else {
            let geometry = bare(kind, &mut members, at);
            self.zone_of(Some(geometry), Ok(Properties::default()), at);
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
        match document_type(type_of(&members).as_ref(), Object::Feature, &["Feature"]) {
            Ok(_) => self.object(*members, at),
            Err(fault) => self.add(fault, Some(&label), at),
        }
    }

    /// The members of a Feature, wherever it stood.
    fn object(&mut self, mut members: Members, at: Spot) {
        let properties = Properties::read(members.get("properties"));
        let label = self.item(properties.as_ref().ok());
        self.members_of(&members, Some(&label), at);
        self.zone_of(members.take("geometry"), properties, at);
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
        geometry: Option<MemberText>,
        properties: Result<Properties, Fault>,
        at: Spot,
    ) {
        let label = self.item(properties.as_ref().ok());
        let shape = self.shape(geometry, &label);
        match (properties, shape) {
            (Err(fault), _) => self.add(fault, Some(&label), at),
            (Ok(_), Shape::Nothing) => self.left_out = Some(label),
            (Ok(properties), Shape::Faulty) => {
                self.zone(Outline::default(), properties, &label, at)
            }
            (Ok(properties), Shape::Ice(outline)) => self.zone(outline, properties, &label, at),
        }
    }

    fn shape(&mut self, geometry: Option<MemberText>, feature: &Item) -> Shape {
        let Some(piece) = geometry.filter(|piece| piece.json != "null") else {
            self.counts.skipped.empty += 1;
            return Shape::Nothing;
        };
        let start = piece.at;
        let looks_like_ice = piece.json.contains("Polygon");
        match self.shapes.outline(piece, &mut self.counts) {
            Ok(outline) if outline.polygons.is_empty() => Shape::Nothing,
            Ok(outline) => Shape::Ice(outline),
            Err(fault) => {
                self.add(fault, Some(feature), start);
                if looks_like_ice {
                    Shape::Faulty
                } else {
                    Shape::Nothing
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
