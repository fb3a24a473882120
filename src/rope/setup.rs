//! One rope team on one leg, put together.

use crate::{
    plan::leg::{KnotSet, Ledger, PersonOnRope, RopeAtHand, TeamSetup},
    practice::{Rule, Rules},
    trip::{party::RopeTeam, rope::Rope, zone::Zone},
};

use crate::{
    legs::spacing::{self, Spacing},
    rope::{
        knots::{self, Hardship},
        ledger, marks, reserve, share,
    },
};

/// Everything about one team on one leg before a rope is given to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Which team.
    pub team: usize,
    /// Its people.
    pub persons: Vec<PersonOnRope>,
    /// How far apart, and what for.
    pub spacing: Spacing,
    /// Whether all zones of the leg are bare.
    pub bare_only: bool,
    /// Brake knots.
    pub knots: KnotSet,
    /// Where the rope goes.
    pub ledger: Ledger,
}

impl Draft {
    /// The set-up of a team for the zones of a leg.
    #[must_use]
    pub fn new(
        team: &RopeTeam,
        spacing: Spacing,
        zones: &[&Zone],
        hardship: Hardship,
        rules: &Rules,
    ) -> Self {
        let knots = knots::choose(team, spacing.spacing_m, zones, hardship, rules);
        let person = |p: &crate::trip::party::Person| PersonOnRope {
            name: p.name.clone(),
            mass_kg: p.mass_kg,
        };
        Self {
            team: team.number,
            persons: team.people.iter().map(person).collect(),
            ledger: ledger::ledger(team.size(), spacing.spacing_m, &knots, rules),
            bare_only: bare_only(zones),
            spacing,
            knots,
        }
    }

    /// The set-up with the rope that the team carries, or with the next length sold where none was named. `factor`
    /// says how many times longer than wide the way over a gap is when met with a spacing.
    #[must_use]
    pub fn on(
        self,
        rope: Option<(usize, &Rope)>,
        factor: &dyn Fn(f64) -> f64,
        rules: &Rules,
    ) -> TeamSetup {
        let people = self.persons.len();
        let spacing_m = self.spacing.spacing_m;
        let sold_length_m = ledger::sold_length_m(self.ledger.total_m);
        let layout = marks::Layout {
            persons: &self.persons,
            spacing_m,
            knots: &self.knots,
        };
        let coil_m = reserve::coil_m(people, spacing_m, rules);
        let length_m = rope.map(|(_, r)| r.length_m).or(sold_length_m);
        TeamSetup {
            team: self.team,
            people,
            spacing_m,
            coil_m,
            middle: reserve::middle(people, spacing_m, rules),
            sold_length_m,
            marks: marks::marks(&layout, rules),
            rope: rope.map(|(number, r)| RopeAtHand {
                number,
                length_m: r.length_m,
                spare_m: r.length_m - self.ledger.total_m,
            }),
            as_tied_gap_m: gap_at_m(people, spacing_m, factor, rules),
            covers_at_spacing_m: length_m.and_then(|m| self.covers_at_spacing_m(m, factor, rules)),
            covers_gap_m: length_m.and_then(|length_m| self.covers_gap_m(length_m, factor, rules)),
            knots_count_from_snow_m: (self.knots.count > 0).then_some(rules[Rule::KnotsBiteM]),
            coil_kg: share::mass_kg(coil_m, rope.and_then(|(_, r)| r.diameter_mm), rules),
            falls: reserve::falls(people, spacing_m, rules),
            arrest: None,
            haul: None,
            ledger: self.ledger,
            knots: self.knots,
            persons: self.persons,
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
    fn covers_at_spacing_m(
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

    /// All spacings whose set-up such a rope holds, metres, shortest first.
    fn fitting_m(&self, rope_m: f64, rules: &Rules) -> Vec<f64> {
        let people = self.persons.len();
        let fits = |d: &f64| ledger::total_at_m(people, *d, &self.knots, rules) <= rope_m + 1e-9;
        let choices = spacing::choices_m(people, self.bare_only, rules);
        choices.filter(fits).collect()
    }
}

/// The widest gap across that one spacing suits, metres.
fn gap_at_m(people: usize, spacing_m: f64, factor: &dyn Fn(f64) -> f64, rules: &Rules) -> f64 {
    spacing::suits_gap_m(people, spacing_m, rules).max(0.0) / factor(spacing_m).max(1.0)
}

/// Whether every gap of the leg is in sight.
#[must_use]
pub fn bare_only(zones: &[&Zone]) -> bool {
    !zones.is_empty()
        && zones
            .iter()
            .all(|z| z.surface == crate::trip::zone::Surface::Bare)
}
