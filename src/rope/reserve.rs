//! Spare rope for a rescue: what each end person must carry, and how deep what is carried reaches.

use crate::{
    physics::haul::{System, loop_at_lip_m},
    plan::{
        leg::Ledger,
        reach::{HaulReach, Reach, Side},
    },
    practice::{Cover, Reserve, Rule, Rules},
};

/// Free rope that a drop loop needs: reach factor × spacing, the ends, less a long sling; metres.
#[must_use]
pub fn loop_m(spacing_m: f64, rules: &Rules) -> f64 {
    loop_at_m(rules[Rule::ReachFactor], spacing_m, rules)
}

/// Rope by itself that a drop loop takes to whoever hangs on a taut rope, metres.
pub(crate) fn own_loop_m(spacing_m: f64, rules: &Rules) -> f64 {
    let to_lip_m = rules[Rule::AnchorShare] * spacing_m;
    loop_at_lip_m(
        to_lip_m,
        spacing_m - to_lip_m,
        rules.nature.gear.haul.rest_m,
    )
}

fn loop_at_m(factor: f64, spacing_m: f64, rules: &Rules) -> f64 {
    let reach_m = factor * spacing_m + rules[Rule::LoopEndsM];
    (reach_m - rules[Rule::SlingM]).max(0.0)
}

/// Spare coil of each end person, metres.
#[must_use]
pub fn coil_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    match (rules.choices.reserve.value, rules.choices.cover.value) {
        (Reserve::ChestCoils, _) => rules[Rule::chest_coils(people)] * rules[Rule::ChestCoilM],
        (Reserve::Reach, Cover::Ends) => end_coil_m(people, spacing_m, rules),
        (Reserve::Reach, Cover::Anyone) => (1..=people)
            .map(|person| less_behind(spans_behind(people, person), spacing_m, rules))
            .fold(0.0, f64::max),
    }
}

/// Coil that the reach factor asks of each end person, metres.
#[must_use]
pub fn end_coil_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    less_behind(people.saturating_sub(2), spacing_m, rules)
}

/// Coil that each end person must carry where brake knots block the loaded strand, so that a rescue takes one of its
/// own, metres: by the reach factor, and never by less than is taught.
#[must_use]
pub fn obliged_coil_m(people: usize, spacing_m: f64, rules: &Rules) -> f64 {
    let factor = rules[Rule::ReachFactor].max(rules[Rule::ObligedReachFactor]);
    let behind_m = spans_m(people.saturating_sub(2), spacing_m);
    (loop_at_m(factor, spacing_m, rules) - behind_m).max(0.0)
}

/// A strand for a rescue that is shorter than brake knots oblige to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct ShortReserve {
    /// Coil that each end person must carry, metres.
    pub(crate) coil_m: f64,
    /// What is missing of it, metres.
    pub(crate) short_m: f64,
    /// Rope on which the set-up with all of it would fit, metres.
    pub(crate) whole_m: f64,
}

/// Whether a team that ties brake knots carries less in each coil than they oblige to. Where the set-up asks for all of it, a
/// rope that is too short is told as such and not here.
pub(crate) fn short(
    people: usize,
    spacing_m: f64,
    ledger: &Ledger,
    coil_carried_m: f64,
    rules: &Rules,
) -> Option<ShortReserve> {
    let needed_m = ledger.coils_m / 2.0;
    let coil_m = obliged_coil_m(people, spacing_m, rules);
    let short_m = coil_m - coil_carried_m;
    let asked_for = needed_m > coil_m - 1e-9;
    (!asked_for && short_m >= 1e-9).then_some(ShortReserve {
        coil_m,
        short_m,
        whole_m: ledger.total_m + 2.0 * (coil_m - needed_m),
    })
}

fn less_behind(spans: usize, spacing_m: f64, rules: &Rules) -> f64 {
    (loop_m(spacing_m, rules) - spans_m(spans, spacing_m)).max(0.0)
}

/// Rope in so many spans, metres.
#[expect(
    clippy::cast_precision_loss,
    reason = "a rope team has five people at most"
)]
#[must_use]
pub fn spans_m(spans: usize, spacing_m: f64) -> f64 {
    spans as f64 * spacing_m
}

/// Spans of rope beyond the neighbour on the better side of a faller, from 1 to `people`.
fn spans_behind(people: usize, person: usize) -> usize {
    let ahead = person.saturating_sub(2);
    let behind = (people - person).saturating_sub(1);
    ahead.max(behind)
}

/// Free rope if one person falls.
///
/// ```
/// use schrund::{practice::{Rules, set::Source}, rope::reserve::free};
///
/// let rules = Rules::with_practice(&Source::Named("short-alpine"))?;
/// let all = free(3, 12.0, 6.0);
/// // Three at 12 m with coils of 6 m (common practice): the loop ends 8.5 m short of the lip for the middle one.
/// let free_m: Vec<f64> = all.iter().map(|free| free.free_m).collect();
/// assert_eq!(free_m, [18.0, 6.0, 18.0]);
/// assert_eq!(all[1].depth_m(12.0, &rules), -8.5);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Free {
    /// Position on the rope, from 1.
    pub person: usize,
    /// The side with more free rope.
    pub side: Side,
    /// People on that side.
    pub people: usize,
    /// Rope that they have free, metres.
    pub free_m: f64,
    /// Positions of those beyond the holder: it is free only once they have untied, secured first.
    pub needs_untied: Vec<usize>,
}

/// Free rope if each person falls, in rope order; each end person carries a coil of `coil_m`.
#[must_use]
pub fn free(people: usize, spacing_m: f64, coil_m: f64) -> Vec<Free> {
    let fall = |person: usize| {
        let (ahead, behind) = (person - 1, people - person);
        let (side, beyond) = if ahead > behind {
            (Side::Ahead, 1..person.saturating_sub(1))
        } else {
            (Side::Behind, person + 2..people + 1)
        };
        Free {
            person,
            side,
            people: ahead.max(behind),
            free_m: coil_m + spans_m(spans_behind(people, person), spacing_m),
            needs_untied: beyond.collect(),
        }
    };
    (1..=people).map(fall).collect()
}

impl Free {
    /// How deep below the lip a drop loop reaches from an anchor where the holder stands, a long sling in it counted
    /// and hands and hitches too, metres; negative where it ends short of the lip.
    #[must_use]
    pub fn depth_m(&self, spacing_m: f64, rules: &Rules) -> f64 {
        self.free_m + rules[Rule::SlingM] - spacing_m - rules.nature.gear.haul.rest_m
    }

    /// Whether it reaches who hangs below the lip, and be it as deep as anybody can.
    pub(crate) fn is_below_lip(&self, spacing_m: f64, rules: &Rules) -> bool {
        let deepest_m = (spacing_m - rules[Rule::HolderClearM]).max(0.0);
        self.depth_m(spacing_m, rules) >= rules[Rule::NearLipM].min(deepest_m) - 1e-9
    }

    /// The same as a plan tells it, with the depths that each haul reaches; brake knots block the loaded strand.
    #[must_use]
    pub fn reach(self, spacing_m: f64, blocked: bool, rules: &Rules) -> Reach {
        let deepest_m = (spacing_m - rules[Rule::HolderClearM]).max(0.0);
        let depth_m = self.depth_m(spacing_m, rules);
        let hauls = System::ALL.iter().filter_map(|&system| {
            let free_m = self.for_system_m(system, rules);
            let allowance = &rules.nature.gear.haul;
            let [from_m, to_m] = system.depths_m(spacing_m, free_m, allowance)?;
            let to_m = to_m.min(deepest_m);
            let open = !(blocked && system.needs_free_strand()) && from_m <= to_m + 1e-9;
            open.then_some(HaulReach {
                system,
                from_m,
                to_m,
            })
        });
        Reach {
            hauls: hauls.collect(),
            haul: None,
            depth_m: depth_m.min(deepest_m),
            whoever: depth_m >= deepest_m - 1e-9,
            barely: depth_m >= -1e-9 && !self.is_below_lip(spacing_m, rules),
            person: self.person,
            side: self.side,
            people: self.people,
            free_m: self.free_m,
            needs_untied: self.needs_untied,
        }
    }

    /// Rope for one way to haul, metres: a long sling lengthens every strand that goes down to who fell.
    #[must_use]
    pub fn for_system_m(&self, system: System, rules: &Rules) -> f64 {
        if system.needs_free_strand() {
            self.free_m
        } else {
            self.free_m + rules[Rule::SlingM]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::{Origin, set::Source};

    fn rules(set: &str) -> Rules {
        Rules::with_practice(&Source::Named(set)).unwrap()
    }

    #[test]
    fn coils_of_two_three_and_four() {
        // Trade rules, section 8: κ·d, (κ − 1)·d, nothing.
        let rules = rules("short-alpine");
        let coils: Vec<f64> = [(2, 15.0), (3, 12.0), (4, 20.0)]
            .iter()
            .map(|&(n, d)| coil_m(n, d, &rules))
            .collect();
        assert_eq!(coils, [22.5, 6.0, 0.0]);
        assert!(
            coil_m(4, 13.7, &self::rules("constant")).abs() < 1e-9,
            "2·d lies behind at κ = 2"
        );
    }

    fn depths_m(people: usize, spacing_m: f64, coil_m: f64, rules: &Rules) -> Vec<f64> {
        let all = free(people, spacing_m, coil_m);
        all.iter().map(|f| f.depth_m(spacing_m, rules)).collect()
    }

    #[test]
    fn how_deep_a_loop_reaches() {
        // Worked by hand: coil + rope behind − spacing − 2.5 m for hands and hitches.
        let rules = rules("short-alpine");
        assert_eq!(depths_m(2, 15.0, 22.5, &rules), [5.0, 5.0]);
        assert_eq!(depths_m(3, 12.0, 6.0, &rules), [3.5, -8.5, 3.5]);
        assert_eq!(
            depths_m(3, 13.0, 6.5, &rules),
            [4.0, -9.0, 4.0],
            "as needed"
        );
        assert_eq!(
            depths_m(3, 13.0, 15.5, &rules),
            [13.0, 0.0, 13.0],
            "60 m carried"
        );
        let reach = free(3, 13.0, 15.5).remove(0).reach(13.0, false, &rules);
        assert!(
            (reach.depth_m - 10.0).abs() < 1e-9 && reach.whoever,
            "{reach:?}"
        );
        assert_eq!(depths_m(4, 20.0, 0.0, &rules), [17.5, -2.5, -2.5, 17.5]);
    }

    #[test]
    fn rope_beyond_the_holder_is_free_once_its_people_have_untied() {
        let untied = |people: usize| -> Vec<Vec<usize>> {
            free(people, 10.0, 5.0)
                .into_iter()
                .map(|f| f.needs_untied)
                .collect()
        };
        assert!(untied(2).iter().all(Vec::is_empty));
        assert_eq!(untied(3), [vec![3], vec![], vec![1]]);
        assert_eq!(untied(4), [vec![3, 4], vec![4], vec![1], vec![1, 2]]);
    }

    #[test]
    fn covering_anyone_lengthens_the_coils_until_nothing_is_missing() {
        let mut rules = rules("short-alpine");
        rules.choices.cover.set(Some(Cover::Anyone), Origin::Trip);
        for people in 3..=5 {
            let all = free(people, 12.0, coil_m(people, 12.0, &rules));
            let least_m = all.iter().map(|f| f.free_m).fold(f64::INFINITY, f64::min);
            assert!(
                least_m >= loop_m(12.0, &rules) - 1e-9,
                "{people}: {least_m}"
            );
        }
        assert!(
            (coil_m(3, 12.0, &rules) - 18.0).abs() < 1e-9,
            "the whole loop"
        );
    }

    #[test]
    fn ends_lengthen_a_loop_and_a_sling_shortens_it() {
        let mut rules = rules("short-alpine");
        rules.set(Rule::LoopEndsM, 1.0, Origin::Trip).unwrap();
        let is = |rules: &Rules, spacing_m: f64, want_m: f64| {
            (loop_m(spacing_m, rules) - want_m).abs() < 1e-9
        };
        assert!(is(&rules, 12.0, 19.0), "1.5 × 12 + 1");
        rules.set(Rule::SlingM, 2.4, Origin::Trip).unwrap();
        assert!(is(&rules, 12.0, 16.6), "less the sling");
        assert!(is(&rules, 0.5, 0.0), "a sling alone");
    }

    /// What is missing of the coil that knots oblige to and the rope that would hold it, where each end has a coil that the
    /// set-up asks for and one that it carries, metres.
    fn short_m(people: usize, spacing_m: f64, asked_m: f64, carried_m: f64) -> Option<[f64; 3]> {
        let ledger = Ledger {
            spans_m: 0.0,
            knots_m: 0.0,
            tie_ins_m: 0.0,
            coils_m: 2.0 * asked_m,
            total_m: 40.0 + 2.0 * asked_m,
        };
        let short = short(
            people,
            spacing_m,
            &ledger,
            carried_m,
            &rules("short-alpine"),
        )?;
        Some([short.coil_m, short.short_m, short.whole_m])
    }

    #[test]
    fn a_coil_shorter_than_knots_oblige_to_is_told_unless_the_set_up_asks_for_all_of_it() {
        // 1.5 × 15 m for a pair; of three at 12 m one span of it lies behind the holder.
        assert_eq!(short_m(2, 15.0, 20.0, 20.0), Some([22.5, 2.5, 85.0]));
        assert_eq!(short_m(3, 12.0, 2.0, 4.0), Some([6.0, 2.0, 52.0]));
        assert_eq!(
            short_m(2, 15.0, 20.0, 22.5),
            None,
            "carried though not asked for"
        );
        for asked_m in [22.5, 25.0] {
            assert_eq!(
                short_m(2, 15.0, asked_m, 20.0),
                None,
                "a rope too short for {asked_m}"
            );
        }
    }

    #[test]
    fn a_loop_that_ends_at_the_lip_or_as_deep_as_anybody_hangs_counts() {
        let rules = rules("short-alpine");
        let reach = |coil_m: f64, person: usize| {
            free(3, 13.0, coil_m)
                .remove(person - 1)
                .reach(13.0, false, &rules)
        };
        // For the middle one of three at 13 m coils of 15.5 m end at the lip: 15.5 − 13 − 2.5.
        let at_lip = reach(15.5, 2);
        let on_loop = at_lip.hauls.iter().find(|h| h.system == System::LoopAtLip);
        assert_eq!(on_loop.map(|h| [h.from_m, h.to_m]), Some([0.0; 2]));
        assert!(!at_lip.whoever);
        // The holder keeps 3 m from the lip, so nobody hangs deeper than 10 m: 12.5 + 13 − 13 − 2.5.
        let deepest = reach(12.5, 1);
        assert!(
            deepest.whoever && (deepest.depth_m - 10.0).abs() < 1e-9,
            "{deepest:?}"
        );
        assert!(!reach(12.4, 1).whoever);
    }

    #[test]
    fn a_long_sling_lengthens_the_loop_and_no_strand_that_only_pulls() {
        let mut rules = rules("short-alpine");
        rules.set(Rule::SlingM, 2.5, Origin::Trip).unwrap();
        // 22.5 m of coil, 15 m to the lip, 2.5 m for hands and hitches as of the sling.
        assert_eq!(depths_m(2, 15.0, 22.5, &rules), [7.5; 2]);
        let free = free(2, 15.0, 22.5).remove(0);
        let for_m = |systems: [System; 2]| -> Vec<f64> {
            let free_m = systems.iter().map(|s| free.for_system_m(*s, &rules));
            free_m.collect()
        };
        assert_eq!(for_m([System::LoopAtLip, System::ThreeNew]), [25.0; 2]);
        assert_eq!(for_m([System::ThreeLoaded, System::Nine]), [22.5; 2]);
    }

    #[test]
    fn knots_block_the_hauls_on_the_loaded_strand_and_none_reaches_deeper_than_anybody_hangs() {
        use System::{LoopAtLip, Nine, SixLoopOnThree, ThreeLoaded, ThreeNew};
        let open = |rules: &Rules, blocked: bool| -> Vec<System> {
            let reach = free(2, 15.0, 22.0).remove(0).reach(15.0, blocked, rules);
            reach.hauls.iter().map(|haul| haul.system).collect()
        };
        let mut rules = rules("short-alpine");
        let all = [LoopAtLip, ThreeLoaded, ThreeNew, SixLoopOnThree, Nine];
        assert_eq!(open(&rules, false), all);
        assert_eq!(open(&rules, true), [LoopAtLip, ThreeNew]);
        // A traveller runs 2.25 m on its own strand of 22 m: 15 m to the lip, 2.5 m for hands. With 1.5 m of clearance it hauls
        // from 11.25 m down, and nobody hangs deeper than 9 m.
        rules.set(Rule::HolderClearM, 6.0, Origin::Trip).unwrap();
        assert_eq!(open(&rules, true), [LoopAtLip]);
    }
}
