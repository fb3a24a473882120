//! The options as a table: one row a way, with what is done otherwise and why it is shown under it.

use unicode_width::UnicodeWidthStr;

use crate::{
    plan::options::{Options, Way},
    say::{self, arg::Arg, cautions::cautions, name::rope, round::Round, span::Said, voice::Voice},
    write::{
        parts::{
            paragraph::{bullet, padded},
            sentence, style, way, way_trip,
        },
        sheet::Look,
    },
};

const COLUMNS: usize = 10;
/// The columns that go to the line below where the width is short: spacing, rope needed.
const WIDE: [usize; 2] = [2, 4];

/// The ways, best first.
#[must_use]
pub fn table(options: &Options, look: Look) -> String {
    let voice = look.voice;
    let mut out = format!("{}\n\n", way::counted(options, voice));
    let shown = way::shown(&options.ways);
    let told = way::shared(shown, voice);
    let mut rows = vec![head(look.voice)];
    rows.extend(shown.iter().map(|way| row(way, look.voice)));
    let widths = widths(&rows);
    let folded = widths.iter().sum::<usize>() + 2 * COLUMNS > look.width;
    for (i, row) in rows.iter().enumerate() {
        out.push_str(&line(row, &widths, folded));
        if let Some(way) = i.checked_sub(1).and_then(|i| shown.get(i)) {
            below(&mut out, way, options, &told, folded, look);
        }
    }
    if let Some(more) = way::not_shown(options, voice) {
        out.push_str(&format!("\n{more}\n"));
    }
    out.push('\n');
    if let Some(alike) = way::alike(&told, voice) {
        bullet(&mut out, "", &alike.to_string(), look.width);
    }
    let legend = voice.say("options-legend", &[]).to_string();
    bullet(&mut out, "", &legend, look.width);
    for &remark in &options.remarks {
        let says = say::options::remark(remark, look.voice).to_string();
        bullet(&mut out, "  · ", &says, look.width);
    }
    out.push_str(&format!("\n{}\n", voice.say("options-cautions", &[])));
    for caution in cautions(look.voice) {
        bullet(&mut out, "  · ", &caution.to_string(), look.width);
    }
    out
}

type Cells = [String; COLUMNS];

fn head(voice: Voice) -> Cells {
    let unit = [("unit", Arg::Said(Said::words(voice.units.short())))];
    let column = |key| voice.say(key, &unit).to_string();
    [
        "#".to_owned(),
        column("options-teams"),
        column("options-spacing"),
        column("options-rope"),
        column("options-needs"),
        column("options-mass"),
        column("options-left"),
        column("options-help"),
        column("options-coil"),
        column("column-verdict"),
    ]
}

fn row(way: &Way, voice: Voice) -> Cells {
    [
        way.way.to_string(),
        joined(way, |t| t.people.to_string()),
        spacings(way, voice),
        joined(way, |t| match t.rope_m {
            0.0 => "–".to_owned(),
            m => voice.number(m, Round::Down),
        }),
        needs(way, voice),
        way::mass(way, voice),
        way.left_to_hold.to_string(),
        way::help(way, voice).to_string(),
        way::coil(way, voice),
        format!(
            "{} {}",
            sentence::verdict(way.verdict, voice),
            style::sign(way.verdict)
        ),
    ]
}

fn joined(way: &Way, of: impl Fn(&crate::plan::options::WayTeam) -> String) -> String {
    way.teams.iter().map(of).collect::<Vec<_>>().join("+")
}

fn needs(way: &Way, voice: Voice) -> String {
    joined(way, |t| way::needed(t, voice))
}

/// `12–14.5/10`: those of each team.
fn spacings(way: &Way, voice: Voice) -> String {
    let of = |t| way::spacing(t, voice);
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

/// In what the way differs, and what it asks for that not every way does.
fn below(out: &mut String, way: &Way, of: &Options, told: &[Said], folded: bool, look: Look) {
    let voice = look.voice;
    let mut says = Vec::new();
    if folded {
        let args = [
            ("spacing", Arg::Said(Said::figure(spacings(way, voice)))),
            ("needs", Arg::Said(Said::figure(needs(way, voice)))),
            ("unit", Arg::Said(Said::words(voice.units.short()))),
        ];
        says.push(voice.say("options-folded", &args));
    }
    says.extend(way::differs(way, of.ways.len(), voice));
    says.extend(way::walked_besides(way, told, voice));
    bullet(
        out,
        "     ",
        &Said::join(says, "; ").to_string(),
        look.width,
    );
    let cords = way.cords.iter().map(|named| rope(named, voice));
    let cords = Said::join(cords, ", ");
    if !cords.is_empty() {
        let args = [("ropes", Arg::Said(cords))];
        let says = voice.say("options-cord", &args).to_string();
        bullet(out, "     ", &says, look.width);
    }
    for member in way.trip.iter().flat_map(way_trip::members) {
        let member = [("member", Arg::Figure(member))];
        let says = voice.say("options-trip", &member).to_string();
        bullet(out, "     ", &says, look.width);
    }
}
