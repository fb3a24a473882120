//! Spare rope for a rescue: what each end person carries, and what a fall in the middle would miss.

use crate::{
    plan::{
        fall::{FallReserve, HaulReserve, Side},
        leg::MiddleReserve,
    },
    practice::{Cover, Reserve, Rule, Rules},
};

/// Free rope that a drop loop needs: reach factor × spacing, the ends, less a long sling; metres.
#[must_use]
pub fn loop_m(spacing_m: f64, rules: &Rules) -> f64 {
    let reach_m = rules[Rule::ReachFactor] * spacing_m + rules[Rule::LoopEndsM];
    (reach_m - rules[Rule::SlingM]).max(0.0)
}

/// Spare coil of each end person, metres.
#[must_use]
pub fn coil_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    match (rules.choices.reserve.value, rules.choices.cover.value) {
        (Reserve::ChestCoils, _) => rules[Rule::chest_coils(people)] * rules[Rule::ChestCoilM],
        (Reserve::Reach, Cover::Ends) => less_behind(people.saturating_sub(2), spacing_m, rules),
        (Reserve::Reach, Cover::Anyone) => (1..=people)
            .map(|person| less_behind(spans_behind(people, person), spacing_m, rules))
            .fold(0.0, f64::max),
    }
}

fn less_behind(spans: usize, spacing_m: f64, rules: &Rules) -> f64 {
    (loop_m(spacing_m, rules) - spans_m(spans, spacing_m)).max(0.0)
}

/// Rope in so many spans, metres.
#[expect(
    clippy::cast_precision_loss,
    reason = "a rope team has five people at most"
)]
#[must_use]
pub fn spans_m(spans: usize, spacing_m: f64) -> f64 {
    spans as f64 * spacing_m
}

/// Spans of rope beyond the neighbour on the better side of a faller, from 1 to `people`.
fn spans_behind(people: usize, person: usize) -> usize {
    let ahead = person.saturating_sub(2);
    let behind = (people - person).saturating_sub(1);
    ahead.max(behind)
}

/// Free rope if one person falls, against what a drop loop needs.
///
/// ```
/// use schrund::{practice::{Rules, set::Source}, rope::reserve::free};
///
/// let rules = Rules::with_practice(&Source::Named("short-alpine"))?;
/// let all = free(3, 12.0, &rules);
/// // Three at 12 m: a drop loop takes 18 m, and the coil at each end is 6 m (common practice).
/// let free_m: Vec<f64> = all.iter().map(|free| free.free_m).collect();
/// assert_eq!(free_m, [18.0, 6.0, 18.0]);
/// assert_eq!(all[1].missing_m(), 12.0, "for the person in the middle");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Free {
    /// Position on the rope, from 1.
    pub person: usize,
    /// The side with more free rope.
    pub side: Side,
    /// People on that side.
    pub people: usize,
    /// Rope that they have free, metres.
    pub free_m: f64,
    /// What a drop loop needs, metres.
    pub needs_m: f64,
}

impl Free {
    /// What is missing for a drop loop, metres; 0 when nothing is.
    #[must_use]
    pub fn missing_m(&self) -> f64 {
        (self.needs_m - self.free_m).max(0.0)
    }

    /// The same with the hauls for which the free rope is too short.
    #[must_use]
    pub fn with(self, hauls: Vec<HaulReserve>) -> FallReserve {
        FallReserve {
            person: self.person,
            side: self.side,
            people: self.people,
            free_m: self.free_m,
            needs_m: self.needs_m,
            missing_m: self.missing_m(),
            hauls,
        }
    }
}

/// Free rope if each person falls, in rope order.
#[must_use]
pub fn free(people: usize, spacing_m: f64, rules: &Rules) -> Vec<Free> {
    let coil_m = coil_m(people, spacing_m, rules);
    let needs_m = loop_m(spacing_m, rules);
    let fall = |person: usize| {
        let (ahead, behind) = (person - 1, people - person);
        Free {
            person,
            side: if ahead > behind {
                Side::Ahead
            } else {
                Side::Behind
            },
            people: ahead.max(behind),
            free_m: coil_m + spans_m(spans_behind(people, person), spacing_m),
            needs_m,
        }
    };
    (1..=people).map(fall).collect()
}

/// The middle person for whom most is missing; `None` for two people.
#[must_use]
pub fn middle(people: usize, spacing_m: f64, rules: &Rules) -> Option<MiddleReserve> {
    free(people, spacing_m, rules)
        .into_iter()
        .filter(|fall| fall.person > 1 && fall.person < people)
        .map(|fall| MiddleReserve {
            person: fall.person,
            free_m: fall.free_m,
            needs_m: fall.needs_m,
            missing_m: fall.missing_m(),
        })
        .reduce(|worst, next| {
            if next.missing_m > worst.missing_m {
                next
            } else {
                worst
            }
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::{Origin, set::Source};

    fn rules(set: &str) -> Rules {
        Rules::with_practice(&Source::Named(set)).unwrap()
    }

    #[test]
    fn coils_of_two_three_and_four() {
        // Trade rules, section 8: κ·d, (κ − 1)·d, nothing.
        let rules = rules("short-alpine");
        let coils: Vec<f64> = [(2, 15.0), (3, 12.0), (4, 20.0)]
            .iter()
            .map(|&(n, d)| coil_m(n, d, &rules))
            .collect();
        assert_eq!(coils, [22.5, 6.0, 0.0]);
        assert!(
            coil_m(4, 13.7, &self::rules("constant")).abs() < 1e-9,
            "2·d lies behind at κ = 2"
        );
    }

    #[test]
    fn three_at_twelve_metres_miss_twelve_metres_for_the_middle_person() {
        // Trade rules, section 8: 6 m free against 18 m.
        let middle = middle(3, 12.0, &rules("short-alpine")).unwrap();
        assert_eq!(
            (
                middle.person,
                middle.free_m,
                middle.needs_m,
                middle.missing_m
            ),
            (2, 6.0, 18.0, 12.0)
        );
    }

    #[test]
    fn covering_anyone_lengthens_the_coils_until_nothing_is_missing() {
        let mut rules = rules("short-alpine");
        rules.choices.cover.set(Some(Cover::Anyone), Origin::Trip);
        for people in 3..=5 {
            let middle = middle(people, 12.0, &rules).unwrap();
            assert!(middle.missing_m.abs() < 1e-9, "{people}: {middle:?}");
        }
        assert!(
            (coil_m(3, 12.0, &rules) - 18.0).abs() < 1e-9,
            "the whole loop"
        );
    }
}
