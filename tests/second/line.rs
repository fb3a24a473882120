//! The line walked: chainage by geodesics on WGS 84, edges straight in longitude and latitude.

use geo::{Distance, Geodesic, Point};

use super::case::Spot;

const MICRO: f64 = 1e6;

/// Longitude and latitude in degrees.
pub(super) type Place = (f64, f64);

pub(super) fn place(spot: Spot) -> Place {
    (spot.0 as f64 / MICRO, spot.1 as f64 / MICRO)
}

/// Metres from one place to another.
pub(super) fn apart_m(a: Place, b: Place) -> f64 {
    Geodesic.distance(Point::new(a.0, a.1), Point::new(b.0, b.1))
}

/// Metres in a degree east and north at a latitude: radii of curvature of WGS 84.
pub(super) fn degree_m(lat_deg: f64) -> (f64, f64) {
    const A_M: f64 = 6_378_137.0;
    const F: f64 = 1.0 / 298.257_223_563;
    let e2 = F * (2.0 - F);
    let (sin, cos) = lat_deg.to_radians().sin_cos();
    let w2 = 1.0 - e2 * sin * sin;
    let across = A_M / w2.sqrt() * cos;
    let along = A_M * (1.0 - e2) / (w2 * w2.sqrt());
    (across.to_radians(), along.to_radians())
}

/// Metres east and north from one place to a near one.
pub(super) fn step_m(from: Place, to: Place) -> (f64, f64) {
    let (east, north) = degree_m(f64::midpoint(from.1, to.1));
    ((to.0 - from.0) * east, (to.1 - from.1) * north)
}

/// One edge of the line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Edge {
    pub(super) a: Spot,
    pub(super) b: Spot,
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    /// Number of its segment, from 0; two that meet are one.
    pub(super) segment: usize,
}

impl Edge {
    pub(super) fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }

    /// The place at a share of the edge.
    pub(super) fn at(&self, share: f64) -> Place {
        let (a, b) = (place(self.a), place(self.b));
        (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1))
    }

    /// The chainage of a share: that of the edge's start and the geodesic from there.
    pub(super) fn chainage_m(&self, share: f64) -> f64 {
        self.from_m + apart_m(place(self.a), self.at(share))
    }

    /// The share at a chainage: corrected until the geodesic agrees.
    pub(super) fn share(&self, chainage_m: f64) -> f64 {
        let mut share = (chainage_m - self.from_m) / self.length_m();
        for _ in 0..20 {
            let short_m = chainage_m - self.chainage_m(share);
            share += short_m / self.length_m();
            if short_m.abs() < 1e-9 {
                break;
            }
        }
        share.clamp(0.0, 1.0)
    }
}

/// The line of one stage.
#[derive(Debug)]
pub(super) struct Line {
    pub(super) edges: Vec<Edge>,
}

impl Line {
    /// A jump between segments adds nothing; a segment that begins where the last one ended goes on with it.
    pub(super) fn of(segments: &[Vec<Spot>]) -> Self {
        let mut edges: Vec<Edge> = Vec::new();
        let (mut walked, mut number) = (0.0, 0);
        let mut last: Option<Spot> = None;
        for spots in segments {
            if last.is_some_and(|l| l != spots[0]) {
                number += 1;
            }
            for pair in spots.windows(2).filter(|p| p[0] != p[1]) {
                let to_m = walked + apart_m(place(pair[0]), place(pair[1]));
                edges.push(Edge {
                    a: pair[0],
                    b: pair[1],
                    from_m: walked,
                    to_m,
                    segment: number,
                });
                walked = to_m;
            }
            last = spots.last().copied();
        }
        Self { edges }
    }

    pub(super) fn length_m(&self) -> f64 {
        self.edges.last().map_or(0.0, |e| e.to_m)
    }

    /// The place at a chainage of one segment.
    pub(super) fn at(&self, segment: usize, chainage_m: f64) -> Place {
        let mut own = self.edges.iter().filter(|e| e.segment == segment);
        let first = own.clone().next().expect("a segment of the line");
        let edge = own.rfind(|e| e.from_m <= chainage_m).unwrap_or(first);
        edge.at(edge.share(chainage_m))
    }

    /// From where to where each segment runs, by its number.
    pub(super) fn segments(&self) -> Vec<(usize, f64, f64)> {
        let mut all: Vec<(usize, f64, f64)> = Vec::new();
        for edge in &self.edges {
            match all.last_mut() {
                Some(last) if last.0 == edge.segment => last.2 = edge.to_m,
                _ => all.push((edge.segment, edge.from_m, edge.to_m)),
            }
        }
        all
    }
}
