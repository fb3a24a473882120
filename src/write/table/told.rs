//! What stops, what is outside, what to look at, in lines of the page.

use unicode_width::UnicodeWidthStr;

use crate::write::{
    parts::{
        paragraph::{bullet, label_column, labelled},
        slopes::avalanche_ground,
        style,
        told::{ToldHere, levels},
    },
    sheet::Sheet,
};

/// Widest place that stands in a column of its own. Our judgement.
const PLACE: usize = 15;

/// What stops first.
pub(super) fn told(out: &mut String, sheet: &Sheet<'_>) {
    let width = sheet.look.width;
    for level in levels(sheet) {
        out.push('\n');
        let sign = format!("{} ", style::sign(level.word));
        bullet(out, &sign, &level.title.to_string(), width);
        let lines: Vec<Line> = level.entries.iter().map(Line::of).collect();
        print(out, &lines, width);
    }
    if let Some(steep) = avalanche_ground(sheet.plan, sheet.look.voice) {
        out.push('\n');
        bullet(out, "! ", &steep.to_string(), width);
    }
}

/// An entry as text.
struct Line {
    place: String,
    says: String,
    cure: Option<String>,
}

impl Line {
    fn of(entry: &ToldHere) -> Self {
        Self {
            place: entry.place.to_string(),
            says: entry.says.to_string(),
            cure: entry.cure.as_ref().map(ToString::to_string),
        }
    }
}

/// Places in a column where they are short; the cure on the same line where there is room, and once for all that share it.
fn print(out: &mut String, entries: &[Line], width: usize) {
    let places = entries.iter().map(|entry| entry.place.as_str());
    let column = label_column(places, PLACE, width);
    for (i, entry) in entries.iter().enumerate() {
        let sign = labelled(out, &entry.place, column, width);
        let says = &entry.says;
        let shared = entries
            .get(i + 1)
            .is_some_and(|next| next.cure == entry.cure);
        let Some(cure) = entry.cure.as_ref().filter(|_| !shared) else {
            bullet(out, &sign, says, width);
            continue;
        };
        let whole = format!("{says} → {cure}");
        if sign.width() + whole.width() <= width {
            bullet(out, &sign, &whole, width);
        } else {
            bullet(out, &sign, says, width);
            let arrow = format!("{}→ ", " ".repeat(sign.width()));
            bullet(out, &arrow, cure, width);
        }
    }
}
