//! The legs: each row stands where its leg begins, so the rows are the places of the rope too.

use std::collections::BTreeSet;

use crate::{
    plan::{
        leg::{Leg, Verdict},
        why::SpacingWhy,
    },
    say::{
        arg::Arg,
        round::Round,
        spacing::{spacing_why, spacing_why_means},
        span::Said,
        units::Units,
        voice::Voice,
    },
    trip::clock::Clock,
    write::{
        parts::{
            change::{ChangeKind, ChangePoint, changes},
            paragraph::bullet,
            row::{self, LegRow, TeamRow},
            sentence, style,
            walk::{self, Step, grid},
        },
        sheet::Sheet,
        table::{
            lines::{APART, COLUMNS, GAP, GRID, LETTER, ROPE, Row, VERDICT, ZONES, print},
            painted::Table,
        },
    },
};

/// The rows, and how to read them.
pub(super) fn legs(out: &mut Table, sheet: &Sheet<'_>) {
    let (voice, width) = (sheet.look.voice, sheet.look.width);
    let changes = changes(sheet);
    let zone = walk::grid_zone(&changes);
    let rows = Rows {
        sheet,
        changes: &changes,
        zone,
        voice,
    };
    let (head, rows) = (rows.head(), rows.all());
    out.text.push('\n');
    let left_out = print(out, &head, &rows, width);
    if changes.is_empty() {
        return;
    }
    if left_out.contains(&ZONES) {
        bullet(&mut out.text, "", &zones(&sheet.plan.legs, voice), width);
    }
    bullet(&mut out.text, "", &legend(sheet, &changes), width);
    let whys = whys(&sheet.plan.legs, voice);
    if !whys.is_empty() {
        bullet(&mut out.text, "", &whys, width);
    }
}

/// How to read letters and cells.
fn legend(sheet: &Sheet<'_>, changes: &[ChangePoint<'_>]) -> String {
    let voice = sheet.look.voice;
    let by_word = |change: &ChangePoint<'_>| change.kind == ChangeKind::OntoIce;
    let inside = |leg: &Leg| leg.verdict == Verdict::Inside;
    let words = changes.iter().filter(|change| by_word(change)).count();
    let args = [
        ("drawn", Arg::yes(sheet.plan.knows_drawn_ice_only())),
        ("inside", Arg::yes(sheet.plan.legs.iter().any(inside))),
        ("roped", Arg::yes(words < changes.len())),
        ("word", Arg::yes(words > 0)),
    ];
    voice.say("page-legend", &args).to_string()
}

/// Which zones are met where, for where they have no column.
fn zones(legs: &[Leg], voice: Voice) -> String {
    let met = legs.iter().filter(|leg| !leg.zones.is_empty());
    let of_leg = met.map(|leg| {
        let zones = Arg::Figure(walk::short_zones(&leg.zones));
        voice.say(
            "page-zones-of",
            &[("leg", Arg::Count(leg.leg)), ("zones", zones)],
        )
    });
    let all = Arg::Said(Said::join(of_leg, " · "));
    voice.say("page-zones", &[("zones", all)]).to_string()
}

/// What the words beside the spacings mean, as far as they stand there.
fn whys(legs: &[Leg], voice: Voice) -> String {
    let teams = legs.iter().flat_map(|leg| &leg.teams);
    let whys: BTreeSet<SpacingWhy> = teams.map(|setup| setup.spacing_why).collect();
    let told = whys.into_iter().map(|why| {
        let args = [
            ("word", Arg::Said(spacing_why(why, voice))),
            ("means", Arg::Said(spacing_why_means(why, voice))),
        ];
        voice.say("page-why", &args)
    });
    Said::join(told, " · ").to_string()
}

/// What the rows are made of.
struct Rows<'a> {
    sheet: &'a Sheet<'a>,
    changes: &'a [ChangePoint<'a>],
    zone: Option<&'a str>,
    voice: Voice,
}

impl Rows<'_> {
    fn head(&self) -> Row {
        let voice = self.voice;
        let unit = |unit: &'static str| [("unit", Arg::Said(Said::words(unit)))];
        let (short, long) = (unit(voice.units.short()), unit(voice.units.long()));
        let column = |key: &str, args: &[(&str, Arg<'_>)]| voice.say(key, args).to_string();
        let gap = row::gap_head(&self.sheet.plan.legs, voice).to_string();
        let grid = column("column-grid", &[]);
        let cells = [
            column("column-leg", &[]),
            String::new(),
            column("column-clock", &[]),
            column("column-unit", &long),
            column("column-high", &short),
            self.zone
                .map_or(grid.clone(), |zone| format!("{grid} {zone}")),
            column("column-zones", &[]),
            gap,
            column("column-apart", &short),
            column("column-rope", &short),
            column("column-verdict", &[]),
        ];
        Row {
            cells,
            ..Row::default()
        }
    }

    fn all(&self) -> Vec<Row> {
        let steps = walk::steps(self.sheet.plan, self.changes);
        let row = |step: &Step<'_, '_>| match *step {
            Step::Leg(leg, change) => self.leg(leg, change),
            Step::Change(change) => self.change(change),
            Step::End(leg) => self.end(leg),
        };
        steps.iter().map(row).collect()
    }

    /// A leg, with the change at which it begins.
    fn leg(&self, leg: &Leg, change: Option<&ChangePoint<'_>>) -> Row {
        let voice = self.voice;
        let shown = LegRow::new(leg, voice);
        let number = match self.stages() {
            true => format!("{}/{}", leg.stage, leg.leg),
            false => leg.leg.to_string(),
        };
        let [(begin_m, round), _] = row::ends(leg);
        let teams = shown.teams.iter();
        let mut cells: [String; COLUMNS] = Default::default();
        cells[0] = number;
        cells[LETTER] = change.map(ChangePoint::letter).unwrap_or_default();
        cells[2] = leg.start_clock.map(|c| c.to_string()).unwrap_or_default();
        cells[3] = voice.chainage(begin_m, round);
        cells[4] = high(leg.start_height_m, voice.units);
        cells[GRID] = change.map(|c| grid(c, self.zone)).unwrap_or_default();
        cells[ZONES] = walk::short_zones(shown.zones);
        cells[GAP].clone_from(&shown.gap);
        cells[APART] = each(teams.clone().map(|team| apart(team, voice)));
        cells[ROPE] = each(teams.map(TeamRow::rope));
        cells[VERDICT] = word(leg, voice);
        Row {
            above: walk::stage(leg, self.sheet.plan, voice).map(|told| told.to_string()),
            cells,
            verdict: Some(leg.verdict),
            done: None,
            below: walk::unroped(leg, change, voice)
                .map(|said| said.to_string())
                .into_iter()
                .collect(),
            setups: [false, true].map(|gap| folded(&shown, gap, voice)),
        }
    }

    /// A change at which no leg begins.
    fn change(&self, change: &ChangePoint<'_>) -> Row {
        let voice = self.voice;
        let km = voice.chainage(change.at_m, change.kind.round());
        let mut row = self.done(change.clock, km, change.height_m, &change.kind.says(voice));
        row.cells[LETTER] = change.letter();
        row.cells[GRID] = grid(change, self.zone);
        row
    }

    /// Where a stage ends, when and how high.
    fn end(&self, leg: &Leg) -> Row {
        let km = self.voice.chainage(leg.end_m, Round::Nearest);
        let says = walk::end(self.sheet.plan, self.voice);
        self.done(leg.end_clock, km, leg.end_height_m, &says)
    }

    /// A row with which no leg begins.
    fn done(&self, clock: Option<Clock>, km: String, height_m: Option<f64>, says: &Said) -> Row {
        let mut cells: [String; COLUMNS] = Default::default();
        cells[2] = clock.map(|c| c.to_string()).unwrap_or_default();
        cells[3] = km;
        cells[4] = high(height_m, self.voice.units);
        Row {
            cells,
            done: Some(says.to_string()),
            ..Row::default()
        }
    }

    fn stages(&self) -> bool {
        self.sheet.plan.route.stages.len() > 1
    }
}

// --- cells ---

fn high(height_m: Option<f64>, units: Units) -> String {
    height_m.map(|m| units.whole(m)).unwrap_or_default()
}

/// One for each team; alike for all of them it stands once.
fn each(cells: impl Iterator<Item = String>) -> String {
    let mut cells: Vec<String> = cells.collect();
    cells.dedup();
    cells.join(" | ")
}

/// `18.5 gap`: how far apart, and why.
fn apart(team: &TeamRow<'_>, voice: Voice) -> String {
    let apart = voice.number(team.setup.spacing_m, Round::Up);
    let args = [
        ("apart", Arg::Figure(apart)),
        ("why", Arg::Said(spacing_why(team.setup.spacing_why, voice))),
    ];
    voice.say("page-apart", &args).to_string()
}

/// `look ?`: the word and its sign.
fn word(leg: &Leg, voice: Voice) -> String {
    let word = sentence::verdict(leg.verdict, voice);
    let word = format!("{word} {}", style::sign(leg.verdict));
    word.trim_end().to_owned()
}

/// The set-up of each team in words, with the gap that it is for.
fn folded(row: &LegRow<'_>, gap: bool, voice: Voice) -> Vec<String> {
    let unit = || ("unit", Arg::Said(Said::words(voice.units.short())));
    let gap = (gap && !row.gap.is_empty()).then(|| {
        let gap = ("gap", Arg::Figure(row.gap.clone()));
        voice.say("page-gap", &[gap, unit()])
    });
    let of_team = |team: &TeamRow<'_>| {
        let args = [
            ("teams", Arg::Count(row.teams.len())),
            ("team", Arg::Count(team.setup.team)),
            ("people", Arg::Count(team.setup.people)),
            ("spacing", Arg::Needed(team.setup.spacing_m)),
            ("why", Arg::Said(spacing_why(team.setup.spacing_why, voice))),
            ("gap", Arg::Said(gap.clone().unwrap_or_default())),
            ("rope", Arg::Figure(team.rope())),
            unit(),
        ];
        voice.say("page-folded", &args).to_string()
    };
    row.teams.iter().map(of_team).collect()
}
