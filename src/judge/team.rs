//! What is found of one team's set-up on a leg: spacing, knots, rope, reserve.

use crate::{
    judge::place::place_at,
    legs::{knots, over::bite, spacing},
    plan::{
        cure::{OneByOne, RopeCure, RopeLack},
        fact::Fact,
        finding::{At, Finding, LegPlace},
        leg::{Bite, RopeAtHand, TeamSetup},
        name::{PersonName, RopeName, ZoneName},
    },
    practice::{Cover, Knots, Origin, Rule, Rules},
    rope::{
        draft::Draft,
        legs::RopedLeg,
        reserve::{self, ShortReserve},
        share,
    },
    trip::job::Brief,
};

/// Knots in a set of the layouts taught. Common practice, no source; a layout of two is in print too, so it is looked at.
const LAYOUT: usize = 3;

/// One team on one leg.
#[derive(Clone, Copy)]
pub(super) struct OfTeam<'a> {
    pub(super) job: &'a Brief<'a>,
    pub(super) leg: &'a RopedLeg<'a>,
    pub(super) draft: &'a Draft,
}

impl OfTeam<'_> {
    /// What is found whichever rope the team carries. Only `alone` asks for that rope: how the team is tied so that one at a time
    /// is over a gap; it is asked where two can stand over one.
    pub(super) fn findings(
        &self,
        at: &LegPlace,
        alone: impl FnOnce() -> Option<OneByOne>,
    ) -> Vec<Finding> {
        let here = |fact| Finding::new(At::Leg(at.clone()), fact);
        let mut found: Vec<Finding> = self.limit().into_iter().map(here).collect();
        found.extend(self.over_gap(alone).map(here));
        found.extend(self.along(at));
        found.extend(self.knots().into_iter().map(here));
        found
    }

    /// How the spacing stands against the greatest one.
    fn limit(&self) -> Option<Fact> {
        let (spacing, cap_m) = (&self.draft.spacing, self.job.rules[Rule::SpacingCapM]);
        if !spacing.enough {
            return Some(Fact::NoSetup {
                people: self.draft.persons.len(),
                effective_gap_m: spacing.meeting.effective_gap_m,
                need_m: spacing.need_m,
                cap_m,
            });
        }
        let near = spacing.spacing_m > cap_m - self.job.rules[Rule::NearCapM];
        near.then_some(Fact::NearCap {
            spacing_m: spacing.spacing_m,
            cap_m,
        })
    }

    /// How many can stand over one gap at once, and who is left.
    fn over_gap(&self, alone: impl FnOnce() -> Option<OneByOne>) -> Option<Fact> {
        let (spacing_m, effective_gap_m) = (
            self.draft.spacing.spacing_m,
            self.draft.spacing.meeting.effective_gap_m,
        );
        if spacing_m >= effective_gap_m {
            return None;
        }
        let people = self.draft.persons.len();
        let over = spacing::over_one_gap(people, spacing_m, effective_gap_m);
        Some(Fact::TwoOverGap {
            over,
            left: people - over,
            effective_gap_m,
            spacing_m,
            one_by_one: alone(),
        })
    }

    /// Where the team runs along crevasses.
    fn along(&self, at: &LegPlace) -> Option<Finding> {
        let (zone, at_m) = self.draft.spacing.meeting.along?;
        let place = LegPlace {
            team: at.team,
            ..place_at(self.leg, at_m, at_m)
        };
        let zone = self.job.zones.get(zone)?.into();
        Some(Finding::new(At::Leg(place), Fact::Along { zone }))
    }

    fn knots(&self) -> Vec<Fact> {
        let tied = self.draft.knots.count > 0;
        let mut found = if tied { self.bites() } else { Vec::new() };
        found.extend(self.fewer());
        let why = || self.draft.knots.why.clone();
        if !tied && self.job.rules.choices.knots.value == Knots::Always {
            found.push(Fact::AlwaysTiesNone { why: why() });
        }
        if self.draft.persons.len() == 2 && !tied {
            found.push(Fact::PairWithoutKnots { why: why() });
        }
        if tied {
            found.push(Fact::KnotsBlockHaul {});
        }
        found
    }

    /// Knots left out of a layout.
    fn fewer(&self) -> Option<Fact> {
        let count = self.job.rules.figure(Rule::KnotCount);
        let by_leader = matches!(count.origin, Origin::Trip | Origin::Flag);
        let layout = knots::asked(self.job.rules).max(if by_leader { LAYOUT } else { 0 });
        let tied = self.draft.knots.each_end;
        (tied > 0 && tied < layout).then_some(Fact::KnotsFewer { tied, layout })
    }

    /// Where the knots that are tied do not bite, or may not, zone by zone. That nobody knows the snow where no zone is
    /// drawn is said with that ice.
    fn bites(&self) -> Vec<Fact> {
        let zones = |how: Bite| -> Option<Vec<ZoneName>> {
            let alike = self.leg.zones.iter().copied();
            let alike = alike.filter(|z| bite([*z], self.job.rules) == how);
            let zones: Vec<ZoneName> = alike.map(ZoneName::from).collect();
            (!zones.is_empty()).then_some(zones)
        };
        let all = [
            zones(Bite::No).map(|zones| Fact::KnotsNoBite { zones }),
            zones(Bite::Unknown).map(|zones| Fact::SnowUnknown { zones }),
            zones(Bite::Doubtful).map(|zones| Fact::KnotsDoubtful { zones }),
        ];
        all.into_iter().flatten().collect()
    }
}

/// Ropes at hand that nobody carries, for whom no loop reaches.
#[derive(Default)]
pub(super) struct RopesLeft {
    /// On which a loop would reach them.
    pub(super) longer: Option<RopeName>,
    /// Long enough for a loop by itself.
    pub(super) spare: Option<RopeName>,
}

/// Whether the rope holds the set-up, and whom its reserve does not reach; `left` names ropes that help.
pub(super) fn rope_findings(
    job: &Brief<'_>,
    setup: &TeamSetup,
    cure: Option<RopeCure>,
    left: &dyn Fn() -> RopesLeft,
) -> Vec<Fact> {
    let mut found: Vec<Fact> = rope(job, setup, cure).into_iter().collect();
    found.extend(joined(job, setup));
    found.extend(not_reached(setup, job.rules, left));
    found.extend(reserve_short(setup, job.rules));
    found
}

/// Two ropes joined, where no knot has been said to block the strand already.
fn joined(job: &Brief<'_>, setup: &TeamSetup) -> Option<Fact> {
    let rope = job.rope(setup.rope.as_ref()?.number)?;
    (rope.joined && setup.knots.count == 0).then_some(Fact::BendBlocksHaul {})
}

fn rope(job: &Brief<'_>, setup: &TeamSetup, cure: Option<RopeCure>) -> Option<Fact> {
    let needed_m = setup.ledger.total_m;
    let near_m = share::near_m(job.ropes, job.rules);
    let too_short = |rope: &RopeAtHand| rope.short_m().map(|short_m| (name(rope), short_m));
    let lack = match (&setup.rope, setup.rope.as_ref().and_then(too_short)) {
        (_, Some((rope, short_m))) => RopeLack::Short { rope, short_m },
        (Some(rope), None) if !share::holds(rope.spare_m, near_m) => {
            return Some(Fact::NearRope {
                rope: name(rope),
                spare_m: rope.spare_m,
            });
        }
        (None, _) if !job.ropes.is_empty() => RopeLack::NoneLeft { team: setup.team },
        (None, _) if setup.sold_length_m.is_none() => RopeLack::NoneSold,
        _ => return None,
    };
    Some(Fact::NoRope {
        needed_m,
        lack,
        cure,
    })
}

fn name(rope: &RopeAtHand) -> RopeName {
    RopeName {
        rope: rope.number,
        name: rope.name.clone(),
        length_m: rope.length_m,
    }
}

/// Everybody whom no loop reaches, the rope as carried.
fn not_reached(
    setup: &TeamSetup,
    rules: &Rules,
    left: &dyn Fn() -> RopesLeft,
) -> impl Iterator<Item = Fact> {
    let sized_for_anyone = rules.choices.cover.value == Cover::Anyone;
    let short = setup.reach.iter();
    let short = short.filter_map(|reach| Some((reach, reach.short_m()?)));
    short.map(move |(reach, short_m)| {
        let RopesLeft { longer, spare } = left();
        Fact::NotReached {
            falls: PersonName::at(reach.person, &setup.persons),
            short_m,
            sized_for_anyone,
            longer,
            spare,
        }
    })
}

/// Brake knots block the loaded strand, so that a rescue takes a reserve of its own.
fn reserve_short(setup: &TeamSetup, rules: &Rules) -> Option<Fact> {
    if setup.knots.count == 0 {
        return None;
    }
    let (people, carried_m) = (setup.people, setup.coil_carried_m);
    let ShortReserve {
        coil_m,
        short_m,
        whole_m,
    } = reserve::short(people, setup.spacing_m, &setup.ledger, carried_m, rules)?;
    let rope_m = setup.rope.as_ref().map(|rope| rope.length_m);
    let rope_short_m = rope_m.map(|m| whole_m - m).filter(|m| *m > 1e-9);
    Some(match rope_short_m {
        Some(rope_short_m) => Fact::NoReserve {
            short_m,
            coil_m,
            rope_short_m,
        },
        None => Fact::ReserveShort { short_m, coil_m },
    })
}
