//! Belays that the findings of a leg ask for, counted.
//!
//! How many gaps are hidden under a piece nobody knows, so a belay is counted for every so many metres of it
//! (`belay_every_m`), and for every rope length of ground that is too steep (`belay_pitch_m`): both our judgement. Ground that
//! is belayed for its steepness is not counted again for its gaps. Rope teams belay side by side: the largest takes longest.

use crate::{
    plan::{
        belay::{BelayedPiece, LegBelays},
        cure::CureCost,
        fact::Fact,
        finding::Finding,
        judged::JudgedStretch,
    },
    practice::{Rule, Rules},
    rope::legs::RopedLeg,
    times::bridges::hidden,
    trip::{job::Brief, route::Stretch},
};

/// Those of a leg, by what was found on it and where; `None` where nothing asks for one.
pub(crate) fn belays(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    findings: &[Finding],
    stretches: &[JudgedStretch],
) -> Option<LegBelays> {
    let rules = job.rules;
    let asked = |asks: Asks| {
        let facts = findings.iter().filter_map(Finding::fact);
        let codes: Vec<_> = facts
            .filter(|fact| Asks::of(fact) == Some(asks))
            .map(Fact::code)
            .collect();
        let places = stretches.iter().filter(|s| codes.contains(&s.code));
        let places = places.map(|s| Stretch {
            from_m: s.from_m,
            to_m: s.to_m,
        });
        Stretch::merged(places.collect(), 1e-6)
    };
    let steep = asked(Asks::UpAndDown);
    let pitches = steep
        .iter()
        .map(|run| counted(*run, run.length_m(), rules[Rule::BelayPitchM]));
    let gaps = hidden(job, leg).into_iter();
    let gaps = Stretch::merged(gaps.flat_map(|gaps| gaps.on_leg().to_vec()).collect(), 1e-6);
    let across = asked(Asks::Across)
        .into_iter()
        .flat_map(|run| on_gaps(run, &gaps));
    let across = across.filter_map(|run| besides(run, &steep, rules[Rule::BelayEveryM]));
    let mut pieces: Vec<BelayedPiece> = pitches.chain(across).collect();
    pieces.sort_by(|a, b| a.from_m.total_cmp(&b.from_m));
    let belays: usize = pieces.iter().map(|piece| piece.belays).sum();
    (belays > 0).then(|| LegBelays {
        belays,
        minutes: minutes(belays, leg, rules),
        pieces,
    })
}

/// What of a run is on hidden gaps; all of it where none of it is.
fn on_gaps(run: Stretch, gaps: &[Stretch]) -> Vec<Stretch> {
    let on = run.clip(gaps);
    if on.is_empty() { vec![run] } else { on }
}

/// The belays on a run besides those of steep ground in it; nothing where all of it is steep.
fn besides(run: Stretch, steep: &[Stretch], every_m: f64) -> Option<BelayedPiece> {
    let steep_m: f64 = run.clip(steep).iter().map(Stretch::length_m).sum();
    let left_m = run.length_m() - steep_m;
    let known = steep_m > 0.0 && left_m < 1e-6;
    (!known).then(|| counted(run, left_m, every_m))
}

/// What belays are asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asks {
    /// Over hidden gaps, one person after the other.
    Across,
    /// From anchor to anchor on ground that is too steep.
    UpAndDown,
}

impl Asks {
    /// Nothing where a belay is not among what cures it.
    fn of(fact: &Fact) -> Option<Self> {
        match fact {
            Fact::TooSteep { .. } | Fact::SteepBareIce { .. } | Fact::SteepBareUnroped { .. } => {
                Some(Self::UpAndDown)
            }
            Fact::HeldInNone { .. }
            | Fact::HeldInNoneOnce { .. }
            | Fact::HeldOffCentre { .. }
            | Fact::TwoOverGap { .. }
            | Fact::NoSetup { .. }
            | Fact::NoReserve { .. } => Some(Self::Across),
            // A cure that is to be belayed asks for belays itself.
            Fact::NoRope { cure, .. } => {
                let costs = cure.as_ref().map(|cure| &cure.costs);
                let belay = costs.is_none_or(|costs| costs.contains(&CureCost::FallLessHeld));
                belay.then_some(Self::Across)
            }
            _ => None,
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "few, and not negative"
)]
fn counted(run: Stretch, length_m: f64, every_m: f64) -> BelayedPiece {
    let belays = (length_m / every_m - 1e-9).ceil().max(1.0);
    BelayedPiece {
        from_m: run.from_m,
        to_m: run.to_m,
        belays: belays as usize,
    }
}

#[expect(clippy::cast_precision_loss, reason = "few")]
fn minutes(belays: usize, leg: &RopedLeg<'_>, rules: &Rules) -> f64 {
    let teams = leg.teams.iter().map(|team| team.persons.len());
    let most = teams.max().unwrap_or_default();
    let each_min = rules[Rule::BelayMin] + most as f64 * rules[Rule::BelayEachMin];
    belays as f64 * each_min
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(from_m: f64, to_m: f64) -> Stretch {
        Stretch { from_m, to_m }
    }

    /// 25 m a belay: each piece begun counts, and none twice.
    #[test]
    fn a_run_is_belayed_where_no_steep_ground_in_it_is() {
        let belays =
            |steep: &[Stretch]| besides(run(100.0, 200.0), steep, 25.0).map(|piece| piece.belays);
        assert_eq!(belays(&[]), Some(4), "100 m, and not a fifth");
        assert_eq!(
            belays(&[run(0.0, 90.0), run(210.0, 300.0)]),
            Some(4),
            "steep elsewhere"
        );
        assert_eq!(
            belays(&[run(50.0, 120.0), run(160.0, 170.0)]),
            Some(3),
            "70 m are left"
        );
        assert_eq!(belays(&[run(120.0, 199.0)]), Some(1), "21 m are left");
        assert_eq!(
            belays(&[run(90.0, 150.0), run(150.0, 210.0)]),
            None,
            "all of it is steep"
        );
    }

    #[test]
    fn a_place_without_a_length_is_belayed_once() {
        let at = besides(run(100.0, 100.0), &[], 25.0).expect("a belay");
        assert_eq!((at.from_m, at.to_m, at.belays), (100.0, 100.0, 1));
    }
}
