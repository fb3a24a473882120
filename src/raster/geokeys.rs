//! The GeoKey directory of a GeoTIFF: which coordinate system, which heights.
//!
//! Key and code numbers are those of the GeoTIFF 1.0 and 1.1 specifications (from memory, checked by the files of
//! tests/raster/foreign.rs that another program wrote).

use std::collections::BTreeMap;

use crate::{
    fault::terrain::{NoHeights, NoSystem, Told},
    raster::systems::{self, CoordinateSystem},
};

/// "Defined by the keys beside it", in place of a code.
const USER_DEFINED: u32 = 32767;

mod key {
    pub(super) const MODEL_TYPE: u16 = 1024;
    pub(super) const RASTER_TYPE: u16 = 1025;
    pub(super) const GEOGRAPHIC: u16 = 2048;
    pub(super) const DATUM: u16 = 2050;
    pub(super) const PRIME_MERIDIAN: u16 = 2051;
    pub(super) const ANGULAR_UNIT: u16 = 2054;
    pub(super) const ELLIPSOID: u16 = 2056;
    pub(super) const SEMI_MAJOR: u16 = 2057;
    pub(super) const INVERSE_FLATTENING: u16 = 2059;
    pub(super) const PROJECTED: u16 = 3072;
    pub(super) const LINEAR_UNIT: u16 = 3076;
    pub(super) const VERTICAL: u16 = 4096;
    pub(super) const VERTICAL_UNIT: u16 = 4099;
}

/// One value of the directory.
#[derive(Clone, Debug, PartialEq)]
enum KeyValue {
    Short(u16),
    Double(f64),
    Text,
}

/// All keys of a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct GeoKeys(BTreeMap<u16, KeyValue>);

/// What the keys say about heights.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct HeightSystem {
    /// Metres in one unit, if said.
    pub(crate) unit_m: Option<f64>,
    /// What a reader ought to know.
    pub(crate) told: Option<Told>,
}

impl GeoKeys {
    /// From the three tags; entries that point outside them are left out.
    pub(crate) fn parse(directory: &[u16], doubles: &[f64]) -> Self {
        let entries = directory.get(4..).unwrap_or_default().chunks_exact(4);
        let one = |entry: &[u16]| match *entry {
            [key, 0, _, value] => Some((key, KeyValue::Short(value))),
            [key, 34736, _, at] => Some((key, KeyValue::Double(*doubles.get(usize::from(at))?))),
            [key, 34737, ..] => Some((key, KeyValue::Text)),
            _ => None,
        };
        Self(entries.filter_map(one).collect())
    }

    /// Tie points name cell centres instead of cell corners.
    pub(crate) fn names_centres(&self) -> bool {
        self.code(key::RASTER_TYPE) == Some(2)
    }

    /// The coordinate system, or why not.
    pub(crate) fn system(&self) -> Result<CoordinateSystem, NoSystem> {
        if self.0.is_empty() {
            return Err(NoSystem::NoKeys);
        }
        if self.code(key::PRIME_MERIDIAN).is_some_and(|c| c != 8901) {
            return Err(NoSystem::NotGreenwich);
        }
        match (self.code(key::MODEL_TYPE), self.code(key::PROJECTED)) {
            (Some(3), _) => Err(NoSystem::Geocentric),
            (Some(1) | None, Some(USER_DEFINED)) => self.own_projection(),
            (Some(1) | None, Some(code)) => self.listed_projection(code),
            (Some(2) | None, _) => self.geographic(),
            _ => Err(NoSystem::Unsaid),
        }
    }

    fn listed_projection(&self, code: u32) -> Result<CoordinateSystem, NoSystem> {
        let unit = self.code(key::LINEAR_UNIT).unwrap_or(9001);
        if unit != 9001 {
            return Err(NoSystem::CellUnit { epsg: code, unit });
        }
        listed(code)
    }

    fn geographic(&self) -> Result<CoordinateSystem, NoSystem> {
        let unit = self.code(key::ANGULAR_UNIT).unwrap_or(9102);
        if unit != 9102 {
            return Err(NoSystem::AngleUnit(unit));
        }
        match self.code(key::GEOGRAPHIC) {
            Some(code) if code != USER_DEFINED => listed(code),
            _ => Ok(self.own("of its own", format!("+proj=longlat {}", self.frame()?))),
        }
    }

    fn own(&self, name: &str, proj: String) -> CoordinateSystem {
        CoordinateSystem {
            epsg: USER_DEFINED,
            name: format!("{name} ({proj})"),
            proj,
            shift: None,
        }
    }

    /// Ellipsoid and datum words of the string. EPSG numbers of older datums are those of their
    /// geographic system plus 2000 (from memory).
    fn frame(&self) -> Result<String, NoSystem> {
        let by_code = self.code(key::GEOGRAPHIC).filter(|c| *c != USER_DEFINED);
        let by_datum = self.code(key::DATUM).filter(|c| *c != USER_DEFINED);
        if let Some(code) = by_code.or(by_datum.map(|c| c.saturating_sub(2000))) {
            let proj = listed(code)?.proj;
            return Ok(proj.replace("+proj=longlat ", ""));
        }
        let like_wgs84 = matches!(self.code(key::ELLIPSOID), Some(7030 | 7019));
        if like_wgs84 || self.axes_like_wgs84() {
            return Ok("+ellps=GRS80".to_owned());
        }
        Err(NoSystem::NoDatum)
    }

    /// Same size within a metre and same shape within a thousandth of a flattening unit: WGS 84 or GRS 80.
    fn axes_like_wgs84(&self) -> bool {
        let near =
            |found: Option<f64>, want: f64, by: f64| found.is_some_and(|f| (f - want).abs() <= by);
        near(self.number(key::SEMI_MAJOR), 6_378_137.0, 1.0)
            && near(self.number(key::INVERSE_FLATTENING), 298.257_223_563, 1e-3)
    }

    fn own_projection(&self) -> Result<CoordinateSystem, NoSystem> {
        let method = self.code(3075).unwrap_or(0);
        let words = match method {
            1 => self.transverse_mercator()?,
            8 => self.conic("lcc")?,
            9 => self.conic_one_parallel()?,
            10 => self.azimuthal()?,
            11 => self.conic("aea")?,
            15 => self.polar()?,
            _ => return Err(NoSystem::Method(method)),
        };
        let unit_m = self.linear_unit_m()?;
        let (east, north) = (
            self.first(&[3082, 3086, 3090]),
            self.first(&[3083, 3087, 3091]),
        );
        let (east, north) = (east.unwrap_or(0.0) * unit_m, north.unwrap_or(0.0) * unit_m);
        let frame = self.frame()?;
        let unit = if unit_m < 1.0 {
            format!("+to_meter={unit_m}")
        } else {
            "+units=m".to_owned()
        };
        Ok(self.own(
            "of its own",
            format!("+proj={words} +x_0={east} +y_0={north} {frame} {unit}"),
        ))
    }

    fn transverse_mercator(&self) -> Result<String, NoSystem> {
        let (lat, lon) = (
            self.need(&[3081, 3085, 3089])?,
            self.need(&[3080, 3084, 3088])?,
        );
        Ok(format!(
            "tmerc +lat_0={lat} +lon_0={lon} +k={}",
            self.scale()
        ))
    }

    fn conic(&self, proj: &str) -> Result<String, NoSystem> {
        let (lat, lon) = (
            self.need(&[3085, 3081, 3089])?,
            self.need(&[3084, 3080, 3088])?,
        );
        let (one, two) = (self.need(&[3078])?, self.need(&[3079])?);
        Ok(format!(
            "{proj} +lat_0={lat} +lon_0={lon} +lat_1={one} +lat_2={two}"
        ))
    }

    fn conic_one_parallel(&self) -> Result<String, NoSystem> {
        let (lat, lon) = (
            self.need(&[3081, 3085, 3089])?,
            self.need(&[3080, 3084, 3088])?,
        );
        Ok(format!(
            "lcc +lat_0={lat} +lat_1={lat} +lon_0={lon} +k_0={}",
            self.scale()
        ))
    }

    fn azimuthal(&self) -> Result<String, NoSystem> {
        let (lat, lon) = (
            self.need(&[3089, 3081, 3085])?,
            self.need(&[3088, 3080, 3084])?,
        );
        Ok(format!("laea +lat_0={lat} +lon_0={lon}"))
    }

    fn polar(&self) -> Result<String, NoSystem> {
        let (lat, lon) = (
            self.need(&[3081, 3085, 3089])?,
            self.need(&[3095, 3080, 3084])?,
        );
        let pole = 90.0_f64.copysign(lat);
        if (lat.abs() - 90.0).abs() < 1e-9 {
            return Ok(format!(
                "stere +lat_0={pole} +lon_0={lon} +k={}",
                self.scale()
            ));
        }
        if (self.scale() - 1.0).abs() > 1e-12 {
            return Err(NoSystem::PolarTwice);
        }
        Ok(format!("stere +lat_0={pole} +lat_ts={lat} +lon_0={lon}"))
    }

    fn scale(&self) -> f64 {
        self.first(&[3092, 3093]).unwrap_or(1.0)
    }

    fn linear_unit_m(&self) -> Result<f64, NoSystem> {
        let unit = self.code(key::LINEAR_UNIT).unwrap_or(9001);
        unit_m(unit).ok_or(NoSystem::UnknownUnit(unit))
    }

    /// Unit and name of the heights, or why they cannot be used.
    pub(crate) fn heights(&self) -> Result<HeightSystem, NoHeights> {
        let unit = match self.code(key::VERTICAL_UNIT) {
            None | Some(0 | USER_DEFINED) => None,
            Some(code) => Some(unit_m(code).ok_or(NoHeights::UnitCode(code))?),
        };
        let Some(code) = self
            .code(key::VERTICAL)
            .filter(|c| *c != USER_DEFINED && *c != 0)
        else {
            return Ok(HeightSystem {
                unit_m: unit,
                told: None,
            });
        };
        let (told, by_code) = described(code)?;
        match (unit, by_code) {
            (Some(a), Some(b)) if (a - b).abs() > 1e-9 => {
                Err(NoHeights::TwoUnits(a, b, Some(code)))
            }
            _ => Ok(HeightSystem {
                unit_m: unit.or(by_code),
                told: Some(told),
            }),
        }
    }

    fn code(&self, key: u16) -> Option<u32> {
        match self.0.get(&key)? {
            KeyValue::Short(value) => Some(u32::from(*value)),
            _ => None,
        }
    }

    fn number(&self, key: u16) -> Option<f64> {
        match self.0.get(&key)? {
            KeyValue::Double(value) => Some(*value),
            KeyValue::Short(value) => Some(f64::from(*value)),
            KeyValue::Text => None,
        }
    }

    fn first(&self, keys: &[u16]) -> Option<f64> {
        keys.iter()
            .find_map(|k| self.number(*k))
            .filter(|v| v.is_finite())
    }

    fn need(&self, keys: &[u16]) -> Result<f64, NoSystem> {
        let key = keys.first().copied().unwrap_or_default();
        self.first(keys).ok_or(NoSystem::Lacks(key))
    }
}

fn listed(code: u32) -> Result<CoordinateSystem, NoSystem> {
    systems::system(code).ok_or(NoSystem::Unlisted(code))
}

/// Metre, foot, US survey foot: EPSG units (exact by definition).
fn unit_m(code: u32) -> Option<f64> {
    match code {
        9001 => Some(1.0),
        9002 => Some(0.3048),
        9003 => Some(1200.0 / 3937.0),
        _ => None,
    }
}

/// What there is to say about a height system, and the metres in its unit if the code alone tells.
/// 5001 to 5033 are the ellipsoids of GeoTIFF 1.0 [from memory].
fn described(code: u32) -> Result<(Told, Option<f64>), NoHeights> {
    if (5001..=5033).contains(&code) || matches!(code, 4979 | 4937 | 4957) {
        return Ok((Told::Ellipsoid, None));
    }
    match systems::heights(code) {
        Some(h) if h.down => Err(NoHeights::Depths(&h.name)),
        Some(h) => Ok((
            Told::Heights {
                name: &h.name,
                epsg: code,
            },
            Some(h.unit_m),
        )),
        None => Ok((Told::Taken(code), None)),
    }
}
