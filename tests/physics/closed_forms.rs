//! Formulas against printed digits and against each other.

use super::*;

#[test]
fn a_lip_halves_the_force_at_the_friction_that_is_printed() {
    // Printed: ratio 2 over 90° ⇔ μ 0.4413 [derived], four digits.
    close("μ", capstan::mu_of_square_lip(2.0), 0.4413, 5e-5);
    close(
        "λ",
        capstan::lip_factor(2.0_f64.ln() / FRAC_PI_2, 0.0),
        2.0,
        1e-12,
    );
}

#[test]
fn two_turns_of_an_edge_multiply() {
    for (mu, a, b) in [(0.1, 0.3, 1.2), (0.44, 0.9, 0.1), (1.0, 0.0, 2.0)] {
        let both = capstan::ratio(mu, a + b);
        close(
            "e^μ(a+b)",
            both,
            capstan::ratio(mu, a) * capstan::ratio(mu, b),
            1e-12,
        );
    }
    assert!(
        capstan::lip_factor(0.3, 0.5) < capstan::lip_factor(0.3, 0.0),
        "a slope towards the lip turns the rope less"
    );
}

#[test]
fn a_body_rests_up_to_the_angle_of_repose() {
    for mu in [0.05_f64, 0.3, 1.1] {
        close("at rest", incline::hold_share(mu, mu.atan()), 0.0, 1e-12);
        assert!(
            incline::slide_m_s2(mu, mu.atan() + 0.01) > 0.0,
            "steeper slides"
        );
        assert!(
            incline::slide_m_s2(mu, mu.atan() - 0.01) < 0.0,
            "gentler stops"
        );
    }
    close(
        "no friction",
        incline::slide_m_s2(0.0, FRAC_PI_2),
        GRAVITY_M_S2,
        1e-12,
    );
}

#[test]
fn rope_modulus_and_impact_force_are_each_others_inverse() {
    // Printed [derived]: F 8.5 kN, 80 kg, f 1.77 → 21 213 N and back 8 500.0 N.
    let ea_n = impact::modulus_n(8500.0, 80.0, 1.77).expect("a spring");
    close("EA", ea_n, 21_213.0, 0.5);
    close("F", impact::peak_force_n(ea_n, 80.0, 1.77), 8500.0, 0.05);
    assert_eq!(impact::modulus_n(1500.0, 80.0, 1.77), None, "less than 2mg");
    assert_eq!(impact::modulus_n(f64::NAN, 80.0, 1.77), None, "no number");
}

#[test]
fn a_fixed_holder_feels_the_printed_forces() {
    // Printed [derived]: λ 1, EA 20 kN, 10 m.
    for (slack_m, want_n) in [(0.0, 1569.1), (0.5, 2237.1), (1.0, 2646.9), (2.0, 3202.3)] {
        let got_n = impact::fixed_holder_force_n(20_000.0, 80.0, 10.0, slack_m);
        close(&format!("slack {slack_m}"), got_n, want_n, 0.05);
    }
}

#[test]
fn a_rock_for_a_holder_meets_the_fixed_holder_force_in_the_moving_model() {
    for slack_m in [0.0, 0.5, 1.0, 2.0] {
        let mut fall = plain_fall(1.0, 3.0, 3.0, 0.0, 0.0, 1);
        fall.modulus_n = 20_000.0;
        fall.sides[0].holders_kg = vec![250.0];
        fall.sides[0].spacing_m = 10.0;
        fall.sides[0].slack_m = slack_m;
        let got_n = fall.run().expect("inside bounds").holder_n;
        let want_n = impact::fixed_holder_force_n(20_000.0, 80.0, 10.0, slack_m);
        close(&format!("slack {slack_m}"), got_n, want_n, 1e-3 * want_n);
    }
}

/// The four printed slides [derived]: λ, μ before, μ after, delay, holders of 80 kg, slide.
const PRINTED: [(f64, f64, f64, f64, u8, f64); 4] = [
    (1.5, 0.2, 0.9, 1.0, 1, 4.1188),
    (2.0, 0.3, 0.8, 1.0, 1, 1.0896),
    (1.2, 0.2, 0.6, 0.7, 2, 0.8017),
    (1.1, 0.1, 0.5, 1.0, 3, 1.5515),
];

fn stiff(lip: f64, mu_before: f64, mu_after: f64, delay_s: f64, holders: u8) -> StiffFall {
    StiffFall {
        victim_kg: 80.0,
        holders_kg: 80.0 * f64::from(holders),
        lip,
        mu_before,
        mu_after,
        slope_rad: 0.0,
        delay_s,
        slack_m: 0.0,
    }
}

#[test]
fn a_stiff_rope_gives_the_printed_slides() {
    for (lip, before, after, delay_s, holders, want_m) in PRINTED {
        let fall = stiff(lip, before, after, delay_s, holders);
        close("slide", fall.slide_m().expect("it stops"), want_m, 5e-5);
    }
}

#[test]
fn the_closed_form_agrees_with_adding_up_its_own_acceleration() {
    // With slack, before and after reacting, in steps of 10 µs: no formula for the way, only for the acceleration.
    for (lip, before, after, delay_s, holders, _) in PRINTED {
        for (slack_m, slope_rad) in [(0.0, 0.0), (0.7, 0.0), (1.2, -0.1), (0.4, 0.05)] {
            let mut fall = stiff(lip, before, after, delay_s, holders);
            (fall.slack_m, fall.slope_rad) = (slack_m, slope_rad);
            let (mut time_s, mut speed, mut way_m) = (0.0, fall.speed_after_jerk_m_s(), 0.0);
            while time_s < delay_s || speed > 0.0 {
                let mu = if time_s < delay_s { before } else { after };
                speed = f64::max(0.0, speed + 1e-5 * fall.acceleration_m_s2(mu));
                way_m += 1e-5 * speed;
                time_s += 1e-5;
                assert!(time_s < 60.0, "never stops");
            }
            close(
                "slide",
                fall.slide_m().expect("it stops"),
                way_m,
                2e-4 * (1.0 + way_m),
            );
        }
    }
    assert_eq!(
        stiff(1.0, 0.1, 0.2, 1.0, 1).slide_m(),
        None,
        "ice holds nobody"
    );
}

#[test]
fn the_moving_model_meets_the_stiff_rope_as_the_rope_stiffens() {
    for (lip, before, after, delay_s, holders, want_m) in PRINTED {
        let miss = |modulus_n: f64| {
            let mut fall = plain_fall(lip, before, after, delay_s, 0.0, holders);
            fall.modulus_n = modulus_n;
            let got = fall.run().expect("inside bounds");
            assert!(got.held, "λ {lip}, EA {modulus_n}");
            (got.slide_m - want_m).abs() / want_m
        };
        let misses = [2e4, 2e6, 2e8].map(miss);
        println!("λ {lip}: {misses:?}");
        // A bounce of period ~ 1/√EA is all that is left between the two: a hundredfold EA, a tenth of the miss.
        for pair in misses.windows(2) {
            assert!(
                pair[1] < 0.2 * pair[0],
                "λ {lip}: {misses:?} does not close in"
            );
        }
        assert!(misses[2] < 0.01, "λ {lip}: {misses:?}");
    }
}

#[test]
fn holders_needed_are_those_of_the_trades_table() {
    // Printed to two figures [derived]. Two of them (1.7 and 2.9) were rounded twice: 1.646 → 1.65 → 1.7 and
    // 2.849 → 2.85 → 2.9, so the tolerance is half the last figure and a twentieth of it more.
    let rows = [
        (Snow::Soft, 0.4, 1.1),
        (Snow::Settled, 0.5, 1.7),
        (Snow::Firm, 0.9, 2.9),
        (Snow::Refrozen, 1.8, 6.2),
    ];
    let needed = |snow, corner| {
        let case = assumed().case(snow, false, |_| corner);
        hold_static::holders_needed(case.lip, case.mu_after, 0.0).expect("on the flat")
    };
    for (snow, favourable, adverse) in rows {
        close(
            snow.as_str(),
            needed(snow, Corner::Favourable),
            favourable,
            0.055,
        );
        close(snow.as_str(), needed(snow, Corner::Adverse), adverse, 0.055);
    }
    close("ice", needed(Snow::Ice, Corner::Favourable), 3.4, 0.055);
    close("ice", needed(Snow::Ice, Corner::Adverse), 19.0, 0.5);
    assert_eq!(
        hold_static::holders_needed(1.2, 0.1, 0.2),
        None,
        "they slide by themselves"
    );
}

#[test]
fn the_margin_is_zero_with_just_enough_holders_and_knots_count_as_load_taken_off() {
    let (lip, mu, slope_rad) = (1.4, 0.5, 0.1);
    let needed = hold_static::holders_needed(lip, mu, slope_rad).expect("they hold");
    let load = |knots_n| Load {
        victim_kg: 80.0,
        lip,
        knots_n,
    };
    let just = [Holder {
        mass_kg: 80.0 * needed,
        mu,
    }];
    close(
        "margin",
        hold_static::margin_kg(&load(0.0), &just, slope_rad),
        0.0,
        1e-9,
    );
    let knots_n = 10.0 * GRAVITY_M_S2;
    close(
        "margin",
        hold_static::margin_kg(&load(knots_n), &just, slope_rad),
        10.0,
        1e-9,
    );
}

#[test]
fn a_hold_in_the_moving_model_is_a_hold_in_the_static_one() {
    let mut ran = 0;
    for (team, corner) in grid().iter().filter(|(t, _)| t.knots.is_none()) {
        let case = assumed().case(team.snow, false, |_| *corner);
        let fall = team.fall_of(0, &case);
        if !fall.run().expect("inside bounds").held {
            continue;
        }
        let side = &fall.sides[0];
        let holders: Vec<Holder> = side
            .holders_kg
            .iter()
            .map(|&mass_kg| Holder {
                mass_kg,
                mu: case.mu_after,
            })
            .collect();
        // A lip sticks as well as it slides, so what hangs still may be held by λ² of what slides out.
        let lip = capstan::lip_factor(side.lip_mu, side.slope_rad);
        let load = Load {
            victim_kg: fall.victim_kg,
            lip,
            knots_n: 0.0,
        };
        assert!(
            hold_static::margin_kg(&load, &holders, side.slope_rad) > -1e-6,
            "{fall:?}"
        );
        ran += 1;
    }
    assert!(ran > 10, "only {ran} held");
}
