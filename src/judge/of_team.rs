//! What must be said of one team's set-up on a leg: spacing, knots, rope, reserve.

use crate::trip::job::Case;
use crate::{
    fault::{Code, Place, Problem},
    legs::spacing,
    plan::leg::{Bite, RopeAtHand, TeamSetup},
    practice::Rule,
    rope::{knots, marks::called, setup::Draft},
    trip::zone::Zone,
};

/// One team on one leg.
pub(crate) struct OfTeam<'a> {
    pub(crate) job: &'a Case<'a>,
    pub(crate) zones: &'a [&'a Zone],
    pub(crate) draft: &'a Draft,
    pub(crate) place: Place,
}

impl OfTeam<'_> {
    /// What holds whichever rope the team carries.
    pub(crate) fn draft_says(&self) -> Vec<Problem> {
        let mut said = self.spacing_says();
        said.extend(self.knots_say());
        said
    }

    fn spacing_says(&self) -> Vec<Problem> {
        let mut said = Vec::new();
        let (spacing, people) = (&self.draft.spacing, self.draft.persons.len());
        let cap_m = self.job.rules[Rule::SpacingCapM];
        let place = self.place.clone();
        if !spacing.enough {
            let says = format!(
                "gaps of {:.1} m along the route ask {people} people for a spacing of {:.1} m; the greatest is {cap_m} m",
                spacing.meeting.effective_gap_m, spacing.need_m
            );
            said.push(
                Problem::new(Code::NoSetup, place.clone(), says)
                    .hint("another line, a detour round the ends of the crevasses, or more people on the rope"),
            );
        } else if spacing.spacing_m > cap_m - self.job.rules[Rule::NearCapM] {
            let says = format!(
                "the spacing of {} m is close to the greatest, {cap_m} m",
                spacing.spacing_m
            );
            said.push(Problem::new(Code::NearCap, place.clone(), says));
        }
        said.extend(self.over_gap());
        said.extend(spacing.meeting.along.and_then(|(zone, at_m)| {
            let label = self.job.zones.get(zone)?.label();
            let says = format!(
                "the team runs along the crevasses of {label} near {:.2} km",
                at_m / 1000.0
            );
            Some(
                Problem::new(Code::Along, place, says)
                    .hint("walk in echelon there, or take another line"),
            )
        }));
        said
    }

    /// How many can stand over one gap at once, and who is left.
    fn over_gap(&self) -> Option<Problem> {
        let (spacing_m, gap_m) = (
            self.draft.spacing.spacing_m,
            self.draft.spacing.meeting.effective_gap_m,
        );
        if spacing_m >= gap_m {
            return None;
        }
        let people = self.draft.persons.len();
        let over = spacing::over_one_gap(people, spacing_m, gap_m);
        let says = format!(
            "{over} people can stand over one gap of {gap_m:.1} m at once with {spacing_m} m between them; {} left to hold",
            people - over
        );
        let place = self.place.clone();
        Some(Problem::new(Code::TwoOverGap, place, says).hint("cross such bridges one by one"))
    }

    /// Whether the rope holds the set-up, and whom its reserve does not reach.
    pub(crate) fn rope_says(&self, setup: &TeamSetup) -> Vec<Problem> {
        let said = [self.rope_says_of(setup), self.reserve_says(setup)];
        said.into_iter().flatten().collect()
    }

    fn rope_says_of(&self, setup: &TeamSetup) -> Option<Problem> {
        let total_m = setup.ledger.total_m;
        let place = self.place.clone();
        match &setup.rope {
            Some(rope) if rope.spare_m < -1e-9 => {
                let says = format!(
                    "the set-up takes {} m of rope; {} is {} m short",
                    up(total_m),
                    self.rope_words(rope),
                    up(-rope.spare_m)
                );
                Some(
                    Problem::new(Code::NoRope, place, says)
                        .hint("`schrund options` shows what would make it fit"),
                )
            }
            Some(rope) if rope.spare_m < self.job.rules[Rule::NearRopeM] - 1e-9 => {
                let says = format!(
                    "{} has {} m to spare",
                    self.rope_words(rope),
                    down(rope.spare_m)
                );
                Some(Problem::new(Code::NearRope, place, says))
            }
            None if !self.job.ropes.is_empty() => {
                let says = format!(
                    "no rope is left for team {}; it needs {} m",
                    setup.team,
                    up(total_m)
                );
                Some(Problem::new(Code::NoRope, place, says).hint("name another rope: `--rope 60`"))
            }
            None if setup.sold_length_m.is_none() => {
                let says = format!(
                    "the set-up takes {} m of rope, more than any single rope sold",
                    up(total_m)
                );
                Some(
                    Problem::new(Code::NoRope, place, says)
                        .hint("`schrund options` shows what would make it fit"),
                )
            }
            _ => None,
        }
    }

    /// `the 60 m rope`, `rope "blue" (60 m)`.
    fn rope_words(&self, rope: &RopeAtHand) -> String {
        let rope_named = rope.number.checked_sub(1);
        let named = rope_named.and_then(|i| self.job.ropes.get(i)?.name.as_deref());
        match named {
            Some(name) => format!("rope \"{name}\" ({} m)", rope.length_m),
            None => format!("the {} m rope", rope.length_m),
        }
    }

    fn knots_say(&self) -> Vec<Problem> {
        let place = self.place.clone();
        let tied = self.draft.knots.count > 0;
        let mut said = Vec::new();
        match self.draft.knots.bite {
            Bite::Doubtful if tied => {
                let says =
                    "the snow may be too thin for brake knots: tie them, do not count on them";
                said.push(Problem::new(Code::KnotsDoubtful, place.clone(), says));
            }
            Bite::Unknown if tied => {
                let says = "nobody said how much snow lies on the ice, so whether the knots bite is unknown";
                said.push(
                    Problem::new(Code::SnowUnknown, place.clone(), says)
                        .hint("give `snow_depth_m` in the zones file"),
                );
            }
            Bite::No if tied => {
                let says = format!("brake knots do not bite in {}", self.where_no_bite());
                said.push(Problem::new(Code::KnotsNoBite, place.clone(), says));
            }
            _ => {}
        }
        if self.draft.persons.len() == 2 && !tied {
            let says = format!(
                "one person alone must hold, without brake knots: {}",
                self.draft.knots.why
            );
            said.push(
                Problem::new(Code::PairWithoutKnots, place.clone(), says)
                    .hint("a third person, or another line"),
            );
        }
        if tied {
            let says = "a haul needs its own strand here: brake knots block the loaded one";
            said.push(Problem::new(Code::KnotsBlockHaul, place, says));
        }
        said
    }

    fn where_no_bite(&self) -> String {
        let dead = self
            .zones
            .iter()
            .filter(|z| knots::bite([**z], self.job.rules) == Bite::No);
        dead.map(|z| z.label()).collect::<Vec<_>>().join(", ")
    }

    fn reserve_says(&self, setup: &TeamSetup) -> Option<Problem> {
        let middle = setup.middle.as_ref().filter(|m| m.missing_m > 1e-9)?;
        let says = format!(
            "if {} falls, {} m of free rope stand against the {} m of a drop loop",
            called(&setup.persons, middle.person),
            down(middle.free_m),
            up(middle.needs_m)
        );
        Some(
            Problem::new(Code::MiddleNotReached, self.place.clone(), says)
                .hint("plan another rescue for the middle, or set `cover = \"anyone\"`"),
        )
    }
}

/// A demand, rounded up to the decimetre for reading.
pub(crate) fn up(metres: f64) -> String {
    format!("{:.1}", (metres * 10.0 - 1e-6).ceil() / 10.0)
}

/// What is there, rounded down to the decimetre for reading.
pub(crate) fn down(metres: f64) -> String {
    format!("{:.1}", (metres * 10.0 + 1e-6).floor() / 10.0)
}
