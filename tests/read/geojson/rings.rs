//! Rings as real files hold them: open, doubled, tangled, across the antimeridian.

use super::{SQUARE, noted, outer, ring};
use crate::fixture::texts::{collection, feature_of, polygon};

#[test]
fn open_rings_are_closed_and_doubled_vertices_dropped() {
    let zone = noted(
        &ring("[[7,46],[7,46],[8,46],[8,46],[8,47]]"),
        &["note[ring-closed]: 1 ring closed: the last point was not the first\n  at: z.geojson"],
    );
    let want = [(7.0, 46.0), (8.0, 46.0), (8.0, 47.0), (7.0, 46.0)];
    assert_eq!(outer(&zone[0]), want, "the ring");
}

#[test]
fn rings_that_touch_or_cross_themselves_are_kept_as_they_are() {
    for tangled in [
        "[[0,0],[2,2],[2,0],[0,2],[0,0]]",
        "[[0,0],[4,0],[4,4],[2,0],[0,4],[0,0]]",
        "[[0,0],[4,0],[4,4],[4,8],[4,4],[0,4],[0,0]]",
    ] {
        let zone = noted(
            &ring(tangled),
            &[
                "note[ring-tangled]: 1 ring with a line that touches or crosses itself: what a ring winds round counts as ice\n  at: z.geojson",
            ],
        );
        assert_eq!(
            outer(&zone[0]).len(),
            tangled.matches('[').count() - 1,
            "vertices of {tangled}"
        );
    }
}

#[test]
fn rings_without_area_are_left_out_and_the_ice_beside_them_stays() {
    let text = collection(&[
        feature_of(
            r#"{"gap_m":3}"#,
            &format!(
                r#"{{"type":"MultiPolygon","coordinates":[[[[7,46],[8,46],[7,46]]],[{SQUARE},[[7,46],[8,46]]]]}}"#
            ),
        ),
        feature_of("{}", &polygon("[]")),
    ]);
    let read = noted(
        &text,
        &[
            "warning[no-area]: 2 polygons left out: fewer than three different points cover nothing\n  at: z.geojson",
        ],
    );
    assert_eq!(read.len(), 1, "zones");
    assert_eq!(read[0].outline.polygons.len(), 1, "polygons");
    assert!(
        read[0].outline.polygons[0].holes.is_empty(),
        "a hole without area takes nothing out"
    );
}

#[test]
fn rings_are_unrolled_across_the_antimeridian_only_where_that_closes_them() {
    let across = &noted(
        &ring(
            "[[179,-78],[-179,-78],[-179,-77],[179,-77],[179,-78]],[[-179.5,-77.6],[-179.4,-77.6],[-179.4,-77.5],[-179.5,-77.6]]",
        ),
        &[],
    )[0];
    let lons: Vec<f64> = outer(across).iter().map(|p| p.0).collect();
    assert_eq!(lons, [179.0, 181.0, 181.0, 179.0, 179.0], "unrolled");
    let hole = &across.outline.polygons[0].holes[0];
    assert!(
        (hole[0].lon_deg - 180.5).abs() < 1e-9,
        "the hole goes with its ring: {}",
        hole[0].lon_deg
    );
    for planar in [
        "[[-180,-70],[0,-65],[180,-70],[180,-90],[-180,-90],[-180,-70]]",
        "[[-180,-60],[180,-60],[180,-90],[-180,-90],[-180,-60]]",
    ] {
        let zone = &noted(&ring(planar), &[])[0];
        let widest = outer(zone).iter().fold(0.0_f64, |w, p| w.max(p.0.abs()));
        assert!((widest - 180.0).abs() < 1e-12, "{planar} stays as drawn");
        assert!(
            outer(zone).iter().any(|p| p.0 > 179.0) && outer(zone).iter().any(|p| p.0 < -179.0),
            "both edges stay"
        );
    }
}

#[test]
fn a_place_written_on_both_sides_of_the_antimeridian_stands_there_once() {
    let read = noted(
        &ring(
            "[[-179.9,66.4],[-179.9,62.4],[180,62.6],[180,66.6],[-180,66.6],[-180,66.8],[-179.9,66.4]]",
        ),
        &[],
    );
    let outer = outer(&read[0]);
    assert_eq!(outer.len(), 6, "{outer:?}");
    assert!(outer.windows(2).all(|edge| edge[0] != edge[1]), "{outer:?}");
}
