//! What the program says of itself: help, manual pages, completions.

use std::{collections::BTreeMap, fs, path::Path, process::Command};

use schrund::{
    plan::explained::explained,
    practice::{Choices, Rule, set},
    write::FORMATS,
};
use tempfile::{TempDir, tempdir};

use crate::fixture::program::{root, schrund, text};

const COMMANDS: [&str; 10] = [
    "plan",
    "options",
    "check",
    "zone",
    "height",
    "practice",
    "new",
    "schema",
    "completions",
    "man",
];

/// What a call prints that must end well.
fn printed(args: &[&str]) -> String {
    let ran = schrund(&root(), args);
    assert!(ran.status.success(), "{args:?}: {}", text(&ran.stderr));
    text(&ran.stdout)
}

/// The calls that a help shows as examples.
fn examples(help: &str) -> Vec<&str> {
    let (_, after) = help
        .split_once("\nExamples:\n")
        .expect("examples at the end");
    let calls = after.lines().filter_map(|line| line.strip_prefix("  "));
    calls.filter(|line| line.starts_with("schrund ")).collect()
}

/// The words of a call as a shell hands them over, and the file that its output goes to.
fn words(call: &str) -> (Vec<&str>, Option<&str>) {
    let (call, file) = match call.split_once(" > ") {
        Some((call, file)) => (call, Some(file)),
        None => (call, None),
    };
    let pieces = call.split('"').enumerate();
    let words = pieces.flat_map(|(i, piece)| match i % 2 {
        1 => vec![piece],
        _ => piece.split_whitespace().collect(),
    });
    (words.skip(1).collect(), file)
}

/// The files of the example in a folder of their own, inside another one.
fn example() -> (TempDir, std::path::PathBuf) {
    let folder = tempdir().expect("a folder");
    let inside = folder.path().join("vordalen");
    fs::create_dir(&inside).expect("a folder in it");
    for name in ["route.gpx", "zones.geojson", "trip.toml", "terrain.tif"] {
        fs::copy(
            root().join("examples/vordalen").join(name),
            inside.join(name),
        )
        .expect("a copy");
    }
    (folder, inside)
}

fn runs(call: &str, folder: &Path) {
    let (args, file) = words(call);
    let ran = schrund(folder, &args);
    let planned = matches!(ran.status.code(), Some(0 | 5));
    assert!(planned, "{call}: {}", text(&ran.stderr));
    if let Some(file) = file {
        assert!(!ran.stdout.is_empty(), "{call} prints nothing");
        fs::write(folder.join(file), &ran.stdout).expect("what was printed");
    }
}

#[test]
fn every_example_of_every_help_works_on_the_files_it_names() {
    for command in [&[][..], &COMMANDS.map(|name| [name])].concat() {
        let help = printed(&[&command[..], &["--help"]].concat());
        let calls = examples(&help);
        assert!((2..=4).contains(&calls.len()), "{command:?}: {calls:?}");
        let (_whole, folder) = example();
        for call in calls {
            runs(call, &folder);
        }
    }
}

#[test]
fn options_stand_in_groups_in_the_order_of_use() {
    for command in ["plan", "options"] {
        let help = printed(&[command, "-h"]);
        assert!(
            !help.contains("\nOptions:"),
            "an option without a group: {help}"
        );
        let order = [
            "\nThe party and the ropes:",
            " --party ",
            " --rope ",
            "\nThe ice and the ground:",
            " --gap ",
            "\nThe day:",
            " --start ",
            "\nWhat is taught:",
            " --practice ",
            " --trip ",
            "\nOutput:",
            " --format ",
            "\nMessages and help:",
            " --color ",
            " --quiet ",
            " --verbose ",
            "\nExamples:",
        ];
        let places = order.map(|part| {
            help.find(part)
                .unwrap_or_else(|| panic!("no {part}: {help}"))
        });
        assert!(places.is_sorted(), "{command}: {places:?}");
    }
}

/// What the example's plan rests on where nobody says anything.
fn unasked() -> BTreeMap<String, String> {
    let folder = root().join("examples/vordalen");
    let call = "plan route.gpx zones.geojson --party 3 --format json";
    let args: Vec<&str> = call.split_whitespace().collect();
    let plan: serde_json::Value =
        serde_json::from_slice(&schrund(&folder, &args).stdout).expect("a plan");
    let listed = plan["assumptions"].as_array().expect("a list");
    let pairs = listed.iter().map(|a| {
        let value = match &a["value"] {
            serde_json::Value::String(word) => word.clone(),
            value => value.to_string(),
        };
        (a["name"].as_str().expect("a name").to_owned(), value)
    });
    pairs.collect()
}

#[test]
fn the_defaults_in_the_help_are_those_that_a_plan_rests_on() {
    let help = printed(&["plan", "--help"]);
    let shown = |flag: &str| {
        let (_, after) = help
            .split_once(&format!("      --{flag} <"))
            .expect("the flag");
        let own = after.split("\n      --").next().unwrap_or_default();
        let own = own.split_whitespace().collect::<Vec<_>>().join(" ");
        let (_, default) = own
            .split_once("[default: ")
            .unwrap_or_else(|| panic!("{flag}: {own}"));
        default.split(']').next().unwrap_or_default().to_owned()
    };
    let plan = unasked();
    for (flag, name) in [
        ("travel", "travel"),
        ("pace", "pace"),
        ("snow", "snow"),
        ("practice", "practice"),
    ] {
        assert_eq!(Some(&shown(flag)), plan.get(name), "--{flag}");
    }
    let metres: f64 = plan["margin_m"].parse().expect("a number");
    assert_eq!(shown("margin"), format!("{metres} m"));
    let words = Choices::words("undrawn_ice").expect("a choice");
    assert!(words.contains(&shown("undrawn-ice").as_str()));
    assert_eq!(
        [shown("format"), shown("units"), shown("lang")],
        ["table", "metric", "en"]
    );
}

#[test]
fn every_command_has_a_manual_page_with_its_examples() {
    for command in [
        None,
        Some("plan"),
        Some("options"),
        Some("check"),
        Some("zone"),
        Some("height"),
        Some("practice"),
    ]
    .into_iter()
    .chain(["new", "schema", "completions", "man"].map(Some))
    {
        let args: Vec<&str> = ["man"].into_iter().chain(command).collect();
        let page = printed(&args).replace('\\', "");
        let of = command.map_or("schrund".to_owned(), |name| format!("schrund-{name}"));
        assert!(page.contains(&format!(".TH {of} ")), "{of}: {page}");
        let help = printed(&command.into_iter().chain(["--help"]).collect::<Vec<_>>());
        for call in examples(&help) {
            assert!(page.contains(call), "{of} lacks {call}: {page}");
        }
    }
}

#[test]
fn a_page_that_there_is_not_is_answered_with_those_there_are() {
    let ran = schrund(&root(), &["man", "pln"]);
    let says = text(&ran.stderr);
    assert_eq!((ran.status.code(), ran.stdout.len()), (Some(2), 0));
    assert!(
        says.starts_with("error[usage]") && says.contains("do: `schrund man plan`"),
        "{says}"
    );
    assert!(
        COMMANDS.iter().all(|command| says.contains(command)),
        "{says}"
    );
}

#[test]
fn completions_know_the_values() {
    let sets = set::EMBEDDED.map(|(name, _)| name.to_owned()).to_vec();
    let codes: Vec<String> = explained().map(|kind| kind.code.to_owned()).collect();
    let figures = Rule::ALL
        .iter()
        .map(|rule| rule.name())
        .chain(Choices::NAMES.iter().copied());
    let figures: Vec<String> = figures.map(|name| format!("{name}=")).collect();
    let formats = FORMATS
        .iter()
        .map(|format| format.name().to_owned())
        .collect();
    let words = ["travel", "snow"].map(|name| Choices::words(name).expect("a choice"));
    let words: Vec<String> = words.concat().into_iter().map(str::to_owned).collect();
    let languages = vec!["en".to_owned(), "de".to_owned()];
    for shell in ["bash", "zsh", "fish"] {
        let script = printed(&["completions", shell]);
        let offered: Vec<&str> = script
            .split(|c: char| !(c.is_ascii_alphanumeric() || "-_=".contains(c)))
            .collect();
        for name in [&sets, &codes, &figures, &formats, &words, &languages]
            .into_iter()
            .flatten()
        {
            let name = name.as_str();
            let bare = name.trim_end_matches('=');
            assert!(
                offered.contains(&name) || offered.contains(&bare),
                "{shell} lacks {name}"
            );
        }
    }
}

#[test]
fn bash_completes_them() {
    let folder = tempdir().expect("a folder");
    fs::write(
        folder.path().join("schrund.bash"),
        printed(&["completions", "bash"]),
    )
    .expect("a script");
    fs::write(folder.path().join("short.toml"), "").expect("a practice file");
    let completed = |command: &str, flag: &str, begun: &str| {
        let script = format!(
            "source ./schrund.bash; COMP_WORDS=(schrund {command} {flag} '{begun}'); COMP_CWORD=3; \
             _schrund schrund '{begun}' {flag}; echo \"${{COMPREPLY[@]}}\""
        );
        let ran = Command::new("bash")
            .current_dir(folder.path())
            .args(["-c", &script])
            .output();
        ran.ok().map(|ran| text(&ran.stdout).trim().to_owned())
    };
    // Where there is no bash nobody completes by it.
    let Some(codes) = completed("check", "--explain", "two-") else {
        return;
    };
    assert_eq!(codes, "two-over-one-gap");
    let mut sets: Vec<String> = completed("plan", "--practice", "sh")
        .into_iter()
        .flat_map(|all| {
            all.split_whitespace()
                .map(str::to_owned)
                .collect::<Vec<_>>()
        })
        .collect();
    sets.sort();
    assert_eq!(sets, ["short-alpine", "short.toml"], "a set, or a file");
    assert_eq!(
        completed("plan", "--assume", "margin").as_deref(),
        Some("margin_m=")
    );
    assert_eq!(
        completed("plan", "--travel", "sn").as_deref(),
        Some("snowshoe")
    );
}

#[test]
fn on_a_terminal_a_manual_page_is_plain_text() {
    let program = env!("CARGO_BIN_EXE_schrund");
    let ran = Command::new("script")
        .args(["-qec", &format!("{program} man plan"), "/dev/null"])
        .output();
    // Where nothing makes a terminal nobody reads on one.
    let Some(page) = ran.ok().filter(|ran| ran.status.success()) else {
        return;
    };
    let page = text(&page.stdout);
    assert!(page.contains("Usage: schrund plan"), "{page}");
    assert!(!page.contains(".TH ") && !page.contains("\\fB"), "{page}");
    let piped = printed(&["man", "plan"]);
    assert!(piped.contains(".TH "), "{piped}");
}

#[test]
fn the_version_tells_what_somebody_needs_to_get_the_same_answer() {
    let number = env!("CARGO_PKG_VERSION");
    assert_eq!(printed(&["-V"]), format!("schrund {number}\n"));
    let told = printed(&["--version"]);
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines[0], format!("schrund {number}"));
    let built = "built with: cli fetch flatgeobuf page shell survey threads zone";
    assert!(
        lines[1] == built || lines[1] == built.replace("threads ", ""),
        "{told}"
    );
    assert_eq!(
        lines[2],
        format!("for: {} {}", std::env::consts::OS, std::env::consts::ARCH)
    );
    assert_eq!(lines[3], "form of the JSON: 1");
    // What a page says of itself is the same.
    let folder = tempdir().expect("a folder");
    let page = folder.path().join("draw.html");
    printed(&["draw", "-o", page.to_str().expect("a name"), "-q"]);
    let page = fs::read_to_string(&page).expect("a page");
    let packed = lines[4].strip_prefix("in pages: ").expect("it names them");
    assert!(
        page.contains(&format!("schrund {number}, {packed}")),
        "{told}"
    );
}
