//! The ground under one stage, ready for its legs: which heights are used, slopes, strikes, ice without zones.

use crate::trip::job::Case;
use crate::{
    fault::{Code, Fault, Place, Problem},
    ground::{
        self, Agreement, Convex, Ground, Heights,
        profile::{Profile, Steep},
    },
    meet::{Contact, contacts},
    practice::{Rule, Rules},
    raster::Terrain,
    trip::{
        route::{Stage, Stretch},
        zone::ProposedStrike,
    },
};

/// Everything known about the ground of a stage.
#[derive(Debug, Default)]
pub(crate) struct Underfoot {
    /// Heights for climbs and times.
    pub(crate) profile: Profile,
    /// Heights of the other source: where slopes are asked for, the steeper counts.
    pub(crate) second: Profile,
    /// Where the heights for climbs and times come from.
    pub(crate) heights_from: Option<&'static str>,
    /// Slopes of the ground.
    pub(crate) ground: Ground,
    /// By contact: strikes proposed for zones that give none.
    pub(crate) proposed: Vec<Vec<ProposedStrike>>,
    /// Roll-overs on the ice.
    pub(crate) convex: Vec<Convex>,
    /// Ice of the inventory outside every zone.
    pub(crate) without_zone: Vec<Stretch>,
    /// What must be said about the heights of the stage.
    pub(crate) notes: Vec<Problem>,
}

/// The heights that a plan of this stage goes by: the terrain model's, or else those of the route file.
///
/// # Errors
/// A terrain file is broken where it is read.
pub fn profile(stage: &Stage, terrain: Option<&Terrain>) -> Result<Profile, Fault> {
    let own = Profile::of_route(stage);
    let Some(terrain) = terrain.filter(|t| !t.is_empty()) else {
        return Ok(own);
    };
    let heights = ground::heights(stage, terrain)?;
    Ok(if keeps_own(&own, stage, &heights) {
        own
    } else {
        heights.profile
    })
}

/// Whether the route file's own heights are used beside a terrain model.
fn keeps_own(own: &Profile, stage: &Stage, heights: &Heights) -> bool {
    heights.void_m() > 0.0 && spans(own, stage) || heights.profile.is_empty()
}

impl Underfoot {
    /// Reads the terrain along the stage and the inventory across it.
    pub(crate) fn of(job: &Case<'_>, stage: &Stage, met: &[Contact]) -> Result<Self, Fault> {
        let ice = ice(job, stage, met);
        let mut under = Self {
            profile: Profile::of_route(stage),
            without_zone: outside_zones(&ice, met, job.rules),
            ..Self::default()
        };
        under.heights_from = (!under.profile.is_empty()).then_some("route file");
        if let Some(terrain) = job.terrain.filter(|t| !t.is_empty()) {
            under.add_terrain(job, stage, met, terrain)?;
            under.convex = ground::convex(&under.ground, terrain, &ice, job.rules)?;
        }
        Ok(under)
    }

    fn add_terrain(
        &mut self,
        job: &Case<'_>,
        stage: &Stage,
        met: &[Contact],
        terrain: &Terrain,
    ) -> Result<(), Fault> {
        let heights = ground::heights(stage, terrain)?;
        self.ground = Ground::along(stage, terrain, job.rules)?;
        self.proposed = met.iter().map(|c| self.proposed_for(job, c)).collect();
        self.take_heights(stage, heights, job.rules);
        Ok(())
    }

    fn proposed_for(&self, job: &Case<'_>, contact: &Contact) -> Vec<ProposedStrike> {
        match job.zones.get(contact.zone) {
            Some(zone) if zone.strike.is_none() => {
                ground::proposals(&self.ground, &contact.touches, job.rules)
            }
            _ => Vec::new(),
        }
    }

    /// The model's heights are used, unless it has voids where the route file has heights: two sources are
    /// never mixed, since a change of height system would look like a climb.
    fn take_heights(&mut self, stage: &Stage, heights: Heights, rules: &Rules) {
        let place = || Place::item(stage.label());
        let void_m = heights.void_m();
        let keeps_own = keeps_own(&self.profile, stage, &heights);
        let used = if keeps_own {
            "route file"
        } else {
            "terrain model"
        };
        if void_m > 0.0 || heights.profile.is_empty() {
            self.notes.push(void_says(
                place(),
                stage,
                &heights,
                used,
                self.profile.is_empty(),
            ));
        }
        if let Some(agreement) = ground::agreement(&heights.profile, &self.profile) {
            self.notes
                .push(agreement_says(place(), agreement, used, rules));
        }
        if let Some(cell_m) = heights.coarsest_m {
            self.notes.push(flattens(cell_m));
        }
        self.second = heights.profile;
        if !keeps_own {
            std::mem::swap(&mut self.profile, &mut self.second);
            self.heights_from = Some(used);
        }
    }

    /// The strikes that count in the arithmetic: none, unless the leader wants them to.
    pub(crate) fn counted(&self, rules: &Rules) -> &[Vec<ProposedStrike>] {
        if rules.choices.use_proposed_strike.value {
            &self.proposed
        } else {
            &[]
        }
    }

    /// The steepest slope along the line by either source.
    pub(crate) fn steepest(&self, stretch: Stretch, rules: &Rules) -> Option<Steep> {
        let over_m = rules[Rule::SteepOverM];
        let sources = [&self.profile, &self.second].into_iter();
        sources
            .filter_map(|p| p.steepest(stretch, over_m))
            .max_by(|a, b| a.deg.abs().total_cmp(&b.deg.abs()))
    }

    /// The steepest descent along the line by either source, degrees.
    pub(crate) fn steepest_descent_deg(&self, stretch: Stretch, rules: &Rules) -> Option<f64> {
        let over_m = rules[Rule::SteepOverM];
        let sources = [&self.profile, &self.second].into_iter();
        sources
            .filter_map(|p| p.steepest_descent_deg(stretch, over_m))
            .max_by(f64::total_cmp)
    }
}

/// Whether the heights reach over the whole stage.
fn spans(profile: &Profile, stage: &Stage) -> bool {
    let ends = [0.0, stage.length_m()];
    ends.into_iter().all(|m| profile.height_m(m).is_some())
}

fn km(metres: f64) -> String {
    format!("{:.2}", metres / 1000.0)
}

fn void_says(
    place: Place,
    stage: &Stage,
    heights: &Heights,
    used: &str,
    no_other: bool,
) -> Problem {
    let says = if heights.profile.is_empty() {
        format!("the terrain model has no height along {}", stage.label())
    } else {
        let first = heights.void.first().map_or(0.0, |v| v.from_m);
        let what = if used == "terrain model" {
            "climbs go straight across there"
        } else {
            "the heights of the route file are used instead"
        };
        let (metres, near) = (heights.void_m(), km(first));
        format!(
            "the terrain model has no height for {metres:.0} m of the line, first from {near} km; {what}"
        )
    };
    let hint = if no_other {
        "add a model that covers the line: `--terrain` can be given again"
    } else {
        "slopes of the ground are missing there; `--terrain` can be given again"
    };
    Problem::new(Code::TerrainVoid, place, says).hint(hint)
}

/// `12 m above`, `12 m below` or `within a metre of`.
fn above(by_m: f64) -> String {
    match by_m.round() {
        m if m > 0.0 => format!("{m:.0} m above"),
        m if m < 0.0 => format!("{:.0} m below", -m),
        _ => "within a metre of".to_owned(),
    }
}

fn agreement_says(place: Place, a: Agreement, used: &str, rules: &Rules) -> Problem {
    let apart_m = rules[Rule::HeightsApartM];
    let says = format!(
        "the terrain model lies {} the heights of the route file in the median; at the worst {} them, near {} km; the {used} is used for climbs and times, the steeper of both for slopes",
        above(a.median_m),
        above(a.worst_m),
        km(a.worst_at_m)
    );
    if a.median_m.abs() <= apart_m && a.worst_m.abs() <= apart_m {
        return Problem::new(Code::HeightsCompared, place, says);
    }
    Problem::new(Code::HeightsApart, place, says)
        .hint("compare a known height, such as a hut, with the map; receivers and models may count from different zeros")
}

fn flattens(cell_m: f64) -> Problem {
    let says = format!(
        "slopes of the ground come from a model with cells of {cell_m:.0} m: short steps and walls are flattened; nothing was relaxed because of it"
    );
    Problem::new(Code::TerrainFlattens, Place::item("terrain"), says)
}

/// Where the line is on ice: in zones, or in the inventory.
fn ice(job: &Case<'_>, stage: &Stage, met: &[Contact]) -> Vec<Stretch> {
    let inventory = contacts(stage, job.glaciers, 0.0);
    let all = met.iter().chain(&inventory).flat_map(|c| &c.crossings);
    Stretch::merged(all.copied().collect(), 0.0)
}

/// What of the ice lies outside every zone; pieces no longer than the margin are what maps are off.
fn outside_zones(ice: &[Stretch], met: &[Contact], rules: &Rules) -> Vec<Stretch> {
    let zones = met.iter().flat_map(|c| c.crossings.iter().copied());
    let zones = Stretch::merged(zones.collect(), 0.0);
    let mut outside: Vec<Stretch> = Vec::new();
    for piece in ice {
        let mut from_m = piece.from_m;
        let first = zones.partition_point(|z| z.to_m <= piece.from_m);
        for zone in zones
            .iter()
            .skip(first)
            .take_while(|z| z.from_m < piece.to_m)
        {
            outside.push(Stretch {
                from_m,
                to_m: zone.from_m.max(from_m),
            });
            from_m = from_m.max(zone.to_m);
        }
        outside.push(Stretch {
            from_m,
            to_m: piece.to_m.max(from_m),
        });
    }
    outside.retain(|s| s.length_m() > rules[Rule::MarginM]);
    outside
}
