//! Files that are no GPX, told by what they begin with.

use crate::fault::{Fault, Place, gpx::InGpx, instead::Instead};

use super::fix::excerpt;
use crate::read::signature;

/// Complains where the first bytes of a file show that it is no XML.
pub(super) fn by_first_bytes(file: &str, first: &[u8]) -> Option<Fault> {
    let text = first.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(first);
    let text = text.trim_ascii_start();
    if let Some(instead) = signature::of(first) {
        return Some(is(file, instead));
    }
    if text.starts_with(b"{") || text.starts_with(b"[") {
        return Some(is(file, Instead::Json));
    }
    // ".FIT" at offset 8: header of the sports-watch format. [memory]
    if first.get(8..12) == Some(b".FIT".as_slice()) {
        return Some(is(file, Instead::Fit));
    }
    if text.is_empty() {
        return Some(Fault::new(InGpx::Empty, Place::file(file)));
    }
    // "<" in UTF-8, or in UTF-16 with or without its mark.
    let begins_like_xml = text.starts_with(b"<")
        || [b"\xFE\xFF", b"\xFF\xFE", b"\0<"]
            .iter()
            .any(|wide| text.starts_with(*wide));
    if begins_like_xml {
        return None;
    }
    if let Some(instead) = signature::of_text(text) {
        return Some(is(file, instead));
    }
    let start = String::from_utf8_lossy(text.get(..text.len().min(20)).unwrap_or_default());
    Some(is(file, Instead::Beginning(excerpt(&start))))
}

/// The complaint about a root element that is not `gpx`.
pub(super) fn by_root(file: &str, root: &str) -> Fault {
    let other = || Instead::Root(excerpt(root));
    is(file, signature::of_root(root).unwrap_or_else(other))
}

fn is(file: &str, instead: Instead) -> Fault {
    Fault::new(InGpx::Is(instead), Place::file(file))
}
