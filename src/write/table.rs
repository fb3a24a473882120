//! The plan for a terminal: what a leader needs on one page, or all there is; folded where the width is short, never cut.

mod detail;
mod head;
mod legs;
mod lines;
mod page;
mod painted;
mod ropes;
mod told;

pub use painted::Table;

use crate::write::sheet::Sheet;

/// The plan as a reader in a hut sees it: what stops first, then the legs and the ropes; all that is known where the look
/// asks for detail.
#[must_use]
pub fn plan(sheet: &Sheet<'_>) -> Table {
    if sheet.look.detail {
        detail::whole(sheet)
    } else {
        page::page(sheet)
    }
}
