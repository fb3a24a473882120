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

#[test]
fn a_figure_in_another_unit_is_refused_and_in_its_own_taken() {
    let spacing = |n: u8, unit: &str| {
        format!("[spacing_{n}_m]\nvalue = 30\nunit = \"{unit}\"\nstanding = \"our judgement\"\n")
    };
    let text = |unit: &str| {
        let all: String = (2..=5).map(|n| spacing(n, unit)).collect();
        format!("name = \"mine\"\n{all}")
    };
    let read = |text: &str| {
        Rules::with_practice(&Source::File {
            name: "mine.toml",
            text,
        })
    };
    assert!(read(&text("m")).is_ok());
    let told = read(&text("ft")).unwrap_err()[0].to_string();
    assert_eq!(
        told,
        "error[bad-number]: the figure is given in \"ft\", and it is one in \"m\"\n  at: mine.toml, `spacing_2_m`\n  \
         do: work it out in that unit and leave `unit` away"
    );
}
