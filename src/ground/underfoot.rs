//! The ground under one stage, ready for its legs: which heights are used, slopes, strikes, ice without zones.

use crate::trip::job::Brief;
use crate::{
    fault::Fault,
    ground::{
        agreement::agreement,
        along::Slopes,
        convex::{Convex, convex},
        gradient::Gradient,
        heights::{ModelHeights, heights},
        profile::Profile,
        proposal::proposals,
        steep::Steep,
    },
    meet::Contact,
    plan::{
        fact::Fact,
        finding::{At, Finding, JobPart, StagePlace},
        heights::{HeightsApart, TerrainVoid},
        place::HeightsFrom,
    },
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
    /// The heights used: for slopes, and for climbs unless they are a model's.
    pub(crate) profile: Profile,
    /// A model's heights as they count for climbs.
    smoothed: Option<Profile>,
    /// Heights of the other source: where slopes are asked for, the steeper counts.
    pub(crate) second: Profile,
    /// The slopes that decide by the one, and by the other.
    pub(crate) gradient: Gradient,
    pub(crate) second_gradient: Gradient,
    /// Where the heights for climbs and times come from.
    pub(crate) heights_from: Option<HeightsFrom>,
    /// Slopes of the ground.
    pub(crate) ground: Slopes,
    /// By contact: strikes proposed for zones that give none.
    pub(crate) proposed: Vec<Vec<ProposedStrike>>,
    /// Roll-overs on the ice.
    pub(crate) convex: Vec<Convex>,
    /// What must be said about the heights of the stage.
    pub(crate) notes: Vec<Finding>,
}

/// Whether the route file's own heights are used beside a terrain model.
fn keeps_own(own: &Profile, stage: &Stage, heights: &ModelHeights) -> bool {
    heights.void_m() > 0.0 && spans(own, stage) || heights.profile.is_empty()
}

impl Underfoot {
    /// Reads the terrain along the stage; `ice` says where the line is on any.
    pub(crate) fn of(
        job: &Brief<'_>,
        stage: &Stage,
        met: &[Contact],
        ice: &[Stretch],
    ) -> Result<Self, Fault> {
        let mut under = Self {
            profile: Profile::of_route(stage).measured(job.rules[Rule::LoneHeightM]),
            ..Self::default()
        };
        under.heights_from = (!under.profile.is_empty()).then_some(HeightsFrom::RouteFile);
        if let Some(terrain) = job.terrain.filter(|t| !t.is_empty()) {
            under.add_terrain(job, stage, met, terrain)?;
            under.convex = convex(&under.ground, terrain, ice, job.rules)?;
        }
        under.gradient = Gradient::of(&under.profile);
        under.second_gradient = Gradient::of(&under.second);
        Ok(under)
    }

    fn add_terrain(
        &mut self,
        job: &Brief<'_>,
        stage: &Stage,
        met: &[Contact],
        terrain: &Terrain,
    ) -> Result<(), Fault> {
        let heights = heights(stage, terrain, job.rules)?;
        self.ground = Slopes::along(stage, terrain, job.rules)?;
        self.proposed = met.iter().map(|c| self.proposed_for(job, c)).collect();
        self.take_heights(stage, heights, job.rules);
        Ok(())
    }

    fn proposed_for(&self, job: &Brief<'_>, contact: &Contact) -> Vec<ProposedStrike> {
        let zone = contact.of.zone().and_then(|zone| job.zones.get(zone));
        match zone {
            Some(zone) if zone.strike.is_none() => {
                proposals(&self.ground, &contact.touches, job.rules)
            }
            _ => Vec::new(),
        }
    }

    /// The model's heights are used, unless it has voids where the route file has heights: two sources are
    /// never mixed, since a change of height system would look like a climb.
    fn take_heights(&mut self, stage: &Stage, heights: ModelHeights, rules: &Rules) {
        let at = || {
            At::Stage(StagePlace {
                stage: stage.number,
                name: stage.name.clone(),
            })
        };
        let keeps_own = keeps_own(&self.profile, stage, &heights);
        let used = if keeps_own {
            HeightsFrom::RouteFile
        } else {
            HeightsFrom::TerrainModel
        };
        if let Some(void) = void(&heights, used, !self.profile.is_empty()) {
            self.notes
                .push(Finding::new(at(), Fact::TerrainVoid { void }));
        }
        if let Some(apart) = apart(stage, &heights.profile, &self.profile, used) {
            let most_m = apart.median_m.abs().max(apart.worst_m.abs());
            let fact = if most_m <= rules[Rule::HeightsApartM] {
                Fact::HeightsCompared { apart }
            } else {
                Fact::HeightsFarApart { apart }
            };
            self.notes.push(Finding::new(at(), fact));
        }
        self.notes.extend(
            self.ascents_apart(stage, &heights, used, rules)
                .map(|fact| Finding::new(at(), fact)),
        );
        if let Some(cell_m) = heights.coarsest_m {
            let at = At::Part {
                of: JobPart::Terrain,
            };
            let fact = Fact::TerrainFlattens { cell_m };
            self.notes.push(Finding::new(at, fact));
        }
        self.second = heights.profile;
        if !keeps_own {
            std::mem::swap(&mut self.profile, &mut self.second);
            self.smoothed = Some(heights.climbing);
            self.heights_from = Some(used);
        }
    }

    /// The ascent by either source, where both know the whole stage and do not agree on it.
    fn ascents_apart(
        &self,
        stage: &Stage,
        heights: &ModelHeights,
        used: HeightsFrom,
        rules: &Rules,
    ) -> Option<Fact> {
        if !spans(&self.profile, stage) || !spans(&heights.profile, stage) {
            return None;
        }
        let (whole, threshold_m) = (stage.whole(), rules[Rule::AscentThresholdM]);
        let file_m = self.profile.climb(whole, threshold_m)?.ascent_m;
        let model_m = heights.climbing.climb(whole, threshold_m)?.ascent_m;
        let apart_m = (file_m - model_m).abs();
        let most_m = rules[Rule::AscentsApartShare] * file_m.min(model_m);
        (apart_m > most_m.max(threshold_m)).then_some(Fact::AscentsApart {
            file_m,
            model_m,
            used,
        })
    }

    /// The heights that climbs and times are reckoned from.
    pub(crate) fn climbing(&self) -> &Profile {
        self.smoothed.as_ref().unwrap_or(&self.profile)
    }

    /// Long pieces of a stretch whose ups and downs are not known.
    pub(crate) fn climb_unknown(&self, of: Stretch, rules: &Rules) -> Vec<Stretch> {
        let climbing = self.climbing();
        let mut unknown = match climbing.is_empty() {
            true => vec![of],
            false => of.clip(climbing.missing()),
        };
        unknown.retain(|part| part.length_m() > rules[Rule::ClimbUnknownM]);
        unknown
    }

    /// Where neither source knows a height.
    pub(crate) fn unknown(&self, stretch: Stretch) -> Vec<Stretch> {
        let missing = |profile: &Profile| match profile.is_empty() {
            true => vec![stretch],
            false => stretch.clip(profile.missing()),
        };
        let unknown = missing(&self.profile).into_iter();
        let second = missing(&self.second);
        unknown.flat_map(|part| part.clip(&second)).collect()
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

/// Where the model has no heights, if anywhere.
fn void(heights: &ModelHeights, used: HeightsFrom, file_has_heights: bool) -> Option<TerrainVoid> {
    let void_m = heights.void_m();
    let nothing = heights.profile.is_empty();
    if void_m <= 0.0 && !nothing {
        return None;
    }
    let first_m = heights.profile.missing().first().map_or(0.0, |v| v.from_m);
    Some(TerrainVoid {
        void_m: (!nothing).then_some(void_m),
        first_m: (!nothing).then_some(first_m),
        used,
        file_has_heights,
    })
}

/// How far the model lies from the heights of the route file.
fn apart(
    stage: &Stage,
    model: &Profile,
    file: &Profile,
    used: HeightsFrom,
) -> Option<HeightsApart> {
    let differences = agreement(stage, model, file)?;
    Some(HeightsApart {
        median_m: differences.median_m,
        worst_m: differences.worst_m,
        worst_at_m: differences.worst_at_m,
        used,
    })
}
