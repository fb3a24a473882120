//! One figure is printed alike wherever it is read: the table beside the report, and nothing rounded but by the one function.

use std::{fs, path::Path};

use scraper::Html;

use crate::fixture::{
    page::{select, text},
    planned::{Planned, over_the_pass},
};

/// The text without its line breaks.
fn flowing(trip: &Planned) -> String {
    let table = trip.written("table");
    table.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every number that stands right before some words.
fn before<'t>(told: &'t str, words: &str) -> Vec<&'t str> {
    let parts: Vec<&str> = told.split(words).collect();
    let told = parts.split_last().map_or(&[][..], |(_, told)| told);
    told.iter()
        .filter_map(|part| part.rsplit([' ', '(']).next())
        .collect()
}

#[test]
fn falls_coils_and_hauls_have_the_figures_of_the_report() {
    for people in [2, 3, 4, 7] {
        let trip = over_the_pass(people);
        let (told, page) = (flowing(&trip), Html::parse_document(&trip.written("html")));
        for row in select(&page, "tr[data-arrest]") {
            let cell = |label: &str| {
                let cells = row.child_elements();
                let mut of_label = cells.filter(|c| c.attr("data-label") == Some(label));
                text(of_label.next().expect(label))
                    .trim()
                    .replace('–', " to ")
            };
            let slide = cell("Slide, m");
            let (least, most) = slide.split_once(" to ").expect("a range");
            let dragged = [
                format!(" {least} to {most} m"),
                format!(" {least} m at best, {most} m and to the lip at worst"),
            ];
            let peak = format!("; {} kN on the holder", cell("Peak, kN"));
            assert!(
                dragged.iter().any(|figures| told.contains(figures)),
                "{people}: none of {dragged:?} in\n{told}"
            );
            assert!(told.contains(&peak), "{people}: no \"{peak}\" in\n{told}");
        }
        let pulls = select(&page, "tr[data-system]");
        let pulls: Vec<String> = pulls
            .iter()
            .map(|row| row.child_elements().map(text).collect::<Vec<_>>().join("|"))
            .collect();
        for pull in before(&told, " kN to pull)") {
            let cell = format!("|{pull}|");
            assert!(
                pulls.iter().any(|row| row.contains(&cell)),
                "{people}: {pull} kN, {pulls:?}"
            );
        }
        let carried = text(page.root_element());
        let coils = before(&told, " m in the coil of each end person");
        assert!(!coils.is_empty(), "{people}: {told}");
        for coil in coils {
            let as_carried = format!("As carried: {coil} m in each end coil");
            assert!(
                carried.contains(&as_carried),
                "{people}: no \"{as_carried}\""
            );
            let of_leg = if coil == "0" {
                "no coils".to_owned()
            } else {
                format!("coils {coil} m")
            };
            assert!(carried.contains(&of_leg), "{people}: no \"{of_leg}\"");
        }
    }
}

/// Files that write for programs, round positions or draw: places on the paper are no figures.
const NO_FIGURES: [&str; 13] = [
    "csv.rs",
    "geojson.rs",
    "geojson/form.rs",
    "gpx.rs",
    "json.rs",
    "kml.rs",
    "page/ground.rs",
    "report/frame.rs",
    "report/paper.rs",
    "report/profile.rs",
    "report/relief.rs",
    "report/rope.rs",
    "text.rs",
];

#[test]
fn no_writer_rounds_by_itself() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/write");
    let mut open = vec![folder.clone()];
    let mut rounding = Vec::new();
    while let Some(path) = open.pop() {
        if path.is_dir() {
            open.extend(
                fs::read_dir(&path)
                    .unwrap()
                    .map(|entry| entry.unwrap().path()),
            );
            continue;
        }
        let name = path
            .strip_prefix(&folder)
            .unwrap()
            .to_string_lossy()
            .into_owned();
        if !name.ends_with(".rs") || NO_FIGURES.contains(&name.as_str()) {
            continue;
        }
        let code = fs::read_to_string(&path).unwrap();
        let rounds = |line: &str| {
            let named = [".ceil()", ".floor()", ".round()", "{:."];
            named.iter().any(|word| line.contains(word)) && !line.trim_start().starts_with("//")
        };
        // A change of the set-up gives the side to which its place is rounded.
        let own = code
            .lines()
            .filter(|line| rounds(line) && !line.contains("kind.round()"));
        rounding.extend(own.map(|line| format!("{name}: {}", line.trim())));
    }
    assert!(
        rounding.is_empty(),
        "figures are rounded by `say`, alike everywhere: {rounding:#?}; what rounds no figure of a plan is listed in NO_FIGURES"
    );
}
