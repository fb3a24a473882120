//! Who has what on them for the rescue that the plan picked: counts of the rules, and what the haul is built of.

use crate::{
    physics::haul::System,
    plan::{
        fall::HaulAnswer,
        gear::{GearItem, GearRow, GearUse},
        leg::Leg,
    },
    practice::{Rule, Rules, Standing},
    rope::legs::RopedLeg,
    trip::{
        party::{Person, RopeTeam},
        zone::Surface,
    },
};

/// What is on everybody, whatever the ice, with the figure that says how many.
const EVERYBODY: [(GearItem, GearUse, Rule); 6] = [
    (GearItem::Harness, GearUse::TieIn, Rule::KitHarnesses),
    (GearItem::Helmet, GearUse::Head, Rule::KitHelmets),
    (GearItem::IceAxe, GearUse::Brake, Rule::KitAxes),
    (GearItem::Sling, GearUse::JoinAnchor, Rule::KitSlings),
    (GearItem::PrusikCord, GearUse::ClimbRope, Rule::KitCords),
    (GearItem::Karabiner, GearUse::Clip, Rule::KitKarabiners),
];

/// The list, by team and person; empty where no leg is roped.
pub(crate) fn gear(
    rules: &Rules,
    teams: &[RopeTeam],
    roped: &[RopedLeg<'_>],
    legs: &[Leg],
) -> Vec<GearRow> {
    let roped: Vec<&RopedLeg<'_>> = roped.iter().filter(|leg| leg.sketch.roped).collect();
    if roped.is_empty() {
        return Vec::new();
    }
    let surface = |of| {
        let zones = roped.iter().flat_map(|leg| &leg.zones);
        zones.into_iter().any(|zone| zone.surface_counted() == of)
    };
    let kit = Kit {
        rules,
        snow: surface(Surface::Snow) || roped.iter().any(|leg| leg.undrawn),
        bare: surface(Surface::Bare),
    };
    teams.iter().flat_map(|team| kit.of(team, legs)).collect()
}

/// What decides about the list of everybody.
struct Kit<'a> {
    rules: &'a Rules,
    snow: bool,
    bare: bool,
}

impl Kit<'_> {
    fn of(&self, team: &RopeTeam, legs: &[Leg]) -> Vec<GearRow> {
        let (haul, last) = (picked(team.number, legs), team.size());
        let people = (1..).zip(&team.people);
        let rows = people.flat_map(|(position, person)| {
            let mut rows = self.on_everybody(person, team.number);
            // Whoever falls, one end of the rope is left on the side that hauls.
            let at_end = position == 1 || position == last;
            let sling = self.long_sling().filter(|_| at_end);
            rows.extend(sling.map(|row| row.on(person, team.number)));
            let haul = haul.filter(|_| at_end);
            rows.extend(haul.into_iter().flat_map(|system| {
                let rows = self.for_haul(system);
                rows.map(|row| row.on(person, team.number))
            }));
            rows
        });
        rows.filter(|row| row.count > 0).collect()
    }

    fn on_everybody(&self, person: &Person, team: usize) -> Vec<GearRow> {
        let snow = (
            GearItem::SnowAnchor,
            GearUse::AnchorInSnow,
            Rule::KitSnowAnchors,
        );
        let ice = (GearItem::IceScrew, GearUse::AnchorInIce, Rule::KitIceScrews);
        let anchors = [(self.snow, snow), (self.bare, ice)];
        let anchors = anchors
            .into_iter()
            .filter(|(on, _)| *on)
            .map(|(_, row)| row);
        let all = EVERYBODY.into_iter().chain(anchors);
        all.map(|(what, purpose, rule)| self.counted(what, purpose, rule).on(person, team))
            .collect()
    }

    /// The sling that the coils are measured with, if any.
    fn long_sling(&self) -> Option<Row> {
        let length_m = self.rules[Rule::SlingM];
        (length_m > 0.0).then(|| Row {
            what: GearItem::Sling,
            purpose: GearUse::LongerLoop,
            count: 1,
            length_m: Some(length_m),
            system: None,
            standing: self.rules.figure(Rule::SlingM).standing_shown(),
        })
    }

    fn for_haul(&self, system: System) -> [Row; 3] {
        let built = |what, purpose, count| Row {
            what,
            purpose,
            count,
            length_m: None,
            system: Some(system),
            standing: Standing::Derived.as_str().to_owned(),
        };
        [
            built(GearItem::Karabiner, GearUse::HaulTurns, system.turns()),
            built(GearItem::PrusikCord, GearUse::HaulGrips, system.grips()),
            Row {
                system: Some(system),
                ..self.counted(GearItem::Pulley, GearUse::HaulEase, Rule::KitPulleys)
            },
        ]
    }

    fn counted(&self, what: GearItem, purpose: GearUse, rule: Rule) -> Row {
        Row {
            what,
            purpose,
            count: whole(self.rules[rule]),
            length_m: None,
            system: None,
            standing: self.rules.figure(rule).standing_shown(),
        }
    }
}

/// A row before somebody has it on them.
struct Row {
    what: GearItem,
    purpose: GearUse,
    count: usize,
    length_m: Option<f64>,
    system: Option<System>,
    standing: String,
}

impl Row {
    fn on(self, person: &Person, team: usize) -> GearRow {
        GearRow {
            person: person.called.clone(),
            team,
            what: self.what,
            count: self.count,
            purpose: self.purpose,
            length_m: self.length_m,
            system: self.system,
            standing: self.standing,
        }
    }
}

/// The haul that takes most of those that the plan picked for a team on its legs, or that came nearest.
fn picked(team: usize, legs: &[Leg]) -> Option<System> {
    let setups = legs.iter().flat_map(|leg| &leg.teams);
    let tables = setups
        .filter(|s| s.team == team)
        .filter_map(|s| s.haul.as_ref());
    let systems = tables.filter_map(|table| match table.answer {
        HaulAnswer::Best { system, .. } | HaulAnswer::TooShort { system, .. } => Some(system),
        HaulAnswer::AnchorTooNear { .. } => None,
    });
    systems.max_by_key(|system| (system.turns(), *system))
}

/// Nobody carries part of a thing.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded to 0..=20 by data/rules.toml"
)]
fn whole(count: f64) -> usize {
    count.round() as usize
}
