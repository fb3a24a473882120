//! Places where the set-up changes: rope up, unrope.

use super::Sheet;
use crate::leg::Leg;

/// One place where the team stops to handle the rope.
#[derive(Clone, Debug, PartialEq)]
pub struct Change<'a> {
    /// Number from 1 over the whole plan.
    pub number: usize,
    /// Number of the stage.
    pub stage: usize,
    /// Chainage of the first person.
    pub at_m: f64,
    /// Longitude, latitude.
    pub at: [f64; 2],
    /// What is done there.
    pub kind: Kind,
    /// The roped leg that begins or ends here.
    pub leg: &'a Leg,
}

/// What is done at a change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Onto the rope.
    RopeUp,
    /// Off the rope.
    Unrope,
}

impl Kind {
    /// The words.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::RopeUp => "rope up",
            Self::Unrope => "unrope",
        }
    }
}

/// All changes in walking order: two for each roped leg.
#[must_use]
pub fn changes<'a>(sheet: &Sheet<'a>) -> Vec<Change<'a>> {
    let ends = |leg: &'a Leg| {
        [
            (Kind::RopeUp, leg.start_m, leg.start),
            (Kind::Unrope, leg.end_m, leg.end),
        ]
    };
    let roped = sheet.plan.legs.iter().filter(|leg| leg.roped);
    let places = roped.flat_map(|leg| ends(leg).map(|end| (leg, end)));
    places
        .enumerate()
        .map(|(i, (leg, (kind, at_m, at)))| Change {
            number: i + 1,
            stage: leg.stage,
            at_m,
            at,
            kind,
            leg,
        })
        .collect()
}
