//! The messages of one language by key, and the checks that nothing in them can go unsaid.

use std::{
    collections::{BTreeSet, HashMap, HashSet, hash_map::Entry::Vacant},
    sync::OnceLock,
};

use crate::say::{
    ftl,
    pattern::{BUILT_IN, Entry, Pattern},
};

/// References inside references; more is taken for a circle.
pub(super) const DEEPEST: u8 = 8;

/// Messages for what English says in data files, under the names of figures: it has none of them.
const OF_FIGURES: &str = "says-";

/// Category of plurals that a whole number belongs to.
pub(crate) type Plural = fn(u64) -> &'static str;

/// A text in FTL under the name of its file.
pub(crate) type FtlFile = (&'static str, &'static str);

/// Everything that can be said in a language. Each entry is read when it is first said.
#[derive(Debug)]
pub(crate) struct Catalogue {
    own: &'static [FtlFile],
    others: &'static [FtlFile],
    entries: HashMap<&'static str, WrittenEntry>,
    /// In the order of the files.
    keys: Vec<&'static str>,
    pub(crate) plural: Plural,
}

/// An entry as it is written, and as it was read.
#[derive(Debug)]
struct WrittenEntry {
    file: &'static str,
    text: &'static str,
    read: OnceLock<Option<Entry>>,
}

impl Catalogue {
    /// The files of a language, and those of another one that are taken where it has no message of its own.
    pub(crate) fn of(own: &'static [FtlFile], others: &'static [FtlFile], plural: Plural) -> Self {
        let mut catalogue = Self {
            own,
            others,
            entries: HashMap::new(),
            keys: Vec::new(),
            plural,
        };
        for (file, text) in own.iter().chain(others) {
            for (key, text) in ftl::written(text) {
                catalogue.add(file, key, text);
            }
        }
        catalogue
    }

    /// The first of a name counts.
    fn add(&mut self, file: &'static str, key: &'static str, text: &'static str) {
        if let Vacant(free) = self.entries.entry(key) {
            free.insert(WrittenEntry {
                file,
                text,
                read: OnceLock::new(),
            });
            self.keys.push(key);
        }
    }

    /// What is wrong with the files.
    pub(crate) fn faults(&self) -> Vec<String> {
        let files = self.own.iter().chain(self.others);
        let mut faults: Vec<String> = files
            .flat_map(|(file, text)| ftl::read(file, text).1)
            .collect();
        for files in [self.own, self.others] {
            let mut seen = HashSet::new();
            for (file, text) in files {
                let twice = ftl::written(text).filter(|(key, _)| !seen.insert(*key));
                faults.extend(twice.map(|(key, _)| format!("{file}: {key}: is there twice")));
            }
        }
        for (key, entry) in self
            .keys
            .iter()
            .filter_map(|key| Some((key, self.entry(key)?)))
        {
            faults.extend(self.faults_of(key, entry));
        }
        faults
    }

    fn faults_of(&self, key: &str, entry: &Entry) -> Vec<String> {
        let mut faults = Vec::new();
        for pattern in entry.patterns() {
            let missing = pattern.references().into_iter().filter(|r| !self.has(r));
            faults.extend(missing.map(|r| format!("{key}: `{r}` is not there")));
            if key.starts_with('-') && pattern.arguments().iter().any(|a| !BUILT_IN.contains(a)) {
                faults.push(format!("{key}: a term takes no arguments"));
            }
        }
        if !entry.patterns().all(|p| self.ends(p, DEEPEST)) {
            faults.push(format!("{key}: refers to itself, or too deep"));
        }
        faults
    }

    fn ends(&self, pattern: &Pattern, left: u8) -> bool {
        let deeper = |key: &str| match (self.entry(key), left.checked_sub(1)) {
            (None, _) => true,
            (Some(_), None) => false,
            (Some(entry), Some(left)) => self.ends(&entry.value, left),
        };
        pattern.references().into_iter().all(deeper)
    }

    fn has(&self, key: &str) -> bool {
        self.entry(key).is_some()
    }

    pub(crate) fn entry(&self, key: &str) -> Option<&Entry> {
        let written = self.entries.get(key)?;
        let read = || ftl::entry(written.file, written.text);
        written.read.get_or_init(read).as_ref()
    }

    /// Keys of the messages in the order of the files, terms left aside.
    pub(crate) fn messages(&self) -> impl Iterator<Item = &'static str> {
        let keys = self.keys.iter().copied();
        keys.filter(|key| !key.starts_with('-') && self.has(key))
    }

    /// Names of the arguments that a pattern takes, by its references too.
    pub(crate) fn arguments<'a>(&'a self, pattern: &'a Pattern) -> BTreeSet<&'a str> {
        let mut names: BTreeSet<&str> = pattern.arguments().into_iter().collect();
        names.retain(|name| !BUILT_IN.contains(name));
        let referred = pattern.references().into_iter();
        for entry in referred.filter_map(|key| self.entry(key)) {
            names.extend(self.arguments(&entry.value));
        }
        names
    }

    /// Where this catalogue does not say what the other does: messages, attributes and arguments.
    pub(crate) fn differences(&self, other: &Self) -> Vec<String> {
        let missing = other.messages().filter(|key| !self.has(key));
        let mut all: Vec<String> = missing.map(|key| format!("{key}: is missing")).collect();
        for key in self.messages() {
            match (self.entry(key), other.entry(key)) {
                (Some(ours), Some(theirs)) => self.differ((key, ours), (other, theirs), &mut all),
                _ if key.starts_with(OF_FIGURES) => {}
                _ => all.push(format!("{key}: is one too many")),
            }
        }
        all
    }

    fn differ(
        &self,
        (key, ours): (&str, &Entry),
        (other, theirs): (&Self, &Entry),
        all: &mut Vec<String>,
    ) {
        let mut compare = |what: &str, ours: &Pattern, theirs: &Pattern| {
            let (ours, theirs) = (self.arguments(ours), other.arguments(theirs));
            if ours != theirs {
                all.push(format!("{what}: takes {ours:?} and not {theirs:?}"));
            }
        };
        compare(key, &ours.value, &theirs.value);
        for (name, pattern) in &ours.attributes {
            if let Some(theirs) = theirs.attribute(name) {
                compare(&format!("{key}.{name}"), pattern, theirs);
            }
        }
        let lacks = |a: &Entry, b: &Entry| -> Vec<String> {
            let names = b.attributes.iter().map(|(name, _)| name.clone());
            names.filter(|name| a.attribute(name).is_none()).collect()
        };
        let missing = lacks(ours, theirs).into_iter();
        all.extend(missing.map(|name| format!("{key}.{name}: is missing")));
        let too_many = lacks(theirs, ours).into_iter();
        all.extend(too_many.map(|name| format!("{key}.{name}: is one too many")));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn catalogue(text: &'static str) -> Catalogue {
        let files: &'static [FtlFile] = Vec::leak(vec![("f", text)]);
        Catalogue::of(files, &[], |_| "other")
    }

    #[test]
    fn references_must_lead_somewhere_and_end() {
        let read = catalogue(
            "
a = { b }
b = { a }
c = { d }
-t = { $n }
e = { -t }
f = { $units ->
    [imperial] feet
   *[metric] metres
 }
a = again
",
        );
        assert_eq!(
            read.faults(),
            [
                "f: a: is there twice",
                "a: refers to itself, or too deep",
                "b: refers to itself, or too deep",
                "c: `d` is not there",
                "-t: a term takes no arguments",
            ]
        );
        assert_eq!(
            read.messages().collect::<Vec<_>>(),
            ["a", "b", "c", "e", "f"]
        );
    }

    #[test]
    fn a_language_that_says_something_else_is_found_out() {
        let english = catalogue(
            "
-word = word
a = { $n } { -word }
b = x
    .hint = { $who }
c = { a }
d = y
",
        );
        let same = catalogue(
            "
b = { \"x\" }
    .hint = { $who ->
       *[other] y
     }
c = { $n }
a = { $n }
d = z
",
        );
        assert_eq!(same.faults(), [""; 0]);
        assert_eq!(same.differences(&english), [""; 0]);
        let other = catalogue("a = { $m }\nb = x\n    .note = n\nc = { a }\ne = y\n");
        assert_eq!(
            other.differences(&english),
            [
                "d: is missing",
                "a: takes {\"m\"} and not {\"n\"}",
                "b.hint: is missing",
                "b.note: is one too many",
                "c: takes {\"m\"} and not {\"n\"}",
                "e: is one too many",
            ]
        );
    }
}
