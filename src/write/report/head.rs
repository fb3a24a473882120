//! The day in figures: how long, how high, how it stands.

use maud::{Markup, html};

use super::markup::spans;
use crate::{
    plan::{leg::Verdict, place::HeightsFrom},
    say::{arg::Arg, round::Round, setup::heights_from, span::Said, units::minutes, voice::Voice},
    write::{
        parts::{itinerary, sentence, style},
        sheet::Sheet,
    },
};

/// All figures of the day, and how many legs stand how.
pub(super) fn summary(sheet: &Sheet<'_>) -> Markup {
    html! { (figures(sheet)) (verdict(sheet)) }
}

/// What the trip is called, else the route.
pub(super) fn title(sheet: &Sheet<'_>) -> String {
    let route = sheet.plan.route.name.as_deref();
    sheet.trip.or(route).unwrap_or("Route").to_owned()
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
            (figure("Length", html! { (voice.units.chainage(route.length_m, Round::Nearest)) " " small { (voice.units.long()) } }))
            @if let (Some(up), Some(down)) = (route.ascent_m, route.descent_m) {
                (figure("Up", html! { (voice.units.whole(up)) " " small { (short) ", " (turns_not_counted(sheet)) } }))
                (figure("Down", html! { (voice.units.whole(down)) " " small { (short) } }))
            }
            (figure("On the rope", html! { (voice.units.chainage(roped_m, Round::Nearest)) " " small { (voice.units.long()) } }))
            (figure("Time in all", html! { (minutes(route.time.total_min)) }))
            (figure("Party", html! {
                @if people == 0 { "nobody roped" }
                @else { (people) " " small { @if teams == 1 { "on one rope" } @else { "on " (teams) " ropes" } } }
            }))
            (figure("Carry", html! { (carried(sheet)) }))
        }
        p class="fine" {
            (itinerary::times(plan, voice)) "."
            @if !route.heights_from.is_empty() { " Heights: " (heights(&route.heights_from, voice)) "." }
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

fn figure(name: &str, value: Markup) -> Markup {
    html! { div { dt { (name) } dd { (value) } } }
}

fn carried(sheet: &Sheet<'_>) -> Markup {
    let ropes = sheet.plan.carry.iter();
    let lengths: Vec<String> = ropes
        .map(|c| sheet.look.voice.units.number(c.length_m, Round::Down))
        .collect();
    html! {
        @if lengths.is_empty() { "no rope" }
        @else { (lengths.join(" + ")) " " small { (sheet.look.voice.units.short()) } }
    }
}

/// How many legs stand how, with their length: the same in words, sign and weight of line.
fn verdict(sheet: &Sheet<'_>) -> Markup {
    let worst = sheet.plan.verdict();
    html! {
        div class={ "verdict " (worst.as_str()) } data-verdict=(worst.as_str()) {
            p class="worst" { (worst_sentence(worst)) }
            ul {
                @for verdict in Verdict::ALL.into_iter().rev() {
                    @let legs: Vec<_> = sheet.plan.legs.iter().filter(|l| l.verdict == verdict).collect();
                    @if !legs.is_empty() {
                        li {
                            (badge(verdict, sheet.look.voice)) " "
                            @if legs.len() == 1 { "1 leg" } @else { (legs.len()) " legs" } ", "
                            (sheet.look.voice.units.chainage(legs.iter().map(|l| l.length_m).sum(), Round::Nearest)) " " (sheet.look.voice.units.long())
                            @if verdict != Verdict::Unroped {
                                ": " @for (i, leg) in legs.iter().enumerate() {
                                    @if i > 0 { ", " }
                                    a href={ "#leg-" (leg.leg) } { "leg " (leg.leg) }
                                    @if let Some(at) = sentence::part_of_word(leg, sheet.look.voice) { " at " (spans(&at)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn worst_sentence(worst: Verdict) -> &'static str {
    match worst {
        Verdict::Unroped => "No leg is walked on the rope.",
        Verdict::Inside => "Every roped leg is inside the planning limits.",
        Verdict::Look => "Look: there is something to decide or to watch.",
        Verdict::Outside => "A leg is outside the limits: no set-up, or no rope that holds it.",
        Verdict::Stop => "Stop: a leg is not to be walked as planned.",
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
