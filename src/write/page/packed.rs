//! What every page holds, as `.ci/page` packed it last: it writes this file. The names end in a hash of the sources.

/// The names of what was packed.
pub(super) const NAMES: &str = "core-23d8ca39a48a page-8589fbf74224";
/// The program as WebAssembly, in xz.
pub(super) const CORE: &[u8] = include_bytes!("../../../data/page/core-23d8ca39a48a.wasm.xz");
/// What draws and replans.
pub(super) const SCRIPT: &str = include_str!("../../../data/page/page-8589fbf74224.js");
/// What it looks like, beside the report.
pub(super) const STYLE: &str = include_str!("../../page/page.css");
/// What it begins with, without words.
pub(super) const BODY: &str = include_str!("../../page/page.html");
