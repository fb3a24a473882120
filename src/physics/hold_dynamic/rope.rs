//! The rope from the first holder over the lip to the faller, with the damping inside it.
//!
//! *Model:* an end person hangs straight below the lip; a middle person in a V whose depth sets how far each rope
//! turns. Damping c = 2ζ√(k·m₀) resists the lengthening of the whole span and never outdoes the elastic pull.
//! *Valid:* ζ from 0 to 1. *Error:* inside a rope damping is not linear; ζ is a range for that reason `[ours]`.
//! *Source:* Hooke, Kelvin–Voigt; geometry `[derived]`.   *Checked:* tests/physics (V against its energy balance, damping only takes).

use super::{
    fall::{Fall, GapSide},
    lip::OverLip,
    row::HolderRow,
    wrap::{Lip, Wrap},
};
use crate::physics::capstan;

/// Rope from a lip to the faller as a function of the depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Hang {
    /// Straight down: rope grows as depth.
    Straight,
    /// From a lip `0`: hypotenuse of beyond and depth.
    Vee,
}

/// One side's rope and the people on it.
pub(super) struct SideRope {
    beyond_m: f64,
    /// Where the rope hangs straight down.
    square_lip: Lip,
    wrap: Wrap,
    pub(super) over: OverLip,
    pub(super) row: HolderRow,
    lip: Lip,
    /// Share of the pull on the faller that points up.
    pub(super) up: f64,
    damping_n_s_m: f64,
    pub(super) peak_holder_n: f64,
}

impl SideRope {
    pub(super) fn new(side: &GapSide, fall: &Fall) -> Self {
        let modulus_n = fall.modulus_n;
        let stiffness_n_m = modulus_n / (side.spacing_m + side.slack_m);
        Self {
            beyond_m: side.beyond(),
            square_lip: Lip::new(capstan::lip_factor(side.lip_mu, side.slope_rad)),
            wrap: Wrap::new(side),
            over: OverLip::new(side, side.beyond(), modulus_n),
            row: HolderRow::new(side, modulus_n),
            lip: Lip::new(1.0),
            up: 0.0,
            damping_n_s_m: 2.0 * fall.rope_damping * (stiffness_n_m * fall.victim_kg).sqrt(),
            peak_holder_n: 0.0,
        }
    }

    /// Rope from lip to faller at this depth, m, and how much of its pull points up.
    fn reach(&self, hang: Hang, depth_m: f64) -> (f64, f64) {
        match hang {
            Hang::Straight => (self.beyond_m + depth_m, 1.0),
            Hang::Vee => {
                let reach_m = (self.beyond_m * self.beyond_m + depth_m * depth_m).sqrt();
                (reach_m, depth_m / reach_m)
            }
        }
    }

    /// Depth at which the rope comes taut, m.
    pub(super) fn taut_at_m(&self, hang: Hang, slack_m: f64) -> f64 {
        match hang {
            Hang::Straight => slack_m,
            Hang::Vee => (slack_m * (2.0 * self.beyond_m + slack_m)).sqrt(),
        }
    }

    /// Brings rope forces up to date with the positions.
    #[inline]
    pub(super) fn settle(&mut self, hang: Hang, depth_m: f64) {
        let (reach_m, up) = self.reach(hang, depth_m);
        self.lip = match hang {
            Hang::Straight => self.square_lip,
            Hang::Vee => self.wrap.at(depth_m, reach_m),
        };
        self.over.settle(self.row.room_left_m(), reach_m, self.lip);
        self.up = up;
        self.row.settle(self.over.holder_n);
    }

    /// What damping adds to the tension at the faller and at the first holder, N. Never more than the elastic pull,
    /// so that a rope never pushes. A lip lessens it for the holder where that takes energy out, else not.
    #[inline]
    pub(super) fn damping_n(&self, sinks_m_s: f64) -> (f64, f64) {
        let slides_m_s = self.row.speed_m_s();
        let most_n = lesser(self.over.victim_n, self.over.holder_n);
        let lengthens_m_s = sinks_m_s * self.up - slides_m_s;
        let at_victim_n = within(self.damping_n_s_m * lengthens_m_s, most_n);
        if at_victim_n > 0.0 && slides_m_s >= 0.0 {
            (at_victim_n, at_victim_n * self.lip.leaves)
        } else {
            (at_victim_n, at_victim_n)
        }
    }
}

fn lesser(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// No more than `most` either way.
fn within(x: f64, most: f64) -> f64 {
    if x > most {
        most
    } else if x < -most {
        -most
    } else {
        x
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rope_in_a_v_turns_as_far_as_the_v_is_deep() {
        let side = GapSide {
            holders_kg: vec![80.0],
            spacing_m: 15.0,
            slack_m: 0.0,
            beyond_m: 3.0,
            slope_rad: 0.1,
            lip_mu: 0.5,
            mu_before: 0.3,
            mu_after: 0.6,
            knots_m: vec![],
            knot_n: 0.0,
            bite_m: 0.0,
        };
        let fall = Fall {
            victim_kg: 80.0,
            sides: vec![side.clone(), side.clone()],
            modulus_n: 20_000.0,
            rope_damping: 0.1,
            delay_s: 1.0,
        };
        let mut rope = SideRope::new(&side, &fall);
        for depth_m in [0.1_f64, 1.0, 3.0, 9.0] {
            rope.settle(Hang::Vee, depth_m);
            let turned_rad = ((depth_m / 3.0).atan() - 0.1).max(0.0);
            let want = (0.5 * turned_rad).exp();
            assert!(
                (rope.lip.factor - want).abs() < 1e-12,
                "at {depth_m} m: {:?} and {want}",
                rope.lip
            );
        }
    }
}
