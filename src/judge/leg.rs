//! What is said of a leg: its verdict and the findings that it rests on.

use crate::{
    fault::{Code, Level, Place, Problem},
    plan::{
        Finding,
        leg::{Leg, TeamSetup, Verdict},
    },
    practice::{Rules, Travel},
    rope::setup::Draft,
    trip::zone::{RopeWord, Surface, Zone},
};

use crate::{
    ground::footing,
    judge::{falls, of_team::OfTeam},
    legs::sketch::{LegSketch, Sketch, asks_for_rope},
    rope::answers::Answers,
    trip::job::Case,
    whole::{account::SharedRopes, frame},
};

/// The finished leg.
pub(crate) fn leg(
    job: &Case<'_>,
    stage: &Sketch<'_>,
    sketch: &LegSketch,
    ropes: &SharedRopes,
    answers: &mut Answers,
    number: usize,
) -> Leg {
    let zones = stage.zones(sketch, job.zones);
    let mut unanswered = Vec::new();
    let mut teams: Vec<TeamSetup> = Vec::new();
    for draft in &sketch.teams {
        let rope = ropes.of_team(draft.team, job.ropes);
        let meets = stage.meets(job, sketch);
        let factor = |spacing_m: f64| meets(spacing_m).greatest_factor;
        let mut setup = draft.clone().on(rope, &factor, job.rules);
        let ground = stage.ground(sketch, draft.bare_only, job.rules);
        if let Err(says) = answers.fill(&mut setup, draft, ground, number, job.rules) {
            unanswered.push(says.to_string());
        }
        teams.push(setup);
    }
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
        unanswered: &unanswered,
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

/// How a team's draft stands, whichever rope it carries and falls not asked about.
pub(crate) fn draft(job: &Case<'_>, zones: &[&Zone], draft: &Draft) -> Verdict {
    let of_team = OfTeam {
        job,
        zones,
        draft,
        place: Place::default(),
    };
    verdict(true, &of_team.draft_says())
}

/// The worst that is said of any leg, whoever walks it.
pub(crate) fn ground(job: &Case<'_>, stages: &[Sketch<'_>]) -> Verdict {
    let of_leg = |stage: &Sketch<'_>, sketch: &LegSketch| {
        let said = Said {
            job,
            zones: &stage.zones(sketch, job.zones),
            stage,
            sketch,
            teams: &[],
            unanswered: &[],
            leg: &frame::frame(job, stage, sketch, 0),
        };
        verdict(sketch.roped, &said.ground_says())
    };
    let legs = stages
        .iter()
        .flat_map(|s| s.legs.iter().map(move |l| (s, l)));
    legs.map(|(s, l)| of_leg(s, l))
        .max()
        .unwrap_or(Verdict::Unroped)
}

/// Everything known about a leg, from which its findings are drawn.
struct Said<'a> {
    job: &'a Case<'a>,
    zones: &'a [&'a Zone],
    stage: &'a Sketch<'a>,
    sketch: &'a LegSketch,
    teams: &'a [TeamSetup],
    unanswered: &'a [String],
    leg: &'a Leg,
}

impl Said<'_> {
    fn all(&self) -> Vec<Problem> {
        let mut said = self.ground_says();
        for (draft, setup) in self.sketch.teams.iter().zip(self.teams) {
            let place = self.place_of_team(draft.team);
            said.extend(falls::say(setup, &place, self.rules()));
            let of_team = OfTeam {
                job: self.job,
                zones: self.zones,
                draft,
                place,
            };
            said.extend(of_team.draft_says());
            said.extend(of_team.rope_says(setup));
        }
        let no_answer = |says: &String| falls::no_answer(says, self.place());
        said.extend(self.unanswered.iter().map(no_answer));
        said.sort_by_key(Problem::level);
        said
    }

    /// What holds whoever walks the leg.
    fn ground_says(&self) -> Vec<Problem> {
        let mut said = self.zones_say();
        if self.sketch.roped {
            said.extend(self.ends_say());
            said.extend(self.travel_says());
        }
        said.extend(footing::says(self.job, self.stage, self.sketch, self.leg));
        said
    }

    fn rules(&self) -> &Rules {
        self.job.rules
    }

    fn place(&self) -> Place {
        Place::item(format!("leg {}", self.leg.leg))
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
        if zone.strike.is_some_and(|s| s.uncertainty_deg.is_none()) {
            let says = format!("{label} does not say how sure its strike is: it is taken as exact");
            let hint =
                "give `strike_uncertainty_deg`; a few degrees can lengthen the way over a gap";
            said.push(self.say(Code::StrikeExact, says).hint(hint));
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
