//! One leg of a message: its figures stay, reasons are left out first, then words.

use super::{MOST, ascii, teams::teams};
use crate::{
    fault::Level,
    plan::{
        ZoneSummary,
        finding::Finding,
        leg::{Leg, Verdict},
    },
    say::{arg::Arg, finding, plain, round::Round, span::Said, voice::Voice},
    write::parts::{
        row::{self, LegRow, TeamRow},
        sentence,
    },
};

/// One leg within [`MOST`] characters. Its figures stay; reasons are left out first, and zones are named where there is room.
#[must_use]
pub fn leg(leg: &Leg, zones: &[ZoneSummary], voice: Voice) -> String {
    let told = Told {
        leg,
        row: LegRow::new(leg, voice),
        zones: named(leg, zones, voice),
        reasons: reasons(leg, voice),
        gravest: gravest(leg, voice),
        voice,
    };
    let mut said = told.ways().map(|way| told.lines(way));
    said.find(|text| text.len() <= MOST)
        .unwrap_or_else(|| told.at_least())
}

/// The set-up of each team, the gap and the word of a roped leg, in one line of ASCII; the set-up first, but behind `STOP`
/// or `OUTSIDE`.
#[must_use]
pub fn set_up(leg: &Leg, voice: Voice) -> String {
    let told = Told {
        leg,
        row: LegRow::new(leg, voice),
        zones: None,
        reasons: Vec::new(),
        gravest: String::new(),
        voice,
    };
    let teams = told.teams(Words::Line).into_iter();
    let word = sentence::means_in_short(leg.verdict, voice).to_string();
    let word = (!told.is_grave()).then_some(word);
    let all: Vec<String> = teams.chain(told.gap(Words::Line)).chain(word).collect();
    let line = warned(leg, Said::words(all.join("; ")), voice);
    ascii(&line.to_string())
}

/// The line as it is, or behind the word of a leg that stops the team or is outside the limits.
#[must_use]
pub fn warned(leg: &Leg, line: Said, voice: Voice) -> Said {
    let word = match leg.verdict {
        Verdict::Stop => "stop",
        Verdict::Outside => "outside",
        _ => return line,
    };
    let args = [("word", Arg::Word(word)), ("line", Arg::Said(line))];
    voice.say("device-warned", &args)
}

/// One way to say a leg.
#[derive(Clone, Copy)]
struct Way {
    words: Words,
    figures: Figures,
    /// Whether the zones are named.
    zones: bool,
    /// How many reasons are told.
    reasons: usize,
    /// Whether the other reasons are counted.
    rest: bool,
    /// Whether the gravest reason alone is told, in its fewest words.
    gravest: bool,
}

/// How many words stand beside the figures.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Words {
    /// As many as make it read well.
    Wide,
    /// As few as can be read.
    Short,
    /// Fewer, and few units.
    Terse,
    /// So few that the figures of two teams have room.
    Least,
    /// As one line of a waypoint.
    Line,
    /// Many different teams: how many, and the longest rope.
    Counted,
}

/// Which figures are told of the place; those of the set-up always are.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Figures {
    /// The set-up and the gap alone.
    SetUp,
    /// Where to rope up too.
    Place,
    /// Where on the leg its word first holds too.
    Begin,
    /// How high it begins too, and how long its word holds.
    All,
}

impl Figures {
    /// The most first.
    const ALL: [Self; 4] = [Self::All, Self::Begin, Self::Place, Self::SetUp];
}

/// A leg and what there is to say of it.
struct Told<'a> {
    leg: &'a Leg,
    row: LegRow<'a>,
    /// Names of its zones, where all of them can be written in ASCII.
    zones: Option<String>,
    /// What wants a look, the gravest first.
    reasons: Vec<String>,
    /// The gravest of them in its fewest words; empty where nothing wants a look.
    gravest: String,
    voice: Voice,
}

impl Told<'_> {
    /// From the fullest to the shortest: names of zones are left out first, then reasons, then words, and only then figures of
    /// the place. What wants a look is never without a reason as long as it fits; how many more there are goes before
    /// where to rope up does.
    fn ways(&self) -> impl Iterator<Item = Way> {
        let all = self.reasons.len();
        let way = |words, figures, reasons| Way {
            words,
            figures,
            zones: false,
            reasons,
            rest: true,
            gravest: false,
        };
        let zoned = [Words::Wide, Words::Short]
            .into_iter()
            .flat_map(move |words| {
                let whole = way(words, Figures::All, all);
                [true, false].map(|zones| Way { zones, ..whole })
            });
        let fewer = move |words| (1..all).rev().map(move |n| way(words, Figures::All, n));
        let last = move |words, figures| {
            let alone = way(words, figures, all.min(1));
            [false, true].map(|gravest| Way { gravest, ..alone })
        };
        let (short, terse) = (Words::Short, Words::Terse);
        let worded = fewer(short).chain(fewer(terse));
        let less = move |kept: &'static [Figures]| {
            let words = move |&kept| [(terse, kept), (Words::Least, kept)];
            let less = kept.iter().flat_map(words);
            less.flat_map(move |(words, kept)| last(words, kept))
        };
        // Where to rope up is told before how many reasons are left out.
        let uncounted = last(Words::Least, Figures::Place).map(|way| Way { rest: false, ..way });
        let counted = Figures::ALL.iter().map(|kept| (Words::Counted, *kept));
        let counted = counted.flat_map(move |(words, kept)| last(words, kept));
        let cut = less(&Figures::ALL[..3]).chain(uncounted);
        let cut = cut.chain(less(&Figures::ALL[3..])).chain(counted);
        zoned.chain(worded).chain(cut)
    }

    /// Whether it stops or is outside.
    fn is_grave(&self) -> bool {
        self.leg.verdict >= Verdict::Outside
    }

    fn lines(&self, way: Way) -> String {
        let (words, zones) = (way.words, way.zones);
        let mut lines = vec![self.begins(way)];
        match words {
            Words::Counted => lines.push(self.counted()),
            _ => lines.extend(self.teams(words)),
        }
        let named = self.zones.clone().filter(|_| zones);
        let place = [self.gap(words), self.up(way), named];
        match words {
            Words::Wide => lines.extend(place.into_iter().flatten()),
            _ => lines.push(join(place.into_iter().flatten())),
        }
        lines.push(self.why(way));
        lines.retain(|line| !line.is_empty());
        ascii(&lines.join("\n"))
    }

    fn teams(&self, words: Words) -> Vec<String> {
        let teams = teams(&self.row, words == Words::Least, self.voice);
        teams.iter().map(|team| self.team(team, words)).collect()
    }

    /// Not even so many teams fit: only the leg, its word and why.
    fn at_least(&self) -> String {
        let report = self.voice.say("message-report", &[]).to_string();
        let way = Way {
            words: Words::Counted,
            figures: Figures::SetUp,
            zones: false,
            reasons: 1,
            rest: true,
            gravest: true,
        };
        let mut lines = vec![self.begins(way), self.why(way), report];
        lines.retain(|line| !line.is_empty());
        ascii(&lines.join("\n"))
    }

    /// `Leg 2 0.98-1.44 km ROPED, stop at 1.02-1.08 km, 60 m`.
    fn begins(&self, way: Way) -> String {
        let roped = match (self.leg.roped, self.leg.verdict) {
            (true, _) => "yes",
            (false, Verdict::Unroped) => "plain",
            (false, _) => "no",
        };
        let args = [
            ("leg", Arg::Count(self.leg.leg)),
            ("span", row::span(self.leg)),
            ("roped", Arg::Word(roped)),
            ("verdict", Arg::Said(self.word(way))),
        ];
        self.voice.say("message-leg", &args).to_string()
    }

    /// The word, and where it stops the team on a part of the leg only.
    fn word(&self, way: Way) -> Said {
        let word = sentence::means_in_short(self.leg.verdict, self.voice);
        let part = match (way.figures, way.words) {
            (Figures::All, Words::Wide) => sentence::part_of_word(self.leg, self.voice),
            (Figures::All | Figures::Begin, _) => sentence::begin_of_word(self.leg, self.voice),
            _ => None,
        };
        match part.filter(|_| self.is_grave()) {
            Some(at) => {
                let args = [("word", Arg::Said(word)), ("where", Arg::Said(at))];
                self.voice.say("message-word-at", &args)
            }
            None => word,
        }
    }

    /// `3 people 13 m apart, no knots, coil 15.5 m each` and the rope; the teams are named where there are several.
    fn team(&self, (who, team): &(String, &TeamRow<'_>), words: Words) -> String {
        let setup = team.setup;
        let rope_m = setup.rope.as_ref().map(|rope| rope.length_m);
        let number = |m, round| Arg::Said(Said::figure(self.voice.number(m, round)));
        let args = [
            ("people", Arg::Count(setup.people)),
            ("spacing", Arg::Needed(setup.spacing_m)),
            ("apart", number(setup.spacing_m, Round::Up)),
            ("coils", number(setup.coil_carried_m, Round::Down)),
            ("needs", number(setup.ledger.total_m, Round::Up)),
            ("knots", Arg::Count(setup.knots.count)),
            ("bite", row::bite(setup)),
            ("coiled", Arg::yes(setup.coil_carried_m > 0.0)),
            ("coil", Arg::There(setup.coil_carried_m)),
            ("needed", Arg::Needed(setup.ledger.total_m)),
            ("named", Arg::yes(rope_m.is_some())),
            ("rope", Arg::There(rope_m.unwrap_or_default())),
        ];
        let key = match words {
            Words::Wide => "message-team",
            Words::Line => "device-set-up",
            Words::Terse => "message-team-terse",
            Words::Least => "message-team-least",
            Words::Short | Words::Counted => "message-team-short",
        };
        format!("{who}{}", self.voice.say(key, &args))
    }

    /// Many different teams: how they differ, and where the rest stands.
    fn counted(&self) -> String {
        let needed_m = self.leg.teams.iter().map(|t| t.ledger.total_m);
        let args = [
            ("teams", Arg::Count(self.leg.teams.len())),
            ("rope", Arg::Needed(needed_m.fold(0.0, f64::max))),
        ];
        let told = self.voice.say("message-teams", &args).to_string();
        if self.leg.roped { told } else { String::new() }
    }

    /// `gap 15 m, 17.4 m along the way`; that nobody gave one is said too.
    fn gap(&self, words: Words) -> Option<String> {
        if !self.leg.roped {
            return None;
        }
        let voice = self.voice;
        let wide = voice
            .units
            .number(self.leg.gap_m.unwrap_or_default(), Round::Up);
        let wide = ("wide", Arg::Said(Said::figure(wide)));
        let args: Vec<_> = row::gap_args(self.leg, voice)
            .into_iter()
            .chain([wide])
            .collect();
        let key = match words {
            Words::Wide => "message-gap",
            Words::Terse | Words::Least => "message-gap-terse",
            _ => "message-gap-short",
        };
        let gap = ("gap", Arg::Said(voice.say(key, &args)));
        let assumed = ("assumed", Arg::yes(self.leg.gap_assumed));
        let told = voice.say("width-told", &[gap, assumed]);
        Some(told.to_string())
    }

    /// Where the team ropes up: `rope up at 66.50440N 2.00000W, 1331 m high`.
    fn up(&self, way: Way) -> Option<String> {
        if !self.leg.roped || way.figures < Figures::Place {
            return None;
        }
        let [lon, lat] = self.leg.start;
        let half = |deg: f64, [north, south]: [char; 2]| {
            let side = if deg < 0.0 { south } else { north };
            format!("{}{side}", Round::Nearest.fixed(deg.abs(), 5))
        };
        let place = format!("{} {}", half(lat, ['N', 'S']), half(lon, ['E', 'W']));
        let height_m = self
            .leg
            .start_height_m
            .filter(|_| way.figures == Figures::All);
        let args = [
            ("place", Arg::Said(Said::figure(&place))),
            ("high", Arg::yes(height_m.is_some())),
            ("height", Arg::Whole(height_m.unwrap_or_default())),
        ];
        let key = match way.words {
            Words::Wide => "message-up",
            _ => "message-up-short",
        };
        Some(self.voice.say(key, &args).to_string())
    }

    /// `! fall not held; rope too short; 2 more`: the rest of so many is counted.
    fn why(&self, way: Way) -> String {
        let told = way.reasons.min(self.reasons.len());
        let (named, rest) = self.reasons.split_at(told);
        if named.is_empty() {
            return String::new();
        }
        let named = match way.gravest {
            true => self.gravest.clone(),
            false => named.join("; "),
        };
        let worded = matches!(way.words, Words::Wide | Words::Short);
        let args = [
            ("reasons", Arg::Said(Said::words(named))),
            ("more", Arg::Count(if way.rest { rest.len() } else { 0 })),
            ("worded", Arg::yes(worded)),
        ];
        self.voice.say("message-why", &args).to_string()
    }
}

fn join(parts: impl Iterator<Item = String>) -> String {
    parts.collect::<Vec<_>>().join(", ")
}

/// What the leg wants a look for, the gravest first, in few words.
fn reasons(leg: &Leg, voice: Voice) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    for said in grave(leg).map(|f| finding::brief(f, voice).to_string()) {
        if !told.contains(&said) {
            told.push(said);
        }
    }
    told
}

/// The gravest of them in its fewest words.
fn gravest(leg: &Leg, voice: Voice) -> String {
    let said = grave(leg).map(|f| finding::briefest(f, voice).to_string());
    { said }.next().unwrap_or_default()
}

/// Findings that want a look, the gravest first.
fn grave(leg: &Leg) -> impl Iterator<Item = &Finding> {
    let mut grave: Vec<&Finding> = leg.findings.iter().collect();
    grave.retain(|f| f.level() < Level::Note);
    grave.sort_by_key(|f| f.level());
    grave.into_iter()
}

/// The names of the zones of a leg; none where one of them has no name in ASCII.
fn named(leg: &Leg, zones: &[ZoneSummary], voice: Voice) -> Option<String> {
    let name = |number: &usize| {
        let zone = zones.iter().find(|zone| zone.zone == *number)?;
        let name = plain::line(zone.name.as_deref()?);
        name.is_ascii().then_some(name)
    };
    let names: Option<Vec<String>> = leg.zones.iter().map(name).collect();
    let names = names.filter(|names| !names.is_empty())?.join(", ");
    let names = ("names", Arg::Said(Said::name(names)));
    Some(voice.say("message-zones", &[names]).to_string())
}
