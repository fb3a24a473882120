//! Where a zone lies that the line does not meet.

use crate::geometry::{LonLat, Outline};

/// Times to go over from the line to the zone and back. Our judgement: each makes the way shorter or ends it.
const TURNS: usize = 4;

/// A point of the line and a corner of the outer rings near each other, as one finds them who looks from one to the other
/// by turns: exact where one lies far from the other, and never nearer than they are. `None` where either has no point.
pub fn nearest<L: Iterator<Item = LonLat>>(
    line: impl Fn() -> L,
    outline: &Outline,
) -> Option<(LonLat, LonLat)> {
    let corners = || {
        outline
            .polygons
            .iter()
            .flat_map(|part| part.outer.iter().copied())
    };
    let (mut from, mut at) = (line().next()?, corners().next()?);
    for _ in 0..TURNS {
        at = closest(corners(), from)?;
        let nearer = closest(line(), at)?;
        if nearer == from {
            break;
        }
        from = nearer;
    }
    Some((from.normal(), at.normal()))
}

/// The one of some points that is closest, as far as a flat map around `to` shows it.
fn closest(points: impl Iterator<Item = LonLat>, to: LonLat) -> Option<LonLat> {
    let shrink = to.lat_deg.to_radians().cos();
    let apart = |p: &LonLat| {
        let east = LonLat::new(p.lon_deg - to.lon_deg, 0.0).normal().lon_deg * shrink;
        let north = p.lat_deg - to.lat_deg;
        east * east + north * north
    };
    points.min_by(|a, b| apart(a).total_cmp(&apart(b)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Polygon;

    /// A square of a tenth of a degree whose lower left corner stands there.
    fn square(lon: f64, lat: f64) -> Outline {
        let corners = [(0.0, 0.0), (0.1, 0.0), (0.1, 0.1), (0.0, 0.1), (0.0, 0.0)];
        let outer = corners.map(|(x, y)| LonLat::new(lon + x, lat + y)).to_vec();
        Outline {
            polygons: vec![Polygon {
                outer,
                holes: Vec::new(),
            }],
        }
    }

    #[test]
    fn it_is_told_from_the_nearest_point_of_the_line() {
        let line = [
            LonLat::new(7.0, 46.0),
            LonLat::new(7.5, 46.0),
            LonLat::new(8.0, 46.0),
        ];
        let found = nearest(|| line.into_iter(), &square(7.45, 46.2));
        assert_eq!(found, Some((line[1], LonLat::new(7.45, 46.2))));
    }

    #[test]
    fn beyond_the_antimeridian_it_is_near() {
        let line = [LonLat::new(179.9, 66.0)];
        let found = nearest(|| line.into_iter(), &square(-179.9, 66.0));
        assert_eq!(found, Some((line[0], LonLat::new(-179.9, 66.0))));
    }
}
