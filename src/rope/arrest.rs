//! Whether the rope team holds: the set-up put before the fall model, and its answer in the field's words.

use crate::{
    physics::{
        assumed::{Assumed, Parameter},
        hold_dynamic::Followed,
        holding::{Faller, Holding, HoldingAnswer, Team},
    },
    plan::{
        fall::{Arrest, Held, OrderAdvice},
        name::{PersonName, PersonOnRope},
    },
    rope::held::HeldAlong,
};

/// The fall of one team on one leg, put before the model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FallAnswer {
    /// The team as the model sees it.
    pub(crate) team: Team,
    /// What it answers.
    pub(crate) holding: Holding,
    /// How everybody's fall is held over whichever width the gap has, in rope order; nobody where only verdicts were asked.
    pub(crate) everybody: Vec<Held>,
    /// Whether nobody said what snow there is.
    pub(crate) snow_assumed: bool,
    /// The same question all along the leg.
    pub(crate) along: HeldAlong,
}

/// The model's answer as a plan holds it; `None` if nobody is on the rope.
#[must_use]
pub(crate) fn answer(fall: &FallAnswer, order: Option<OrderAdvice>) -> Option<Arrest> {
    let (team, holding) = (&fall.team, &fall.holding);
    let worst = holding.fallers.get(holding.worst)?;
    let falls = worst.index + 1;
    let kilonewtons = |n: f64| n / 1000.0;
    Some(Arrest {
        from_m: fall.along.piece.from_m,
        to_m: fall.along.piece.to_m,
        runs: fall.along.runs.clone(),
        falls,
        holds: (1..=team.masses_kg.len()).filter(|&p| p != falls).collect(),
        verdict: held(&worst.verdict),
        depends_on: depends_on(worst),
        alone: worst.alone,
        slide_m: worst.slide_m.into(),
        holder_force_kn: <[f64; 2]>::from(worst.peak_holder_force_n).map(kilonewtons),
        snow: team.snow,
        snow_assumed: fall.snow_assumed,
        slope_deg: team.toward_lip_deg(worst.index),
        down_deg: team.down_deg,
        slope_known: fall.along.slope_known,
        gap_m: team.gap_m,
        knots_counted: team.knots.is_some(),
        everybody: fall.everybody.clone(),
        order,
    })
}

/// How everybody's fall is held over the one gap that was asked about.
pub(crate) fn everybody(holding: &Holding) -> Vec<Held> {
    holding.fallers.iter().map(|f| held(&f.verdict)).collect()
}

fn held(verdict: &HoldingAnswer) -> Held {
    match verdict {
        HoldingAnswer::HeldInAll => Held::All,
        HoldingAnswer::DependsOn(_) => Held::Depends,
        HoldingAnswer::HeldInNone => Held::None,
    }
}

fn depends_on(faller: &Faller) -> Vec<Parameter> {
    match &faller.verdict {
        HoldingAnswer::DependsOn(named) => named.clone(),
        _ => Vec::new(),
    }
}

/// How badly a team is held, for finding its worst leg: higher is worse.
#[must_use]
pub(crate) fn severity(holding: &Holding) -> (u8, bool, f64) {
    let worst = holding.fallers.get(holding.worst);
    let centre = worst.is_some_and(|f| !f.held_in_centre);
    let share = worst.map_or(0.0, |f| f.slide_share.0 + f.slide_share.1);
    (holding.verdict.rank(), centre, share)
}

/// The model's advice on the order, by names. Equal people are not asked about.
#[must_use]
pub(crate) fn advice(
    fall: &FallAnswer,
    persons: &[PersonOnRope],
    assumed: &Assumed,
    followed: &mut Followed,
) -> Option<OrderAdvice> {
    let masses_kg = &fall.team.masses_kg;
    let first = masses_kg.first()?;
    if masses_kg.iter().all(|m| (m - first).abs() < 1e-9) {
        return None;
    }
    // On all the ground of the leg where the team stands as it does there, climbs and descents.
    let team = Team {
        down_deg: fall.along.down_deg,
        ..fall.team.clone()
    };
    let advice = team.best_order(assumed, followed).ok()?;
    let named = advice.order.iter().map(|i| PersonName::at(i + 1, persons));
    Some(OrderAdvice {
        order: named.collect(),
        worth_it: advice.worth_it,
        not_held: [advice.best.held_in_none, advice.best.not_in_centre],
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        physics::assumed::Snow,
        practice::{Rules, set::Source},
        trip::{party::Called, route::Stretch},
    };

    fn faller(index: usize, verdict: HoldingAnswer, slide_share: (f64, f64)) -> Faller {
        Faller {
            index,
            verdict,
            alone: true,
            held_in_centre: true,
            slide_m: (1.0, 4.0),
            slide_share,
            peak_holder_force_n: (800.0, 2400.0),
        }
    }

    /// A team of which somebody is held worst, invented.
    fn holding(worst: usize, fallers: Vec<Faller>) -> Holding {
        Holding {
            verdict: fallers[worst].verdict.clone(),
            alone: true,
            worst,
            slide_m: (0.0, 4.0),
            peak_holder_force_n: (0.0, 2400.0),
            fallers,
        }
    }

    /// One on the rope whose fall is held so.
    fn one(verdict: HoldingAnswer, in_centre: bool, slide_share: (f64, f64)) -> Holding {
        let held_in_centre = in_centre;
        let faller = faller(0, verdict, slide_share);
        holding(
            0,
            vec![Faller {
                held_in_centre,
                ..faller
            }],
        )
    }

    fn fall(team: Team, holding: Holding, down_deg: [f64; 2]) -> FallAnswer {
        let piece = Stretch {
            from_m: 300.0,
            to_m: 312.0,
        };
        FallAnswer {
            along: HeldAlong {
                runs: Vec::new(),
                worst: team.clone(),
                gaps_m: Vec::new(),
                piece,
                in_sight: false,
                slope_known: true,
                down_deg,
            },
            team,
            holding,
            everybody: Vec::new(),
            snow_assumed: false,
        }
    }

    fn team(masses_kg: &[f64]) -> Team {
        Team {
            masses_kg: masses_kg.to_vec(),
            spacing_m: 12.0,
            gap_m: 4.0,
            knots: None,
            snow: Snow::Settled,
            on_skis: false,
            down_deg: [0.0; 2],
            rope_ea_n: 21_213.0,
        }
    }

    #[test]
    fn of_two_falls_the_one_held_in_fewer_cases_then_out_of_the_centre_then_over_more_of_the_room_is_worse()
     {
        use HoldingAnswer::{DependsOn, HeldInAll, HeldInNone};
        let depends = || DependsOn(Vec::new());
        let mild_to_severe = [
            one(HeldInAll, true, (0.0, 0.2)),
            one(HeldInAll, true, (0.1, 0.2)),
            one(depends(), true, (0.0, 0.1)),
            // Least and most of the room count alike: 0.9, then 1.0 of it.
            one(depends(), true, (0.4, 0.5)),
            one(depends(), true, (0.1, 0.9)),
            one(depends(), false, (0.0, 0.0)),
            one(depends(), false, (0.0, 1.0)),
            one(HeldInNone, true, (0.0, 0.0)),
            one(HeldInNone, false, (0.0, 0.0)),
        ];
        for pair in mild_to_severe.windows(2) {
            assert!(severity(&pair[0]) < severity(&pair[1]), "{pair:?}");
        }
    }

    #[test]
    fn the_worst_fall_is_told_with_those_who_hold_it_and_what_it_depends_on() {
        let on = vec![Parameter::Delay];
        let held = faller(0, HoldingAnswer::HeldInAll, (0.0, 0.1));
        let open = faller(1, HoldingAnswer::DependsOn(on.clone()), (0.2, 1.0));
        let of = |worst: usize| {
            let fallers = vec![
                held.clone(),
                open.clone(),
                Faller {
                    index: 2,
                    ..held.clone()
                },
            ];
            let fall = fall(team(&[80.0; 3]), holding(worst, fallers), [0.0; 2]);
            answer(&fall, None).expect("somebody is on the rope")
        };
        let (middle, first) = (of(1), of(0));
        assert_eq!((middle.falls, &middle.holds[..]), (2, &[1, 3][..]));
        assert_eq!((middle.verdict, middle.depends_on), (Held::Depends, on));
        assert_eq!(
            middle.holder_force_kn.to_vec(),
            [0.8, 2.4],
            "of 800 and 2400 N"
        );
        assert_eq!((first.falls, &first.holds[..]), (1, &[2, 3][..]));
        assert_eq!((first.verdict, first.depends_on), (Held::All, Vec::new()));
    }

    /// The order is advised on all the ground where the team stands so, not on that of its worst fall.
    #[test]
    fn the_order_advised_is_the_best_one_on_climbs_and_descents_of_the_leg() {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let (assumed, mut followed) = (&rules.nature.assumed, Followed::default());
        let masses_kg = [60.0, 110.0, 80.0];
        let person = |(i, mass_kg): (usize, &f64)| PersonOnRope {
            called: Called::number(10 + i),
            mass_kg: *mass_kg,
        };
        let persons: Vec<PersonOnRope> = masses_kg.iter().enumerate().map(person).collect();
        let mut on = |down_deg: [f64; 2]| {
            let one = one(HoldingAnswer::HeldInAll, true, (0.0, 0.0));
            let fall = fall(team(&masses_kg), one, down_deg);
            let advice = advice(&fall, &persons, assumed, &mut followed).expect("they differ");
            let there = Team {
                down_deg,
                ..team(&masses_kg)
            };
            let best = there
                .best_order(assumed, &mut followed)
                .expect("within bounds");
            let named: Vec<(usize, usize)> = advice
                .order
                .iter()
                .map(|who| (who.position, who.called.number))
                .collect();
            let want: Vec<(usize, usize)> = best.order.iter().map(|i| (i + 1, 10 + i)).collect();
            assert_eq!(named, want, "{down_deg:?}");
            let not_held = [best.best.held_in_none, best.best.not_in_centre];
            assert_eq!(advice.not_held, not_held, "{down_deg:?}");
            not_held
        };
        assert_ne!(on([0.0; 2]), on([25.0; 2]), "a descent holds worse");
        let equal = fall(
            team(&[80.0; 3]),
            one(HoldingAnswer::HeldInAll, true, (0.0, 0.0)),
            [25.0; 2],
        );
        assert_eq!(advice(&equal, &persons, assumed, &mut followed), None);
    }
}
