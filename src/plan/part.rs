//! The parts of a leg that is broken by halts and turns.

use schemars::JsonSchema;
use serde::Serialize;

use crate::trip::clock::Clock;

/// A leg from one halt or turn to the next. Parts tile their leg, which stays one with one set-up.
///
/// ```
/// use schrund::trip::halt::Halt;
///
/// let mut job = schrund::example::job()?;
/// job.halts.push(Halt { stage: 1, at_m: 1500.0, minutes: 20.0, name: None });
/// let plan = schrund::plan(&job)?;
/// let [up, on] = &plan.legs[1].parts[..] else { panic!("two parts") };
/// assert_eq!((up.to_m, on.from_m, up.halt_min), (1500.0, 1500.0, 20.0));
/// let halted = up.arrive.zip(on.depart).map(|(arrive, depart)| depart.min() - arrive.min());
/// assert!(halted.is_some_and(|min| (min - 20.0).abs() < 1e-9));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LegPart {
    /// Chainage where it begins, metres.
    pub from_m: f64,
    /// Chainage where it ends, metres.
    pub to_m: f64,
    /// Time of day when it is begun, the rope on; absent where nobody said when to start.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depart: Option<Clock>,
    /// Time of day when its end is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub arrive: Option<Clock>,
    /// Metres up, counted by turning points; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ascent_m: Option<f64>,
    /// Metres down, counted likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub descent_m: Option<f64>,
    /// Steepest slope along the line, degrees, up or down.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steepest_deg: Option<f64>,
    /// Minutes halted at its end.
    pub halt_min: f64,
    /// Whether the line turns back on itself at its end.
    pub turns: bool,
    /// What the leader calls the halt at its end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Height of its end, metres; absent where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_height_m: Option<f64>,
}

/// A place of a leg with its hours, where somebody said when to start.
///
/// ```
/// let leg = &schrund::plan(&schrund::example::job()?)?.legs[1];
/// let (first, last) = leg.walk.first().zip(leg.walk.last()).expect("a start is given");
/// assert_eq!((first.at_m, last.at_m), (leg.start_m, leg.end_m));
/// // On its one way over hidden gaps turning back takes longer the farther one went.
/// assert!(first.back_off_bridges.is_none() && last.back_off_bridges > Some(last.left), "{last:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WalkedPlace {
    /// Chainage, metres.
    pub at_m: f64,
    /// When it is left.
    pub left: Clock,
    /// When whoever turns back there has left the last hidden gaps of the way back; `None` where it crosses none.
    pub back_off_bridges: Option<Clock>,
}
