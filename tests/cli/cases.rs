//! One case is one folder that says why it exists, how the program is called, and what must come of it.
//!
//! `SCHRUND_BLESS=1 cargo test cli::cases` writes down what comes of it now; read the diff.

use std::{
    fs,
    path::{Path, PathBuf},
};

use crate::fixture::program::{root, schrund, text};

/// The case as run: exit code, standard output, standard error.
struct Ran {
    code: String,
    stdout: String,
    stderr: String,
}

fn run(case: &Path) -> Ran {
    let args = fs::read_to_string(case.join("args")).expect("a case has args");
    let args: Vec<&str> = args.split_whitespace().collect();
    let output = schrund(case, &args);
    Ran {
        code: output
            .status
            .code()
            .map_or("killed".to_owned(), |c| c.to_string())
            + "\n",
        stdout: text(&output.stdout),
        stderr: text(&output.stderr),
    }
}

fn compare(case: &Path, name: &str, got: &str, faults: &mut Vec<String>) {
    // A word or an argument that is missing is shown between these, and is nothing to be written down as expected.
    if got.contains('⟦') {
        faults.push(format!("{} {name}: words are missing", case.display()));
        return;
    }
    let path = case.join("expect").join(name);
    if std::env::var_os("SCHRUND_BLESS").is_some() {
        fs::create_dir_all(case.join("expect")).expect("the folder can be made");
        if got.is_empty() {
            let _ = fs::remove_file(&path);
        } else {
            fs::write(&path, got).expect("the expectation can be written");
        }
    }
    let want = fs::read_to_string(&path).unwrap_or_default();
    if want != got {
        faults.push(format!(
            "{} {name}\n--- want\n{want}\n--- got\n{got}",
            case.display()
        ));
    }
}

#[test]
fn every_case_does_what_it_says() {
    let mut cases: Vec<PathBuf> = fs::read_dir(root().join("tests/cases"))
        .expect("tests/cases")
        .map(|entry| entry.expect("an entry").path())
        .collect();
    cases.sort();
    let mut faults = Vec::new();
    for case in &cases {
        assert!(
            case.join("README.md").exists(),
            "{} does not say why it exists",
            case.display()
        );
        let ran = run(case);
        compare(case, "code", &ran.code, &mut faults);
        compare(case, "stdout", &ran.stdout, &mut faults);
        compare(case, "stderr", &ran.stderr, &mut faults);
    }
    assert!(cases.len() >= 33, "only {} cases ran", cases.len());
    assert!(
        faults.is_empty(),
        "{}\n\nWhere that is what it should say now: SCHRUND_BLESS=1 cargo test --test rooms -- cases, and read the diff",
        faults.join("\n\n")
    );
}
