//! Laws of the figures that are shown.

use proptest::prelude::*;
use schrund::say::{arg::Arg, round::Round, units::Units, voice::Voice};

const BOTH: [Units; 2] = [Units::Metric, Units::Imperial];

/// The exact length of a tenth of the short unit, micrometres: 0.1 m, and 0.1 ft of 0.3048 m.
fn tenth_um(units: Units) -> i64 {
    match units {
        Units::Metric => 100_000,
        Units::Imperial => 30_480,
    }
}

/// A length as it comes out of a file or a plan: whole micrometres, up to the length of a country.
fn any_um() -> impl Strategy<Value = i64> {
    prop_oneof![
        0..200_000_000_i64,
        -2_000_000..2_000_000_i64,
        0..1_000_000_000_000_i64,
    ]
}

/// Lengths at and right beside what is shown: tenths of a metre and of a foot, some micrometres off.
fn near_a_tenth_um() -> impl Strategy<Value = i64> {
    let tenth = prop_oneof![Just(100_000_i64), Just(30_480_i64)];
    (tenth, -20_000..200_000_i64, -2..3_i64).prop_map(|(tenth, n, off)| tenth * n + off)
}

#[expect(
    clippy::cast_precision_loss,
    reason = "a million kilometres in micrometres still fit"
)]
fn metres(um: i64) -> f64 {
    um as f64 / 1e6
}

/// The tenths that a figure shows, read from its digits.
fn tenths(shown: &str) -> i64 {
    let (whole, tenth) = shown.split_once('.').unwrap_or((shown, "0"));
    let digits = format!("{whole}{tenth}");
    digits.parse().expect("digits")
}

/// Whole numbers can be compared exactly, so there is no tolerance in here.
fn lies_on_its_side(um: i64, units: Units) -> Result<(), TestCaseError> {
    let step = tenth_um(units);
    let shown = |round| tenths(&units.number(metres(um), round)) * step;
    let (up, down, near) = (shown(Round::Up), shown(Round::Down), shown(Round::Nearest));
    prop_assert!((0..step).contains(&(up - um)), "{um} up to {up}");
    prop_assert!((0..step).contains(&(um - down)), "{um} down to {down}");
    prop_assert!(2 * (near - um).abs() <= step, "{um} to {near}");
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    /// No figure of something needed is below it, none of something at hand above, and each is the closest such.
    #[test]
    fn figures_lie_on_their_side_exactly(um in prop_oneof![any_um(), near_a_tenth_um()]) {
        for units in BOTH {
            lies_on_its_side(um, units)?;
        }
    }

    /// A sum that comes out a few bits off is shown as the length it ought to be.
    #[test]
    fn noise_of_the_last_bits_changes_no_figure(um in near_a_tenth_um(), bits in -8..=8_i32) {
        let exact = metres(um);
        let noisy = exact + f64::from(bits) * f64::EPSILON * exact;
        for (units, round) in BOTH.into_iter().flat_map(|u| [(u, Round::Up), (u, Round::Down)]) {
            prop_assert_eq!(units.number(noisy, round), units.number(exact, round), "{}", exact);
        }
    }

    /// Any double at all: off its side by a billionth of the unit at most.
    #[test]
    fn any_length_is_within_a_billionth_of_its_side(length_m in 0.0..1e5_f64) {
        for units in BOTH {
            let value = length_m / units.short_m();
            let shown = |round| units.number(length_m, round).parse::<f64>().unwrap();
            prop_assert!(shown(Round::Up) >= value - 1.1e-9 && shown(Round::Up) < value + 0.1);
            prop_assert!(shown(Round::Down) <= value + 1.1e-9 && shown(Round::Down) > value - 0.1);
        }
    }

    /// Whatever a leader calls a rope, it is called that in every unit.
    #[test]
    fn names_go_through_as_they_are(name in "\\PC{0,12}( ?[0-9]{1,3} m)?", length_m in 0.0..200.0_f64) {
        for units in BOTH {
            let voice = Voice { units, ..Voice::default() };
            let args = [("rope", Arg::Name(&name)), ("length", Arg::There(length_m))];
            let said = voice.say("rope-at-hand", &args).to_string();
            let figure = units.length(length_m, Round::Down);
            prop_assert_eq!(said, format!("rope at hand: {name}, {figure}"));
        }
    }

    /// Numbers that no plan should hold are shown somehow, and nothing falls over.
    #[test]
    fn no_number_is_too_much(x in any::<f64>(), y in any::<f64>(), decimals in any::<u8>()) {
        let all = [
            Arg::Needed(x), Arg::There(x), Arg::Measured(x), Arg::Within(x, y), Arg::Walked(x),
            Arg::Between(x, y), Arg::Whole(x), Arg::Degrees(x, decimals, Round::Up), Arg::Minutes(x),
            Arg::Kilograms(x, Round::Down), Arg::Kilonewtons(x, decimals, Round::Up), Arg::Number(x),
        ];
        for (units, arg) in BOTH.into_iter().flat_map(|u| all.iter().map(move |a| (u, a))) {
            prop_assert!(!arg.said(units).is_empty(), "{:?} is shown as nothing", arg);
        }
    }
}
