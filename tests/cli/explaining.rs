//! `check --explain`: one code, all codes, and codes that there are not.

use schrund::plan::explained::explained;

use crate::fixture::program::{command, root, schrund, text};

/// What is said of a code that there is not.
fn refused(code: &str) -> String {
    let ran = schrund(&root(), &["check", "--explain", code]);
    assert_eq!(
        (ran.status.code(), ran.stdout.len()),
        (Some(2), 0),
        "{code}"
    );
    let says = text(&ran.stderr);
    assert!(
        says.starts_with("error[unknown-name]: there is no code"),
        "{says}"
    );
    assert!(
        says.contains("`schrund check --explain` lists all"),
        "{says}"
    );
    says
}

#[test]
fn without_a_code_all_are_listed_a_line_each() {
    let ran = schrund(&root(), &["check", "--explain"]);
    assert_eq!(ran.status.code(), Some(0), "{}", text(&ran.stderr));
    let listed = text(&ran.stdout);
    for kind in explained() {
        let line = listed
            .lines()
            .find(|line| line.split_whitespace().next() == Some(kind.code))
            .unwrap_or_else(|| panic!("{} is not listed", kind.code));
        let mut words = line.split_whitespace().skip(1);
        assert_eq!(words.next(), Some(kind.level.as_str()), "{line}");
        let says = words.collect::<Vec<_>>().join(" ");
        let whole = kind.text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(whole.starts_with(&says) && says.ends_with('.'), "{line}");
        assert!(
            !says.contains("What to do"),
            "no sentence of what it means: {line}"
        );
    }
    let place = |code: &str| listed.find(&format!("\n  {code} ")).expect("listed");
    assert!(
        place("gap-not-given") < place("never-on-hidden-gaps"),
        "faults, then findings"
    );
}

#[test]
fn a_misspelt_code_is_a_fault_of_usage_with_the_nearest() {
    assert!(refused("gap-not-givn").contains("perhaps gap-not-given is meant"));
}

#[test]
fn a_code_of_old_is_answered_by_what_speaks_of_the_same() {
    let says = refused("middle-person-not-reached");
    assert!(says.contains("loop-ends-short-of-the-lip"), "{says}");
    assert!(refused("bridge").contains("bridges-late"));
    let nothing = refused("xyz");
    assert!(nothing.contains("they stand in brackets"), "{nothing}");
}

#[test]
fn every_code_says_what_to_do_or_that_nothing_is_to_be_done() {
    for kind in explained() {
        let (_, what) = kind.text.split_once("\n\nWhat to do: ").unwrap_or_default();
        assert!(what.len() > 5, "{}: {}", kind.code, kind.text);
    }
}

#[test]
fn what_is_explained_fits_the_terminal_and_tells_what_levels_say() {
    for args in [&["check", "--explain"][..], &["check", "--explain", "jump"]] {
        let mut call = command(&root(), args);
        let ran = call.env("COLUMNS", "60").output().expect("it runs");
        let told = text(&ran.stdout);
        let longest = told.lines().max_by_key(|line| line.chars().count());
        assert!(
            longest.is_some_and(|l| l.chars().count() <= 60),
            "{longest:?}"
        );
        assert!(told.contains("worth knowing"), "{told}");
    }
}
