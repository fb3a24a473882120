//! Halts: where the party rests on its way, and for how long.

/// A rest on the way, as the leader plans it.
///
/// ```
/// use schrund::trip::halt::Halt;
///
/// let mut job = schrund::example::job()?;
/// let before_min = schrund::plan(&job)?.route.time.total_min;
/// job.halts.push(Halt { stage: 1, at_m: 1500.0, minutes: 20.0, name: Some("Lunch".to_owned()) });
/// let plan = schrund::plan(&job)?;
/// assert!((plan.route.time.total_min - before_min - 20.0).abs() < 1e-9, "its minutes, and no more");
/// assert_eq!(plan.legs[1].parts[0].name.as_deref(), Some("Lunch"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Halt {
    /// Number of its stage.
    pub stage: usize,
    /// Chainage, metres.
    pub at_m: f64,
    /// How long, minutes.
    pub minutes: f64,
    /// What the leader calls it.
    pub name: Option<String>,
}
