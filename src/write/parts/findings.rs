//! Findings as they are read: by level, the same of several places said once.

use std::collections::BTreeMap;

use crate::{
    fault::Level,
    plan::{
        Plan,
        fact::Fact,
        finding::{At, Finding, What},
        leg::Verdict,
    },
    say::{
        arg::Arg,
        finding::{cure, hint, leg_of_teams, legs, place, says, short},
        plain,
        span::Said,
        voice::Voice,
    },
    write::parts::{paragraph::bullet, sentence::where_it_holds},
};

/// Places named one by one before the rest is counted. Our judgement.
const NAMED: usize = 6;

/// Findings that say the same, with the places they say it of.
pub(crate) struct Group<'a> {
    places: Vec<&'a At>,
    /// One for all of them: what it tells to do holds for every place.
    pub finding: Finding,
    /// What they say.
    pub says: Said,
    /// What to do about it.
    pub hint: Option<Said>,
}

/// All findings of the legs and of the whole, the graver first; those that say the same are one.
pub(crate) fn groups(plan: &Plan, voice: Voice) -> Vec<Group<'_>> {
    grouped(plan, says, hint, voice)
}

/// The same in short.
pub(crate) fn short_groups(plan: &Plan, voice: Voice) -> Vec<Group<'_>> {
    grouped(plan, short, cure, voice)
}

fn grouped(
    plan: &Plan,
    says: fn(&Finding, Voice) -> Said,
    hint: fn(&Finding, Voice) -> Option<Said>,
    voice: Voice,
) -> Vec<Group<'_>> {
    let of_legs = plan.legs.iter().flat_map(|l| &l.findings);
    let mut all: Vec<&Finding> = of_legs.chain(&plan.findings).collect();
    all.sort_by_key(|f| f.alarm());
    let mut groups: Vec<Group<'_>> = Vec::new();
    let mut known: BTreeMap<(&str, String, Option<String>), Vec<usize>> = BTreeMap::new();
    for finding in all {
        let (says, hint) = (says(finding, voice), hint(finding, voice));
        // One cure may do for several legs though its figures differ.
        let alike = hint.as_ref().filter(|_| !is_cured(finding));
        let alike = (finding.code(), says.to_string(), alike.map(Said::to_string));
        let alike = known.entry(alike).or_default();
        let joined = alike.iter().any(|&at| groups[at].join(finding));
        if !joined {
            alike.push(groups.len());
            groups.push(Group {
                places: vec![&finding.at],
                finding: finding.clone(),
                says,
                hint,
            });
        }
    }
    for group in groups.iter_mut().filter(|group| is_cured(&group.finding)) {
        group.hint = hint(&group.finding, voice);
    }
    groups
}

/// Whether it names a cure for a rope that is too short.
fn is_cured(finding: &Finding) -> bool {
    matches!(finding.fact(), Some(Fact::NoRope { cure: Some(_), .. }))
}

/// Whether two places read the same.
fn same(a: &At, b: &At) -> bool {
    match (a, b) {
        (At::Leg(a), At::Leg(b)) => (a.leg, a.team) == (b.leg, b.team),
        (a, b) => a == b,
    }
}

impl<'a> Group<'a> {
    /// Takes in one more that says the same, where the same is to be done about it.
    fn join(&mut self, other: &'a Finding) -> bool {
        let Some(both) = self.finding.for_both(other) else {
            return false;
        };
        self.finding = both;
        if !self.places.last().is_some_and(|at| same(at, &other.at)) {
            self.places.push(&other.at);
        }
        true
    }

    /// The places in a row, `legs 2, 4` where all are legs; many are counted.
    pub(crate) fn places(&self, voice: Voice) -> Said {
        listed(&self.places, voice)
    }
}

impl Group<'_> {
    /// Whether it is told of stages, and of nothing else.
    pub(crate) fn of_stages(&self) -> bool {
        self.places.iter().all(|at| matches!(at, At::Stage(_)))
    }

    /// Whether reading a file found it, and not planning.
    pub(crate) fn was_read(&self) -> bool {
        matches!(self.finding.what, What::Read(_))
    }
}

/// The places of several groups in a row.
pub(crate) fn places_of_all(groups: &[&Group<'_>], voice: Voice) -> Said {
    let mut places: Vec<&At> = Vec::new();
    for at in groups.iter().flat_map(|group| &group.places) {
        if !places.iter().any(|known| same(known, at)) {
            places.push(at);
        }
    }
    listed(&places, voice)
}

fn listed(places: &[&At], voice: Voice) -> Said {
    let shown = first_few(places);
    let numbers: Option<Vec<usize>> = shown.iter().map(|at| leg_alone(at)).collect();
    let listed = match numbers {
        Some(numbers) => legs(&numbers, voice),
        None => {
            let of_leg = shown.chunk_by(|a, b| {
                leg_of_a_team(a).is_some() && leg_of_a_team(a) == leg_of_a_team(b)
            });
            Said::join(of_leg.map(|at| one_leg(at, voice)), ", ")
        }
    };
    and_more(listed, places.len() - shown.len(), voice)
}

/// `legs 2, 4`, the first of many.
fn few(numbers: &[usize], voice: Voice) -> Said {
    let shown = first_few(numbers);
    and_more(legs(shown, voice), numbers.len() - shown.len(), voice)
}

/// Those that are named before the rest is counted: all of them where one alone would be left.
fn first_few<T>(all: &[T]) -> &[T] {
    let named = all.get(..NAMED).filter(|_| all.len() > NAMED + 1);
    named.unwrap_or(all)
}

fn and_more(named: Said, more: usize, voice: Voice) -> Said {
    if more == 0 {
        return named;
    }
    let args = [("named", Arg::Said(named)), ("more", Arg::Count(more))];
    voice.say("place-more", &args)
}

/// `leg 6 (teams 1, 2)`, where places are teams of one leg.
fn one_leg(places: &[&At], voice: Voice) -> Said {
    let teams = places.iter().filter_map(|at| match at {
        At::Leg(place) => place.team,
        _ => None,
    });
    let teams: Vec<usize> = teams.collect();
    match places {
        [one] => place(one, voice),
        [first, ..] => leg_of_teams(first.leg().unwrap_or_default(), &teams, voice),
        [] => Said::default(),
    }
}

/// The leg, where a place is a team of it.
fn leg_of_a_team(at: &At) -> Option<usize> {
    match at {
        At::Leg(place) if place.team.is_some() => Some(place.leg),
        _ => None,
    }
}

/// The leg, where a place is a leg as a whole and no team of it.
fn leg_alone(at: &At) -> Option<usize> {
    match at {
        At::Leg(place) if place.team.is_none() => Some(place.leg),
        _ => None,
    }
}

/// `1 leg with a stop, 3 legs to look at`, and what is to be looked at of the whole; empty where there is none.
#[must_use]
pub(crate) fn count(plan: &Plan, voice: Voice) -> Said {
    let told = |count: usize, key| {
        let args = [("count", Arg::Count(count))];
        (count > 0).then(|| voice.say(key, &args))
    };
    let of = |verdict| plan.legs.iter().filter(|l| l.verdict == verdict).count();
    let whole = plan.findings.iter().filter(|f| f.level() < Level::Note);
    let all = [
        told(of(Verdict::Stop), "count-stop"),
        told(of(Verdict::Outside), "count-outside"),
        told(of(Verdict::Look), "count-look"),
        told(whole.count(), "count-whole"),
    ];
    Said::join(all.into_iter().flatten(), ", ")
}

/// How many things are good to know for which there is something to do.
pub(crate) fn notes(plan: &Plan, voice: Voice) -> usize {
    let groups = groups(plan, voice);
    let noted = |group: &&Group<'_>| group.finding.level() == Level::Note && group.hint.is_some();
    groups.iter().filter(noted).count()
}

/// What a file says first: how many legs stop, are outside or want a look, and where those are that are more than looked at.
#[must_use]
pub(crate) fn first_line(plan: &Plan, voice: Voice) -> Said {
    let counted = count(plan, voice);
    let counted = match counted.is_empty() {
        true => voice.say("count-none", &[]),
        false => counted.capital(),
    };
    let grave = [Verdict::Stop, Verdict::Outside].into_iter();
    let places = grave.filter_map(|word| where_it_holds(&plan.legs, word, voice));
    let all = [counted].into_iter().chain(places);
    Said::join(all.map(|said| said.then(".")), " ")
}

/// What stops and what is to be looked at, by leg, for the first line of a page: `stop on legs 2, 4; look at leg 6`.
pub(crate) fn first_words(plan: &Plan, voice: Voice) -> Said {
    let of = |(verdict, key)| {
        let legs = plan.legs.iter().filter(|leg| leg.verdict == verdict);
        let numbers: Vec<usize> = legs.map(|leg| leg.leg).collect();
        (!numbers.is_empty()).then(|| voice.say(key, &[("legs", Arg::Said(few(&numbers, voice)))]))
    };
    let words = [
        (Verdict::Stop, "first-stop"),
        (Verdict::Outside, "first-outside"),
        (Verdict::Look, "first-look"),
    ];
    let told: Vec<Said> = words.into_iter().filter_map(of).collect();
    let whole = plan.findings.iter().any(|f| f.level() < Level::Note);
    match (told.is_empty(), whole) {
        (false, _) => Said::join(told, "; "),
        (true, true) => voice.say("first-whole", &[]),
        (true, false) => voice.say("first-none", &[]),
    }
}

/// The title of a level.
#[must_use]
pub(crate) fn title(level: Level, voice: Voice) -> Said {
    let key = match level {
        Level::Error => "level-error",
        Level::Stop => "level-stop",
        Level::Outside => "level-outside",
        Level::Look => "level-look",
        Level::Note => "level-note",
    };
    voice.say(key, &[])
}

/// The findings of these levels as paragraphs, each level under its title.
pub(crate) fn paragraphs(
    out: &mut String,
    groups: &[Group<'_>],
    levels: &[Level],
    voice: Voice,
    width: usize,
) {
    for &level in levels {
        let of_level = groups.iter().filter(|g| g.finding.level() == level);
        for (i, group) in of_level.enumerate() {
            if i == 0 {
                out.push_str(&format!("\n{}\n", title(level, voice)));
            }
            bullet(out, "  · ", &paragraph(group, voice), width);
        }
    }
}

fn paragraph(group: &Group<'_>, voice: Voice) -> String {
    let colon = Said::from(": ");
    let mut all = group.places(voice).then(&colon).then(&group.says);
    if let Some(hint) = &group.hint {
        all = all.then(Said::from(" → ")).then(hint);
    }
    let code = format!(" [{}]", group.finding.code());
    all.then(Said::words(&code))
        .map_names(plain::line)
        .to_string()
}
