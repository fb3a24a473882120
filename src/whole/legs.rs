//! The legs of a plan, each made once and complete.

use std::{
    cell::RefCell,
    iter::{repeat, repeat_n},
    rc::Rc,
};

use crate::{
    fault::refusal::Refusal,
    judge::{
        belays::belays,
        cure::Promised,
        leg::{Known, is_stopped_by_word, of_hours, stretches},
        place::{height_m, position},
        verdict,
    },
    plan::{
        belay::LegBelays,
        fall::Held,
        finding::Finding,
        in_time::InTime,
        judged::JudgedStretch,
        leg::{Leg, TeamSetup, Verdict},
        off::RopeOff,
        part::WalkedPlace,
    },
    rope::{
        answers::{Answers, KnownFalls},
        draft::Draft,
        legs::RopedLeg,
        setup::Supplied,
        share::Shared,
    },
    times::{
        backwards::{LegSpot, WalkedStage},
        hours::Hours,
        turn::OffBridges,
    },
    trip::{clock::Clock, job::Brief, route::Stretch},
    whole::{parts, turns::off_in_time},
};

/// What the trip has settled before its legs are put together.
#[derive(Clone, Copy)]
pub(crate) struct Settled<'a> {
    pub(crate) job: &'a Brief<'a>,
    pub(crate) legs: &'a [RopedLeg<'a>],
    pub(crate) ropes: &'a Shared,
    pub(crate) answers: &'a Answers,
    /// Falls asked for before, where somebody asks what makes a rope that is too short fit.
    pub(crate) cures: Option<&'a RefCell<KnownFalls>>,
    /// Ropes that cures of this plan take.
    pub(crate) promised: &'a Promised,
}

/// A leg before its hours are known: how it is set up, what is found of it whatever the hour, and the belays which that asks
/// for.
pub(crate) struct Untimed {
    setups: Vec<TeamSetup>,
    findings: Vec<Finding>,
    stretches: Vec<JudgedStretch>,
    pub(crate) belays: Option<LegBelays>,
}

impl Untimed {
    /// Where nobody goes over the leg, whatever the hour: what stops, or is outside; all of it where that is the leader's word for it.
    fn barred(&self, job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Stretch> {
        let graver = self
            .stretches
            .iter()
            .filter(|on| on.verdict >= Verdict::Outside);
        let graver = graver.map(|on| Stretch {
            from_m: on.from_m,
            to_m: on.to_m,
        });
        let by_word = !leg.sketch.roped && is_stopped_by_word(job, leg);
        graver
            .chain(by_word.then_some(leg.sketch.stretch))
            .collect()
    }

    /// With what the hours make of it, the gravest first.
    fn timed(
        mut self,
        job: &Brief<'_>,
        leg: &RopedLeg<'_>,
        hours: &Hours,
        in_time: Option<InTime>,
    ) -> Self {
        let timed = of_hours(job, leg, hours, in_time);
        if !timed.is_empty() {
            self.findings.extend(timed);
            self.stretches = stretches(job, leg, &self.findings, &self.setups);
        }
        self.findings.sort_by_key(Finding::alarm);
        self
    }
}

/// All legs, in walking order, each with what was found of it before.
pub(crate) fn legs(settled: &Settled<'_>, found: Vec<Untimed>, hours: &[Hours]) -> Vec<Leg> {
    let stages = WalkedStage::all(settled.job, settled.legs, hours);
    let barred = settled.legs.iter().zip(&found);
    let barred: Vec<(usize, Stretch)> = barred
        .flat_map(|(leg, found)| {
            let barred = found.barred(settled.job, leg);
            repeat(leg.stage.stage.number).zip(barred)
        })
        .collect();
    let of_stage = stages.iter().flat_map(|stage| {
        let back = stage
            .start()
            .and_then(|start| Some((start, Rc::new(stage.off_bridges()?))));
        let number = stage.legs.first().map(|leg| leg.stage.stage.number);
        let barred = barred.iter().filter(|(stage, _)| Some(*stage) == number);
        let barred: Vec<Stretch> = barred.map(|(_, on)| *on).collect();
        let of = StageHours {
            in_time: off_in_time(stage, &barred),
            given_m: settled.job.timetable.start_at_m(),
            back,
        };
        repeat_n(of, stage.legs.len())
    });
    let all = settled.legs.iter().zip(found).zip(hours).zip(of_stage);
    all.map(|(((leg, found), hours), of)| settled.leg(leg, found, hours, &of))
        .collect()
}

/// What is known of the hours of a stage.
#[derive(Clone)]
struct StageHours<'a> {
    /// What leaves its hidden gaps in time, where as planned they are left too late.
    in_time: Option<InTime>,
    /// Where on it the leader gives an hour, metres.
    given_m: Option<f64>,
    /// When it is started, and the ways back over its hidden gaps.
    back: Option<(Clock, Rc<OffBridges<'a>>)>,
}

impl Settled<'_> {
    /// What is found of each leg whatever the hour.
    pub(crate) fn untimed(&self) -> Vec<Untimed> {
        // Ropes go to cures on all legs before any is a spare.
        let cured = self.legs.iter().enumerate().map(|(index, leg)| {
            let (setups, unanswered) = self.setups(index, leg);
            let cures = self.known(leg, &setups, &unanswered).cures();
            (leg, setups, unanswered, cures)
        });
        let cured: Vec<_> = cured.collect();
        let of_leg = |(leg, setups, unanswered, cures)| {
            let setups: Vec<TeamSetup> = setups;
            let unanswered: Vec<Refusal> = unanswered;
            let findings = self.known(leg, &setups, &unanswered).findings(cures);
            let stretches = stretches(self.job, leg, &findings, &setups);
            Untimed {
                belays: belays(self.job, leg, &findings, &stretches),
                setups,
                findings,
                stretches,
            }
        };
        cured.into_iter().map(of_leg).collect()
    }

    fn known<'k>(
        &'k self,
        leg: &'k RopedLeg<'k>,
        setups: &'k [TeamSetup],
        unanswered: &'k [Refusal],
    ) -> Known<'k> {
        Known {
            job: self.job,
            leg,
            setups,
            unanswered,
            cures: self.cures,
            promised: self.promised,
        }
    }

    fn leg(&self, leg: &RopedLeg<'_>, found: Untimed, hours: &Hours, of: &StageHours<'_>) -> Leg {
        let Untimed {
            setups,
            findings,
            stretches,
            belays,
        } = found.timed(self.job, leg, hours, of.in_time);
        let (stretch, footing) = (leg.sketch.stretch, &leg.footing);
        let ground = footing.ground_steepest;
        let at = |m: f64| position(leg, m);
        let meetings = || leg.teams.iter().map(|d| d.spacing.meeting);
        Leg {
            leg: leg.number,
            stage: leg.stage.stage.number,
            roped: leg.sketch.roped,
            start_m: stretch.from_m,
            end_m: stretch.to_m,
            ends_stage: stretch.to_m >= leg.stage.stage.length_m(),
            length_m: stretch.length_m(),
            start: at(stretch.from_m),
            end: at(stretch.to_m),
            start_height_m: height_m(leg, stretch.from_m),
            end_height_m: height_m(leg, stretch.to_m),
            ascent_m: footing.climb.map(|c| c.ascent_m),
            descent_m: footing.climb.map(|c| c.descent_m),
            steepest_deg: footing.steepness.steepest.map(|s| s.deg.abs()),
            steepest_at: footing.steepness.steepest.map(|s| at(s.at_m)),
            ground_steepest_deg: ground.map(|s| s.slope_deg),
            ground_steepest_at: ground.map(|s| [s.at.normal().lon_deg, s.at.lat_deg]),
            ground_aspect_deg: ground.and_then(|s| s.aspect_deg),
            lip_slope_deg: footing.lip_slope_deg(),
            lip_slope_behind_deg: footing.lip_slope_behind_deg(),
            bearing_deg: footing.bearing_deg,
            zones: leg.zones.iter().map(|z| z.number).collect(),
            gap_m: widest_gap_m(leg),
            rope_off: leg.sketch.roped.then(|| rope_off(leg)),
            gap_known: !leg.undrawn && footing.ice_without_zone.is_empty(),
            effective_gap_m: effective_gap_m(leg),
            gap_assumed: gap_assumed(self.job, leg),
            along: meetings().any(|m| m.along.is_some()),
            strike_proposed_deg: footing.strike_proposed_deg(),
            may_run_along: footing.may_run_along.clone(),
            look_here: footing.look_here.clone(),
            ice_without_zone: footing.ice_without_zone.clone(),
            snow_depth_m: least_snow_m(leg),
            time_min: hours.walking_min,
            rope_min: hours.rope_min,
            break_min: hours.break_min,
            halt_min: hours.halt_min,
            belays,
            parts: parts::parts(leg, hours, self.job.rules),
            walk: walk(leg, hours, of),
            start_clock: hours.clock.map(|[begin, _]| begin),
            end_clock: hours.clock.map(|[_, end]| end),
            verdict: verdict::of_findings(leg.sketch.roped, &findings),
            stretches,
            teams: setups,
            findings,
        }
    }

    /// The set-up of every team, and why a model has no answer for it, where that is so.
    fn setups(&self, index: usize, leg: &RopedLeg<'_>) -> (Vec<TeamSetup>, Vec<Refusal>) {
        let (mut setups, mut unanswered) = (Vec::with_capacity(leg.teams.len()), Vec::new());
        for (team, draft) in leg.teams.iter().enumerate() {
            let (setup, reason) = self.setup(index, leg, team, draft);
            setups.push(setup);
            unanswered.extend(reason);
        }
        (setups, unanswered)
    }

    fn setup(
        &self,
        index: usize,
        leg: &RopedLeg<'_>,
        team: usize,
        draft: &Draft,
    ) -> (TeamSetup, Option<Refusal>) {
        let meets = leg.stage.meets(self.job, leg.sketch);
        let factor = |spacing_m: f64| meets(spacing_m).greatest_factor;
        let fall = self.answers.fall(index, team);
        let given = Supplied {
            rope: self.ropes.of_team(draft.team, self.job.ropes),
            bought_m: self.ropes.bought_m(draft.team),
            factor: &factor,
            fall: fall.and_then(Result::ok),
            order: self.answers.order(index, draft.team),
        };
        let (mut setup, reason) = draft.clone().tied(&given, self.job.rules);
        if !draft.spacing.gap_given() {
            // Reckoned with a gap of no width: only what is not held even so can be told.
            setup.arrest = setup.arrest.filter(|a| a.verdict == Held::None);
        }
        let no_fall = fall.and_then(Result::err).cloned();
        (setup, no_fall.or(reason))
    }
}

/// Nobody is told to unrope where there is ice.
fn rope_off(leg: &RopedLeg<'_>) -> RopeOff {
    let (end_m, stage) = (leg.sketch.stretch.to_m, leg.stage.stage);
    match (leg.stage.met.on_ice(end_m), end_m >= stage.length_m()) {
        (false, _) => RopeOff::Unrope,
        (true, false) => RopeOff::ByWord,
        (true, true) => RopeOff::EndsOnIce,
    }
}

/// The greatest effective gap width of a zone on the leg, metres; ice without a zone has none.
fn effective_gap_m(leg: &RopedLeg<'_>) -> Option<f64> {
    let meetings = leg.teams.iter().map(|draft| draft.spacing.meeting);
    let given = meetings.filter(|meeting| meeting.zone.is_some());
    given
        .map(|meeting| meeting.effective_gap_m)
        .reduce(f64::max)
}

/// Widest gap of the zones met, metres; `None` on unroped legs.
fn widest_gap_m(leg: &RopedLeg<'_>) -> Option<f64> {
    let zones = leg.zones.iter().filter(|_| leg.sketch.roped);
    zones.map(|z| z.gap.max_m).reduce(f64::max)
}

/// Whether the widest gap, or the way over a gap that decides for a team, is of a zone whose width was assumed. Of zones as
/// wide as each other one that assumed it is enough.
fn gap_assumed(job: &Brief<'_>, leg: &RopedLeg<'_>) -> bool {
    let widest_m = widest_gap_m(leg);
    let mut widest = leg.zones.iter().filter(|z| Some(z.gap.max_m) == widest_m);
    let deciding = leg.teams.iter().filter_map(|d| d.spacing.meeting.zone);
    let mut deciding = deciding.filter_map(|zone| job.zones.get(zone));
    widest.any(|z| z.gap.assumed) || deciding.any(|z| z.gap.assumed)
}

fn least_snow_m(leg: &RopedLeg<'_>) -> Option<f64> {
    let zones = leg.zones.iter();
    zones.filter_map(|z| z.snow_depth_m).reduce(f64::min)
}

/// A place of a leg is told its time of day every so many metres. Our judgement.
const WALK_M: f64 = 100.0;

/// When which place of a leg is left, and when whoever turns back there is off the hidden gaps behind.
fn walk(leg: &RopedLeg<'_>, hours: &Hours, of: &StageHours<'_>) -> Vec<WalkedPlace> {
    if hours.clock.is_none() {
        return Vec::new();
    }
    let stretch = leg.sketch.stretch;
    let steps = (stretch.length_m() / WALK_M).ceil().max(1.0);
    let place = |step: f64| stretch.from_m + stretch.length_m() * (step / steps);
    let places = std::iter::successors(Some(0.0), |step| Some(step + 1.0));
    let mut places: Vec<f64> = places
        .take_while(|step| *step <= steps)
        .map(place)
        .collect();
    // Where an hour is given, it is told to the minute.
    let given = of
        .given_m
        .filter(|at_m| (stretch.from_m..=stretch.to_m).contains(at_m));
    places.extend(given.filter(|at_m| !places.contains(at_m)));
    places.sort_by(f64::total_cmp);
    let walked = places.into_iter().filter_map(|at_m| {
        let spot = LegSpot {
            leg: leg.number,
            at_m,
        };
        let back = of.back.as_ref();
        Some(WalkedPlace {
            at_m,
            left: hours.left_at(at_m)?,
            back_off_bridges: back
                .and_then(|(start, back)| Some(start.after(back.left_min(spot)?))),
        })
    });
    walked.collect()
}
