//! Addresses of models that are cut into tiles of a degree, each named by its south-west corner.

use std::sync::LazyLock;

use serde::Deserialize;

use super::address::Address;
use crate::{
    fault::{
        Fault, Place,
        network::{InNetwork, address_shown},
    },
    geometry::Bounds,
};

/// What stands for a part of the name of a tile.
const PLACEHOLDERS: [&str; 6] = ["NS", "EW", "ns", "ew", "lat", "lon"];

static OFFERS: LazyLock<Option<Offers>> =
    LazyLock::new(|| toml::from_str(include_str!("../../data/fetch.toml")).ok());

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Offers {
    terrain: TerrainOffer,
}

/// Heights that are asked for where nobody names others.
///
/// ```
/// use schrund::fetch::heights::TerrainOffer;
///
/// let offer = TerrainOffer::built_in().expect("data/fetch.toml is sound");
/// assert_eq!(offer.standing, "from memory");
/// assert!(offer.credit.contains('©') && offer.address.contains("{NS}{lat}"));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TerrainOffer {
    /// With placeholders.
    pub address: String,
    /// What the model is called.
    pub name: String,
    /// What stands behind address and credit.
    pub standing: String,
    /// Whose the heights are.
    pub credit: String,
}

impl TerrainOffer {
    /// The one of `data/fetch.toml`; a test reads it.
    #[must_use]
    pub fn built_in() -> Option<&'static Self> {
        OFFERS.as_ref().map(|offers| &offers.terrain)
    }
}

/// An address of a file, or of tiles of a degree by placeholders: `{NS}` and `{EW}` for the letters of the south-west
/// corner (`{ns}`, `{ew}` for small ones), `{lat}` for its latitude in two digits, `{lon}` for its longitude in three.
///
/// ```
/// use schrund::{fetch::TileTemplate, geometry::{Bounds, LonLat}};
///
/// let tiles = TileTemplate::parse("https://maps.example/{NS}{lat}{EW}{lon}.tif")?;
/// let line = Bounds::of(&[LonLat::new(-0.1, 42.7), LonLat::new(0.1, 42.8)]).expect("two points");
/// let asked: Vec<String> = tiles.tiles(&[line], 16)?.iter().map(ToString::to_string).collect();
/// assert_eq!(asked, ["https://maps.example/N42W001.tif", "https://maps.example/N42E000.tif"]);
/// assert!(TileTemplate::parse("https://maps.example/{tile}.tif").is_err());
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TileTemplate {
    text: String,
}

impl TileTemplate {
    /// The template in a text.
    ///
    /// # Errors
    /// It is no address, or has a placeholder that stands for nothing.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let odd = text.split('{').skip(1).find_map(|rest| {
            let name = rest.split('}').next().unwrap_or(rest);
            (!PLACEHOLDERS.contains(&name)).then(|| format!("{{{name}}}"))
        });
        if let Some(odd) = odd {
            let place = Place::file(&address_shown(text));
            return Err(Fault::new(InNetwork::NoPlaceholder(odd), place));
        }
        let template = Self {
            text: text.to_owned(),
        };
        template.tile(0, 0)?;
        Ok(template)
    }

    /// Whether it stands for many files.
    #[must_use]
    pub fn is_of_tiles(&self) -> bool {
        self.text.contains('{')
    }

    /// As it may be shown.
    #[must_use]
    pub fn shown(&self) -> String {
        address_shown(&self.text)
    }

    /// The tiles that the boxes lie on, from south to north and west to east, each once.
    ///
    /// # Errors
    /// They are more than `most`.
    pub fn tiles(&self, boxes: &[Bounds], most: usize) -> Result<Vec<Address>, Fault> {
        if !self.is_of_tiles() {
            return Ok(vec![self.tile(0, 0)?]);
        }
        let mut corners: Vec<(i32, i32)> = Vec::new();
        for around in boxes {
            let lats = degrees(around.low.lat_deg, around.high.lat_deg);
            let lons = degrees(around.low.lon_deg, around.high.lon_deg);
            let all = lats.flat_map(|lat| lons.clone().map(move |lon| (lat, lon)));
            let known = all.filter(|(lat, _)| (-90..90).contains(lat));
            corners.extend(known.map(|(lat, lon)| (lat, (lon + 180).rem_euclid(360) - 180)));
        }
        corners.sort_unstable();
        corners.dedup();
        if corners.len() > most {
            let tiles = corners.len();
            let place = Place::file(&self.shown());
            return Err(Fault::new(InNetwork::ManyTiles { tiles, most }, place));
        }
        corners
            .iter()
            .map(|(lat, lon)| self.tile(*lat, *lon))
            .collect()
    }

    fn tile(&self, lat: i32, lon: i32) -> Result<Address, Fault> {
        let (north, east) = (lat >= 0, lon >= 0);
        let letter = |is: bool, yes: &'static str, no: &'static str| if is { yes } else { no };
        let text = self
            .text
            .replace("{NS}", letter(north, "N", "S"))
            .replace("{ns}", letter(north, "n", "s"))
            .replace("{EW}", letter(east, "E", "W"))
            .replace("{ew}", letter(east, "e", "w"))
            .replace("{lat}", &format!("{:02}", lat.abs()))
            .replace("{lon}", &format!("{:03}", lon.abs()));
        Address::parse(&text)
    }
}

/// Whole degrees from one to the other; no more than a globe has.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a cast saturates, and degrees are few"
)]
fn degrees(from: f64, to: f64) -> std::ops::RangeInclusive<i32> {
    let whole = |deg: f64| deg.floor().clamp(-540.0, 540.0) as i32;
    whole(from)..=whole(to)
}
