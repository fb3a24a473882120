//! How a leg stands, and where on it.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::leg::Leg;

/// How a leg stands against the limits that were given. Never a promise.
///
/// ```
/// use schrund::plan::leg::Verdict;
///
/// let mut job = schrund::example::job()?;
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Look);
/// job.zones[0].gap.max_m = 34.0; // three would have to walk 30.6 m apart, and 30 m is the most (common practice)
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Outside);
/// job.zones[0].gap.max_m = 40.0; // the fall model holds Bo in none of the cases assumed (our judgement)
/// assert_eq!(schrund::plan(&job)?.verdict(), Verdict::Stop);
/// assert!(Verdict::ALL.is_sorted(), "worse is greater");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Verdict {
    /// Walked without a rope.
    Unroped,
    /// A set-up within the limits fits a rope at hand.
    Inside,
    /// Something to decide or to watch; a finding says what.
    Look,
    /// No set-up within the limits, or no rope at hand holds it.
    Outside,
    /// Roping together is not the answer here; a finding says what is.
    Stop,
}

impl Verdict {
    /// All of them, from the mildest to the gravest.
    pub const ALL: [Self; 5] = [
        Self::Unroped,
        Self::Inside,
        Self::Look,
        Self::Outside,
        Self::Stop,
    ];

    /// The word, as printed.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Unroped => "unroped",
            Self::Inside => "inside",
            Self::Look => "look",
            Self::Outside => "outside",
            Self::Stop => "stop",
        }
    }
}

/// Where on a leg a word graver than `inside` holds.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let leg = &plan.legs[1];
/// let inside = |s: &schrund::plan::judged::JudgedStretch| leg.start_m <= s.from_m && s.to_m <= leg.end_m;
/// assert!(leg.stretches.iter().all(inside));
/// assert_eq!(leg.stretches.iter().map(|s| s.verdict).max(), Some(leg.verdict));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct JudgedStretch {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres; the same for a single place.
    pub to_m: f64,
    /// The word.
    pub verdict: Verdict,
    /// The finding that it comes from.
    pub code: &'static str,
}

/// A piece of a leg on which one word holds.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// for leg in &plan.legs {
///     let pieces: Vec<schrund::plan::judged::WordPiece> = leg.pieces();
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
