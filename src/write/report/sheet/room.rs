//! Whether the first side has room for all that belongs on it; if not, the second follows where the first ends.

use crate::{
    plan::leg::Leg,
    write::{
        parts::{
            clock,
            falls_on::falls_on,
            slopes,
            told::{self, OfLevel, ToldHere},
        },
        report::same::tied_alike,
        sheet::Sheet,
    },
};

/// Signs in a line of the first side, also in bold, and lines on it, printed as small as may be, and a step larger. Our
/// judgement: a little less than were counted on paper.
const SIGNS: usize = 88;
const BOLD: usize = 80;
const LINES: usize = 57;
const LARGE: usize = 47;
/// Signs that the set-up of a team takes. Our judgement: a little more than most.
const TIED: usize = 40;
/// Signs in a line of the title. Our judgement.
const TITLE: usize = 48;
/// Lines that the head without title and hours, the titles and the head of the table take.
const HEAD: usize = 9;

/// Set-ups from which on the second side is crowded: they stand two by two on it. Our judgement.
const CROWDED: usize = 4;
/// Lines that whom to call takes, title and empty lines counted, and contacts in a line. Our judgement, as counted on paper.
const CALLS: usize = 4;
const CONTACTS: usize = 2;

/// What has room on the two sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Room {
    /// How large it is printed.
    pub(super) print: Print,
    /// Whether it is also told whom to call.
    pub(super) for_calls: bool,
    /// Whether the second side is crowded, and printed as small as may be.
    pub(super) crowded: bool,
}

/// How large the first side is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Print {
    /// A step larger.
    Large,
    /// As small as may be.
    Small,
    /// As small as may be, and the second side follows where the first ends.
    Flows,
}

impl Print {
    /// For the style sheet.
    pub(super) fn class(self) -> &'static str {
        match self {
            Self::Large => "large",
            Self::Small => "small",
            Self::Flows => "flows",
        }
    }
}

/// By the length of what is told; fonts differ, so it is an estimate, and nothing is cut where it is wrong. Whom to call
/// stands on the second side unless the first has room, and where the second is crowded the first is printed small for it.
pub(super) fn room(sheet: &Sheet<'_>, told: &[OfLevel]) -> Room {
    let lines = lines(sheet, told);
    let with_calls = lines + CALLS + sheet.emergency.len().div_ceil(CONTACTS);
    let crowded = tied_alike(&sheet.plan.legs).len() >= CROWDED;
    let (print, for_calls) = match (lines, with_calls) {
        (_, all) if all <= LINES && crowded => (Print::Small, true),
        (_, all) if all <= LARGE => (Print::Large, true),
        (lines, _) if lines <= LARGE => (Print::Large, false),
        (_, all) if all <= LINES => (Print::Small, true),
        (lines, _) if lines <= LINES => (Print::Small, false),
        _ => (Print::Flows, false),
    };
    Room {
        print,
        for_calls,
        crowded,
    }
}

fn lines(sheet: &Sheet<'_>, levels: &[OfLevel]) -> usize {
    let plan = sheet.plan;
    // What several say that share a cure stands in one paragraph, the cure once.
    let alike = |alike: &[ToldHere]| {
        let says = |entry: &ToldHere| signs(&entry.place) + 2 + signs(&entry.says);
        let cure = alike.first().and_then(|entry| entry.cure.as_ref());
        let cure = cure.map_or(0, |cure| signs(cure) + 3);
        (alike.iter().map(says).sum::<usize>() + cure).div_ceil(SIGNS)
    };
    let told = levels
        .iter()
        .flat_map(|level| told::alike(&level.entries))
        .map(alike);
    let tied = |leg: &Leg| (leg.teams.len() * TIED).div_ceil(SIGNS);
    let legs = plan.legs.iter().map(|leg| 1 + tied(leg));
    let stages = plan.route.stages.len();
    let steep = slopes::avalanche_ground(plan, sheet.look.voice);
    let steep = steep.map_or(0, |line| signs(&line).div_ceil(SIGNS));
    let hours = plan
        .clock
        .iter()
        .flat_map(|all| clock::head(all, sheet.look.voice));
    let width = |late: bool| if late { BOLD } else { SIGNS };
    let hours: usize = hours
        .map(|line| signs(&line.says).div_ceil(width(line.late)))
        .sum();
    let falls = falls_on(plan, sheet.look.voice).map_or(0, |line| signs(&line).div_ceil(SIGNS));
    // Each line of a long title is as high as two.
    let title = sheet.title().to_string().chars().count().div_ceil(TITLE);
    HEAD + 2 * title
        + hours
        + falls
        + steep
        + 2 * levels.len()
        + told.sum::<usize>()
        + legs.sum::<usize>()
        + 2 * stages
}

fn signs(said: &crate::say::span::Said) -> usize {
    said.spans()
        .iter()
        .map(|span| span.text().chars().count())
        .sum()
}
