//! Falls and hauls in the plan: who is weakest, what rope is free, what can be pulled.

use schrund::{
    physics::{assumed::Snow, haul::Can},
    plan::{
        Plan,
        fall::{Held, HeldRun},
        finding::{At, Finding},
        why::KnotsWhy,
    },
    practice::Origin,
    say::{
        finding::says,
        setup::{held, knots_why},
        voice::Voice,
    },
};

use crate::fixture::{
    planned::{codes, roped, setup},
    trip::{BARE, SNOW, Trip},
};

#[test]
fn a_pair_on_bare_ice_is_held_in_none_and_on_flat_ice_that_is_no_alarm() {
    let plan = Trip::straight(&[BARE])
        .party(&[80.0, 80.0])
        .ropes(&[70.0])
        .plan();
    let arrest = setup(&plan).arrest.as_ref().expect("an answer");
    assert_eq!((arrest.verdict, arrest.snow), (Held::None, Snow::Ice));
    assert_eq!(
        held(arrest, Voice::default()).to_string(),
        "not held in the model, not even with the most favourable assumptions"
    );
    assert!(
        !codes(&roped(&plan).findings).contains(&"fall-held-in-none"),
        "{:?}",
        codes(&roped(&plan).findings)
    );
}

#[test]
fn the_heavy_one_is_the_fall_to_fear_and_more_snow_underfoot_holds_better() {
    let heavy = Trip::straight(&[SNOW])
        .party(&[70.0, 120.0])
        .ropes(&[70.0])
        .plan();
    assert_eq!(
        setup(&heavy).arrest.as_ref().unwrap().falls,
        2,
        "the heavy one"
    );
    let five = Trip::straight(&[SNOW]).party(&[80.0; 5]).ropes(&[70.0]);
    let held = |snow: &str| {
        setup(&five.clone().rules(&format!("snow = \"{snow}\"")).plan())
            .arrest
            .clone()
            .unwrap()
    };
    let verdicts: Vec<Held> = ["soft", "settled", "firm", "refrozen", "ice"]
        .iter()
        .map(|s| held(s).verdict)
        .collect();
    assert!(verdicts.is_sorted(), "from soft snow to ice: {verdicts:?}");
    assert_ne!(verdicts[0], verdicts[4], "snow makes no difference at all");
}

#[test]
fn ground_falling_towards_the_lip_is_told_to_the_model() {
    let flat = Trip::straight(&[SNOW]).party(&[80.0; 2]).ropes(&[70.0]);
    let slope = |share: f64| {
        setup(&flat.clone().falling(share).plan())
            .arrest
            .clone()
            .unwrap()
    };
    let (steep, climbing) = (slope(0.3), slope(-0.3));
    for (what, of) in [
        ("the first on the way down", &steep),
        ("the last on the way up", &climbing),
    ] {
        let off_deg = of.slope_deg - 0.3_f64.atan().to_degrees();
        assert!(
            (0.0..1.0).contains(&off_deg),
            "{what} is pulled downhill: {of:?}"
        );
    }
    assert!(
        steep.slide_m[0] > slope(0.0).slide_m[0],
        "a steeper slope slides further: {steep:?}"
    );
}

/// A pair on settled snow.
fn pair() -> Trip {
    let zone = "{\"gap_m\":5,\"snow_depth_m\":0.5}";
    let trip = Trip::straight(&[zone]).party(&[80.0; 2]).ropes(&[70.0]);
    trip.rules("snow = \"settled\"")
}

#[test]
fn who_breaks_through_uphill_of_the_holder_pulls_uphill() {
    let arrest = |share: f64| setup(&pair().falling(share).plan()).arrest.clone().unwrap();
    let (climb, flat, descent) = (arrest(-0.5), arrest(0.0), arrest(0.5));
    assert!(climb.everybody[0] < flat.everybody[0], "{climb:?}");
    assert!(flat.everybody[0] < descent.everybody[0], "{descent:?}");
    assert_eq!(
        (descent.falls, climb.falls),
        (1, 2),
        "whose holder stands above the gap"
    );
    // Turned round the same people fall the same way: the line decides, not their number.
    assert_eq!(climb.everybody[1], descent.everybody[0]);
    assert_eq!(climb.everybody[0], descent.everybody[1]);
    assert_eq!(
        climb.verdict, descent.verdict,
        "the worst fall is no milder for it"
    );
}

#[test]
fn on_a_line_that_goes_up_and_down_everybody_is_told_at_their_worst() {
    let hump = |_: f64, north: f64| 3000.0 - 0.5 * (north - 500.0).abs();
    let plan = pair().heights(hump).plan();
    let both = setup(&plan).arrest.clone().unwrap();
    assert_eq!(
        both.everybody,
        [Held::None; 2],
        "the first on the way down, the last on the way up"
    );
    let lost = |run: &&HeldRun| run.held == Held::None;
    let lost: Vec<&HeldRun> = both.runs.iter().filter(lost).collect();
    let [up, down] = lost.as_slice() else {
        panic!("{:?}", both.runs);
    };
    assert!(
        up.down_deg < Some(-20.0) && down.down_deg > Some(20.0),
        "{lost:?}"
    );
    assert_eq!((up.falls, down.falls), (Some(2), Some(1)));
    let findings = &roped(&plan).findings;
    let told = findings
        .iter()
        .find(|f| f.code() == "fall-held-in-none")
        .unwrap();
    let says = says(told, Voice::default()).to_string();
    assert!(
        says.contains("the line climbing at") || says.contains("the line descending at"),
        "{says}"
    );
}

#[test]
fn advice_on_the_order_is_given_once_a_team_and_never_to_equals() {
    let advised = |masses: &[f64]| {
        let plan = Trip::straight(&[SNOW, "{\"gap_m\":9,\"snow_depth_m\":2}"])
            .party(masses)
            .ropes(&[60.0])
            .plan();
        let setups = plan.legs.iter().flat_map(|l| &l.teams);
        setups
            .filter(|t| t.arrest.as_ref().is_some_and(|a| a.order.is_some()))
            .count()
    };
    assert_eq!(advised(&[80.0; 3]), 0, "equal people");
    assert_eq!(advised(&[100.0, 60.0, 75.0]), 1, "one team, its worst leg");
}

#[test]
fn the_haul_table_knows_the_rope_the_knots_and_the_people() {
    for (people, zone) in [(2, SNOW), (3, SNOW), (5, SNOW), (2, BARE)] {
        let plan = Trip::straight(&[zone])
            .party(&vec![80.0; people])
            .ropes(&[80.0])
            .plan();
        let setup = setup(&plan);
        let table = setup.haul.as_ref().expect("a table");
        assert_eq!(table.systems.len(), 6, "every system");
        assert_eq!(table.needs_own_strand, setup.knots.count > 0);
        assert!(
            (table.anchor_to_lip_m + table.lip_to_person_m - setup.spacing_m).abs() < 1e-9,
            "a taut rope"
        );
        let pulls: Vec<f64> = table.systems.iter().map(|s| s.pull_kn).collect();
        assert!(
            pulls.is_sorted_by(|a, b| a >= b),
            "stronger systems pull less: {pulls:?}"
        );
    }
}

/// The haul was that of the fall held worst, though somebody else was harder to haul: of five the one in the middle leaves two
/// to pull on either side.
#[test]
fn the_haul_that_is_told_is_the_hardest() {
    let told = |masses_kg: &[f64], share: f64| {
        let trip = Trip::straight(&[SNOW]).party(masses_kg);
        let plan = trip.ropes(&[80.0]).falling(share).plan();
        let team = setup(&plan);
        let falls = team.arrest.as_ref().expect("an answer").falls;
        let haul = team.haul.as_ref().expect("an answer");
        (falls, haul.person, haul.haulers)
    };
    for share in [-0.2, 0.2] {
        let (falls, person, haulers) = told(&[80.0; 5], share);
        assert_ne!(falls, 3, "on a slope somebody else is held worst");
        assert_eq!((person, haulers), (3, 2));
    }
    let (_, person, _) = told(&[60.0, 60.0, 60.0, 130.0, 60.0], 0.2);
    assert_eq!(person, 4, "three pull twice the weight, two the half of it");
}

#[test]
fn one_person_cannot_haul_round_karabiners_and_the_plan_says_so() {
    let plan = Trip::straight(&[SNOW])
        .party(&[80.0, 80.0])
        .ropes(&[80.0])
        .plan();
    assert!(
        codes(&roped(&plan).findings).contains(&"haul-beyond-those-left"),
        "{:?}",
        codes(&roped(&plan).findings)
    );
    let strong = Trip::straight(&[BARE])
        .party(&[80.0, 80.0])
        .ropes(&[80.0])
        .rules("[assume.pull]\nweak_n = 2000\nstrong_n = 2000");
    let plan = strong.plan();
    let table = setup(&plan).haul.as_ref().unwrap();
    assert!(table.systems.iter().all(|s| s.can == Can::Yes), "{table:?}");
    assert!(
        !codes(&roped(&plan).findings).contains(&"haul-beyond-those-left"),
        "strong enough"
    );
}

#[test]
fn a_coil_that_is_a_burden_is_said() {
    let plan = Trip::straight(&["{\"gap_m\":18,\"snow_depth_m\":2}"])
        .party(&[80.0, 80.0])
        .ropes(&[150.0])
        .plan();
    let setup = setup(&plan);
    assert!(setup.coil_m > 30.0, "1.5 × 23 m");
    assert!(
        (setup.coil_kg - 0.049 * setup.coil_m).abs() < 1e-9,
        "9 mm, 49 g/m (makers' figures)"
    );
    assert!(
        codes(&roped(&plan).findings).contains(&"coil-is-a-burden"),
        "{:?}",
        codes(&roped(&plan).findings)
    );
    let light = Trip::straight(&[SNOW])
        .party(&[80.0, 80.0])
        .ropes(&[80.0])
        .plan();
    assert!(
        !codes(&roped(&light).findings).contains(&"coil-is-a-burden"),
        "1.5 × 14.5 m are usual"
    );
}

#[test]
fn a_rope_beyond_the_model_gets_no_answer_and_the_plan_stands() {
    let steel = Trip::straight(&[SNOW])
        .party(&[80.0; 3])
        .ropes(&[60.0])
        .rules("[assume]\nrope.peak_force_n = 90000");
    let plan = steel.plan();
    assert!(
        codes(&roped(&plan).findings).contains(&"model-has-no-answer"),
        "{:?}",
        codes(&roped(&plan).findings)
    );
    assert!(
        setup(&plan).arrest.is_none() && setup(&plan).haul.is_none(),
        "no guess instead"
    );
}

#[test]
fn the_leg_that_decides_the_rope_is_named() {
    let plan = Trip::straight(&[SNOW, "{\"gap_m\":22,\"snow_depth_m\":2}", SNOW])
        .party(&[80.0; 3])
        .plan();
    let carry = &plan.carry[0];
    assert_eq!((carry.team, &carry.legs[..]), (1, &[4][..]));
    let needed: Vec<f64> = plan
        .legs
        .iter()
        .flat_map(|l| &l.teams)
        .map(|t| t.ledger.total_m)
        .collect();
    assert!(
        (carry.needed_m - needed.iter().copied().fold(0.0, f64::max)).abs() < 1e-9,
        "{needed:?}"
    );
}

#[test]
fn ground_without_heights_is_said_to_be_taken_as_flat_and_only_then() {
    let made = Trip::straight(&[SNOW, SNOW])
        .party(&[80.0; 3])
        .ropes(&[70.0]);
    let of_code = |f: &&Finding| f.code() == "slope-unknown";
    let told = |plan: &Plan| -> Vec<At> {
        let unknown = plan.findings.iter().filter(of_code);
        unknown.map(|f| f.at.clone()).collect()
    };
    let plan = made.plan();
    let roped = plan.legs.iter().filter(|l| l.roped);
    let legs = roped.map(|l| l.leg).collect();
    assert_eq!(told(&plan), [At::Legs { legs }]);
    let why = |plan: &Plan| knots_why(&setup(plan).knots.why, Voice::default()).to_string();
    assert!(why(&plan).contains("no heights known"), "{}", why(&plan));
    let known = made.falling(0.02).plan();
    assert_eq!(told(&known), [], "the slope is known");
    assert!(!why(&known).contains("no heights known"), "{}", why(&known));
}

#[test]
fn without_a_figure_for_a_karabiner_no_haul_is_answered() {
    let mut made = Trip::straight(&[SNOW]).party(&[80.0; 3]).ropes(&[70.0]);
    assert!(setup(&made.plan()).haul.is_some());
    made.laid
        .rules
        .nature
        .gear
        .turn
        .remove("karabiner")
        .expect("a figure");
    let plan = made.plan();
    assert_eq!(setup(&plan).haul, None);
    assert!(
        codes(&roped(&plan).findings).contains(&"model-has-no-answer"),
        "{:?}",
        codes(&roped(&plan).findings)
    );
}

#[test]
fn the_reason_against_knots_is_the_one_that_holds() {
    let why = |people: usize, zone: &str, words: &str| {
        let plan = Trip::straight(&[zone])
            .party(&vec![80.0; people])
            .ropes(&[70.0])
            .rules(words)
            .plan();
        setup(&plan).knots.why.clone()
    };
    for people in 2..=5 {
        let bare = why(people, BARE, "");
        assert_eq!(bare, KnotsWhy::WouldNotBite, "{people}");
        let none = why(people, SNOW, "knots = \"never\"");
        let by = Origin::Trip;
        assert_eq!(none, KnotsWhy::Unwanted { by }, "{people}");
        let says = knots_why(&none, Voice::default()).to_string();
        assert_eq!(says, "the leader (trip file) wants none", "{people}");
    }
    assert_eq!(why(4, SNOW, ""), KnotsWhy::Many);
    let says = |why: &KnotsWhy| knots_why(why, Voice::default()).to_string();
    assert!(says(&KnotsWhy::WouldNotBite).contains("they would not bite"));
    assert!(says(&KnotsWhy::Many).contains("not usual with four or more"));
}
