//! The ropes at hand.

/// A rope at hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Rope {
    /// Metres.
    pub length_m: f64,
    /// Millimetres, where given.
    pub diameter_mm: Option<f64>,
    /// What the leader calls it, where given.
    pub name: Option<String>,
}
