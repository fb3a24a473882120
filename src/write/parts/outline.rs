//! Zone outlines made fit for maps: untangled, and cut at the antimeridian.

use crate::{
    geometry::{Polygon, antimeridian},
    trip::zone::Zone,
    write::sheet::Sheet,
};

/// Above so many vertices in all only zones that the route meets are looked at for tangles: looking costs
/// about a second a million. Our judgement.
const MOST_VERTICES: usize = 200_000;

/// Which zones are looked at for tangles.
#[derive(Clone, Debug)]
pub(crate) struct Outlines {
    /// Numbers of the zones met, rising; `None` for all.
    only: Option<Vec<usize>>,
}

impl Outlines {
    pub(crate) fn of(sheet: &Sheet<'_>) -> Self {
        let vertices: usize = sheet.zones.iter().map(|z| z.outline.vertices()).sum();
        let met = sheet.plan.zones_met();
        Self {
            only: (vertices > MOST_VERTICES).then_some(met),
        }
    }

    /// The polygons to draw.
    pub(crate) fn polygons(&self, zone: &Zone) -> Vec<Polygon> {
        let looked = self
            .only
            .as_ref()
            .is_none_or(|met| met.binary_search(&zone.number).is_ok());
        let parts = zone.outline.polygons.iter();
        let parts = parts.flat_map(|p| {
            if looked {
                p.untangled()
            } else {
                vec![p.clone()]
            }
        });
        parts.flat_map(|p| antimeridian::cut_polygon(&p)).collect()
    }
}
