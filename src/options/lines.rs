//! What each rope team of a split asks for over the whole trip, and how its legs stand, before ropes are given out.

use std::collections::BTreeMap;

use crate::options::variants::Variant;
use crate::{
    ground::met::Met,
    judge::leg,
    legs::{
        memo::Memo,
        sketch::{LegSketch, Sketch},
        spacing,
    },
    plan::{leg::Verdict, options::WayTeam},
    practice::Rule,
    rope::{knots, ledger, reserve, setup::Draft},
    trip::job::Case,
    trip::party::RopeTeam,
};

/// The legs of the trip for rope teams of some sizes.
#[derive(Debug)]
pub(super) struct Trip<'a> {
    stages: Vec<Sketch<'a>>,
    /// The worst that is said of any leg whoever walks it.
    ground: Verdict,
    /// By size: the place of its draft in each leg.
    place: BTreeMap<usize, usize>,
}

/// A split under one variant, before ropes are given out.
#[derive(Debug)]
pub(super) struct WayDraft {
    pub(super) teams: Vec<TeamLine>,
    pub(super) changes: Vec<String>,
    pub(super) verdict: Verdict,
    pub(super) setup_changes: usize,
}

/// What one team asks for over the trip.
#[derive(Clone, Debug)]
pub(super) struct TeamLine {
    pub(super) team: WayTeam,
    pub(super) verdict: Verdict,
    pub(super) left: usize,
    pub(super) coil_m: f64,
    /// Spacing missing where no set-up is within the limits, metres.
    pub(super) short_m: f64,
    /// Whether the set-up changes before each roped leg but the first of a stage.
    changes: Vec<bool>,
}

impl<'a> Trip<'a> {
    pub(super) fn new(job: &Case<'a>, teams: &[RopeTeam], met: &'a Met, memo: &'a Memo) -> Self {
        let mut of_size: BTreeMap<usize, RopeTeam> = BTreeMap::new();
        for team in teams {
            of_size.entry(team.size()).or_insert_with(|| team.clone());
        }
        let one_each: Vec<RopeTeam> = of_size.values().cloned().collect();
        let stages: Vec<Sketch<'a>> = job
            .route
            .stages
            .iter()
            .zip(&met.stages)
            .map(|(stage, met)| Sketch::of(job, &one_each, stage, met, memo))
            .collect();
        let ground = leg::ground(job, &stages);
        Self {
            stages,
            ground,
            place: of_size.keys().enumerate().map(|(i, &n)| (n, i)).collect(),
        }
    }

    /// Roped legs with their stage and number.
    fn roped(&self) -> impl Iterator<Item = (usize, &Sketch<'a>, &LegSketch)> {
        let all = self
            .stages
            .iter()
            .flat_map(|s| s.legs.iter().map(move |l| (s, l)));
        all.enumerate()
            .filter(|(_, (_, leg))| leg.roped)
            .map(|(i, (stage, leg))| (i + 1, stage, leg))
    }

    /// Whether any team could be told to tie knots anywhere.
    pub(super) fn ties_knots(&self, teams: &[RopeTeam]) -> bool {
        teams.iter().any(|t| t.size() <= 3)
    }

    pub(super) fn draft(
        &self,
        job: &Case<'_>,
        teams: &[RopeTeam],
        variant: &Variant,
        practice: &[String],
    ) -> WayDraft {
        let job = Case {
            rules: &variant.rules,
            ..*job
        };
        let mut alike: BTreeMap<(usize, bool), TeamLine> = BTreeMap::new();
        let mut lines = Vec::new();
        for team in teams {
            let heavier = team.heavier_by(job.rules[Rule::HeavierFactor]).is_some();
            let line = alike
                .entry((team.size(), heavier))
                .or_insert_with(|| self.line(&job, team));
            let mut line = line.clone();
            line.team.persons = team.people.iter().map(|p| p.name.clone()).collect();
            lines.push(line);
        }
        let worst = lines.iter().map(|l| l.verdict).max();
        let legs = lines.first().map_or(0, |l| l.changes.len());
        let changes_at = |i: usize| lines.iter().any(|l| l.changes.get(i) == Some(&true));
        WayDraft {
            verdict: worst.unwrap_or(Verdict::Unroped).max(self.ground),
            setup_changes: (0..legs).filter(|&i| changes_at(i)).count(),
            changes: practice.iter().chain(&variant.changes).cloned().collect(),
            teams: lines,
        }
    }

    /// One team over all roped legs.
    fn line(&self, job: &Case<'_>, team: &RopeTeam) -> TeamLine {
        let mut line = TeamLine::new(team);
        let mut before: Option<(usize, [f64; 4])> = None;
        for (number, stage, leg) in self.roped() {
            let Some(draft) = self.place.get(&team.size()).and_then(|&i| leg.teams.get(i)) else {
                continue;
            };
            let zones = stage.zones(leg, job.zones);
            let spacing_m = draft.spacing.spacing_m;
            let knots = knots::choose(team, spacing_m, &zones, leg.hardship, job.rules);
            let draft = Draft {
                team: team.number,
                ledger: ledger::ledger(team.size(), spacing_m, &knots, job.rules),
                knots,
                ..draft.clone()
            };
            let coil_m = reserve::coil_m(team.size(), spacing_m, job.rules);
            line.leg(number, &draft, coil_m);
            line.verdict = line.verdict.max(leg::draft(job, &zones, &draft));
            let set = [
                spacing_m,
                coil_m,
                draft.ledger.knots_m,
                draft.ledger.total_m,
            ];
            if let Some((last, set_before)) = before {
                let changed = set
                    .iter()
                    .zip(set_before)
                    .any(|(a, b)| (a - b).abs() > 1e-9);
                line.changes.push(changed && last == stage.stage.number);
            }
            before = Some((stage.stage.number, set));
        }
        if line.team.leg.is_none() {
            line.team.spacing_m = [0.0; 2]; // no leg is roped
        }
        line
    }
}

impl TeamLine {
    fn new(team: &RopeTeam) -> Self {
        Self {
            team: WayTeam {
                people: team.size(),
                persons: Vec::new(),
                spacing_m: [f64::INFINITY, 0.0],
                rope: None,
                rope_m: 0.0,
                needed_m: 0.0,
                leg: None,
            },
            verdict: Verdict::Unroped,
            left: team.size().saturating_sub(1),
            coil_m: 0.0,
            short_m: 0.0,
            changes: Vec::new(),
        }
    }

    /// Takes in what one roped leg asks for.
    fn leg(&mut self, number: usize, draft: &Draft, coil_m: f64) {
        let (people, spacing) = (self.team.people, &draft.spacing);
        let [least_m, greatest_m] = &mut self.team.spacing_m;
        *least_m = least_m.min(spacing.spacing_m);
        *greatest_m = greatest_m.max(spacing.spacing_m);
        if draft.ledger.total_m > self.team.needed_m + 1e-9 {
            self.team.needed_m = draft.ledger.total_m;
            self.team.leg = Some(number);
        }
        let gap_m = spacing.meeting.effective_gap_m;
        let over = spacing::over_one_gap(people, spacing.spacing_m, gap_m);
        self.left = self.left.min(people.saturating_sub(over));
        self.coil_m = self.coil_m.max(coil_m);
        if !spacing.enough {
            self.short_m = self.short_m.max(spacing.need_m - spacing.spacing_m);
        }
    }
}
