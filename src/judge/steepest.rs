//! Where on a stretch it is steepest, and all that is steeper than some threshold.

use crate::{
    fault::Level,
    ground::incline::Incline,
    judge::place::place_at,
    plan::{
        fact::Fact,
        finding::{At, Finding},
    },
    rope::legs::RopedLeg,
    trip::route::Stretch,
};

/// The steepest pieces of a stretch of a leg that lie side by side; the stretch itself where no heights are known.
pub(super) fn steepest(leg: &RopedLeg<'_>, from_m: f64, to_m: f64) -> Stretch {
    let whole = Stretch { from_m, to_m };
    let inclines = leg.footing.inclines.iter();
    let on: Vec<Incline<'_>> = inclines.filter(|i| i.piece.overlaps(&whole)).collect();
    let shown = |i: &Incline| i.steepest_deg().map(|deg| (deg - 1e-6).ceil());
    let most = on.iter().filter_map(shown).reduce(f64::max);
    let steep = |i: &&Incline<'_>| most.is_some() && shown(i) == most;
    let mut pieces = on.iter().filter(steep).map(|i| i.piece);
    let Some(mut found) = pieces.next() else {
        return whole;
    };
    for piece in pieces.take_while(|piece| piece.from_m < to_m) {
        if piece.from_m > found.to_m + 1e-6 {
            break;
        }
        found.to_m = piece.to_m;
    }
    Stretch {
        from_m: found.from_m.max(from_m),
        to_m: found.to_m.min(to_m),
    }
}

/// Pieces that are steeper than some threshold, taken together.
pub(super) struct SteepRuns {
    /// The run that holds the steepest piece.
    pub(super) worst: Stretch,
    /// How steep that is, degrees.
    pub(super) slope_deg: f64,
    /// All runs, in walking order.
    pub(super) runs: Vec<Stretch>,
}

impl SteepRuns {
    /// Of these pieces with their slopes; `None` where there are none.
    pub(super) fn of(pieces: impl Iterator<Item = (Stretch, f64)>) -> Option<Self> {
        let steep: Vec<(Stretch, f64)> = pieces.collect();
        let &(worst, slope_deg) = steep.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
        let runs = Stretch::merged(steep.into_iter().map(|(piece, _)| piece).collect(), 1e-6);
        let run = runs.iter().find(|run| run.meets(&worst)).copied();
        Some(Self {
            worst: run.unwrap_or(worst),
            slope_deg,
            runs,
        })
    }

    /// Of all runs, metres.
    pub(super) fn length_m(&self) -> f64 {
        self.runs.iter().map(Stretch::length_m).sum()
    }

    /// What is found of them, at the worst.
    pub(super) fn finding(&self, leg: &RopedLeg<'_>, fact: Fact) -> Finding {
        let place = place_at(leg, self.worst.from_m, self.worst.to_m);
        Finding::new(At::Leg(place), fact)
    }

    /// Every run with what is found of them.
    pub(super) fn judged(&self, fact: &Fact) -> Vec<JudgedPlace> {
        let (level, code) = (fact.level(), fact.code());
        let runs = self.runs.iter();
        runs.map(|run| (level, code, *run)).collect()
    }
}

/// A place of a leg that holds a word: how grave it is, why, and where.
pub(super) type JudgedPlace = (Level, &'static str, Stretch);
