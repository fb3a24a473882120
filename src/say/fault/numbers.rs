//! Numbers and words of a zone's properties, in words.

use super::{
    phrase::{Phrase, PhraseArgs, figure, list, name, number},
    place::item,
    quote::as_it_stands,
};
use crate::{
    fault::{
        geojson::{InGeojson, InUnit, Measure, NoNumber, Quantity, Silent, Widthless},
        place::Excerpt,
    },
    say::{arg::Arg, span::Said, voice::Voice},
};

/// Zones named by the warning about an assumed width before it only counts them; our judgement.
const NAMED_ASSUMED: usize = 10;

pub(super) fn phrase(what: &InGeojson, voice: Voice) -> Phrase {
    match what {
        InGeojson::Number {
            quantity,
            found,
            why,
        } => no_number(*quantity, found, why),
        InGeojson::Unreadable(found) => {
            Phrase::of("zones-unreadable", [("found", as_it_stands(found))])
        }
        InGeojson::Downwards { quantity, found } => {
            Phrase::of("zones-downwards", [("found", as_it_stands(found))]).and(measured(*quantity))
        }
        InGeojson::OneEnd {
            quantity,
            found,
            value,
        } => one_end(*quantity, found, *value),
        InGeojson::GapsDiffer(upper_m) => {
            Phrase::of("zones-gaps-differ", [("width", Arg::Needed(*upper_m))])
        }
        InGeojson::GapNarrow(upper_m) => {
            Phrase::of("zones-gap-narrow", [("width", figure(upper_m, "m"))])
        }
        InGeojson::GapsCrossed { low_m, high_m } => Phrase::of(
            "zones-gaps-crossed",
            [("low", figure(low_m, "m")), ("high", figure(high_m, "m"))],
        ),
        InGeojson::StrikeRange { low_deg, high_deg } => strike_range(*low_deg, *high_deg),
        InGeojson::StrikeMissing => Phrase::plain("zones-strike-missing"),
        InGeojson::Word {
            property,
            found,
            words,
        } => {
            let words = words.iter().map(|word| format!("\"{word}\""));
            Phrase::of(
                "zones-word",
                [
                    ("found", as_it_stands(found)),
                    ("property", name(*property)),
                    ("words", list(words)),
                ],
            )
        }
        InGeojson::NearMiss { given, right, unit } => Phrase::of(
            "zones-near-miss",
            [("given", name(given)), ("right", name(*right))],
        )
        .and(in_unit(*unit)),
        InGeojson::GapNotGiven(zones) => gap_not_given(zones, voice),
        InGeojson::GapAssumed { gap_m, zones, of } => gap_assumed(*gap_m, zones, *of, voice),
        _ => Phrase::plain("zones-not-a-number"),
    }
}

fn gap_not_given(zones: &Widthless, voice: Voice) -> Phrase {
    Phrase::of(
        "zones-gap-not-given",
        [
            ("count", Arg::Count(zones.count)),
            ("zones", named(zones, usize::MAX, voice)),
            ("others", Arg::Count(zones.found.len())),
            ("renamed", renamed(zones)),
            ("near", near(zones)),
            ("metres-known", Arg::yes(metres(zones).is_some())),
            ("metres", number(metres(zones).unwrap_or_default())),
            ("guessed", part(zones.guessed, zones)),
            ("found", list(&zones.found)),
        ],
    )
}

/// Whether all, some or none of the zones have the width under a name that is none.
fn renamed(zones: &Widthless) -> Arg<'static> {
    let near = zones.named.iter().filter(|zone| zone.near.is_some());
    if near.clone().any(|zone| zone.unit.is_some()) {
        return Arg::Word("units");
    }
    part(near.count(), zones)
}

/// The width of the first zone whose property is in another unit, where it is a number.
fn metres(zones: &Widthless) -> Option<f64> {
    let unit = zones.named.iter().find_map(|zone| zone.unit);
    unit.and_then(|unit| unit.metres)
}

fn in_unit(unit: Option<InUnit>) -> PhraseArgs {
    let metres = unit.and_then(|unit| unit.metres);
    let word = match (unit, metres) {
        (None, _) => "no",
        (Some(_), Some(_)) => "number",
        (Some(_), None) => "yes",
    };
    vec![
        ("in-unit", Arg::Word(word)),
        ("metres", number(metres.unwrap_or_default())),
    ]
}

/// Whether it is all, some or none of the zones.
fn part(count: usize, zones: &Widthless) -> Arg<'static> {
    Arg::Word(match count {
        0 => "none",
        all if all == zones.count => "all",
        _ => "some",
    })
}

/// The first such name.
fn near(zones: &Widthless) -> Arg<'static> {
    let of_unit = zones.named.iter().filter(|zone| zone.unit.is_some());
    let mut zones = of_unit.chain(&zones.named);
    let near = zones.find_map(|zone| zone.near.as_deref());
    name(near.unwrap_or_default())
}

fn measured(quantity: Quantity) -> PhraseArgs {
    let what = match quantity.what {
        Measure::GapWidth => "gap-width",
        Measure::SnowDepth => "snow-depth",
        Measure::Strike => "strike",
        Measure::StrikeUncertainty => "strike-uncertainty",
    };
    let unit = if quantity.is_length() { "m" } else { "deg" };
    vec![
        ("quantity", Arg::Word(what)),
        ("unit", Arg::Word(unit)),
        ("min", number(quantity.min)),
        ("max", number(quantity.max)),
    ]
}

fn no_number(quantity: Quantity, found: &Excerpt, why: &NoNumber) -> Phrase {
    let shown = ("found", as_it_stands(found));
    match why {
        NoNumber::NotPlain => {
            let within = quantity.min..=quantity.max;
            let meant = only_number(&found.text).filter(|n| !found.cut && within.contains(n));
            let args = [
                ("plain", Arg::yes(meant.is_some())),
                ("meant", number(meant.unwrap_or_default())),
            ];
            Phrase::of("zones-not-plain", [shown]).and(args.into())
        }
        NoNumber::NotFinite => Phrase::of("zones-not-finite", [shown]),
        NoNumber::Unit(given) => Phrase::of("zones-unit", [shown, ("given", name(given))]),
        NoNumber::Comma(digits) => {
            let one = digits.replace(',', ".");
            let one = number(one.trim_end_matches('0'));
            let other = digits.replace(',', "");
            let within = quantity.min..=quantity.max;
            let fits = other.parse().is_ok_and(|other| within.contains(&other));
            let args = [
                ("one", one),
                ("other", number(other)),
                ("fits", Arg::yes(fits)),
            ];
            Phrase::of("zones-comma", [shown]).and(args.into())
        }
        NoNumber::Outside => Phrase::of("zones-outside", [shown]),
    }
    .and(measured(quantity))
}

/// The number of a text that holds one alone, with words and signs beside it.
fn only_number(text: &str) -> Option<f64> {
    let is_part = |c: char| c.is_ascii_digit() || ".,-/".contains(c);
    let pieces = text.split(|c: char| !is_part(c));
    let mut numbers = pieces.filter(|piece| piece.contains(|c: char| c.is_ascii_digit()));
    let one = numbers.next()?.parse().ok();
    one.filter(|_| numbers.next().is_none())
}

fn one_end(quantity: Quantity, found: &Excerpt, value: f64) -> Phrase {
    let value = match (quantity.is_length(), quantity.upper_counts) {
        (true, true) => Arg::Needed(value),
        (true, false) => Arg::There(value),
        (false, _) => figure(value, "°"),
    };
    let end = if quantity.upper_counts {
        "upper"
    } else {
        "lower"
    };
    Phrase::of(
        "zones-one-end",
        [
            ("found", as_it_stands(found)),
            ("end", Arg::Word(end)),
            ("value", value),
        ],
    )
    .and(measured(quantity))
}

fn strike_range(low_deg: f64, high_deg: f64) -> Phrase {
    Phrase::of(
        "zones-strike-range",
        [
            ("low", number(low_deg)),
            ("high", number(high_deg)),
            ("middle", number(low_deg.midpoint(high_deg))),
            ("half", number((high_deg - low_deg) / 2.0)),
        ],
    )
}

fn gap_assumed(gap_m: f64, zones: &Widthless, of: usize, voice: Voice) -> Phrase {
    let which = match (zones.count, of) {
        (1, 1) => "only",
        (count, of) if count == of => "all",
        (1, _) => "one",
        _ => "some",
    };
    let lower = if zones.lower_end { "given" } else { "none" };
    Phrase::of(
        "zones-gap-assumed",
        [
            ("gap", Arg::Needed(gap_m)),
            ("lower", Arg::Word(lower)),
            ("which", Arg::Word(which)),
            ("count", Arg::Count(zones.count)),
            ("of", Arg::Count(of)),
            ("zones", named(zones, NAMED_ASSUMED, voice)),
            ("guessed", part(zones.guessed, zones)),
        ],
    )
}

fn named(zones: &Widthless, most: usize, voice: Voice) -> Arg<'static> {
    let shown = zones.named.iter().take(most);
    let list = Said::join(shown.clone().map(|zone| silent(zone, voice)), ", ");
    match zones.count - shown.count() {
        0 => Arg::Said(list),
        more => {
            let args = [("list", Arg::Said(list)), ("more", Arg::Count(more))];
            Arg::Said(voice.say("and-more", &args))
        }
    }
}

fn silent(zone: &Silent, voice: Voice) -> Said {
    let feature = ("feature", Arg::Said(item(&zone.feature, voice)));
    let phrase = match (&zone.near, zone.at_least_m) {
        _ if zone.guessed => Phrase::of("silent-zone-guessed", [feature]),
        (Some(near), _) if zone.unit.is_some_and(|unit| unit.metres.is_some()) => {
            let metres = zone.unit.and_then(|unit| unit.metres).unwrap_or_default();
            Phrase::of(
                "silent-zone-unit",
                [feature, ("near", name(near)), ("metres", number(metres))],
            )
        }
        (Some(near), _) => Phrase::of("silent-zone-near", [feature, ("near", name(near))]),
        (None, Some(low_m)) => {
            let at_least = figure(low_m, "m");
            Phrase::of("silent-zone-lower", [feature, ("at-least", at_least)])
        }
        (None, None) => Phrase::of("silent-zone", [feature]),
    };
    phrase.says(voice)
}
