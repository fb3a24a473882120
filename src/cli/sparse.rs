//! Of a terrain model only what lies round a line: the file as it is, and what is never read made void, so that it packs
//! to nothing.
//!
//! Which bytes are read is not reckoned but watched, so that any layout of strips, tiles or rows is good.

use std::{
    io::{self, Cursor, Read, Seek, SeekFrom},
    ops::Range,
    sync::{Arc, Mutex, PoisonError},
};

use schrund::{
    fault::Fault,
    geometry::LonLat,
    ground::relief::Relief,
    raster::{RasterSource, Terrain},
    trip::route::Route,
};

use crate::limits;

/// Files up to this are taken whole, bytes. Our judgement: packed they weigh a tenth of a page.
const WHOLE_BYTES: usize = 400_000;
/// Bytes that no model takes for a height where all of a number are such: not a number, or far below any ground.
const VOIDS: [u8; 2] = [0xff, 0x80];
/// Positions that are read at once.
const MOST_AT_ONCE: f64 = 2_000_000.0;
/// Positions in each direction at which heights are compared, in the window and round it.
const LOOKS: usize = 24;

/// The bytes of a model that are needed round a line; all of them where it is small, where nothing of it lies there, or where
/// no void can be written into it. Beside them whether any were left out.
///
/// # Errors
/// The model is broken where it is read.
pub(crate) fn around(route: &Route, name: &str, whole: Vec<u8>) -> Result<(Vec<u8>, bool), Fault> {
    if whole.len() <= WHOLE_BYTES {
        return Ok((whole, false));
    }
    let seen = Arc::new(Mutex::new(Vec::new()));
    let watched = Watched {
        bytes: Cursor::new(whole.clone()),
        seen: Arc::clone(&seen),
    };
    let terrain = opened(name, Box::new(watched))?;
    let Some(relief) = Relief::around(route, &terrain)? else {
        return Ok((whole, false));
    };
    let window = (relief.south_west, relief.north_east);
    read_all(window, &terrain)?;
    let seen = std::mem::take(&mut *seen.lock().unwrap_or_else(PoisonError::into_inner));
    let good = VOIDS.into_iter().find_map(|void| {
        let bytes = kept(&whole, &seen, void);
        let sparse = opened(name, Box::new(Cursor::new(bytes.clone()))).ok()?;
        is_true_outside(window, [&sparse, &terrain]).then_some(bytes)
    });
    Ok(good.map_or_else(|| (whole, false), |good| (good, true)))
}

fn opened(name: &str, source: RasterSource) -> Result<Terrain, Fault> {
    let mut terrain = Terrain::new().within(limits::in_force());
    terrain.add(name, source)?;
    Ok(terrain)
}

/// Reads every height of a window, in bands from north to south.
fn read_all((low, high): (LonLat, LonLat), terrain: &Terrain) -> Result<(), Fault> {
    let cell_m = terrain.models().next().map_or(f64::INFINITY, |(_, m)| m);
    let corner = LonLat::new(high.lon_deg, low.lat_deg);
    let (across_m, up_m) = (low.distance_m(corner), corner.distance_m(high));
    let columns = count(across_m / cell_m);
    let bands = count(count_f(columns) * (up_m / cell_m) / MOST_AT_ONCE);
    let rows = count(up_m / cell_m / count_f(bands));
    let height_deg = (high.lat_deg - low.lat_deg) / count_f(bands);
    for band in 0..bands {
        let south = low.lat_deg + height_deg * count_f(band);
        let south_west = LonLat::new(low.lon_deg, south);
        let north_east = LonLat::new(high.lon_deg, south + height_deg);
        terrain.relief(south_west, north_east, columns, rows)?;
    }
    Ok(())
}

/// Twice as many positions as cells, so that none is passed over.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to what a raster can have"
)]
fn count(cells: f64) -> usize {
    (1.5 * cells).ceil().clamp(2.0, 100_000.0) as usize
}

#[expect(clippy::cast_precision_loss, reason = "at most 100 000")]
fn count_f(count: usize) -> f64 {
    count as f64
}

/// The bytes that were seen; the others void.
fn kept(whole: &[u8], seen: &[Range<u64>], void: u8) -> Vec<u8> {
    let mut kept = vec![void; whole.len()];
    for range in seen {
        let (Ok(from), Ok(to)) = (usize::try_from(range.start), usize::try_from(range.end)) else {
            continue;
        };
        if let (Some(into), Some(of)) = (kept.get_mut(from..to), whole.get(from..to)) {
            into.copy_from_slice(of);
        }
    }
    kept
}

/// Whether round the window every height is what it was, or none: void, or a fault.
fn is_true_outside((low, high): (LonLat, LonLat), [sparse, whole]: [&Terrain; 2]) -> bool {
    let size = (high.lon_deg - low.lon_deg, high.lat_deg - low.lat_deg);
    let spread = |i: usize| count_f(i) / count_f(LOOKS) * 3.0 - 1.0;
    let looks = (0..=LOOKS).flat_map(|x| (0..=LOOKS).map(move |y| (spread(x), spread(y))));
    let at = |(x, y)| LonLat::new(low.lon_deg + x * size.0, low.lat_deg + y * size.1);
    let mut places = looks.map(at);
    let height_m = |of: &Terrain, at| of.sample(at).ok().flatten().map(|height| height.height_m);
    places.all(|at| {
        let found = height_m(sparse, at);
        found.is_none() || found == height_m(whole, at)
    })
}

/// A file that notes what is read of it.
struct Watched {
    bytes: Cursor<Vec<u8>>,
    seen: Arc<Mutex<Vec<Range<u64>>>>,
}

impl Read for Watched {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let from = self.bytes.position();
        let count = self.bytes.read(into)?;
        let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
        let to = self.bytes.position();
        match seen.last_mut() {
            Some(last) if last.end == from => last.end = to,
            _ => seen.push(from..to),
        }
        Ok(count)
    }
}

impl Seek for Watched {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.bytes.seek(to)
    }
}
