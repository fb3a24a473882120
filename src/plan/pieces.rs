//! A leg by the word that holds on each piece.

use crate::plan::{leg::Leg, verdict::Verdict};

/// A piece of a leg on which one word holds.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// for leg in &plan.legs {
///     let pieces: Vec<schrund::plan::pieces::WordPiece> = leg.pieces();
///     assert_eq!((pieces[0].from_m, pieces[pieces.len() - 1].to_m), (leg.start_m, leg.end_m));
///     assert!(pieces.windows(2).all(|pair| pair[0].to_m == pair[1].from_m), "they tile the leg");
///     assert_eq!(pieces.iter().map(|piece| piece.verdict).max(), Some(leg.verdict));
/// }
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WordPiece {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres.
    pub to_m: f64,
    /// The gravest word that holds there.
    pub verdict: Verdict,
}

impl WordPiece {
    /// Metres.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }
}

impl Leg {
    /// The leg by the gravest word that holds on each piece, in walking order; neighbours differ. A word that holds at a
    /// single place cuts nothing, and where the gravest one does, the whole leg carries it.
    #[must_use]
    pub fn pieces(&self) -> Vec<WordPiece> {
        let mut ends_m = vec![self.start_m, self.end_m];
        let inside = |m: &f64| *m > self.start_m && *m < self.end_m;
        let cuts = self.stretches.iter().flat_map(|s| [s.from_m, s.to_m]);
        ends_m.extend(cuts.filter(inside));
        ends_m.sort_by(f64::total_cmp);
        ends_m.dedup();
        let mut pieces: Vec<WordPiece> = Vec::new();
        for pair in ends_m.windows(2) {
            let piece = WordPiece {
                from_m: pair[0],
                to_m: pair[1],
                verdict: self.word_at(f64::midpoint(pair[0], pair[1])),
            };
            match pieces.last_mut() {
                Some(last) if last.verdict == piece.verdict => last.to_m = piece.to_m,
                _ => pieces.push(piece),
            }
        }
        if pieces.iter().all(|piece| piece.verdict < self.verdict) {
            return vec![WordPiece {
                from_m: self.start_m,
                to_m: self.end_m,
                verdict: self.verdict,
            }];
        }
        pieces
    }

    fn word_at(&self, m: f64) -> Verdict {
        let there = self.stretches.iter();
        let there = there.filter(|s| s.from_m <= m && m <= s.to_m);
        let mild = if self.roped {
            Verdict::Inside
        } else {
            Verdict::Unroped
        };
        there.map(|s| s.verdict).fold(mild, Verdict::max)
    }
}
