//! Boxes round lines.

use crate::{
    geometry::Bounds,
    trip::route::{Route, Stage},
};

impl Route {
    /// The box round all stages; `None` without a point.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        let boxes = self.stages.iter().filter_map(Stage::bounds);
        boxes.reduce(Bounds::with)
    }
}

impl Stage {
    /// The box round its points; `None` without one.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::over(self.points().iter())
    }
}
