//! A message: a few short lines a leg, for a phone; how it stands and the hours before the legs.
//!
//! The lines of the legs are plain ASCII and at most 160 characters a leg, one short message
//! `[from memory: GSM 03.38; a sign beyond its alphabet cuts the message to 70]`. Where more has to be said
//! reasons are left out first, then words; figures stay, and never a part of a number is told.

mod leg;
mod teams;

pub use leg::{leg, set_up, warned};

use crate::{
    fault::Level,
    plan::{finding::At, why::CarryWhy},
    say::{arg::Arg, carry::too_short, finding, plain, round::Round, span::Said, voice::Voice},
    write::{
        parts::{
            clock::{self, line},
            falls_on::falls_on,
            findings::first_words,
            packs::left_over,
            sentence::{of_inside, of_unroped},
            slopes::avalanche_ground,
        },
        sheet::Sheet,
    },
};

/// Most characters of a leg.
pub const MOST: usize = 160;
/// Most characters of a route's name in the head line, the first that leaves room for which legs stop. Our judgement.
const NAME_MOST: [usize; 3] = [60, 30, 12];

/// The message: a head line, the hours, a block for each leg, what to carry and how to read it.
#[must_use]
pub fn message(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let mut blocks = vec![head(sheet, voice)];
    blocks.extend(clock(sheet, voice));
    blocks.extend(begins(sheet, voice));
    blocks.extend(whole(sheet, voice));
    blocks.extend(
        sheet
            .plan
            .legs
            .iter()
            .map(|l| leg(l, &sheet.plan.zones, voice)),
    );
    let steep = avalanche_ground(sheet.plan, voice);
    blocks.extend(steep.map(|line| ascii(&line.to_string())));
    blocks.push(carry(sheet, voice));
    let read = [
        falls_on(sheet.plan, voice).map(|snow| snow.then(Said::from("."))),
        of_inside(sheet.plan, voice),
        of_unroped(sheet.plan, voice),
        Some(voice.say("message-read", &[])),
    ];
    let read = Said::join(read.into_iter().flatten(), "\n");
    blocks.push(ascii(&read.to_string()));
    blocks.join("\n\n") + "\n"
}

/// How far it is and which legs stop; the name is cut before them.
fn head(sheet: &Sheet<'_>, voice: Voice) -> String {
    let heads = NAME_MOST.map(|most| head_named(sheet, most, voice));
    let fits = |head: &&String| head.chars().count() <= MOST;
    let found = heads.iter().find(fits).or(heads.last());
    found.cloned().unwrap_or_default()
}

fn head_named(sheet: &Sheet<'_>, most: usize, voice: Voice) -> String {
    let route = &sheet.plan.route;
    let name = sheet.title().map_names(|name| plain::short(name, most));
    let args = [
        ("name", Arg::Said(name)),
        ("length", Arg::Walked(route.length_m)),
        ("legs", Arg::Count(sheet.plan.legs.len())),
        ("words", Arg::Said(first_words(sheet.plan, voice))),
    ];
    voice.say("message-head", &args).to_string()
}

/// The clock, a line for each thing; the leader's names are left out of what follows.
fn clock(sheet: &Sheet<'_>, voice: Voice) -> Option<String> {
    let clock = sheet.plan.clock.as_ref()?;
    let lines = clock::message(clock, voice);
    let text: Vec<String> = lines.iter().map(|line| ascii(&line.to_string())).collect();
    (!text.is_empty()).then(|| text.join("\n"))
}

/// When each leg begins, a line for each stage; a leg whose hour is not known is left out.
fn begins(sheet: &Sheet<'_>, voice: Voice) -> Option<String> {
    let stages = sheet.plan.route.stages.len();
    let of_stages = sheet.plan.legs.chunk_by(|a, b| a.stage == b.stage);
    let lines = of_stages.filter_map(|legs| {
        let hours = legs.iter().filter_map(|leg| {
            let args = [
                ("leg", Arg::Count(leg.leg)),
                ("hour", Arg::Figure(leg.start_clock?.to_string())),
            ];
            Some(voice.say("message-begins-leg", &args))
        });
        let hours = Said::join(hours, ", ");
        let stage = legs.first()?.stage;
        (!hours.is_empty()).then(|| {
            let args = [("hours", Arg::Said(hours))];
            let said = line::named(voice.say("message-begins", &args), stage, stages, voice);
            ascii(&said.capital().to_string())
        })
    });
    let lines: Vec<String> = lines.collect();
    (!lines.is_empty()).then(|| lines.join("\n"))
}

/// Things of the trip that are told before the rest is counted. Our judgement.
const TOLD: usize = 6;

/// What is to be looked at of the trip as a whole, a line each.
fn whole(sheet: &Sheet<'_>, voice: Voice) -> Option<String> {
    let stages = sheet.plan.route.stages.len();
    let findings = sheet.plan.findings.iter();
    let grave = findings.filter(|found| found.level() < Level::Note);
    let mut lines: Vec<String> = grave
        .map(|found| {
            let said = finding::short_with_cure(found, voice).map_names(plain::line);
            let said = match &found.at {
                At::Stage(place) => line::named(said, place.stage, stages, voice),
                _ => said,
            };
            ascii(&format!("! {}", said))
        })
        .collect();
    let more = lines.len().saturating_sub(TOLD);
    lines.truncate(TOLD);
    if more > 0 {
        let args = [("more", Arg::Count(more))];
        lines.push(ascii(&voice.say("message-more", &args).to_string()));
    }
    (!lines.is_empty()).then(|| lines.join("\n"))
}

fn carry(sheet: &Sheet<'_>, voice: Voice) -> String {
    if sheet.plan.carry.is_empty() {
        return voice.say("message-no-rope", &[]).to_string();
    }
    let ropes = sheet.plan.carry.iter();
    let ropes = ropes.map(|carry| {
        let rope = Said::figure(voice.length(carry.length_m, Round::Down));
        match carry.why {
            CarryWhy::LongestSetUp => rope,
            CarryWhy::TooShort | CarryWhy::LeftToAnother { .. } => {
                let short = too_short(carry, voice);
                let args = [("rope", Arg::Said(rope)), ("short", Arg::Said(short))];
                voice.say("message-carry-short", &args)
            }
        }
    });
    let ropes = Arg::Said(Said::join(ropes, " + "));
    let carried = voice.say("message-carry", &[("ropes", ropes)]);
    let all = [carried].into_iter().chain(left_over(sheet.plan, voice));
    ascii(&Said::join(all, "\n").map_names(plain::line).to_string())
}

/// The signs of the other outputs in ASCII, German letters as they are written where there are none; what has no twin is
/// left out.
fn ascii(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '×' => out.push('x'),
            '→' => out.push_str("->"),
            '–' | '−' => out.push('-'),
            'ä' => out.push_str("ae"),
            'ö' => out.push_str("oe"),
            'ü' => out.push_str("ue"),
            'Ä' => out.push_str("Ae"),
            'Ö' => out.push_str("Oe"),
            'Ü' => out.push_str("Ue"),
            'ß' => out.push_str("ss"),
            '°' => out.push_str(" deg"),
            c if c.is_ascii() => out.push(c),
            _ => {}
        }
    }
    out
}
