//! What published tests of falls show, the model must show too.

use super::*;

#[test]
fn more_holders_never_hold_less() {
    for snow in Snow::ALL {
        for corner in [Corner::Favourable, Corner::Central, Corner::Adverse] {
            let runs: Vec<Outcome> = (2..=5).map(|n| end_fall(&team(snow, n), corner)).collect();
            for pair in runs.windows(2) {
                assert!(pair[1].held >= pair[0].held, "{snow:?} {corner:?}");
                let more_m = pair[1].slide_m - pair[0].slide_m;
                assert!(
                    more_m <= 0.005 * pair[0].slide_m + 1e-6,
                    "{snow:?} {corner:?}: {pair:?}"
                );
            }
        }
    }
}

#[test]
fn gentler_ground_never_holds_less() {
    for snow in Snow::ALL {
        for people in 2..=4 {
            for corner in [Corner::Favourable, Corner::Central, Corner::Adverse] {
                let on = |down_deg| {
                    let team = Team {
                        down_deg: [down_deg; 2],
                        ..team(snow, people)
                    };
                    end_fall(&team, corner)
                };
                let runs: Vec<Outcome> = [25.0, 15.0, 8.0, 3.0, 0.0, -3.0, -15.0].map(on).to_vec();
                for pair in runs.windows(2) {
                    assert!(pair[1].held >= pair[0].held, "{snow:?} {people} {corner:?}");
                    assert!(
                        pair[1].slide_share <= pair[0].slide_share + 0.005,
                        "{pair:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn one_holder_on_firm_firn_rarely_holds_and_on_ice_never() {
    assert_eq!(
        answer(&team(Snow::Ice, 2)).verdict,
        HoldingAnswer::HeldInNone,
        "ice"
    );
    let firm = team(Snow::Firm, 2);
    assert!(!end_fall(&firm, Corner::Central).held, "firm, central");
    assert!(!end_fall(&firm, Corner::Adverse).held, "firm, adverse");
    // Rarely: of all ways to set the four weightiest assumptions to an end or the middle, fewer than a third hold.
    let corners = [Corner::Favourable, Corner::Central, Corner::Adverse];
    let (mut held, mut ran) = (0, 0);
    for code in 0..81_usize {
        let at = |place: u32| corners[code / 3_usize.pow(place) % 3];
        let case = assumed().case(Snow::Firm, false, |p| match p {
            Parameter::MuAfter => at(0),
            Parameter::Lip => at(1),
            Parameter::Delay => at(2),
            Parameter::Slack => at(3),
            _ => Corner::Central,
        });
        held += u32::from(firm.fall_of(0, &case).run().expect("inside bounds").held);
        ran += 1;
    }
    println!("one holder on firm firn: {held} of {ran}");
    assert!(3 * held < ran, "{held} of {ran}");
    // A gap narrow enough leaves more room than the drag needs, on snow that brakes: the model can say yes too.
    assert!(
        end_fall(&team(Snow::Soft, 2), Corner::Central).held,
        "soft, central"
    );
}

#[test]
fn knots_help_most_in_settled_and_firm_snow() {
    // Of all ways to set five weighty assumptions to an end or the middle: how many more are held with knots.
    let corners = [Corner::Favourable, Corner::Central, Corner::Adverse];
    let ways = |code: usize| {
        move |p: Parameter| {
            let places = [
                Parameter::MuAfter,
                Parameter::Lip,
                Parameter::Delay,
                Parameter::Slack,
                Parameter::KnotForce,
            ];
            places
                .iter()
                .zip(0_u32..)
                .find(|(q, _)| **q == p)
                .map_or(Corner::Central, |(_, place)| {
                    corners[code / 3_usize.pow(place) % 3]
                })
        }
    };
    let held = |snow, knots, code| {
        let team = Team {
            knots,
            gap_m: 4.0,
            ..team(snow, 2)
        };
        let case = assumed().case(snow, false, ways(code));
        team.fall_of(0, &case).run().expect("inside bounds").held
    };
    let helped = |snow| {
        let gained = (0..243_usize).filter(|&code| {
            let (bare, knotted) = (held(snow, None, code), held(snow, Some(THREE), code));
            assert!(knotted || !bare, "{snow:?} {code}: knots lost it");
            knotted && !bare
        });
        gained.count()
    };
    let [soft, settled, firm, refrozen, ice] = Snow::ALL.map(helped);
    println!(
        "helped of 243: soft {soft} settled {settled} firm {firm} refrozen {refrozen} ice {ice}"
    );
    assert_eq!(ice, 0, "ice");
    for (less, what) in [(soft, "soft"), (refrozen, "refrozen")] {
        assert!(
            settled > 2 * less && firm > 2 * less,
            "{what} {less} against {settled}, {firm}"
        );
    }
}

#[test]
fn rope_stiffness_changes_the_force_and_hardly_the_slide() {
    // From a rope as sold to the stiffest the standard lets through: twice the modulus.
    let ropes = gear().rope;
    let [usual_n, stiffest_n] =
        [&ropes.usual, &ropes.single].map(|r| r.modulus_n().expect("a spring"));
    assert!(stiffest_n > 2.0 * usual_n, "{usual_n} N and {stiffest_n} N");
    let change = |a: f64, b: f64| (a - b).abs() / a.max(b);
    for (snow, people) in [
        (Snow::Settled, 3),
        (Snow::Soft, 2),
        (Snow::Firm, 4),
        (Snow::Firm, 3),
    ] {
        let run = |rope_ea_n| {
            let team = Team {
                rope_ea_n,
                ..team(snow, people)
            };
            end_fall(&team, Corner::Central)
        };
        let (usual, stiffest) = (run(usual_n), run(stiffest_n));
        assert_eq!(usual.held, stiffest.held, "{snow:?} {people}");
        let force = change(usual.victim_n, stiffest.victim_n);
        let slide = change(usual.slide_m, stiffest.slide_m);
        println!(
            "{snow:?} {people}: force {force:.2}, slide {slide:.2} ({:.2} and {:.2} m)",
            usual.slide_m, stiffest.slide_m
        );
        assert!(
            force > 0.15 && slide < 0.67 * force,
            "{snow:?} {people}: force by {force}, slide by {slide}"
        );
    }
}

#[test]
fn skis_slide_farther_before_they_brake() {
    for snow in [Snow::Soft, Snow::Settled, Snow::Firm] {
        let on = |on_skis| {
            end_fall(
                &Team {
                    on_skis,
                    ..team(snow, 4)
                },
                Corner::Central,
            )
        };
        let (foot, skis) = (on(false), on(true));
        assert!(
            skis.slide_m > foot.slide_m,
            "{snow:?}: {} and {}",
            foot.slide_m,
            skis.slide_m
        );
    }
}
