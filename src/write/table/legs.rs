//! The legs: each row stands where its leg begins, so the rows are the places of the rope too.

use std::collections::BTreeSet;

use crate::{
    plan::{
        leg::{Leg, Verdict},
        why::SpacingWhy,
    },
    say::{
        arg::Arg,
        finding, plain,
        round::Round,
        spacing::{spacing_why, spacing_why_means},
        span::Said,
        units::Units,
        voice::Voice,
    },
    write::{
        parts::{
            change::{ChangeKind, ChangePoint, changes},
            paragraph::bullet,
            row::{self, LegRow, TeamRow},
            sentence, style,
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
    let zone = grid_zone(&changes);
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
    let legend = voice.say("page-legend", &[]).to_string();
    bullet(&mut out.text, "", &legend, width);
    bullet(&mut out.text, "", &whys(&sheet.plan.legs, voice), width);
}

/// Which zones are met where, for where they have no column.
fn zones(legs: &[Leg], voice: Voice) -> String {
    let met = legs.iter().filter(|leg| !leg.zones.is_empty());
    let of_leg = met.map(|leg| {
        let zones = Arg::Figure(short_zones(&leg.zones));
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

/// The zone of the grid in which all changes lie: it stands above them once.
fn grid_zone<'c>(changes: &'c [ChangePoint<'_>]) -> Option<&'c str> {
    let zone = |change: &'c ChangePoint<'_>| Some(change.utm.as_deref()?.split_once(' ')?.0);
    let first = zone(changes.first()?)?;
    let all = changes.iter().all(|change| zone(change) == Some(first));
    all.then_some(first)
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
        let column = |key: &str, unit: &[(&str, Arg<'_>)]| voice.say(key, unit).to_string();
        let grid = column("column-grid", &[]);
        let cells = [
            column("column-leg", &[]),
            String::new(),
            column("column-clock", &[]),
            column("column-unit", &long),
            column("column-high", &[]),
            self.zone
                .map_or(grid.clone(), |zone| format!("{grid} {zone}")),
            column("column-zones", &[]),
            column("column-gap", &short),
            column("column-apart", &short),
            column("column-rope", &short),
            column("column-verdict", &[]),
        ];
        Row {
            cells,
            ..Row::default()
        }
    }

    /// One for each leg, and one for each change at which none begins.
    fn all(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        // The rope comes off where the leg before ended.
        let mut ended: Option<&ChangePoint<'_>> = None;
        for (leg, next) in self.sheet.plan.legs.iter().zip(self.nexts()) {
            let here = || self.changes.iter().filter(|c| c.leg.leg == leg.leg);
            let up = here().find(|c| c.kind == ChangeKind::RopeUp);
            rows.push(self.leg(leg, up.or(ended.take())));
            for change in here().filter(|c| c.kind != ChangeKind::RopeUp) {
                let goes_on = next.is_some_and(|next| next.stage == leg.stage && !next.roped);
                if leg.roped && goes_on {
                    ended = Some(change);
                } else {
                    rows.push(self.change(change));
                }
            }
        }
        rows
    }

    fn nexts(&self) -> impl Iterator<Item = Option<&Leg>> {
        let legs = &self.sheet.plan.legs;
        legs.iter().skip(1).map(Some).chain([None])
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
        cells[GRID] = change.map(|c| self.grid(c)).unwrap_or_default();
        cells[ZONES] = short_zones(shown.zones);
        cells[GAP].clone_from(&shown.gap);
        cells[APART] = each(teams.clone().map(|team| apart(team, voice)));
        cells[ROPE] = each(teams.map(TeamRow::rope));
        cells[VERDICT] = word(leg, voice);
        Row {
            above: self.stage(leg),
            cells,
            verdict: Some(leg.verdict),
            done: None,
            below: unroped(leg, change, voice).into_iter().collect(),
            setups: [false, true].map(|gap| folded(&shown, gap, voice)),
        }
    }

    /// A change at which no leg begins.
    fn change(&self, change: &ChangePoint<'_>) -> Row {
        let mut cells: [String; COLUMNS] = Default::default();
        cells[LETTER] = change.letter();
        cells[2] = change.clock.map(|c| c.to_string()).unwrap_or_default();
        let units = self.voice.units;
        cells[3] = self.voice.chainage(change.at_m, change.kind.round());
        cells[4] = high(change.height_m, units);
        cells[GRID] = self.grid(change);
        Row {
            cells,
            done: Some(change.kind.says(self.voice).to_string()),
            ..Row::default()
        }
    }

    /// Where it is in the grid, without the zone that stands above; in degrees where there is no grid.
    fn grid(&self, change: &ChangePoint<'_>) -> String {
        match (&change.utm, self.zone) {
            (Some(utm), Some(zone)) => utm.trim_start_matches(zone).trim_start().to_owned(),
            (Some(utm), None) => utm.clone(),
            (None, _) => change.degrees.clone(),
        }
    }

    fn stages(&self) -> bool {
        self.sheet.plan.route.stages.len() > 1
    }

    /// `Stage 2 "Day two": 8.20 km`, above its first leg.
    fn stage(&self, leg: &Leg) -> Option<String> {
        let (legs, stages) = (&self.sheet.plan.legs, &self.sheet.plan.route.stages);
        let first = legs.iter().find(|other| other.stage == leg.stage)?;
        let stage = stages.iter().find(|stage| stage.stage == leg.stage)?;
        if !self.stages() || first.leg != leg.leg {
            return None;
        }
        let named = finding::stage(stage.stage, stage.name.as_deref(), self.voice);
        let args = [
            ("stage", Arg::Said(named.capital())),
            ("length", Arg::Walked(stage.length_m)),
        ];
        let told = self.voice.say("page-stage", &args);
        Some(told.map_names(plain::line).to_string())
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

/// Said where a leg without a rope wants a look, or where the rope comes off by the leader's word.
fn unroped(leg: &Leg, change: Option<&ChangePoint<'_>>, voice: Voice) -> Option<String> {
    let by_word = change.filter(|c| c.kind == ChangeKind::OffByWord);
    match by_word {
        Some(change) => Some(change.kind.says(voice).to_string()),
        None if leg.roped || leg.verdict == Verdict::Unroped => None,
        None => Some(sentence::verdict(Verdict::Unroped, voice).to_string()),
    }
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

/// Zone numbers, the many counted: `1 2 3 4 +96`.
fn short_zones(zones: &[usize]) -> String {
    const NAMED: usize = 4;
    let numbers = |zones: &[usize]| {
        let numbers: Vec<String> = zones.iter().map(usize::to_string).collect();
        numbers.join(" ")
    };
    match zones.get(..NAMED) {
        Some(named) if zones.len() > NAMED + 1 => {
            format!("{} +{}", numbers(named), zones.len() - NAMED)
        }
        _ => numbers(zones),
    }
}
