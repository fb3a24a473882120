//! Calls made by mistake, each with its answer.

use std::fs;

use crate::fixture::program::{root, schrund, text};

/// The words of a call as a shell hands them over.
fn words(call: &str) -> Vec<&str> {
    let pieces = call.split('"').enumerate();
    let words = pieces.flat_map(|(i, piece)| match i % 2 {
        1 => vec![piece],
        _ => piece.split_whitespace().collect(),
    });
    words.collect()
}

#[test]
fn every_mistake_is_answered_with_what_to_do() {
    let folder = root().join("tests/mistakes");
    let calls = fs::read_to_string(folder.join("calls")).expect("the calls");
    let mut answers = String::new();
    let mut silent = Vec::new();
    for call in calls.lines() {
        let args = words(call);
        let output = schrund(&folder, &args);
        let (code, says) = (output.status.code(), text(&output.stderr));
        assert!(
            output.stdout.is_empty(),
            "{call} is answered as if it were right"
        );
        if !says.contains("\n  do: ") || !says.starts_with("error[") {
            silent.push(call.to_owned());
        }
        let code = code.map_or("killed".to_owned(), |code| code.to_string());
        answers.push_str(&format!("$ schrund {call}\n{says}[{code}]\n\n"));
    }
    let path = folder.join("expect");
    if std::env::var_os("SCHRUND_BLESS").is_some() {
        fs::write(&path, &answers).expect("the answers can be written");
    }
    let want = fs::read_to_string(&path).unwrap_or_default();
    let differs = want
        .lines()
        .zip(answers.lines())
        .find(|(want, got)| want != got);
    assert!(want == answers, "not as expected: {differs:?}");
    assert!(calls.lines().count() >= 41, "mistakes to make");
    assert!(
        silent.is_empty(),
        "nothing is said of what to do: {silent:#?}"
    );
}
