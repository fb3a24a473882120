//! The field table of the sheet: a column a gap, and under it what it is across where it is met askew, and the set-up for it.

use maud::{Markup, html};

use crate::{
    plan::{
        field::{Field, FieldAskew, FieldLimit, FieldRow, FieldSetUp, RowOtherwise},
        leg::Verdict,
    },
    say::{arg::Arg, field, round::Round, span::Said, voice::Voice},
    write::{json::number, parts::style, report::markup::spans},
};

/// People over one gap that is wider than they walk apart, told above the table; where more can be over it they are counted.
const USUALLY_OVER: usize = 2;

/// The table; nothing without rows.
pub(super) fn field(field: &Field, voice: Voice) -> Markup {
    let angle = Arg::Degrees(field.along_below_deg, 0, Round::Nearest);
    let groups = groups(field);
    let gaps: Vec<f64> = groups.first().map_or(Vec::new(), Group::gaps);
    html! {
        section id="seen" aria-labelledby="seen-title" {
            h2 id="seen-title" { (voice.say("sheet-field", &[])) }
            table class="seen" {
                caption { (spans(&voice.say("sheet-field-caption", &[("angle", angle)]))) }
                (head(field, &gaps, voice))
                @for group in &groups { (body(group, field.teams(), gaps.len(), voice)) }
            }
        }
    }
}

/// The widths along the line of travel, and across where they are met askew: rounded down, so that nobody takes a wider one
/// for it.
fn head(field: &Field, gaps: &[f64], voice: Voice) -> Markup {
    let unit = [("unit", Arg::Said(Said::words(voice.units.short())))];
    let met = |askew: &FieldAskew| {
        let angle = Arg::Degrees(askew.met_deg, 0, Round::Nearest);
        voice.say("sheet-gap-across", &[("angle", angle)])
    };
    let crossed = field.askew.iter().filter(|askew| !askew.along);
    html! {
        thead {
            tr class="gaps" {
                th scope="col" { (voice.say("sheet-gap-along", &unit)) }
                @for gap_m in gaps { th scope="col" class="n" { (voice.number(*gap_m, Round::Nearest)) } }
            }
            @for askew in crossed {
                tr class="askew" {
                    th scope="row" { (spans(&met(askew))) }
                    @for gap_m in gaps { td class="n" { (voice.number(gap_m / askew.widths, Round::Down)) } }
                }
            }
        }
    }
}

/// Teams and grounds that are set up alike for every gap.
struct Group<'a> {
    limits: Vec<&'a FieldLimit>,
    rows: Vec<&'a FieldRow>,
}

impl Group<'_> {
    fn gaps(&self) -> Vec<f64> {
        self.rows.iter().map(|row| row.gap_m).collect()
    }

    fn holds(&self, rows: &[&FieldRow]) -> bool {
        let alike = |(a, b): (&&FieldRow, &&FieldRow)| {
            (a.gap_m, &a.set_up, a.fits, &a.otherwise) == (b.gap_m, &b.set_up, b.fits, &b.otherwise)
        };
        self.rows.len() == rows.len() && self.rows.iter().zip(rows).all(alike)
    }
}

fn groups(field: &Field) -> Vec<Group<'_>> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    for limit in &field.limits {
        let of_limit = |row: &&FieldRow| (row.team, row.ground) == (limit.team, limit.ground);
        let rows: Vec<&FieldRow> = field.rows.iter().filter(of_limit).collect();
        match groups.iter_mut().find(|group| group.holds(&rows)) {
            Some(group) => group.limits.push(limit),
            None => groups.push(Group {
                limits: vec![limit],
                rows,
            }),
        }
    }
    groups
}

fn body(group: &Group<'_>, teams: usize, gaps: usize, voice: Voice) -> Markup {
    let limits = group.limits.iter();
    let limits = limits.map(|limit| field::limit_in_short(limit, teams, voice).capital());
    let length = |m, side| voice.number(m, side);
    let line =
        |key: &str, of: &dyn Fn(&FieldSetUp) -> String| line(group, &voice.say(key, &[]), of);
    let set_ups = || group.rows.iter().filter_map(|row| row.set_up.as_ref());
    // Where the rope is too short for all of them nobody winds a coil for one.
    let fits = group.rows.iter().any(|row| row.fits != Some(false));
    let coiled = fits && set_ups().any(|s| s.coil_m > 0.0);
    html! {
        tbody {
            tr class="ground" { th scope="rowgroup" colspan=(gaps + 1) { (spans(&Said::join(limits, " · "))) } }
            (line("sheet-apart", &|s| length(s.spacing_m, Round::Up)))
            @if set_ups().any(|s| s.knots > 0) { (line("sheet-knots", &|s| s.knots.to_string())) }
            @if coiled { (line("sheet-coil", &|s| length(s.coil_m, Round::Up))) }
            (rope(group, voice))
            @if group.rows.iter().any(|row| row.otherwise.is_some()) { (otherwise(group, voice)) }
            @if set_ups().any(|s| s.over_one_gap > USUALLY_OVER) { (line("sheet-over", &|s| s.over_one_gap.to_string())) }
        }
    }
}

fn line(group: &Group<'_>, name: &Said, of: &dyn Fn(&FieldSetUp) -> String) -> Markup {
    html! {
        tr {
            th scope="row" { (name) }
            @for row in &group.rows {
                td class="n" data-seen-m=(number(row.gap_m)) {
                    @match &row.set_up { Some(set_up) => { (of(set_up)) } None => { "–" } }
                }
            }
        }
    }
}

/// How much rope it takes, with a sign where that is more than is carried.
fn rope(group: &Group<'_>, voice: Voice) -> Markup {
    html! {
        tr class="fits" {
            th scope="row" { (voice.say("sheet-rope", &[])) }
            @for row in &group.rows {
                td class="n" data-seen-m=(number(row.gap_m)) {
                    @match (&row.set_up, row.fits) {
                        (None, _) => { "–" }
                        (Some(set_up), Some(false)) => {
                            strong { (style::sign(Verdict::Outside)) " " (voice.number(set_up.rope_m, Round::Up)) }
                        }
                        (Some(set_up), _) => { (voice.number(set_up.rope_m, Round::Up)) }
                    }
                }
            }
        }
    }
}

/// How far apart the rope is long enough that is too short as is taught, tied as the line above says, and with which coil.
fn otherwise(group: &Group<'_>, voice: Voice) -> Markup {
    let tied = || group.rows.iter().filter_map(|row| row.otherwise.as_ref());
    let several = group.limits.iter().any(|limit| limit.otherwise.len() > 1);
    let apart = |tied: &RowOtherwise| {
        let apart = voice.number(tied.spacing_m, Round::Up);
        let way = several.then(|| format!(" ({})", tied.way));
        apart + &way.unwrap_or_default()
    };
    let coil = |tied: &RowOtherwise| voice.number(tied.coil_m, Round::Up);
    let cells = |name: &str, of: &dyn Fn(&RowOtherwise) -> String| {
        html! {
            tr {
                th scope="row" { (voice.say(name, &[])) }
                @for row in &group.rows {
                    td class="n" { strong { (row.otherwise.as_ref().map(of).unwrap_or_default()) } }
                }
            }
        }
    };
    html! {
        (cells("sheet-otherwise", &apart))
        @if tied().any(|tied| tied.coil_m > 0.0) { (cells("sheet-otherwise-coil", &coil)) }
    }
}
