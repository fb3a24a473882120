//! The ropes at hand.

/// A rope at hand.
///
/// ```
/// use schrund::trip::rope::Rope;
///
/// let mut job = schrund::example::job()?;
/// assert_eq!(job.ropes, [Rope { length_m: 60.0, diameter_mm: None, name: Some("blue".to_owned()), joined: false }]);
/// job.ropes[0].length_m = 40.0;
/// let plan = schrund::plan(&job)?;
/// let short = plan.legs[1].findings.iter().any(|found| found.code() == "no-rope-fits");
/// assert!(short, "the set-up takes 43.5 m");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Rope {
    /// Metres.
    pub length_m: f64,
    /// Millimetres, where given.
    pub diameter_mm: Option<f64>,
    /// What the leader calls it, where given.
    pub name: Option<String>,
    /// Whether two ropes are joined in it by a bend, which no haul on the loaded strand runs over.
    pub joined: bool,
}
