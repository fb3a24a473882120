//! What is said of a call that cannot be followed.

/// What is wrong with a call, and what to write.
#[derive(Debug)]
pub(crate) struct Answer {
    /// What is wrong.
    pub(crate) says: String,
    /// What to do about it.
    pub(crate) cure: String,
}
