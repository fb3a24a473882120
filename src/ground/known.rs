//! Lines whose ground was read before, for those who plan again and again on them. It changes no plan.

use std::{
    mem,
    sync::{Arc, Mutex, MutexGuard, PoisonError},
};

use crate::{
    fault::Fault,
    ground::line::GroundLine,
    practice::Rules,
    raster::{Identity, ModelsAsked, Terrain},
    trip::route::Stage,
};

/// Lines with the ground under them. A copy knows what the other learns.
#[derive(Clone, Debug, Default)]
pub(crate) struct KnownLines(Arc<Mutex<Vec<KnownLine>>>);

/// The ground under one stage, and all that it rests on.
#[derive(Clone, Debug)]
struct KnownLine {
    stage: Stage,
    terrain: Option<Identity>,
    rests_on: Vec<u64>,
    line: Arc<GroundLine>,
    /// What the terrain was asked for it.
    asked: ModelsAsked,
}

impl KnownLines {
    /// The ground under these stages, read where it is not known; it alone is known from now on.
    ///
    /// # Errors
    /// A terrain file is broken where it is read.
    pub(crate) fn under(
        &self,
        stages: &[Stage],
        terrain: Option<&Terrain>,
        rules: &Rules,
    ) -> Result<Vec<Arc<GroundLine>>, Fault> {
        let before = mem::take(&mut *self.all());
        let known = |stage| match before.iter().find(|known| known.is(stage, terrain, rules)) {
            Some(known) => {
                terrain.inspect(|terrain| terrain.ask_again(&known.asked));
                Ok(known.clone())
            }
            None => KnownLine::read(stage, terrain, rules),
        };
        let now = stages
            .iter()
            .map(known)
            .collect::<Result<Vec<KnownLine>, Fault>>()?;
        let lines = now.iter().map(|known| Arc::clone(&known.line)).collect();
        *self.all() = now;
        Ok(lines)
    }

    fn all(&self) -> MutexGuard<'_, Vec<KnownLine>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl KnownLine {
    fn read(stage: &Stage, terrain: Option<&Terrain>, rules: &Rules) -> Result<Self, Fault> {
        let before = terrain.map(Terrain::asked).unwrap_or_default();
        let line = Arc::new(GroundLine::of(stage, terrain, rules)?);
        let asked = terrain.map(Terrain::asked).unwrap_or_default();
        Ok(Self {
            stage: stage.clone(),
            terrain: terrain.map(Terrain::identity),
            rests_on: GroundLine::rests_on(rules),
            line,
            asked: asked.since(&before),
        })
    }

    fn is(&self, stage: &Stage, terrain: Option<&Terrain>, rules: &Rules) -> bool {
        self.terrain == terrain.map(Terrain::identity)
            && self.rests_on == GroundLine::rests_on(rules)
            && self.stage == *stage
    }
}
