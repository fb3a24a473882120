//! A file while it is read: from its top level down to each feature.

use serde_json::Value;

use super::{
    Given, crs,
    document::{Found, Members, Piece},
    gap::Missing,
    kind::{bare, document_type, type_of},
    log::Log,
    nowhere,
    number::GAP,
    properties::Properties,
    rings::{self, Mended},
    shape::{self, Skipped},
    text::Spot,
};
use crate::{
    fault::{Code, Place, Problem},
    trip::zone::{Outline, Zone},
};

const COLLECTION: &str =
    "a file of zones is {\"type\": \"FeatureCollection\", \"features\": [ … ]}";

/// A file while it is read.
pub(super) struct Reading {
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
    pub(super) skipped: Skipped,
    pub(super) mended: Mended,
    pub(super) missing: Missing,
}

/// What became of a geometry.
enum Shape {
    Ice(Outline),
    Nothing,
    /// It was complained about, but a polygon was meant, so its properties matter.
    Faulty,
}

impl Reading {
    pub(super) fn new(file: &str, given: Given) -> Self {
        let mut reading = Self {
            file: file.to_owned(),
            given,
            log: Log::new(),
            zones: Vec::new(),
            features: 0,
            numbers: 0,
            inside_feature: false,
            skipped: Skipped::default(),
            mended: Mended::default(),
            missing: Missing::default(),
        };
        if let Some(gap_m) = given.gap_m.filter(|gap_m| !GAP.admits(*gap_m)) {
            let says = format!(
                "{} {gap_m} m is outside {} to {} m",
                GAP.what, GAP.min, GAP.max
            );
            let problem = Problem::new(Code::BadNumber, Place::item("--gap"), says);
            reading.log.add(problem.hint(GAP.cure()));
        }
        reading
    }

    /// Files a complaint, with the file, the feature and where that begins.
    pub(super) fn add(&mut self, mut problem: Problem, label: Option<&str>, at: Spot) {
        problem.place.file = Some(self.file.clone());
        problem.place.item = label.map(str::to_owned);
        if problem.place.line.is_none() {
            problem.place.line = Some(at.line);
            problem.place.column = Some(at.column);
        }
        self.log.add(problem);
    }

    /// The text makes no sense any more.
    pub(super) fn broken(&mut self, mut problem: Problem) {
        problem.place.file = Some(self.file.clone());
        if self.inside_feature && problem.code != Code::WrongKind {
            problem.place.item = Some(format!("feature {}", self.features + 1));
        }
        self.log.add(problem);
    }

    /// One top-level value; the features of a collection were streamed before.
    pub(super) fn document(&mut self, found: Found, at: Spot) {
        let mut members = match found {
            Found::Object(members) => members,
            other => {
                let says = format!("{} stands where a GeoJSON object should", other.kind());
                let problem = Problem::new(Code::BadGeojson, nowhere(), says);
                return self.add(problem.hint(COLLECTION), None, at);
            }
        };
        self.members_of(&members, None, at);
        let known = [&["FeatureCollection", "Feature"], &shape::WORDS[..]].concat();
        let kind = match document_type(type_of(&members).as_ref(), "file", &known) {
            Ok(kind) => kind,
            Err(problem) => return self.add(problem, None, at),
        };
        if kind == "FeatureCollection" {
            return self.collection(members.features.as_ref(), at);
        }
        if members.features.is_some() {
            let says = format!("a {kind} holds `features`");
            let problem = Problem::new(Code::BadGeojson, nowhere(), says);
            self.add(
                problem.hint("if it is a collection, its `type` is \"FeatureCollection\""),
                None,
                at,
            );
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
        let says = match features {
            Some(Found::List) => return,
            Some(other) => format!("`features` is {}, not a list", other.kind()),
            None => "the FeatureCollection has no `features`".to_owned(),
        };
        self.add(
            Problem::new(Code::BadGeojson, nowhere(), says).hint(COLLECTION),
            None,
            at,
        );
    }

    /// One element of `features`.
    pub(super) fn feature(&mut self, found: Found, at: Spot) {
        self.features += 1;
        let label = self.label(None);
        let members = match found {
            Found::Object(members) => members,
            other => {
                let says = format!("{} stands where a Feature should", other.kind());
                let problem = Problem::new(Code::BadGeojson, nowhere(), says);
                return self.add(problem.hint("take it out of the list"), Some(&label), at);
            }
        };
        match document_type(type_of(&members).as_ref(), "feature", &["Feature"]) {
            Ok(_) => self.object(*members, at),
            Err(problem) => self.add(problem, Some(&label), at),
        }
    }

    /// The members of a Feature, wherever it stood.
    fn object(&mut self, mut members: Members, at: Spot) {
        let properties = Properties::read(members.get("properties"));
        let label = self.label(properties.as_ref().ok());
        self.members_of(&members, Some(&label), at);
        self.zone_of(members.take("geometry"), properties, at);
    }

    /// Faults that any object can have.
    fn members_of(&mut self, members: &Members, label: Option<&str>, at: Spot) {
        if let Some(name) = members.doubled {
            let says = format!("`{name}` stands there twice");
            let problem = Problem::new(Code::BadGeojson, nowhere(), says);
            self.add(problem.hint("keep the one that is right"), label, at);
        }
        if let Some(piece) = members.get("crs") {
            let value = serde_json::from_str(&piece.json).unwrap_or(Value::Bool(false));
            if let Err(problem) = crs::check(&value, &self.file) {
                self.add(problem, label, piece.at);
            }
        }
    }

    fn zone_of(
        &mut self,
        geometry: Option<Piece>,
        properties: Result<Properties, Problem>,
        at: Spot,
    ) {
        let label = self.label(properties.as_ref().ok());
        let shape = self.shape(geometry, &label);
        match (properties, shape) {
            (Err(problem), _) => self.add(problem, Some(&label), at),
            (Ok(_), Shape::Nothing) => {}
            (Ok(properties), Shape::Faulty) => {
                self.zone(Outline::default(), properties, &label, at)
            }
            (Ok(properties), Shape::Ice(outline)) => self.zone(outline, properties, &label, at),
        }
    }

    fn shape(&mut self, geometry: Option<Piece>, label: &str) -> Shape {
        let Some(piece) = geometry.filter(|piece| piece.json != "null") else {
            self.skipped.empty += 1;
            return Shape::Nothing;
        };
        let start = piece.at;
        let mut polygons = Vec::new();
        let looks_like_ice = piece.json.contains("Polygon");
        let read = shape::read(&piece, &self.file, &mut self.skipped, &mut polygons);
        drop(piece);
        let convert = || crs::convert_unnamed(&self.file);
        let outline = read.and_then(|()| rings::outline(polygons, &mut self.mended, &convert));
        match outline {
            Ok(outline) if outline.polygons.is_empty() => Shape::Nothing,
            Ok(outline) => Shape::Ice(outline),
            Err(problem) => {
                self.add(problem, Some(label), start);
                if looks_like_ice {
                    Shape::Faulty
                } else {
                    Shape::Nothing
                }
            }
        }
    }

    fn label(&self, properties: Option<&Properties>) -> String {
        match properties.and_then(Properties::name) {
            Some(name) => format!("feature {} \"{name}\"", self.features),
            None => format!("feature {}", self.features),
        }
    }
}
