//! The trip with something missing: each case planned by itself, the worst of the ropes first, the hurt person's weight
//! on whoever carries them.

use schrund::{
    Planner,
    plan::{
        Plan,
        leg::Verdict,
        without::{Difference, Without},
    },
    trip::{job::Brief, party::Party},
    write::{json, sheet::Other},
};
use serde_json::Value;

use crate::fixture::trip::Trip;

const ZONES: [&str; 2] = [
    r#"{"gap_m":6,"snow_depth_m":2}"#,
    r#"{"gap_m":16,"snow_depth_m":0.5}"#,
];

/// The plan with the others beside it.
fn beside(trip: &Trip) -> (Plan, Vec<Other>) {
    let job = trip.job();
    let planner = Planner::new(&job).unwrap_or_else(|p| panic!("{p:#?}"));
    let plan = planner.plan().unwrap_or_else(|p| panic!("{p:#?}"));
    let others = planner.others(&plan);
    (plan, others)
}

fn all(trip: &Trip) -> Vec<Without> {
    let (plan, others) = beside(trip);
    others.iter().map(|other| other.beside(&plan)).collect()
}

#[test]
fn who_joins_before_the_trip_may_take_a_rope_that_would_stay_at_home() {
    let (plan, others) = beside(&Trip::straight(&ZONES).people(5).ropes(&[60.0, 60.0]));
    assert_eq!(plan.carry.len(), 1, "one rope for five");
    let six = others
        .iter()
        .find(|other| other.differs == Difference::OneMore);
    let without = six.expect("one more").beside(&plan);
    let taken: Vec<usize> = without.takes.iter().map(|rope| rope.rope).collect();
    assert_eq!(taken.len(), 1, "{without:?}");
    let fits = without
        .legs
        .iter()
        .flat_map(|leg| &leg.teams)
        .all(|team| team.fits == Some(true));
    assert!(fits, "two ropes for two teams: {without:?}");
    let says = schrund::say::without::says(&without, &[], schrund::say::voice::Voice::default());
    assert!(says.to_string().contains("taken along"), "{says}");
}

/// A leg's verdict and ends, and of each team the spacing, the rope needed and the knots.
type SeenLeg = (Verdict, f64, f64, Vec<(f64, f64, usize)>);

/// What a leader sees of a plan: the verdict of each leg, and how each team is tied.
fn seen(plan: &Plan) -> Vec<SeenLeg> {
    let leg = |leg: &schrund::plan::leg::Leg| {
        let teams = leg.teams.iter();
        let teams = teams.map(|t| (t.spacing_m, t.ledger.total_m, t.knots.count));
        (leg.verdict, leg.start_m, leg.end_m, teams.collect())
    };
    plan.legs.iter().map(leg).collect()
}

#[test]
fn one_fewer_and_one_more_are_planned_anew() {
    let masses_kg = [80.0, 72.0, 95.0, 60.0];
    let (_, others) = beside(&Trip::straight(&ZONES).party(&masses_kg).ropes(&[70.0]));
    let fewer = Trip::straight(&ZONES)
        .party(&masses_kg[..3])
        .ropes(&[70.0])
        .plan();
    assert_eq!(others[0].differs, Difference::OneFewer);
    assert_eq!(seen(others[0].plan.as_ref().unwrap()), seen(&fewer));
    assert_eq!(
        (&others[1].differs, others[1].people),
        (&Difference::OneMore, 5)
    );
}

#[test]
fn each_rope_that_is_carried_is_lost_in_turn_the_worst_first() {
    // Two teams of three on the two long ropes; the short one stays at home.
    let cases = all(&Trip::straight(&ZONES).people(6).ropes(&[60.0, 20.0, 80.0]));
    let lost: Vec<(usize, Option<Verdict>)> = cases
        .iter()
        .filter_map(|case| match &case.differs {
            Difference::RopeLost { rope } => Some((rope.rope, case.verdict)),
            _ => None,
        })
        .collect();
    let mut numbers: Vec<usize> = lost.iter().map(|(rope, _)| *rope).collect();
    numbers.sort_unstable();
    assert_eq!(numbers, [1, 3]);
    assert!(
        lost.windows(2).all(|pair| pair[0].1 >= pair[1].1),
        "{lost:?}"
    );
    assert!(
        lost.iter()
            .all(|(_, verdict)| *verdict >= Some(Verdict::Outside)),
        "20 m hold nobody"
    );
    let short = cases
        .iter()
        .flat_map(|c| &c.legs)
        .flat_map(|l| &l.teams)
        .filter(|t| t.fits == Some(false));
    assert!(short.count() >= 2);
    let nameless = all(&Trip::straight(&ZONES).people(3));
    assert_eq!(nameless.len(), 3, "where no rope is named none is lost");
}

/// A rope that stays at home is not there when the one that was carried is lost, or when somebody joins or is hurt.
#[test]
fn nobody_counts_on_a_rope_that_stays_at_home() {
    let trip = |ropes: &[f64]| Trip::straight(&ZONES).people(3).ropes(ropes);
    let (plan, with) = beside(&trip(&[90.0, 100.0]));
    let carried: Vec<usize> = plan
        .carry
        .iter()
        .filter_map(|c| Some(c.rope.as_ref()?.rope))
        .collect();
    assert_eq!(carried, [1], "the lighter one is long enough");
    assert!(!plan.spares[0].is_carried(), "loops reach everybody");
    let (_, alone) = beside(&trip(&[90.0]));
    let told = |others: &[Other]| -> Vec<_> {
        let seen = |other: &Other| (other.differs.clone(), other.plan.as_ref().ok().map(seen));
        others.iter().map(seen).collect()
    };
    assert_eq!(told(&with), told(&alone));
    assert!(
        lost(&with) >= Verdict::Outside,
        "with the other at home nobody is roped"
    );
    // On 60 m a loop ends short of the lip, and the other rope goes along for that.
    let (plan, with) = beside(&trip(&[60.0, 70.0]));
    assert!(plan.spares[0].is_carried(), "{:?}", plan.spares);
    assert!(lost(&with) < Verdict::Outside, "it is there");
}

/// Two teams of two with a rope each go on the one that is left, and of ten in three teams five on each of two.
#[test]
fn with_a_rope_lost_nobody_stays_without_one() {
    let sizes = |people: usize, teams: &[usize], ropes: &[f64]| {
        let mut job = Trip::straight(&ZONES).people(people).ropes(ropes).job();
        job.party.teams = teams.to_vec();
        let planner = schrund::Planner::new(&job).expect("a plan");
        let others = planner.others(&planner.plan().expect("a plan"));
        let lost = others
            .iter()
            .filter(|o| matches!(o.differs, Difference::RopeLost { .. }));
        let roped = lost.map(|other| {
            let plan = other.plan.as_ref().expect("a plan");
            let leg = plan.legs.iter().find(|leg| leg.roped).expect("roped");
            leg.teams.iter().map(|team| team.people).collect::<Vec<_>>()
        });
        roped.collect::<Vec<_>>()
    };
    assert_eq!(sizes(4, &[2, 2], &[60.0, 60.0]), [[4], [4]]);
    assert_eq!(sizes(10, &[], &[60.0; 3]), [[5, 5], [5, 5], [5, 5]]);
    let seven = sizes(7, &[4, 3], &[60.0, 60.0]);
    assert_eq!(seven, [[4, 3], [4, 3]], "seven find no place on one");
}

/// How the trip stands with a rope lost.
fn lost(others: &[Other]) -> Verdict {
    let mut others = others.iter();
    let lost = others.find(|other| matches!(other.differs, Difference::RopeLost { .. }));
    let lost = lost.and_then(|other| other.plan.as_ref().ok());
    lost.expect("a plan").verdict()
}

#[test]
fn the_only_rope_lost_leaves_none() {
    let cases = all(&Trip::straight(&ZONES).people(3).ropes(&[60.0]));
    let lost = cases
        .iter()
        .find(|c| matches!(c.differs, Difference::RopeLost { .. }))
        .expect("one rope");
    assert!(lost.verdict >= Some(Verdict::Outside));
    assert!(
        lost.legs
            .iter()
            .flat_map(|leg| &leg.teams)
            .all(|team| team.fits == Some(false))
    );
}

#[test]
fn who_is_hurt_holds_nothing_and_weighs_on_who_carries_them() {
    let masses_kg = [80.0, 96.0, 70.0, 90.0];
    let trip = Trip::straight(&ZONES)
        .party(&masses_kg)
        .ropes(&[70.0])
        .falling(0.1);
    let (plan, others) = beside(&trip);
    let hurt = others.last().expect("one hurt");
    let Difference::OneHurt {
        hurt: who,
        carried_by: Some(carrier),
    } = &hurt.differs
    else {
        panic!("{:?}", hurt.differs)
    };
    assert_eq!(
        (who.number, carrier.number, hurt.people),
        (2, 4, 3),
        "the heaviest two"
    );
    let hurt_plan = hurt.plan.as_ref().unwrap();
    let on_rope = hurt_plan
        .legs
        .iter()
        .flat_map(|l| &l.teams)
        .flat_map(|t| &t.persons);
    assert!(on_rope.clone().count() > 0 && on_rope.clone().all(|p| p.called.number != 2));
    let legs = &hurt.beside(&plan).legs;
    let falls = legs
        .iter()
        .flat_map(|l| &l.teams)
        .filter_map(|t| t.falls.as_ref());
    assert!(
        falls.clone().any(|p| p.called.number == 4),
        "{:?}",
        falls.collect::<Vec<_>>()
    );
    let rest = Party {
        people: trip
            .party
            .people
            .iter()
            .filter(|p| p.called.number != 2)
            .cloned()
            .collect(),
        teams: Vec::new(),
    };
    let job = trip.job();
    let case = Brief {
        party: &rest,
        ..job.case()
    };
    no_milder(hurt_plan, &Planner::of(case).unwrap().plan().unwrap());
}

/// The same people with the weight and without it: tied the same, never judged more mildly for it.
fn no_milder(heavy: &Plan, light: &Plan) {
    assert_eq!(heavy.legs.len(), light.legs.len(), "the same legs");
    for (heavy, light) in heavy.legs.iter().zip(&light.legs) {
        assert!(heavy.verdict >= light.verdict, "leg {}", heavy.leg);
        let leg = heavy.leg;
        for (heavy, light) in heavy.teams.iter().zip(&light.teams) {
            assert_eq!(
                (heavy.spacing_m, heavy.knots.count),
                (light.spacing_m, light.knots.count),
                "leg {leg}: tied the same"
            );
            let verdicts = [heavy, light].map(|t| t.arrest.as_ref().expect("an answer").verdict);
            assert!(verdicts[0] >= verdicts[1], "leg {leg}: {verdicts:?}");
        }
    }
}

#[test]
fn of_two_nobody_is_left_to_carry_and_hold() {
    let cases = all(&Trip::straight(&ZONES).people(2).ropes(&[80.0]));
    let refused: Vec<Option<&str>> = cases.iter().map(|case| case.refused).collect();
    assert_eq!(refused, [Some("alone"), None, None, Some("alone")]);
    assert!(cases[3].legs.is_empty() && cases[3].verdict.is_none() && cases[3].people == 1);
}

#[test]
fn json_says_it_beside_the_plan_and_only_where_it_was_asked_for() {
    let (plan, others) = beside(&Trip::straight(&ZONES).people(3).ropes(&[60.0]));
    let read = |text: String| -> Value { serde_json::from_str(&text).unwrap() };
    let alone = read(json::plan(&plan).unwrap());
    assert!(alone.get("without").is_none());
    let mut both = read(json::beside(&plan, &others).unwrap());
    let says: Vec<&str> = both["without"]
        .as_array()
        .unwrap()
        .iter()
        .map(|case| case["says"].as_str().unwrap())
        .collect();
    assert!(says.iter().all(|s| !s.contains('⟦')), "{says:#?}");
    assert!(says[2].starts_with("Lost: the 60 m rope: "), "{says:#?}");
    both.as_object_mut().unwrap().remove("without");
    assert_eq!(both, alone, "the plan itself is the same");
}

/// Of several teams it was not said whose rope is too short.
#[test]
fn whose_rope_is_too_short_is_said_where_there_are_several() {
    let lost = |people: usize, ropes_m: &[f64]| {
        let all = all(&Trip::straight(&ZONES).people(people).ropes(ropes_m));
        let mut lost = all
            .iter()
            .filter(|w| matches!(w.differs, Difference::RopeLost { .. }));
        let lost = lost.next().expect("a rope can be lost");
        schrund::say::without::says(lost, &[], schrund::say::voice::Voice::default()).to_string()
    };
    let two = lost(6, &[60.0, 60.0, 30.0]);
    assert!(two.contains("the rope of team "), "{two}");
    let one = lost(3, &[60.0, 30.0]);
    assert!(one.contains("the rope is too short on "), "{one}");
}
