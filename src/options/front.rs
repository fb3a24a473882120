//! The ways that no other way beats in everything. Of the changes to the rules only more of the same are worse:
//! nobody but the leader knows whether a long sling or butterflies are easier to come by. Which two ropes are joined is all one.

use crate::plan::{change::Change, leg::Verdict, options::Way};

/// What is weighed; of each, less is better.
type Weighed = [f64; 7];

/// Ways of which none beats another.
#[derive(Debug, Default)]
pub(super) struct Front {
    ways: Vec<(Weighed, Way)>,
}

impl Front {
    /// Adds a way unless one that is there is as good in everything; drops those that it beats.
    pub(super) fn add(&mut self, way: Way) {
        let weighed = weigh(&way);
        let new = (weighed, way);
        if self.ways.iter().any(|old| as_good(old, &new)) {
            return;
        }
        self.ways.retain(|old| !as_good(&new, old));
        self.ways.push(new);
    }

    /// The ways, numbered. Those outside the limits stand only where there is no other, those without rope enough only where
    /// nobody has enough.
    pub(super) fn best_first(self) -> Vec<Way> {
        let mut ways = self.ways;
        for good in [
            |way: &Way| way.verdict < Verdict::Outside,
            |way: &Way| !lacks_rope(way),
        ] {
            if ways.iter().any(|(_, way)| good(way)) {
                ways.retain(|(_, way)| good(way));
            }
        }
        ways.sort_by(|(a, _), (b, _)| {
            order(a)
                .partial_cmp(&order(b))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
        let numbered = ways.into_iter().enumerate();
        numbered
            .map(|(i, (_, way))| Way { way: i + 1, ..way })
            .collect()
    }
}

fn lacks_rope(way: &Way) -> bool {
    way.short_m > 1e-9
}

#[expect(clippy::cast_precision_loss, reason = "small counts")]
fn weigh(way: &Way) -> Weighed {
    let millimetres = |m: f64| (m * 1000.0).round();
    // Metres missing count within a verdict, never across two; without rope enough nothing can be walked at all.
    let step = f64::from(u32::MAX);
    let rank = if lacks_rope(way) {
        u8::MAX
    } else {
        way.verdict as u8
    };
    // Where rope or spacing is missing, nobody asks what the rest weighs.
    let counts = f64::from(u8::from(way.verdict < Verdict::Outside));
    [
        step * f64::from(rank) + millimetres(way.short_m),
        -(way.left_to_hold as f64),
        counts * millimetres(way.rope_mass_kg),
        counts * millimetres(way.coil_m),
        counts * way.setup_changes as f64,
        way.changes.len() as f64,
        f64::from(u8::from(!way.another_team)),
    ]
}

/// The order of importance for "best first": verdict, nothing changed, people left to hold, another team, mass,
/// coil, set-up changes. Our judgement; the front itself does not rest on it.
fn order(&[verdict, left, mass, coil, setups, changes, team]: &Weighed) -> Weighed {
    [verdict, changes, left, team, mass, coil, setups]
}

fn as_good((a, way): &(Weighed, Way), (b, other): &(Weighed, Way)) -> bool {
    let few = |change: &Change| other.changes.iter().any(|there| all_one(change, there));
    a.iter().zip(b).all(|(a, b)| a <= b) && way.changes.iter().all(few)
}

/// Whether two changes ask the same of whoever ties.
fn all_one(change: &Change, other: &Change) -> bool {
    let joined = |change: &Change| matches!(change, Change::JoinedRopes { .. });
    change == other || (joined(change) && joined(other))
}
