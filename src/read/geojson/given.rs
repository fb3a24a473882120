//! What the leader says where a zones file is silent.

/// What the leader says to assume where a file is silent.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Given {
    /// Width of the gaps of zones that give none, metres (`--gap`).
    pub gap_m: Option<f64>,
}
