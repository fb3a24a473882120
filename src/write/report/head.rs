//! The day in figures: how long, how high, how it stands.

use maud::{Markup, html};

use super::markup::{spans, word};
use crate::{
    plan::{
        leg::{Leg, Verdict},
        place::HeightsFrom,
    },
    say::{
        arg::Arg, finding, round::Round, setup::heights_from, span::Said, units::minutes,
        voice::Voice,
    },
    write::{
        parts::{itinerary, sentence, style},
        sheet::Sheet,
    },
};

/// All figures of the day, and how many legs stand how.
pub(super) fn summary(sheet: &Sheet<'_>) -> Markup {
    html! { (figures(sheet)) (verdict(sheet)) }
}

fn figures(sheet: &Sheet<'_>) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let (route, short) = (&plan.route, sheet.look.voice.units.short());
    let roped_m: f64 = plan
        .legs
        .iter()
        .filter(|l| l.roped)
        .map(|l| l.length_m)
        .sum();
    let people: usize = plan
        .legs
        .iter()
        .find(|l| l.roped)
        .map_or(0, |l| l.teams.iter().map(|t| t.people).sum());
    let teams = plan.carry.len();
    html! {
        dl class="figures" {
            (figure("report-length", voice, html! { (voice.chainage(route.length_m, Round::Nearest)) " " small { (voice.units.long()) } }))
            @if let (Some(up), Some(down)) = (route.ascent_m, route.descent_m) {
                (figure("report-up", voice, html! { (voice.units.whole(up)) " " small { (short) ", " (turns_not_counted(sheet)) } }))
                (figure("report-down", voice, html! { (voice.units.whole(down)) " " small { (short) } }))
            }
            (figure("report-on-the-rope", voice, html! { (voice.chainage(roped_m, Round::Nearest)) " " small { (voice.units.long()) } }))
            (figure("report-time-in-all", voice, html! { (minutes(route.time.total_min)) }))
            (figure("report-people", voice, html! {
                @if people == 0 { (word("report-nobody-roped", voice)) }
                @else { (people) " " small { (voice.say("report-on-ropes", &[("ropes", Arg::Count(teams))])) } }
            }))
            (figure("report-carried", voice, html! { (carried(sheet)) }))
        }
        p class="fine" {
            (itinerary::times(plan, voice)) "."
            @if !route.heights_from.is_empty() { " " (voice.say("report-heights", &[("heights", Arg::Said(heights(&route.heights_from, voice)))])) }
        }
    }
}

/// An ascent says nothing without it.
fn turns_not_counted(sheet: &Sheet<'_>) -> Said {
    let threshold = Arg::Whole(sheet.plan.route.ascent_threshold_m);
    let voice = sheet.look.voice;
    voice.say("turns-not-counted", &[("threshold", threshold)])
}

/// `route file and terrain model`.
fn heights(from: &[HeightsFrom], voice: Voice) -> Said {
    let and = voice.say("and", &[]);
    Said::join(from.iter().map(|f| heights_from(*f, voice)), and)
}

fn figure(name: &str, voice: Voice, value: Markup) -> Markup {
    html! { div { dt { (word(name, voice)) } dd { (value) } } }
}

fn carried(sheet: &Sheet<'_>) -> Markup {
    let voice = sheet.look.voice;
    let ropes = sheet.plan.carry.iter();
    let lengths: Vec<String> = ropes
        .map(|c| voice.number(c.length_m, Round::Down))
        .collect();
    html! {
        @if lengths.is_empty() { (word("report-no-rope", voice)) }
        @else { (lengths.join(" + ")) " " small { (voice.units.short()) } }
    }
}

/// How many legs stand how, with their length: the same in words, sign and weight of line.
fn verdict(sheet: &Sheet<'_>) -> Markup {
    let (worst, voice) = (sheet.plan.verdict(), sheet.look.voice);
    html! {
        div class={ "verdict " (worst.as_str()) } data-verdict=(worst.as_str()) {
            p class="worst" { (word(worst_sentence(worst), voice)) }
            ul {
                @for verdict in Verdict::ALL.into_iter().rev() {
                    @let legs: Vec<_> = sheet.plan.legs.iter().filter(|l| l.verdict == verdict).collect();
                    @if !legs.is_empty() {
                        li {
                            (badge(verdict, voice)) " " (counted(&legs, voice))
                            @if verdict != Verdict::Unroped {
                                ": " @for (i, leg) in legs.iter().enumerate() {
                                    @if i > 0 { ", " }
                                    a href={ "#leg-" (leg.leg) } { (finding::legs(&[leg.leg], voice)) }
                                    @if let Some(at) = sentence::part_of_word(leg, voice) { " " (spans(&voice.say("report-at", &[("where", Arg::Said(at))]))) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// `2 legs, 3.10 km`.
fn counted(legs: &[&Leg], voice: Voice) -> Said {
    let args = [
        ("legs", Arg::Count(legs.len())),
        ("length", Arg::Walked(legs.iter().map(|l| l.length_m).sum())),
    ];
    voice.say("report-count", &args)
}

fn worst_sentence(worst: Verdict) -> &'static str {
    match worst {
        Verdict::Unroped => "report-worst-unroped",
        Verdict::Inside => "report-worst-inside",
        Verdict::Look => "report-worst-look",
        Verdict::Outside => "report-worst-outside",
        Verdict::Stop => "report-worst-stop",
    }
}

/// The word of a verdict with its sign.
pub(super) fn badge(verdict: Verdict, voice: Voice) -> Markup {
    let sign = style::sign(verdict);
    html! {
        span class={ "badge " (verdict.as_str()) } title=(sentence::means(verdict, voice)) {
            (sentence::verdict(verdict, voice)) @if !sign.is_empty() { " " span aria-hidden="true" { (sign) } }
        }
    }
}
