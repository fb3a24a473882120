//! What a zone's properties say, each judged by the table of interface section 3.

use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde_json::{Map, Value, value::RawValue};

use super::{
    members::MemberText,
    names::{self, MeantNames},
    number::{Written, admits, written},
    quote::{quoted, thing},
    text::{Spot, unmasked},
};
use crate::{
    fault::{
        Fault, Wrong,
        geojson::{InGeojson, InUnit, NoNumber, Quantity},
        name,
        place::Excerpt,
    },
    trip::zone::{RopeWord, Surface},
};

/// Spellings of the property that holds a zone's name: inventories have the latter two.
const NAMES: [&str; 3] = ["name", "Name", "NAME"];
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
    pub(super) fn read(piece: Option<&MemberText>) -> Result<Self, Fault> {
        let Some(piece) = piece else {
            return Ok(Self::default());
        };
        let parsed = serde_json::from_str::<Option<Pairs>>(&piece.json);
        let Ok(pairs) = parsed else {
            let value = serde_json::from_str(&piece.json).unwrap_or(Value::Null);
            let what = InGeojson::PropertiesNoObject(thing(&value));
            return Err(Fault::new(what, piece.at.place()));
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
        let mut spellings = NAMES.into_iter();
        let named = |name| self.list.iter().rfind(|p| p.name == name);
        let found = spellings.find_map(|name| named(name).and_then(text_of));
        found.and_then(|name| name::tidy(&name))
    }

    /// The first of them that only ice has; none in what this program wrote, where legs and places tell it of a zone.
    pub(super) fn of_ice(&self) -> Option<&'static str> {
        let has = |name: &str| {
            let mut named = self.list.iter().filter(|property| property.name == name);
            named.any(|property| text_of(property).is_some())
        };
        let mut names = names::OF_ICE.into_iter();
        names.find(|name| has(name) && !has("role"))
    }

    /// The names that hold a NUL.
    pub(super) fn nul(&self) -> Vec<Fault> {
        let named = self
            .list
            .iter()
            .filter(|p| NAMES.contains(&p.name.as_str()));
        let nul = named.filter_map(|p| Some(p.fault(name::nul(&text_of(p)?)?)));
        nul.collect()
    }

    /// The known names that stand there twice.
    pub(super) fn doubled(&self) -> Vec<Fault> {
        let twice = names::KNOWN.iter().filter_map(|name| {
            let all = || self.list.iter().filter(|p| p.name == *name);
            let second = all().nth(1)?;
            let found = all().map(|p| quoted(&p.json)).collect();
            Some(second.fault(InGeojson::PropertyTwice { found }))
        });
        twice.collect()
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
    pub(super) fn number(&mut self, name: &str, quantity: Quantity) -> Result<Number, Fault> {
        let Some(property) = self.take(name) else {
            return Ok(Number::default());
        };
        let (low, high) = match property.written(quantity)? {
            Written::Nothing => return Ok(Number::default()),
            Written::One(value) => (None, value),
            Written::Range(low, high) => (Some(low), high),
        };
        if low.is_some_and(|low| low > high) {
            let found = quoted(&property.json);
            return Err(property.fault(InGeojson::Downwards { quantity, found }));
        }
        if ![low.unwrap_or(high), high]
            .into_iter()
            .all(|value| admits(quantity, value))
        {
            return Err(property.no_number(NoNumber::Outside, quantity));
        }
        let range = low.map(|_| property);
        Ok(Number {
            low,
            high: Some(high),
            range: range.map(|p| WrittenRange {
                found: quoted(&p.json),
                at: p.at,
            }),
        })
    }

    /// One of a few words, in any case; the first one where nothing is given.
    pub(super) fn word<T: Copy + Default>(
        &mut self,
        name: &'static str,
        words: &[(&'static str, T)],
    ) -> Result<T, Fault> {
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
            property.fault(InGeojson::Word {
                property: name,
                found: quoted(&property.json),
                words: words.iter().map(|(word, _)| *word).collect(),
            })
        })
    }

    /// Unknown properties whose name is nearly a known one.
    pub(super) fn near_misses(&self, names: &mut MeantNames) -> Vec<NearMiss> {
        let mut miss = |p: &Property| {
            let right = names.meant(&p.name)?;
            let given = p.name.clone();
            let unit = names::unit(&given, right).map(|(unit, unit_m)| InUnit {
                unit,
                metres: p
                    .plain_number()
                    .map(|value| names::in_metres(right, value, unit_m)),
            });
            let fault = p.fault(InGeojson::NearMiss { given, right, unit });
            let given = p.name.clone();
            Some(NearMiss {
                given,
                right,
                unit,
                fault,
            })
        };
        self.list.iter().filter_map(&mut miss).collect()
    }

    /// What is left, passed through untouched, and complaints about what JSON cannot hold.
    pub(super) fn rest(self) -> (Map<String, Value>, Vec<Fault>) {
        let mut faults = Vec::new();
        let mut rest = Map::new();
        for property in self.list {
            match serde_json::from_str(&property.json) {
                Ok(mut value) => {
                    if unmask(&mut value) {
                        faults.push(property.fault(InGeojson::NotANumber));
                    }
                    rest.insert(property.name, value);
                }
                Err(_) => faults.push(property.unreadable()),
            }
        }
        (rest, faults)
    }
}

/// An unknown property whose name is nearly a known one.
pub(super) struct NearMiss {
    /// As given.
    pub(super) given: String,
    /// The known one.
    pub(super) right: &'static str,
    /// The unit that it ends with, where the known one is in metres.
    pub(super) unit: Option<InUnit>,
    /// What is said of it.
    pub(super) fault: Fault,
}

/// A number from a property.
#[derive(Debug, Default)]
pub(super) struct Number {
    /// The lower end, where a range was written.
    pub(super) low: Option<f64>,
    /// The number, or the upper end.
    pub(super) high: Option<f64>,
    /// The range as written.
    range: Option<WrittenRange>,
}

#[derive(Debug)]
struct WrittenRange {
    found: Excerpt,
    at: Spot,
}

impl Number {
    /// The number, or the worse end of a range.
    pub(super) fn worse(&self, quantity: Quantity) -> Option<f64> {
        if quantity.upper_counts {
            self.high
        } else {
            self.low.or(self.high)
        }
    }

    /// The warning that of a range only one end counts.
    pub(super) fn one_end_counts(&self, name: &str, quantity: Quantity) -> Option<Fault> {
        let (range, value) = (self.range.as_ref()?, self.worse(quantity)?);
        let one_end = InGeojson::OneEnd {
            quantity,
            found: range.found.clone(),
            value,
        };
        Some(Fault::new(one_end, range.at.place().with_property(name)))
    }
}

impl Property {
    fn fault(&self, what: impl Into<Wrong>) -> Fault {
        Fault::new(what, self.at.place().with_property(&self.name))
    }

    fn no_number(&self, why: NoNumber, quantity: Quantity) -> Fault {
        let found = quoted(&self.json);
        self.fault(InGeojson::Number {
            quantity,
            found,
            why,
        })
    }

    fn unreadable(&self) -> Fault {
        self.fault(InGeojson::Unreadable(quoted(&self.json)))
    }

    /// A number, or a text that holds nothing else.
    fn plain_number(&self) -> Option<f64> {
        match serde_json::from_str(&self.json).ok()? {
            Value::Number(number) => number.as_f64(),
            Value::String(text) => text.trim().parse().ok(),
            _ => None,
        }
        .filter(|number: &f64| number.is_finite())
    }

    fn written(&self, quantity: Quantity) -> Result<Written, Fault> {
        let value = serde_json::from_str::<Value>(&self.json).map_err(|_| self.unreadable())?;
        let unclear = match value {
            Value::Null => return Ok(Written::Nothing),
            Value::Number(n) => match n.as_f64() {
                Some(value) => return Ok(Written::One(value)),
                None => NoNumber::NotFinite,
            },
            Value::String(text) => match written(&text, quantity) {
                Ok(written) => return Ok(written),
                Err(unclear) => unclear,
            },
            _ => NoNumber::NotPlain,
        };
        Err(self.no_number(unclear, quantity))
    }
}

/// A number, its complaints filed.
pub(super) fn number(
    properties: &mut Properties,
    name: &str,
    quantity: Quantity,
    faults: &mut Vec<Fault>,
) -> Number {
    match properties.number(name, quantity) {
        Ok(number) => {
            faults.extend(number.one_end_counts(name, quantity));
            number
        }
        Err(fault) => {
            faults.push(fault);
            Number::default()
        }
    }
}

pub(super) const SURFACES: [(&str, Surface); 2] =
    [("snow", Surface::Snow), ("bare", Surface::Bare)];
pub(super) const TRUTHS: [(&str, bool); 2] = [("false", false), ("true", true)];
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
pub(super) struct Pairs<'a>(pub(super) Vec<(String, &'a RawValue)>);

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
