//! Keeping a set-up over several legs: the cheapest cut against every cut, and what a plan makes of it.

use std::ops::Range;

use proptest::{prelude::*, test_runner::Config};
use schrund::whole::runs;

use crate::fixture::trip::Trip;

/// Every way to cut, by brute force: a bit for each place between two legs.
fn least_by_trying_all(
    legs: usize,
    cut: f64,
    cost: &dyn Fn(Range<usize>) -> Option<f64>,
) -> Option<f64> {
    let mut least: Option<f64> = None;
    for cuts in 0..1_u32 << (legs - 1) {
        let mut starts: Vec<usize> = (1..legs).filter(|i| cuts >> (i - 1) & 1 == 1).collect();
        starts.insert(0, 0);
        let ends = starts.iter().copied().skip(1).chain([legs]);
        let costs: Option<Vec<f64>> = starts.iter().zip(ends).map(|(&a, b)| cost(a..b)).collect();
        let Some(costs) = costs else { continue };
        let total = costs.iter().sum::<f64>() + cut * f64::from(cuts.count_ones());
        least = Some(least.map_or(total, |l: f64| l.min(total)));
    }
    least
}

proptest! {
    #![proptest_config(Config { cases: 500, failure_persistence: None, ..Config::default() })]
    #[test]
    fn the_cheapest_cut_is_the_least_of_all_cuts(
        more in prop::collection::vec(0.0..4.0_f64, 64),
        possible in prop::collection::vec(prop::bool::weighted(0.9), 64),
        longest in 1_usize..=8, legs in 1_usize..=8, cut in 0.0..10.0_f64,
    ) {
        // A leg more at the front never makes a run cheaper.
        let more = &more;
        let growing = |end: usize| {
            let starts = (0..end).rev().take(longest);
            let mut costs = starts.scan(0.0, move |sum, start| {
                *sum += more[start * 8 + end - 1];
                Some(*sum)
            });
            move |most: f64| costs.next().filter(|cost| *cost <= most)
        };
        let possible = |r: Range<usize>| possible[r.start * 8 + r.end - 1];
        let cost = |r: Range<usize>| {
            let mut growing = growing(r.end);
            let told = (0..r.len()).map(|_| growing(f64::INFINITY)).last().flatten();
            told.filter(|_| possible(r))
        };
        let want = least_by_trying_all(legs, cut, &cost);
        match (runs::cheapest(legs, cut, growing, possible), want) {
            (Some((runs, got)), Some(want)) => {
                prop_assert!((got - want).abs() < 1e-6, "{got}, all tried {want}");
                let cover: Vec<usize> = runs.into_iter().flatten().collect();
                prop_assert_eq!(cover, (0..legs).collect::<Vec<_>>());
            }
            (got, want) => prop_assert!(got.is_none() && want.is_none(), "{got:?}, all tried {want:?}"),
        }
    }
}

/// Zones whose gaps ask four people for 11, 12 and 11 m between neighbours.
const UP_AND_DOWN: [&str; 3] = [
    "{\"gap_m\":3,\"snow_depth_m\":2}",
    "{\"gap_m\":15,\"snow_depth_m\":2}",
    "{\"gap_m\":3,\"snow_depth_m\":2}",
];

#[test]
fn a_little_wider_all_day_beats_two_changes() {
    let plan = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0])
        .plan();
    let keep = plan.keep_setup.expect("one set-up saves two changes");
    assert_eq!((keep.as_planned.changes, keep.kept.changes), (2, 0));
    assert!(
        (keep.as_planned.minutes - 10.0).abs() < 1e-9,
        "two changes of 5 min"
    );
    let [run] = keep.runs.as_slice() else {
        panic!("{:?}", keep.runs)
    };
    assert_eq!(run.legs, [2, 4, 6]);
    assert!((run.teams[0].spacing_m - 12.0).abs() < 1e-9, "0.8 × 15 m");
    // Two legs of about 270 m, one metre wider than they ask for, and so three metres longer on the rope.
    let wide_km: f64 = plan
        .legs
        .iter()
        .filter(|l| l.leg == 2 || l.leg == 6)
        .map(|l| (l.length_m + 3.0) / 1000.0)
        .sum();
    assert!(
        (keep.kept.minutes - 0.5 * wide_km).abs() < 1e-9,
        "{}",
        keep.kept.minutes
    );
}

#[test]
fn nothing_is_kept_where_changing_costs_nothing_or_the_rope_is_too_short() {
    let free = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0])
        .rules("[assume]\nchange_min = 0");
    assert_eq!(free.plan().keep_setup, None, "a change costs nothing");
    let alike = Trip::straight(&UP_AND_DOWN[..1])
        .party(&[80.0; 4])
        .ropes(&[60.0])
        .plan();
    assert_eq!(alike.keep_setup, None, "one leg, no change");
    let short = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[38.0])
        .plan();
    assert_eq!(short.keep_setup, None, "12 m take 40 m, the rope has 38");
}

#[test]
fn nothing_is_kept_that_the_plan_would_judge_worse_than_the_separate_legs() {
    // Three walk 13 m apart on the narrow gaps and 13.5 m on the wide ones. With 13.5 m on 60 m no loop reaches the one in the
    // middle any more: 15 − 13.5 − 2.5 = −1 m, where 13 m leave exactly the lip; on 62 m one does.
    let three = |rope_m: f64| {
        let trip = Trip::straight(&UP_AND_DOWN).party(&[80.0; 3]);
        trip.ropes(&[rope_m]).plan()
    };
    let worse = three(60.0);
    assert!(
        worse.legs[1].verdict < worse.legs[3].verdict,
        "the narrow gaps are inside"
    );
    assert_eq!(worse.keep_setup, None);
    let as_good = three(62.0);
    let keep = as_good.keep_setup.expect("as good on every leg");
    assert_eq!(keep.runs[0].legs, [2, 4, 6]);
}

#[test]
fn a_set_up_that_is_kept_unropes_where_its_own_length_says() {
    let plan = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0])
        .plan();
    let keep = plan
        .keep_setup
        .clone()
        .expect("one set-up saves two changes");
    let stretches = &keep.runs[0].stretches;
    assert_eq!(stretches.len(), 3, "{stretches:?}");
    for (stretch, longer_m) in stretches.iter().zip([3.0, 0.0, 3.0]) {
        let leg = &plan.legs[stretch.legs[0] - 1];
        assert!((stretch.from_m - leg.start_m).abs() < 1e-9, "{stretch:?}");
        assert!(
            (stretch.to_m - leg.end_m - longer_m).abs() < 1e-6,
            "{stretch:?}: {longer_m}"
        );
        assert_eq!(
            stretch.end == leg.end,
            longer_m < 1e-9,
            "a change point of its own"
        );
    }
}

/// Between the legs as planned so much is unroped; three metres more on the rope leave less.
fn kept_where_so_much_is_left(least_unroped_m: f64) -> Vec<Vec<Vec<usize>>> {
    let rules = format!("[assume]\nleast_unroped_m = {least_unroped_m:.3}");
    let trip = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0]);
    let plan = trip.rules(&rules).plan();
    let runs = plan.keep_setup.map(|keep| keep.runs).unwrap_or_default();
    let legs =
        |run: schrund::plan::keep::KeptRun| run.stretches.into_iter().map(|s| s.legs).collect();
    runs.into_iter().map(legs).collect()
}

#[test]
fn stretches_that_come_too_close_become_one() {
    let plan = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0])
        .plan();
    let left_m = plan.legs[2].length_m;
    let apart = vec![vec![vec![2], vec![4], vec![6]]];
    assert_eq!(kept_where_so_much_is_left(left_m - 3.5), apart);
    // Three metres longer the wide team leaves less behind it: the last two legs are one as planned. Kept, all are.
    assert_eq!(kept_where_so_much_is_left(left_m - 2.5), [[[2, 4]]]);
}

#[test]
fn what_would_reach_ice_of_no_leg_is_not_kept() {
    // Ice on which the leader wants no rope lies a metre behind the first leg as planned.
    let planned = Trip::straight(&UP_AND_DOWN)
        .party(&[80.0; 4])
        .ropes(&[60.0]);
    let end_m = planned.plan().legs[1].end_m;
    let never = r#"{"gap_m":3,"surface":"bare","rope":"never"}"#;
    let behind = |m: f64| {
        let south_m = end_m + 20.0 + m;
        planned
            .clone()
            .zone((-800.0, south_m), (800.0, south_m + 60.0), never)
            .plan()
    };
    let runs =
        |plan: &schrund::plan::Plan| plan.keep_setup.as_ref().map(|k| k.runs[0].legs.clone());
    assert_eq!(runs(&behind(10.0)).as_deref(), Some(&[2, 4, 6][..]));
    assert_ne!(runs(&behind(1.0)).as_deref(), Some(&[2, 4, 6][..]));
}

/// A pair with six knots at 15 and 17 m, its coils shorter than knots oblige to. 70 m hold a whole strand at 15 m (69.2 m) and
/// not at 17 m (77.2 m), so 17 m on all legs would leave two of them outside that are inside as planned.
#[test]
fn a_kept_set_up_with_knots_is_judged_anew() {
    let zones = [10.0, 12.0, 10.0].map(|gap_m| format!(r#"{{"gap_m":{gap_m},"snow_depth_m":2}}"#));
    let zones: Vec<&str> = zones.iter().map(String::as_str).collect();
    let pair = |rope_m: f64| {
        let trip = Trip::straight(&zones).party(&[80.0; 2]).ropes(&[rope_m]);
        trip.rules("[assume]\nreach_factor = 1").plan()
    };
    let outside = |plan: &schrund::plan::Plan| {
        let legs = plan.legs.iter().filter(|leg| leg.roped);
        let short = |leg: &schrund::plan::leg::Leg| {
            leg.findings
                .iter()
                .any(|f| f.code() == "no-rope-for-the-reserve")
        };
        legs.map(short).collect::<Vec<_>>()
    };
    let short = pair(70.0);
    assert!(
        short.legs[1].teams[0].knots.count == 6,
        "{:?}",
        short.legs[1].teams
    );
    assert_eq!(outside(&short), [false, true, false]);
    assert_eq!(short.keep_setup, None);
    let long = pair(80.0);
    assert_eq!(outside(&long), [false; 3]);
    let keep = long.keep_setup.expect("as good on every leg");
    assert_eq!(keep.runs[0].legs, [2, 4, 6]);
    assert_eq!(keep.runs[0].teams[0].knots_each_end, 3);
}
