//! Figures: what is needed never shows as less than it is, what there is never as more.

use proptest::{prelude::*, test_runner::Config};
use schrund::say::{
    arg::Arg,
    round::Round,
    span::{Said, Span},
    units::Units,
    voice::Voice,
};

/// How far a sum of lengths may be off in its last bits and still count as what it is meant to be, metres.
const NOISE_M: f64 = 1e-9;

/// The one figure of a sentence, in metres.
fn figure_m(said: &Said, units: Units) -> f64 {
    let figures = said.spans().iter().filter_map(|span| match span {
        Span::Figure(text) => Some(text),
        _ => None,
    });
    let [figure] = figures.collect::<Vec<_>>()[..] else {
        panic!("one figure in {said:?}")
    };
    let number = figure.trim_end_matches(units.short()).trim();
    number.parse::<f64>().unwrap() * units.short_m()
}

proptest! {
    #![proptest_config(Config { cases: 2000, failure_persistence: None, ..Config::default() })]
    #[test]
    fn needed_rope_is_never_shown_shorter_and_rope_at_hand_never_longer(
        metres in prop_oneof![0.0..200.0_f64, (0..2000_i32).prop_map(|d| f64::from(d) / 10.0)],
        imperial: bool,
    ) {
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let voice = Voice { units, ..Voice::default() };
        let said = |arg| voice.say("rope-unnamed", &[("length", arg)]);
        let tenth_m = 0.1 * units.short_m();
        let needed_m = figure_m(&said(Arg::Needed(metres)), units);
        prop_assert!(needed_m >= metres - NOISE_M, "{metres} m needed, {needed_m} m shown");
        prop_assert!(needed_m < metres + tenth_m + NOISE_M, "{metres} m needed, {needed_m} m shown");
        let there_m = figure_m(&said(Arg::There(metres)), units);
        prop_assert!(there_m <= metres + NOISE_M, "{metres} m there, {there_m} m shown");
        prop_assert!(there_m > metres - tenth_m - NOISE_M, "{metres} m there, {there_m} m shown");
        for (round, shown_m) in [(Round::Up, needed_m), (Round::Down, there_m)] {
            let alone = units.number(metres, round).parse::<f64>().unwrap() * units.short_m();
            prop_assert!((alone - shown_m).abs() < NOISE_M, "{alone} alone, {shown_m} in a sentence");
        }
    }
}

#[test]
fn whole_figures_have_no_decimal() {
    let metric = |m| Units::Metric.length(m, Round::Up);
    assert_eq!([metric(6.0), metric(6.05)], ["6 m", "6.1 m"]);
}
