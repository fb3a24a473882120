//! How the person in the crevasse can be hauled out, with the rope and the people that are left.

use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Corner, Snow},
        haul::{Haul, HaulSite},
    },
    plan::fall::{FallReserve, HaulAnswer, HaulReserve, HaulSystem, HaulTable},
    practice::{Rule, Rules, nature::TURN},
    rope::{draft::Draft, reserve::Free},
};

/// The hauls of one team on one leg.
#[derive(Clone, Copy)]
pub(crate) struct Hauling<'a> {
    /// The team.
    pub(crate) draft: &'a Draft,
    /// What it stands on.
    pub(crate) snow: Snow,
    /// The rules in force.
    pub(crate) rules: &'a Rules,
}

impl Hauling<'_> {
    /// What is missing for each haul in everybody's fall, and the haul table for the fall of one person.
    ///
    /// # Errors
    /// A sentence naming the first figure that lies outside what the model can be asked.
    pub(crate) fn tables(
        &self,
        frees: &[Free],
        person: usize,
    ) -> Result<(Vec<FallReserve>, Option<HaulTable>), Refusal> {
        let blocked = self.draft.knots.count > 0;
        let (mut falls, mut table) = (Vec::new(), None);
        for free in frees {
            let scene = self.scene(free)?;
            let hauls = scene.table(&self.rules.nature.gear)?;
            let fall = free.with(missing(&hauls, free.free_m, blocked));
            if fall.person == person {
                table = Some(self.table(&fall, &scene, &hauls));
            }
            falls.push(fall);
        }
        Ok((falls, table))
    }

    fn table(&self, fall: &FallReserve, scene: &HaulSite, hauls: &[Haul]) -> HaulTable {
        let blocked = self.draft.knots.count > 0;
        let systems: Vec<HaulSystem> = hauls
            .iter()
            .map(|haul| system(haul, fall.free_m, blocked))
            .collect();
        HaulTable {
            person: fall.person,
            haulers: fall.people,
            anchor_to_lip_m: scene.anchor_to_lip_m,
            lip_to_person_m: scene.lip_to_victim_m,
            lip_share: scene.e_lip,
            needs_own_strand: blocked,
            answer: answer(&systems, fall),
            hands_m: self.rules.nature.gear.haul.rest_m,
            systems,
        }
    }

    /// The rope hangs taut over a lip that nobody padded: its factor is the central one of the fall model.
    fn scene(&self, free: &Free) -> Result<HaulSite, Refusal> {
        let (rules, spacing_m) = (self.rules, self.draft.spacing.spacing_m);
        let anchor_to_lip_m = rules[Rule::AnchorShare] * spacing_m;
        let person = self.draft.persons.get(free.person.saturating_sub(1));
        let kind = rules.nature.assumed.snow.of(self.snow);
        let turn = rules
            .nature
            .gear
            .turn
            .get(TURN)
            .ok_or(Refusal::NoTurn(TURN))?;
        Ok(HaulSite {
            anchor_to_lip_m,
            lip_to_victim_m: spacing_m - anchor_to_lip_m,
            victim_mass_kg: person.map_or(rules[Rule::PersonKg], |p| p.mass_kg),
            e: turn.efficiency,
            e_lip: 1.0 / kind.lip.at(Corner::Central).max(1.0),
            haulers: u32::try_from(free.people).unwrap_or(u32::MAX),
        })
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
        (missing_m > 1e-9).then_some(HaulReserve {
            system: haul.system,
            missing_m,
        })
    };
    table.iter().filter_map(line).collect()
}

fn system(haul: &Haul, free_m: f64, blocked: bool) -> HaulSystem {
    HaulSystem {
        system: haul.system,
        rope_m: haul.rope_m,
        possible: rope_m(haul, blocked).is_some_and(|m| m <= free_m + 1e-9),
        pull_kn: haul.pull_n / 1000.0,
        strokes: haul.strokes,
        can: haul.can,
    }
}

/// The system with the surest pull among those the rope allows; of equals the one that takes least rope.
#[must_use]
pub(crate) fn best(systems: &[HaulSystem]) -> Option<&HaulSystem> {
    let rope_m = |s: &HaulSystem| s.rope_m.unwrap_or(f64::INFINITY);
    systems.iter().filter(|s| s.possible).max_by(|a, b| {
        let sure = a.can.cmp(&b.can);
        sure.then(rope_m(b).total_cmp(&rope_m(a)))
    })
}

fn answer(systems: &[HaulSystem], fall: &FallReserve) -> HaulAnswer {
    let haulers = fall.people;
    if let Some(best) = best(systems) {
        let possible = systems.iter().filter(|s| s.possible);
        return HaulAnswer::Best {
            system: best.system,
            can: best.can,
            haulers,
            pull_kn: best.pull_kn,
            least_kn: possible.map(|s| s.pull_kn).fold(best.pull_kn, f64::min),
        };
    }
    let missing = fall.hauls.iter();
    let nearest = missing.min_by(|a, b| a.missing_m.total_cmp(&b.missing_m));
    match nearest {
        Some(haul) => HaulAnswer::TooShort {
            system: haul.system,
            missing_m: haul.missing_m,
            haulers,
        },
        None => HaulAnswer::AnchorTooNear { haulers },
    }
}
