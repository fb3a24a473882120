//! A message: a few short lines a leg, for a phone.
//!
//! The lines of the legs are plain ASCII and at most 160 characters a leg, one short message
//! `[from memory: GSM 03.38; a sign beyond its alphabet cuts the message to 70]`. Where more has to be said
//! the message says less of each team, and never a part of a number.

use crate::{
    fault::Level,
    plan::{
        leg::{Leg, TeamSetup, Verdict},
        why::CarryWhy,
    },
    say::{arg::Arg, plain, round::Round, setup::too_short, span::Said, voice::Voice},
    write::{
        parts::{
            clock,
            row::{self, LegRow, TeamRow},
            sentence,
        },
        sheet::Sheet,
    },
};

/// Most characters of a leg.
pub const MOST: usize = 160;
/// Most characters of a route's name in the head line. Our judgement.
const NAME_MOST: usize = 60;

/// The message: a head line, a block for each leg, what to carry and how to read it.
#[must_use]
pub fn message(sheet: &Sheet<'_>) -> String {
    let voice = sheet.look.voice;
    let mut blocks = vec![head(sheet, voice)];
    blocks.extend(sheet.plan.legs.iter().map(|l| leg(l, voice)));
    blocks.extend(clock(sheet, voice));
    blocks.push(carry(sheet, voice));
    blocks.push(voice.say("message-read", &[]).to_string());
    blocks.join("\n\n") + "\n"
}

fn head(sheet: &Sheet<'_>, voice: Voice) -> String {
    let route = &sheet.plan.route;
    let name = match &route.name {
        Some(name) => Said::name(plain::short(name, NAME_MOST)),
        None => voice.say("route", &[]),
    };
    let args = [
        ("name", Arg::Said(name)),
        ("length", Arg::Walked(route.length_m)),
        ("legs", Arg::Count(sheet.plan.legs.len())),
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

fn carry(sheet: &Sheet<'_>, voice: Voice) -> String {
    if sheet.plan.carry.is_empty() {
        return voice.say("message-no-rope", &[]).to_string();
    }
    let ropes = sheet.plan.carry.iter();
    let ropes = ropes.map(|carry| {
        let rope = Said::figure(voice.units.length(carry.length_m, Round::Down));
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
    voice.say("message-carry", &[("ropes", ropes)]).to_string()
}

/// One leg within [`MOST`] characters, saying as much as fits.
#[must_use]
pub fn leg(leg: &Leg, voice: Voice) -> String {
    let row = LegRow::new(leg, voice);
    let found = reasons(leg);
    let all = found.len();
    let told = |(form, named): (Form, usize)| {
        ascii(&(form(leg, &row, voice) + &why(found.get(..named).unwrap_or(&found), all)))
    };
    let fewer = |form: Form| (1..=all.max(1)).rev().map(move |named| (form, named));
    let forms = [(fullest as Form, all), (full, all)].into_iter();
    let forms = forms.chain(fewer(terse)).chain(fewer(counted));
    let mut said = forms.chain([(least as Form, 1)]).map(told);
    said.find(|text| text.len() <= MOST).unwrap_or_else(|| {
        let report = voice.say("message-report", &[]);
        ascii(&format!("{}\n{report}", bare(leg, voice)))
    })
}

/// One way to say a leg.
type Form = fn(&Leg, &LegRow<'_>, Voice) -> String;

/// What the leg wants a look for, the gravest first, in the words of the codes.
fn reasons(leg: &Leg) -> Vec<(Level, String)> {
    let grave = leg.findings.iter().filter(|f| f.level() < Level::Note);
    let mut found: Vec<(Level, String)> = grave
        .map(|f| (f.level(), f.code().replace('-', " ")))
        .collect();
    found.sort_by_key(|(level, _)| *level);
    found.dedup();
    found
}

/// `! STOP fall held in none; OUTSIDE no setup; two over one gap, +2`: the rest of so many is counted.
fn why(named: &[(Level, String)], all: usize) -> String {
    let word = |level: Level| match level {
        Level::Error | Level::Stop => "STOP ",
        Level::Outside => "OUTSIDE ",
        Level::Look | Level::Note => "",
    };
    let of_level = |named: &[(Level, String)]| {
        let codes: Vec<&str> = named.iter().map(|(_, code)| code.as_str()).collect();
        let level = named.first().map_or("", |(level, _)| word(*level));
        format!("{level}{}", codes.join(", "))
    };
    let told: Vec<String> = named.chunk_by(|a, b| a.0 == b.0).map(of_level).collect();
    if told.is_empty() {
        return String::new();
    }
    let more = match all - named.len() {
        0 => String::new(),
        more => format!(", +{more}"),
    };
    format!("\n! {}{more}", told.join("; "))
}

/// The signs of the other outputs in ASCII; what has no twin is left out.
fn ascii(text: &str) -> String {
    text.chars()
        .filter_map(|c| match c {
            '×' => Some('x'),
            '–' | '−' => Some('-'),
            c => c.is_ascii().then_some(c),
        })
        .collect()
}

/// `L2 0.98-1.44 km LOOK`: the line that every form begins with.
fn bare(leg: &Leg, voice: Voice) -> String {
    let roped = match (leg.roped, leg.verdict) {
        (true, _) => "yes",
        (false, Verdict::Unroped) => "plain",
        (false, _) => "no",
    };
    let args = [
        ("leg", Arg::Count(leg.leg)),
        ("span", row::span(leg)),
        ("roped", Arg::Word(roped)),
        ("verdict", Arg::Said(word(leg, voice))),
    ];
    voice.say("message-leg", &args).to_string()
}

/// The word, and where it stops the team on a part of the leg only.
fn word(leg: &Leg, voice: Voice) -> Said {
    let word = sentence::verdict(leg.verdict, voice);
    let grave = leg.verdict >= Verdict::Outside;
    match sentence::part_of_word(leg, voice).filter(|_| grave) {
        Some(at) => word.then(Said::from(" ")).then(&at),
        None => word,
    }
}

/// With the height at which the rope is put on.
fn fullest(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> String {
    let height = leg.start_height_m.map(|m| ("height", Arg::Whole(m)));
    whole(leg, row, height, voice)
}

fn full(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> String {
    whole(leg, row, None, voice)
}

fn whole(leg: &Leg, row: &LegRow<'_>, height: Option<(&str, Arg<'_>)>, voice: Voice) -> String {
    let mut lines = vec![bare(leg, voice)];
    let unit = || ("unit", Arg::Said(Said::words(voice.units.short())));
    let figure = |text: &str| Arg::Said(Said::figure(text));
    lines.extend(teams(row).into_iter().map(|(who, team)| {
        let args = [
            ("spacing", figure(&team.spacing)),
            ("knots", figure(&team.knots)),
            ("coils", figure(&team.coils)),
            ("rope", figure(&team.rope())),
            unit(),
        ];
        format!("{who}{}", voice.say("message-team", &args))
    }));
    lines.extend(gap(row, voice));
    lines.extend(up(leg, height, voice));
    lines.join("\n")
}

/// `gap 15 (17.4) m`; nothing where nobody gave one.
fn gap(row: &LegRow<'_>, voice: Voice) -> Option<String> {
    let unit = ("unit", Arg::Said(Said::words(voice.units.short())));
    let args = [("gap", Arg::Said(Said::figure(&row.gap))), unit];
    (!row.gap.is_empty()).then(|| voice.say("message-gap", &args).to_string())
}

/// Where the team ropes up: `up 66.50440 2.00000`.
fn up(leg: &Leg, height: Option<(&str, Arg<'_>)>, voice: Voice) -> Option<String> {
    let place = format!("{:.5} {:.5}", leg.start[1], leg.start[0]);
    let place = ("place", Arg::Said(Said::figure(&place)));
    let up = || match height {
        Some(height) => voice.say("message-up-height", &[place, height]),
        None => voice.say("message-up", &[place]),
    };
    leg.roped.then(|| up().to_string())
}

/// Gap and place on one line.
fn gap_and_place(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> Option<String> {
    let all: Vec<String> = gap(row, voice)
        .into_iter()
        .chain(up(leg, None, voice))
        .collect();
    (!all.is_empty()).then(|| all.join(", "))
}

fn terse(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> String {
    let mut lines = vec![bare(leg, voice)];
    let said = teams(row).into_iter().map(|(who, team)| {
        let coil = match team.setup.coil_carried_m {
            coil_m if coil_m > 0.0 => {
                let coil = ("coil", Arg::There(coil_m));
                voice.say("message-coils", &[coil])
            }
            _ => voice.say("coils-none", &[]),
        };
        let figure = |text: &str| Arg::Said(Said::figure(text));
        let args = [
            ("spacing", figure(&team.spacing)),
            ("knots", Arg::Count(team.setup.knots.count)),
            ("coils", Arg::Said(coil)),
            ("rope", figure(&team.needed)),
            ("unit", Arg::Said(Said::words(voice.units.short()))),
        ];
        format!("{who}{}", voice.say("message-team-terse", &args))
    });
    lines.extend(said);
    lines.extend(gap_and_place(leg, row, voice));
    lines.join("\n")
}

/// Many different teams: how they differ, where the rest stands, the gap and the place.
fn counted(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> String {
    let lines = [least(leg, row, voice)].into_iter();
    let lines: Vec<String> = lines.chain(gap_and_place(leg, row, voice)).collect();
    lines.join("\n")
}

/// The same without gap and place.
fn least(leg: &Leg, row: &LegRow<'_>, voice: Voice) -> String {
    let needed_m = leg.teams.iter().map(|t| t.ledger.total_m);
    let args = [
        ("teams", Arg::Count(row.teams.len())),
        ("rope", Arg::Needed(needed_m.fold(0.0, f64::max))),
    ];
    format!(
        "{}\n{}",
        bare(leg, voice),
        voice.say("message-teams", &args)
    )
}

/// Teams with the same set-up said once: `T1 T3: `, and nothing in front of the only team.
fn teams<'r>(row: &'r LegRow<'_>) -> Vec<(String, &'r TeamRow<'r>)> {
    let mut groups: Vec<(Vec<usize>, &TeamRow<'_>)> = Vec::new();
    for team in &row.teams {
        match groups
            .iter_mut()
            .find(|(_, other)| alike(other.setup, team.setup))
        {
            Some((numbers, _)) => numbers.push(team.setup.team),
            None => groups.push((vec![team.setup.team], team)),
        }
    }
    let who = |numbers: &[usize]| {
        let named: Vec<String> = numbers.iter().map(|n| format!("T{n}")).collect();
        if row.teams.len() < 2 {
            String::new()
        } else {
            format!("{}: ", named.join(" "))
        }
    };
    groups
        .into_iter()
        .map(|(n, team)| (who(&n), team))
        .collect()
}

/// Whether the message tells the same of two teams.
fn alike(a: &TeamSetup, b: &TeamSetup) -> bool {
    let told = |t: &TeamSetup| {
        let rope_m = t.rope.as_ref().map(|r| r.length_m);
        let lengths = [t.spacing_m, t.coil_carried_m, t.ledger.total_m];
        (t.people, t.knots.count, t.knots.bite, rope_m, lengths)
    };
    told(a) == told(b)
}
