//! How wide a gap a rope still covers: the inversion against a bisection, over random cases.

use std::sync::LazyLock;

use proptest::{prelude::*, test_runner::Config};
use schrund::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        spacing,
        worst::Meeting,
    },
    plan::{
        leg::{Bite, KnotSet},
        why::KnotsWhy,
    },
    practice::{
        Rules,
        set::{EMBEDDED, Source},
    },
    rope::{draft::Draft, ledger},
    trip::party::Party,
};

/// The embedded practice sets, read once for thousands of cases.
static SETS: LazyLock<Vec<Rules>> = LazyLock::new(|| {
    let read = |(name, _)| Rules::with_practice(&Source::Named(name)).unwrap();
    EMBEDDED.map(read).to_vec()
});

fn meeting(effective_gap_m: f64) -> Meeting {
    Meeting {
        effective_gap_m,
        factor: 1.0,
        greatest_factor: 1.0,
        zone: Some(0),
        along: None,
    }
}

/// How many times longer than wide a gap is met with a spacing: some curve between 1 and 2.
fn factor(spacing_m: f64, phase: f64) -> f64 {
    1.5 + 0.5 * (phase + spacing_m / 7.0).sin()
}

/// A draft with a wish for knots or without.
fn draft(people: usize, knots: bool, rules: &Rules) -> Draft {
    let team = Party::of(people, rules).split_into(1).remove(0);
    let chosen = spacing::choose(
        people,
        spacing::base_m(people, false, rules),
        rules,
        &|_| meeting(0.0),
    );
    let draft = Draft::new(&team, chosen, Over::drawn(&[]), Hardship::default(), rules);
    let each_end = usize::from(knots);
    Draft {
        knots: KnotSet {
            count: 2 * each_end,
            each_end,
            first_m: 3.0,
            step_m: 2.0,
            rope_each_m: 1.2,
            bite: Bite::Yes,
            why: KnotsWhy::Many,
        },
        ..draft
    }
}

/// Whether a team gets a set-up on this rope for gaps of this width: chosen forwards, as a plan does.
fn suits(draft: &Draft, gap_m: f64, rope_m: f64, phase: f64, rules: &Rules) -> bool {
    let people = draft.persons.len();
    let knots_m = if draft.knots.count > 0 {
        knots::layout_m(people, rules)
    } else {
        0.0
    };
    let least_m = spacing::base_m(people, false, rules).max(knots_m);
    let chosen = spacing::choose(people, least_m, rules, &|d| {
        meeting(factor(d, phase) * gap_m)
    });
    let total_m = ledger::total_at_m(people, chosen.spacing_m, &draft.knots, rules);
    chosen.enough && total_m <= rope_m + 1e-9
}

fn bisected_m(suits: impl Fn(f64) -> bool) -> Option<f64> {
    let (mut low, mut high) = (0.0, 400.0);
    if !suits(low) {
        return None;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if suits(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(low)
}

proptest! {
    #![proptest_config(Config { cases: 10_000, failure_persistence: None, ..Config::default() })]
    #[test]
    fn the_gap_covered_is_what_a_bisection_finds(
        people in 2_usize..=5, rope_m in 15.0..120.0_f64, phase in 0.0..6.3_f64,
        knots: bool, set in 0_usize..4,
    ) {
        let rules = &SETS[set];
        let draft = draft(people, knots, rules);
        let got = draft.covers_gap_m(rope_m, &|d| factor(d, phase), rules);
        let want = bisected_m(|gap_m| suits(&draft, gap_m, rope_m, phase, rules));
        match (got, want) {
            (Some(got), Some(want)) => prop_assert!((got - want).abs() < 0.01, "{got}, bisected {want}"),
            // A pair whose longest spacing leaves no room beyond any gap covers none: 0 m.
            (got, want) => prop_assert!(got.unwrap_or(0.0) < 1e-9 && want.is_none(), "{got:?}, bisected {want:?}"),
        }
    }
}
