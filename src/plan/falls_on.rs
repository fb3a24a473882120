//! The snow that falls are reckoned on, and what becomes of them where it is frozen instead.

use schemars::JsonSchema;
use serde::Serialize;

use crate::physics::assumed::Snow;

/// The snow that the falls of a plan are reckoned on. In the morning of the same day it may be another.
///
/// ```
/// use schrund::physics::assumed::Snow;
///
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let falls_on = plan.falls_on.expect("there are falls on snow");
/// assert_eq!((falls_on.reckoned, falls_on.assumed), (Snow::Settled, false));
/// let frozen = falls_on.if_frozen.expect("settled snow may be frozen");
/// assert_eq!((frozen.stop, frozen.look), (vec![2], vec![]), "three on a frozen crust hold the worst fall in no case");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FallsOn {
    /// What the team is taken to stand on wherever it is not bare ice.
    pub reckoned: Snow,
    /// Whether nobody said so.
    pub assumed: bool,
    /// What becomes of falls where the snow is refrozen; absent where the plan is reckoned on that, or on ice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub if_frozen: Option<IfFrozen>,
}

/// What becomes of falls on refrozen snow, as the plan is set up.
///
/// ```
/// use schrund::{physics::assumed::Snow, practice::Origin};
///
/// let mut job = schrund::example::job()?;
/// job.rules.choices.set_word("snow", "refrozen", Origin::Flag);
/// let plan = schrund::plan(&job)?;
/// let falls_on = plan.falls_on.expect("there are falls on snow");
/// assert_eq!((falls_on.reckoned, falls_on.if_frozen), (Snow::Refrozen, None));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct IfFrozen {
    /// Legs on which they stop the team, those included that stop it on the snow of the plan.
    pub stop: Vec<usize>,
    /// Legs on which they are something to look at, and are not on the snow of the plan.
    pub look: Vec<usize>,
}
