//! Who and what a finding speaks of: numbers for programs, names for people.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::{party::Called, zone::Zone};

/// A zone by its number, with what the leader calls it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ZoneName {
    /// Number from 1.
    pub zone: usize,
    /// What the leader calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
}

impl From<&Zone> for ZoneName {
    fn from(zone: &Zone) -> Self {
        Self {
            zone: zone.number,
            name: zone.name.clone(),
        }
    }
}

/// Ice, drawn or only known.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct IceNames {
    /// The zones.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub zones: Vec<ZoneName>,
    /// Ice of the inventory, numbered as it stands there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub glaciers: Vec<ZoneName>,
}

/// Somebody on a rope.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PersonName {
    /// Position on the rope, from 1.
    pub position: usize,
    /// What the leader calls them.
    #[serde(flatten)]
    pub called: Called,
}

impl PersonName {
    /// Who stands at a position from 1; the position stands for their number where nobody does.
    #[must_use]
    pub fn at(position: usize, persons: &[PersonOnRope]) -> Self {
        let person = position.checked_sub(1).and_then(|i| persons.get(i));
        Self {
            position,
            called: person.map_or_else(|| Called::number(position), |p| p.called.clone()),
        }
    }
}

/// One of the ropes at hand.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RopeName {
    /// Which of the ropes named, from 1.
    pub rope: usize,
    /// What the leader calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Metres.
    pub length_m: f64,
}

/// One person in rope order.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PersonOnRope {
    /// What the leader calls them.
    #[serde(flatten)]
    pub called: Called,
    /// Kilograms with pack.
    pub mass_kg: f64,
}
