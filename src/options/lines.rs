//! What each rope team of a split asks for over the whole trip, and how its legs stand, before ropes are given out.

use std::{
    cell::{OnceCell, RefCell},
    collections::{BTreeMap, BTreeSet},
};

use crate::{
    ground::met::Met,
    judge::{leg, verdict},
    legs::{memo::Memo, sketch::Sketch, spacing},
    options::variants::Variant,
    plan::{
        change::Change,
        leg::Verdict,
        options::{Way, WayTeam},
    },
    practice::{Rule, Rules},
    rope::{
        draft::Draft,
        held::AskedSlopes,
        legs::{RopedLeg, legs},
        reserve,
        tied::Tied,
    },
    trip::{job::Brief, party::RopeTeam},
};

/// The stages of the trip, split for rope teams of some kinds.
#[derive(Debug)]
pub(super) struct SplitTrip<'a> {
    stages: Vec<Sketch<'a>>,
    /// By kind: the place of its spacing on each leg.
    place: BTreeMap<TeamKind, usize>,
}

/// Teams of one kind are set up alike: how many, and whether one is clearly heavier.
pub(super) type TeamKind = (usize, bool);

/// Teams of the same people's masses stand alike in everything, falls included.
fn masses(team: &RopeTeam) -> Vec<u64> {
    team.people.iter().map(|p| p.mass_kg.to_bits()).collect()
}

fn kind(team: &RopeTeam, rules: &Rules) -> TeamKind {
    let heavier = team.heavier_by(rules[Rule::HeavierFactor]).is_some();
    (team.size(), heavier)
}

/// The legs of such a trip, and how the ground alone judges them.
#[derive(Debug)]
pub(super) struct TripLegs<'a> {
    legs: Vec<RopedLeg<'a>>,
    place: &'a BTreeMap<TeamKind, usize>,
    /// The worst that is found on any leg whoever walks it, once it is asked for.
    ground: OnceCell<Verdict>,
    /// Falls asked for, whichever way they were asked for.
    asked: &'a RefCell<AskedSlopes>,
}

/// A split under one variant, before ropes are given out.
#[derive(Debug)]
pub(super) struct WayDraft {
    pub(super) teams: Vec<TeamLine>,
    pub(super) changes: Vec<Change>,
    pub(super) verdict: Verdict,
    pub(super) setup_changes: usize,
    /// The rules of the variant.
    pub(super) rules: Rules,
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
    /// What it ties on each roped leg.
    pub(super) tied: Vec<Tied>,
    /// Whether the set-up changes before each roped leg but the first of a stage.
    changes: Vec<bool>,
}

impl<'a> SplitTrip<'a> {
    pub(super) fn new(job: &Brief<'a>, teams: &[RopeTeam], met: &'a Met, memo: &'a Memo) -> Self {
        let of_kind = one_each(teams, job.rules);
        let one_each: Vec<RopeTeam> = of_kind.values().cloned().collect();
        let pairs = job.route.stages.iter().zip(&met.stages);
        Self {
            stages: pairs
                .map(|(stage, met)| Sketch::of(job, &one_each, stage, met, memo))
                .collect(),
            place: of_kind.keys().zip(0..).map(|(&k, i)| (k, i)).collect(),
        }
    }

    /// The legs, with one draft for each kind of team.
    pub(super) fn legs<'t>(
        &'t self,
        job: &Brief<'t>,
        asked: &'t RefCell<AskedSlopes>,
    ) -> TripLegs<'t> {
        let legs = legs(job, &[], &self.stages);
        TripLegs {
            ground: OnceCell::new(),
            place: &self.place,
            legs,
            asked,
        }
    }
}

/// The different kinds of the teams.
pub(super) fn kinds(teams: &[RopeTeam], rules: &Rules) -> BTreeSet<TeamKind> {
    teams.iter().map(|team| kind(team, rules)).collect()
}

/// One team of each kind.
fn one_each(teams: &[RopeTeam], rules: &Rules) -> BTreeMap<TeamKind, RopeTeam> {
    let mut of_kind = BTreeMap::new();
    for team in teams {
        let entry = of_kind.entry(kind(team, rules));
        entry.or_insert_with(|| team.clone());
    }
    of_kind
}

/// Whether any team could be told to tie knots anywhere.
pub(super) fn ties_knots(teams: &[RopeTeam]) -> bool {
    teams.iter().any(|t| t.size() <= 3)
}

impl TripLegs<'_> {
    /// Whether ice counts in a set-up whose gaps nobody gave.
    pub(super) fn undrawn(&self) -> bool {
        self.legs.iter().any(|leg| leg.sketch.roped && leg.undrawn)
    }

    /// Most rope that any leg asks each team for, metres.
    pub(super) fn demands_m(&self, job: &Brief<'_>, teams: &[RopeTeam]) -> Vec<f64> {
        let roped = || self.legs.iter().filter(|leg| leg.sketch.roped);
        let demand_m = |team: &RopeTeam| {
            let drafts = roped().filter_map(|leg| self.drafted(leg, team, job));
            drafts.map(|d| d.ledger.total_m).fold(0.0, f64::max)
        };
        teams.iter().map(demand_m).collect()
    }

    pub(super) fn draft(
        &self,
        job: &Brief<'_>,
        teams: &[RopeTeam],
        (changes, rules): &Variant,
        base: &[Change],
    ) -> WayDraft {
        let ground = self
            .ground
            .get_or_init(|| leg::ground_verdict(job, &self.legs));
        let job = Brief { rules, ..*job };
        let mut alike: BTreeMap<Vec<u64>, TeamLine> = BTreeMap::new();
        let mut lines = Vec::new();
        for team in teams {
            let line = alike
                .entry(masses(team))
                .or_insert_with(|| self.line(&job, team));
            let mut line = line.clone();
            line.team.persons = team.people.iter().map(|p| p.called.clone()).collect();
            lines.push(line);
        }
        let worst = lines.iter().map(|l| l.verdict).max();
        let legs = lines.first().map_or(0, |l| l.changes.len());
        let changes_at = |i: usize| lines.iter().any(|l| l.changes.get(i) == Some(&true));
        WayDraft {
            verdict: worst.unwrap_or(Verdict::Unroped).max(*ground),
            setup_changes: (0..legs).filter(|&i| changes_at(i)).count(),
            changes: base.iter().chain(changes).cloned().collect(),
            teams: lines,
            rules: rules.clone(),
        }
    }

    /// One team over all roped legs.
    fn line(&self, job: &Brief<'_>, team: &RopeTeam) -> TeamLine {
        let mut line = TeamLine::new(team);
        let mut before: Option<(usize, Draft)> = None;
        for leg in self.legs.iter().filter(|leg| leg.sketch.roped) {
            let stage = leg.stage.stage.number;
            let Some(draft) = self.drafted(leg, team, job) else {
                continue;
            };
            let spacing_m = draft.spacing.spacing_m;
            let coil_m = reserve::coil_m(team.size(), spacing_m, job.rules);
            line.leg(leg.number, &draft, coil_m);
            line.verdict = line.verdict.max(verdict::of_draft(job, leg, &draft));
            line.verdict = line.verdict.max(verdict::of_falls(
                job,
                leg,
                &draft,
                &mut self.asked.borrow_mut(),
            ));
            line.tied.push(Tied::of(&draft));
            if let Some((last, tied)) = &before {
                line.changes.push(!draft.is_tied_as(tied) && *last == stage);
            }
            before = Some((stage, draft));
        }
        if line.team.leg.is_none() {
            line.team.spacing_m = [0.0; 2]; // no leg is roped
        }
        line
    }

    /// The team on a leg under the rules of the variant.
    fn drafted(&self, leg: &RopedLeg<'_>, team: &RopeTeam, job: &Brief<'_>) -> Option<Draft> {
        let spacing = leg
            .sketch
            .spacings
            .get(*self.place.get(&kind(team, job.rules))?)?;
        Some(Draft::new(
            team,
            *spacing,
            leg.over(),
            leg.hardship,
            job.rules,
        ))
    }
}

impl WayDraft {
    /// Whether nothing but rope is missing, and it is in each of these ways.
    pub(super) fn lacks_rope(&self, ways: &[Way]) -> bool {
        let spaced = self.teams.iter().all(|line| line.short_m <= 0.0);
        spaced && ways.iter().all(|way| way.short_m > 1e-9)
    }
}

impl TeamLine {
    /// The rope with which it has so much to spare and nobody is beyond every loop, metres.
    pub(super) fn reaching_m(&self, near_m: f64, rules: &Rules) -> f64 {
        let legs = self.tied.iter().map(|tied| tied.reaching_m(rules));
        legs.fold(self.team.needed_m + near_m, f64::max)
    }

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
            tied: Vec::new(),
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
