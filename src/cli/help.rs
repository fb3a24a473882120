//! What `--help` shows beside the flags: defaults from the figures in force, and examples.

use clap::{
    Arg, Command, CommandFactory,
    error::{Error, ErrorKind},
};
use schrund::{
    practice::{Choices, Rule, Rules, set, term::Terms},
    trip::language::Language,
};

use crate::{args::Args, ending};

/// A call and what it does.
pub(crate) type Example = (&'static str, &'static str);

/// How the program ends.
pub(crate) const EXIT_CODES: [(&str, &str); 8] = [
    ("0", "done; or planned, and no leg is stop or outside"),
    ("1", "unexpected failure"),
    ("2", "usage"),
    ("3", "input missing or unreadable"),
    ("4", "input understood but wrong"),
    (
        "5",
        "planned and written, but a leg is stop (roping together is not the answer there) or outside (no set-up within the limits, no rope that holds it)",
    ),
    ("6", "network"),
    ("130", "interrupted"),
];

/// Calls that work in the folder examples/vordalen, by command.
const EXAMPLES: [(&str, &[Example]); 14] = [
    (
        "schrund",
        &[
            (
                "schrund plan route.gpx zones.geojson --party 3 --rope 60",
                "Plan the route for three people on one rope of 60 m.",
            ),
            (
                "schrund check route.gpx zones.geojson",
                "Look whether the files are sound, before anything is planned.",
            ),
            (
                "schrund new tour",
                "Write a trip file and a zones file to fill in.",
            ),
            (
                "schrund help plan",
                "Every flag of a command, with examples.",
            ),
        ],
    ),
    (
        "plan",
        &[
            (
                "schrund plan route.gpx zones.geojson --party 3 --rope 60",
                "Three people and one rope of 60 m: the table in the terminal.",
            ),
            (
                "schrund plan route.gpx zones.geojson --party 82,75,90 --rope 60 --rope 40 --terrain terrain.tif",
                "The same with masses, a second rope, and the slopes of a terrain model.",
            ),
            (
                "schrund plan route.gpx zones.geojson --trip trip.toml --out plan",
                "Everything from a trip file; report, sheet, GPX and maps into the folder plan.",
            ),
            (
                "schrund plan route.gpx zones.geojson --trip trip.toml --start 03:30 --format text",
                "Another start than the file says, as a message of a few lines.",
            ),
        ],
    ),
    (
        "options",
        &[
            (
                "schrund options route.gpx zones.geojson --party 5 --rope 60 --rope 40",
                "Which ways there are to split five people onto two ropes.",
            ),
            (
                "schrund options route.gpx zones.geojson --trip trip.toml --format json",
                "All of it for a program, from a trip file.",
            ),
        ],
    ),
    (
        "check",
        &[
            (
                "schrund check route.gpx zones.geojson trip.toml terrain.tif",
                "What the files hold, and every fault and oddity in them.",
            ),
            (
                "schrund check zones.geojson --gap 6",
                "The same where zones without a gap width are to count as 6 m.",
            ),
            (
                "schrund check --explain gap-not-given",
                "What a code means and what to do.",
            ),
            ("schrund check --explain", "All codes, a line each."),
        ],
    ),
    (
        "zone",
        &[
            (
                "schrund zone route.gpx 9-9.4 --gap 4 --into zones.geojson",
                "From kilometre 9 to 9.4 the ice is broken, with gaps of 4 m at most: a zone more in the file.",
            ),
            (
                "schrund zone route.gpx 5.9-6.4 7.9-8.3 --gap 3-5 --half-width 80 --into mine.geojson",
                "Two zones with a range of widths, 80 m to either side of the line, in a file that is made.",
            ),
        ],
    ),
    (
        "survey",
        &[
            (
                "schrund survey route.gpx --zones zones.geojson --party 3 --rope 60",
                "How much ice the track crosses and what is found there; as many tracks as you like, or a folder of them.",
            ),
            (
                "schrund survey . --zones zones.geojson --trip trip.toml --out survey.csv",
                "All tracks of this folder into a table for spreadsheets; --resume goes on with it.",
            ),
        ],
    ),
    (
        "height",
        &[
            (
                "schrund height terrain.tif --at 2.0,66.51",
                "The height at a longitude and latitude.",
            ),
            (
                "schrund height terrain.tif --at \"31W 455500 7377200\"",
                "The same at a place of the UTM grid, as plans print it.",
            ),
        ],
    ),
    (
        "practice",
        &[
            ("schrund practice", "Which sets there are."),
            (
                "schrund practice short-alpine",
                "One of them, with the standing of each figure.",
            ),
            (
                "schrund practice short-alpine --toml > mine.toml",
                "The same as a file to edit.",
            ),
            (
                "schrund plan route.gpx zones.geojson --party 3 --practice mine.toml",
                "A plan by that file.",
            ),
        ],
    ),
    (
        "new",
        &[
            (
                "schrund new tour",
                "Make the folder tour with a trip file and an empty zones file.",
            ),
            (
                "schrund new ../next-tour",
                "The same in another folder; what is there is never written over.",
            ),
        ],
    ),
    (
        "draw",
        &[
            (
                "schrund draw route.gpx zones.geojson --trip trip.toml -o draw.html",
                "The page of the trip: open draw.html in a browser, and draw.",
            ),
            (
                "schrund draw route.gpx --terrain terrain.tif -o draw.html",
                "No ice yet: draw it on the map, over the shape of the ground.",
            ),
            (
                "schrund draw -o planner.html",
                "A planner to hand on: it takes whatever is dropped on it.",
            ),
        ],
    ),
    (
        "fetch",
        &[
            (
                "schrund fetch zones route.gpx --from https://maps.example/collections/ice/items -o ice.geojson",
                "The outlines near the line as zones, each waiting for its gap width.",
            ),
            (
                "schrund fetch terrain route.gpx -o terrain",
                "The heights near the line, of the open model of the world in cells of 30 m, into the folder terrain.",
            ),
            (
                "schrund fetch terrain route.gpx --from https://maps.example/{NS}{lat}{EW}{lon}.tif -o terrain",
                "The same from tiles of a degree elsewhere.",
            ),
        ],
    ),
    (
        "schema",
        &[
            ("schrund schema trip", "What a trip file can hold."),
            (
                "schrund schema plan > plan.schema.json",
                "The form of the JSON plan, for programs that read it.",
            ),
        ],
    ),
    (
        "completions",
        &[
            (
                "schrund completions bash > schrund.bash",
                "For bash; read it in by `source schrund.bash`, or put it where bash looks for completions.",
            ),
            (
                "schrund completions zsh > _schrund",
                "For zsh; put it into a folder of `fpath`.",
            ),
            (
                "schrund completions fish > schrund.fish",
                "For fish; put it into its folder `completions`.",
            ),
        ],
    ),
    (
        "man",
        &[
            (
                "schrund man plan",
                "The page of one command: plain text on a terminal, the form of manual pages where it is piped.",
            ),
            (
                "schrund man > schrund.1",
                "The page of the program in a file; `man ./schrund.1` shows it.",
            ),
        ],
    ),
];

/// The examples of a command.
pub(crate) fn examples(command: &str) -> &'static [Example] {
    let found = EXAMPLES.iter().find(|(name, _)| *name == command);
    found.map_or(&[], |(_, examples)| examples)
}

/// The names of all commands.
pub(crate) fn commands() -> Vec<&'static str> {
    let all = EXAMPLES.iter().map(|(name, _)| *name);
    all.filter(|name| *name != "schrund").collect()
}

/// The flags with the defaults that they have, without examples.
pub(crate) fn plain() -> Command {
    let defaults = defaults();
    Args::command().mut_subcommands(|command| {
        command.mut_args(
            |arg| match defaults.iter().find(|(id, _)| arg.get_id() == *id) {
                Some((_, default)) if arg.get_default_values().is_empty() => {
                    with_default(arg, default)
                }
                _ if arg.get_id() == "output" => with_endings(arg),
                _ => arg,
            },
        )
    })
}

/// A help that was asked for, with defaults and examples; any other error as it is.
pub(crate) fn with_help(error: Error) -> Error {
    let asked = [
        ErrorKind::DisplayHelp,
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand,
    ];
    if !asked.contains(&error.kind()) {
        return error;
    }
    let whole = plain()
        .after_help(after("schrund"))
        .mut_subcommands(|command| {
            let (of, after) = (command.get_name().to_owned(), after(command.get_name()));
            let within = |inner: Command| {
                if examples(&of).is_empty() {
                    inner
                } else {
                    inner.after_help(examples_of(&of))
                }
            };
            command.mut_subcommands(within).after_help(after)
        });
    whole.try_get_matches().err().unwrap_or(error)
}

/// The examples of a command, each with what it does.
pub(crate) fn examples_of(command: &str) -> String {
    let mut text = "Examples:".to_owned();
    for (call, says) in examples(command) {
        text += &format!("\n  {call}\n          {says}");
    }
    text
}

/// What stands at the end of the help of a command.
fn after(command: &str) -> String {
    let mut text = examples_of(command);
    if command == "schrund" {
        text += "\n\nThe ice: draw the broken ice as polygons in a map editor, each with a property gap_m, the widest gap\nyou expect in metres; `schrund new tour` writes an empty zones file to draw in.";
        let codes = EXIT_CODES.map(|(code, says)| format!("{code} {says}"));
        text += &format!("\n\nExit codes: {}", codes.join(" · "));
    }
    text
}

fn with_default(arg: Arg, default: &str) -> Arg {
    let help = arg.get_help().map(ToString::to_string).unwrap_or_default();
    arg.help(format!("{help} [default: {default}]"))
}

/// The endings that choose a format, behind what is said of them.
fn with_endings(arg: Arg) -> Arg {
    let help = arg.get_help().map(ToString::to_string).unwrap_or_default();
    arg.help(format!("{help}: {}", ending::endings().join(" ")))
}

/// What holds where a flag is not given, by its id: the very figures and words that a plan then rests on.
fn defaults() -> Vec<(&'static str, String)> {
    let (practice, _) = set::EMBEDDED[0];
    let choices = Choices::default();
    let mut defaults = vec![
        ("practice", practice.to_owned()),
        ("travel", choices.travel.value.name().to_owned()),
        ("pace", choices.pace.value.name().to_owned()),
        ("snow", choices.snow.value.name().to_owned()),
        ("undrawn_ice", choices.undrawn_ice.value.name().to_owned()),
        ("lang", Language::default().name().to_owned()),
        ("format", ending::UNASKED.to_owned()),
    ];
    // The sets that come with the program are sound; a test reads them all.
    if let Ok(rules) = Rules::with_practice(&set::Source::Named(practice)) {
        let margin = rules.figure(Rule::MarginM);
        let value = format!("{}{}", margin.value, margin.unit_shown());
        defaults.push(("margin", value));
    }
    defaults
}
