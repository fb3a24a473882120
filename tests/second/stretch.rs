//! From touches to roped stretches: spacing, length of the team and merging, until nothing changes.

use super::{
    case::{Case, KnotsWord, Word, Zone},
    figures::{
        BITE_M, CAP_M, FLOOR_M, HEAVIER, NEIGHBOUR_ROOM_M, NO_BITE_M, SHARE_OF_FOUR,
        SHARE_OF_THREE, STEEP_DESCENT_DEG, STEP_M,
    },
    gap::{Effective, effective},
    line::Line,
    meet::Stretch,
    slope::descent_deg,
};

/// Where the line meets one zone.
#[derive(Debug)]
pub(super) struct ZoneMet {
    pub(super) crossings: Vec<Stretch>,
    pub(super) touches: Vec<Stretch>,
}

/// Where the line meets ice.
#[derive(Debug)]
pub(super) struct Met {
    pub(super) zones: Vec<ZoneMet>,
    /// Ice that an inventory knows and nobody has drawn.
    pub(super) ice: Vec<Stretch>,
    /// Where it is touched, margin included.
    pub(super) undrawn: Vec<Stretch>,
}

/// A roped stretch with all it holds.
#[derive(Clone, Debug)]
pub(super) struct Roped {
    pub(super) stretch: Stretch,
    /// Indices of the zones, with where they are touched on it.
    pub(super) zones: Vec<(usize, Vec<Stretch>)>,
    pub(super) undrawn: bool,
    pub(super) spacing_m: f64,
    /// Whether the layout of knots lengthened it.
    pub(super) lengthened: bool,
    pub(super) effective: Option<Effective>,
}

impl Roped {
    /// Whether knots are tied on it.
    pub(super) fn ties_knots(&self, case: &Case, line: &Line) -> bool {
        ties_knots(case, line, self.stretch, &self.zones, self.undrawn)
    }
}

/// Whether the team is on the rope because of this zone.
pub(super) fn ropes(case: &Case, zone: &Zone) -> bool {
    match zone.word {
        Word::Always => true,
        Word::Never => false,
        Word::Auto => !zone.lies_bare() || case.rope_on_bare,
    }
}

/// What a gap asks of the spacing.
pub(super) fn need_m(people: usize, gap_m: f64) -> f64 {
    match people {
        2 => gap_m + NEIGHBOUR_ROOM_M,
        3 => SHARE_OF_THREE * gap_m,
        _ => SHARE_OF_FOUR * gap_m,
    }
}

/// The other way round: the widest gap that a spacing suits.
pub(super) fn suits_m(people: usize, spacing_m: f64) -> f64 {
    match people {
        2 => spacing_m - NEIGHBOUR_ROOM_M,
        3 => spacing_m / SHARE_OF_THREE,
        _ => spacing_m / SHARE_OF_FOUR,
    }
}

/// Whether three make knots, and a pair always: somebody clearly heavier than the mean of the others, or a steep
/// descent, makes holding harder. Four and more tie none, whoever wishes it: no layout for them is known.
fn people_tie(case: &Case, line: &Line, stretch: Stretch) -> bool {
    let heavier = case.masses_kg.as_ref().is_some_and(|all| {
        let sum: f64 = all.iter().sum();
        let others = all.len() as f64 - 1.0;
        all.iter().any(|m| *m >= HEAVIER * (sum - m) / others)
    });
    let steep = || descent_deg(case, line, stretch).is_some_and(|d| d >= STEEP_DESCENT_DEG);
    match (case.knots_word(), case.people) {
        (KnotsWord::Never, _) => false,
        (_, 2) => true,
        (KnotsWord::Always, 3) => true,
        (KnotsWord::Auto, 3) => heavier || steep(),
        _ => false,
    }
}

/// How brake knots do in the snow of a zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Bite {
    Yes,
    Doubtful,
    No,
    Unknown,
}

pub(super) fn bite(zone: &Zone) -> Bite {
    match zone.snow_m {
        _ if zone.lies_bare() => Bite::No,
        None => Bite::Unknown,
        Some(m) if m <= NO_BITE_M => Bite::No,
        Some(m) if m > BITE_M => Bite::Yes,
        Some(_) => Bite::Doubtful,
    }
}

/// Whether knots are tied on a leg with these zones: set up once, so where any of the snow may let them work. Ice without
/// a zone has snow of unknown depth.
fn ties_knots(
    case: &Case,
    line: &Line,
    stretch: Stretch,
    zones: &[(usize, Vec<Stretch>)],
    undrawn: bool,
) -> bool {
    let some = zones.iter().any(|(z, _)| bite(&case.zones[*z]) != Bite::No);
    (some || undrawn) && people_tie(case, line, stretch)
}

/// Up to the next step, forgiving what numbers with a point in them are off.
pub(super) fn stepped(spacing_m: f64) -> f64 {
    (spacing_m / STEP_M - 1e-9).ceil() * STEP_M
}

/// The least spacing that habit asks for; only a leg that holds nothing but bare zones shrinks to the floor.
pub(super) fn habit_m(case: &Case, zones: &[(usize, Vec<Stretch>)], undrawn: bool) -> f64 {
    let bare = !undrawn && zones.iter().all(|(z, _)| case.zones[*z].lies_bare());
    let base = case.practice.base_m[case.people - 2];
    if bare { FLOOR_M } else { base.max(FLOOR_M) }
}

/// The worst way over a gap of these zones.
pub(super) fn worst(
    case: &Case,
    line: &Line,
    zones: &[(usize, Vec<Stretch>)],
    spacing_m: f64,
) -> Option<Effective> {
    let all = zones
        .iter()
        .map(|(z, touched)| effective(line, &case.zones[*z], touched, spacing_m, case.reading));
    all.reduce(|a, b| Effective {
        gap_m: a.gap_m.max(b.gap_m),
        along: a.along || b.along,
    })
}

/// The shortest spacing from `least_m` on that is as long as the gaps it meets itself ask for; the cap where none is.
fn suiting(case: &Case, line: &Line, zones: &[(usize, Vec<Stretch>)], least_m: f64) -> f64 {
    let mut spacing_m = stepped(least_m).min(CAP_M);
    loop {
        let met = worst(case, line, zones, spacing_m);
        let need = met.map_or(0.0, |m| need_m(case.people, m.gap_m));
        if need <= spacing_m + 1e-9 || spacing_m >= CAP_M {
            return spacing_m;
        }
        spacing_m += STEP_M;
    }
}

/// A stretch that grows: what the first person touches, and the spacing so far.
struct Growing {
    touched: Stretch,
    undrawn: bool,
    spacing_m: f64,
}

impl Growing {
    /// On the rope until the last one has left.
    fn stretch(&self, case: &Case, line: &Line) -> Stretch {
        let team_m = (case.people as f64 - 1.0) * self.spacing_m;
        Stretch {
            from_m: self.touched.from_m,
            to_m: (self.touched.to_m + team_m).min(line.length_m()),
        }
    }

    /// All it holds: a zone that asks for no rope counts where the team is on it anyway, and only there.
    fn roped(&self, case: &Case, line: &Line, met: &Met) -> Roped {
        let stretch = self.stretch(case, line);
        let part = |touched: &Stretch| {
            let common = touched.common(stretch)?;
            Some(if case.reading.whole_touches {
                *touched
            } else {
                common
            })
        };
        let zones: Vec<(usize, Vec<Stretch>)> = met
            .zones
            .iter()
            .map(|z| z.touches.iter().filter_map(part).collect())
            .enumerate()
            .filter(|(_, on): &(usize, Vec<Stretch>)| !on.is_empty())
            .collect();
        let habit = habit_m(case, &zones, self.undrawn);
        let mut least = habit.max(self.spacing_m);
        if ties_knots(case, line, stretch, &zones, self.undrawn) {
            least = least.max(case.layout.needs_m(case.people));
        }
        let spacing_m = suiting(case, line, &zones, least);
        let effective = worst(case, line, &zones, spacing_m);
        Roped {
            stretch,
            zones,
            undrawn: self.undrawn,
            spacing_m,
            lengthened: false,
            effective,
        }
    }
}

/// One round: spacings, then the first two stretches that are too near each other. Whether anything changed.
fn grow(case: &Case, line: &Line, met: &Met, all: &mut Vec<Growing>) -> bool {
    let mut changed = false;
    for one in all.iter_mut() {
        let spacing_m = one.roped(case, line, met).spacing_m;
        changed |= spacing_m > one.spacing_m;
        one.spacing_m = spacing_m;
    }
    let near = |pair: &[Growing]| {
        let gap_m = pair[1].touched.from_m - pair[0].stretch(case, line).to_m;
        gap_m < case.least_unroped_m
    };
    if let Some(at) = all.windows(2).position(near) {
        let next = all.remove(at + 1);
        let one = &mut all[at];
        one.touched.to_m = one.touched.to_m.max(next.touched.to_m);
        one.undrawn |= next.undrawn;
        one.spacing_m = one.spacing_m.max(next.spacing_m);
        changed = true;
    }
    changed
}

/// The roped stretches of the line.
pub(super) fn roped(case: &Case, line: &Line, met: &Met) -> Vec<Roped> {
    let asking = met.zones.iter().zip(&case.zones);
    let asking = asking.filter(|(_, zone)| ropes(case, zone));
    let drawn = asking.flat_map(|(met, _)| met.touches.iter().map(|&t| (t, false)));
    let undrawn = met.undrawn.iter().filter(|_| !case.only_tell);
    let mut all: Vec<Growing> = drawn
        .chain(undrawn.map(|&t| (t, true)))
        .map(|(touched, undrawn)| Growing {
            touched,
            undrawn,
            spacing_m: 0.0,
        })
        .collect();
    all.sort_by(|a, b| a.touched.from_m.total_cmp(&b.touched.from_m));
    while grow(case, line, met, &mut all) {}
    let settled = all.iter().map(|one| {
        let roped = one.roped(case, line, met);
        let habit = habit_m(case, &roped.zones, roped.undrawn);
        let without_knots_m = suiting(case, line, &roped.zones, habit);
        Roped {
            lengthened: roped.spacing_m > without_knots_m,
            ..roped
        }
    });
    settled.collect()
}
