//! Which program it is: what somebody needs to get the same answer from the same files.

use schrund::plan::SCHEMA_VERSION;

/// Parts that a build may leave out, and whether this one has them.
const FEATURES: [(&str, bool); 8] = [
    ("cli", cfg!(feature = "cli")),
    ("fetch", cfg!(feature = "fetch")),
    ("flatgeobuf", cfg!(feature = "flatgeobuf")),
    ("page", cfg!(feature = "page")),
    ("shell", cfg!(feature = "shell")),
    ("survey", cfg!(feature = "survey")),
    ("threads", cfg!(feature = "threads")),
    ("zone", cfg!(feature = "zone")),
];

/// What `--version` prints behind the name; `-V` prints the number alone.
pub(crate) fn long() -> String {
    let features = FEATURES.iter().filter(|(_, built)| *built);
    let features: Vec<&str> = features.map(|(name, _)| *name).collect();
    let lines = [
        env!("CARGO_PKG_VERSION").to_owned(),
        format!("built with: {}", features.join(" ")),
        format!("for: {} {}", std::env::consts::OS, std::env::consts::ARCH),
        format!("form of the JSON: {SCHEMA_VERSION}"),
        format!("in pages: {}", in_pages()),
    ];
    lines.join("\n")
}

/// The program and the script that pages hold, each with the hash of its sources.
fn in_pages() -> &'static str {
    #[cfg(feature = "page")]
    return schrund::write::page::PACKED;
    #[cfg(not(feature = "page"))]
    "none"
}
