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
    let on = inclines.filter(|incline| incline.piece.overlaps(&whole));
    let shown = |incline: &Incline| incline.steepest_deg().map(shown_deg);
    let on: Vec<_> = on.map(|incline| (incline.piece, shown(&incline))).collect();
    side_by_side(&on, whole)
}

/// In whole degrees, as it is told: never as less steep, and a whole degree as itself, however its last digits fell.
fn shown_deg(deg: f64) -> f64 {
    (deg - 1e-6).ceil()
}

/// The first of the steepest pieces of a stretch, in whole degrees, with those behind it that are as steep.
fn side_by_side(on: &[(Stretch, Option<f64>)], whole: Stretch) -> Stretch {
    let most = on.iter().filter_map(|(_, deg)| *deg).reduce(f64::max);
    let steep = on.iter().filter(|(_, deg)| most.is_some() && *deg == most);
    let mut pieces = steep.map(|(piece, _)| *piece);
    let Some(mut found) = pieces.next() else {
        return whole;
    };
    for piece in pieces {
        if piece.from_m > found.to_m + 1e-6 {
            break;
        }
        found.to_m = piece.to_m;
    }
    Stretch {
        from_m: found.from_m.max(whole.from_m),
        to_m: found.to_m.min(whole.to_m),
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Pieces of ten metres from 100 m on, with their slopes.
    fn found(slopes: &[Option<f64>], from_m: f64, to_m: f64) -> String {
        let ends = |i: u32| f64::from(100 + 10 * i);
        let pieces = (0..).zip(slopes).map(|(i, deg)| {
            let piece = Stretch {
                from_m: ends(i),
                to_m: ends(i + 1),
            };
            (piece, *deg)
        });
        let pieces: Vec<_> = pieces.collect();
        let stretch = side_by_side(&pieces, Stretch { from_m, to_m });
        format!("{}–{}", stretch.from_m, stretch.to_m)
    }

    #[test]
    fn the_first_of_the_steepest_is_told_with_those_that_join_it() {
        let slopes = [20.0, 31.0, 31.0, 28.0, 31.0].map(Some);
        assert_eq!(
            found(&slopes, 90.0, 160.0),
            "110–130",
            "the third lies apart"
        );
        assert_eq!(
            found(&slopes, 115.0, 160.0),
            "115–130",
            "no farther than the stretch"
        );
        assert_eq!(found(&slopes, 90.0, 125.0), "110–125");
        let last = [20.0, 25.0, 31.0].map(Some);
        assert_eq!(found(&last, 90.0, 160.0), "120–130");
    }

    #[test]
    fn a_whole_degree_is_told_as_itself_and_a_little_more_as_the_next() {
        let told = [30.0, 30.0 + 5e-7, 30.1, 31.0 - 5e-7];
        let told = told.map(|deg| shown_deg(deg).to_string());
        assert_eq!(told, ["30", "30", "31", "31"]);
    }

    #[test]
    fn without_heights_it_is_the_whole_stretch() {
        assert_eq!(found(&[None, None], 95.0, 118.0), "95–118");
        assert_eq!(found(&[], 95.0, 118.0), "95–118");
        assert_eq!(
            found(&[None, Some(3.0), None], 95.0, 160.0),
            "110–120",
            "what is known"
        );
    }
}
