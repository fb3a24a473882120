//! Words of a call.

use std::path::Path;

/// A flag without the placeholder of its value.
pub(super) fn flag_of(given: &str) -> &str {
    given.split([' ', '=']).next().unwrap_or(given)
}

/// The value of a flag of this call.
pub(super) fn value_of<'a>(args: &'a [String], flag: &str) -> Option<&'a str> {
    let at = args.iter().position(|arg| flag_of(arg) == flag)?;
    let joined = args.get(at)?.split_once('=').map(|(_, value)| value);
    let next = || args.get(at + 1).map(String::as_str);
    joined.or_else(|| next().filter(|value| !value.starts_with('-')))
}

/// Whether a file's name ends so, in whatever case.
pub(crate) fn ends(name: &str, ends: &[&str]) -> bool {
    let extension = Path::new(name).extension().and_then(|e| e.to_str());
    extension.is_some_and(|e| ends.iter().any(|end| e.eq_ignore_ascii_case(end)))
}
