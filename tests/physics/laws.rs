//! The moving model against a rival solver and against what no model may break.

use proptest::prelude::*;
use schrund::physics::{
    hold_dynamic::Followed,
    holding::limits::{HeldOn, HoldLimits, LostOver},
};

use super::*;

/// What the rival goes on creeping after the program has called the slide ended, m.
const CREEP_M: f64 = 0.02;

fn row(line: &str) -> (Fall, f64) {
    let cells: Vec<&str> = line.split(',').collect();
    let n = |i: usize| cells[i].parse::<f64>().expect("a number");
    let mut fall = plain_fall(n(0), n(1), n(2), n(4), n(5), 1);
    (fall.modulus_n, fall.victim_kg) = (n(6), n(9));
    let side = &mut fall.sides[0];
    (side.slope_rad, side.spacing_m, side.beyond_m) = (n(3).to_radians(), n(7), n(8));
    side.holders_kg = cells[10]
        .split('+')
        .map(|m| m.parse().expect("kg"))
        .collect();
    (fall, n(11))
}

#[test]
fn a_rival_solver_finds_the_same_slides() {
    let rows = include_str!("../reference/fall.csv")
        .lines()
        .filter(|l| l.starts_with(char::is_numeric));
    let mut ran = 0;
    for line in rows {
        let (fall, want_m) = row(line);
        let got = fall.run().expect("inside bounds");
        assert!(got.held, "{line}");
        close(line, got.slide_m, want_m, 0.01 * want_m + CREEP_M);
        ran += 1;
    }
    assert!(ran >= 6, "only {ran} rows ran");
}

#[test]
fn energy_is_never_created() {
    let mut ran = 0;
    for fall in grid().iter().flat_map(falls) {
        let energy = fall.energy(LONGEST_STEP_S).expect("inside bounds");
        // Second-order steps err to both sides; a thousandth of what was turned over is theirs.
        let ruler_j = energy.start_j + energy.turned_j;
        assert!(energy.gain_j <= 0.001 * ruler_j, "{energy:?} of {fall:?}");
        assert!(
            energy.friction_j >= 0.0
                && energy.lip_j >= -1e-6 * ruler_j
                && energy.rope_j >= -1e-3 * ruler_j,
            "{energy:?} of {fall:?}"
        );
        ran += 1;
    }
    assert!(ran > 500, "only {ran} falls ran");
}

#[test]
fn energy_not_accounted_for_shrinks_with_the_step() {
    let fall = plain_fall(1.5, 0.2, 0.9, 1.0, 1.0, 2);
    let gain_j = |step_s| fall.energy(step_s).expect("inside bounds").gain_j;
    let (coarse_j, fine_j) = (gain_j(LONGEST_STEP_S), gain_j(LONGEST_STEP_S / 8.0));
    assert!(fine_j < coarse_j / 4.0, "{coarse_j} J, then {fine_j} J");
}

#[test]
fn a_rope_that_hardly_stretches_keeps_its_length() {
    for slack_m in [0.0, 0.8] {
        let mut fall = plain_fall(1.3, 0.2, 0.8, 0.8, slack_m, 2);
        fall.modulus_n = 5e6;
        let got = fall.run().expect("inside bounds");
        let longer_m = got.stretch * (12.0 + slack_m);
        close("drop", got.drop_m, slack_m + got.slide_m, longer_m + 1e-6);
        assert!(
            got.drop_m >= slack_m + got.slide_m - 1e-6,
            "rope got shorter: {got:?}"
        );
    }
}

#[test]
fn halving_the_step_hardly_changes_the_slide() {
    let mut worst: f64 = 0.0;
    for fall in grid().iter().flat_map(falls) {
        let usual = fall.run().expect("inside bounds");
        let half = fall
            .run_in_steps(LONGEST_STEP_S / 2.0)
            .expect("inside bounds");
        assert_eq!(usual.held, half.held, "{fall:?}");
        if usual.held && usual.slide_m > 0.05 {
            worst = worst.max((usual.slide_m - half.slide_m).abs() / usual.slide_m);
        }
    }
    println!("worst change of a slide: {:.3} %", 100.0 * worst);
    assert!(worst < 0.005, "{worst}");
}

#[test]
fn turning_the_rope_round_turns_the_answer_round() {
    let mut there = team(Snow::Settled, 3);
    there.masses_kg = vec![95.0, 60.0, 75.0];
    there.knots = Some(THREE);
    let mut back = there.clone();
    back.masses_kg.reverse();
    let (there, back) = (answer(&there), answer(&back));
    assert_eq!(there.verdict.rank(), back.verdict.rank(), "verdict");
    for (a, b) in [(0, 2), (2, 0)] {
        let (a, b) = (&there.fallers[a], &back.fallers[b]);
        close("end person's slide", a.slide_m.1, b.slide_m.1, 1e-9);
    }
}

#[test]
fn a_middle_person_between_two_rocks_goes_as_deep_as_energy_allows() {
    // λ = 1, holders that never move: m·g·z = Σ EA·(stretch)²/2L, and both ropes alike, solved by halving.
    for slack_m in [0.0, 0.6] {
        let mut fall = plain_fall(1.0, 3.0, 3.0, 0.0, slack_m, 1);
        fall.sides[0].holders_kg = vec![250.0];
        fall.sides[0].beyond_m = 4.0;
        fall.sides.push(fall.sides[0].clone());
        let rope_m = 12.0 + slack_m;
        let left_j = |z: f64| {
            let over_m = (z.hypot(4.0) - 4.0 - slack_m).max(0.0);
            80.0 * GRAVITY_M_S2 * z - fall.modulus_n * over_m * over_m / rope_m
        };
        let (mut above_m, mut below_m) = (1.0, 50.0);
        for _ in 0..60 {
            let middle_m = 0.5 * (above_m + below_m);
            if left_j(middle_m) > 0.0 {
                above_m = middle_m;
            } else {
                below_m = middle_m;
            }
        }
        let got = fall.run().expect("inside bounds");
        close("deepest point", got.drop_m, above_m, 1e-3 * above_m);
        assert!(got.held, "rocks hold");
    }
}

#[test]
fn heavier_people_beyond_the_gap_make_a_fall_less_deep() {
    let mut fall = plain_fall(1.4, 0.3, 0.7, 0.8, 0.5, 2);
    fall.sides[0].beyond_m = 3.0;
    fall.sides.push(fall.sides[0].clone());
    let both = fall.run().expect("inside bounds");
    fall.sides[1].holders_kg = vec![160.0, 160.0];
    let heavier = fall.run().expect("inside bounds");
    assert!(heavier.slide_m > 0.0 && both.slide_m > 0.0, "they slide");
    assert!(heavier.drop_m < both.drop_m, "more mass beyond, less deep");
}

#[test]
fn a_fall_without_a_side_or_with_nonsense_is_refused() {
    let mut fall = plain_fall(1.4, 0.3, 0.7, 0.8, 0.5, 2);
    fall.rope_damping = 2.0;
    assert_eq!(
        fall.run().map_err(|e| e.to_string()),
        Err("share 2 is outside 0 to 1".to_owned()),
        "damping"
    );
    fall.rope_damping = 0.1;
    fall.sides[0].holders_kg.clear();
    assert_eq!(
        fall.run().map_err(|e| e.to_string()),
        Err("a side without a holder holds nobody".to_owned()),
        "holders"
    );
    fall.sides.clear();
    let want = "a faller has one or two sides to hold him, not 0";
    assert_eq!(
        fall.run().map_err(|e| e.to_string()),
        Err(want.to_owned()),
        "sides"
    );
}

/// Any team on any snow, over any gap that leaves a holder room.
fn any_team() -> impl Strategy<Value = Team> {
    let masses = proptest::collection::vec(50.0..130.0_f64, 2..=5);
    let knots = proptest::option::of((1..=3_u32, 2.0..4.0_f64, 1.0..2.0_f64));
    let snow = prop::sample::select(Snow::ALL.to_vec());
    (
        masses,
        7.0..30.0_f64,
        0.0..1.2_f64,
        knots,
        snow,
        any::<bool>(),
    )
        .prop_map(|(masses_kg, spacing_m, share, knots, snow, on_skis)| Team {
            masses_kg,
            spacing_m,
            gap_m: share * spacing_m,
            knots: knots.map(|(count_per_side, first_m, step_m)| BrakeKnots {
                count_per_side,
                first_m,
                step_m,
            }),
            snow,
            on_skis,
            down_deg: [0.0; 2],
            rope_ea_n: usual_n(),
        })
}

/// Whether a fall is held in all cases, in the central one, in any.
type Flags = [bool; 3];

fn flags_of(on: HeldOn) -> Flags {
    [on.in_all, on.in_centre, !on.in_none]
}

fn flags_of_faller(faller: &Faller) -> Flags {
    let (all, none) = (HoldingAnswer::HeldInAll, HoldingAnswer::HeldInNone);
    [
        faller.verdict == all,
        faller.held_in_centre,
        faller.verdict != none,
    ]
}

/// In a corner or two somebody whose holder stands over the same gap is held on steeper ground and not on gentler: an answer
/// that differs is owed to one already given of the same person, on steeper ground where it is the milder, on gentler where it
/// is the worse. The second of them is the team as a whole, which goes by the steepness alone.
fn owed(known: Flags, asked: &[Flags], deg: i8, before: &[(i8, Vec<Flags>)]) -> bool {
    let last = asked.len() - 1;
    // On a climb the line rises away from whoever holds the first person, on a descent from whoever holds the last.
    let toward_lip = |person: usize, deg: i8| match person {
        0 => deg,
        _ if person == last => -deg,
        _ => deg.abs(),
    };
    (0..3).all(|flag| {
        let all_held = asked[1][flag];
        let gave = |person: usize| {
            let mut earlier = before
                .iter()
                .filter(|(_, flags)| flags[person][flag] == known[flag]);
            let differs = asked[person][flag] != known[flag];
            differs
                && earlier.any(|&(at, _)| {
                    (toward_lip(person, at) > toward_lip(person, deg)) == known[flag]
                })
        };
        known[flag] == all_held || (0..=last).any(gave)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn what_is_known_of_one_slope_answers_for_others_as_asking_each_would(
        team in any_team(), from in 0..4_i8, turned in any::<bool>(), climbs in any::<bool>(),
    ) {
        let assumed = assumed();
        let way = if climbs { -1 } else { 1 };
        let mut slopes: Vec<i8> = (from..=44).step_by(4).map(|deg| way * deg).collect();
        if turned {
            slopes.reverse();
        }
        let mut limits = HoldLimits::default();
        let mut before: Vec<(i8, Vec<Flags>)> = Vec::new();
        for deg in slopes {
            let known = limits.at(&team, [deg; 2], &assumed).expect("inside bounds");
            let asked = HoldLimits::default().at(&team, [deg; 2], &assumed).expect("inside bounds");
            let each = Team { down_deg: [f64::from(deg); 2], ..team.clone() };
            let whole = each.verdicts(&assumed, &mut Followed::default()).expect("inside bounds");
            let mut persons: Vec<Flags> = whole.fallers.iter().map(flags_of_faller).collect();
            // Who is held with everything adverse only is told as one of the team.
            persons.insert(1, flags_of(asked));
            prop_assert!(owed(flags_of(known), &persons, deg, &before), "{}°: {:?} {:?}", deg, known, persons);
            before.push((deg, persons));
            let in_centre = whole.fallers.iter().all(|faller| faller.held_in_centre);
            prop_assert_eq!(asked.in_none, whole.verdict == HoldingAnswer::HeldInNone, "{}°", deg);
            prop_assert_eq!(asked.in_all, whole.verdict == HoldingAnswer::HeldInAll, "{}°", deg);
            prop_assert_eq!(asked.in_centre, in_centre, "{}°", deg);
        }
    }

    /// Over many widths as over each of them by itself: what is left out is never the widest that is lost.
    #[test]
    fn gaps_that_are_not_asked_would_answer_alike(team in any_team(), deg in -30..30_i8, half in any::<bool>()) {
        let assumed = assumed();
        let widest = team.gap_m.floor();
        let down = std::iter::successors(Some(widest), |m| Some(m - 1.0).filter(|m| *m >= 0.0));
        let greatest_m = widest + if half { 0.5 } else { 1.0 };
        let gaps_m: Vec<f64> = std::iter::once(greatest_m).chain(down).collect();
        let followed = &mut Followed::default();
        let sparse = HoldLimits::default().over(&team, &gaps_m, [deg; 2], &assumed, followed).expect("inside bounds");
        let mut each = LostOver::default();
        for &gap_m in &gaps_m {
            let one = HoldLimits::default().over(&team, &[gap_m], [deg; 2], &assumed, followed).expect("inside bounds");
            each = each.or(one);
        }
        prop_assert_eq!(sparse.held_on(), each.held_on());
        prop_assert_eq!(sparse.worst_gap_m(), each.worst_gap_m());
    }
}

/// In the middle of a rope one side holds uphill and the other downhill: what is known of one slope says nothing of another.
#[test]
fn a_fall_in_the_middle_is_answered_alike_whatever_slope_was_asked_before() {
    let team = Team {
        masses_kg: vec![45.0, 130.0, 60.0],
        spacing_m: 13.0,
        gap_m: 10.0,
        knots: Some(BrakeKnots {
            count_per_side: 3,
            first_m: 3.0,
            step_m: 2.0,
        }),
        snow: Snow::Firm,
        on_skis: false,
        down_deg: [0.0; 2],
        rope_ea_n: usual_n(),
    };
    let assumed = assumed();
    let alone = |deg: i8| {
        HoldLimits::default()
            .at(&team, [deg; 2], &assumed)
            .expect("inside bounds")
    };
    let differ = (-12..=12).filter(|deg| alone(*deg).in_none && !alone(deg - 4).in_none);
    assert!(
        differ.count() > 0,
        "or there would be nothing to tell apart"
    );
    for deg in -12..=12_i8 {
        let mut limits = HoldLimits::default();
        for first in [deg - 4, deg + 4] {
            limits
                .at(&team, [first; 2], &assumed)
                .expect("inside bounds");
        }
        let known = limits.at(&team, [deg; 2], &assumed).expect("inside bounds");
        assert_eq!(known.in_none, alone(deg).in_none, "{deg}°");
    }
}
