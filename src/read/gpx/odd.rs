//! Numbers that are not taken as they stand: counted over the file, and told once.

use crate::{
    fault::{Fault, Place, gpx::InGpx, place::Excerpt},
    geometry::lonlat::{LonLat, ROUNDING_DEG},
};

use super::{
    fix::{HIGHEST_M, LOWEST_M},
    tally::Tally,
};

/// What was met of them.
#[derive(Debug, Default)]
pub(super) struct Odd {
    /// The first height outside the range, where it stands, and how many there are.
    heights: Option<(Excerpt, Place, usize)>,
    /// Longitudes just beyond ±180.
    longitudes: usize,
}

impl Odd {
    /// The position, on the antimeridian where it just misses it.
    pub(super) fn taken_back(&mut self, at: LonLat) -> LonLat {
        self.longitudes += usize::from(at.beyond_deg() > ROUNDING_DEG);
        at.taken_back()
    }

    /// A height that is none.
    pub(super) fn height(&mut self, found: Excerpt, place: Place) {
        match &mut self.heights {
            Some((_, _, count)) => *count += 1,
            none => *none = Some((found, place, 1)),
        }
    }

    /// Says it.
    pub(super) fn told(self, file: &str, tally: &mut Tally) {
        if let Some((first, place, count)) = self.heights {
            let what = InGpx::HeightsOutside {
                count,
                first,
                low_m: LOWEST_M,
                high_m: HIGHEST_M,
            };
            tally.add((what.kind(), "outside"), || Fault::new(what, place));
        }
        if self.longitudes > 0 {
            let what = InGpx::LongitudesTakenBack(self.longitudes);
            tally.add((what.kind(), ""), || Fault::new(what, Place::file(file)));
        }
    }
}
