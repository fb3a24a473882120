//! The legs of a stage with the spacing of each team, before anything is tied.

use std::{cell::RefCell, collections::BTreeMap};

use crate::{
    cores,
    ground::{
        footing::{Footing, footing},
        line::GroundLine,
        met::MetStage,
        steep::Steepness,
        underway::Underway,
    },
    legs::{
        knots::Hardship,
        memo::Memo,
        over::{Over, ropes_undrawn},
        spacing::{self, Spacing},
        stretch::{Asking, Roped, roped_stretches},
        worst::{Meeting, Worst},
    },
    meet::{Contact, contact::Of},
    practice::{Rule, Rules},
    trip::{
        job::Brief,
        party::RopeTeam,
        route::{Stage, Stretch},
        zone::{RopeWord, Zone},
    },
};

/// One stage, split.
#[derive(Debug)]
pub(crate) struct Sketch<'a> {
    pub(crate) stage: &'a Stage,
    pub(crate) met: &'a MetStage,
    pub(crate) legs: Vec<LegSketch>,
    memo: &'a Memo,
}

/// One leg, split.
#[derive(Debug)]
pub(crate) struct LegSketch {
    pub(crate) stretch: Stretch,
    pub(crate) roped: bool,
    /// Indices of the contacts met on the leg.
    pub(crate) contacts: Vec<usize>,
    /// One for each team; empty where it is unroped.
    pub(crate) spacings: Vec<Spacing>,
}

impl<'a> Sketch<'a> {
    /// Splits a stage and finds the spacing of every team on every roped leg.
    pub(crate) fn of(
        job: &Brief<'a>,
        teams: &[RopeTeam],
        stage: &'a Stage,
        met: &'a MetStage,
        memo: &'a Memo,
    ) -> Self {
        let mut sketch = Self {
            stage,
            met,
            legs: Vec::new(),
            memo,
        };
        let tiles = tiles(stage.length_m(), sketch.roped(job, teams));
        sketch.legs = cores::map(&tiles, |tile| sketch.leg(job, teams, tile));
        sketch
    }

    fn leg(&self, job: &Brief<'_>, teams: &[RopeTeam], tile: &Tile) -> LegSketch {
        let (stretch, roped) = (tile.stretch, tile.roped.is_some());
        let contacts = match &tile.roped {
            Some(roped) => roped.contacts.clone(),
            None => self.met.touching.overlapping(&stretch),
        };
        let spacings = if roped {
            let on_leg = OnLeg::new(job, self, &contacts, stretch);
            teams.iter().map(|t| on_leg.spacing(t)).collect()
        } else {
            Vec::new()
        };
        LegSketch {
            stretch,
            roped,
            contacts,
            spacings,
        }
    }

    fn roped(&self, job: &Brief<'_>, teams: &[RopeTeam]) -> Vec<Roped> {
        let asking = Asking {
            ropes: &|i| {
                let contact = self.met.contacts.get(i);
                contact.is_some_and(|c| ropes(c.of, job.zones, job.rules))
            },
            team_length_m: &|held, stretch| {
                OnLeg::new(job, self, held, stretch).team_length_m(teams)
            },
            least_unroped_m: job.rules[Rule::LeastUnropedM],
        };
        roped_stretches(self.stage.length_m(), &self.met.contacts, &asking)
    }

    /// What a rope with some spacing meets on a leg.
    pub(crate) fn meets<'j>(
        &'j self,
        job: &'j Brief<'_>,
        leg: &'j LegSketch,
    ) -> impl Fn(f64) -> Meeting + 'j {
        let on_leg = OnLeg::new(job, self, &leg.contacts, leg.stretch);
        move |spacing_m| on_leg.at(spacing_m)
    }

    /// What lies under a leg.
    pub(crate) fn footing(&self, leg: &LegSketch, rules: &Rules) -> Footing {
        let spacings = leg.spacings.iter().map(|s| s.spacing_m);
        let underway = Underway {
            stage: self.stage,
            met: self.met,
            stretch: leg.stretch,
            contacts: &leg.contacts,
            rope_m: leg.roped.then(|| spacings.fold(0.0, f64::max)),
        };
        footing(&underway, self.steepness(leg, rules), rules)
    }

    /// How steep the line is on a leg; of an unroped one nobody asks how steeply it goes down.
    fn steepness(&self, leg: &LegSketch, rules: &Rules) -> Steepness {
        let line = &self.met.under.line;
        match leg.roped {
            true => self
                .memo
                .steepness(line, (self.stage.number, leg.stretch), rules),
            false => Steepness {
                steepest: line.steepest(leg.stretch, rules),
                descent_deg: None,
            },
        }
    }

    /// The zones met on a leg, in file order.
    pub(crate) fn zones<'z>(&self, leg: &LegSketch, zones: &'z [Zone]) -> Vec<&'z Zone> {
        leg.contacts
            .iter()
            .filter_map(|&i| zones.get(self.met.contacts.get(i)?.of.zone()?))
            .collect()
    }

    /// Whether a leg holds ice that nobody drew and that counts in its set-up.
    pub(crate) fn undrawn(&self, leg: &LegSketch, rules: &Rules) -> bool {
        ropes_undrawn(rules) && holds_undrawn(&self.met.contacts, &leg.contacts)
    }
}

/// Whether one of these contacts is ice that nobody drew.
fn holds_undrawn(contacts: &[Contact], held: &[usize]) -> bool {
    let of = |&i: &usize| contacts.get(i).map(|c| c.of);
    held.iter().any(|i| of(i) == Some(Of::KnownIce))
}

/// Whether ice puts the team on the rope.
fn ropes(of: Of, zones: &[Zone], rules: &Rules) -> bool {
    match of {
        Of::Zone(zone) => zones.get(zone).is_some_and(|z| asks_for_rope(z, rules)),
        Of::KnownIce => ropes_undrawn(rules),
    }
}

/// What a team meets on one roped stretch.
struct OnLeg<'a> {
    worst: Worst<'a>,
    key: Vec<u64>,
    memo: &'a Memo,
    /// What was asked on this leg, by spacing: the memo is asked once.
    met: RefCell<BTreeMap<u64, Meeting>>,
    zones: Vec<&'a Zone>,
    undrawn: bool,
    line: &'a GroundLine,
    /// On which stage, and where.
    at: (usize, Stretch),
    rules: &'a Rules,
}

impl<'a> OnLeg<'a> {
    fn new(job: &Brief<'a>, sketch: &Sketch<'a>, held: &[usize], stretch: Stretch) -> Self {
        let contacts = &sketch.met.contacts;
        let zones = held
            .iter()
            .filter_map(|&i| job.zones.get(contacts.get(i)?.of.zone()?))
            .collect();
        let worst = Worst::new(
            sketch.stage,
            sketch.met,
            job.zones,
            held,
            stretch,
            job.rules,
        );
        Self {
            key: worst.key(),
            worst,
            memo: sketch.memo,
            met: RefCell::default(),
            zones,
            undrawn: ropes_undrawn(job.rules) && holds_undrawn(contacts, held),
            line: &sketch.met.under.line,
            at: (sketch.stage.number, stretch),
            rules: job.rules,
        }
    }

    fn spacing(&self, team: &RopeTeam) -> Spacing {
        let meet = |spacing_m: f64| self.at(spacing_m);
        let over = Over {
            zones: &self.zones,
            undrawn: self.undrawn,
        };
        spacing::of_team(team, over, || self.hardship(), self.rules, &meet)
    }

    /// What makes holding harder on it.
    fn hardship(&self) -> Hardship {
        let steepness = self.memo.steepness(self.line, self.at, self.rules);
        Hardship {
            steepest_descent_deg: steepness.descent_deg,
        }
    }

    /// What a rope with this spacing meets.
    fn at(&self, spacing_m: f64) -> Meeting {
        let mut met = self.met.borrow_mut();
        let ask = || self.memo.at(&self.worst, &self.key, spacing_m);
        *met.entry(spacing_m.to_bits()).or_insert_with(ask)
    }

    /// From the first person to the last of the longest team, metres.
    #[expect(
        clippy::cast_precision_loss,
        reason = "a rope team has five people at most"
    )]
    fn team_length_m(&self, teams: &[RopeTeam]) -> f64 {
        let length_m = |t: &RopeTeam| t.size().saturating_sub(1) as f64 * self.spacing(t).spacing_m;
        teams.iter().map(length_m).fold(0.0, f64::max)
    }
}

/// Whether a zone puts the team on the rope: the leader's word, else the practice set's on bare ice.
pub(crate) fn asks_for_rope(zone: &Zone, rules: &Rules) -> bool {
    match zone.rope {
        RopeWord::Always => true,
        RopeWord::Never => false,
        RopeWord::Auto => zone.hides_gaps() || rules.choices.rope_on_bare.value,
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
