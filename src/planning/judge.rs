//! What is said of a leg: its verdict and the findings that it rests on.

use crate::{
    leg::{Bite, Leg, TeamSetup, Verdict},
    plan::Finding,
    problem::{Code, Level, Place, Problem},
    rope::{knots, setup::Draft},
    rules::{Rule, Rules, Travel},
    zone::{RopeWord, Surface, Zone},
};

use super::{
    Job,
    account::SharedRopes,
    footing, frame,
    sketch::{LegSketch, Sketch, asks_for_rope},
};

/// The finished leg.
pub(super) fn leg(
    job: &Job<'_>,
    stage: &Sketch<'_>,
    sketch: &LegSketch,
    ropes: &SharedRopes,
    number: usize,
) -> Leg {
    let zones = stage.zones(sketch, job.zones);
    let teams: Vec<TeamSetup> = sketch
        .teams
        .iter()
        .map(|d| d.clone().on(ropes.of_team(d.team, job.ropes), job.rules))
        .collect();
    let mut leg = frame::frame(job, stage, sketch, number);
    leg.zones = zones.iter().map(|z| z.number).collect();
    leg.snow_depth_m = zones.iter().filter_map(|z| z.snow_depth_m).reduce(f64::min);
    if sketch.roped {
        leg.gap_m = zones.iter().map(|z| z.gap.max_m).reduce(f64::max);
        leg.effective_gap_m = sketch
            .teams
            .iter()
            .map(|d| d.spacing.meeting.effective_gap_m)
            .reduce(f64::max);
        leg.along = sketch
            .teams
            .iter()
            .any(|d| d.spacing.meeting.along.is_some());
    }
    footing::fill(job, stage, sketch, &mut leg);
    let said = Said {
        job,
        zones: &zones,
        sketch,
        stage,
        teams: &teams,
        leg: &leg,
    };
    let problems = said.all();
    leg.verdict = verdict(sketch.roped, &problems);
    leg.findings = problems.into_iter().map(Finding::from).collect();
    leg.teams = teams;
    leg
}

/// Outside the limits, near one or on a guess, inside, or not roped at all.
fn verdict(roped: bool, problems: &[Problem]) -> Verdict {
    let outside = |p: &Problem| matches!(p.code, Code::NoSetup | Code::NoRope);
    if problems.iter().any(outside) {
        Verdict::Outside
    } else if problems
        .iter()
        .any(|p| matches!(p.level(), Level::Grave | Level::Warning))
    {
        Verdict::Look
    } else if roped {
        Verdict::Inside
    } else {
        Verdict::Unroped
    }
}

/// Everything known about a leg, from which its findings are drawn.
struct Said<'a> {
    job: &'a Job<'a>,
    zones: &'a [&'a Zone],
    stage: &'a Sketch<'a>,
    sketch: &'a LegSketch,
    teams: &'a [TeamSetup],
    leg: &'a Leg,
}

impl Said<'_> {
    fn all(&self) -> Vec<Problem> {
        let mut said = self.zones_say();
        for (draft, setup) in self.sketch.teams.iter().zip(self.teams) {
            said.extend(self.spacing_says(draft));
            said.extend(self.rope_says(setup));
            said.extend(self.knots_say(setup));
            said.extend(self.reserve_says(setup));
        }
        if self.sketch.roped {
            said.extend(self.ends_say());
            said.extend(self.travel_says());
        }
        said.extend(footing::says(self.job, self.stage, self.sketch, self.leg));
        said.sort_by_key(Problem::level);
        said
    }

    fn rules(&self) -> &Rules {
        self.job.rules
    }

    fn place(&self) -> Place {
        Place::item(format!("leg {}", self.leg.leg))
    }

    fn place_of(&self, setup: &TeamSetup) -> Place {
        self.place_of_team(setup.team)
    }

    /// Names the team only where there are several.
    fn place_of_team(&self, team: usize) -> Place {
        match self.sketch.teams.len() {
            0 | 1 => self.place(),
            _ => Place::item(format!("leg {} (team {team})", self.leg.leg)),
        }
    }

    fn say(&self, code: Code, says: impl Into<String>) -> Problem {
        Problem::new(code, self.place(), says)
    }

    fn zones_say(&self) -> Vec<Problem> {
        self.zones
            .iter()
            .flat_map(|zone| self.zone_says(zone))
            .collect()
    }

    fn zone_says(&self, zone: &Zone) -> Vec<Problem> {
        let mut said = Vec::new();
        let label = zone.label();
        if zone.rope == RopeWord::Never && zone.surface == Surface::Snow {
            let says = format!("{label} says never to rope, and its gaps are hidden under snow");
            said.push(
                self.say(Code::NeverOnHidden, says)
                    .hint("draw it again with `rope` = `auto`"),
            );
        }
        if !self.sketch.roped {
            said.extend(self.bare_view(zone));
            return said;
        }
        if zone.gap.assumed {
            let says = format!(
                "no gap width is given for {label}; {} m was assumed",
                zone.gap.max_m
            );
            said.push(
                self.say(Code::GapAssumed, says)
                    .hint("give `gap_m` in the zones file"),
            );
        }
        if zone.strike.is_none() {
            let says =
                format!("{label} gives no strike: its crevasses are taken to be crossed squarely");
            said.push(self.say(Code::StrikeUnknown, says));
        }
        said.extend(self.bare_view(zone));
        said
    }

    /// Both views on bare ice, whichever the plan takes.
    fn bare_view(&self, zone: &Zone) -> Option<Problem> {
        if zone.surface != Surface::Bare || zone.rope != RopeWord::Auto {
            return None;
        }
        let label = zone.label();
        let says = if asks_for_rope(zone, self.rules()) {
            format!(
                "{label} is bare ice, roped here; many go unroped where every gap is in sight, because a slip of one pulls all"
            )
        } else {
            format!("{label} is bare ice, unroped here; others rope where it is badly broken")
        };
        Some(
            self.say(Code::BareIce, says)
                .hint("`rope` = `always` or `never` in the zone settles it"),
        )
    }

    fn spacing_says(&self, draft: &Draft) -> Vec<Problem> {
        let mut said = Vec::new();
        let (spacing, people) = (&draft.spacing, draft.persons.len());
        let cap_m = self.rules()[Rule::SpacingCapM];
        let place = self.place_of_team(draft.team);
        if !spacing.enough {
            let says = format!(
                "gaps of {:.1} m along the route ask {people} people for a spacing of {:.1} m; the greatest is {cap_m} m",
                spacing.meeting.effective_gap_m, spacing.need_m
            );
            said.push(
                Problem::new(Code::NoSetup, place.clone(), says)
                    .hint("another line, a detour round the ends of the crevasses, or more people on the rope"),
            );
        } else if spacing.spacing_m > cap_m - self.rules()[Rule::NearCapM] {
            let says = format!(
                "the spacing of {} m is close to the greatest, {cap_m} m",
                spacing.spacing_m
            );
            said.push(Problem::new(Code::NearCap, place.clone(), says));
        }
        said.extend(self.over_gap(draft));
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
    fn over_gap(&self, draft: &Draft) -> Option<Problem> {
        let (spacing_m, gap_m) = (
            draft.spacing.spacing_m,
            draft.spacing.meeting.effective_gap_m,
        );
        if spacing_m >= gap_m {
            return None;
        }
        let people = draft.persons.len();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a positive quotient; the cast saturates"
        )]
        let over = ((gap_m / spacing_m).floor() as usize + 1).min(people);
        let says = format!(
            "{over} people can stand over one gap of {gap_m:.1} m at once with {spacing_m} m between them; {} left to hold",
            people - over
        );
        let place = self.place_of_team(draft.team);
        Some(Problem::new(Code::TwoOverGap, place, says).hint("cross such bridges one by one"))
    }

    fn rope_says(&self, setup: &TeamSetup) -> Option<Problem> {
        let total_m = setup.ledger.total_m;
        let place = self.place_of(setup);
        match &setup.rope {
            Some(rope) if rope.spare_m < -1e-9 => {
                let says = format!(
                    "the set-up takes {} m of rope; the {} m rope is {} m short",
                    up(total_m),
                    rope.length_m,
                    up(-rope.spare_m)
                );
                Some(
                    Problem::new(Code::NoRope, place, says)
                        .hint("`schrund options` shows what would make it fit"),
                )
            }
            Some(rope) if rope.spare_m < self.rules()[Rule::NearRopeM] - 1e-9 => {
                let says = format!(
                    "the {} m rope has {} m to spare",
                    rope.length_m,
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

    fn knots_say(&self, setup: &TeamSetup) -> Vec<Problem> {
        let place = self.place_of(setup);
        let tied = setup.knots.count > 0;
        let mut said = Vec::new();
        match setup.knots.bite {
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
        if setup.people == 2 && !tied {
            let says = format!(
                "one person alone must hold, without brake knots: {}",
                setup.knots.why
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
            .filter(|z| knots::bite([**z], self.rules()) == Bite::No);
        dead.map(|z| z.label()).collect::<Vec<_>>().join(", ")
    }

    fn reserve_says(&self, setup: &TeamSetup) -> Option<Problem> {
        let middle = setup.middle.as_ref().filter(|m| m.missing_m > 1e-9)?;
        let says = format!(
            "if person {} falls, {} m of free rope stand against the {} m of a drop loop",
            middle.person,
            down(middle.free_m),
            up(middle.needs_m)
        );
        Some(
            Problem::new(Code::MiddleNotReached, self.place_of(setup), says)
                .hint("plan another rescue for the middle, or set `cover = \"anyone\"`"),
        )
    }

    /// Where the route begins or ends on the ice.
    fn ends_say(&self) -> Vec<Problem> {
        let length_m = self.stage.stage.length_m();
        let contacts = || {
            self.sketch
                .contacts
                .iter()
                .filter_map(|&i| self.stage.contacts.get(i))
        };
        let begins = contacts().any(|c| c.crossings.iter().any(|s| s.from_m <= 0.0));
        let ends = contacts().any(|c| c.crossings.iter().any(|s| s.to_m >= length_m));
        let (first, last) = (self.leg.start_m <= 0.0, self.leg.end_m >= length_m);
        let mut said = Vec::new();
        if first && begins {
            said.push(self.say(
                Code::CutOff,
                "the route begins on the ice: the leg is cut off there",
            ));
        }
        if last && ends {
            said.push(self.say(
                Code::CutOff,
                "the route ends on the ice: the leg is cut off there",
            ));
        } else if last {
            let says = "the route ends before the last person is off the ice and its margin";
            said.push(self.say(Code::LastOnIce, says));
        }
        said
    }

    fn travel_says(&self) -> Vec<Problem> {
        let mut said = Vec::new();
        if self.rules().choices.travel.value == Travel::Ski {
            let says = "on skis many go unroped in good snow and rope up for danger signs; this is the roped set-up";
            said.push(self.say(Code::OnSkis, says));
        }
        said
    }
}

/// A demand, rounded up to the decimetre for reading.
pub(super) fn up(metres: f64) -> String {
    format!("{:.1}", (metres * 10.0 - 1e-6).ceil() / 10.0)
}

/// What is there, rounded down to the decimetre for reading.
pub(super) fn down(metres: f64) -> String {
    format!("{:.1}", (metres * 10.0 + 1e-6).floor() / 10.0)
}
