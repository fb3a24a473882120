//! What stops, what is outside, what to look at: a line or two each, where it is and what to do about it.

use unicode_width::UnicodeWidthStr;

use crate::{
    fault::Level,
    plan::leg::Verdict,
    say::{arg::Arg, finding::brief, plain, span::Said, voice::Voice},
    write::{
        parts::{
            findings::{self, Group},
            paragraph::{bullet, padded},
            sentence, style,
        },
        sheet::Sheet,
    },
};

/// Lines of one kind that are told one by one before the rest of its legs is only named. Our judgement.
const ONE_BY_ONE: usize = 3;
/// Widest place that stands in a column of its own. Our judgement.
const PLACE: usize = 15;

/// What is told of one place, or of several.
struct Entry {
    place: String,
    says: String,
    cure: Option<String>,
}

/// What stops first.
pub(super) fn told(out: &mut String, sheet: &Sheet<'_>) {
    let (voice, width) = (sheet.look.voice, sheet.look.width);
    let groups = findings::short_groups(sheet.plan, voice);
    let levels = [
        (Level::Stop, Verdict::Stop),
        (Level::Outside, Verdict::Outside),
        (Level::Look, Verdict::Look),
    ];
    for (level, word) in levels {
        let of_level = groups.iter().filter(|g| g.finding.level() == level);
        let of_level: Vec<&Group<'_>> = of_level.collect();
        if of_level.is_empty() {
            continue;
        }
        out.push('\n');
        let sign = format!("{} ", style::sign(word));
        bullet(out, &sign, &title(sheet, level, word).to_string(), width);
        let told = Told {
            level,
            stages: sheet.plan.route.stages.len(),
            voice,
        };
        print(out, &told.entries(&of_level), width);
    }
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
    fn entries(&self, groups: &[&Group<'_>]) -> Vec<Entry> {
        let of_a_kind = groups.chunk_by(|a, b| a.finding.code() == b.finding.code());
        of_a_kind.flat_map(|kind| self.of_a_kind(kind)).collect()
    }

    fn of_a_kind(&self, kind: &[&Group<'_>]) -> Vec<Entry> {
        // What was read of a whole file is told of the ice that is met.
        let planned = kind.iter().any(|group| !group.was_read());
        let kind = kind.iter().filter(|group| !(planned && group.was_read()));
        let kind: Vec<&Group<'_>> = kind.copied().collect();
        let many = self.level == Level::Look && kind.len() > ONE_BY_ONE + 1;
        let (first, rest) = kind.split_at(if many { ONE_BY_ONE } else { kind.len() });
        let mut entries: Vec<Entry> = first.iter().map(|group| self.entry(group)).collect();
        if let Some(group) = rest.first() {
            let too = Arg::Said(brief(&group.finding, self.voice));
            entries.push(Entry {
                place: text(findings::places_of_all(rest, self.voice)),
                says: text(self.voice.say("page-too", &[("what", too)])),
                cure: None,
            });
        }
        entries
    }

    fn entry(&self, group: &Group<'_>) -> Entry {
        // Where there is one stage, it is the route.
        let place = match (self.stages, group.of_stages()) {
            (1, true) => self.voice.say("place-route", &[]),
            _ => group.places(self.voice),
        };
        Entry {
            place: text(place),
            says: text(group.says.clone()),
            cure: group.hint.clone().map(text),
        }
    }
}

fn text(said: Said) -> String {
    said.map_names(plain::line).to_string()
}

/// Places in a column where they are short; the cure on the same line where there is room.
fn print(out: &mut String, entries: &[Entry], width: usize) {
    let widths = entries.iter().map(|entry| entry.place.width());
    let widest = PLACE.min(width / 3);
    let column = widths.filter(|place| *place <= widest).max().unwrap_or(0);
    for entry in entries {
        let sign = if entry.place.width() <= column {
            format!("  {}  ", padded(&entry.place, column, false))
        } else {
            bullet(out, "  ", &entry.place, width);
            " ".repeat(column + 4)
        };
        let says = &entry.says;
        let Some(cure) = &entry.cure else {
            bullet(out, &sign, says, width);
            continue;
        };
        let whole = format!("{says} → {cure}");
        if sign.width() + whole.width() <= width {
            bullet(out, &sign, &whole, width);
        } else {
            bullet(out, &sign, says, width);
            let arrow = format!("{}→ ", " ".repeat(sign.width()));
            bullet(out, &arrow, cure, width);
        }
    }
}
