//! The stepper: kick, drift, kick, until the slide has ended or a holder reaches the lip.
//!
//! *Model, valid, error, source, checked:* see `hold_dynamic`.

use super::{
    fall::{Energy, Fall, GapSide, Outcome},
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

/// Everything that moves, with ropes to so many sides; with the book of energy where `BOOK` says so.
pub(super) struct Run<const SIDES: usize, const BOOK: bool> {
    mass_kg: f64,
    /// The inverse of the mass, 1/kg.
    per_kg: f64,
    depth_m: f64,
    speed_m_s: f64,
    ropes: [SideRope; SIDES],
    drop_m: f64,
    victim_n: f64,
    energy: Energy,
    clock: Clock,
}

/// When the fall is, and when it will have ended.
struct Clock {
    step_s: f64,
    steps: u32,
    time_s: f64,
    /// From then on the holders brake, s.
    reacts_s: f64,
    /// A slide that gains nothing for so long has ended, s.
    rest_s: f64,
    /// When the slide last gained, s, and what it was then, m.
    moved_s: f64,
    mark_m: f64,
    held: bool,
}

impl<const SIDES: usize, const BOOK: bool> Run<SIDES, BOOK> {
    const HANG: Hang = if SIDES == 1 {
        Hang::Straight
    } else {
        Hang::Vee
    };

    /// The moment at which the first rope comes taut; `sides` are those of the fall.
    pub(super) fn start(fall: &Fall, sides: [&GapSide; SIDES], step_s: f64) -> Self {
        let ropes = sides.map(|side| SideRope::new(side, fall));
        let depth_m = ropes
            .iter()
            .zip(sides)
            .map(|(rope, side)| rope.taut_at_m(Self::HANG, side.slack_m))
            .fold(f64::INFINITY, f64::min);
        let start_j = fall.victim_kg * GRAVITY_M_S2 * depth_m;
        let mut run = Self {
            mass_kg: fall.victim_kg,
            per_kg: 1.0 / fall.victim_kg,
            depth_m,
            speed_m_s: (2.0 * GRAVITY_M_S2 * depth_m).sqrt(),
            ropes,
            drop_m: depth_m,
            victim_n: 0.0,
            energy: Energy {
                start_j,
                ..Energy::default()
            },
            clock: Clock {
                step_s,
                steps: 0,
                time_s: 0.0,
                reacts_s: fall.delay_s - 0.5 * step_s,
                rest_s: fall.bounce_s().max(LEAST_REST_S),
                moved_s: 0.0,
                mark_m: 0.0,
                held: false,
            },
        };
        run.settle();
        run.energy.lip_j = 0.0;
        run
    }

    /// One step on; whether the fall goes on after it.
    #[inline]
    pub(super) fn goes_on(&mut self) -> bool {
        let time_s = self.clock.time_s;
        if self.clock.steps == MOST_STEPS || time_s > LONGEST_FALL_S || self.over_the_lip() {
            return false;
        }
        self.clock.steps += 1;
        let reacted = time_s >= self.clock.reacts_s;
        let slid_m: f64 = self.ropes.iter().map(|r| r.row.slide_m()).sum();
        if slid_m > self.clock.mark_m + CREEP_M || !reacted {
            (self.clock.moved_s, self.clock.mark_m) = (time_s, slid_m);
        } else if time_s - self.clock.moved_s > self.clock.rest_s {
            self.clock.held = true;
            return false;
        }
        let longer = if reacted && self.is_still() {
            REST_STEPS
        } else {
            1.0
        };
        let step_s = longer * self.clock.step_s;
        self.step(step_s, reacted);
        self.clock.time_s = time_s + step_s;
        true
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
            rope.peak_holder_n = greater(rope.peak_holder_n, rope.over.holder_n + at_holder_n);
        }
        self.speed_m_s += time_s * (GRAVITY_M_S2 - up_n * self.per_kg);
        if BOOK {
            self.energy.rope_j += time_s * damped_up_n * 0.5 * (was_m_s + self.speed_m_s);
        }
        self.victim_n = greater(self.victim_n, up_n);
    }

    fn settle(&mut self) {
        let depth_m = self.depth_m;
        for rope in &mut self.ropes {
            if BOOK {
                let before = rope.over.standing();
                rope.settle(Self::HANG, depth_m);
                self.energy.lip_j += rope.over.lost_j(before);
            } else {
                rope.settle(Self::HANG, depth_m);
            }
        }
        self.drop_m = greater(self.drop_m, self.depth_m);
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

    pub(super) fn energy(&self) -> Energy {
        self.energy
    }

    /// How it has ended.
    pub(super) fn outcome(&self) -> Outcome {
        let Clock { held, time_s, .. } = self.clock;
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

fn greater(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}
