//! Ice that an inventory knows and nobody drew: the gaps there are unknown, not absent.

use crate::{
    meet::contact::{Contact, Of, SAME_PLACE_M},
    trip::route::{Stage, Stretch},
};

/// The ice of the inventory outside every zone as one contact, widened by the margin along the line; `None` where the
/// stage meets none.
///
/// A piece no longer than the margin that adjoins a zone is what maps are off, and belongs to that zone. Beside the
/// line nothing is widened: an inventory is no word about the ground next to it.
///
/// ```
/// use schrund::{example, meet::{Ice, undrawn::undrawn}};
///
/// let pair = example::pair()?;
/// let stage = &pair.route.stages[0];
/// let drawn = Ice::of(&pair.zones).contacts(stage, 20.0);
/// let inventory = Ice::of(&pair.glaciers).contacts(stage, 0.0);
/// let known = undrawn(stage, &drawn, &inventory, 20.0).expect("below the lower zone and between both");
/// assert_eq!((known.of.zone(), known.crossings.len()), (None, 2));
/// assert!(undrawn(stage, &drawn, &drawn, 20.0).is_none(), "all of it is drawn");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[must_use]
pub fn undrawn(
    stage: &Stage,
    drawn: &[Contact],
    inventory: &[Contact],
    margin_m: f64,
) -> Option<Contact> {
    let zones = crossed(drawn);
    let breaks: Vec<f64> = stage.jumps().map(|j| j.at_m).collect();
    let apart = |at_m: f64| !breaks.iter().any(|b| same(*b, at_m));
    let sliver = |s: &Stretch| {
        let adjoins = |at_m: f64| apart(at_m) && zones.iter().any(|z| ends_at(*z, at_m));
        s.length_m() <= margin_m && (adjoins(s.from_m) || adjoins(s.to_m))
    };
    let mut crossings: Vec<Stretch> = crossed(inventory)
        .into_iter()
        .flat_map(|piece| without(piece, &zones))
        .flat_map(|piece| cut(piece, &breaks))
        .collect();
    crossings.retain(|s| s.length_m() > SAME_PLACE_M && !sliver(s));
    let length_m = stage.length_m();
    let widened = crossings.iter().map(|c| Stretch {
        from_m: (c.from_m - margin_m).max(0.0),
        to_m: (c.to_m + margin_m).min(length_m),
    });
    let touches = Stretch::merged(widened.collect(), SAME_PLACE_M);
    (!crossings.is_empty()).then_some(Contact {
        of: Of::KnownIce,
        crossings,
        touches,
    })
}

/// Where the line is on any of this ice.
#[must_use]
pub fn crossed(contacts: &[Contact]) -> Vec<Stretch> {
    let all = contacts.iter().flat_map(|c| c.crossings.iter().copied());
    Stretch::merged(all.collect(), SAME_PLACE_M)
}

fn same(a_m: f64, b_m: f64) -> bool {
    (a_m - b_m).abs() <= SAME_PLACE_M
}

fn ends_at(zone: Stretch, at_m: f64) -> bool {
    same(zone.from_m, at_m) || same(zone.to_m, at_m)
}

/// What of a piece lies outside these stretches, which are apart and in order.
fn without(piece: Stretch, zones: &[Stretch]) -> Vec<Stretch> {
    let mut rest = Vec::new();
    let mut from_m = piece.from_m;
    let first = zones.partition_point(|z| z.to_m <= piece.from_m);
    let met = zones.iter().skip(first);
    for zone in met.take_while(|z| z.from_m < piece.to_m) {
        let to_m = zone.from_m.max(from_m);
        rest.push(Stretch { from_m, to_m });
        from_m = zone.to_m;
    }
    let to_m = piece.to_m.max(from_m);
    rest.push(Stretch { from_m, to_m });
    rest
}

/// The parts of a piece between jumps: what lies on both sides of one was never walked over as one.
fn cut(piece: Stretch, breaks: &[f64]) -> Vec<Stretch> {
    let inside = |m: &&f64| piece.from_m < **m && **m < piece.to_m;
    let mut ends = vec![piece.from_m];
    ends.extend(breaks.iter().filter(inside));
    ends.push(piece.to_m);
    let between = |pair: &[f64]| Stretch {
        from_m: pair[0],
        to_m: pair[1],
    };
    ends.windows(2).map(between).collect()
}
