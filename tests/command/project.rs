//! The project about itself: sources resolve, rooms keep to their order, every code is shown somewhere.

use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
};

use schrund::fault::Code;

use super::root;

fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path, ending));
        } else if path.extension().is_some_and(|e| e == ending) || ending.is_empty() {
            found.push(path);
        }
    }
    found
}

fn read(path: &Path) -> String {
    String::from_utf8_lossy(&fs::read(path).expect("a file")).into_owned()
}

#[test]
fn every_source_that_data_quotes_stands_in_the_bibliography() {
    let sources: toml::Table = read(&root().join("data/sources.toml")).parse().unwrap();
    let mut quoted = 0;
    for path in files(&root().join("data"), "toml") {
        let table: toml::Table = read(&path).parse().unwrap();
        for key in quoted_sources(&toml::Value::Table(table)) {
            assert!(
                sources.contains_key(&key),
                "{} quotes unknown source {key}",
                path.display()
            );
            quoted += 1;
        }
    }
    assert!(quoted >= 20, "only {quoted} quotations found");
}

fn quoted_sources(value: &toml::Value) -> Vec<String> {
    match value {
        toml::Value::Table(table) => table
            .iter()
            .flat_map(|(name, inner)| match (name.as_str(), inner) {
                ("sources", toml::Value::Array(keys)) => keys
                    .iter()
                    .filter_map(|k| k.as_str().map(str::to_owned))
                    .collect(),
                _ => quoted_sources(inner),
            })
            .collect(),
        toml::Value::Array(items) => items.iter().flat_map(quoted_sources).collect(),
        _ => Vec::new(),
    }
}

/// Rooms from the ground up: each may import those before it, and those on its own floor that stand
/// before it in the list. `ONE_NOUN` alone may look both ways.
const FLOORS: [&[&str]; 6] = [
    &["problem", "geometry", "physics"],
    &["clock", "terrain", "rules", "route", "zone", "relief"],
    &["profile", "pace", "team", "leg", "plan", "options"],
    &["ground", "read", "split", "rope"],
    &["planning", "write"],
    &["cli"],
];

/// A plan holds legs, and a leg holds findings, which `plan.rs` describes.
const ONE_NOUN: (&str, &str) = ("leg", "plan");

/// Place of a room in the order of all floors.
fn place_of(room: &str) -> Option<usize> {
    FLOORS
        .iter()
        .copied()
        .flatten()
        .position(|known| *known == room)
}

#[test]
fn no_room_imports_one_that_stands_after_it() {
    let source = root().join("src");
    let mut seen = BTreeSet::new();
    for path in files(&source, "rs") {
        let inside = path.strip_prefix(&source).unwrap();
        let first = inside
            .components()
            .next()
            .unwrap()
            .as_os_str()
            .to_string_lossy()
            .into_owned();
        let room = first.trim_end_matches(".rs").to_owned();
        if room == "lib" || room == "cli" {
            continue;
        }
        let place =
            place_of(&room).unwrap_or_else(|| panic!("{room} has no floor: add it to FLOORS"));
        for import in imports(&read(&path)) {
            let theirs = place_of(&import).unwrap_or_else(|| panic!("{import} has no floor"));
            assert!(
                theirs <= place || (room.as_str(), import.as_str()) == ONE_NOUN,
                "{} imports {import}, which stands after {room}",
                inside.display()
            );
        }
        seen.insert(room);
    }
    assert!(seen.len() >= 12, "only {seen:?} were looked at");
}

/// Names of the crate's rooms that a file imports, its tests left aside.
fn imports(text: &str) -> BTreeSet<String> {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let code: String = code
        .lines()
        .filter(|l| !l.trim_start().starts_with("//"))
        .collect();
    let mut rooms = BTreeSet::new();
    for part in code.split("crate::").skip(1) {
        let names = part
            .strip_prefix('{')
            .map_or_else(|| vec![part.to_owned()], top_level_names);
        for name in names {
            let name: String = name
                .chars()
                .take_while(|c| c.is_alphanumeric() || *c == '_')
                .collect();
            let known = FLOORS.iter().any(|rooms| rooms.contains(&name.as_str()));
            if known || root().join(format!("src/{name}.rs")).exists() {
                rooms.insert(name);
            }
        }
    }
    rooms
}

/// The first path segments of a `use crate::{…}` group.
fn top_level_names(group: &str) -> Vec<String> {
    let (mut depth, mut names, mut name) = (0, Vec::new(), String::new());
    for c in group.chars() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => names.push(std::mem::take(&mut name).trim().to_owned()),
            _ if depth == 0 => name.push(c),
            _ => {}
        }
    }
    names.push(name.trim().to_owned());
    names
}

/// Whether the word stands there, and not only as the beginning of a longer one.
fn holds_word(text: &str, word: &str) -> bool {
    text.split(word)
        .skip(1)
        .any(|rest| !rest.starts_with(char::is_alphanumeric))
}

#[test]
fn every_code_is_shown_by_some_test() {
    let texts: String = files(&root().join("tests"), "")
        .iter()
        .map(|p| read(p))
        .collect();
    let shown = |code: &&Code| {
        let name = code.as_str();
        texts.contains(&format!("[{name}]"))
            || texts.contains(&format!("\"{name}\""))
            || holds_word(&texts, &format!("Code::{code:?}"))
    };
    let unseen: Vec<&str> = Code::ALL
        .iter()
        .filter(|c| !shown(c))
        .map(|c| c.as_str())
        .collect();
    assert!(unseen.is_empty(), "no test shows {unseen:?}");
}

#[test]
fn every_code_explains_itself_in_a_sentence() {
    for code in Code::ALL {
        let text = code.explain();
        assert!(
            text.len() > 30 && text.trim_end().ends_with('.'),
            "{}: {text}",
            code.as_str()
        );
    }
    let names: BTreeSet<&str> = Code::ALL.iter().map(|c| c.as_str()).collect();
    assert_eq!(names.len(), Code::ALL.len(), "two codes share a name");
}

#[test]
fn every_file_opens_with_a_sentence_and_stays_short() {
    for path in files(&root().join("src"), "rs") {
        let text = read(&path);
        assert!(
            text.starts_with("//! "),
            "{} does not say what it is",
            path.display()
        );
        let lines = text.lines().count();
        assert!(lines <= 420, "{} has {lines} lines", path.display());
    }
}

/// The README's commands, by what they begin with.
fn readme_command(starts: &str) -> String {
    let readme = read(&root().join("README.md"));
    let line = readme.lines().find(|l| l.starts_with(starts));
    line.unwrap_or_else(|| panic!("no README line begins with {starts}"))
        .to_owned()
}

#[test]
fn the_story_in_the_readme_is_what_the_program_prints() {
    let command = readme_command("cargo run --release -- plan");
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("plan").display().to_string();
    let words: Vec<&str> = command
        .trim_start_matches("cargo run --release -- ")
        .split_whitespace()
        .collect();
    let (_, kept) = words.split_last().expect("a command");
    let args: Vec<&str> = kept.iter().copied().chain([out.as_str()]).collect();
    let output = super::schrund(&root(), &args);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{}",
        super::text(&output.stderr)
    );
    let printed = super::text(&output.stdout);
    let story = printed
        .split("\nChanges\n")
        .next()
        .unwrap_or_default()
        .trim_end();
    let readme = read(&root().join("README.md"));
    let (before, rest) = readme.split_once("<!-- story -->\n").expect("a story");
    let (told, after) = rest
        .split_once("<!-- /story -->")
        .expect("the end of the story");
    let want = format!("```text\n{story}\n```\n");
    if std::env::var_os("SCHRUND_BLESS").is_some() {
        fs::write(
            root().join("README.md"),
            format!("{before}<!-- story -->\n{want}<!-- /story -->{after}"),
        )
        .unwrap();
    } else {
        assert_eq!(
            told, want,
            "the README tells another story; SCHRUND_BLESS=1 writes down this one"
        );
    }
}
