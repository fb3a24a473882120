//! Names that nobody sees: what things are called until they are shown.

use std::path::Path;

use tempfile::Builder;

/// What hidden names begin with.
pub(super) const HIDDEN: &str = ".schrund-";
/// Letters and digits by chance behind that: so many that nobody's own file is called like it.
pub(super) const DRAWN: usize = 16;

/// What a file may be read and written by, and a folder besides entered: everybody, as far as the user's mask leaves it.
pub(super) const FILE: u32 = 0o666;
pub(super) const FOLDER: u32 = 0o777;

/// What gets a hidden name.
pub(super) fn hidden<'f>(mode: u32) -> Builder<'f, 'f> {
    let mut builder = Builder::new();
    builder.prefix(HIDDEN).rand_bytes(DRAWN);
    #[cfg(unix)]
    {
        use std::{fs::Permissions, os::unix::fs::PermissionsExt};
        builder.permissions(Permissions::from_mode(mode));
    }
    #[cfg(not(unix))]
    let _ = mode;
    builder
}

/// The folder that something lies in.
pub(super) fn folder_of(path: &Path) -> &Path {
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    folder.unwrap_or(Path::new("."))
}
