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
    let teams = teams(&told.row, voice);
    let teams = teams.iter().map(|team| told.team(team, Form::Line));
    let gap = told.gap(Form::Line).map(|gap| {
        let args = [
            ("gap", Arg::Said(Said::words(gap))),
            ("assumed", Arg::yes(leg.gap_assumed)),
        ];
        voice.say("device-gap", &args).to_string()
    });
    let word = (!told.is_grave()).then(|| told.word(Form::Line).to_string());
    let all: Vec<String> = teams.chain(gap).chain(word).collect();
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
    form: Form,
    /// Whether the zones are named.
    zones: bool,
    /// How many reasons are told.
    reasons: usize,
    /// Whether the other reasons are counted.
    rest: bool,
    /// Whether the gravest reason alone is told, in its fewest words.
    gravest: bool,
}

/// How much a leg says of itself.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    /// In words.
    Wide,
    /// In as few words as can be read.
    Short,
    /// Without where on the leg its word holds and how high it begins.
    Shorter,
    /// Figures with as few words and units as can be read.
    Terse,
    /// The same without place.
    Bare,
    /// As one line of a waypoint.
    Line,
    /// Many different teams: how many, and the longest rope.
    Counted,
    /// The same without gap and place.
    Least,
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
    /// From the fullest to the shortest: names of zones are left out first, then reasons and words. A leg that stops or is
    /// outside is never without a reason.
    fn ways(&self) -> impl Iterator<Item = Way> {
        let (all, grave) = (self.reasons.len(), self.is_grave());
        let way = |form, reasons| Way {
            form,
            zones: false,
            reasons,
            rest: true,
            gravest: false,
        };
        let gravest = move |form| Way {
            gravest: true,
            ..way(form, 1)
        };
        let whole = [Form::Wide, Form::Short].into_iter().flat_map(move |form| {
            [true, false].map(|zones| Way {
                zones,
                ..way(form, all)
            })
        });
        let fewer = move |form| {
            let alone = Way {
                rest: false,
                ..way(form, all.min(1))
            };
            let counted = (1..all).rev().map(move |n| way(form, n));
            let last = if grave { gravest(form) } else { way(form, 0) };
            counted.chain([alone, last])
        };
        let roped = [Form::Short, Form::Shorter].into_iter().flat_map(fewer);
        let terse = [Form::Terse, Form::Bare].map(gravest).into_iter();
        let many = [Form::Counted, Form::Least];
        let many = many.into_iter().flat_map(move |form| {
            let told = way(form, all.min(1));
            [told, gravest(form)]
        });
        let terse = terse.filter(move |_| grave);
        whole.chain(roped).chain(terse).chain(many)
    }

    /// Whether it stops or is outside.
    fn is_grave(&self) -> bool {
        self.leg.verdict >= Verdict::Outside
    }

    fn lines(&self, way: Way) -> String {
        let (form, zones) = (way.form, way.zones);
        let mut lines = vec![self.begins(form)];
        match form {
            Form::Counted | Form::Least => lines.push(self.counted()),
            _ => lines.extend(
                teams(&self.row, self.voice)
                    .iter()
                    .map(|team| self.team(team, form)),
            ),
        }
        let named = self.zones.clone().filter(|_| zones);
        match form {
            Form::Wide => {
                lines.extend(self.gap(form));
                lines.extend(self.up(form));
                lines.extend(named);
            }
            Form::Bare => lines.extend(self.gap(form)),
            Form::Least => {}
            _ => lines.push(join(
                self.gap(form).into_iter().chain(self.up(form)).chain(named),
            )),
        }
        lines.push(self.why(way));
        lines.retain(|line| !line.is_empty());
        ascii(&lines.join("\n"))
    }

    /// Not even so many teams fit: only the leg, its word and why.
    fn at_least(&self) -> String {
        let report = self.voice.say("message-report", &[]).to_string();
        let why = self.why(Way {
            form: Form::Least,
            zones: false,
            reasons: 1,
            rest: false,
            gravest: true,
        });
        let mut lines = vec![self.begins(Form::Shorter), why, report];
        lines.retain(|line| !line.is_empty());
        ascii(&lines.join("\n"))
    }

    /// `Leg 2 0.98-1.44 km ROPED, stop at 1.02-1.08 km, 60 m`.
    fn begins(&self, form: Form) -> String {
        let roped = match (self.leg.roped, self.leg.verdict) {
            (true, _) => "yes",
            (false, Verdict::Unroped) => "plain",
            (false, _) => "no",
        };
        let args = [
            ("leg", Arg::Count(self.leg.leg)),
            ("span", row::span(self.leg)),
            ("roped", Arg::Word(roped)),
            ("verdict", Arg::Said(self.word(form))),
        ];
        self.voice.say("message-leg", &args).to_string()
    }

    /// The word, and where it stops the team on a part of the leg only.
    fn word(&self, form: Form) -> Said {
        let word = sentence::means_in_short(self.leg.verdict, self.voice);
        let part = match form {
            Form::Wide => sentence::part_of_word(self.leg, self.voice),
            Form::Short => sentence::begin_of_word(self.leg, self.voice),
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
    fn team(&self, (who, team): &(String, &TeamRow<'_>), form: Form) -> String {
        let setup = team.setup;
        let rope_m = setup.rope.as_ref().map(|rope| rope.length_m);
        let number = |m, round| Arg::Said(Said::figure(self.voice.number(m, round)));
        let args = [
            ("people", Arg::Count(setup.people)),
            ("spacing", Arg::Needed(setup.spacing_m)),
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
        let key = match form {
            Form::Wide => "message-team",
            Form::Line => "device-set-up",
            Form::Terse | Form::Bare => "message-team-terse",
            _ => "message-team-short",
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
    fn gap(&self, form: Form) -> Option<String> {
        if !self.leg.roped {
            return None;
        }
        let (gap_m, along_m) = (self.leg.gap_m, self.leg.effective_gap_m);
        let longer = gap_m.zip(along_m).is_some_and(|(gap, along)| {
            let shown = |m| self.voice.number(m, Round::Up);
            shown(gap) != shown(along)
        });
        let kind = match (gap_m.is_some(), longer) {
            (false, _) => "none",
            (true, true) => "askew",
            (true, false) => "square",
        };
        let args = [
            ("kind", Arg::Word(kind)),
            ("gap", Arg::Needed(gap_m.unwrap_or_default())),
            (
                "wide",
                Arg::Said(Said::figure(
                    self.voice
                        .units
                        .number(gap_m.unwrap_or_default(), Round::Up),
                )),
            ),
            ("along", Arg::Needed(along_m.unwrap_or_default())),
            ("known", Arg::yes(self.leg.gap_known)),
        ];
        let key = match form {
            Form::Wide => "message-gap",
            Form::Terse | Form::Bare => "message-gap-terse",
            _ => "message-gap-short",
        };
        Some(self.voice.say(key, &args).to_string())
    }

    /// Where the team ropes up: `rope up at 66.50440N 2.00000W, 1331 m high`.
    fn up(&self, form: Form) -> Option<String> {
        let [lon, lat] = self.leg.start;
        let half = |deg: f64, [north, south]: [char; 2]| {
            let side = if deg < 0.0 { south } else { north };
            format!("{}{side}", Round::Nearest.fixed(deg.abs(), 5))
        };
        let place = format!("{} {}", half(lat, ['N', 'S']), half(lon, ['E', 'W']));
        let height_m = self
            .leg
            .start_height_m
            .filter(|_| matches!(form, Form::Wide | Form::Short));
        let args = [
            ("place", Arg::Said(Said::figure(&place))),
            ("high", Arg::yes(height_m.is_some())),
            ("height", Arg::Whole(height_m.unwrap_or_default())),
        ];
        let key = match form {
            Form::Wide => "message-up",
            _ => "message-up-short",
        };
        self.leg
            .roped
            .then(|| self.voice.say(key, &args).to_string())
    }

    /// `! fall not held; rope too short; 2 more`: the rest of so many is counted.
    fn why(&self, way: Way) -> String {
        let told = way.reasons.min(self.reasons.len());
        let (named, rest) = self.reasons.split_at(told);
        if named.is_empty() {
            return String::new();
        }
        let (named, more) = match way.gravest {
            true => (self.gravest.clone(), 0),
            false => (named.join("; "), if way.rest { rest.len() } else { 0 }),
        };
        let args = [
            ("reasons", Arg::Said(Said::words(named))),
            ("more", Arg::Count(more)),
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
