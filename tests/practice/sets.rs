//! Practice sets that somebody writes: what must stand in them.

use schrund::practice::{Rule, Rules, set::Source};

#[test]
fn a_practice_set_without_a_spacing_is_told() {
    let text = "name = \"mine\"\n[spacing_2_m]\nvalue = 9\nstanding = \"our judgement\"\n";
    let source = Source::File {
        name: "mine.toml",
        text,
    };
    let faults = Rules::with_practice(&source).unwrap_err();
    let codes: Vec<&str> = faults.iter().map(|p| p.code()).collect();
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
/// What is wrong with a practice file, each as it is printed.
fn told(text: &str) -> Vec<String> {
    let name = "mine.toml";
    let faults = Rules::with_practice(&Source::File { name, text });
    let faults = faults.err().unwrap_or_default();
    faults.iter().map(ToString::to_string).collect()
}

#[test]
fn an_empty_practice_file_is_told_all_that_it_lacks() {
    let told = told("");
    assert_eq!(told.len(), 5, "{told:?}");
    assert_eq!(
        told[0],
        "error[bad-practice]: a practice file lacks `name`\n  at: mine.toml\n  do: add what it is called: `name = \"…\"`"
    );
    assert!(
        told[1..]
            .iter()
            .all(|t| t.contains("[missing-figure]") && t.contains("do: add [spacing_"))
    );
}

#[test]
fn a_practice_file_is_told_every_member_that_is_wrong() {
    let text = "name = 7\nknots = \"newer\"\nreserv = \"reach\"\n[spacing_2_m]\nvalue = \"nine\"\nstanding = \"guess\"\nsource = \"me\"\n";
    let told = told(text);
    let shown = [
        "error[bad-practice]: `name` does not take 7\n  at: mine.toml, line 1 column 8, `name`",
        "error[bad-practice]: `knots` does not take \"newer\"\n  at: mine.toml, line 2 column 9, `knots`\n  do: use one of \"auto\", \"always\", \"never\"",
        "error[unknown-name]: a practice file has no `reserv`\n  at: mine.toml, line 3 column 1, `reserv`\n  do: perhaps `reserve` is meant",
        "error[bad-practice]: `spacing_2_m.value` does not take \"nine\"\n  at: mine.toml, line 5 column 9, `spacing_2_m.value`",
        "error[bad-practice]: `spacing_2_m.standing` does not take \"guess\"\n  at: mine.toml, line 6 column 12, `spacing_2_m.standing`\n  do: use one of \"published\", ",
        "error[unknown-name]: a figure of a practice file has no `source`\n  at: mine.toml, line 7 column 1, `spacing_2_m.source`\n  do: perhaps `sources` is meant",
    ];
    for (told, shown) in told.iter().zip(shown) {
        assert!(told.starts_with(shown), "{told}");
    }
    assert_eq!(told.len(), shown.len() + 3, "and three spacings: {told:?}");
}

#[test]
fn where_a_set_comes_from_is_a_sentence_with_its_standing() {
    let spacing = |n: u8| format!("[spacing_{n}_m]\nvalue = 9\nstanding = \"derived\"\n");
    let spacings: String = (2..=5).map(spacing).collect();
    let told = told(&format!(
        "name = \"mine\"\nused = \"often\"\n{spacings}[comes_from]\nsays = \"an uncle\"\nyear = 1970\n"
    ));
    assert_eq!(
        told,
        [
            "error[bad-practice]: `used` does not take \"often\"\n  at: mine.toml, line 2 column 8, `used`\n  do: it takes a table with `says` and `standing`",
            "error[bad-practice]: a sentence of a practice file lacks `standing`\n  at: mine.toml, line 15 column 1, `comes_from`\n  do: add what stands behind it: `standing = \"our judgement\"`",
            "error[unknown-name]: a sentence of a practice file has no `year`\n  at: mine.toml, line 17 column 1, `comes_from.year`\n  do: it has `says` and `standing`, and `sources` where they help",
        ]
    );
}

/// A change of the arm for four was noticed by no test: teams of four have their own coils, whatever a set says of them.
#[test]
fn every_size_of_a_rope_team_has_figures_of_its_own() {
    for people in 2..=5 {
        let named = [Rule::base_spacing(people), Rule::chest_coils(people)].map(Rule::name);
        let want = [
            format!("spacing_{people}_m"),
            format!("chest_coils_{people}"),
        ];
        assert_eq!(named.map(str::to_owned), want);
    }
    assert_eq!(
        Rule::base_spacing(1),
        Rule::Spacing2M,
        "nobody is alone on a rope"
    );
    assert_eq!(
        Rule::chest_coils(9),
        Rule::ChestCoils5,
        "larger teams are not planned"
    );
}
