//! How the person in the crevasse can be hauled out, with the rope and the people that are left.

use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Corner, Snow},
        haul::{Can, Haul, Scene, System},
    },
    plan::{
        fall::{CanPull, FallReserve, HaulReserve, HaulSystem, HaulTable},
        leg::TeamSetup,
    },
    practice::{Rule, Rules, nature::TURN},
};

/// Fills in the haul table for the fall of one person, and what is missing for each haul in everybody's fall.
///
/// # Errors
/// Names the first figure that lies outside what the model can be asked.
pub fn fill(
    setup: &mut TeamSetup,
    person: usize,
    snow: Snow,
    rules: &Rules,
) -> Result<(), Refusal> {
    let blocked = setup.knots.count > 0;
    let tables = setup
        .falls
        .iter()
        .map(|fall| scene(setup, fall.person, fall.people, snow, rules)?.table(&rules.nature.gear))
        .collect::<Result<Vec<_>, _>>()?;
    for (fall, table) in setup.falls.iter_mut().zip(&tables) {
        fall.hauls = missing(table, fall.free_m, blocked);
    }
    let Some((fall, table)) = setup
        .falls
        .iter()
        .zip(&tables)
        .find(|(fall, _)| fall.person == person)
    else {
        return Ok(());
    };
    let scene = scene(setup, person, fall.people, snow, rules)?;
    let systems: Vec<HaulSystem> = table
        .iter()
        .map(|haul| system(haul, fall.free_m, blocked))
        .collect();
    setup.haul = Some(HaulTable {
        person,
        haulers: fall.people,
        anchor_to_lip_m: scene.anchor_to_lip_m,
        lip_to_person_m: scene.lip_to_victim_m,
        lip_share: scene.e_lip,
        needs_own_strand: blocked,
        says: words(&systems, fall),
        systems,
    });
    Ok(())
}

/// The rope hangs taut over a lip that nobody padded: its factor is the central one of the fall model.
fn scene(
    setup: &TeamSetup,
    person: usize,
    haulers: usize,
    snow: Snow,
    rules: &Rules,
) -> Result<Scene, Refusal> {
    let gear = &rules.nature.gear;
    let anchor_to_lip_m = rules[Rule::AnchorShare] * setup.spacing_m;
    let mass_kg = setup.persons.get(person.saturating_sub(1));
    let lip = rules.nature.assumed.snow.of(snow).lip.at(Corner::Central);
    let turn = gear.turn.get(TURN).ok_or(Refusal::NoTurn(TURN))?;
    Ok(Scene {
        anchor_to_lip_m,
        lip_to_victim_m: setup.spacing_m - anchor_to_lip_m,
        victim_mass_kg: mass_kg.map_or(rules[Rule::PersonKg], |p| p.mass_kg),
        e: turn.efficiency,
        e_lip: 1.0 / lip.max(1.0),
        haulers: u32::try_from(haulers).unwrap_or(u32::MAX),
    })
}

/// What a system is called, how it is made of others in brackets.
fn called(system: System) -> String {
    match system.as_str().split_once(", ") {
        Some((ratio, made_of)) => format!("{ratio} ({made_of})"),
        None => system.as_str().to_owned(),
    }
}

/// Rope that the system takes, unless knots block the strand it pulls on or it finds no room.
fn rope_m(haul: &Haul, blocked: bool) -> Option<f64> {
    haul.rope_m
        .filter(|_| !(blocked && haul.system.needs_free_strand()))
}

fn missing(table: &[Haul], free_m: f64, blocked: bool) -> Vec<HaulReserve> {
    let line = |haul: &Haul| {
        let missing_m = rope_m(haul, blocked)? - free_m;
        (missing_m > 1e-9).then(|| HaulReserve {
            system: called(haul.system),
            missing_m,
        })
    };
    table.iter().filter_map(line).collect()
}

fn system(haul: &Haul, free_m: f64, blocked: bool) -> HaulSystem {
    HaulSystem {
        system: called(haul.system),
        rope_m: haul.rope_m,
        possible: rope_m(haul, blocked).is_some_and(|m| m <= free_m + 1e-9),
        pull_kn: haul.pull_n / 1000.0,
        strokes: haul.strokes,
        can: match haul.can {
            Can::No => CanPull::No,
            Can::Perhaps => CanPull::Perhaps,
            Can::Yes => CanPull::Yes,
        },
    }
}

/// The system with the surest pull among those the rope allows; of equals the one that takes least rope.
#[must_use]
pub fn best(systems: &[HaulSystem]) -> Option<&HaulSystem> {
    let rope_m = |s: &HaulSystem| s.rope_m.unwrap_or(f64::INFINITY);
    systems.iter().filter(|s| s.possible).max_by(|a, b| {
        let sure = a.can.cmp(&b.can);
        sure.then(rope_m(b).total_cmp(&rope_m(a)))
    })
}

fn words(systems: &[HaulSystem], fall: &FallReserve) -> String {
    let who = match fall.people {
        1 => "one person alone".to_owned(),
        n => format!("{n} people"),
    };
    let Some(best) = best(systems) else {
        return too_short(&who, fall);
    };
    match best.can {
        CanPull::Yes => format!("{who} could pull {}, on these figures", best.system),
        CanPull::Perhaps => format!(
            "{who} could perhaps pull {}, on these figures, if strong and standing well",
            best.system
        ),
        CanPull::No => format!(
            "{who} could not pull hard enough with any haul the free rope allows, on these figures"
        ),
    }
}

fn too_short(who: &str, fall: &FallReserve) -> String {
    let nearest = fall
        .hauls
        .iter()
        .min_by(|a, b| a.missing_m.total_cmp(&b.missing_m));
    match nearest {
        Some(haul) => format!(
            "{who} left; even a {} misses {:.1} m of free rope, hands and hitches counted",
            haul.system,
            (haul.missing_m * 10.0 - 1e-6).ceil() / 10.0
        ),
        None => format!("{who} left, and the anchor is too near for any haul"),
    }
}
