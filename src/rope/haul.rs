//! How the person in the crevasse can be hauled out, with the rope and the people that are left.

use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::Corner,
        haul::{Can, Haul, HaulSite},
        holding::Team,
    },
    plan::{
        fall::{HaulAnswer, HaulSystem, HaulTable},
        reach::Reach,
    },
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
        let mut short = reach.iter().filter(|r| r.short_m().is_some());
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        legs::{knots::Hardship, over::Over, spacing::Spacing, worst::Meeting},
        physics::{assumed::Snow, haul::System},
        practice::set::Source,
        rope::{
            reserve,
            stance::{self, Stance},
        },
        trip::party::Party,
    };

    fn rules() -> Rules {
        Rules::with_practice(&Source::Named("short-alpine")).unwrap()
    }

    /// The hauls for the first of three of 80 kg on firm snow, 12 m apart, whom two pull with so much free rope. With an
    /// anchor half way 6 m lie between it and the lip and 6 m hang below; a traveller runs 6 − 1.5 m (trade rules, section 11).
    fn hauls(free_m: f64, joined: bool) -> HaulTable {
        let (rules, drawn) = (rules(), Over::drawn(&[]));
        let three = Party::weighing(&[80.0; 3]).split_into(1).remove(0);
        let spacing = Spacing::tried(3, 12.0, &rules, &|_| Meeting::default());
        let draft = Draft::new(&three, spacing, drawn, Hardship::default(), &rules);
        let snow = Snow::Firm;
        let stance = Stance {
            snow,
            ..Stance::on(drawn, &rules)
        };
        let hauling = Hauling {
            draft: &draft,
            team: &stance::team(&draft, 4.0, stance, &rules).unwrap(),
            joined,
            rules: &rules,
        };
        let free = reserve::free(3, 12.0, free_m - 12.0).remove(0);
        hauling.table(&free).unwrap()
    }

    fn possible(table: &HaulTable) -> Vec<System> {
        let possible = table.systems.iter().filter(|s| s.possible);
        possible.map(|s| s.system).collect()
    }

    #[test]
    fn a_haul_is_possible_on_just_the_rope_that_it_takes_and_on_less_what_is_missing_is_told() {
        use System::{LoopAtAnchor, LoopAtLip, ThreeLoaded, ThreeNew};
        // On the loaded strand a 3:1 takes 2 × 4.5 + 2.5 m. Where a bend blocks that strand, a loop at the lip takes
        // 6 + 2 × 6 + 2.5 m, a 3:1 of its own rope 12 + 2 × 4.5 + 2.5 m, a loop at the anchor 2 × 12 + 2.5 m.
        for (free_m, joined, open) in [
            (11.5, false, vec![ThreeLoaded]),
            (20.5, true, vec![LoopAtLip]),
            (23.5, true, vec![LoopAtLip, ThreeNew]),
            (26.5, true, vec![LoopAtLip, LoopAtAnchor, ThreeNew]),
            (26.5, false, System::ALL.to_vec()),
        ] {
            assert_eq!(possible(&hauls(free_m, joined)), open, "{free_m}");
        }
        for (free_m, joined, want, want_m) in [
            (11.4, false, ThreeLoaded, 0.1),
            (20.0, true, LoopAtLip, 0.5),
        ] {
            let table = hauls(free_m, joined);
            let HaulAnswer::TooShort {
                system, missing_m, ..
            } = table.answer
            else {
                panic!("{table:?}");
            };
            assert_eq!((system, possible(&table)), (want, Vec::new()));
            assert!((missing_m - want_m).abs() < 1e-9, "{free_m}: {missing_m}");
        }
    }

    #[test]
    fn the_pull_is_the_weight_over_what_the_turns_and_the_lip_leave_of_it() {
        // Trade rules, section 11: W / (e_lip · A(e)); 80 kg, 1 + e for a loop and e = 0.53 for a karabiner; the lip of firm snow
        // takes 1.17 to 1.60 times the pull, the middle of which is 1.385.
        let table = hauls(11.5, false);
        let want_kn = 0.080 * 9.806_65 * 1.385 / 1.53;
        assert!(
            (table.systems[0].pull_kn - want_kn).abs() < 1e-9,
            "{table:?}"
        );
    }

    fn best(can: Can, pull_kn: f64, least_kn: f64) -> HaulAnswer {
        HaulAnswer::Best {
            system: System::LoopAtLip,
            can,
            haulers: 1,
            pull_kn,
            least_kn,
        }
    }

    /// Who is hardest to haul of two, whom so many pull; the loop for the second may end short of the lip.
    fn hardest_of(two: [(usize, HaulAnswer); 2], second_depth_m: f64) -> usize {
        let all = hauls(30.0, false);
        let table = |(i, (haulers, answer)): (usize, (usize, HaulAnswer))| HaulTable {
            person: i + 1,
            haulers,
            answer,
            ..all.clone()
        };
        let depths_m = [0.0, second_depth_m].into_iter();
        let reach = depths_m
            .zip(reserve::free(2, 12.0, 18.0))
            .map(|(depth_m, free)| Reach {
                depth_m,
                ..free.reach(12.0, false, &rules())
            });
        let tables = two.into_iter().enumerate().map(table).collect();
        hardest(tables, &reach.collect::<Vec<_>>())
            .expect("two")
            .person
    }

    #[test]
    fn of_hauls_that_can_be_done_the_one_is_hardest_that_asks_most_of_each() {
        let yes = |pull_kn| best(Can::Yes, pull_kn, 0.1);
        assert_eq!(
            hardest_of([(4, yes(0.6)), (2, yes(0.4))], 5.0),
            2,
            "150 N each and 200 N"
        );
        assert_eq!(
            hardest_of([(2, yes(0.4)), (1, yes(0.4))], 5.0),
            2,
            "200 N each and 400 N"
        );
        assert_eq!(
            hardest_of([(2, yes(0.4)), (2, yes(0.4))], 5.0),
            1,
            "of equals the first"
        );
        let strong = best(Can::Perhaps, 0.3, 0.1);
        let two = [(1, strong), (1, best(Can::Yes, 0.35, 0.14))];
        assert_eq!(
            hardest_of(two, 5.0),
            1,
            "one that only strong ones pull is harder"
        );
    }

    #[test]
    fn a_haul_that_nobody_can_do_is_harder_than_any_other() {
        let (strong, none) = (best(Can::Perhaps, 0.4, 0.4), best(Can::No, 0.9, 0.3));
        for depth_m in [5.0, -1.0] {
            assert_eq!(
                hardest_of([(1, strong), (1, none)], depth_m),
                2,
                "{depth_m}"
            );
        }
        // Of two that nobody can do the one whose easiest way asks more of each.
        let harder = best(Can::No, 0.8, 0.7);
        assert_eq!(
            hardest_of([(1, none), (1, harder)], 5.0),
            2,
            "300 N and 700 N"
        );
        assert_eq!(
            hardest_of([(1, none), (2, harder)], 5.0),
            2,
            "300 N and 350 N"
        );
        assert_eq!(
            hardest_of([(1, none), (3, harder)], 5.0),
            1,
            "300 N and 233 N"
        );
    }

    #[test]
    fn a_haul_that_cannot_be_done_is_told_of_those_first_whom_a_loop_reaches() {
        let (none, harder) = (best(Can::No, 0.9, 0.3), best(Can::No, 0.9, 0.7));
        let reached = hardest_of([(1, none), (1, harder)], 0.0);
        assert_eq!(reached, 2, "a loop that ends at the lip reaches it");
        let short = hardest_of([(1, none), (1, harder)], -0.5);
        assert_eq!(short, 1, "that no loop reaches the second is told beside");
        let too_short = HaulAnswer::TooShort {
            system: System::LoopAtLip,
            missing_m: 0.5,
            haulers: 1,
        };
        let near = HaulAnswer::AnchorTooNear { haulers: 1 };
        assert_eq!(
            hardest_of([(1, harder), (1, too_short)], 5.0),
            2,
            "without the rope"
        );
        assert_eq!(
            hardest_of([(1, too_short), (1, near)], 5.0),
            2,
            "without any room"
        );
    }
}
