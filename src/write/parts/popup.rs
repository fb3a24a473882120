//! What a map or a device tells of a leg: its word and where that holds, the set-up, and what was found that is graver than a
//! note, in short, each with what to do about it.

use crate::{
    fault::Level,
    plan::{
        change::Change,
        cure::RopeCure,
        fact::Fact,
        finding::Finding,
        leg::{Leg, TeamSetup, Verdict},
    },
    say::{arg::Arg, finding, name::rope, plain, span::Said, voice::Voice},
    write::parts::{
        row::{self, TeamRow},
        sentence::{means, spot, verdict, word_in_part},
    },
};

/// Things found that are told with what to do about them before the rest of those to look at is told in a few words. Our
/// judgement.
const WHOLE: usize = 4;

/// `Leg 2: 3 people, 13 m apart, gap 6 m (assumed), stop at 3.20–3.26 km, 60 m; the rest inside`.
#[must_use]
pub fn leg_title(leg: &Leg, voice: Voice) -> Said {
    let number = ("leg", Arg::Count(leg.leg));
    let word = word_in_part(leg, voice).unwrap_or_else(|| verdict(leg.verdict, voice));
    let verdict = ("verdict", Arg::Said(word));
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
    let teams = Said::join(leg.teams.iter().map(spacing), and);
    let how = Said::join(
        [teams].into_iter().chain(gap(leg, "leg-title-gap", voice)),
        ", ",
    );
    voice.say("leg-title", &[number, ("how", Arg::Said(how)), verdict])
}

/// All that is told of a leg: what holds on it and where first, then the set-up, then what was found, then when it is walked.
#[must_use]
pub fn leg_told(leg: &Leg, voice: Voice) -> Said {
    let says = sentences(leg, &grave(leg), voice);
    Said::join(says.into_iter().chain(leg_when(leg, voice)), " ")
}

/// The same a paragraph each: what holds, how the teams are tied, each thing found, when it is walked.
#[must_use]
pub(crate) fn leg_paragraphs(leg: &Leg, voice: Voice) -> Vec<Said> {
    let says = sentences(leg, &grave(leg), voice);
    says.into_iter().chain(leg_when(leg, voice)).collect()
}

/// What to do for who stands on the leg: that of the gravest thing found for which there is something to do there; behind it
/// what is missing besides.
#[must_use]
pub(crate) fn leg_act(leg: &Leg, voice: Voice) -> Option<Said> {
    let mut found = grave(leg).into_iter();
    let act = found.find_map(|one| Some((finding::act(one, voice)?, one)));
    let (act, by) = act?;
    // Who walks on otherwise than planned is told of falls too; who turns back or belays need not be.
    let goes_on = cure(by).is_some();
    let mut besides = found.filter(|one| goes_on || !is_of_falls(one));
    let too = besides.find_map(|one| finding::too(one, voice));
    let says = Said::join([act].into_iter().chain(too), "; ");
    Some(says.capital().then(".").map_names(plain::line))
}

/// What makes a rope that is too short long enough.
fn cure(finding: &Finding) -> Option<&RopeCure> {
    match finding.fact()? {
        Fact::NoRope { cure, .. } => cure.as_ref(),
        _ => None,
    }
}

fn is_of_falls(finding: &Finding) -> bool {
    let fact = finding.fact();
    fact.is_some_and(|fact| matches!(fact, Fact::HeldInNone { .. } | Fact::HeldOffCentre { .. }))
}

/// How it is walked by who comes back over it, where the rope is too short as planned and walking closer is all it takes.
#[must_use]
pub(crate) fn leg_back(leg: &Leg, voice: Voice) -> Option<Said> {
    let closer = |cure: &&RopeCure| {
        let mut changes = cure.changes.iter();
        cure.joined_to.is_none() && changes.all(|one| matches!(one, Change::Closer { .. }))
    };
    let cure = grave(leg).into_iter().filter_map(cure).find(closer)?;
    let args = [
        ("spacing", Arg::Needed(cure.spacing_m)),
        ("rope", Arg::Said(rope(&cure.rope, voice))),
    ];
    Some(voice.say("leg-back", &args).map_names(plain::line))
}

/// The same where the leg begins, without when it is walked, and where [`alarm`] was said before: what that told is not told
/// again.
#[must_use]
pub fn leg_after_alarm(leg: &Leg, voice: Voice) -> Said {
    let told = usize::from(alarm(leg, voice).is_some());
    let found = grave(leg);
    let rest = found.get(told..).unwrap_or_default();
    Said::join(sentences(leg, rest, voice), " ")
}

/// `Stop: up to 44° steep on 104 m → belay from anchors, or another line.`: the gravest thing found on a leg that stops the
/// team or is outside the limits.
#[must_use]
pub fn alarm(leg: &Leg, voice: Voice) -> Option<Said> {
    let gravest = *grave(leg).first()?;
    let args = [
        ("word", Arg::Said(verdict(leg.verdict, voice).capital())),
        ("says", Arg::Said(finding::short_with_cure(gravest, voice))),
    ];
    let said = || voice.say("leg-alarm", &args).map_names(plain::line);
    (leg.verdict >= Verdict::Outside).then(said)
}

/// What is graver than a note, the gravest first. That the width was assumed stands beside the width.
fn grave(leg: &Leg) -> Vec<&Finding> {
    let beside = |f: &Finding| leg.gap_assumed && matches!(f.fact(), Some(Fact::GapAssumed { .. }));
    let found = leg.findings.iter();
    let mut grave: Vec<&Finding> = found
        .filter(|f| f.level() < Level::Note && !beside(f))
        .collect();
    grave.sort_by_key(|f| (f.level(), f.alarm()));
    grave
}

/// Each with what to do about it, what says the same once; many that are only looked at in a few words together.
fn told(found: &[&Finding], voice: Voice) -> Vec<Said> {
    let (mut says, mut too): (Vec<Said>, Vec<Said>) = (Vec::new(), Vec::new());
    let once = |list: &mut Vec<Said>, said: Said| {
        if !list.contains(&said) {
            list.push(said);
        }
    };
    for finding in found {
        if finding.level() < Level::Look || says.len() < WHOLE {
            once(&mut says, finding::short_with_cure(finding, voice));
        } else {
            once(&mut too, finding::brief(finding, voice));
        }
    }
    if !too.is_empty() {
        let what = Arg::Said(Said::join(too, "; "));
        says.push(voice.say("page-too", &[("what", what)]));
    }
    says
}

fn sentences(leg: &Leg, found: &[&Finding], voice: Voice) -> Vec<Said> {
    let stop = Said::from(".");
    let sentence = |said: Said| said.capital().then(&stop);
    let word = word_in_part(leg, voice).unwrap_or_else(|| means(leg.verdict, voice));
    let line = [
        ("leg", Arg::Count(leg.leg)),
        ("span", row::span(leg)),
        ("length", Arg::Whole(leg.length_m)),
    ];
    let mut says = vec![sentence(word), voice.say("leg-line", &line)];
    let teams = leg.teams.iter();
    says.extend(teams.map(|t| team_line(t, leg.teams.len(), voice)));
    says.extend(gap(leg, "leg-gap", voice).map(sentence));
    says.extend(told(found, voice).into_iter().map(sentence));
    let one_line = |said: Said| said.map_names(plain::line);
    says.into_iter().map(one_line).collect()
}

/// How wide the gaps of a roped leg are, whether that was given, and whether there are others.
fn gap(leg: &Leg, key: &str, voice: Voice) -> Option<Said> {
    let assumed = ("assumed", Arg::yes(leg.gap_assumed));
    let args: Vec<_> = row::gap_args(leg, voice)
        .into_iter()
        .chain([assumed])
        .collect();
    leg.roped.then(|| voice.say(key, &args))
}

/// When a leg is walked and between which heights, in a sentence; nothing where neither is known.
fn leg_when(leg: &Leg, voice: Voice) -> Option<Said> {
    let begin = spot(leg.start_clock, leg.start_height_m, voice)?;
    let end = spot(leg.end_clock, leg.end_height_m, voice)?;
    let args = [("begin", Arg::Said(begin)), ("end", Arg::Said(end))];
    Some(voice.say("leg-when", &args))
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
