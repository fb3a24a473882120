//! Opening a GeoTIFF: everything that decides whether band 1 can be read exactly as heights.

use std::io::SeekFrom;

use tiff::{
    TiffError,
    decoder::{Decoder, Limits},
    tags::{ByteOrder, Tag},
};

use crate::fault::{
    Fault,
    terrain::{Coding, Damage, NoHeights, Picture, Told, Unusable},
};
use crate::limits::{InputLimit, InputLimits};
use crate::raster::{
    chunks::{NumberFamily, Plain, RasterSource, ends_early},
    geokeys::GeoKeys,
    geotags::{GDAL_METADATA, GeoTags},
    metadata::BandNotes,
    model::Opened,
    placing::Placing,
    reading::{Nodata, Reading},
    refusal::{broken, note, refused},
};

/// Characters of a credit that are kept. Our judgement: a sentence or two.
const LONGEST_CREDIT: usize = 500;

/// Directories looked at in search of a mask (our judgement; overviews are fewer than 20).
const MOST_DIRECTORIES: usize = 64;

/// A file while it is being opened.
pub(super) struct Opening<'a> {
    pub(super) name: &'a str,
    pub(super) decoder: Decoder<RasterSource>,
    pub(super) length: u64,
    pub(super) most_part_bytes: u64,
    pub(super) notes: Vec<Fault>,
}

/// The model in a GeoTIFF of `length` bytes.
pub(crate) fn open(
    name: &str,
    mut source: RasterSource,
    (length, limits): (u64, &InputLimits),
) -> Result<Opened, Fault> {
    let rewound = source.seek(SeekFrom::Start(0));
    rewound.map_err(|e| broken(name, Damage::Unread(e.to_string())))?;
    let decoder = Decoder::new(source)
        .map_err(|e| unreadable(name, length, &e))?
        .with_limits(of_decoder(limits));
    let file = Opening {
        name,
        decoder,
        length,
        most_part_bytes: limits.bytes(InputLimit::PartMib),
        notes: Vec::new(),
    };
    file.model()
}

fn of_decoder(limits: &InputLimits) -> Limits {
    let memory = |limit| usize::try_from(limits.bytes(limit)).unwrap_or(usize::MAX);
    let part = memory(InputLimit::PartMib);
    let mut decoder = Limits::default();
    decoder.decoding_buffer_size = part;
    decoder.intermediate_buffer_size = part;
    decoder.ifd_value_size = memory(InputLimit::TableMib);
    decoder
}

fn unreadable(name: &str, length: u64, error: &TiffError) -> Fault {
    match error {
        error if ends_early(error) => broken(name, Damage::Ends(length)),
        TiffError::UnsupportedError(e) => refused(name, Unusable::Tiff(e.to_string())),
        TiffError::LimitsExceeded => refused(name, Unusable::BigTables),
        other => broken(name, Damage::NotWhole(other.to_string())),
    }
}

impl Opening<'_> {
    fn model(mut self) -> Result<Opened, Fault> {
        self.coding()?;
        let metadata = self.metadata()?;
        let per_cell = self.bands(&metadata)?;
        let plain = self.numbers()?;
        self.mask()?;
        let (tags, keys) = self.geo_tags();
        let credit = self.credit();
        let system = keys
            .system()
            .map_err(|why| self.refuse(Unusable::System(why)))?;
        let (columns, rows) = self.size()?;
        let grid = self.placing(&keys).grid(columns, rows);
        let grid = grid.map_err(|why| self.refuse(Unusable::Placing(why)))?;
        let reading = self.reading(&keys, &metadata)?;
        let (layout, parts, notes) = self.parts(per_cell, plain)?;
        Ok(Opened {
            system,
            grid,
            reading,
            layout,
            parts,
            notes,
            tags: Some(tags),
            credit,
        })
    }

    pub(super) fn refuse(&self, why: Unusable) -> Fault {
        refused(self.name, why)
    }

    pub(super) fn unsigned(&mut self, tag: Tag) -> Option<u64> {
        self.decoder.find_tag_unsigned(tag).ok()?
    }

    pub(super) fn size(&mut self) -> Result<(u32, u32), Fault> {
        self.decoder
            .dimensions()
            .map_err(|e| unreadable(self.name, self.length, &e))
    }

    /// Compression and predictor. Numbers of the TIFF 6 specification and its registered additions.
    fn coding(&mut self) -> Result<(), Fault> {
        let coding = match self.unsigned(Tag::Compression).unwrap_or(1) {
            1 | 5 | 8 | 32946 | 32773 => return Ok(()),
            6 | 7 => Coding::Jpeg,
            34887 => Coding::Lerc,
            50000 => Coding::Zstandard,
            50001 => Coding::WebP,
            34925 => Coding::Lzma,
            other => Coding::Other(other),
        };
        Err(self.refuse(Unusable::Coding(coding)))
    }

    fn metadata(&mut self) -> Result<BandNotes, Fault> {
        let Some(text) = self.text(GDAL_METADATA) else {
            return Ok(BandNotes::default());
        };
        BandNotes::parse(&text).map_err(|e| broken(self.name, Damage::Metadata(e)))
    }

    /// How many numbers lie side by side for a cell; more than one band only if the first says that it is heights.
    fn bands(&mut self, metadata: &BandNotes) -> Result<u32, Fault> {
        match self.unsigned(Tag::PhotometricInterpretation) {
            Some(1) => {}
            Some(3) => return Err(self.refuse(Unusable::Picture(Picture::Palette))),
            Some(0) => return Err(self.refuse(Unusable::Picture(Picture::InvertedGrey))),
            _ => return Err(self.refuse(Unusable::Picture(Picture::Colour))),
        }
        let bands = self.unsigned(Tag::SamplesPerPixel).unwrap_or(1);
        if bands > 1 && !metadata.names_heights() {
            return Err(self.refuse(Unusable::Bands(bands)));
        }
        let side_by_side = self.unsigned(Tag::PlanarConfiguration).unwrap_or(1) == 1;
        Ok(if side_by_side {
            u32::try_from(bands).unwrap_or(1)
        } else {
            1
        })
    }

    fn numbers(&mut self) -> Result<Plain, Fault> {
        let first = |v: Option<Vec<u16>>| v.and_then(|v| v.first().copied());
        let bits = first(
            self.decoder
                .find_tag_unsigned_vec(Tag::BitsPerSample)
                .ok()
                .flatten(),
        )
        .unwrap_or(1);
        let format = first(
            self.decoder
                .find_tag_unsigned_vec(Tag::SampleFormat)
                .ok()
                .flatten(),
        )
        .unwrap_or(1);
        let kind = match (format, bits) {
            (1, 16 | 32 | 64) => NumberFamily::Unsigned,
            (2, 16 | 32 | 64) => NumberFamily::Signed,
            (3, 32 | 64) => NumberFamily::Float,
            (1, 1..=15) => return Err(self.refuse(Unusable::Picture(Picture::Bits(bits)))),
            _ => return Err(self.refuse(Unusable::Numbers { bits, format })),
        };
        let big_endian = matches!(self.decoder.byte_order(), ByteOrder::BigEndian);
        let bytes = u8::try_from(bits / 8).unwrap_or(8);
        Ok(Plain {
            bytes,
            kind,
            big_endian,
        })
    }

    /// A mask in a further directory would make cells void that look like heights.
    fn mask(&mut self) -> Result<(), Fault> {
        let mut next = self.decoder.image_ifd().directory().next();
        for _ in 0..MOST_DIRECTORIES {
            let Some(directory) = next.and_then(|at| self.decoder.read_directory(at).ok()) else {
                return Ok(());
            };
            let kind = self
                .decoder
                .read_directory_tags(&directory)
                .find_tag_unsigned::<u32>(Tag::NewSubfileType);
            if kind.ok().flatten().is_some_and(|kind| kind & 4 != 0) {
                return Err(self.refuse(Unusable::Mask));
            }
            next = directory.next();
        }
        Ok(())
    }

    /// The tags and the keys in them.
    pub(super) fn geo_tags(&mut self) -> (GeoTags, GeoKeys) {
        let directory = self.decoder.find_tag_unsigned_vec(Tag::GeoKeyDirectoryTag);
        let directory = directory.ok().flatten().unwrap_or_default();
        let doubles = self.doubles(Tag::GeoDoubleParamsTag);
        let keys = GeoKeys::parse(&directory, &doubles);
        let tags = GeoTags {
            text: self.text(Tag::GeoAsciiParamsTag),
            metadata: self.text(GDAL_METADATA),
            names_centres: keys.names_centres(),
            directory,
            doubles,
        };
        (tags, keys)
    }

    /// Whose the heights are, in their own words.
    pub(super) fn credit(&mut self) -> Option<String> {
        let text = self.text(Tag::Copyright)?;
        let plain = text.chars().map(|c| if c.is_control() { ' ' } else { c });
        let plain: String = plain.take(LONGEST_CREDIT).collect();
        let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
        (!plain.is_empty()).then_some(plain)
    }

    pub(super) fn text(&mut self, tag: Tag) -> Option<String> {
        let value = self.decoder.find_tag(tag).ok().flatten();
        value.and_then(|value| value.into_string().ok())
    }

    pub(super) fn doubles(&mut self, tag: Tag) -> Vec<f64> {
        let value = self.decoder.find_tag(tag).ok().flatten();
        value
            .and_then(|v| v.into_f64_vec().ok())
            .unwrap_or_default()
    }

    fn placing(&mut self, keys: &GeoKeys) -> Placing {
        Placing {
            scale: self.doubles(Tag::ModelPixelScaleTag),
            ties: self.doubles(Tag::ModelTiepointTag),
            matrix: self.doubles(Tag::ModelTransformationTag),
            names_centres: keys.names_centres(),
        }
    }

    fn reading(&mut self, keys: &GeoKeys, metadata: &BandNotes) -> Result<Reading, Fault> {
        let refuse = |why| self.refuse(Unusable::Heights(why));
        let heights = keys.heights().map_err(refuse)?;
        let said = metadata.unit.as_deref().map(unit_word);
        let unit_m = match (said, heights.unit_m) {
            (Some(None), _) => {
                let unit = metadata.unit.clone().unwrap_or_default();
                return Err(refuse(NoHeights::UnitName(unit)));
            }
            (Some(Some(a)), Some(b)) if (a - b).abs() > 1e-5 => {
                return Err(refuse(NoHeights::TwoUnits(a, b, None)));
            }
            (Some(said), keyed) => keyed.or(said).unwrap_or(1.0),
            (None, keyed) => keyed.unwrap_or(1.0),
        };
        self.height_notes(heights.told, unit_m);
        Ok(Reading {
            nodata: self.nodata(),
            scale: self.scale(metadata.scale.as_deref())?,
            offset: self.offset(metadata.offset.as_deref())?,
            unit_m,
        })
    }

    fn height_notes(&mut self, told: Option<Told>, unit_m: f64) {
        self.notes
            .push(note(self.name, told.unwrap_or(Told::Unsaid)));
        if (unit_m - 1.0).abs() > f64::EPSILON {
            self.notes.push(note(self.name, Told::Turned(unit_m)));
        }
    }

    fn nodata(&mut self) -> Option<Nodata> {
        let text = self.text(Tag::GdalNodata);
        let value = text.as_deref().and_then(Nodata::parse);
        if value.is_none() {
            let from = super::reading::BELIEVABLE_M;
            let told = Told::NoVoid(*from.start(), *from.end());
            self.notes.push(note(self.name, told));
        }
        value
    }

    fn scale(&self, text: Option<&str>) -> Result<f64, Fault> {
        let Some(text) = text else { return Ok(1.0) };
        finite(text)
            .filter(|v| v.abs() > f64::MIN_POSITIVE)
            .ok_or_else(|| broken(self.name, Damage::Scale(text.to_owned())))
    }

    fn offset(&self, text: Option<&str>) -> Result<f64, Fault> {
        let Some(text) = text else { return Ok(0.0) };
        finite(text).ok_or_else(|| broken(self.name, Damage::Offset(text.to_owned())))
    }
}

fn finite(text: &str) -> Option<f64> {
    text.parse::<f64>().ok().filter(|v| v.is_finite())
}

/// Metres in a unit as GDAL metadata name it.
fn unit_word(word: &str) -> Option<f64> {
    match word.trim().to_lowercase().as_str() {
        "m" | "metre" | "meter" | "metres" | "meters" => Some(1.0),
        "cm" | "centimetre" | "centimeter" => Some(0.01),
        "dm" | "decimetre" | "decimeter" => Some(0.1),
        "ft" | "foot" | "feet" | "international foot" => Some(0.3048),
        "us survey foot" | "us_survey_foot" | "ftus" | "us-ft" | "foot_us" => Some(1200.0 / 3937.0),
        _ => None,
    }
}
