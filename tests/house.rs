//! The house: rooms import what the table in DEVELOPERS.md says, no two files import each other in a circle, and no
//! name that several files see means two things.

mod examples;

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// A source file: its module path from the crate's root, and its code without comments and tests.
struct Source {
    path: Vec<String>,
    code: String,
}

fn sources() -> Vec<Source> {
    let mut found = Vec::new();
    collect(&root().join("src"), &mut found);
    found.sort_by(|a, b| a.path.cmp(&b.path));
    found
}

fn collect(folder: &Path, found: &mut Vec<Source>) {
    for entry in fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            collect(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(source(&path));
        }
    }
}

fn source(path: &Path) -> Source {
    let text = fs::read_to_string(path).expect("a source file");
    let inside = path.with_extension("");
    let inside = inside.strip_prefix(root().join("src")).expect("below src");
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let code = code
        .lines()
        .filter(|l| !l.trim_start().starts_with("//"))
        .map(|l| format!("{l}\n"))
        .collect();
    Source {
        path: inside
            .iter()
            .map(|p| p.to_string_lossy().into_owned())
            .collect(),
        code,
    }
}

/// Every path that the code names from the crate's root, groups taken apart: `crate::a::{b, c::d}` is two.
fn paths(code: &str, from: &str) -> Vec<Vec<String>> {
    let starts = code.match_indices(from).filter(|(at, _)| {
        let before = code[..*at].chars().next_back();
        !before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == ':')
    });
    let mut all = Vec::new();
    for (at, _) in starts {
        let (mut here, rest) = (Vec::new(), &code[at + from.len()..]);
        tree(rest, &mut here, &mut all);
    }
    all
}

/// Reads one tree of a `use`, or one path; returns what is left.
fn tree<'c>(mut rest: &'c str, here: &mut Vec<String>, all: &mut Vec<Vec<String>>) -> &'c str {
    let depth = here.len();
    loop {
        rest = rest.trim_start();
        if let Some(inside) = rest.strip_prefix('{') {
            rest = group(inside, here, all);
            break;
        }
        let end = rest
            .find(|c: char| !c.is_alphanumeric() && c != '_')
            .unwrap_or(rest.len());
        here.push(rest[..end].to_owned());
        rest = &rest[end..];
        match rest.strip_prefix("::") {
            Some(more) => rest = more,
            None => {
                all.push(here.clone());
                break;
            }
        }
    }
    here.truncate(depth);
    rest
}

fn group<'c>(mut rest: &'c str, here: &mut Vec<String>, all: &mut Vec<Vec<String>>) -> &'c str {
    loop {
        rest = rest.trim_start();
        if let Some(after) = rest.strip_prefix('}') {
            return after;
        }
        rest = tree(rest, here, all).trim_start();
        // `as name`
        if let Some(renamed) = rest.strip_prefix("as ") {
            rest = renamed
                .trim_start_matches(|c: char| c.is_alphanumeric() || c == '_')
                .trim_start();
        }
        rest = rest.strip_prefix(',').unwrap_or(rest);
        assert!(!rest.is_empty(), "a group that does not end");
    }
}

/// The rows of the table: room and the rooms it may import, in order.
fn table() -> Vec<(String, BTreeSet<String>)> {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("DEVELOPERS.md");
    let (_, rest) = text.split_once("<!-- rooms -->").expect("the table");
    let (table, _) = rest.split_once("<!-- /rooms -->").expect("its end");
    let rows = table.lines().filter(|l| l.starts_with("| `"));
    let row = |line: &str| {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        let imports = cells[2].split(", ").filter(|i| !i.is_empty() && *i != "–");
        (
            cells[0].trim_matches('`').to_owned(),
            imports.map(str::to_owned).collect(),
        )
    };
    rows.map(row).collect()
}

fn imports(rooms: &BTreeSet<String>) -> BTreeMap<String, BTreeSet<String>> {
    let mut all: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for source in sources() {
        let room = source.path[0].clone();
        let from = if room == "cli" {
            "schrund::"
        } else {
            "crate::"
        };
        let named = paths(&source.code, from).into_iter().map(|p| p[0].clone());
        let theirs = named.filter(|n| rooms.contains(n) && *n != room);
        all.entry(room.clone()).or_default().extend(theirs);
    }
    all
}

#[test]
fn rooms_import_what_the_table_says() {
    let table = table();
    let rooms: BTreeSet<String> = table.iter().map(|(room, _)| room.clone()).collect();
    let actual = imports(&rooms);
    let mut above: BTreeSet<&str> = BTreeSet::new();
    for (room, says) in &table {
        let actual = actual
            .get(room)
            .unwrap_or_else(|| panic!("there is no room {room}"));
        let row = actual.iter().cloned().collect::<Vec<_>>().join(", ");
        assert_eq!(says, actual, "{room} imports: {row}");
        let below: Vec<&String> = actual
            .iter()
            .filter(|i| !above.contains(i.as_str()))
            .collect();
        assert!(
            below.is_empty(),
            "{room} imports {below:?}, which stand below it"
        );
        above.insert(room);
    }
    let unknown: Vec<&String> = actual
        .keys()
        .filter(|r| !rooms.contains(*r) && *r != "lib")
        .collect();
    assert!(
        unknown.is_empty(),
        "{unknown:?} stand in no row of the table"
    );
}

#[test]
fn the_modules_of_the_crate_stand_in_the_order_of_the_table() {
    let text = fs::read_to_string(root().join("src/lib.rs")).expect("lib.rs");
    let modules = text.lines().filter_map(|l| {
        let name = l.strip_prefix("pub mod ").or(l.strip_prefix("mod "))?;
        Some(name.trim_end_matches(';').to_owned())
    });
    let rooms = table()
        .into_iter()
        .map(|(room, _)| room)
        .filter(|r| r != "cli");
    assert_eq!(modules.collect::<Vec<_>>(), rooms.collect::<Vec<_>>());
}

/// Names that a file hands on from a file below it (`pub use child::Name;`), with where they come from.
fn handed_on(sources: &[Source]) -> BTreeMap<Vec<String>, Vec<String>> {
    let mut all = BTreeMap::new();
    for source in sources {
        for path in paths(
            &source.code.replace("pub use ", "pub use handed_on::"),
            "handed_on::",
        ) {
            let path: Vec<String> = path
                .into_iter()
                .filter(|p| p != "self" && p != "crate")
                .collect();
            let name = path.last().expect("a name").clone();
            let from = [source.path.clone(), path].concat();
            all.insert([source.path.clone(), vec![name]].concat(), from);
        }
    }
    all
}

/// For each file the files whose names it uses. A name that is only handed on counts for the file it comes from.
fn files() -> BTreeMap<Vec<String>, BTreeSet<Vec<String>>> {
    let sources = sources();
    let known: BTreeSet<Vec<String>> = sources.iter().map(|s| s.path.clone()).collect();
    let handed_on = handed_on(&sources);
    let file_of = |path: &[String]| {
        let whole = (1..=path.len())
            .rev()
            .find_map(|n| handed_on.get(&path[..n]));
        let path = whole.map_or(path, Vec::as_slice);
        let lengths = (1..=path.len()).rev();
        lengths
            .map(|n| path[..n].to_vec())
            .find(|p| known.contains(p))
    };
    let mut uses: BTreeMap<Vec<String>, BTreeSet<Vec<String>>> = BTreeMap::new();
    for source in &sources {
        let own = &source.path;
        let code = source.code.lines().filter(|l| !l.starts_with("pub use "));
        let source = Source {
            path: own.clone(),
            code: code.map(|l| format!("{l}\n")).collect(),
        };
        // The binary's root is main.rs, and its paths start there.
        let is_cli = own[0] == "cli";
        let base = |up: usize| {
            let kept = own.len().saturating_sub(up);
            own[..kept].to_vec()
        };
        let mut named: Vec<Vec<String>> = Vec::new();
        for path in paths(&source.code, "crate::") {
            let root = if is_cli {
                vec!["cli".to_owned()]
            } else {
                Vec::new()
            };
            named.push([root, path].concat());
        }
        for (from, up) in [("super::super::", 2), ("super::", 1), ("self::", 0)] {
            named.extend(
                paths(&source.code, from)
                    .into_iter()
                    .map(|p| [base(up), p].concat()),
            );
        }
        let children = known
            .iter()
            .filter(|k| k.len() == own.len() + 1 && k.starts_with(own));
        for child in children {
            let name = format!("{}::", child[own.len()]);
            if !paths(&source.code, &name).is_empty() {
                named.push(child.clone());
            }
        }
        let theirs = named.iter().filter_map(|p| file_of(p)).filter(|p| p != own);
        uses.entry(own.clone()).or_default().extend(theirs);
    }
    uses
}

fn is_free(
    file: &Vec<String>,
    uses: &BTreeMap<Vec<String>, BTreeSet<Vec<String>>>,
    left: &BTreeSet<&Vec<String>>,
) -> bool {
    let uses_none = uses[file].iter().all(|u| !left.contains(u));
    uses_none || left.iter().all(|f| !uses[*f].contains(file))
}

#[test]
fn no_circle_between_files() {
    let uses = files();
    assert!(uses.len() > 150, "only {} files were looked at", uses.len());
    // What uses nothing that is left, or is used by nothing that is left, can be taken away; what remains at the end
    // lies on circles or between them.
    let mut left: BTreeSet<&Vec<String>> = uses.keys().collect();
    loop {
        let before = left.len();
        let free: Vec<&Vec<String>> = left
            .iter()
            .copied()
            .filter(|f| is_free(f, &uses, &left))
            .collect();
        free.iter().for_each(|f| {
            left.remove(*f);
        });
        if left.len() == before {
            break;
        }
    }
    let circles: Vec<String> = left
        .iter()
        .map(|f| {
            let to = uses[*f]
                .iter()
                .filter(|u| left.contains(u))
                .map(|u| u.join("/"));
            format!("{} -> {}", f.join("/"), to.collect::<Vec<_>>().join(", "))
        })
        .collect();
    assert!(
        circles.is_empty(),
        "files that import each other in circles:\n{}",
        circles.join("\n")
    );
}

/// Names that stand in more than one file and mean the same there, each with the reason.
const ONE_MEANING: [&str; 0] = [];

/// The types and traits that a file's code declares for other files, and the names it hands on under another one.
fn declared(code: &str) -> BTreeSet<String> {
    let name = |line: &str| {
        let rest = line.strip_prefix("pub")?;
        let rest = match rest.strip_prefix('(') {
            Some(seen_by) => seen_by.split_once(')')?.1,
            None => rest,
        };
        let (word, rest) = rest.strip_prefix(' ')?.split_once(' ')?;
        let rest = match word {
            "use" => rest.split_once(" as ")?.1,
            "struct" | "enum" | "union" | "trait" | "type" => rest,
            "unsafe" => rest.strip_prefix("trait ")?,
            _ => return None,
        };
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_');
        Some(rest[..end.unwrap_or(rest.len())].to_owned())
    };
    code.lines().filter_map(|l| name(l.trim_start())).collect()
}

#[test]
fn no_public_name_has_two_meanings() {
    let mut files: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for source in sources() {
        for name in declared(&source.code) {
            files.entry(name).or_default().push(source.path.join("/"));
        }
    }
    assert!(files.len() > 200, "only {} names were found", files.len());
    let unused: Vec<&str> = ONE_MEANING
        .into_iter()
        .filter(|n| files.get(*n).is_none_or(|f| f.len() < 2))
        .collect();
    assert!(unused.is_empty(), "{unused:?} need no exception");
    let twice: Vec<String> = files
        .iter()
        .filter(|(name, files)| files.len() > 1 && !ONE_MEANING.contains(&name.as_str()))
        .map(|(name, files)| format!("{name}: {}", files.join(", ")))
        .collect();
    assert!(
        twice.is_empty(),
        "names with more than one meaning:\n{}",
        twice.join("\n")
    );
}
