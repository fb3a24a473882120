//! The legs of a stage with the set-up of each team, before ropes are given out.

use crate::{
    problem::Problem,
    rope::{
        knots::Hardship,
        setup::{Draft, bare_only},
        spacing,
    },
    route::{Stage, Stretch},
    rules::{Rule, Rules},
    split::{
        Contact, contacts,
        stretch::{Asking, Roped, roped_stretches},
        worst::Worst,
    },
    team::RopeTeam,
    zone::{RopeWord, Surface, Zone},
};

use super::{Job, underfoot::Underfoot};

/// One stage, split.
#[derive(Debug)]
pub(super) struct Sketch<'a> {
    pub(super) stage: &'a Stage,
    pub(super) under: Underfoot,
    pub(super) contacts: Vec<Contact>,
    pub(super) legs: Vec<LegSketch>,
}

/// One leg, split; teams are empty where it is unroped.
#[derive(Debug)]
pub(super) struct LegSketch {
    pub(super) stretch: Stretch,
    pub(super) roped: bool,
    /// Indices of the contacts met on the leg.
    pub(super) contacts: Vec<usize>,
    pub(super) teams: Vec<Draft>,
}

impl<'a> Sketch<'a> {
    /// Splits a stage and drafts the set-up of every team on every roped leg.
    pub(super) fn of(job: &Job<'a>, teams: &[RopeTeam], stage: &'a Stage) -> Result<Self, Problem> {
        let contacts = contacts(stage, job.zones, job.rules[Rule::MarginM]);
        let mut sketch = Self {
            stage,
            under: Underfoot::of(job, stage, &contacts)?,
            contacts,
            legs: Vec::new(),
        };
        sketch.legs = tiles(stage.length_m(), sketch.roped(job, teams))
            .into_iter()
            .map(|tile| sketch.leg(job, teams, tile))
            .collect();
        Ok(sketch)
    }

    fn leg(&self, job: &Job<'_>, teams: &[RopeTeam], tile: Tile) -> LegSketch {
        let met = |c: &Contact| c.touches.iter().any(|t| overlaps(*t, tile.stretch));
        let contacts = match &tile.roped {
            Some(roped) => roped.contacts.clone(),
            None => (0..self.contacts.len())
                .filter(|&i| met(&self.contacts[i]))
                .collect(),
        };
        let drafts = tile.roped.iter().flat_map(|roped| {
            let on_leg = OnLeg::new(job, self, &roped.contacts, roped.stretch);
            let hardship = self.hardship(roped.stretch, job.rules);
            teams
                .iter()
                .map(move |team| on_leg.draft(team, hardship))
                .collect::<Vec<_>>()
        });
        let teams = drafts.collect();
        LegSketch {
            stretch: tile.stretch,
            roped: tile.roped.is_some(),
            contacts,
            teams,
        }
    }

    fn hardship(&self, stretch: Stretch, rules: &Rules) -> Hardship {
        let steepest = self.under.steepest_descent_deg(stretch, rules);
        Hardship {
            steepest_descent_deg: steepest.unwrap_or(0.0),
        }
    }

    fn roped(&self, job: &Job<'_>, teams: &[RopeTeam]) -> Vec<Roped> {
        let asking = Asking {
            ropes: &|i| {
                let zone = self.contacts.get(i).and_then(|c| job.zones.get(c.zone));
                zone.is_some_and(|z| asks_for_rope(z, job.rules))
            },
            team_length_m: &|held, stretch| {
                OnLeg::new(job, self, held, stretch).team_length_m(teams)
            },
            least_unroped_m: job.rules[Rule::LeastUnropedM],
        };
        roped_stretches(self.stage.length_m(), &self.contacts, &asking)
    }

    /// The zones met on a leg, in file order.
    pub(super) fn zones<'z>(&self, leg: &LegSketch, zones: &'z [Zone]) -> Vec<&'z Zone> {
        leg.contacts
            .iter()
            .filter_map(|&i| zones.get(self.contacts.get(i)?.zone))
            .collect()
    }
}

/// Share more than a point.
fn overlaps(a: Stretch, b: Stretch) -> bool {
    a.from_m < b.to_m && b.from_m < a.to_m
}

/// What a team meets on one roped stretch.
struct OnLeg<'a> {
    worst: Worst<'a>,
    zones: Vec<&'a Zone>,
    rules: &'a Rules,
}

impl<'a> OnLeg<'a> {
    fn new(job: &Job<'a>, sketch: &Sketch<'a>, held: &[usize], stretch: Stretch) -> Self {
        let contacts = &sketch.contacts;
        let zones = held
            .iter()
            .filter_map(|&i| job.zones.get(contacts.get(i)?.zone))
            .collect();
        let proposed = sketch.under.counted(job.rules);
        let worst = Worst::new(
            sketch.stage,
            job.zones,
            contacts,
            held,
            proposed,
            stretch,
            job.rules,
        );
        Self {
            worst,
            zones,
            rules: job.rules,
        }
    }

    fn spacing(&self, people: usize) -> spacing::Spacing {
        let meet = |spacing_m: f64| self.worst.at(spacing_m);
        spacing::choose(people, bare_only(&self.zones), self.rules, &meet)
    }

    fn draft(&self, team: &RopeTeam, hardship: Hardship) -> Draft {
        Draft::new(
            team,
            self.spacing(team.size()),
            &self.zones,
            hardship,
            self.rules,
        )
    }

    /// From the first person to the last of the longest team, metres.
    #[expect(
        clippy::cast_precision_loss,
        reason = "a rope team has five people at most"
    )]
    fn team_length_m(&self, teams: &[RopeTeam]) -> f64 {
        let length_m = |n: usize| n.saturating_sub(1) as f64 * self.spacing(n).spacing_m;
        teams.iter().map(|t| length_m(t.size())).fold(0.0, f64::max)
    }
}

/// Whether a zone puts the team on the rope: the leader's word, else the practice set's on bare ice.
pub(super) fn asks_for_rope(zone: &Zone, rules: &Rules) -> bool {
    match zone.rope {
        RopeWord::Always => true,
        RopeWord::Never => false,
        RopeWord::Auto => zone.surface == Surface::Snow || rules.choices.rope_on_bare.value,
    }
}

/// A piece of the stage before it becomes a leg.
struct Tile {
    stretch: Stretch,
    roped: Option<Roped>,
}

/// The roped stretches and what lies between them, from 0 to the end of the stage.
fn tiles(length_m: f64, roped: Vec<Roped>) -> Vec<Tile> {
    let mut tiles = Vec::new();
    let mut at_m = 0.0;
    for next in roped {
        if next.stretch.from_m > at_m {
            let stretch = Stretch {
                from_m: at_m,
                to_m: next.stretch.from_m,
            };
            tiles.push(Tile {
                stretch,
                roped: None,
            });
        }
        at_m = next.stretch.to_m;
        tiles.push(Tile {
            stretch: next.stretch,
            roped: Some(next),
        });
    }
    if at_m < length_m || tiles.is_empty() {
        tiles.push(Tile {
            stretch: Stretch {
                from_m: at_m,
                to_m: length_m,
            },
            roped: None,
        });
    }
    tiles
}
