//! The ground under the line of one stage, whatever ice lies on it: which heights are used, slopes, where it turns back.

use crate::{
    cores,
    fault::Fault,
    ground::{
        agreement::agreement,
        along::Slopes,
        heights::{ModelHeights, heights},
        pieces::KnownPieces,
        profile::Profile,
        steep::{Steep, Steepness},
    },
    meet::{
        angle::KnownAngles,
        turns::{TurnBack, turns},
    },
    plan::{
        fact::Fact,
        finding::{At, Finding, JobPart, StagePlace},
        heights::{HeightsApart, TerrainVoid},
        place::HeightsFrom,
    },
    practice::{Rule, Rules},
    raster::Terrain,
    trip::route::{Stage, Stretch},
};

/// Everything known about the line of a stage and the ground under it. It rests on the line, the terrain and a few
/// figures, so that whoever draws other ice need not ask for it again.
#[derive(Debug, Default)]
pub(crate) struct GroundLine {
    /// The heights used: for slopes, and for climbs unless they are a model's.
    pub(crate) profile: Profile,
    /// A model's heights as they count for climbs.
    smoothed: Option<Profile>,
    /// Heights of the other source: where slopes are asked for, the steeper counts.
    pub(crate) second: Profile,
    /// Where the heights for climbs and times come from.
    pub(crate) heights_from: Option<HeightsFrom>,
    /// Slopes of the ground.
    pub(crate) ground: Slopes,
    /// Where the line turns back on itself.
    pub(crate) turns: Vec<TurnBack>,
    /// Angles that ropes on it were asked for.
    pub(crate) angles: KnownAngles,
    /// Pieces of legs on it that were asked for.
    pub(crate) pieces: KnownPieces,
    /// What must be said about the heights of the stage.
    pub(crate) notes: Vec<Finding>,
}

/// Whether the route file's own heights are used beside a terrain model.
fn keeps_own(own: &Profile, stage: &Stage, heights: &ModelHeights) -> bool {
    heights.void_m() > 0.0 && spans(own, stage) || heights.profile.is_empty()
}

/// The figures that it rests on.
const RESTS_ON: [Rule; 9] = [
    Rule::MarginM,
    Rule::TurnBackM,
    Rule::AscentThresholdM,
    Rule::ClimbCells,
    Rule::AscentsApartShare,
    Rule::GroundStepM,
    Rule::HeightsApartM,
    Rule::LoneHeightM,
    Rule::ConvexOverM,
];

impl GroundLine {
    /// Reads the terrain along the stage.
    ///
    /// # Errors
    /// A terrain file is broken where it is read.
    pub(crate) fn of(
        stage: &Stage,
        terrain: Option<&Terrain>,
        rules: &Rules,
    ) -> Result<Self, Fault> {
        let (margin_m, least_m) = (rules[Rule::MarginM], rules[Rule::TurnBackM]);
        let (line, turns) = cores::both(
            || Self::but_turns(stage, terrain, rules),
            || turns(stage, margin_m, least_m),
        );
        Ok(Self { turns, ..line? })
    }

    /// The figures that a line under these rules rests on, to the last bit.
    pub(crate) fn rests_on(rules: &Rules) -> Vec<u64> {
        RESTS_ON.map(|rule| rules[rule].to_bits()).to_vec()
    }

    fn but_turns(stage: &Stage, terrain: Option<&Terrain>, rules: &Rules) -> Result<Self, Fault> {
        let mut line = Self {
            profile: Profile::of_route(stage).measured(rules[Rule::LoneHeightM]),
            ..Self::default()
        };
        line.heights_from = (!line.profile.is_empty()).then_some(HeightsFrom::RouteFile);
        if let Some(terrain) = terrain {
            let heights = heights(stage, terrain, rules)?;
            line.ground = Slopes::along(stage, terrain, rules)?;
            line.take_heights(stage, heights, rules);
        }
        Ok(line)
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

    /// The steepest slope along the line by either source.
    pub(crate) fn steepest(&self, stretch: Stretch, rules: &Rules) -> Option<Steep> {
        let over_m = rules[Rule::SteepOverM];
        let sources = [&self.profile, &self.second].into_iter();
        steeper(sources.filter_map(|p| p.steepest(stretch, over_m)))
    }

    /// The same, and the steepest descent, by either source each.
    pub(crate) fn steepness(&self, stretch: Stretch, rules: &Rules) -> Steepness {
        let over_m = rules[Rule::SteepOverM];
        let sources = [&self.profile, &self.second];
        let told = sources.map(|p| p.steepness(stretch, over_m));
        let descents = told.iter().filter_map(|one| one.descent_deg);
        Steepness {
            steepest: steeper(told.iter().filter_map(|one| one.steepest)),
            descent_deg: descents.max_by(f64::total_cmp),
        }
    }
}

fn steeper(slopes: impl Iterator<Item = Steep>) -> Option<Steep> {
    slopes.max_by(|a, b| a.deg.abs().total_cmp(&b.deg.abs()))
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
