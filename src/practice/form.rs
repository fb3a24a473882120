//! What the tables of trip files and practice files can hold, and everything in one that is not so.

use std::{marker::PhantomData, ops::Range};

use toml::{
    Spanned,
    de::{DeArray, DeTable, DeValue},
};

use super::{
    alike::nearest,
    term::Terms,
    toml_text::{TomlText, told},
};
use crate::fault::{
    Fault,
    toml::{InToml, Meant, Takes, TomlTable},
};

/// What a table can hold.
///
/// ```
/// use schrund::fault::toml::{InToml, Meant, TomlTable};
/// use schrund::practice::{form::{MemberForm, NUMBER, TEXT, TableForm}, toml_text::TomlText};
///
/// static ROPE: TableForm = TableForm {
///     of: TomlTable::Rope,
///     members: &[MemberForm::must("length_m", NUMBER), MemberForm::may("name", TEXT)],
///     others: None,
/// };
/// let faults = TomlText::parse("rope.toml", "lenght_m = 60\nname = \"blue\"\n")?.check(&ROPE);
/// let (of, name, meant) = (TomlTable::Rope, "lenght_m".to_owned(), Some(Meant::Member("length_m")));
/// assert_eq!(faults[0].what, InToml::NoMember { of, name, meant }.into());
/// assert_eq!(faults.len(), 1, "the length is there, under another name");
/// let faults = TomlText::parse("rope.toml", "name = \"blue\"\n")?.check(&ROPE);
/// assert_eq!(faults[0].what, InToml::Lacks { of, name: "length_m" }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct TableForm {
    /// Which table it is.
    pub of: TomlTable,
    /// Its members.
    pub members: &'static [MemberForm],
    /// What any other member holds, where names are free.
    pub others: Option<&'static ValueForm>,
}

/// One member of a table.
///
/// ```
/// use schrund::fault::toml::{InToml, TomlTable};
/// use schrund::practice::{form::{MemberForm, NUMBER, TEXT, TableForm}, toml_text::TomlText};
///
/// static PERSON: TableForm = TableForm {
///     of: TomlTable::Person,
///     members: &[MemberForm::must("name", TEXT), MemberForm::may("mass_kg", NUMBER)],
///     others: None,
/// };
/// let faults = TomlText::parse("person.toml", "")?.check(&PERSON);
/// assert_eq!(faults.len(), 1, "the mass may be left out");
/// assert_eq!(faults[0].what, InToml::Lacks { of: TomlTable::Person, name: "name" }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct MemberForm {
    /// Its name.
    pub name: &'static str,
    /// What it holds.
    pub holds: ValueForm,
    /// Whether it has to be there.
    pub needed: bool,
}

impl MemberForm {
    /// A member that may be left out.
    #[must_use]
    pub const fn may(name: &'static str, holds: ValueForm) -> Self {
        Self {
            name,
            holds,
            needed: false,
        }
    }

    /// A member that must be there.
    #[must_use]
    pub const fn must(name: &'static str, holds: ValueForm) -> Self {
        Self {
            name,
            holds,
            needed: true,
        }
    }
}

/// What a member holds, and how that is said.
///
/// ```
/// use schrund::fault::{Wrong, toml::{InToml, Takes, TomlTable}};
/// use schrund::practice::{form::{MemberForm, Sorted, TableForm, ValueForm}, toml_text::TomlText};
///
/// const PEOPLE: ValueForm = ValueForm { sorts: &[Sorted::Count, Sorted::Numbers], takes: || Takes::People };
/// static TRIP: TableForm =
///     TableForm { of: TomlTable::Trip, members: &[MemberForm::may("party", PEOPLE)], others: None };
/// let takes = |text: &str| {
///     let faults = TomlText::parse("trip.toml", text)?.check(&TRIP);
///     Ok::<_, Vec<schrund::fault::Fault>>(faults.into_iter().find_map(|fault| match fault.what {
///         Wrong::Toml(InToml::Form { takes, .. }) => Some(takes),
///         _ => None,
///     }))
/// };
/// assert_eq!((takes("party = 3")?, takes("party = [82, 75.5]")?), (None, None), "either sort is taken");
/// assert_eq!(takes("party = true")?, Some(Takes::People));
/// assert_eq!(takes("party = [82, true]")?, Some(Takes::Number), "a list is told of its item");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct ValueForm {
    /// The sorts of value; the first that is of the value's sort decides.
    pub sorts: &'static [Sorted],
    /// What to say that it takes.
    pub takes: fn() -> Takes,
}

/// A sort of value.
///
/// ```
/// use schrund::fault::toml::{Takes, TomlTable};
/// use schrund::practice::{form::{MemberForm, Sorted, TableForm, ValueForm}, toml_text::TomlText};
///
/// const COUNT: ValueForm = ValueForm { sorts: &[Sorted::Count], takes: || Takes::Number };
/// const SHORT: ValueForm = ValueForm { sorts: &[Sorted::Text(|text| text.len() < 5)], takes: || Takes::Text };
/// static TRIP: TableForm = TableForm {
///     of: TomlTable::Trip,
///     members: &[MemberForm::may("stage", COUNT), MemberForm::may("name", SHORT)],
///     others: None,
/// };
/// for (text, fits) in [
///     ("stage = 2", true), ("stage = -2", false), ("stage = 2.5", false), // a count is whole and not below nought
///     ("name = \"Col\"", true), ("name = \"Glacier\"", false), ("name = 3", false),
/// ] {
///     assert_eq!(TomlText::parse("trip.toml", text)?.check(&TRIP).is_empty(), fits, "{text}");
/// }
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub enum Sorted {
    /// A whole number from nought.
    Count,
    /// Any number.
    Number,
    /// `true` or `false`.
    Truth,
    /// A text that this is true of.
    Text(fn(&str) -> bool),
    /// A list of texts.
    Texts,
    /// A list of numbers.
    Numbers,
    /// A list of tables.
    Tables(&'static TableForm),
    /// An empty list.
    Nothing,
    /// A table.
    Table(&'static TableForm),
    /// A table with names of its own.
    Map(&'static ValueForm),
}

/// A number.
pub const NUMBER: ValueForm = ValueForm {
    sorts: &[Sorted::Number],
    takes: || Takes::Number,
};
/// A text.
pub const TEXT: ValueForm = ValueForm {
    sorts: &[Sorted::Text(|_| true)],
    takes: || Takes::Text,
};
/// A list of texts.
pub const TEXTS: ValueForm = ValueForm {
    sorts: &[Sorted::Texts],
    takes: || Takes::Texts,
};
/// `true` or `false`.
pub const TRUTH: ValueForm = ValueForm {
    sorts: &[Sorted::Truth],
    takes: || Takes::Truth,
};

/// One word of a choice.
///
/// ```
/// use schrund::fault::{place::Excerpt, toml::{InToml, Takes, TomlTable}};
/// use schrund::practice::{Travel, form::{MemberForm, TableForm, WordForm}, toml_text::TomlText};
///
/// static TRIP: TableForm = TableForm {
///     of: TomlTable::Trip,
///     members: &[MemberForm::may("travel", WordForm::<Travel>::FORM)],
///     others: None,
/// };
/// assert!(TomlText::parse("trip.toml", "travel = \"ski\"")?.check(&TRIP).is_empty());
/// let faults = TomlText::parse("trip.toml", "travel = \"bike\"")?.check(&TRIP);
/// let (name, found) = ("travel".to_owned(), Excerpt::of("\"bike\"", 60));
/// let takes = Takes::Words(vec!["foot", "snowshoe", "ski"]);
/// assert_eq!(faults[0].what, InToml::Form { of: TomlTable::Trip, name, found, takes }.into());
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Debug)]
pub struct WordForm<T>(PhantomData<T>);

impl<T: Terms> WordForm<T> {
    /// What a member that takes it holds.
    pub const FORM: ValueForm = ValueForm {
        sorts: &[Sorted::Text(|text| T::named(text).is_some())],
        takes: || Takes::Words(T::names()),
    };
}

impl TomlText<'_> {
    /// Everything in the text that is not of this form, in its order.
    #[must_use]
    pub fn check(&self, form: &TableForm) -> Vec<Fault> {
        let mut walk = Walk {
            text: self,
            met: Vec::new(),
        };
        walk.members(form, &self.root, "");
        walk.met.sort_by_key(|(at, _, _)| at.start);
        let mut faults = told(walk.met, |(at, what, path)| {
            Fault::new(what, self.place_of(&at).with_property(path))
        });
        let lacks = lacking(form, &self.root);
        faults.extend(lacks.map(|lacks| Fault::new(lacks, self.place())));
        faults
    }
}

fn lacking<'f>(
    form: &'f TableForm,
    table: &'f DeTable<'_>,
) -> impl Iterator<Item = InToml> + use<'f> {
    let needed = form.members.iter().filter(|member| member.needed);
    // What an unknown name means is told there, and is not lacking too; where names are free none is unknown.
    let stands_for = |name: &str| match names(form).find(|known| *known == name) {
        None if form.others.is_none() => nearest(name, names(form)),
        known => known,
    };
    let given: Vec<_> = table.keys().map(|key| stands_for(key.get_ref())).collect();
    let lacks = needed.filter(move |member| !given.contains(&Some(member.name)));
    lacks.map(|member| InToml::Lacks {
        of: form.of,
        name: member.name,
    })
}

/// The member of a form that a name may mean, if it is none itself.
fn meant(form: &TableForm, name: &str) -> Option<Meant> {
    nearest(name, names(form)).map(Meant::Member)
}

fn names(form: &TableForm) -> impl Iterator<Item = &'static str> {
    form.members.iter().map(|member| member.name)
}

/// A text while it is checked.
struct Walk<'w, 't> {
    text: &'w TomlText<'t>,
    /// What is wrong, where, and of which member.
    met: Vec<(Range<usize>, InToml, String)>,
}

/// A member: the table that it stands in, and the names on the way to it.
struct Named<'n> {
    of: TomlTable,
    path: &'n str,
}

impl Walk<'_, '_> {
    fn add<T>(&mut self, what: InToml, at: &Spanned<T>, path: &str) {
        self.met.push((at.span(), what, path.to_owned()));
    }

    fn members(&mut self, form: &TableForm, table: &DeTable<'_>, path: &str) {
        for (key, value) in table {
            let name: &str = key.get_ref();
            let path = match path {
                "" => name.to_owned(),
                path => format!("{path}.{name}"),
            };
            let known = form.members.iter().find(|member| member.name == name);
            let free = || form.others.filter(|o| o.sort_of(value.get_ref()).is_some());
            if let Some(holds) = known.map(|member| &member.holds).or_else(free) {
                let (of, path) = (form.of, path.as_str());
                self.value(&Named { of, path }, holds, value);
                continue;
            }
            let no_member = InToml::NoMember {
                of: form.of,
                name: name.to_owned(),
                meant: meant(form, name),
            };
            self.add(no_member, key, &path);
        }
    }

    fn value(&mut self, named: &Named<'_>, holds: &ValueForm, value: &Spanned<DeValue<'_>>) {
        match (holds.sort_of(value.get_ref()), value.get_ref()) {
            (Some(Sorted::Text(fits)), DeValue::String(text)) if fits(text) => {}
            (Some(Sorted::Count), DeValue::Integer(n)) if n.as_str().starts_with('-') => {
                self.unfit(named, holds, value);
            }
            (Some(Sorted::Count | Sorted::Number), number) if is_held(number) => {}
            (Some(Sorted::Count | Sorted::Number), _) => self.huge(named, value),
            (Some(Sorted::Truth | Sorted::Nothing), _) => {}
            (Some(Sorted::Texts), DeValue::Array(items)) => self.items(named, &TEXT, items),
            (Some(Sorted::Numbers), DeValue::Array(items)) => self.items(named, &NUMBER, items),
            (Some(Sorted::Tables(form)), DeValue::Array(items)) => {
                for item in items {
                    match item.get_ref() {
                        DeValue::Table(table) => self.table(form, table, item, named.path),
                        _ => self.unfit(named, holds, item),
                    }
                }
            }
            (Some(Sorted::Table(form)), DeValue::Table(table)) => {
                self.table(form, table, value, named.path);
            }
            (Some(Sorted::Map(inner)), DeValue::Table(table)) => {
                for (key, value) in table {
                    let path = format!("{}.{}", named.path, key.get_ref());
                    let (of, path) = (named.of, path.as_str());
                    self.value(&Named { of, path }, inner, value);
                }
            }
            _ => self.unfit(named, holds, value),
        }
    }

    /// A table inside another one.
    fn table(
        &mut self,
        form: &TableForm,
        table: &DeTable<'_>,
        at: &Spanned<DeValue<'_>>,
        path: &str,
    ) {
        self.members(form, table, path);
        for lacks in lacking(form, table) {
            self.add(lacks, at, path);
        }
    }

    fn items(&mut self, named: &Named<'_>, holds: &ValueForm, items: &DeArray<'_>) {
        for item in items {
            self.value(named, holds, item);
        }
    }

    fn unfit(&mut self, named: &Named<'_>, holds: &ValueForm, value: &Spanned<DeValue<'_>>) {
        let form = InToml::Form {
            of: named.of,
            name: named.path.to_owned(),
            found: self.text.found(value),
            takes: (holds.takes)(),
        };
        self.add(form, value, named.path);
    }

    fn huge(&mut self, named: &Named<'_>, value: &Spanned<DeValue<'_>>) {
        let (name, found) = (named.path.to_owned(), self.text.found(value));
        self.add(InToml::Huge { name, found }, value, named.path);
    }
}

impl ValueForm {
    /// The sort that decides whether this value fits.
    fn sort_of(&self, value: &DeValue<'_>) -> Option<&Sorted> {
        self.sorts.iter().find(|sort| sort.is_of(value))
    }
}

impl Sorted {
    fn is_of(&self, value: &DeValue<'_>) -> bool {
        match self {
            Self::Count => value.is_integer(),
            Self::Number => value.is_integer() || value.is_float(),
            Self::Truth => value.is_bool(),
            Self::Text(_) => value.is_str(),
            Self::Texts => value.is_array(),
            Self::Numbers => value
                .as_array()
                .is_some_and(|list| !begins_with_table(list)),
            Self::Tables(_) => value.as_array().is_some_and(begins_with_table),
            Self::Nothing => value.as_array().is_some_and(|list| list.is_empty()),
            Self::Table(_) | Self::Map(_) => value.is_table(),
        }
    }
}

fn begins_with_table(list: &DeArray<'_>) -> bool {
    list.first().is_some_and(|first| first.get_ref().is_table())
}

/// Whether a number is small enough to be read.
fn is_held(number: &DeValue<'_>) -> bool {
    match number {
        DeValue::Integer(n) => {
            let (digits, radix) = (n.as_str(), n.radix());
            i64::from_str_radix(digits, radix).is_ok() || u64::from_str_radix(digits, radix).is_ok()
        }
        DeValue::Float(n) => {
            let infinite = n.as_str().parse().is_ok_and(f64::is_infinite);
            !infinite || n.as_str().contains("inf")
        }
        _ => true,
    }
}
