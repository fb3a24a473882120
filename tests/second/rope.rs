//! The rope of one team on one leg: knots, coils, ledger, the rope as carried, how deep it reaches, what it covers.

use super::{
    case::{Case, Rope},
    figures::{
        CAP_M, FROM_LIP_M, HANDS_M, KNOT_ROPE_M, NEAR_ROPE_M, Reserve, SOLD_M, STEP_M, kg_per_m,
    },
    line::Line,
    stretch::{Roped, habit_m, need_m, stepped, suits_m, worst},
};

/// Where the rope goes, metres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ledger {
    pub(super) knots: u8,
    pub(super) coil_m: f64,
    pub(super) spans_m: f64,
    pub(super) knots_m: f64,
    pub(super) tie_ins_m: f64,
    pub(super) coils_m: f64,
}

impl Ledger {
    pub(super) fn total_m(&self) -> f64 {
        self.tied_m() + self.coils_m
    }

    /// All but the coils.
    fn tied_m(&self) -> f64 {
        self.spans_m + self.knots_m + self.tie_ins_m
    }
}

/// Spans behind the better holder when this person (from 1) falls, their rope being free once those on it untie.
fn spans_behind(people: usize, person: usize) -> usize {
    // Those ahead of the fallen one, and those behind: each side but its holder.
    let ahead = person.checked_sub(2);
    let behind = (people - person).checked_sub(1);
    ahead.max(behind).expect("somebody is left")
}

/// The spare coil of each end, metres.
fn coil_m(case: &Case, spacing_m: f64) -> f64 {
    match case.practice.reserve {
        Reserve::Chest { coil_m, coils } => coil_m * coils[case.people - 2],
        Reserve::Reach(factor) => {
            let loop_m = factor * spacing_m - case.sling_m;
            let covered = |person: usize| {
                let spans = spans_behind(case.people, person) as f64;
                (loop_m - spans * spacing_m).max(0.0)
            };
            let ends = covered(1);
            if case.cover_anyone {
                (2..case.people).map(covered).fold(ends, f64::max)
            } else {
                ends
            }
        }
    }
}

/// What a set-up of this spacing takes.
pub(super) fn ledger(case: &Case, spacing_m: f64, with_knots: bool) -> Ledger {
    let knots = if with_knots { 2 * case.layout.knots } else { 0 };
    let coil_m = coil_m(case, spacing_m);
    Ledger {
        knots,
        coil_m,
        spans_m: (case.people as f64 - 1.0) * spacing_m,
        knots_m: f64::from(knots) * KNOT_ROPE_M,
        tie_ins_m: case.people as f64 * case.tie_in_m(),
        coils_m: 2.0 * coil_m,
    }
}

/// The longest length sold.
pub(super) const LONGEST_SOLD_M: f64 = 80.0;

/// The next length sold.
pub(super) fn sold_m(total_m: f64) -> Option<f64> {
    SOLD_M.into_iter().find(|&m| m >= total_m - 1e-9)
}

/// Which of the ropes at hand the team takes for all its legs: the lightest that holds and leaves enough to spare, else
/// the lightest that holds, else the longest; the first named of equals.
pub(super) fn chosen(case: &Case, demand_m: f64) -> Option<usize> {
    let kg = |r: &Rope| r.length_m * kg_per_m(r.diameter_mm);
    let all = || case.ropes.iter().enumerate();
    let lightest = |least_m: f64| {
        let holding = all().filter(|(_, r)| r.length_m >= least_m - 1e-9);
        holding.min_by(|(_, a), (_, b)| kg(a).total_cmp(&kg(b)))
    };
    let longest = || {
        all().min_by(|(_, a), (_, b)| {
            let longer = b.length_m.total_cmp(&a.length_m);
            longer.then_with(|| kg(a).total_cmp(&kg(b)))
        })
    };
    let found = lightest(demand_m + NEAR_ROPE_M);
    let found = found.or_else(|| lightest(demand_m)).or_else(longest);
    found.map(|(number, _)| number)
}

/// The rope as carried: what each end has in its coil, and what is left for a bag.
#[derive(Clone, Copy, Debug)]
pub(super) struct Carried {
    pub(super) coil_m: f64,
    pub(super) bag_m: f64,
}

/// What is left over goes to both ends in equal parts, up to what a person carries; a coil that the rules ask for is not
/// made shorter by that. A rope that is too short gives less than was asked for.
pub(super) fn carried(case: &Case, ledger: &Ledger, rope: &Rope) -> Carried {
    let most_m = case
        .coil_most_m
        .min(case.coil_most_kg / kg_per_m(rope.diameter_mm));
    let left_m = (rope.length_m - ledger.tied_m()).max(0.0);
    let coil_m = (left_m / 2.0).min(most_m.max(ledger.coil_m));
    Carried {
        coil_m,
        bag_m: left_m - 2.0 * coil_m,
    }
}

/// How deep a drop loop reaches below the lip to one person; negative where it ends short of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    /// From 1.
    pub(super) person: usize,
    pub(super) depth_m: f64,
    /// Whether rope behind the holder is counted, which others must untie from first.
    pub(super) needs_untied: bool,
}

/// For each person in rope order; what lies in a bag is in nobody's hands and not counted.
pub(super) fn reaches(case: &Case, spacing_m: f64, coil_m: f64) -> Vec<Reach> {
    let reach = |person: usize| {
        let spans = spans_behind(case.people, person);
        let free_m = coil_m + spans as f64 * spacing_m;
        let depth_m = free_m + case.sling_m - spacing_m - HANDS_M;
        Reach {
            person,
            depth_m: depth_m.min(spacing_m - FROM_LIP_M),
            needs_untied: spans > 0,
        }
    };
    (1..=case.people).map(reach).collect()
}

/// The widest gap, were all of the leg as wide, that this spacing suits. On ice without a gap width too: met squarely,
/// that is what its set-up is good for.
pub(super) fn suited_gap_m(case: &Case, line: &Line, leg: &Roped, spacing_m: f64) -> f64 {
    let longer = leg.zones.iter().filter_map(|zone| {
        let one = worst(case, line, std::slice::from_ref(zone), spacing_m)?;
        Some(one.gap_m / case.zones[zone.0].gap_m)
    });
    let factor = longer.fold(1.0, f64::max);
    suits_m(case.people, spacing_m) / factor
}

/// The widest gap that some spacing covers whose set-up a rope of this length holds.
pub(super) fn covers_m(case: &Case, line: &Line, leg: &Roped, rope_m: f64) -> Option<f64> {
    let knots = leg.ties_knots(case, line);
    let mut least = habit_m(case, &leg.zones, leg.undrawn);
    if knots {
        least = least.max(case.layout.needs_m(case.people));
    }
    let mut spacing_m = stepped(least).min(CAP_M);
    let mut widest: Option<f64> = None;
    while spacing_m <= CAP_M {
        if ledger(case, spacing_m, knots).total_m() <= rope_m + 1e-9 {
            let gap_m = suited_gap_m(case, line, leg, spacing_m);
            widest = Some(widest.map_or(gap_m, |w| w.max(gap_m)));
        }
        spacing_m += STEP_M;
    }
    widest
}

/// Whether no spacing within the limits suits the gaps of a leg.
pub(super) fn beyond_limits(case: &Case, leg: &Roped) -> bool {
    leg.effective
        .is_some_and(|e| need_m(case.people, e.gap_m) > leg.spacing_m + 1e-9)
}
