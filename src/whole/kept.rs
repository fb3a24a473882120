//! Where a set-up kept over several legs is walked on the rope: a longer team leaves the ice later, so its stretches are
//! its own, with change points of their own.

use crate::{
    judge::place::position,
    plan::keep::{KeptStretch, KeptTeam},
    practice::Rule,
    rope::{draft::Draft, legs::RopedLeg, reserve},
    trip::{job::Brief, route::Stretch},
};

/// A roped stretch of a kept set-up, growing.
pub(super) struct Grown<'a> {
    legs: Vec<&'a RopedLeg<'a>>,
    from_m: f64,
    to_m: f64,
}

/// The stretches of these legs of one stage under the set-up of a run, merged anew; `ice` is what the stage touches, `next`
/// the roped leg behind them. `None` where they would reach ice that is in none of these legs, or leave too little before
/// the next one to unrope.
pub(super) fn grown<'a>(
    job: &Brief<'_>,
    ice: &[Stretch],
    legs: &[&'a RopedLeg<'a>],
    next: Option<&RopedLeg<'_>>,
    kept: &[KeptTeam],
) -> Option<Vec<Grown<'a>>> {
    let least_m = job.rules[Rule::LeastUnropedM];
    let spacings_m: Vec<f64> = kept.iter().map(|team| team.spacing_m).collect();
    let mut all: Vec<Grown<'a>> = Vec::new();
    for &leg in legs {
        let to_m = end_m(leg, &spacings_m);
        let from_m = leg.sketch.stretch.from_m;
        match all.last_mut() {
            Some(last) if from_m - last.to_m < least_m - 1e-9 => {
                last.to_m = last.to_m.max(to_m);
                last.legs.push(leg);
            }
            _ => all.push(Grown {
                legs: vec![leg],
                from_m,
                to_m,
            }),
        }
    }
    let room_m =
        |last: &Grown<'_>| next.map_or(f64::INFINITY, |n| n.sketch.stretch.from_m - last.to_m);
    let joins_next = all.last().is_some_and(|last| room_m(last) < least_m - 1e-9);
    let holds = !joins_next && all.iter().all(|grown| holds_its_ice(grown, ice));
    holds.then_some(all)
}

impl Grown<'_> {
    /// As a plan tells it.
    pub(super) fn told(&self) -> KeptStretch {
        let leg = self.legs.first();
        let at = |m: f64| leg.map(|leg| position(leg, m)).unwrap_or_default();
        KeptStretch {
            start: at(self.from_m),
            end: at(self.to_m),
            from_m: self.from_m,
            to_m: self.to_m,
            legs: self.legs.iter().map(|leg| leg.number).collect(),
        }
    }
}

/// Where the last person of teams with these spacings is off the ice, metres.
pub(super) fn end_m(leg: &RopedLeg<'_>, spacings_m: &[f64]) -> f64 {
    let spans_m = |(spacing_m, draft): (&f64, &Draft)| {
        let spans = draft.persons.len().saturating_sub(1);
        [*spacing_m, draft.spacing.spacing_m].map(|d| reserve::spans_m(spans, d))
    };
    let longest = spacings_m.iter().zip(&leg.teams).map(spans_m);
    let [kept_m, planned_m] = longest.fold([0.0_f64; 2], |[a, b], [kept, planned]| {
        [a.max(kept), b.max(planned)]
    });
    let to_m = leg.sketch.stretch.to_m;
    let stage_m = leg.stage.stage.length_m();
    (to_m + (kept_m - planned_m).max(0.0)).min(stage_m.max(to_m))
}

/// All ice that the stage of a leg touches, by where it begins.
pub(super) fn ice(leg: &RopedLeg<'_>) -> Vec<Stretch> {
    let contacts = leg.stage.met.contacts.iter();
    let mut ice: Vec<Stretch> = contacts.flat_map(|c| c.touches.iter().copied()).collect();
    ice.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
    ice
}

/// Whether all ice that a stretch touches beyond its legs lies in one of them: what begins behind a leg and does not
/// reach the next one is in none.
fn holds_its_ice(grown: &Grown<'_>, ice: &[Stretch]) -> bool {
    let held = |(i, leg): (usize, &&RopedLeg<'_>)| {
        let leg = leg.sketch.stretch;
        let next = grown.legs.get(i + 1).map(|next| next.sketch.stretch);
        let end_m = next.map_or(grown.to_m, |next| next.from_m);
        let first = ice.partition_point(|touch| touch.from_m <= leg.to_m);
        let behind = ice.iter().skip(first);
        let mut behind = behind.take_while(|touch| touch.from_m < end_m);
        behind.all(|touch| next.is_some_and(|next| touch.meets(&next)))
    };
    grown.legs.iter().enumerate().all(held)
}
