//! How a GeoTIFF is cut into strips or tiles, and whether all of them are there.

use std::mem;

use tiff::{decoder::ChunkType, tags::Tag};

use crate::fault::{
    Fault,
    terrain::{Damage, Unusable},
};
use crate::raster::{
    chunks::{Layout, PIECE_BYTES, Parts, Plain, RasterSource},
    geotiff::Opening,
    refusal::broken,
};

/// Offsets and lengths of all strips or tiles.
struct Extents {
    at: Vec<u64>,
    bytes: Vec<u64>,
}

impl Opening<'_> {
    /// The layout of band 1, where its parts come from, and the notes met while opening.
    pub(super) fn parts(
        mut self,
        per_cell: u32,
        plain: Plain,
    ) -> Result<(Layout, Parts, Vec<Fault>), Fault> {
        let (columns, rows) = self.size()?;
        let part = self.decoder.chunk_dimensions();
        if part.0 == 0 || part.1 == 0 {
            return Err(broken(self.name, Damage::NoPartSize));
        }
        let count = u64::from(columns.div_ceil(part.0)) * u64::from(rows.div_ceil(part.1));
        let extents = self.extents(count)?;
        let absent = extents.bytes.iter().map(|b| *b == 0).collect();
        let layout = Layout {
            columns,
            rows,
            part,
            per_cell,
            absent,
        };
        let cells = u64::from(part.0.min(columns)) * u64::from(part.1.min(rows));
        let bytes = cells.saturating_mul(u64::from(plain.bytes) * u64::from(per_cell));
        if bytes > PIECE_BYTES && per_cell == 1 && self.is_bare_strips() {
            return self.rows(layout, extents, plain);
        }
        if bytes > self.most_part_bytes {
            return Err(self.refuse(Unusable::BigParts(bytes >> 20)));
        }
        Ok((layout, Parts::Coded(Box::new(self.decoder)), self.notes))
    }

    /// Offsets and lengths, all inside the file.
    fn extents(&mut self, count: u64) -> Result<Extents, Fault> {
        let (at, bytes) = match self.decoder.get_chunk_type() {
            ChunkType::Strip => (Tag::StripOffsets, Tag::StripByteCounts),
            ChunkType::Tile => (Tag::TileOffsets, Tag::TileByteCounts),
        };
        let extents = Extents {
            at: self.table(at)?,
            bytes: self.table(bytes)?,
        };
        let listed = extents.at.len().min(extents.bytes.len());
        if u64::try_from(listed).is_ok_and(|n| n < count) {
            let needed = count;
            return Err(broken(self.name, Damage::FewParts { listed, needed }));
        }
        let ends = extents
            .at
            .iter()
            .zip(&extents.bytes)
            .map(|(at, n)| at.saturating_add(*n));
        let end = ends.max().unwrap_or(0);
        if end > self.length {
            let cut_off = Damage::CutOff {
                bytes: self.length,
                reach: end,
            };
            return Err(broken(self.name, cut_off));
        }
        Ok(extents)
    }

    fn table(&mut self, tag: Tag) -> Result<Vec<u64>, Fault> {
        let table = self.decoder.find_tag_unsigned_vec(tag);
        table
            .ok()
            .flatten()
            .ok_or_else(|| broken(self.name, Damage::NoTable))
    }

    /// Uncompressed strips without a predictor: rows can be picked out.
    fn is_bare_strips(&mut self) -> bool {
        matches!(self.decoder.get_chunk_type(), ChunkType::Strip)
            && self.unsigned(Tag::Compression).unwrap_or(1) == 1
            && self.unsigned(Tag::Predictor).unwrap_or(1) == 1
    }

    /// Big uncompressed strips, read in pieces of whole rows.
    fn rows(
        mut self,
        mut layout: Layout,
        extents: Extents,
        plain: Plain,
    ) -> Result<(Layout, Parts, Vec<Fault>), Fault> {
        let row_bytes = u64::from(layout.columns) * u64::from(plain.bytes);
        let strip_rows = layout.part.1.min(layout.rows);
        self.strips_are_full(&layout, &extents, row_bytes)?;
        let piece = piece_rows(strip_rows, row_bytes);
        let pieces_in_strip = usize::try_from(strip_rows / piece).unwrap_or(1);
        layout.absent = layout
            .absent
            .iter()
            .flat_map(|a| std::iter::repeat_n(*a, pieces_in_strip))
            .collect();
        layout.part.1 = piece;
        let source: RasterSource = mem::replace(self.decoder.inner(), Box::new(std::io::empty()));
        Ok((
            layout,
            Parts::Rows {
                source,
                strips: extents.at,
                strip_rows,
                plain,
            },
            self.notes,
        ))
    }

    fn strips_are_full(
        &self,
        layout: &Layout,
        extents: &Extents,
        row_bytes: u64,
    ) -> Result<(), Fault> {
        let mut left = u64::from(layout.rows);
        for bytes in &extents.bytes {
            let rows = left.min(u64::from(layout.part.1));
            if *bytes != 0 && *bytes < rows.saturating_mul(row_bytes) {
                let bytes = *bytes;
                return Err(broken(self.name, Damage::ShortStrip { bytes, rows }));
            }
            left -= rows;
        }
        Ok(())
    }
}

/// The largest divisor of the strip that is not above the size of a piece.
fn piece_rows(strip_rows: u32, row_bytes: u64) -> u32 {
    let most = u32::try_from(PIECE_BYTES / row_bytes.max(1)).unwrap_or(u32::MAX);
    let most = most.clamp(1, strip_rows.max(1));
    (1..=most)
        .rev()
        .find(|n| strip_rows.is_multiple_of(*n))
        .unwrap_or(1)
}
