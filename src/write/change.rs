//! Places where the set-up changes: rope up, unrope.

use crate::plan::leg::Leg;
use crate::{
    say::{place, units::Units, words},
    write::Sheet,
};

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
    /// The same in decimal degrees, for reading.
    pub degrees: String,
    /// The same in the UTM grid; absent near the poles.
    pub utm: Option<String>,
    /// Time of day: when roping up begins, or when unroping is done; absent where nobody said when to start.
    pub clock: Option<&'a str>,
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

impl Change<'_> {
    /// `3. Rope up`.
    #[must_use]
    pub fn title(&self) -> String {
        format!("{}. {}", self.number, words::capital(self.kind.as_str()))
    }

    /// What is done here, in sentences.
    #[must_use]
    pub fn description(&self, units: Units) -> String {
        match self.kind {
            Kind::RopeUp => words::leg_description(self.leg, units),
            Kind::Unrope => format!("End of leg {}, once the last person is here.", self.leg.leg),
        }
    }
}

/// All changes in walking order: two for each roped leg.
#[must_use]
pub fn changes<'a>(sheet: &Sheet<'a>) -> Vec<Change<'a>> {
    let ends = |leg: &'a Leg| {
        [
            (Kind::RopeUp, leg.start_m, leg.start, &leg.start_clock),
            (Kind::Unrope, leg.end_m, leg.end, &leg.end_clock),
        ]
    };
    let roped = sheet.plan.legs.iter().filter(|leg| leg.roped);
    let places = roped.flat_map(|leg| ends(leg).map(|end| (leg, end)));
    places
        .enumerate()
        .map(|(i, (leg, (kind, at_m, at, clock)))| Change {
            number: i + 1,
            stage: leg.stage,
            at_m,
            at,
            degrees: place::degrees(at),
            utm: place::utm(at),
            clock: clock.as_deref(),
            kind,
            leg,
        })
        .collect()
}
