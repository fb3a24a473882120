//! Unrolled lines and rings brought back to −180…180, cut where they cross the antimeridian `[rfc7946]`.

use geo::{BooleanOps, Coord, MultiPolygon, Rect};

use super::{
    Bounds, LonLat, Polygon,
    outline::{from_geo, to_geo},
};

/// A line in as many parts as the antimeridian cuts it into, each within −180…180.
#[must_use]
pub fn cut_line(line: &[LonLat]) -> Vec<Vec<LonLat>> {
    let mut parts: Vec<Vec<LonLat>> = Vec::new();
    let mut part: Vec<LonLat> = Vec::new();
    let mut turn: Option<f64> = None;
    for &point in line {
        let here = turn_of(point.lon_deg);
        if let (Some(last_turn), Some(&last)) = (turn, part.last())
            && (here - last_turn).abs() > 0.5
        {
            let end = crossing(last, point, last_turn, here);
            part.push(end);
            parts.push(brought_back(std::mem::take(&mut part), last_turn));
            part.push(end);
        }
        part.push(point);
        turn = Some(here);
    }
    if let Some(turn) = turn {
        parts.push(brought_back(part, turn));
    }
    parts
}

/// Which copy of the world a longitude lies in: 0 for −180 ≤ lon ≤ 180.
fn turn_of(lon_deg: f64) -> f64 {
    if (-180.0..=180.0).contains(&lon_deg) {
        0.0
    } else {
        ((lon_deg + 180.0) / 360.0).floor()
    }
}

fn crossing(a: LonLat, b: LonLat, from_turn: f64, to_turn: f64) -> LonLat {
    let lon_deg = 180.0 + 360.0 * from_turn.min(to_turn);
    let t = (lon_deg - a.lon_deg) / (b.lon_deg - a.lon_deg);
    LonLat::new(lon_deg, a.along_edge(b, t).lat_deg)
}

fn brought_back(part: Vec<LonLat>, turn: f64) -> Vec<LonLat> {
    let back = |p: LonLat| LonLat::new(p.lon_deg - 360.0 * turn, p.lat_deg);
    part.into_iter().map(back).collect()
}

/// A polygon in as many parts as the antimeridian cuts it into. One within −180…180 stays as it is;
/// another is clipped (by `geo`, on a grid of about a millimetre).
#[must_use]
pub fn cut_polygon(polygon: &Polygon) -> Vec<Polygon> {
    let Some(bounds) = Bounds::of(&polygon.outer) else {
        return Vec::new();
    };
    if bounds.low.lon_deg >= -180.0 && bounds.high.lon_deg <= 180.0 {
        return vec![polygon.clone()];
    }
    let whole = MultiPolygon::from(to_geo(polygon));
    let turns = [
        turn_of(bounds.low.lon_deg),
        turn_of(bounds.high.lon_deg),
        0.0,
    ];
    let mut turns = turns.to_vec();
    turns.sort_by(f64::total_cmp);
    turns.dedup();
    turns
        .into_iter()
        .flat_map(|turn| clipped(&whole, turn))
        .collect()
}

fn clipped(whole: &MultiPolygon, turn: f64) -> Vec<Polygon> {
    let corner = |lon: f64, lat: f64| Coord {
        x: lon + 360.0 * turn,
        y: lat,
    };
    let world = Rect::new(corner(-180.0, -90.0), corner(180.0, 90.0)).to_polygon();
    let part = whole.intersection(&MultiPolygon::from(world));
    part.into_iter().map(|p| from_geo(&p, turn)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_over_the_antimeridian_is_cut_on_it() {
        let line = [
            LonLat::new(179.0, 10.0),
            LonLat::new(181.0, 12.0),
            LonLat::new(182.0, 12.0),
        ];
        let parts = cut_line(&line);
        assert_eq!(parts.len(), 2, "{parts:?}");
        assert_eq!(
            parts[0],
            [LonLat::new(179.0, 10.0), LonLat::new(180.0, 11.0)]
        );
        let rest = [
            LonLat::new(-180.0, 11.0),
            LonLat::new(-179.0, 12.0),
            LonLat::new(-178.0, 12.0),
        ];
        assert_eq!(parts[1], rest);
    }

    #[test]
    fn a_polygon_over_the_antimeridian_becomes_two() {
        let ring = [
            (179.0, 0.0),
            (181.0, 0.0),
            (181.0, 1.0),
            (179.0, 1.0),
            (179.0, 0.0),
        ];
        let outer = ring.map(|(x, y)| LonLat::new(x, y)).to_vec();
        let parts = cut_polygon(&Polygon {
            outer,
            holes: Vec::new(),
        });
        assert_eq!(parts.len(), 2, "{parts:?}");
        for part in &parts {
            let bounds = Bounds::of(&part.outer).unwrap();
            assert!(
                bounds.low.lon_deg >= -180.0 && bounds.high.lon_deg <= 180.0,
                "{bounds:?}"
            );
            assert!(
                (bounds.high.lon_deg - bounds.low.lon_deg - 1.0).abs() < 1e-6,
                "{bounds:?}"
            );
        }
    }
}
