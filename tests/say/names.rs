//! Names.
