//! The stepper: kick, drift, kick, until the slide has ended or a holder reaches the lip.
//!
//! *Model, valid, error, source, checked:* see `hold_dynamic`.

use super::{
    fall::{Energy, Fall, Outcome},
    rope::{Hang, SideRope},
};
use crate::physics::GRAVITY_M_S2;

/// After this long, s `[ours]`, whoever still slides counts as not held.
const LONGEST_FALL_S: f64 = 30.0;
/// A slide that gains less than this during the slowest bounce has ended, m `[ours]`: a bounce that is
/// hardly damped may nudge a holder on for a long time by ever less.
const CREEP_M: f64 = 0.005;
/// However short the bounce, a slide is watched at least this long before it is said to have ended, s `[ours]`.
const LEAST_REST_S: f64 = 1.0;
/// While all holders lie still after the reaction a step is so many times as long `[ours]`: the bounce alone is slow.
const REST_STEPS: f64 = 3.0;
/// Steps are never more than this `[ours]`, however stiff the rope.
const MOST_STEPS: u32 = 4_000_000;

/// Everything that moves; with the book of energy where `BOOK` says so.
pub(super) struct Run<const BOOK: bool> {
    mass_kg: f64,
    depth_m: f64,
    speed_m_s: f64,
    ropes: Vec<SideRope>,
    drop_m: f64,
    victim_n: f64,
    energy: Energy,
}

impl<const BOOK: bool> Run<BOOK> {
    pub(super) fn start(fall: &Fall) -> Self {
        let hang = if fall.sides.len() == 1 {
            Hang::Straight
        } else {
            Hang::Vee
        };
        let ropes: Vec<SideRope> = fall
            .sides
            .iter()
            .map(|s| SideRope::new(s, hang, fall))
            .collect();
        let depth_m = ropes
            .iter()
            .zip(&fall.sides)
            .map(|(rope, side)| rope.taut_at_m(side.slack_m))
            .fold(f64::INFINITY, f64::min);
        let start_j = fall.victim_kg * GRAVITY_M_S2 * depth_m;
        let mut run = Self {
            mass_kg: fall.victim_kg,
            depth_m,
            speed_m_s: (2.0 * GRAVITY_M_S2 * depth_m).sqrt(),
            ropes,
            drop_m: depth_m,
            victim_n: 0.0,
            energy: Energy {
                start_j,
                ..Energy::default()
            },
        };
        run.settle();
        run.energy.lip_j = 0.0;
        run
    }

    pub(super) fn follow(mut self, fall: &Fall, step_s: f64) -> (Outcome, Energy) {
        let rest_s = fall.bounce_s().max(LEAST_REST_S);
        let (mut time_s, mut moved_s, mut mark_m) = (0.0_f64, 0.0_f64, 0.0_f64);
        let mut held = false;
        for _ in 0..MOST_STEPS {
            let reacted = time_s >= fall.delay_s - 0.5 * step_s;
            if self.over_the_lip() || time_s > LONGEST_FALL_S {
                break;
            }
            let slid_m: f64 = self.ropes.iter().map(|r| r.row.slide_m()).sum();
            if slid_m > mark_m + CREEP_M || !reacted {
                (moved_s, mark_m) = (time_s, slid_m);
            } else if time_s - moved_s > rest_s {
                held = true;
                break;
            }
            let longer = if reacted && self.is_still() {
                REST_STEPS
            } else {
                1.0
            };
            self.step(longer * step_s, reacted);
            time_s += longer * step_s;
        }
        (self.outcome(held, time_s), self.energy)
    }

    fn over_the_lip(&self) -> bool {
        self.ropes.iter().any(|r| r.row.room_left_m() <= 0.0)
    }

    /// Whether all holders lie still: only the faller bounces.
    fn is_still(&self) -> bool {
        self.ropes.iter().all(|r| r.row.is_still())
    }

    fn step(&mut self, step_s: f64, reacted: bool) {
        self.kick(0.5 * step_s, reacted);
        self.depth_m += step_s * self.speed_m_s;
        for rope in &mut self.ropes {
            rope.row.drift(step_s);
        }
        if self.over_the_lip() {
            return;
        }
        self.settle();
        self.kick(0.5 * step_s, reacted);
        if BOOK {
            self.take_stock();
        }
    }

    fn kick(&mut self, time_s: f64, reacted: bool) {
        let was_m_s = self.speed_m_s;
        let (mut up_n, mut damped_up_n) = (0.0, 0.0);
        for rope in &mut self.ropes {
            let (at_victim_n, at_holder_n) = rope.damping_n(was_m_s);
            up_n += (rope.over.victim_n + at_victim_n) * rope.up;
            damped_up_n += at_victim_n * rope.up;
            let holder_m_s = rope.row.speed_m_s();
            let friction_j = rope.row.kick(time_s, at_holder_n, reacted);
            if BOOK {
                let mean_m_s = 0.5 * (holder_m_s + rope.row.speed_m_s());
                self.energy.friction_j += friction_j;
                self.energy.rope_j -= time_s * at_holder_n * mean_m_s;
            }
            rope.peak_holder_n = rope.peak_holder_n.max(rope.over.holder_n + at_holder_n);
        }
        self.speed_m_s += time_s * (GRAVITY_M_S2 - up_n / self.mass_kg);
        if BOOK {
            self.energy.rope_j += time_s * damped_up_n * 0.5 * (was_m_s + self.speed_m_s);
        }
        self.victim_n = self.victim_n.max(up_n);
    }

    fn settle(&mut self) {
        let depth_m = self.depth_m;
        for rope in &mut self.ropes {
            if BOOK {
                let before = rope.over.standing();
                rope.settle(depth_m);
                self.energy.lip_j += rope.over.lost_j(before);
            } else {
                rope.settle(depth_m);
            }
        }
        self.drop_m = self.drop_m.max(self.depth_m);
    }

    fn take_stock(&mut self) {
        let weight_n = self.mass_kg * GRAVITY_M_S2;
        let victim_j =
            0.5 * self.mass_kg * self.speed_m_s * self.speed_m_s - weight_n * self.depth_m;
        let rest_j: f64 = self
            .ropes
            .iter()
            .map(|r| r.over.stored_j() + r.row.present_j())
            .sum();
        let sum_j =
            victim_j + rest_j + self.energy.friction_j + self.energy.lip_j + self.energy.rope_j;
        // Present energy is counted from the ground, where the free drop began with nothing.
        self.energy.gain_j = self.energy.gain_j.max(sum_j);
        self.energy.turned_j = self.energy.turned_j.max(weight_n * self.depth_m);
    }

    fn outcome(&self, held: bool, time_s: f64) -> Outcome {
        let worst = |f: fn(&SideRope) -> f64| self.ropes.iter().map(f).fold(0.0, f64::max);
        let rooms = self.ropes.iter().map(|r| r.row.least_room_m());
        let room_left_m = if held {
            rooms.fold(f64::INFINITY, f64::min)
        } else {
            0.0
        };
        Outcome {
            held,
            slide_m: worst(|r| r.row.slide_m()),
            slide_share: worst(|r| r.row.slide_share()),
            room_left_m,
            holder_n: worst(|r| r.peak_holder_n),
            victim_n: self.victim_n,
            drop_m: self.drop_m,
            stretch: worst(|r| r.over.peak_stretch()),
            time_s,
        }
    }
}
