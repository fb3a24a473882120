//! Ice that an inventory knows and nobody has drawn: gaps unknown, not absent.

use super::{
    case::Case,
    figures::MEETS_M,
    hole::bordered,
    line::Line,
    meet::{Stretch, crossings, joined, touches, widened, without},
    stretch::{Met, ZoneMet},
};

/// Where the line is on the inventory's ice and in no drawn zone. What is shorter than the margin and begins or ends at a
/// drawn zone is its neighbour's; a piece as short that stands alone is ice like any other.
fn pieces(inventory: &[Stretch], drawn: &[Stretch], margin_m: f64) -> Vec<Stretch> {
    let meets = |at: f64| {
        drawn
            .iter()
            .any(|d| (d.from_m - at).abs() <= MEETS_M || (d.to_m - at).abs() <= MEETS_M)
    };
    let mut left = without(inventory, drawn);
    left.retain(|p| p.length_m() >= margin_m || !(meets(p.from_m) || meets(p.to_m)));
    left
}

/// Where the line meets the zones and the ice without one. Counted as a crossing means: the line itself is on it, and
/// the stretch is widened along the line; ice that is only passed by is not counted, for beside a drawn zone nobody
/// could tell it from the zone's own margin.
pub(super) fn met(case: &Case, line: &Line) -> Met {
    let zones: Vec<ZoneMet> = case
        .zones
        .iter()
        .enumerate()
        .map(|(number, zone)| ZoneMet {
            crossings: crossings(line, &zone.patches),
            touches: touches(line, &zone.patches, &bordered(case, number), case.margin_m),
        })
        .collect();
    let drawn = zones.iter().flat_map(|z| z.crossings.clone()).collect();
    let inventory = crossings(line, &case.inventory);
    let pieces = pieces(&inventory, &joined(drawn), case.margin_m);
    let undrawn = pieces.iter().map(|&p| widened(p, case.margin_m, line));
    Met {
        undrawn: joined(undrawn.collect()),
        ice: pieces,
        zones,
    }
}
