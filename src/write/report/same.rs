//! Set-ups that are roped up the same way, with the legs and teams that share them.

use crate::{
    plan::leg::{Leg, MarkKind, TeamSetup},
    say::{self, arg::Arg, finding, name, span::Said, voice::Voice},
    trip::party::Called,
};

/// One way to rope up, with every leg and team that it is for.
pub(super) struct Same<'a> {
    pub(super) uses: Vec<(&'a Leg, &'a TeamSetup)>,
}

impl<'a> Same<'a> {
    /// The first of them: they differ in nothing but who is on the rope.
    pub(super) fn setup(&self) -> Option<&'a TeamSetup> {
        self.uses.first().map(|(_, setup)| *setup)
    }

    /// Whether it is tied alike on the same rope.
    fn ties(&self, setup: &TeamSetup) -> bool {
        let places = |s: &TeamSetup| -> Vec<(f64, MarkKind)> {
            s.marks.iter().map(|m| (m.at_m, m.kind)).collect()
        };
        let rope = |s: &TeamSetup| s.rope.as_ref().map(|r| r.number);
        self.setup()
            .is_some_and(|first| places(first) == places(setup) && rope(first) == rope(setup))
    }

    /// Whether it is tied alike for the same reasons.
    fn holds(&self, setup: &TeamSetup) -> bool {
        let why = |first: &TeamSetup| first.knots.why == setup.knots.why;
        self.ties(setup) && self.setup().is_some_and(why)
    }

    /// `Legs 2, 4`, or with several teams `Legs 2, 6: teams 1, 3; leg 4: team 1`.
    pub(super) fn shown(&self, voice: Voice) -> String {
        let alone = self.uses.iter().all(|(leg, _)| leg.teams.len() == 1);
        let each = self.by_teams().into_iter().map(|(teams, legs)| {
            let legs = finding::legs(&legs, voice);
            if alone {
                return legs;
            }
            let args = [
                ("legs", Arg::Said(legs)),
                ("count", Arg::Count(teams.len())),
                ("teams", Arg::Said(Said::figure(teams.join(", ")))),
            ];
            voice.say("same-teams", &args)
        });
        Said::join(each, "; ").capital().to_string()
    }

    /// Which legs it is for, those of the same teams together.
    fn by_teams(&self) -> Vec<(Vec<String>, Vec<usize>)> {
        let of_leg = self.uses.chunk_by(|a, b| a.0.leg == b.0.leg);
        let of_leg = of_leg.filter_map(|uses| {
            let teams = uses.iter().map(|(_, setup)| setup.team.to_string());
            Some((teams.collect::<Vec<_>>(), uses.first()?.0.leg))
        });
        let mut all: Vec<(Vec<String>, Vec<usize>)> = Vec::new();
        for (teams, leg) in of_leg {
            match all.iter_mut().find(|(known, _)| *known == teams) {
                Some((_, legs)) => legs.push(leg),
                None => all.push((teams, vec![leg])),
            }
        }
        all
    }

    /// Only the legs: `legs 2, 4`.
    pub(super) fn legs(&self, voice: Voice) -> Said {
        let mut legs: Vec<usize> = self.uses.iter().map(|(leg, _)| leg.leg).collect();
        legs.dedup();
        finding::legs(&legs, voice)
    }

    /// Who or what comes at a mark: `person 1 / person 2 ties in` where it depends on the team.
    pub(super) fn at(&self, mark: usize, voice: Voice) -> Said {
        let marks = self.uses.iter();
        let mut marks = marks.filter_map(|(_, setup)| Some((*setup, setup.marks.get(mark)?)));
        let Some((setup, first)) = marks.clone().next() else {
            return Said::default();
        };
        if first.kind != MarkKind::TieIn {
            return say::mark::mark(first, setup, voice);
        }
        let mut names: Vec<&Called> = Vec::new();
        for (setup, mark) in &mut marks {
            let person = mark
                .person
                .and_then(|p| setup.persons.get(p.checked_sub(1)?));
            names.extend(person.map(|p| &p.called));
        }
        names.sort_unstable();
        names.dedup();
        let who = names.into_iter().map(|n| name::person(n, voice));
        let who = Arg::Said(Said::join(who, " / "));
        voice.say("mark-tie-in", &[("who", who)])
    }

    /// Those of its uses together for which `of` gives the same, with what it gives.
    pub(super) fn parts<T: PartialEq>(&self, of: impl Fn(&'a TeamSetup) -> T) -> Vec<(Self, T)> {
        let mut parts: Vec<(Self, T)> = Vec::new();
        for &(leg, setup) in &self.uses {
            let value = of(setup);
            match parts.iter_mut().find(|(_, known)| *known == value) {
                Some((part, _)) => part.uses.push((leg, setup)),
                None => parts.push((
                    Self {
                        uses: vec![(leg, setup)],
                    },
                    value,
                )),
            }
        }
        parts
    }

    /// Whether the same people are on it wherever it is used.
    pub(super) fn one_team(&self) -> bool {
        self.uses.windows(2).all(|w| w[0].1.team == w[1].1.team)
    }
}

/// Each way to rope up, with the legs and teams it is for; where the knots have another reason, it is another way.
pub(super) fn grouped(legs: &[Leg]) -> Vec<Same<'_>> {
    together(legs, Same::holds)
}

/// Each way to tie in, whatever the reasons.
pub(super) fn tied_alike(legs: &[Leg]) -> Vec<Same<'_>> {
    together(legs, Same::ties)
}

fn together<'a>(legs: &'a [Leg], alike: fn(&Same<'a>, &TeamSetup) -> bool) -> Vec<Same<'a>> {
    let mut groups: Vec<Same<'_>> = Vec::new();
    for (leg, setup) in legs
        .iter()
        .flat_map(|l| l.teams.iter().map(move |t| (l, t)))
    {
        match groups.iter_mut().find(|g| alike(g, setup)) {
            Some(group) => group.uses.push((leg, setup)),
            None => groups.push(Same {
                uses: vec![(leg, setup)],
            }),
        }
    }
    groups
}
