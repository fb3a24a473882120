//! What stops, what is outside, what to look at in short: a line or two each, where it is and what to do about it.

use crate::{
    fault::Level,
    plan::leg::Verdict,
    say::{arg::Arg, finding::brief, plain, span::Said, voice::Voice},
    write::{
        parts::{
            findings::{self, Group},
            sentence,
        },
        sheet::Sheet,
    },
};

/// Lines of one kind that are told one by one before the rest of its legs is only named. Our judgement.
const ONE_BY_ONE: usize = 3;

/// What is told of one place, or of several.
pub(crate) struct ToldHere {
    pub place: Said,
    pub says: Said,
    pub cure: Option<Said>,
}

/// All that is told of one level.
pub(crate) struct OfLevel {
    pub level: Level,
    pub word: Verdict,
    /// `Stop: leg 2 at 2.21–2.29 km, 66 m`.
    pub title: Said,
    pub entries: Vec<ToldHere>,
}

/// What stops first; levels of which nothing is told are left out.
pub(crate) fn levels(sheet: &Sheet<'_>) -> Vec<OfLevel> {
    let voice = sheet.look.voice;
    let groups = findings::short_groups(sheet.plan, voice);
    let levels = [
        (Level::Stop, Verdict::Stop),
        (Level::Outside, Verdict::Outside),
        (Level::Look, Verdict::Look),
    ];
    let of_level = |(level, word)| {
        let groups = groups.iter().filter(|g| g.finding.level() == level);
        let groups: Vec<&Group<'_>> = groups.collect();
        let told = Told {
            level,
            stages: sheet.plan.route.stages.len(),
            voice,
        };
        (!groups.is_empty()).then(|| OfLevel {
            level,
            word,
            title: title(sheet, level, word),
            entries: told.entries(&groups),
        })
    };
    levels.into_iter().filter_map(of_level).collect()
}

/// `Stop: leg 2 at 2.21–2.29 km, 66 m`; of what is only to be looked at how many legs.
fn title(sheet: &Sheet<'_>, level: Level, word: Verdict) -> Said {
    let (legs, voice) = (&sheet.plan.legs, sheet.look.voice);
    let grave = (level < Level::Look).then(|| sentence::where_it_holds(legs, word, voice));
    grave
        .flatten()
        .unwrap_or_else(|| findings::title(level, voice))
}

/// One level of findings.
struct Told {
    level: Level,
    stages: usize,
    voice: Voice,
}

impl Told {
    /// One for each thing told; of a kind that says something else of many legs the first ones, and the other legs named.
    fn entries(&self, groups: &[&Group<'_>]) -> Vec<ToldHere> {
        // What was read of a whole file is told of the ice that is met.
        let planned = |group: &Group<'_>| {
            let mut others = groups.iter().filter(|other| !other.was_read());
            others.any(|other| other.finding.code() == group.finding.code())
        };
        let told = groups.iter().filter(|g| !g.was_read() || !planned(g));
        let told: Vec<&Group<'_>> = told.copied().collect();
        let of_a_kind = told.chunk_by(|a, b| a.finding.code() == b.finding.code());
        of_a_kind.flat_map(|kind| self.of_a_kind(kind)).collect()
    }

    fn of_a_kind(&self, kind: &[&Group<'_>]) -> Vec<ToldHere> {
        let many = self.level == Level::Look && kind.len() > ONE_BY_ONE + 1;
        let (first, rest) = kind.split_at(if many { ONE_BY_ONE } else { kind.len() });
        let mut entries: Vec<ToldHere> = first.iter().map(|group| self.entry(group)).collect();
        if let Some(group) = rest.first() {
            let too = Arg::Said(brief(&group.finding, self.voice));
            entries.push(ToldHere {
                place: line(findings::places_of_all(rest, self.voice)),
                says: line(self.voice.say("page-too", &[("what", too)])),
                cure: None,
            });
        }
        entries
    }

    fn entry(&self, group: &Group<'_>) -> ToldHere {
        // Where there is one stage, it is the route.
        let place = match (self.stages, group.of_stages()) {
            (1, true) => self.voice.say("place-route", &[]),
            _ => group.places(self.voice),
        };
        ToldHere {
            place: line(place),
            says: line(group.says.clone()),
            cure: group.hint.clone().map(line),
        }
    }
}

/// Names on one line.
fn line(said: Said) -> Said {
    said.map_names(plain::line)
}

/// Neighbours that share a cure.
pub(crate) fn alike(entries: &[ToldHere]) -> impl Iterator<Item = &[ToldHere]> {
    entries.chunk_by(|a, b| a.cure.is_some() && a.cure == b.cure)
}
