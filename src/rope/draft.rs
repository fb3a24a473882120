//! One rope team on one leg before a rope is given to it.

use crate::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        spacing::{self, Spacing},
    },
    plan::{
        leg::{KnotSet, Ledger},
        name::PersonOnRope,
        why::SpacingWhy,
    },
    practice::Rules,
    rope::ledger,
    trip::party::{Person, RopeTeam},
};

/// Everything about one team on one leg before a rope is given to it.
///
/// ```
/// use schrund::{legs::{knots::Hardship, over::Over, spacing::{base_m, choose}, worst::Meeting}, rope::draft::Draft};
///
/// let job = schrund::example::job()?;
/// let team = &job.party.rope_teams()[0];
/// let least_m = base_m(team.size(), false, &job.rules);
/// let spacing = choose(team.size(), least_m, &job.rules, &|_| Meeting::default());
/// let draft = Draft::new(team, spacing, Over::drawn(&[&job.zones[0]]), Hardship::default(), &job.rules);
/// assert_eq!((draft.spacing.spacing_m, draft.ledger.total_m), (13.0, 42.0), "as close as is taught");
/// // Gaps met squarely: a longer rope covers wider ones, a rope too short for the closest set-up none.
/// let covers = |rope_m| draft.covers_gap_m(rope_m, &|_| 1.0, &job.rules);
/// assert!(covers(60.0) > covers(50.0) && covers(40.0).is_none());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Which team.
    pub team: usize,
    /// Its people.
    pub persons: Vec<PersonOnRope>,
    /// How far apart, and what for.
    pub spacing: Spacing,
    /// Whether all ice of the leg is bare.
    pub bare_only: bool,
    /// Brake knots.
    pub knots: KnotSet,
    /// Where the rope goes.
    pub ledger: Ledger,
}

impl Draft {
    /// The set-up of a team for the ice of a leg.
    #[must_use]
    pub fn new(
        team: &RopeTeam,
        spacing: Spacing,
        over: Over<'_>,
        hardship: Hardship,
        rules: &Rules,
    ) -> Self {
        let knots = knots::choose(team, spacing.spacing_m, over, hardship, rules);
        let person = |p: &Person| PersonOnRope {
            called: p.called.clone(),
            mass_kg: p.mass_kg,
        };
        Self {
            team: team.number,
            persons: team.people.iter().map(person).collect(),
            ledger: ledger::ledger(team.size(), spacing.spacing_m, &knots, rules),
            bare_only: over.bare_only(),
            spacing,
            knots,
        }
    }

    /// The widest gap across that a rope of this length still covers, were every gap of the leg as wide, metres;
    /// `None` where it does not even hold the shortest set-up. Exact: every spacing that may be chosen is asked.
    #[must_use]
    pub fn covers_gap_m(
        &self,
        rope_m: f64,
        factor: &dyn Fn(f64) -> f64,
        rules: &Rules,
    ) -> Option<f64> {
        let fitting = self.fitting_m(rope_m, rules);
        spacing::widest_gap_m(self.persons.len(), &fitting, factor, rules)
    }

    /// The least spacing at which that widest gap is covered, metres.
    pub(super) fn covers_at_spacing_m(
        &self,
        rope_m: f64,
        factor: &dyn Fn(f64) -> f64,
        rules: &Rules,
    ) -> Option<f64> {
        let (people, widest_m) = (
            self.persons.len(),
            self.covers_gap_m(rope_m, factor, rules)?,
        );
        let covers = |d: &f64| gap_at_m(people, *d, factor, rules) >= widest_m - 1e-9;
        self.fitting_m(rope_m, rules).into_iter().find(covers)
    }

    /// Whether a team is tied in this one as in another: nothing has to be changed between them.
    pub(crate) fn is_tied_as(&self, other: &Self) -> bool {
        let apart_m = self.spacing.spacing_m - other.spacing.spacing_m;
        apart_m.abs() < 1e-9 && self.knots.count == other.knots.count
    }

    /// The least spacing that the practice set and the knots ask for, metres.
    fn least_m(&self, rules: &Rules) -> f64 {
        let people = self.persons.len();
        let base_m = spacing::base_m(people, self.bare_only, rules);
        match self.knots.count {
            0 => base_m,
            _ => base_m.max(knots::layout_m(people, rules)),
        }
    }

    /// Why the team walks so far apart.
    pub(super) fn spacing_why(&self, rules: &Rules) -> SpacingWhy {
        let base_m = spacing::base_m(self.persons.len(), self.bare_only, rules);
        let least_m = self.least_m(rules);
        let closest_m = spacing::choices_m(least_m, rules).next();
        let wider = |least_m: f64| self.spacing.spacing_m > least_m + 1e-9;
        if !self.spacing.enough {
            SpacingWhy::Cap
        } else if closest_m.is_some_and(wider) {
            SpacingWhy::Gap
        } else if least_m > base_m + 1e-9 {
            SpacingWhy::Knots
        } else if self.bare_only {
            SpacingWhy::Least
        } else {
            SpacingWhy::Habit
        }
    }

    /// All spacings whose set-up such a rope holds, metres, shortest first.
    fn fitting_m(&self, rope_m: f64, rules: &Rules) -> Vec<f64> {
        let people = self.persons.len();
        let fits = |d: &f64| ledger::total_at_m(people, *d, &self.knots, rules) <= rope_m + 1e-9;
        spacing::choices_m(self.least_m(rules), rules)
            .filter(fits)
            .collect()
    }
}

/// The widest gap along the line that one spacing suits, metres.
pub(super) fn gap_along_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    spacing::suits_gap_m(people, spacing_m, rules).max(0.0)
}

/// The same across, metres.
pub(super) fn gap_at_m(
    people: usize,
    spacing_m: f64,
    factor: &dyn Fn(f64) -> f64,
    rules: &Rules,
) -> f64 {
    gap_along_m(people, spacing_m, rules) / factor(spacing_m).max(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{legs::worst::Meeting, practice::set::Source, trip::party::Party};

    fn rules() -> Rules {
        Rules::with_practice(&Source::Named("arm-span")).unwrap()
    }

    /// People walking so far apart on snow that nobody drew, over a gap so long.
    fn walking(people: usize, spacing_m: f64, effective_gap_m: f64) -> Draft {
        let rules = rules();
        let team = Party::weighing(&vec![80.0; people]).split_into(1).remove(0);
        let meet = |_| Meeting {
            effective_gap_m,
            ..Meeting::default()
        };
        let spacing = Spacing::tried(people, spacing_m, &rules, &meet);
        let over = Over {
            zones: &[],
            undrawn: true,
        };
        Draft::new(&team, spacing, over, Hardship::default(), &rules)
    }

    #[test]
    fn the_reason_for_a_spacing_is_what_made_it_so_wide() {
        let rules = rules();
        let why = |draft: &Draft| draft.spacing_why(&rules);
        // Three walk 12.6 m apart by the set (common practice), in half metres 13 m; a gap of 15 m asks for 0.9 of it (ours).
        assert_eq!(why(&walking(3, 13.0, 4.0)), SpacingWhy::Habit);
        assert_eq!(why(&walking(3, 13.5, 15.0)), SpacingWhy::Gap);
        assert_eq!(
            why(&walking(3, 30.0, 34.0)),
            SpacingWhy::Cap,
            "30.6 m would do"
        );
        // A pair walks 14.4 m apart by the set, and 15 m for 2 × (3 + 2 + 2) + 1 m of knots.
        let pair = walking(2, 15.0, 4.0);
        assert_eq!((pair.knots.count, why(&pair)), (6, SpacingWhy::Knots));
        let none = KnotSet {
            count: 0,
            each_end: 0,
            ..pair.knots.clone()
        };
        let untied = Draft {
            knots: none,
            ..walking(2, 14.5, 4.0)
        };
        assert_eq!(why(&untied), SpacingWhy::Habit, "no knots, no layout");
        assert_eq!(why(&walking(2, 15.5, 10.5)), SpacingWhy::Gap);
        let bare = Draft {
            bare_only: true,
            ..walking(3, 7.0, 4.0)
        };
        assert_eq!(why(&bare), SpacingWhy::Least, "the floor of 7 m (ours)");
    }

    #[test]
    fn a_rope_just_as_long_as_the_set_up_covers_the_gap_that_its_spacing_suits() {
        // Three at 13 m take 2 × 13 m of spans, 3 m of tie-ins and 2 × 6.5 m of coils; they suit 13 m / 0.9.
        let (draft, rules) = (walking(3, 13.0, 4.0), rules());
        let covers = |rope_m: f64, times: f64| draft.covers_gap_m(rope_m, &|_| times, &rules);
        let near = |got: Option<f64>, want_m: f64| got.is_some_and(|m| (m - want_m).abs() < 1e-9);
        assert!(
            near(covers(42.0, 1.0), 13.0 / 0.9),
            "{:?}",
            covers(42.0, 1.0)
        );
        assert_eq!(covers(41.9, 1.0), None);
        assert!(
            near(covers(42.0, 2.0), 6.5 / 0.9),
            "met at 30° twice as long: {:?}",
            covers(42.0, 2.0)
        );
        // From 14 m on it would be met squarely: that is the least at which the widest is covered.
        let factor = |spacing_m: f64| if spacing_m < 13.9 { 2.0 } else { 1.0 };
        assert_eq!(
            draft.covers_at_spacing_m(45.5, &factor, &rules),
            Some(14.0),
            "3 × 14 + 3 m"
        );
        assert_eq!(draft.covers_at_spacing_m(42.0, &factor, &rules), Some(13.0));
    }
}
