//! Whether the first side has room for all that belongs on it; if not, the second follows where the first ends.

use crate::write::{
    parts::told::{OfLevel, ToldHere},
    sheet::Sheet,
};

/// Signs in a line of the first side, and lines on it, printed as small as may be, and a step larger. Our judgement: a little
/// less than were counted on paper.
const SIGNS: usize = 88;
const LINES: usize = 57;
const LARGE: usize = 47;
/// Lines that the head, titles and the head of the table take.
const HEAD: usize = 14;

/// How much room there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Room {
    /// Enough to print it larger.
    Large,
    /// Enough.
    Small,
    /// Not enough.
    None,
}

impl Room {
    /// For the style sheet.
    pub(super) fn class(self) -> &'static str {
        match self {
            Self::Large => "large",
            Self::Small => "small",
            Self::None => "flows",
        }
    }
}

/// By the length of what is told; fonts differ, so it is an estimate, and nothing is cut where it is wrong.
pub(super) fn room(sheet: &Sheet<'_>, told: &[OfLevel]) -> Room {
    match lines(sheet, told) {
        lines if lines <= LARGE => Room::Large,
        lines if lines <= LINES => Room::Small,
        _ => Room::None,
    }
}

fn lines(sheet: &Sheet<'_>, levels: &[OfLevel]) -> usize {
    let plan = sheet.plan;
    let of_entry = |entry: &ToldHere| {
        let cure = entry.cure.as_ref().map_or(0, |cure| signs(cure) + 3);
        (signs(&entry.place) + 1 + signs(&entry.says) + cure).div_ceil(SIGNS)
    };
    // Cures that several share are printed once; that leaves some room.
    let told = levels.iter().flat_map(|level| &level.entries).map(of_entry);
    let legs = plan.legs.iter().map(|leg| 1 + leg.teams.len());
    let stages = plan.route.stages.len();
    HEAD + 2 * levels.len() + told.sum::<usize>() + legs.sum::<usize>() + 2 * stages
}

fn signs(said: &crate::say::span::Said) -> usize {
    said.spans()
        .iter()
        .map(|span| span.text().chars().count())
        .sum()
}
