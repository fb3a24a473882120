//! Legs and zones in sentences: for popups, messages and people who cannot see the colours.

use crate::{
    plan::{
        Plan,
        leg::{Leg, Verdict},
        pieces::WordPiece,
    },
    say::{arg::Arg, round::Round, span::Said, voice::Voice},
    trip::{
        clock::Clock,
        zone::{RopeWord, Surface, Zone},
    },
};

/// Stretches of one word that are named before the rest is counted. Our judgement.
const SPANS_NAMED: usize = 3;

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

/// What is said of no leg that is inside; `None` where none is.
pub(in crate::write) fn of_inside(plan: &Plan, voice: Voice) -> Option<Said> {
    let mut legs = plan.legs.iter();
    let inside = legs.any(|leg| leg.verdict == Verdict::Inside);
    inside.then(|| voice.say("message-inside", &[]))
}

/// What is not known of legs that are unroped; `None` where none is.
pub(in crate::write) fn of_unroped(plan: &Plan, voice: Voice) -> Option<Said> {
    let mut legs = plan.legs.iter();
    let unroped = legs.any(|leg| leg.verdict == Verdict::Unroped);
    let args = [("drawn", Arg::yes(plan.knows_drawn_ice_only()))];
    unroped.then(|| voice.say("message-unroped", &args))
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

/// The same in one or two words, for a message.
#[must_use]
pub fn means_in_short(verdict: Verdict, voice: Voice) -> Said {
    let key = match verdict {
        Verdict::Unroped => "short-unroped",
        Verdict::Inside => "short-inside",
        Verdict::Look => "short-look",
        Verdict::Outside => "short-outside",
        Verdict::Stop => "short-stop",
    };
    voice.say(key, &[])
}

/// Where the word of a leg holds on a part of it only, at every place: `stop at 3.20–3.26 km, 60 m; the rest inside`.
#[must_use]
pub fn word_in_part(leg: &Leg, voice: Voice) -> Option<Said> {
    let (graver, rest): (Vec<WordPiece>, Vec<WordPiece>) = leg
        .pieces()
        .into_iter()
        .partition(|piece| piece.verdict == leg.verdict);
    let milder = rest.iter().map(|piece| piece.verdict).max()?;
    let args = [
        ("verdict", Arg::Said(verdict(leg.verdict, voice))),
        ("where", Arg::Said(spans(&graver, usize::MAX, voice))),
        ("rest", Arg::Said(verdict(milder, voice))),
    ];
    Some(voice.say("word-in-part", &args))
}

/// Only where, at the first places: `3.20–3.26 km, 60 m`; `None` where the word holds on the whole leg.
#[must_use]
pub fn part_of_word(leg: &Leg, voice: Voice) -> Option<Said> {
    part(leg).map(|pieces| spans(&pieces, SPANS_NAMED, voice))
}

/// Where its word first holds, and at how many places more; `None` where it holds on the whole leg.
#[must_use]
pub fn begin_of_word(leg: &Leg, voice: Voice) -> Option<Said> {
    let pieces = part(leg)?;
    let (first, more) = pieces.split_first()?;
    let args = [
        ("span", Arg::Said(span(first, voice))),
        ("more", Arg::Count(more.len())),
    ];
    Some(voice.say("short-spans", &args))
}

fn part(leg: &Leg) -> Option<Vec<WordPiece>> {
    let mut pieces = leg.pieces();
    let all = pieces.len();
    pieces.retain(|piece| piece.verdict == leg.verdict);
    (pieces.len() < all).then_some(pieces)
}

fn span(piece: &WordPiece, voice: Voice) -> Said {
    let ends = Arg::DoneBetween((piece.from_m, Round::Down), (piece.to_m, Round::Up));
    voice.say("word-span", &[("span", ends)])
}

/// `3.20–3.26 km, 4.1–4.2 km, 160 m`: what is more than `most` is counted.
fn spans(pieces: &[WordPiece], most: usize, voice: Voice) -> Said {
    let named = pieces.iter().take(most).map(|p| span(p, voice));
    let named = Said::join(named, ", ");
    let length_m = pieces.iter().map(WordPiece::length_m).sum();
    let more = pieces.len().saturating_sub(most);
    let args = [
        ("spans", Arg::Said(named)),
        ("more", Arg::Count(more)),
        ("length", Arg::Whole(length_m)),
    ];
    voice.say("word-spans", &args)
}

/// Where each leg of this word holds it: `leg 6 at 5.81–6.47 km, 657 m`; `None` where no leg does.
#[must_use]
pub fn where_it_holds(legs: &[Leg], word: Verdict, voice: Voice) -> Option<Said> {
    let of_word = legs.iter().filter(|leg| leg.verdict == word);
    let place = |leg: &Leg| {
        let pieces = leg.pieces();
        let held = pieces.iter().filter(|piece| piece.verdict == word);
        let held: Vec<WordPiece> = held.copied().collect();
        let args = [
            ("leg", Arg::Count(leg.leg)),
            ("where", Arg::Said(spans(&held, SPANS_NAMED, voice))),
        ];
        voice.say("word-on-leg", &args)
    };
    let places: Vec<Said> = of_word.map(place).collect();
    if places.is_empty() {
        return None;
    }
    let args = [
        ("verdict", Arg::Said(verdict(word, voice).capital())),
        ("places", Arg::Said(Said::join(places, "; "))),
    ];
    Some(voice.say("word-on-legs", &args))
}

/// `06:08, height 1331 m`; nothing where neither is known.
#[must_use]
pub fn spot(clock: Option<Clock>, height_m: Option<f64>, voice: Voice) -> Option<Said> {
    let clock = clock.map(|clock| Said::figure(clock.to_string()));
    let height = height_m.map(|m| voice.say("change-height", &[("height", Arg::Whole(m))]));
    let known: Vec<Said> = clock.into_iter().chain(height).collect();
    (!known.is_empty()).then(|| Said::join(known, ", "))
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
    let degrees = |deg: f64| Arg::Said(Said::figure(voice.marked(format!("{deg}°"))));
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
    metres.map_or_else(|| "–".to_owned(), |m| voice.number(m, round))
}

/// The text with its first letter in upper case.
#[must_use]
pub fn capital(text: &str) -> String {
    Said::words(text).capital().to_string()
}
