//! What rope is free for a rescue and how deep a drop loop of it reaches.

use schemars::JsonSchema;
use serde::Serialize;

use crate::{physics::haul::System, plan::fall::HaulAnswer};

/// How deep a drop loop reaches for one person who falls, from an anchor where the holder stands.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let team = &plan.legs[1].teams[0];
/// // Three at 13.5 m on 60 m of rope: 15 m in each coil, 2.5 m for hands and hitches (published, `foh`, and derived).
/// let (end, middle) = (&team.reach[0], &team.reach[1]);
/// assert!(end.whoever && end.depth_m == 10.5, "all that 3 m between holder and lip leave");
/// assert_eq!(end.needs_untied, [3], "the rope behind is free once Cy has untied");
/// assert_eq!(middle.depth_m, 15.0 - 13.5 - 2.5, "short of the lip");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Reach {
    /// Position on the rope, from 1.
    pub person: usize,
    /// The side with more free rope.
    pub side: Side,
    /// People on that side.
    pub people: usize,
    /// Rope that they have free, metres.
    pub free_m: f64,
    /// How deep below the lip the loop reaches, metres, hands and hitches counted; negative where it ends short of the
    /// lip. Never deeper than the rope lets anybody hang while the holder keeps away from the lip.
    pub depth_m: f64,
    /// Whether that is as deep as anybody can hang on this rope.
    pub whoever: bool,
    /// Whether it ends so little below the lip (`near_lip_m`) that it reaches nobody who hangs, though it does not end short of it.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub barely: bool,
    /// Positions of those who must untie for it, secured first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub needs_untied: Vec<usize>,
    /// The ways to haul that the free rope allows, each with the depths that it reaches.
    pub hauls: Vec<HaulReach>,
    /// What of it they can do for the person who hangs where the anchor leaves them; absent where the model has no answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub haul: Option<HaulAnswer>,
}

impl Reach {
    /// By how much the loop ends short of the lip, metres; `None` where it reaches it.
    #[must_use]
    pub fn short_m(&self) -> Option<f64> {
        (self.depth_m < -1e-9).then_some(-self.depth_m)
    }
}

/// A side of the fallen person on the rope.
///
/// ```
/// use schrund::plan::reach::Side;
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let reach = &plan.legs[1].teams[0].reach;
/// let sides: Vec<Side> = reach.iter().map(|reach| reach.side).collect();
/// assert_eq!(sides, [Side::Behind, Side::Ahead], "of two, the other one has the rope");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// Those who walk in front.
    Ahead,
    /// Those who follow.
    Behind,
}

/// How deep below the lip a way to haul reaches.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let team = &plan.legs[1].teams[0];
/// let mut hauls = team.reach.iter().flat_map(|reach| &reach.hauls);
/// assert!(hauls.all(|haul| haul.from_m <= haul.to_m && haul.to_m <= team.spacing_m - 3.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct HaulReach {
    /// Which way.
    pub system: System,
    /// Least depth, metres.
    pub from_m: f64,
    /// Greatest depth, metres.
    pub to_m: f64,
}
