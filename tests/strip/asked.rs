//! From kilometre to kilometre, as people type it.

use proptest::prelude::*;
use schrund::{
    fault::{Wrong, strip::InStrip},
    strip::asked::stretch,
};

#[test]
fn what_is_no_stretch_is_answered_with_what_to_write() {
    for (typed, cure) in [
        ("5.9", "as in `5.9-8.3`"),
        ("", "as in `5.9-8.3`"),
        ("NaN-3", "as in `5.9-8.3`"),
        ("inf-3", "as in `5.9-8.3`"),
        ("5-6-7", "as in `5.9-8.3`"),
        ("5 mi-6 mi", "as in `5.9-8.3`"),
        ("5,900-8,300", "`5.900-8.300` or `5900-8300`"),
        ("5900m-8300m", "write kilometres: `5.9-8.3`"),
        ("8,3-5,9", "write `5.9-8.3`"),
        ("-1-3", "0 or more"),
        ("5-5", "from where to where"),
        ("5-5.0009", "from where to where"),
    ] {
        let fault = stretch(typed).expect_err(typed).to_string();
        assert!(
            fault.contains(cure) && fault.contains(&format!("\"{typed}\"")),
            "{fault}"
        );
    }
}

#[test]
fn a_huge_number_is_beyond_every_line() {
    let huge = "9".repeat(400);
    let fault = stretch(&format!("1-{huge}")).expect_err("no number holds it");
    assert!(
        matches!(fault.what, Wrong::Strip(InStrip::NoStretch { .. })),
        "{fault}"
    );
}

proptest! {
    #[test]
    fn nothing_that_is_typed_falls_over(typed in ".{0,20}") {
        let _ = stretch(&typed);
    }

    #[test]
    fn kilometres_are_read_as_typed(from in 0.0..50.0, length in 0.01..50.0, comma in any::<bool>()) {
        let [from, to] = [from, from + length].map(|km: f64| format!("{km:.2}"));
        prop_assume!(from != to);
        let typed = format!("{from}-{to}");
        let typed = if comma { typed.replace('.', ",") } else { typed };
        let read = stretch(&typed).unwrap();
        let [from, to] = [from, to].map(|km| km.parse::<f64>().unwrap() * 1000.0);
        prop_assert_eq!((read.from_m, read.to_m), (from, to));
    }
}
