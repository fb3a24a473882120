//! Pieces of legs on one line with how they fall, whatever ice is there, for those who ask again and again.

use std::sync::Arc;

use crate::{answered::Answered, trip::route::Stretch};

/// A piece of a leg and how it falls.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct FallingPiece {
    pub(super) piece: Stretch,
    /// See [`super::incline::Incline::down_deg`].
    pub(super) down_deg: Option<[f64; 2]>,
    pub(super) ground_deg: Option<f64>,
}

/// Those of legs that were asked for before, by where the leg is, the length of its pieces, and over how far a slope is
/// taken, to the last bit.
#[derive(Debug, Default)]
pub(crate) struct KnownPieces(Answered<[u64; 4], Arc<[FallingPiece]>>);

/// Pieces that are kept, sixty bytes each `[ours]`.
const MOST_KNOWN: usize = 100_000;

impl KnownPieces {
    /// The pieces of a leg; `ask` makes them where they are not known.
    pub(super) fn of(
        &self,
        leg: Stretch,
        [piece_m, over_m]: [f64; 2],
        ask: impl FnOnce() -> Arc<[FallingPiece]>,
    ) -> Arc<[FallingPiece]> {
        let key = [leg.from_m, leg.to_m, piece_m, over_m].map(f64::to_bits);
        self.0.to(key, MOST_KNOWN, |_, pieces| pieces.len(), ask)
    }
}
