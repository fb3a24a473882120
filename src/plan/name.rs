//! Who and what a finding speaks of: numbers for programs, names for people.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::{party::Called, rope::Rope, zone::Zone};

/// A zone by its number, with what the leader calls it.
///
/// ```
/// use schrund::plan::name::ZoneName;
///
/// let mut job = schrund::example::job()?;
/// let named = ZoneName::from(&job.zones[0]);
/// assert_eq!((named.zone, named.name.as_deref()), (1, Some("Middle icefall")));
/// job.zones[0].name = None;
/// assert_eq!(ZoneName::from(&job.zones[0]).zone, named.zone, "the number is always there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// use schrund::{plan::name::{IceNames, ZoneName}, say::{name::ice, voice::Voice}};
///
/// let drawn = ZoneName { zone: 2, name: Some("Upper icefall".to_owned()) };
/// let under = IceNames { zones: vec![drawn], glaciers: Vec::new() };
/// assert_eq!(ice(&under, Voice::default()).to_string(), "zone 2 \"Upper icefall\"");
/// ```
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
///
/// ```
/// use schrund::{plan::name::PersonName, trip::party::Called};
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let persons = &plan.legs[1].teams[0].persons;
/// assert_eq!(PersonName::at(2, persons).called.name.as_deref(), Some("Bo"));
/// assert_eq!(PersonName::at(4, persons).called, Called::number(4), "nobody walks there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let rope = plan.carry[0].rope.as_ref().expect("the leader named one");
/// assert_eq!((rope.rope, rope.name.as_deref(), rope.length_m), (1, Some("red"), 80.0));
/// let at_hand = plan.legs[1].teams[0].rope.as_ref();
/// assert_eq!(at_hand.map(|r| r.number), Some(rope.rope), "the one that the set-up is tied on");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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

impl RopeName {
    /// The name of a rope at hand by its number, from 1.
    #[must_use]
    pub fn of(number: usize, rope: &Rope) -> Self {
        Self {
            rope: number,
            name: rope.name.clone(),
            length_m: rope.length_m,
        }
    }
}

/// One person in rope order.
///
/// ```
/// let job = schrund::example::job()?;
/// let plan = schrund::plan(&job)?;
/// let on_rope = &plan.legs[1].teams[0].persons;
/// let named = job.party.people.iter().map(|person| (&person.called, person.mass_kg));
/// assert!(on_rope.iter().map(|p| (&p.called, p.mass_kg)).eq(named), "in the order named");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PersonOnRope {
    /// What the leader calls them.
    #[serde(flatten)]
    pub called: Called,
    /// Kilograms with pack.
    pub mass_kg: f64,
}
