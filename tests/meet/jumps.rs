//! Jumps of a line: nobody walked from one side to the other, and what is known on one says nothing about the other.

use schrund::{
    geometry::LonLat,
    meet::{Contact, Ice, contact::Of, undrawn::undrawn},
    trip::{
        route::{Stage, Stretch},
        zone::Zone,
    },
};

use crate::fixture::{
    any::{at, zone},
    close,
};

fn parts(parts: &[&[LonLat]]) -> Stage {
    let mut stage = Stage::new(None);
    for part in parts {
        stage.break_segment();
        for point in *part {
            stage.push(*point, None);
        }
    }
    stage
}

/// Ice of 400 m by 400 m.
fn ice() -> Vec<Zone> {
    let corners = [
        at(0.0, 0.0),
        at(400.0, 0.0),
        at(400.0, 400.0),
        at(0.0, 400.0),
    ];
    vec![zone(1, &[corners.to_vec()], 5.0)]
}

fn contact(stage: &Stage, margin_m: f64) -> Contact {
    let ice = ice();
    let contacts = Ice::of(&ice).contacts(stage, margin_m);
    contacts.into_iter().next().expect("it is on the ice")
}

#[test]
fn a_part_beyond_a_jump_is_asked_anew_whether_it_is_on_the_ice() {
    // The first part passes the ice 10 m beside it, the second never leaves it.
    let stage = parts(&[
        &[at(-10.0, 100.0), at(-10.0, 300.0)],
        &[at(100.0, 100.0), at(100.0, 300.0)],
    ]);
    let found = contact(&stage, 20.0);
    assert_eq!(found.crossings.len(), 1, "{found:?}");
    close("from the jump", found.crossings[0].from_m, 200.0, 0.1);
    close("to the end", found.crossings[0].to_m, 400.0, 0.1);
    let back = parts(&[
        &[at(100.0, 300.0), at(100.0, 100.0)],
        &[at(-10.0, 300.0), at(-10.0, 100.0)],
    ]);
    let found = contact(&back, 20.0);
    assert_eq!(found.crossings.len(), 1, "{found:?}");
    close("to the jump", found.crossings[0].to_m, 200.0, 0.1);
}

#[test]
fn the_margin_along_the_line_goes_on_beyond_a_jump() {
    // From the middle of the ice to a kilometre away from it: there only the chainage is near.
    let stage = parts(&[
        &[at(200.0, 100.0), at(200.0, 200.0)],
        &[at(200.0, 1400.0), at(200.0, 1600.0)],
    ]);
    let found = contact(&stage, 20.0);
    assert_eq!(found.touches.len(), 1, "{found:?}");
    close("the crossing", found.crossings[0].to_m, 100.0, 0.1);
    close("and its margin", found.touches[0].to_m, 120.0, 0.1);
}

#[test]
fn ice_that_nobody_drew_is_cut_at_the_jumps_within_it_and_at_no_other() {
    // Four parts of a line of 1200 m, and ice on both sides of the second jump.
    let stage = parts(&[
        &[at(0.0, 0.0), at(100.0, 0.0)],
        &[at(200.0, 0.0), at(600.0, 0.0)],
        &[at(700.0, 0.0), at(1100.0, 0.0)],
        &[at(1200.0, 0.0), at(1500.0, 0.0)],
    ]);
    let jumps: Vec<f64> = stage.jumps().map(|jump| jump.at_m).collect();
    assert_eq!(jumps.len(), 3);
    let whole = Stretch {
        from_m: 300.0,
        to_m: 700.0,
    };
    let inventory = Contact {
        of: Of::Zone(0),
        crossings: vec![whole],
        touches: vec![whole],
    };
    let found = undrawn(&stage, &[], &[inventory], 20.0).expect("no zone is drawn");
    let cut = [(whole.from_m, jumps[1]), (jumps[1], whole.to_m)];
    let found: Vec<(f64, f64)> = found.crossings.iter().map(|c| (c.from_m, c.to_m)).collect();
    assert_eq!(found, cut);
}
