//! What is held in the hand: the field table, and who has what on them.

use maud::{Markup, html};

use super::markup::{column, spans, word};
use crate::{
    plan::{
        field::{Field, FieldLimit, FieldRow, FieldSetUp, RowOtherwise},
        gear::GearRow,
    },
    say::{arg::Arg, field, gear, name::person, round::Round, span::Said, voice::Voice},
    write::json::number,
};

/// One table for each rope team and ground.
pub(super) fn table(field: &Field, voice: Voice) -> Markup {
    let angle = Arg::Degrees(field.along_below_deg, 0, Round::Nearest);
    html! {
        div class="field-tables" { @for limit in &field.limits { (one(field, limit, voice)) } }
        p class="fine" {
            @for askew in &field.askew { (spans(&field::askew(askew, voice))) " " }
            (spans(&voice.say("field-square", &[("angle", angle)])))
        }
    }
}

fn one(field: &Field, limit: &FieldLimit, voice: Voice) -> Markup {
    let short = voice.units.short();
    let of_limit = |row: &&FieldRow| (row.team, row.ground) == (limit.team, limit.ground);
    let rows = field.rows.iter().filter(of_limit);
    html! {
        table class="field" {
            caption { (spans(&field::limit(limit, field.teams(), voice).capital())) }
            thead { tr {
                th scope="col" class="n" { (column("report-gap", short, voice)) }
                th scope="col" class="n" { (column("report-spacing", short, voice)) }
                th scope="col" class="n" { (word("report-knots", voice)) }
                th scope="col" class="n" { (column("report-coils", short, voice)) }
                th scope="col" class="n" { (column("report-rope", short, voice)) }
                th scope="col" { (word("report-fits", voice)) }
            } }
            tbody { @for row in rows { (line(row, limit, voice)) } }
        }
    }
}

fn line(row: &FieldRow, limit: &FieldLimit, voice: Voice) -> Markup {
    let length = |m| voice.number(m, Round::Up);
    html! {
        tr data-field-gap-m=(number(row.gap_m)) data-field-team=(row.team) {
            th scope="row" class="n" { (voice.number(row.gap_m, Round::Nearest)) }
            @match &row.set_up {
                Some(set_up) => {
                    td class="n" { (length(set_up.spacing_m)) }
                    td class="n" { (set_up.knots) }
                    td class="n" { (length(set_up.coil_m)) }
                    td class="n" { (length(set_up.rope_m)) }
                    td { (spans(&fits(row, set_up, limit, voice))) }
                }
                None => { td colspan="5" { (spans(&voice.say("field-no-set-up", &[]))) } }
            }
        }
    }
}

/// `2 over one gap · rope is enough`: what may kill before what fits.
fn fits(row: &FieldRow, set_up: &FieldSetUp, limit: &FieldLimit, voice: Voice) -> Said {
    let fits = match row.fits {
        Some(true) => Some(voice.say("field-fits", &[])),
        Some(false) => Some(match &row.otherwise {
            Some(tied) => fits_otherwise(tied, limit, voice),
            None => voice.say("field-fits-not", &[]),
        }),
        None => None,
    };
    let over = (set_up.over_one_gap > 1).then(|| {
        let over = ("over", Arg::Count(set_up.over_one_gap));
        voice.say("field-two-over", &[over])
    });
    Said::join(over.into_iter().chain(fits), " · ")
}

/// `rope too short; 12 m apart it is enough`, and which of the ways named above that is.
fn fits_otherwise(tied: &RowOtherwise, limit: &FieldLimit, voice: Voice) -> Said {
    let ways = &limit.otherwise;
    let way = tied.way.checked_sub(1).and_then(|at| ways.get(at));
    let args = [
        ("spacing", Arg::Needed(tied.spacing_m)),
        (
            "tied",
            Arg::yes(way.is_some_and(|way| !way.changes.is_empty())),
        ),
        ("several", Arg::yes(ways.len() > 1)),
        ("way", Arg::Count(tied.way)),
    ];
    voice.say("field-fits-otherwise", &args)
}

/// Who has what on them; those who have the same stand together.
pub(super) fn gear(all: &[GearRow], voice: Voice) -> Markup {
    html! {
        div class="gear" {
            @for (who, rows) in alike(all) {
                div {
                    h3 { (spans(&Said::join(who.iter().map(|row| person(&row.person, voice)), ", "))) }
                    ul { @for row in rows {
                        li data-gear=(row.what.as_str()) data-count=(row.count) { (spans(&gear::row(row, voice))) }
                    } }
                }
            }
        }
        p class="fine" { (word("gear-fine", voice)) }
    }
}

/// The lists that differ, each with one row of everybody who has it.
fn alike(all: &[GearRow]) -> Vec<(Vec<&GearRow>, &[GearRow])> {
    let mut lists: Vec<(Vec<&GearRow>, &[GearRow])> = Vec::new();
    let things = |rows: &[GearRow]| -> Vec<_> {
        let thing = |row: &GearRow| (row.what, row.purpose, row.system, row.count);
        rows.iter().map(thing).collect()
    };
    for rows in all.chunk_by(|a, b| a.person.number == b.person.number) {
        match lists
            .iter_mut()
            .find(|(_, known)| things(known) == things(rows))
        {
            Some((who, _)) => who.extend(rows.first()),
            None => lists.push((rows.first().into_iter().collect(), rows)),
        }
    }
    lists
}
