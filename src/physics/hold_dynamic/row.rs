//! Holders lying in a row behind a lip, tied to each other by elastic rope.
//!
//! *Model:* bodies on an incline; each moves once its rope has pulled. Friction is taken implicitly: it may stop a
//! body within a kick, never turn it round. A span pulls only when it is longer than its rope.
//! *Valid:* friction alike at rest and sliding. *Error:* second order in the step between changes of state.
//! *Source:* incline and Hooke.   *Checked:* with `hold_dynamic`.

use super::fall::GapSide;
use crate::physics::incline;

/// The holders of one side, nearest to the lip first.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct HolderRow {
    room_m: f64,
    slack_m: f64,
    /// EA over the unstretched length of a span, N/m.
    stiffness_n_m: f64,
    drive_m_s2: f64,
    before_m_s2: f64,
    after_m_s2: f64,
    first: RowHolder,
    /// Those behind the first one.
    rest: Vec<RowHolder>,
    furthest_m: f64,
}

#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct RowHolder {
    mass_kg: f64,
    /// The inverse of the mass, 1/kg.
    per_kg: f64,
    moved_m: f64,
    speed_m_s: f64,
    /// Rope force towards the lip less rope force from behind, N.
    pull_n: f64,
    /// Has been pulled: before that, one stands.
    unseated: bool,
}

impl HolderRow {
    /// The row at rest.
    #[must_use]
    pub(super) fn new(side: &GapSide, modulus_n: f64) -> Self {
        let (drive_m_s2, before_m_s2) = friction_m_s2(side.mu_before, side.slope_rad);
        let (_, after_m_s2) = friction_m_s2(side.mu_after, side.slope_rad);
        let mut people = side.holders_kg.iter().map(|&mass_kg| RowHolder {
            mass_kg,
            per_kg: 1.0 / mass_kg,
            ..RowHolder::default()
        });
        Self {
            room_m: side.room_m(),
            slack_m: side.slack_m,
            stiffness_n_m: modulus_n / (side.spacing_m + side.slack_m),
            drive_m_s2,
            before_m_s2,
            after_m_s2,
            first: people.next().unwrap_or_default(),
            rest: people.collect(),
            furthest_m: 0.0,
        }
    }

    /// From the lip to the first holder, m.
    #[must_use]
    #[inline]
    pub(super) fn room_left_m(&self) -> f64 {
        self.room_m - self.first.moved_m
    }

    /// Farthest the first holder has been towards the lip, m.
    #[must_use]
    #[inline]
    pub(super) fn slide_m(&self) -> f64 {
        self.furthest_m
    }

    /// Least way there was from it to the lip, m.
    #[must_use]
    pub(super) fn least_room_m(&self) -> f64 {
        self.room_m - self.furthest_m
    }

    /// The slide as a share of the room; 1 where there was none.
    #[must_use]
    pub(super) fn slide_share(&self) -> f64 {
        if self.room_m > 0.0 {
            (self.furthest_m / self.room_m).min(1.0)
        } else {
            1.0
        }
    }

    /// Sets the rope forces for the positions reached, `front_n` pulling at the first holder.
    #[inline]
    pub(super) fn settle(&mut self, front_n: f64) {
        let mut ahead_n = front_n;
        let mut person = &mut self.first;
        for next in &mut self.rest {
            let over_m = person.moved_m - next.moved_m - self.slack_m;
            let behind_n = self.stiffness_n_m * positive(over_m);
            person.pulled(ahead_n, behind_n);
            (person, ahead_n) = (next, behind_n);
        }
        person.pulled(ahead_n, 0.0);
    }

    /// Speed of the first holder towards the lip, m/s.
    #[must_use]
    #[inline]
    pub(super) fn speed_m_s(&self) -> f64 {
        self.first.speed_m_s
    }

    /// Whether everybody lies still.
    #[must_use]
    #[inline]
    pub(super) fn is_still(&self) -> bool {
        self.first.speed_m_s == 0.0 && self.rest.iter().all(|p| p.speed_m_s == 0.0)
    }

    /// Changes speeds by what ropes, slope and friction do in `time_s`, `extra_n` more pulling at the first holder;
    /// returns what friction took, J.
    #[inline]
    pub(super) fn kick(&mut self, time_s: f64, extra_n: f64, reacted: bool) -> f64 {
        let grip = if reacted {
            self.after_m_s2
        } else {
            self.before_m_s2
        };
        // Whoever is behind has been pulled only if the first one has.
        let mut lost_j = self.first.kick(time_s, self.drive_m_s2, grip, extra_n);
        for person in &mut self.rest {
            lost_j += person.kick(time_s, self.drive_m_s2, grip, 0.0);
        }
        lost_j
    }

    /// Moves everybody on for `time_s`.
    #[inline]
    pub(super) fn drift(&mut self, time_s: f64) {
        self.first.moved_m += time_s * self.first.speed_m_s;
        for person in &mut self.rest {
            person.moved_m += time_s * person.speed_m_s;
        }
        let slid_m = self.room_m - self.room_left_m();
        if slid_m > self.furthest_m {
            self.furthest_m = slid_m;
        }
    }

    /// Energy in motion, in height lost (negative) and in the ropes between, J.
    #[must_use]
    pub(super) fn present_j(&self) -> f64 {
        let mut bodies_j = self.first.present_j(self.drive_m_s2);
        let mut ropes_j = 0.0;
        let mut near_m = self.first.moved_m;
        for person in &self.rest {
            let over_m = positive(near_m - person.moved_m - self.slack_m);
            ropes_j += 0.5 * self.stiffness_n_m * over_m * over_m;
            bodies_j += person.present_j(self.drive_m_s2);
            near_m = person.moved_m;
        }
        bodies_j + ropes_j
    }
}

impl RowHolder {
    fn pulled(&mut self, ahead_n: f64, behind_n: f64) {
        self.pull_n = ahead_n - behind_n;
        self.unseated |= ahead_n > 0.0;
    }

    /// What friction took, J.
    fn kick(&mut self, time_s: f64, drive_m_s2: f64, grip_m_s2: f64, extra_n: f64) -> f64 {
        if !self.unseated {
            return 0.0;
        }
        let pull_n = self.pull_n + extra_n;
        let free = self.speed_m_s + time_s * (drive_m_s2 + pull_n * self.per_kg);
        let left = positive(free.abs() - time_s * grip_m_s2).copysign(free);
        // Friction's impulse times the mean speed of the motion there was: holding somebody at rest takes nothing.
        let lost_j = self.mass_kg * (free - left) * 0.5 * (self.speed_m_s + left);
        self.speed_m_s = left;
        lost_j
    }

    fn present_j(&self, drive_m_s2: f64) -> f64 {
        self.mass_kg * (0.5 * self.speed_m_s * self.speed_m_s - drive_m_s2 * self.moved_m)
    }
}

/// What lies above zero: one instruction, where `f64::max` asks about NaN too.
#[inline]
pub(super) fn positive(x: f64) -> f64 {
    if x > 0.0 { x } else { 0.0 }
}

/// What drives a body down the slope and what friction `mu` can oppose, both as accelerations.
fn friction_m_s2(mu: f64, slope_rad: f64) -> (f64, f64) {
    let drive = incline::slide_m_s2(0.0, slope_rad);
    (drive, drive - incline::slide_m_s2(mu, slope_rad))
}
