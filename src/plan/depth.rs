//! How much of a plan is asked for.

/// How much of a plan is asked for: what nobody looks at is not worked out.
///
/// ```
/// use schrund::{Planner, plan::depth::Depth};
///
/// let job = schrund::example::job()?;
/// let planner = Planner::new(&job)?;
/// let plans = [Depth::Legs, Depth::Told, Depth::Whole].map(|depth| planner.to(depth));
/// for plan in &plans {
///     let plan = plan.as_ref().expect("a party");
///     assert_eq!(plan.legs[1].verdict, plans[2].as_ref().expect("a party").legs[1].verdict);
/// }
/// let falls = plans.map(|plan| plan.map_or(0, |plan| {
///     plan.legs[1].teams[0].arrest.as_ref().map_or(0, |fall| fall.everybody.len())
/// }));
/// assert_eq!(falls, [0, 0, 3], "whose falls are told one by one");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Depth {
    /// The legs and what is found on them and on the trip.
    Legs,
    /// As well what would cure a finding, and whether another order holds better.
    Told,
    /// As well what becomes of falls where the snow is frozen.
    Frozen,
    /// Everything: as well what an answer depends on, how everybody's fall is held, and set-ups kept.
    Whole,
}
