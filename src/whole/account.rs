//! The parts of a plan that are about the whole trip.

use crate::{
    fault::{Code, Place, Problem},
    ground::{mean_strike_deg, profile::Climb},
    plan::{
        Carry, CrossingSummary, Finding, JumpSummary, RouteSummary, StageSummary, TimeSummary,
        ZoneSummary, leg::Leg,
    },
    practice::{Rule, Rules},
    raster::Terrain,
    rope::share,
    times::pace,
    trip::{
        party::RopeTeam,
        rope::Rope,
        route::Stretch,
        zone::{RopeWord, Surface, Zone},
    },
};
use crate::{
    judge::{falls, of_team::up},
    legs::sketch::Sketch,
    trip::job::Case,
};

/// Which rope each team carries over the whole trip.
#[derive(Debug)]
pub(crate) struct SharedRopes {
    /// By team index: index of the rope.
    given: Vec<Option<usize>>,
    /// By team index: most rope that any leg asks for.
    demands_m: Vec<f64>,
}

impl SharedRopes {
    /// The rope of a team, with its number from 1.
    pub(crate) fn of_team<'r>(&self, team: usize, ropes: &'r [Rope]) -> Option<(usize, &'r Rope)> {
        let rope = (*self.given.get(team.checked_sub(1)?)?)?;
        Some((rope + 1, ropes.get(rope)?))
    }
}

/// Gives the ropes at hand to the teams by their greatest demand on any leg.
pub(crate) fn shared_ropes(
    job: &Case<'_>,
    teams: &[RopeTeam],
    stages: &[Sketch<'_>],
) -> SharedRopes {
    let demand = |team: &RopeTeam| {
        let drafts = stages.iter().flat_map(|s| &s.legs).flat_map(|l| &l.teams);
        drafts
            .filter(|d| d.team == team.number)
            .map(|d| d.ledger.total_m)
            .fold(0.0, f64::max)
    };
    let demands_m: Vec<f64> = teams.iter().map(demand).collect();
    SharedRopes {
        given: share::share(&demands_m, job.ropes),
        demands_m,
    }
}

/// What goes into the packs: for each team the rope at hand, or the length to take.
pub(crate) fn carry(
    job: &Case<'_>,
    teams: &[RopeTeam],
    stages: &[Sketch<'_>],
    legs: &[Leg],
    ropes: &SharedRopes,
) -> Vec<Carry> {
    if stages.iter().flat_map(|s| &s.legs).all(|l| !l.roped) {
        return Vec::new();
    }
    let carry = |team: &RopeTeam| {
        let demand_m = ropes
            .demands_m
            .get(team.number - 1)
            .copied()
            .unwrap_or_default();
        let rope = ropes.of_team(team.number, job.ropes);
        let length_m = rope.map_or_else(|| share::to_buy_m(demand_m), |(_, r)| r.length_m);
        let leg = deciding(team, legs, demand_m);
        Carry {
            length_m,
            team: team.number,
            needed_m: demand_m,
            leg,
            why: format!(
                "{}: {}",
                carried_by(team, teams.len(), rope.map(|(_, r)| r)),
                why_carried(leg, demand_m, length_m)
            ),
        }
    };
    teams.iter().map(carry).collect()
}

/// The first leg that asks a team for the most rope.
fn deciding(team: &RopeTeam, legs: &[Leg], demand_m: f64) -> Option<usize> {
    let asks = |leg: &&Leg| {
        leg.teams
            .iter()
            .any(|t| t.team == team.number && t.ledger.total_m >= demand_m - 1e-9)
    };
    legs.iter().find(asks).map(|leg| leg.leg)
}

/// `team 1, 3 people`, and the rope by its name where it has one.
fn carried_by(team: &RopeTeam, teams: usize, rope: Option<&Rope>) -> String {
    let who = match teams {
        1 => format!("{} people", team.size()),
        _ => format!("team {}, {} people", team.number, team.size()),
    };
    match rope.and_then(|r| Some((r.name.as_deref()?, r.length_m))) {
        Some((name, length_m)) => format!("{who}, rope \"{name}\" ({length_m} m)"),
        None => who,
    }
}

fn why_carried(leg: Option<usize>, demand_m: f64, length_m: f64) -> String {
    let on_leg = leg.map_or_else(String::new, |leg| format!(" on leg {leg}"));
    let needed = format!("{} m needed{on_leg}", up(demand_m));
    if demand_m > length_m + 1e-9 {
        format!("does not fit: {needed}")
    } else {
        format!("{needed}, the longest set-up")
    }
}

/// The line as a whole.
pub(crate) fn route(job: &Case<'_>, stages: &[Sketch<'_>], legs: &[Leg]) -> RouteSummary {
    let threshold_m = job.rules[Rule::AscentThresholdM];
    let climb = |s: &Sketch<'_>| s.under.profile.climb(whole(s), threshold_m);
    let climbs: Vec<Climb> = stages.iter().filter_map(climb).collect();
    let mut sources: Vec<&str> = stages.iter().filter_map(|s| s.under.heights_from).collect();
    sources.sort_unstable();
    sources.dedup();
    let sum = |of: fn(&Climb) -> f64| (!climbs.is_empty()).then(|| climbs.iter().map(of).sum());
    RouteSummary {
        name: job.route.name.clone(),
        length_m: job.route.length_m(),
        ascent_m: sum(|c| c.ascent_m),
        descent_m: sum(|c| c.descent_m),
        ascent_threshold_m: threshold_m,
        heights_from: (!sources.is_empty()).then(|| sources.join(" and ")),
        effort_km: effort_km(job.rules, stages),
        time: time(legs),
        stages: stages.iter().map(stage).collect(),
    }
}

fn whole(sketch: &Sketch<'_>) -> Stretch {
    Stretch {
        from_m: 0.0,
        to_m: sketch.stage.length_m(),
    }
}

/// Over all stages; absent where one of them has no heights.
fn effort_km(rules: &Rules, stages: &[Sketch<'_>]) -> Option<f64> {
    let of_stage = |s: &Sketch<'_>| {
        let (profile, all) = (&s.under.profile, whole(s));
        let climb = profile.climb(all, rules[Rule::AscentThresholdM])?;
        let steep_m =
            profile.steep_descent_m(all, rules[Rule::EffortSteepShare], rules[Rule::SteepOverM])?;
        Some(pace::effort_km(
            all.length_m(),
            climb.ascent_m,
            steep_m,
            rules,
        ))
    };
    stages.iter().map(of_stage).sum()
}

fn time(legs: &[Leg]) -> TimeSummary {
    let sum = |of: fn(&Leg) -> f64| legs.iter().map(of).sum::<f64>() + 0.0;
    let (walking_min, rope_min) = (sum(|l| l.time_min), sum(|l| l.rope_min));
    let break_min = sum(|l| l.break_min);
    TimeSummary {
        walking_min,
        rope_min,
        break_min,
        total_min: walking_min + rope_min + break_min,
    }
}

fn stage(sketch: &Sketch<'_>) -> StageSummary {
    let jump = |j: crate::trip::route::Jump| JumpSummary {
        at_m: j.at_m,
        length_m: j.length_m,
    };
    StageSummary {
        stage: sketch.stage.number,
        name: sketch.stage.name.clone(),
        length_m: sketch.stage.length_m(),
        points: sketch.stage.points().len(),
        jumps: sketch.stage.jumps().map(jump).collect(),
    }
}

/// Every zone with its bare crossings over all stages.
pub(crate) fn zones(job: &Case<'_>, stages: &[Sketch<'_>]) -> Vec<ZoneSummary> {
    let mut summaries: Vec<ZoneSummary> = job.zones.iter().map(zone).collect();
    for stage in stages {
        for (i, contact) in stage.contacts.iter().enumerate() {
            let crossings = contact.crossings.iter().map(|c| CrossingSummary {
                stage: stage.stage.number,
                enter_m: c.from_m,
                exit_m: c.to_m,
            });
            if let Some(summary) = summaries.get_mut(contact.zone) {
                summary.crossings.extend(crossings);
                let proposed = stage.under.proposed.get(i).and_then(|p| mean_strike_deg(p));
                summary.strike_proposed_deg = summary.strike_proposed_deg.or(proposed);
            }
        }
    }
    summaries
}

fn zone(zone: &Zone) -> ZoneSummary {
    ZoneSummary {
        zone: zone.number,
        name: zone.name.clone(),
        gap_m: zone.gap.max_m,
        gap_assumed: zone.gap.assumed,
        snow_depth_m: zone.snow_depth_m,
        surface: match zone.surface {
            Surface::Snow => "snow",
            Surface::Bare => "bare",
        }
        .to_owned(),
        strike_deg: zone.strike.map(|s| s.deg),
        strike_uncertainty_deg: zone.strike.and_then(|s| s.uncertainty_deg),
        strike_proposed_deg: None,
        rope: match zone.rope {
            RopeWord::Auto => "auto",
            RopeWord::Always => "always",
            RopeWord::Never => "never",
        }
        .to_owned(),
        observed_on: zone.observed_on.clone(),
        source: zone.source.clone(),
        note: zone.note.clone(),
        other: zone.other.clone(),
        crossings: Vec::new(),
    }
}

/// What must be said of the whole, the notices from reading first.
pub(crate) fn findings(job: &Case<'_>, stages: &[Sketch<'_>]) -> Vec<Finding> {
    let mut said: Vec<Problem> = job.notices.iter().cloned().map(Problem::from).collect();
    said.extend(missed(job, stages));
    said.extend(falls::slope_unknown(job, stages));
    let terrain = job.terrain.map(Terrain::notes).unwrap_or_default();
    said.extend(terrain.into_iter().map(Problem::from));
    for note in stages.iter().flat_map(|s| &s.under.notes) {
        if !said.contains(note) {
            said.push(note.clone());
        }
    }
    if stages.iter().all(|s| s.under.profile.is_empty()) {
        let says = "the route gives no heights: no ascent, slope or time for the climb is known";
        said.push(
            Problem::new(Code::NoHeights, Place::item("route"), says)
                .hint("give a terrain model: `--terrain FILE`"),
        );
    }
    if job.ropes.is_empty() {
        let says = "no rope at hand was named: the plan says which length to take";
        said.push(
            Problem::new(Code::NoRopeNamed, Place::item("ropes"), says)
                .hint("name the ropes you have: `--rope 60`"),
        );
    }
    said.sort_by_key(Problem::level);
    said.into_iter()
        .map(without_folders)
        .map(Finding::from)
        .collect()
}

/// A plan is handed on: files are named, the folders of the machine it was made on are not.
fn without_folders(mut problem: Problem) -> Problem {
    let file = problem.place.file.take();
    problem.place.file = file.map(|file| crate::whole::assumptions::file_name(&file).to_owned());
    problem
}

/// Zones not met that are named one by one; more are told by their numbers. Our judgement.
const NAMED: usize = 20;

fn missed(job: &Case<'_>, stages: &[Sketch<'_>]) -> Vec<Problem> {
    let mut met = vec![false; job.zones.len()];
    for contact in stages.iter().flat_map(|s| s.contacts) {
        met[contact.zone] = true;
    }
    let missed: Vec<&Zone> = job
        .zones
        .iter()
        .zip(met)
        .filter(|(_, met)| !met)
        .map(|(zone, _)| zone)
        .collect();
    if missed.len() <= NAMED {
        let says = "the route does not meet this zone";
        let note = |z: &&Zone| Problem::new(Code::ZoneMissed, Place::item(z.label()), says);
        return missed.iter().map(note).collect();
    }
    let numbers: Vec<usize> = missed.iter().map(|z| z.number).collect();
    let says = format!(
        "the route does not meet {} of the zones: {}",
        missed.len(),
        ranges(&numbers)
    );
    vec![Problem::new(Code::ZoneMissed, Place::item("zones"), says)]
}

/// Rising numbers with neighbours drawn together: `1–57, 59, 61–80`.
fn ranges(numbers: &[usize]) -> String {
    let runs = numbers.chunk_by(|a, b| a + 1 == *b);
    let run = |run: &[usize]| match run {
        [first, .., last] => format!("{first}–{last}"),
        [only] => only.to_string(),
        [] => String::new(),
    };
    runs.map(run).collect::<Vec<_>>().join(", ")
}
