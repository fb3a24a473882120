//! Where on a stretch it is steepest.

use crate::{ground::incline::Incline, rope::legs::RopedLeg, trip::route::Stretch};

/// The steepest pieces of a stretch of a leg that lie side by side; the stretch itself where no heights are known.
pub(super) fn steepest(leg: &RopedLeg<'_>, from_m: f64, to_m: f64) -> Stretch {
    let whole = Stretch { from_m, to_m };
    let inclines = leg.footing.inclines.iter();
    let on: Vec<&Incline> = inclines.filter(|i| i.piece.overlaps(&whole)).collect();
    let shown = |i: &Incline| i.steepest_deg().map(|deg| (deg - 1e-6).ceil());
    let most = on.iter().filter_map(|i| shown(i)).reduce(f64::max);
    let steep = |i: &&&Incline| most.is_some() && shown(i) == most;
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
