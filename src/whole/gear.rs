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
const EVERYBODY: [Kind; 7] = [
    (GearItem::Harness, GearUse::TieIn, Rule::KitHarnesses),
    (GearItem::Helmet, GearUse::Head, Rule::KitHelmets),
    (GearItem::IceAxe, GearUse::Brake, Rule::KitAxes),
    (GearItem::Sling, GearUse::JoinAnchor, Rule::KitSlings),
    (GearItem::PrusikCord, GearUse::ClimbRope, Rule::KitCords),
    (GearItem::Karabiner, GearUse::Clip, Rule::KitKarabiners),
    (GearItem::Headlamp, GearUse::Light, Rule::KitLamps),
];
/// Where snow hides gaps, to make an anchor in it.
const IN_SNOW: Kind = (
    GearItem::SnowAnchor,
    GearUse::AnchorInSnow,
    Rule::KitSnowAnchors,
);
/// The same, on whoever may go first.
const AT_END_IN_SNOW: Kind = (GearItem::Probe, GearUse::FindGaps, Rule::KitProbes);
/// Where ice is roped that is bare.
const IN_ICE: Kind = (GearItem::IceScrew, GearUse::AnchorInIce, Rule::KitIceScrews);
/// Where bare ice is met, on the rope or not.
const ON_ICE: Kind = (GearItem::Crampons, GearUse::StandOnIce, Rule::KitCrampons);

/// A thing, what it is for, and the figure that says how many.
type Kind = (GearItem, GearUse, Rule);

/// The list, by team and person; empty where no leg is roped.
pub(crate) fn gear(
    rules: &Rules,
    teams: &[RopeTeam],
    roped: &[RopedLeg<'_>],
    legs: &[Leg],
) -> Vec<GearRow> {
    let on_rope = || roped.iter().filter(|leg| leg.sketch.roped);
    if on_rope().next().is_none() {
        return Vec::new();
    }
    let has = |leg: &RopedLeg<'_>, of| leg.zones.iter().any(|zone| zone.surface_counted() == of);
    let kit = Kit {
        rules,
        snow: on_rope().any(|leg| has(leg, Surface::Snow) || leg.undrawn),
        bare: on_rope().any(|leg| has(leg, Surface::Bare)),
        bare_met: roped.iter().any(|leg| has(leg, Surface::Bare)),
    };
    teams.iter().flat_map(|team| kit.of(team, legs)).collect()
}

/// What decides about the list of everybody.
struct Kit<'a> {
    rules: &'a Rules,
    /// Whether snow hides gaps where the team is roped.
    snow: bool,
    /// Whether ice is bare where the team is roped.
    bare: bool,
    /// Whether ice is bare anywhere on the way.
    bare_met: bool,
}

impl Kit<'_> {
    fn of(&self, team: &RopeTeam, legs: &[Leg]) -> Vec<GearRow> {
        let (haul, last) = (picked(team.number, legs), team.size());
        let people = (1..).zip(&team.people);
        let rows = people.flat_map(|(position, person)| {
            // Whoever falls, one end of the rope is left on the side that hauls; and either may go first.
            let at_end = position == 1 || position == last;
            let kinds = self.kinds(at_end);
            let rows = kinds.map(|kind| self.counted(kind).on(person, team.number));
            let mut rows: Vec<GearRow> = rows.collect();
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

    fn kinds(&self, at_end: bool) -> impl Iterator<Item = Kind> {
        let by_ice = [
            (self.snow, IN_SNOW),
            (self.snow && at_end, AT_END_IN_SNOW),
            (self.bare, IN_ICE),
            (self.bare_met, ON_ICE),
        ];
        let by_ice = by_ice.into_iter().filter(|(on, _)| *on);
        let by_ice = by_ice.map(|(_, kind)| kind);
        EVERYBODY.into_iter().chain(by_ice)
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
                ..self.counted((GearItem::Pulley, GearUse::HaulEase, Rule::KitPulleys))
            },
        ]
    }

    fn counted(&self, (what, purpose, rule): Kind) -> Row {
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
