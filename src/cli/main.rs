//! The `schrund` command.

fn main() {}
