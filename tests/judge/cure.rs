//! The cheapest cure right under a leg whose rope is too short.

use schrund::{
    plan::{
        Plan,
        change::Change,
        cure::{CureCost, RopeCure},
        fact::Fact,
        finding::Finding,
        leg::Verdict,
    },
    practice::{Rules, set::Source},
    read::trip::Laid,
    say::{finding, voice::Voice},
};

use crate::fixture::{
    planned::{findings, roped},
    trip::{SNOW, Trip},
};

fn cure(trip: &Trip) -> Option<RopeCure> {
    let plan = trip.plan();
    let lacks = findings(&plan)
        .into_iter()
        .find_map(|found| match found.fact()? {
            Fact::NoRope { cure, .. } => Some(cure.clone()),
            _ => None,
        });
    lacks.expect("the rope is too short")
}

/// What is said to do about it.
fn hint(trip: &Trip) -> String {
    let plan = trip.plan();
    let lacks = findings(&plan)
        .into_iter()
        .find(|f| f.code() == "no-rope-fits");
    let hint = finding::hint(lacks.expect("the rope is too short"), Voice::default());
    hint.expect("something can be done").to_string()
}

#[test]
fn a_spare_rope_is_given_once() {
    // Two teams of three at 13.5 m need 43.5 m each; 35 m and 12 m joined are enough, and there is one of 12 m.
    let zone = r#"{"gap_m":15,"snow_depth_m":2}"#;
    let trip = |ropes: &[f64]| {
        Trip::straight(&[zone, zone])
            .party(&[80.0; 6])
            .ropes(ropes)
            .plan()
    };
    let joined = |plan: &Plan| -> Vec<(usize, usize)> {
        let cure = |found: &Finding| match found.fact()? {
            Fact::NoRope { cure, .. } => {
                let cure = cure.clone()?;
                Some((cure.rope.rope, cure.joined_to?.rope))
            }
            _ => None,
        };
        findings(plan).filter_map(cure).collect()
    };
    let once = joined(&trip(&[35.0, 35.0, 12.0]));
    assert!(
        !once.is_empty() && once.iter().all(|pair| *pair == once[0]),
        "one team alone: {once:?}"
    );
    let mut twice = joined(&trip(&[35.0, 35.0, 12.0, 12.0]));
    twice.sort_unstable();
    twice.dedup();
    assert_eq!(twice.len(), 2, "{twice:?}");
    assert_ne!(twice[0].1, twice[1].1);
}

fn four(gap_m: f64, ropes: &[f64]) -> Trip {
    let zone = format!("{{\"gap_m\":{gap_m},\"snow_depth_m\":2}}");
    let mut trip = Trip::straight(&[&zone]).party(&[80.0; 4]).ropes(ropes);
    trip.laid = Laid::of(Rules::with_practice(&Source::Named("constant")).unwrap());
    trip
}

/// Trade rules, section 10 [derived]: four people, habit 13.7 m walked as 14, gap 10 m, a rope of 40 m. Four at 12 m take
/// 3 × 12 + 4 m of tie-ins, and 0.8 of 15 m are 12 m.
#[test]
fn walking_closer_is_the_first_cure() {
    let trip = four(10.0, &[40.0]);
    let cure = cure(&trip).expect("one holds");
    assert_eq!(cure.changes, [Change::Closer { spacing_m: 12.0 }]);
    assert!((cure.spacing_m - 12.0).abs() < 1e-9 && (cure.planned_spacing_m - 14.0).abs() < 1e-9);
    assert!((cure.needed_m - 40.0).abs() < 1e-9, "{cure:?}");
    assert!(
        (cure.as_tied_gap_m.unwrap() - 15.0).abs() < 1e-6,
        "{cure:?}"
    );
    assert!(cure.verdict < Verdict::Outside, "{cure:?}");
    assert_eq!(
        hint(&trip),
        "walk 12 m apart instead of 14 m: the 40 m rope is long enough, spaced for gaps up to 15 m; but drop loops for person 2, person 3 end 2.5 m short of the lip"
    );
    // On 46 m four can walk 14 m apart, over gaps of 17.5 m, of which 14 m are 0.8; on 40 m nobody is tied so.
    let as_tied = |trip: &Trip| {
        let plan = trip.plan();
        let setup = &roped(&plan).teams[0];
        (setup.as_tied_gap_m, setup.as_tied_along_m)
    };
    assert_eq!(as_tied(&trip), (None, None));
    let (across_m, along_m) = as_tied(&four(10.0, &[46.0]));
    assert!(along_m.is_some_and(|m| (m - 17.5).abs() < 1e-6));
    assert_eq!(across_m, along_m, "crossed squarely");
}

#[test]
fn nobody_walks_closer_than_the_gap_asks_for() {
    // 0.8 × 17 m is 13.6 m, so 14 m is the least there is.
    let trip = four(17.0, &[40.0]);
    let closer = |change: &Change| matches!(change, Change::Closer { .. });
    assert!(cure(&trip).is_none_or(|cure| !cure.changes.iter().any(closer)));
    // Where nobody gave the gaps the set's spacing stays.
    let unknown = four(4.0, &[40.0]).inventory((-800.0, 300.0), (800.0, 700.0));
    assert!(cure(&unknown).is_none_or(|cure| !cure.changes.iter().any(closer)));
}

/// Walking closer than the gap is long puts two over it, and that stands in the same sentence.
#[test]
fn a_closer_walk_tells_what_it_costs() {
    let trip = Trip::straight(&[r#"{"gap_m":12.9,"snow_depth_m":2}"#]).ropes(&[40.0]);
    let told = hint(&trip);
    assert!(
        told.starts_with("walk 12 m apart instead of 13 m"),
        "{told}"
    );
    assert!(
        told.contains("; but 2 people over one gap at once, 1 left to hold"),
        "{told}"
    );
}

/// A cure told for several places holds at each of them, and what is done otherwise is told apart.
#[test]
fn one_cure_for_two_places_is_the_lesser_one() {
    let wide = cure(&four(10.0, &[40.0])).expect("one holds");
    let narrow = RopeCure {
        as_tied_gap_m: Some(12.5),
        verdict: Verdict::Look,
        needed_m: 39.0,
        ..wide.clone()
    };
    for both in [wide.for_both(&narrow), narrow.for_both(&wide)] {
        let both = both.expect("the same is done");
        assert_eq!(
            (both.as_tied_gap_m, both.gaps_differ, both.verdict),
            (Some(12.5), true, Verdict::Look)
        );
        assert!(
            (both.needed_m - wide.needed_m).abs() < 1e-9,
            "what either needs"
        );
    }
    let unknown = RopeCure {
        as_tied_gap_m: None,
        ..wide.clone()
    };
    assert_eq!(
        wide.for_both(&unknown),
        None,
        "no width is claimed where nobody gave one"
    );
    let closer = RopeCure {
        spacing_m: 11.0,
        ..wide.clone()
    };
    assert_eq!(wide.for_both(&closer), None, "something else is done");
}

#[test]
fn two_ropes_are_joined_where_nothing_else_helps() {
    let trip = four(20.0, &[40.0, 30.0]);
    let cure = cure(&trip).expect("both together hold it");
    // 40 and 30 m less 0.6 m for the bend (our judgement).
    let [
        Change::JoinedRopes {
            ref ropes,
            length_m,
        },
    ] = cure.changes[..]
    else {
        panic!("{cure:?}");
    };
    let numbers = ropes.each_ref().map(|rope| rope.rope);
    assert_eq!(numbers, [1, 2]);
    assert!((length_m - 69.4).abs() < 1e-9, "{length_m}");
    let hint = hint(&trip);
    assert!(
        hint.ends_with("together they are long enough, spaced for gaps up to 20 m"),
        "{hint}"
    );
}

#[test]
fn no_haul_on_the_loaded_strand_runs_over_a_bend() {
    let tied = |joined: bool| {
        let trip = four(10.0, &[]).rules("snow = \"firm\"\n");
        let mut trip = trip.ropes(&[60.0]);
        trip.ropes[0].joined = joined;
        trip.plan()
    };
    let (single, joined) = (tied(false), tied(true));
    let own = |plan: &schrund::plan::Plan| {
        plan.legs[1].teams[0]
            .haul
            .as_ref()
            .map(|h| h.needs_own_strand)
    };
    assert_eq!((own(&single), own(&joined)), (Some(false), Some(true)));
    let code = "bend-blocks-the-loaded-strand";
    let says = |plan: &schrund::plan::Plan| findings(plan).any(|f| f.code() == code);
    assert!(says(&joined) && !says(&single));
}

/// The options do not show what would make a rope fit where nothing does.
#[test]
fn where_no_cure_is_found_none_is_promised() {
    let zone = r#"{"gap_m":30,"snow_depth_m":2}"#;
    let trip = Trip::straight(&[zone]).party(&[80.0; 3]).ropes(&[20.0]);
    assert_eq!(cure(&trip), None);
    let hint = hint(&trip);
    assert!(!hint.contains("would make it fit"), "{hint}");
    assert!(hint.contains("weigh other ropes"), "{hint}");
}

/// Two teams of four at 14 m need 46 m each, and no sling can be longer. One carries them; the other's 40 m and the rope of 12 m
/// that is left over hold it too.
#[test]
fn a_team_whose_rope_just_holds_takes_no_rope_that_another_needs() {
    let trip = four(17.0, &[46.0, 40.0, 12.0]).party(&[80.0; 8]);
    let cure = cure(&trip.rules("[assume]\nsling_m = 2.4")).expect("both together hold it");
    assert_eq!(cure.joined_to.map(|rope| rope.rope), Some(3));
}

/// A pair at 15 m that asks for coils of 15 m takes 54.2 m, with butterflies a little less. Its knots oblige to 22.5 m in each,
/// for which no rope of 54 m has room.
#[test]
fn what_leaves_no_room_for_the_reserve_is_no_cure() {
    let pair = |rope_m: f64| {
        let zone = r#"{"gap_m":10,"snow_depth_m":2}"#;
        let trip = Trip::straight(&[zone]).party(&[80.0; 2]);
        trip.ropes(&[rope_m]).rules("[assume]\nreach_factor = 1")
    };
    assert_eq!(cure(&pair(54.0)), None);
    let obliged = pair(54.0).rules("[assume]\nobliged_reach_factor = 1");
    assert!(
        cure(&obliged).is_some(),
        "where they oblige to no more it is one"
    );
}

/// Who walks closer holds a fall with less rope between: where that makes of a fall that is held one that may not be, it is a cost and
/// is belayed, as a plan says that is tied so. Else no belay is counted where a cure is named.
#[test]
fn a_fall_that_a_cure_holds_less_well_is_a_cost_and_belayed() {
    const LESS: &str = "fall-not-held-in-the-middle-case";
    let plan = |falling: f64, rope_m: f64, rules: &str| {
        let trip = Trip::straight(&[SNOW]).people(4).falling(falling);
        trip.ropes(&[rope_m]).rules(rules).plan()
    };
    let less = |plan: &Plan| findings(plan).any(|found| found.code() == LESS);
    let mut met = [0, 0];
    for falling in (0..20).map(|step| f64::from(step) * 0.02) {
        let long_enough = plan(falling, 60.0, "");
        let short = plan(falling, 30.0, "");
        let cure = findings(&short).find_map(|found| match found.fact()? {
            Fact::NoRope { cure, .. } => cure.clone(),
            _ => None,
        });
        let Some(cure) = cure.filter(|_| !less(&long_enough)) else {
            continue;
        };
        let tied = format!("[assume]\nspacing_4_m = {:?}", cure.spacing_m);
        let costs = cure.costs.contains(&CureCost::FallLessHeld);
        assert_eq!(
            costs,
            less(&plan(falling, 30.0, &tied)),
            "{falling}: {cure:?}"
        );
        assert_eq!(costs, roped(&short).belays.is_some(), "{falling}: {cure:?}");
        met[usize::from(costs)] += 1;
    }
    assert!(met[0] > 0 && met[1] > 0, "both are met: {met:?}");
}
