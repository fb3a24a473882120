//! Coordinate and height systems by EPSG number: data/crs.toml as types.

use std::sync::LazyLock;

use serde::Deserialize;

static TABLE: LazyLock<SystemTable> =
    LazyLock::new(|| toml::from_str(include_str!("../../data/crs.toml")).unwrap_or_default());

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct SystemTable {
    utm: Vec<UtmFamily>,
    crs: Vec<CoordinateSystem>,
    vertical: Vec<VerticalSystem>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct UtmFamily {
    family: String,
    first_epsg: u32,
    first_zone: u32,
    zones: u32,
    south: bool,
}

/// A coordinate system and how to project into it.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct CoordinateSystem {
    /// Its number.
    pub(crate) epsg: u32,
    /// Its name in the EPSG dataset.
    pub(crate) name: String,
    /// The projection string.
    pub(crate) proj: String,
    /// Where the datum shift in the string comes from, and its accuracy.
    #[serde(default)]
    pub(crate) shift: Option<String>,
}

/// A height system.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct VerticalSystem {
    /// Its number.
    pub(crate) epsg: u32,
    /// Its name in the EPSG dataset.
    pub(crate) name: String,
    /// Metres in one unit.
    pub(crate) unit_m: f64,
    /// It counts downwards: depths.
    pub(crate) down: bool,
}

/// The coordinate system with this number, if the table has it.
pub(crate) fn system(epsg: u32) -> Option<CoordinateSystem> {
    let single = TABLE.crs.iter().find(|s| s.epsg == epsg).cloned();
    single.or_else(|| TABLE.utm.iter().find_map(|family| family.member(epsg)))
}

/// The height system with this number, if it is one of the named or unusual ones.
pub(crate) fn heights(epsg: u32) -> Option<&'static VerticalSystem> {
    TABLE.vertical.iter().find(|h| h.epsg == epsg)
}

/// All systems of the table that count metres, those of WGS 84 first.
pub(crate) fn projected() -> impl Iterator<Item = CoordinateSystem> {
    let utm = TABLE.utm.iter().flat_map(|family| {
        let numbers = family.first_epsg..family.first_epsg + family.zones;
        numbers.filter_map(|epsg| family.member(epsg))
    });
    let plain = TABLE.crs.iter().cloned();
    utm.chain(plain)
        .filter(|system| !system.proj.contains("+proj=longlat"))
}

impl UtmFamily {
    fn member(&self, epsg: u32) -> Option<CoordinateSystem> {
        let nth = epsg
            .checked_sub(self.first_epsg)
            .filter(|n| *n < self.zones)?;
        let zone = self.first_zone + nth;
        let (south, letter) = if self.south {
            (" +south", 'S')
        } else {
            ("", 'N')
        };
        let frame = match self.family.as_str() {
            "WGS 84" => "+datum=WGS84",
            _ => "+ellps=GRS80",
        };
        Some(CoordinateSystem {
            epsg,
            name: format!("{} / UTM zone {zone}{letter}", self.family),
            proj: format!("+proj=utm +zone={zone}{south} {frame} +units=m"),
            shift: None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{LonLat, projection::Projection};

    #[test]
    fn every_string_of_the_table_projects_as_proj_does() {
        let mut rows = 0;
        for line in include_str!("../../tests/reference/crs.csv").lines() {
            let cells: Vec<f64> = line.split(',').filter_map(|c| c.parse().ok()).collect();
            let [_, lon, lat, x, y, _stray_m] = cells.as_slice() else {
                continue;
            };
            let epsg = line.split(',').next().and_then(|c| c.parse().ok());
            check(epsg.expect("a number"), LonLat::new(*lon, *lat), (*x, *y));
            rows += 1;
        }
        assert!(rows > 390, "only {rows} rows were checked");
    }

    fn check(epsg: u32, at: LonLat, want: (f64, f64)) {
        let system = system(epsg).unwrap_or_else(|| panic!("EPSG:{epsg} is in the table"));
        let map = Projection::parse(&system.proj)
            .unwrap_or_else(|| panic!("EPSG:{epsg} is understood: {}", system.proj));
        let (x, y) = map.forward(at).expect("in its area");
        let tolerance = if map.is_geographic() { 1e-8 } else { 1e-3 };
        assert!(
            (x - want.0).abs() <= tolerance && (y - want.1).abs() <= tolerance,
            "EPSG:{epsg} at {at:?}: got {x}, {y}, want {want:?}"
        );
        assert!(
            map.leads_back(at, (x, y)),
            "EPSG:{epsg} at {at:?} leads back"
        );
    }

    #[test]
    fn unusual_heights_are_known() {
        let feet = heights(6360).expect("NAVD88 in US survey feet");
        assert!((feet.unit_m - 1200.0 / 3937.0).abs() < 1e-15, "{feet:?}");
        assert!(heights(6357).is_some_and(|h| h.down), "NAVD88 depth");
        assert!(
            heights(4440).is_none(),
            "an ordinary one in metres is not listed"
        );
    }
}
