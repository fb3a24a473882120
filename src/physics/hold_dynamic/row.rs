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
    people: Vec<RowHolder>,
    furthest_m: f64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct RowHolder {
    mass_kg: f64,
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
        let people = side.holders_kg.iter().map(|&mass_kg| RowHolder {
            mass_kg,
            moved_m: 0.0,
            speed_m_s: 0.0,
            pull_n: 0.0,
            unseated: false,
        });
        Self {
            room_m: side.room_m(),
            slack_m: side.slack_m,
            stiffness_n_m: modulus_n / (side.spacing_m + side.slack_m),
            drive_m_s2,
            before_m_s2,
            after_m_s2,
            people: people.collect(),
            furthest_m: 0.0,
        }
    }

    /// From the lip to the first holder, m.
    #[must_use]
    pub(super) fn room_left_m(&self) -> f64 {
        self.room_m - self.people.first().map_or(0.0, |p| p.moved_m)
    }

    /// Farthest the first holder has been towards the lip, m.
    #[must_use]
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
    pub(super) fn settle(&mut self, front_n: f64) {
        let mut ahead_n = front_n;
        for i in 0..self.people.len() {
            let next_m = self.people.get(i + 1).map(|p| p.moved_m);
            let Some(person) = self.people.get_mut(i) else {
                return;
            };
            let over_m = next_m.map_or(0.0, |next| person.moved_m - next - self.slack_m);
            let behind_n = self.stiffness_n_m * over_m.max(0.0);
            person.pull_n = ahead_n - behind_n;
            person.unseated |= ahead_n > 0.0;
            ahead_n = behind_n;
        }
    }

    /// Speed of the first holder towards the lip, m/s.
    #[must_use]
    pub(super) fn speed_m_s(&self) -> f64 {
        self.people.first().map_or(0.0, |p| p.speed_m_s)
    }

    /// Whether everybody lies still.
    #[must_use]
    pub(super) fn is_still(&self) -> bool {
        self.people.iter().all(|p| p.speed_m_s == 0.0)
    }

    /// Changes speeds by what ropes, slope and friction do in `time_s`, `extra_n` more pulling at the first holder;
    /// returns what friction took, J.
    pub(super) fn kick(&mut self, time_s: f64, extra_n: f64, reacted: bool) -> f64 {
        let grip = if reacted {
            self.after_m_s2
        } else {
            self.before_m_s2
        };
        let mut lost_j = 0.0;
        let mut extra_n = extra_n;
        for person in self.people.iter_mut().filter(|p| p.unseated) {
            let pull_n = person.pull_n + std::mem::take(&mut extra_n);
            let free = person.speed_m_s + time_s * (self.drive_m_s2 + pull_n / person.mass_kg);
            let left = (free.abs() - time_s * grip).max(0.0).copysign(free);
            // Friction's impulse times the mean speed of the motion there was: holding somebody at rest takes nothing.
            lost_j += person.mass_kg * (free - left) * 0.5 * (person.speed_m_s + left);
            person.speed_m_s = left;
        }
        lost_j
    }

    /// Moves everybody on for `time_s`.
    pub(super) fn drift(&mut self, time_s: f64) {
        for person in &mut self.people {
            person.moved_m += time_s * person.speed_m_s;
        }
        self.furthest_m = self.furthest_m.max(self.room_m - self.room_left_m());
    }

    /// Energy in motion, in height lost (negative) and in the ropes between, J.
    #[must_use]
    pub(super) fn present_j(&self) -> f64 {
        let bodies = self
            .people
            .iter()
            .map(|p| p.mass_kg * (0.5 * p.speed_m_s * p.speed_m_s - self.drive_m_s2 * p.moved_m));
        let ropes = self.people.windows(2).map(|pair| match pair {
            [near, far] => {
                let over_m = (near.moved_m - far.moved_m - self.slack_m).max(0.0);
                0.5 * self.stiffness_n_m * over_m * over_m
            }
            _ => 0.0,
        });
        bodies.sum::<f64>() + ropes.sum::<f64>()
    }
}

/// What drives a body down the slope and what friction `mu` can oppose, both as accelerations.
fn friction_m_s2(mu: f64, slope_rad: f64) -> (f64, f64) {
    let drive = incline::slide_m_s2(0.0, slope_rad);
    (drive, drive - incline::slide_m_s2(mu, slope_rad))
}
