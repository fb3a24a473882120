//! The legs of the sheet, a row each, and a row for each change at which none begins.

use maud::{Markup, html};

use crate::{
    plan::{Plan, clock::PlanClock, leg::Leg},
    say::{arg::Arg, plain, round::Round, span::Said, voice::Voice},
    trip::clock::Clock,
    write::{
        json::number,
        parts::{
            change::{ChangePoint, changes},
            row::{self, LegRow, TeamRow},
            walk::{self, Step, grid},
        },
        report::{head::badge, markup::spans},
        sheet::Sheet,
    },
};

/// Signs of the names of zones beside a set-up. Our judgement.
const NAMES: usize = 44;

/// Columns that not every plan fills.
#[derive(Clone, Copy)]
struct Has {
    clock: bool,
    /// The same for the start that is early enough, where the planned one is too late; nobody who is under way starts anew.
    latest: bool,
    height: bool,
    ice: bool,
}

impl Has {
    fn of(plan: &Plan) -> Self {
        let legs = &plan.legs;
        let mut stages = plan.clock.iter().flat_map(PlanClock::stages);
        Self {
            latest: stages
                .any(|clock| clock.late_for_all_min().is_some() && clock.start_at.is_none()),
            clock: legs.iter().any(|leg| leg.start_clock.is_some()),
            height: legs.iter().any(|leg| leg.start_height_m.is_some()),
            ice: legs.iter().any(|leg| leg.roped),
        }
    }
}

/// What all rows are made with.
struct Walk<'a> {
    sheet: &'a Sheet<'a>,
    zone: Option<&'a str>,
    has: Has,
    /// How many columns there are.
    columns: usize,
    voice: Voice,
}

/// The table.
pub(super) fn legs(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let changes = changes(sheet);
    let (zone, has) = (walk::grid_zone(&changes), Has::of(sheet.plan));
    let titles = titles(sheet, zone, has);
    let walk = Walk {
        sheet,
        zone,
        has,
        columns: titles.len(),
        voice,
    };
    html! {
        section id="walk" aria-labelledby="walk-title" {
            h2 id="walk-title" { (voice.say("sheet-legs", &[])) }
            @if let Some(zone) = zone {
                p class="narrow fine" { (voice.say("sheet-grid", &[])) " " (zone) }
            }
            table class="walk" {
                caption { (voice.say("sheet-legs-caption", &[("late", Arg::yes(has.latest))])) }
                thead { tr { @for (title, class) in titles { th scope="col" class=(class) { (title) } } } }
                @for step in walk::steps(sheet.plan, &changes) {
                    @match step {
                        Step::Leg(leg, change) => { (walk.leg(leg, change)) }
                        Step::Change(change) => { (walk.change(change)) }
                        Step::End(leg) => { (walk.end(leg)) }
                    }
                }
            }
        }
    }
}

/// From when the hours of the latest start count: one start where there is one stage.
fn from_latest(sheet: &Sheet<'_>) -> Said {
    let mut starts = sheet.plan.clock.iter().flat_map(PlanClock::stages);
    let first = starts
        .next()
        .and_then(|clock| clock.as_planned.latest_start);
    let only = first.filter(|_| starts.next().is_none());
    let start = only.map(|start| start.to_string());
    let args = [
        ("one", Arg::yes(start.is_some())),
        ("start", Arg::Figure(start.unwrap_or_default())),
    ];
    sheet.look.voice.say("sheet-latest", &args)
}

/// The titles of the columns, each with the class of its cells.
fn titles(sheet: &Sheet<'_>, zone: Option<&str>, has: Has) -> Vec<(Said, &'static str)> {
    let voice = sheet.look.voice;
    let long = [("unit", Arg::Said(Said::words(voice.units.long())))];
    let short = [("unit", Arg::Said(Said::words(voice.units.short())))];
    let grid = voice.say("sheet-grid", &[]);
    let grid = match zone {
        Some(zone) => grid.then(Said::from(" ")).then(Said::words(zone)),
        None => grid,
    };
    let clock = has.clock.then(|| (voice.say("column-clock", &[]), "n"));
    let latest = has.latest.then(|| (from_latest(sheet), "n"));
    let high = has.height.then(|| (voice.say("sheet-high", &short), "n"));
    let ice = has.ice;
    let zones = ice.then(|| (voice.say("column-zones", &[]), ""));
    let gap = ice.then(|| (row::gap_head(&sheet.plan.legs, voice), "n"));
    let columns = [
        Some((voice.say("column-leg", &[]), "n")),
        Some((voice.say("sheet-at", &[]), "")),
        clock,
        latest,
        Some((voice.say("column-unit", &long), "n")),
        high,
        Some((grid, "")),
        zones,
        gap,
        Some((voice.say("column-verdict", &[]), "")),
    ];
    columns.into_iter().flatten().collect()
}

impl Walk<'_> {
    fn leg(&self, leg: &Leg, change: Option<&ChangePoint<'_>>) -> Markup {
        let (voice, shown) = (self.voice, LegRow::new(leg, self.voice));
        let [(begin_m, round), _] = row::ends(leg);
        let stages = self.sheet.plan.route.stages.len() > 1;
        let km = voice.chainage(begin_m, round);
        let lines = self.tied(&shown, leg, change);
        html! {
            tbody class={ "step " (leg.verdict.as_str()) } {
                @if let Some(stage) = walk::stage(leg, self.sheet.plan, voice) {
                    tr class="stage" { th scope="rowgroup" colspan=(self.columns) { (spans(&stage)) } }
                }
                tr data-step-leg=(leg.leg) data-from-m=(number(leg.start_m)) {
                    th scope="row" class="n" { @if stages { (leg.stage) "/" } (leg.leg) }
                    td class="letter" { (change.map(ChangePoint::letter).unwrap_or_default()) }
                    (self.passed(leg.stage, leg.start_clock, &km, leg.start_height_m))
                    td class="at" { (self.at(change)) }
                    @if self.has.ice { (self.ice(&shown)) }
                    td class="word" { (badge(leg.verdict, voice)) }
                }
                @for line in &lines { tr class="tied" { td {} td {} td colspan=(self.columns - 2) { (spans(line)) } } }
            }
        }
    }

    /// Where it is in the grid.
    fn at(&self, change: Option<&ChangePoint<'_>>) -> Markup {
        html! {
            @if let Some(change) = change {
                (grid(change, self.zone))
            }
        }
    }

    /// `4 5` and `20 (20.1)`; with word and unit where no title has them.
    fn ice(&self, row: &LegRow<'_>) -> Markup {
        let zones = [("met", Arg::Count(row.zones.len()))];
        let zones = self.voice.say("sheet-zones", &zones);
        let gap = self.voice.say("sheet-gap", &[]);
        html! {
            td class="gaps" {
                @if !row.zones.is_empty() { span class="narrow" { (zones) "\u{a0}" } (walk::short_zones(row.zones)) }
            }
            td class="n gaps" {
                @if !row.gap.is_empty() {
                    span class="narrow" { (gap) "\u{a0}" } (row.gap) (beside(self.voice.units.short()))
                }
            }
        }
    }

    /// When, how far on and how high.
    fn passed(
        &self,
        stage: usize,
        clock: Option<Clock>,
        km: &str,
        height_m: Option<f64>,
    ) -> Markup {
        let units = self.voice.units;
        let shown = |clock: Option<Clock>| clock.map(|c| c.to_string()).unwrap_or_default();
        html! {
            @if self.has.clock { td class="n" { (shown(clock)) } }
            @if self.has.latest { td class="n latest" { (shown(self.at_latest(stage, clock))) } }
            td class="n km" { (km) (beside(units.long())) }
            @if self.has.height {
                td class="n high" { @if let Some(m) = height_m { (units.whole(m)) (beside(units.short())) } }
            }
        }
    }

    /// The same hour for the latest start, where the planned one is too late: everything is earlier by as much.
    fn at_latest(&self, stage: usize, clock: Option<Clock>) -> Option<Clock> {
        let mut stages = self.sheet.plan.clock.iter().flat_map(PlanClock::stages);
        let late_min = stages
            .find(|clock| clock.stage == stage)?
            .late_for_all_min()?;
        clock.map(|clock| clock.after(-late_min))
    }

    /// A change at which no leg begins.
    fn change(&self, change: &ChangePoint<'_>) -> Markup {
        let km = self.voice.chainage(change.at_m, change.kind.round());
        let passed = self.passed(change.stage, change.clock, &km, change.height_m);
        self.done(Some(change), &passed, &change.kind.says(self.voice))
    }

    /// Where a stage ends.
    fn end(&self, leg: &Leg) -> Markup {
        let km = self.voice.chainage(leg.end_m, Round::Nearest);
        let passed = self.passed(leg.stage, leg.end_clock, &km, leg.end_height_m);
        self.done(None, &passed, &walk::end(self.sheet.plan, self.voice))
    }

    /// A row with which no leg begins.
    fn done(&self, change: Option<&ChangePoint<'_>>, passed: &Markup, says: &Said) -> Markup {
        html! {
            tbody class="step done" {
                tr {
                    td class="n" {}
                    td class="letter" { (change.map(ChangePoint::letter).unwrap_or_default()) }
                    (passed)
                    td class="at" { (self.at(change)) }
                    @if self.has.ice { td {} td {} }
                    td class="word" { (says) }
                }
            }
        }
    }

    /// What the leader calls the ice of a leg, as much as has room on the line.
    fn names(&self, leg: &Leg) -> Option<String> {
        let met = self
            .sheet
            .plan
            .zones
            .iter()
            .filter(|zone| leg.zones.contains(&zone.zone));
        let names: Vec<&str> = met.filter_map(|zone| zone.name.as_deref()).collect();
        (!names.is_empty()).then(|| plain::short(&names.join(", "), NAMES))
    }

    /// How each team is tied on which rope, alike for all of them once; then what is not done here.
    fn tied(&self, row: &LegRow<'_>, leg: &Leg, change: Option<&ChangePoint<'_>>) -> Vec<Said> {
        let mut alike: Vec<(Said, Vec<String>)> = Vec::new();
        for team in &row.teams {
            let (line, number) = (self.team(team), team.setup.team.to_string());
            match alike.iter_mut().find(|(known, _)| *known == line) {
                Some((_, teams)) => teams.push(number),
                None => alike.push((line, vec![number])),
            }
        }
        let one = alike.len() == 1;
        let lines = alike.into_iter().map(|(line, teams)| match one {
            true => line,
            false => self.of_teams(line, &teams),
        });
        let teams = Said::join(lines, "; ");
        let named = (row.teams.len() == 1).then(|| self.names(leg)).flatten();
        let tied = (!teams.is_empty()).then(|| match named {
            Some(names) => teams.then(Said::from(" · ")).then(Said::name(names)),
            None => teams,
        });
        let mut told: Vec<Said> = tied.into_iter().collect();
        told.extend(walk::unroped(leg, change, self.voice).map(Said::capital));
        told
    }

    fn of_teams(&self, setup: Said, teams: &[String]) -> Said {
        let args = [
            ("count", Arg::Count(teams.len())),
            ("teams", Arg::Figure(teams.join(", "))),
            ("setup", Arg::Said(setup)),
        ];
        self.voice.say("sheet-team", &args)
    }

    /// `3 people, 13 m apart · rope 42/60 m`.
    fn team(&self, team: &TeamRow<'_>) -> Said {
        let knots = match team.setup.knots.count {
            0 => String::new(),
            _ => format!(", {}", team.knots),
        };
        let unit = self.voice.units.short();
        let args = [
            ("setup", Arg::Figure(format!("{}{knots}", team.spacing))),
            ("rope", Arg::Figure(team.rope())),
            ("unit", Arg::Said(Said::words(unit))),
        ];
        self.voice.say("sheet-tied", &args)
    }
}

/// The unit beside a figure, where no title has it.
fn beside(unit: &str) -> Markup {
    html! { span class="narrow" { "\u{a0}" (unit) } }
}
