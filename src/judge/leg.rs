//! Everything found on a leg, and the verdict that it comes to.

use std::cell::RefCell;

use crate::{
    fault::refusal::Refusal,
    judge::{
        bare,
        cure::{Fitted, Promised},
        falls, ground, halts, jumps,
        one_by_one::TiedTeam,
        place::{height_m, place},
        steepest::JudgedPlace,
        team::{self, OfTeam, RopesLeft},
        travel, verdict, zones,
    },
    plan::{
        cure::RopeCure,
        fact::Fact,
        finding::{At, Finding, LegPlace},
        in_time::InTime,
        leg::{JudgedStretch, TeamSetup, Verdict},
        name::RopeName,
        reach::Reach,
    },
    rope::{
        answers::KnownFalls, carried::RopeLoad, draft::Draft, legs::RopedLeg, reserve::own_loop_m,
        share, tied::Tied,
    },
    times::hours::Hours,
    trip::{job::Brief, rope::Rope, route::Stretch},
};

/// A leg with everything that is known of it.
#[derive(Clone, Copy)]
pub(crate) struct Known<'a> {
    pub(crate) job: &'a Brief<'a>,
    pub(crate) leg: &'a RopedLeg<'a>,
    /// One set-up for each team; empty where it is unroped.
    pub(crate) setups: &'a [TeamSetup],
    /// Why a model has no answer, in its own words.
    pub(crate) unanswered: &'a [Refusal],
    /// Falls asked for before, where somebody asks what makes a rope that is too short fit.
    pub(crate) cures: Option<&'a RefCell<KnownFalls>>,
    /// Ropes that cures of this plan take.
    pub(crate) promised: &'a Promised,
}

impl Known<'_> {
    /// What makes the ropes of its teams hold, where one does not.
    pub(crate) fn cures(&self) -> Vec<Option<RopeCure>> {
        let given = self.cures.map(|asked| Fitted {
            job: self.job,
            leg: self.leg,
            setups: self.setups,
            asked,
            promised: self.promised,
        });
        let teams = || self.leg.teams.iter().zip(self.setups);
        let cure = |(draft, setup)| given.and_then(|given| given.cure(draft, setup));
        teams().map(cure).collect()
    }

    /// All that is found whatever the hour, with the cures that were found before.
    pub(crate) fn findings(&self, cures: Vec<Option<RopeCure>>) -> Vec<Finding> {
        let mut found = ground_findings(self.job, self.leg);
        let teams = || self.leg.teams.iter().zip(self.setups);
        // What is joined to the rope of a team is not there beside it.
        let joined = cures.iter().flatten();
        let joined = joined.filter_map(|cure| Some(cure.joined_to.as_ref()?.rope));
        let gone: Vec<usize> = carried(self.setups).chain(joined).collect();
        for ((draft, setup), cure) in teams().zip(cures) {
            let at = team_place(self.leg, draft);
            found.extend(falls::findings(self.leg, setup, self.job.rules, &at));
            let of_team = OfTeam {
                job: self.job,
                leg: self.leg,
                draft,
            };
            let alone = || {
                let asked = self.cures?;
                TiedTeam { setup, asked }.one_by_one(self.job, self.leg, draft)
            };
            found.extend(of_team.findings(&at, alone));
            let left = || {
                let there = Left {
                    gone: &gone,
                    promised: self.promised,
                };
                there.beside(self.job, draft, setup)
            };
            let of_rope = team::rope_findings(self.job, setup, cure, &left);
            // One rope is no spare of two teams.
            for taken in of_rope.iter().filter_map(Fact::taken_for_loop) {
                self.promised.promise(taken.rope, draft.team);
            }
            found.extend(all_at(&at, of_rope));
        }
        let at = place(self.leg);
        let reasons = self.unanswered.iter().cloned();
        let no_answer = reasons.map(|reason| Fact::NoAnswer { reason });
        found.extend(all_at(&at, no_answer));
        found
    }
}

/// Numbers of the ropes at hand that somebody carries.
fn carried(setups: &[TeamSetup]) -> impl Iterator<Item = usize> {
    let ropes = setups.iter().filter_map(|setup| setup.rope.as_ref());
    ropes.map(|rope| rope.number)
}

/// What ropes at hand are there for whom no loop reaches.
struct Left<'a> {
    /// Numbers of those that somebody ties into on the leg.
    gone: &'a [usize],
    /// What teams have beside theirs.
    promised: &'a Promised,
}

impl Left<'_> {
    /// One longer than that of the team, and no cord in place of a rope, on which loops reach everybody whom none does, and one that is
    /// long enough for a loop by itself: of each kind one that the team has already, else the lightest.
    fn beside(&self, job: &Brief<'_>, draft: &Draft, setup: &TeamSetup) -> RopesLeft {
        let there = |number: usize| {
            !self.gone.contains(&number) && self.promised.is_left(number, draft.team)
        };
        let left = (1..).zip(job.ropes).filter(|(number, _)| there(*number));
        let mut left: Vec<(usize, &Rope)> = left.collect();
        let mass_kg = |r: &Rope| share::mass_kg(r.length_m, r.diameter_mm, job.rules);
        let others = |number: usize| !self.promised.has(number, draft.team);
        left.sort_by(|a, b| {
            let had = others(a.0).cmp(&others(b.0));
            had.then(mass_kg(a.1).total_cmp(&mass_kg(b.1)))
        });
        let first = |suits: &dyn Fn(&Rope) -> bool| {
            let (number, rope) = left.iter().find(|(_, rope)| suits(rope))?;
            Some(RopeName::of(*number, rope))
        };
        let own = setup.rope.as_ref();
        let own_m = own.map_or(f64::INFINITY, |rope| rope.length_m);
        let tied = Tied::of(draft);
        let loop_m = own_loop_m(draft.spacing.spacing_m, job.rules);
        let cord = own.and_then(|own| job.rope(own.number));
        let cord = cord.is_some_and(|own| share::is_cord(own, job.rules));
        let short = || setup.reach.iter().filter(|reach| reach.short_m().is_some());
        let reaches = |rope: &Rope| {
            let load = RopeLoad::of(rope);
            let reached = |reach: &Reach| tied.reaches(reach.person, load, job.rules);
            let thicker = cord || !share::is_cord(rope, job.rules);
            thicker && rope.length_m > own_m + 1e-9 && short().all(reached)
        };
        RopesLeft {
            longer: first(&reaches),
            spare: first(&|rope| rope.length_m >= loop_m - 1e-9),
        }
    }
}

/// What is found of the hours on a leg; what is told to do is what leaves the hidden gaps of its stage in time, if as planned they
/// are left too late.
pub(crate) fn of_hours(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    hours: &Hours,
    in_time: Option<InTime>,
) -> Vec<Finding> {
    let mut found = zones::unroped(job, leg, Some(hours));
    found.extend(travel::bridges(job, leg, hours, in_time));
    found.extend(halts::findings(job, leg, hours));
    found
}

/// What is found whoever walks the leg, and whenever.
fn ground_findings(job: &Brief<'_>, leg: &RopedLeg<'_>) -> Vec<Finding> {
    let at = place(leg);
    let mut found = all_at(&at, zones::facts(job, leg));
    if leg.sketch.roped {
        found.extend(all_at(&at, travel::ends(leg)));
        found.extend(all_at(&at, travel::soft(job, leg)));
        found.extend(all_at(&at, travel::travel(job.rules)));
    }
    found.extend(ground::findings(job, leg));
    found.extend(bare::steep_unroped(job, leg));
    found.extend(jumps::findings(job, leg));
    found.extend(travel::turns(leg));
    found
}

fn all_at(at: &LegPlace, facts: impl IntoIterator<Item = Fact>) -> Vec<Finding> {
    let finding = |fact| Finding::new(At::Leg(at.clone()), fact);
    facts.into_iter().map(finding).collect()
}

/// Names the team only where there are several.
fn team_place(leg: &RopedLeg<'_>, draft: &Draft) -> LegPlace {
    LegPlace {
        team: (leg.teams.len() > 1).then_some(draft.team),
        ..place(leg)
    }
}

/// Whether a place of the same code holds all of this one.
fn is_within((_, code, at): &JudgedPlace, held: &[JudgedPlace]) -> bool {
    let mut of_code = held.iter().filter(|(_, known, _)| known == code);
    of_code.any(|(.., run)| run.from_m <= at.from_m + 1e-6 && run.to_m >= at.to_m - 1e-6)
}

/// Where each word graver than `inside` holds, in walking order. A finding of falls or of steepness is told once, at its worst
/// place; here all of them stand.
pub(crate) fn stretches(
    job: &Brief<'_>,
    leg: &RopedLeg<'_>,
    findings: &[Finding],
    setups: &[TeamSetup],
) -> Vec<JudgedStretch> {
    let told = findings.iter().filter_map(|finding| match &finding.at {
        At::Leg(place) => {
            let (from_m, to_m) = (place.from_m, place.to_m);
            Some((finding.level(), finding.code(), Stretch { from_m, to_m }))
        }
        _ => None,
    });
    let held = setups
        .iter()
        .flat_map(|setup| falls::places(setup, job.rules));
    let held = held.map(|(level, code, run)| {
        let (from_m, to_m) = (run.from_m, run.to_m);
        (level, code, Stretch { from_m, to_m })
    });
    let steep = ground::too_steep_places(leg, job.rules).into_iter();
    let steep = steep.chain(bare::steep_places(job, leg));
    let held: Vec<JudgedPlace> = held.chain(steep).collect();
    let all = told
        .filter(|place| !is_within(place, &held))
        .chain(held.iter().copied());
    let all = all.map(|(level, code, run)| JudgedStretch {
        from_m: run.from_m,
        to_m: run.to_m,
        height_m: height_m(leg, run.from_m),
        verdict: verdict::of_levels(std::iter::once(level)),
        code,
    });
    let mut all: Vec<JudgedStretch> = all.filter(|s| s.verdict > Verdict::Inside).collect();
    all.sort_by(|a, b| {
        let place = a
            .from_m
            .total_cmp(&b.from_m)
            .then(a.to_m.total_cmp(&b.to_m));
        place
            .then(b.verdict.cmp(&a.verdict))
            .then(a.code.cmp(b.code))
    });
    all.dedup();
    all
}

/// Whether the leader's word that nobody ropes up on a leg stops there, whatever the hour.
pub(crate) fn is_stopped_by_word(job: &Brief<'_>, leg: &RopedLeg<'_>) -> bool {
    let unroped = zones::unroped(job, leg, None);
    verdict::of_findings(leg.sketch.roped, &unroped) >= Verdict::Outside
}

/// The worst that is found on any leg, whoever walks it.
pub(crate) fn ground_verdict(job: &Brief<'_>, legs: &[RopedLeg<'_>]) -> Verdict {
    let of_leg = |leg: &RopedLeg<'_>| {
        let mut found = ground_findings(job, leg);
        found.extend(zones::unroped(job, leg, None));
        verdict::of_findings(leg.sketch.roped, &found)
    };
    legs.iter().map(of_leg).max().unwrap_or(Verdict::Unroped)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        fault::Level,
        legs::{knots::Hardship, over::Over, spacing::Spacing, worst::Meeting},
        practice::{Origin, Rule},
        rope::setup::Supplied,
        trip::party::Party,
    };

    /// Numbers of the longer rope and of the spare one for a pair at 15 m that carries the first of these lengths and diameters,
    /// metres and millimetres. It needs coils of 15 m, and a loop reaches with 17.5 m; nobody carries more than 1.2 kg.
    fn left(ropes: &[(f64, f64)]) -> (Option<usize>, Option<usize>) {
        let mut job = crate::example::job().unwrap();
        for (rule, value) in [(Rule::ReachFactor, 1.0), (Rule::CoilMostKg, 1.2)] {
            job.rules.set(rule, value, Origin::Trip).unwrap();
        }
        let ropes = ropes.iter().map(|&(length_m, mm)| Rope {
            length_m,
            diameter_mm: Some(mm),
            name: None,
            joined: false,
        });
        job.ropes = ropes.collect();
        let team = Party::weighing(&[80.0; 2]).split_into(1).remove(0);
        let spacing = Spacing::tried(2, 15.0, &job.rules, &|_| Meeting::default());
        let over = Over::drawn(&[]);
        let draft = Draft::new(&team, spacing, over, Hardship::default(), &job.rules);
        let given = Supplied {
            rope: Some((1, &job.ropes[0])),
            bought_m: None,
            factor: &|_| 1.0,
            fall: None,
            order: None,
        };
        let (setup, _) = draft.clone().tied(&given, &job.rules);
        let setups = [setup];
        let reach = &setups[0].reach[0];
        assert!(reach.depth_m < 0.0, "no loop reaches on what they carry");
        let gone: Vec<usize> = carried(&setups).collect();
        let there = Left {
            gone: &gone,
            promised: &Promised::default(),
        };
        let left = there.beside(&job.case(), &draft, &setups[0]);
        (left.longer.map(|r| r.rope), left.spare.map(|r| r.rope))
    }

    #[test]
    fn only_a_longer_rope_on_which_a_loop_reaches_is_called_so() {
        // Of 11 mm, 1.2 kg are less than 15 m; of 8 mm 27.9 m (makers' figures).
        assert_eq!(left(&[(80.0, 11.0), (80.1, 8.0)]), (Some(2), Some(2)));
        assert_eq!(left(&[(80.0, 11.0), (80.0, 8.0)]).0, None, "as long");
        assert_eq!(left(&[(80.0, 11.0), (79.0, 8.0)]).0, None, "shorter");
        assert_eq!(left(&[(80.0, 11.0), (90.0, 11.0)]).0, None, "too heavy");
        assert_eq!(left(&[(80.0, 11.0)]), (None, None));
    }

    #[test]
    fn a_place_is_told_once_where_a_longer_one_of_its_code_holds_it() {
        let place = |code, from_m, to_m| (Level::Stop, code, Stretch { from_m, to_m });
        let within = |code, from_m, to_m| {
            let held = [place("b", 0.0, 99.0), place(code, from_m, to_m)];
            is_within(&place("a", 10.0, 20.0), &held)
        };
        assert!(within("a", 10.0, 20.0) && within("a", 5.0, 25.0));
        assert!(
            within("a", 10.0 + 5e-7, 20.0 - 5e-7),
            "lengths that were added up differ by less than a micrometre"
        );
        assert!(
            !within("a", 10.1, 25.0) && !within("a", 5.0, 19.9),
            "a part of it stands out"
        );
        assert!(!within("c", 5.0, 25.0), "another code is another thing");
    }
}
