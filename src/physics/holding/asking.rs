//! One person's fall, asked slope by slope and width by width: what others answer is not asked.
//!
//! *Model, valid, source, checked:* see `limits`.

use std::collections::BTreeMap;

use super::Team;
use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Assumed, Corner},
        hold_dynamic::Followed,
    },
};

/// Up to this slope, degrees, ground counts as gentle where widths are left out `[ours]`.
const GENTLE_DEG: u8 = 10;
/// Metres of way left to the lip that each metre less of gap is reckoned to take from a holder at most, on gentle ground and on
/// steeper `[ours]`: in a million questions about middle persons of random teams none was answered otherwise than width by width.
const GENTLE_LOSS: f64 = 1.0;
const STEEP_LOSS: f64 = 4.0;

/// One person's fall over one gap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct OneFall {
    corner: Corner,
    faller: usize,
    /// In the middle, where one side holds uphill and the other downhill, no slope answers for another: how steeply it falls in
    /// walking direction, degrees; 0 at the ends.
    middle_deg: i8,
    gap_bits: u64,
}

/// Steepest slope towards the lip known to be held, with the way left there, m, and gentlest known not to be, whole degrees.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct KnownSlopes {
    held_on: Option<(i8, f64)>,
    lost_on: Option<i8>,
}

/// Falls of one team on one slope under one corner of what is assumed.
pub(super) struct FallAsking<'a> {
    pub(super) team: &'a Team,
    pub(super) down_deg: [i8; 2],
    pub(super) corner: Corner,
    pub(super) assumed: &'a Assumed,
    pub(super) known: &'a mut BTreeMap<OneFall, KnownSlopes>,
    /// Slopes that are asked for beside this one.
    pub(super) range_deg: [i8; 2],
    pub(super) followed: &'a mut Followed,
}

impl FallAsking<'_> {
    /// The first of some gaps over which a fall is not held, if it is wider than one known.
    pub(super) fn every(
        &mut self,
        faller: usize,
        gaps_m: &[f64],
        known_m: Option<f64>,
    ) -> Result<Option<f64>, Refusal> {
        let wider = |gap_m: &&f64| known_m.is_none_or(|known_m| **gap_m > known_m);
        for &gap_m in gaps_m.iter().take_while(wider) {
            if self.left_m(faller, gap_m)? <= 0.0 {
                return Ok(Some(gap_m));
            }
        }
        Ok(None)
    }

    /// The same, where gaps that lie close to one with much way left are not asked.
    pub(super) fn sparsely(
        &mut self,
        faller: usize,
        gaps_m: &[f64],
        known_m: Option<f64>,
    ) -> Result<Option<f64>, Refusal> {
        let [least_deg, most_deg] = self.down_deg;
        let loss = if least_deg.unsigned_abs().max(most_deg.unsigned_abs()) <= GENTLE_DEG {
            GENTLE_LOSS
        } else {
            STEEP_LOSS
        };
        let mut widest = known_m;
        if let Some(&narrowest_m) = gaps_m.last()
            && widest.is_none()
            && self.left_m(faller, narrowest_m)? <= 0.0
        {
            widest = Some(narrowest_m);
        }
        let mut rest = gaps_m;
        while let Some((&gap_m, narrower)) = rest.split_first() {
            if widest.is_some_and(|known_m| gap_m <= known_m) {
                break;
            }
            let left_m = self.left_m(faller, gap_m)?;
            if left_m <= 0.0 {
                return Ok(Some(gap_m));
            }
            let answered = narrower.partition_point(|next_m| gap_m - next_m <= left_m / loss);
            rest = narrower.get(answered..).unwrap_or_default();
        }
        Ok(widest)
    }

    /// How much way to the lip is left at least when one person falls over one gap, m; 0 where the fall is not held.
    fn left_m(&mut self, faller: usize, gap_m: f64) -> Result<f64, Refusal> {
        let [least_deg, most_deg] = self.down_deg;
        if faller == 0 {
            return self.left_on_m(faller, gap_m, most_deg);
        }
        let left_m = self.left_on_m(faller, gap_m, least_deg)?;
        if !self.team.in_middle(faller) || least_deg == most_deg || left_m <= 0.0 {
            return Ok(left_m);
        }
        Ok(left_m.min(self.left_on_m(faller, gap_m, most_deg)?))
    }

    /// The same on ground that falls so many degrees in walking direction.
    ///
    /// In the middle on a slope one side holds uphill and the other downhill, and what is good for one may be bad for both: a
    /// side that gives way lets the rope share. So all corners are asked, and the worst or the best of them counts.
    fn left_on_m(&mut self, faller: usize, gap_m: f64, down_deg: i8) -> Result<f64, Refusal> {
        let alike = !self.team.in_middle(faller) || down_deg == 0;
        let corners: &[Corner] = match self.corner {
            Corner::Adverse if !alike => &[Corner::Adverse, Corner::Central, Corner::Favourable],
            Corner::Favourable if !alike => &[Corner::Favourable, Corner::Central, Corner::Adverse],
            Corner::Adverse => &[Corner::Adverse],
            Corner::Central => &[Corner::Central],
            Corner::Favourable => &[Corner::Favourable],
        };
        let worst = self.corner == Corner::Adverse;
        let mut left_m = if worst { f64::INFINITY } else { 0.0 };
        for &corner in corners {
            let next_m = self.left_in_m(faller, gap_m, down_deg, corner)?;
            left_m = if worst { next_m.min(left_m) } else { next_m };
            if (left_m > 0.0) != worst {
                break;
            }
        }
        Ok(left_m)
    }

    /// The same with everything assumed so.
    fn left_in_m(
        &mut self,
        faller: usize,
        gap_m: f64,
        down_deg: i8,
        corner: Corner,
    ) -> Result<f64, Refusal> {
        let [least_deg, most_deg] = self.range_deg;
        let worst_deg = match faller {
            0 => most_deg.max(down_deg),
            _ if self.team.in_middle(faller) => down_deg,
            _ => least_deg.min(down_deg),
        };
        for asked_deg in [worst_deg, down_deg] {
            if let Some(left_m) = self.known_m(faller, gap_m, down_deg, corner) {
                return Ok(left_m);
            }
            if self.known_m(faller, gap_m, asked_deg, corner).is_none() {
                self.ask(faller, gap_m, asked_deg, corner)?;
            }
        }
        Ok(self
            .known_m(faller, gap_m, down_deg, corner)
            .unwrap_or_default())
    }

    /// How steeply the ground falls towards the lip, degrees, where it falls so in walking direction; and by what the answer
    /// is kept.
    fn kept_by(&self, faller: usize, gap_m: f64, down_deg: i8, corner: Corner) -> (i8, OneFall) {
        let in_middle = self.team.in_middle(faller);
        let lip_deg = match faller {
            0 => down_deg,
            _ if in_middle => down_deg.saturating_abs(),
            _ => down_deg.saturating_neg(),
        };
        let fall = OneFall {
            corner,
            faller,
            middle_deg: if in_middle { down_deg } else { 0 },
            gap_bits: gap_m.to_bits(),
        };
        (lip_deg, fall)
    }

    fn known_m(&self, faller: usize, gap_m: f64, down_deg: i8, corner: Corner) -> Option<f64> {
        let (lip_deg, fall) = self.kept_by(faller, gap_m, down_deg, corner);
        let known = self.known.get(&fall)?;
        let held_m = known.held_on.filter(|(held, _)| lip_deg <= *held);
        let lost = known.lost_on.is_some_and(|lost| lip_deg >= lost);
        held_m
            .map(|(_, left_m)| left_m)
            .or_else(|| lost.then_some(0.0))
    }

    /// Follows the fall and keeps what became of it.
    fn ask(
        &mut self,
        faller: usize,
        gap_m: f64,
        down_deg: i8,
        corner: Corner,
    ) -> Result<(), Refusal> {
        let (lip_deg, fall) = self.kept_by(faller, gap_m, down_deg, corner);
        let team = Team {
            gap_m,
            down_deg: [f64::from(down_deg); 2],
            ..self.team.clone()
        };
        team.check()?;
        let case = team.case(self.assumed, |_| corner);
        let outcome = team.outcome(faller, &case, self.followed)?;
        let known = self.known.entry(fall).or_default();
        if outcome.held {
            known.held_on = Some((lip_deg, outcome.room_left_m));
        } else {
            known.lost_on = Some(lip_deg);
        }
        Ok(())
    }
}
