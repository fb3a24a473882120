//! What a page asks of the program that it holds, and the page itself. The shapes stand in `src/page/door.ts`.

#[cfg(feature = "page")]
pub mod file;
pub mod ground;
mod hours;
#[cfg(feature = "page")]
pub mod letters;
#[cfg(feature = "page")]
mod packed;
pub mod panel;
pub mod trip;
pub mod ways;

/// The program and the script that every page holds, each named with the hash of its sources.
#[cfg(feature = "page")]
pub const PACKED: &str = packed::NAMES;
