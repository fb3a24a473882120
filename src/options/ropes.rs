//! Which ropes the teams of a split carry: for each verdict within reach, the lightest that give it.

use std::{collections::BTreeSet, iter::repeat};

use crate::{
    options::lines::WayDraft,
    plan::{change::Change, leg::Verdict, name::RopeName, options::Way},
    practice::Rules,
    rope::{
        carried::RopeLoad,
        otherwise,
        share::{self, Fit, Shared, Supply},
        tied::Tied,
    },
    trip::{job::Brief, rope::Rope},
};

/// Ropes that can be given out.
struct Hand {
    ropes: Vec<Rope>,
    /// The number of each among the ropes at hand.
    numbers: Vec<usize>,
    /// Where two are joined: the change that it is, which rope of the hand, and what they weigh, kilograms.
    joined: Option<(Change, usize, f64)>,
}

impl Hand {
    fn own(ropes: &[Rope]) -> Self {
        Self {
            ropes: ropes.to_vec(),
            numbers: (1..=ropes.len()).collect(),
            joined: None,
        }
    }

    /// Two of them joined, the others as they are.
    fn joining(ropes: &[Rope], [first, second]: [usize; 2], rules: &Rules) -> Option<Self> {
        let (a, b) = (ropes.get(first)?, ropes.get(second)?);
        let both = otherwise::joined(a, b, rules)?;
        let mass_kg = |rope: &Rope| share::mass_kg(rope.length_m, rope.diameter_mm, rules);
        let change = Change::JoinedRopes {
            ropes: [RopeName::of(first + 1, a), RopeName::of(second + 1, b)],
            length_m: both.length_m,
        };
        let mut hand = Self::own(ropes);
        hand.joined = Some((change, first, mass_kg(a) + mass_kg(b)));
        *hand.ropes.get_mut(first)? = both;
        hand.ropes.remove(second);
        hand.numbers.remove(second);
        Some(hand)
    }

    /// Whether these demands, the longest first, can all be met: asked before anything is weighed.
    fn is_enough(&self, demands_m: &[f64]) -> bool {
        let mut lengths_m: Vec<f64> = self.ropes.iter().map(|rope| rope.length_m).collect();
        lengths_m.sort_by(|a, b| b.total_cmp(a));
        let mut given = demands_m
            .iter()
            .zip(lengths_m.into_iter().chain(repeat(0.0)));
        given.all(|(demand_m, length_m)| share::holds(length_m, *demand_m))
    }

    fn supply(&self, teams: usize, rules: &Rules) -> Vec<Supply> {
        let mut supply = share::supply(&self.ropes, teams, rules);
        if let Some((_, joined, mass_kg)) = &self.joined {
            let own = supply.iter_mut().filter(|s| s.index == Some(*joined));
            own.for_each(|s| s.mass_kg = *mass_kg);
        }
        supply
    }
}

/// The ways to give the ropes out that can be worth it: the lightest that hold, that have enough to spare, and that leave
/// nobody beyond every loop.
pub(super) fn given(job: &Brief<'_>, draft: &WayDraft) -> Vec<Way> {
    from(&Hand::own(job.ropes), draft)
}

/// The same with two ropes joined, as far as that holds every leg and the joined rope is carried; cord where no others do.
pub(super) fn joined(job: &Brief<'_>, draft: &WayDraft) -> Vec<Way> {
    let mut demands_m: Vec<f64> = draft.teams.iter().map(|t| t.team.needed_m).collect();
    demands_m.sort_by(|a, b| b.total_cmp(a));
    let cord = |index: usize| {
        job.ropes
            .get(index)
            .is_some_and(|rope| share::is_cord(rope, &draft.rules))
    };
    let (thin, thick): (Vec<_>, Vec<_>) =
        pairs(job.ropes).partition(|pair| pair.iter().any(|i| cord(*i)));
    let of = |pairs: Vec<[usize; 2]>| {
        let hands = pairs.into_iter();
        let hands = hands.filter_map(|pair| Hand::joining(job.ropes, pair, &draft.rules));
        let ways = hands
            .filter(|hand| hand.is_enough(&demands_m))
            .flat_map(|hand| from(&hand, draft));
        ways.filter(|way| way.short_m <= 1e-9).collect::<Vec<_>>()
    };
    let ways = of(thick);
    if ways.is_empty() { of(thin) } else { ways }
}

/// The pairs that can be joined; of ropes as long and as thick as each other only the first ones.
fn pairs(ropes: &[Rope]) -> impl Iterator<Item = [usize; 2]> {
    let kind = |rope: &Rope| (rope.length_m.to_bits(), rope.diameter_mm.map(f64::to_bits));
    let all = (0..ropes.len()).flat_map(|a| (a + 1..ropes.len()).map(move |b| [a, b]));
    let mut met = BTreeSet::new();
    all.filter(move |pair| {
        let mut kinds = pair.map(|index| ropes.get(index).map(kind));
        kinds.sort_unstable();
        met.insert(kinds)
    })
}

fn from(hand: &Hand, draft: &WayDraft) -> Vec<Way> {
    let (ropes, rules) = (&hand.ropes, &draft.rules);
    let demands_m: Vec<f64> = draft.teams.iter().map(|t| t.team.needed_m).collect();
    let supply = share::without_cord(hand.supply(demands_m.len(), rules), &demands_m);
    let near_m = share::near_m(ropes, rules);
    let mut shared = share::ways(&demands_m, &supply, near_m);
    let reaching_m = draft
        .teams
        .iter()
        .map(|t| t.reaching_m(near_m, &draft.rules));
    let reaching = share::ways(&reaching_m.collect::<Vec<f64>>(), &supply, 0.0);
    let reaching = reaching.into_iter().filter(|way| way.fit != Fit::Short);
    shared.extend(reaching.map(|way| Shared {
        fit: Fit::Ample,
        ..way
    }));
    shared.dedup_by(|a, b| a.given == b.given);
    let ways = shared.into_iter().map(|shared| {
        let verdict = match shared.fit {
            Fit::Ample => Verdict::Inside,
            Fit::Near => Verdict::Look,
            Fit::Short => Verdict::Outside,
        };
        let verdict = verdict.max(by_reach(hand, draft, &shared.given));
        let pairs = demands_m.iter().zip(&shared.given);
        let short_m = pairs.map(|(d, s)| (d - s.length_m).max(0.0)).sum();
        let verdict = draft.verdict.max(verdict);
        way(hand, draft, &shared.given, verdict, short_m)
    });
    ways.collect()
}

/// How it stands with the ropes as carried.
fn by_reach(hand: &Hand, draft: &WayDraft, given: &[Supply]) -> Verdict {
    let verdicts = loaded(hand, draft, given).map(|(tied, load)| tied.by_reach(load, &draft.rules));
    verdicts.max().unwrap_or(Verdict::Inside)
}

/// What each team ties on each leg, with the rope that it carries.
fn loaded<'d>(
    hand: &'d Hand,
    draft: &'d WayDraft,
    given: &'d [Supply],
) -> impl Iterator<Item = (&'d Tied, RopeLoad)> {
    let load = |supply: &Supply| RopeLoad::given(supply, &hand.ropes);
    let pairs = draft.teams.iter().zip(given);
    let carried = pairs.filter(|(_, supply)| supply.length_m > 0.0);
    carried.flat_map(move |(line, supply)| line.tied.iter().map(move |tied| (tied, load(supply))))
}

fn way(hand: &Hand, draft: &WayDraft, given: &[Supply], verdict: Verdict, short_m: f64) -> Way {
    let lines = &draft.teams;
    let mut teams: Vec<_> = lines.iter().map(|l| l.team.clone()).collect();
    for (team, supply) in teams.iter_mut().zip(given) {
        team.rope = supply.index.and_then(|i| hand.numbers.get(i).copied());
        team.rope_m = supply.length_m;
    }
    let joined = hand.joined.as_ref().map(|(change, ..)| change);
    Way {
        way: 0,
        another_team: teams.len() > 1,
        teams,
        changes: draft.changes.iter().chain(joined).cloned().collect(),
        verdict,
        short_m: lines.iter().map(|l| l.short_m).fold(short_m, f64::max),
        left_to_hold: lines.iter().map(|l| l.left).min().unwrap_or(0),
        rope_mass_kg: given.iter().map(|s| s.mass_kg).sum(),
        coil_m: lines.iter().map(|l| l.coil_m).fold(0.0, f64::max),
        coil_carried_m: loaded(hand, draft, given)
            .map(|(tied, load)| tied.coil_carried_m(load, &draft.rules))
            .fold(0.0, f64::max),
        setup_changes: draft.setup_changes,
        best_in: Vec::new(),
        cords: Vec::new(),
        trip: None,
        plan: None,
    }
}
