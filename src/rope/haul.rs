//! How the person in the crevasse can be hauled out, with the rope and the people that are left.

use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::Corner,
        haul::{Can, Haul, HaulSite},
        holding::Team,
    },
    plan::fall::{HaulAnswer, HaulSystem, HaulTable, Reach},
    practice::{Rule, Rules, nature::TURN},
    rope::{draft::Draft, reserve::Free},
};

/// The hauls of one team on one leg.
#[derive(Clone, Copy)]
pub(crate) struct Hauling<'a> {
    /// The team.
    pub(crate) draft: &'a Draft,
    /// It as it falls: what it stands on, and the masses that hang on the rope.
    pub(crate) team: &'a Team,
    /// Whether two ropes are joined in the one that it is tied on.
    pub(crate) joined: bool,
    /// The rules in force.
    pub(crate) rules: &'a Rules,
}

impl Hauling<'_> {
    /// The ways to haul one person out.
    ///
    /// # Errors
    /// A sentence naming the first figure that lies outside what the model can be asked.
    pub(crate) fn table(&self, free: &Free) -> Result<HaulTable, Refusal> {
        let blocked = self.joined || self.draft.knots.count > 0;
        let scene = self.scene(free)?;
        let hauls = scene.table(&self.rules.nature.gear)?;
        let ways: Vec<Way> = hauls
            .iter()
            .map(|&haul| Way {
                haul,
                free_m: free.for_system_m(haul.system, self.rules),
                blocked,
            })
            .collect();
        let systems: Vec<HaulSystem> = ways.iter().map(Way::system).collect();
        Ok(HaulTable {
            person: free.person,
            haulers: free.people,
            anchor_to_lip_m: scene.anchor_to_lip_m,
            lip_to_person_m: scene.lip_to_victim_m,
            lip_share: scene.e_lip,
            needs_own_strand: blocked,
            answer: answer(&ways, &systems, free.people),
            hands_m: self.rules.nature.gear.haul.rest_m,
            systems,
        })
    }

    /// The rope hangs taut over a lip that nobody padded: its factor is the central one of the fall model.
    fn scene(&self, free: &Free) -> Result<HaulSite, Refusal> {
        let (rules, spacing_m) = (self.rules, self.draft.spacing.spacing_m);
        let anchor_to_lip_m = rules[Rule::AnchorShare] * spacing_m;
        let mass_kg = self.team.masses_kg.get(free.person.saturating_sub(1));
        let kind = rules.nature.assumed.snow.of(self.team.snow);
        let turn = rules
            .nature
            .gear
            .turn
            .get(TURN)
            .ok_or(Refusal::NoTurn(TURN))?;
        Ok(HaulSite {
            anchor_to_lip_m,
            lip_to_victim_m: spacing_m - anchor_to_lip_m,
            victim_mass_kg: mass_kg.copied().unwrap_or(rules[Rule::PersonKg]),
            e: turn.efficiency,
            e_lip: 1.0 / kind.lip.at(Corner::Central).max(1.0),
            haulers: u32::try_from(free.people).unwrap_or(u32::MAX),
        })
    }
}

/// One way to haul, and the rope that is there for it.
#[derive(Clone, Copy)]
struct Way {
    haul: Haul,
    free_m: f64,
    blocked: bool,
}

impl Way {
    /// Rope that it takes, unless knots block the strand it pulls on or it finds no room, metres.
    fn rope_m(&self) -> Option<f64> {
        let blocked = self.blocked && self.haul.system.needs_free_strand();
        self.haul.rope_m.filter(|_| !blocked)
    }

    /// What is missing for it, metres.
    fn missing_m(&self) -> Option<f64> {
        let missing_m = self.rope_m()? - self.free_m;
        (missing_m > 1e-9).then_some(missing_m)
    }

    fn system(&self) -> HaulSystem {
        HaulSystem {
            system: self.haul.system,
            rope_m: self.haul.rope_m,
            possible: self.rope_m().is_some_and(|m| m <= self.free_m + 1e-9),
            pull_kn: self.haul.pull_n / 1000.0,
            strokes: self.haul.strokes,
            can: self.haul.can,
        }
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

/// The haul that is hardest, whoever falls: none that those left can do before one that they can, then the one that asks most
/// of each of them. Where no loop reaches somebody that is told of them, and what nobody tells yet comes first; of equals
/// the first.
pub(crate) fn hardest(tables: Vec<HaulTable>, reach: &[Reach]) -> Option<HaulTable> {
    let reached = |person: usize| {
        let mut short = reach.iter().filter(|r| r.depth_m < -1e-9);
        !short.any(|r| r.person == person)
    };
    let harder = |a: &HaulTable, b: &HaulTable| {
        let (a, b) = (
            Hardness::of(a, reached(a.person)),
            Hardness::of(b, reached(b.person)),
        );
        let most = a.sort.cmp(&b.sort).then(a.by.total_cmp(&b.by));
        most.is_gt()
    };
    let all = tables.into_iter();
    all.reduce(|hardest, next| match harder(&next, &hardest) {
        true => next,
        false => hardest,
    })
}

/// How hard a haul is.
#[derive(Clone, Copy)]
struct Hardness {
    /// Harder is greater.
    sort: u8,
    /// By how much within its sort: kilonewtons for each who pulls, or metres of rope missing.
    by: f64,
}

impl Hardness {
    #[expect(
        clippy::cast_precision_loss,
        reason = "a rope team has five people at most"
    )]
    fn of(table: &HaulTable, reached: bool) -> Self {
        let each = |kn: f64| kn / table.haulers.max(1) as f64;
        let (sort, by) = match table.answer {
            HaulAnswer::Best { can, pull_kn, .. } if can > Can::No => {
                return Self {
                    sort: u8::from(can == Can::Perhaps),
                    by: each(pull_kn),
                };
            }
            HaulAnswer::Best { least_kn, .. } => (1, each(least_kn)),
            HaulAnswer::TooShort { missing_m, .. } => (2, missing_m),
            HaulAnswer::AnchorTooNear { .. } => (3, 0.0),
        };
        let told_of_the_loop = if reached { 3 } else { 0 };
        Self {
            sort: 1 + told_of_the_loop + sort,
            by,
        }
    }
}

fn answer(ways: &[Way], systems: &[HaulSystem], haulers: usize) -> HaulAnswer {
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
    let missing = ways.iter().filter_map(|w| Some((w, w.missing_m()?)));
    match missing.min_by(|a, b| a.1.total_cmp(&b.1)) {
        Some((way, missing_m)) => HaulAnswer::TooShort {
            system: way.haul.system,
            missing_m,
            haulers,
        },
        None => HaulAnswer::AnchorTooNear { haulers },
    }
}
