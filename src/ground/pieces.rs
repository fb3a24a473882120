//! Pieces of legs on one line with how they fall, whatever ice is there, for those who ask again and again.

use std::sync::Arc;

use crate::{answered::Answered, trip::route::Stretch};

/// How the pieces of a leg fall, in walking order.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Falls {
    /// See [`super::incline::Incline::down_deg`].
    pub(super) down_deg: Box<[Option<[f64; 2]>]>,
    /// See [`super::incline::Incline::ground_deg`]; empty where nobody knows the ground of any.
    pub(super) ground_deg: Box<[Option<f64>]>,
}

/// Those of legs that were asked for before, by where the leg is, the length of its pieces, and over how far a slope is
/// taken, to the last bit.
#[derive(Debug, Default)]
pub(crate) struct KnownPieces(Answered<[u64; 4], Arc<Falls>>);

/// Pieces that are kept, forty bytes each at the most `[ours]`.
const MOST_KNOWN: usize = 100_000;

impl KnownPieces {
    /// The pieces of a leg; `ask` makes them where they are not known.
    pub(super) fn of(
        &self,
        leg: Stretch,
        [piece_m, over_m]: [f64; 2],
        ask: impl FnOnce() -> Arc<Falls>,
    ) -> Arc<Falls> {
        let key = [leg.from_m, leg.to_m, piece_m, over_m].map(f64::to_bits);
        self.0
            .to(key, MOST_KNOWN, |_, falls| falls.down_deg.len(), ask)
    }
}
