//! The project about itself: sources resolve, every file is short, every code is shown somewhere.

use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
    sync::{Mutex, PoisonError},
};

use schrund::{
    fault::{Code, Level},
    limits::{InputLimit, InputLimits},
    plan::{explained::explained, fact::Fact},
    write::FORMATS,
};

use crate::fixture::program::{root, schrund, text};

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

/// Whether the word stands there, and not only as the beginning of a longer one.
fn holds_word(text: &str, word: &str) -> bool {
    text.split(word)
        .skip(1)
        .any(|rest| !rest.starts_with(char::is_alphanumeric))
}

#[test]
fn every_code_is_shown_by_some_test() {
    let files = files(&root().join("tests"), "");
    let texts: String = files.iter().map(|p| read(p)).collect();
    let shown =
        |name: &str| texts.contains(&format!("[{name}]")) || texts.contains(&format!("\"{name}\""));
    let read = Code::ALL
        .iter()
        .filter(|code| !shown(code.as_str()) && !holds_word(&texts, &format!("Code::{code:?}")));
    let found = Fact::KINDS.iter().filter(|(code, ..)| !shown(code));
    let unseen: Vec<&str> = read
        .map(|c| c.as_str())
        .chain(found.map(|(code, ..)| *code))
        .collect();
    assert!(unseen.is_empty(), "no test shows {unseen:?}");
}

#[test]
fn every_code_explains_itself_in_a_sentence() {
    let read: Vec<(&str, String)> = Code::ALL
        .iter()
        .map(|c| (c.as_str(), c.explain()))
        .collect();
    let found: Vec<(&str, String)> = explained()
        .filter(|e| Fact::KINDS.iter().any(|(code, ..)| *code == e.code))
        .map(|e| (e.code, e.text))
        .collect();
    assert_eq!(found.len(), Fact::KINDS.len(), "a kind is not explained");
    for all in [read, found] {
        for (code, told) in &all {
            let sentence = told.len() > 30 && told.ends_with('.') && !told.starts_with(' ');
            assert!(sentence, "{code}: {told}");
        }
        let names: BTreeSet<&str> = all.iter().map(|(code, _)| *code).collect();
        assert_eq!(names.len(), all.len(), "two codes share a name");
    }
}

#[test]
fn every_code_graver_than_a_note_says_what_to_do() {
    let read = Code::ALL
        .iter()
        .map(|code| (code.as_str(), code.level(), code.explain()));
    let found = explained().map(|kind| (kind.code, kind.level, kind.text));
    for (code, level, told) in read.chain(found) {
        let (_, to_do) = told.split_once("\nWhat to do: ").unwrap_or_default();
        let done = to_do.len() > "take another line.".len() && to_do.ends_with('.');
        assert!(done || level == Level::Note, "{code}: {told}");
    }
}

#[test]
fn every_file_opens_with_a_sentence_and_stays_short() {
    for path in ["src", "tests"]
        .iter()
        .flat_map(|folder| files(&root().join(folder), "rs"))
    {
        let code = read(&path);
        assert!(
            code.starts_with("//! "),
            "{} does not say what it is",
            path.display()
        );
        let lines = code.lines().count();
        assert!(lines <= 420, "{} has {lines} lines", path.display());
    }
}

/// The README's commands, by what they begin with.
/// Names that Windows keeps for devices, whatever their ending: a package that holds one cannot be unpacked there.
#[test]
fn no_file_is_called_as_a_device_of_windows() {
    const DEVICES: [&str; 6] = ["aux", "con", "nul", "prn", "com1", "lpt1"];
    let folders = ["src", "data", "tests", "examples"].map(|folder| root().join(folder));
    let all: Vec<PathBuf> = folders
        .iter()
        .flat_map(|folder| files(folder, ""))
        .collect();
    assert!(all.len() > 1000, "{} files", all.len());
    for path in all {
        let name = path
            .file_stem()
            .unwrap_or_default()
            .to_string_lossy()
            .to_lowercase();
        assert!(!DEVICES.contains(&name.as_str()), "{}", path.display());
    }
}

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
    let output = schrund(&root(), &args);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    let printed = text(&output.stdout);
    let story = printed.trim_end();
    readme_holds("story", &format!("```text\n{story}\n```\n"));
}

#[test]
fn the_formats_in_the_readme_are_those_of_the_registry() {
    let rows = FORMATS.iter().map(|format| {
        let file = format.file().map_or("".to_owned(), |f| format!("`{f}`"));
        format!("| `{}` | {file} | {} |\n", format.name(), format.purpose())
    });
    let rows: String = rows.collect();
    let head = "| `--format` | in the set of `--out` | is |\n|---|---|---|\n";
    readme_holds("formats", &format!("{head}{rows}"));
}

#[test]
fn the_limits_in_the_readme_are_those_in_force() {
    let usual = InputLimits::default();
    let rows = InputLimit::ALL.map(|limit| {
        let (name, says, standing) = (limit.name(), limit.says(), limit.standing());
        format!("| `{name}={}` | {says} | {standing} |\n", usual[limit])
    });
    let head = "| usual | of | standing |\n|---|---|---|\n";
    readme_holds("limits", &format!("{head}{}", rows.concat()));
}

/// What stands between two marks of the README is what was made; with `SCHRUND_BLESS` it is written there.
fn readme_holds(mark: &str, want: &str) {
    static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());
    let _alone = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let path = root().join("README.md");
    let readme = read(&path);
    let (open, close) = (format!("<!-- {mark} -->\n"), format!("<!-- /{mark} -->"));
    let (before, rest) = readme.split_once(&open).expect(mark);
    let (told, after) = rest.split_once(&close).expect(mark);
    if std::env::var_os("SCHRUND_BLESS").is_some() {
        fs::write(path, format!("{before}{open}{want}{close}{after}")).unwrap();
    } else {
        assert_eq!(
            told, want,
            "the README holds another {mark}; SCHRUND_BLESS=1 writes down this one"
        );
    }
}
