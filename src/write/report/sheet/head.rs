//! The head of the sheet: what it is, of whom, when, how far, what stops, what to carry, where the rope comes out first.

use maud::{Markup, html};

use super::room::Print;
use crate::{
    fault::Level,
    plan::{
        Plan,
        clock::{PlanClock, StageClock},
        leg::{Leg, TeamSetup},
        name::PersonOnRope,
        verdict::Verdict,
    },
    say::{arg::Arg, finding, name::person, plain, span::Said, voice::Voice},
    write::{
        parts::{
            change::{self, ChangeKind, ChangePoint},
            clock::{self, HourLine},
            day,
            falls_on::falls_on,
            findings, packs,
            row::TeamRow,
            sentence, style,
            told::OfLevel,
        },
        report::markup::{said, spans},
        sheet::Sheet,
    },
};

/// People that are named before they are only counted. Our judgement.
const NAMED: usize = 15;

/// Name, date, who, the figures of the day, and what comes first.
pub(super) fn head(sheet: &Sheet<'_>, told: &[OfLevel], print: Print) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let name = sheet.title().to_string();
    html! {
        header class={ "sheet " (print.class()) } {
            p class="kind" { (voice.say("sheet-kind", &[])) }
            h1 { (said(&name)) }
            @if let Some(route) = plan.route.name.as_deref().filter(|r| *r != name) {
                p class="route" { (spans(&voice.say("sheet-route", &[("name", Arg::Name(&plain::line(route)))]))) }
            }
            p class="day" { (spans(&who(sheet))) br; (spans(&day::figures(plan, voice))) }
            (first(sheet, told))
        }
    }
}

/// `1 Ada, 2 Ben, 3 Cleo · 2027-08-21`, `team 1: 1, 4, 5, 7 · team 2: 2, 3, 6`.
fn who(sheet: &Sheet<'_>) -> Said {
    let voice = sheet.look.voice;
    let who = people(sheet, voice);
    let clock = sheet.plan.clock.iter().flat_map(|clock| clock.stages());
    let date = clock.filter_map(|clock: &StageClock| clock.date).next();
    let args = [
        ("who", Arg::Said(who)),
        ("dated", Arg::yes(date.is_some())),
        (
            "date",
            Arg::Figure(date.map(|date| date.to_string()).unwrap_or_default()),
        ),
    ];
    voice.say("sheet-who", &args)
}

/// Who goes, in the order on the rope; of several teams who is on which, since findings name people and drawings places.
fn people(sheet: &Sheet<'_>, voice: Voice) -> Said {
    let roped = sheet.plan.legs.iter().find(|leg| leg.roped);
    let teams: Vec<&TeamSetup> = roped.iter().flat_map(|leg| &leg.teams).collect();
    let people = teams.iter().flat_map(|team| &team.persons);
    let count = people.clone().count();
    let has_name = people.clone().any(|p| p.called.name.is_some());
    let counted = || voice.say("sheet-people", &[("people", Arg::Count(count))]);
    match teams[..] {
        _ if count > NAMED => counted(),
        [_] if has_name => listed(people, voice),
        [] | [_] => counted(),
        _ => Said::join(teams.iter().map(|team| of_team(team, voice)), " · "),
    }
}

fn of_team(team: &TeamSetup, voice: Voice) -> Said {
    let named = team.persons.iter().any(|p| p.called.name.is_some());
    let args = [
        ("team", Arg::Count(team.team)),
        ("people", Arg::Said(listed(team.persons.iter(), voice))),
        ("named", Arg::yes(named)),
    ];
    voice.say("sheet-team-who", &args)
}

/// `1 Ada, 2 Ben, 3`: who has no name has a number.
fn listed<'a>(people: impl Iterator<Item = &'a PersonOnRope>, voice: Voice) -> Said {
    let of_person = |p: &PersonOnRope| match p.called.name {
        None => Said::figure(p.called.number.to_string()),
        Some(_) => {
            let name = person(&p.called, voice).map_names(plain::line);
            let args = [
                ("number", Arg::Count(p.called.number)),
                ("name", Arg::Said(name)),
            ];
            voice.say("sheet-person", &args)
        }
    };
    Said::join(people.map(of_person), ", ")
}

/// What a tired leader reads before anything else: how it stands, what to carry, where to rope up first.
pub(super) fn first(sheet: &Sheet<'_>, told: &[OfLevel]) -> Markup {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let (worst, clock) = (plan.verdict(), plan.clock.iter());
    let hours = clock.flat_map(|all| clock::head(all, voice));
    let (late, hours): (Vec<HourLine>, Vec<HourLine>) = hours.partition(|line| line.late);
    html! {
        div class={ "first " (worst.as_str()) } {
            @for stand in stands(sheet, told) {
                p class={ "stands" @if stand.belay { " belay" } } { (spans(&stand.says)) }
            }
            @for line in &late { p class="hours late" { (spans(&line.says)) } }
            @for line in packed(sheet) { p class="pack" { (spans(&line.map_names(plain::line))) } }
            @if let Some(next) = next(sheet) { p class="next" { (spans(&next)) } }
            @if let Some(snow) = falls_on(plan, voice) {
                p class={ "falls-on" @if is_graver(plan) { " graver" } } { (spans(&snow)) }
            }
        }
        @for line in &hours { p class="hours" { (spans(&line.says)) } }
    }
}

/// Whether falls are graver on some leg where the snow is frozen.
fn is_graver(plan: &Plan) -> bool {
    let frozen = plan.falls_on.as_ref().and_then(|on| on.if_frozen.as_ref());
    frozen.is_some_and(|legs| !legs.stop.is_empty())
}

/// A line of how it stands.
struct Stand {
    says: Said,
    /// Whether it asks for belays.
    belay: bool,
}

/// `■ Stop: leg 2 at 2.21–2.29 km, 66 m`, where belays are asked for, `? 4 legs to look at`.
fn stands(sheet: &Sheet<'_>, told: &[OfLevel]) -> Vec<Stand> {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let grave = [Verdict::Stop, Verdict::Outside];
    let grave = grave
        .iter()
        .filter_map(|word| Some((*word, sentence::where_it_holds(&plan.legs, *word, voice)?)));
    let mut lines: Vec<(Verdict, Said)> = grave.collect();
    // Where something stops, that is said first, and what to do about it where it is told.
    let stops = plan.verdict() == Verdict::Stop;
    let belayed = belayed(sheet, voice).filter(|_| !stops);
    if told.iter().any(|level| level.word == Verdict::Look) {
        let says = to_look_at(sheet, voice);
        // Where the rope alone may not hold, that nothing stops says too little.
        let says = match lines.is_empty() && belayed.is_none() {
            true => voice.say("sheet-only-to-look-at", &[("says", Arg::Said(says))]),
            false => says,
        };
        lines.push((Verdict::Look, says));
    }
    if lines.is_empty() {
        let says = match plan.verdict() {
            Verdict::Unroped => voice.say("sheet-unroped", &[]),
            _ => {
                let notes = Arg::Count(findings::notes(plan, voice));
                voice.say("sheet-inside", &[("notes", notes)])
            }
        };
        lines.push((plan.verdict(), says.capital()));
    }
    let belayed = belayed.map(|says| Stand { says, belay: true });
    let stand = |(word, says)| Stand {
        says: signed(word, says),
        belay: false,
    };
    let graver = lines.partition_point(|(word, _)| *word > Verdict::Look);
    let after = lines.split_off(graver).into_iter().map(stand);
    let graver = lines.into_iter().map(stand);
    graver.chain(belayed).chain(after).collect()
}

/// A line behind the sign of its word.
fn signed(word: Verdict, says: Said) -> Said {
    let sign = style::sign(word);
    let sign = (!sign.is_empty()).then(|| Said::words(sign));
    Said::join(sign.into_iter().chain([says]), " ")
}

/// Where belays from anchors are asked for; what to do about a leg that stops is told where that is.
fn belayed(sheet: &Sheet<'_>, voice: Voice) -> Option<Said> {
    let asked = |leg: &&Leg| leg.verdict < Verdict::Stop && leg.belays.is_some();
    let legs: Vec<usize> = sheet
        .plan
        .legs
        .iter()
        .filter(asked)
        .map(|leg| leg.leg)
        .collect();
    let args = [("legs", Arg::Said(finding::on_legs(&legs, voice)))];
    (!legs.is_empty()).then(|| signed(Verdict::Look, voice.say("sheet-belay", &args).capital()))
}

/// `4 legs to look at: legs 2, 6, 10, 12`, and what is to be looked at of the whole.
fn to_look_at(sheet: &Sheet<'_>, voice: Voice) -> Said {
    let plan = sheet.plan;
    let legs = plan.legs.iter().filter(|leg| leg.verdict == Verdict::Look);
    let legs: Vec<usize> = legs.map(|leg| leg.leg).collect();
    let title = findings::title(Level::Look, voice);
    if legs.is_empty() {
        return title;
    }
    let legs = finding::legs(&legs, voice);
    title.then(Said::from(": ")).then(&legs)
}

/// Where the team is, where the leader says that of the one stage that is planned, metres.
fn under_way_at_m(sheet: &Sheet<'_>) -> Option<f64> {
    let mut stages = sheet.plan.clock.iter().flat_map(PlanClock::stages);
    Some(stages.next()?.start_at?.at_m)
}

/// Where the rope comes out first, and how it is tied there: who is under way on the rope is told of that leg, else of what lies ahead.
fn next(sheet: &Sheet<'_>) -> Option<Said> {
    let voice = sheet.look.voice;
    let changes = change::changes(sheet);
    let here_m = under_way_at_m(sheet);
    let ahead = |c: &&ChangePoint<'_>| here_m.is_none_or(|here_m| c.leg.end_m > here_m);
    let mut roped = changes.iter().filter(|c| c.kind == ChangeKind::RopeUp);
    let first = roped.find(ahead)?;
    let place = voice.shown(&Arg::DoneAt(first.at_m, first.kind.round()));
    let spot = sentence::spot(first.clock, first.height_m, voice);
    let at = first.utm.as_ref().unwrap_or(&first.degrees);
    let letter = Said::figure(first.letter());
    let place = [letter, place]
        .into_iter()
        .chain(spot)
        .chain([Said::figure(at)]);
    let teams = first.leg.teams.iter();
    let mut setups: Vec<String> = teams.map(|t| TeamRow::new(t, voice).spacing).collect();
    setups.dedup();
    let args = [
        ("place", Arg::Said(Said::join(place, ", "))),
        (
            "setup",
            Arg::Said(Said::join(setups.iter().map(Said::words), "; ")),
        ),
    ];
    Some(voice.say("sheet-next", &args))
}

/// What goes into the packs, and what stays.
fn packed(sheet: &Sheet<'_>) -> Vec<Said> {
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let carried = plan.carry.iter();
    let carried = carried.map(|carry| packs::carried(carry, plan.carry.len(), voice));
    carried.chain(packs::left_over(plan, voice)).collect()
}
