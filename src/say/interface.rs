//! How the reader gives what is asked of him: by the flags of a command line, or otherwise.

/// What the cures may speak of. Who has no command line in front of him is never told of a flag.
///
/// ```
/// use schrund::say::{interface::Interface, voice::Voice};
///
/// let cure = |interface| {
///     let voice = Voice { interface, ..Voice::default() };
///     voice.hint("trip-no-start", &[]).map(|hint| hint.to_string()).unwrap_or_default()
/// };
/// assert_eq!(cure(Interface::Members), "`start = \"04:30\"`");
/// assert_eq!(cure(Interface::Flags), "`--start 04:30`, or `start = \"04:30\"` in the trip file");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Interface {
    /// Members of a trip, in a file or in memory.
    #[default]
    Members,
    /// Flags of the command line too.
    Flags,
    /// What is seen on the page for drawing: its map, its zones, its trip.
    Page,
}

impl Interface {
    /// What messages choose by: `members`, `flags` or `page`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Members => "members",
            Self::Flags => "flags",
            Self::Page => "page",
        }
    }
}
