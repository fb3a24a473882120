//! What a zone's properties say, each judged by the table of interface section 3.

use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde_json::{Map, Value, value::RawValue};

use super::{
    at,
    document::Piece,
    names,
    number::{Bound, Unclear, Worse, Written, written},
    shape::named,
    text::{Spot, quoted, unmasked},
};
use crate::{
    fault::{Code, Problem},
    trip::zone::{RopeWord, Surface},
};

/// One property as it stands in the file.
#[derive(Debug)]
struct Property {
    name: String,
    json: String,
    at: Spot,
}

/// The properties of one feature; each is taken out when it is understood.
#[derive(Debug, Default)]
pub(super) struct Properties {
    list: Vec<Property>,
}

impl Properties {
    /// Takes the object apart; null is an empty one.
    pub(super) fn read(piece: Option<&Piece>) -> Result<Self, Problem> {
        let Some(piece) = piece else {
            return Ok(Self::default());
        };
        let parsed = serde_json::from_str::<Option<Pairs>>(&piece.json);
        let Ok(pairs) = parsed else {
            let kind = serde_json::from_str(&piece.json).unwrap_or(Value::Null);
            let says = format!("`properties` is {}, not an object", named(&kind));
            return Err(Problem::new(Code::BadGeojson, at(piece.at), says)
                .hint("`properties` is a list of names and values in braces"));
        };
        let mut here = (0, piece.at);
        let list = pairs
            .map_or(Vec::new(), |pairs| pairs.0)
            .into_iter()
            .map(|(name, raw)| {
                let offset = raw.get().as_ptr() as usize - piece.json.as_ptr() as usize;
                let between = piece.json.get(here.0..offset).unwrap_or_default();
                here = (offset, here.1.after(between));
                Property {
                    name,
                    json: raw.get().to_owned(),
                    at: here.1,
                }
            });
        Ok(Self {
            list: list.collect(),
        })
    }

    /// The zone's name; inventories spell it `Name` or `NAME`.
    pub(super) fn name(&self) -> Option<String> {
        let mut spellings = ["name", "Name", "NAME"].into_iter();
        spellings.find_map(|name| self.list.iter().rfind(|p| p.name == name).and_then(text_of))
    }

    /// The known names that stand there twice.
    pub(super) fn doubled(&self) -> Vec<Problem> {
        let again = |name: &&str| self.list.iter().filter(|p| p.name == *name).nth(1);
        let twice = names::KNOWN.iter().filter_map(again);
        let says = || "the property stands there twice".to_owned();
        let problems = twice.map(|p| p.problem(Code::BadGeojson, says()));
        problems
            .map(|p| p.hint("keep the one that is right"))
            .collect()
    }

    fn take(&mut self, name: &str) -> Option<Property> {
        let index = self.list.iter().position(|p| p.name == name)?;
        Some(self.list.remove(index))
    }

    /// A text that is carried through.
    pub(super) fn text(&mut self, name: &str) -> Option<String> {
        self.take(name).as_ref().and_then(text_of)
    }

    /// A number, or a range of them.
    pub(super) fn number(&mut self, name: &str, bound: &Bound) -> Result<Number, Problem> {
        let Some(property) = self.take(name) else {
            return Ok(Number::default());
        };
        let wrong = |code, says| property.problem(code, says);
        let shown = quoted(&property.json);
        let (low, high) = match property.written(bound)? {
            Written::Nothing => return Ok(Number::default()),
            Written::One(value) => (None, value),
            Written::Range(low, high) => (Some(low), high),
        };
        if low.is_some_and(|low| low > high) {
            let says = format!("the range {shown} of the {} runs downwards", bound.what);
            return Err(wrong(Code::RangeOrder, says).hint("write the smaller number first"));
        }
        if ![low.unwrap_or(high), high]
            .into_iter()
            .all(|value| bound.admits(value))
        {
            let Bound {
                what,
                unit,
                min,
                max,
                ..
            } = bound;
            let says = format!("{what} {shown} is outside {min} to {max} {unit}");
            return Err(wrong(Code::BadNumber, says).hint(bound.cure()));
        }
        let range = low.map(|_| property);
        Ok(Number {
            low,
            high: Some(high),
            range: range.map(|p| Range { shown, at: p.at }),
        })
    }

    /// One of a few words, in any case; the first one where nothing is given.
    pub(super) fn word<T: Copy + Default>(
        &mut self,
        name: &str,
        words: &[(&str, T)],
    ) -> Result<T, Problem> {
        let Some(property) = self.take(name) else {
            return Ok(T::default());
        };
        let given = match serde_json::from_str(&property.json) {
            Ok(Value::Null) => return Ok(T::default()),
            Ok(Value::String(text)) => text,
            _ => property.json.clone(),
        };
        let given = given.trim();
        if given.is_empty() || unmasked(given).is_some() {
            return Ok(T::default());
        }
        let found = words
            .iter()
            .find(|(word, _)| word.eq_ignore_ascii_case(given));
        found.map(|(_, value)| *value).ok_or_else(|| {
            let list: Vec<String> = words
                .iter()
                .map(|(word, _)| format!("\"{word}\""))
                .collect();
            let says = format!("{} is no word for `{name}`", quoted(&property.json));
            property
                .problem(Code::BadWord, says)
                .hint(format!("write one of {}", list.join(", ")))
        })
    }

    /// Unknown properties whose name is nearly a known one: the given and the right name.
    pub(super) fn near_misses(&self) -> Vec<(String, &'static str, Problem)> {
        let miss = |p: &Property| {
            let right = names::meant(&p.name)?;
            let says = format!(
                "the property `{}` means nothing here and was not used",
                p.name
            );
            let problem = p.problem(Code::NearMiss, says);
            Some((
                p.name.clone(),
                right,
                problem.hint(format!("the name is `{right}`")),
            ))
        };
        self.list.iter().filter_map(miss).collect()
    }

    /// What is left, passed through untouched, and complaints about what JSON cannot hold.
    pub(super) fn rest(self) -> (Map<String, Value>, Vec<Problem>) {
        let mut problems = Vec::new();
        let mut rest = Map::new();
        for property in self.list {
            match serde_json::from_str(&property.json) {
                Ok(mut value) => {
                    if unmask(&mut value) {
                        let says = "NaN or Infinity is no JSON and was read as null".to_owned();
                        problems.push(property.problem(Code::NotANumber, says));
                    }
                    rest.insert(property.name, value);
                }
                Err(_) => problems.push(property.unreadable()),
            }
        }
        (rest, problems)
    }
}

/// A number from a property.
#[derive(Debug, Default)]
pub(super) struct Number {
    /// The lower end, where a range was written.
    pub(super) low: Option<f64>,
    /// The number, or the upper end.
    pub(super) high: Option<f64>,
    /// The range as written.
    range: Option<Range>,
}

#[derive(Debug)]
struct Range {
    shown: String,
    at: Spot,
}

impl Number {
    /// The number, or the worse end of a range.
    pub(super) fn worse(&self, bound: &Bound) -> Option<f64> {
        match bound.worse {
            Worse::Upper => self.high,
            Worse::Lower => self.low.or(self.high),
        }
    }

    /// The warning that of a range only one end counts.
    pub(super) fn one_end_counts(&self, name: &str, bound: &Bound) -> Option<Problem> {
        let (range, value) = (self.range.as_ref()?, self.worse(bound)?);
        let (shown, what, unit) = (&range.shown, bound.what, bound.unit);
        let end = match bound.worse {
            Worse::Upper => "upper",
            Worse::Lower => "lower",
        };
        let says = format!("of the {what} {shown} the {end} end counts: {value} {unit}");
        let place = at(range.at).with_property(name);
        Some(Problem::new(Code::WorseEnd, place, says))
    }
}

impl Property {
    fn problem(&self, code: Code, says: String) -> Problem {
        Problem::new(code, at(self.at).with_property(&self.name), says)
    }

    fn unreadable(&self) -> Problem {
        let says = format!("{} cannot be read as a value", quoted(&self.json));
        self.problem(Code::BadNumber, says)
            .hint("it is too large for a number, or nested too deeply: correct it or take it out")
    }

    fn written(&self, bound: &Bound) -> Result<Written, Problem> {
        let value = serde_json::from_str::<Value>(&self.json).map_err(|_| self.unreadable())?;
        let unclear = match value {
            Value::Null => return Ok(Written::Nothing),
            Value::Number(n) => match n.as_f64() {
                Some(value) => return Ok(Written::One(value)),
                None => Unclear::NotFinite,
            },
            Value::String(text) => match written(&text, bound) {
                Ok(written) => return Ok(written),
                Err(unclear) => unclear,
            },
            _ => Unclear::NotPlain,
        };
        Err(self.unclear(&unclear, bound))
    }

    fn unclear(&self, why: &Unclear, bound: &Bound) -> Problem {
        let (what, shown) = (bound.what, quoted(&self.json));
        let says = match why {
            Unclear::NotPlain => format!("{what} {shown} is not a plain number"),
            Unclear::NotFinite => format!("{what} {shown} is not a finite number"),
            Unclear::Unit(unit) => {
                format!("{what} {shown} is in \"{unit}\", not in {}", bound.unit)
            }
            Unclear::Comma(digits) => format!(
                "{what} {shown} can mean {} or {}",
                digits.replace(',', ".").trim_end_matches('0'),
                digits.replace(',', "")
            ),
        };
        self.problem(Code::BadNumber, says).hint(bound.cure())
    }
}

/// A number, its complaints filed.
pub(super) fn number(
    properties: &mut Properties,
    name: &str,
    bound: &Bound,
    problems: &mut Vec<Problem>,
) -> Number {
    match properties.number(name, bound) {
        Ok(number) => {
            problems.extend(number.one_end_counts(name, bound));
            number
        }
        Err(problem) => {
            problems.push(problem);
            Number::default()
        }
    }
}

pub(super) const SURFACES: [(&str, Surface); 2] =
    [("snow", Surface::Snow), ("bare", Surface::Bare)];
pub(super) const ROPE_WORDS: [(&str, RopeWord); 3] = [
    ("auto", RopeWord::Auto),
    ("always", RopeWord::Always),
    ("never", RopeWord::Never),
];

/// Texts as they are; numbers, truth values and the rest as JSON; null and empty texts are nothing.
fn text_of(property: &Property) -> Option<String> {
    let text = match serde_json::from_str(&property.json) {
        Ok(Value::Null) => return None,
        Ok(Value::String(text)) => text,
        _ => property.json.clone(),
    };
    (!text.trim().is_empty() && unmasked(&text).is_none()).then_some(text)
}

/// Puts null where a word that is no number was masked; whether there was one.
fn unmask(value: &mut Value) -> bool {
    match value {
        Value::String(text) if unmasked(text).is_some() => {
            *value = Value::Null;
            true
        }
        Value::Array(list) => list.iter_mut().fold(false, |met, v| unmask(v) | met),
        Value::Object(map) => map.values_mut().fold(false, |met, v| unmask(v) | met),
        _ => false,
    }
}

/// The members of an object in file order, unread.
struct Pairs<'a>(Vec<(String, &'a RawValue)>);

impl<'de> Deserialize<'de> for Pairs<'de> {
    fn deserialize<D: Deserializer<'de>>(json: D) -> Result<Self, D::Error> {
        struct Taken;
        impl<'de> Visitor<'de> for Taken {
            type Value = Pairs<'de>;

            fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("an object")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Pairs<'de>, A::Error> {
                let mut pairs = Vec::new();
                while let Some(pair) = map.next_entry()? {
                    pairs.push(pair);
                }
                Ok(Pairs(pairs))
            }
        }
        json.deserialize_map(Taken)
    }
}
