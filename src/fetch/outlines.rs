//! Outlines of glaciers near a route, from a collection on a server: where ice is, and nothing of its gaps.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::{
    address::{Address, hash},
    asking::Fetcher,
    features::{OutlinePage, bounds, called},
    whole::Wanted,
};
use crate::{
    fault::{Fault, network::InNetwork},
    geometry::Bounds,
};

/// Outlines near a route, and where they come from.
///
/// ```
/// use schrund::{fetch::{Address, AddressStore, Fetcher, Manners, outlines::OutlinesNear}, geometry::{Bounds, LonLat}};
///
/// let offline = Fetcher::new(Manners::default(), AddressStore::nothing(), true);
/// let items = Address::parse("https://maps.example/collections/ice/items")?;
/// let line = Bounds::of(&[LonLat::new(8.0, 46.5), LonLat::new(8.1, 46.6)]).expect("two points");
/// let near: Result<OutlinesNear, _> = offline.outlines(&items, &[line], 2000.0);
/// assert_eq!(near.map(|_| ()).expect_err("nothing was ever fetched").code(), "network");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct OutlinesNear {
    /// Names and geometries of those whose box meets the surroundings of the route, in the order they came.
    outlines: Vec<(Option<String>, Value)>,
    /// How many came in all; of a file with an index, how many it holds.
    pub came: usize,
    /// Whether they were found by the index of a file, so that those far away did not come.
    pub by_index: bool,
    /// The address as it may be shown.
    pub address: String,
    /// The day they came, `2027-07-04`.
    pub day: String,
    /// Under which licence, where the server links to one.
    pub licence: Option<String>,
}

impl OutlinesNear {
    /// How many lie near the route.
    #[must_use]
    pub fn count(&self) -> usize {
        self.outlines.len()
    }

    /// A zones file to fill in: every outline a zone without a gap width, with its name and its source.
    #[must_use]
    pub fn zones(&self, source: &str) -> String {
        self.written(|name| json!({"name": name, "gap_m": null, "source": source}))
    }

    /// The same as an inventory: it says where ice is.
    #[must_use]
    pub fn inventory(&self, source: &str) -> String {
        self.written(|name| json!({"name": name, "source": source}))
    }

    /// A collection, one feature a line.
    fn written(&self, properties: impl Fn(&str) -> Value) -> String {
        let features = self.outlines.iter().map(|(name, geometry)| {
            let mut properties = properties(name.as_deref().unwrap_or_default());
            if let (None, Some(members)) = (name, properties.as_object_mut()) {
                members.shift_remove("name");
            }
            json!({"type": "Feature", "properties": properties, "geometry": geometry}).to_string()
        });
        let features: Vec<String> = features.collect();
        format!(
            "{{\"type\": \"FeatureCollection\", \"features\": [\n{}\n]}}\n",
            features.join(",\n")
        )
    }
}

/// A file of outlines with an index on a server, as far as its server tells of it: whoever can read it gives its outlines back.
///
/// ```
/// use schrund::{fetch::{Address, AddressStore, Fetcher, Manners, outlines::OutlineFile}, raster::RasterSource};
///
/// let offline = Fetcher::new(Manners::default(), AddressStore::nothing(), true);
/// let pages = Address::parse("https://maps.example/collections/ice/items")?;
/// let file: Option<(RasterSource, OutlineFile)> = offline.outline_file(&pages)?;
/// assert!(file.is_none(), "pages are no file");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone, Debug)]
pub struct OutlineFile {
    /// The address as it may be shown.
    pub address: String,
    pub(super) place: Address,
    /// The day its beginning came, `2027-07-04`.
    pub day: String,
    /// Under which licence, where the server links to one.
    pub licence: Option<String>,
}

impl OutlineFile {
    /// Those of its outlines, read as a text of GeoJSON, whose box comes within `around_m` metres of one of the boxes of a route;
    /// `holds` is how many the file has.
    ///
    /// # Errors
    /// None lies there, or the text is none of outlines.
    pub fn near(
        &self,
        text: &str,
        holds: usize,
        route: &[Bounds],
        around_m: f64,
    ) -> Result<OutlinesNear, Fault> {
        let page = OutlinePage::parse(text.as_bytes());
        let page = page.ok_or_else(|| self.place.fault(InNetwork::NoOutlines))?;
        let mut gathered = Gathered::default();
        gathered.take(page, &surroundings(route, around_m));
        gathered.came = holds;
        gathered.licence.clone_from(&self.licence);
        let near = gathered.near(&self.place, around_m, self.day.clone())?;
        Ok(OutlinesNear {
            by_index: true,
            ..near
        })
    }
}

/// The boxes of a route with so many metres round them.
pub fn surroundings(route: &[Bounds], around_m: f64) -> Vec<Bounds> {
    route.iter().map(|of| of.widened(around_m)).collect()
}

/// Whether an address is that of a collection, which gives its outlines page by page.
pub(super) fn is_collection(address: &Address) -> bool {
    let path = address.url().path().trim_end_matches('/');
    path.ends_with("/items")
}

/// What came so far.
#[derive(Default)]
struct Gathered {
    outlines: Vec<(Option<String>, Value)>,
    came: usize,
    matched: Option<u64>,
    licence: Option<String>,
    /// Hashes of features that came: servers whose data change give some twice.
    known: BTreeSet<String>,
}

/// Whether a page brought anything.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Page {
    New,
    Again,
}

impl Fetcher {
    /// The outlines whose box comes within `around_m` metres of one of the boxes of a route. An address that ends with
    /// `/items` is asked for those alone, page by page; of any other all is taken.
    ///
    /// # Errors
    /// The network; pages that break off or never end; a server that gives fewer than it says; none that lies there.
    pub fn outlines(
        &self,
        address: &Address,
        route: &[Bounds],
        around_m: f64,
    ) -> Result<OutlinesNear, Fault> {
        let windows = surroundings(route, around_m);
        let mut at = self.first_page(address, &windows);
        let mut asked = BTreeSet::from([at.key()]);
        let mut gathered = Gathered::default();
        let mut day = String::new();
        for page in 1.. {
            if page > self.manners.most_pages {
                let most = self.manners.most_pages;
                return Err(address.fault(InNetwork::ManyPages { most }));
            }
            let answer = self.whole(&at, Wanted::Outlines)?;
            let text = answer.bytes()?;
            let parsed = OutlinePage::parse(&text);
            let parsed = parsed.ok_or_else(|| address.fault(InNetwork::NoOutlines))?;
            let next = parsed.next.clone();
            answer.day().clone_into(&mut day);
            let licence = answer.licence().map(str::to_owned);
            gathered.licence = gathered.licence.or(parsed.licence.clone()).or(licence);
            if gathered.take(parsed, &windows) == Page::Again {
                if gathered.is_whole() {
                    break;
                }
                return Err(address.fault(InNetwork::SamePage { page }));
            }
            let Some(next) = next else { break };
            at = at.leads_to(&next).map_err(|what| address.fault(what))?;
            if !asked.insert(at.key()) {
                if gathered.is_whole() {
                    break;
                }
                return Err(address.fault(InNetwork::SamePage { page: page + 1 }));
            }
        }
        gathered.near(address, around_m, day)
    }

    /// The first page: that of the surroundings of the route, where the server can tell.
    fn first_page(&self, address: &Address, windows: &[Bounds]) -> Address {
        let all = windows.iter().copied().reduce(|a, b| a.with(b));
        match all.filter(|_| is_collection(address)) {
            Some(all) => address.asking(&[
                ("bbox", bbox(&all)),
                ("limit", self.manners.page_limit.to_string()),
            ]),
            None => address.clone(),
        }
    }
}

impl Gathered {
    /// Whether all is there that the server said there is.
    fn is_whole(&self) -> bool {
        self.matched
            .is_some_and(|matched| self.came as u64 >= matched)
    }

    fn take(&mut self, page: OutlinePage, windows: &[Bounds]) -> Page {
        let (before, holds) = (self.came, !page.features.is_empty());
        self.matched = page.matched.or(self.matched);
        for feature in page.features {
            if !self.known.insert(hash(feature.to_string().as_bytes())) {
                continue;
            }
            self.came += 1;
            let near = bounds(&feature).is_some_and(|around| meets(&around, windows));
            if let Some(geometry) = feature.get("geometry").filter(|_| near) {
                self.outlines.push((called(&feature), geometry.clone()));
            }
        }
        if holds && self.came == before {
            Page::Again
        } else {
            Page::New
        }
    }

    fn near(self, address: &Address, around_m: f64, day: String) -> Result<OutlinesNear, Fault> {
        let came = self.came as u64;
        if let Some(said) = self.matched.filter(|said| *said > came) {
            return Err(address.fault(InNetwork::FewOutlines { got: came, said }));
        }
        if self.outlines.is_empty() {
            return Err(address.fault(InNetwork::NoneHere {
                outlines: self.came,
                around_m: whole_metres(around_m),
            }));
        }
        Ok(OutlinesNear {
            outlines: self.outlines,
            came: self.came,
            by_index: false,
            address: address.to_string(),
            day,
            licence: self.licence,
        })
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast saturates"
)]
fn whole_metres(metres: f64) -> u64 {
    metres.round() as u64
}

/// Whether a box meets one of the windows, a turn of the globe to either side too.
fn meets(around: &Bounds, windows: &[Bounds]) -> bool {
    let turned = [0.0, 360.0, -360.0].map(|turn| around.moved_east(turn));
    windows
        .iter()
        .any(|window| turned.iter().any(|around| window.meets(around)))
}

/// A box as OGC API – Features takes it; across the antimeridian its west is greater than its east.
fn bbox(of: &Bounds) -> String {
    let turn = |lon_deg: f64| match lon_deg {
        lon if lon < -180.0 => lon + 360.0,
        lon if lon > 180.0 => lon - 360.0,
        lon => lon,
    };
    let round = of.high.lon_deg - of.low.lon_deg >= 360.0;
    let (west, east) = if round {
        (-180.0, 180.0)
    } else {
        (turn(of.low.lon_deg), turn(of.high.lon_deg))
    };
    let (south, north) = (of.low.lat_deg.max(-90.0), of.high.lat_deg.min(90.0));
    format!("{west:.6},{south:.6},{east:.6},{north:.6}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::LonLat;

    #[test]
    fn a_box_across_the_antimeridian_has_its_west_behind_its_east() {
        let of = Bounds {
            low: LonLat::new(179.5, -17.0),
            high: LonLat::new(180.5, -16.0),
        };
        assert_eq!(bbox(&of), "179.500000,-17.000000,-179.500000,-16.000000");
        let beyond = Bounds {
            low: LonLat::new(-179.9, -16.5),
            high: LonLat::new(-179.8, -16.4),
        };
        assert!(meets(&beyond, &[of]), "the same place, a turn away");
        assert!(!meets(&beyond.moved_east(3.0), &[of]));
    }
}
