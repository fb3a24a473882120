//! Geometries that were read before, for those who read a file again with little of it changed. It changes no answer.

use std::{
    collections::HashMap,
    sync::{Mutex, MutexGuard, PoisonError},
};

use super::{
    members::MemberText,
    positions::WrittenPolygons,
    rings::{self, Mended, Numbers},
    shape,
};
use crate::{
    fault::{Fault, geojson::NotPolygons},
    trip::zone::Outline,
};

/// Geometries by the file they stood in and by their text: of each file those of its last reading.
///
/// ```
/// use schrund::read::geojson::{Given, KnownShapes, zones, zones_again};
///
/// let ice = r#"{"type": "Polygon", "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}"#;
/// let (given, known) = (Given { gap_m: Some(6.0) }, KnownShapes::default());
/// let again = || zones_again("ice.geojson", ice.as_bytes(), &given, &known);
/// assert_eq!(again()?, zones("ice.geojson", ice.as_bytes(), &given)?);
/// assert_eq!((known.len(), again()?), (1, again()?));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug, Default)]
pub struct KnownShapes(Mutex<HashMap<String, Shapes>>);

type Shapes = HashMap<String, Shape>;

impl KnownShapes {
    /// How many geometries are known.
    #[must_use]
    pub fn len(&self) -> usize {
        self.all().values().map(HashMap::len).sum()
    }

    /// Whether none is.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Forgets the geometries of all other files.
    pub fn only(&self, files: &[&str]) {
        self.all().retain(|file, _| files.contains(&file.as_str()));
    }

    fn all(&self) -> MutexGuard<'_, HashMap<String, Shapes>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// What was left out of geometries, and what was mended in them.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Counts {
    pub(super) skipped: NotPolygons,
    pub(super) mended: Mended,
    tangled: usize,
    /// Vertices of all outlines.
    vertices: usize,
}

/// One geometry that makes sense.
#[derive(Debug)]
pub(super) struct Shape {
    outline: Outline,
    counts: Counts,
    /// Rings that cross themselves, where they were looked for.
    tangled: Option<usize>,
}

/// The geometries of one file while it is read.
#[derive(Debug, Default)]
pub(super) struct ShapesOfFile<'k> {
    known: Option<&'k KnownShapes>,
    before: Shapes,
    now: Shapes,
}

impl<'k> ShapesOfFile<'k> {
    /// Of a file that may be known.
    pub(super) fn of(file: &str, known: Option<&'k KnownShapes>) -> Self {
        let before = known.and_then(|known| known.all().remove(file));
        Self {
            known,
            before: before.unwrap_or_default(),
            now: Shapes::default(),
        }
    }

    /// The outline of a geometry; what was left out and mended of it is counted.
    ///
    /// # Errors
    /// It is no geometry: that is never known.
    pub(super) fn outline(
        &mut self,
        piece: MemberText,
        counts: &mut Counts,
    ) -> Result<Outline, Fault> {
        if self.known.is_none() {
            return Ok(Shape::read(&piece, counts)?.counted(counts));
        }
        let known = self.before.remove_entry(&piece.json);
        let known = known.or_else(|| self.now.remove_entry(&piece.json));
        let (json, mut shape) = match known {
            Some(known) => known,
            None => {
                let shape = Shape::read(&piece, counts)?;
                (piece.json, shape)
            }
        };
        shape.count(counts);
        let outline = shape.outline.clone();
        self.now.insert(json, shape);
        Ok(outline)
    }

    /// Whether geometries are known by their text.
    pub(super) fn remembers(&self) -> bool {
        self.known.is_some()
    }

    /// Keeps them for the next reading.
    pub(super) fn keep(self, file: &str) {
        if let Some(known) = self.known {
            known.all().insert(file.to_owned(), self.now);
        }
    }
}

/// Files with more vertices are not examined for tangles, for the count is a courtesy and must cost no time; our
/// judgement.
const MOST_VERTICES: usize = 200_000;

impl Shape {
    /// Reads a geometry, and counts what it would count if it made sense where it does not.
    fn read(piece: &MemberText, so_far: &mut Counts) -> Result<Self, Fault> {
        let mut counts = Counts::default();
        let mut polygons = Vec::new();
        let read = shape::read(piece, &mut counts.skipped, &mut polygons);
        let read = read.and_then(|()| Self::of(polygons, &mut counts));
        read.inspect_err(|_| so_far.add(&counts))
    }

    /// That of polygons with a ring each.
    fn of<P: Numbers>(polygons: Vec<Vec<Vec<P>>>, counts: &mut Counts) -> Result<Self, Fault> {
        let outline = rings::outline(polygons, &mut counts.mended)?;
        counts.vertices = outline.vertices();
        Ok(Self {
            outline,
            counts: *counts,
            tangled: None,
        })
    }

    /// That of polygons as they were written, where nothing is wrong with it.
    pub(super) fn written(polygons: WrittenPolygons) -> Option<Self> {
        let mut counts = Counts::default();
        let mut ringed = Vec::with_capacity(polygons.len());
        shape::take(polygons, &mut counts.skipped, &mut ringed);
        Self::of(ringed, &mut counts).ok()
    }

    /// The outline, when it is counted.
    pub(super) fn counted(mut self, counts: &mut Counts) -> Outline {
        self.count(counts);
        self.outline
    }

    fn count(&mut self, counts: &mut Counts) {
        counts.add(&self.counts);
        if counts.vertices <= MOST_VERTICES {
            let outline = &self.outline;
            counts.tangled += *self.tangled.get_or_insert_with(|| outline.tangled_rings());
        }
    }
}

impl Counts {
    /// Rings that cross themselves, where the file is not too large to look for them.
    pub(super) fn tangled(&self) -> usize {
        if self.vertices > MOST_VERTICES {
            0
        } else {
            self.tangled
        }
    }

    fn add(&mut self, more: &Self) {
        let NotPolygons {
            points,
            lines,
            empty,
        } = more.skipped;
        self.skipped.points += points;
        self.skipped.lines += lines;
        self.skipped.empty += empty;
        self.mended.add(&more.mended);
        self.vertices += more.vertices;
    }
}
