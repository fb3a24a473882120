//! The trip file: names with dots, tables, and figures out of order.

use schrund::{
    fault::{Code, Place},
    practice::{Origin, Rule, Rules},
    read::trip::{Laid, Trip, check, trip},
    say::{fault::says, voice::Voice},
};

use crate::fixture::trip::rules;

#[test]
fn dotted_names_may_be_quoted_or_tables_and_an_end_out_of_order_is_told() {
    let read = |text: &str| {
        let mut laid = Laid::of(rules());
        let trip = trip("trip.toml", text).unwrap();
        let place = Place::file("trip.toml");
        trip.lay_over(&mut laid, &place, &Origin::Trip)
            .map(|()| laid.rules)
    };
    let ways = [
        "[assume]\n\"snow.settled.mu_after.adverse\" = 0.5",
        "[assume]\nsnow.settled.mu_after.adverse = 0.5",
        "[assume.snow.settled.mu_after]\nadverse = 0.5",
    ];
    let rules: Vec<Rules> = ways.iter().map(|text| read(text).unwrap()).collect();
    assert!(
        rules.iter().all(|r| *r == rules[0]),
        "three ways to say the same"
    );
    assert!((rules[0].nature.assumed.snow.settled.mu_after.adverse - 0.5).abs() < 1e-12);
    assert!(
        (rules[0][Rule::MarginM] - 20.0).abs() < 1e-12,
        "nothing else is touched"
    );
    let told = |text: &str| {
        read(text)
            .unwrap_err()
            .iter()
            .map(|p| says(p, Voice::default()).to_string())
            .collect::<Vec<_>>()
    };
    assert_eq!(
        told("[assume]\ndelay_s.adverse = 0.1"),
        ["delay_s: adverse 0.1, central 0.35 and favourable 0.6 are out of order"]
    );
    assert_eq!(
        told("[assume]\nsnow.settled.mu = 1"),
        ["there is no figure \"snow.settled.mu\""]
    );
    assert_eq!(
        told("[assume]\nturn.karabiner = 2"),
        ["turn.karabiner: share 2 is outside 0 to 1"]
    );
}

/// What is wrong with a trip file, each as it is printed.
fn told(text: &str) -> Vec<String> {
    let faults = trip("t.toml", text).err().unwrap_or_default();
    faults.iter().map(ToString::to_string).collect()
}

#[test]
fn what_a_member_does_not_take_is_quoted_with_what_it_takes() {
    let wrong = "party = -1\ntravel = \"bike\"\nsnow = \"mud\"\nstage = -1\nstart = 430\nbridges_until = 10:00\nname = 3\nrope_on_bare = \"no\"\nterrain = [\"a.tif\", 7]\n";
    assert_eq!(
        told(wrong),
        [
            "error[bad-trip]: `party` does not take -1\n  at: t.toml, line 1 column 9, `party`\n  do: write how many, `party = 3`, or their masses with pack in kg, `party = [82, 75, 90]`",
            "error[bad-trip]: `travel` does not take \"bike\"\n  at: t.toml, line 2 column 10, `travel`\n  do: use one of \"foot\", \"snowshoe\", \"ski\"",
            "error[bad-trip]: `snow` does not take \"mud\"\n  at: t.toml, line 3 column 8, `snow`\n  do: use one of \"soft\", \"settled\", \"firm\", \"refrozen\", \"ice\"",
            "error[bad-trip]: `stage` does not take -1\n  at: t.toml, line 4 column 9, `stage`\n  do: it takes the number or the name of a stage",
            "error[bad-trip]: `start` does not take 430\n  at: t.toml, line 5 column 9, `start`\n  do: write `start = \"04:30\"`",
            "error[bad-trip]: `bridges_until` does not take 10:00\n  at: t.toml, line 6 column 17, `bridges_until`\n  do: write `bridges_until = \"10:00\"`",
            "error[bad-trip]: `name` does not take 3\n  at: t.toml, line 7 column 8, `name`\n  do: write a text between quotation marks",
            "error[bad-trip]: `rope_on_bare` does not take \"no\"\n  at: t.toml, line 8 column 16, `rope_on_bare`\n  do: write `rope_on_bare = false`",
            "error[bad-trip]: `terrain` does not take 7\n  at: t.toml, line 9 column 21, `terrain`\n  do: write a text between quotation marks",
        ]
    );
    let people = "error[bad-trip]: `party` does not take \"three\"";
    assert!(told("party = \"three\"")[0].starts_with(people));
    assert!(told("party = [82, \"Ben\"]")[0].contains("`party` does not take \"Ben\""));
}

#[test]
fn every_fault_inside_people_ropes_and_assumptions_is_told() {
    let wrong = "[[party]]\nmass_kg = \"82\"\n[[rope]]\nlength = 60\n[[rope]]\nlength_m = 60\nname = 7\n[assume]\nmargin_m = [1]\n";
    assert_eq!(
        told(wrong),
        [
            "error[bad-trip]: a person of `[[party]]` lacks `name`\n  at: t.toml, line 1 column 1, `party`\n  do: add what it is called: `name = \"…\"`",
            "error[bad-trip]: `party.mass_kg` does not take \"82\"\n  at: t.toml, line 2 column 11, `party.mass_kg`\n  do: write `mass_kg = 82`",
            "error[unknown-name]: a rope of `[[rope]]` has no `length`\n  at: t.toml, line 4 column 1, `rope.length`\n  do: perhaps `length_m` is meant",
            "error[bad-trip]: `rope.name` does not take 7\n  at: t.toml, line 7 column 8, `rope.name`\n  do: write a text between quotation marks",
            "error[bad-trip]: `assume.margin_m` does not take [1]\n  at: t.toml, line 9 column 12, `assume.margin_m`\n  do: write a number, a word between quotation marks, or `true` or `false`",
        ]
    );
}

#[test]
fn numbers_too_large_to_be_held_are_quoted() {
    let digits = "9".repeat(100);
    let wrong = format!(
        "party = {digits}\ngap_m = 1e400\n[assume]\nmargin_m = 0x{}\n",
        "F".repeat(40)
    );
    let told = told(&wrong);
    assert_eq!(told.len(), 3, "{told:?}");
    let shown = format!(
        "error[bad-number]: `party` does not take a number as large as {}…",
        "9".repeat(60)
    );
    assert!(told[0].starts_with(&shown), "{told:?}");
    assert!(told[1].contains("`gap_m` does not take a number as large as 1e400"));
    assert!(
        told.iter()
            .all(|t| t.ends_with("do: write a smaller number"))
    );
}

#[test]
fn a_figure_outside_its_table_is_led_there() {
    let told = told("margin_m = 30\n");
    assert!(
        told[0]
            .contains("do: it is a figure or word that a plan rests on: write it under `[assume]`"),
        "{told:?}"
    );
}

#[test]
fn a_text_that_is_no_toml_is_told_line_by_line() {
    assert_eq!(
        told("party = 3\nparty = 4\nname =\nknots = auto\n"),
        [
            "error[broken-text]: `party` stands there a second time: party = 4\n  at: t.toml, line 2 column 1\n  do: keep one of the two",
            "error[broken-text]: a name without a value: name =\n  at: t.toml, line 3 column 7\n  do: write `name = value`, such as `party = 3`, or take the line out",
            "error[broken-text]: a text without quotation marks: knots = auto\n  at: t.toml, line 4 column 9\n  do: put it between quotation marks: `knots = \"auto\"`",
        ]
    );
    assert_eq!(
        told("party = [82, 75\n"),
        [
            "error[broken-text]: a list is not closed, or lacks a comma, before the end of: party = [82, 75\n  at: t.toml, line 1 column 16\n  do: put a comma between its items and close it with `]`"
        ]
    );
}

#[test]
fn what_stands_in_a_file_does_nothing_to_a_terminal() {
    let told = told("name = \"\"\ntravel = \"\u{1b}[31mred\"\n\u{1b}x = 1\n");
    assert!(told.iter().all(|t| !t.contains('\u{1b}')), "{told:?}");
}

/// As much of a line as makes a text of the greatest size.
fn full_of(line: &str) -> String {
    line.repeat((1 << 20) / line.len())
}

#[test]
fn a_text_full_of_faults_is_told_in_short() {
    let deep = format!("{}a = 1\n", "a.".repeat(90));
    for line in [
        "[[rope]]\n",
        "party = \n",
        "party = 3\n",
        "= ",
        "[",
        "x.y.z.",
        &deep,
    ] {
        let faults = trip("t.toml", &full_of(line)).unwrap_err();
        assert!((1..=21).contains(&faults.len()), "{line}: {}", faults.len());
    }
}

#[test]
fn the_values_of_a_fault_are_facts_and_hold_no_word_of_the_code() {
    let faults = trip("t.toml", "party = \"three\"\ntravel = \"bike\"\n").unwrap_err();
    let values: Vec<String> = faults.iter().map(|f| f.values().to_string()).collect();
    assert_eq!(
        values,
        [
            r#"{"of":"trip","name":"party","found":{"text":"\"three\"","cut":false},"takes":"people"}"#,
            r#"{"of":"trip","name":"travel","found":{"text":"\"bike\"","cut":false},"takes":{"words":["foot","snowshoe","ski"]}}"#,
        ]
    );
}

/// Members of trip files, and values of every sort to give them.
const MEMBERS: &[&str] = &[
    "name",
    "practice",
    "party",
    "rope",
    "gap_m",
    "stage",
    "travel",
    "knots",
    "reserve",
    "cover",
    "rope_on_bare",
    "pace",
    "use_proposed_strike",
    "start",
    "bridges_until",
    "terrain",
    "glaciers",
    "emergency",
    "snow",
    "assume",
    "assume.margin_m",
    "assume.snow.settled.mu_after.adverse",
];
const VALUES: &[&str] = &[
    "0",
    "3",
    "-1",
    "0x1F",
    "0o17",
    "18446744073709551615",
    "-9223372036854775808",
    "99999999999999999999",
    "1.5",
    "1e400",
    "inf",
    "-nan",
    "true",
    "\"\"",
    "\"auto\"",
    "\"ski\"",
    "\"04:30\"",
    "04:30",
    "1979-05-27",
    "[]",
    "[1, 2]",
    "[1, \"a\"]",
    "[\"a\", \"b\"]",
    "[[]]",
    "[{}]",
    "[{ name = \"A\" }]",
    "{}",
    "[{ name = \"A\", contact = \"B\" }, { name = \"C\", contact = \"D\", note = \"E\" }]",
    "[{ length_m = 60 }, { length_m = 1_000, diameter_mm = 8.5, name = \"A\" }]",
    "[{ name = \"A\", mass_kg = 80 }, { name = \"B\" }]",
    "[{ name = \"A\" }, 80]",
    "{ a = 1, b.c = \"d\" }",
    "{ a = [1] }",
    "{ a = 04:30 }",
];

#[test]
fn what_the_form_lets_through_is_read_and_nothing_else_is() {
    let mut read = 0;
    for member in MEMBERS {
        for value in VALUES {
            let text = format!("{member} = {value}\n");
            let taken = trip("t.toml", &text);
            let plain = toml::from_str::<Trip>(&text);
            // Of a bare time of day serde makes a table.
            let is_time = value.contains("04:30") && !value.contains('"') || value.contains("1979");
            let agree = taken.is_ok() == plain.is_ok() || is_time && taken.is_err();
            assert!(agree, "{text}: {plain:?}");
            read += usize::from(taken.is_ok());
            let faults = taken.err().unwrap_or_default();
            let all_said = faults.iter().all(|f| f.kind() != Code::BrokenText);
            assert!(all_said, "{text}: {faults:?}");
        }
    }
    assert!(read > 80, "only {read} were read");
}

#[test]
fn of_very_many_unknown_figures_only_the_first_are_told() {
    let unknown: String = (0..40_000).map(|i| format!("u{i} = 1\n")).collect();
    let said = trip("t.toml", &format!("[assume]\n{unknown}")).unwrap();
    let place = Place::file("t.toml");
    let faults = check(&said, &place, &Default::default()).unwrap_err();
    assert_eq!(faults.len(), 21);
    assert_eq!(
        faults[20].to_string(),
        "error[unknown-name]: and 39980 more like this\n  at: t.toml"
    );
}
