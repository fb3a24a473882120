//! Legs and zones in sentences: for popups, messages and people who cannot see the colours.

use crate::{
    plan::leg::{Leg, TeamSetup, Verdict},
    say::{arg::Arg, finding, name, plain, round::Round, span::Said, voice::Voice},
    trip::{
        clock::Clock,
        zone::{RopeWord, Surface, Zone},
    },
    write::parts::row::{self, TeamRow},
};

/// The word of a verdict.
#[must_use]
pub fn verdict(verdict: Verdict, voice: Voice) -> Said {
    let key = match verdict {
        Verdict::Unroped => "verdict-unroped",
        Verdict::Inside => "verdict-inside",
        Verdict::Look => "verdict-look",
        Verdict::Outside => "verdict-outside",
        Verdict::Stop => "verdict-stop",
    };
    voice.say(key, &[])
}

/// What a verdict means, in words that promise nothing.
#[must_use]
pub fn means(verdict: Verdict, voice: Voice) -> Said {
    let key = match verdict {
        Verdict::Unroped => "means-unroped",
        Verdict::Inside => "means-inside",
        Verdict::Look => "means-look",
        Verdict::Outside => "means-outside",
        Verdict::Stop => "means-stop",
    };
    voice.say(key, &[])
}

/// `Leg 2: 3 × 13 m, look`.
#[must_use]
pub fn leg_title(leg: &Leg, voice: Voice) -> Said {
    let number = ("leg", Arg::Count(leg.leg));
    let verdict = ("verdict", Arg::Said(verdict(leg.verdict, voice)));
    if leg.teams.is_empty() {
        return voice.say("leg-title-unroped", &[number, verdict]);
    }
    let spacing = |t: &TeamSetup| {
        let args = [
            ("people", Arg::Count(t.people)),
            ("spacing", Arg::Needed(t.spacing_m)),
        ];
        voice.say("team-spacing", &args)
    };
    let and = voice.say("and", &[]);
    let how = Said::join(leg.teams.iter().map(spacing), and);
    voice.say("leg-title", &[number, ("how", Arg::Said(how)), verdict])
}

/// The verdict, the set-up and what must be said, in sentences.
#[must_use]
pub fn leg_description(leg: &Leg, voice: Voice) -> Said {
    let line = [
        ("span", row::span(leg)),
        ("length", Arg::Whole(leg.length_m)),
        ("means", Arg::Said(means(leg.verdict, voice))),
    ];
    let mut says = vec![voice.say("leg-line", &line)];
    says.extend(
        leg.teams
            .iter()
            .map(|t| team_line(t, leg.teams.len(), voice)),
    );
    let stop = Said::from(".");
    says.extend(
        leg.findings
            .iter()
            .map(|f| finding::says(f, voice).capital().then(&stop)),
    );
    Said::join(says, " ").map_names(plain::line)
}

/// The same, and when it is walked between which heights.
#[must_use]
pub fn leg_told(leg: &Leg, voice: Voice) -> Said {
    let says = leg_description(leg, voice);
    Said::join([says].into_iter().chain(leg_when(leg, voice)), " ")
}

/// When a leg is walked and between which heights, in a sentence; nothing where neither is known.
#[must_use]
pub fn leg_when(leg: &Leg, voice: Voice) -> Option<Said> {
    let begin = spot(leg.start_clock, leg.start_height_m, voice)?;
    let end = spot(leg.end_clock, leg.end_height_m, voice)?;
    let args = [("begin", Arg::Said(begin)), ("end", Arg::Said(end))];
    Some(voice.say("leg-when", &args))
}

/// `06:08, height 1331 m`; nothing where neither is known.
#[must_use]
pub fn spot(clock: Option<Clock>, height_m: Option<f64>, voice: Voice) -> Option<Said> {
    let clock = clock.map(|clock| Said::figure(clock.to_string()));
    let height = height_m.map(|m| voice.say("change-height", &[("height", Arg::Whole(m))]));
    let known: Vec<Said> = clock.into_iter().chain(height).collect();
    (!known.is_empty()).then(|| Said::join(known, ", "))
}

fn team_line(setup: &TeamSetup, teams: usize, voice: Voice) -> Said {
    let (key, length_m) = match (&setup.rope, setup.sold_length_m) {
        (Some(rope), _) => ("team-rope-at-hand", rope.length_m),
        (None, Some(sold_m)) => ("team-rope-sold", sold_m),
        (None, None) => ("team-rope-none", 0.0),
    };
    let rope = voice.say(key, &[("length", Arg::There(length_m))]);
    let row = TeamRow::new(setup, voice);
    let args = [
        ("teams", Arg::Count(teams)),
        ("team", Arg::Count(setup.team)),
        ("setup", Arg::Said(Said::figure(row.setup()))),
        ("needed", Arg::Needed(setup.ledger.total_m)),
        ("rope", Arg::Said(rope)),
    ];
    voice.say("team-line", &args)
}

/// `zone 3 "Upper icefall": gaps up to 20 m`.
#[must_use]
pub fn zone_title(zone: &Zone, voice: Voice) -> Said {
    let args = [
        ("zone", Arg::Said(name::zone(&zone.into(), voice))),
        ("gap", Arg::Needed(zone.gap.max_m)),
    ];
    voice.say("zone-title", &args)
}

/// What is known of a zone, in a sentence.
#[must_use]
pub fn zone_description(zone: &Zone, voice: Voice) -> Said {
    let gaps = voice.say("zone-gaps", &[("gap", Arg::Needed(zone.gap.max_m))]);
    let assumed = zone
        .gap
        .assumed
        .then(|| voice.say("zone-width-assumed", &[]));
    let surface = match zone.surface {
        Surface::Snow => voice.say("zone-hidden", &[]),
        Surface::Bare => voice.say("zone-bare", &[]),
    };
    let snow = zone
        .snow_depth_m
        .map(|m| voice.say("zone-snow", &[("depth", Arg::There(m))]));
    let word = match zone.rope {
        RopeWord::Auto => None,
        RopeWord::Always => Some(voice.say("zone-always", &[])),
        RopeWord::Never => Some(voice.say("zone-never", &[])),
    };
    let says = [
        Some(gaps),
        assumed,
        Some(surface),
        snow,
        strike(zone, voice),
        word,
    ];
    let says = Said::join(says.into_iter().flatten(), ", ");
    says.capital().then(Said::from("."))
}

fn strike(zone: &Zone, voice: Voice) -> Option<Said> {
    let strike = zone.strike?;
    let degrees = |deg: f64| Arg::Said(Said::figure(format!("{deg}°")));
    let mut args = vec![("strike", degrees(strike.deg))];
    let key = match strike.uncertainty_deg {
        Some(doubt_deg) => {
            args.push(("doubt", degrees(doubt_deg)));
            "zone-strike"
        }
        None => "zone-strike-exact",
    };
    Some(voice.say(key, &args))
}

/// What the leader wrote of a zone: when it was seen, where that comes from, and the note.
#[must_use]
pub fn zone_told(zone: &Zone, voice: Voice) -> Said {
    let told = [
        ("zone-observed", &zone.observed_on),
        ("zone-source", &zone.source),
        ("zone-note", &zone.note),
    ];
    let sentence = |(key, text): (&str, &Option<String>)| {
        let text = text.as_ref()?.trim_end_matches('.');
        Some(voice.say(key, &[("text", Arg::Name(text))]))
    };
    Said::join(told.into_iter().filter_map(sentence), " ")
}

/// `43.3 m`, or a dash where there is none.
#[must_use]
pub fn maybe(metres: Option<f64>, round: Round, voice: Voice) -> String {
    metres.map_or_else(|| "–".to_owned(), |m| voice.units.number(m, round))
}

/// The text with its first letter in upper case.
#[must_use]
pub fn capital(text: &str) -> String {
    Said::words(text).capital().to_string()
}
