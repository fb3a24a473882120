//! Findings in words: what was found, what to do about it, and where it belongs.

mod args;
mod hours;
mod line;
mod placeable;
mod whereabouts;
mod zones;

pub use whereabouts::{leg_of_teams, legs, on_legs, place, stage};

use crate::{
    plan::{
        fact::Fact,
        finding::{Finding, What},
    },
    say::{fault, span::Said, voice::Voice},
};

/// The sentence, without a full stop.
#[must_use]
pub fn says(finding: &Finding, voice: Voice) -> Said {
    match &finding.what {
        What::Planned(fact) => voice.say(key(fact), &args::of(fact, &finding.at, voice)),
        What::Read(read) => fault::says(read, voice),
    }
}

/// What to do about it, if there is a way.
#[must_use]
pub fn hint(finding: &Finding, voice: Voice) -> Option<Said> {
    match &finding.what {
        What::Planned(fact) => voice.hint(key(fact), &args::of(fact, &finding.at, voice)),
        What::Read(read) => fault::hint(read, voice),
    }
}

/// The sentence in short; whole where there is no shorter one.
#[must_use]
pub fn short(finding: &Finding, voice: Voice) -> Said {
    attribute(finding, "short", voice).unwrap_or_else(|| says(finding, voice))
}

/// What to do about it in short, if there is a way.
#[must_use]
pub fn cure(finding: &Finding, voice: Voice) -> Option<Said> {
    attribute(finding, "cure", voice).or_else(|| hint(finding, voice))
}

/// What to do where somebody stands before it, in the fewest words, if there is something.
#[must_use]
pub fn act(finding: &Finding, voice: Voice) -> Option<Said> {
    attribute(finding, "act", voice)
}

/// What is missing besides, in the fewest words, where something else is to be done first.
#[must_use]
pub fn too(finding: &Finding, voice: Voice) -> Option<Said> {
    attribute(finding, "too", voice)
}

/// What was found in short, and behind an arrow what to do about it.
#[must_use]
pub fn short_with_cure(finding: &Finding, voice: Voice) -> Said {
    with_cure(short(finding, voice), cure(finding, voice))
}

/// Words about a finding, and behind an arrow what to do about it.
#[must_use]
pub fn with_cure(says: Said, cure: Option<Said>) -> Said {
    match cure {
        Some(cure) => says.then(" → ").then(cure),
        None => says,
    }
}

fn attribute(finding: &Finding, name: &str, voice: Voice) -> Option<Said> {
    let fact = finding.fact()?;
    voice.attribute(key(fact), name, &args::of(fact, &finding.at, voice))
}

/// What was found in a few words, for a message.
#[must_use]
pub fn brief(finding: &Finding, voice: Voice) -> Said {
    match &finding.what {
        What::Planned(fact) => {
            let args = args::of(fact, &finding.at, voice);
            voice.say(&format!("brief-{}", fact.code()), &args)
        }
        What::Read(_) => Said::words(finding.code().replace('-', " ")),
    }
}

/// The same in the fewest words that still say it, for a message with hardly any room.
#[must_use]
pub fn briefest(finding: &Finding, voice: Voice) -> Said {
    let shorter = finding.fact().and_then(|fact| {
        let args = args::of(fact, &finding.at, voice);
        voice.attribute(&format!("brief-{}", fact.code()), "short", &args)
    });
    shorter.unwrap_or_else(|| brief(finding, voice))
}

/// The message of a fact. Two kinds share a code with a notice of reading, and so have a key of their own.
fn key(fact: &Fact) -> &'static str {
    match fact {
        Fact::GapAssumed { .. } => "gap-assumed-in-zone",
        fact => fact.code(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{fault::Level, say::language::Language};

    #[test]
    fn every_fact_has_its_sentence() {
        let known: std::collections::BTreeSet<&str> =
            Language::English.catalogue().messages().collect();
        let key = |code: &'static str| match code {
            "gap-assumed" => "gap-assumed-in-zone",
            code => code,
        };
        let facts = Fact::KINDS.iter().map(|(code, ..)| key(code));
        let silent: Vec<&str> = facts.filter(|key| !known.contains(key)).collect();
        assert_eq!(silent, [""; 0], "no sentence in data/words/en");
        let grave: Vec<&str> = Fact::KINDS
            .iter()
            .filter(|(_, level, _)| *level < Level::Note)
            .map(|(code, ..)| *code)
            .collect();
        let briefs: Vec<String> = grave.iter().map(|code| format!("brief-{code}")).collect();
        let silent: Vec<&String> = briefs
            .iter()
            .filter(|key| !known.contains(key.as_str()))
            .collect();
        assert!(
            silent.is_empty(),
            "no few words in data/words/en/brief.ftl: {silent:?}"
        );
        let english = Language::English.catalogue();
        let short = |key| english.entry(key)?.attribute("short");
        let long: Vec<&str> = grave
            .into_iter()
            .map(key)
            .filter(|key| short(key).is_none())
            .collect();
        assert!(long.is_empty(), "no `.short` in findings.ftl: {long:?}");
        let act = |key| english.entry(key)?.attribute("act");
        let stops = Fact::KINDS
            .iter()
            .filter(|(_, level, _)| *level <= Level::Outside);
        let idle: Vec<&str> = stops
            .map(|(code, ..)| *code)
            .filter(|code| act(code).is_none())
            .collect();
        assert!(
            idle.is_empty(),
            "nothing to do on the spot, no `.act`: {idle:?}"
        );
    }
}
