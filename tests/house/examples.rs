//! Every public type shows by an example what it is for.

use std::fs;

use super::{root, sources};

/// The rooms in which every public type has an example: all that anybody outside can see.
const ROOMS: [&str; 22] = [
    "fault", "geometry", "physics", "raster", "practice", "trip", "read", "example", "plan",
    "meet", "strip", "ground", "legs", "rope", "times", "judge", "whole", "options", "say",
    "write", "survey", "fetch",
];

/// Whether the lines of a doc comment hold Rust that asserts something; `cargo test` runs it.
fn has_example(doc: &[&str]) -> bool {
    let mut in_rust = false;
    let mut in_fence = false;
    for line in doc {
        if let Some(language) = line.strip_prefix("/// ```") {
            in_rust = !in_fence && language.is_empty();
            in_fence = !in_fence;
        } else if in_rust && line.contains("assert") {
            return true;
        }
    }
    false
}

/// The name of the public type that a line declares.
fn public_type(line: &str) -> Option<&str> {
    let kinds = ["pub struct ", "pub enum ", "pub trait ", "pub type "];
    let rest = kinds.iter().find_map(|kind| line.strip_prefix(kind))?;
    rest.split(|c: char| !c.is_alphanumeric()).next()
}

/// The public types at the top of a file, and whether each has an example. Those in a module that nobody can see are
/// not called `pub`: the compiler warns of it. Those that a macro makes stand further in and are left aside.
fn public_types(text: &str) -> Vec<(&str, bool)> {
    let lines: Vec<&str> = text.lines().collect();
    let types = lines.iter().enumerate().filter_map(|(at, line)| {
        let name = public_type(line)?;
        let above = lines[..at].iter().rposition(|line| line.is_empty());
        let doc = &lines[above.map_or(0, |blank| blank + 1)..at];
        Some((name, has_example(doc)))
    });
    types.collect()
}

#[test]
fn every_public_type_has_an_example() {
    let mut seen = 0;
    let mut without = Vec::new();
    for source in sources() {
        if !ROOMS.contains(&source.path[0].as_str()) {
            continue;
        }
        let path = source.path.join("/");
        let file = root().join(format!("src/{path}.rs"));
        let text = fs::read_to_string(file).expect("a source file");
        let types = public_types(&text);
        seen += types.len();
        let bare = types.into_iter().filter(|(_, shown)| !shown);
        without.extend(bare.map(|(name, _)| format!("{path}: {name}")));
    }
    assert!(seen > 250, "only {seen} types were looked at");
    assert!(
        without.is_empty(),
        "public types without an example that asserts something:\n{}",
        without.join("\n")
    );
}

#[test]
fn only_rust_that_asserts_is_an_example() {
    let shown = ["/// A.", "/// ```", "/// assert!(true);", "/// ```"];
    assert!(has_example(&shown), "a plain fence");
    let text = ["/// ```text", "/// assert", "/// ```", "/// assert"];
    assert!(!has_example(&text), "a drawing, and prose behind it");
    let bare = ["/// ```", "/// let a = 1;", "/// ```"];
    assert!(!has_example(&bare), "nothing is claimed");
}
