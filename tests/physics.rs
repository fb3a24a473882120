//! Nature checked: printed closed forms, a rival solver, laws, and the patterns published tests of falls show.

mod answers;
mod closed_forms;
mod devices;
mod laws;
mod patterns;

use std::f64::consts::FRAC_PI_2;

use schrund::physics::{
    GRAVITY_M_S2,
    assumed::{Assumed, Corner, Parameter, Snow},
    capstan,
    gear::Gear,
    haul::{Can, HaulSite, System},
    hold_dynamic::{Fall, Followed, GapSide, LONGEST_STEP_S, Outcome},
    hold_static::{self, Holder, Load},
    hold_stiff::StiffFall,
    holding::{BrakeKnots, Faller, Holding, HoldingAnswer, Team},
    impact, incline,
};

#[track_caller]
fn close(what: &str, got: f64, want: f64, tol: f64) {
    assert!(
        (got - want).abs() <= tol,
        "{what}: got {got}, want {want} ± {tol}"
    );
}

fn gear() -> Gear {
    Gear::built_in().expect("data/gear.toml")
}

fn assumed() -> Assumed {
    Assumed::built_in().expect("data/holding.toml")
}

/// Rope modulus of the usual rope.
fn usual_n() -> f64 {
    gear().rope.usual.modulus_n().expect("a spring")
}

/// One side, no knots, a rope that bounces for ever.
fn plain_fall(lip: f64, before: f64, after: f64, delay_s: f64, slack_m: f64, holders: u8) -> Fall {
    Fall {
        victim_kg: 80.0,
        modulus_n: usual_n(),
        rope_damping: 0.0,
        delay_s,
        sides: vec![GapSide {
            holders_kg: (0..holders).map(|_| 80.0).collect(),
            spacing_m: 12.0,
            slack_m,
            beyond_m: 0.0,
            slope_rad: 0.0,
            lip_mu: capstan::mu_of_square_lip(lip),
            mu_before: before,
            mu_after: after,
            knots_m: vec![],
            knot_n: 0.0,
            bite_m: 0.0,
        }],
    }
}

const THREE: BrakeKnots = BrakeKnots {
    count_per_side: 3,
    first_m: 3.0,
    step_m: 2.0,
};

/// Equal people of 80 kg, 15 m apart, over a gap of 6 m on the flat, no knots.
fn team(snow: Snow, people: usize) -> Team {
    Team {
        masses_kg: vec![80.0; people],
        spacing_m: 15.0,
        gap_m: 6.0,
        knots: None,
        snow,
        on_skis: false,
        down_deg: [0.0; 2],
        rope_ea_n: usual_n(),
    }
}

/// Every team size, snow, knots or none, slope and corner on a grid.
fn grid() -> Vec<(Team, Corner)> {
    let mut all = Vec::new();
    for snow in Snow::ALL {
        for masses_kg in [
            vec![80.0; 2],
            vec![95.0, 60.0, 75.0],
            vec![70.0, 80.0, 90.0, 65.0],
        ] {
            for down_deg in [0.0, 12.0, -12.0] {
                for knots in [None, Some(THREE)] {
                    for corner in [Corner::Favourable, Corner::Central, Corner::Adverse] {
                        let team = Team {
                            masses_kg: masses_kg.clone(),
                            down_deg: [down_deg; 2],
                            knots,
                            ..team(snow, 2)
                        };
                        all.push((team, corner));
                    }
                }
            }
        }
    }
    all
}

/// Everybody's fall in one corner, as the model runs it.
fn falls((team, corner): &(Team, Corner)) -> Vec<Fall> {
    let case = assumed().case(team.snow, team.on_skis, |_| *corner);
    (0..team.masses_kg.len())
        .map(|i| team.fall_of(i, &case))
        .collect()
}

fn answer(team: &Team) -> Holding {
    team.holding(&assumed()).expect("inside bounds")
}

fn end_fall(team: &Team, corner: Corner) -> Outcome {
    falls(&(team.clone(), corner))[0]
        .run()
        .expect("inside bounds")
}
