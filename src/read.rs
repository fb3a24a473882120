//! Text → nouns. Readers take text, never paths.

pub mod trip;
