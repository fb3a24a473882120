//! Several models of the ground as one.

use std::fmt;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::raster::{
    chunks::RasterSource,
    kind,
    met::{CellsMet, ModelsAsked},
    model::{Files, Model, containing, surrounding},
    refusal::{note, refused},
};
use crate::{
    fault::{
        Fault,
        terrain::{NoSystem, Told, Unusable},
    },
    geometry::LonLat,
    limits::InputLimits,
};

/// Several models of the ground as one: the finest that has a height at a place answers for it.
///
/// Can be shared between threads; one reads at a time. A copy costs next to nothing: it reads in the same
/// files, and what is asked of the one is counted with what is asked of the other.
///
/// ```
/// use schrund::{geometry::LonLat, raster::Terrain};
///
/// // An `.hgt` tile of 1201 × 1201 heights in which every row holds its own number, counted from the north.
/// let rows: Vec<u8> = (0..1201_i16).flat_map(|row| row.to_be_bytes().repeat(1201)).collect();
/// let mut terrain = Terrain::new();
/// terrain.add("N46E007.hgt", Box::new(std::io::Cursor::new(rows)))?;
/// let height_m = terrain.height_m(LonLat::new(7.25, 46.5))?.expect("inside the tile");
/// assert!((height_m - 600.0).abs() < 1e-6, "row 600 runs through the middle");
/// assert_eq!(terrain.height_m(LonLat::new(9.0, 46.5))?, None, "nothing is made up outside");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Default)]
pub struct Terrain {
    /// Finest first; equal ones in the order they were added.
    pub(super) models: Vec<Arc<Model>>,
    files: Arc<Mutex<Files>>,
    identity: Identity,
    pub(super) limits: InputLimits,
}

/// Which models they are: those of one [`Terrain`] as long as none is added.
#[derive(Clone, Debug, Default)]
pub(crate) struct Identity(Arc<()>);

impl PartialEq for Identity {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

/// A height and who gave it.
///
/// ```
/// use schrund::{geometry::LonLat, raster::Terrain};
///
/// let mut terrain = Terrain::new();
/// let plain = [0x09, 0xC4].repeat(1201 * 1201); // 2500 m everywhere
/// terrain.add("N46E007.hgt", Box::new(std::io::Cursor::new(plain)))?;
/// let height = terrain.sample(LonLat::new(7.25, 46.5))?.expect("inside the tile");
/// assert_eq!((height.height_m, height.model), (2500.0, "N46E007.hgt"));
/// assert!((60.0..93.0).contains(&height.resolution_m), "three seconds of arc, shorter to the east: {height:?}");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SourcedHeight<'a> {
    /// Metres, in the height system of the model.
    pub height_m: f64,
    /// Name of the model, as it was added.
    pub model: &'a str,
    /// Side of a cell of that model, metres on the ground.
    pub resolution_m: f64,
}

impl Terrain {
    /// No model yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The same with other limits for what is added from now on.
    #[must_use]
    pub fn within(self, limits: InputLimits) -> Self {
        Self { limits, ..self }
    }

    /// Adds a model; `name` is the file as the user knows it, and for `.hgt` tiles it says where they lie.
    /// Gives the notes about it: height system, undeclared voids, datum shift.
    ///
    /// # Errors
    /// If the file is broken or cannot be read exactly; the hint is a command that converts it.
    pub fn add(&mut self, name: &str, source: RasterSource) -> Result<Vec<Fault>, Fault> {
        let mut opened = kind::open(name, source, &self.limits)?;
        let mut files = self.files();
        let id = files.parts.len();
        let model = Model::new(id, name, &opened).ok_or_else(|| {
            let why = NoSystem::NotProjectable(opened.system.name.clone());
            refused(name, Unusable::System(why))
        })?;
        files.parts.push(opened.parts);
        files.met.push(CellsMet::default());
        drop(files);
        self.identity = Identity::default();
        self.models.push(Arc::new(model));
        self.models
            .sort_by(|a, b| a.resolution_m.total_cmp(&b.resolution_m));
        if let Some(shift) = &opened.system.shift {
            let (system, shift) = (opened.system.name.clone(), shift.clone());
            opened
                .notes
                .push(note(name, Told::Shifted { system, shift }));
        }
        Ok(opened.notes)
    }

    /// True without any model.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.models.is_empty()
    }

    /// Names and cell sizes in metres of the models, finest first.
    pub fn models(&self) -> impl Iterator<Item = (&str, f64)> {
        self.models
            .iter()
            .map(|m| (m.name.as_str(), m.resolution_m))
    }

    /// Whose the models are, in the words that the files hold (TIFF tag Copyright), in the order of [`Terrain::models`].
    pub fn credits(&self) -> impl Iterator<Item = Option<&str>> {
        self.models.iter().map(|model| model.credit.as_deref())
    }

    /// Height by bilinear interpolation and the model it came from; `None` where no model has all four cells around it.
    ///
    /// # Errors
    /// If a file turns out to be broken where it is read.
    pub fn sample(&self, at: LonLat) -> Result<Option<SourcedHeight<'_>>, Fault> {
        let mut files = self.files();
        for model in &self.models {
            if let Some(height_m) = self.bilinear_m(&mut files, model, at)? {
                return Ok(Some(SourcedHeight {
                    height_m,
                    model: &model.name,
                    resolution_m: model.resolution_m,
                }));
            }
        }
        Ok(None)
    }

    /// Height by bilinear interpolation, metres; `None` where no model has all four cells around it.
    ///
    /// # Errors
    /// If a file turns out to be broken where it is read.
    pub fn height_m(&self, at: LonLat) -> Result<Option<f64>, Fault> {
        Ok(self.sample(at)?.map(|s| s.height_m))
    }

    /// Height of the cell that contains the place, metres; `None` where it is void in every model.
    ///
    /// # Errors
    /// If a file turns out to be broken where it is read.
    pub fn nearest_m(&self, at: LonLat) -> Result<Option<f64>, Fault> {
        let mut files = self.files();
        for model in &self.models {
            let Some(pixel) = model.pixel(at) else {
                continue;
            };
            let height_m = model.cell_m(&mut files, containing(pixel))?;
            files.count(model.id, height_m.is_some());
            if height_m.is_some() {
                return Ok(height_m);
            }
        }
        Ok(None)
    }

    /// Cell size on the ground, metres, of the model that has a height here.
    ///
    /// # Errors
    /// If a file turns out to be broken where it is read.
    pub fn resolution_m(&self, at: LonLat) -> Result<Option<f64>, Fault> {
        Ok(self.sample(at)?.map(|s| s.resolution_m))
    }

    /// Parts (strips or tiles) unpacked so far: the cost of what was asked.
    #[must_use]
    pub fn parts_unpacked(&self) -> u64 {
        self.files().shelf.decoded
    }

    /// What came to light while reading: models that were asked and knew nothing, numbers that are no heights.
    #[must_use]
    pub fn notes(&self) -> Vec<Fault> {
        let files = self.files();
        let met = |m: &Model| files.met.get(m.id).copied().unwrap_or_default();
        self.models
            .iter()
            .flat_map(|m| met(m).notes(&m.name))
            .collect()
    }

    /// Which models they are.
    pub(crate) fn identity(&self) -> Identity {
        self.identity.clone()
    }

    /// What was asked of the models so far, as [`Terrain::notes`] counts it.
    pub(crate) fn asked(&self) -> ModelsAsked {
        ModelsAsked(self.files().met.clone())
    }

    /// Counts as asked once more what is known already.
    pub(crate) fn ask_again(&self, known: &ModelsAsked) {
        let mut files = self.files();
        for (all, more) in files.met.iter_mut().zip(&known.0) {
            all.add(*more);
        }
    }

    pub(super) fn files(&self) -> MutexGuard<'_, Files> {
        self.files.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The same models as if nothing had been asked of them: [`Terrain::notes`] are of what is asked from now on.
    #[must_use]
    pub fn afresh(self) -> Self {
        self.files().met.fill(CellsMet::default());
        self
    }

    pub(super) fn bilinear_m(
        &self,
        files: &mut Files,
        model: &Model,
        at: LonLat,
    ) -> Result<Option<f64>, Fault> {
        let Some(pixel) = model.pixel(at) else {
            return Ok(None);
        };
        let height_m = self.between_m(files, model, pixel)?;
        files.count(model.id, height_m.is_some());
        Ok(height_m)
    }

    fn between_m(
        &self,
        files: &mut Files,
        model: &Model,
        pixel: (f64, f64),
    ) -> Result<Option<f64>, Fault> {
        let mut sum = 0.0;
        for (cell, weight) in surrounding(pixel) {
            if weight <= 0.0 {
                continue;
            }
            let Some(height_m) = self.cell_or_neighbour_m(files, model, cell)? else {
                return Ok(None);
            };
            sum += weight * height_m;
        }
        Ok(Some(sum))
    }

    /// The cell of the model, or the same cell of the lattice in a sheet that continues it.
    fn cell_or_neighbour_m(
        &self,
        files: &mut Files,
        model: &Model,
        cell: (i64, i64),
    ) -> Result<Option<f64>, Fault> {
        if model.has(cell) {
            return model.cell_m(files, cell);
        }
        for sheet in &self.models {
            if let Some(there) = model.same_cell(sheet, cell) {
                return sheet.cell_m(files, there);
            }
        }
        Ok(None)
    }
}

impl fmt::Debug for Terrain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.models()).finish()
    }
}

impl Files {
    fn count(&mut self, model: usize, answered: bool) {
        if let Some(met) = self.met.get_mut(model) {
            met.inside += 1;
            met.answered += u64::from(answered);
        }
    }
}

impl CellsMet {
    fn notes(self, name: &str) -> Vec<Fault> {
        let mut notes = Vec::new();
        if self.inside > 0 && self.answered == 0 {
            notes.push(note(name, Told::NothingHere(self.inside)));
        }
        if self.unbelievable > 0 {
            notes.push(note(name, Told::Unbelievable(self.unbelievable)));
        }
        notes
    }
}
