//! A window cut out of a model, as a GeoTIFF of its own: the same numbers on the same map.

use std::{borrow::Cow, io::Cursor};

use tiff::{
    TiffError,
    encoder::{
        Compression, DeflateLevel, TiffEncoder, TiffValue,
        colortype::{ColorType, Gray32Float, Gray64Float},
    },
    tags::{Tag, Type},
};

use crate::{
    fault::{Fault, Place, files::InFiles, network::InNetwork},
    geometry::{Bounds, LonLat},
    limits::InputLimit,
    raster::{
        geotags::{GDAL_METADATA, GeoTags},
        grid::Grid,
        model::Model,
        reading::Stored,
        terrain::Terrain,
    },
};

/// Cells taken beyond the window, so that heights at its edge have neighbours.
const BEYOND: f64 = 2.0;
/// Positions looked at along each edge of the window: its edges are no straight lines of the raster. Our judgement.
const LOOKS: u32 = 32;
/// Rows of a strip. Our judgement.
const STRIP_ROWS: u32 = 64;
/// Whole numbers up to this are numbers of 32-bit floating point too.
const EXACTLY_SINGLE: u64 = 1 << 24;

/// Columns and rows, from the first to behind the last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct CellWindow {
    columns: (u32, u32),
    rows: (u32, u32),
}

impl Terrain {
    /// The cells of the finest model in a box, and a few round it, as a GeoTIFF with its credit; `None` where it has no
    /// height there. Void stays void; numbers, coordinate system and what is said of heights stay as they are.
    ///
    /// # Errors
    /// The model is no GeoTIFF, the box is too large, or the file turns out to be broken where it is read.
    pub(crate) fn excerpt(
        &self,
        window: Bounds,
        credit: Option<&str>,
    ) -> Result<Option<Vec<u8>>, Fault> {
        let Some(model) = self.models.first() else {
            return Ok(None);
        };
        let place = || Place::file(&model.name);
        let Some(tags) = &model.tags else {
            return Err(Fault::new(InNetwork::NoGeotiff, place()));
        };
        let Some(cells) = model.window(window) else {
            return Ok(None);
        };
        let most = self.limits[InputLimit::WindowCells];
        if cells.count() > most {
            let cells = cells.count();
            return Err(Fault::new(InNetwork::ManyCells { cells, most }, place()));
        }
        let stored = self.stored(model, cells)?;
        if stored.iter().all(Option::is_none) {
            return Ok(None);
        }
        let credit = credit.or(model.credit.as_deref());
        let written = written(&stored, (model.grid, cells), tags, credit);
        let stopped = |why: TiffError| InFiles::Stopped(why.to_string());
        written
            .map(Some)
            .map_err(|why| Fault::new(stopped(why), place()))
    }

    /// The numbers of a window, row by row, read part by part.
    fn stored(&self, model: &Model, cells: CellWindow) -> Result<Vec<Option<Stored>>, Fault> {
        let (left, right) = cells.columns;
        let (top, bottom) = cells.rows;
        let wide = usize::try_from(right - left).unwrap_or(0);
        let mut stored = vec![None; wide * usize::try_from(bottom - top).unwrap_or(0)];
        let (part_columns, part_rows) = model.part_size();
        let mut files = self.files();
        for rows in pieces(cells.rows, part_rows) {
            for columns in pieces(cells.columns, part_columns) {
                for row in rows.0..rows.1 {
                    for column in columns.0..columns.1 {
                        let cell = (i64::from(column), i64::from(row));
                        let at = usize::try_from(row - top).unwrap_or(0) * wide;
                        let at = at + usize::try_from(column - left).unwrap_or(0);
                        if let Some(slot) = stored.get_mut(at) {
                            *slot = model.number(&mut files, cell)?;
                        }
                    }
                }
            }
        }
        Ok(stored)
    }
}

/// A stretch cut where the parts of the file end.
fn pieces((from, to): (u32, u32), size: u32) -> impl Iterator<Item = (u32, u32)> {
    let size = size.max(1);
    let first = from / size;
    let last = to.div_ceil(size);
    (first..last).map(move |part| {
        let begin = part.saturating_mul(size);
        (begin.max(from), begin.saturating_add(size).min(to))
    })
}

impl CellWindow {
    fn count(self) -> u64 {
        let size = |(from, to): (u32, u32)| u64::from(to - from);
        size(self.columns) * size(self.rows)
    }
}

impl Model {
    /// The cells in a box and a few round it; `None` where they lie beside one another.
    fn window(&self, window: Bounds) -> Option<CellWindow> {
        let share = |i: u32| f64::from(i) / f64::from(LOOKS);
        let (low, high) = (window.low, window.high);
        let at = |x: f64, y: f64| {
            LonLat::new(
                low.lon_deg + x * (high.lon_deg - low.lon_deg),
                low.lat_deg + y * (high.lat_deg - low.lat_deg),
            )
        };
        let edges = (0..=LOOKS).flat_map(|i| {
            let along = share(i);
            [
                at(along, 0.0),
                at(along, 1.0),
                at(0.0, along),
                at(1.0, along),
            ]
        });
        let pixels: Vec<(f64, f64)> = edges.filter_map(|at| self.unbounded_pixel(at)).collect();
        let span = |of: fn(&(f64, f64)) -> f64, size: u32| {
            let least = pixels.iter().map(of).fold(f64::INFINITY, f64::min) - BEYOND;
            let most = pixels.iter().map(of).fold(f64::NEG_INFINITY, f64::max) + BEYOND;
            let (from, to) = (whole(least, size), whole(most.ceil(), size));
            (from < to).then_some((from, to))
        };
        Some(CellWindow {
            columns: span(|pixel| pixel.0, self.grid.columns)?,
            rows: span(|pixel| pixel.1, self.grid.rows)?,
        })
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the raster"
)]
fn whole(at: f64, size: u32) -> u32 {
    at.floor().clamp(0.0, f64::from(size)) as u32
}

fn written(
    stored: &[Option<Stored>],
    placed: (Grid, CellWindow),
    tags: &GeoTags,
    credit: Option<&str>,
) -> Result<Vec<u8>, TiffError> {
    let single = stored.iter().flatten().all(|number| match number {
        Stored::Whole(whole) => whole.unsigned_abs() <= EXACTLY_SINGLE,
        Stored::Single(_) => true,
        Stored::Double(_) => false,
    });
    if single {
        encoded::<Gray32Float>(&singles(stored), placed, tags, credit)
    } else {
        encoded::<Gray64Float>(&doubles(stored), placed, tags, credit)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "asked before: whole numbers are small"
)]
fn singles(stored: &[Option<Stored>]) -> Vec<f32> {
    let number = |stored: &Option<Stored>| match stored {
        Some(Stored::Whole(whole)) => *whole as f32,
        Some(Stored::Single(number)) => *number,
        Some(Stored::Double(number)) => *number as f32,
        None => f32::NAN,
    };
    stored.iter().map(number).collect()
}

#[expect(
    clippy::cast_precision_loss,
    reason = "whole heights beyond 2^53 are not believable anyway"
)]
fn doubles(stored: &[Option<Stored>]) -> Vec<f64> {
    let number = |stored: &Option<Stored>| match stored {
        Some(Stored::Whole(whole)) => *whole as f64,
        Some(Stored::Single(number)) => f64::from(*number),
        Some(Stored::Double(number)) => *number,
        None => f64::NAN,
    };
    stored.iter().map(number).collect()
}

fn encoded<C: ColorType>(
    numbers: &[C::Inner],
    (grid, cells): (Grid, CellWindow),
    tags: &GeoTags,
    credit: Option<&str>,
) -> Result<Vec<u8>, TiffError>
where
    [C::Inner]: TiffValue,
{
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes)?
        .with_compression(Compression::Deflate(DeflateLevel::Balanced));
    let (columns, rows) = (
        cells.columns.1 - cells.columns.0,
        cells.rows.1 - cells.rows.0,
    );
    let mut image = encoder.new_image::<C>(columns, rows)?;
    image.rows_per_strip(STRIP_ROWS.min(rows))?;
    let out = image.encoder();
    out.write_tag(Tag::GeoKeyDirectoryTag, &tags.directory[..])?;
    if !tags.doubles.is_empty() {
        out.write_tag(Tag::GeoDoubleParamsTag, &tags.doubles[..])?;
    }
    if let Some(text) = &tags.text {
        out.write_tag(Tag::GeoAsciiParamsTag, TagText(text))?;
    }
    if let Some(metadata) = &tags.metadata {
        out.write_tag(GDAL_METADATA, TagText(metadata))?;
    }
    if let Some(credit) = credit {
        out.write_tag(Tag::Copyright, TagText(credit))?;
    }
    out.write_tag(Tag::GdalNodata, "nan")?;
    let half = if tags.names_centres { 0.5 } else { 0.0 };
    let corner = grid.moved_by_cells(
        f64::from(cells.columns.0) + half,
        f64::from(cells.rows.0) + half,
    );
    let ((x, y), (right, tilt), (lean, down)) = (corner.origin, corner.column, corner.row);
    if tilt == 0.0 && lean == 0.0 && down < 0.0 {
        out.write_tag(Tag::ModelPixelScaleTag, &[right, -down, 0.0][..])?;
        out.write_tag(Tag::ModelTiepointTag, &[0.0, 0.0, 0.0, x, y, 0.0][..])?;
    } else {
        #[rustfmt::skip]
        let matrix = [
            right, lean, 0.0, x,
            tilt, down, 0.0, y,
            0.0, 0.0, 0.0, 0.0,
            0.0, 0.0, 0.0, 1.0,
        ];
        out.write_tag(Tag::ModelTransformationTag, &matrix[..])?;
    }
    image.write_data(numbers)?;
    Ok(bytes.into_inner())
}

/// A text of a tag. The encoder's own takes no letters beyond ASCII, which names and copyright signs are; other programs
/// read them as UTF-8 (common practice, no source).
struct TagText<'t>(&'t str);

impl TiffValue for TagText<'_> {
    const BYTE_LEN: u8 = 1;
    const FIELD_TYPE: Type = Type::ASCII;

    fn count(&self) -> usize {
        self.data().len()
    }

    fn data(&self) -> Cow<'_, [u8]> {
        let plain = self.0.replace('\0', " ");
        Cow::Owned([plain.as_bytes(), b"\0"].concat())
    }
}
