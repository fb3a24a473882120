//! What everybody has on them for the rescue that the plan picked: a list to check before setting out.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{physics::haul::System, trip::party::Called};

/// Some things of one kind on one person, for one use.
///
/// ```
/// use schrund::plan::gear::{GearItem, GearUse};
///
/// let gear = schrund::plan(&schrund::example::job()?)?.gear;
/// let cords = |person| {
///     let rows = gear.iter().filter(move |row| row.person.number == person && row.what == GearItem::PrusikCord);
///     rows.map(|row| (row.count, row.purpose)).collect::<Vec<_>>()
/// };
/// // Bo walks in the middle: the cords to climb a rope. Ane and Cy hold the cords of the haul as well, since either
/// // may be the one in the crevasse.
/// assert_eq!(cords(2), [(2, GearUse::ClimbRope)]);
/// assert_eq!(cords(1), cords(3));
/// assert!(cords(1).len() == 2 && cords(1)[1].1 == GearUse::HaulGrips);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct GearRow {
    /// Who.
    pub person: Called,
    /// Number of their rope team.
    pub team: usize,
    /// What.
    pub what: GearItem,
    /// How many.
    pub count: usize,
    /// What for.
    #[serde(rename = "for")]
    pub purpose: GearUse,
    /// How long it is to be, metres; absent where that decides nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_m: Option<f64>,
    /// The haul that it belongs to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub system: Option<System>,
    /// What stands behind the number.
    pub standing: String,
}

/// A thing on the list.
///
/// ```
/// use schrund::plan::gear::GearItem;
///
/// let mut job = schrund::example::job()?;
/// let has = |plan: &schrund::plan::Plan, item| plan.gear.iter().any(|row| row.what == item);
/// let plan = schrund::plan(&job)?;
/// assert!(has(&plan, GearItem::SnowAnchor) && !has(&plan, GearItem::IceScrew), "snow lies on that ice");
/// job.zones[0].surface = schrund::trip::zone::Surface::Bare;
/// job.zones[0].snow_depth_m = None; // bare ice with snow on it counts as snow
/// let plan = schrund::plan(&job)?;
/// assert!(has(&plan, GearItem::IceScrew) && !has(&plan, GearItem::SnowAnchor));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GearItem {
    /// A harness.
    Harness,
    /// A helmet.
    Helmet,
    /// An ice axe.
    IceAxe,
    /// Something to bury in snow as an anchor.
    SnowAnchor,
    /// An ice screw.
    IceScrew,
    /// A sling.
    Sling,
    /// A prusik cord.
    PrusikCord,
    /// A locking karabiner.
    Karabiner,
    /// A pulley.
    Pulley,
    /// A pair of crampons.
    Crampons,
    /// A headlamp.
    Headlamp,
    /// A probe.
    Probe,
}

/// What a thing on the list is for.
///
/// ```
/// use schrund::{plan::gear::GearUse, physics::haul::System};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let turns = plan.gear.iter().find(|row| row.purpose == GearUse::HaulTurns).expect("a haul was picked");
/// // A drop loop turns once, at the person below.
/// assert_eq!((turns.system, turns.count), (Some(System::LoopAtLip), 1));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GearUse {
    /// To be tied to the rope.
    TieIn,
    /// Against what falls, and in a fall.
    Head,
    /// To brake a slide, and to dig.
    Brake,
    /// An anchor in snow.
    AnchorInSnow,
    /// An anchor in ice.
    AnchorInIce,
    /// To join the anchor and the rope.
    JoinAnchor,
    /// In the drop loop, which is so much longer: the coils are shorter for it.
    LongerLoop,
    /// To climb the rope out of a crevasse.
    ClimbRope,
    /// To tie in, and to clip cords and slings.
    Clip,
    /// Where the rope of the haul turns.
    HaulTurns,
    /// What grips the rope of the haul.
    HaulGrips,
    /// To lose less at the first turn than the hauls are reckoned with.
    HaulEase,
    /// To stand on bare ice.
    StandOnIce,
    /// To see by, in the dark and in a crevasse.
    Light,
    /// To find gaps under snow and how thick their bridges are.
    FindGaps,
}

impl GearItem {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Harness => "harness",
            Self::Helmet => "helmet",
            Self::IceAxe => "ice-axe",
            Self::SnowAnchor => "snow-anchor",
            Self::IceScrew => "ice-screw",
            Self::Sling => "sling",
            Self::PrusikCord => "prusik-cord",
            Self::Karabiner => "karabiner",
            Self::Pulley => "pulley",
            Self::Crampons => "crampons",
            Self::Headlamp => "headlamp",
            Self::Probe => "probe",
        }
    }
}

impl GearUse {
    /// The stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::TieIn => "tie-in",
            Self::Head => "head",
            Self::Brake => "brake",
            Self::AnchorInSnow => "anchor-in-snow",
            Self::AnchorInIce => "anchor-in-ice",
            Self::JoinAnchor => "join-anchor",
            Self::LongerLoop => "longer-loop",
            Self::ClimbRope => "climb-rope",
            Self::Clip => "clip",
            Self::HaulTurns => "haul-turns",
            Self::HaulGrips => "haul-grips",
            Self::HaulEase => "haul-ease",
            Self::StandOnIce => "stand-on-ice",
            Self::Light => "light",
            Self::FindGaps => "find-gaps",
        }
    }
}
