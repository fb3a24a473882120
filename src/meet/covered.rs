//! Holes of a zone that other zones cover: no edge of the ice as a whole.

use crate::{
    geometry::{
        Bounds, LonLat,
        area::{Area, HoleIndex},
        outline,
    },
    trip::zone::{RopeWord, Zone},
};

/// The holes of a zone that lie wholly on the ice of others; `others` gives those whose boxes meet a box. Ice on which
/// the rope may come off covers nothing: its border is where that happens, and keeps its margin.
pub(super) fn holes<'z>(
    zone: &Zone,
    others: impl Fn(&Bounds) -> Vec<(&'z Zone, &'z Area)>,
) -> Vec<HoleIndex> {
    let is_covered = |ring: &Vec<LonLat>| {
        let mut others = Bounds::of(ring).map_or(Vec::new(), |bounds| others(&bounds));
        others.retain(|(zone, _)| is_roped(zone));
        // Cheap and nearly always no; only a hole whose corners all lie on other ice is looked at as a whole.
        let mut corners = ring.iter();
        let on_ice = |p: &LonLat| others.iter().any(|(_, area)| area.contains(*p));
        corners.all(on_ice)
            && outline::is_covered(ring, others.iter().map(|(zone, _)| &zone.outline))
    };
    let polygons = zone.outline.polygons.iter().enumerate();
    let holes = polygons.flat_map(|(polygon, p)| {
        let index = move |(hole, ring)| (HoleIndex { polygon, hole }, ring);
        p.holes.iter().enumerate().map(index)
    });
    holes
        .filter(|(_, ring)| is_covered(ring))
        .map(|(index, _)| index)
        .collect()
}

/// Whether nobody goes without a rope there, whatever the practice set says of bare ice.
fn is_roped(zone: &Zone) -> bool {
    match zone.rope {
        RopeWord::Always => true,
        RopeWord::Never => false,
        RopeWord::Auto => zone.hides_gaps(),
    }
}
