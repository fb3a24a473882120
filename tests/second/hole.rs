//! Holes of a zone that other ice covers. All of a hole has to be covered, and only ice on which nobody unropes covers: then
//! the hole is no edge of the ice, and no margin is laid beside its border.

use super::{
    case::{Case, Patch, Spot, Word, Zone, edges},
    exact::pieces,
};

/// Level lines on which a hole is looked at, besides its own border.
const LOOKS: i64 = 60;

/// Nobody goes without a rope there, whatever the practice set says of bare ice.
fn keeps_the_rope_on(zone: &Zone) -> bool {
    match zone.word {
        Word::Always => true,
        Word::Never => false,
        Word::Auto => !zone.lies_bare(),
    }
}

/// Whether all of a stretch that is in the hole is on the other ice.
fn is_on(a: Spot, b: Spot, hole: &[Patch], ice: &[Patch]) -> bool {
    let shares = |patches: &[Patch]| -> Vec<(f64, f64)> {
        let all = pieces(a, b, patches).into_iter();
        all.map(|(from, to)| (from.value(), to.value())).collect()
    };
    let on = shares(ice);
    let reaches = |(from, to): (f64, f64)| {
        let mut reached = from;
        for &(start, end) in &on {
            if start <= reached + 1e-9 {
                reached = reached.max(end);
            }
        }
        reached + 1e-9 >= to
    };
    shares(hole).into_iter().all(reaches)
}

fn is_covered(hole: &[Spot], ice: &[Patch]) -> bool {
    let as_patch = [Patch {
        outer: hole.to_vec(),
        holes: Vec::new(),
    }];
    let span = |of: fn(&Spot) -> i64| {
        let all = hole.iter().map(of);
        (all.clone().min().unwrap_or(0), all.max().unwrap_or(0))
    };
    let ((west, east), (south, north)) = (span(|s| s.0), span(|s| s.1));
    let level = |look: i64| south + (north - south) * look / LOOKS;
    let looks = (0..=LOOKS).map(|look| ((west, level(look)), (east, level(look))));
    let border = edges(hole).filter(|(a, b)| a != b);
    let mut all = looks.chain(border);
    all.all(|(a, b)| is_on(a, b, &as_patch, ice))
}

/// The patches of a zone without the holes that other ice covers: those that have a border beside which a margin is laid.
pub(super) fn bordered(case: &Case, number: usize) -> Vec<Patch> {
    let others = case.zones.iter().enumerate();
    let others = others.filter(|(other, zone)| *other != number && keeps_the_rope_on(zone));
    let ice: Vec<Patch> = others.flat_map(|(_, zone)| zone.patches.clone()).collect();
    let bordered = |patch: &Patch| {
        let holes = patch.holes.iter().filter(|hole| !is_covered(hole, &ice));
        Patch {
            outer: patch.outer.clone(),
            holes: holes.cloned().collect(),
        }
    };
    case.zones[number].patches.iter().map(bordered).collect()
}
