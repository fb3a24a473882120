//! What is found of the trip as a whole, the notices from reading first.

use crate::{
    fault::Fault,
    judge::jumps,
    legs::sketch::Sketch,
    plan::{
        fact::Fact,
        finding::{At, Finding, JobPart, StagePlace},
        leg::Leg,
        name::RopeName,
        spare::SpareRope,
    },
    practice::{Rule, Rules},
    raster::Terrain,
    rope::{legs::RopedLeg, share::is_cord},
    times::hours::Hours,
    trip::{job::Brief, route::Stretch, zone::Zone},
    whole::{hours, observed},
};

/// All of it, the gravest first.
pub(crate) fn findings(
    job: &Brief<'_>,
    stages: &[Sketch<'_>],
    legs: &[RopedLeg<'_>],
    hours_of_legs: &[Hours],
    (planned, spares): (&[Leg], &[SpareRope]),
) -> Vec<Finding> {
    let notices = job.notices.iter().cloned().map(handed_on);
    let mut found: Vec<Finding> = notices.collect();
    let (met, missed) = met_and_missed(job, stages);
    found.extend(not_met(&missed));
    found.extend(observed::long_ago(job, &met).map(|old| of_part(JobPart::Zones, old)));
    found.extend(gaps_between(job, stages));
    found.extend(slope_unknown(legs));
    found.extend(hours::findings(job, legs, hours_of_legs));
    let terrain = job.terrain.map(Terrain::notes).unwrap_or_default();
    found.extend(terrain.into_iter().map(handed_on));
    for note in stages.iter().flat_map(|s| &s.met.under.line.notes) {
        if !found.contains(note) {
            found.push(note.clone());
        }
    }
    if stages.iter().all(|s| s.met.under.line.profile.is_empty()) {
        found.push(of_part(JobPart::Route, Fact::NoHeights {}));
    } else {
        found.extend(
            stages
                .iter()
                .filter_map(|stage| climb_unknown(stage, job.rules)),
        );
    }
    if job.glaciers.is_empty() && !job.has_inventory {
        found.push(of_part(JobPart::Zones, Fact::NoInventory {}));
    }
    if job.ropes.is_empty() {
        found.push(of_part(JobPart::Ropes, Fact::NoRopeNamed {}));
    }
    found.extend(thin_ropes(job, planned, spares).map(|thin| of_part(JobPart::Ropes, thin)));
    found.sort_by_key(Finding::alarm);
    found
}

/// Ropes as thin as cord that somebody ties into, or takes beside: they are joined, tied into instead, or hauled on.
fn thin_ropes(job: &Brief<'_>, planned: &[Leg], spares: &[SpareRope]) -> Option<Fact> {
    let setups = || planned.iter().flat_map(|leg| &leg.teams);
    let tied = |number: usize| {
        let mut ropes = setups().filter_map(|setup| setup.rope.as_ref());
        ropes.any(|rope| rope.number == number)
    };
    let beside = |number: usize| {
        let mut carried = spares.iter().filter(|spare| spare.is_carried());
        carried.any(|spare| spare.rope.rope == number)
    };
    let thin = (1..).zip(job.ropes).filter_map(|(number, rope)| {
        let across_mm = rope.diameter_mm.filter(|_| is_cord(rope, job.rules))?;
        let taken = tied(number) || beside(number);
        taken.then(|| (RopeName::of(number, rope), across_mm))
    });
    let (ropes, across_mm): (Vec<RopeName>, Vec<f64>) = thin.unzip();
    Some(Fact::ThinRope {
        ropes,
        thinnest_mm: across_mm.into_iter().reduce(f64::min)?,
        limit_mm: job.rules[Rule::ThinRopeMm],
    })
}

fn of_part(of: JobPart, fact: Fact) -> Finding {
    Finding::new(At::Part { of }, fact)
}

/// A plan is handed on: files are named, the folders of the machine it was made on are not.
fn handed_on(mut notice: Fault) -> Finding {
    let file = notice.at.file.take();
    notice.at.file = file.map(|file: String| file_name(&file).to_owned());
    Finding::from(notice)
}

/// The last part of a path or an address.
pub(super) fn file_name(path: &str) -> &str {
    path.rsplit(['/', '\\']).next().unwrap_or(path)
}

/// Zones not met that are named one by one; more are told by their numbers. Our judgement.
const NAMED: usize = 20;

/// The zones that the route meets, and those that it misses.
fn met_and_missed<'z>(job: &Brief<'z>, stages: &[Sketch<'_>]) -> (Vec<&'z Zone>, Vec<&'z Zone>) {
    let mut met = vec![false; job.zones.len()];
    for contact in stages.iter().flat_map(|s| &s.met.contacts) {
        let zone = contact.of.zone();
        if let Some(met) = zone.and_then(|zone| met.get_mut(zone)) {
            *met = true;
        }
    }
    let mut met = met.into_iter();
    job.zones.iter().partition(|_| met.next() == Some(true))
}

fn not_met(missed: &[&Zone]) -> Vec<Finding> {
    let fact = |zones: &[&Zone]| Fact::ZoneMissed {
        zones: zones.iter().map(|z| z.number).collect(),
    };
    if missed.len() <= NAMED {
        let one = |z: &&Zone| Finding::new(At::Zone((*z).into()), fact(&[z]));
        return missed.iter().map(one).collect();
    }
    vec![of_part(JobPart::Zones, fact(missed))]
}

/// Gaps between stages whose straight way passes over ice.
fn gaps_between(job: &Brief<'_>, stages: &[Sketch<'_>]) -> Vec<Finding> {
    let pairs = stages.iter().zip(stages.iter().skip(1));
    let found = pairs.filter_map(|(before, after)| {
        let over = after.met.gap.as_ref()?;
        let fact = Fact::StageGapOverIce {
            before: before.stage.number,
            after: after.stage.number,
            length_m: over.jump.length_m,
            ice: jumps::ice_under(job, std::iter::once(over)),
        };
        let at = At::Stage(StagePlace {
            stage: before.stage.number,
            name: before.stage.name.clone(),
        });
        Some(Finding::new(at, fact))
    });
    found.collect()
}

/// Where the heights of a stage leave off: climbs and hours are too few.
fn climb_unknown(sketch: &Sketch<'_>, rules: &Rules) -> Option<Finding> {
    let stage = sketch.stage;
    let pieces = sketch.met.under.line.climb_unknown(stage.whole(), rules);
    let fact = Fact::ClimbUnknown {
        first_m: pieces.first()?.from_m,
        unknown_m: pieces.iter().map(Stretch::length_m).sum(),
    };
    let at = StagePlace {
        stage: stage.number,
        name: stage.name.clone(),
    };
    Some(Finding::new(At::Stage(at), fact))
}

fn slope_unknown(legs: &[RopedLeg<'_>]) -> Option<Finding> {
    let roped = legs.iter().filter(|leg| leg.sketch.roped);
    let unknown = roped.filter(|leg| leg.footing.slope_unknown());
    let legs: Vec<usize> = unknown.map(|leg| leg.number).collect();
    (!legs.is_empty()).then(|| Finding::new(At::Legs { legs }, Fact::SlopeUnknown {}))
}
