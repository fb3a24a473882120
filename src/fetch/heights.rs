//! Heights near a route, cut out of large models on a server: only the parts of a file that are needed come.

use super::{address::Address, asking::Fetcher, cells::TileTemplate, outlines::surroundings};
use crate::{
    fault::{Fault, Place, Wrong, network::InNetwork},
    geometry::Bounds,
    raster::Terrain,
};

pub use super::cells::TerrainOffer;

/// An excerpt of a model, as a GeoTIFF.
///
/// ```
/// use schrund::{fetch::{AddressStore, Fetcher, Manners, TileTemplate, heights::HeightExcerpt}, geometry::{Bounds, LonLat}};
///
/// let offline = Fetcher::new(Manners::default(), AddressStore::nothing(), true);
/// let tiles = TileTemplate::parse("https://maps.example/{NS}{lat}{EW}{lon}.tif")?;
/// let line = Bounds::of(&[LonLat::new(8.0, 46.5), LonLat::new(8.1, 46.6)]).expect("two points");
/// let cut: Result<Vec<HeightExcerpt>, _> = offline.heights(&tiles, &[line], 2000.0, None).map(|near| near.excerpts);
/// assert_eq!(cut.expect_err("nothing was ever fetched").code(), "network");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeightExcerpt {
    /// A name for the file, made of that on the server.
    pub name: String,
    /// The file.
    pub bytes: Vec<u8>,
    /// Whose the heights are, as the file says.
    pub credit: Option<String>,
}

/// What there is of heights near a route.
///
/// ```
/// use schrund::fetch::heights::HeightsNear;
///
/// let sea = HeightsNear { excerpts: Vec::new(), absent: vec!["https://maps.example/N54E007.tif".to_owned()] };
/// assert_eq!(sea.absent.len(), 1, "a tile of the sea is told, and no fault");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HeightsNear {
    /// One a file.
    pub excerpts: Vec<HeightExcerpt>,
    /// Tiles that the server does not have, as they may be shown.
    pub absent: Vec<String>,
}

impl Fetcher {
    /// The heights within `around_m` metres of the boxes of a route, with the credit that they are given under; without one
    /// that of the file stays.
    ///
    /// # Errors
    /// The network; a file that is no GeoTIFF or cannot be read exactly; no heights there at all.
    pub fn heights(
        &self,
        tiles: &TileTemplate,
        route: &[Bounds],
        around_m: f64,
        credit: Option<&str>,
    ) -> Result<HeightsNear, Fault> {
        let windows = surroundings(route, around_m);
        let mut near = HeightsNear::default();
        for address in tiles.tiles(&windows, self.manners.most_tiles)? {
            let cut = self.cut(&address, &windows, credit);
            match cut {
                Err(fault) if tiles.is_of_tiles() && is_absent(&fault) => {
                    near.absent.push(address.to_string());
                }
                cut => near
                    .excerpts
                    .extend(cut?.map(|cut| unlike(cut, &near.excerpts))),
            }
        }
        if near.excerpts.is_empty() {
            let place = Place::file(&tiles.shown());
            return Err(Fault::new(InNetwork::NoHeights, place));
        }
        Ok(near)
    }

    /// What of a file lies in the windows, as one file; `None` where nothing does.
    ///
    /// # Errors
    /// As [`Self::heights`].
    pub fn cut(
        &self,
        address: &Address,
        windows: &[Bounds],
        credit: Option<&str>,
    ) -> Result<Option<HeightExcerpt>, Fault> {
        let mut terrain = Terrain::new().within(self.manners.limits);
        let shown = address.to_string();
        let source = self.model(address)?;
        let window = windows.iter().copied().reduce(|a, b| a.with(b));
        let added = terrain.add(&shown, source);
        let cut = added.and_then(|_| match window {
            Some(window) => terrain.excerpt(window, credit),
            None => Ok(None),
        });
        let bytes = cut.map_err(|fault| self.told_for(fault))?;
        let own = terrain.credits().next().flatten();
        Ok(bytes.map(|bytes| HeightExcerpt {
            name: file_name(address),
            bytes,
            credit: credit.or(own).map(str::to_owned),
        }))
    }

    /// A fault of a model as that of the network which broke off while it was read.
    #[must_use]
    pub fn told_for(&self, fault: Fault) -> Fault {
        if !matches!(fault.what, Wrong::Terrain(_)) {
            return fault;
        }
        let broke_off = self.broke_off();
        let same = |of: &Fault| of.at.file == fault.at.file;
        broke_off.into_iter().find(same).unwrap_or(fault)
    }
}

/// Under a name that none of the others has: tiles may lie in folders of their own, all called alike.
fn unlike(cut: HeightExcerpt, others: &[HeightExcerpt]) -> HeightExcerpt {
    let taken = |name: &String| others.iter().any(|other| other.name == *name);
    let numbered = (2..).map(|number| format!("{number}-{}", cut.name));
    let mut names = std::iter::once(cut.name.clone()).chain(numbered);
    let name = names.find(|name| !taken(name));
    HeightExcerpt {
        name: name.unwrap_or_default(),
        ..cut
    }
}

/// Whether a server says that it has no such file (RFC 9110, sections 15.5.5 and 15.5.11).
fn is_absent(fault: &Fault) -> bool {
    match &fault.what {
        Wrong::Network(InNetwork::Answered { status }) => {
            status.starts_with("404") || status.starts_with("410")
        }
        _ => false,
    }
}

/// A name for a file of this machine, out of that on the server.
fn file_name(address: &Address) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_');
    let name = address.file_name();
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let stem: String = stem
        .chars()
        .map(|c| if plain(c) { c } else { '_' })
        .collect();
    let stem = stem.trim_matches('_');
    format!("{}.tif", if stem.is_empty() { "terrain" } else { stem })
}
