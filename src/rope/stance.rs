//! A team as the fall model sees it: what it stands on, what its knots bear, which gap it meets.

use crate::{
    fault::refusal::Refusal,
    legs::over::Over,
    physics::{
        assumed::Snow,
        holding::{BrakeKnots, Team},
    },
    plan::{
        leg::{Bite, KnotSet},
        name::PersonOnRope,
    },
    practice::{Rules, Travel},
    rope::draft::Draft,
    trip::job::Burden,
};

/// What a place adds to the set-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Stance {
    /// What the team stands on.
    pub(crate) snow: Snow,
    /// Whether brake knots bear: only where the snow is known to be deep enough.
    pub(crate) knots_bear: bool,
    /// Whether every gap is in sight, which the leader's word about the snow does not make so.
    pub(crate) in_sight: bool,
}

impl Stance {
    /// On bare ice it is ice; everywhere else the leader's word about the snow holds.
    #[must_use]
    pub(crate) fn on(over: Over<'_>, rules: &Rules) -> Self {
        let in_sight = over.bare_only();
        Self {
            snow: if in_sight {
                Snow::Ice
            } else {
                rules.choices.snow.value
            },
            knots_bear: over.bite(rules) == Bite::Yes,
            in_sight,
        }
    }
}

/// The greatest gap is put before the model rounded up to so many metres, as spacings go by half metres too: our judgement.
const GREATEST_STEP_M: f64 = 0.5;
/// Narrower ones are asked so many metres apart: our judgement.
const NARROWER_STEP_M: f64 = 1.0;

/// The widths that the gaps of a leg may have along the route, the greatest first; one of none where nobody gave any.
///
/// A zone gives the greatest width, and most of its gaps are narrower. Falls are reckoned over all of them, so that
/// whoever gives a wider gap adds widths and takes none away but a half metre.
pub(crate) fn gaps_m(draft: &Draft, gap_given: bool) -> impl Iterator<Item = f64> {
    let greatest_m = if gap_given {
        draft.spacing.meeting.effective_gap_m
    } else {
        0.0
    };
    let steps = (greatest_m / GREATEST_STEP_M - 1e-9).ceil().max(0.0);
    let greatest_m = steps * GREATEST_STEP_M;
    let below = (greatest_m / NARROWER_STEP_M - 1e-9).ceil() - 1.0;
    let next = |k: &f64| Some(k - 1.0).filter(|k| *k >= 0.0);
    let narrower = std::iter::successors(Some(below).filter(|k| *k >= 0.0), next);
    std::iter::once(greatest_m).chain(narrower.map(|k| k * NARROWER_STEP_M))
}

/// The team as the fall model sees it, on the flat and over a gap of one width.
///
/// # Errors
/// A sentence when the rope's figures are those of no spring.
pub(crate) fn team(
    draft: &Draft,
    gap_m: f64,
    stance: Stance,
    rules: &Rules,
) -> Result<Team, Refusal> {
    Ok(Team {
        masses_kg: draft.persons.iter().map(|p| p.mass_kg).collect(),
        spacing_m: draft.spacing.spacing_m,
        gap_m,
        knots: counted(&draft.knots).filter(|_| stance.knots_bear),
        snow: stance.snow,
        on_skis: rules.choices.travel.value == Travel::Ski,
        down_deg: [0.0; 2],
        rope_ea_n: rules.nature.gear.rope.usual.modulus_n()?,
    })
}

/// The same team while one of it carries somebody: right for the fall of that one, who holds no better for it.
pub(crate) fn loaded(
    team: &Team,
    persons: &[PersonOnRope],
    burden: Option<Burden>,
) -> Option<Team> {
    let burden = burden?;
    let carries = |person: &PersonOnRope| person.called.number == burden.carried_by;
    let carrier = persons.iter().position(carries)?;
    let mut loaded = team.clone();
    *loaded.masses_kg.get_mut(carrier)? += burden.mass_kg;
    Some(loaded)
}

fn counted(knots: &KnotSet) -> Option<BrakeKnots> {
    if knots.count == 0 {
        return None;
    }
    Some(BrakeKnots {
        count_per_side: u32::try_from(knots.each_end).ok()?,
        first_m: knots.first_m,
        step_m: knots.step_m,
    })
}

/// Everything the answer rests on besides the assumptions.
pub(crate) fn key(team: &Team) -> Vec<u64> {
    let knots = team.knots.map_or([0.0; 3], |k| {
        [f64::from(k.count_per_side), k.first_m, k.step_m]
    });
    let ground = [
        team.spacing_m,
        team.gap_m,
        team.down_deg[0],
        team.down_deg[1],
        team.rope_ea_n,
    ];
    let figures = ground.iter().chain(&knots).chain(&team.masses_kg);
    let mut key: Vec<u64> = figures.map(|x| x.to_bits()).collect();
    key.extend([team.snow as u64, u64::from(team.on_skis)]);
    key
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        legs::{knots::Hardship, spacing::Spacing, worst::Meeting},
        practice::set::Source,
        trip::party::Party,
    };

    fn rules() -> Rules {
        Rules::with_practice(&Source::Named("arm-span")).unwrap()
    }

    /// A pair at 15 m with its six knots, over a gap so long.
    fn pair(effective_gap_m: f64) -> Draft {
        let rules = rules();
        let over = Over {
            zones: &[],
            undrawn: true,
        };
        let meet = |_| Meeting {
            effective_gap_m,
            ..Meeting::default()
        };
        let spacing = Spacing::tried(2, 15.0, &rules, &meet);
        let pair = Party::weighing(&[70.0, 90.0]).split_by(&[2]).remove(0);
        Draft::new(&pair, spacing, over, Hardship::default(), &rules)
    }

    fn stands(draft: &Draft, knots_bear: bool) -> Team {
        let stance = Stance {
            snow: Snow::Firm,
            knots_bear,
            in_sight: false,
        };
        team(draft, 4.0, stance, &rules()).unwrap()
    }

    #[test]
    fn gaps_are_asked_from_the_greatest_in_half_metres_down_by_whole_ones() {
        for (effective_gap_m, want_m) in [
            (3.2, vec![3.5, 3.0, 2.0, 1.0, 0.0]),
            (3.0, vec![3.0, 2.0, 1.0, 0.0]),
            (2.6, vec![3.0, 2.0, 1.0, 0.0]),
            (0.3, vec![0.5, 0.0]),
            (0.0, vec![0.0]),
        ] {
            let all_m: Vec<f64> = gaps_m(&pair(effective_gap_m), true).collect();
            assert_eq!(all_m, want_m, "{effective_gap_m}");
        }
        assert_eq!(
            gaps_m(&pair(3.2), false).collect::<Vec<_>>(),
            [0.0],
            "nobody gave any"
        );
    }

    #[test]
    fn knots_bear_where_they_are_tied_and_the_snow_lets_them() {
        let tied = pair(4.0);
        let knots = BrakeKnots {
            count_per_side: 3,
            first_m: 3.0,
            step_m: 2.0,
        };
        assert_eq!(stands(&tied, true).knots, Some(knots));
        assert_eq!(stands(&tied, false).knots, None);
        let none = KnotSet {
            count: 0,
            each_end: 0,
            ..tied.knots.clone()
        };
        assert_eq!(
            stands(
                &Draft {
                    knots: none,
                    ..tied
                },
                true
            )
            .knots,
            None
        );
    }

    #[test]
    fn who_carries_somebody_hurt_weighs_as_much_as_both() {
        let draft = pair(4.0);
        let team = stands(&draft, true);
        let masses_kg = |carried_by: usize| {
            let burden = Burden {
                carried_by,
                mass_kg: 60.0,
            };
            loaded(&team, &draft.persons, Some(burden)).map(|loaded| loaded.masses_kg)
        };
        let numbers: Vec<usize> = draft.persons.iter().map(|p| p.called.number).collect();
        let place = |number: usize| numbers.iter().position(|n| *n == number).unwrap();
        let mut want_kg = team.masses_kg.clone();
        want_kg[place(2)] += 60.0;
        assert_eq!(masses_kg(2), Some(want_kg));
        assert_eq!(masses_kg(3), None, "somebody on another rope");
        assert_eq!(loaded(&team, &draft.persons, None), None);
    }

    #[test]
    fn no_two_teams_that_can_be_held_otherwise_are_taken_for_one() {
        let team = stands(&pair(4.0), true);
        assert_eq!(key(&team), key(&team.clone()));
        let others = [
            Team {
                masses_kg: vec![70.0, 91.0],
                ..team.clone()
            },
            Team {
                masses_kg: vec![70.0, 90.0, 80.0],
                ..team.clone()
            },
            Team {
                spacing_m: 14.5,
                ..team.clone()
            },
            Team {
                gap_m: 4.5,
                ..team.clone()
            },
            Team {
                knots: None,
                ..team.clone()
            },
            Team {
                snow: Snow::Soft,
                ..team.clone()
            },
            Team {
                on_skis: true,
                ..team.clone()
            },
            Team {
                down_deg: [-1.0, 0.0],
                ..team.clone()
            },
            Team {
                down_deg: [0.0, 1.0],
                ..team.clone()
            },
            Team {
                rope_ea_n: 30_000.0,
                ..team.clone()
            },
        ];
        for other in others {
            assert_ne!(key(&other), key(&team), "{other:?}");
        }
    }
}
