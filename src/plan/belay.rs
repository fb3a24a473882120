//! Belays that a leg asks for.

use schemars::JsonSchema;
use serde::Serialize;

/// Belays that the findings of a leg ask for: how many, as far as a plan can tell, and how long they take. How many gaps
/// there are under the snow nobody knows, so they are counted by the metre, with figures of our judgement.
///
/// ```
/// use schrund::{practice::Rule, trip::party::Party};
///
/// // A pair is pulled into a gap that three would hold, wherever it goes over hidden ones.
/// let job = schrund::example::job()?;
/// let pair = schrund::Planner::new(&job)?.plan_for(&Party::weighing(&[82.0, 75.0]))?;
/// let belays = pair.legs[1].belays.as_ref().expect("asked for");
/// let asked_m: f64 = belays.pieces.iter().map(|piece| piece.to_m - piece.from_m).sum();
/// assert!(belays.belays as f64 >= asked_m / job.rules[Rule::BelayEveryM]);
/// let each_min = job.rules[Rule::BelayMin] + 2.0 * job.rules[Rule::BelayEachMin];
/// assert_eq!(belays.minutes, belays.belays as f64 * each_min);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LegBelays {
    /// How many.
    pub belays: usize,
    /// Minutes that they take.
    pub minutes: f64,
    /// Where they are asked for, in walking order.
    pub pieces: Vec<BelayedPiece>,
}

impl LegBelays {
    /// Minutes that those on a piece of it take.
    pub(crate) fn minutes_of(&self, piece: &BelayedPiece) -> f64 {
        let [all, of_piece] = [self.belays, piece.belays].map(count);
        self.minutes * of_piece / all.max(1.0)
    }
}

#[expect(clippy::cast_precision_loss, reason = "few")]
fn count(belays: usize) -> f64 {
    belays as f64
}

/// A piece of a leg with belays.
///
/// ```
/// use schrund::plan::belay::BelayedPiece;
///
/// let piece = BelayedPiece { from_m: 1200.0, to_m: 1380.0, belays: 2 };
/// assert_eq!(serde_json::to_string(&piece)?, r#"{"from_m":1200.0,"to_m":1380.0,"belays":2}"#);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct BelayedPiece {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, likewise.
    pub to_m: f64,
    /// How many are counted on it, at least one.
    pub belays: usize,
}
