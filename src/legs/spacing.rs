//! How far apart: the least spacing that suits the gaps as a rope of that very spacing meets them.
//!
//! A longer rope lies smoother on the line, so the way over a gap depends a little on the spacing. Of
//! all spacings on the step that are as long as the gaps they would meet ask for, the shortest is
//! taken; a wider gap or one more zone can only take spacings away, so neither shortens it.

use crate::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        worst::Meeting,
    },
    practice::{Rule, Rules},
    trip::party::RopeTeam,
};

/// A spacing with what it was chosen for.
///
/// ```
/// use schrund::{legs::{spacing::{base_m, choose}, worst::Meeting}, practice::{Rules, set::Source}};
///
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// let gap = |effective_gap_m| move |_| Meeting { effective_gap_m, ..Meeting::default() };
/// // Three walk 0.9 of the gap apart, a pair the gap and 5 m (both our judgement), up to 30 m (common practice).
/// let chosen = |people, gap_m| choose(people, base_m(people, false, &rules), &rules, &gap(gap_m));
/// assert_eq!(chosen(3, 20.0).spacing_m, 18.0);
/// assert_eq!(chosen(2, 20.0).spacing_m, 25.0);
/// let none = chosen(2, 26.0);
/// assert!(!none.enough && none.need_m == 31.0, "no spacing suits");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// Walking distance between neighbours, metres.
    pub spacing_m: f64,
    /// What a rope of this spacing meets.
    pub meeting: Meeting,
    /// What the gaps ask for, metres, not rounded.
    pub need_m: f64,
    /// Whether the spacing is as long as that.
    pub enough: bool,
}

impl Spacing {
    /// This very spacing, metres, with what it meets, whether or not it is enough.
    #[must_use]
    pub(crate) fn tried(
        people: usize,
        spacing_m: f64,
        rules: &Rules,
        meet: &dyn Fn(f64) -> Meeting,
    ) -> Self {
        let meeting = meet(spacing_m);
        let need_m = need_m(people, meeting.effective_gap_m, rules);
        Self {
            spacing_m,
            meeting,
            need_m,
            enough: need_m <= spacing_m + 1e-9,
        }
    }

    /// Whether a drawn zone gives a gap that it was chosen for; where none does, it is what is taught and no more.
    #[must_use]
    pub fn gap_given(&self) -> bool {
        self.meeting.zone.is_some()
    }
}

/// The spacing that the gaps ask for, metres: `effective_gap_m` along the route, people on the rope.
#[must_use]
pub fn need_m(people: usize, effective_gap_m: f64, rules: &Rules) -> f64 {
    match people {
        ..=2 => effective_gap_m + rules[Rule::NeighbourRoomM],
        3 => rules[Rule::GapShareThree] * effective_gap_m,
        _ => rules[Rule::GapShareFour] * effective_gap_m,
    }
}

/// The longest way over a gap that a spacing suits, metres; the other way round of [`need_m`].
#[must_use]
pub fn suits_gap_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    match people {
        ..=2 => spacing_m - rules[Rule::NeighbourRoomM],
        3 => spacing_m / rules[Rule::GapShareThree],
        _ => spacing_m / rules[Rule::GapShareFour],
    }
}

/// How many people can stand over one gap at once, `gap_m` long along the route; one is always reckoned with.
#[must_use]
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a positive quotient; the cast saturates"
)]
pub fn over_one_gap(people: usize, spacing_m: f64, gap_m: f64) -> usize {
    if spacing_m >= gap_m {
        return 1;
    }
    ((gap_m / spacing_m).floor() as usize + 1).min(people)
}

/// What the practice set asks for at least, metres; on bare ice only the floor, since gaps are in sight.
#[must_use]
pub fn base_m(people: usize, bare_only: bool, rules: &Rules) -> f64 {
    let floor_m = rules[Rule::SpacingFloorM];
    if bare_only {
        floor_m
    } else {
        rules[Rule::base_spacing(people)].max(floor_m)
    }
}

/// All spacings of at least so many metres that may be chosen, shortest first: by steps, then the cap.
pub fn choices_m(least_m: f64, rules: &Rules) -> impl Iterator<Item = f64> + use<> {
    let (step_m, cap_m) = (rules[Rule::SpacingStepM], rules[Rule::SpacingCapM]);
    let first = (least_m / step_m - 1e-9).ceil();
    std::iter::successors(Some(first), |k| Some(k + 1.0))
        .map(move |k| k * step_m)
        .take_while(move |&d| d < cap_m - 1e-9)
        .chain([cap_m])
}

/// The widest gap across that one of these spacings, shortest first, still suits, metres; `factor` says how many times
/// longer than wide the way over a gap is when met with it, 1 or more. `None` where there is none.
#[must_use]
pub fn widest_gap_m(
    people: usize,
    spacings_m: &[f64],
    factor: &dyn Fn(f64) -> f64,
    rules: &Rules,
) -> Option<f64> {
    let mut widest: Option<f64> = None;
    for &spacing_m in spacings_m.iter().rev() {
        // The longest first: what a shorter one suits at the very best may be less than what is found already.
        let at_best_m = suits_gap_m(people, spacing_m, rules).max(0.0);
        if widest.is_some_and(|w| at_best_m <= w) {
            break;
        }
        let gap_m = at_best_m / factor(spacing_m).max(1.0);
        widest = Some(widest.map_or(gap_m, |w| w.max(gap_m)));
    }
    widest
}

/// The spacing of a team over some ice: no less than the practice set and its knots ask for, and what `meet` needs.
pub(crate) fn of_team(
    team: &RopeTeam,
    over: Over<'_>,
    hardship: impl FnOnce() -> Hardship,
    rules: &Rules,
    meet: &dyn Fn(f64) -> Meeting,
) -> Spacing {
    let base_m = base_m(team.size(), over.bare_only(), rules);
    let knots_m = knots::least_m(team, over, hardship, rules);
    choose(team.size(), base_m.max(knots_m), rules, meet)
}

/// The least spacing from `least_m` on that suits; the cap, marked as not enough, where none does.
#[must_use]
pub fn choose(
    people: usize,
    least_m: f64,
    rules: &Rules,
    meet: &dyn Fn(f64) -> Meeting,
) -> Spacing {
    let tried = |spacing_m: f64| Spacing::tried(people, spacing_m, rules, meet);
    choices_m(least_m, rules)
        .map(tried)
        .find(|s| s.enough)
        .unwrap_or_else(|| tried(rules[Rule::SpacingCapM]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::{Origin, set::Source};

    fn rules(name: &str) -> Rules {
        Rules::with_practice(&Source::Named(name)).unwrap()
    }

    fn spacing(people: usize, gap_m: f64, rules: &Rules) -> Spacing {
        let meet = |_| Meeting {
            effective_gap_m: gap_m,
            zone: Some(0),
            ..Meeting::default()
        };
        choose(people, base_m(people, false, rules), rules, &meet)
    }

    #[test]
    fn the_base_holds_until_the_gap_asks_for_more() {
        // Trade rules, section 5: w + 5 m for two, 0.9 w for three, 0.8 w for four.
        let cases = [
            (2, 3.0, 14.5),
            (2, 12.2, 17.5),
            (3, 3.0, 13.0),
            (3, 20.0, 18.0),
            (4, 25.0, 20.0),
            (5, 25.0, 20.0),
            (5, 1.0, 9.0),
        ];
        for (people, gap_m, want) in cases {
            let got = spacing(people, gap_m, &rules("arm-span"));
            assert!(
                (got.spacing_m - want).abs() < 1e-9 && got.enough,
                "{people}, {gap_m}: {got:?}"
            );
        }
    }

    #[test]
    fn beyond_the_cap_there_is_no_spacing_that_suits() {
        let at_cap = spacing(2, 25.0, &rules("arm-span"));
        assert!(
            at_cap.enough && (at_cap.spacing_m - 30.0).abs() < 1e-9,
            "{at_cap:?}"
        );
        let above = spacing(2, 25.1, &rules("arm-span"));
        assert!(
            !above.enough && (above.spacing_m - 30.0).abs() < 1e-9,
            "{above:?}"
        );
    }

    #[test]
    fn spacing_never_grows_with_the_number_of_people_and_never_shrinks_with_the_gap() {
        for set in ["arm-span", "short-alpine", "constant", "club-coils"] {
            let rules = rules(set);
            for gap_dm in 0..400_u16 {
                let gap_m = f64::from(gap_dm) / 10.0;
                for people in 2..5 {
                    let few = spacing(people, gap_m, &rules);
                    let many = spacing(people + 1, gap_m, &rules);
                    assert!(many.spacing_m <= few.spacing_m, "{set} {people} {gap_m}");
                    let wider = spacing(people, gap_m + 0.1, &rules);
                    assert!(wider.spacing_m >= few.spacing_m, "{set} {people} {gap_m}");
                }
            }
        }
    }

    #[test]
    fn what_a_spacing_suits_is_what_it_is_needed_for() {
        // Trade rules, section 5, turned round: d − 5 m for two, d / 0.9 for three, d / 0.8 for more.
        let rules = rules("arm-span");
        for (people, spacing_m, gap_m) in [
            (2, 25.0, 20.0),
            (3, 18.0, 20.0),
            (4, 18.0, 22.5),
            (5, 20.0, 25.0),
        ] {
            let suits_m = suits_gap_m(people, spacing_m, &rules);
            assert!((suits_m - gap_m).abs() < 1e-9, "{people}: {suits_m}");
            let back_m = need_m(people, suits_m, &rules);
            assert!((back_m - spacing_m).abs() < 1e-9, "{people}: {back_m}");
        }
    }

    #[test]
    fn so_many_stand_over_one_gap_as_have_spans_shorter_than_it_between_them() {
        // Walking 10 m apart two are 10 m from end to end, three 20 m.
        for (people, gap_m, over) in [
            (4, 0.0, 1),
            (4, 10.0, 1),
            (4, 10.1, 2),
            (4, 19.9, 2),
            (4, 20.1, 3),
            (2, 20.1, 2),
        ] {
            assert_eq!(over_one_gap(people, 10.0, gap_m), over, "{people}, {gap_m}");
        }
    }

    #[test]
    fn spacings_go_by_steps_and_end_with_the_cap_once() {
        let mut rules = rules("arm-span");
        let from = |least_m: f64, rules: &Rules| choices_m(least_m, rules).collect::<Vec<f64>>();
        assert_eq!(from(28.6, &rules), [29.0, 29.5, 30.0]);
        assert_eq!(from(29.5, &rules), [29.5, 30.0], "a step itself is one");
        rules.set(Rule::SpacingCapM, 29.7, Origin::Trip).unwrap();
        assert_eq!(from(28.6, &rules), [29.0, 29.5, 29.7]);
    }

    #[test]
    fn the_widest_gap_need_not_be_that_of_the_longest_spacing() {
        // Four at 30 m suit 37.5 m along the line; met at 30° that is a gap of 18.75 m. At 20 m they suit 25 m met squarely.
        let rules = rules("arm-span");
        let factor = |spacing_m: f64| if spacing_m > 25.0 { 2.0 } else { 1.0 };
        let widest = |spacings_m: &[f64]| widest_gap_m(4, spacings_m, &factor, &rules);
        assert_eq!(widest(&[10.0, 20.0, 30.0]), Some(25.0));
        assert_eq!(widest(&[10.0, 30.0]), Some(18.75));
        assert_eq!(widest(&[]), None);
    }
}
