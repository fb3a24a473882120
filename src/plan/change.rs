//! What can be done otherwise to make a rope fit.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::name::RopeName;

/// Something done otherwise than the rules in force say.
///
/// ```
/// use schrund::plan::change::Change;
///
/// let job = schrund::example::job()?;
/// let ways = schrund::Planner::new(&job)?.options()?.ways;
/// let [Change::LongSling { sling_m }] = ways[1].changes[..] else { panic!("{:?}", ways[1]) };
/// assert!((ways[0].coil_m - ways[1].coil_m - sling_m).abs() < 1e-9, "so much shorter is each coil");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum Change {
    /// Another practice set.
    Practice {
        /// Its name.
        name: String,
    },
    /// Butterflies for brake knots; they bite less.
    Butterflies,
    /// Brake knots nearer to the end person and to each other.
    TighterLayout {
        /// Distance walked from the end person to the first, metres.
        first_m: f64,
        /// Distance walked from one to the next, metres.
        step_m: f64,
    },
    /// A long sling in the drop loop.
    LongSling {
        /// Its length, metres.
        sling_m: f64,
    },
    /// Closer together than the practice set says, where no gap and no layout of knots asks for more.
    Closer {
        /// The greatest distance walked between neighbours there, metres.
        spacing_m: f64,
    },
    /// Two ropes joined by a bend, which blocks a haul on the loaded strand.
    JoinedRopes {
        /// The ropes.
        ropes: [RopeName; 2],
        /// What they are long together with the bend tied, metres.
        length_m: f64,
    },
}
