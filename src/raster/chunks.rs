//! The parts a raster file is cut into, decoded one at a time and kept on a shelf of bounded size.

use std::{
    collections::BTreeMap,
    io::{ErrorKind, Read, Seek, SeekFrom},
    sync::Arc,
};

use tiff::{
    TiffError,
    decoder::{Decoder, DecodingResult},
};

use crate::{fault::terrain::Unpacking, raster::reading::Stored};

/// Anything a terrain model can be read from: the library itself opens no file.
///
/// ```
/// use schrund::raster::{ReadSeek, Terrain};
///
/// fn notes(name: &str, from: impl ReadSeek + 'static) -> Result<usize, schrund::fault::Fault> {
///     Ok(Terrain::new().add(name, Box::new(from))?.len())
/// }
/// let tile = std::io::Cursor::new(vec![0; 2 * 1201 * 1201]);
/// assert_eq!(notes("N46E007.hgt", tile)?, 1, "a tile comes with a note about its height system");
/// assert!(notes("N46E007.hgt", std::io::empty()).is_err(), "nothing is no tile");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
pub trait ReadSeek: Read + Seek + Send {}
impl<T: Read + Seek + Send> ReadSeek for T {}

/// A boxed source, as [`super::Terrain::add`] takes it.
///
/// ```
/// use schrund::{raster::RasterSource, read::{input::Input, lay}};
///
/// let tile = |height: u8| -> RasterSource { Box::new(std::io::Cursor::new([0, height].repeat(1201 * 1201))) };
/// let sheets = vec![Input::new("N46E007.hgt", tile(100)), Input::new("N46E008.hgt", tile(200))];
/// let terrain = lay::terrain(sheets)?.value;
/// let seam = schrund::geometry::LonLat::new(8.0, 46.5);
/// assert_eq!(terrain.models().count(), 2);
/// assert_eq!(terrain.height_m(seam).map_err(|fault| vec![fault])?, Some(100.0), "both have it; the first answers");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub type RasterSource = Box<dyn ReadSeek>;

/// Decoded parts kept at once over all models, bytes (our judgement: a route in a 300 MB model stays below 60 MB).
const SHELF_BYTES: usize = 24 << 20;

/// Uncompressed strips above this are read in pieces, bytes (our judgement).
pub(crate) const PIECE_BYTES: u64 = 1 << 20;

/// How the rows and columns of band 1 are spread over parts.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Layout {
    /// Columns of the raster.
    pub(crate) columns: u32,
    /// Rows of the raster.
    pub(crate) rows: u32,
    /// Columns and rows of one whole part.
    pub(crate) part: (u32, u32),
    /// Numbers stored for each cell: bands, if they lie side by side.
    pub(crate) per_cell: u32,
    /// Parts that the file leaves out: all void.
    pub(crate) absent: Vec<bool>,
}

impl Layout {
    /// Part that holds a cell, and where in it.
    pub(crate) fn find(&self, column: u32, row: u32) -> (u32, usize) {
        let (width, height) = (self.part.0.max(1), self.part.1.max(1));
        let across = self.columns.div_ceil(width);
        let (across_at, down_at) = (column / width, row / height);
        let wide = width.min(self.columns - across_at * width);
        let inside = u64::from(row % height) * u64::from(wide) + u64::from(column % width);
        let inside = usize::try_from(inside * u64::from(self.per_cell)).unwrap_or(usize::MAX);
        (
            down_at.saturating_mul(across).saturating_add(across_at),
            inside,
        )
    }

    fn is_absent(&self, part: u32) -> bool {
        usize::try_from(part).is_ok_and(|i| self.absent.get(i) == Some(&true))
    }
}

/// A type of number in an uncompressed file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Plain {
    /// Bytes each.
    pub(crate) bytes: u8,
    /// What they are.
    pub(crate) kind: NumberFamily,
    /// Most significant byte first.
    pub(crate) big_endian: bool,
}

/// Family of a number type.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NumberFamily {
    /// Signed whole numbers.
    Signed,
    /// Unsigned whole numbers.
    Unsigned,
    /// Floating point.
    Float,
}

/// Where parts come from.
pub(crate) enum Parts {
    /// The tiff library decodes them.
    Coded(Box<Decoder<RasterSource>>),
    /// Uncompressed rows, cut into pieces of `layout.part.1` rows; `strip_rows` of them make a strip.
    Rows {
        /// The file.
        source: RasterSource,
        /// Byte where each strip begins.
        strips: Vec<u64>,
        /// Rows in a strip.
        strip_rows: u32,
        /// Type of its numbers.
        plain: Plain,
    },
}

/// The parts decoded last, over all models; the one unused for longest goes first.
#[derive(Default)]
pub(crate) struct Shelf {
    parts: BTreeMap<(usize, u32), (u64, Arc<DecodingResult>)>,
    bytes: usize,
    clock: u64,
    /// Parts decoded so far.
    pub(crate) decoded: u64,
}

impl Shelf {
    /// The stored number of a cell, or `None` in a part that the file leaves out.
    pub(crate) fn stored(
        &mut self,
        model: usize,
        layout: &Layout,
        parts: &mut Parts,
        (column, row): (u32, u32),
    ) -> Result<Option<Stored>, Unpacking> {
        let (part, inside) = layout.find(column, row);
        if layout.is_absent(part) {
            return Ok(None);
        }
        let decoded = match self.take(model, part) {
            Some(decoded) => decoded,
            None => self.put(model, part, Arc::new(parts.decode(layout, part)?)),
        };
        number(&decoded, inside)
            .map(Some)
            .ok_or(Unpacking::Short(part))
    }

    fn take(&mut self, model: usize, part: u32) -> Option<Arc<DecodingResult>> {
        self.clock += 1;
        let (used, decoded) = self.parts.get_mut(&(model, part))?;
        *used = self.clock;
        Some(Arc::clone(decoded))
    }

    fn put(
        &mut self,
        model: usize,
        part: u32,
        decoded: Arc<DecodingResult>,
    ) -> Arc<DecodingResult> {
        self.bytes += bytes_of(&decoded);
        self.decoded += 1;
        self.parts
            .insert((model, part), (self.clock, Arc::clone(&decoded)));
        while self.bytes > SHELF_BYTES && self.parts.len() > 1 {
            self.drop_oldest();
        }
        decoded
    }

    fn drop_oldest(&mut self) {
        let oldest = self
            .parts
            .iter()
            .min_by_key(|(_, (used, _))| *used)
            .map(|(k, _)| *k);
        if let Some((_, gone)) = oldest.and_then(|key| self.parts.remove(&key)) {
            self.bytes = self.bytes.saturating_sub(bytes_of(&gone));
        }
    }
}

/// Whether the file ended where more was to come.
pub(crate) fn ends_early(error: &TiffError) -> bool {
    matches!(error, TiffError::IoError(e) if e.kind() == ErrorKind::UnexpectedEof)
}

impl Parts {
    fn decode(&mut self, layout: &Layout, part: u32) -> Result<DecodingResult, Unpacking> {
        match self {
            Self::Coded(decoder) => decoder.read_chunk(part).map_err(|e| match e {
                e if ends_early(&e) => Unpacking::Short(part),
                e => Unpacking::Decoder(e.to_string()),
            }),
            Self::Rows {
                source,
                strips,
                strip_rows,
                plain,
            } => {
                let from = piece(layout, strips, *strip_rows, *plain, part)
                    .ok_or(Unpacking::Absent(part))?;
                let mut bytes = vec![0; from.1];
                source
                    .seek(SeekFrom::Start(from.0))
                    .and_then(|_| source.read_exact(&mut bytes))
                    .map_err(|e| match e.kind() {
                        ErrorKind::UnexpectedEof => Unpacking::Short(part),
                        _ => Unpacking::Reading(from.0, e.to_string()),
                    })?;
                Ok(plain.numbers(&bytes))
            }
        }
    }
}

/// First byte and length of a piece of rows. Pieces never cross a strip: `strip_rows` is a multiple of the piece.
fn piece(
    layout: &Layout,
    strips: &[u64],
    strip_rows: u32,
    plain: Plain,
    part: u32,
) -> Option<(u64, usize)> {
    let first_row = part.checked_mul(layout.part.1)?;
    let rows = layout.part.1.min(layout.rows.checked_sub(first_row)?);
    let row_bytes = u64::from(layout.columns) * u64::from(plain.bytes);
    let strip = strips.get(usize::try_from(first_row / strip_rows).ok()?)?;
    let at = strip.checked_add(u64::from(first_row % strip_rows).checked_mul(row_bytes)?)?;
    Some((
        at,
        usize::try_from(u64::from(rows).checked_mul(row_bytes)?).ok()?,
    ))
}

macro_rules! decode {
    ($bytes:expr, $big:expr, $type:ty, $variant:ident) => {{
        let (words, _) = $bytes.as_chunks::<{ size_of::<$type>() }>();
        let one = if $big {
            <$type>::from_be_bytes
        } else {
            <$type>::from_le_bytes
        };
        DecodingResult::$variant(words.iter().map(|w| one(*w)).collect())
    }};
}

impl Plain {
    fn numbers(self, bytes: &[u8]) -> DecodingResult {
        let big = self.big_endian;
        match (self.kind, self.bytes) {
            (NumberFamily::Signed, 2) => decode!(bytes, big, i16, I16),
            (NumberFamily::Signed, 4) => decode!(bytes, big, i32, I32),
            (NumberFamily::Signed, _) => decode!(bytes, big, i64, I64),
            (NumberFamily::Unsigned, 2) => decode!(bytes, big, u16, U16),
            (NumberFamily::Unsigned, 4) => decode!(bytes, big, u32, U32),
            (NumberFamily::Unsigned, _) => decode!(bytes, big, u64, U64),
            (NumberFamily::Float, 4) => decode!(bytes, big, f32, F32),
            (NumberFamily::Float, _) => decode!(bytes, big, f64, F64),
        }
    }
}

fn number(decoded: &DecodingResult, at: usize) -> Option<Stored> {
    Some(match decoded {
        DecodingResult::I16(v) => Stored::Whole(i64::from(*v.get(at)?)),
        DecodingResult::U16(v) => Stored::Whole(i64::from(*v.get(at)?)),
        DecodingResult::I32(v) => Stored::Whole(i64::from(*v.get(at)?)),
        DecodingResult::U32(v) => Stored::Whole(i64::from(*v.get(at)?)),
        DecodingResult::I64(v) => Stored::Whole(*v.get(at)?),
        DecodingResult::U64(v) => Stored::Whole(i64::try_from(*v.get(at)?).unwrap_or(i64::MAX)),
        DecodingResult::F32(v) => Stored::Single(*v.get(at)?),
        DecodingResult::F64(v) => Stored::Double(*v.get(at)?),
        DecodingResult::U8(_) | DecodingResult::I8(_) | DecodingResult::F16(_) => return None,
    })
}

fn bytes_of(decoded: &DecodingResult) -> usize {
    match decoded {
        DecodingResult::U8(v) => v.len(),
        DecodingResult::I8(v) => v.len(),
        DecodingResult::U16(v) => 2 * v.len(),
        DecodingResult::I16(v) => 2 * v.len(),
        DecodingResult::F16(v) => 2 * v.len(),
        DecodingResult::U32(v) => 4 * v.len(),
        DecodingResult::I32(v) => 4 * v.len(),
        DecodingResult::F32(v) => 4 * v.len(),
        DecodingResult::U64(v) => 8 * v.len(),
        DecodingResult::I64(v) => 8 * v.len(),
        DecodingResult::F64(v) => 8 * v.len(),
    }
}
