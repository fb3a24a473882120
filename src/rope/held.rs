//! Falls judged place by place: on how many metres of a leg they are held in all cases, depend, or are held in none.

use std::collections::{BTreeMap, BTreeSet};

use crate::{
    fault::refusal::Refusal,
    ground::incline::{Incline, least_and_most},
    legs::over::Over,
    meet::Contact,
    physics::{
        bound,
        hold_dynamic::Followed,
        holding::{
            Team,
            limits::{HeldOn, HoldLimits, LostOver},
        },
    },
    plan::fall::{Held, HeldRun},
    practice::{Rule, Rules},
    rope::{
        draft::Draft,
        legs::RopedLeg,
        stance::{self, Stance},
    },
    trip::{job::Brief, route::Stretch, zone::Zone},
};

/// The answers along one leg, and the place where the team is held worst.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct HeldAlong {
    /// In walking order; neighbours that say the same are one.
    pub(crate) runs: Vec<HeldRun>,
    /// The team as it stands at the worst place, over the gap over which somebody's fall is held worst.
    pub(crate) worst: Team,
    /// The widths that a gap may have there, the greatest first, metres.
    pub(crate) gaps_m: Vec<f64>,
    /// That place.
    pub(crate) piece: Stretch,
    /// Whether every gap is in sight there.
    pub(crate) in_sight: bool,
    /// Whether heights say how steep it is there.
    pub(crate) slope_known: bool,
    /// How steeply the ground falls in walking direction wherever the team stands as it does there, at least and at most,
    /// degrees.
    pub(crate) down_deg: [f64; 2],
}

/// What the answer at a place of a leg rests on.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct FallPlace {
    pub(super) stance: Stance,
    pub(super) gap_given: bool,
    /// How steep it is, whichever way, whole degrees.
    steep_deg: u8,
    /// How steeply it falls in walking direction, at least and at most, whole degrees.
    pub(super) down_deg: [i8; 2],
}

impl FallPlace {
    fn at(leg: &RopedLeg<'_>, incline: &Incline, job: &Brief<'_>) -> Self {
        let (drawn, undrawn) = ice_at(leg, incline, job.zones);
        let over = Over {
            zones: &drawn,
            undrawn,
        };
        let down_deg = whole_deg(incline.down_deg.unwrap_or_default());
        Self {
            stance: Stance::on(over, job.rules),
            gap_given: !drawn.is_empty(),
            steep_deg: down_deg
                .map(i8::unsigned_abs)
                .into_iter()
                .max()
                .unwrap_or_default(),
            down_deg,
        }
    }

    /// The pieces of a leg that touch ice, in walking order.
    pub(super) fn on_ice<'l>(leg: &'l RopedLeg<'_>, job: &Brief<'_>) -> Vec<(Incline<'l>, Self)> {
        let pieces = leg.footing.inclines.iter();
        let on_ice = pieces.filter(|i| !i.contacts.is_empty());
        on_ice
            .map(|incline| (incline, Self::at(leg, &incline, job)))
            .collect()
    }

    /// Each of them once, the steepest first, with the slopes wherever a team stands the same.
    pub(super) fn questions(on_ice: &[(Incline<'_>, Self)]) -> Vec<(Self, [i8; 2])> {
        let all: BTreeSet<Self> = on_ice.iter().map(|(_, at)| *at).collect();
        let mut ranges: BTreeMap<(Stance, bool), [i8; 2]> = BTreeMap::new();
        for at in &all {
            let range_deg = ranges.entry(at.standing()).or_insert(at.down_deg);
            *range_deg = least_and_most(*range_deg, at.down_deg);
        }
        let range_deg = |at: &Self| ranges.get(&at.standing()).copied();
        let asked = all.iter().rev();
        asked
            .map(|at| (*at, range_deg(at).unwrap_or(at.down_deg)))
            .collect()
    }

    /// The team on the flat there, and with somebody carried where that is so.
    pub(super) fn teams(
        self,
        draft: &Draft,
        job: &Brief<'_>,
    ) -> Result<(Team, Option<Team>), Refusal> {
        let team = stance::team(draft, 0.0, self.stance, job.rules)?;
        let loaded = stance::loaded(&team, &draft.persons, job.burden);
        Ok((team, loaded))
    }

    /// Whether a team stands the same there but for the slope.
    fn alike(self, other: Self) -> bool {
        self.standing() == other.standing()
    }

    /// How a team stands there but for the slope.
    fn standing(self) -> (Stance, bool) {
        (self.stance, self.gap_given)
    }
}

/// What was asked so far, whichever leg it was asked for.
#[derive(Clone, Debug, Default)]
pub(crate) struct AskedSlopes {
    pub(super) limits: BTreeMap<Vec<u64>, HoldLimits>,
    /// Every fall, whatever it was asked for.
    pub(crate) followed: Followed,
}

impl AskedSlopes {
    /// A team all along a leg; `None` where it touches no ice.
    pub(crate) fn along(
        &mut self,
        leg: &RopedLeg<'_>,
        draft: &Draft,
        job: &Brief<'_>,
    ) -> Result<Option<HeldAlong>, Refusal> {
        let on_ice = FallPlace::on_ice(leg, job);
        let mut answers: BTreeMap<FallPlace, (LostOver, Team)> = BTreeMap::new();
        for (at, range_deg) in FallPlace::questions(&on_ice) {
            answers.insert(at, self.worst_gap(draft, at, range_deg, job)?);
        }
        let mut along: Option<HeldAlong> = None;
        let mut worst: Option<(Alarm, FallPlace)> = None;
        for (incline, at) in &on_ice {
            let Some((lost, team)) = answers.get(at) else {
                continue;
            };
            let (run, team) = (run(incline, *at, *lost), team.clone());
            let alarm = Alarm::of(&run, at.steep_deg);
            let known = along.get_or_insert_with(|| HeldAlong {
                runs: Vec::new(),
                worst: team.clone(),
                gaps_m: Vec::new(),
                piece: incline.piece,
                in_sight: at.stance.in_sight,
                slope_known: incline.down_deg.is_some(),
                down_deg: [0.0; 2],
            });
            if worst.is_none_or(|(w, _)| alarm > w) {
                worst = Some((alarm, *at));
                known.worst = team;
                known.gaps_m = stance::gaps_m(draft, at.gap_given).collect();
                known.piece = incline.piece;
                known.in_sight = at.stance.in_sight;
                known.slope_known = incline.down_deg.is_some();
            }
            known.add(run, job.rules);
        }
        if let (Some(along), Some((_, worst))) = (&mut along, worst) {
            let stands_so = on_ice
                .iter()
                .map(|(_, at)| *at)
                .filter(|at| at.alike(worst));
            let down_deg = stands_so.map(|at| at.down_deg).reduce(least_and_most);
            along.down_deg = down_deg.unwrap_or_default().map(f64::from);
        }
        Ok(along)
    }

    /// The answer over the gap over which falls are held worst, and the team there; so are slopes within a range asked for.
    fn worst_gap(
        &mut self,
        draft: &Draft,
        at: FallPlace,
        range_deg: [i8; 2],
        job: &Brief<'_>,
    ) -> Result<(LostOver, Team), Refusal> {
        let assumed = &job.rules.nature.assumed;
        let gaps_m: Vec<f64> = stance::gaps_m(draft, at.gap_given).collect();
        let (mut team, loaded) = at.teams(draft, job)?;
        let mut lost = LostOver::default();
        for team in std::iter::once(&team).chain(&loaded) {
            let limits = self.limits.entry(stance::key(team)).or_default();
            limits.expect(range_deg);
            lost = lost.or(limits.over(team, &gaps_m, at.down_deg, assumed, &mut self.followed)?);
        }
        let greatest_m = gaps_m.first().copied().unwrap_or_default();
        team.gap_m = lost.worst_gap_m().unwrap_or(greatest_m);
        team.down_deg = at.down_deg.map(f64::from);
        Ok((lost, team))
    }
}

impl HeldAlong {
    fn add(&mut self, run: HeldRun, rules: &Rules) {
        match self.runs.last_mut() {
            Some(last) if last.goes_on(&run) && as_steep(last, &run, rules) => {
                let steeper = run.steepest_deg() > last.steepest_deg();
                *last = HeldRun {
                    from_m: last.from_m,
                    to_m: run.to_m,
                    ..if steeper { run } else { *last }
                };
            }
            _ => self.runs.push(run),
        }
    }
}

/// Where every gap is in sight the slope decides what the answer is worth: pieces on either side of a threshold stay apart, or
/// one short step would condemn the whole tongue.
fn as_steep(a: &HeldRun, b: &HeldRun, rules: &Rules) -> bool {
    let over = |run: &HeldRun| {
        let steeper = |rule: Rule| run.steepest_deg().is_some_and(|deg| deg > rules[rule]);
        [Rule::BareSlipDeg, Rule::BareStopDeg].map(steeper)
    };
    !a.in_sight || over(a) == over(b)
}

/// What is worse: held in fewer cases, not in the centre, hidden gaps before gaps in sight, steeper.
type Rank = (Held, bool, bool, u8);

/// How bad a place is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Alarm(Rank);

impl Alarm {
    fn of(run: &HeldRun, deg: u8) -> Self {
        Self((run.held, !run.in_centre, !run.in_sight, deg))
    }
}

fn run(incline: &Incline, at: FallPlace, lost: LostOver) -> HeldRun {
    let on = told(lost.held_on(), at.gap_given);
    HeldRun {
        from_m: incline.piece.from_m,
        to_m: incline.piece.to_m,
        held: match on {
            HeldOn { in_all: true, .. } => Held::All,
            HeldOn { in_none: true, .. } => Held::None,
            _ => Held::Depends,
        },
        in_centre: on.in_centre,
        snow: at.stance.snow,
        in_sight: at.stance.in_sight,
        falls: lost.faller.map(|faller| faller + 1),
        down_deg: incline.steeper_deg(),
        gap_given: at.gap_given,
    }
}

/// Where nobody gave a gap it is reckoned with one of no width: only what is not held even so can be told.
fn told(on: HeldOn, gap_given: bool) -> HeldOn {
    if gap_given || on.in_none {
        return on;
    }
    HeldOn {
        in_all: false,
        in_centre: true,
        in_none: false,
    }
}

/// The zones that touch a piece, and whether ice does that nobody drew.
fn ice_at<'z>(leg: &RopedLeg<'_>, incline: &Incline, zones: &'z [Zone]) -> (Vec<&'z Zone>, bool) {
    let contacts = incline.contacts.iter();
    let met = contacts.filter_map(|&i| leg.stage.met.contacts.get(i));
    let (drawn, undrawn): (Vec<&Contact>, Vec<&Contact>) = met.partition(|c| c.of.zone().is_some());
    let zone = |contact: &Contact| zones.get(contact.of.zone()?);
    (
        drawn.into_iter().filter_map(zone).collect(),
        !undrawn.is_empty(),
    )
}

/// Rounded so that it is the worse for whoever falls, within what the model can be asked.
#[expect(clippy::cast_possible_truncation, reason = "clamped to -60..=60 first")]
fn whole_deg([least_deg, most_deg]: [f64; 2]) -> [i8; 2] {
    let whole = [(least_deg + 1e-6).floor(), (most_deg - 1e-6).ceil()];
    whole.map(|deg| deg.clamp(bound::SLOPE_DEG.min, bound::SLOPE_DEG.max) as i8)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{physics::assumed::Snow, practice::set::Source};

    /// Ten metres of a leg, the line falling so much in walking direction there.
    fn on(from_m: f64, down_deg: f64, in_sight: bool) -> HeldRun {
        HeldRun {
            from_m,
            to_m: from_m + 10.0,
            held: Held::Depends,
            in_centre: true,
            snow: Snow::Ice,
            in_sight,
            falls: Some(1),
            down_deg: Some(down_deg),
            gap_given: true,
        }
    }

    /// From where to where the runs go that pieces of these slopes make one after another, and how steep each is.
    fn runs(slopes_deg: &[f64], in_sight: bool) -> Vec<(f64, f64, Option<f64>)> {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let team = Team {
            masses_kg: vec![80.0; 2],
            spacing_m: 10.0,
            gap_m: 4.0,
            knots: None,
            snow: Snow::Ice,
            on_skis: false,
            down_deg: [0.0; 2],
            rope_ea_n: 21_213.0,
        };
        let piece = Stretch {
            from_m: 0.0,
            to_m: 10.0,
        };
        let mut along = HeldAlong {
            runs: Vec::new(),
            worst: team,
            gaps_m: Vec::new(),
            piece,
            in_sight,
            slope_known: true,
            down_deg: [0.0; 2],
        };
        let mut from_m = 0.0;
        for down_deg in slopes_deg {
            along.add(on(from_m, *down_deg, in_sight), &rules);
            from_m += 10.0;
        }
        let runs = along.runs.iter();
        runs.map(|run| (run.from_m, run.to_m, run.down_deg))
            .collect()
    }

    #[test]
    fn neighbours_that_say_the_same_are_one_with_the_steepest_slope_of_them() {
        let hidden = |slopes_deg: &[f64]| runs(slopes_deg, false);
        assert_eq!(hidden(&[-10.0, 20.0, 5.0]), [(0.0, 30.0, Some(20.0))]);
        assert_eq!(hidden(&[10.0, -30.0, 20.0]), [(0.0, 30.0, Some(-30.0))]);
        assert_eq!(hidden(&[20.0, -20.0]), [(0.0, 20.0, Some(20.0))], "first");
    }

    #[test]
    fn where_gaps_are_in_sight_ground_beyond_a_threshold_stays_apart() {
        let bare = |slopes_deg: &[f64]| runs(slopes_deg, true).len();
        // From more than 15° on one slip pulls all, from more than 25° on it is no ground for a rope team (both ours).
        assert_eq!(bare(&[5.0, 15.0]), 1, "15° are not more");
        assert_eq!(bare(&[15.0, 15.1, -25.0]), 2);
        assert_eq!(bare(&[25.0, 25.1, -40.0]), 2);
        assert_eq!(
            bare(&[5.0, 40.0, 5.0]),
            3,
            "one step does not condemn the rest"
        );
        assert_eq!(
            runs(&[5.0, 40.0, 5.0], false).len(),
            1,
            "hidden gaps are one run"
        );
    }

    #[test]
    fn a_place_is_worse_for_fewer_cases_then_out_of_the_centre_then_hidden_gaps_then_a_steeper_slope()
     {
        let of = |held, in_centre, in_sight, deg| {
            let run = HeldRun {
                held,
                in_centre,
                ..on(0.0, 0.0, in_sight)
            };
            Alarm::of(&run, deg)
        };
        let mild_to_severe = [
            of(Held::All, true, true, 40),
            of(Held::Depends, true, true, 30),
            of(Held::Depends, true, false, 0),
            of(Held::Depends, true, false, 1),
            of(Held::Depends, false, true, 0),
            of(Held::Depends, false, false, 0),
            of(Held::None, true, true, 0),
        ];
        assert!(mild_to_severe.is_sorted_by(|mild, severe| mild < severe));
    }

    #[test]
    fn a_slope_is_rounded_away_from_its_middle_and_a_whole_degree_stays_one() {
        assert_eq!(whole_deg([5.0, 5.0]), [5, 5]);
        assert_eq!(whole_deg([-7.0, 12.0]), [-7, 12]);
        assert_eq!(whole_deg([4.2, 5.1]), [4, 6]);
        assert_eq!(whole_deg([-5.1, -4.2]), [-6, -4]);
        assert_eq!(
            whole_deg([-80.0, 80.0]),
            [-60, 60],
            "all that the model can be asked"
        );
    }
}
