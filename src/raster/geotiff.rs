//! Opening a GeoTIFF: everything that decides whether band 1 can be read exactly as heights.

use std::io::SeekFrom;

use tiff::{
    TiffError,
    decoder::{Decoder, Limits},
    tags::{ByteOrder, Tag},
};

use crate::fault::Problem;
use crate::raster::{
    chunks::{Kind, LARGEST_PART_BYTES, Plain, Source},
    geokeys::GeoKeys,
    metadata::BandNotes,
    model::Opened,
    placing::Placing,
    reading::{Nodata, Reading},
    refusal::{Cure, broken, note, refused},
};

/// Largest table inside the file that is read, bytes (our judgement: a million strips).
const TABLE_BYTES: usize = 8 << 20;

/// Directories looked at in search of a mask (our judgement; overviews are fewer than 20).
const MOST_DIRECTORIES: usize = 64;

/// The tag GDAL keeps scale, offset and unit in.
const GDAL_METADATA: Tag = Tag::Unknown(42112);

/// A file while it is being opened.
pub(super) struct Opening<'a> {
    pub(super) name: &'a str,
    pub(super) decoder: Decoder<Source>,
    pub(super) length: u64,
    pub(super) notes: Vec<Problem>,
}

/// The model in a GeoTIFF of `length` bytes.
pub(crate) fn open(name: &str, mut source: Source, length: u64) -> Result<Opened, Problem> {
    let rewound = source.seek(SeekFrom::Start(0));
    rewound.map_err(|e| broken(name, format!("it cannot be read: {e}")))?;
    let limits = limits();
    let decoder = Decoder::new(source)
        .map_err(|e| unreadable(name, &e))?
        .with_limits(limits);
    let file = Opening {
        name,
        decoder,
        length,
        notes: Vec::new(),
    };
    file.model()
}

fn limits() -> Limits {
    let part = usize::try_from(LARGEST_PART_BYTES).unwrap_or(usize::MAX);
    let mut limits = Limits::default();
    limits.decoding_buffer_size = part;
    limits.intermediate_buffer_size = part;
    limits.ifd_value_size = TABLE_BYTES;
    limits
}

pub(super) fn unreadable(name: &str, error: &TiffError) -> Problem {
    match error {
        TiffError::UnsupportedError(e) => refused(
            name,
            format!("it is a TIFF of a kind that is not read ({e})"),
            Cure::Recode,
        ),
        TiffError::LimitsExceeded => refused(name, "its inner tables are too big", Cure::Recode),
        other => broken(name, format!("it is not a whole TIFF ({other})")),
    }
}

impl Opening<'_> {
    fn model(mut self) -> Result<Opened, Problem> {
        self.coding()?;
        let metadata = self.metadata()?;
        let per_cell = self.bands(&metadata)?;
        let plain = self.numbers()?;
        self.mask()?;
        let keys = self.keys();
        let system = keys.system().map_err(|why| self.no_system(why, &keys))?;
        let (columns, rows) = self.size()?;
        let grid = self.placing(&keys).grid(columns, rows);
        let grid = grid.map_err(|why| self.refuse(why, Cure::Warp))?;
        let reading = self.reading(&keys, &metadata)?;
        let (layout, parts, notes) = self.parts(per_cell, plain)?;
        Ok(Opened {
            system,
            grid,
            reading,
            layout,
            parts,
            notes,
        })
    }

    pub(super) fn refuse(&self, why: impl Into<String>, cure: Cure) -> Problem {
        refused(self.name, why, cure)
    }

    fn no_system(&self, why: String, keys: &GeoKeys) -> Problem {
        let cure = if keys.is_empty() {
            Cure::AssignSystem
        } else {
            Cure::Warp
        };
        self.refuse(why, cure)
    }

    pub(super) fn unsigned(&mut self, tag: Tag) -> Option<u64> {
        self.decoder.find_tag_unsigned(tag).ok()?
    }

    pub(super) fn size(&mut self) -> Result<(u32, u32), Problem> {
        self.decoder
            .dimensions()
            .map_err(|e| unreadable(self.name, &e))
    }

    /// Compression and predictor. Numbers of the TIFF 6 specification and its registered additions.
    fn coding(&mut self) -> Result<(), Problem> {
        let says =
            match self.unsigned(Tag::Compression).unwrap_or(1) {
                1 | 5 | 8 | 32946 | 32773 => return Ok(()),
                6 | 7 => "its heights are coded as a JPEG photograph, which changes them",
                34887 => "its heights are coded as LERC, which is not read",
                50000 => "its heights are coded as Zstandard, which is not read",
                50001 => "its heights are coded as WebP, which is not read",
                34925 => "its heights are coded as LZMA, which is not read",
                other => return Err(self.refuse(
                    format!(
                        "its heights are coded in a way that is not read (TIFF compression {other})"
                    ),
                    Cure::Recode,
                )),
            };
        Err(self.refuse(says, Cure::Recode))
    }

    fn metadata(&mut self) -> Result<BandNotes, Problem> {
        let text = self.decoder.find_tag(GDAL_METADATA).ok().flatten();
        let Some(text) = text.and_then(|v| v.into_string().ok()) else {
            return Ok(BandNotes::default());
        };
        BandNotes::parse(&text)
            .map_err(|e| broken(self.name, format!("its GDAL metadata do not parse ({e})")))
    }

    /// How many numbers lie side by side for a cell; more than one band only if the first says that it is heights.
    fn bands(&mut self, metadata: &BandNotes) -> Result<u32, Problem> {
        match self.unsigned(Tag::PhotometricInterpretation) {
            Some(1) => {}
            Some(3) => {
                return Err(self.refuse(
                    "it is a picture with a palette, not heights",
                    Cure::NotHeights,
                ));
            }
            Some(0) => {
                return Err(self.refuse(
                    "it is a picture with inverted grey, not heights",
                    Cure::NotHeights,
                ));
            }
            _ => return Err(self.refuse("it is a colour picture, not heights", Cure::NotHeights)),
        }
        let bands = self.unsigned(Tag::SamplesPerPixel).unwrap_or(1);
        if bands > 1 && !metadata.names_heights() {
            return Err(self.refuse(
                format!("it has {bands} bands and does not say which one is the height"),
                Cure::FirstBand,
            ));
        }
        let side_by_side = self.unsigned(Tag::PlanarConfiguration).unwrap_or(1) == 1;
        Ok(if side_by_side {
            u32::try_from(bands).unwrap_or(1)
        } else {
            1
        })
    }

    fn numbers(&mut self) -> Result<Plain, Problem> {
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
            (1, 16 | 32 | 64) => Kind::Unsigned,
            (2, 16 | 32 | 64) => Kind::Signed,
            (3, 32 | 64) => Kind::Float,
            (1, 1..=15) => return Err(self.refuse(format!("its cells have {bits} bits: a picture or a mask, not heights"), Cure::NotHeights)),
            _ => return Err(self.refuse(format!("its numbers are of a kind that is not read ({bits} bits, TIFF sample format {format})"), Cure::Recode)),
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
    fn mask(&mut self) -> Result<(), Problem> {
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
                return Err(self.refuse(
                    "its void cells are kept in a mask of their own, which is not read",
                    Cure::Warp,
                ));
            }
            next = directory.next();
        }
        Ok(())
    }

    fn keys(&mut self) -> GeoKeys {
        let directory = self
            .decoder
            .find_tag_unsigned_vec(Tag::GeoKeyDirectoryTag)
            .ok()
            .flatten();
        let doubles = self.doubles(Tag::GeoDoubleParamsTag);
        GeoKeys::parse(&directory.unwrap_or_default(), &doubles)
    }

    fn doubles(&mut self, tag: Tag) -> Vec<f64> {
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

    fn reading(&mut self, keys: &GeoKeys, metadata: &BandNotes) -> Result<Reading, Problem> {
        let heights = keys
            .heights()
            .map_err(|why| self.refuse(why, Cure::ScaleHeights))?;
        let said = metadata.unit.as_deref().map(unit_word);
        let unit_m = match (said, heights.unit_m) {
            (Some(None), _) => {
                return Err(self.refuse(
                    format!(
                        "its heights are in a unit this program does not know ({:?})",
                        metadata.unit.as_deref().unwrap_or_default()
                    ),
                    Cure::ScaleHeights,
                ));
            }
            (Some(Some(a)), Some(b)) if (a - b).abs() > 1e-5 => {
                return Err(self.refuse(
                    format!("its heights are said to be in two units at once ({a} m and {b} m)"),
                    Cure::ScaleHeights,
                ));
            }
            (Some(said), keyed) => keyed.or(said).unwrap_or(1.0),
            (None, keyed) => keyed.unwrap_or(1.0),
        };
        self.height_notes(heights.says, unit_m);
        Ok(Reading {
            nodata: self.nodata(),
            scale: self.figure(metadata.scale.as_deref(), "scale", 1.0)?,
            offset: self.figure(metadata.offset.as_deref(), "offset", 0.0)?,
            unit_m,
        })
    }

    fn height_notes(&mut self, says: Option<String>, unit_m: f64) {
        let unknown = "it does not say whether its heights are above the sea or above the ellipsoid: up to 100 m may lie between them, the slopes are the same";
        self.notes
            .push(note(self.name, says.unwrap_or_else(|| unknown.to_owned())));
        if (unit_m - 1.0).abs() > f64::EPSILON {
            self.notes.push(note(
                self.name,
                format!("its heights are turned into metres, one unit being {unit_m} m"),
            ));
        }
    }

    fn nodata(&mut self) -> Option<Nodata> {
        let text = self.decoder.find_tag(Tag::GdalNodata).ok().flatten();
        let text = text.and_then(|v| v.into_string().ok());
        let value = text.as_deref().and_then(Nodata::parse);
        if value.is_none() {
            let from = super::reading::BELIEVABLE_M;
            self.notes.push(note(
                self.name,
                format!("it declares no value for void cells: heights outside {} to {} m are taken as void", from.start(), from.end()),
            ));
        }
        value
    }

    fn figure(&self, text: Option<&str>, what: &str, usual: f64) -> Result<f64, Problem> {
        let Some(text) = text else { return Ok(usual) };
        let value = text.parse::<f64>().ok().filter(|v| v.is_finite());
        let value = value.filter(|v| what != "scale" || v.abs() > f64::MIN_POSITIVE);
        value.ok_or_else(|| {
            broken(
                self.name,
                format!("the {what} of its heights is no number ({text:?})"),
            )
        })
    }
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
