//! The options as a table: one row a way, with what is done otherwise and why it is shown under it.

use unicode_width::UnicodeWidthStr;

use crate::plan::{
    leg::Verdict,
    options::{Options, Way},
};
use crate::{
    say::units::{Side, Units},
    write::{
        paragraph::{bullet, padded},
        style,
    },
};

/// How the options are printed.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    /// Columns to fit.
    pub width: usize,
    /// Units shown.
    pub units: Units,
}

/// Ways that are printed; JSON holds all. Our judgement: more are not compared by anybody.
const SHOWN: usize = 12;
/// Where none is inside only the nearest are of use. Our judgement.
const NEAREST: usize = 3;
const LEGEND: &str =
    "left: fewest left to hold a fall · help: another rope team · coil: longest on one person";
const COLUMNS: usize = 10;
/// The columns that go to the line below where the width is short: spacing, rope needed.
const WIDE: [usize; 2] = [2, 4];

/// The ways, best first.
#[must_use]
pub fn table(options: &Options, look: Look) -> String {
    let mut out = format!(
        "{} people, {} ways weighed, {} that no other beats in everything\n\n",
        options.people,
        options.weighed,
        options.ways.len()
    );
    let shown = shown(&options.ways);
    let mut rows = vec![head(look.units)];
    rows.extend(shown.iter().map(|way| row(way, look.units)));
    let widths = widths(&rows);
    let folded = widths.iter().sum::<usize>() + 2 * COLUMNS > look.width;
    for (i, row) in rows.iter().enumerate() {
        out.push_str(&line(row, &widths, folded));
        if let Some(way) = i.checked_sub(1).and_then(|i| shown.get(i)) {
            below(&mut out, way, folded, look);
        }
    }
    if let Some(more) = options
        .ways
        .len()
        .checked_sub(shown.len())
        .filter(|&n| n > 0)
    {
        out.push_str(&format!("\n{more} more with `--format json`\n"));
    }
    out.push('\n');
    bullet(&mut out, "", LEGEND, look.width);
    for says in &options.says {
        bullet(&mut out, "  · ", says, look.width);
    }
    out.push_str("\nRead with these ways\n");
    for caution in &options.cautions {
        bullet(&mut out, "  · ", caution, look.width);
    }
    out
}

/// The ways printed.
fn shown(ways: &[Way]) -> &[Way] {
    let none_inside = ways.iter().all(|w| w.verdict == Verdict::Outside);
    let most = if none_inside { NEAREST } else { SHOWN };
    ways.get(..most).unwrap_or(ways)
}

type Cells = [String; COLUMNS];

fn head(units: Units) -> Cells {
    let short = units.short();
    [
        "#".to_owned(),
        "teams".to_owned(),
        format!("spacing {short}"),
        format!("rope {short}"),
        format!("needs {short}"),
        "kg of rope".to_owned(),
        "left".to_owned(),
        "help".to_owned(),
        format!("coil {short}"),
        "verdict".to_owned(),
    ]
}

fn row(way: &Way, units: Units) -> Cells {
    [
        way.way.to_string(),
        joined(way, |t| t.people.to_string()),
        spacings(way, units),
        joined(way, |t| match t.rope_m {
            0.0 => "–".to_owned(),
            m => units.number(m, Side::AtHand),
        }),
        needs(way, units),
        format!("{:.1}", way.rope_mass_kg),
        way.left_to_hold.to_string(),
        if way.another_team { "yes" } else { "no" }.to_owned(),
        units.number(way.coil_m, Side::Demand),
        format!("{} {}", way.verdict.as_str(), style::sign(way.verdict)),
    ]
}

fn joined(way: &Way, of: impl Fn(&crate::plan::options::WayTeam) -> String) -> String {
    way.teams.iter().map(of).collect::<Vec<_>>().join("+")
}

fn needs(way: &Way, units: Units) -> String {
    joined(way, |t| units.number(t.needed_m, Side::Demand))
}

/// `12–14.5/10`: the least and greatest of each team.
fn spacings(way: &Way, units: Units) -> String {
    let of = |t: &crate::plan::options::WayTeam| {
        let [least, most] = t.spacing_m.map(|m| units.number(m, Side::Demand));
        if least == most {
            least
        } else {
            format!("{least}–{most}")
        }
    };
    way.teams.iter().map(of).collect::<Vec<_>>().join("/")
}

fn widths(rows: &[Cells]) -> [usize; COLUMNS] {
    std::array::from_fn(|i| rows.iter().map(|row| row[i].width()).max().unwrap_or(0))
}

fn line(row: &Cells, widths: &[usize; COLUMNS], folded: bool) -> String {
    let mut text = String::new();
    for (i, (cell, width)) in row.iter().zip(widths).enumerate() {
        if !(folded && WIDE.contains(&i)) {
            let number = matches!(i, 0 | 5..=8);
            text += &padded(cell, *width, number && i != 7);
            text += "  ";
        }
    }
    format!("{}\n", text.trim_end())
}

/// What is done otherwise, what is missing, and why the way is shown.
fn below(out: &mut String, way: &Way, folded: bool, look: Look) {
    let mut says = Vec::new();
    if folded {
        says.push(format!(
            "spacing {}, needs {} {}",
            spacings(way, look.units),
            needs(way, look.units),
            look.units.short()
        ));
    }
    if !way.changes.is_empty() {
        says.push(format!("with {}", way.changes.join(", ")));
    }
    if way.verdict == Verdict::Outside && way.short_m > 0.0 {
        let short = look.units.length(way.short_m, Side::Demand);
        says.push(format!("{short} missing"));
    }
    match way.setup_changes {
        0 => {}
        1 => says.push("the set-up changes once".to_owned()),
        n => says.push(format!("the set-up changes {n} times")),
    }
    says.push(way.why.clone());
    bullet(out, "     ", &says.join("; "), look.width);
}
