//! Practice sets that somebody writes: what must stand in them.

use schrund::practice::{Rules, set::Source};

#[test]
fn a_practice_set_without_a_spacing_is_told() {
    let text = "name = \"mine\"\n[spacing_2_m]\nvalue = 9\nstanding = \"our judgement\"\n";
    let source = Source::File {
        name: "mine.toml",
        text,
    };
    let faults = Rules::with_practice(&source).unwrap_err();
    let codes: Vec<&str> = faults.iter().map(|p| p.code().as_str()).collect();
    assert_eq!(codes, ["missing-figure"; 3], "three, four and five people");
}
